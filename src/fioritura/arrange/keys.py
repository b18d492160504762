"""Which key a tune is played in: one that is named, or the one that suits an instrument, or a class of several, best.

A key is a sounding one. The best key is the one in which the written part has the fewest signs, lies in the middle of
the comfortable range and under easy fingers, nearest to the tune's own where that is equal; for several players what
counts is added up. The weights are common practice, set by hand.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from fioritura.errors import OptionError, TuneError
from fioritura.players.fingering import fingering_path
from fioritura.players.instrument import Instrument
from fioritura.theory.key import MODES, Key
from fioritura.theory.pitch import Interval, NoteName
from fioritura.tune import Tune, transpose
from fioritura.words import message

__all__ = [
    "BEST",
    "OCTAVES",
    "best_key",
    "in_key",
    "key_named",
    "keyed",
    "least_interval",
    "octaves_that_fit",
    "twelve_keys",
]

BEST: Final = "best"
"""Asks for the key that suits best."""

OCTAVES: Final = (0, 1, -1, 2, -2, 3, -3)
"""How far a tune may be moved, the nearest first."""

_NAME: Final = re.compile(r"([A-Ga-g](?:##?|bb?|♯|♭)?)\s*(.*)")
_SHORT_MODES: Final = {"m": "minor", "min": "minor", "maj": "major"}

_SIGN: Final = 1.0
_OUTSIDE: Final = 4.0
"""Cost of a part all of whose notes lie outside the comfortable range; half of it for half of them."""
_OFF_MIDDLE: Final = 1 / 6
"""Cost of a semitone between the part's middle and that of the comfortable range."""
_FINGERS: Final = 1.0
"""Cost of one more unit of the mean cost of a move (see `fioritura.players.fingering`)."""
_FAR: Final = 0.05
"""Cost of a semitone away from the tune's own key: it decides between equals."""


def key_named(name: str, like: Key) -> Key:
    """The key of a name such as ``"Bb"`` or ``"Bb minor"``, in the mode of another key.

    Examples:
        >>> from fioritura.theory.key import Key
        >>> str(key_named("Bb", Key.of("A", "minor")))
        'Bb minor'

    Raises:
        TuneError: not a note name, or a key of more than seven sharps or flats.
        OptionError: a name with another mode than that key's.
    """
    match = _NAME.fullmatch(name.strip())
    if match is None:
        return Key.of(name.strip(), like.mode)
    tonic, mode = match.groups()
    if mode:
        try:
            found = Key.of(NoteName(0), _SHORT_MODES.get(mode, mode))
        except TuneError:
            raise OptionError("no-such-key", given=name) from None
        if found.mode != like.mode:
            raise OptionError("key-of-another-mode", given=name, key=like)
    return Key.of(tonic[0].upper() + tonic[1:].replace("♯", "#").replace("♭", "b"), like.mode)


def twelve_keys(start: Key) -> tuple[Key, ...]:
    """All keys of a mode along the circle of fourths, each with the fewest sharps or flats.

    Examples:
        >>> from fioritura.theory.key import Key
        >>> [str(key.tonic) for key in twelve_keys(Key.of("C"))][:4]
        ['C', 'F', 'Bb', 'Eb']
    """
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


def keyed(tune: Tune, key: Key | str, instruments: Sequence[Instrument]) -> Tune:
    """The tune in a key (a key, its name, or ``"best"`` for the instruments), moved as little as that takes; the best key
    is said among the warnings.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.players.instruments import instrument_named
        >>> str(keyed(tune, "G", [instrument_named("alto-sax")]).key)
        'G major'

    Raises:
        TuneError, OptionError: there is no such key.
        RangeError: an instrument holds the tune in no key (``"best"``).
    """
    if isinstance(key, str) and key.strip().lower() == BEST:
        found = best_key(tune, instruments)
        written = tuple(dict.fromkeys(_written(found, instrument) for instrument in instruments))
        players = tuple(instrument.name for instrument in instruments)
        note = message("key-best", key=found, instruments=players, written=written)
        tune = in_key(tune, found)
        return replace(tune, warnings=(*tune.warnings, note))
    return in_key(tune, key_named(key, tune.key) if isinstance(key, str) else key)


