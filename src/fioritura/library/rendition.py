"""A rendition as it is handed to a developer: it can be written, heard, counted and looked at."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange import rendition
from fioritura.lesson.edition import Edition, comparison_score, line_bytes, line_performance
from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.clock import Clock
from fioritura.theory.metre import QUARTER
from fioritura.tune import Note

__all__ = ["NOTE_FIELDS", "Rendition"]

NOTE_FIELDS: Final = np.dtype(
    [
        ("onset_quarter", "f8"),
        ("duration_quarter", "f8"),
        ("onset_sec", "f8"),
        ("duration_sec", "f8"),
        ("pitch", "i4"),
        ("bar", "i4"),
        ("beat", "f8"),
        ("anchor", "i4"),
        ("is_added", "?"),
        ("is_grace", "?"),
        ("figure", "i4"),
    ]
)
"""Fields of a note array, their units in their names; see `Rendition.note_array`."""


class Rendition(rendition.Rendition):
    """One version of a tune: `tune`, `setting`, `figures`, `seed`, `score`, and its notes in `line`.

    Examples:
        >>> import fioritura
        >>> rendition = fioritura.ornament(fioritura.demo_tune(), fioritura.Setting("alto-sax", level=1), seed=4)
        >>> rendition.seed, rendition.kept_share >= 0.8, len(rendition.line) >= len(rendition.tune.notes)
        (4, True, True)
    """

    @classmethod
    def of(cls, chosen: rendition.Rendition) -> Rendition:
        """The same version of the tune, as a rendition of this kind."""
        return cls(chosen.tune, chosen.setting, chosen.figures, chosen.seed, chosen.score, chosen.plan)

    def note_array(self) -> NDArray[Any]:
        """The notes as a structured array, a row each, in order of onset.

        Fields are `NOTE_FIELDS`: onsets and lengths in quarter notes and in seconds, as written, from the start of the
        first bar (repeats are not played out, swing is written straight; the seconds are those of the setting's tempo,
        fermatas not held); ``pitch``, the sounding MIDI number; ``bar`` as printed and ``beat`` from 1.0; ``anchor``,
        the number of the plain note that it is or stands for (−1 for an added note); ``is_added``; ``is_grace`` (a
        grace note stands at its main note's onset, with length 0.0); ``figure``, the number of the figure that made,
        moved or marked it (−1 for none; the first, where there are several).

        Examples:
            >>> import fioritura
            >>> notes = fioritura.plain(fioritura.demo_tune()).note_array()
            >>> notes[["onset_quarter", "duration_quarter", "pitch", "bar", "beat"]][:2].tolist()
            [(0.0, 1.0, 60, 0, 4.0), (1.0, 1.5, 69, 1, 1.0)]
        """
        clock = Clock.of(self.tune, self.setting.quarters_per_minute)
        return np.array([row for note in self.line for row in self._rows(note, clock)], NOTE_FIELDS)

    def _rows(self, note: Note, clock: Clock) -> Iterator[tuple[Any, ...]]:
        onset_sec = clock.seconds(note.onset_ticks)
        bar, beat = self.tune.beat_at(note.onset_ticks)
        own_graces = 0 if note.anchor is None else len(self.tune.notes[note.anchor].graces)
        grace_figure = next((number for number in note.figures if self.figures[number].graces), -1)
        at = (note.onset_ticks / QUARTER, note.duration_ticks / QUARTER, onset_sec)
        for number, grace in enumerate(note.graces):
            is_added = number >= own_graces
            figure = grace_figure if is_added else -1
            yield at[0], 0.0, onset_sec, 0.0, grace.midi, bar, beat, -1, is_added, True, figure
        length_sec = clock.seconds(note.end_ticks) - onset_sec
        anchor = -1 if note.anchor is None else note.anchor
        figure = min(note.figures, default=-1)
        yield *at, length_sec, note.pitch.midi, bar, beat, anchor, note.anchor is None, False, figure

    def to_musicxml(self, *, concert: bool = False) -> bytes:
        """The line as MusicXML 4.0: in the instrument's written pitch, or with `concert` as it sounds.

        Examples:
            >>> import fioritura
            >>> b"<score-partwise" in fioritura.plain(fioritura.demo_tune()).to_musicxml()
            True
        """
        return line_bytes(Edition(self, is_concert=concert), "musicxml")

    def to_abc(self, *, concert: bool = False) -> bytes:
        """The line as ABC 2.1, in UTF-8: in the instrument's written pitch, or with `concert` as it sounds.

        Examples:
            >>> import fioritura
            >>> fioritura.plain(fioritura.demo_tune()).to_abc().decode().splitlines()[0]
            '%abc-2.1'
        """
        return line_bytes(Edition(self, is_concert=concert), "abc")

    def to_midi(self) -> bytes:
        """The line as a player plays it, repeats, swing and breaths included: a Standard MIDI File, sounding pitch.

        Examples:
            >>> import fioritura
            >>> fioritura.plain(fioritura.demo_tune()).to_midi()[:4]
            b'MThd'
        """
        return line_bytes(Edition(self), "mid")

    def to_svg(self) -> str:
        """The plain tune over the ornamented line, its figures named, as SVG that says in words what it shows.

        Examples:
            >>> import fioritura
            >>> "<desc" in fioritura.plain(fioritura.demo_tune()).to_svg()
            True

        Raises:
            ToolError: the engraver is missing or failed.
        """
        from fioritura.notation.engraving.engrave import engrave_page

        return engrave_page(comparison_score(Edition(self)))

    def audio(self, *, tempo: float | None = None) -> tuple[NDArray[np.float32], int]:
        """The line as it is played, mastered like the sound files: float32 of shape (frames, 2) within ±1, and frames a second.

        `tempo` (quarter notes a minute) is the setting's unless given. The same rendition gives the same samples.

        Examples:
            >>> import fioritura
            >>> samples, rate = fioritura.plain(fioritura.demo_tune()).audio(tempo=240)
            >>> samples.shape[1], samples.dtype, rate
            (2, dtype('float32'), 48000)

        Raises:
            OptionError: the tempo is out of reach (20 to 400).
            ToolError: the synth is missing or failed.
        """
        from fioritura.sound.master import master
        from fioritura.sound.render import render

        own = (
            self
            if tempo is None
            else Rendition(self.tune, self.setting.changed(tempo=tempo), self.figures, self.seed)
        )
        return master(render(line_performance(Edition(own)))), SAMPLE_RATE

    def _repr_html_(self) -> str:
        return self.to_svg()
