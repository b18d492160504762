"""Lead-ins: a long note in the middle of a phrase goes on as a line of even notes that arrives on the next one.

The line is what a player hears in the chord: chord notes by leap, joined by steps, and last a note a step or a semitone
from the arrival (common practice of jazz phrasing: "play to the next note"). Such lines are drawn, then those are offered
that lead best; their merits lie near to each other, so that the seed chooses among them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import Final

from fioritura.chance import Chance
from fioritura.techniques.context import Context, spelled
from fioritura.techniques.definition import Definition, Group, is_step
from fioritura.techniques.families import FILLS
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.theory.pitch import Pitch
from fioritura.words import message

_SLOW: Final = 80.0
"""Quarters a minute under which a lead-in moves in sixteenths."""

_SIZES: Final = {3: (2, 3), 4: (2, 4), 5: (3, 6)}
"""Fewest and most notes, by level."""

_DRAWN: Final = 24
_OFFERED: Final = 4
_WIDEST: Final = 7
_SPAN: Final = 12
_APPROACHES: Final = {-1: 4.0, 2: 3.0, -2: 2.0, 1: 2.0}
"""The last note from the arrival in semitones, and how often."""

_MOVES: Final = {1: 1.0, 2: 3.0, 3: 4.0, 4: 4.0, 5: 2.0, 6: 0.5, 7: 1.0}
"""How often a line moves by so many semitones."""

_MERIT_STEP: Final = -0.01

Line = tuple[int, ...]


def _lead_ins(context: Context) -> Iterator[Figure]:
    place = _place(context)
    if place is None:
        return
    sizes, value = place
    chance = Chance.of(0, "lead-in", f"{context.index} {context.midi} {context.setting.level} {value}")
    drawn = {line: None for _ in range(_DRAWN) if (line := _drawn(context, chance, chance.pick(sizes), value))}
    best = sorted(drawn, key=lambda line: -_worth(context, line))
    for number, line in enumerate(best[:_OFFERED]):
        end = context.note.onset_ticks + context.reach_ticks
        pitches = [
            _pitch(context, midi, end - (len(line) - n) * value, after)
            for n, (midi, after) in enumerate(pairwise((*line, _goal(context))))
        ]
        chromatic = line[-1] % 12 not in _classes(context, end - value)[1]
        way = "semitone" if abs(line[-1] - _goal(context)) == 1 else "step"
        why = message("lead-in-why", count=len(line), way=way, chromatic=chromatic)
        figure = before_next("lead-in", context, pitches, [value] * len(line), why)
        yield replace(figure, merit=round(_MERIT_STEP * number, 4), is_slurred=False)


def _place(context: Context) -> tuple[tuple[int, ...], int] | None:
    """How many notes of which value there may be, or None: the long note speaks first, for as long as they last at least."""
    setting, following = context.setting, context.next
    if (
        following is None
        or not (context.is_free and following.is_free)
        or context.is_phrase_end
        or context.chord is None
    ):
        return None
    if setting.tradition != "jazz" or setting.level not in _SIZES or context.gap_ticks:
        return None
    value = SIXTEENTH if setting.quarters_per_minute < _SLOW else EIGHTH
    end = context.note.end_ticks
    least, most = _SIZES[setting.level]
    fitting = tuple(
        count
        for count in range(least, most + 1)
        if value >= setting.shortest_ticks
        and 2 * count * value <= context.note.duration_ticks + value
        and context.note.duration_ticks - count * value >= 2 * value
        and context.beat_offset(end - count * value) % value == 0
    )
    return (fitting, value) if fitting else None


def _goal(context: Context) -> int:
    assert context.next is not None
    return context.next.midi


def _classes(context: Context, ticks: int) -> tuple[frozenset[int], frozenset[int]]:
    """The pitch classes of the chord at a time, and of its scale."""
    chord, scale = context.harmony_at(ticks)
    return (chord.pitch_classes if chord else scale.pitch_classes), scale.pitch_classes


def _drawn(context: Context, chance: Chance, count: int, value: int) -> Line | None:
    """A line of so many notes, or None where the draw comes to nothing."""
    instrument, goal = context.setting.instrument, _goal(context)
    end = context.note.onset_ticks + context.reach_ticks
    last = goal + chance.pick(tuple(_APPROACHES), tuple(_APPROACHES.values()))
    chord, scale = _classes(context, end - value)
    if abs(last - goal) == 2 and last % 12 not in scale:
        return None
    line, midi = [], context.midi
    for number in range(count - 1):
        chord, _ = _classes(context, end - (count - number) * value)
        ways = {
            way: often
            for size, often in _MOVES.items()
            for way in (midi + size, midi - size)
            if way % 12 in chord and way != goal and instrument.lowest_midi <= way <= instrument.highest_midi
        }
        if not ways:
            return None
        midi = chance.pick(tuple(ways), tuple(ways.values()))
        line.append(midi)
    line.append(last)
    return tuple(line) if _is_sound(context, tuple(line)) else None


def _is_sound(context: Context, line: Line) -> bool:
    """No note twice in a row or too far from the last, no more than an octave in all, not there and back for ever."""
    path = (context.midi, *line, _goal(context))
    moves = [b - a for a, b in pairwise(path)]
    low, high = min(path), max(path)
    instrument = context.setting.instrument
    swings = any(a == c for a, c in zip(line, line[2:], strict=False))
    return (
        all(0 < abs(move) <= _WIDEST for move in moves)
        and high - low <= _SPAN
        and instrument.lowest_midi <= low
        and high <= instrument.highest_midi
        and not swings
        and any(abs(move) >= 3 for move in moves[:-1])
    )


def _worth(context: Context, line: Line) -> float:
    """What a player likes: to come near the arrival from one side, or around it; few turns."""
    moves = [b - a for a, b in pairwise((context.midi, *line, _goal(context)))]
    turns = sum(a * b < 0 for a, b in pairwise(moves))
    enclosed = len(line) > 1 and (line[-2] - _goal(context)) * (line[-1] - _goal(context)) < 0
    return -0.25 * max(turns - 1, 0) + 0.2 * enclosed + 0.1 * (turns == 1) + 0.05 * len(line)


def _pitch(context: Context, midi: int, ticks: int, after: int) -> Pitch:
    chord, scale = context.harmony_at(ticks)
    return spelled(chord, scale, context.key, midi, "up" if after > midi else "down")


def _is_lead_in(g: Group) -> bool:
    """Two to six notes between two others, chord notes by leap among them, that end a step from the arrival."""
    if not g.is_between or not 2 <= len(g.inner) <= 6 or g.is_quick:
        return False
    tones = sum(midi % 12 in g.chord for midi in g.inner[:-1])
    leaps = any(abs(move) >= 3 for move in g.moves[:-1])
    return is_step(g.moves[-1]) and leaps and tones == len(g.inner) - 1 and min(map(abs, g.moves)) > 0


LEAD_IN = Technique(
    id="lead-in",
    family=FILLS.id,
    level=3,
    find=_lead_ins,
    definition=Definition(_is_lead_in, breadth=286),
)

TECHNIQUES = (LEAD_IN,)
