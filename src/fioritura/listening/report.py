"""The report on a take: what was asked and done, pitch, time, evenness and level, as plain values.

Everything is measured against the plain tune at the player's own tempo and tuning. Cents are those above (sharp) or
below (flat) equal temperament on the player's own A, milliseconds those behind (late) or before (early) the smooth
course of the player's own beat. What happened is told from these (`told_form`, `told_notes`, `told_time`, `told_tone`).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import chain
from math import inf
from statistics import median
from typing import Final

import numpy as np

from fioritura.listening.align import Pass
from fioritura.listening.calibration import Claim, calibrated
from fioritura.listening.course import Course, swung_onset
from fioritura.listening.evidence import missed_evidence, slip_evidence
from fioritura.listening.happening import LEAST, SURE, Happening
from fioritura.listening.material import Material
from fioritura.listening.name import name_take
from fioritura.listening.naming import PLAIN, NamedFigure, Naming, Slip, SlipKind
from fioritura.listening.notes import PlayedNote, Take
from fioritura.listening.rows import (
    BeatRow,
    Evenness,
    FigureRow,
    Level,
    NoteRow,
    PitchRow,
    Report,
    SlipRow,
    Status,
    Timing,
)
from fioritura.listening.told_form import FEWEST_UNPLAYED, told_form
from fioritura.listening.told_notes import told_notes
from fioritura.listening.told_time import told_time
from fioritura.listening.told_tone import told_tone
from fioritura.listening.words import slip_words, without_signature
from fioritura.players.instruments import Instrument
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import family_of, technique_named
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.theory.position import Position, position_of_beat
from fioritura.tune import Feel, Mark, Tune
from fioritura.words import message

__all__ = ["Report", "Status", "report_on"]

_STEADY_SEC: Final = 0.25
"""A shorter note says nothing about its tuning."""
_STRAY_CENTS: Final = 80.0
_MOVED: Final = 0.7
"""How sure an ornament that nobody asked for must be, to be no mere slip in time."""
_ALONE: Final = 0.5
_ALONE_STEP: Final = 0.15
"""A room makes a grace note here and there: one or two added ornaments speak for less than many do."""
_FLATTEST: Final = 85.0
"""A line a semitone off whose tuning leads back is this far out of tune rather than in another key."""
_GHOST_DB: Final = 5.0
_FEWEST_EVEN: Final = 3
_FEWEST_STEPS: Final = 6
_DRIFT_SHARE: Final = 0.25


def report_on(
    tune: Tune,
    take: Take,
    asked: Sequence[Figure] = (),
    *,
    instrument: Instrument | None = None,
    tempo: float | None = None,
    feel: Feel | None = None,
) -> tuple[Naming, Report]:
    """Listen to a take as a performance of a tune.

    Args:
        asked: the figures of the arrangement that was to be played, over this tune.
        instrument: for the names of the notes as the player reads them, and its registers.
        tempo: the tempo that was asked for, in quarters a minute.
        feel: how the tune was to be played; without it as the tune says.

    Returns:
        What was named, and the report. For a take of another tune (see `Alignment.is_this_tune`) the report is empty.
    """
    naming = name_take(tune, take, asked, unsigned=list(without_signature(tune, instrument)))
    return naming, _Reporter(naming, take, asked, instrument, tempo, feel or tune.feel).report()


class _Reporter:
    def __init__(
        self,
        naming: Naming,
        take: Take,
        asked: Sequence[Figure],
        instrument: Instrument | None,
        tempo: float | None,
        feel: Feel,
    ) -> None:
        self.naming, self.take, self.asked, self.instrument = naming, take, asked, instrument
        self.tempo, self.feel = tempo, feel
        self.alignment = naming.alignment
        self.tune = self.alignment.tune
        self.passes = [one for one in self.alignment.passes if one.spans] if naming.standing else []
        self.own_cents = _own_cents(take)
        self.semitones, self.tuning_cents = _pitch_in_whole(self.alignment.semitones, self.own_cents)
        held = set(_beside_fermatas(self.tune))
        self.free = frozenset(self._moved() | {(n, plain) for n in range(1, len(self.passes) + 1) for plain in held})
        self.course = Course(self.tune, naming, self.free)

    def report(self) -> Report:
        notes = tuple(self._note_rows())
        right, wanted = self._count(notes)
        report = Report(
            title=self.tune.title,
            likeness=self.alignment.likeness,
            duration_sec=round(self.take.duration_sec, 2),
            semitones=self.semitones,
            tuning_cents=self.tuning_cents,
            passages=len(self.passes),
            right=right,
            wanted=wanted,
            happenings=(),
            figures=tuple(self._figure_rows()),
            slips=tuple(self._slip_rows()),
            notes=notes,
            by_note=tuple(_by_note(notes)),
            by_register=tuple(self._by_register(notes)),
            timing=self._timing(notes),
            evenness=tuple(self._evenness()),
            level=_level(self.take.notes),
            is_asked=bool(self.asked),
        )
        return replace(report, happenings=tuple(self._happenings(report))) if notes else report

    def _happenings(self, report: Report) -> list[Happening]:
        """What happened, the weightiest first; what is not sure is said with a perhaps, or not at all."""
        of = Material(report, self.naming, self.take, self.course, self.free, self.feel, self.tempo, self.instrument)
        found = []
        for one in chain(told_form(of), told_notes(of), told_time(of), told_tone(of)):
            sure = calibrated(one.kind, one.confidence)
            if sure < LEAST:
                continue
            words = one.words if sure >= SURE else message("perhaps", words=one.words)
            found.append(replace(one, words=words, confidence=sure, weight=round(one.weight * sure, 3)))
        return sorted(found, key=lambda one: -one.weight)

    def _count(self, notes: Sequence[NoteRow]) -> tuple[int, int]:
        """How many of the tune's notes were right, and how many were to be played: those of bars that were played again
        count once, as they were played last; skipped notes and ones left out count, the rest of the tune does not. What
        may be a slip of the ear is not held against the player."""
        right = {(row.passage, row.plain) for row in notes if row.is_right}
        right |= set(self._held_on())
        right |= {
            (slip.passage, slip.plain)
            for slip in self.naming.slips
            if slip.plain is not None and not self._is_said(slip)
        }
        wanted: list[tuple[int, int]] = []
        ranges = [range(min(one), max(one) + 1) if one else range(0) for one in self.naming.standing]
        if ranges and ranges[0].start + len(self.tune.notes) - ranges[-1].stop < FEWEST_UNPLAYED:
            ranges[0] = range(ranges[0].stop)
            ranges[-1] = range(ranges[-1].start, len(self.tune.notes))
            told = {(row.passage, row.plain) for row in notes} | {
                (slip.passage, slip.plain) for slip in self.naming.slips
            }
            ends = {(1, plain) for plain in ranges[0]} | {(len(ranges), plain) for plain in ranges[-1]}
            right |= ends - told
        for number, (one, own) in enumerate(zip(self.passes, ranges, strict=True), start=1):
            if number > 1 and not one.is_expected and wanted and len(own):
                while wanted and wanted[-1][0] >= number - 1 and wanted[-1][1] >= own.start:
                    wanted.pop()
                last = wanted[-1][1] if wanted else own.start - 1
                wanted += ((0, plain) for plain in range(last + 1, own.start) if wanted)
            wanted += ((number, plain) for plain in own)
        return sum(each in right for each in wanted), len(wanted)

    def _is_said(self, slip: Slip) -> bool:
        """False for a slip that may be the ear's own."""
        return self._sure(slip) >= LEAST

    def _held_on(self) -> Iterator[tuple[int, int]]:
        """Notes that the one before of the same pitch may have hidden: neither played nor left out."""
        left_out = {(slip.passage, slip.plain) for slip in self.naming.slips if slip.kind is SlipKind.LEFT_OUT}
        for passage, standing in enumerate(self.naming.standing, start=1):
            for plain in range(min(standing, default=0), max(standing, default=0)):
                if plain not in standing and (passage, plain) not in left_out:
                    yield passage, plain

    def _played(self, event: int) -> PlayedNote:
        return self.take.notes[self.alignment.events[event].source]

    # Asked and done ------------------------------------------------------------------------------------------------

    def _figure_rows(self) -> Iterator[FigureRow]:
        """In order of passage and place: those asked with what became of them, then those added."""
        rows: list[FigureRow] = []
        open_figures = list(self.naming.figures)
        for passage, standing in enumerate(self.naming.standing, start=1):
            for figure in self.asked:
                if not any(anchor in standing for anchor in figure.anchors):
                    continue
                found = next((one for one in open_figures if _is(one, figure, passage)), None)
                if found:
                    open_figures.remove(found)
                rows.append(self._asked_row(figure, passage, standing, found))
        asked_for = {event for one in self.naming.figures if one not in open_figures for event in one.events}
        added = [one for one in open_figures if not asked_for.intersection(one.events) and _is_told(one)]
        alone = max(_ALONE, 1 - _ALONE_STEP * max(0, 4 - len(added)))
        shares = [alone if family_of(technique_named(one.technique)).are_graces else 1.0 for one in added]
        for one, share in zip(added, shares, strict=True):
            other = 0.0 if one.other == PLAIN else one.other_confidence
            if calibrated(Claim.FIGURE_ADDED, share * (one.confidence + other)) >= LEAST:
                rows.append(self._row(one, Status.ADDED, share))
        yield from sorted(rows, key=lambda row: (row.passage, row.bar, row.beat))

    def _asked_row(
        self, figure: Figure, passage: int, standing: Mapping[int, int], found: NamedFigure | None
    ) -> FigureRow:
        start = figure.notes[0].onset_ticks if figure.notes else self.tune.notes[figure.anchors[0]].onset_ticks
        bar, beat = self.tune.beat_at(start)
        if found:
            row = self._row(found, Status.DONE)
            return replace(row, bar=bar, beat=round(beat, 3), position=self.tune.position_at(start))
        event = standing.get(figure.anchors[0])
        heard = event is not None and self._has_sign(figure, event)
        status = Status.DONE if heard else Status.MISSED
        name = technique_named(figure.technique).name
        sure = 0.7 if heard else calibrated(Claim.FIGURE_MISSED, missed_evidence(self.alignment, figure))
        where = bar, round(beat, 3), self.tune.position_at(start)
        return FigureRow(figure.technique, name, status, *where, passage, sure, figure.anchors[0])

    def _row(self, one: NamedFigure, status: Status, share: float = 1.0) -> FigureRow:
        name = technique_named(one.technique).name
        where = one.bar, one.beat, self._position(one.bar, one.beat)
        claim = Claim.FIGURE_ADDED if status is Status.ADDED else Claim.FIGURE_DONE
        sure = calibrated(claim, share * one.confidence)
        return FigureRow(one.technique, name, status, *where, one.passage, sure, one.anchors[0], one.other)

    def _has_sign(self, figure: Figure, event: int) -> bool:
        """True when the asked vibrato, or a note much softer than those beside it for an asked ghost note, is heard."""
        note = self._played(event)
        if Mark.VIBRATO in figure.marks:
            return note.vibrato is not None
        if Mark.GHOST in figure.marks:
            around = [self._played(near).level_db for near in (event - 1, event + 1) if 0 <= near < self._events]
            return bool(around) and note.level_db < min(around) - _GHOST_DB
        return False

    @property
    def _events(self) -> int:
        return len(self.alignment.events)

    def _slip_rows(self) -> Iterator[SlipRow]:
        for slip in self.naming.slips:
            where = slip.bar, slip.beat, self._position(slip.bar, slip.beat)
            words = slip_words(self.alignment, slip, self.instrument)
            sure = self._sure(slip)
            if sure >= LEAST:
                yield SlipRow(slip.kind, *where, slip.passage, words, slip.plain, sure)

    def _sure(self, slip: Slip) -> float:
        return calibrated(Claim(f"slip-{slip.kind.name.lower()}"), slip_evidence(self.alignment, slip))

    def _position(self, bar_number: int, beat: float) -> Position:
        bar = next(bar for bar in self.tune.bars if bar.number == bar_number)
        return position_of_beat(bar.metre, beat, bar_number)

    # Notes ---------------------------------------------------------------------------------------------------------

    def _note_rows(self) -> Iterator[NoteRow]:
        for passage, (one, standing) in enumerate(zip(self.passes, self.naming.standing, strict=True), start=1):
            for plain, event in sorted(standing.items()):
                note, written = self._played(event), self.tune.notes[plain]
                bar, beat = self.tune.beat_at(written.onset_ticks)
                is_meant = self.alignment.midi(event) == written.pitch.midi
                is_right = is_meant and not (self.alignment.shifts and self.alignment.shifts[event])
                late = None if (passage, plain) in self.free else self._late_ms(one, plain, event)
                pitch = self.instrument.written(written.pitch) if self.instrument else written.pitch
                yield NoteRow(
                    plain,
                    passage,
                    bar,
                    round(beat, 3),
                    pitch,
                    written.pitch.midi,
                    is_right,
                    round(self.alignment.events[event].onset, 4),
                    round(self.alignment.events[event].duration, 4),
                    self._cents(note) if is_meant else None,
                    late,
                    note.level_db,
                )

    def _moved(self) -> set[tuple[int, int]]:
        """(passage, plain note) of notes that a figure makes early or late."""
        asked = {(figure.technique, figure.anchors[0]) for figure in self.asked}
        return {
            (one.passage, anchor)
            for one in self.naming.figures
            if _moves(one.technique) and ((one.technique, one.anchors[0]) in asked or _is_told(one))
            for anchor in one.anchors
        }

    def _late_ms(self, one: Pass, plain: int, event: int) -> float | None:
        """How late a note came; None for one that is off by more than an eighth, which is no matter of timing."""
        late = float(one.ticks[event - one.first_event]) - swung_onset(self.tune, plain, self.naming.long_share)
        return None if abs(late) > EIGHTH else round(1000 * late / self.alignment.ticks_per_unit, 1)

    def _cents(self, note: PlayedNote) -> float | None:
        if note.duration_sec < _STEADY_SEC:
            return None
        cents = note.pitch_cents - 100.0 * (note.midi - 69) - self.own_cents
        return round(cents, 1) if abs(cents) < _STRAY_CENTS else None

    def _by_register(self, notes: Sequence[NoteRow]) -> Iterator[PitchRow]:
        """Low, middle and high third of what the instrument (else the tune) reaches."""
        midis = [note.pitch.midi for note in self.tune.notes]
        low, high = min(midis, default=0), max(midis, default=0)
        if self.instrument:
            low, high = self.instrument.lowest_midi, self.instrument.highest_midi
        third = max(high - low, 1) / 3
        names = message("register-low"), message("register-middle"), message("register-high")
        for number, name in enumerate(names):
            cents = [
                note.cents
                for note in notes
                if note.cents is not None
                and min(int((self.tune.notes[note.plain].pitch.midi + self._octaves - low) / third), 2) == number
            ]
            if cents:
                yield PitchRow(name, len(cents), round(median(cents), 1))

    @property
    def _octaves(self) -> int:
        """Semitones of whole octaves that the take lies above the tune."""
        return 12 * round(self.alignment.semitones / 12)

    # Time ----------------------------------------------------------------------------------------------------------

    def _timing(self, notes: Sequence[NoteRow]) -> Timing:
        late = [note.late_ms for note in notes if note.late_ms is not None]
        share = self.naming.long_share
        graces = [
            1000 * self._played(event).duration_sec
            for one in self._sure_figures()
            if family_of(technique_named(one.technique)).are_graces
            for event in one.events
        ]
        return Timing(
            quarters_per_minute=round(60 * self.alignment.ticks_per_unit / QUARTER, 1),
            drift_percent=round(self._drift(), 1),
            spread_ms=round(_middle_spread(late), 1),
            swing_ratio=round(share / (1 - share), 2),
            grace_ms=round(median(graces), 1) if graces else None,
            beats=tuple(_by_beat(notes)),
        )

    def _sure_figures(self) -> Iterator[NamedFigure]:
        """The ornaments that were asked for, or are sure enough to be told without a perhaps."""
        asked = {(figure.technique, figure.anchors[0]) for figure in self.asked}
        for one in self.naming.figures:
            is_asked = (one.technique, one.anchors[0]) in asked
            if is_asked or calibrated(Claim.FIGURE_ADDED, one.confidence) >= SURE:
                yield one

    def _drift(self) -> float:
        """By how many percent the last quarter of the take is faster than its first, between notes in their place."""
        steps = [step for step in self.course.steps if not step.is_stop and step.following == step.plain + 1]
        count = int(len(steps) * _DRIFT_SHARE)
        if count < _FEWEST_STEPS:
            return 0.0
        parts = steps[:count], steps[-count:]
        first, last = (sum(step.ticks for step in part) / sum(step.seconds for step in part) for part in parts)
        return 100 * (last / first - 1)

    def _evenness(self) -> Iterator[Evenness]:
        for one in self._sure_figures():
            if len(one.events) < _FEWEST_EVEN or not family_of(technique_named(one.technique)).are_even:
                continue
            spread = _spread([self._played(event).onset_sec for event in one.events])
            name = technique_named(one.technique).name
            place = self._position(one.bar, one.beat)
            yield Evenness(one.technique, name, one.bar, one.beat, place, round(100 * spread, 1))


