"""What the writers and the engraver take: a tune's frame and one or more staves over it."""

from __future__ import annotations

from dataclasses import dataclass

from fioritura.players.instruments import INSTRUMENTS, Instrument
from fioritura.tune import Note, Tune

__all__ = ["Label", "Score", "Staff"]


@dataclass(frozen=True, slots=True)
class Label:
    """A short text above the staff at a place, such as the name of a figure; `figure` is its number."""

    onset_ticks: int
    text: str
    figure: int | None = None


@dataclass(frozen=True, slots=True)
class Staff:
    """One staff. `line` holds sounding pitches; the writer transposes them for the instrument."""

    line: tuple[Note, ...]
    name: str = ""
    instrument: Instrument = INSTRUMENTS["concert"]
    labels: tuple[Label, ...] = ()
    shows_chords: bool = True
    shows_rests: bool = True
    """False for a staff to write on: its rests are there and not printed."""


@dataclass(frozen=True, slots=True)
class Score:
    """Staves that share the frame (bars, keys, metres, tempos, chords, title) of `tune`.

    With `is_concert` all staves are written at sounding pitch. `subtitle` stands under the title.
    """

    tune: Tune
    staves: tuple[Staff, ...]
    is_concert: bool = False
    subtitle: str = ""
