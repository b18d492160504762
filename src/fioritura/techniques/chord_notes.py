"""Chord notes: a leap is filled with one, a long note is broken into them, guide tones lead through a long note."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise, product
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.definition import STEP_SEMITONES, Definition, Group
from fioritura.techniques.families import CHORD_NOTES
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next, instead
from fioritura.theory.chord import Chord
from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH
from fioritura.theory.pitch import NoteName, Pitch
from fioritura.words import message

_THIRD_SEMITONES: Final = 3
_FOURTH_SEMITONES: Final = 5
_SIXTH_SEMITONES: Final = 9
_TRIPLET: Final = QUARTER // 3
_WIDEST_BREAK: Final = 15
"""Semitones from the note to the furthest note of its broken chord."""

_WIDEST_GUIDE: Final = 10
_MOST_GUIDES: Final = 4


# Added ------------------------------------------------------------------------------------------------------------


def _has_no_triplets(context: Context) -> bool:
    return context.bar.metre.is_compound or context.setting.is_even


def _added(context: Context) -> Iterator[Figure]:
    """A chord note of real value inside a leap, or away from a repeated note and back."""
    out, following = context.interval_out, context.next
    if out is None or following is None or not (context.is_free and following.is_free) or context.gap_ticks:
        return
    chord, value = context.ending.chord, _added_ticks(context)
    if chord is None or not value:
        return
    if out == 0:
        below = (-move for move in range(_THIRD_SEMITONES, _SIXTH_SEMITONES + 1))
        above = range(_THIRD_SEMITONES, _FOURTH_SEMITONES + 1)
        sides = (
            [move for move in side if (context.midi + move) % 12 in chord.pitch_classes][:1]
            for side in (below, above)
        )
        tones = [move for side in sides for move in side]
        kind = "repeated"
    else:
        inside = range(_THIRD_SEMITONES, abs(out) - STEP_SEMITONES)
        sign = 1 if out > 0 else -1
        tones = [sign * move for move in inside if (context.midi + sign * move) % 12 in chord.pitch_classes]
        tones.sort(key=lambda move: abs(2 * move - out))
        kind = "leap"
    for place, move in enumerate(tones[:2]):
        pitch = context.ending.spell(context.midi + move, "up" if move > 0 else "down")
        why = message("added-chord-note-why", kind=kind, direction="up" if (out or move) > 0 else "down")
        figure = before_next("added-chord-note", context, [pitch], [value], why)
        yield figure if place == 0 else _less_liked(figure, place)


def _less_liked(figure: Figure, place: int) -> Figure:
    return replace(figure, merit=-0.1 * place)


def _added_ticks(context: Context) -> int:
    """The value of an added note: a quarter off a longer note, an eighth off a quarter; 0 where there is no time."""
    length, end = context.note.duration_ticks, context.note.end_ticks
    for value in (QUARTER, EIGHTH):
        if (
            2 * value <= length
            and value >= context.setting.shortest_ticks
            and context.beat_offset(end - value) % value == 0
        ):
            return value
    return 0


# Broken -----------------------------------------------------------------------------------------------------------


def _broken(context: Context) -> Iterator[Figure]:
    yield from _broken_from(context)
    yield from _broken_into(context)


def _broken_from(context: Context) -> Iterator[Figure]:
    """A long note is struck and left through the notes of its chord, towards the next note."""
    length, following = context.note.duration_ticks, context.next
    chord = _chord_at(context, context.note.end_ticks - 1)
    if not context.is_free or length < HALF or following is None or chord is None:
        return
    instrument, offered = context.setting.instrument, 0
    reach = (instrument.lowest_midi, instrument.highest_midi)
    for value, counts in ((EIGHTH, (4, 3, 2)), (_TRIPLET, (3,)), (SIXTEENTH, (4,))):
        if value < context.setting.shortest_ticks or (value == _TRIPLET and _has_no_triplets(context)):
            continue
        for count in counts:
            total = count * value
            if length < 2 * total or (value != EIGHTH and context.beat_offset(context.note.end_ticks - total)):
                continue
            if _chord_at(context, context.note.end_ticks - total) != chord:
                continue
            line = _way_through(chord.pitch_classes, context.midi, reach, following.midi, count)
            if line:
                pitches = [context.ending.spell(midi, "up" if midi > context.midi else "down") for midi in line]
                why = message("arpeggiated-note-why", count=count, way="from")
                values = [length - total, *[value] * count]
                figure = instead("arpeggiated-note", context, [context.note.pitch, *pitches], values, why)
                yield _less_liked(figure, offered) if offered else figure
                offered += 1
                break


@lru_cache(maxsize=4096)
def _tones_around(
    classes: frozenset[int], midi: int, lowest: int, highest: int
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Chord notes below a note and above it, the nearest first, no further than a broken chord goes."""
    low, high = max(lowest, midi - _WIDEST_BREAK), min(highest, midi + _WIDEST_BREAK)
    below = tuple(tone for tone in range(midi - 1, low - 1, -1) if tone % 12 in classes)
    return below, tuple(tone for tone in range(midi + 1, high + 1) if tone % 12 in classes)


