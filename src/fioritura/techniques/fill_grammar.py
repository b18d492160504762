"""Lines of answer fills, drawn note by note as people's short phrases move.

What move follows which, from which degree of which chord, on a beat or off it, stands in `fill_tables.json`. Many lines are
drawn side by side and each is a fair draw: the likeliest line would be bland. Only what people hardly do and students
should not is kept out: a chromatic note left by leap, a note outside the chord on a beat that goes nowhere, a leap
that goes on in its own direction, an ending that neither leads nor rests.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import Chance
from fioritura.techniques.fill_rhythm import Pool, fill_tables
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.scale import key_scale

__all__ = [
    "CHROMATIC",
    "FREE",
    "OUTSIDE",
    "TONE",
    "Ground",
    "Harmony",
    "Manner",
    "drawn_lines",
    "laid_down",
    "opening_cells",
]

TONE, EXTENSION, OUTSIDE, CHROMATIC = range(4)
"""What a note is to chord and key: of the chord; a plain ninth, eleventh or thirteenth; another of the key; neither."""

FREE: Final = 99
"""Stands for a move that is not given."""

_WIDEST: Final = 12
_MOVES: Final = np.arange(-_WIDEST, _WIDEST + 1)
_SIZES: Final = np.abs(_MOVES)
_EXTENSIONS: Final = ({2, 5, 9}, {2, 5, 9}, {2, 5, 9}, {1, 2, 5, 8}, {2, 5, 8, 11})
"""Plain extensions as semitones above the root, by quality (major, dominant, minor, half-diminished, diminished)."""

_BLUES: Final = ({3, 6}, {3, 6}, {6}, frozenset[int](), frozenset[int]())
"""Blue notes as semitones above the root: the blue third, the flat fifth."""

_BLUE_THIRD_EXITS: Final = frozenset({-3, -2, -1, 1, 2})
_FOLK_MOVES: Final = (0.02, 1.0, 1.0, 0.5, 0.5, 0.25, 0.0, 0.15, 0.0, 0.0, 0.0, 0.0, 0.03)
"""How likely folk players' fills move by 0-12 semitones: steps, then thirds of the chord (common practice)."""

_NEAR: Final = (0.0, 0.8, 0.9, 1.0, 1.0, 0.9, 0.6, 0.7, 0.5, 0.4, 0.2, 0.1, 0.1)
"""How likely a fill begins 0-12 semitones from the note that it answers (a third of people's phrases: a fifth or more)."""

_LEADING: Final = (0.0, 1.0, 0.9, 0.75, 0.75, *[0.0] * 8)
"""How welcome a last note is 0-12 semitones from the note that it leads to."""

_LEADING_KINDS: Final = (1.0, 0.5, 0.3, 0.5)
"""The same by what it is to the chord."""

_COLOUR: Final = 0.35
"""How welcome a ninth or thirteenth is as last note before a rest, to a note of the chord."""

_TONES: Final = (1.0, 0.3, 0.3, 0.35, 0.35, 0.5, 0.5, 0.7, 0.5, 0.5, 0.5, 0.5)
"""The same for the chord's notes, by semitones above the root: people's phrases end on roots and fifths."""

_COLOURS: Final = ({2, 9}, {2, 9}, {2, 5, 9}, {5}, {2})
"""Extensions on which a line may rest, as semitones above the root, by quality."""

_REACH_A_MOVE: Final = 4
_PULL: Final = 0.9
"""What a semitone is worth that lies out of reach of the goal, at `_REACH_A_MOVE` semitones a move."""

_FURTHEST: Final = 127
_LEAP: Final = 7
_WARMTH: Final = 1.04
"""How much flatter the odds are than the tables': what is kept out, and the choice among lines, make them blander."""

_WIDER: Final = 1.15
"""How much likelier thirds and leaps are than in the tables: what leads and resolves adds steps."""

_WHOLE_TONE: Final = 0.5
"""How often a chromatic note is left by a whole tone, to a semitone."""

_WIDE: Final = 5
"""From so many semitones on two leaps in a row stay within the chord."""

_ONWARD: Final = 1.45
"""How much likelier a line keeps its direction than in the tables: what is kept out, and the goal, turn it more often."""

_RIFF: Final = 1.5
"""How much likelier a note that has been said again is said once more: who repeats notes, makes a riff of them."""