def _moves(technique: str) -> bool:
    """True for a technique that makes a note early or late."""
    return family_of(technique_named(technique)).move


def _is_told(one: NamedFigure) -> bool:
    """False for an added ornament that may be a mere note in another rhythm."""
    other = one.other_confidence if one.other != PLAIN and _moves(one.other) else 0.0
    return not _moves(one.technique) or one.confidence + other >= _MOVED


def _beside_fermatas(tune: Tune) -> Iterator[int]:
    """Notes whose time is the player's own: those held under a fermata, and the rest of their bar."""
    for held in (note for note in tune.notes if Mark.FERMATA in note.marks):
        end = tune.bar_at(held.onset_ticks).end_ticks
        yield from (n for n, note in enumerate(tune.notes) if held.onset_ticks <= note.onset_ticks < end)


def _is(named: NamedFigure, figure: Figure, passage: int) -> bool:
    same_place = named.passage == passage and named.anchors[0] == figure.anchors[0]
    return same_place and named.technique == figure.technique


def _own_cents(take: Take) -> float:
    """The player's tuning, as his notes are named: a tuning is told within the semitone, where −48 cents may be 52."""
    if not take.notes:
        return take.tuning_cents
    usual = median(note.pitch_cents - 100.0 * (note.midi - 69) for note in take.notes)
    return round(take.tuning_cents + 100 * round((usual - take.tuning_cents) / 100), 1)


