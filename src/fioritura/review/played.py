"""What was played, written over the tune's own bars: each passage with the plain tune, or what was asked, below it.

Named figures stand as the technique table writes them, wrong notes at their own pitch, notes left out as rests. Added
notes that are no figure of the table are written as grace notes where they are quick, else on the nearest sixteenth.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from fioritura.accompany.excerpt import excerpt
from fioritura.arrange.rendition import laid_out
from fioritura.lesson.edition import sounding_start
from fioritura.listening.align import Pass
from fioritura.listening.naming import NamedFigure, SlipKind
from fioritura.listening.rows import FigureRow, Status
from fioritura.listening.tempo_map import straightened
from fioritura.notation.score import Label, Score, Staff
from fioritura.review.take_review import Review
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.tune import Note
from fioritura.words import message, say

__all__ = ["Passage", "passages"]

QUICK_SEC: Final = 0.11
"""An added note up to this length is written as a grace note."""

Sign = tuple[int, int | None]
"""A written sign of the played staff: number of the note, and of the grace note before it (None for the note)."""


@dataclass(frozen=True)
class Passage:
    """One passage of a take in its bars. Numbers count the notes of the staff that they belong to.

    `events` holds, for each sign that was heard, the event that it is. `figures` are the numbers of the played notes
    of each named ornament with its row of the report, `missed` those of the asked notes of ornaments not heard.
    """

    number: int
    first_bar: int
    last_bar: int
    score: Score
    events: dict[Sign, int]
    figures: tuple[tuple[FigureRow, tuple[int, ...]], ...]
    missed: tuple[tuple[int, ...], ...]
    wrong: tuple[int, ...]
    left_out: tuple[int, ...]


def passages(review: Review) -> Iterator[Passage]:
    """The passages of a take, in order."""
    passes = [one for one in review.naming.alignment.passes if one.spans]
    for number, one in enumerate(passes, start=1):
        yield _Writer(review, one, number).passage()


class _Writer:
    def __init__(self, review: Review, one: Pass, number: int) -> None:
        self.review, self.one, self.number = review, one, number
        self.tune, self.naming = review.tune, review.naming
        self.alignment = review.naming.alignment
        self.standing = review.naming.standing[number - 1]
        self.own = [named for named in review.naming.figures if named.passage == number]
        self.slips = [slip for slip in review.naming.slips if slip.passage == number]
        first, last = one.spans[0].plain, one.spans[-1].plain
        self.plain_range = range(first, last + 1)
        ticks = one.ticks
        self.ticks = straightened(ticks, review.naming.long_share) if review.naming.long_share != 0.5 else ticks

    def passage(self) -> Passage:
        tune = self.tune
        line = self._with_added(self._line())
        below = self._below()
        bars = [tune.bar_at(tune.notes[plain].onset_ticks) for plain in (self.plain_range[0], self.plain_range[-1])]
        first, last = (bar.number for bar in bars)
        start = next(bar.start_ticks for bar in tune.bars if bar.number == first)
        frame = excerpt(tune, first, last)
        end = start + frame.duration_ticks
        line = [note for note in line if start <= note.onset_ticks < end]
        below = [note for note in below if start <= note.onset_ticks < end]
        rows = [row for row in self.review.report.figures if row.passage == self.number]
        figures = tuple((row, self._notes_of(row, line)) for row in rows if row.status is not Status.MISSED)
        labels = tuple(self._labels(figures, line, start))
        name = say(message("staff-asked") if self.review.asked else message("staff-plain"))
        staves = (
            Staff(self._cut(line, first, last), say(message("staff-played")), self.review.instrument, labels),
            Staff(
                self._cut(below, first, last),
                name,
                self.review.instrument,
                self._asked_labels(start, end),
                shows_chords=False,
            ),
        )
        wrong = {slip.plain for slip in self.slips if slip.kind is SlipKind.WRONG}
        left_out = {slip.plain for slip in self.slips if slip.kind is SlipKind.LEFT_OUT}
        missed_at = {row.anchor: row for row in rows if row.status is Status.MISSED}
        return Passage(
            self.number,
            first,
            last,
            Score(replace(frame, title="", composer=""), staves),
            self._events(line),
            figures,
            tuple(self._asked_notes(row, below) for row in missed_at.values()),
            tuple(n for n, note in enumerate(line) if note.anchor in wrong and not note.figures),
            tuple(n for n, note in enumerate(below) if note.anchor in left_out),
        )

    # The played line -----------------------------------------------------------------------------------------------

    def _line(self) -> list[Note]:
        """Figures of the table over the plain notes, with wrong and left-out notes; numbers count `self._exact`."""
        plain = replace(self.tune, notes=tuple(replace(note, lyric="") for note in self.tune.notes))
        written = laid_out(plain, [named.figure for named in self._exact if named.figure is not None])
        wrong = {slip.plain: slip.event for slip in self.slips if slip.kind is SlipKind.WRONG}
        left_out = {slip.plain for slip in self.slips if slip.kind is SlipKind.LEFT_OUT}
        found = []
        for note in written:
            is_figure = bool(note.figures)
            if note.anchor is not None and note.anchor not in self.plain_range:
                continue
            if note.anchor in left_out and not is_figure:
                continue
            event = wrong.get(note.anchor)
            if event is not None and not is_figure:
                key = self.tune.bar_at(note.onset_ticks).key
                note = replace(note, pitch=key.spell(self._midi(event)))
            found.append(note)
        return found

    @property
    def _exact(self) -> list[NamedFigure]:
        return [named for named in self.own if named.figure is not None]

    def _midi(self, event: int) -> int:
        return self.alignment.events[event].midi - self.alignment.semitones

    def _with_added(self, line: list[Note]) -> list[Note]:
        """The line with the added notes that no figure of the table explains."""
        loose = {event for named in self.own if named.figure is None for event in named.events}
        loose |= {slip.event for slip in self.slips if slip.kind is SlipKind.ADDED and slip.event is not None}
        for event in sorted(loose - set(self.standing.values())):
            played = self.alignment.events[event]
            at = max(0, round(float(self.ticks[event - self.one.first_event])))
            pitch = self.tune.bar_at(at).key.spell(self._midi(event))
            if played.duration > QUICK_SEC:
                placed = _placed(line, round(at / SIXTEENTH) * SIXTEENTH)
                if placed is not None:
                    before, onset = placed
                    end = line[before].end_ticks
                    line[before] = replace(line[before], duration_ticks=onset - line[before].onset_ticks)
                    line.insert(before + 1, Note(onset, end - onset, pitch))
                    continue
            after = next((n for n, note in enumerate(line) if note.onset_ticks > at - EIGHTH / 4), None)
            if after is not None:
                line[after] = replace(line[after], graces=(*line[after].graces, pitch))
        return line

    def _cut(self, line: Sequence[Note], first: int, last: int) -> tuple[Note, ...]:
        return excerpt(replace(self.tune, notes=tuple(line)), first, last).notes

    def _notes_of(self, row: FigureRow, line: Sequence[Note]) -> tuple[int, ...]:
        """The numbers of the notes that an ornament is written with."""
        for number, named in enumerate(self._exact):
            if named.technique == row.technique and named.anchors[0] == row.anchor:
                return tuple(n for n, note in enumerate(line) if number in note.figures)
        loose = [one for one in self.own if (one.technique, one.anchors[0]) == (row.technique, row.anchor)]
        anchors = loose[0].anchors if loose else (row.anchor,)
        places = [n for n, note in enumerate(line) if note.anchor in anchors]
        return tuple(range(places[0], places[-1] + 1)) if places else ()

    def _labels(
        self, figures: Sequence[tuple[FigureRow, tuple[int, ...]]], line: Sequence[Note], start: int
    ) -> Iterator[Label]:
        for number, (row, notes) in enumerate(figures):
            if notes:
                yield Label(line[notes[0]].onset_ticks - start, say(technique_named(row.technique).label), number)

    # What stands below ---------------------------------------------------------------------------------------------

    def _below(self) -> list[Note]:
        asked = self.review.asked
        if asked:
            return [replace(note, lyric="") for note in asked.rendition.line]
        return [replace(note, anchor=n, lyric="") for n, note in enumerate(self.tune.notes)]

    def _asked_labels(self, start: int, end: int) -> tuple[Label, ...]:
        if not self.review.asked:
            return ()
        figures = self.review.asked.rendition.figures
        places = [(n, sounding_start(self.tune, figure), figure) for n, figure in enumerate(figures)]
        return tuple(
            Label(at - start, say(technique_named(figure.technique).label), n)
            for n, at, figure in places
            if start <= at < end
        )

    def _asked_notes(self, row: FigureRow, below: Sequence[Note]) -> tuple[int, ...]:
        if not self.review.asked:
            return ()
        numbers = {
            n
            for n, figure in enumerate(self.review.asked.rendition.figures)
            if figure.technique == row.technique and figure.anchors[0] == row.anchor
        }
        return tuple(n for n, note in enumerate(below) if numbers.intersection(note.figures))

    # Which event is which sign -------------------------------------------------------------------------------------

    def _events(self, line: Sequence[Note]) -> dict[Sign, int]:
        """Signs and events between two notes that stand for plain ones are paired in order, where they are as many."""
        signs: list[Sign] = []
        for number, note in enumerate(line):
            signs += [(number, grace) for grace in range(len(note.graces))]
            signs.append((number, None))
        fixed: list[tuple[int, int]] = []
        seen: set[int] = set()
        for place, (number, grace) in enumerate(signs):
            anchor = line[number].anchor
            if grace is None and anchor is not None and anchor in self.standing and anchor not in seen:
                seen.add(anchor)
                event = self.standing[anchor]
                if not fixed or event > fixed[-1][1]:
                    fixed.append((place, event))
        found = {signs[place]: event for place, event in fixed}
        edges = [(-1, self.one.first_event - 1), *fixed, (len(signs), self.one.stop_event)]
        for (place, event), (next_place, next_event) in pairwise(edges):
            if next_place - place == next_event - event:
                found.update({signs[place + step]: event + step for step in range(1, next_place - place)})
        return found


def _placed(line: Sequence[Note], onset: int) -> tuple[int, int] | None:
    """The note that sounds at a place, and where another may begin within it; None where there is no room."""
    for number, note in enumerate(line):
        if note.onset_ticks <= onset < note.end_ticks and note.duration_ticks > SIXTEENTH:
            inside = max(onset, note.onset_ticks + SIXTEENTH)
            return (number, inside) if inside < note.end_ticks else None
    return None