_FOURTH: Final = 5
_LAST_LEAP, _LAST_AGAIN = 0.25, 2.5
"""How welcome a leap wider than a fourth, and a note said again, are as last move: people like to close on two of a pitch."""

_LONG_UNITS: Final = 12
_LONG_TENSION: Final = 0.03
"""How likely a note outside the chord is where it lasts a quarter or more, to other notes."""

_SURE: Final = 1e-4


@dataclass(frozen=True, slots=True)
class Harmony:
    """A chord in its key as the tables see it: root (0-11), quality (0-4), and what each of the twelve notes is."""

    root: int
    quality: int
    kinds: tuple[int, ...]

    @classmethod
    def of(cls, chord: Chord | None, key: Key) -> Harmony:
        """The harmony of a chord; without one, that of the key's tonic.

        Examples:
            >>> from fioritura.theory.chord_symbol import read_chord
            >>> Harmony.of(read_chord("G7"), Key.of("C")).kinds[6] == CHROMATIC
            True
        """
        return _harmony(chord, key)

    def is_blue(self, midi: int) -> bool:
        """True for the blue third of a major or dominant chord, and for a flat fifth that is not the chord's own."""
        return (midi - self.root) % 12 in _BLUES[self.quality] and self.kinds[midi % 12] != TONE

    def is_tense(self, midi: int) -> bool:
        """True for a note that wants to go on: foreign to the chord, or the fourth over a major one."""
        kind = self.kinds[midi % 12]
        return kind >= OUTSIDE or (kind == EXTENSION and self.quality <= 1 and (midi - self.root) % 12 == 5)


@lru_cache(maxsize=1024)
def _harmony(chord: Chord | None, key: Key) -> Harmony:
    root = chord.root.pitch_class if chord else key.tonic.pitch_class
    quality = _quality(chord, key)
    tones = chord.pitch_classes if chord else {(root + step) % 12 for step in (0, 3 if quality == 2 else 4, 7)}
    scale = key_scale(key).pitch_classes
    kinds = (
        TONE
        if pitch_class in tones
        else EXTENSION
        if (pitch_class - root) % 12 in _EXTENSIONS[quality]
        else OUTSIDE
        if pitch_class in scale
        else CHROMATIC
        for pitch_class in range(12)
    )
    return Harmony(root, quality, tuple(kinds))


def _quality(chord: Chord | None, key: Key) -> int:
    if chord is None:
        return 2 if key.is_minor else 0
    if chord.is_half_diminished:
        return 3
    if chord.is_diminished:
        return 4
    return 2 if chord.is_minor else 1 if chord.is_dominant else 0


@dataclass(frozen=True, slots=True)
class Manner:
    """How a player fills: `chromatic` and `blue` weigh such notes, `repeated` notes said again, `widest` is the widest
    leap in semitones."""

    chromatic: float = 1.0
    blue: float = 1.0
    repeated: float = 1.0
    widest: int = _WIDEST
    is_folk: bool = False


@dataclass(frozen=True, eq=False)
class Ground:
    """What lines are drawn over: the note before and the goal (None where nothing follows), the lowest and the highest
    note, and for each unit from the earliest attack its harmony (a number) and whether it is on a beat."""

    before: int
    goal: int | None
    low: int
    high: int
    harmonies: tuple[Harmony, ...]
    harmony_at: NDArray[np.int64]
    is_beat: NDArray[np.bool_]


def drawn_lines(
    chance: Chance, pool: Pool, ground: Ground, manner: Manner, given: NDArray[np.int64] | None = None
) -> tuple[NDArray[np.int64], NDArray[np.bool_]]:
    """A line for each rhythm of a pool: MIDI numbers (as wide as the pool), and which lines came to an end.

    `given` holds moves that are laid down beforehand, one row for each rhythm and `FREE` elsewhere; its first column holds
    the pitch class of the first note.

    Examples:
        >>> from fioritura.theory.chord_symbol import read_chord
        >>> from fioritura.techniques.fill_rhythm import Rhythm
        >>> pool = Pool.of([Rhythm((0, 6, 12, 18), 6, leads=True)])
        >>> harmony = Harmony.of(read_chord("G7"), Key.of("C"))
        >>> at, beats = np.zeros(25, dtype=np.int64), np.arange(25) % 12 == 0
        >>> lines, are_whole = drawn_lines(Chance(1), pool, Ground(67, 64, 60, 79, (harmony,), at, beats), Manner())
        >>> lines.shape, bool(are_whole[0]), 1 <= abs(int(lines[0, -1]) - 64) <= 4
        ((1, 4), True, True)
    """
    return _Draw(chance, pool, ground, manner, given).lines()


