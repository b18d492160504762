"""From played times to written rhythm: grids chosen beat by beat, swing recognised, gaps and overlaps closed.

Times are in ticks (1680 a quarter note), as floats while they are as played. The method is that of beat-wise grid
quantisation: in every beat the grid that moves the onsets least wins, finer grids paying a price, and two onsets
never share a place (the prices and thresholds are common practice, set by hand).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from statistics import median
from typing import Final

from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH, THIRTYSECOND, Metre

__all__ = [
    "Beat",
    "CrowdedBeatError",
    "PlayedNote",
    "WrittenNote",
    "beats_of",
    "split_graces",
    "swing_place",
    "written_rhythm",
]

_GRACE_TICKS: Final = 160
"""A note that is over and followed by the next within this time (less than a thirty-second) is a grace note."""

_GRACE_SEC: Final = 0.1
_LONGEST_GRACE_TICKS: Final = 375.0
"""A grace note that is played lasts less than this, which is less than a sixteenth (420), at any tempo."""
_MOST_GRACES: Final = 3
_STEP: Final = 2
"""Semitones of the widest step."""
_ALONE: Final = 1.6
"""How much longer than a grace note the notes around it must be."""
_SIMPLE_PLACES: Final = (0.0, 0.5, 2 / 3, 1.0)
_COMPOUND_PLACES: Final = (0.0, 1 / 3, 2 / 3, 1.0)

_EARLY_SHARE: Final = Fraction(1, 12)
"""An onset that is early by up to this share of a beat belongs to the beat that follows."""

_SIMPLE_GRIDS: Final = ((1, 0.0), (2, 0.0), (4, 0.015), (3, 0.025), (6, 0.05), (8, 0.055), (12, 0.12), (16, 0.15))
_COMPOUND_GRIDS: Final = ((1, 0.0), (3, 0.0), (6, 0.015), (2, 0.04), (12, 0.055), (4, 0.08), (24, 0.15))
_EXACT_GRIDS: Final = (1, 2, 3, 4, 6, 8, 5, 7, 12, 16, 24)
"""Grids for files that are exact already, the plainest first."""
_PLAIN_GRIDS: Final = (6, 8)
_EXACT_ONSETS: Final = 0.6
_EXACT_ENDS: Final = 0.9
"""A file is exact when this share of its onsets, or ends, lies on a plain grid (by chance about a tenth would)."""
_STEADY_NOTES: Final = 0.9
"""The share of its notes that a file must shorten alike."""
_STEADY_SHARE: Final = 0.03
"""How much of its length a note may differ from the others' usual shortening in a file that shortens all alike."""
_FULL_SHARE: Final = 0.7
"""A note that fills this share of the space to the next, its usual shortening undone, lasts to the next."""

_SWING_PLACE: Final = (0.55, 0.72)
"""Where in a beat the second of two swung eighths falls: ratios from 1.2 to 2.6 to 1."""
_INSIDE: Final = 0.15
"""An onset later than this in the beat is no longer one on it."""
_LEAST_SWING_BEATS: Final = 4
_LEAST_SWING_SHARE: Final = 0.7


@dataclass(frozen=True, slots=True)
class PlayedNote:
    """A note as a MIDI file has it: start and end in ticks, as floats, and its MIDI number."""

    start: float
    end: float
    midi: int


@dataclass(frozen=True, slots=True)
class WrittenNote:
    """A note on the grid: onset and duration in ticks, and the MIDI numbers of the grace notes before it."""

    onset_ticks: int
    duration_ticks: int
    midi: int
    graces: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Beat:
    """A stretch that is divided as one: a beat, or a quarter note where the beat is longer."""

    start_ticks: int
    length_ticks: int

    @property
    def is_compound(self) -> bool:
        """True when three parts are the plain division."""
        return self.length_ticks in (3 * EIGHTH, 3 * SIXTEENTH, 3 * THIRTYSECOND)


class CrowdedBeatError(ValueError):
    """The notes of one beat are too close for any grid; `start_ticks` is where the beat begins."""

    def __init__(self, start_ticks: int) -> None:
        super().__init__(start_ticks)
        self.start_ticks = start_ticks


