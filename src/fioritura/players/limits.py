"""What a player of a level can do: notes a second, breath, shortest notes.

Levels run from 1 (second year) to 5 (professional). Single-tongue and finger rates are common practice, from
memory; the top finger rate is set so that 99 % of the fastest eight-note runs of recorded jazz wind solos
(under 15 notes a second, open jazz solo annotations) lie within level 5. Breath is a comfortable phrase, not a
record; 95 % of phrases in those solos last under 7.5 seconds.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from fioritura.errors import OptionError
from fioritura.players.added import added_players
from fioritura.players.fingering import Matrix, chart_of, pair_cost
from fioritura.players.instruments import INSTRUMENTS, Instrument, instrument_named
from fioritura.theory.pitch import Pitch

__all__ = ["LEVELS", "Limits", "fastest_rate", "limits_of", "slurred_sec"]

LEVELS: Final = (1, 2, 3, 4, 5)

_TONGUE_RATE: Final = (5.0, 6.0, 7.0, 8.0, 9.0)
_FINGER_RATE: Final = (7.0, 9.0, 11.0, 13.0, 15.0)
_BREATH_SEC: Final = (5.0, 6.5, 8.0, 10.0, 12.0)
_GRACE_SEC: Final = (0.050, 0.046, 0.042, 0.038, 0.035)
_BREATH_SHARE: Final = {
    "tenor-sax": 0.9,
    "baritone-sax": 0.75,
    "clarinet": 1.1,
    "bass-clarinet": 0.8,
    "flute": 0.8,
    "irish-flute": 0.8,
    "tin-whistle": 1.2,
    "oboe": 1.3,
    "trumpet": 0.9,
    "flugelhorn": 0.85,
    "trombone": 0.75,
}
_SLOWING: Final = 0.22
"""How much each unit of pair cost beyond one finger lengthens a note."""


@dataclass(frozen=True, slots=True)
class Limits:
    """A player's limits: `tongue_rate` and `finger_rate` in notes a second (the latter for the easiest slurred
    pair), `breath_sec` on one breath, `shortest_note_sec` for a main note, `grace_sec` for one grace note."""

    tongue_rate: float
    finger_rate: float
    breath_sec: float
    shortest_note_sec: float
    grace_sec: float


def limits_of(instrument: Instrument | str, level: int) -> Limits:
    """The limits of a level (1 to 5) on an instrument.

    Raises:
        OptionError: there is no such instrument or level.
    """
    known = instrument if isinstance(instrument, Instrument) else instrument_named(instrument)
    if level not in LEVELS:
        raise OptionError("no-such-level", given=f"{level}", low=LEVELS[0], high=LEVELS[-1])
    chart = chart_of(known)
    place = level - 1
    breath = _BREATH_SHARE if known.id in INSTRUMENTS else added_players().breath
    finger_rate = _FINGER_RATE[place] * (chart.handling.agility if chart else 1.0)
    return Limits(
        tongue_rate=_TONGUE_RATE[place],
        finger_rate=finger_rate,
        breath_sec=_BREATH_SEC[place] * breath.get(known.id, 1.0),
        shortest_note_sec=1 / finger_rate,
        grace_sec=_GRACE_SEC[place],
    )


def slurred_sec(limits: Limits, costs: Matrix) -> Matrix:
    """Seconds a note that pairs of those costs need when slurred back and forth."""
    return (1 + _SLOWING * np.maximum(costs - 1.0, 0.0)) / limits.finger_rate


def fastest_rate(
    instrument: Instrument | str, written_a: Pitch, written_b: Pitch, *, tongued: bool = False, level: int = 5
) -> float:
    """The fastest sensible rate, in notes a second, for two written notes in alternation.

    A repeated note is tongued in any case.

    Raises:
        OptionError: there is no such instrument or level.
        RangeError: the instrument has no fingering for one of the notes.
    """
    limits = limits_of(instrument, level)
    cost = np.array(pair_cost(instrument, written_a, written_b))
    rate = 1 / float(slurred_sec(limits, cost))
    return min(rate, limits.tongue_rate) if tongued or written_a.midi == written_b.midi else rate
