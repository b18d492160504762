"""Answer fills: where the melody waits on a long note or a rest, a short phrase of its own kind answers it.

A fill is drawn, then chosen. Rhythms and moves are drawn from what people play in short phrases (`fill_rhythm`,
`fill_grammar`); some lines begin with a cell that many players have, some take up notes of the phrase that they answer.
Of the lines that the player can play those stand first that do what the place asks for: lead to the next note of the tune
or rest on a note of the chord, bring out a new chord, speak the language of the blues where the tune is one. Their merits
lie so near to each other that the seed chooses among them. The held note speaks first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import Chance
from fioritura.players.idiom import is_blues
from fioritura.players.player import Player
from fioritura.techniques.context import Context, spelled
from fioritura.techniques.definition import STEP_SEMITONES, Definition, Group
from fioritura.techniques.families import FILLS
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.techniques.fill_grammar import Ground, Harmony, Manner, drawn_lines, laid_down, opening_cells
from fioritura.techniques.fill_line import Line
from fioritura.techniques.fill_rhythm import UNIT, Grid, Pace, Pool, Rhythm, continued, pace_of, rhythm_pool
from fioritura.techniques.reading import legible
from fioritura.techniques.technique import Technique
from fioritura.theory.chord import Chord
from fioritura.theory.key import Direction
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.theory.scale import chord_scale
from fioritura.tune import Tune

_LONGEST_QUARTERS: Final = {1: 3, 2: 4, 3: 5, 4: 6, 5: 6}
"""How long a fill may take, by level."""

_LEAST_UNITS: Final = 18
_FEWEST: Final = 3
_DRAWN: Final = 48
_CELL_SHARE: Final = 0.2
_ECHO_SHARE: Final = 0.16
_ECHOES: Final = 9
_MOST_ECHOES: Final = 4
_OFFERED: Final = 14
_LOOKED_AT: Final = 26
_MERIT_STEP: Final = -0.003
"""What each next fill of a place is behind the one before it: less than a seed's noise, so that seeds differ."""

_SPREAD_SEMITONES: Final = {1: 7, 2: 10, 3: 13, 4: 16, 5: 19}
"""How far a fill may range, by level."""

_ABOVE_SEMITONES: Final = {1: 0, 2: 3, 3: 5, 4: 7, 5: 9}
"""How far a fill may go beyond the tune's own range, by level."""

_CHROMATIC: Final = {1: 0.0, 2: 0.05, 3: 1.0}
_WIDEST: Final = {1: 5, 2: 5, 3: 9}
_USUAL_SIZE: Final = {1: 3, 2: 4, 3: 6, 4: 7, 5: 9}
"""Notes of a fill by level, as which all of a place are weighed: long ones are not better than short ones."""

_PLAIN_LEVEL: Final = 2
"""Up to this level a fill says no note twice in a row."""

_REPEATED: Final = 0.9
"""How often notes are said again, to the tables, above that level."""

_BLUE: Final = {True: 2.2, False: 1.0}
"""How much blue notes weigh more in a blues."""

_ECHO_NOTES: Final = 4
_TOLERANCE: Final = 1.001
_LONGEST_LEAP: Final = 12
_FURTHEST_LEAD: Final = 7


@dataclass(frozen=True, slots=True)
class _Gap:
    """Where a fill may stand: the plain note stops at `cut_ticks` or before the fill, which begins at `start_ticks` or
    later and is over at `end_ticks`."""

    start_ticks: int
    end_ticks: int

    @property
    def units(self) -> int:
        return (self.end_ticks - self.start_ticks) // UNIT


