"""Practice versions of a tune: in any key, at any tempo, some bars in a loop, plain and ornamented in turn.

Every version is performed anew; no audio is ever stretched or shifted.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Final, Literal

from fioritura.accompany.excerpt import excerpt
from fioritura.accompany.feels import BandFeel
from fioritura.accompany.form import Chorus, Ending, Opening
from fioritura.accompany.shape import planned_choruses
from fioritura.arrange.keys import least_interval
from fioritura.arrange.plan import Plan
from fioritura.errors import OptionError, RangeError
from fioritura.players.instruments import Instrument
from fioritura.sound.session import Session
from fioritura.theory.key import Key
from fioritura.theory.pitch import Interval, NoteName
from fioritura.tune import Note, Tune, transpose
from fioritura.unfold import unfolded
from fioritura.words import message, say

__all__ = ["Practice", "Version", "What", "in_key", "versions"]

What = Literal["plain", "ornamented", "in-turn", "backing"]
"""The tune as written, the tune with its ornaments, both chorus after chorus, or no melody."""

MAX_CHORUSES: Final = 200
FULL_SOLO_ENERGY: Final = 0.85

Loop = tuple[int, int]
"""First and last bar by number."""


@dataclass(frozen=True, slots=True)
class Practice:
    """What is wanted. `line` is the ornamented line over the bars of `tune`, both in written order; with a `plan` both are
    written out as often as it says, but for a backing, whose choruses the plan counts.

    `solos` counts choruses left to a soloist before the last one; `times` how often all of it, or a loop of bars, is
    played. `keys`, `quarters_per_minute` and `loops` (first and last bar by number) make one version for each triple of
    them; no keys mean the tune's own, no loops all of it. `opening` None is a pickup of the drums where the band plays a
    plan, else a count-in.
    """

    tune: Tune
    line: tuple[Note, ...]
    instrument: Instrument
    feel: BandFeel
    what: What = "ornamented"
    keys: tuple[Key, ...] = ()
    quarters_per_minute: tuple[float, ...] = ()
    plan: Plan | None = None
    solos: int = 0
    times: int = 1
    loops: tuple[tuple[int, int], ...] = ()
    opening: Opening | None = None
    has_band: bool = True
    clicks: bool = False
    ending: Ending | None = None
    exact: bool = False
    seed: int = 0

    def __post_init__(self) -> None:
        if not 0 <= self.solos <= MAX_CHORUSES:
            raise OptionError("choruses-out-of-reach", given=self.solos, low=0, high=MAX_CHORUSES)
        if not 1 <= self.times <= MAX_CHORUSES:
            raise OptionError("times-out-of-reach", given=self.times, low=1, high=MAX_CHORUSES)


@dataclass(frozen=True, slots=True)
class Version:
    """One version: its session, and the words that tell it from the others (empty where there is only one)."""

    session: Session
    key: Key
    loop: tuple[int, int] | None = None
    words: tuple[str, ...] = field(default=())

    @property
    def suffix(self) -> str:
        """For a file name: ``"-Bb-120"``."""
        return "".join(f"-{word}" for word in self.words)


def versions(practice: Practice) -> Iterator[Version]:
    """Every version that is wanted, loops first, then keys.

    Raises:
        RangeError: in a key the line lies outside the instrument in every octave.
        OptionError: the tune has no such bars.
    """
    for loop in practice.loops or (None,):
        plain, line = _frames(practice, loop)
        for key in practice.keys or (plain.key,):
            tune, ornamented = in_key(plain, line, key, practice.instrument, needs_range=practice.what != "backing")
            choruses = tuple(_choruses(practice, tune, ornamented, loop))
            for tempo in practice.quarters_per_minute or (None,):
                yield Version(
                    _session(practice, tune, choruses, tempo, loop),
                    tune.key,
                    loop,
                    _words(practice, loop, key, tempo),
                )


def _words(practice: Practice, loop: Loop | None, key: Key, tempo: float | None) -> tuple[str, ...]:
    """What tells a version from the others."""
    words = [f"{loop[0]}-{loop[1]}"] if loop and len(practice.loops) > 1 else []
    words += [str(key.tonic)] if len(practice.keys) > 1 else []
    words += [f"{tempo:g}"] if tempo is not None and len(practice.quarters_per_minute) > 1 else []
    return tuple(words)


def _session(
    practice: Practice, tune: Tune, choruses: tuple[Chorus, ...], tempo: float | None, loop: Loop | None
) -> Session:
    moves = practice.plan is not None and practice.plan.count > 1 and practice.has_band and loop is None
    return Session(
        tune=_band_tune(practice, tune, loop),
        choruses=choruses,
        instrument=practice.instrument,
        feel=practice.feel,
        quarters_per_minute=tempo,
        has_band=practice.has_band,
        clicks=practice.clicks,
        opening=practice.opening or ("pickup" if moves else "count-in"),
        ending=practice.ending,
        holds_last=loop is None,
        exact=practice.exact,
        seed=practice.seed,
    )


def _frames(practice: Practice, loop: Loop | None) -> tuple[Tune, tuple[Note, ...]]:
    """The tune as it is played, cut to the wanted bars or unfolded, and the ornamented line over it."""
    plain, other = practice.tune, replace(practice.tune, notes=practice.line)
    if loop:
        return excerpt(plain, *loop), excerpt(other, *loop).notes
    return unfolded(plain), unfolded(other).notes


def _band_tune(practice: Practice, tune: Tune, loop: Loop | None) -> Tune:
    """What one chorus goes over."""
    plan = practice.plan
    return tune if loop or plan is None or practice.what == "backing" else plan.once(tune)


def _choruses(practice: Practice, tune: Tune, ornamented: tuple[Note, ...], loop: Loop | None) -> Iterator[Chorus]:
    plan, plain = practice.plan or Plan.usual(1), tune.notes
    if practice.what == "backing":
        flat = [Chorus(say(plan.name(number))) for number in range(plan.count)]
        for _ in range(practice.times):
            yield from flat if loop else planned_choruses(plan)
        return
    if practice.what == "in-turn":
        for _ in range(practice.times):
            yield Chorus(say(message("line-plain")), plain)
            yield Chorus(say(message("line-ornamented")), ornamented)
        return
    line = plain if practice.what == "plain" else ornamented
    found: tuple[Chorus, ...]
    if loop or plan.count == 1:
        found = (Chorus(say(message("chorus-head")), line, plan.statements[0].energy),)
    else:
        found = planned_choruses(plan, plan.parted(tune, line))
    for _ in range(practice.times - 1):
        yield from found
    yield from _with_solos(found, practice.solos)


def _with_solos(choruses: Sequence[Chorus], count: int) -> Iterator[Chorus]:
    """The choruses with some for a soloist before the last one, or after the only one, which then comes again."""
    if not count:
        yield from choruses
        return
    before = choruses[:-1] or choruses
    yield from before
    low, high = before[-1].energy, FULL_SOLO_ENERGY
    for number in range(count):
        energy = max(low, low + (high - low) * (number + 1) / count)
        yield Chorus(say(message("chorus-solo", number=number + 1)), None, energy)
    last = choruses[-1]
    yield replace(last, name=say(message("chorus-last-head"))) if len(choruses) == 1 else last


def in_key(
    tune: Tune, line: Sequence[Note], key: Key, instrument: Instrument, *, needs_range: bool = True
) -> tuple[Tune, tuple[Note, ...]]:
    """Tune and line moved to a key by the smallest interval with which both stay on the instrument.

    Raises:
        RangeError: there is none.
    """
    other = replace(tune, notes=tuple(line))
    for interval in _intervals(tune.key.tonic, key.tonic):
        moved, moved_line = transpose(tune, interval), transpose(other, interval).notes
        sounding = [pitch for note in (*moved.notes, *moved_line) for pitch in (note.pitch, *note.graces)]
        if not needs_range or all(map(instrument.reaches, sounding)):
            return moved, moved_line
    raise RangeError("key-outside-instrument", key=key, instrument=instrument.name)


def _intervals(source: NoteName, target: NoteName) -> list[Interval]:
    """The ways from one tonic to another, up and down, the shortest first; an octave more or less at the end."""
    least = least_interval(source, target)
    ways = (Interval(least.steps + 7 * octaves, least.semitones + 12 * octaves) for octaves in range(-2, 3))
    return sorted(ways, key=lambda interval: (abs(interval.semitones), -interval.semitones))
