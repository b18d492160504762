"""Notes and places as plain data: the same fields wherever the program gives them out (`docs/data.md` lists them)."""

from __future__ import annotations

from typing import Any

from fioritura.techniques.figure import Figure
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.tune import Tune
from fioritura.words import say

__all__ = ["figure_notes", "note_data", "place_data", "quarters", "time_data"]


def quarters(ticks: int) -> float:
    """A time in quarter notes, to a millionth.

    Examples:
        >>> quarters(840)
        0.5
    """
    return round(ticks / QUARTER, 6)


def place_data(tune: Tune, ticks: int) -> dict[str, Any]:
    """Where a time stands: bar and beat as numbers, the chord that holds there (None without), the place in words.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> place_data(tune, tune.bars[1].start_ticks)["beat"]
        1.0
    """
    return {**_numbered(tune, ticks), "place": say(tune.position_at(ticks).message.form("full"))}


def _numbered(tune: Tune, ticks: int) -> dict[str, Any]:
    bar, beat = tune.beat_at(ticks)
    span = tune.chord_at(ticks)
    return {"bar": bar, "beat": round(beat, 6), "chord": span.text if span else None}


def time_data(tune: Tune, onset_ticks: int, duration_ticks: int) -> dict[str, Any]:
    """When and where a note sounds, without words.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> time_data(tune, 0, 1680)["duration_quarters"]
        1.0
    """
    times = {"onset_quarters": quarters(onset_ticks), "duration_quarters": quarters(duration_ticks)}
    return times | _numbered(tune, onset_ticks)


def note_data(tune: Tune, pitch: Pitch, onset_ticks: int, duration_ticks: int) -> dict[str, Any]:
    """One sounding note over a tune; a grace note lasts 0 and begins with its main note.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> first = tune.notes[0]
        >>> note_data(tune, first.pitch, first.onset_ticks, first.duration_ticks)["pitch"] == str(first.pitch)
        True
    """
    return {
        "pitch": str(pitch),
        "midi": pitch.midi,
        "onset_quarters": quarters(onset_ticks),
        "duration_quarters": quarters(duration_ticks),
        **place_data(tune, onset_ticks),
    }


def figure_notes(tune: Tune, figure: Figure) -> list[dict[str, Any]]:
    """The notes that a figure writes, grace notes first, each with its `kind` and its `anchor` (None for an added one).

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.arrange.survey import survey
        >>> found = survey(tune, fioritura.Setting("alto-sax", level=3).on(tune), only=["turn"])
        >>> [note["kind"] for note in figure_notes(tune, found.figures[0])]
        ['note', 'note', 'note', 'note', 'note']
    """
    onset = tune.notes[figure.anchors[0]].onset_ticks
    graces = [{"kind": "grace", **note_data(tune, pitch, onset, 0), "anchor": None} for pitch in figure.graces]
    return graces + [
        {"kind": "note", **note_data(tune, note.pitch, note.onset_ticks, note.duration_ticks), "anchor": note.anchor}
        for note in figure.notes
    ]