def in_key(tune: Tune, key: Key) -> Tune:
    """The tune with all its notes, graces, chords and key signatures moved to a key by the least interval.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.theory.key import Key
        >>> str(in_key(tune, Key.of("C")).key)
        'C major'
    """
    return transpose(tune, least_interval(tune.key.tonic, key.tonic))


def least_interval(source: NoteName, target: NoteName) -> Interval:
    """The smallest interval from one tonic to another; up where both ways are equal.

    Examples:
        >>> from fioritura.theory.pitch import NoteName
        >>> least_interval(NoteName.parse("C"), NoteName.parse("Bb")).name
        '-M2'
    """
    steps = (target.letter - source.letter) % 7
    semitones = (target.pitch_class - source.pitch_class) % 12
    if steps == 0 and semitones > 6:
        semitones -= 12
    if steps == 6 and semitones < 6:
        semitones += 12
    ways = (Interval(steps + 7 * octaves, semitones + 12 * octaves) for octaves in (-1, 0))
    return min(ways, key=lambda way: (abs(way.semitones), -way.semitones))


def best_key(tune: Tune, instruments: Sequence[Instrument]) -> Key:
    """The key in which a tune suits an instrument best, or several by the sum of what each finds in its part.

    A key in which one of them has no octave for the tune is none; if there is no other, the tune's own is taken.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.players.instruments import instrument_named
        >>> best_key(tune, [instrument_named("alto-sax")]).mode == tune.key.mode
        True
    """
    costs = {key: _cost(tune, key, instruments) for key in twelve_keys(tune.key)}
    usable = {key: cost for key, cost in costs.items() if cost is not None}
    return min(usable, key=lambda key: usable[key]) if usable else tune.key


def octaves_that_fit(tune: Tune, instrument: Instrument) -> list[int]:
    """The octave shifts (nearest first) with which every note of the tune lies on the instrument.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.players.instruments import instrument_named
        >>> octaves_that_fit(tune, instrument_named("flute"))
        [0, 1]
    """
    sounding = [pitch.midi for note in tune.notes for pitch in (note.pitch, *note.graces)]
    low, high = min(sounding), max(sounding)
    return [
        octave
        for octave in OCTAVES
        if instrument.lowest_midi <= low + 12 * octave and high + 12 * octave <= instrument.highest_midi
    ]


def _written(key: Key, instrument: Instrument) -> Key:
    return key.transposed(instrument.transposition)


def _cost(tune: Tune, key: Key, instruments: Sequence[Instrument]) -> float | None:
    """What a key costs all the instruments together; None where one of them can't play the tune in it."""
    interval = least_interval(tune.key.tonic, key.tonic)
    moved = transpose(tune, interval)
    parts = [_part_cost(moved, instrument) for instrument in instruments]
    found = [cost for cost in parts if cost is not None]
    return sum(found) + _FAR * abs(interval.semitones) if len(found) == len(parts) else None


def _part_cost(tune: Tune, instrument: Instrument) -> float | None:
    fitting = octaves_that_fit(tune, instrument)
    if not fitting:
        return None
    octave = min(fitting, key=lambda octave: abs(octave - instrument.reading_octave))
    by = Interval(7 * octave, 12 * octave)
    written = [instrument.written(note.pitch.up(by)) for note in tune.notes]
    heights = [pitch.midi for pitch in written]
    low, high = instrument.comfortable_low.midi, instrument.comfortable_high.midi
    outside = sum(not low <= height <= high for height in heights) / len(heights)
    off_middle = abs((min(heights) + max(heights)) - (low + high)) / 2
    moves = sum(first != second for first, second in pairwise(heights))
    fingers = fingering_path(instrument, written).cost / max(moves, 1)
    signs = abs(_written(tune.key, instrument).fifths)
    return _SIGN * signs + _OUTSIDE * outside + _OFF_MIDDLE * off_middle + _FINGERS * fingers
