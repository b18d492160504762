"""Make the tables of human figures from which answer fills are drawn: ``python -m tools.make_fill_tables FOLDER``.

The folder holds aggregate figures of short phrases (3-12 notes) in recorded jazz wind solos, measured on the Weimar Jazz
Database by way of its authors' open R data package (MIT licence): `fill_humanity_model.json`, `short_phrases.json`,
`cells_short_phrases.json` and `rhythms_and_approach.json`. The result holds counts and probabilities alone, no phrase of anybody.
"""

from __future__ import annotations

import json
import re
import sys
from pathlib import Path
from typing import Any, Final

import numpy as np

TABLES: Final = Path(__file__).parents[1] / "src" / "fioritura" / "techniques" / "fill_tables.json"
SOURCE: Final = (
    "Short phrases (3-12 notes) of 406 recorded jazz wind solos (saxophone, clarinet, trumpet, cornet), half of them chosen "
    "by a hash: Weimar Jazz Database, by way of its authors' open R data package. Aggregate figures only."
)
LICENCE: Final = "MIT (the data package); these figures are measured from it and shipped under the same terms."
GROUPS: Final = {
    "ballad": "mainstream, ballad <90",
    "medium": "mainstream, medium 90-160",
    "up": "mainstream, up >160",
}
VALUES: Final = {
    "32nd or 16th triplet": 2,
    "16th": 3,
    "triplet 8th": 4,
    "8th": 6,
    "triplet quarter": 8,
    "dotted 8th": 9,
    "quarter": 12,
    "dotted quarter": 18,
    "half": 24,
    "longer": 36,
}
PLACES: Final = {
    "on beat": 0,
    "e (2nd 16th)": 3,
    "2nd triplet": 4,
    "and": 6,
    "3rd triplet": 8,
    "a (4th 16th)": 9,
}
QUALITIES: Final = ("maj", "dom", "min", "hdim", "dim")
DEGREES: Final = ("1", "b9", "9", "b3", "3", "11", "#11", "5", "b13", "13", "b7", "7")
SEMITONES: Final = {degree: place for place, degree in enumerate(DEGREES)} | {"b5": 6, "#5": 8}
SMOOTHING: Final = 1.0


def tables(folder: Path) -> dict[str, Any]:
    """The tables of a folder of figures."""
    model = _read(folder / "fill_humanity_model.json")
    phrases = _read(folder / "short_phrases.json")
    every = phrases["mainstream (all but postbop, fusion, free)"]
    by_degree = model["b"] * (np.array(model["B"]) - np.array(model["U"]))
    return {
        "source": SOURCE,
        "licence": LICENCE,
        "what": {
            "moves": "log odds of a move of -12 to 12 semitones: [class of the move before][0 on, 1 off the beat][move]; classes: "
            "0 none, 1-3 down (5 and more, 3-4, 1-2), 4 the same note, 5-7 up (1-2, 3-4, 5 and more)",
            "moves by degree": "what is added: [chord quality at the new note][semitones of the old note above that chord's root]"
            "[0 on, 1 off the beat][move]; qualities: " + ", ".join(QUALITIES),
            "values": "log odds of a value: [place in the beat][value before, last: none][value], in the order of `value units`",
            "value tilt": "how much likelier a value is at a tempo than at all tempos",
            "sizes": "per cent of phrases with so many notes, by tempo",
            "starts": "per cent of phrases that begin at a place in the beat, by tempo",
            "first degrees": "weight of each semitone above the root as first note, by quality",
            "cells": "how phrases go on, by quality: [times found, semitones of the first note above the root, moves]",
            "rhythms": "rhythms of whole phrases, by tempo: [times found, place in the beat, values between attacks]",
        },
        "place units": [0, 3, 4, 6, 8, 9],
        "value units": list(VALUES.values()),
        "moves": _rounded(model["a"] * np.array(model["A"])),
        "moves by degree": _rounded(by_degree),
        "values": _rounded(np.array(model["R"])),
        "value tilt": {
            name: [_tilt(phrases[group], every, value) for value in VALUES] for name, group in GROUPS.items()
        },
        "sizes": {
            name: [phrases[group]["notes_dist_%"][str(n)] for n in range(3, 13)] for name, group in GROUPS.items()
        },
        "starts": {
            name: [phrases[group]["start_place_in_beat_%"].get(place, 0.0) for place in PLACES]
            for name, group in GROUPS.items()
        },
        "first degrees": [_degrees(every["first_note_degree_%"][quality]) for quality in QUALITIES],
        "cells": [_cells(_read(folder / "cells_short_phrases.json"), quality) for quality in QUALITIES],
        "rhythms": _rhythms(_read(folder / "rhythms_and_approach.json")),
    }


def _read(path: Path) -> Any:
    return json.loads(path.read_text(encoding="utf-8"))


def _rounded(table: np.ndarray) -> Any:
    return np.round(table, 2).tolist()


def _tilt(group: Any, every: Any, value: str) -> float:
    key = "values_between_onsets_%"
    return float(round((group[key].get(value, 0.0) + SMOOTHING) / (every[key].get(value, 0.0) + SMOOTHING), 2))


def _degrees(counted: dict[str, float]) -> list[float]:
    return [round(counted.get(degree, 0.0) + SMOOTHING, 1) for degree in DEGREES]


def _cells(figures: Any, quality: str) -> list[list[Any]]:
    """Cells of three to five notes that several players have, as semitones; three notes only where they are common."""
    found = []
    for size, least in (("3 notes", 6), ("4 notes", 3), ("5 notes", 3)):
        for text, (count, _) in figures[size]["degrees"][quality]["top"].items():
            if count >= least:
                first, *others = text.split()
                found.append([count, SEMITONES[first.split("/")[-1]], _moves(first, others)])
    return found


def _moves(first: str, others: list[str]) -> list[int]:
    """Semitones from degree to degree: ``+9`` the next ninth above, ``-1`` the next root below, ``=5`` the fifth again."""
    moves, last = [], SEMITONES[first.split("/")[-1]]
    for text in others:
        way, degree = text[0], SEMITONES[text[1:].split("/")[-1]]
        up = (degree - last) % 12
        moves.append(0 if way == "=" else (up or 12) if way == "+" else (up - 12 if up else -12))
        last = degree
    return moves


def _rhythms(figures: Any) -> dict[str, list[list[Any]]]:
    """Rhythms that begin on a beat or on the "and", of values that the tables know."""
    groups = next(value for key, value in figures.items() if key.startswith("rhythms of whole short phrases"))
    units = {"16": 3, "t8": 4, "8": 6, "8.": 9, "4": 12, "4.": 18, "2": 24}
    found: dict[str, list[list[Any]]] = {}
    for name, group in zip(GROUPS, ("ballad <90", "medium 90-160", "up >160"), strict=True):
        found[name] = []
        for text, (count, _) in groups[group]["top"].items():
            place, *values = text.split()
            if place in "bw" and all(value in units for value in values):
                found[name].append([count, {"b": 0, "w": 6}[place], [units[value] for value in values]])
    return found


def main() -> None:
    """Write the tables beside the technique."""
    text = json.dumps(tables(Path(sys.argv[1])), indent=1, ensure_ascii=False)
    TABLES.write_text(_compact(text) + "\n", encoding="utf-8")
    print(f"{TABLES.name}: {TABLES.stat().st_size} bytes")


def _compact(text: str) -> str:
    """Innermost lists on one line each."""
    return re.sub(r"\[\s+([^\[\]{}]*?)\s+\]", lambda found: "[" + re.sub(r",\s+", ",", found[1]) + "]", text)


if __name__ == "__main__":
    main()
