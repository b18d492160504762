"""Chance lines: what a wind player might play in some seconds, with all that fingers, tongue and lip do to it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

__all__ = ["Event", "chance_line"]

Dice = np.random.Generator

SHORTEST_SEC: Final = 0.03
_SCALES: Final = (
    (2, 2, 1, 2, 2, 2, 1),
    (2, 1, 2, 2, 1, 2, 2),
    (2, 1, 2, 2, 1, 3, 1),
    (2, 2, 3, 2, 3),
    (3, 2, 1, 1, 3, 2),
    (1,),
    (2,),
    (1, 2),
    (4, 3, 5),
    (3, 4, 5),
    (3, 3, 3, 3),
    (4, 3, 3, 2),
)
_QUARTERS: Final = (0.25, 0.33, 0.5, 0.5, 0.5, 0.75, 1.0, 1.0, 1.5, 2.0, 3.0)


@dataclass(frozen=True, slots=True)
class Event:
    """One note: seconds, MIDI number, and how it is played.

    `closure_db` is how far the tongue before it lets the level sink, `scoop` and `fall` are (cents, seconds),
    `vibrato` is (Hz, cents, dB, seconds before it starts), `glide_sec` the way from a slurred note before; `bend` is
    (cents, seconds from the onset to its middle, seconds that it lasts).
    """

    onset_sec: float
    offset_sec: float
    midi: int
    is_tongued: bool = True
    level_db: float = 0.0
    closure_db: float = 40.0
    detune_cents: float = 0.0
    scoop: tuple[float, float] | None = None
    fall: tuple[float, float] | None = None
    vibrato: tuple[float, float, float, float] | None = None
    glide_sec: float = 0.0
    swell_db: float = 0.0
    bend: tuple[float, float, float] | None = None


def chance_line(dice: Dice, low: int, high: int, seconds: float) -> list[Event]:
    """Notes between `low` and `high` (MIDI) that fill `seconds`, in order; none outlasts the next one's onset."""
    events: list[Event] = []
    now = float(dice.uniform(0.05, 0.8))
    place = float(dice.uniform(low, high))
    calm = dice.random() < 0.25
    while now < seconds - 0.3:
        style = str(
            dice.choice(
                ["ballad", "melody"]
                if calm
                else ["melody", "melody", "runs", "repeats", "repeats", "ballad", "leaps"]
            )
        )
        end = min(seconds - 0.05, now + float(dice.uniform(1.0, 5.0)))
        phrase = list(_phrase(dice, style, place, low, high, now, end))
        if phrase:
            events += _with_level(dice, phrase)
            place = float(events[-1].midi) if dice.random() < 0.7 else float(dice.uniform(low, high))
            now = events[-1].offset_sec
        now += float(dice.choice([0.05, 0.15, 0.4, 1.0])) * float(dice.uniform(0.6, 1.5))
    return list(_apart(events, seconds))


def _phrase(dice: Dice, style: str, place: float, low: int, high: int, start: float, end: float) -> Iterator[Event]:
    lengths = _lengths(dice, style)
    midis = _midis(dice, style, place, low, high)
    slur = {"runs": 0.8, "repeats": 0.0, "leaps": 0.4}.get(style, float(dice.choice([0.2, 0.6, 0.9])))
    graces = {"melody": float(dice.choice([0.0, 0.15, 0.4])), "ballad": 0.2}.get(style, 0.03)
    jitter = float(dice.uniform(0.0, 0.02))
    last: int | None = None
    now = start
    while now < end:
        length = max(SHORTEST_SEC, next(lengths) * float(np.exp(dice.normal(0, 2 * jitter))))
        midi = next(midis)
        is_slurred = last is not None and last != midi and dice.random() < slur
        event = _dressed(dice, Event(now, now + length, midi, not is_slurred), style)
        if dice.random() < graces and length > 0.15:
            yield from _ornamented(dice, event, last, low, high)
        else:
            yield event
        last = midi
        now += length


def _lengths(dice: Dice, style: str) -> Iterator[float]:
    """Seconds from note to note."""
    quarter = 60 / float(dice.uniform(60, 190))
    pace = 1 / float(dice.uniform(5, 14))
    stroke = 1 / float(dice.uniform(2, 8) if dice.random() < 0.7 else dice.uniform(7, 13))
    pulse = float(dice.choice([0.5, 1.0]))
    while True:
        if style == "runs":
            yield pace if dice.random() < 0.93 else 4 * pace
        elif style == "repeats":
            yield stroke * (1 if dice.random() < 0.85 else 2)
        elif style == "ballad":
            yield float(dice.uniform(0.4, 2.8))
        else:
            yield quarter * (float(dice.choice(_QUARTERS)) if dice.random() < 0.6 else pulse)


def _midis(dice: Dice, style: str, place: float, low: int, high: int) -> Iterator[int]:
    steps = _SCALES[dice.integers(7 if style == "melody" else len(_SCALES))]
    scale = [low - int(dice.integers(12))]
    while scale[-1] < high + 12:
        scale.append(scale[-1] + steps[len(scale) % len(steps)])
    inside = [midi for midi in scale if low <= midi <= high]
    at = int(np.argmin(np.abs(np.array(inside) - place)))
    way = int(dice.choice([-1, 1]))
    while True:
        yield inside[at]
        if style == "repeats":
            move = 0 if dice.random() < 0.75 else int(dice.integers(-3, 4))
        elif style == "runs":
            way = -way if dice.random() < 0.12 else way
            move = way * int(dice.choice([1, 1, 1, 2]))
        elif style == "leaps":
            move = int(dice.integers(-9, 10)) or 1
        else:
            move = int(dice.choice([-3, -2, -2, -1, -1, -1, 0, 1, 1, 1, 2, 2, 3, 4, -5, 7]))
        if not 0 <= at + move < len(inside):
            move, way = -move, -way
        at = int(np.clip(at + move, 0, len(inside) - 1))


