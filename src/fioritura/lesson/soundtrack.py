"""The sound of a lesson: each example plain and ornamented, the performance, a backing, and a ladder of tempos."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from fioritura.accompany.form import Chorus
from fioritura.accompany.shape import planned_choruses
from fioritura.arrange.plan import Plan
from fioritura.arrange.rendition import Rendition
from fioritura.lesson.example import Example
from fioritura.lesson.lesson import Lesson
from fioritura.sound.performance import Performance
from fioritura.sound.session import Session
from fioritura.tune import Note, Tune
from fioritura.unfold import unfolded
from fioritura.words import message, say

__all__ = [
    "Balance",
    "Track",
    "balance_of",
    "balanced",
    "example_session",
    "line_session",
    "performance_session",
    "tracks",
    "write_midi_track",
    "write_track",
]

BACKING_CHORUSES: Final = 3
SLOW_SHARE: Final = 0.6


Balance = tuple[tuple[str, int, float], ...]
"""Name, volume and attack in seconds of each part of the band."""


@dataclass(frozen=True)
class Track:
    """A sound file: its name without ending, its title, and what is played."""

    name: str
    title: str
    session: Session


def tracks(lesson: Lesson) -> Iterator[Track]:
    """All sound files, the longest first, so that work spreads evenly."""
    plain = Rendition(lesson.once, lesson.setting, ())
    yield Track("backing", say(message("sound-backing")), backing_session(lesson))
    for beats in lesson.ladder[:-1]:
        tempo = beats * lesson.beat_quarters / lesson.setting.quarters_per_minute
        title = say(message("sound-ladder", tempo=beats))
        yield Track(f"ladder-{beats:03}", title, ladder_session(lesson, tempo))
    yield Track("performance", say(message("sound-performance")), performance_session(lesson))
    yield Track("plain", say(message("sound-plain")), line_session(lesson, plain.plain_line))
    for example in lesson.examples:
        slow = say(message("sound-slow", technique=lesson.of(example.technique, "name")))
        yield Track(f"{example.name}-slow", slow, example_session(lesson, example, SLOW_SHARE))
        yield Track(example.name, lesson.heading(example.technique), example_session(lesson, example, 1.0))


def performance_session(lesson: Lesson) -> Session:
    """The whole performance with the band: one chorus where there is no plan, else those of the plan."""
    return _session(lesson, _performed_choruses(lesson), is_planned=lesson.own is not None)


def backing_session(lesson: Lesson) -> Session:
    """The band of the performance alone; three choruses of it where the performance has but one."""
    plan = Plan.usual(BACKING_CHORUSES) if lesson.plan.count == 1 else lesson.plan
    return _session(lesson, planned_choruses(plan), is_planned=True)


def ladder_session(lesson: Lesson, share: float) -> Session:
    """The fullest chorus of the performance with the band, at a share of the goal tempo."""
    chorus = _performed_choruses(lesson)[lesson.plan.climax or 0]
    return _session(lesson, (replace(chorus, manner="four"),), share)


def line_session(lesson: Lesson, line: tuple[Note, ...]) -> Session:
    """A line over the lesson's tune, once, with the band at tempo."""
    return _session(lesson, (Chorus(say(lesson.plan.name(0)), _unfolded(lesson.once, line)),))


def example_session(lesson: Lesson, example: Example, share: float) -> Session:
    """An example's phrase, plain and then ornamented; with the band at tempo, with clicks alone when slow."""
    return Session(
        tune=example.tune,
        choruses=(
            Chorus(say(message("line-plain")), example.tune.notes),
            Chorus(say(message("line-ornamented")), example.line),
        ),
        instrument=lesson.instrument,
        feel=lesson.feel,
        player=lesson.setting.player,
        quarters_per_minute=lesson.setting.quarters_per_minute * share,
        has_band=share == 1.0,
        clicks=share < 1.0,
        holds_last=False,
        seed=lesson.rendition.seed,
    )


def _performed_choruses(lesson: Lesson) -> tuple[Chorus, ...]:
    plan, line = lesson.plan, lesson.rendition.line
    if lesson.own is None:
        return (Chorus(say(plan.name(0)), _unfolded(lesson.tune, line)),)
    return planned_choruses(plan, plan.parted(lesson.tune, line))


def _unfolded(tune: Tune, line: tuple[Note, ...]) -> tuple[Note, ...]:
    return unfolded(replace(tune, notes=line)).notes


def _session(
    lesson: Lesson, choruses: tuple[Chorus, ...], share: float = 1.0, *, is_planned: bool = False
) -> Session:
    """Choruses of the tune with its repeats; the drums lead in where they follow a plan."""
    return Session(
        tune=unfolded(lesson.once),
        choruses=choruses,
        instrument=lesson.instrument,
        feel=lesson.feel,
        player=lesson.setting.player,
        quarters_per_minute=lesson.setting.quarters_per_minute * share,
        opening="pickup" if is_planned else "count-in",
        seed=lesson.rendition.seed,
    )


def balance_of(lesson: Lesson) -> Balance:
    """How loud each part of the band must be, and how early it starts, with the soundfont in use.

    Raises:
        ToolError: the synth is missing or failed.
    """
    from fioritura.sound.calibrate import calibrated
    from fioritura.sound.session import played

    performance = calibrated(played(replace(performance_session(lesson), clicks=True)))
    return tuple((part.name, part.volume, part.attack_sec) for part in performance.parts)


def balanced(performance: Performance, balance: Balance) -> Performance:
    """A performance by the same band with its parts balanced."""
    known = {name: (volume, attack_sec) for name, volume, attack_sec in balance}
    parts = []
    for part in performance.parts:
        volume, attack_sec = known.get(part.name, (part.volume, part.attack_sec))
        parts.append(replace(part, volume=volume, attack_sec=attack_sec))
    return replace(performance, parts=tuple(parts))


def write_track(track: Track, balance: Balance, artist: str, path: Path) -> None:
    """Play a track and write it as the audio format that the path's ending names, with one synth: others are busy.

    Raises:
        ToolError: the synth is missing or failed.
        OutputError: the file can't be written.
    """
    from fioritura.sound.mixdown import write_audio
    from fioritura.sound.session import played

    performance = replace(played(track.session), title=track.title)
    write_audio(balanced(performance, balance), path, artist=artist, at_once=1)


def write_midi_track(track: Track, path: Path) -> None:
    """Play a track and write it as a MIDI file."""
    from fioritura.sound.midi_writer import write_midi
    from fioritura.sound.session import played

    path.write_bytes(write_midi(replace(played(track.session), title=track.title)))
