"""The drums: time, comping and fills from bars that are written as text, one row for each piece of the kit.

A row is a name from `KIT` and a pattern (see `grid`). Fills stand at the ends of phrases: the last beat at the end of
four bars, half a bar at the end of a section, a whole bar at the end of a chorus, after which the next downbeat is
marked by a crash where the feel has one. The form's energy chooses the time and its cymbal, how much comping there is,
how many soft strokes, and how often a fill. Keys are those of the General MIDI 1 percussion map.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from fioritura.accompany.form import Form, Touch
from fioritura.accompany.grid import LOUDNESS, Dealer, Hit, fitted, hits, weights_for
from fioritura.accompany.harmony import beat_lengths
from fioritura.accompany.part import BandNote
from fioritura.chance import Chance
from fioritura.theory.metre import EIGHTH
from fioritura.tune import Bar

__all__ = ["KIT", "DrumStyle", "click_notes", "drum_notes"]

KIT: Final = {
    "kick": 36,
    "stick": 37,
    "snare": 38,
    "swirl": 40,
    "floor": 43,
    "hat": 42,
    "pedal": 44,
    "open": 46,
    "mid": 47,
    "tom": 48,
    "crash": 49,
    "ride": 51,
    "bell": 53,
    "tamb": 54,
    "skin": 63,
    "conga": 64,
    "maracas": 70,
    "clave": 75,
}
"""Pieces of the kit and their keys. With brushes ``snare`` is a tap and ``swirl`` a sweep; ``conga`` and
``skin`` are the low and the high stroke of a frame drum."""

BASE: Final = 0.72
FILL_SHARES: Final = {1: 0.25, 2: 0.5, 3: 1.0}
"""How much of the bar a fill takes, by the rank of the phrase's end."""

FILL_CHANCES: Final = {1: 0.45, 2: 0.9, 3: 1.0}
COMP_CHANCES: Final = (-0.1, 1.3)
"""How likely comping is in a bar: the first number, and the second times the energy."""

_SOFT_UNDER: Final = 0.4
_LOUD_FROM: Final = 0.8
CLICK_FIRST: Final = (88, 0.9)
CLICK_OTHERS: Final = (81, 0.7)
"""Pitch and loudness of the click, on a pitched woodblock."""


@dataclass(frozen=True, slots=True)
class DrumStyle:
    """How the drums play a feel, by beats in the bar: bars of time, `soft` and `loud` ones for quiet and for full choruses,
    comping laid over it, `layers` that join in a full chorus, and fills.

    Without `soft` bars a quiet chorus leaves out most of the soft strokes.
    """

    time: dict[int, tuple[str, ...]]
    comps: dict[int, tuple[str, ...]] = field(default_factory=dict)
    fills: dict[int, tuple[str, ...]] = field(default_factory=dict)
    kit: int = 1
    crashes: bool = True
    alternates: bool = False
    """True where the bars of time follow each other in order, as the sides of a clave do."""

    soft: dict[int, tuple[str, ...]] = field(default_factory=dict)
    loud: dict[int, tuple[str, ...]] = field(default_factory=dict)
    layers: dict[int, tuple[str, ...]] = field(default_factory=dict)


def drum_notes(form: Form, style: DrumStyle, chance: Chance) -> list[BandNote]:
    """The drum part from the count-in to the last chord."""
    drummer = _Drummer(style, Dealer(chance.child("time")), Dealer(chance.child("fills")), chance.child("soft"))
    notes: list[BandNote] = list(_lead_in(form, drummer))
    stop = form.tune.duration_ticks if form.final_ticks is None else form.final_ticks
    rank_before = 0
    for index, bar in form.playing_bars():
        rank = form.phrase_ends.get(index, 0)
        played = drummer.bar(index, bar, rank, form.touch_at(bar), is_marked=rank_before == 3)
        notes += (note for note in played if note.onset_ticks < min(stop, bar.end_ticks))
        rank_before = rank
    if form.final_ticks is not None:
        length = form.tune.duration_ticks - form.final_ticks
        for piece in ("kick", "crash" if style.crashes else "ride"):
            if piece == "kick" or style.crashes or "ride" in "".join(next(iter(style.time.values()))):
                notes.append(BandNote(form.final_ticks, length, KIT[piece], min(1.0, BASE)))
    return sorted(notes, key=lambda note: note.onset_ticks)


def _lead_in(form: Form, drummer: _Drummer) -> Iterator[BandNote]:
    """A short fill at the end of the count-in, where the form has one."""
    counted = [bar for bar in form.tune.bars if bar.end_ticks == form.count_in_ticks]
    if form.leads_in and counted:
        after = next((bar for _, bar in form.playing_bars()), counted[0])
        yield from drummer.fill(counted[0], 2, form.touch_at(after))