class _Draw:
    """Lines that are drawn side by side."""

    def __init__(
        self, chance: Chance, pool: Pool, ground: Ground, manner: Manner, given: NDArray[np.int64] | None
    ) -> None:
        self.pool, self.ground, self.manner = pool, ground, manner
        self.rows, self.width = pool.onsets.shape
        self.given = np.full((self.rows, self.width), FREE) if given is None else given
        self.chances = (chance.many_bits(self.rows * self.width) >> np.uint64(11)).astype(np.float64) * 2.0**-53
        self.chances = self.chances.reshape(self.rows, self.width)
        self.harmony = ground.harmony_at[pool.onsets]
        self.beat = ground.is_beat[pool.onsets]
        self.roots = np.array([one.root for one in ground.harmonies])
        self.qualities = np.array([one.quality for one in ground.harmonies])
        self.kinds = np.array([one.kinds for one in ground.harmonies])
        self.weights = np.array([_note_weights(one, manner) for one in ground.harmonies])
        self.tense = np.array([[one.is_tense(midi) for midi in range(12)] for one in ground.harmonies])
        self.resting = np.array([_resting(one) for one in ground.harmonies])
        self.is_long = np.diff(pool.onsets, axis=1, append=0) >= _LONG_UNITS
        self.exits = np.array(
            [[_exit_of(one, midi, on_beat=False) for midi in range(12)] for one in ground.harmonies]
        )
        self.exits_on_beat = np.array(
            [[_exit_of(one, midi, on_beat=True) for midi in range(12)] for one in ground.harmonies]
        )
        self.repeats = np.where(_MOVES == 0, manner.repeated, 1.0)
        self.reach = (manner.widest >= _SIZES).astype(np.float64)
        self.line = np.zeros((self.rows, self.width), dtype=np.int64)
        self.is_alive = np.ones(self.rows, dtype=bool)

    def lines(self) -> tuple[NDArray[np.int64], NDArray[np.bool_]]:
        self.line[:, 0] = self._first()
        move = np.full(self.rows, FREE)
        for place in range(1, self.width):
            rows = int((self.pool.sizes > place).sum())
            odds = self._odds(place, move[:rows])
            reached = np.cumsum(odds, axis=1)
            total = reached[:, -1]
            wanted = self.chances[:rows, place] * total
            move = (reached <= wanted[:, None]).sum(axis=1)
            move = np.minimum(move, 2 * _WIDEST) - _WIDEST
            move = np.where(total > _SURE, move, 0)
            self.is_alive[:rows] &= total > _SURE
            self.line[:rows, place] = self.line[:rows, place - 1] + move
        return self.line, self.is_alive

    def _first(self) -> NDArray[np.int64]:
        """First notes: by the degrees on which people begin, not too far from the note before."""
        ground = self.ground
        pitches = np.arange(ground.low, ground.high + 1)
        near = np.array(_NEAR)[np.minimum(np.abs(pitches - ground.before), _WIDEST)]
        near = near * (np.abs(pitches - ground.before) <= _WIDEST)
        degrees = np.array(fill_tables()["first degrees"])
        odds = np.array(
            [
                near * degrees[one.quality][(pitches - one.root) % 12] * weights[pitches % 12]
                for one, weights in zip(ground.harmonies, self.weights, strict=True)
            ]
        )[self.harmony[:, 0]]
        wanted = self.given[:, 0]
        odds = np.where((wanted[:, None] == FREE) | (pitches % 12 == wanted[:, None]), odds, 0.0)
        reached = np.cumsum(odds, axis=1)
        self.is_alive &= reached[:, -1] > 0
        places = (reached <= (self.chances[:, 0] * reached[:, -1])[:, None]).sum(axis=1)
        return np.asarray(pitches[places.clip(max=len(pitches) - 1)])

    def _odds(self, place: int, came: NDArray[np.int64]) -> NDArray[np.float64]:
        """Odds of each move to the note at a place, after the move before: shape (rows, moves)."""
        ground, rows = self.ground, len(came)
        old, harmony = self.line[:rows, place - 1], self.harmony[:rows, place]
        table = _folk_table() if self.manner.is_folk else _move_table()
        degree = (old - self.roots[harmony]) % 12
        row = ((_classes()[np.minimum(came, 13) + 13] * 5 + self.qualities[harmony]) * 12 + degree) * 2
        odds = table.take(row + ~self.beat[:rows, place], axis=0)
        new = old[:, None] + _MOVES
        notes = harmony[:, None] * 12 + new % 12
        kinds = self.kinds.take(notes)
        odds *= self.weights.take(notes) * self.reach
        odds *= (new >= ground.low) & (new <= ground.high) & ((kinds < OUTSIDE) | (_SIZES < 6))
        odds *= np.where(self.is_long[:rows, place, None] & self.tense.take(notes), _LONG_TENSION, 1.0)
        odds *= self._left_well(place, came, kinds)
        odds *= self._aimed(place, new, kinds, notes)
        laid = self.given[:rows, place]
        laid_down = ((laid[:, None] == _MOVES) & (odds > 0)).astype(np.float64)
        return np.asarray(np.where((laid == FREE)[:, None], odds, laid_down))

    def _left_well(self, place: int, came: NDArray[np.int64], kinds: NDArray[np.int64]) -> NDArray[np.float64]:
        """How well each move, to notes of some kinds, leaves the note before the place."""
        rows = len(came)
        old, harmony = self.line[:rows, place - 1], self.harmony[:rows, place - 1]
        note = harmony * 12 + old % 12
        exits = np.where(self.beat[:rows, place - 1], self.exits_on_beat.take(note), self.exits.take(note))
        fits = _exit_table().take(exits, axis=0)
        after = np.minimum(came, 13) + 13
        fits *= _after_table().take(after, axis=0)
        stays = (self.kinds.take(note) == TONE)[:, None] & (kinds == TONE)
        return np.asarray(fits * np.where(stays, 1.0, _wide_table().take(after, axis=0)) * self.repeats)

    def _aimed(
        self, place: int, new: NDArray[np.int64], kinds: NDArray[np.int64], notes: NDArray[np.int64]
    ) -> NDArray[np.float64]:
        """How well each note serves the end of its line: that it leads to the goal, or rests."""
        goal, sizes = self.ground.goal, self.pool.sizes[: len(new)]
        is_last = (sizes == place + 1)[:, None]
        resting = self.resting.take(notes)
        if goal is None:
            return np.where(is_last, resting, 1.0)
        away, leads = np.abs(new - goal), self.pool.leads[: len(new), None]
        reach = _REACH_A_MOVE * (sizes - place)[:, None]
        pulled = _pulls().take(np.minimum(np.maximum(away - reach, 0), _FURTHEST) * leads)
        if not is_last.any():
            return pulled
        leading = np.array(_LEADING).take(np.minimum(away, _WIDEST)) * np.array(_LEADING_KINDS).take(kinds)
        leading *= ((kinds != CHROMATIC) | (away <= 2)) * _last_table()
        return np.where(is_last, np.where(leads, leading, resting * (away > 0) * _last_table()), pulled)


