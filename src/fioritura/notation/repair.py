"""The plain repairs of bars that do not add up, as a careful copyist makes them.

Each repair is tried in turn and the first that makes the bar full is taken; what no repair fits stays as it is. All of
them are common practice, without a source; they go from what can hardly be meant otherwise to what only fills a gap:

* a bar that misses its length by less than a sixty-fourth is one rounding off: its last note is lengthened or cut;
* rests behind the last note that do not fit are taken off;
* equal notes by threes that fit as triplets were written without their sign, if there are just as many
  threes as needed and no fourth note of their length beside them;
* a first bar that holds more than a bar is a pickup and a bar; any other that holds just two or more has lost bar lines;
* a short bar and the short one behind it that makes it full are one bar, split by a line that does not count;
* any other short bar lacks a rest: before its notes where they lead into the next bar (less than half a bar, after a
  rest or a note of half a bar), else behind them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from fioritura.notation.raw import RawBar, RawNote, quarter_notes
from fioritura.theory.metre import QUARTER
from fioritura.tune import Jump
from fioritura.words import Message, message

__all__ = ["Repair", "mend"]

_ROUNDING_TICKS: Final = QUARTER // 16
"""Less than this is one rounding off: a sixty-fourth."""

_MOST_BARS: Final = 16
_AT_START: Final = frozenset({Jump.SEGNO, Jump.CODA})


@dataclass(frozen=True, slots=True)
class Repair:
    """What was done, and how many bars have been settled by it."""

    said: Message
    bars: int = 1


def mend(bars: list[RawBar], index: int, *, is_regular: bool) -> Repair | None:
    """Mend one bar of a tune in place; None where it needs no repair, or none fits.

    A bar that `is_regular` (as a pickup is) is rounded alone.
    """
    bar = bars[index]
    if bar.is_free or bar.content_ticks == bar.metre.bar_ticks:
        return None
    repairs = (_round,) if is_regular else (_round, *_REPAIRS)
    return next((done for repair in repairs if (done := repair(bars, index))), None)


def _round(bars: list[RawBar], index: int) -> Repair | None:
    bar = bars[index]
    missing = bar.metre.bar_ticks - bar.content_ticks
    last = max(bar.notes, key=lambda note: note.end_ticks, default=None)
    if abs(missing) >= _ROUNDING_TICKS or last is None or last.duration_ticks + missing <= 0:
        return None
    if last.end_ticks == bar.content_ticks:
        last.duration_ticks += missing
    bar.content_ticks = bar.metre.bar_ticks
    return Repair(message("repair-rounded"))


def _take_rests_off(bars: list[RawBar], index: int) -> Repair | None:
    bar, full = bars[index], bars[index].metre.bar_ticks
    if bar.content_ticks < full or not bar.notes or any(note.end_ticks > full for note in bar.notes):
        return None
    bar.content_ticks = full
    return Repair(message("repair-rest-off"))


def _set_triplets(bars: list[RawBar], index: int) -> Repair | None:
    bar = bars[index]
    excess = bar.content_ticks - bar.metre.bar_ticks
    notes = sorted(bar.notes, key=lambda note: note.offset_ticks)
    for value in sorted({note.duration_ticks for note in notes}):
        starts = _threes(notes, value)
        if excess > 0 and value * len(starts) == excess and value % 3 == 0:
            _shrink(bar, starts, value)
            return Repair(message("repair-triplets", count=len(starts)))
    return None


def _threes(notes: Sequence[RawNote], value: int) -> list[int]:
    """Where three notes of a value begin in runs of three, six and so on, from what will be a beat or a half of one."""
    starts: list[int] = []
    for run in _runs(notes, value):
        if len(run) % 3 == 0 and (run[0] - value * len(starts)) % (2 * value) == 0:
            starts += run[::3]
    return starts


def _runs(notes: Sequence[RawNote], value: int) -> list[list[int]]:
    """Where the notes of each run of equal ones begin."""
    runs: list[list[int]] = [[]]
    for note in notes:
        if note.duration_ticks != value:
            runs.append([])
        elif not runs[-1] or runs[-1][-1] + value == note.offset_ticks:
            runs[-1].append(note.offset_ticks)
        else:
            runs.append([note.offset_ticks])
    return [run for run in runs if run]


def _shrink(bar: RawBar, starts: Sequence[int], value: int) -> None:
    """Give three notes from each start the time of two, and move what follows them."""

    def moved(place: int) -> int:
        return place - sum(min(max(place - start, 0), 3 * value) // 3 for start in starts)

    for note in bar.notes:
        start, end = moved(note.offset_ticks), moved(note.end_ticks)
        note.offset_ticks, note.duration_ticks = start, end - start
    for chord in bar.chords:
        chord.offset_ticks = moved(chord.offset_ticks)
    for tempo in bar.tempos:
        tempo.offset_ticks = moved(tempo.offset_ticks)
    bar.content_ticks = bar.metre.bar_ticks


def _set_pickup(bars: list[RawBar], index: int) -> Repair | None:
    full = bars[index].metre.bar_ticks
    excess = bars[index].content_ticks - full
    if index or not 0 < excess < full or len(bars) < 2:
        return None
    bars[:1] = _cut(bars[0], (excess, full))
    return Repair(message("repair-pickup"), 2)


def _set_bar_lines(bars: list[RawBar], index: int) -> Repair | None:
    full = bars[index].metre.bar_ticks
    count, rest = divmod(bars[index].content_ticks, full)
    if rest or not 2 <= count <= _MOST_BARS:
        return None
    bars[index : index + 1] = _cut(bars[index], (full,) * count)
    return Repair(message("repair-bar-lines", count=count - 1), count)


def _cut(bar: RawBar, lengths: Sequence[int]) -> list[RawBar]:
    """A bar as several of the lengths given; a note over a line is tied."""
    pieces: list[RawBar] = []
    start = 0
    for number, length in enumerate(lengths):
        end, is_first, is_last = start + length, number == 0, number == len(lengths) - 1
        piece = replace(
            bar,
            content_ticks=length,
            notes=[
                _between(note, start, end) for note in bar.notes if note.offset_ticks < end and note.end_ticks > start
            ],
            chords=[
                replace(chord, offset_ticks=chord.offset_ticks - start)
                for chord in bar.chords
                if start <= chord.offset_ticks < end
            ],
            tempos=[
                replace(tempo, offset_ticks=tempo.offset_ticks - start)
                for tempo in bar.tempos
                if start <= tempo.offset_ticks < end
            ],
            opens_repeat=bar.opens_repeat and is_first,
            repeats=bar.repeats if is_last else 0,
            ends_section=bar.ends_section and is_last,
            jumps=tuple(jump for jump in bar.jumps if (is_first if jump in _AT_START else is_last)),
        )
        pieces.append(piece)
        start = end
    return pieces


def _between(note: RawNote, start: int, end: int) -> RawNote:
    """The part of a note between two bar lines."""
    onset, stop = max(note.offset_ticks, start), min(note.end_ticks, end)
    piece = replace(note, offset_ticks=onset - start, duration_ticks=stop - onset)
    piece.is_tied = note.is_tied or stop < note.end_ticks
    if onset > note.offset_ticks:
        piece.graces, piece.marks, piece.lyric = (), (), ""
    return piece


def _join(bars: list[RawBar], index: int) -> Repair | None:
    bar = bars[index]
    following = bars[index + 1] if index + 1 < len(bars) else None
    if following is None or bar.metre != following.metre or following.is_free:
        return None
    if bar.content_ticks + following.content_ticks != bar.metre.bar_ticks:
        return None
    bar.is_implicit = following.is_implicit = True
    return Repair(message("repair-joined"), 2)


def _add_rest(bars: list[RawBar], index: int) -> Repair | None:
    bar, full = bars[index], bars[index].metre.bar_ticks
    missing = full - bar.content_ticks
    if missing <= 0:
        return None
    bar.content_ticks = full
    if not _leads_on(bars, index, missing):
        return Repair(message("repair-rest-behind", length=quarter_notes(missing)))
    for note in bar.notes:
        note.offset_ticks += missing
    for chord in bar.chords:
        chord.offset_ticks += missing if chord.offset_ticks else 0
    for tempo in bar.tempos:
        tempo.offset_ticks += missing
    return Repair(message("repair-rest-before", length=quarter_notes(missing)))


def _leads_on(bars: Sequence[RawBar], index: int, missing: int) -> bool:
    """True where the notes of a short bar are an upbeat to the next one."""
    full = bars[index].metre.bar_ticks
    if 2 * missing <= full or not index or index + 1 == len(bars):
        return False
    before = bars[index - 1]
    last = max(before.notes, key=lambda note: note.end_ticks, default=None)
    return last is None or last.end_ticks < before.content_ticks or 2 * last.duration_ticks >= full


_REPAIRS: Final = (_take_rests_off, _set_triplets, _set_pickup, _set_bar_lines, _join, _add_rest)
