"""Spelled pitches, note names and intervals.

A `Pitch` is a place on the staff and an alteration; its MIDI number follows from them, never the other way
round. Staff places are counted in diatonic steps: step 0 is C0, step 28 is C4 (middle C, MIDI 60).
An `Interval` is a pair (steps, semitones), so that a minor third (2, 3) and an augmented second (1, 3)
stay apart. Octave numbers are scientific (C4 = middle C, ISO 16 sets A4 = 440 Hz).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from fioritura.errors import TuneError
from fioritura.words import Message, message

__all__ = ["LETTERS", "Interval", "NoteName", "Pitch"]

LETTERS: Final = "CDEFGAB"
_NATURAL_SEMITONES: Final = (0, 2, 4, 5, 7, 9, 11)
_ALTER_TEXT: Final = {-3: "bbb", -2: "bb", -1: "b", 0: "", 1: "#", 2: "##", 3: "###"}
_ALTER_GLYPHS: Final = {-3: "♭𝄫", -2: "𝄫", -1: "♭", 0: "", 1: "♯", 2: "𝄪", 3: "♯𝄪"}
_NAME_PATTERN: Final = re.compile(r"([A-Ga-g])([#b♯♭𝄪𝄫]*)(-?\d{1,3})?")
_ALTER_VALUES: Final = {"#": 1, "♯": 1, "b": -1, "♭": -1, "𝄪": 2, "𝄫": -2}
_QUALITY_OF_PERFECT: Final = {-2: "dd", -1: "d", 0: "P", 1: "A", 2: "AA"}
_QUALITY_OF_MAJOR: Final = {-3: "dd", -2: "d", -1: "m", 0: "M", 1: "A", 2: "AA"}
_PERFECT_STEPS: Final = frozenset({0, 3, 4})


@dataclass(frozen=True, slots=True)
class Interval:
    """A directed interval: `steps` staff places and `semitones`, both negative when it falls."""

    steps: int
    semitones: int

    @classmethod
    def parse(cls, name: str) -> Interval:
        """Read a name such as ``"m3"``, ``"P5"``, ``"A4"``, ``"M9"`` or ``"-M2"`` (falling).

        Raises:
            TuneError: the name is not an interval.
        """
        match = re.fullmatch(r"(-?)(P|M|m|A{1,2}|d{1,2})(\d{1,4})", name)
        if match and int(match[3]) > 0:
            steps = int(match[3]) - 1
            table = _QUALITY_OF_PERFECT if steps % 7 in _PERFECT_STEPS else _QUALITY_OF_MAJOR
            for offset, quality in table.items():
                if quality == match[2]:
                    interval = cls(steps, _NATURAL_SEMITONES[steps % 7] + 12 * (steps // 7) + offset)
                    return -interval if match[1] else interval
        raise TuneError("no-interval", given=name)

    @property
    def name(self) -> str:
        """The trade's short name: ``"m3"``, ``"P5"``, ``"-M2"``; doubly altered ones as ``"AA4"``."""
        if self.steps < 0 or (self.steps == 0 and self.semitones < 0):
            return "-" + (-self).name
        offset = self.semitones - _NATURAL_SEMITONES[self.steps % 7] - 12 * (self.steps // 7)
        table = _QUALITY_OF_PERFECT if self.steps % 7 in _PERFECT_STEPS else _QUALITY_OF_MAJOR
        return f"{table.get(offset, f'({offset:+d})')}{self.steps + 1}"

    def __neg__(self) -> Interval:
        return Interval(-self.steps, -self.semitones)

    def __add__(self, other: Interval) -> Interval:
        return Interval(self.steps + other.steps, self.semitones + other.semitones)

    def __sub__(self, other: Interval) -> Interval:
        return Interval(self.steps - other.steps, self.semitones - other.semitones)


@dataclass(frozen=True, slots=True)
class NoteName:
    """A note without an octave: `letter` 0-6 for C-B, `alter` in semitones (flat −1, sharp +1)."""

    letter: int
    alter: int = 0

    @classmethod
    def parse(cls, text: str) -> NoteName:
        """Read ``"C"``, ``"Bb"``, ``"F♯"``; sharps and flats in ASCII or Unicode.

        Raises:
            TuneError: the text is not a note name.
        """
        match = _NAME_PATTERN.fullmatch(text.strip())
        if not match or match[3]:
            raise TuneError("no-note-name", given=text)
        return cls(LETTERS.index(match[1].upper()), sum(_ALTER_VALUES[sign] for sign in match[2]))

    @property
    def pitch_class(self) -> int:
        """0-11, C = 0."""
        return (_NATURAL_SEMITONES[self.letter] + self.alter) % 12

    @property
    def fifths(self) -> int:
        """Place on the line of fifths, C = 0, G = 1, F = −1, B flat = −2."""
        return (0, 2, 4, -1, 1, 3, 5)[self.letter] + 7 * self.alter

    @classmethod
    def from_fifths(cls, fifths: int) -> NoteName:
        """The name at a place on the line of fifths (C = 0)."""
        alter, place = divmod(fifths + 1, 7)
        return cls((3, 0, 4, 1, 5, 2, 6)[place], alter)

    def up(self, interval: Interval) -> NoteName:
        """The name an interval higher, spelled by it."""
        octaves, letter = divmod(self.letter + interval.steps, 7)
        natural = _NATURAL_SEMITONES[letter] + 12 * octaves - _NATURAL_SEMITONES[self.letter]
        return NoteName(letter, self.alter + interval.semitones - natural)

    def __str__(self) -> str:
        return LETTERS[self.letter] + _ALTER_TEXT.get(self.alter, f"({self.alter:+d})")

    @property
    def message(self) -> Message:
        """What it is called."""
        return message("note-name", letter=LETTERS[self.letter], alter=self.alter)

    @property
    def display(self) -> str:
        """For people: ``"B♭"``."""
        return LETTERS[self.letter] + _ALTER_GLYPHS.get(self.alter, f"({self.alter:+d})")


@dataclass(frozen=True, slots=True)
class Pitch:
    """A sounding or written note: `step` staff places above C0, `alter` semitones (flat −1, sharp +1)."""

    step: int
    alter: int = 0

    @classmethod
    def parse(cls, text: str) -> Pitch:
        """Read scientific notation: ``"C4"``, ``"Bb3"``, ``"F♯5"``.

        Raises:
            TuneError: the text is not a pitch.
        """
        match = _NAME_PATTERN.fullmatch(text.strip())
        if not match or match[3] is None:
            raise TuneError("no-pitch", given=text)
        name = NoteName.parse(match[1] + match[2])
        return cls(name.letter + 7 * int(match[3]), name.alter)

    @property
    def letter(self) -> str:
        """``"C"`` to ``"B"``."""
        return LETTERS[self.step % 7]

    @property
    def octave(self) -> int:
        """Scientific octave; middle C is in octave 4."""
        return self.step // 7

    @property
    def midi(self) -> int:
        """MIDI note number; middle C is 60."""
        return 12 * (self.step // 7) + 12 + _NATURAL_SEMITONES[self.step % 7] + self.alter

    @property
    def name(self) -> NoteName:
        """The note name without its octave."""
        return NoteName(self.step % 7, self.alter)

    @property
    def frequency_hz(self) -> float:
        """Equal-tempered frequency with A4 = 440 Hz (ISO 16:1975)."""
        return float(440.0 * 2.0 ** ((self.midi - 69) / 12))

    def up(self, interval: Interval) -> Pitch:
        """The pitch an interval higher (lower when the interval falls), spelled by the interval."""
        return _raised(self, interval.steps, interval.semitones)

    def to(self, other: Pitch) -> Interval:
        """The directed interval from this pitch to another."""
        return Interval(other.step - self.step, other.midi - self.midi)

    def respelled(self) -> Pitch:
        """The same key of the piano with at most one sharp or flat and no white key spelled by another letter."""
        return self if _is_simple(self.step % 7, self.alter) else _simplest(self.midi, self.alter)

    def __str__(self) -> str:
        return f"{self.name}{self.octave}"

    @property
    def message(self) -> Message:
        """What it is called."""
        return message("pitch-name", letter=self.letter, alter=self.alter, octave=self.octave)

    @property
    def display(self) -> str:
        """For people: ``"B♭3"``."""
        return f"{self.name.display}{self.octave}"


def _is_simple(letter: int, alter: int) -> bool:
    return abs(alter) <= 1 and (letter, alter) not in {(0, -1), (2, 1), (3, -1), (6, 1)}


@lru_cache(maxsize=4096)
def _raised(pitch: Pitch, steps: int, semitones: int) -> Pitch:
    step = pitch.step + steps
    return Pitch(step, pitch.midi + semitones - Pitch(step).midi)


@lru_cache(maxsize=512)
def _simplest(midi: int, direction: int) -> Pitch:
    """The plainest spelling of a MIDI number; a black key takes a sharp when `direction` is up (> 0)."""
    octave, pitch_class = divmod(midi - 12, 12)
    if pitch_class in _NATURAL_SEMITONES:
        return Pitch(7 * octave + _NATURAL_SEMITONES.index(pitch_class))
    if direction > 0:
        return Pitch(7 * octave + _NATURAL_SEMITONES.index(pitch_class - 1), 1)
    return Pitch(7 * octave + _NATURAL_SEMITONES.index(pitch_class + 1), -1)
