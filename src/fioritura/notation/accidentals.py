"""Which notes need an accidental on paper.

An accidental holds for its line or space until the bar line (common practice). A note carried over a bar line by a
tie needs none, and gives none to the notes after it. A courtesy accidental reminds the reader once where the same
place was altered in the bar before, or where another octave of the letter is altered in this bar.
"""

from __future__ import annotations

from typing import Final, Literal

from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch

__all__ = ["ACCIDENTAL_NAMES", "AccidentalMemory", "Need"]

Need = Literal["none", "needed", "courtesy"]

ACCIDENTAL_NAMES: Final = {
    -2: "flat-flat",
    -1: "flat",
    0: "natural",
    1: "sharp",
    2: "double-sharp",
}
"""MusicXML 4.0's names by alteration in semitones; no instrument's part goes beyond double accidentals."""


class AccidentalMemory:
    """What a reader has in mind: the key, the accidentals of this bar and those of the bar before."""

    def __init__(self) -> None:
        self._key = Key(0)
        self._here: dict[int, int] = {}
        self._before: dict[int, int] = {}

    def open_bar(self, key: Key) -> None:
        """Cross a bar line into a bar in `key`."""
        self._key = key
        self._before = {step: alter for step, alter in self._here.items() if alter != key.alter(step % 7)}
        self._here = {}

    def carry(self, pitch: Pitch) -> None:
        """Meet a note that a tie brings from the bar before."""
        if not self._key.holds(pitch):
            self._before[pitch.step] = pitch.alter

    def need(self, pitch: Pitch) -> Need:
        """What a note needs; notes are asked for in the order in which they stand."""
        step, alter = pitch.step, pitch.alter
        in_force = self._here.get(step, self._key.alter(step % 7))
        reminds = self._before.pop(step, alter) != alter and step not in self._here
        elsewhere = step not in self._here and any(
            other != alter for place, other in self._here.items() if (place - step) % 7 == 0
        )
        if alter == in_force and not reminds and not elsewhere:
            return "none"
        self._here[step] = alter
        return "needed" if alter != in_force else "courtesy"
