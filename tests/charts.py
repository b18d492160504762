"""Tunes with changes for tests of band and sound, built from a line of chord symbols."""

from __future__ import annotations

from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, ChordSpan, Feel, Note, Tempo, Tune

BLUES = "F7 | Bb7 | F7 | Cm7 F7 | Bb7 | Bdim7 | F7 | Am7b5 D7 | Gm7 | C7 | F7 D7 | Gm7 C7"
"""Twelve-bar blues with the usual substitutions (common practice)."""

MINOR_FOURTHS = (
    "Am7 | D7 | Gmaj7 | Cmaj7 | F#m7b5 | B7 | Em6 | % | F#m7b5 | B7b9 | Em6 | % | Am7 | D7 | Gmaj7 | Gmaj7"
)
"""A cycle of fourths in major and relative minor (common practice)."""


def chart(
    text: str,
    *,
    key: str = "C major",
    metre: str = "4/4",
    tempo: float = 140.0,
    feel: Feel = "swing",
    melody: str = "",
    pickup: int = 0,
) -> Tune:
    """Bars parted by |; `%` keeps the chord. `melody` is one pitch for each eighth of every bar, `.` a rest; with
    `pickup` a first bar of so many eighths (its melody the first of the pitches) stands before the others."""
    tonic, mode = key.split()
    tone, signature = Key.of(tonic, mode), Metre.parse(metre)
    cells = [cell.split() for cell in text.split("|")]
    shift = pickup * EIGHTH
    bars = [Bar(0, 0, shift, signature, tone)] if pickup else []
    bars += [
        Bar(n + 1, shift + n * signature.bar_ticks, signature.bar_ticks, signature, tone) for n in range(len(cells))
    ]
    starts = [
        (bar.start_ticks + place * signature.bar_ticks // len(cell), symbol)
        for bar, cell in zip(bars[1 if pickup else 0 :], cells, strict=True)
        for place, symbol in enumerate(cell)
        if symbol != "%"
    ]
    ends = [start for start, _ in starts[1:]] + [bars[-1].end_ticks]
    chords = tuple(
        ChordSpan(start, end - start, read_chord(symbol), symbol)
        for (start, symbol), end in zip(starts, ends, strict=True)
    )
    notes = tuple(
        Note(bar.start_ticks + n * EIGHTH, EIGHTH, Pitch.parse(name))
        for bar in bars
        for n, name in enumerate(melody.split()[: bar.duration_ticks // EIGHTH])
        if name != "."
    )
    return Tune("Chart", notes, tuple(bars), chords, (Tempo(0, tempo),), feel)
