"""Set each technique's base score from its appeal.

Techniques are weighed by different features, so that their raw scores can't be compared. This script scores every
figure of a sample of real tunes and sets each technique's base so that its better places (the 90th percentile) score
just its `appeal`, a number that says in the taste file how much a player of the idiom likes it at such a place.

Run by hand after a change of weights: ``python tools/calibrate_taste.py``.
"""

from __future__ import annotations

import json
import random
from collections import defaultdict
from pathlib import Path

import numpy as np

from fioritura.arrange.survey import survey
from fioritura.arrange.taste import taste_of
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from tests.corpus_tunes import corpus_tunes

HOME = Path(__file__).parents[1] / "src" / "fioritura" / "arrange"
SAMPLE = 120


def main() -> None:
    """Rewrite the bases of both taste files."""
    tunes = random.Random("calibrate").sample(corpus_tunes(), SAMPLE)
    for idiom in ("jazz", "folk"):
        path = HOME / f"taste_{idiom}.json"
        data = json.loads(path.read_text(encoding="utf-8"))
        scores: dict[str, list[float]] = defaultdict(list)
        for tune in tunes:
            setting = Setting(Player.of("concert", 5), 90.0, "swing" if idiom == "jazz" else "straight", idiom)
            for figure in survey(tune, setting).figures:
                scores[figure.technique].append(figure.score - taste_of(idiom).base.get(figure.technique, 0.0))
        for technique, appeal in data["appeal"].items():
            fit = float(np.percentile(scores[technique], 90)) if len(scores[technique]) >= 10 else 0.0
            data["base"][technique] = round(appeal - fit, 3)
        path.write_text(json.dumps(data, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
