"""Runs: quick notes that sweep from one melody note to the next."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.passing import between
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.key import Direction
from fioritura.theory.pitch import Pitch
from fioritura.theory.scale import Scale

_FURTHEST_SEMITONES: Final = 16


def _run(technique: str, context: Context, pitches: Sequence[Pitch], why: str) -> Iterator[Figure]:
    """Even quick notes in at most half of the time before the next note (two thirds of it over a rest)."""
    reach = context.reach_ticks
    available = max(reach // 2, reach - context.note.duration_ticks if context.gap_ticks else 0)
    value = context.even_value(len(pitches), available, context.note.onset_ticks + reach)
    if value:
        yield before_next(technique, context, pitches, [value] * len(pitches), why)


def _can_run(context: Context) -> bool:
    return context.next is not None and context.is_free and context.gap_ticks <= context.note.duration_ticks


def _rises(context: Context) -> str:
    return "rises" if (context.interval_out or 0) > 0 else "falls"


def _chromatic(context: Context) -> Iterator[Figure]:
    out = context.interval_out or 0
    if _can_run(context) and 3 <= abs(out) <= 5:
        direction = 1 if out > 0 else -1
        leading: Direction = "up" if out > 0 else "down"
        pitches = [context.key.spell(context.midi + direction * n, leading) for n in range(1, abs(out))]
        size = "fourth" if abs(out) == 5 else "third"
        why = f"The melody {_rises(context)} a {size}: few enough semitones to play them all."
        yield from _run("run-chromatic", context, pitches, why)


def _scale(context: Context) -> Iterator[Figure]:
    if _can_run(context) and 6 <= abs(context.interval_out or 0) <= _FURTHEST_SEMITONES:
        inside = between(context)
        why = f"The melody {_rises(context)} by a wide leap: the chord's scale fills it, and the arrival is on time."
        yield from _run("run-scale", context, inside, why)


def _inside(scale: Scale, context: Context) -> list[Pitch]:
    assert context.next is not None
    low, high = sorted((context.note.pitch, context.next.note.pitch), key=lambda pitch: pitch.midi)
    found = [pitch for pitch in scale.between(low, high) if low.midi < pitch.midi < high.midi]
    return found if context.next.midi > context.midi else found[::-1]


def _pentatonic(context: Context) -> Iterator[Figure]:
    if _can_run(context) and context.next and 7 <= abs(context.interval_out or 0) <= _FURTHEST_SEMITONES:
        ending = context.ending
        leading: Direction = "up" if context.next.midi > context.midi else "down"
        pitches = [ending.spell(pitch.midi, leading) for pitch in _inside(ending.pentatonic, context)]
        if len(pitches) >= 2:
            why = f"The melody {_rises(context)} by a wide leap: five notes to the octave fill it lightly."
            yield from _run("run-pentatonic", context, pitches, why)


def _arpeggio(context: Context) -> Iterator[Figure]:
    out = context.interval_out or 0
    chord = context.ending.chord
    if not (_can_run(context) and chord and context.next and 7 <= abs(out) <= _FURTHEST_SEMITONES):
        return
    low, high = sorted((context.midi, context.next.midi))
    tones = [midi for midi in range(low + 1, high) if midi % 12 in chord.pitch_classes]
    if len(tones) >= 2:
        pitches = [
            context.ending.spell(midi, "up" if out > 0 else "down") for midi in (tones if out > 0 else tones[::-1])
        ]
        why = f"The melody {_rises(context)} by a wide leap: the notes of the chord are the steps of the ladder."
        yield from _run("run-arpeggio", context, pitches, why)


TECHNIQUES = (
    Technique(
        id="run-chromatic",
        name="Chromatic run inside a third or fourth",
        label="chrom. run",
        family="runs",
        level=3,
        find=_chromatic,
        text="All semitones between two melody notes a third or a fourth apart, quick and even.",
        how="Start late rather than early; the last melody note is the goal and stands on its beat.",
        when="Where the leap is no more than a fourth; wider gaps have too many semitones.",
        fault="The run starts too early and the arrival waits.",
        cure="Play backwards: the arrival, then the last two notes and the arrival, then three.",
    ),
    Technique(
        id="run-scale",
        name="Scale run",
        label="scale run",
        family="runs",
        level=4,
        find=_scale,
        text="The notes of the chord's scale between two melody notes a fifth or more apart.",
        how="One breath, one slur, fingers low; grow towards the arrival.",
        when="Into a high point, or down from it, where the first note is long.",
        fault="Two or three notes in the middle are blurred.",
        cure="Play it in dotted rhythms both ways, then even.",
    ),
    Technique(
        id="run-pentatonic",
        name="Pentatonic run",
        label="pent. run",
        family="runs",
        level=3,
        find=_pentatonic,
        text="A run through five notes to the octave: fewer notes than the scale for the same distance.",
        how="As a scale run, but with air between the notes; it may swing.",
        when="Where a full scale would be too quick for the tempo, and in blues and folk colours.",
        fault="The gap of a third inside it is uneven.",
        cure="Loop the three notes around the third.",
    ),
    Technique(
        id="run-arpeggio",
        name="Arpeggio run",
        label="arpeggio",
        family="runs",
        level=4,
        find=_arpeggio,
        text="The notes of the chord as quick steps from one melody note to the next.",
        how="Hear the chord first, then let the fingers spell it.",
        when="Where the melody makes a wide leap inside one chord.",
        fault="The register break cracks.",
        cure="Practise the two notes at the break as a slow slur, then the whole arpeggio.",
    ),
)
