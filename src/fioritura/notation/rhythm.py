"""From a line of notes to written rhythm: bars, note values, dots, ties, tuplets and beams.

A `Note` has any length and may lie over bar lines; on paper it becomes one or more tied note values that let the
metre be seen. The rules are those of common practice as the notation handbooks of Gardner Read and Elaine Gould
give them (from memory):

* Half-bars and beats stay visible (see `fioritura.notation.cells`): in a half-bar of 4/4 eighth-quarter-eighth and
  every dotted quarter are written so, and in the bar a half note on the second beat, but nothing finer crosses
  its middle. Dotted beats and the groups of uneven metres are crossed only from border to border.
* A rest fills a half-bar, a beat or a part of one, or is split; an empty bar has one whole-bar rest.
* What halving can't give is a tuplet: a triplet, quintuplet, sextuplet or septuplet; in dotted beats a duplet,
  quadruplet, quintuplet or septuplet.
* Eighths are beamed by half-bars where the metre halves, else, and with anything shorter, by beats; a rest breaks
  the beam.

All times are ticks, exact integers. A place that no tuplet gives (a length of 97 ticks) keeps its exact length
and is shown as the nearest note value; the lengths of a bar's events always sum to the bar.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

from fioritura.errors import TuneError
from fioritura.notation.cells import VALUES, Cell, Region, bar_cell, cuts, tuplets
from fioritura.theory.metre import EIGHTH, HALF, QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, Note

__all__ = ["TYPE_NAMES", "Beam", "Tuplet", "WrittenBar", "WrittenEvent", "written_bars"]

Beam = Literal["begin", "continue", "end", "forward hook", "backward hook"]

TYPE_NAMES: Final = {1: "whole", 2: "half", 4: "quarter", 8: "eighth", 16: "16th", 32: "32nd", 64: "64th"}
"""Note values by the part of a whole note that they are, with their MusicXML names."""


@dataclass(frozen=True, slots=True)
class Tuplet:
    """One event's place in a tuplet: `actual` notes of value `unit` in the time of `normal`.

    `count` events make up the group; the first has `starts`, the last `stops`. A group under one beam of its own
    needs no bracket.
    """

    actual: int
    normal: int
    unit: int
    count: int
    starts: bool
    stops: bool
    has_bracket: bool


@dataclass(frozen=True, slots=True)
class WrittenEvent:
    """A note value or rest on paper.

    `value` is the part of a whole note (4 a quarter). `note` and `index` are the sounding note and its number in
    the line, both None for a rest; `piece` counts the tied pieces of a note from 0. `beams` holds one state a
    beam level, the eighth's first.
    """

    onset_ticks: int
    duration_ticks: int
    value: int
    dots: int
    tuplet: Tuplet | None = None
    beams: tuple[Beam, ...] = ()
    note: Note | None = None
    index: int | None = None
    piece: int = 0
    fills_bar: bool = False
    """True for a whole-bar rest, which is drawn as a whole rest in any metre."""

    @property
    def end_ticks(self) -> int:
        """Where the event stops."""
        return self.onset_ticks + self.duration_ticks

    @property
    def is_rest(self) -> bool:
        """True for a rest."""
        return self.note is None

    @property
    def type_name(self) -> str:
        """``"quarter"``, ``"16th"`` and so on."""
        return TYPE_NAMES[self.value]

    @property
    def ties_on(self) -> bool:
        """True when a tie leads to the next piece of the same note."""
        return self.note is not None and self.end_ticks < self.note.end_ticks

    @property
    def tied_from_before(self) -> bool:
        """True when a tie leads here from the piece before."""
        return self.piece > 0

    @property
    def graces(self) -> tuple[Pitch, ...]:
        """The grace notes before the note, on its first piece only."""
        return self.note.graces if self.note is not None and self.piece == 0 else ()


@dataclass(frozen=True, slots=True)
class WrittenBar:
    """A bar and its events, which fill it without gap."""

    bar: Bar
    events: tuple[WrittenEvent, ...]


def written_bars(line: Sequence[Note], bars: Sequence[Bar]) -> tuple[WrittenBar, ...]:
    """Write a line into bars; gaps become rests.

    `line` is in order of onset; `bars` follow each other without gap.

    Raises:
        TuneError: notes overlap, have no length, or lie outside the bars.
    """
    _check(line, bars)
    written: list[WrittenBar] = []
    index = piece = 0
    for bar in bars:
        spans: list[int | None] = []
        ends: list[int] = []
        place = bar.start_ticks
        while index < len(line) and line[index].onset_ticks < bar.end_ticks:
            note = line[index]
            if note.onset_ticks > place:
                spans.append(None)
                ends.append(note.onset_ticks)
            place = min(note.end_ticks, bar.end_ticks)
            spans.append(index)
            ends.append(place)
            if note.end_ticks > bar.end_ticks:
                break
            index += 1
        if place < bar.end_ticks:
            spans.append(None)
            ends.append(bar.end_ticks)
        events, piece = _events(bar, spans, ends, line, piece)
        written.append(WrittenBar(bar, events))
    return tuple(written)


def _check(line: Sequence[Note], bars: Sequence[Bar]) -> None:
    place = bars[0].start_ticks if bars else 0
    end = bars[-1].end_ticks if bars else 0
    for number, note in enumerate(line, start=1):
        if note.duration_ticks <= 0:
            raise TuneError("note-without-length", number=number, pitch=note.pitch)
        if note.onset_ticks < place or note.end_ticks > end:
            ticks = f"{note.onset_ticks}-{note.end_ticks}"
            free = f"{place}-{end}"
            raise TuneError("note-over-another", number=number, pitch=note.pitch, ticks=ticks, free=free)
        place = note.end_ticks


def _events(
    bar: Bar, spans: Sequence[int | None], ends: Sequence[int], line: Sequence[Note], piece: int
) -> tuple[tuple[WrittenEvent, ...], int]:
    """The events of a bar, and the number of the piece with which its last note goes on."""
    if spans == [None] and bar.duration_ticks >= bar.metre.bar_ticks:
        return (WrittenEvent(bar.start_ticks, bar.duration_ticks, 1, 0, fills_bar=True),), 0
    shift = bar.start_ticks - bar.metre_offset_ticks
    sounds = tuple(span is not None for span in spans)
    shapes = _layout(bar.metre, bar.metre_offset_ticks, tuple(end - shift for end in ends), sounds)
    events: list[WrittenEvent] = []
    for shape, tuplet, beams in shapes:
        index = spans[shape.span]
        onset = shape.start + shift
        note = None if index is None else line[index]
        piece = piece + 1 if note is not None and onset > note.onset_ticks else 0
        length = shape.end - shape.start
        events.append(WrittenEvent(onset, length, shape.value, shape.dots, tuplet, beams, note, index, piece))
    return tuple(events), piece


# --- Laying out a bar ----------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Shape:
    """A note value in its bar: places in ticks of the metre, `span` the number of the note or rest it comes from."""

    start: int
    end: int
    span: int
    is_rest: bool
    value: int
    dots: int
    region: Region | None


_Layout = tuple[tuple[_Shape, Tuplet | None, tuple[Beam, ...]], ...]


@lru_cache(maxsize=4096)
def _layout(metre: Metre, offset: int, ends: tuple[int, ...], sounds: tuple[bool, ...]) -> _Layout:
    """The written pieces of a bar that starts `offset` ticks into its metre; span n ends at ``ends[n]``."""
    cell = bar_cell(metre, ends[-1])
    starts = (offset, *ends[:-1])
    spans = [(start, end, not sound) for start, end, sound in zip(starts, ends, sounds, strict=True)]
    padded = [(0, offset, True)] * (offset > 0) + spans + [(ends[-1], cell.length, True)] * (ends[-1] < cell.length)
    regions = tuplets(cell, padded)
    shapes = [
        _shape(piece, number, is_rest, region)
        for number, (start, end, is_rest) in enumerate(spans)
        for first, last, region in _by_region(start, end, regions)
        for piece in (region.cuts(first, last, is_rest) if region else cuts(cell, first, last, is_rest))
    ]
    beams = _beams(shapes, cell)
    return tuple(zip(shapes, _tuplets(shapes, beams), beams, strict=True))


def _by_region(start: int, end: int, regions: Sequence[Region]) -> Iterator[tuple[int, int, Region | None]]:
    for region in regions:
        if region.end <= start or region.start >= end:
            continue
        if start < region.start:
            yield start, region.start, None
        start = max(start, region.start)
        yield start, min(end, region.end), region
        start = min(end, region.end)
    if start < end:
        yield start, end, None


def _shape(piece: tuple[int, int], span: int, is_rest: bool, region: Region | None) -> _Shape:
    start, end = piece
    length = end - start
    if region and region.actual:
        length = length * region.actual // region.normal
    value, dots = VALUES.get(length) or VALUES[min(VALUES, key=lambda ticks: (abs(ticks - length), -ticks))]
    return _Shape(start, end, span, is_rest, value, dots, region if region and region.actual else None)


def _tuplets(shapes: Sequence[_Shape], beams: Sequence[tuple[Beam, ...]]) -> Iterator[Tuplet | None]:
    members: dict[Region, list[int]] = {}
    for number, shape in enumerate(shapes):
        if shape.region:
            members.setdefault(shape.region, []).append(number)
    for number, shape in enumerate(shapes):
        region = shape.region
        if region is None:
            yield None
            continue
        group = members[region]
        states = [beams[member][0] if beams[member] else None for member in group]
        beamed = len(group) > 1 and states == ["begin", *["continue"] * (len(group) - 2), "end"]
        unit = VALUES[(region.end - region.start) // region.normal][0]
        first, last = number == group[0], number == group[-1]
        yield Tuplet(region.actual, region.normal, unit, len(group), first, last, not beamed)


# --- Beams ----------------------------------------------------------------------------------------------------


@lru_cache(maxsize=256)
def _beam_spans(cell: Cell, longest: int) -> tuple[tuple[int, int], ...]:
    """The largest cells under one beam: halving ones up to `longest` ticks, dotted beats up to three eighths."""
    limit = 3 * EIGHTH if cell.is_dotted else longest
    is_beat = len({part.length for part in cell.parts}) <= 1 and (cell.is_dotted or len(cell.parts) in {0, 2})
    if not cell.parts or (is_beat and cell.length <= limit and not any(part.is_dotted for part in cell.parts)):
        return ((0, cell.length),)
    return tuple(
        (start + place, end + place)
        for part, place in zip(cell.parts, cell.borders, strict=False)
        for start, end in _beam_spans(part, longest)
    )


def _beams(shapes: Sequence[_Shape], cell: Cell) -> list[tuple[Beam, ...]]:
    """Beam notes of an eighth and shorter by beats; eighths alone by half-bars where the metre halves."""
    beams: list[tuple[Beam, ...]] = [()] * len(shapes)
    for start, end in _beam_spans(cell, HALF):
        inside = [number for number, shape in enumerate(shapes) if start <= shape.start < end]
        are_eighths = all(_is_eighth_or_longer(shapes[number]) for number in inside)
        spans = [(start, end)] if are_eighths else [s for s in _beam_spans(cell, QUARTER) if start <= s[0] < end]
        for group in _beam_groups(shapes, inside, spans):
            for number, states in zip(group, _beam_states([shapes[n] for n in group]), strict=True):
                beams[number] = states
    return beams


def _is_eighth_or_longer(shape: _Shape) -> bool:
    return shape.region is None and (shape.value < 8 or (shape.value == 8 and not shape.dots))


def _beam_groups(
    shapes: Sequence[_Shape], inside: Sequence[int], spans: Sequence[tuple[int, int]]
) -> Iterator[list[int]]:
    group: list[int] = []
    home: object = None
    for number in inside:
        shape = shapes[number]
        own = shape.region or next(((s, e) for s, e in spans if s <= shape.start < e), None)
        can_join = not shape.is_rest and shape.value >= 8
        if group and (not can_join or own != home):
            yield group
            group = []
        if can_join:
            group.append(number)
            home = own
    if group:
        yield group


def _beam_states(group: Sequence[_Shape]) -> Iterator[tuple[Beam, ...]]:
    """The states of each note at each level; a lone note has a flag and no beam."""
    flags = [shape.value.bit_length() - 3 for shape in group]
    for number, shape in enumerate(group):
        states: list[Beam] = []
        for level in range(1, flags[number] + 1) if len(group) > 1 else ():
            before = number > 0 and flags[number - 1] >= level
            after = number + 1 < len(group) and flags[number + 1] >= level
            if before or after:
                states.append("continue" if before and after else "end" if before else "begin")
            elif number == 0 or (number + 1 < len(group) and _starts_pair(shape, group[0].start)):
                states.append("forward hook")
            else:
                states.append("backward hook")
        yield tuple(states)


def _starts_pair(shape: _Shape, group_start: int) -> bool:
    return (shape.start - group_start) % (2 * (shape.end - shape.start)) == 0
