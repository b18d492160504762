"""Tunes for tests: made at random within bounds, so that no test depends on one melody."""

from __future__ import annotations

import random

from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key, Mode
from fioritura.theory.metre import EIGHTH, QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, ChordSpan, Note, Tune

RHYTHMS: dict[str, list[tuple[float, ...]]] = {
    "4/4": [(2, 2), (1, 1, 2), (1, 1, 1, 1), (3, 1), (1, 0.5, 0.5, 2), (4,), (1.5, 0.5, 2), (2, 1, -1)],
    "3/4": [(2, 1), (1, 1, 1), (3,), (1.5, 0.5, 1), (1, 0.5, 0.5, 1), (2, -1)],
    "6/8": [(1.5, 1.5), (1, 0.5, 1, 0.5), (0.5,) * 6, (3,), (1.5, 0.5, 0.5, 0.5)],
    "2/4": [(1, 1), (2,), (0.5, 0.5, 1), (1.5, 0.5)],
    "5/4": [(3, 2), (2, 1, 2), (1, 1, 1, 1, 1)],
}
PROGRESSION = ("P1 maj7", "M6 m7", "M2 m7", "P5 7")


def random_tune(
    seed: int, bars: int = 16, metre: str = "4/4", fifths: int | None = None, mode: Mode = "major"
) -> Tune:
    """A melody of steps and leaps between about F3 and G5, with I-VI-II-V changes; a negative length is a rest."""
    dice = random.Random(seed)
    key = Key(dice.randrange(-5, 6) if fifths is None else fifths, mode)
    signature = Metre.parse(metre)
    frame = tuple(
        Bar(number + 1, number * signature.bar_ticks, signature.bar_ticks, signature, key) for number in range(bars)
    )
    notes: list[Note] = []
    pitch = key.step(Pitch.parse("A4"), 0)
    for bar in frame:
        onset = bar.start_ticks
        for quarters in dice.choice(RHYTHMS[metre]):
            length = int(abs(quarters) * QUARTER)
            if quarters > 0:
                moved = key.step(pitch, dice.choice([-4, -2, -1, -1, 0, 0, 1, 1, 2, 3, -3, 5, -6]))
                pitch = moved if 55 <= moved.midi <= 79 else key.step(pitch, 1 if pitch.midi < 66 else -1)
                notes.append(Note(onset, length, pitch))
            onset += length
    chords = []
    for number, bar in enumerate(frame):
        degree, quality = PROGRESSION[number % 4].split()
        from fioritura.theory.pitch import Interval

        text = f"{key.tonic.up(Interval.parse(degree))}{quality}"
        chords.append(ChordSpan(bar.start_ticks, bar.duration_ticks, read_chord(text), text))
    return Tune(f"Random {seed}", tuple(notes), frame, tuple(chords))


def line_of(letters: str, metre: str = "4/4", key: str = "C major", chords: str = "C") -> Tune:
    """A tune from text: ``"C4/2 D4/1 r/1"``, lengths in quarters; `chords` one symbol a bar, the last repeating."""
    tonic, mode = key.split()
    signature, tone = Metre.parse(metre), Key.of(tonic, mode)
    notes, onset = [], 0
    for word in letters.split():
        name, _, length = word.partition("/")
        ticks = int(float(length or 1) * QUARTER)
        if name != "r":
            notes.append(Note(onset, ticks, Pitch.parse(name)))
        onset += ticks
    count = -(-onset // signature.bar_ticks)
    frame = tuple(Bar(n + 1, n * signature.bar_ticks, signature.bar_ticks, signature, tone) for n in range(count))
    symbols = chords.split()
    spans = tuple(
        ChordSpan(bar.start_ticks, bar.duration_ticks, read_chord(text), text)
        for bar, text in zip(frame, symbols + [symbols[-1]] * count, strict=False)
    )
    return Tune("Made by hand", tuple(notes), frame, spans)


__all__ = ["EIGHTH", "line_of", "random_tune"]
