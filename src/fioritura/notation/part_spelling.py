"""How a sounding line is spelled in a part.

Transposition keeps every interval's letters, and so keeps the sense of a spelling, but not always its ease: E major
written as D flat major for an alto saxophone turns F natural into E double flat, and F, E natural, E flat of a part in
concert pitch becomes D, C sharp, C. Two rules make such notes readable (common practice): a respelled key, or a figure,
brings in no double accidental that the sounding line had not, nor a figure an E sharp or F flat of neither key nor
chord; and a figure's chromatic note between two others takes the letter of the note it comes from. All else is spelled
as the file has it.
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
    notes = []
    for sounding, written in zip(tune.notes, moved.notes, strict=True):
        key, new_key = tune.bar_at(written.onset_ticks).key, moved.bar_at(written.onset_ticks).key
        is_respelled = key_interval(key, new_key, by) != by
        notes.append(_eased(moved, sounding, written, is_respelled))
    return replace(moved, notes=tuple(_led(replace(moved, notes=tuple(notes)))))


def _eased(tune: Tune, sounding: Note, written: Note, is_respelled: bool) -> Note:
    """The note without what would stop the reader; what a figure has added may also have no E sharp and its like."""

    def eased(before: Pitch, name: Pitch, is_added: bool) -> Pitch:
        most = max(abs(before.alter), 1) if is_added or is_respelled else 2
        was_plain = before == before.respelled()
        is_odd = is_added and was_plain and not _is_given(tune, written, name)
        return name.respelled() if abs(name.alter) > most or is_odd else name

    is_made = bool(written.figures)
    pitch = eased(sounding.pitch, written.pitch, is_made and written.anchor is None)
    graces = tuple(eased(before, name, is_made) for before, name in zip(sounding.graces, written.graces, strict=True))
    is_same = pitch == written.pitch and graces == written.graces
    return written if is_same else replace(written, pitch=pitch, graces=graces)


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
    """True for a note of the key, and for a root, third, fifth or seventh of the chord."""
    if tune.bar_at(note.onset_ticks).key.holds(pitch):
        return True
    span = tune.chord_at(note.onset_ticks)
    if span is None or span.chord is None:
        return False
    named = zip(span.chord.intervals, span.chord.tones, strict=True)
    return any(name == pitch.name for interval, name in named if interval.steps in (0, 2, 4, 6))