def beats_of(metre: Metre, start_ticks: int, length_ticks: int) -> list[Beat]:
    """The beats of a bar, none longer than a quarter or dotted quarter; a short bar's odd piece comes first."""
    if length_ticks == metre.bar_ticks:
        pieces = [piece for group in metre.groups_ticks for piece in _pieces(group)]
    else:
        beat = min(metre.beat_ticks, QUARTER) if not metre.is_compound else metre.beat_ticks
        odd = length_ticks % beat
        pieces = [odd] * bool(odd) + [beat] * (length_ticks // beat)
    starts = accumulate(pieces, initial=start_ticks)
    return [Beat(start, piece) for start, piece in zip(starts, pieces, strict=False)]


def _pieces(group_ticks: int) -> list[int]:
    count = group_ticks // QUARTER
    return [QUARTER] * count if count > 1 and group_ticks % QUARTER == 0 else [group_ticks]


def split_graces(
    notes: Sequence[PlayedNote], beats: Sequence[Beat], tolerance: float, quarters_per_minute: float
) -> tuple[list[PlayedNote], dict[int, tuple[int, ...]]]:
    """The main notes, and the grace notes' MIDI numbers by the index of the main note they lead to.

    A note followed at once is a grace note in any file. In one that is played, or where it stands beside the file's
    grid, so is a note of less than a tenth of a second that leads by step, from off the beat, into a longer one.
    """
    leads = _leading_notes(notes, beats, tolerance, quarters_per_minute)
    mains: list[PlayedNote] = []
    graces: dict[int, tuple[int, ...]] = {}
    waiting: list[int] = []
    for number, note in enumerate(notes):
        following = notes[number + 1] if number + 1 < len(notes) else None
        is_close = following is not None and following.start - note.start < _GRACE_TICKS
        if following is not None and note.midi != following.midi and (is_close or number in leads):
            waiting.append(note.midi)
            continue
        if waiting:
            graces[len(mains)] = tuple(waiting)
            waiting = []
        mains.append(note)
    return mains, graces


def _leading_notes(
    notes: Sequence[PlayedNote], beats: Sequence[Beat], tolerance: float, quarters_per_minute: float
) -> frozenset[int]:
    """The numbers of short notes that lead by step into a longer one nearer to the beat, at most three in a row."""
    limit = min(_GRACE_SEC * quarters_per_minute / 60 * QUARTER, _LONGEST_GRACE_TICKS)
    starts = [note.start for note in notes]
    is_exact = _exact_share(starts, beats, tolerance) >= _EXACT_ONSETS
    found: set[int] = set()
    for main in range(1, len(notes)):
        gaps = [starts[number] - starts[number - 1] for number in range(main, max(0, main - _MOST_GRACES), -1)]
        count = next((place for place, gap in enumerate(gaps) if gap >= limit), len(gaps))
        first = main - count
        if not count or (first and starts[first] - starts[first - 1] < _ALONE * gaps[count - 1]):
            continue
        lasts = (starts[main + 1] if main + 1 < len(notes) else notes[main].end) - starts[main]
        group = notes[first : main + 1]
        is_stepwise = all(1 <= abs(a.midi - b.midi) <= _STEP for a, b in pairwise(group))
        is_early = _off_beat(starts[main], beats) < _off_beat(starts[first], beats)
        is_written = is_exact and _exact_share(starts[first:main], beats, tolerance) == 1.0
        if is_stepwise and is_early and not is_written and lasts >= _ALONE * gaps[0]:
            found.update(range(first, main))
    return frozenset(found)


def _off_beat(time: float, beats: Sequence[Beat]) -> float:
    """How far a time lies from the nearest beat, half of one or swung eighth, in beats."""
    beat = beats[max(0, bisect_right(beats, time, key=lambda beat: beat.start_ticks) - 1)]
    place = (time - beat.start_ticks) / beat.length_ticks
    return min(abs(place - at) for at in (_COMPOUND_PLACES if beat.is_compound else _SIMPLE_PLACES))


def swing_place(onsets: Sequence[float], beats: Sequence[Beat]) -> float | None:
    """Where in the beat the second of two swung eighths falls (2/3 for triplet swing); None in a straight tune.

    A tune swings when nearly all the lone onsets inside its beats lie in the range of swung eighths.
    """
    lone = [
        inside[0]
        for beat, places in _by_beat(onsets, beats)
        if not beat.is_compound and len(inside := [place for place in places if place > _INSIDE]) == 1
    ]
    swung = [place for place in lone if _SWING_PLACE[0] <= place <= _SWING_PLACE[1]]
    if len(swung) < max(_LEAST_SWING_BEATS, _LEAST_SWING_SHARE * len(lone)):
        return None
    return median(swung)


def written_rhythm(
    notes: Sequence[PlayedNote],
    beats: Sequence[Beat],
    tolerance: float,
    swing: float | None = None,
    quarters_per_minute: float = 120.0,
) -> list[WrittenNote]:
    """The notes (one at a time, in order of start) with written onsets and durations.

    `beats` cover all notes without gaps; `tolerance` is how far in ticks a place may lie from the grid in a file that
    keeps one exactly; with a `swing` (see `swing_place`) long-short pairs become even eighths.

    Raises:
        CrowdedBeatError: the notes in one beat are too close for any grid.
    """
    mains, graces = split_graces(notes, beats, tolerance, quarters_per_minute)
    starts = [note.start for note in mains]
    is_exact = swing is None and _exact_share(starts, beats, tolerance) >= _EXACT_ONSETS
    ends_are_exact = is_exact and _exact_share([note.end for note in mains], beats, tolerance) >= _EXACT_ENDS
    onsets = _onsets(starts, beats, tolerance if is_exact else 0.0, is_swung=swing is not None)
    if swing is not None:
        mains = [_straightened(note, beats, swing) for note in mains]
    gate, is_steady = _gate(mains)
    written: list[WrittenNote] = []
    for index, note in enumerate(mains):
        space = onsets[index + 1] - onsets[index] if index + 1 < len(mains) else None
        length = (note.end - note.start) / gate
        exact = _plain_value(length) if is_steady else None
        if ends_are_exact and (end := _exact_end(note.end, beats, tolerance)) is not None:
            exact = end - onsets[index]
        duration = _duration(length, space, exact)
        written.append(WrittenNote(onsets[index], duration, note.midi, graces.get(index, ())))
    return written


def _exact_share(times: Sequence[float], beats: Sequence[Beat], tolerance: float) -> float:
    """The share of the times that lie on a plain grid."""
    places = [(beat, place) for beat, inside in _by_beat(times, beats) for place in inside]
    on_grid = sum(
        any(abs(place - round(place * grid) / grid) * beat.length_ticks <= tolerance for grid in _PLAIN_GRIDS)
        for beat, place in places
    )
    return on_grid / len(places)


def _straightened(note: PlayedNote, beats: Sequence[Beat], swing: float) -> PlayedNote:
    """The note in a time where the two eighths of every beat are even."""

    def even(time: float) -> float:
        beat = beats[max(0, bisect_right(beats, time, key=lambda beat: beat.start_ticks) - 1)]
        place = (time - beat.start_ticks) / beat.length_ticks
        if beat.is_compound or not 0 <= place <= 1:
            return time
        moved = place / swing / 2 if place <= swing else 0.5 + (place - swing) / (1 - swing) / 2
        return beat.start_ticks + moved * beat.length_ticks

    return PlayedNote(even(note.start), even(note.end), note.midi)


def _gate(notes: Sequence[PlayedNote]) -> tuple[float, bool]:
    """The share of its written length that a note usually sounds, 0.5 to 1, and whether it is always the same.

    It is the same in a file from a sequencer or a notation program, which shorten all notes alike.
    """
    shares = [
        (first.end - first.start) / (second.start - first.start)
        for first, second in pairwise(notes)
        if second.start - first.start <= HALF
    ]
    close = [min(1.0, share) for share in shares if share >= 0.5]
    if not close:
        return 1.0, False
    gate = median(close)
    steady = sum(abs(share - gate) <= _STEADY_SHARE for share in close)
    return gate, steady >= _STEADY_NOTES * len(close)


def _plain_value(length: float) -> int | None:
    """The number of sixteenths or triplet eighths that a length is, None when it is neither."""
    for unit in (SIXTEENTH, QUARTER // 3):
        value = round(length / unit) * unit
        if value and abs(length - value) <= _STEADY_SHARE * value:
            return value
    return None


def _by_beat(times: Sequence[float], beats: Sequence[Beat]) -> list[tuple[Beat, list[float]]]:
    """The beats that hold any of the times, with the places inside as shares of the beat."""
    starts = [beat.start_ticks for beat in beats]
    found: dict[int, list[float]] = {}
    for time in times:
        number = max(0, bisect_right(starts, time) - 1)
        if number + 1 < len(beats) and starts[number + 1] - time < _EARLY_SHARE * beats[number + 1].length_ticks:
            number += 1
        found.setdefault(number, []).append((time - starts[number]) / beats[number].length_ticks)
    return [(beats[number], places) for number, places in sorted(found.items())]


def _onsets(starts: Sequence[float], beats: Sequence[Beat], tolerance: float, *, is_swung: bool) -> list[int]:
    onsets: list[int] = []
    for beat, places in _by_beat(starts, beats):
        inside = sum(place > _INSIDE for place in places)
        if is_swung and inside == 1 and not beat.is_compound:
            places = [0.5 if _SWING_PLACE[0] <= place <= _SWING_PLACE[1] else place for place in places]
        grid = _grid(beat, places, tolerance / beat.length_ticks)
        if grid is None:
            raise CrowdedBeatError(beat.start_ticks)
        onsets += (beat.start_ticks + _slot(place, grid) * beat.length_ticks // grid for place in places)
    return onsets


def _grid(beat: Beat, places: Sequence[float], tolerance: float) -> int | None:
    """Into how many parts to divide a beat; None when no grid keeps the places apart."""
    for grid in _EXACT_GRIDS:
        is_exact = tolerance and all(abs(place - round(place * grid) / grid) <= tolerance for place in places)
        if is_exact and beat.length_ticks % grid == 0 and _keeps_apart(places, grid):
            return grid
    best: tuple[float, int] | None = None
    for grid, price in _COMPOUND_GRIDS if beat.is_compound else _SIMPLE_GRIDS:
        if beat.length_ticks % grid == 0 and _keeps_apart(places, grid):
            moved = sum(abs(place - _slot(place, grid) / grid) for place in places) / len(places)
            best = min(best or (moved + price, grid), (moved + price, grid))
    return best[1] if best else None


def _slot(place: float, grid: int) -> int:
    """The grid place nearest to a place in the beat; never the next beat's start."""
    return max(0, min(grid - 1, round(place * grid)))


def _keeps_apart(places: Sequence[float], grid: int) -> bool:
    slots = [_slot(place, grid) for place in places]
    return all(first < second for first, second in pairwise(slots))


def _duration(length: float, space: int | None, exact: int | None) -> int:
    """The written duration of a note that sounds for `length` (its gate undone), with `space` to the next onset.

    `exact` is where it stops on the file's own grid: that counts unless less than a sixteenth is missing to the next
    note. Else a note lasts to the next one unless a rest of an eighth or more follows.
    """
    if space is not None and length >= space - THIRTYSECOND:
        return space
    if exact is not None and exact > 0 and (space is None or exact <= space):
        return exact if space is None or space - exact >= SIXTEENTH else space
    eighths = max(EIGHTH, round(length / EIGHTH) * EIGHTH)
    if space is None:
        return eighths
    is_full = space <= QUARTER or (length >= _FULL_SHARE * space and space - eighths <= EIGHTH)
    return space if is_full else min(eighths, space)


def _exact_end(end: float, beats: Sequence[Beat], tolerance: float) -> int | None:
    """The place of a plain grid on which an end lies, None when it lies on none."""
    beat = beats[max(0, bisect_right(beats, end - tolerance, key=lambda beat: beat.start_ticks) - 1)]
    place = end - beat.start_ticks
    for grid in (1, 2, 3, 4, 6, 8):
        step = Fraction(beat.length_ticks, grid)
        nearest = round(place / step) * step
        if abs(place - nearest) <= tolerance and nearest.denominator == 1:
            return beat.start_ticks + int(nearest)
    return None
