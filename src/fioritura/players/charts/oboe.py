"""Oboe fingerings (conservatoire system), written B♭3 to G6.

Common practice, from memory: half-hole from C♯5 to E♭5, the back octave key from E5 to G♯5, the side one from A5
to C6; F by the F key, the left F key or forked. Above C6 makers and reeds differ; one usual fingering stands here.
"""

from __future__ import annotations

from fioritura.players.chart import FingeringChart, Handling, Key
from fioritura.theory.pitch import NoteName
from fioritura.words import message

__all__ = ["CHART"]

CHART = FingeringChart(
    family="oboe",
    handling=Handling(register=0.6, upward=0.2, seal=0.1),
    keys={
        "back": Key("LT", message("key-back-octave")),
        "side": Key("LP", message("key-side-octave")),
        "1": Key("L1", "1", is_open_hole=True),
        "half": Key("L1", message("key-half-hole"), is_open_hole=True),
        "2": Key("L2", "2", is_open_hole=True),
        "3": Key("L3", "3", is_open_hole=True),
        "G#": Key("L4", message("key-of-note", note=NoteName.parse("G♯"))),
        "lF": Key("L4", message("key-left", note=NoteName.parse("F"))),
        "lEb": Key("L4", message("key-left", note=NoteName.parse("E♭"))),
        "B": Key("L4", message("key-low", note=NoteName.parse("B"))),
        "Bb": Key("L4", message("key-low", note=NoteName.parse("B♭"))),
        "4": Key("R1", "4", is_open_hole=True),
        "5": Key("R2", "5", is_open_hole=True),
        "6": Key("R3", "6", is_open_hole=True),
        "F": Key("R3", message("key-of-note", note=NoteName.parse("F"))),
        "Eb": Key("R4", message("key-of-note", note=NoteName.parse("E♭"))),
        "C#": Key("R4", message("key-low", note=NoteName.parse("C♯"))),
        "C": Key("R4", message("key-low", note=NoteName.parse("C"))),
    },
    text="""
        Bb3  1   1 2 3 Bb 4 5 6 C
        B3   1   1 2 3 B 4 5 6 C
        C4   1   1 2 3 4 5 6 C
        C#4  1   1 2 3 4 5 6 C#
        D4   1   1 2 3 4 5 6
        Eb4  1   1 2 3 4 5 6 Eb | 1 2 3 lEb 4 5 6
        E4   1   1 2 3 4 5
        F4   1   1 2 3 4 5 F | 1 2 3 lF 4 5 | ~1 2 3 4 6 (Eb)
        F#4  1   1 2 3 4
        G4   1   1 2 3
        G#4  1   1 2 3 G#
        A4   1   1 2
        Bb4  1   1 2 4
        B4   1   1
        C5   1   1 4
        C#5  2   half 2 3 4 5 6 C#
        D5   2   half 2 3 4 5 6
        Eb5  2   half 2 3 4 5 6 Eb | half 2 3 lEb 4 5 6
        E5   2   back 1 2 3 4 5
        F5   2   back 1 2 3 4 5 F | back 1 2 3 lF 4 5 | ~back 1 2 3 4 6 (Eb)
        F#5  2   back 1 2 3 4
        G5   2   back 1 2 3
        G#5  2   back 1 2 3 G#
        A5   2   side 1 2
        Bb5  2   side 1 2 4
        B5   2   side 1
        C6   2   side 1 4
        C#6  3   2 3 4 5 6 C#
        D6   3   2 3 4 C
        Eb6  3   half 2 3 B 5 6
        E6   3   back half 2 3 G# 5 6 Eb
        F6   3   back half 2 3 G# 4 6 Eb
        F#6  3   back half 2 4 6 Eb
        G6   3   back half 2 G# 4 5 Eb
    """,
)
"""The chart for the oboe."""
