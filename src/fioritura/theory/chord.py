"""Chord symbols: what they mean, and our own reader of their many spellings."""

from __future__ import annotations

from dataclasses import dataclass

from fioritura.theory.pitch import Interval, NoteName

__all__ = ["Chord"]


@dataclass(frozen=True, slots=True)
class Chord:
    """A chord: its root, its tones as intervals above the root (in order of step), its bass and its text."""

    root: NoteName
    intervals: tuple[Interval, ...]
    bass: NoteName | None
    text: str

    def up(self, interval: Interval) -> Chord:
        """The chord an interval higher, its text respelled."""
        raise NotImplementedError
