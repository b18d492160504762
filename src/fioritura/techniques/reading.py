"""How a figure is read: its added notes spelled for the notes around them, in key and chord."""

from __future__ import annotations

from dataclasses import replace

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.theory.pitch import Pitch
from fioritura.theory.spelling import Reading, spelled_line

__all__ = ["legible"]


def legible(figure: Figure, context: Context) -> Figure | None:
    """The figure with its added notes spelled well, or None where no spelling would be read without surprise."""
    if figure.graces:
        return _with_legible_graces(figure, context)
    if all(note.anchor is not None for note in figure.notes):
        return figure
    notes, first, last = context.tune.notes, figure.first_slot // 2, figure.last_slot // 2
    before = first if notes[first].onset_ticks < figure.start_ticks else first - 1
    after = last if notes[last].end_ticks > figure.end_ticks else last + 1
    stands = {notes[anchor].pitch for anchor in figure.anchors}
    own = [_reading(context, note.pitch, note.onset_ticks, note.pitch not in stands) for note in figure.notes]
    line = (*_plain(context, before), *own, *_plain(context, after))
    spelled = spelled_line(line)
    if spelled is None:
        return None
    start = 1 if before >= 0 else 0
    mine = spelled[start : start + len(own)]
    if all(note.pitch == pitch for note, pitch in zip(figure.notes, mine, strict=True)):
        return figure
    return replace(figure, notes=tuple(replace(note, pitch=p) for note, p in zip(figure.notes, mine, strict=True)))


def _with_legible_graces(figure: Figure, context: Context) -> Figure | None:
    onset = context.note.onset_ticks
    own = [_reading(context, pitch, onset, True) for pitch in figure.graces]
    spelled = spelled_line((*own, *_plain(context, context.index)))
    if spelled is None:
        return None
    return figure if spelled[:-1] == figure.graces else replace(figure, graces=spelled[:-1])


def _plain(context: Context, index: int) -> tuple[Reading, ...]:
    notes = context.tune.notes
    if not 0 <= index < len(notes):
        return ()
    note = notes[index]
    return (_reading(context, note.pitch, note.onset_ticks, False),)


def _reading(context: Context, pitch: Pitch, onset_ticks: int, is_added: bool) -> Reading:
    span = context.tune.chord_at(onset_ticks)
    return pitch, is_added, context.key, span.chord if span else None
