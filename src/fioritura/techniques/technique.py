"""What a technique is, and the few ways in which one writes its figures."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark
from fioritura.words import Message, message

__all__ = ["WORDS", "Side", "Technique", "before_next", "instead", "with_graces", "with_mark"]

Side = Literal["above", "below"]

WORDS = ("label", "text", "how", "when", "fault", "cure")
"""Attributes of a technique's text, beside its name."""


@dataclass(frozen=True, slots=True)
class Technique:
    """A rewriting rule over a melody with all that belongs to it; nothing else in the program knows it.

    `find` yields every figure that the rule allows at a place, whatever its taste. `family` is a family's id, `level`
    (1-5) the player's level from which it is offered. The rest is how it is recognised (`definition`), on which `side`
    of the note it lies, which `signs` of notation stand for it, and its words.

    The words are Project Fluent: a text with the technique's id, which is its name as it stands in a sentence, and the
    attributes `WORDS`. Those of a technique that comes with the program lie in ``FILE.LANGUAGE.ftl`` beside its file,
    its weights in ``FILE.taste.json``; any other has them with it, in `words` (by language; English must be there) and
    `taste`.
    """

    id: str
    family: str
    level: int
    find: Callable[[Context], Iterable[Figure]]
    definition: Definition | None = None
    """None for what no group of added notes shows: notes that are moved or inflected."""
    side: Side | None = None
    """On which side of the note it lies; None for both or neither."""
    signs: tuple[Mark, ...] = ()
    """The signs that stand for it, the usual one first."""
    is_sign: bool = False
    """True where its figures are that sign on the note, and nothing else."""
    realisations: Callable[[Context], Iterator[Figure]] | None = None
    """Figures that it does not write, but by which players realise it, or its sign."""
    repeats_pitch: bool = False
    """True where playing the same pitch twice in a row is the point of the technique."""
    words: Mapping[str, str] = field(default_factory=dict, repr=False, hash=False)
    taste: Mapping[str, Mapping[str, Any]] = field(default_factory=dict, repr=False, hash=False)
    """Its weights by idiom: ``base``, and where wanted ``share`` and ``place`` (see docs/plugins.md)."""

    @property
    def name(self) -> Message:
        """What it is called in a sentence, without article: "grace note a semitone below"."""
        return message(self.id)

    @property
    def label(self) -> Message:
        """The short name above the staff."""
        return message(f"{self.id}.label")

    @property
    def text(self) -> Message:
        """What it is."""
        return message(f"{self.id}.text")

    @property
    def how(self) -> Message:
        """How it is played."""
        return message(f"{self.id}.how")

    @property
    def when(self) -> Message:
        """When it fits."""
        return message(f"{self.id}.when")

    @property
    def fault(self) -> Message:
        """A common fault."""
        return message(f"{self.id}.fault")

    @property
    def cure(self) -> Message:
        """The cure of that fault."""
        return message(f"{self.id}.cure")


def with_graces(technique: str, context: Context, graces: Sequence[Pitch], why: Message) -> Figure:
    """Grace notes before the place's note, which itself stays as it is.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[2]
        >>> figure = with_graces("kick", place, [place.step_below], message("turn"))
        >>> figure.anchors, [str(pitch) for pitch in figure.graces]
        ((2,), ['Bb4'])
    """
    slot, onset = head(context.index), context.note.onset_ticks
    return Figure(technique, (context.index,), slot, slot, onset, onset, graces=tuple(graces), why=why)


def with_mark(technique: str, context: Context, mark: Mark, why: Message, *, at_head: bool, at_tail: bool) -> Figure:
    """A sign on the place's note, claiming its attack, its end, or both.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[2]
        >>> with_mark("scoop", place, Mark.SCOOP, message("scoop"), at_head=True, at_tail=False).marks
        (<Mark.SCOOP: 'scoop'>,)
    """
    first = head(context.index) if at_head else tail(context.index)
    last = tail(context.index) if at_tail else head(context.index)
    onset = context.note.onset_ticks
    return Figure(technique, (context.index,), first, last, onset, onset, marks=(mark,), why=why)


def before_next(
    technique: str, context: Context, pitches: Sequence[Pitch], values_ticks: Sequence[int], why: Message
) -> Figure:
    """Added notes that take their time from the end of the place's note (and the rest after it) and lead into the
    next plain note, whose attack they claim.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[2]
        >>> figure = before_next("lead", place, [place.step_below], [420], message("turn"))
        >>> [(note.onset_ticks, note.duration_ticks, str(note.pitch)) for note in figure.notes], figure.anchors
        ([(4620, 420, 'Bb4')], (2, 3))
    """
    end = context.note.onset_ticks + context.reach_ticks
    start = onset = end - sum(values_ticks)
    notes = []
    for pitch, value in zip(pitches, values_ticks, strict=True):
        notes.append(FigureNote(onset, value, pitch))
        onset += value
    anchors = (context.index, context.index + 1) if context.next else (context.index,)
    last = head(context.index + 1) if context.next else tail(context.index)
    return Figure(
        technique, anchors, tail(context.index), last, start, end, notes=tuple(notes), why=why, is_slurred=True
    )


def instead(
    technique: str, context: Context, pitches: Sequence[Pitch], values_ticks: Sequence[int], why: Message
) -> Figure:
    """Notes in place of the whole plain note; the first of its pitch stands for it. Values sum to its duration.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[2]
        >>> pitches = [place.note.pitch, place.step_above, place.note.pitch]
        >>> figure = instead("flip", place, pitches, [280, 280, 280], message("turn"))
        >>> [note.anchor for note in figure.notes]
        [2, None, None]
    """
    start = onset = context.note.onset_ticks
    midis = [pitch.midi for pitch in pitches]
    standing = midis.index(context.midi) if context.midi in midis else None
    notes = []
    for number, (pitch, value) in enumerate(zip(pitches, values_ticks, strict=True)):
        notes.append(FigureNote(onset, value, pitch, context.index if number == standing else None))
        onset += value
    return Figure(
        technique,
        (context.index,),
        head(context.index),
        tail(context.index),
        start,
        context.note.end_ticks,
        notes=tuple(notes),
        why=why,
        is_slurred=any(midi != context.midi for midi in midis),
    )
