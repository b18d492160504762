"""How a figure is read: its added notes spelled for the notes around them, in key and chord."""

from __future__ import annotations

from dataclasses import replace

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.theory.chord import Chord
from fioritura.theory.spelling import spelled_line
from fioritura.tune import Tune

__all__ = ["legible"]


def legible(figure: Figure, context: Context) -> Figure | None:
    """The figure with its added notes spelled well, or None where no spelling would be read without surprise.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> from fioritura.techniques.grace import LOWER_GRACE_SEMITONE
        >>> context = contexts(tune, fioritura.Setting().on(tune))[3]
        >>> figure = next(iter(LOWER_GRACE_SEMITONE.find(context)))
        >>> legible(figure, context) == figure
        True
    """
    if figure.graces:
        return _with_legible_graces(figure, context)
    notes, first, last = context.tune.notes, figure.first_slot // 2, figure.last_slot // 2
    stands = [notes[anchor].pitch for anchor in figure.anchors]
    added = [note.anchor is None and note.pitch not in stands for note in figure.notes]
    if True not in added:
        return figure
    before = first if notes[first].onset_ticks < figure.start_ticks else first - 1
    after = last if notes[last].end_ticks > figure.end_ticks else last + 1
    line = [note.pitch for note in figure.notes]
    onsets = [note.onset_ticks for note in figure.notes]
    if before >= 0:
        line.insert(0, notes[before].pitch)
        onsets.insert(0, notes[before].onset_ticks)
        added.insert(0, False)
    if after < len(notes):
        line.append(notes[after].pitch)
        onsets.append(notes[after].onset_ticks)
        added.append(False)
    spelled = spelled_line(tuple(line), tuple(added), context.key, _chords(context.tune, onsets))
    if spelled is None:
        return None
    own = spelled[before >= 0 :][: len(figure.notes)]
    if own == tuple(note.pitch for note in figure.notes):
        return figure
    return replace(figure, notes=tuple(replace(note, pitch=p) for note, p in zip(figure.notes, own, strict=True)))


def _with_legible_graces(figure: Figure, context: Context) -> Figure | None:
    line, count = (*figure.graces, context.note.pitch), len(figure.graces)
    spelled = spelled_line(line, (True,) * count + (False,), context.key, (context.chord,) * (count + 1))
    if spelled is None or spelled == line:
        return figure if spelled else None
    return replace(figure, graces=spelled[:-1])


def _chords(tune: Tune, onsets_ticks: list[int]) -> tuple[Chord | None, ...]:
    """The chord under each of some times that rise."""
    found: list[Chord | None] = []
    end = -1
    chord: Chord | None = None
    for onset in onsets_ticks:
        if onset >= end:
            span = tune.chord_at(onset)
            chord, end = (span.chord, span.end_ticks) if span else (None, onset)
        found.append(chord)
    return tuple(found)
