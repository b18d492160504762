"""Fingerings of the six-hole flutes of Irish music in D: wooden flute and tin whistle, written D4 to D6.

Common practice, from memory: the holes open one by one from D to C♯, C is cross-fingered; the octave is overblown with the
same fingers, D with the first hole open. What lies between is half-holed, or on the flute taken with a key where it has
one; it is slow and avoided in tunes.
"""

from __future__ import annotations

from fioritura.players.chart import FingeringChart, Handling, Key
from fioritura.words import message

__all__ = ["CHART"]

_HALF = message("key-half-hole")

CHART = FingeringChart(
    family="six-hole flute",
    handling=Handling(register=0.4, upward=0.1, seal=0.1),
    keys={
        "1": Key("L1", "1", is_open_hole=True),
        "2": Key("L2", "2", is_open_hole=True),
        "3": Key("L3", "3", is_open_hole=True),
        "4": Key("R1", "4", is_open_hole=True),
        "5": Key("R2", "5", is_open_hole=True),
        "6": Key("R3", "6", is_open_hole=True),
        "h2": Key("L2", _HALF, is_open_hole=True, roll=3.0),
        "h3": Key("L3", _HALF, is_open_hole=True, roll=3.0),
        "h5": Key("R2", _HALF, is_open_hole=True, roll=3.0),
        "h6": Key("R3", _HALF, is_open_hole=True, roll=3.0),
    },
    text="""
        D4   1   1 2 3 4 5 6
        Eb4  1   1 2 3 4 5 h6
        E4   1   1 2 3 4 5
        F4   1   1 2 3 4 h5
        F#4  1   1 2 3 4
        G4   1   1 2 3
        G#4  1   1 2 h3
        A4   1   1 2
        Bb4  1   1 h2
        B4   1   1
        C5   1   2 3
        C#5  1
        D5   2   2 3 4 5 6 | 1 2 3 4 5 6
        Eb5  2   1 2 3 4 5 h6
        E5   2   1 2 3 4 5
        F5   2   1 2 3 4 h5
        F#5  2   1 2 3 4
        G5   2   1 2 3
        G#5  2   1 2 h3
        A5   2   1 2
        Bb5  2   1 h2
        B5   2   1
        C6   2   2 3
        C#6  2
        D6   3   2 3 4 5 6
    """,
)
"""The chart for the flute and the whistle in D."""
