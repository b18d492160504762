"""The hardest places of a line for a player, why they are hard, and how to practise them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np

from fioritura.errors import OptionError
from fioritura.players.chart import Fingering, FingeringChart
from fioritura.players.fingering import chart_of, fingering_path
from fioritura.players.limits import slurred_sec
from fioritura.players.player import GRACE_SHARE, Player
from fioritura.players.practice import Cause, causes_of, practice_steps, tempo_steps
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.theory.position import Position
from fioritura.tune import Mark, Note, Tune
from fioritura.words import Message, message

__all__ = ["HardPlace", "hardest_places"]

GRACE_ALLOWED_SEC: Final = 0.08
"""A grace note that needs more than this no longer sounds like one (common practice, from memory)."""

_SHORTEST_SEC: Final = 1e-3
_NEIGHBOURS: Final = 3
_NEARLY_AS_HARD: Final = 0.75


@dataclass(frozen=True, slots=True)
class HardPlace:
    """A place that asks for practice, at `position`.

    `notes` are the written pitches around it and `pair` the two it turns on. `strain` is the time those need over
    the time there is (1 is the player's limit). `why` and `practice` are sentences for the player, `tempos` those at which to
    practise it, in beats a minute.
    """

    bar: int
    beat: float
    notes: tuple[Pitch, ...]
    pair: tuple[Pitch, Pitch]
    strain: float
    why: Message
    practice: tuple[Message, ...]
    position: Position
    tempos: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class _Event:
    """A main or grace note as the player meets it: written pitch, where it stands, and time to the next onset."""

    pitch: Pitch
    onset_ticks: int
    available_sec: float
    is_grace: bool
    is_tongued: bool


@dataclass(frozen=True, slots=True)
class _Move:
    """The step from one event to the next: fingerings (None without a chart) and strain."""

    first: _Event
    second: _Event
    fingerings: tuple[Fingering, Fingering] | None
    is_tongued: bool
    strain: float


def hardest_places(
    player: Player, line: Sequence[Note], tune: Tune, quarters_per_minute: float, count: int = 3
) -> tuple[HardPlace, ...]:
    """The `count` hardest places of a line, hardest first, no two of them overlapping.

    `line` holds sounding pitches with times in the bars of `tune`.

    Raises:
        OptionError: the tempo or `count` is not above 0.
        RangeError: a note lies outside the instrument.
    """
    if not quarters_per_minute > 0 or count < 1:
        raise OptionError("hard-places-not-above-0", tempo=f"{quarters_per_minute:g}", count=count)
    moves = _moves(player, list(_events(player, line, quarters_per_minute)))
    places: list[HardPlace] = []
    taken: set[int] = set()
    for number in sorted(range(len(moves)), key=lambda number: (-moves[number].strain, number)):
        first, last = _around(moves, number)
        if taken.isdisjoint(range(first, last + 1)):
            taken.update(range(first, last + 1))
            places.append(_place(player, moves, number, range(first, last + 1), tune, quarters_per_minute))
        if len(places) == count:
            break
    return tuple(places)


def _events(player: Player, line: Sequence[Note], quarters_per_minute: float) -> Iterator[_Event]:
    sec = 60 / (quarters_per_minute * QUARTER)
    written = player.instrument.written
    for number, note in enumerate(line):
        for grace in note.graces:
            yield _Event(written(grace), note.onset_ticks, GRACE_ALLOWED_SEC, is_grace=True, is_tongued=False)
        following = line[number + 1] if number + 1 < len(line) else None
        length = (following.onset_ticks if following else note.end_ticks) - note.onset_ticks
        graces = following.graces if following else ()
        available = length * sec - len(graces) * player.limits.grace_sec
        is_tongued = Mark.STACCATO in note.marks
        yield _Event(written(note.pitch), note.onset_ticks, max(available, _SHORTEST_SEC), False, is_tongued)


def _moves(player: Player, events: Sequence[_Event]) -> list[_Move]:
    path = fingering_path(player.instrument, [event.pitch for event in events])
    seconds = slurred_sec(player.limits, np.array(path.move_costs, dtype=np.float64)).tolist()
    moves = []
    for number, (first, second) in enumerate(pairwise(events)):
        needed = seconds[number] * (GRACE_SHARE if first.is_grace else 1.0)
        is_tongued = second.is_tongued or first.pitch.midi == second.pitch.midi
        if is_tongued:
            needed = max(needed, 1 / player.limits.tongue_rate)
        pair = (path.fingerings[number], path.fingerings[number + 1]) if path.fingerings else None
        moves.append(_Move(first, second, pair, is_tongued, needed / first.available_sec))
    return moves


def _around(moves: Sequence[_Move], number: int) -> tuple[int, int]:
    """First and last move of the hard stretch about a move: its neighbours that are nearly as hard."""
    enough = _NEARLY_AS_HARD * moves[number].strain
    first = last = number
    while first > max(0, number - _NEIGHBOURS) and moves[first - 1].strain >= enough:
        first -= 1
    while last < min(len(moves) - 1, number + _NEIGHBOURS) and moves[last + 1].strain >= enough:
        last += 1
    return first, last


def _place(
    player: Player, moves: Sequence[_Move], number: int, stretch: range, tune: Tune, quarters_per_minute: float
) -> HardPlace:
    move = moves[number]
    pair = (move.first.pitch, move.second.pitch)
    notes = (moves[stretch[0]].first.pitch, *(moves[index].second.pitch for index in stretch))
    chart = chart_of(player.instrument)
    causes = causes_of(chart, *move.fingerings) if chart and move.fingerings else ()
    if move.is_tongued:
        causes = (Cause("tongue", message("cause-tongue")), *causes)
    kinds = [cause.kind for cause in causes]
    metre = tune.bar_at(move.first.onset_ticks).metre
    tempos = tempo_steps(move.strain, quarters_per_minute * QUARTER / metre.beat_ticks)
    steps = practice_steps(pair, notes, kinds, tempos, metre.beat_sign)
    choices = _alternates(chart, moves, stretch) if chart else ()
    bar, beat = tune.beat_at(move.first.onset_ticks)
    position = tune.position_at(move.first.onset_ticks)
    return HardPlace(bar, beat, notes, pair, move.strain, _why(move, causes), (*choices, *steps), position, tempos)


def _why(move: _Move, causes: Sequence[Cause]) -> Message:
    if move.first.is_grace:
        why = message("cause-grace")
    else:
        why = message("cause-speed", rate=round(1 / move.first.available_sec, 1))
    for cause in reversed(causes[:2]):
        why = message("list-semicolon", first=cause.words, rest=why)
    a, b = move.first.pitch, move.second.pitch
    subject = message("move-again", note=a) if a.midi == b.midi else message("move-to", first=a, second=b)
    return message("hard-place-why", move=subject, why=why)


def _alternates(chart: FingeringChart, moves: Sequence[_Move], stretch: range) -> tuple[Message, ...]:
    """Fingerings other than the usual one that make the stretch easier."""
    pairs = [moves[index].fingerings for index in stretch]
    chosen = [fingering for pair in pairs if pair for fingering in pair if fingering.penalty > 0]
    return tuple(
        dict.fromkeys(
            message("practice-fingering", note=fingering.pitch, fingering=chart.in_words(fingering))
            for fingering in chosen
        )
    )
