"""Approach notes: real notes that aim at the next melody note from close by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fioritura.techniques.figure import Figure
from fioritura.techniques.place import Place
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.theory.pitch import Pitch

_LEAP_SEMITONES = 3
_WIDEST_SEMITONES = 9
"""The widest leap to an approach note; from further off the ear hears another voice (common practice)."""


def _aimed(technique: str, place: Place, pitches: Sequence[Pitch], why: str) -> Iterator[Figure]:
    """Equal eighths or sixteenths off the end of this note, which keeps at least half its time."""
    if abs(pitches[0].midi - place.midi) > _WIDEST_SEMITONES:
        return
    count = len(pitches)
    available = max(place.note.duration_ticks // 2, place.gap_ticks)
    for value in (EIGHTH, SIXTEENTH):
        end = place.note.onset_ticks + place.reach_ticks
        on_grid = place.beat_offset(end - count * value) % value == 0
        if count * value <= available and value >= place.setting.shortest_ticks and on_grid:
            yield before_next(technique, place, pitches, [value] * count, why)
            return


def _has_target(place: Place) -> bool:
    following = place.next
    return following is not None and place.is_free and following.is_free and following.strength >= 0.5


def _from_below(place: Place) -> Iterator[Figure]:
    if _has_target(place) and place.next and abs(place.interval_out or 0) >= _LEAP_SEMITONES:
        pitch = place.next.leading_note
        why = "The melody leaps onto a beat: the semitone below the arrival announces it."
        yield from _aimed("approach-note", place, [pitch], why)


def _two_semitones(place: Place) -> Iterator[Figure]:
    if not (_has_target(place) and place.next):
        return
    out = place.interval_out or 0
    if out >= 4 or out <= -1:
        pitches = [place.next.key.spell(place.next.midi - 2, "up"), place.next.leading_note]
        why = "Two semitones climb into a note on a beat from below."
        yield from _aimed("approach-chromatic", place, pitches, why)
    if out <= -4 or out >= 1:
        pitches = [place.next.key.spell(place.next.midi + 2, "down"), place.next.semitones(1)]
        why = "Two semitones slide down into a note on a beat from above."
        yield from _aimed("approach-chromatic", place, pitches, why)


def _surround(place: Place) -> Iterator[Figure]:
    if not (_has_target(place) and place.next):
        return
    above, below = place.next.step_above, place.next.leading_note
    if place.midi != above.midi:
        why = "The arrival is closed in from both sides: scale step above, semitone below, then the note."
        yield from _aimed("surround", place, [above, below], why)
    if place.midi != below.midi:
        why = "The arrival is closed in from both sides: semitone below, scale step above, then the note."
        yield from _aimed("surround", place, [below, above], why)


TECHNIQUES = (
    Technique(
        id="approach-note",
        name="Chromatic approach note",
        label="approach",
        family="approaches",
        level=3,
        find=_from_below,
        text="A real note a semitone below the next melody note, taken from the end of the one before.",
        how="Slur the approach into the arrival and put the weight on the arrival.",
        when="Where the melody leaps onto a beat.",
        fault="The leap to the approach note is missed.",
        cure="Practise the leap to the approach note alone, then add the semitone.",
    ),
    Technique(
        id="approach-chromatic",
        name="Double chromatic approach",
        label="chrom. approach",
        family="approaches",
        level=4,
        find=_two_semitones,
        text="Two semitones in a row that slide into the next melody note.",
        how="Even, legato, growing.",
        when="Into a note on a beat, when the note before has a beat to spare.",
        fault="The first of the two is accented.",
        cure="Start it softer than the melody note before.",
    ),
    Technique(
        id="surround",
        name="Approach from both sides",
        label="surround",
        family="approaches",
        level=4,
        find=_surround,
        text="The notes on both sides of the next melody note, one after the other, and then the note itself.",
        how="Think of three notes as one gesture whose goal is the last.",
        when="Into a strong chord note, most of all where the chord changes.",
        fault="The line stops on the arrival.",
        cure="Play on past it: loop the gesture and the two melody notes that follow.",
    ),
)
