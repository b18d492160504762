"""Train the folk model of grace notes and write its weights.

Run by hand after a change of features: ``python -m tools.train_taste``. It trains on one half of the tunes, prints how
the model does on the other half and from book to book, and writes `src/fioritura/arrange/grace_taste_folk.json`.
Across books the held-out book counts with all its tunes, and nothing of it is trained on.
"""

from __future__ import annotations

import json
from pathlib import Path

from tools.folk_graces import across_books, folk_tunes, measure, train

TARGET = Path(__file__).parents[1] / "src" / "fioritura" / "arrange" / "grace_taste_folk.json"
SOURCE = (
    "Single grace notes of O'Neill's Music of Ireland, Ryan's Mammoth Collection and Aird's Airs (ABC corpus of "
    "music21), trained on one half of the tunes by tools/train_taste.py"
)


def main() -> None:
    """Train, measure, write."""
    tunes = folk_tunes()
    half = [tune for tune in tunes if not tune.is_test]
    taste = train(half)
    print("trained on", measure(taste, half))
    print("held out  ", measure(taste, [tune for tune in tunes if tune.is_test]))
    for book, measures in across_books(tunes).items():
        print(f"{book:<12}", measures)
    data = {
        "idiom": "folk",
        "source": SOURCE,
        "tunes": len(half),
        "graces": sum(sum(tune.has_grace) for tune in half),
        "placement": {"base": taste.placement_base, "weights": taste.placement},
        "side": {"base": round(taste.side_base, 3), "weights": taste.side},
    }
    TARGET.write_text(json.dumps(data, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
