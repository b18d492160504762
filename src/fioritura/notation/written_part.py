"""One staff as its player reads it, and the words and signs of a tune's frame: what every writer of notes asks.

Words and signs are those of common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from fioritura.errors import OutputError
from fioritura.notation.part_spelling import written_tune
from fioritura.notation.rhythm import WrittenBar, written_bars
from fioritura.notation.score import Score, Staff
from fioritura.players.instruments import Clef
from fioritura.theory.metre import WHOLE, Metre
from fioritura.theory.pitch import Interval
from fioritura.tune import Bar, ChordSpan, Jump, Mark, Note, Tempo, Tune, key_interval

__all__ = [
    "WrittenPart",
    "beat_value",
    "check_score",
    "chord_words",
    "clean",
    "closes_ending",
    "closing_jumps",
    "decimal_text",
    "is_split_bar",
    "opens_ending",
    "slurs",
    "tempo_marks",
    "written_part",
]

_UNISON: Final = Interval(0, 0)
_BASS_CLEF_BELOW_MIDI: Final = 55
_NOT_XML: Final = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


@dataclass(frozen=True, slots=True)
class WrittenPart:
    """A staff of a score, `number` from 1, in written pitch; `shifts` lead from sounding to written pitch, bar by bar."""

    staff: Staff
    number: int
    tune: Tune
    bars: tuple[WrittenBar, ...]
    shifts: tuple[Interval, ...]
    clef: Clef

    def has_new_key(self, index: int) -> bool:
        """True where a key signature is written: at the beginning and wherever key or transposition change."""
        bars = self.tune.bars
        return index == 0 or bars[index - 1].key != bars[index].key or self.shifts[index - 1] != self.shifts[index]

    def has_new_metre(self, index: int) -> bool:
        """True where a time signature is written."""
        return index == 0 or self.tune.bars[index - 1].metre != self.tune.bars[index].metre


def check_score(score: Score) -> None:
    """A score to be written has staves and bars.

    Raises:
        OutputError: it has none.
    """
    if not score.staves or not score.tune.bars:
        raise OutputError("score-empty")


def written_part(score: Score, number: int) -> WrittenPart:
    """Staff `number` (from 1) of a score, transposed for its instrument unless the score is in concert pitch.

    Raises:
        TuneError: notes of the line overlap or lie outside the bars.
    """
    staff = score.staves[number - 1]
    by = _UNISON if score.is_concert else staff.instrument.transposition
    sounding = replace(score.tune, notes=staff.line)
    tune = written_tune(sounding, by)
    shifts = (key_interval(before.key, after.key, by) for before, after in zip(sounding.bars, tune.bars, strict=True))
    bars = written_bars(tune.notes, tune.bars)
    return WrittenPart(staff, number, tune, bars, tuple(shifts), _clef(staff, tune.notes, by))


def _clef(staff: Staff, notes: Sequence[Note], by: Interval) -> Clef:
    """The instrument's clef; at sounding pitch, the bass clef for a low line."""
    pitches = sorted(note.pitch.midi for note in notes)
    is_low = bool(pitches) and pitches[len(pitches) // 2] < _BASS_CLEF_BELOW_MIDI
    is_sounding = by == _UNISON and staff.instrument.transposition != _UNISON
    return "bass" if is_sounding and is_low else staff.instrument.clef


def clean(text: str) -> str:
    """The text without characters that XML can't hold."""
    return _NOT_XML.sub("", text)


def slurs(line: Sequence[Note]) -> Iterator[tuple[int, int]]:
    """The numbers of the first and last note of every slur, the earliest first; unpaired signs are left out."""
    opened: list[int] = []
    for index, note in enumerate(line):
        if Mark.SLUR_STOP in note.marks and opened:
            yield opened.pop(0), index
        if Mark.SLUR_START in note.marks:
            opened.append(index)


def chord_words(span: ChordSpan) -> str:
    """A chord symbol as printed: in parentheses where it was inferred, ``"N.C."`` where there is none."""
    if span.chord is None:
        is_silent = span.text.upper().replace(".", "").replace(" ", "") in ("NC", "NOCHORD", "")
        return "N.C." if is_silent else span.text
    return f"({span.chord.display})" if span.is_inferred else span.chord.display


def tempo_marks(tune: Tune) -> Iterator[tuple[int, bool, Tempo | None]]:
    """Each tempo mark's place, whether the word "Swing" belongs to it, and its tempo; the feel stands at the first."""
    start = tune.bars[0].start_ticks
    swings = tune.feel == "swing"
    if swings and not (tune.tempos and tune.tempos[0].onset_ticks <= start):
        yield start, True, None
        swings = False
    for tempo in tune.tempos:
        yield tempo.onset_ticks, swings, tempo
        swings = False


def beat_value(metre: Metre) -> tuple[int, bool]:
    """The note value of a metre's beat (4 a quarter) and whether it is dotted."""
    is_dotted = WHOLE % metre.beat_ticks != 0
    return WHOLE // (metre.beat_ticks * 2 // 3 if is_dotted else metre.beat_ticks), is_dotted


def decimal_text(value: float) -> str:
    """A number with at most three decimals: ``"126"``, ``"72.5"``."""
    return f"{value:.3f}".rstrip("0").rstrip(".")


def closing_jumps(bar: Bar, bars: Sequence[Bar]) -> Iterator[tuple[Jump, str]]:
    """The jumps at the end of a bar with their words (``"D.C. al Fine"``)."""
    signs = {jump for each in bars for jump in each.jumps}
    goal = " al Fine" if Jump.FINE in signs else " al Coda" if Jump.TO_CODA in signs else ""
    words = {
        Jump.TO_CODA: "To Coda",
        Jump.FINE: "Fine",
        Jump.DA_CAPO: f"D.C.{goal}",
        Jump.DAL_SEGNO: f"D.S.{goal}",
    }
    return ((jump, words[jump]) for jump in bar.jumps if jump in words)


def is_split_bar(bars: Sequence[Bar], index: int) -> bool:
    """True for the second half of a bar that a repeat sign divides: it has no number of its own."""
    return index > 0 and bars[index - 1].number == bars[index].number


def opens_ending(bars: Sequence[Bar], index: int) -> bool:
    """True where the bracket of an ending begins."""
    return bool(bars[index].endings) and not _same_ending(bars, index - 1)


def closes_ending(bars: Sequence[Bar], index: int) -> bool:
    """True where the bracket of an ending stops."""
    return bool(bars[index].endings) and not _same_ending(bars, index)


def _same_ending(bars: Sequence[Bar], index: int) -> bool:
    """True when the bars at `index` and after it stand under one bracket."""
    if not 0 <= index < len(bars) - 1:
        return False
    return bars[index].endings == bars[index + 1].endings and not bars[index].repeats
