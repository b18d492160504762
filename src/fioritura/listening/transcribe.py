"""From notes to score: what was played becomes a tune with bars, a key and grace notes.

Short slurred notes become grace notes, the beat is followed (`fioritura.listening.beat`), swing is undone, lengths
are closed up to the next note where only the articulation left a gap, the bar line is put where long notes and
strong places meet best, and pitches are spelled in the key.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from fioritura.errors import OptionError, TuneError
from fioritura.listening.beat import PARTS, Follow, follow
from fioritura.listening.notes import Attack, InflectionKind, PlayedNote, Take
from fioritura.theory.key import Key
from fioritura.theory.key_finding import find_key, spell_between
from fioritura.theory.metre import QUARTER, Metre
from fioritura.tune import Bar, Mark, Note, Tempo, Tune
from fioritura.words import message, say

__all__ = ["main_onsets", "transcribe"]

GRACE_SEC: Final = 0.11
"""A grace note is no longer than this, and"""
GRACE_SHARE: Final = 0.5
"""no longer than this share of the note that it leads to."""
FULL_SHARE: Final = 0.6
"""A note that fills this share of the time to the next lasts until the next, unless a rest of a beat would go."""
FINAL_SHARE: Final = 0.9
"""How much of its written length a last long note usually sounds."""
SWING_FROM: Final = 1.2
MIN_BPM: Final = 20.0
MAX_BPM: Final = 400.0

_MARK_OF: Final = {
    InflectionKind.SCOOP: Mark.SCOOP,
    InflectionKind.FALL: Mark.FALL,
    InflectionKind.DOIT: Mark.DOIT,
}


@dataclass(frozen=True, slots=True)
class _Main:
    """A note of the score with the grace notes before it."""

    note: PlayedNote
    graces: tuple[PlayedNote, ...] = ()


def main_onsets(take: Take) -> list[float]:
    """When the notes begin that are no grace notes, in seconds: what metre and tempo are read from
    (`fioritura.listening.metres.readings`)."""
    return [main.note.onset_sec for main in _with_graces(take.notes)]


def transcribe(
    take: Take,
    *,
    key: Key | None = None,
    metre: Metre | None = None,
    beats_per_minute: float | None = None,
    pickup_beats: float | None = None,
    title: str = "",
) -> Tune:
    """Write a take down.

    Args:
        take: what was heard.
        key: the key; found from the notes when it is not given.
        metre: the metre; 4/4 when it is not given.
        beats_per_minute: the tempo in beats of the metre; found from the notes when it is not given.
        pickup_beats: beats before the first bar line, 0 for none; found from the notes when it is not given.
        title: stands over the score; without it "What was played".

    Returns:
        A tune in sounding pitch, with grace notes, slurs and the signs of scoops, falls and doits.

    Raises:
        TuneError: the take has no notes.
        OptionError: the tempo lies outside 20-400 beats a minute, or the pickup is not shorter than a bar.
    """
    if not take.notes:
        remedy = take.findings[0].advice if take.findings else message("record-nearer")
        raise TuneError("no-notes-heard", seconds=round(take.duration_sec, 1), remedy=remedy)
    if beats_per_minute is not None and not MIN_BPM <= beats_per_minute <= MAX_BPM:
        raise OptionError("beats-out-of-reach", given=f"{beats_per_minute:g}", low=MIN_BPM, high=MAX_BPM)
    metre = metre or Metre(4, 4)
    bar_beats = metre.bar_ticks / metre.beat_ticks
    if pickup_beats is not None and not 0 <= pickup_beats < bar_beats:
        raise OptionError("pickup-out-of-reach", given=f"{pickup_beats:g}", beats=f"{bar_beats:g}")
    mains = _with_graces(take.notes)
    beat = follow([main.note.onset_sec for main in mains], beats_per_minute, is_compound=metre.is_compound)
    spans = _spans(mains, beat, metre)
    start = _first_bar_start(spans, metre) if pickup_beats is None else _before_pickup(spans, metre, pickup_beats)
    pickup_from = start + (spans[0][0] - start) // metre.beat_ticks * metre.beat_ticks
    key = key or _found_key(take.notes)
    notes = _written(mains, [(onset - pickup_from, length) for onset, length in spans], key)
    quarters = round(beat.beats_per_minute) * metre.beat_ticks / QUARTER
    return Tune(
        title=title or say(message("title-as-played")),
        notes=tuple(notes),
        bars=tuple(_bars(notes, metre, key, pickup_from - start)),
        tempos=(Tempo(0, quarters),),
        feel="swing" if beat.swing_ratio >= SWING_FROM else "straight",
        warnings=tuple(finding.advice for finding in take.findings),
    )


def _with_graces(notes: Sequence[PlayedNote]) -> list[_Main]:
    """Short notes that slur into a much longer one are grace notes before it; up to three in a row."""
    mains: list[_Main] = []
    waiting: list[PlayedNote] = []
    for note, after in zip(notes, [*notes[1:], None], strict=True):
        if after is not None and len(waiting) < 3 and _is_grace(note, after, is_first=not waiting):
            waiting.append(note)
        else:
            mains.append(_Main(note, tuple(waiting)))
            waiting = []
    return mains


def _is_grace(note: PlayedNote, after: PlayedNote, *, is_first: bool) -> bool:
    length = after.onset_sec - note.onset_sec
    if length > GRACE_SEC or after.attack is not Attack.SLURRED or note.midi == after.midi:
        return False
    return note.duration_sec <= GRACE_SHARE * after.duration_sec or not is_first


def _spans(mains: Sequence[_Main], beat: Follow, metre: Metre) -> list[tuple[int, int]]:
    """Onset and length of each note in ticks; the first beat is at 0."""
    part_ticks = metre.beat_ticks // PARTS
    ticks_a_sec = beat.beats_per_minute / 60 * metre.beat_ticks
    grid = metre.beat_ticks // (3 if metre.is_compound else 2)
    spans: list[tuple[int, int]] = []
    for place, main in enumerate(mains):
        onset = beat.parts[place] * part_ticks
        sounding = main.note.duration_sec * ticks_a_sec
        length = max(grid, round(sounding / grid) * grid)
        if place + 1 < len(mains):
            room = beat.parts[place + 1] * part_ticks - onset
            is_full = sounding >= FULL_SHARE * room or room - sounding < grid
            length = room if is_full and room - sounding < metre.beat_ticks else min(length, room)
        elif sounding > metre.beat_ticks:
            length = round(sounding / FINAL_SHARE / metre.beat_ticks) * metre.beat_ticks
        spans.append((onset, length))
    return spans


def _first_bar_start(spans: Sequence[tuple[int, int]], metre: Metre) -> int:
    """Where a bar line stands at or before the first note: long notes should begin on strong places."""

    def weight(start: int) -> float:
        return sum(
            min(length, metre.bar_ticks) * metre.strength((onset - start) % metre.bar_ticks)
            for onset, length in spans
        )

    best = max(range(0, metre.bar_ticks, metre.beat_ticks), key=weight)
    first = spans[0][0]
    return first - (first - best) % metre.bar_ticks


def _before_pickup(spans: Sequence[tuple[int, int]], metre: Metre, pickup_beats: float) -> int:
    """Where the first bar would begin if it were whole."""
    pickup = round(pickup_beats * metre.beat_ticks)
    return spans[0][0] - (metre.bar_ticks - pickup if pickup else 0)


def _found_key(notes: Sequence[PlayedNote]) -> Key:
    weights = [0.0] * 12
    for note in notes:
        weights[note.midi % 12] += note.duration_sec
    return find_key(weights, notes[-1].midi % 12)


def _written(mains: Sequence[_Main], spans: Sequence[tuple[int, int]], key: Key) -> list[Note]:
    """The notes, spelled, with their grace notes and signs."""
    line = [note.midi for main in mains for note in (*main.graces, main.note)]
    pitches = iter(
        [
            spell_between(key, midi, before, after)
            for before, midi, after in zip([None, *line], line, [*line[1:], None], strict=False)
        ]
    )
    notes = []
    for main, (onset, length) in zip(mains, spans, strict=True):
        graces = tuple(next(pitches) for _ in main.graces)
        marks = tuple(_MARK_OF[one.kind] for one in main.note.inflections if one.kind in _MARK_OF)
        notes.append(Note(onset, length, next(pitches), graces, marks))
    return list(_slurred(notes, mains))


def _slurred(notes: Sequence[Note], mains: Sequence[_Main]) -> Iterator[Note]:
    """Slur signs from the first note of each breath or tongue stroke to its last."""
    tied = [_begins_slurred(main) for main in mains] + [False]
    for place, note in enumerate(notes):
        signs: tuple[Mark, ...] = ()
        if tied[place + 1] and not tied[place]:
            signs = (Mark.SLUR_START,)
        elif tied[place] and not tied[place + 1]:
            signs = (Mark.SLUR_STOP,)
        yield replace(note, marks=note.marks + signs)


def _begins_slurred(main: _Main) -> bool:
    first = main.graces[0] if main.graces else main.note
    return first.attack is Attack.SLURRED


def _bars(notes: Sequence[Note], metre: Metre, key: Key, missing_ticks: int) -> Iterator[Bar]:
    """Bars to the end of the last note; the first is a pickup when `missing_ticks` of it come before the notes."""
    end = max(note.end_ticks for note in notes)
    start = 0
    if missing_ticks:
        start = metre.bar_ticks - missing_ticks
        yield Bar(0, 0, start, metre, key)
    for number in range(-(-max(end - start, 1) // metre.bar_ticks)):
        yield Bar(number + 1, start + number * metre.bar_ticks, metre.bar_ticks, metre, key)
