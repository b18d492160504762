"""Learn where cuts and rolls stand in Irish dance music: ``python -m tools.train_irish`` rewrites `irish_taste.json`.

The books are O'Neill's and Ryan's in music21's ABC corpus; of a sign those tunes count that have it. The split is that of
`tools.folk_graces`: by title, and the test half is measured, never trained on.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from functools import cache
from pathlib import Path
from zlib import crc32

import numpy as np

from fioritura.arrange.irish_taste import sign_features
from fioritura.errors import FiorituraError
from fioritura.notation.abc.reader import list_abc
from fioritura.tune import Mark, Tune
from tools.folk_graces import logistic

BOOKS = ("oneills1850", "ryansMammoth")
TARGET = Path(__file__).parents[1] / "src" / "fioritura" / "arrange" / "irish_taste.json"
RIDGE = 2.0
FEWEST = 12
"""A feature that is rarer is left out."""


@cache
def irish_tunes(*, test: bool) -> tuple[Tune, ...]:
    """Tunes of one half, in order of file and place, signs and all."""
    from music21 import corpus

    paths = [Path(path) for path in corpus.getCorePaths(fileExtensions=("abc",))]
    found = []
    for path in sorted(path for path in paths if path.parent.name in BOOKS):
        for entry in list_abc(path.read_bytes().decode("utf-8", "replace")):
            title = re.sub("[^a-z]", "", entry.title.lower())
            if (crc32(title.encode()) % 2 == 1) != test:
                continue
            try:
                found.append(entry.read(irregular="keep"))
            except FiorituraError:
                continue
    return tuple(found)


def signs(tune: Tune, kind: str) -> list[bool]:
    """Which notes bear a cut, or a roll."""
    return [len(note.graces) == 1 if kind == "cuts" else Mark.ROLL in note.marks for note in tune.notes]


def main() -> None:
    """Train on one half, and write the weights."""
    weights = {kind: learned(kind, list(irish_tunes(test=False))) for kind in ("cuts", "rolls")}
    source = (
        "Cuts and rolls of O'Neill's Music of Ireland and Ryan's Mammoth Collection, as music21's corpus has them."
    )
    text = json.dumps({"source": source, "weights": weights}, indent=1, sort_keys=True, ensure_ascii=False)
    TARGET.write_text(text + "\n", encoding="utf-8")


def learned(kind: str, tunes: list[Tune]) -> dict[str, float]:
    """The weights of a sign."""
    having = [tune for tune in tunes if any(signs(tune, kind))]
    sites = [names for tune in having for names in sign_features(tune)]
    counts = Counter(name for names in sites for name in names)
    names = sorted(name for name, count in counts.items() if count >= FEWEST)
    columns = np.array([[name in site for name in names] for site in sites], dtype=np.float64)
    outcome = np.array([sign for tune in having for sign in signs(tune, kind)], dtype=np.float64)
    base, found = logistic(columns, outcome, RIDGE)
    print(kind, len(having), "tunes,", int(outcome.sum()), "signs on", len(outcome), "notes")
    return {"base": round(base, 3)} | {
        n: round(float(w), 3) for n, w in zip(names, found, strict=True) if abs(w) > 0.02
    }


if __name__ == "__main__":
    main()
