"""Keys and modes, and the spelling of notes inside them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

from fioritura.errors import TuneError
from fioritura.theory.pitch import LETTERS, Interval, NoteName, Pitch
from fioritura.words import Message, message

__all__ = ["MODES", "Direction", "Key", "Mode", "mode_named"]

Mode = Literal["major", "minor", "dorian", "phrygian", "lydian", "mixolydian", "locrian"]
Direction = Literal["up", "down"]

MODES: Final[dict[Mode, int]] = {
    "lydian": 1,
    "major": 0,
    "mixolydian": -1,
    "dorian": -2,
    "minor": -3,
    "phrygian": -4,
    "locrian": -5,
}
"""Fifths from a mode's tonic-major signature to its own: D dorian has two sharps fewer than D major."""

_ALIASES: Final[dict[str, Mode]] = {"ionian": "major", "aeolian": "minor", "": "major", "none": "major"}


@dataclass(frozen=True, slots=True)
class Key:
    """A key signature (`fifths`: sharps > 0, flats < 0, −7 to 7) with a mode, which fixes the tonic."""

    fifths: int
    mode: Mode = "major"

    @classmethod
    def of(cls, tonic: NoteName | str, mode: str = "major") -> Key:
        """The key on a tonic: ``Key.of("Bb", "dorian")``.

        Raises:
            TuneError: an unknown mode, or a signature of more than seven sharps or flats.
        """
        name = tonic if isinstance(tonic, NoteName) else NoteName.parse(tonic)
        known = mode_named(mode)
        fifths = name.fifths + MODES[known]
        if not -7 <= fifths <= 7:
            raise TuneError("key-too-far", tonic=name, mode=known, count=abs(fifths))
        return cls(fifths, known)

    @property
    def tonic(self) -> NoteName:
        """The key note."""
        return NoteName.from_fifths(self.fifths - MODES[self.mode])

    @property
    def is_minor(self) -> bool:
        """True where the third above the tonic is minor."""
        return self.mode in {"minor", "dorian", "phrygian", "locrian"}

    def alter(self, letter: int) -> int:
        """What the signature does to a letter (0-6 for C-B): −1 flat, 0, +1 sharp."""
        return _signature(self.fifths)[letter]

    @property
    def scale(self) -> tuple[NoteName, ...]:
        """The seven notes from the tonic up, by the signature (natural minor in a minor key)."""
        first = self.tonic.letter
        return tuple(NoteName((first + n) % 7, self.alter((first + n) % 7)) for n in range(7))

    def holds(self, pitch: Pitch) -> bool:
        """True when the signature gives this pitch just as it is spelled."""
        return pitch.alter == self.alter(pitch.step % 7)

    def degree(self, pitch: Pitch) -> int:
        """1-7, the scale degree of the pitch's letter."""
        return (pitch.step - self.tonic.letter) % 7 + 1

    def step(self, pitch: Pitch, steps: int) -> Pitch:
        """The note of the key that lies `steps` staff places above (below when negative)."""
        place = pitch.step + steps
        return Pitch(place, self.alter(place % 7))

    def spell(self, midi: int, direction: Direction = "up") -> Pitch:
        """Spell a MIDI number as a player expects.

        A note of the key keeps its name. A chromatic note is the raised one below when it leads up and the
        lowered one above when it leads down, without double accidentals or spellings such as E sharp in a key
        that has none (common practice).
        """
        return _spelled(self, midi, direction)

    def transposed(self, interval: Interval) -> Key:
        """The key an interval higher; respelled with fewer than seven accidentals where it would pass six."""
        fifths = self.tonic.up(interval).fifths + MODES[self.mode]
        while fifths > 6:
            fifths -= 12
        while fifths < -6:
            fifths += 12
        return Key(fifths, self.mode)

    def __str__(self) -> str:
        return f"{self.tonic} {self.mode}"

    @property
    def message(self) -> Message:
        """What it is called; form ``inline`` within a sentence."""
        kind = "minor" if self.is_minor else "major"
        return message(
            "key-name", letter=LETTERS[self.tonic.letter], alter=self.tonic.alter, mode=self.mode, kind=kind
        )

    @property
    def display(self) -> str:
        """For people: ``"B♭ major"``."""
        return f"{self.tonic.display} {self.mode}"


def mode_named(text: str) -> Mode:
    """A mode by its name or a common other name (``"ionian"``, ``"aeolian"``), in any case.

    Raises:
        TuneError: the mode is unknown.
    """
    name = text.strip().lower()
    name = _ALIASES.get(name, name)
    for mode in MODES:
        if mode == name:
            return mode
    raise TuneError("no-mode", given=text, known=tuple(sorted(MODES)))


@lru_cache(maxsize=32)
def _signature(fifths: int) -> tuple[int, ...]:
    alters = [0] * 7
    for place in range(abs(fifths)):
        letter = NoteName.from_fifths(place % 7 - 1 if fifths > 0 else 5 - place % 7).letter
        alters[letter] += 1 if fifths > 0 else -1
    return tuple(alters)


@lru_cache(maxsize=16384)
def _spelled(key: Key, midi: int, direction: Direction) -> Pitch:
    octave = midi // 12 - 1
    around = range(7 * octave - 1, 7 * octave + 8)
    diatonic = [Pitch(step, key.alter(step % 7)) for step in around]
    for pitch in diatonic:
        if pitch.midi == midi:
            return pitch
    if direction == "up":
        raised = next(p for p in diatonic if p.midi == midi - 1)
        return Pitch(raised.step, raised.alter + 1).respelled()
    lowered = next(p for p in diatonic if p.midi == midi + 1)
    return Pitch(lowered.step, lowered.alter - 1).respelled()
