"""Passing notes: real notes that fill a leap by step, in one direction."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.theory.pitch import Pitch


def _room(context: Context, count: int) -> Iterator[int]:
    """Values that leave the plain note at least half its length: an eighth where there is time, and a sixteenth."""
    if context.leads_directly and context.is_free:
        end = context.note.end_ticks
        for value in (EIGHTH, SIXTEENTH):
            fits = count * value * 2 <= context.note.duration_ticks and value >= context.setting.shortest_ticks
            is_off_beat = context.strength_at(end - value) < 0.5
            if fits and is_off_beat and context.beat_offset(end - value) % value == 0:
                yield value


def between(context: Context) -> list[Pitch]:
    """The scale notes strictly between this plain note and the next, in playing order; empty without a next."""
    if context.next is None:
        return []
    target = context.next.midi
    direction = 1 if target > context.midi else -1
    found: list[Pitch] = []
    scale = context.ending.scale
    pitch = scale.step(context.note.pitch, direction)
    while (target - pitch.midi) * direction > 0 and len(found) < 16:
        found.append(pitch)
        pitch = scale.step(pitch, direction)
    return found


def _walks(context: Context, inside: list[Pitch]) -> bool:
    """True when no step of the walk is wider than a whole tone (an augmented second is a leap to the ear)."""
    if context.next is None:
        return False
    midis = [context.midi, *(pitch.midi for pitch in inside), context.next.midi]
    return all(abs(after - before) <= 2 for before, after in pairwise(midis))


def _diatonic(context: Context) -> Iterator[Figure]:
    inside = between(context)
    if len(inside) == 1 and _walks(context, inside) and abs(context.interval_out or 0) in (3, 4):
        for value in _room(context, 1):
            why = "The melody leaps a third: the scale note between fills it."
            yield before_next("passing-note", context, inside, [value], why)


def _pair(context: Context) -> Iterator[Figure]:
    inside = between(context)
    if len(inside) == 2 and _walks(context, inside) and abs(context.interval_out or 0) in (5, 6):
        for value in _room(context, 2):
            why = "The melody leaps a fourth: the two scale notes between make it a walk."
            yield before_next("passing-notes-pair", context, inside, [value, value], why)


def _chromatic(context: Context) -> Iterator[Figure]:
    out = context.interval_out
    if out in (2, -2) and context.next is not None:
        middle = context.ending.spell(context.midi + out // 2, "up" if out > 0 else "down")
        if middle.step not in (context.note.pitch.step, context.next.note.pitch.step):
            middle = context.key.spell(middle.midi, "up" if out > 0 else "down")
        for value in _room(context, 1):
            why = "The melody moves by a whole tone: the semitone between leads on, as a real note off the beat."
            yield before_next("passing-note-chromatic", context, [middle], [value], why)


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