def _chord_at(context: Context, ticks: int) -> Chord | None:
    span = context.tune.chord_at(ticks)
    return span.chord if span else None


@lru_cache(maxsize=4096)
def _way_through(
    classes: frozenset[int], midi: int, reach: tuple[int, int], target: int, count: int
) -> tuple[int, ...] | None:
    """Chord notes after one another from a note: down, up, or there and back, whichever ends nearest to the target."""
    below, above = _tones_around(classes, midi, *reach)
    ways = [below[:count], above[:count]]
    if count >= 3:
        ways += [(*side[: count - 1], side[count - 3]) for side in (below, above) if len(side) >= count - 1]
    fits = [way for way in ways if len(way) == count and _leaps(midi, way, target)]
    return min(fits, key=lambda way: abs(way[-1] - target), default=None)


def _leaps(start: int, way: Sequence[int], target: int) -> bool:
    """True where a broken chord moves by leaps, turns on its way to the next note (else it is a run) and leads to it
    within a fifth."""
    line = (start, *way, target)
    if all(b > a for a, b in pairwise(line)) or all(b < a for a, b in pairwise(line)):
        return False
    moves = [abs(b - a) for a, b in pairwise((start, *way))]
    return min(moves[1:], default=3) >= 3 and moves[0] >= 2 and max(moves) <= 7 and 1 <= abs(target - way[-1]) <= 7


def _broken_into(context: Context) -> Iterator[Figure]:
    """The chord is broken in the rest before a long note, from its root or fifth to the note."""
    goal = context.next
    if goal is None or not (context.is_free and goal.is_free) or goal.chord is None:
        return
    if (
        context.gap_ticks < QUARTER
        or goal.note.duration_ticks < QUARTER
        or goal.strength < 0.5
        or not goal.is_chord_tone
    ):
        return
    instrument = goal.setting.instrument
    below, _ = _tones_around(goal.chord.pitch_classes, goal.midi, instrument.lowest_midi, instrument.highest_midi)
    for value, count in ((EIGHTH, 3), (_TRIPLET, 3), (EIGHTH, 2)):
        is_late = count * value > context.gap_ticks - EIGHTH
        if is_late or value < context.setting.shortest_ticks or len(below) < count:
            continue
        if value == _TRIPLET and _has_no_triplets(goal):
            continue
        line = below[:count][::-1]
        if min(b - a for a, b in pairwise((*line, goal.midi))) >= 2 and line[-1] <= goal.midi - 3:
            pitches = [goal.spell(midi, "up") for midi in line]
            why = message("arpeggiated-note-why", count=count, way="into")
            yield before_next("arpeggiated-note", context, pitches, [value] * count, why)
            return


# Guide tones ------------------------------------------------------------------------------------------------------

Stretch = tuple[int, int, Chord]
"""Start, end and chord of a part of a long note."""


def _guide_line(context: Context) -> Iterator[Figure]:
    """Thirds and sevenths that move by step where the chord changes, while the melody waits."""
    following = context.next
    if following is None or not (context.is_free and following.is_free) or context.reach_ticks < HALF:
        return
    stretches = _stretches(context)
    if not stretches:
        return
    values = [end - start for start, end, _ in stretches]
    if min(values) < QUARTER:
        return
    chords = [chord for _, _, chord in stretches]
    arrives = following.chord is not None and following.chord != chords[-1]
    changes = len(chords) - (chords[0] == context.chord) + arrives
    line = _guides(context, chords, arrives=arrives) if changes and len(chords) <= _MOST_GUIDES else None
    if line:
        why = message("guide-tone-line-why", count=len(line), changes=changes)
        yield before_next("guide-tone-line", context, line, values, why)


