"""Bars that come again note for note: the literal repeats of which most forms are made.

A tune is read bar by bar, as a text is compressed: where bars from here on are the same as earlier ones, note for note
and in their places, the longest such stretch is a repeat of them. Stretches of fewer than three bars are motifs, not
sections. A stretch that begins or ends a bar or two off the four-bar grid of its section is drawn out to it: sections
differ in how they are led into and closed more often than in where they begin and end.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from fioritura.tune import Tune

__all__ = ["Repeat", "repeats"]

FEWEST_BARS: Final = 3
GRID_BARS: Final = 4


@dataclass(frozen=True, slots=True)
class Repeat:
    """The bars from `start_ticks` to `end_ticks` are those from `source_ticks` on, heard again; one or two at either end
    may differ."""

    source_ticks: int
    start_ticks: int
    end_ticks: int


def repeats(tune: Tune) -> tuple[Repeat, ...]:
    """The literal repeats of a tune in order; none overlaps another, and each repeats what was heard first."""
    bars = [bar for bar in tune.bars if not (bar.number == 0 or bar.is_pickup)]
    if not bars:
        return ()
    content: dict[int, list[tuple[int, int, int]]] = {}
    for note in tune.notes:
        start = tune.bar_at(note.onset_ticks).start_ticks
        content.setdefault(start, []).append((note.onset_ticks - start, note.duration_ticks, note.pitch.midi))
    texts = [(bar.duration_ticks, tuple(content.get(bar.start_ticks, ()))) for bar in bars]
    heard: dict[object, list[int]] = {}
    found: list[Repeat] = []
    here = done = 0
    while here < len(texts):
        lengths = {earlier: _common(texts, earlier, here) for earlier in heard.get(texts[here], ())}
        source = max(lengths, key=lambda earlier: (lengths[earlier], -earlier), default=here)
        count = lengths.get(source, 0)
        is_told = len({text for text in texts[here : here + count] if text[1]}) > 1
        if count < FEWEST_BARS or not is_told:
            heard.setdefault(texts[here], []).append(here)
            here += 1
            continue
        start, stop = here, here + count
        if (here - source) % GRID_BARS == 0:
            start, stop = (here + 1) // GRID_BARS * GRID_BARS, (here + count + 2) // GRID_BARS * GRID_BARS
            start = start if done <= start < stop and source + start - here >= 0 else here
            stop = stop if start < stop <= len(bars) else here + count
        first, last = bars[start], bars[stop - 1]
        found.append(Repeat(bars[source + start - here].start_ticks, first.start_ticks, last.end_ticks))
        here, done = here + count, stop
    return tuple(found)


def _common(texts: list[tuple[int, tuple[tuple[int, int, int], ...]]], one: int, other: int) -> int:
    """How many bars from two places on are the same, before the first stretch runs into the second."""
    count = 0
    while one + count < other and other + count < len(texts) and texts[one + count] == texts[other + count]:
        count += 1
    return count