def _gap(context: Context) -> _Gap | None:
    """The time for a fill after the held note has spoken, or None."""
    if context.next is None or not (context.is_free and context.next.is_free):
        return None
    onset, end = context.note.onset_ticks, context.note.onset_ticks + context.reach_ticks
    if context.reach_ticks < 3 * QUARTER:
        return None
    beat = max(context.bar.metre.beat_ticks, QUARTER)
    rests = context.gap_ticks >= 2 * QUARTER
    earliest = context.note.end_ticks if rests else onset + beat
    start = max(earliest, end - _LONGEST_QUARTERS[context.setting.level] * QUARTER)
    start += -(start - end) % EIGHTH
    if (end - start) // UNIT < _LEAST_UNITS or context.beat_offset(start) % UNIT:
        return None
    return _Gap(start, end)


def _answers(context: Context) -> Iterator[Figure]:
    gap = _gap(context)
    if gap is None:
        return
    place, found = _Place(context, gap), 0
    for line in place.chosen():
        figure = place.figure(line, merit=round(_MERIT_STEP * found, 4))
        if _reads_well(figure, context):
            found += 1
            yield figure
            if found == _OFFERED:
                return


def _reads_well(figure: Figure, context: Context) -> bool:
    """No note of key or chord has to be spelled anew for the sake of a foreign one beside it."""
    read = legible(figure, context)
    if read is None:
        return False
    return all(
        one.pitch == other.pitch or not context.key.holds(one.pitch)
        for one, other in zip(figure.notes, read.notes, strict=True)
    )


_Opening = tuple[int, Sequence[int]]
"""What is laid down of a line: the pitch class of its first note, and moves."""