def _resting(one: Harmony) -> list[float]:
    """How welcome each of the twelve notes is as last note before a rest."""
    found = []
    for pitch_class, kind in enumerate(one.kinds):
        is_colour = kind == EXTENSION and (pitch_class - one.root) % 12 in _COLOURS[one.quality]
        found.append(_TONES[(pitch_class - one.root) % 12] if kind == TONE else _COLOUR * is_colour)
    return found


def _note_weights(one: Harmony, manner: Manner) -> list[float]:
    """What each of the twelve notes is worth over a harmony, by kind and as a blue note."""
    found = []
    for pitch_class, kind in enumerate(one.kinds):
        is_blue = (pitch_class - one.root) % 12 in _BLUES[one.quality] and kind != TONE
        found.append(
            (manner.blue if is_blue else 1.0) * (manner.chromatic if kind == CHROMATIC and not is_blue else 1.0)
        )
    return found


@cache
def _move_table() -> NDArray[np.float64]:
    """Odds of each move, one row for each class of the move before, quality, degree of the old note, and beat or none."""
    tables = fill_tables()
    scores = np.array(tables["moves"])[:, None, None] + np.array(tables["moves by degree"])[None]
    scores = scores.reshape(-1, len(_MOVES)) + np.log(_WIDER) * (_SIZES > 2)
    odds = np.exp((scores - scores.max(axis=-1, keepdims=True)) / _WARMTH)
    return np.asarray(odds / odds.sum(axis=-1, keepdims=True))


