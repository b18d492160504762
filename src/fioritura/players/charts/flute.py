"""Flute fingerings (Boehm system, C foot), written C4 to C7.

Common practice, from memory: B♭ by one-and-one, thumb or lever; the thumb may rest on the B♭ key wherever another
finger closes the B♭ hole as well; cross fingerings in the third octave. The E♭ key is down except where stated.
"""

from __future__ import annotations

from fioritura.players.chart import FingeringChart, Handling, Key
from fioritura.theory.pitch import NoteName
from fioritura.words import message

__all__ = ["CHART"]

CHART = FingeringChart(
    family="flute",
    handling=Handling(register=0.6, upward=0.2),
    keys={
        "T": Key("LT", message("key-thumb")),
        "Tb": Key("LT", message("key-thumb-note", note=NoteName.parse("B♭"))),
        "1": Key("L1", "1"),
        "2": Key("L2", "2"),
        "3": Key("L3", "3"),
        "G#": Key("L4", message("key-of-note", note=NoteName.parse("G♯"))),
        "4": Key("R1", "4"),
        "lever": Key("R1", message("key-lever", note=NoteName.parse("B♭"))),
        "5": Key("R2", "5"),
        "trillD": Key("R2", message("key-trill", note=NoteName.parse("D"))),
        "6": Key("R3", "6"),
        "trillEb": Key("R3", message("key-trill", note=NoteName.parse("D♯"))),
        "Eb": Key("R4", message("key-of-note", note=NoteName.parse("E♭"))),
        "C#": Key("R4", message("key-low", note=NoteName.parse("C♯"))),
        "C": Key("R4", message("key-low", note=NoteName.parse("C"))),
    },
    text="""
        C4   1   T/Tb 1 2 3 4 5 6 C
        C#4  1   T/Tb 1 2 3 4 5 6 C#
        D4   1   T/Tb 1 2 3 4 5 6
        Eb4  1   T/Tb 1 2 3 4 5 6 Eb
        E4   1   T/Tb 1 2 3 4 5 Eb
        F4   1   T/Tb 1 2 3 4 Eb
        F#4  1   T/Tb 1 2 3 6 Eb | ~T/Tb 1 2 3 5 Eb
        G4   1   T/Tb 1 2 3 Eb
        G#4  1   T/Tb 1 2 3 G# Eb
        A4   1   T/Tb 1 2 Eb
        Bb4  1   T 1 4 Eb | Tb 1 Eb | T 1 lever Eb
        B4   1   T 1 Eb
        C5   1   1 Eb
        C#5  1   Eb
        D5   2   T/Tb 2 3 4 5 6
        Eb5  2   T/Tb 2 3 4 5 6 Eb
        E5   2   T/Tb 1 2 3 4 5 Eb
        F5   2   T/Tb 1 2 3 4 Eb
        F#5  2   T/Tb 1 2 3 6 Eb | ~T/Tb 1 2 3 5 Eb
        G5   2   T/Tb 1 2 3 Eb
        G#5  2   T/Tb 1 2 3 G# Eb
        A5   2   T/Tb 1 2 Eb
        Bb5  2   T 1 4 Eb | Tb 1 Eb | T 1 lever Eb
        B5   2   T 1 Eb
        C6   2   1 Eb
        C#6  2   Eb
        D6   3   T/Tb 2 3 Eb
        Eb6  3   T/Tb 1 2 3 G# 4 5 6 Eb
        E6   3   T/Tb 1 2 4 5 Eb
        F6   3   T/Tb 1 3 4 Eb
        F#6  3   T 1 3 6 Eb
        G6   3   1 2 3 Eb
        G#6  3   2 3 G# Eb
        A6   3   T 2 4 Eb
        Bb6  3   T 4 trillD
        B6   3   T 1 3 trillEb
        C7   3   1 2 3 G# 4
    """,
)
"""The chart for the concert flute."""
