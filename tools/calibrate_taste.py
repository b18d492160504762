"""Set each technique's base score from its appeal.

Techniques are weighed by different features, so that their raw scores can't be compared. This script scores every
figure of a sample of real tunes and sets each technique's base so that its better places (the 90th percentile) score
just its `appeal`, a number that says beside the technique how much a player of the idiom likes it at such a place.

Run by hand after a change of weights: ``python -m tools.calibrate_taste``. It rewrites the bases in
`src/fioritura/techniques/*.taste.json`.
"""

from __future__ import annotations

import json
import random
from collections import defaultdict
from pathlib import Path
from typing import get_args

import numpy as np

import fioritura.techniques
from fioritura.arrange.survey import survey
from fioritura.arrange.taste import taste_of
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from tests.corpus_tunes import corpus_tunes

HOME = Path(fioritura.techniques.__file__).parent
SAMPLE = 120


def raw_scores(idiom: Idiom, count: int) -> dict[str, list[float]]:
    """The scores of each technique's figures in a sample of tunes, without the bases."""
    scores: dict[str, list[float]] = defaultdict(list)
    base = taste_of(idiom).base
    for tune in random.Random("calibrate").sample(corpus_tunes(), count):
        setting = Setting(Player.of("concert", 5), 90.0, "swing" if idiom == "jazz" else "straight", idiom)
        for figure in survey(tune, setting).figures:
            scores[figure.technique].append(figure.score - base.get(figure.technique, 0.0))
    return scores


def calibrate(home: Path, idiom: Idiom, scores: dict[str, list[float]]) -> None:
    """Rewrite the bases of an idiom in the files of weights of a folder."""
    for path in sorted(home.glob("*.taste.json")):
        weights = json.loads(path.read_text(encoding="utf-8"))
        for id, by_idiom in weights.items():
            own = by_idiom.get(idiom, {})
            if "appeal" in own:
                fit = float(np.percentile(scores[id], 90)) if len(scores.get(id, ())) >= 10 else 0.0
                own["base"] = round(own["appeal"] - fit, 3)
        path.write_text(json.dumps(weights, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")


def main() -> None:
    """Rewrite the bases of both idioms."""
    for idiom in get_args(Idiom):
        calibrate(HOME, idiom, raw_scores(idiom, SAMPLE))


if __name__ == "__main__":
    main()
