"""Slide positions of the tenor trombone without trigger, sounding E2 to C5, with the partial of each.

Common practice; each line also follows from the harmonic series on B♭1, a semitone lower for each position. The
seventh partial is flat and so is played with a raised slide; first position is never used for it.
"""

from __future__ import annotations

from fioritura.players.chart import SLIDE_POSITIONS, FingeringChart, Handling, Key
from fioritura.words import message

__all__ = ["CHART"]

CHART = FingeringChart(
    family="trombone",
    handling=Handling(register=0.8, upward=0.2, travel=0.8, agility=0.65),
    keys={key: Key("slide", message("slide-position", number=number)) for key, number in SLIDE_POSITIONS.items()},
    text="""
        E2   2   s7
        F2   2   s6
        F#2  2   s5
        G2   2   s4
        Ab2  2   s3
        A2   2   s2
        Bb2  2   s1
        B2   3   s7
        C3   3   s6
        Db3  3   s5
        D3   3   s4
        Eb3  3   s3
        E3   3   s2
        F3   3   s1
        F3   4   ~s6
        F#3  4   s5
        G3   4   s4
        Ab3  4   s3
        A3   4   s2
        A3   5   ~s6
        Bb3  4   s1
        Bb3  5   ~s5
        B3   5   s4
        C4   5   s3
        C4   6   ~s6
        Db4  5   s2
        Db4  6   ~s5
        D4   5   s1
        D4   6   ~s4
        Eb4  6   s3
        E4   6   s2
        F4   6   s1
        F#4  7   s3
        F#4  8   ~s5
        G4   7   s2
        G4   8   ~s4
        Ab4  8   s3
        A4   8   s2
        Bb4  8   s1
        B4   9   s2
        C5   9   s1
    """,
)
"""The chart for the trombone, in concert pitch."""
