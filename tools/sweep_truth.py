"""Look for reasons that do not hold and for notes that read badly: ``python -m tools.sweep_truth FILE ...``.

Takes MusicXML, ABC and MIDI files of your own; prints what it finds and ends with 1 where it finds anything.
"""

from __future__ import annotations

import argparse
import random
from pathlib import Path

from fioritura.arrange.prepare import prepared
from fioritura.errors import FiorituraError
from fioritura.notation.read import read_tune
from fioritura.players.instruments import instrument_named
from fioritura.players.setting import Idiom
from fioritura.words import say
from tests.judged import PARTS, offers, unread
from tests.reasons import false_reasons

IDIOMS: tuple[Idiom, ...] = ("jazz", "folk")


def main() -> int:
    """Sweep the files."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("files", nargs="+", type=Path)
    parser.add_argument("--figures", type=int, default=200, help="figures a tune and idiom that are read")
    parser.add_argument("--parts", action="store_true", help="read the parts of five instruments, too")
    options = parser.parse_args()
    judged = read = 0
    faults: list[str] = []
    for path in options.files:
        try:
            tune = prepared(read_tune(path), instrument_named("concert"))
        except FiorituraError as error:
            print(f"{path.name} left out: {error}")
            continue
        for idiom in IDIOMS:
            setting, figures = offers(tune, idiom)
            judged += len(figures)
            faults += [f"{path.name}: {say(figure.why)}" for figure in false_reasons(tune, setting, figures)]
            drawn = random.Random(len(figures)).sample(figures, min(options.figures, len(figures)))
            read += len(drawn)
            for figure in drawn:
                faults += [f"{path.name}: {fault}" for fault in unread(tune, figure)]
                if options.parts:
                    faults += [f"{path.name}, part: {fault}" for fault in unread(tune, figure, PARTS)]
    print("\n".join(faults))
    print(f"{judged} reasons judged, {read} figures read, {len(faults)} faults")
    return bool(faults)


if __name__ == "__main__":
    raise SystemExit(main())
