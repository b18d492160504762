"""What the band reads from the chords: for each beat the chord, whether it is new, and which one comes next."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fioritura.accompany.form import Form
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.metre import HALF, QUARTER, Metre
from fioritura.theory.scale import chord_scale
from fioritura.tune import Bar, ChordSpan

__all__ = ["Beat", "Changes", "bass_class", "beat_lengths", "beats_of", "scale_classes"]


@dataclass(frozen=True, slots=True)
class Beat:
    """One beat that the band plays.

    `is_new` is true where a chord begins that differs from the one before; `next_chord` is the chord of the beat
    after (None at the end and before N.C.).
    """

    onset_ticks: int
    duration_ticks: int
    bar: int
    number: int
    """Beat in the bar, from 0."""
    chord: Chord | None
    key: Key
    is_new: bool
    next_chord: Chord | None

    @property
    def leads_on(self) -> bool:
        """True for the last beat before another bass note is due."""
        if self.chord is None or self.next_chord is None:
            return False
        return bass_class(self.next_chord) != bass_class(self.chord)


class Changes:
    """The chords of a form by place."""

    def __init__(self, spans: Sequence[ChordSpan]) -> None:
        self._spans = spans
        self._starts = [span.onset_ticks for span in spans]

    def at(self, ticks: int) -> Chord | None:
        """The chord in force; None for N.C. and outside the chords."""
        span = self.span_at(ticks)
        return span.chord if span else None

    def span_at(self, ticks: int) -> ChordSpan | None:
        """The chord symbol in force."""
        number = bisect_right(self._starts, ticks) - 1
        return self._spans[number] if number >= 0 and ticks < self._spans[number].end_ticks else None

    def starting_in(self, start: int, end: int) -> Iterator[ChordSpan]:
        """The chord symbols that begin in a stretch, from `start` up to `end`."""
        for number in range(bisect_right(self._starts, start - 1), len(self._spans)):
            if self._starts[number] >= end:
                return
            yield self._spans[number]


def beat_lengths(metre: Metre) -> tuple[int, ...]:
    """The beats that a bass player walks on: halves count as two quarters."""
    return tuple(part for group in metre.groups_ticks for part in ((QUARTER, QUARTER) if group == HALF else (group,)))


def beats_of(form: Form) -> list[Beat]:
    """The beats between count-in and last chord."""
    changes = Changes(form.tune.chords)
    places: list[tuple[int, int, int, int, Bar]] = []
    stop = form.tune.duration_ticks if form.final_ticks is None else form.final_ticks
    for index, bar in form.playing_bars():
        start = bar.start_ticks
        for number, length in enumerate(beat_lengths(bar.metre)):
            if start < min(bar.end_ticks, stop):
                places.append((start, length, index, number, bar))
            start += length
    chords = [changes.at(place[0]) for place in places]
    following = [*chords[1:], changes.at(stop) if form.final_ticks is not None else None]
    return [
        Beat(start, length, index, number, chord, bar.key, n == 0 or chord != chords[n - 1], upcoming)
        for n, ((start, length, index, number, bar), chord, upcoming) in enumerate(
            zip(places, chords, following, strict=True)
        )
    ]


def bass_class(chord: Chord) -> int:
    """0-11 of the note that belongs in the bass."""
    return (chord.bass or chord.root).pitch_class


@lru_cache(maxsize=4096)
def scale_classes(chord: Chord, key: Key) -> frozenset[int]:
    """0-11 of the chord's scale in the key."""
    return chord_scale(chord, key).pitch_classes
