"""Clarinet fingerings (17-key Boehm system), written E♭3 (bass clarinet) to G6.

Common practice, from memory: left and right little-finger keys for E, F and F♯ with their twelfths, side,
sliver and one-and-one E♭, and the right hand left down in the throat (above G4) to make the break easier.
Chalumeau fingerings overblow a twelfth with the register key; altissimo ones are the fifth partial with the
first hole open.
"""

from __future__ import annotations

from fioritura.players.chart import FingeringChart, Handling, Key
from fioritura.theory.pitch import NoteName
from fioritura.words import message

__all__ = ["CHART"]

CHART = FingeringChart(
    family="clarinet",
    handling=Handling(register=0.7, upward=0.5, seal=0.25),
    keys={
        "T": Key("LT", message("key-thumb-hole"), is_open_hole=True),
        "R": Key("LT", message("key-register"), roll=0.6),
        "1": Key("L1", "1", is_open_hole=True),
        "A": Key("L1", message("key-of-note", note=NoteName.parse("A"))),
        "G#": Key("L1", message("key-throat", note=NoteName.parse("G♯"))),
        "2": Key("L2", "2", is_open_hole=True),
        "3": Key("L3", "3", is_open_hole=True),
        "sliver": Key("L3", message("key-left-sliver")),
        "lE": Key("L4", message("key-left-pair", low=NoteName.parse("E"), high=NoteName.parse("B"))),
        "lF": Key("L4", message("key-left-pair", low=NoteName.parse("F"), high=NoteName.parse("C"))),
        "lF#": Key("L4", message("key-left-pair", low=NoteName.parse("F♯"), high=NoteName.parse("C♯"))),
        "C#": Key("L4", message("key-pair", low=NoteName.parse("C♯"), high=NoteName.parse("G♯"))),
        "4": Key("R1", "4", is_open_hole=True),
        "5": Key("R2", "5", is_open_hole=True),
        "6": Key("R3", "6", is_open_hole=True),
        "fork": Key("R3", message("key-right-sliver")),
        "rE": Key("R4", message("key-right-pair", low=NoteName.parse("E"), high=NoteName.parse("B"))),
        "rF": Key("R4", message("key-right-pair", low=NoteName.parse("F"), high=NoteName.parse("C"))),
        "rF#": Key("R4", message("key-right-pair", low=NoteName.parse("F♯"), high=NoteName.parse("C♯"))),
        "Ab": Key("R4", message("key-pair", low=NoteName.parse("A♭"), high=NoteName.parse("E♭"))),
        "lowEb": Key("R4", message("key-low", note=NoteName.parse("E♭"))),
        "side1": Key("RS", message("key-side", note=NoteName.parse("E♭"))),
        "side2": Key("RS", message("key-second-side")),
        "side3": Key("RS", message("key-side-trill", note=NoteName.parse("B♭"))),
    },
    text="""
        Eb3  1   T 1 2 3 4 5 6 lE lowEb
        E3   1   T 1 2 3 4 5 6 lE (rF) | T 1 2 3 4 5 6 rE
        F3   1   T 1 2 3 4 5 6 rF | T 1 2 3 4 5 6 lF
        F#3  1   T 1 2 3 4 5 6 rF# | T 1 2 3 4 5 6 lF#
        G3   1   T 1 2 3 4 5 6
        Ab3  1   T 1 2 3 4 5 6 Ab
        A3   1   T 1 2 3 4 5
        Bb3  1   T 1 2 3 4
        B3   1   T 1 2 3 5 | T 1 2 3 4 fork
        C4   1   T 1 2 3
        C#4  1   T 1 2 3 C#
        D4   1   T 1 2
        Eb4  1   T 1 2 side1 | T 1 2 sliver | T 1 4
        E4   1   T 1
        F4   1   T
        F#4  1   1 | T side1 side2
        G4   1
        G#4  1   G# (4+5+6/4+5+6+rF)
        A4   1   A (4+5+6/4+5+6+rE/4+5+6+rF)
        Bb4  1   R A (4+5+6/4+5+6+rE/4+5+6+rF) | ~A side3
        B4   2   R T 1 2 3 4 5 6 lE (rF) | R T 1 2 3 4 5 6 rE
        C5   2   R T 1 2 3 4 5 6 rF | R T 1 2 3 4 5 6 lF
        C#5  2   R T 1 2 3 4 5 6 rF# | R T 1 2 3 4 5 6 lF#
        D5   2   R T 1 2 3 4 5 6
        Eb5  2   R T 1 2 3 4 5 6 Ab
        E5   2   R T 1 2 3 4 5
        F5   2   R T 1 2 3 4
        F#5  2   R T 1 2 3 5 | R T 1 2 3 4 fork
        G5   2   R T 1 2 3
        G#5  2   R T 1 2 3 C#
        A5   2   R T 1 2
        Bb5  2   R T 1 2 side1 | R T 1 2 sliver | R T 1 4
        B5   2   R T 1
        C6   2   R T
        C#6  3   R T 2 3 4 5
        D6   3   R T 2 3 4 Ab
        Eb6  3   R T 2 3 4 fork Ab | R T 2 3 5 Ab
        E6   3   R T 2 3 Ab
        F6   3   R T 2 3 C# Ab
        F#6  3   R T 2 Ab
        G6   3   R T 2 4 Ab
    """,
)
"""The chart for clarinet and bass clarinet."""
