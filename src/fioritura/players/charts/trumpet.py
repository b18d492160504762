"""Trumpet and flugelhorn fingerings, written F♯3 to D6, with the partial each note is blown on.

Common practice; each line also follows from the harmonic series on written C3 and the valves (first two
semitones down, second one, third three), without the flat seventh partial. Valves go down with the right hand.
"""

from __future__ import annotations

from fioritura.players.chart import FingeringChart, Handling, Key

__all__ = ["CHART", "FLUGELHORN"]

_VALVES = {
    "1": Key("R1", "1"),
    "2": Key("R2", "2"),
    "3": Key("R3", "3"),
}
_TEXT = """
    F#3  2   1 2 3
    G3   2   1 3
    Ab3  2   2 3
    A3   2   1 2 | ~3
    Bb3  2   1
    B3   2   2
    C4   2
    C#4  3   1 2 3
    D4   3   1 3
    Eb4  3   2 3
    E4   3   1 2 | ~3
    F4   3   1
    F#4  3   2
    G4   3
    G4   4   ~1 3
    Ab4  4   2 3
    A4   4   1 2 | ~3
    Bb4  4   1
    B4   4   2
    C5   4
    C5   5   ~2 3
    C#5  5   1 2 | ~3
    D5   5   1
    D5   6   ~1 3
    Eb5  5   2
    Eb5  6   ~2 3
    E5   5
    E5   6   ~1 2
    F5   6   1
    F#5  6   2
    F#5  8   ~1 2 3
    G5   6
    G5   8   ~1 3
    Ab5  8   2 3
    A5   8   1 2 | ~3
    Bb5  8   1
    B5   8   2
    C6   8
    C#6  10  1 2
    C#6  9   ~2
    D6   10  1
    D6   9   ~
"""

CHART = FingeringChart("trumpet", _VALVES, _TEXT, Handling(register=1.0, upward=0.2, agility=0.9))
"""The chart for the trumpet."""

FLUGELHORN = FingeringChart("flugelhorn", _VALVES, _TEXT, Handling(register=1.0, upward=0.3, agility=0.8))
"""The same fingerings on the slower instrument."""
