"""Approach notes: real notes that aim at the next melody note from close by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.theory.pitch import Pitch

_LEAP_SEMITONES = 3
_WIDEST_SEMITONES = 9
"""The widest leap to an approach note; from further off the ear hears another voice (common practice)."""


def _aimed(technique: str, context: Context, pitches: Sequence[Pitch], why: str) -> Iterator[Figure]:
    """Equal eighths or sixteenths off the end of this note, which keeps at least half its time."""
    if abs(pitches[0].midi - context.midi) > _WIDEST_SEMITONES:
        return
    count = len(pitches)
    available = max(context.note.duration_ticks // 2, context.gap_ticks)
    for value in (EIGHTH, SIXTEENTH):
        end = context.note.onset_ticks + context.reach_ticks
        on_grid = context.beat_offset(end - count * value) % value == 0
        if count * value <= available and value >= context.setting.shortest_ticks and on_grid:
            yield before_next(technique, context, pitches, [value] * count, why)
            return


def _has_target(context: Context) -> bool:
    following = context.next
    return following is not None and context.is_free and following.is_free and following.strength >= 0.5


def _from_below(context: Context) -> Iterator[Figure]:
    if _has_target(context) and context.next and abs(context.interval_out or 0) >= _LEAP_SEMITONES:
        pitch = context.next.leading_note
        why = "The melody leaps onto a beat: the semitone below the arrival announces it."
        yield from _aimed("approach-note", context, [pitch], why)


def _two_semitones(context: Context) -> Iterator[Figure]:
    if not (_has_target(context) and context.next):
        return
    out = context.interval_out or 0
    if out >= 4 or out <= -1:
        pitches = [context.next.key.spell(context.next.midi - 2, "up"), context.next.leading_note]
        why = "Two semitones climb into a note on a beat from below."
        yield from _aimed("approach-chromatic", context, pitches, why)
    if out <= -4 or out >= 1:
        pitches = [context.next.key.spell(context.next.midi + 2, "down"), context.next.semitones(1)]
        why = "Two semitones slide down into a note on a beat from above."
        yield from _aimed("approach-chromatic", context, pitches, why)


def _surround(context: Context) -> Iterator[Figure]:
    if not (_has_target(context) and context.next):
        return
    above, below = context.next.step_above, context.next.leading_note
    if context.midi != above.midi:
        why = "The arrival is closed in from both sides: scale step above, semitone below, then the note."
        yield from _aimed("surround", context, [above, below], why)
    if context.midi != below.midi:
        why = "The arrival is closed in from both sides: semitone below, scale step above, then the note."
        yield from _aimed("surround", context, [below, above], why)


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
