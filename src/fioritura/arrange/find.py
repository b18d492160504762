"""Find every figure that a tune offers, and refuse those that would not do on paper or on the instrument."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from fioritura.techniques.figure import Figure
from fioritura.techniques.place import Place
from fioritura.techniques.technique import Technique

__all__ = ["find_at", "find_figures", "is_sound"]

_WIDEST_LEAP_SEMITONES = 12


def find_figures(places: Sequence[Place], techniques: Sequence[Technique]) -> list[tuple[Place, Figure]]:
    """All sound figures of the techniques, in order of place, each with the place that offered it."""
    return [(place, figure) for place in places for figure in find_at(place, techniques)]


def find_at(place: Place, techniques: Sequence[Technique]) -> Iterator[Figure]:
    """The sound figures at one place."""
    for technique in techniques:
        for figure in technique.find(place):
            if is_sound(figure, place, technique):
                yield figure


def is_sound(figure: Figure, place: Place, technique: Technique) -> bool:
    """True when the figure stays in range, doubles no note by accident, leaps no more than an octave, and does not
    run into a note that the file has ornamented itself."""
    if not (figure.notes or figure.graces):
        return True
    first, last = figure.first_slot // 2, figure.last_slot // 2
    notes = place.tune.notes
    if any(notes[index].is_ornamented for index in range(first, last + 1)):
        return False
    instrument = place.setting.instrument
    low, high = instrument.lowest_midi, instrument.highest_midi
    sequence = _sequence(figure, place, first, last)
    for (midi, anchor), (next_midi, next_anchor) in pairwise(sequence):
        if not low <= midi <= high:
            return False
        added = anchor is None or next_anchor is None
        if midi == next_midi and added and not technique.repeats_pitch:
            return False
        if added and abs(midi - next_midi) > _WIDEST_LEAP_SEMITONES:
            return False
    return low <= sequence[-1][0] <= high


def _sequence(figure: Figure, place: Place, first: int, last: int) -> list[tuple[int, int | None]]:
    """MIDI number and anchor of the note before the figure, of its own notes, and of the note after it.

    Folk players lean again on the note that they come from (94 % of the graces after a falling step lie above, in
    3,050 graces of open ABC books), so there the note before a grace does not count.
    """
    notes = place.tune.notes
    found: list[tuple[int, int | None]] = []
    if figure.graces:
        if place.previous is not None and place.setting.idiom != "folk":
            found.append((place.previous.midi, place.previous.index))
        found += [(pitch.midi, None) for pitch in figure.graces]
        found.append((place.midi, place.index))
        return found
    before = first if notes[first].onset_ticks < figure.start_ticks else first - 1
    if before >= 0:
        found.append((notes[before].pitch.midi, before))
    found += [(note.pitch.midi, note.anchor) for note in figure.notes]
    after = last if notes[last].end_ticks > figure.end_ticks else last + 1
    if after < len(notes):
        found.append((notes[after].pitch.midi, after))
    return found
