"""Drills: short pieces of music made from a hard place of a line, each a tune of its own to be engraved or played.

A drill isolates the place, changes its rhythm, or takes it around the circle of fourths (common practice of method
books: alone, in rhythms, in all keys, then back into the tune).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from fioritura.arrange.keys import least_interval, twelve_keys
from fioritura.players.instruments import Instrument
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH, Metre
from fioritura.theory.pitch import Interval, NoteName, Pitch
from fioritura.tune import Bar, ChordSpan, Mark, Note, Tune

__all__ = ["Cell", "around_the_keys", "cell_at", "isolated", "rhythm_names", "rhythms"]

_MOST_NOTES: Final = 9
_FEWEST_NOTES: Final = 4

_SIMPLE: Final[dict[str, tuple[int, ...]]] = {
    "even": (EIGHTH,),
    "long-short": (3 * SIXTEENTH, SIXTEENTH),
    "short-long": (SIXTEENTH, 3 * SIXTEENTH),
    "triplets": (QUARTER // 3,),
}
_COMPOUND: Final[dict[str, tuple[int, ...]]] = {
    "even": (EIGHTH,),
    "long-short": (QUARTER, EIGHTH),
    "short-long": (EIGHTH, QUARTER),
    "dotted": (3 * SIXTEENTH, SIXTEENTH, EIGHTH),
}


@dataclass(frozen=True)
class Cell:
    """A few notes of a line to be drilled: from tick 0, with the key, metre, feel and chords that they have there."""

    notes: tuple[Note, ...]
    key: Key
    metre: Metre
    chords: tuple[ChordSpan, ...]
    tune: Tune

    @property
    def pitches(self) -> tuple[Pitch, ...]:
        """Its sounding pitches, main notes only, no pitch twice in a row."""
        found: list[Pitch] = []
        for note in self.notes:
            for pitch in (*note.graces, note.pitch):
                if not found or found[-1].midi != pitch.midi:
                    found.append(pitch)
        return tuple(found)


def cell_at(tune: Tune, line: Sequence[Note], onset_ticks: int) -> Cell:
    """The bar's worth of a line around a place, from a beat on, so that the place stands in its middle."""
    bar = tune.bar_at(onset_ticks)
    beat = bar.metre.beat_ticks
    offset = onset_ticks - bar.start_ticks
    start = bar.start_ticks + max(0, offset // beat - 1) * beat
    end = start + bar.metre.bar_ticks
    inside = [note for note in line if start <= note.onset_ticks < end][:_MOST_NOTES]
    following = [note for note in line if note.onset_ticks >= end]
    while len(inside) < _FEWEST_NOTES and following:
        inside.append(following.pop(0))
    first = inside[0].onset_ticks
    moved = [replace(note, onset_ticks=note.onset_ticks - first, anchor=None) for note in inside]
    chords = _chords_between(tune, first, first + bar.metre.bar_ticks)
    return Cell(_in_one_bar(moved, bar.metre), bar.key, bar.metre, chords, tune)


def _chords_between(tune: Tune, start: int, end: int) -> tuple[ChordSpan, ...]:
    """The chords that sound in a stretch, from its beginning on."""
    found = []
    for span in tune.chords:
        onset, stop = max(span.onset_ticks, start), min(span.end_ticks, end)
        if onset < stop and span.chord is not None:
            found.append(replace(span, onset_ticks=onset - start, duration_ticks=stop - onset))
    return tuple(found)


def _in_one_bar(notes: Sequence[Note], metre: Metre) -> tuple[Note, ...]:
    """The notes that begin in the bar, the last one cut at its end; slurs that lose an end are dropped."""
    kept = [note for note in notes if note.onset_ticks < metre.bar_ticks]
    kept = [
        replace(note, duration_ticks=min(note.duration_ticks, metre.bar_ticks - note.onset_ticks)) for note in kept
    ]
    return _whole_slurs(replace(note, lyric="", figures=()) for note in kept)


def _whole_slurs(notes: Iterator[Note]) -> tuple[Note, ...]:
    found = list(notes)
    opened: int | None = None
    for number, note in enumerate(found):
        if Mark.SLUR_STOP in note.marks:
            if opened is None:
                found[number] = replace(note, marks=tuple(m for m in note.marks if m is not Mark.SLUR_STOP))
            opened = None
        if Mark.SLUR_START in note.marks:
            opened = number
    if opened is not None:
        note = found[opened]
        found[opened] = replace(note, marks=tuple(m for m in note.marks if m is not Mark.SLUR_START))
    return tuple(found)


def isolated(cell: Cell) -> Tune:
    """The cell in a repeated bar."""
    bar = _bar(cell, 1, 0, repeats=1, opens=True)
    return _tune(cell, cell.notes, (bar,), cell.chords)


def rhythm_names(metre: Metre) -> tuple[str, ...]:
    """The rhythms in which a cell is drilled in a metre."""
    return tuple(_COMPOUND if metre.is_compound else _SIMPLE)


def rhythms(cell: Cell, name: str) -> Tune:
    """The cell's pitches forth and back in one rhythm, in a repeated bar."""
    values = (_COMPOUND if cell.metre.is_compound else _SIMPLE)[name]
    length = cell.metre.bar_ticks
    pitches = cell.pitches
    turn = (*pitches, *pitches[-2:0:-1]) if len(pitches) > 1 else pitches
    notes: list[Note] = []
    onset = 0
    while onset < length:
        value = min(values[len(notes) % len(values)], length - onset)
        notes.append(Note(onset, value, turn[len(notes) % len(turn)]))
        onset += value
    return _tune(cell, tuple(notes), (_bar(cell, 1, 0, repeats=1, opens=True),), ())


def around_the_keys(cell: Cell, instrument: Instrument) -> Tune:
    """The cell in all keys that lie on the instrument, along the circle of fourths, a bar each, without signature.

    Each key is the one with the fewer signs in the written part, and notes and chords are spelled for it; what would take
    a double sign there is spelled without one.
    """
    bars: list[Bar] = []
    notes: list[Note] = []
    chords: list[ChordSpan] = []
    for written in twelve_keys(cell.key.transposed(instrument.transposition)):
        interval = _nearest(cell, written.tonic.up(-instrument.transposition), instrument)
        if interval is None:
            continue
        start = len(bars) * cell.metre.bar_ticks
        bars.append(replace(_bar(cell, len(bars) + 1, start), key=_open_key(instrument)))
        for note in cell.notes:
            pitch = _legible(note.pitch.up(interval), instrument)
            graces = tuple(_legible(grace.up(interval), instrument) for grace in note.graces)
            notes.append(replace(note, onset_ticks=note.onset_ticks + start, pitch=pitch, graces=graces))
        for span in cell.chords:
            chord = span.chord.up(interval) if span.chord else None
            text = chord.text if chord else span.text
            chords.append(replace(span, onset_ticks=span.onset_ticks + start, chord=chord, text=text))
    return _tune(cell, tuple(notes), tuple(bars), tuple(chords))


def _legible(pitch: Pitch, instrument: Instrument) -> Pitch:
    """The pitch, written without a double sharp or flat."""
    written = pitch.up(instrument.transposition)
    return written.respelled().up(-instrument.transposition) if abs(written.alter) > 1 else pitch


def _open_key(instrument: Instrument) -> Key:
    """The sounding key that the instrument reads without signature."""
    return Key(0).transposed(-instrument.transposition)


def _nearest(cell: Cell, tonic: NoteName, instrument: Instrument) -> Interval | None:
    """The smallest interval to a tonic with which the cell stays on the instrument."""
    near = least_interval(cell.key.tonic, tonic)
    octave = Interval(7, 12) if near.semitones < 0 else Interval(-7, -12)
    for interval in (near, near + octave):
        pitches = (p.up(interval) for note in cell.notes for p in (*note.graces, note.pitch))
        if all(instrument.reaches(pitch) for pitch in pitches):
            return interval
    return None


def _bar(cell: Cell, number: int, start: int, *, repeats: int = 0, opens: bool = False) -> Bar:
    return Bar(number, start, cell.metre.bar_ticks, cell.metre, cell.key, opens_repeat=opens, repeats=repeats)


def _tune(cell: Cell, notes: tuple[Note, ...], bars: tuple[Bar, ...], chords: tuple[ChordSpan, ...]) -> Tune:
    return replace(cell.tune, title="", composer="", notes=notes, bars=bars, chords=chords, warnings=())
