"""What happened to the tone: tuning as a whole and of single notes, and level."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median
from typing import Final

from fioritura.listening.happening import Happening, Kind, Unit
from fioritura.listening.material import Material
from fioritura.listening.rows import PitchRow
from fioritura.theory.pitch import Pitch
from fioritura.words import message

__all__ = ["told_tone"]

_TUNING_CENTS: Final = 14.0
_NOTE_CENTS: Final = 18.0
_DOUBT_CENTS: Final = 14.0
"""Recorded notes stray so far from their own usual pitch."""
_NOTE_COUNT: Final = 4
_LEVEL_DB: Final = 3.0
_FEWEST_LEVELS: Final = 24


def told_tone(of: Material) -> Iterator[Happening]:
    """The happenings of a take that concern its tone."""
    tuning = of.report.tuning_cents
    if abs(tuning) > _TUNING_CENTS:
        side = "sharp" if tuning > 0 else "flat"
        yield Happening(
            Kind.TUNING,
            message("advice-tuning-finding", cents=round(abs(tuning)), side=side),
            message("advice-tuning", side=side),
            weight=min(0.85, 0.2 + abs(tuning) / 80),
            confidence=min(1.0, 0.6 + abs(tuning) / 60),
            amount=tuning,
            unit=Unit.CENTS,
        )
    worst, away = max(_off_notes(of), key=lambda pair: abs(pair[1]), default=(None, 0.0))
    if worst and abs(away) >= _NOTE_CENTS and isinstance(worst.name, Pitch):
        side = "sharp" if away > 0 else "flat"
        cents = round(abs(away))
        yield Happening(
            Kind.NOTE,
            message("advice-note-finding", note=worst.name, cents=cents, side=side, count=worst.count),
            message("advice-note", note=worst.name),
            weight=min(0.6, 0.15 + abs(away) / 80),
            confidence=min(1.0, (abs(away) - _DOUBT_CENTS) / 20),
            count=worst.count,
            amount=away,
            unit=Unit.CENTS,
            note=worst.name,
        )
    if len(of.report.notes) >= _FEWEST_LEVELS and of.report.level.range_db < _LEVEL_DB:
        amount = of.report.level.range_db
        words = message("advice-level-finding", db=round(amount))
        yield Happening(Kind.LEVEL, words, message("advice-level"), 0.25, 0.8, amount=amount, unit=Unit.DECIBELS)


def _off_notes(of: Material) -> Iterator[tuple[PitchRow, float]]:
    """Notes heard often enough, and by how many cents they lie off the median of all the others."""
    for row in of.report.by_note:
        others = [note.cents for note in of.report.notes if note.cents is not None and note.pitch != row.name]
        if row.count >= _NOTE_COUNT and len(others) >= _NOTE_COUNT:
            yield row, round(row.cents - median(others), 1)
