"""Passing notes: real notes that fill a leap by step, in one direction."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from fioritura.techniques.figure import Figure
from fioritura.techniques.place import Place
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.theory.pitch import Pitch


def _room(place: Place, count: int) -> Iterator[int]:
    """Values that leave the plain note at least half its length: an eighth where there is time, and a sixteenth."""
    if place.leads_directly and place.is_free:
        end = place.note.end_ticks
        for value in (EIGHTH, SIXTEENTH):
            fits = count * value * 2 <= place.note.duration_ticks and value >= place.setting.shortest_ticks
            is_off_beat = place.strength_at(end - value) < 0.5
            if fits and is_off_beat and place.beat_offset(end - value) % value == 0:
                yield value


def between(place: Place) -> list[Pitch]:
    """The scale notes strictly between this plain note and the next, in playing order; empty without a next."""
    if place.next is None:
        return []
    target = place.next.midi
    direction = 1 if target > place.midi else -1
    found: list[Pitch] = []
    scale = place.ending.scale
    pitch = scale.step(place.note.pitch, direction)
    while (target - pitch.midi) * direction > 0 and len(found) < 16:
        found.append(pitch)
        pitch = scale.step(pitch, direction)
    return found


def _walks(place: Place, inside: list[Pitch]) -> bool:
    """True when no step of the walk is wider than a whole tone (an augmented second is a leap to the ear)."""
    if place.next is None:
        return False
    midis = [place.midi, *(pitch.midi for pitch in inside), place.next.midi]
    return all(abs(after - before) <= 2 for before, after in pairwise(midis))


def _diatonic(place: Place) -> Iterator[Figure]:
    inside = between(place)
    if len(inside) == 1 and _walks(place, inside) and abs(place.interval_out or 0) in (3, 4):
        for value in _room(place, 1):
            why = "The melody leaps a third: the scale note between fills it."
            yield before_next("passing-note", place, inside, [value], why)


def _pair(place: Place) -> Iterator[Figure]:
    inside = between(place)
    if len(inside) == 2 and _walks(place, inside) and abs(place.interval_out or 0) in (5, 6):
        for value in _room(place, 2):
            why = "The melody leaps a fourth: the two scale notes between make it a walk."
            yield before_next("passing-notes-pair", place, inside, [value, value], why)


def _chromatic(place: Place) -> Iterator[Figure]:
    out = place.interval_out
    if out in (2, -2) and place.next is not None:
        middle = place.ending.spell(place.midi + out // 2, "up" if out > 0 else "down")
        if middle.step not in (place.note.pitch.step, place.next.note.pitch.step):
            middle = place.key.spell(middle.midi, "up" if out > 0 else "down")
        for value in _room(place, 1):
            why = "The melody moves by a whole tone: the semitone between leads on, as a real note off the beat."
            yield before_next("passing-note-chromatic", place, [middle], [value], why)


TECHNIQUES = (
    Technique(
        id="passing-note",
        name="Passing note",
        label="passing",
        family="passing-notes",
        level=2,
        find=_diatonic,
        text="The scale note inside a leap of a third, with real value: an eighth or a sixteenth off the beat.",
        how="Make it lighter than the notes on both sides and slur through it.",
        when="Where the melody leaps a third and the first note is long enough to give up some time.",
        fault="The passing note is louder than the melody.",
        cure="Play the leap alone; then let the passing note happen on the way.",
    ),
    Technique(
        id="passing-notes-pair",
        name="Two passing notes",
        label="passing",
        family="passing-notes",
        level=3,
        find=_pair,
        text="The two scale notes inside a leap of a fourth.",
        how="Even, light, slurred to the arrival.",
        when="Where the melody leaps a fourth from a note of a beat or more.",
        fault="They rush.",
        cure="Count the subdivisions of the beat that they take.",
    ),
    Technique(
        id="passing-note-chromatic",
        name="Chromatic passing note",
        label="chrom. passing",
        family="passing-notes",
        level=3,
        find=_chromatic,
        text="The semitone inside a whole tone, as a real note off the beat.",
        how="Lean a little into it: it wants to resolve.",
        when="Where the melody moves by a whole tone and the first note has time.",
        fault="It falls on the beat and sounds like a wrong note.",
        cure="Put the foot on the beat: the chromatic note is always between two taps.",
    ),
)
