"""Practice versions of a tune: in any key, at any tempo, some bars in a loop, plain and ornamented in turn.

Every version is performed anew; no audio is ever stretched or shifted.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Final, Literal

from fioritura.accompany.excerpt import excerpt
from fioritura.accompany.feels import BandFeel
from fioritura.accompany.form import Chorus, Ending
from fioritura.errors import OptionError, RangeError
from fioritura.players.instruments import Instrument
from fioritura.sound.session import Session
from fioritura.theory.key import MODES, Key
from fioritura.theory.pitch import Interval, NoteName
from fioritura.tune import Note, Tune, transpose
from fioritura.unfold import unfolded
from fioritura.words import message, say

__all__ = ["Practice", "Version", "What", "in_key", "key_on", "twelve_keys", "versions"]

What = Literal["plain", "ornamented", "in-turn", "backing"]
"""The tune as written, the tune with its ornaments, both chorus after chorus, or no melody."""

MAX_CHORUSES: Final = 200
HEAD_LOUDNESS: Final = 0.94


@dataclass(frozen=True, slots=True)
class Practice:
    """What is wanted. `line` is the ornamented line over the bars of `tune`, both in written order.

    `choruses` counts solo choruses between a head and a last head, or for a backing all of them; `times` how often a
    loop of `bars` (first and last number), or the pair of an in-turn version, is played. `keys` and
    `quarters_per_minute` make one version for each pair of them; no keys mean the tune's own.
    """

    tune: Tune
    line: tuple[Note, ...]
    instrument: Instrument
    feel: BandFeel
    what: What = "ornamented"
    keys: tuple[Key, ...] = ()
    quarters_per_minute: tuple[float, ...] = ()
    choruses: int = 0
    times: int = 1
    bars: tuple[int, int] | None = None
    has_band: bool = True
    clicks: bool = False
    ending: Ending | None = None
    exact: bool = False
    seed: int = 0

    def __post_init__(self) -> None:
        if not 0 <= self.choruses <= MAX_CHORUSES:
            raise OptionError("choruses-out-of-reach", given=self.choruses, low=0, high=MAX_CHORUSES)
        if not 1 <= self.times <= MAX_CHORUSES:
            raise OptionError("times-out-of-reach", given=self.times, low=1, high=MAX_CHORUSES)


@dataclass(frozen=True, slots=True)
class Version:
    """One version: its session, and the words that tell it from the others (empty where there is only one)."""

    session: Session
    key: Key
    words: tuple[str, ...] = field(default=())

    @property
    def suffix(self) -> str:
        """For a file name: ``"-Bb-120"``."""
        return "".join(f"-{word}" for word in self.words)


def versions(practice: Practice) -> Iterator[Version]:
    """Every version that is wanted, keys first.

    Raises:
        RangeError: in a key the line lies outside the instrument in every octave.
        OptionError: the tune has no such bars.
    """
    plain, line = _frames(practice)
    for key in practice.keys or (plain.key,):
        tune, ornamented = in_key(plain, line, key, practice.instrument, needs_range=practice.what != "backing")
        for tempo in practice.quarters_per_minute or (None,):
            words = [str(key.tonic)] if len(practice.keys) > 1 else []
            words += [f"{tempo:g}"] if tempo is not None and len(practice.quarters_per_minute) > 1 else []
            session = Session(
                tune=tune,
                choruses=tuple(_choruses(practice, tune.notes, ornamented)),
                instrument=practice.instrument,
                feel=practice.feel,
                quarters_per_minute=tempo,
                has_band=practice.has_band,
                clicks=practice.clicks,
                ending=practice.ending,
                holds_last=practice.bars is None,
                exact=practice.exact,
                seed=practice.seed,
            )
            yield Version(session, tune.key, tuple(words))


def _frames(practice: Practice) -> tuple[Tune, tuple[Note, ...]]:
    """The tune as it is played, cut to the wanted bars or unfolded, and the ornamented line over it."""
    plain, other = practice.tune, replace(practice.tune, notes=practice.line)
    if practice.bars:
        first, last = practice.bars
        return excerpt(plain, first, last), excerpt(other, first, last).notes
    return unfolded(plain), unfolded(other).notes


def _choruses(practice: Practice, plain: tuple[Note, ...], ornamented: tuple[Note, ...]) -> Iterator[Chorus]:
    if practice.what == "backing":
        for number in range(max(1, practice.choruses) * practice.times):
            yield Chorus(
                say(message("chorus-number", number=number + 1)), None, _rising(number, max(1, practice.choruses))
            )
        return
    if practice.what == "in-turn":
        for _ in range(practice.times):
            yield Chorus(say(message("line-plain")), plain, HEAD_LOUDNESS)
            yield Chorus(say(message("line-ornamented")), ornamented, HEAD_LOUDNESS)
        return
    line = plain if practice.what == "plain" else ornamented
    for _ in range(practice.times):
        yield Chorus(say(message("chorus-head")), line, HEAD_LOUDNESS)
    for number in range(practice.choruses):
        yield Chorus(say(message("chorus-solo", number=number + 1)), None, _rising(number, practice.choruses))
    if practice.choruses:
        yield Chorus(say(message("chorus-last-head")), line, HEAD_LOUDNESS)


def _rising(number: int, count: int) -> float:
    """Loudness of a solo chorus: the band grows towards the last one."""
    return HEAD_LOUDNESS + (1.0 - HEAD_LOUDNESS) * (number + 1) / count


def key_on(tonic: str, like: Key) -> Key:
    """The key on a tonic such as ``"Bb"`` in the mode of another key.

    Raises:
        TuneError: not a note name, or a key of more than seven sharps or flats.
    """
    return Key.of(tonic.strip()[:1].upper() + tonic.strip()[1:], like.mode)


def twelve_keys(start: Key) -> tuple[Key, ...]:
    """All keys of a mode along the circle of fourths, each with the fewest sharps or flats."""
    found = []
    for step in range(12):
        pitch_class = (start.tonic.pitch_class + 5 * step) % 12
        spellings = (NoteName(letter, alter) for letter in range(7) for alter in (-1, 0, 1))
        tonic = min(
            (name for name in spellings if name.pitch_class == pitch_class),
            key=lambda name: (abs(name.fifths + MODES[start.mode]), name.fifths),
        )
        found.append(Key.of(tonic, start.mode))
    return tuple(found)


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
    steps = (target.letter - source.letter) % 7
    semitones = (target.pitch_class - source.pitch_class) % 12
    if steps == 0 and semitones > 6:
        semitones -= 12
    if steps == 6 and semitones < 6:
        semitones += 12
    octaves = (Interval(steps + 7 * n, semitones + 12 * n) for n in (-2, -1, 0, 1))
    return sorted(octaves, key=lambda interval: (abs(interval.semitones), -interval.semitones))
