"""Play a line: from written notes, in ticks, to timed notes, in seconds.

What a wind player adds to the page: swing, and the place behind the beat (`timing`); grace notes that take their
time from the note before and scale less than the tempo (Timmers et al. 2002, Music Perception 20(1), 3-33); tongued
and slurred joints (tongue on the reed for 34.5 ms, Hofmann et al. 2012); breaths; signs, effects and vibrato
(`ornaments`); dynamics (`dynamics`).
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Final

from fioritura.chance import Chance
from fioritura.players.instruments import Instrument
from fioritura.players.phrasing import Phrasing, phrasing_of
from fioritura.players.player import Player
from fioritura.sound.clock import Clock
from fioritura.sound.dynamics import loudness_of
from fioritura.sound.expression import level_curve, vibrato_of
from fioritura.sound.ornaments import bend_curve, realised
from fioritura.sound.performance import Inhaled, Joint, Performance, PerformedNote, PerformedPart
from fioritura.sound.swing import drummer_ratio, soloist_ratio
from fioritura.sound.timing import Ratio, Span, humanised, slurs, written_spans
from fioritura.sound.voice.winds import wind_of
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Feel, Mark, Note, Tune

__all__ = ["clock_of", "grace_sec", "perform", "perform_line"]

TONGUE_SEC: Final = 0.0345
LEGATO_OVERLAP_SEC: Final = 0.006
LEGATO_VELOCITY_SHARE: Final = 0.94
JOINED_WITHIN_SEC: Final = 0.03
SHORTEST_NOTE_SEC: Final = 0.03
LENGTH_SHARES: Final = {Mark.STACCATO: 0.5, Mark.MARCATO: 0.7, Mark.GHOST: 0.7}
STOPPED_WITHIN_SEC: Final = 0.08
FERMATA_TEMPO_SHARE: Final = 0.55
FALL_INTO_REST_SEC: Final = 0.12

GRACE_SEC: Final = 0.08
GRACE_EXPONENT: Final = 0.5
MANY_GRACES: Final = {1: 1.0, 2: 0.8, 3: 0.7}
SHORTEST_GRACE_SEC: Final = 0.022
"""Below it the order of onsets is not heard (Friberg & Sundberg 1995, JASA)."""

GRACE_VELOCITY_SHARE: Final = 0.86

LONGEST_BREATH_SEC: Final = 0.4
BEFORE_ONSET_SEC: Final = 0.04
"""How long before its next note a player has drawn breath."""

VELOCITY_DEVIATION: Final = 2.5


def perform(
    tune: Tune,
    line: Sequence[Note],
    *,
    instrument: Instrument,
    player: Player | None = None,
    tempo: float | None = None,
    feel: Feel | None = None,
    exact: bool = False,
    laid_back: bool = False,
    seed: int = 0,
    name: str = "Melody",
) -> Performance:
    """Play `line`, a melody over the bars of `tune`, on an instrument. Repeats are not played: unfold first.

    `player` breathes as marked, and where else the breath would not last (default: the instrument's player of level 3).
    `tempo` (quarters a minute) and `feel` default to the tune's. With `laid_back` a swing line is as far behind the
    beat as soloists are over a band. With `exact` onsets are those of the grid, swung but neither human nor late.

    Raises:
        OptionError: a tempo outside 20 to 400.
    """
    clock = clock_of(tune, line, tempo)
    part = perform_line(
        tune,
        line,
        clock,
        instrument=instrument,
        player=player,
        feel=feel,
        exact=exact,
        laid_back=laid_back,
        seed=seed,
        name=name,
    )
    return Performance(tune.title, tune.key, clock, tune.bars, (part,))


def clock_of(tune: Tune, line: Sequence[Note], tempo: float | None = None) -> Clock:
    """The tune's tempos, scaled to start with `tempo`, and held where the line has a fermata.

    Raises:
        OptionError: a tempo outside 20 to 400.
    """
    holds = [(n.onset_ticks, n.end_ticks, FERMATA_TEMPO_SHARE) for n in line if Mark.FERMATA in n.marks]
    return Clock.of(tune, tempo).slowed(holds)


def perform_line(
    tune: Tune,
    line: Sequence[Note],
    clock: Clock,
    *,
    instrument: Instrument,
    player: Player | None = None,
    feel: Feel | None = None,
    exact: bool = False,
    laid_back: bool = False,
    offbeats: Ratio = drummer_ratio,
    plain: Collection[tuple[int, int]] | None = None,
    seed: int = 0,
    name: str = "Melody",
) -> PerformedPart:
    """`perform` over a clock that other parts share: with `laid_back` the off-beats fall with the band's, whose ratio of
    long to short at a tempo is `offbeats`. `plain` are the stretches in ticks whose notes have no vibrato; None is all of
    a line that no figure adorns."""
    feel = feel or tune.feel
    spans = written_spans(
        tune,
        line,
        clock,
        feel,
        is_late=laid_back and not exact,
        ratio=offbeats if laid_back else soloist_ratio,
    )
    phrasing = phrasing_of(tune, line, player or Player.of(instrument.id), clock.tempo_at(0))
    velocities = loudness_of(tune, line, feel, phrasing.phrases)
    if not exact:
        chance = Chance.of(seed, "performance", "melody")
        with_band = feel == "swing" and laid_back
        tight = [n for n, note in enumerate(line) if with_band and note.onset_ticks % QUARTER == EIGHTH]
        spans = humanised(spans, chance, tight)
        velocities = [velocity + chance.normal(VELOCITY_DEVIATION) for velocity in velocities]
    if plain is None:
        plain = () if any(note.figures for note in line) else ((0, tune.duration_ticks + 1),)
    playing = _Player(tune, clock, line, feel, instrument.program, spans, velocities, phrasing, tuple(plain))
    for number in range(len(line)):
        playing.play(number)
    return PerformedPart(
        name, instrument.program, tuple(_stopped(playing.played)), voice=wind_of(instrument.id, instrument.program)
    )


def grace_sec(count: int, beat_sec: float) -> float:
    """How long each of `count` grace notes lasts where a quarter lasts `beat_sec`, if there is room.

    80 ms for a single one at tempo 120, with the square root of the beat elsewhere.
    """
    return GRACE_SEC * math.pow(beat_sec / 0.5, GRACE_EXPONENT) * MANY_GRACES.get(count, 0.6)


@dataclass(slots=True)
class _Player:
    """Plays the notes of a line in order; knows what it has played."""

    tune: Tune
    clock: Clock
    line: Sequence[Note]
    feel: Feel
    program: int
    spans: Sequence[Span]
    velocities: Sequence[float]
    phrasing: Phrasing
    plain: Collection[tuple[int, int]]
    played: list[PerformedNote] = field(default_factory=list)
    slurred: Sequence[bool] = field(init=False)
    breaths: Mapping[int, float] = field(init=False)
    """Seconds that a breath takes from the end of a note; 0 where a rest leaves room for it."""

    phrase_ends: Set[int] = field(init=False)

    def __post_init__(self) -> None:
        self.slurred = slurs(self.line, self.feel, self.clock.tempo_at(0))
        self.breaths = {breath.after: breath.stolen_sec for breath in self.phrasing.breaths.breaths}
        self.phrase_ends = {last for _, last in self.phrasing.phrases} | set(self.breaths)

    def play(self, number: int) -> None:
        """Play the grace notes of a note and the note."""
        note, onset_sec = self.line[number], self.spans[number].onset_sec
        onset_sec = self._play_graces(number, onset_sec)
        wanted_sec = self._end_sec(number, onset_sec)
        end_sec = max(wanted_sec, onset_sec + SHORTEST_NOTE_SEC)
        signs = note.marks if wanted_sec == end_sec else ()
        pieces = realised(note.pitch, signs, self.tune.bar_at(note.onset_ticks).key, end_sec - onset_sec)
        joint: Joint = "slur" if note.graces else self._joint(number)
        share = LEGATO_VELOCITY_SHARE if self._is_slurred_into(number) else 1.0
        velocity = _midi_velocity(self.velocities[number] * share)
        if len(pieces) > 1:
            for place, piece in enumerate(pieces):
                overlap = LEGATO_OVERLAP_SEC if place + 1 < len(pieces) else 0.0
                length = piece.duration_sec + overlap
                softer = _midi_velocity(velocity * (LEGATO_VELOCITY_SHARE if place else 1.0))
                start_sec, how = onset_sec + piece.after_sec, "slur" if place else joint
                self.played.append(PerformedNote(start_sec, length, piece.midi, softer, source=number, joint=how))
        else:
            self.played.append(self._held(number, onset_sec, end_sec - onset_sec, velocity, joint))
        self.played[-1] = replace(self.played[-1], breath=self._breath(number))

    def _held(self, number: int, onset_sec: float, length_sec: float, velocity: int, joint: Joint) -> PerformedNote:
        """A note that no sign parts, with its pitch and its level."""
        note = self.line[number]
        is_plain = Mark.VIBRATO not in note.marks and any(a <= note.onset_ticks < b for a, b in self.plain)
        vibrato = None if is_plain else vibrato_of(note.marks, self.program, self.feel, length_sec)
        return PerformedNote(
            onset_sec,
            length_sec,
            note.pitch.midi,
            velocity,
            bend=bend_curve(note.marks, length_sec, vibrato),
            level=level_curve(note.marks, length_sec, vibrato, ends_phrase=number in self.phrase_ends),
            source=number,
            joint=joint,
            is_ghost=Mark.GHOST in note.marks,
        )

    def _joint(self, number: int) -> Joint:
        """How a note begins, or the grace notes before it; the eighths of swing are tongued so that the air goes on."""
        note, before = self.line[number], self.line[number - 1] if number else None
        if before is None or before.end_ticks != note.onset_ticks or number - 1 in self.breaths:
            return "tongue"
        if _is_short(before):
            return "tongue"
        if self.slurred[number - 1]:
            return "slur" if before.pitch.midi != note.pitch.midi else "soft"
        if {Mark.ACCENT, Mark.MARCATO, Mark.STACCATO} & set(note.marks):
            return "tongue"
        is_swung = self.feel == "swing" and max(note.duration_ticks, before.duration_ticks) <= EIGHTH
        return "soft" if is_swung or Mark.TENUTO in note.marks else "tongue"

    def _breath(self, number: int) -> Inhaled | None:
        """The breath after a note: in what is left of it or in the rest, drawn in time for the next note."""
        if number not in self.breaths:
            return None
        here, end_sec = self.played[-1], self.played[-1].end_sec
        next_sec = self.spans[number + 1].onset_sec if number + 1 < len(self.line) else end_sec + LONGEST_BREATH_SEC
        length_sec = min(LONGEST_BREATH_SEC, next_sec - BEFORE_ONSET_SEC - end_sec)
        if length_sec < SHORTEST_NOTE_SEC:
            return None
        return Inhaled(next_sec - BEFORE_ONSET_SEC - length_sec - here.onset_sec, length_sec)

    def _play_graces(self, number: int, onset_sec: float) -> float:
        """Play the grace notes before `onset_sec`, shortening the note before; return the main note's onset.

        At most half of the time since the last onset is taken, unless they would be too short to be heard in order.
        Where nothing precedes, as at the very start, they stand on the beat and the main note comes after them.
        """
        note = self.line[number]
        count = len(note.graces)
        if not count:
            return onset_sec
        each = grace_sec(count, 60.0 / self.clock.tempo_at(note.onset_ticks))
        room = onset_sec - self.played[-1].onset_sec if self.played else 2 * onset_sec
        each = max(min(each, room / 2 / count), min(SHORTEST_GRACE_SEC, 0.7 * room / count))
        if room / 2 < SHORTEST_GRACE_SEC * count and not self.played:
            each = min(grace_sec(count, 0.5), self.spans[number].duration_sec / (count + 2))
            onset_sec += each * count
        start = max(0.0, onset_sec - each * count)
        if self.played and self.played[-1].end_sec > start:
            self.played[-1] = _cut(self.played[-1], start + LEGATO_OVERLAP_SEC)
        velocity = _midi_velocity(self.velocities[number] * GRACE_VELOCITY_SHARE)
        joint = self._joint(number)
        for place, grace in enumerate(note.graces):
            length, how = each + LEGATO_OVERLAP_SEC, "slur" if place else joint
            self.played.append(
                PerformedNote(start + place * each, length, grace.midi, velocity, source=number, joint=how)
            )
        return onset_sec

    def _end_sec(self, number: int, onset_sec: float) -> float:
        """When the note is let go: by its signs, its joint with the next note and the player's need of air."""
        note, span = self.line[number], self.spans[number]
        following = self.spans[number + 1] if number + 1 < len(self.line) else None
        full = min(span.end_sec, following.onset_sec) if following else span.end_sec
        length = full - onset_sec
        share = min((LENGTH_SHARES.get(mark, 1.0) for mark in note.marks), default=1.0)
        if share < 1.0:
            return onset_sec + share * length
        if following is None or following.onset_sec - full > JOINED_WITHIN_SEC:
            rest = following.onset_sec - full if following else FALL_INTO_REST_SEC
            falls = Mark.FALL in note.marks or Mark.DOIT in note.marks
            return full + (min(FALL_INTO_REST_SEC, rest / 2) if falls else 0.0)
        if self.breaths.get(number):
            return full - min(self.breaths[number], length / 2)
        if self.slurred[number] and self.line[number + 1].pitch.midi != note.pitch.midi:
            is_bent = Mark.SCOOP in self.line[number + 1].marks
            return following.onset_sec + (0.0 if is_bent else LEGATO_OVERLAP_SEC)
        tongue = TONGUE_SEC / 2 if Mark.TENUTO in note.marks else TONGUE_SEC
        return full - min(tongue, 0.25 * length)

    def _is_slurred_into(self, number: int) -> bool:
        before = self.line[number - 1] if number else None
        return bool(before and self.slurred[number - 1] and before.end_ticks == self.line[number].onset_ticks)


def _is_short(note: Note) -> bool:
    return any(mark in LENGTH_SHARES for mark in note.marks)


def _stopped(notes: Sequence[PerformedNote]) -> Iterator[PerformedNote]:
    """The notes, marked where the tongue that begins the next one ends them."""
    for note, following in pairwise(notes):
        gap_sec = following.onset_sec - note.end_sec
        yield replace(note, is_stopped=following.joint == "tongue" and gap_sec < STOPPED_WITHIN_SEC)
    yield from notes[-1:]


def _midi_velocity(value: float) -> int:
    return max(1, min(127, round(value)))


def _cut(note: PerformedNote, end_sec: float) -> PerformedNote:
    """The note let go earlier, with what is left of its curves."""
    length = max(SHORTEST_NOTE_SEC, end_sec - note.onset_sec)
    bend = tuple(point for point in note.bend if point.after_sec <= length)
    level = tuple(point for point in note.level if point.after_sec <= length)
    return replace(note, duration_sec=length, bend=bend, level=level)
