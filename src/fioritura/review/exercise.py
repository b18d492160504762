"""The exercise that goes with a piece of advice, made from the tune with the drills of the lesson pack.

An ornament is played without and with it, in a loop; an uneven figure in dotted rhythms; a note that is out of tune as a
long note from its neighbours; a place that strays in time on one note, then as written. Where the bars hold one of the
line's hard places, what to do about that is added.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from fioritura.accompany.excerpt import excerpt
from fioritura.arrange.rendition import laid_out
from fioritura.arrange.survey import survey
from fioritura.errors import FiorituraError
from fioritura.lesson.drill import Cell, cell_at, isolated, rhythms
from fioritura.listening.advice import Advice, Subject
from fioritura.listening.words import bar_named, bars_from_to
from fioritura.notation.engraving.engrave import System, engrave_systems
from fioritura.notation.score import Score, Staff
from fioritura.players.playability import HardPlace, hardest_places
from fioritura.players.player import Player
from fioritura.players.practice import start_tempo
from fioritura.players.setting import Setting
from fioritura.review.take_review import Review
from fioritura.techniques.figure import Figure
from fioritura.theory.metre import QUARTER
from fioritura.tune import Bar, Mark, Note, Tune
from fioritura.words import Message, message

__all__ = ["Exercise", "Snippet", "exercise_for"]

STAFF_MM: Final = 5.2
_HALF_SHARE: Final = 0.47
_LOOKED_AT: Final = 12
_SLOW_SHARE: Final = 0.75


@dataclass(frozen=True, slots=True)
class Snippet:
    """A short piece of music with a caption; `is_wide` where it needs a line of its own."""

    caption: Message
    systems: tuple[System, ...]
    is_wide: bool = False


@dataclass(frozen=True, slots=True)
class Exercise:
    """What to play: pieces in order, steps in words, the tempi to begin with and to reach in beats a minute."""

    pieces: tuple[Snippet, ...]
    steps: tuple[Message, ...]
    start_tempo: int
    goal_tempo: int


def exercise_for(review: Review, advice: Advice, width_mm: float) -> Exercise | None:
    """The exercise to a piece of advice; None where the words are all there is.

    Raises:
        ToolError: the engraver is missing or failed.
    """
    return _Maker(review, advice, width_mm).exercise()


class _Maker:
    def __init__(self, review: Review, advice: Advice, width_mm: float) -> None:
        self.review, self.advice, self.width_mm = review, advice, width_mm
        self.tune = review.tune
        asked = review.asked
        self.line = asked.rendition.line if asked else self.tune.notes
        self.quarters = review.report.timing.quarters_per_minute or self.tune.quarters_per_minute
        self.level = asked.setting.level if asked else 3

    def exercise(self) -> Exercise | None:
        pieces = tuple(self._pieces())
        if not pieces:
            return None
        place = self._hard_place()
        steps = place.practice[:1] if place else ()
        beat = self.tune.metre.beat_ticks / QUARTER
        asked = self.review.asked
        goal = asked.setting.quarters_per_minute if asked else self.quarters
        start = _SLOW_SHARE * min(self.quarters, goal)
        if place:
            start = min(start, start_tempo(place.strain, self.quarters))
        return Exercise(pieces, steps, round(start / beat), round(goal / beat))

    def _pieces(self) -> Iterator[Snippet]:
        subject = self.advice.subject
        if subject is Subject.EVENNESS:
            figure = self._played_figure()
            if figure:
                cell = self._cell(laid_out(self.tune, (figure,)), _onset(self.tune, figure))
                yield self._piece(message("drill-long-short"), rhythms(cell, "long-short"))
                yield self._piece(message("drill-short-long"), rhythms(cell, "short-long"))
        elif self.advice.technique:
            figure = self._asked_figure() or self._fitting_figure()
            if figure:
                onset = _onset(self.tune, figure)
                bar = self.tune.beat_at(onset)[0]
                yield self._piece(
                    message("drill-plain", bar=bar_named(bar)), isolated(self._cell(self.tune.notes, onset))
                )
                line = laid_out(self.tune, (figure,))
                yield self._piece(message("drill-with-ornament"), isolated(self._cell(line, onset)))
        elif subject in (Subject.NOTES, Subject.FORM) and self.advice.bars:
            worst = self._bar(self.advice.bars[0])
            cell = self._cell(self.tune.notes, worst.start_ticks)
            yield self._piece(message("drill-loop", bar=bar_named(worst.number)), isolated(cell))
        elif self.advice.note is not None:
            yield from self._long_note()
        elif subject is Subject.TIME:
            yield from self._on_one_note()

    def _cell(self, line: Sequence[Note], onset: int) -> Cell:
        return cell_at(self.tune, line, onset)

    def _bar(self, number: int) -> Bar:
        return next(bar for bar in self.tune.bars if bar.number == number)

    def _piece(self, caption: Message, tune: Tune, *, is_wide: bool = False) -> Snippet:
        score = Score(replace(tune, title="", composer=""), (Staff(tune.notes, "", self.review.instrument),))
        width = self.width_mm if is_wide else self.width_mm * _HALF_SHARE
        systems = engrave_systems(score, width_mm=width, staff_mm=STAFF_MM, shows_tempo=False)
        return Snippet(caption, systems, is_wide)

    # Which figure --------------------------------------------------------------------------------------------------

    def _asked_figure(self) -> Figure | None:
        """The first figure of the technique that was asked for in the bars of the advice."""
        asked = self.review.asked.rendition.figures if self.review.asked else ()
        found = [figure for figure in asked if figure.technique == self.advice.technique]
        return next((f for f in found if self.tune.beat_at(_onset(self.tune, f))[0] in self.advice.bars), None)

    def _played_figure(self) -> Figure | None:
        for named in self.review.naming.figures:
            if named.figure and named.technique == self.advice.technique and named.bar in self.advice.bars:
                return named.figure
        return None

    def _fitting_figure(self) -> Figure | None:
        """Where the technique fits the tune best."""
        setting = Setting(self._player, self.quarters, self.review.feel)
        try:
            found = survey(self.tune, setting, (self.advice.technique,)).figures
        except FiorituraError:
            return None
        return max(found, key=lambda figure: figure.score, default=None)

    @property
    def _player(self) -> Player:
        return Player.of(self.review.instrument.id, self.level)

    def _hard_place(self) -> HardPlace | None:
        try:
            places = hardest_places(self._player, self.line, self.tune, self.quarters, _LOOKED_AT)
        except FiorituraError:
            return None
        return next((place for place in places if place.bar in self.advice.bars and place.strain > 0.6), None)

    # Notes and time ------------------------------------------------------------------------------------------------

    def _long_note(self) -> Iterator[Snippet]:
        """The note from the step below and the step above, each time held."""
        row = next((row for row in self.review.report.notes if row.pitch == self.advice.note), None)
        if row is None:
            return
        note = self.tune.notes[row.plain]
        key = self.tune.bar_at(note.onset_ticks).key
        below, above = key.step(note.pitch, -1), key.step(note.pitch, 1)
        metre = self.tune.metre
        bars, notes = [], []
        for number, other in enumerate((below, above)):
            start = number * metre.bar_ticks
            bars.append(Bar(number + 1, start, metre.bar_ticks, metre, key))
            notes.append(Note(start, metre.beat_ticks, other, marks=(Mark.SLUR_START,)))
            held = metre.bar_ticks - metre.beat_ticks
            notes.append(Note(start + metre.beat_ticks, held, note.pitch, marks=(Mark.SLUR_STOP, Mark.FERMATA)))
        tune = replace(self.tune, notes=tuple(notes), bars=tuple(bars), chords=(), tempos=(), warnings=())
        yield self._piece(message("drill-long-note", note=row.pitch), tune)

    def _on_one_note(self) -> Iterator[Snippet]:
        """The two bars that stray most, their rhythm on one note, then as written."""
        late: dict[int, float] = {}
        for row in self.review.report.notes:
            if row.late_ms is not None and row.bar:
                late[row.bar] = late.get(row.bar, 0.0) + abs(row.late_ms)
        numbers = [bar.number for bar in self.tune.bars]
        pairs = [(a, b) for a, b in pairwise(numbers) if b == a + 1 and numbers.count(a) == 1]
        pairs = [(a, b) for a, b in pairs if a in late and numbers.count(b) == 1]
        if not pairs:
            return
        first, last = max(pairs, key=lambda pair: late.get(pair[0], 0.0) + late.get(pair[1], 0.0))
        cut = replace(excerpt(self.tune, first, last), chords=())
        middle = sorted(note.pitch.midi for note in cut.notes)[len(cut.notes) // 2]
        pitch = next(note.pitch for note in cut.notes if note.pitch.midi == middle)
        flat = replace(
            cut, notes=tuple(replace(note, pitch=pitch, graces=(), marks=(), lyric="") for note in cut.notes)
        )
        yield self._piece(message("drill-one-note", bars=bars_from_to(first, last)), flat)
        yield self._piece(
            message("drill-as-written"), replace(cut, notes=tuple(replace(note, lyric="") for note in cut.notes))
        )


def _onset(tune: Tune, figure: Figure) -> int:
    return tune.notes[figure.anchors[0]].onset_ticks
