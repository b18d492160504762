"""A figure: one use of a technique at one place of a tune."""

from __future__ import annotations

from dataclasses import dataclass, field
from hashlib import blake2s
from typing import Final

from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark
from fioritura.words import Message, verbatim

__all__ = ["NO_REASON", "Figure", "FigureNote", "head", "tail"]

NO_REASON: Final = verbatim("")


def head(index: int) -> int:
    """The slot for what happens to the attack of plain note `index` (grace notes, a scoop, an early start).

    Examples:
        >>> head(3)
        6
    """
    return 2 * index


def tail(index: int) -> int:
    """The slot for what happens at the end of plain note `index` and in the rest after it (a run, a fall).

    Examples:
        >>> tail(3)
        7
    """
    return 2 * index + 1


@dataclass(frozen=True, slots=True)
class FigureNote:
    """A note that a figure writes.

    `anchor` is the plain note that it is the new form of, or None. A note that `joins` goes on, as one longer
    note, into what the figure leaves of its anchor (an anticipation: the early start of the note that follows).
    """

    onset_ticks: int
    duration_ticks: int
    pitch: Pitch
    anchor: int | None = None
    joins: bool = False
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True, repr=False)
class Figure:
    """One use of a technique.

    The figure owns the slots `first_slot` to `last_slot` (see `head` and `tail`) and writes `notes` in place of
    whatever the plain tune has in the window `start_ticks` to `end_ticks`; an empty window leaves the plain note
    as it is. `graces` stand before, and `marks` on, the first anchor. `why` is the reason why it may stand here. `merit` is the
    technique's own judgement among its several figures at a place: 0.0 for its first choice, less for the others;
    `score` is the arranger's.
    The notes of a figure that `is_slurred` go in one slur, added notes before the next plain note up to that note.
    """

    technique: str
    anchors: tuple[int, ...]
    first_slot: int
    last_slot: int
    start_ticks: int
    end_ticks: int
    notes: tuple[FigureNote, ...] = ()
    graces: tuple[Pitch, ...] = ()
    marks: tuple[Mark, ...] = ()
    why: Message = NO_REASON
    merit: float = 0.0
    is_slurred: bool = False
    score: float = 0.0
    counts_as: int | None = field(default=None, compare=False)
    """The size for which it is weighed, where a technique draws several sizes and wants none preferred; None: its own."""

    @property
    def id(self) -> str:
        """A name that stays the same as long as tune and figure do: ``"turn-12-3fa9c1"``."""
        notes = [(note.onset_ticks, note.duration_ticks, note.pitch.midi) for note in self.notes]
        content = repr((notes, [pitch.midi for pitch in self.graces], [str(mark) for mark in self.marks]))
        return f"{self.technique}-{self.anchors[0]}-{blake2s(content.encode(), digest_size=3).hexdigest()}"

    @property
    def added_notes(self) -> int:
        """How many notes it adds, grace notes and those that stand for no plain note."""
        return len(self.graces) + sum(note.anchor is None for note in self.notes)

    @property
    def size(self) -> int:
        """How many notes it adds, moves, lengthens or takes to another octave; 1 for a sign on a note."""
        is_of_many = len(self.anchors) > 1
        changed = sum(
            note.anchor is not None and (is_of_many or note.joins or note.onset_ticks > self.start_ticks)
            for note in self.notes
        )
        return max(self.added_notes + changed, 1)

    def __repr__(self) -> str:
        return f"<Figure {self.id}, score {self.score:g}>"

    def collides(self, other: Figure) -> bool:
        """True when both claim a slot: only one of them can stand."""
        return self.first_slot <= other.last_slot and other.first_slot <= self.last_slot
