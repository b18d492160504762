"""How a sounding line is spelled in a part.

Transposition keeps every interval's letters, and so keeps the sense of a spelling, but not always its ease: E major
written as D flat major for an alto saxophone turns F natural into E double flat, and F, E natural, E flat of a part in
concert pitch becomes D, C sharp, C. Two rules make such notes readable (common practice): a part has no double
accidental and no E sharp or the like where the sounding line has none, unless key or chord has it, and what a figure adds is spelled anew for the part's key and chords
(`theory.spelling`), the tune's own notes said again as the tune has them. All else is spelled as the file has it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain, groupby, islice

from fioritura.theory.pitch import Interval, Pitch
from fioritura.theory.spelling import is_plain_in, spelled_line
from fioritura.tune import Note, Tune, transpose

__all__ = ["written_tune"]


def written_tune(tune: Tune, by: Interval) -> Tune:
    """The tune an interval higher, as a player expects to read it."""
    moved = transpose(tune, by)
    eased = tuple(_eased(moved, *notes) for notes in zip(tune.notes, moved.notes, strict=True))
    return replace(moved, notes=tuple(_spelled(moved, tune.notes, eased)))


def _eased(tune: Tune, sounding: Note, written: Note) -> Note:
    """The note without a triple accidental, or a double one, an E sharp or the like that the sounding one has not."""
    key, span = tune.bar_at(written.onset_ticks).key, tune.chord_at(written.onset_ticks)
    chord = span.chord if span else None

    def eased(before: Pitch, name: Pitch) -> Pitch:
        is_harder = abs(name.alter) > min(max(abs(before.alter), 1), 2)
        is_odd = before == before.respelled() and not is_plain_in(name, key, chord)
        return name.respelled() if is_harder or is_odd else name

    pitch = eased(sounding.pitch, written.pitch)
    graces = tuple(map(eased, sounding.graces, written.graces))
    is_same = pitch == written.pitch and graces == written.graces
    return written if is_same else replace(written, pitch=pitch, graces=graces)


@dataclass(slots=True)
class _Place:
    """A pitch of the line in playing order: as it sounds, as it is written, and the figures that added it."""

    note: Note
    sounding: Pitch
    written: Pitch
    added_by: tuple[int, ...]
    is_grace: bool


def _spelled(tune: Tune, sounding: Sequence[Note], written: Sequence[Note]) -> Iterator[Note]:
    """The written notes, what figures have added spelled for the part's key and chords."""
    places = list(chain.from_iterable(map(_places, sounding, written)))
    start = 0
    for added_by, run in groupby(places, key=lambda place: place.added_by):
        group = list(run)
        if added_by:
            _spell(tune, places, range(start, start + len(group)))
        start += len(group)
    rest = iter(places)
    for note in written:
        *graces, pitch = (place.written for place in islice(rest, len(note.graces) + 1))
        is_same = pitch == note.pitch and tuple(graces) == note.graces
        yield note if is_same else replace(note, pitch=pitch, graces=tuple(graces))


def _places(sounding: Note, written: Note) -> Iterator[_Place]:
    for before, grace in zip(sounding.graces, written.graces, strict=True):
        yield _Place(written, before, grace, written.figures, True)
    is_added = written.anchor is None
    yield _Place(written, sounding.pitch, written.pitch, written.figures if is_added else (), False)


def _spell(tune: Tune, places: Sequence[_Place], run: range) -> None:
    """Spell the added notes of a run for the notes on both sides of it."""
    around = [places[n] for n in (run.start - 1, run.stop) if 0 <= n < len(places)]
    names = {place.sounding: place.written for place in around if not place.added_by}
    first = max(run.start - (not places[run.start].is_grace), 0)
    line = places[first : run.stop + 1]
    key = tune.bar_at(places[run.start].note.onset_ticks).key
    given, added, chords = [], [], []
    for place in line:
        is_new = place.added_by == places[run.start].added_by and place.sounding not in names
        span = tune.chord_at(place.note.onset_ticks)
        pitch = place.written if is_new else names.get(place.sounding, place.written)
        given.append(pitch)
        added.append(is_new)
        chords.append(span.chord if span else None)
    found = spelled_line(tuple(given), tuple(added), key, tuple(chords))
    if found is None:
        eased = tuple(pitch.respelled() if is_new else pitch for pitch, is_new in zip(given, added, strict=True))
        found = spelled_line(eased, tuple(added), key, tuple(chords)) or eased
    for place, pitch in zip(line, found, strict=True):
        if place.added_by:
            place.written = pitch