def _pitch_in_whole(semitones: int, tuning_cents: float) -> tuple[int, float]:
    """Semitones and cents that a take lies off: 60 cents flat is heard as a semitone low and 40 cents sharp."""
    octaves = 12 * round(semitones / 12)
    cents = 100 * (semitones - octaves) + tuning_cents
    leads_back = (semitones - octaves) * tuning_cents < 0
    return (octaves, round(cents, 1)) if leads_back and abs(cents) <= _FLATTEST else (semitones, tuning_cents)


def _by_note(notes: Iterable[NoteRow]) -> Iterator[PitchRow]:
    """Notes by pitch, the most often heard first."""
    heard: dict[Pitch, list[float]] = {}
    for note in notes:
        if note.cents is not None:
            heard.setdefault(note.pitch, []).append(note.cents)
    for pitch, cents in sorted(heard.items(), key=lambda item: -len(item[1])):
        yield PitchRow(pitch, len(cents), round(median(cents), 1))


def _by_beat(notes: Iterable[NoteRow]) -> Iterator[BeatRow]:
    """Whole beats by number, then all that lies between the beats."""
    heard: dict[float, list[float]] = {}
    for note in notes:
        if note.late_ms is not None:
            beat = note.beat if note.beat == int(note.beat) else inf
            heard.setdefault(beat, []).append(note.late_ms)
    for beat, late in sorted(heard.items()):
        name = message("beats-between") if beat == inf else message("beat-name", number=int(beat))
        yield BeatRow(name, len(late), round(median(late), 1))


def _level(notes: Sequence[PlayedNote]) -> Level:
    levels = [note.level_db for note in notes]
    if not levels:
        return Level(0.0, 0.0)
    soft, loud = np.percentile(levels, [10, 90])
    return Level(round(median(levels), 1), round(float(loud - soft), 1))


def _middle_spread(values: Sequence[float]) -> float:
    """Half of the range that holds the middle two thirds: the standard deviation of normal values, deaf to strays."""
    if not values:
        return 0.0
    low, high = np.percentile(values, [16, 84])
    return float(high - low) / 2


def _spread(onsets: Sequence[float]) -> float:
    """Standard deviation of the times between onsets, over their mean; a note held before or after is left out."""
    steps = np.diff(onsets)
    quick = steps[steps <= 2 * np.median(steps)]
    return float(np.std(quick) / np.mean(quick)) if quick.mean() > 0 else 0.0
