"""The drums: time, comping and fills from bars that are written as text, one row for each piece of the kit.

A row is a name from `KIT` and a pattern (see `grid`). Fills stand at the ends of phrases: the last beat at the end of
four bars, half a bar at the end of a section, a whole bar at the end of a chorus, after which the next downbeat is
marked by a crash where the feel has one. Keys are those of the General MIDI 1 percussion map.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from fioritura.accompany.form import Form
from fioritura.accompany.grid import LOUDNESS, Dealer, Hit, fitted, hits
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
    "conga": 64,
    "maracas": 70,
    "clave": 75,
}
"""Pieces of the kit and their keys. With brushes ``snare`` is a tap and ``swirl`` a sweep."""

BASE: Final = 0.72
FILL_SHARES: Final = {1: 0.25, 2: 0.5, 3: 1.0}
"""How much of the bar a fill takes, by the rank of the phrase's end."""

FILL_CHANCES: Final = {1: 0.45, 2: 0.9, 3: 1.0}
COMP_CHANCE: Final = 0.75
CLICK_FIRST: Final = (88, 0.9)
CLICK_OTHERS: Final = (81, 0.7)
"""Pitch and loudness of the click, on a pitched woodblock."""


@dataclass(frozen=True, slots=True)
class DrumStyle:
    """How the drums play a feel: bars of time, comping laid over it, and fills, by beats in the bar."""

    time: dict[int, tuple[str, ...]]
    comps: dict[int, tuple[str, ...]] = field(default_factory=dict)
    fills: dict[int, tuple[str, ...]] = field(default_factory=dict)
    kit: int = 1
    crashes: bool = True
    alternates: bool = False
    """True where the bars of time follow each other in order, as the sides of a clave do."""


def drum_notes(form: Form, style: DrumStyle, chance: Chance) -> list[BandNote]:
    """The drum part from the count-in to the last chord."""
    drummer = _Drummer(style, Dealer(chance.child("time")), Dealer(chance.child("fills")))
    notes: list[BandNote] = []
    stop = form.tune.duration_ticks if form.final_ticks is None else form.final_ticks
    rank_before = 0
    for index, bar in form.playing_bars():
        rank = form.phrase_ends.get(index, 0)
        level = BASE * form.section_at(bar.start_ticks).loudness
        played = drummer.bar(index, bar, rank, level, is_marked=rank_before == 3)
        notes += (note for note in played if note.onset_ticks < min(stop, bar.end_ticks))
        rank_before = rank
    if form.final_ticks is not None:
        length = form.tune.duration_ticks - form.final_ticks
        for piece in ("kick", "crash" if style.crashes else "ride"):
            if piece == "kick" or style.crashes or "ride" in "".join(next(iter(style.time.values()))):
                notes.append(BandNote(form.final_ticks, length, KIT[piece], min(1.0, BASE)))
    return sorted(notes, key=lambda note: note.onset_ticks)


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
    def __init__(self, style: DrumStyle, dealer: Dealer, filler: Dealer) -> None:
        self._style = style
        self._dealer = dealer
        self._filler = filler

    def bar(self, index: int, bar: Bar, rank: int, level: float, *, is_marked: bool) -> Iterator[BandNote]:
        """One bar: time and comping up to where a fill begins, then the fill."""
        fill_at = bar.duration_ticks
        if rank and self._style.fills and self._filler.happens(FILL_CHANCES[rank]):
            fill_at -= round(bar.duration_ticks * FILL_SHARES[rank])
            yield from self._played(
                self._dealt(self._style.fills, bar, self._filler), bar, level, fill_at, bar.end_ticks
            )
        time = self._style.time
        if self._style.alternates:
            time = {beats: (written[index % len(written)],) for beats, written in time.items()}
        yield from self._played(self._dealt(time, bar, self._dealer), bar, level, 0, fill_at)
        if self._style.comps and self._dealer.happens(COMP_CHANCE):
            yield from self._played(self._dealt(self._style.comps, bar, self._dealer), bar, level, 0, fill_at)
        if is_marked and self._style.crashes:
            yield BandNote(bar.start_ticks, bar.duration_ticks // 2, KIT["crash"], min(1.0, level * 1.1))

    def _dealt(self, choices: dict[int, tuple[str, ...]], bar: Bar, dealer: Dealer) -> dict[str, str]:
        """The rows of one of the written bars, fitted to the bar's beats."""
        beats = len(beat_lengths(bar.metre))
        known = beats if beats in choices else max(choices)
        rows = (row.split() for row in dealer.deal(choices[known]).strip().splitlines())
        return {piece: fitted(pattern, known, beats) for piece, pattern in rows}

    def _played(self, rows: dict[str, str], bar: Bar, level: float, start: int, end: int) -> Iterator[BandNote]:
        for piece, pattern in rows.items():
            for hit in hits(pattern, bar.metre.bar_ticks):
                if start <= hit.offset_ticks < end:
                    yield _note(bar, piece, hit, level)


def _note(bar: Bar, piece: str, hit: Hit, level: float) -> BandNote:
    loudness = min(1.0, level * LOUDNESS[hit.sign])
    return BandNote(bar.start_ticks + hit.offset_ticks, hit.duration_ticks, KIT[piece], loudness)
