"""Name what was played: plain notes, techniques of the table, or slips, each with confidence and another reading.

Analysis by synthesis. The technique table itself says which figures are possible at each place (`lattice`), and one
programme finds the set of them that explains the line best (`reading`). What is left over and meets the definition of
a technique all the same (`definition`) gets its name with less confidence; the rest is called a slip.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from math import exp, isfinite
from typing import Final

import numpy as np

from fioritura.arrange.harmonise import harmonise
from fioritura.listening.align import Alignment, Pass, align
from fioritura.listening.event import Event, events_of_line, events_of_take
from fioritura.listening.lattice import Arc, offers, plain_arcs, with_asked
from fioritura.listening.leftover import Leftover
from fioritura.listening.naming import PLAIN, NamedFigure, Naming, Slip, SlipKind
from fioritura.listening.notes import Take
from fioritura.listening.reading import Heard, ReadingCosts, Use, read_line
from fioritura.listening.rejoin import rejoined, repeat_odds
from fioritura.listening.tempo_map import long_share, straightened
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_of_sign
from fioritura.theory.metre import QUARTER
from fioritura.tune import Mark, Note, Tune

__all__ = ["NamedFigure", "Naming", "Slip", "SlipKind", "name_events", "name_line", "name_take"]

_NEAR_TICKS: Final = QUARTER / 4 + 30
_CLEAR: Final = 0.8
"""An added note that was heard less clearly is not held against the player."""
_SOUND: Final = ReadingCosts(length=0.2, length_limit=0.5, onset=0.4)
_WRITTEN: Final = ReadingCosts(
    wrong_pitch=4.0, wrong_added=6.0, extra=4.0, extra_grace=4.0, left_out=4.0, sign=5.0, grace=2.5, figure=0.4
)
"""In a written line slips are rare."""
_SOUND_ONSET_SEC: Final = 0.035


def name_line(tune: Tune, line: Sequence[Note]) -> Naming:
    """Name the ornaments of a written line over a plain tune.

    Args:
        tune: the plain tune as written; chords are inferred where it has none.
        line: another setting or a rendition, at the same scale of time; its key and its repeats may differ.
    """
    return name_events(tune, events_of_line(line), is_written=True)


def name_take(tune: Tune, take: Take, asked: Sequence[Figure] = (), *, unsigned: Sequence[int] = ()) -> Naming:
    """Name the ornaments of a recording of a plain tune, at any tempo.

    Of several names for what was heard, that of a figure that was `asked` for is the likelier. `unsigned` are the tune's
    MIDI numbers without its key signature (see `align`).
    """
    events = events_of_take(take)
    if any(isfinite(odds) for odds in repeat_odds(events)):
        alignment = align(tune, events, unsigned=unsigned)
        is_tune = alignment.is_this_tune
        events = rejoined(events, _Namer(alignment, False, asked).explained() if is_tune else frozenset())
    return name_events(tune, events, asked=asked, unsigned=unsigned)


def name_events(
    tune: Tune,
    events: Sequence[Event],
    *,
    is_written: bool = False,
    asked: Sequence[Figure] = (),
    unsigned: Sequence[int] = (),
) -> Naming:
    """Align events with the tune and name them."""
    alignment = align(tune, events, is_written=is_written, unsigned=unsigned)
    if not alignment.is_this_tune:
        return Naming(alignment, (), ())
    return _Namer(alignment, is_written, asked).naming()


class _Namer:
    def __init__(self, alignment: Alignment, is_written: bool, asked: Sequence[Figure] = ()) -> None:
        tune = alignment.tune
        self.tune = tune if any(span.chord for span in tune.chords) else harmonise(tune)
        self.alignment, self.is_written = alignment, is_written
        self.share = 0.5 if is_written else long_share(_lateness(alignment))
        self.costs = _WRITTEN if is_written else self._sound_costs()
        self.offers = with_asked(self.tune, offers(self.tune), asked)
        self.plain = list(plain_arcs(self.tune.notes))

    def _sound_costs(self) -> ReadingCosts:
        ticks = _SOUND_ONSET_SEC * self.alignment.ticks_per_unit
        return replace(_SOUND, onset_ticks=max(_SOUND.onset_ticks, ticks))

    def explained(self) -> frozenset[int]:
        """The events that the best reading explains."""
        passages = (_Passage(self, one, number) for number, one in enumerate(self.alignment.passes) if one.spans)
        return frozenset().union(*(passage.explained for passage in passages))

    def naming(self) -> Naming:
        figures: list[NamedFigure] = []
        slips: list[Slip] = []
        standing: list[Mapping[int, int]] = []
        for number, one in enumerate(self.alignment.passes, start=1):
            if one.spans:
                passage = _Passage(self, one, number)
                figures += passage.figures()
                slips += passage.slips
                standing.append(passage.standing)
        figures.sort(key=lambda named: (named.passage, named.anchors[0], named.events))
        return Naming(self.alignment, tuple(figures), tuple(slips), tuple(standing), round(self.share, 3))


class _Passage:
    """One passage of the line, read."""

    def __init__(self, namer: _Namer, one: Pass, number: int) -> None:
        self.namer, self.tune, self.number = namer, namer.tune, number
        self.first_event = one.first_event
        self.heard = self._heard(one)
        self.arcs = self._arcs()
        self.slots = 2 * one.spans[0].plain, 2 * one.spans[-1].plain + 2
        self.reading = read_line(self.heard, self.arcs, self.slots, namer.costs)
        self.standing = self._standing()
        self.slips: list[Slip] = []

    def _heard(self, one: Pass) -> list[Heard]:
        """The passage's events at the tune's pitch, their times in ticks, swing taken out."""
        onsets, ends = one.ticks, one.end_ticks
        if self.namer.share != 0.5:
            onsets, ends = (straightened(ticks, self.namer.share) for ticks in (onsets, ends))
        events = self.namer.alignment.events[one.first_event : one.stop_event]
        alignment, first = self.namer.alignment, one.first_event
        return [
            Heard(
                float(onset),
                float(end),
                alignment.midi(number),
                event.is_grace,
                event.marks,
                None if self.namer.is_written else event.duration,
                event.confidence,
                odds,
            )
            for number, (event, onset, end, odds) in enumerate(
                zip(events, onsets, ends, repeat_odds(events), strict=True), start=first
            )
        ]

    def _arcs(self) -> dict[int, list[Arc]]:
        """The plain arcs, and those of figures for which at least half of the notes can be heard at their place."""
        found: dict[int, list[Arc]] = {}
        for arc in self.namer.plain:
            found.setdefault(arc.start, []).append(arc)
        onsets = np.array([one.onset for one in self.heard])
        for offer in self.namer.offers:
            if self._is_likely(offer.arc, onsets):
                found.setdefault(offer.arc.start, []).append(offer.arc)
        return found

    def _is_likely(self, arc: Arc, onsets: np.ndarray) -> bool:
        first, last = arc.span
        near = self.heard[np.searchsorted(onsets, first - QUARTER) : np.searchsorted(onsets, last + _NEAR_TICKS)]
        signs = arc.tail_marks.union(*(note.marks for note in arc.wanted))
        if signs:
            return any(signs & one.marks for one in near)
        heard = 0
        for note in arc.wanted:
            reach = _NEAR_TICKS + (QUARTER / 4 if note.is_grace else 0)
            heard += any(one.midi == note.midi and abs(one.onset - note.onset) <= reach for one in near)
        return 2 * heard >= len(arc.wanted)

    def _standing(self) -> dict[int, int]:
        pairs = (pair for use in self.reading.uses for pair in use.events)
        return {note.plain: event for note, event in pairs if note.plain is not None and event is not None}

    @property
    def explained(self) -> frozenset[int]:
        """Events that the reading explains, counted in the whole line."""
        pairs = (pair for use in self.reading.uses for pair in use.events)
        return frozenset(self._event(event) for _, event in pairs if event is not None)

    def _event(self, number: int) -> int:
        """The number of a heard event in the whole line."""
        return number + self.first_event

    def figures(self) -> list[NamedFigure]:
        """All figures; notes that none explains are written down as slips."""
        found = [self._named(number) for number, use in enumerate(self.reading.uses) if use.arc.offer is not None]
        found += self._signs()
        place = self.first_event, self.number
        left = Leftover(self.tune, self.heard, self.standing, set(self.reading.extras), found, *place)
        found = left.figures()
        self._note_slips(left.extras)
        self.standing = {plain: self._event(event) for plain, event in self.standing.items()}
        return found

    def _named(self, number: int) -> NamedFigure:
        use = self.reading.uses[number]
        assert use.arc.offer is not None
        figure = self.namer.offers[use.arc.offer].figure
        own = [event for note, event in use.events if event is not None and note is not use.arc.opens]
        if figure.marks or not own:
            own = [event for anchor in figure.anchors if (event := self.standing.get(anchor)) is not None]
        start = figure.notes[0].onset_ticks if figure.notes else self.tune.notes[figure.anchors[0]].onset_ticks
        other, margin = self._other_reading(number)
        sure = 1 / (1 + exp(-margin))
        bar, beat = self.tune.beat_at(start)
        return NamedFigure(
            figure.technique,
            bar,
            round(beat, 4),
            round(sure, 3),
            other,
            round(1 - sure, 3),
            figure.anchors,
            tuple(map(self._event, own)),
            self.number,
            figure=figure,
        )

    def _other_reading(self, number: int) -> tuple[str, float]:
        """The best reading of the surroundings without the technique, and how much more it costs."""
        uses = self.reading.uses
        technique = self._technique(uses[number])
        first, last = _even_before(uses, number), _even_after(uses, number)
        slots = uses[first].arc.start, uses[last].arc.stop
        start, stop = uses[first].first, uses[last].stop
        near = self.heard[start:stop]
        inside = {slot: self.arcs.get(slot, []) for slot in range(*slots)}
        best = read_line(near, inside, slots, self.namer.costs)
        claimed = range(uses[number].arc.start, uses[number].arc.stop)
        without = {
            slot: [arc for arc in arcs if not self._is_of(arc, technique, claimed)] for slot, arcs in inside.items()
        }
        other = read_line(near, without, slots, self.namer.costs)
        names = [self._technique(use) for use in other.uses if _overlaps(use.arc, claimed)]
        return next((name for name in names if name), PLAIN), other.cost - best.cost

    def _technique(self, use: Use) -> str:
        return "" if use.arc.offer is None else self.namer.offers[use.arc.offer].figure.technique

    def _is_of(self, arc: Arc, technique: str, claimed: range) -> bool:
        if arc.offer is None or not _overlaps(arc, claimed):
            return False
        return self.namer.offers[arc.offer].figure.technique == technique

    def _signs(self) -> Iterator[NamedFigure]:
        """Signs of the line that neither the tune nor a figure of the table has."""
        claimed = {
            (plain, mark)
            for use in self.reading.uses
            if use.arc.offer is not None
            for plain in self.namer.offers[use.arc.offer].figure.anchors
            for mark in _marks_of(self.namer.offers[use.arc.offer].figure)
        }
        for plain, event in self.standing.items():
            for mark in sorted(self.heard[event].marks):
                technique = technique_of_sign(mark)
                if technique is None or (technique.is_sign and not self.namer.is_written):
                    continue
                if mark not in self.tune.notes[plain].marks and (plain, mark) not in claimed:
                    bar, beat = self.tune.beat_at(self.tune.notes[plain].onset_ticks)
                    place = (plain,), (self._event(event),), self.number
                    yield NamedFigure(technique.id, bar, round(beat, 4), 0.99, PLAIN, 0.01, *place)

    def _note_slips(self, extras: Iterable[int]) -> None:
        for note, event in (pair for use in self.reading.uses for pair in use.events):
            if note.plain is None:
                continue
            if event is None:
                if not self._is_held(note.plain):
                    self._slip(SlipKind.LEFT_OUT, note.onset, note.plain, None)
            elif self.heard[event].midi != note.midi:
                self._slip(SlipKind.WRONG, note.onset, note.plain, event)
        for event in sorted(extras):
            if self.heard[event].confidence >= _CLEAR:
                self._slip(SlipKind.ADDED, self.heard[event].onset, None, event)

    def _is_held(self, plain: int) -> bool:
        """True where the note before, of the same pitch, sounds on: the ear can't tell that it was not struck again."""
        if self.namer.is_written or plain == 0:
            return False
        before, note = self.tune.notes[plain - 1 : plain + 1]
        event = self.standing.get(plain - 1)
        if event is None or before.pitch.midi != note.pitch.midi or self.heard[event].midi != note.pitch.midi:
            return False
        return self.heard[event].end > note.onset_ticks + note.duration_ticks / 2

    def _slip(self, kind: SlipKind, ticks: float, plain: int | None, event: int | None) -> None:
        bar, beat = self.tune.beat_at(max(0, round(ticks)))
        number = None if event is None else self._event(event)
        self.slips.append(Slip(kind, bar, round(beat, 3), plain, number, self.number))


