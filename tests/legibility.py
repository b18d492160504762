"""What would surprise the reader of a figure, judged from its notes alone (common practice).

Nothing here is shared with `theory.spelling`, which makes what is judged.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fioritura.techniques.approach import APPROACH_CHROMATIC, APPROACH_NOTE, ENCLOSURE, SURROUND
from fioritura.techniques.blues import BLUE_THIRD, FLAT_FIFTH
from fioritura.techniques.fill import ANSWER_FILL
from fioritura.techniques.grace import DOUBLE_GRACE_UPPER_LOWER, LOWER_GRACE_SEMITONE, UPPER_GRACE_SEMITONE
from fioritura.techniques.lead_in import LEAD_IN
from fioritura.techniques.neighbour import DOUBLE_NEIGHBOUR, NEIGHBOUR_LOWER
from fioritura.techniques.passing import PASSING_NOTE_CHROMATIC
from fioritura.techniques.run import RUN_CHROMATIC
from fioritura.techniques.turn import TURN
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch
from fioritura.tune import Note, Tune

ODD = ("E#", "Fb", "B#", "Cb")
CHROMATIC = {
    ANSWER_FILL.id,
    APPROACH_CHROMATIC.id,
    APPROACH_NOTE.id,
    BLUE_THIRD.id,
    LOWER_GRACE_SEMITONE.id,
    DOUBLE_GRACE_UPPER_LOWER.id,
    DOUBLE_NEIGHBOUR.id,
    ENCLOSURE.id,
    FLAT_FIFTH.id,
    LEAD_IN.id,
    NEIGHBOUR_LOWER.id,
    PASSING_NOTE_CHROMATIC.id,
    RUN_CHROMATIC.id,
    SURROUND.id,
    TURN.id,
    UPPER_GRACE_SEMITONE.id,
}
"""Techniques with a semitone that is not the scale's: it may stand on the letter of the note beside it."""

CLOSING_IN = {ANSWER_FILL.id, DOUBLE_GRACE_UPPER_LOWER.id, DOUBLE_NEIGHBOUR.id, ENCLOSURE.id, LEAD_IN.id, SURROUND.id}
"""Techniques that take a note from both sides, by a semitone each where the scale has it so: a diminished third."""


@dataclass(frozen=True)
class Read:
    """A note of a line as it stands on the page."""

    pitch: Pitch
    is_added: bool
    is_grace: bool
    key: Key
    chord: Chord | None


def read_line(tune: Tune, line: Sequence[Note]) -> list[Read]:
    """A line in playing order. An added note that says a note of the tune again, by its name, counts as that note."""
    stands = {note.pitch for note in line if note.anchor is not None}
    reads: list[Read] = []
    for note in line:
        key = tune.bar_at(note.onset_ticks).key
        span = tune.chord_at(note.onset_ticks)
        chord = span.chord if span else None
        reads += [Read(grace, bool(note.figures), True, key, chord) for grace in note.graces]
        reads.append(Read(note.pitch, bool(note.figures) and note.pitch not in stands, False, key, chord))
    return reads


def surprises(line: Sequence[Read], technique: str, *, is_part: bool = False) -> Iterator[str]:
    """What is wrong with the spelling of what a figure of a technique has added to a line.

    In a part a semitone may stay on one letter where no other letter reads better.
    """
    for read in line:
        name = read.pitch.name
        if not read.is_added:
            continue
        if abs(name.alter) > 1 and not read.key.holds(read.pitch):
            yield f"double accidental {name}"
        elif str(name) in ODD and not _is_named(read):
            yield f"odd name {name}"
    for number, (one, other) in enumerate(pairwise(line)):
        if not (one.is_added or other.is_added) or (other.is_grace and not one.is_grace):
            continue
        goal = line[number + 2].pitch.midi if number + 2 < len(line) else None
        low, high = sorted((one.pitch.midi, other.pitch.midi))
        yield from _of_move(one, other, technique, goal is not None and low < goal < high, is_part)


def _of_move(one: Read, other: Read, technique: str, closes_in: bool, is_part: bool) -> Iterator[str]:
    move = other.pitch.midi - one.pitch.midi
    letters = abs(other.pitch.step - one.pitch.step)
    what = f"{one.pitch} {other.pitch}"
    if move == 0 and letters:
        yield f"one sound by two names {what}"
    is_chromatic = technique in CHROMATIC or (is_part and _has_no_other_name(one, other))
    if abs(move) == 1 and letters != 1 and not (letters == 0 and is_chromatic):
        yield f"a semitone on the same letter {what}"
    if abs(move) == 2 and letters != 1 and not (letters == 2 and closes_in and technique in CLOSING_IN):
        yield f"a whole tone that is no step {what}"
    both = one.is_added and other.is_added
    if abs(move) == 3 and letters == 1 and both and not closes_in and not _in_diminished(one, other):
        yield f"augmented second {what}"


def _is_named(read: Read) -> bool:
    key, pitch = read.key, read.pitch
    leading = Pitch(key.tonic.letter, key.tonic.alter).midi % 12
    is_raised = key.mode == "minor" and (pitch.midi + 1) % 12 == leading and (pitch.step + 1) % 7 == key.tonic.letter
    tones = zip(read.chord.intervals, read.chord.tones, strict=True) if read.chord else ()
    in_chord = any(tone == pitch.name and interval.steps % 2 == 0 and interval.steps <= 6 for interval, tone in tones)
    return key.alter(pitch.step % 7) == pitch.alter or is_raised or in_chord


def _in_diminished(one: Read, other: Read) -> bool:
    """True for two tones of a diminished seventh chord, also above the root of a dominant with a flat ninth."""
    thirds = {(one.pitch.midi + semitones) % 12 for semitones in (0, 3, 6, 9)}
    return one.chord is not None and thirds <= one.chord.pitch_classes and other.pitch.midi % 12 in thirds


def _has_no_other_name(one: Read, other: Read) -> bool:
    """True where one of two notes a semitone apart could stand on another letter only as a double sharp or flat, or as an
    E sharp and its like."""
    for read, goal in ((one, other), (other, one)):
        natural = Pitch(goal.pitch.step + (1 if read.pitch.midi > goal.pitch.midi else -1))
        name = Pitch(natural.step, read.pitch.midi - natural.midi)
        if read.is_added and (abs(name.alter) > 1 or str(name.name) in ODD):
            return True
    return False
