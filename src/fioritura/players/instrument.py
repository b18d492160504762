"""Wind instruments: transposition, written range, clef and General MIDI sound.

Transpositions are those of orchestration handbooks, checked in the tests against music21's instruments; written
ranges are common practice for a competent player (saxophones: B♭3 to F♯6 with the high F♯ key). Programs are
General MIDI 1, counted from 1.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from fioritura.theory.pitch import Interval, NoteName, Pitch
from fioritura.words import Message, message

__all__ = ["INSTRUMENTS", "Clef", "Instrument"]

Clef = Literal["treble", "bass"]


@dataclass(frozen=True, slots=True)
class Instrument:
    """A wind instrument.

    `transposition` leads from the sounding to the written pitch. `lowest` and `highest` are written pitches.
    `reading_octave` is the octave in which the instrument plays a lead sheet by custom: a tenor saxophone reads
    it a major ninth up, which would lie too high, so it plays one octave lower (−1) and reads a major second up.
    `name` is what it is called inside a sentence, `abbreviation` what it is called beside a staff: messages, or text that
    is the same in every language.
    """

    id: str
    name: Message | str
    transposition: Interval
    lowest: Pitch
    highest: Pitch
    comfortable_low: Pitch
    comfortable_high: Pitch
    program: int
    clef: Clef = "treble"
    reading_octave: int = 0
    abbreviation: Message | str = ""

    @property
    def title(self) -> Message:
        """What it is called in a heading or beside its staff: "Alto saxophone"."""
        return message("instrument-title", instrument=self.name)

    @property
    def full_title(self) -> Message:
        """The title with the key that it sounds in: "Alto saxophone in E♭", "Flute"."""
        tonic = self.sounding(Pitch.parse("C4")).name
        if tonic == NoteName(0):
            return self.title
        return message("instrument-in-key", instrument=self.name, tonic=tonic)

    def written(self, sounding: Pitch) -> Pitch:
        """The written pitch of a sounding one."""
        return sounding.up(self.transposition)

    def sounding(self, written: Pitch) -> Pitch:
        """The sounding pitch of a written one."""
        return written.up(-self.transposition)

    def reaches(self, sounding: Pitch) -> bool:
        """True when the sounding pitch lies in the instrument's range."""
        return self.lowest_midi <= sounding.midi <= self.highest_midi

    @property
    def lowest_midi(self) -> int:
        """Sounding MIDI number of the lowest note."""
        return self.lowest.midi - self.transposition.semitones

    @property
    def highest_midi(self) -> int:
        """Sounding MIDI number of the highest note."""
        return self.highest.midi - self.transposition.semitones


def _instrument(
    id: str,
    up: str,
    written_range: str,
    comfortable: str,
    program: int,
    clef: Clef = "treble",
    reading_octave: int = 0,
) -> Instrument:
    low, high = (Pitch.parse(text) for text in written_range.split())
    easy_low, easy_high = (Pitch.parse(text) for text in comfortable.split())
    return Instrument(
        id,
        message(f"instrument-{id}"),
        Interval.parse(up),
        low,
        high,
        easy_low,
        easy_high,
        program,
        clef,
        reading_octave,
        message(f"instrument-{id}.short"),
    )


INSTRUMENTS: Final[dict[str, Instrument]] = {
    instrument.id: instrument
    for instrument in (
        _instrument("concert", "P1", "C2 C8", "G3 C6", 74),
        _instrument("soprano-sax", "M2", "Bb3 F#6", "D4 D6", 65),
        _instrument("alto-sax", "M6", "Bb3 F#6", "D4 D6", 66),
        _instrument("tenor-sax", "M9", "Bb3 F#6", "D4 D6", 67, reading_octave=-1),
        _instrument("baritone-sax", "M13", "A3 F#6", "D4 D6", 68, reading_octave=-1),
        _instrument("clarinet", "M2", "E3 G6", "G3 C6", 72),
        _instrument("bass-clarinet", "M9", "Eb3 G6", "G3 C6", 72, reading_octave=-1),
        _instrument("flute", "P1", "C4 C7", "E4 A6", 74),
        _instrument("irish-flute", "P1", "D4 D6", "D4 B5", 74),
        _instrument("tin-whistle", "-P8", "D4 D6", "D4 B5", 75, reading_octave=1),
        _instrument("oboe", "P1", "Bb3 G6", "D4 D6", 69),
        _instrument("trumpet", "M2", "F#3 D6", "C4 A5", 57),
        _instrument("flugelhorn", "M2", "F#3 C6", "C4 G5", 57),
        _instrument("trombone", "P1", "E2 C5", "Bb2 F4", 58, clef="bass", reading_octave=-1),
    )
}
"""Our own instruments by id, in the order in which they are listed."""