@cache
def _folk_table() -> NDArray[np.float64]:
    """The same by folk players' custom, alike after every move and from every degree."""
    odds = np.array(_FOLK_MOVES)[_SIZES]
    return np.broadcast_to(odds / odds.sum(), _move_table().shape)


@cache
def _last_table() -> NDArray[np.float64]:
    """How welcome each move is as the last."""
    return np.where(_SIZES > _FOURTH, _LAST_LEAP, np.where(_SIZES == 0, _LAST_AGAIN, 1.0))


@cache
def _pulls() -> NDArray[np.float64]:
    """What a note is worth that lies so many semitones out of reach of the goal."""
    return np.asarray(_PULL ** np.arange(_FURTHEST + 1))


def _exit_of(one: Harmony, midi: int, *, on_beat: bool) -> int:
    """How a note is left, as a row of `_exit_table`."""
    if one.quality <= 1 and (midi - one.root) % 12 == 3 and one.kinds[midi] != TONE:
        return 3
    if one.kinds[midi] == CHROMATIC:
        return 2
    return int(on_beat and one.is_tense(midi))


@cache
def _exit_table() -> NDArray[np.float64]:
    """Moves by which a note is left: any; a step, from a tense note on a beat; rather a semitone, from a chromatic note;
    from a blue third a step, or a minor third down to the root."""
    steps = (_SIZES >= 1) & (_SIZES <= 2)
    chromatic = (_SIZES == 1) + _WHOLE_TONE * (_SIZES == 2)
    blue = np.isin(_MOVES, list(_BLUE_THIRD_EXITS))
    return np.array([np.ones(len(_MOVES)), steps, chromatic, blue], dtype=np.float64)


@cache
def _after_table() -> NDArray[np.float64]:
    """Moves that may follow the move before (-13 to 13, 13 and more: none): no leap in the direction of a wide one."""
    came = np.arange(-13, 14)[:, None]
    same_way = np.sign(came) * _MOVES * (np.abs(came) <= _WIDEST)
    goes_on = (np.abs(came) >= _LEAP) & (same_way > 2)
    onward = np.where(same_way > 0, _ONWARD, np.where((came == 0) & (_MOVES == 0), _RIFF, 1.0))
    return np.asarray(~goes_on * onward, dtype=np.float64)


@cache
def _wide_table() -> NDArray[np.float64]:
    """The same for notes that leave the chord: no two wide leaps in a row."""
    came = np.arange(-13, 14)[:, None]
    return np.asarray(~((np.abs(came) >= _WIDE) & (np.abs(came) <= _WIDEST) & (_SIZES >= _WIDE)), dtype=np.float64)


@cache
def _classes() -> NDArray[np.int64]:
    """The class of the move before, by the move -12 to 12 (13: none)."""
    found = []
    for move in range(-13, 14):
        size = abs(move)
        wide = 0 if size <= 2 else 1 if size <= 4 else 2
        found.append(0 if size > _WIDEST else 4 if move == 0 else 3 - wide if move < 0 else 5 + wide)
    return np.array(found)


@lru_cache(maxsize=8)
def opening_cells(quality: int) -> tuple[tuple[float, int, tuple[int, ...]], ...]:
    """How people's phrases go over a quality of chord: times found, the first note above the root, its moves.

    Examples:
        >>> opening_cells(1)[0]
        (25.0, 10, (-1, -2))
    """
    return tuple((float(count), degree, tuple(moves)) for count, degree, moves in fill_tables()["cells"][quality])


def laid_down(width: int, openings: Sequence[tuple[int, Sequence[int]] | None]) -> NDArray[np.int64]:
    """The rows of `given` for openings: each a first pitch class and moves, or None for a free line.

    Examples:
        >>> laid_down(4, [(7, (3, 2)), None]).tolist()
        [[7, 3, 2, 99], [99, 99, 99, 99]]
    """
    rows = np.full((len(openings), width), FREE)
    for row, opening in zip(rows, openings, strict=True):
        if opening is not None:
            first, moves = opening
            row[0] = first
            row[1 : 1 + len(moves)] = moves[: width - 1]
    return rows
