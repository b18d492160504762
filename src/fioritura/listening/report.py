"""The report on a take: what was asked and done, pitch, time, evenness and level, as plain values.

Everything is measured against the plain tune at the player's own tempo and tuning. Cents are those above (sharp) or
below (flat) equal temperament on the player's own A, milliseconds those behind (late) or before (early) the smooth
course of the player's own beat. `advice` says it in words.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from math import inf
from statistics import median
from typing import Any, Final

import numpy as np

from fioritura.listening.align import Pass
from fioritura.listening.name import name_take
from fioritura.listening.naming import NamedFigure, Naming, SlipKind
from fioritura.listening.notes import PlayedNote, Take
from fioritura.listening.words import slip_words
from fioritura.players.instruments import Instrument
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import family_of, technique_named
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.theory.position import Position, position_in
from fioritura.tune import Mark, Tune
from fioritura.words import Message, message
from fioritura.words.record import record

__all__ = [
    "BeatRow",
    "Evenness",
    "FigureRow",
    "Level",
    "NoteRow",
    "PitchRow",
    "Report",
    "SlipRow",
    "Status",
    "Timing",
    "report_on",
]

_STEADY_SEC: Final = 0.09
"""A shorter note says nothing about its tuning."""
_STRAY_CENTS: Final = 80.0
_GHOST_DB: Final = 5.0
_FEWEST_EVEN: Final = 3
_FEWEST_STEPS: Final = 6
_DRIFT_SHARE: Final = 0.25


class Status(StrEnum):
    """What became of an ornament."""

    DONE = "done"
    MISSED = "missed"
    ADDED = "added"


@dataclass(frozen=True, slots=True)
class FigureRow:
    """One ornament: asked and done, asked and missed, or added by the player. `anchor` is the plain note it belongs to,
    `other` the nearest other reading."""

    technique: str
    name: Message | str
    status: Status
    bar: int
    beat: float
    position: Position
    passage: int
    confidence: float
    anchor: int
    other: str = ""


@dataclass(frozen=True, slots=True)
class NoteRow:
    """A plain note as it was played: `pitch` as the player reads it, `midi` as it is in the tune; None where it can't
    be told."""

    plain: int
    passage: int
    bar: int
    beat: float
    pitch: Pitch
    midi: int
    is_right: bool
    onset_sec: float
    duration_sec: float
    cents: float | None
    late_ms: float | None
    level_db: float


@dataclass(frozen=True, slots=True)
class PitchRow:
    """Tuning of one note or register: how many times it was heard, and the median of its cents."""

    name: Pitch | Message
    count: int
    cents: float


@dataclass(frozen=True, slots=True)
class BeatRow:
    """Timing on one beat of the bar, or on the halves between the beats: how often, and the median lateness."""

    name: Message
    count: int
    late_ms: float


@dataclass(frozen=True, slots=True)
class Timing:
    """Tempo and time.

    `drift_percent` compares the last quarter of the take with the first (faster > 0), `spread_ms` says how
    far two notes of three lie from the beat at most, `swing_ratio` long to short of two eighths, `grace_ms` the usual grace note.
    """

    quarters_per_minute: float
    drift_percent: float
    spread_ms: float
    swing_ratio: float
    grace_ms: float | None
    beats: tuple[BeatRow, ...]


@dataclass(frozen=True, slots=True)
class Evenness:
    """How even the notes of a quick figure are: spread of their lengths as a share of their mean, in percent."""

    technique: str
    name: Message | str
    bar: int
    beat: float
    position: Position
    spread_percent: float


@dataclass(frozen=True, slots=True)
class Level:
    """Loudness: median of the notes in dB under full scale, and how far its softer and louder notes lie apart."""

    usual_db: float
    range_db: float


@dataclass(frozen=True, slots=True)
class SlipRow:
    """A wrong, left-out or added note, in words."""

    kind: SlipKind
    bar: int
    beat: float
    position: Position
    passage: int
    words: Message


@dataclass(frozen=True)
class Report:
    """All that a take says. `semitones` is its distance from the tune's pitch (see `Alignment`)."""

    title: str
    likeness: float
    duration_sec: float
    semitones: int
    tuning_cents: float
    passages: int
    figures: tuple[FigureRow, ...]
    slips: tuple[SlipRow, ...]
    notes: tuple[NoteRow, ...]
    by_note: tuple[PitchRow, ...]
    by_register: tuple[PitchRow, ...]
    timing: Timing
    evenness: tuple[Evenness, ...]
    level: Level
    is_asked: bool
    """True when an arrangement says which ornaments were to be played."""

    def count(self, status: Status) -> int:
        """How many ornaments have a status."""
        return sum(row.status is status for row in self.figures)

    def to_dict(self) -> dict[str, Any]:
        """The report as plain data for JSON, its words in the language that is spoken."""
        found: dict[str, Any] = record(self)
        return found