def click_notes(form: Form, *, throughout: bool) -> list[BandNote]:
    """A click on every beat, the first of a bar higher and louder: in the count-in, or from beginning to end."""
    notes: list[BandNote] = []
    for bar in form.tune.bars:
        start = bar.start_ticks
        if start >= form.count_in_ticks and not throughout:
            break
        for number, length in enumerate(bar.metre.groups_ticks):
            if start < bar.end_ticks and (form.final_ticks is None or start <= form.final_ticks):
                midi, loudness = CLICK_OTHERS if number else CLICK_FIRST
                notes.append(BandNote(start, EIGHTH // 2, midi, loudness))
            start += length
    return notes


class _Drummer:
    def __init__(self, style: DrumStyle, dealer: Dealer, filler: Dealer, thinning: Chance) -> None:
        self._style = style
        self._dealer = dealer
        self._filler = filler
        self._thinning = thinning

    def bar(self, index: int, bar: Bar, rank: int, touch: Touch, *, is_marked: bool) -> Iterator[BandNote]:
        """One bar: time and comping up to where a fill begins, then the fill."""
        style, energy, level = self._style, touch.energy, BASE * touch.loudness
        fill_at = bar.duration_ticks
        if rank and style.fills and self._filler.happens(FILL_CHANCES[rank]):
            fill_at -= _fill_ticks(bar, rank)
            yield from self.fill(bar, rank, touch)
        time = self._time(energy)
        if style.alternates:
            time = {beats: (written[index % len(written)],) for beats, written in time.items()}
        skips = 0.0 if energy >= _SOFT_UNDER or style.soft else 0.8
        yield from self._played(self._dealt(time, bar, energy, self._dealer), bar, level, 0, fill_at, skips)
        least, slope = COMP_CHANCES
        if style.comps and self._dealer.happens(min(max(least + slope * energy, 0.0), 1.0)):
            yield from self._played(self._dealt(style.comps, bar, energy, self._dealer), bar, level, 0, fill_at)
        if style.layers and energy >= _LOUD_FROM:
            yield from self._played(self._dealt(style.layers, bar, energy, self._dealer), bar, level, 0, fill_at)
        if is_marked and style.crashes and energy >= _SOFT_UNDER:
            yield BandNote(bar.start_ticks, bar.duration_ticks // 2, KIT["crash"], min(1.0, level * 1.1))

    def fill(self, bar: Bar, rank: int, touch: Touch) -> Iterator[BandNote]:
        """A fill at the end of a bar, as long as the rank of the phrase's end asks for."""
        if self._style.fills:
            start = bar.duration_ticks - _fill_ticks(bar, rank)
            rows = self._dealt(self._style.fills, bar, touch.energy, self._filler)
            yield from self._played(rows, bar, BASE * touch.loudness, start, bar.end_ticks)

    def _time(self, energy: float) -> dict[int, tuple[str, ...]]:
        """The bars of time for an energy."""
        style = self._style
        if energy < _SOFT_UNDER:
            return style.soft or style.time
        return style.loud or style.time if energy >= _LOUD_FROM else style.time

    def _dealt(self, choices: dict[int, tuple[str, ...]], bar: Bar, energy: float, dealer: Dealer) -> dict[str, str]:
        """The rows of one of the written bars, fitted to the bar's beats."""
        beats = len(beat_lengths(bar.metre))
        known = beats if beats in choices else max(choices)
        written = choices[known]
        rows = (row.split() for row in dealer.deal(written, weights_for(written, energy)).strip().splitlines())
        return {piece: fitted(pattern, known, beats) for piece, pattern in rows}

    def _played(
        self, rows: dict[str, str], bar: Bar, level: float, start: int, end: int, skips: float = 0.0
    ) -> Iterator[BandNote]:
        """The rows from one place of the bar to another; soft strokes are left out with a probability."""
        for piece, pattern in rows.items():
            for hit in hits(pattern, bar.metre.bar_ticks):
                if start <= hit.offset_ticks < end and not (
                    skips and hit.sign == "o" and hit.offset_ticks and self._thinning.happens(skips)
                ):
                    yield _note(bar, piece, hit, level)


def _fill_ticks(bar: Bar, rank: int) -> int:
    return round(bar.duration_ticks * FILL_SHARES[rank])


def _note(bar: Bar, piece: str, hit: Hit, level: float) -> BandNote:
    loudness = min(1.0, level * LOUDNESS[hit.sign])
    return BandNote(bar.start_ticks + hit.offset_ticks, hit.duration_ticks, KIT[piece], loudness)
