"""Set the bases of the techniques.

Techniques are weighed by different features, so that their raw scores can't be compared. In jazz each technique has a
`part`, how large a part of all figures it is to make up among the techniques of a level. Bases are moved, round by round,
until what is chosen without regard to shares comes near to that at every level. In folk each has an `appeal`: its better
places (the 90th percentile) are to score just that.

Run by hand after a change of weights: ``python -m tools.calibrate_taste jazz [FOLDER]``, where the folder holds lead sheets;
without one the tunes are those of the public ABC books.
"""

from __future__ import annotations

import json
import random
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from math import log
from pathlib import Path
from typing import Any
from zlib import crc32

import numpy as np

from fioritura.arrange.arranger import best_figures
from fioritura.arrange.prepare import prepared
from fioritura.arrange.survey import survey
from fioritura.arrange.taste import taste_of
from fioritura.arrange.weights import _shipped
from fioritura.errors import FiorituraError
from fioritura.notation.read import read_tune
from fioritura.players.instruments import instrument_named
from fioritura.players.setting import Setting
from fioritura.techniques.table import all_techniques
from fioritura.tune import Tune
from tests.corpus_tunes import corpus_tunes

HOME = Path(__file__).parents[1] / "src" / "fioritura" / "techniques"
SAMPLE = 40
ROUNDS = 14
MOST_PART = 0.23
STEP = 0.16
TEMPOS = (None, None, 72.0, None, 200.0)
"""Quarter notes a minute, in turn; None for the tune's own."""

Files = dict[Path, dict[str, Any]]


def main() -> None:
    """Rewrite the bases of an idiom beside the techniques."""
    idiom, *folders = sys.argv[1:]
    tunes = (
        sheets(Path(folders[0]), is_held_out=False, step=2)
        if folders
        else random.Random("calibrate").sample(corpus_tunes(), SAMPLE)
    )
    contents: Files = {path: json.loads(path.read_text(encoding="utf-8")) for path in HOME.glob("*.taste.json")}
    (by_parts if idiom == "jazz" else by_appeal)(contents, tunes)


def sheets(folder: Path, *, is_held_out: bool | None = None, step: int = 1) -> list[Tune]:
    """Lead sheets of a folder, as a player reads them: the half that a checksum of the name holds out from calibrating,
    the other half, or all."""
    found = []
    paths = [path for path in sorted(folder.iterdir()) if is_held_out in (None, held_out(path.name))]
    for path in paths[::step]:
        try:
            found.append(prepared(read_tune(path), instrument_named("concert"), unfold=True))
        except FiorituraError as error:
            print(f"{path.name}: {error}", file=sys.stderr)
    return found


def held_out(name: str) -> bool:
    """Whether a sheet is kept from calibrating, so that measures on it are not of what they were set by."""
    return crc32(name.encode()) % 2 == 1


def by_parts(contents: Files, tunes: Sequence[Tune]) -> None:
    """Move the bases until each technique has its part; their mean stays, as techniques of others are weighed against it."""
    for number in range(ROUNDS):
        errors: dict[str, list[float]] = defaultdict(list)
        for level in range(1, 6):
            uses = used(tunes, level)
            total = sum(uses.values())
            for technique, part in parts(contents, level).items():
                errors[technique].append(log((part * total + 1.0) / (uses[technique] + 1.0)))
        print(number, round(float(np.mean([abs(np.mean(each)) for each in errors.values()])), 3), flush=True)
        drift = float(np.mean([np.mean(each) for each in errors.values()]))
        for entry, technique in entries(contents, "jazz"):
            entry["base"] = round(
                entry["base"] + STEP * 0.93**number * (float(np.mean(errors[technique])) - drift), 3
            )
        write(contents)


def parts(contents: Files, level: int) -> dict[str, float]:
    """The part of each technique of a level; what one would have above the most goes to the others."""
    known = all_techniques()
    found = {id: entry["part"] for entry, id in entries(contents, "jazz") if known[id].level <= level}
    for _ in found:
        total = sum(found.values())
        found = {technique: min(part / total, MOST_PART) for technique, part in found.items()}
    return found


def used(tunes: Sequence[Tune], level: int) -> Counter[str]:
    """How often each technique is chosen."""
    uses: Counter[str] = Counter()
    for number, tune in enumerate(tunes):
        feel = "straight" if number % 4 == 3 else "swing"
        setting = Setting("concert", TEMPOS[number % len(TEMPOS)], feel, level=level)  # type: ignore[arg-type]
        uses.update(figure.technique for figure in best_figures(survey(tune, setting)).figures)
    return uses


def by_appeal(contents: Files, tunes: Sequence[Tune]) -> None:
    """Set each base so that the technique's better places score its appeal."""
    scores: dict[str, list[float]] = defaultdict(list)
    for tune in tunes:
        for figure in survey(tune, Setting("concert", 90.0, "straight", "folk", level=5)).figures:
            scores[figure.technique].append(figure.score - taste_of("folk").base.get(figure.technique, 0.0))
    for entry, technique in entries(contents, "folk"):
        fit = float(np.percentile(scores[technique], 90)) if len(scores[technique]) >= 10 else 0.0
        entry["base"] = round(entry["appeal"] - fit, 3)
    write(contents)


def entries(contents: Files, idiom: str) -> Iterator[tuple[dict[str, Any], str]]:
    """The weights of each technique that has a part (jazz) or an appeal (folk) in the idiom, with its id."""
    aim = "part" if idiom == "jazz" else "appeal"
    for data in contents.values():
        yield from ((each[idiom], id) for id, each in data.items() if aim in each.get(idiom, {}))


def write(contents: Files) -> None:
    """Put the weights into their files, from which they are read again."""
    for path, data in contents.items():
        path.write_text(json.dumps(data, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")
    _shipped.cache_clear()
    taste_of.cache_clear()


if __name__ == "__main__":
    main()