def _dressed(dice: Dice, event: Event, style: str) -> Event:
    """The note with vibrato, scoop, fall and all the small uncertainties."""
    length = event.offset_sec - event.onset_sec
    fill = 1.0 if dice.random() < 0.6 else float(dice.uniform(0.45, 0.95))
    event = replace(
        event,
        offset_sec=event.onset_sec + max(SHORTEST_SEC, fill * length),
        detune_cents=float(dice.normal(0, 7)),
        closure_db=float(dice.choice([7, 12, 20, 40])) * float(dice.uniform(0.8, 1.2)),
        glide_sec=float(dice.uniform(0.01, 0.07)) if dice.random() < 0.25 else 0.0,
        swell_db=float(dice.normal(0, 3)) if length > 0.5 else 0.0,
    )
    if length > 0.3 and dice.random() < (0.85 if style == "ballad" else 0.5):
        extent = float(dice.uniform(5, 50))
        swing = (float(dice.uniform(4, 7.5)), extent, float(dice.uniform(0, 3)), float(dice.choice([0.0, 0.15, 0.4])))
        event = replace(event, vibrato=swing)
    if length > 0.18 and event.is_tongued and dice.random() < (0.3 if style == "ballad" else 0.1):
        event = replace(
            event, scoop=(float(dice.uniform(50, 250)), min(float(dice.uniform(0.05, 0.18)), 0.5 * length))
        )
    if length > 0.5 and dice.random() < 0.06:
        lasts = float(dice.uniform(0.12, 0.4))
        depth = float(dice.choice([-1.0, -1.0, 1.0])) * float(dice.uniform(40, 160))
        event = replace(event, bend=(depth, float(dice.uniform(0.5 * lasts, length - 0.5 * lasts)), lasts))
    if length > 0.3 and dice.random() < 0.06:
        way = float(dice.choice([-1, -1, 1]))
        event = replace(
            event, fall=(way * float(dice.uniform(100, 600)), min(float(dice.uniform(0.08, 0.25)), 0.5 * length))
        )
    return event


def _ornamented(dice: Dice, event: Event, last: int | None, low: int, high: int) -> Iterator[Event]:
    """The note with grace notes, a turn, a mordent, a trill or a slide of notes before or in it; a grace note may lie
    on the pitch of the note before, `last`."""
    quick = float(dice.uniform(0.03, 0.1))
    side, other = (int(dice.choice([-2, -1, 1, 2])) for _ in range(2))
    far = side * int(dice.integers(1, 4))
    same = last - event.midi if last is not None and 0 < abs(last - event.midi) <= 5 else side
    figures = (
        (side,),
        (same,),
        (side, -side),
        (far, other),
        (same, side),
        (0, side),
        (0, side, 0, -side),
        (side, 0, -side),
        (-2, -1),
        (far, side, other),
        (0, side) * int(dice.integers(2, 6)),
    )
    steps = figures[int(dice.choice([0, 0, 0, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]))]
    steps = tuple(step for step in steps if low <= event.midi + step <= high)
    count = min(len(steps), int(0.7 * (event.offset_sec - event.onset_sec) / quick))
    now, is_tongued = event.onset_sec, event.is_tongued
    for step in steps[:count]:
        yield Event(
            now,
            now + quick,
            event.midi + step,
            is_tongued,
            event.level_db,
            event.closure_db,
            float(dice.normal(0, 7)),
        )
        now, is_tongued = now + quick, False
    yield replace(event, onset_sec=now, is_tongued=is_tongued, scoop=None if count else event.scoop)


def _with_level(dice: Dice, phrase: list[Event]) -> Iterator[Event]:
    """The phrase as an arc, each note a little off it; some notes are ghosted."""
    loud, arc = float(dice.normal(0, 3)), float(dice.normal(0, 3))
    for place, event in enumerate(phrase):
        ghost = -float(dice.uniform(6, 14)) if dice.random() < 0.03 else 0.0
        curve = arc * float(np.sin(np.pi * (place + 0.5) / len(phrase)))
        yield replace(event, level_db=loud + curve + float(dice.normal(0, 1.5)) + ghost)


def _apart(events: list[Event], seconds: float) -> Iterator[Event]:
    """No note outlasts the next one's onset or the take; a slurred note follows directly; repeats are tongued."""
    for place, event in enumerate(events):
        before = events[place - 1] if place else None
        if before is not None and before.midi == event.midi:
            event = replace(event, is_tongued=True)
        follower = events[place + 1] if place + 1 < len(events) else None
        if follower is not None:
            is_tongued = follower.is_tongued or follower.midi == event.midi
            offset = min(event.offset_sec, follower.onset_sec) if is_tongued else follower.onset_sec
            event = replace(event, offset_sec=offset)
        event = replace(event, offset_sec=min(event.offset_sec, seconds))
        if event.offset_sec - event.onset_sec > 0.015:
            yield event
