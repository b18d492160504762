"""What the report's sentences are made from: the tables, the naming they rest on, and what was asked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from statistics import median

from fioritura.listening.course import Course
from fioritura.listening.naming import Naming, Slip, SlipKind
from fioritura.listening.notes import Take
from fioritura.listening.rows import Report, SlipRow
from fioritura.players.instruments import Instrument
from fioritura.theory.pitch import Pitch
from fioritura.tune import Feel, Tune

__all__ = ["Material"]


@dataclass(frozen=True)
class Material:
    """A take with its tables. `free` are (passage, plain note) of notes whose time says nothing; `asked_tempo` is in quarters
    a minute, None where none was asked for."""

    report: Report
    naming: Naming
    take: Take
    course: Course
    free: frozenset[tuple[int, int]]
    feel: Feel
    asked_tempo: float | None = None
    instrument: Instrument | None = None

    @property
    def tune(self) -> Tune:
        """The plain tune."""
        return self.naming.alignment.tune

    def bar(self, plain: int) -> int:
        """The number of the bar in which a plain note begins."""
        return self.tune.bar_at(self.tune.notes[plain].onset_ticks).number

    def bars(self, plains: Sequence[int]) -> tuple[int, ...]:
        """The bars of plain notes, each once, in order."""
        return tuple(sorted({self.bar(plain) for plain in plains}))

    def whole_bars(self, first: int, stop: int) -> tuple[int, ...]:
        """The bars that have notes, all of them among plain notes `first` to `stop` (excluded)."""
        notes = self.tune.notes
        before = self.bar(first - 1) if first else None
        after = self.bar(stop) if stop < len(notes) else None
        return tuple(bar for bar in self.bars(range(first, stop)) if bar not in (before, after))

    def onset_sec(self, event: int) -> float:
        """When a played note begins in the recording."""
        return round(self.naming.alignment.events[event].onset, 2)

    def slips(self, kind: SlipKind) -> list[tuple[SlipRow, Slip]]:
        """The slips of a kind that are sure enough to be said, with their rows, in order."""
        rows = {(row.kind, row.passage, row.bar, row.beat, row.plain): row for row in self.report.slips}
        keys = [(slip.kind, slip.passage, slip.bar, slip.beat, slip.plain) for slip in self.naming.slips]
        return [
            (rows[key], slip)
            for key, slip in zip(keys, self.naming.slips, strict=True)
            if slip.kind is kind and key in rows
        ]

    def as_read(self, pitch: Pitch) -> Pitch:
        """A sounding pitch as the player reads it."""
        return self.instrument.written(pitch) if self.instrument else pitch

    @cached_property
    def shown(self) -> frozenset[tuple[str, int]]:
        """Technique and first anchor of each ornament that the report tells of."""
        return frozenset((row.technique, row.anchor) for row in self.report.figures)

    @cached_property
    def clearness(self) -> float:
        """How clearly the take was heard, 0 to 1: the median confidence of its notes."""
        return median(note.confidence for note in self.take.notes) if self.take.notes else 0.0
