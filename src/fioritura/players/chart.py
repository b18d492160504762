"""A fingering chart as readable text, and what it becomes.

A chart has one line for each written pitch: the pitch, its register, and its fingerings, the usual one first::

    Bb4   1   1 bis | 1 2 sideBb | 1 4 | ~1 5

Keys are those pressed or covered. Between bars stand other usual fingerings; `~` marks one for trills and quick
passing only (poorer in tone or tuning). `(bis)` is a key that may be down or up at will, `T/Tb` means either key,
and `4+5+6` keys that go together. For brass the register is the partial of the harmonic series; on the trombone
the keys ``s1`` to ``s7`` are slide positions. Which digit works a key, and what it is called, stands in the
chart's key table.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from itertools import product
from typing import Final, Literal

from fioritura.errors import RangeError
from fioritura.theory.pitch import Pitch
from fioritura.words import Message, message

__all__ = ["SLIDE_POSITIONS", "Digit", "Fingering", "FingeringChart", "Handling", "Key"]

Digit = Literal["LT", "L1", "L2", "L3", "L4", "LP", "R1", "R2", "R3", "R4", "RS", "slide"]
"""Left thumb, index to little finger, palm; right index to little finger, side of the hand; the trombone's slide."""

SLIDE_POSITIONS: Final = {f"s{number}": number for number in range(1, 8)}
"""The trombone's keys by position."""

ALTERNATE_PENALTY: Final = 0.5
TRILL_PENALTY: Final = 2.0


@dataclass(frozen=True, slots=True)
class Key:
    """A key, hole or valve: the digit that works it and its name, a message or text that is the same in every language.

    `is_open_hole`: the finger itself must seal it. `roll` is the cost of taking or leaving the key while the same
    digit holds another, in the unit of `fingering.pair_cost`.
    """

    digit: Digit
    name: Message | str
    is_open_hole: bool = False
    roll: float = 1.0


@dataclass(frozen=True, slots=True)
class Fingering:
    """One way to play a written pitch.

    `keys` are key ids in the order of the chart, `register` the register or partial it sounds in, `penalty` what
    it costs in itself to choose it (0 for the usual fingering), in the unit of `fingering.pair_cost`.
    """

    pitch: Pitch
    keys: tuple[str, ...]
    register: int
    penalty: float = 0.0

    def __str__(self) -> str:
        return f"{self.pitch}: {' '.join(self.keys) or 'open'}"


@dataclass(frozen=True, slots=True)
class Handling:
    """What an instrument family asks for beside plain finger movements, in the unit "one strong finger moves".

    `register` is the cost of each register (or partial) crossed and `upward` comes on top when it is crossed
    upwards; `seal` is for each open hole after the first that must be covered at once; `travel` for each slide
    position. `agility` multiplies the note rate. All common practice, set by ear and from memory.
    """

    register: float = 0.5
    upward: float = 0.0
    seal: float = 0.0
    travel: float = 0.0
    agility: float = 1.0


@dataclass(frozen=True, eq=False)
class FingeringChart:
    """The fingerings of an instrument family by written pitch."""

    family: str
    keys: dict[str, Key]
    text: str = field(repr=False)
    handling: Handling = Handling()

    @cached_property
    def fingerings(self) -> tuple[Fingering, ...]:
        """All fingerings, by pitch from low to high, the usual one of a pitch first."""
        lines = (line.split(maxsplit=2) for line in self.text.splitlines() if line.strip())
        found = [
            fingering
            for name, register, *choices in lines
            for fingering in _fingerings(Pitch.parse(name), int(register), "".join(choices))
        ]
        return tuple(sorted(found, key=lambda fingering: fingering.pitch.midi))

    @cached_property
    def numbers_by_midi(self) -> dict[int, tuple[int, ...]]:
        """Numbers of the fingerings of each written MIDI number."""
        numbers: dict[int, tuple[int, ...]] = {}
        for number, fingering in enumerate(self.fingerings):
            midi = fingering.pitch.midi
            numbers[midi] = (*numbers.get(midi, ()), number)
        return numbers

    def numbers_of(self, pitch: Pitch) -> tuple[int, ...]:
        """Numbers of the fingerings of a written pitch.

        Raises:
            RangeError: the chart has no fingering for it.
        """
        numbers = self.numbers_by_midi.get(pitch.midi)
        if numbers is None:
            low, high = self.fingerings[0].pitch, self.fingerings[-1].pitch
            raise RangeError("no-fingering", pitch=pitch, low=low, high=high)
        return numbers

    def fingerings_of(self, pitch: Pitch) -> tuple[Fingering, ...]:
        """The fingerings of a written pitch, the usual one first.

        Raises:
            RangeError: the chart has no fingering for it.
        """
        return tuple(self.fingerings[number] for number in self.numbers_of(pitch))

    def in_words(self, fingering: Fingering) -> Message:
        """A fingering as a player says it: "1, 2 and side B♭"."""
        if not fingering.keys:
            return message("fingering-open")
        return message("fingering", keys=tuple(self.keys[key].name for key in fingering.keys))


def _fingerings(pitch: Pitch, register: int, choices: str) -> list[Fingering]:
    found = []
    for place, choice in enumerate(choices.split("|")):
        penalty = TRILL_PENALTY if "~" in choice else ALTERNATE_PENALTY if place else 0.0
        tokens = choice.replace("~", "").split()
        for groups in product(*map(_options, tokens)):
            found.append(Fingering(pitch, tuple(key for group in groups for key in group), register, penalty))
    return found


def _options(token: str) -> list[tuple[str, ...]]:
    """What a token of the chart may stand for, as groups of keys: ``"(a/b+c)"`` is nothing, a, or b with c."""
    groups = [tuple(group.split("+")) for group in token.strip("()").split("/")]
    return [(), *groups] if token.startswith("(") else groups