class _Place:
    """A gap with all that is drawn for it."""

    def __init__(self, context: Context, gap: _Gap) -> None:
        self.context, self.gap = context, gap
        setting = context.setting
        self.level = setting.level
        self.is_folk = setting.tradition == "folk"
        self.pace: Pace = pace_of(setting.quarters_per_minute)
        self.grid: Grid = _grid(context)
        self.place = context.beat_offset(gap.start_ticks) // UNIT
        self.shortest = setting.shortest_ticks
        self.chance = Chance.of(
            0, "fill", f"{context.index} {context.midi} {self.level} {self.pace} {setting.tradition}"
        )
        self.has_cells = not self.is_folk and self.level > 1
        self.form = _form(context.tune)
        self.is_blues = setting.idiom == "blues" or self.form.is_blues
        self.chords: list[Chord | None] = []
        self.names: dict[tuple[int, int, Direction], Pitch] = {}
        self.ground = self._ground()
        self.motifs = tuple(_motifs(context))

    def _ground(self) -> Ground:
        context, gap = self.context, self.gap
        units = np.arange(gap.units + 1)
        changes, harmonies = [], []
        ticks = gap.start_ticks
        while ticks < gap.end_ticks:
            span = context.tune.chord_at(ticks)
            changes.append((ticks - gap.start_ticks) // UNIT)
            chord = span.chord if span else None
            self.chords.append(chord)
            harmonies.append(Harmony.of(chord, context.key))
            ticks = min(span.end_ticks if span else gap.end_ticks, gap.end_ticks)
        at = np.searchsorted(changes, units, side="right") - 1
        beats = (units + self.place) % 12 == 0
        if self.grid == "eighths":
            beats = np.array([unit % 6 == 0 and not self._offset(unit) for unit in units.tolist()])
        low, high = _range(context, self.form)
        following = context.next
        return Ground(context.midi, following.midi if following else None, low, high, tuple(harmonies), at, beats)

    def _offset(self, unit: int) -> int:
        return self.context.beat_offset(self.gap.start_ticks + unit * UNIT)

    def chosen(self) -> Iterator[Line]:
        """The lines of the place, first choice first, no two nearly alike and few of them echoes."""
        kept: list[Line] = []
        echoes = 0
        for line in sorted(self._playable(), key=lambda line: -round(3 * line.need)):
            if any(line.is_like(other) for other in kept) or (line.echoes and echoes == _MOST_ECHOES):
                continue
            kept.append(line)
            echoes += line.echoes > 0
            yield line

    def _playable(self) -> Iterator[Line]:
        pool, given = self._rows()
        if pool is None:
            return
        manner = self._manner()
        midis, is_whole = drawn_lines(self.chance, pool, self.ground, manner, given)
        fits = is_whole & (pool.shortest * UNIT >= self.shortest) & self._in_reach(pool, midis)
        numbers = np.flatnonzero(fits)
        for number in _shuffled(self.chance, numbers)[:_LOOKED_AT]:
            rhythm = pool.rhythms[number]
            line = tuple(midis[number, : len(rhythm.onsets)].tolist())
            if len(set(line)) >= _FEWEST and not self._is_other(line):
                yield Line(line, rhythm, self.ground, self.motifs, self.is_blues, self.pace)

    def _is_other(self, line: tuple[int, ...]) -> bool:
        """True for what is heard as something else than an answer: an ornament of the held note, or a run."""
        held, goal = self.context.midi, self.ground.goal
        if line[1] == held and abs(line[0] - held) <= STEP_SEMITONES:
            return True
        if len(line) == _FEWEST and (held in line or len(set(line)) < _FEWEST):
            return True
        whole = (held, *line) if goal is None else (held, *line, goal)
        moves = [b - a for a, b in pairwise(whole)]
        is_quick = len(line) == _FEWEST or max(map(abs, moves)) <= STEP_SEMITONES
        return is_quick and (min(moves) > 0 or max(moves) < 0)

    def _rows(self) -> tuple[Pool | None, NDArray[np.int64] | None]:
        """Rhythms for the lines, and what is laid down of each: cells that people have, notes of the phrase before."""
        pool = rhythm_pool(self.place, self.gap.units, self.pace, self.level, self.grid)
        if pool is None:
            return None, None
        count = len(pool.rhythms)
        taken = pool.taken(np.sort((self.chance.many_bits(_DRAWN) % np.uint64(count)).astype(np.int64)))
        openings: dict[Rhythm, _Opening] = {}
        for motif in self.motifs:
            openings.update(self._echoes(motif, _ECHOES // len(self.motifs)))
        made = taken.with_others(list(openings))
        laid: list[_Opening | None] = []
        for rhythm in made.rhythms:
            opening = openings.get(rhythm)
            if opening is None and self.motifs and self.chance.happens(_ECHO_SHARE):
                opening = self._echo(rhythm)
            elif opening is None and self.has_cells and self.chance.happens(_CELL_SHARE):
                opening = self._cell(rhythm)
            laid.append(opening)
        return made, laid_down(made.onsets.shape[1], laid)

    def _cell(self, rhythm: Rhythm) -> _Opening | None:
        harmony = self.ground.harmonies[self.ground.harmony_at[rhythm.onsets[0]]]
        fitting = [one for one in opening_cells(harmony.quality) if len(one[2]) < len(rhythm.onsets) - 1]
        if not fitting:
            return None
        _, degree, moves = self.chance.pick(fitting, [count for count, _, _ in fitting])
        return (harmony.root + degree) % 12, moves

    def _echo(self, rhythm: Rhythm) -> _Opening | None:
        """The notes of a motif in another rhythm, from another note."""
        motif = self.chance.pick(self.motifs)
        firsts = self._firsts(motif.moves, rhythm.onsets) if len(rhythm.onsets) > _ECHO_NOTES else []
        return (self.chance.pick(firsts), motif.moves) if firsts else None

    def _echoes(self, motif: Motif, count: int) -> Iterator[tuple[Rhythm, _Opening]]:
        """Lines that begin with the notes of a motif in its own rhythm (or in half the value), from other notes."""
        length = self.gap.units
        scales = (1, 2) if self.pace == "ballad" or motif.units > length - 6 else (1,)
        shortest = 6 if self.is_folk or self.level <= _PLAIN_LEVEL else 3
        for _ in range(count):
            scale = self.chance.pick(scales)
            values = [value // scale for value in motif.values]
            if min(values) < shortest:
                continue
            total = sum(values)
            starts = [
                start
                for start in range(0, length - total - 2, 3)
                if (self.place + start) % 12 == motif.place % 12 or self.grid in ("eighths", "folk")
            ]
            if not starts or any(value % (3 * scale) for value in motif.values):
                continue
            onsets = [self.chance.pick(starts)]
            for value in values:
                onsets.append(onsets[-1] + value)
            firsts = self._firsts(motif.moves, onsets)
            if firsts:
                stretch = self.place, length, self.pace, self.level, self.grid
                rhythm = continued(self.chance, *stretch, onsets)
                yield rhythm, (self.chance.pick(firsts), motif.moves)

    def _firsts(self, moves: Sequence[int], onsets: Sequence[int]) -> list[int]:
        """Pitch classes from which some moves stay in the chord and its plain extensions, or the scale off the beat."""
        found = []
        for first in range(12):
            midi, fits = first, True
            for move, onset in zip((0, *moves), onsets, strict=False):
                midi += move
                kind = self.ground.harmonies[self.ground.harmony_at[onset]].kinds[midi % 12]
                fits &= kind <= (1 if self.ground.is_beat[onset] else 2)
            if fits:
                found.append(first)
        return found

    def _manner(self) -> Manner:
        chromatic = 0.0 if self.is_folk else _CHROMATIC.get(self.level, 1.4)
        blue = 0.0 if self.is_folk else _BLUE[self.is_blues] if self.level > 1 else 0.0
        repeated = 0.0 if self.level <= _PLAIN_LEVEL else _REPEATED
        return Manner(chromatic, blue, repeated, _WIDEST.get(self.level, _LONGEST_LEAP), self.is_folk)

    def _in_reach(self, pool: Pool, midis: NDArray[np.int64]) -> NDArray[np.bool_]:
        """Which lines keep to a range and to what fingers and tongue can do."""
        limits = _limits(self.context.setting.player)
        seconds = self.context.setting.seconds(UNIT) * np.diff(pool.onsets, axis=1) * _TOLERANCE
        is_move = np.arange(1, midis.shape[1]) < pool.sizes[:, None]
        can = (seconds >= limits[midis[:, :-1], midis[:, 1:]]) | ~is_move
        spread = midis.copy()
        spread[:, 1:][~is_move] = np.broadcast_to(midis[:, :1], is_move.shape)[~is_move]
        return np.asarray(can.all(axis=1) & (np.ptp(spread, axis=1) <= _SPREAD_SEMITONES[self.level]))

    def figure(self, line: Line, merit: float) -> Figure:
        """The figure that plays a line."""
        context, gap, rhythm = self.context, self.gap, line.rhythm
        notes = []
        for number, (midi, unit, value) in enumerate(zip(line.midis, rhythm.onsets, rhythm.values, strict=True)):
            goes_down = number < len(line.moves) and line.moves[number] < 0
            pitch = self._named(int(self.ground.harmony_at[unit]), midi, "down" if goes_down else "up")
            notes.append(FigureNote(gap.start_ticks + unit * UNIT, value * UNIT, pitch))
        start = notes[0].onset_ticks
        breath = EIGHTH if start - EIGHTH - context.note.onset_ticks >= QUARTER else 0
        return Figure(
            "answer-fill",
            (context.index, context.index + 1),
            tail(context.index),
            head(context.index + 1),
            min(context.note.end_ticks, start - breath),
            gap.end_ticks,
            notes=tuple(notes),
            why=line.why(rests=context.gap_ticks >= EIGHTH),
            merit=merit,
            counts_as=_USUAL_SIZE[self.level],
        )

    def _named(self, harmony: int, midi: int, direction: Direction) -> Pitch:
        """A note spelled by its chord, the chord's scale, or the direction in which it leads."""
        name = harmony, midi, direction
        if name not in self.names:
            chord, key = self.chords[harmony], self.context.key
            self.names[name] = spelled(chord, chord_scale(chord, key), key, midi, direction)
        return self.names[name]


@dataclass(frozen=True, slots=True)
class Motif:
    """Four notes of a phrase: moves in semitones, values in units, and how many units after a beat it begins."""

    moves: tuple[int, ...]
    values: tuple[int, ...]
    place: int

    @property
    def units(self) -> int:
        """From the first attack to the last."""
        return sum(self.values)


def _motifs(context: Context) -> Iterator[Motif]:
    """The opening of the phrase that the note belongs to, and its last notes before the held one."""
    notes, seen = context.tune.notes, set()
    first, last = context.phrase.first, context.index
    for start in (first, last - _ECHO_NOTES + 1, last - _ECHO_NOTES):
        if start < first or start + _ECHO_NOTES - 1 > last:
            continue
        own = notes[start : start + _ECHO_NOTES]
        moves = tuple(b.pitch.midi - a.pitch.midi for a, b in pairwise(own))
        ticks = [b.onset_ticks - a.onset_ticks for a, b in pairwise(own)]
        offset = context.beat_offset(own[0].onset_ticks)
        reads = all(value % (3 * UNIT) == 0 and value <= 2 * QUARTER for value in ticks) and offset % (3 * UNIT) == 0
        if reads and start not in seen and any(moves) and max(map(abs, moves)) <= _LONGEST_LEAP:
            seen.add(start)
            yield Motif(moves, tuple(value // UNIT for value in ticks), offset // UNIT)


def _grid(context: Context) -> Grid:
    """In what values fills go: straight eighths, as a bossa has them, stay free of triplets; a slow line does not."""
    setting = context.setting
    if context.bar.metre.unit >= 8:
        return "eighths"
    return "folk" if setting.tradition == "folk" else "straight" if setting.is_even else "quarters"


def _range(context: Context, form: _Form) -> tuple[int, int]:
    """Lowest and highest note of a fill: the instrument's, and not far beyond the tune's."""
    instrument, beyond = context.setting.instrument, _ABOVE_SEMITONES[context.setting.level]
    reach = _SPREAD_SEMITONES[context.setting.level]
    lowest = max(instrument.lowest_midi, min(form.low - beyond, context.midi), context.midi - reach)
    highest = min(instrument.highest_midi, max(form.high + beyond, context.midi), context.midi + reach)
    return lowest, max(highest, lowest)


@dataclass(frozen=True, slots=True)
class _Form:
    """What a fill asks of the whole tune: its lowest and highest note, and whether it is a blues."""

    low: int
    high: int
    is_blues: bool


@lru_cache(maxsize=8)
def _form(tune: Tune) -> _Form:
    midis = [note.pitch.midi for note in tune.notes]
    return _Form(min(midis), max(midis), is_blues(tune))


@lru_cache(maxsize=32)
def _limits(player: Player) -> NDArray[np.float64]:
    return np.array(player.slurred_sec)


def _shuffled(chance: Chance, numbers: NDArray[np.int64]) -> list[int]:
    """The numbers in an order of chance: they stand by size."""
    return [int(numbers[place]) for place in np.argsort(chance.many_bits(len(numbers)), kind="stable")]


def _is_fill(g: Group) -> bool:
    if not g.is_fill or len(g.inner) < 3 or g.after is None:
        return False
    inside = [abs(b - a) for a, b in pairwise(g.inner)]
    ends_well = abs(g.moves[-1]) <= _FURTHEST_LEAD or g.inner[-1] % 12 in g.chord
    return ends_well and any(inside) and max(inside) <= _LONGEST_LEAP


ANSWER_FILL = Technique(
    id="answer-fill",
    family=FILLS.id,
    level=1,
    find=_answers,
    definition=Definition(_is_fill, breadth=290),
    repeats_pitch=True,
)

TECHNIQUES = (ANSWER_FILL,)
