"""One drawn line of an answer fill, and what can be said of it: what it is made of, and how it ends."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from itertools import pairwise
from typing import Final, Literal, Protocol

from fioritura.techniques.fill_grammar import CHROMATIC, OUTSIDE, TONE, Ground, Harmony
from fioritura.techniques.fill_rhythm import Pace, Rhythm
from fioritura.words import Message, message

__all__ = ["Idea", "Line", "Motive", "Way"]

Idea = Literal[
    "echo",
    "third",
    "fifth",
    "guide",
    "arpeggio",
    "around",
    "chromatic",
    "waves",
    "arch",
    "valley",
    "falling",
    "rising",
]
"""What a line is made of, the more telling first."""

Way = Literal["enclosed", "semitone", "step", "third", "rest", "colour"]
"""How it ends: the next note surrounded, or reached by a semitone, a whole tone or a third; or at rest on a tone or a colour
of the chord."""

_WAYS: Final[dict[Way, float]] = {
    "enclosed": 0.5,
    "semitone": 0.45,
    "step": 0.45,
    "third": 0.3,
    "rest": 0.35,
    "colour": 0.3,
}
_GOOD: Final[dict[Idea, float]] = {"echo": 0.3, "guide": 0.2, "arpeggio": 0.05}
_BLUE_IN_BLUES, _BLUE_ELSEWHERE = 0.3, 0.0
_CLASH: Final = 0.8
"""What a line of notes that all clash on beats would lose."""

_LOST: Final = 0.8
"""What a line of chromatic notes that go nowhere would lose."""

_FIDGET: Final = 0.4
"""What a line that is all quicker than eighths would lose, but in a ballad."""

_EIGHTH_UNITS: Final = 6
_SPEECH: Final = 0.04
_ENOUGH: Final = 11
"""What each note more is worth, up to so many: short fills say little."""

_ALIKE: Final = 0.6
_SIXTEENTH_UNITS: Final = 3
_ARPEGGIO_NOTES: Final = 3
_DIMINISHED: Final = 4


class Motive(Protocol):
    """Notes of the phrase before: their moves in semitones."""

    @property
    def moves(self) -> tuple[int, ...]:
        """Semitones from note to note."""


class Line:
    """A line of MIDI numbers in a rhythm over its ground."""

    def __init__(
        self,
        midis: tuple[int, ...],
        rhythm: Rhythm,
        ground: Ground,
        motifs: Sequence[Motive],
        is_blues: bool,
        pace: Pace,
    ) -> None:
        self.midis, self.rhythm, self.ground = midis, rhythm, ground
        self.moves = tuple(b - a for a, b in pairwise(midis))
        self.harmonies = [ground.harmonies[ground.harmony_at[onset]] for onset in rhythm.onsets]
        self.kinds = [one.kinds[midi % 12] for one, midi in zip(self.harmonies, midis, strict=True)]
        self.echoes = sum(_holds(self.moves, motif.moves) for motif in motifs)
        self.is_blues, self.pace = is_blues, pace

    @cached_property
    def way(self) -> Way:
        """How the line ends."""
        goal = self.ground.goal
        if goal is None or not self.rhythm.leads:
            return "rest" if self.kinds[-1] == TONE else "colour"
        before, last = (midi - goal for midi in self.midis[-2:])
        if before * last < 0 and max(abs(before), abs(last)) <= 2:
            return "enclosed"
        return "semitone" if abs(last) == 1 else "step" if abs(last) == 2 else "third"

    @cached_property
    def ideas(self) -> frozenset[Idea]:
        """All that the line is made of, but for its contour."""
        found: set[Idea] = set()
        if self.echoes:
            found.add("echo")
        for number, (one, midi) in enumerate(zip(self.harmonies, self.midis, strict=True)):
            if one.is_blue(midi):
                found.add("third" if (midi - one.root) % 12 == 3 else "fifth")
            elif self.kinds[number] == CHROMATIC:
                found.add("chromatic")
        if self._brings_a_guide_tone():
            found.add("guide")
        if self._longest_arpeggio() >= _ARPEGGIO_NOTES:
            found.add("arpeggio")
        if any(map(self._is_around, range(2, len(self.midis)))):
            found.add("around")
        return frozenset(found)

    def _brings_a_guide_tone(self) -> bool:
        """The first note over a new chord is its third or seventh."""
        for (before, after), midi in zip(pairwise(self.harmonies), self.midis[1:], strict=True):
            if after is not before:
                return (midi - after.root) % 12 in _guides(after)
        return False

    def _longest_arpeggio(self) -> int:
        best = run = 1
        way = 0
        for number, move in enumerate(self.moves):
            is_leap = 3 <= abs(move) <= 5 and self.kinds[number] == TONE == self.kinds[number + 1]
            same = run == 1 or (move > 0) == (way > 0)
            run = (run + 1 if same else 2) if is_leap else 1
            way = move
            best = max(best, run)
        return best

    def _is_around(self, number: int) -> bool:
        """The two notes before lie on both sides of this one, each within a whole tone."""
        one, other = (self.midis[place] - self.midis[number] for place in (number - 2, number - 1))
        return one * other < 0 and max(abs(one), abs(other)) <= 2

    @cached_property
    def contour(self) -> Idea:
        """Rising, falling, with one turn (arch, valley) or several (waves)."""
        signs = [move > 0 for move in self.moves if move]
        turns = sum(a != b for a, b in pairwise(signs))
        if turns > 1:
            return "waves"
        if turns:
            return "arch" if signs[0] else "valley"
        return "rising" if signs[0] else "falling"

    @property
    def idea(self) -> Idea:
        """The most telling thing about the line."""
        order: tuple[Idea, ...] = ("echo", "third", "fifth", "guide", "arpeggio", "around", "chromatic")
        return next((idea for idea in order if idea in self.ideas), self.contour)

    @cached_property
    def need(self) -> float:
        """How well the line does what its place asks for, about 0 to 1."""
        worth = _WAYS[self.way] + sum(_GOOD.get(idea, 0.0) for idea in self.ideas)
        if self.ideas & {"third", "fifth"}:
            worth += _BLUE_IN_BLUES if self.is_blues else _BLUE_ELSEWHERE
        clashes = sum(
            bool(kind >= OUTSIDE and self.ground.is_beat[onset])
            for kind, onset in zip(self.kinds, self.rhythm.onsets, strict=True)
        )
        lost = sum(
            kind == CHROMATIC and not 0 < abs(move) <= 2
            for kind, move in zip(self.kinds, self._moves_on(), strict=True)
        )
        quick = sum(value < _EIGHTH_UNITS for value in self.rhythm.values) if self.pace != "ballad" else 0
        worth -= float(_LOST * lost + _FIDGET * quick) / len(self.midis)
        return worth + _SPEECH * min(len(self.midis), _ENOUGH) - _CLASH * clashes / len(self.midis)

    def _moves_on(self) -> tuple[int, ...]:
        """The move after each note; the last goes to the goal, or stays by a step where there is none."""
        goal = self.ground.goal
        return (*self.moves, goal - self.midis[-1] if goal is not None and self.rhythm.leads else 1)

    def is_like(self, other: Line) -> bool:
        """True when most of the notes are the same at the same places."""
        return len(self.attacks & other.attacks) >= _ALIKE * max(len(self.midis), len(other.midis))

    @cached_property
    def attacks(self) -> frozenset[tuple[int, int]]:
        """When each note begins, and its MIDI number."""
        return frozenset(zip(self.rhythm.onsets, self.midis, strict=True))

    def why(self, *, rests: bool) -> Message:
        """What the line does; `rests` says that the melody rests (else it holds a long note)."""
        quick = sum(value <= _SIXTEENTH_UNITS for value in self.rhythm.values)
        return message(
            "answer-fill-why",
            rests=rests,
            count=len(self.midis),
            doubled=self.pace == "ballad" and 2 * quick > len(self.midis),
            idea=self.idea,
            way=self.way,
        )


def _holds(moves: Sequence[int], part: Sequence[int]) -> bool:
    return any(tuple(moves[start : start + len(part)]) == tuple(part) for start in range(len(moves) - len(part) + 1))


def _guides(one: Harmony) -> frozenset[int]:
    """Third and seventh of a chord as semitones above its root."""
    tones = {step for step in range(12) if one.kinds[(one.root + step) % 12] == TONE}
    return frozenset(tones & ({3, 9} if one.quality == _DIMINISHED else {3, 4, 10, 11}))
