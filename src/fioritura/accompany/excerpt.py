"""Some bars of a tune as a tune of their own, to be looped."""

from __future__ import annotations

import re
from dataclasses import replace

from fioritura.errors import OptionError
from fioritura.tune import Tune

__all__ = ["bar_range", "excerpt"]


def bar_range(text: str) -> tuple[int, int]:
    """Read ``"5-8"`` or ``"5"``.

    Raises:
        OptionError: it is not a range of bars.
    """
    match = re.fullmatch(r"\s*(\d{1,9})\s*(?:[-–]\s*(\d{1,9}))?\s*", text)
    if match:
        first, last = int(match[1]), int(match[2] or match[1])
        if first <= last:
            return first, last
    raise OptionError("no-bar-range", given=text)


def excerpt(tune: Tune, first: int, last: int) -> Tune:
    """Bars `first` to `last` by their printed numbers, without repeat signs.

    A note that is held into the excerpt is left out, one that is held beyond its end is cut there; no final bar line stands
    where the tune goes on.

    Raises:
        OptionError: the tune has no such bars.
    """
    numbers = [bar.number for bar in tune.bars]
    if first not in numbers or last not in numbers:
        raise OptionError("bars-not-there", first=first, last=last, low=numbers[0], high=numbers[-1])
    bars = tune.bars[numbers.index(first) : len(numbers) - numbers[::-1].index(last)]
    start, end = bars[0].start_ticks, bars[-1].end_ticks
    tempos = [tempo for tempo in tune.tempos if tempo.onset_ticks <= start][-1:]
    tempos += [tempo for tempo in tune.tempos if start < tempo.onset_ticks < end]
    spans = [
        (span, max(span.onset_ticks, start), min(span.end_ticks, end))
        for span in tune.chords
        if span.onset_ticks < end and span.end_ticks > start
    ]
    last_bar = replace(bars[-1], goes_on=bars[-1] is not tune.bars[-1])
    return replace(
        tune,
        notes=tuple(
            replace(
                note,
                onset_ticks=note.onset_ticks - start,
                duration_ticks=min(note.end_ticks, end) - note.onset_ticks,
            )
            for note in tune.notes
            if start <= note.onset_ticks < end
        ),
        bars=tuple(
            replace(bar, start_ticks=bar.start_ticks - start, opens_repeat=False, repeats=0, endings=(), jumps=())
            for bar in (*bars[:-1], last_bar)
        ),
        chords=tuple(
            replace(span, onset_ticks=onset - start, duration_ticks=stop - onset) for span, onset, stop in spans
        ),
        tempos=tuple(replace(tempo, onset_ticks=max(0, tempo.onset_ticks - start)) for tempo in tempos),
    )