def report_on(
    tune: Tune, take: Take, asked: Sequence[Figure] = (), *, instrument: Instrument | None = None
) -> tuple[Naming, Report]:
    """Listen to a take as a performance of a tune.

    Args:
        asked: the figures of the arrangement that was to be played, over this tune.
        instrument: for the names of the notes as the player reads them, and its registers.

    Returns:
        What was named, and the report. For a take of another tune (see `Alignment.is_this_tune`) the report is empty.
    """
    naming = name_take(tune, take, asked)
    return naming, _Reporter(naming, take, asked, instrument).report()


class _Reporter:
    def __init__(self, naming: Naming, take: Take, asked: Sequence[Figure], instrument: Instrument | None) -> None:
        self.naming, self.take, self.asked, self.instrument = naming, take, asked, instrument
        self.alignment = naming.alignment
        self.tune = self.alignment.tune
        self.passes = [one for one in self.alignment.passes if one.spans] if naming.standing else []
        self.held = set(_beside_fermatas(self.tune))

    def report(self) -> Report:
        notes = tuple(self._note_rows())
        return Report(
            title=self.tune.title,
            likeness=self.alignment.likeness,
            duration_sec=round(self.take.duration_sec, 2),
            semitones=self.alignment.semitones,
            tuning_cents=self.take.tuning_cents,
            passages=len(self.passes),
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
        rows += (self._row(one, Status.ADDED) for one in open_figures)
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
        sure = 0.7 if heard else 0.0
        where = bar, round(beat, 3), self.tune.position_at(start)
        return FigureRow(figure.technique, name, status, *where, passage, sure, figure.anchors[0])

    def _row(self, one: NamedFigure, status: Status) -> FigureRow:
        name = technique_named(one.technique).name
        where = one.bar, one.beat, _position(self.tune, one.bar, one.beat)
        return FigureRow(one.technique, name, status, *where, one.passage, one.confidence, one.anchors[0], one.other)

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
            where = slip.bar, slip.beat, _position(self.tune, slip.bar, slip.beat)
            words = slip_words(self.alignment, slip, self.instrument)
            yield SlipRow(slip.kind, *where, slip.passage, words)

    # Notes ---------------------------------------------------------------------------------------------------------

    def _note_rows(self) -> Iterator[NoteRow]:
        moved = self._moved()
        for passage, (one, standing) in enumerate(zip(self.passes, self.naming.standing, strict=True), start=1):
            for plain, event in sorted(standing.items()):
                note, written = self._played(event), self.tune.notes[plain]
                bar, beat = self.tune.beat_at(written.onset_ticks)
                is_right = self.alignment.events[event].midi - self.alignment.semitones == written.pitch.midi
                is_free = (passage, plain) in moved or plain in self.held
                late = None if is_free else self._late_ms(one, plain, event)
                pitch = self.instrument.written(written.pitch) if self.instrument else written.pitch
                yield NoteRow(
                    plain,
                    passage,
                    bar,
                    round(beat, 3),
                    pitch,
                    written.pitch.midi,
                    is_right,
                    note.onset_sec,
                    round(note.duration_sec, 4),
                    self._cents(note) if is_right else None,
                    late,
                    note.level_db,
                )

    def _moved(self) -> set[tuple[int, int]]:
        """(passage, plain note) of notes that a figure makes early or late."""
        return {
            (one.passage, anchor)
            for one in self.naming.figures
            if family_of(technique_named(one.technique)).move
            for anchor in one.anchors
        }

    def _late_ms(self, one: Pass, plain: int, event: int) -> float | None:
        """How late a note came; None for one that is off by more than an eighth, which is no matter of timing."""
        onset = self.tune.notes[plain].onset_ticks
        swung = (self.naming.long_share - 0.5) * QUARTER if onset % QUARTER == EIGHTH else 0.0
        late = float(one.ticks[event - one.first_event]) - onset - swung
        return None if abs(late) > EIGHTH else round(1000 * late / self.alignment.ticks_per_unit, 1)

    def _cents(self, note: PlayedNote) -> float | None:
        if note.duration_sec < _STEADY_SEC:
            return None
        cents = note.pitch_cents - 100.0 * (note.midi - 69) - self.take.tuning_cents
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
            for one in self.naming.figures
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

    def _drift(self) -> float:
        """By how many percent the last quarter of the take is faster than its first, between notes in their place."""
        steps = list(self._steps())
        count = int(len(steps) * _DRIFT_SHARE)
        if count < _FEWEST_STEPS:
            return 0.0
        first, last = (sum(t for t, _ in part) / sum(s for _, s in part) for part in (steps[:count], steps[-count:]))
        return 100 * (last / first - 1)

    def _steps(self) -> Iterator[tuple[int, float]]:
        """Ticks and seconds from each plain note to the next, where both were played in their place."""
        moved = self._moved()
        for passage, standing in enumerate(self.naming.standing, start=1):
            kept = sorted(plain for plain in standing if (passage, plain) not in moved)
            for plain, following in pairwise(kept):
                onset = self._played(standing[plain]).onset_sec
                seconds = self._played(standing[following]).onset_sec - onset
                if following == plain + 1 and seconds > 0:
                    yield self.tune.notes[following].onset_ticks - self.tune.notes[plain].onset_ticks, seconds

    def _evenness(self) -> Iterator[Evenness]:
        for one in self.naming.figures:
            if len(one.events) < _FEWEST_EVEN or not family_of(technique_named(one.technique)).are_even:
                continue
            spread = _spread([self._played(event).onset_sec for event in one.events])
            name = technique_named(one.technique).name
            place = _position(self.tune, one.bar, one.beat)
            yield Evenness(one.technique, name, one.bar, one.beat, place, round(100 * spread, 1))


def _beside_fermatas(tune: Tune) -> Iterator[int]:
    """Notes whose time is the player's own: those held under a fermata, and the rest of their bar."""
    for held in (note for note in tune.notes if Mark.FERMATA in note.marks):
        end = tune.bar_at(held.onset_ticks).end_ticks
        yield from (n for n, note in enumerate(tune.notes) if held.onset_ticks <= note.onset_ticks < end)


def _is(named: NamedFigure, figure: Figure, passage: int) -> bool:
    same_place = named.passage == passage and named.anchors[0] == figure.anchors[0]
    return same_place and named.technique == figure.technique


def _position(tune: Tune, bar_number: int, beat: float) -> Position:
    """The place of a beat, to the nearest twelfth of it, which holds sixteenths and triplets."""
    bar = next(bar for bar in tune.bars if bar.number == bar_number)
    groups, whole = bar.metre.groups_ticks, int(beat) - 1
    length = groups[whole] if whole < len(groups) else bar.metre.beat_ticks
    start = sum(groups[:whole]) + max(0, whole - len(groups)) * bar.metre.beat_ticks
    offset = start + round(12 * (beat - int(beat))) * length // 12
    return position_in(bar.metre, offset, bar_number, is_pickup=bar_number == 0)


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
