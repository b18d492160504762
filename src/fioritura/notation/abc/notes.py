"""What single notes of ABC mean: letters, octave marks, lengths, accidentals and slurs (abc 2.1, 4.1 to 4.3, 4.11)."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from fioritura.notation.abc.faults import UnreadableError
from fioritura.notation.assemble import RawNote
from fioritura.theory.pitch import LETTERS, Pitch
from fioritura.tune import Mark

__all__ = ["Accidentals", "Slurs", "length_parts", "note_parts"]

_NOTE: Final = re.compile(r"(\^\^?|__?|=(?:3D)?|)([A-Ga-g])([,']*)([0-9]*(?:/+[0-9]*)?)")
_ALTERS: Final = {"^": 1, "^^": 2, "_": -1, "__": -2, "=": 0, "=3D": 0, "": None}
_MIDDLE_C_STEP: Final = 28
_HIGHEST_STEP: Final = 74
_pitch = lru_cache(maxsize=1024)(Pitch)


@lru_cache(maxsize=4096)
def note_parts(text: str) -> tuple[int | None, int, int, int]:
    """Alteration (None without a sign), staff step (28 for C, 35 for c), and length as a fraction of the unit.

    Raises:
        UnreadableError: the note lies outside MIDI's range, or its length is absurd.
    """
    match = _NOTE.fullmatch(text)
    if match is None:
        raise UnreadableError("abc-no-note")
    sign, letter, octaves, length = match.groups()
    octave = letter.islower() + octaves.count("'") - octaves.count(",")
    step = _MIDDLE_C_STEP + LETTERS.index(letter.upper()) + 7 * octave
    if not 0 <= step <= _HIGHEST_STEP:
        raise UnreadableError("abc-note-outside")
    return _ALTERS[sign], step, *length_parts(length)


@lru_cache(maxsize=1024)
def length_parts(text: str) -> tuple[int, int]:
    """``""`` is 1, ``"3/2"`` 3/2, ``"/"`` a half, ``"//"`` a quarter.

    Raises:
        UnreadableError: more than 8 digits or strokes, or nothing to divide by.
    """
    upper, slash, lower = text.partition("/")
    strokes = 1 + lower.count("/") if slash else 0
    digits = lower.lstrip("/")
    if max(len(upper), len(digits), strokes) > 8 or (digits and not int(digits)):
        raise UnreadableError("abc-length-absurd")
    return int(upper or 1), int(digits) if digits else 2**strokes


class Accidentals:
    """The accidentals in force in a bar: for a staff step, or for a letter in all octaves."""

    def __init__(self) -> None:
        self._by_step: dict[int, int] = {}
        self._by_letter: dict[int, int] = {}

    def end_bar(self) -> None:
        """A bar line takes them all away."""
        self._by_step.clear()
        self._by_letter.clear()

    def pitch(
        self, alter: int | None, step: int, signature: tuple[int, ...], tied: Pitch | None, propagation: str
    ) -> Pitch:
        """The pitch of a note head by its sign, its tie, the bar's accidentals and the signature, in that order.

        `propagation` says for what the sign holds: ``"not"``, ``"octave"`` or ``"pitch"`` (all octaves).
        """
        letter = step % 7
        if alter is not None:
            self._hold(alter, step, propagation)
        elif tied is not None and tied.step == step:
            alter = tied.alter
        else:
            alter = self._by_step.get(step)
            if alter is None:
                alter = self._by_letter.get(letter, signature[letter])
        return _pitch(step, alter)

    def _hold(self, alter: int, step: int, propagation: str) -> None:
        if propagation == "octave":
            self._by_step[step] = alter
        elif propagation == "pitch":
            self._by_letter[step % 7] = alter
            for other in [other for other in self._by_step if (other - step) % 7 == 0]:
                del self._by_step[other]


class Slurs:
    """The slurs that are open. A slur of one note, and one without an end, leave no mark."""

    def __init__(self) -> None:
        self._waiting = 0
        self._open: list[RawNote] = []

    def start(self) -> None:
        """A slur begins on the next note."""
        self._waiting += 1

    def meet(self, note: RawNote) -> None:
        """The next note sounds."""
        if self._waiting:
            note.marks += (Mark.SLUR_START,) * self._waiting
            self._open += [note] * self._waiting
            self._waiting = 0

    def stop(self, last: RawNote | None) -> bool:
        """A slur ends on the last note: the innermost one, or an outer one where the innermost has only begun
        there. False when there is none."""
        if self._waiting:
            self._waiting -= 1
            return True
        if not self._open or last is None:
            return False
        has_just_begun = self._open[-1] is last
        first = self._open.pop(0 if has_just_begun and len(self._open) > 1 else -1)
        if first is last:
            _take_back(last)
        else:
            last.marks = (Mark.SLUR_STOP, *last.marks)
        return True

    def join(self, first: RawNote, second: RawNote) -> None:
        """A slur over two notes, unless one is open already."""
        if not self._open:
            first.marks += (Mark.SLUR_START,)
            second.marks = (Mark.SLUR_STOP, *second.marks)

    def end(self) -> None:
        """The voice ends."""
        for note in self._open:
            _take_back(note)
        self._open.clear()


def _take_back(note: RawNote) -> None:
    marks = list(note.marks)
    marks.remove(Mark.SLUR_START)
    note.marks = tuple(marks)
