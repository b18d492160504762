"""How a sounding line is spelled in a part.

Transposition keeps every interval's letters, and so keeps the sense of a spelling, but not always its ease: E major
written as D flat major for an alto saxophone turns F natural into E double flat, and F, E natural, E flat of a part in
concert pitch becomes D, C sharp, C. Two rules make such notes readable (common practice): a respelled key, or a figure,
brings in no double accidental that the sounding line had not; and a figure's chromatic note between two others takes
the letter of the note it comes from. All else is spelled as the file has it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import chain

from fioritura.theory.pitch import Interval, Pitch
from fioritura.tune import Note, Tune, key_interval, transpose

__all__ = ["written_tune"]


def written_tune(tune: Tune, by: Interval) -> Tune:
    """The tune an interval higher, as a player expects to read it."""
    moved = transpose(tune, by)
    respelled = {
        bar.start_ticks
        for bar, written in zip(tune.bars, moved.bars, strict=True)
        if key_interval(bar.key, written.key, by) != by
    }
    notes = [
        _plain(sounding, written, bool(written.figures) or tune.bar_at(written.onset_ticks).start_ticks in respelled)
        for sounding, written in zip(tune.notes, moved.notes, strict=True)
    ]
    return replace(moved, notes=tuple(_led(replace(moved, notes=tuple(notes)))))


def _plain(sounding: Note, written: Note, is_open: bool) -> Note:
    """The note without a triple accidental; where its spelling is open, without a double one that is new in the part."""
    most = [2 if not is_open else max(abs(pitch.alter), 1) for pitch in (sounding.pitch, *sounding.graces)]
    pitch, *eased = (
        name if abs(name.alter) <= limit else name.respelled()
        for name, limit in zip((written.pitch, *written.graces), most, strict=True)
    )
    graces = tuple(eased)
    return (
        written
        if (pitch, graces) == (written.pitch, written.graces)
        else replace(written, pitch=pitch, graces=graces)
    )


def _led(tune: Tune) -> Iterator[Note]:
    """The notes, those that figures have added spelled by the note they come from where they move by semitone."""
    line = list(chain.from_iterable((*note.graces, note.pitch) for note in tune.notes))
    place = 0
    for note in tune.notes:
        own = range(place, place + len(note.graces) + 1)
        place = own.stop
        added = own if note.anchor is None else own[:-1]
        if note.figures:
            for number in added:
                line[number] = _between(tune, note, line, number)
        *graces, pitch = (line[number] for number in own)
        is_same = pitch == note.pitch and tuple(graces) == note.graces
        yield note if is_same else replace(note, pitch=pitch, graces=tuple(graces))


def _between(tune: Tune, note: Note, line: Sequence[Pitch], number: int) -> Pitch:
    """The spelling that does not share its letter with the note that follows a semitone away."""
    pitch = line[number]
    after = line[number + 1] if number + 1 < len(line) else pitch
    if abs(after.midi - pitch.midi) != 1 or pitch.step != after.step or _is_given(tune, note, pitch):
        return pitch
    before = line[number - 1] if number else after
    move = after.midi - pitch.midi
    led = Pitch(before.step, before.alter + move)
    comes_on = pitch.midi - before.midi == move and led == led.respelled()
    return led if comes_on else pitch.respelled()


def _is_given(tune: Tune, note: Note, pitch: Pitch) -> bool:
    """True for a note of the key or of the chord."""
    span = tune.chord_at(note.onset_ticks)
    of_chord = span is not None and span.chord is not None and pitch.name in span.chord.tones
    return of_chord or tune.bar_at(note.onset_ticks).key.holds(pitch)
