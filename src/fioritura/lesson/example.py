"""Examples: for each technique that a tune offers, the phrase of the tune that shows it best."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from fioritura.accompany.excerpt import excerpt
from fioritura.arrange.rendition import Rendition, laid_out
from fioritura.arrange.survey import Survey
from fioritura.notation.score import Label, Score, Staff
from fioritura.players.instruments import Instrument
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import all_techniques
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import QUARTER
from fioritura.tune import Bar, Note, Tune

__all__ = ["Example", "bars_around", "example_score", "examples_of", "sounding_window"]

_STANDS_BONUS: Final = 1.0
_SAME_BARS_COST: Final = 0.6
_SYSTEM_QUARTERS: Final = 14.0
"""As much music as one system of two staves holds at reading size (common practice: three to four bars)."""


@dataclass(frozen=True)
class Example:
    """A technique shown in a phrase of the tune.

    `tune` is the plain phrase as a tune of its own and `line` the same with the one figure, whose notes are those
    with figure number 0; `mark` is where it is heard first, in ticks of the phrase. `places` counts where else the
    tune offers the technique, `bars` are the bars in which the full performance uses it.
    """

    number: int
    technique: Technique
    figure: Figure
    first_bar: int
    last_bar: int
    tune: Tune
    line: tuple[Note, ...]
    mark: int
    places: int
    bars: tuple[int, ...]

    @property
    def name(self) -> str:
        """For file names: ``"03-scoop"``."""
        return f"{self.number:02}-{self.technique.id}"

    @property
    def figure_notes(self) -> tuple[int, ...]:
        """Numbers of the notes of `line` that the figure made, moved or marked."""
        return tuple(number for number, note in enumerate(self.line) if note.figures)


def examples_of(
    found: Survey, rendition: Rendition, is_shown: Callable[[Figure], bool] = lambda figure: True
) -> tuple[Example, ...]:
    """One example for each technique of which a figure `is_shown`: first those that the performance uses, then the others;
    easiest first in both.

    Figures of the performance come before others, and bars that no other example has shown before those it has.
    """
    standing = {figure.id for figure in rendition.figures}
    by_technique: dict[str, list[Figure]] = {}
    for figure in filter(is_shown, found.figures):
        by_technique.setdefault(figure.technique, []).append(figure)
    shown: Counter[int] = Counter()
    examples: list[Example] = []

    def worth(figure: Figure) -> float:
        bar = found.tune.beat_at(_onset(found.tune, figure))[0]
        return figure.score + _STANDS_BONUS * (figure.id in standing) - _SAME_BARS_COST * shown[bar]

    in_use = {figure.technique for figure in rendition.figures}
    order = sorted(all_techniques().items(), key=lambda item: item[0] not in in_use)
    for id, technique in order:
        if id not in by_technique:
            continue
        figure = max(by_technique[id], key=worth)
        shown[found.tune.beat_at(_onset(found.tune, figure))[0]] += 1
        used = [f for f in rendition.figures if f.technique == id]
        bars = sorted({found.tune.beat_at(_onset(found.tune, f))[0] for f in used})
        places = len({f.anchors[0] for f in by_technique[id]})
        examples.append(_example(len(examples) + 1, technique, figure, found.tune, places, tuple(bars)))
    return tuple(examples)


def _example(
    number: int, technique: Technique, figure: Figure, tune: Tune, places: int, bars: tuple[int, ...]
) -> Example:
    start, end = sounding_window(tune, figure)
    line = laid_out(tune, (figure,))
    first, last = bars_around(tune, start, end)
    phrase = excerpt(tune, first, last)
    cut = excerpt(replace(tune, notes=line), first, last).notes
    shift = next(bar.start_ticks for bar in tune.bars if bar.number == first)
    return Example(number, technique, figure, first, last, phrase, cut, _onset(tune, figure) - shift, places, bars)


def _onset(tune: Tune, figure: Figure) -> int:
    return figure.notes[0].onset_ticks if figure.notes else tune.notes[figure.anchors[0]].onset_ticks


def sounding_window(tune: Tune, figure: Figure) -> tuple[int, int]:
    """From where a figure is heard to the end of the last plain note that it leads to, in ticks."""
    last = tune.notes[figure.last_slot // 2]
    return min(_onset(tune, figure), tune.notes[figure.anchors[0]].onset_ticks), max(
        figure.end_ticks, last.onset_ticks + 1
    )


def bars_around(tune: Tune, start: int, end: int, quarters: float = _SYSTEM_QUARTERS) -> tuple[int, int]:
    """First and last bar number of a stretch of music around a place that fills one system.

    It never goes over a repeat sign or from one ending into another, grows by the bar before where a phrase is left
    off and by the bar after where it is entered, and begins with a note, not in the middle of one.
    """
    bars = tune.bars
    first = bars.index(tune.bar_at(start))
    last = max(first, bars.index(tune.bar_at(end - 1)))
    room = quarters * QUARTER
    while True:
        grown = [
            (lo, hi)
            for lo, hi in ((first - 1, last), (first, last + 1))
            if lo >= 0
            and hi < len(bars)
            and bars[hi].end_ticks - bars[lo].start_ticks <= room
            and all(_goes_on(bars[n], bars[n + 1]) for n in range(lo, hi))
        ]
        if not grown:
            break
        first, last = max(
            grown, key=lambda span: (_beginning(tune, bars[span[0]]), span[0] < first and first % 2 == 1)
        )
    return bars[first].number, bars[last].number


def _goes_on(bar: Bar, following: Bar) -> bool:
    is_other_ending = bar.endings and following.endings and bar.endings != following.endings
    return not (bar.repeats or following.opens_repeat or is_other_ending or bar.jumps)


def _beginning(tune: Tune, bar: Bar) -> bool:
    """True when no note is held into the bar and one begins in it."""
    held = any(note.onset_ticks < bar.start_ticks < note.end_ticks for note in tune.notes)
    return not held and any(bar.start_ticks <= note.onset_ticks < bar.end_ticks for note in tune.notes)


def example_score(example: Example, instrument: Instrument, label: str, names: Sequence[str]) -> Score:
    """Plain over ornamented, named by `names`, the figure labelled."""
    plain, ornamented = names
    staves = (
        Staff(example.tune.notes, plain, instrument),
        Staff(example.line, ornamented, instrument, (Label(example.mark, label, 0),), shows_chords=False),
    )
    return Score(example.tune, staves)
