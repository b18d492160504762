"""Saxophone fingerings, written A3 (baritone) to F♯6, alike for all sizes.

Common practice, from memory: the standard chart with B♭ by bis, side and one-and-one, side C, side F♯, palm
keys and front F. The bis key may stay down wherever the second finger is, and the G♯ key wherever the right
hand closes it again (articulated G♯). Altissimo beyond F♯6 differs with each horn and is left out.
"""

from __future__ import annotations

from fioritura.players.chart import FingeringChart, Handling, Key
from fioritura.theory.pitch import NoteName
from fioritura.words import message

__all__ = ["CHART"]

CHART = FingeringChart(
    family="saxophone",
    handling=Handling(register=0.5, upward=0.2),
    keys={
        "o": Key("LT", message("key-octave")),
        "lowA": Key("LT", message("key-low", note=NoteName.parse("A"))),
        "1": Key("L1", "1"),
        "bis": Key("L1", message("key-bis"), roll=2.4),
        "frontF": Key("L1", message("key-front", note=NoteName.parse("F"))),
        "2": Key("L2", "2"),
        "3": Key("L3", "3"),
        "G#": Key("L4", message("key-of-note", note=NoteName.parse("G♯"))),
        "C#": Key("L4", message("key-low", note=NoteName.parse("C♯"))),
        "B": Key("L4", message("key-low", note=NoteName.parse("B"))),
        "Bb": Key("L4", message("key-low", note=NoteName.parse("B♭"))),
        "palmD": Key("LP", message("key-palm", note=NoteName.parse("D"))),
        "palmEb": Key("LP", message("key-palm", note=NoteName.parse("E♭"))),
        "palmF": Key("LP", message("key-palm", note=NoteName.parse("F"))),
        "4": Key("R1", "4"),
        "5": Key("R2", "5"),
        "6": Key("R3", "6"),
        "sideF#": Key("R3", message("key-side", note=NoteName.parse("F♯"))),
        "highF#": Key("R3", message("key-high", note=NoteName.parse("F♯"))),
        "Eb": Key("R4", message("key-of-note", note=NoteName.parse("E♭"))),
        "C": Key("R4", message("key-low", note=NoteName.parse("C"))),
        "sideBb": Key("RS", message("key-side", note=NoteName.parse("B♭"))),
        "sideC": Key("RS", message("key-side", note=NoteName.parse("C"))),
        "sideE": Key("RS", message("key-high", note=NoteName.parse("E"))),
    },
    text="""
        A3   1   lowA 1 2 3 Bb 4 5 6 C
        Bb3  1   1 2 3 Bb 4 5 6 C
        B3   1   1 2 3 B 4 5 6 C
        C4   1   1 2 3 4 5 6 C
        C#4  1   1 2 3 C# 4 5 6 C
        D4   1   1 (bis) 2 3 (G#) 4 5 6
        Eb4  1   1 (bis) 2 3 (G#) 4 5 6 Eb
        E4   1   1 (bis) 2 3 (G#) 4 5
        F4   1   1 (bis) 2 3 (G#) 4
        F#4  1   1 (bis) 2 3 (G#) 5 | 1 (bis) 2 3 (G#) 4 sideF#
        G4   1   1 (bis) 2 3
        G#4  1   1 (bis) 2 3 G#
        A4   1   1 (bis) 2
        Bb4  1   1 bis | 1 2 sideBb | 1 4 | 1 5
        B4   1   1
        C5   1   2 | 1 sideC
        C#5  1   | ~o 3
        D5   2   o 1 (bis) 2 3 (G#) 4 5 6 | ~palmD
        Eb5  2   o 1 (bis) 2 3 (G#) 4 5 6 Eb
        E5   2   o 1 (bis) 2 3 (G#) 4 5
        F5   2   o 1 (bis) 2 3 (G#) 4
        F#5  2   o 1 (bis) 2 3 (G#) 5 | o 1 (bis) 2 3 (G#) 4 sideF#
        G5   2   o 1 (bis) 2 3
        G#5  2   o 1 (bis) 2 3 G#
        A5   2   o 1 (bis) 2
        Bb5  2   o 1 bis | o 1 2 sideBb | o 1 4 | o 1 5
        B5   2   o 1
        C6   2   o 2 | o 1 sideC
        C#6  2   o
        D6   2   o palmD
        Eb6  2   o palmD palmEb
        E6   2   o palmD palmEb sideE | o frontF 2 3
        F6   2   o palmD palmEb palmF sideE | o frontF 2
        F#6  2   o palmD palmEb palmF sideE highF# | o frontF 2 sideBb
    """,
)
"""The chart for soprano, alto, tenor and baritone."""