def _stretches(context: Context) -> list[Stretch]:
    """The chords after the note has spoken: a beat or two before the first change, or the change itself where the note
    is a guide tone already."""
    onset = context.note.onset_ticks
    end = onset + context.reach_ticks
    found: list[Stretch] = []
    ticks = onset
    while ticks < end:
        span = context.tune.chord_at(ticks)
        if span is None or span.chord is None:
            return []
        stop = min(span.end_ticks, end)
        if found and found[-1][2] == span.chord:
            found[-1] = (found[-1][0], stop, span.chord)
        else:
            found.append((ticks, stop, span.chord))
        ticks = stop
    start, stop, chord = found[0]
    if len(found) > 1 and _is_guide(context.midi, chord) and stop - start >= QUARTER:
        return found[1:]
    lead = HALF if stop - start >= 2 * HALF else QUARTER
    if stop - start < lead + QUARTER:
        return found[1:] if stop - start >= QUARTER else []
    return [(stop - lead, stop, chord), *found[1:]]


def _is_guide(midi: int, chord: Chord | None) -> bool:
    return chord is not None and any(midi % 12 == tone.pitch_class for tone in chord.guide_tones)


def _guides(context: Context, chords: Sequence[Chord], *, arrives: bool) -> list[Pitch] | None:
    """One guide tone of each chord, by step from chord to chord and near the melody, below it where both will do."""
    assert context.next is not None
    target = context.next.midi
    is_led = _is_guide(context.midi, context.chord) and chords[0] != context.chord
    best: tuple[float, list[Pitch]] | None = None
    pools = [list(_guide_pitches(chord, context)) for chord in chords]
    for line in product(*pools):
        midis = [pitch.midi for pitch in line]
        moves = [abs(b - a) for a, b in pairwise([context.midi, *midis] if is_led else midis)]
        last = abs(target - midis[-1])
        if midis[0] == context.midi or not all(1 <= move <= 2 for move in moves) or not 1 <= last <= 7:
            continue
        if arrives and last > 2:
            continue
        cost = last + 0.5 * abs(context.midi - 5 - midis[0])
        if best is None or cost < best[0]:
            best = cost, list(line)
    return best[1] if best else None


def _guide_pitches(chord: Chord, context: Context) -> Iterator[Pitch]:
    """The guide tones of a chord around the melody note, within what the instrument has."""
    instrument = context.setting.instrument
    for name in chord.guide_tones:
        for octave in (-1, 0):
            midi = context.midi + (name.pitch_class - context.midi) % 12 + 12 * octave
            is_near = -_WIDEST_GUIDE <= midi - context.midi <= _SIXTH_SEMITONES - 4
            if is_near and instrument.lowest_midi <= midi <= instrument.highest_midi:
                yield _named(name, midi)


def _named(name: NoteName, midi: int) -> Pitch:
    pitch = Pitch(name.letter + 7 * (midi // 12 - 1), name.alter)
    return Pitch(pitch.step + 7 * round((midi - pitch.midi) / 12), pitch.alter)


# Recognised -------------------------------------------------------------------------------------------------------


def _is_added(g: Group) -> bool:
    if not g.is_between or g.is_quick or len(g.inner) != 1 or not g.all_in(g.chord):
        return False
    first, second = g.moves
    widest, is_back = max(abs(first), abs(second)), first + second == 0
    return (
        min(abs(first), abs(second)) >= _THIRD_SEMITONES
        and widest <= _SIXTH_SEMITONES
        and (is_back or first * second > 0)
    )


def _is_broken(g: Group) -> bool:
    if g.is_quick or g.before is None or len(g.inner) < 2 or not g.all_in(g.chord) or g.goes_one_way:
        return False
    return min(map(abs, g.moves[: len(g.inner)])) >= 2 and max(map(abs, g.moves)) <= _SIXTH_SEMITONES


ADDED_CHORD_NOTE = Technique(
    id="added-chord-note",
    family=CHORD_NOTES.id,
    level=2,
    find=_added,
    definition=Definition(_is_added, breadth=225),
)

ARPEGGIATED_NOTE = Technique(
    id="arpeggiated-note",
    family=CHORD_NOTES.id,
    level=3,
    find=_broken,
    definition=Definition(_is_broken, breadth=235),
)

GUIDE_TONE_LINE = Technique(id="guide-tone-line", family=CHORD_NOTES.id, level=4, find=_guide_line)

TECHNIQUES = (ADDED_CHORD_NOTE, ARPEGGIATED_NOTE, GUIDE_TONE_LINE)