def _marks_of(figure: Figure) -> Iterator[Mark]:
    """The signs that a figure sets, on a plain note or on notes of its own."""
    yield from figure.marks
    for note in figure.notes:
        yield from note.marks


def _overlaps(arc: Arc, slots: range) -> bool:
    return arc.start < slots.stop and slots.start < arc.stop


def _even_before(uses: Sequence[Use], number: int) -> int:
    """The last use, one note or more before, that starts from an even slot."""
    for place in range(number - 1, -1, -1):
        if uses[place].arc.start % 2 == 0 and uses[place].arc.start <= uses[number].arc.start - 2:
            return place
    return 0


def _even_after(uses: Sequence[Use], number: int) -> int:
    """The first use, one note or more after, that leads to an even slot."""
    for place in range(number + 1, len(uses)):
        if uses[place].arc.stop % 2 == 0 and uses[place].arc.stop >= uses[number].arc.stop + 2:
            return place
    return len(uses) - 1


def _lateness(alignment: Alignment) -> Iterator[tuple[int, float]]:
    """For each note that was played right, its plain tick within the quarter and how late it came."""
    notes = alignment.tune.notes
    for one in alignment.passes:
        for span in one.spans:
            if span.event is not None and span.is_right:
                yield notes[span.plain].onset_ticks % QUARTER, span.late_ticks
