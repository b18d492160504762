"""The last step of every reader: raw bars, notes and chord texts become a checked `Tune`.

A reader fills a `RawTune`: bars in written order, each holding what begins in it, with offsets in ticks (1680 a
quarter note) from the bar's start. `assemble` numbers the bars, decides whether they add up, joins tied notes,
reads chord texts, closes chord spans and settles slurs, so that all formats follow the same rules and say the same
words.

Conventions: a short first bar is the pickup, bar 0. A short bar may open or close a section (beside a repeat sign,
a double bar, an ending's edge, or the tune's end); two halves of a bar that such a sign splits share one number.
Every other bar must hold exactly what its metre says, unless the file marks it as implicit, or is mended so that it does. Nested slurs become
the outermost one. A lyric that goes on in the next syllable ends with a hyphen (``"Hel-"``, ``"lo"``).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final, Literal

from fioritura.errors import TuneError
from fioritura.notation.raw import RawBar, RawChord, RawNote, RawTempo, RawTune, quarter_notes
from fioritura.notation.repair import mend
from fioritura.notation.style_words import dance_in, style_in, style_in_title
from fioritura.theory.chord import Chord
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.metre import Metre
from fioritura.theory.position import Position
from fioritura.tune import HAIRPIN_MARKS, Bar, ChordSpan, Jump, Mark, Note, Style, Tempo, Tune, hairpins
from fioritura.words import Message, message

__all__ = [
    "MAX_BARS",
    "MAX_QUARTERS_PER_MINUTE",
    "MIN_QUARTERS_PER_MINUTE",
    "Irregular",
    "RawBar",
    "RawChord",
    "RawNote",
    "RawTempo",
    "RawTune",
    "assemble",
    "bar_message",
    "bar_numbers",
    "free_metre",
    "quarter_notes",
]

Irregular = Literal["refuse", "keep", "repair"]
"""What becomes of a bar that does not add up: a TuneError, kept at its own length with a warning, or mended."""

MAX_BARS: Final = 10_000
"""More bars than any tune has; a reader may stop there."""

MIN_QUARTERS_PER_MINUTE: Final = 20.0
MAX_QUARTERS_PER_MINUTE: Final = 400.0


def assemble(raw: RawTune, *, irregular: Irregular = "refuse") -> Tune:
    """Build and check the tune.

    Raises:
        TuneError: no notes, more than 10,000 bars, bars that do not add up (with ``irregular="refuse"``), notes that overlap, pitches
            outside MIDI's 0-127, or a tempo outside 20-400 quarter notes a minute. The message names the bar.
    """
    try:
        tune = _assembled(raw, irregular)
    except TuneError as error:
        if raw.source:
            error.put_in("problem-in-tune", tune=raw.source)
        raise
    if not raw.source:
        return tune
    named = (message("problem-in-tune", tune=raw.source, problem=warning) for warning in tune.warnings)
    return replace(tune, warnings=tuple(named))


def _assembled(raw: RawTune, irregular: Irregular) -> Tune:
    _require_notes(raw)
    warnings = list(raw.warnings)
    for bar in raw.bars:
        _settle_content(bar)
    warnings += _mended(raw.bars) if irregular == "repair" else []
    numbers = bar_numbers(raw.bars)
    warnings += _check_bars(raw.bars, numbers, irregular)
    bars = _bars(raw.bars, numbers)
    style = _style(raw)
    return Tune(
        title=_tidy(raw.title),
        notes=_notes(raw.bars, bars),
        bars=bars,
        chords=_chords(raw.bars, bars, warnings),
        tempos=_tempos(raw.bars, bars),
        feel=raw.feel or ("swing" if style in ("swing", "shuffle") else "straight"),
        composer=_tidy(raw.composer),
        part_name=_tidy(raw.part_name),
        warnings=tuple(warnings),
        style=style,
        dance=dance_in(raw.words, raw.title),
        origin=_tidy(raw.origin),
    )


def _style(raw: RawTune) -> Style | None:
    """How the file says that the tune is played: a sign of its own, words about it, or its title."""
    said = style_in(raw.words) or style_in_title(raw.title)
    if raw.feel is None:
        return said
    return said if said and (said in ("swing", "shuffle")) == (raw.feel == "swing") else raw.feel


def bar_numbers(bars: Sequence[RawBar]) -> list[int]:
    """The bars' numbers as a player counts them: 0 for a pickup, both halves of a split bar alike."""
    halves = _second_halves(bars)
    numbers: list[int] = []
    for index in range(len(bars)):
        if index == 0:
            numbers.append(0 if _is_pickup(bars, halves, 0) else 1)
        else:
            numbers.append(numbers[-1] + (0 if halves[index] else 1))
    return numbers


def free_metre(content_ticks: int) -> Metre:
    """The plainest metre that holds a bar of unmeasured music exactly.

    Raises:
        TuneError: no metre of up to 32 beats over 1-32 does.
    """
    for unit in (4, 8, 2, 16, 1, 32):
        metre = Metre(1, unit)
        beats, rest = divmod(content_ticks, metre.unit_ticks)
        if not rest and 1 <= beats <= 32:
            return Metre(beats, unit)
    raise TuneError("bar-unmeasured", length=quarter_notes(content_ticks))


def bar_message(number: int) -> Message:
    """A bar as messages call it: "bar 5", "the pickup"."""
    return Position(number, 1, is_pickup=number == 0).bar_message


def _require_notes(raw: RawTune) -> None:
    if len(raw.bars) > MAX_BARS:
        raise TuneError("tune-too-long", bars=len(raw.bars), limit=MAX_BARS)
    if any(bar.notes for bar in raw.bars):
        return
    if any(bar.chords for bar in raw.bars):
        raise TuneError("chords-without-notes")
    raise TuneError("no-notes-at-all")


def _settle_content(bar: RawBar) -> None:
    """A silent bar is full; a bar without metre has the metre of its content."""
    if not bar.content_ticks:
        bar.content_ticks = bar.metre.bar_ticks
    elif bar.is_free:
        bar.metre = free_metre(bar.content_ticks)


def _is_short(bar: RawBar) -> bool:
    return not bar.is_free and 0 < bar.content_ticks < bar.metre.bar_ticks


def _opens_section(bars: Sequence[RawBar], index: int) -> bool:
    return index == 0 or bars[index].opens_repeat or _closes_section(bars, index - 1)


def _closes_section(bars: Sequence[RawBar], index: int) -> bool:
    bar = bars[index]
    if index + 1 == len(bars) or bar.repeats or bar.ends_section:
        return True
    following = bars[index + 1]
    ends_play = any(jump in {Jump.FINE, Jump.DA_CAPO, Jump.DAL_SEGNO, Jump.TO_CODA} for jump in bar.jumps)
    return ends_play or following.opens_repeat or (bool(bar.endings) and following.endings != bar.endings)


def _second_halves(bars: Sequence[RawBar]) -> list[bool]:
    """For each bar: is it the rest of the bar before, split by a sign or by the file's own word?"""
    halves = [False] * len(bars)
    begins_with_pickup = len(bars) > 1 and _is_short(bars[0])
    for index in range(2 if begins_with_pickup else 1, len(bars)):
        first, second = bars[index - 1], bars[index]
        is_whole = first.metre == second.metre and first.content_ticks + second.content_ticks == first.metre.bar_ticks
        is_split = first.is_implicit or second.is_implicit or _opens_section(bars, index)
        halves[index] = is_whole and is_split and not halves[index - 1]
    return halves


def _is_pickup(bars: Sequence[RawBar], halves: Sequence[bool], index: int) -> bool:
    """True when a short bar's beats count back from its end. A further ending stands where the first one does."""
    if len(bars) < 2 or not _is_short(bars[index]):
        return False
    if halves[index] or not bars[index].endings:
        return halves[index] or _opens_section(bars, index)
    first = index
    while first and bars[first - 1].endings:
        first -= 1
    return halves[first]


def _adds_up(bars: Sequence[RawBar], halves: Sequence[bool], index: int) -> bool:
    bar = bars[index]
    if bar.is_implicit or bar.content_ticks == bar.metre.bar_ticks:
        return True
    is_first_half = index + 1 < len(bars) and halves[index + 1]
    return _is_short(bar) and (is_first_half or _opens_section(bars, index) or _closes_section(bars, index))


def _mended(bars: list[RawBar]) -> list[Message]:
    """Mend the bars that do not add up; what was wrong with each, and what was done about it."""
    done: list[tuple[int, RawBar, Message]] = []
    index = 0
    halves = _second_halves(bars)
    while index < len(bars):
        before = replace(bars[index])
        repair = mend(bars, index, is_regular=_adds_up(bars, halves, index))
        if repair:
            done.append((index, before, repair.said))
            halves = _second_halves(bars)
        index += repair.bars if repair else 1
    numbers = bar_numbers(bars)
    return [message("bar-repaired", fault=_fault(bar, numbers[index]), repair=said) for index, bar, said in done]


def _fault(bar: RawBar, number: int) -> Message:
    """What a bar holds, and what it ought to hold."""
    return message(
        "bar-holds",
        bar=bar_message(number),
        held=quarter_notes(bar.content_ticks),
        metre=str(bar.metre),
        full=quarter_notes(bar.metre.bar_ticks),
    )


def _check_bars(bars: Sequence[RawBar], numbers: Sequence[int], irregular: Irregular) -> list[Message]:
    """Warnings for irregular bars that are kept."""
    halves = _second_halves(bars)
    faults = [_fault(bar, numbers[index]) for index, bar in enumerate(bars) if not _adds_up(bars, halves, index)]
    if faults and irregular == "refuse":
        raise TuneError("bars-irregular", fault=faults[0], more=len(faults) - 1)
    return [message("bar-kept", fault=fault) for fault in faults]


def _bars(raw_bars: Sequence[RawBar], numbers: Sequence[int]) -> tuple[Bar, ...]:
    halves = _second_halves(raw_bars)
    bars: list[Bar] = []
    start = 0
    for index, raw in enumerate(raw_bars):
        bars.append(
            Bar(
                number=numbers[index],
                start_ticks=start,
                duration_ticks=raw.content_ticks,
                metre=raw.metre,
                key=raw.key,
                opens_repeat=raw.opens_repeat,
                repeats=_settled_repeats(raw_bars, index),
                endings=raw.endings,
                jumps=raw.jumps,
                ends_section=raw.ends_section and index + 1 < len(raw_bars),
                is_pickup=_is_pickup(raw_bars, halves, index),
            )
        )
        start += raw.content_ticks
    return tuple(bars)


def _settled_repeats(bars: Sequence[RawBar], index: int) -> int:
    """How often a bar's closing repeat is taken; under an ending it follows from the passes that play it."""
    bar = bars[index]
    if not bar.repeats or not bar.endings:
        return bar.repeats
    goes_on = index + 1 < len(bars) and bool(bars[index + 1].endings)
    return max(bar.endings) if goes_on or 1 in bar.endings else max(bar.endings) - 1


def _notes(raw_bars: Sequence[RawBar], bars: Sequence[Bar]) -> tuple[Note, ...]:
    end = bars[-1].end_ticks
    notes: list[Note] = []
    tie_end = -1
    for raw_bar, bar in zip(raw_bars, bars, strict=True):
        for raw in sorted(raw_bar.notes, key=lambda note: note.offset_ticks):
            onset = bar.start_ticks + raw.offset_ticks
            last = notes[-1] if notes else None
            _check_note(raw, onset, last, bar)
            length = min(raw.duration_ticks, end - onset)
            if last and tie_end == onset and last.pitch.midi == raw.pitch.midi and not raw.graces:
                notes[-1] = Note(
                    last.onset_ticks,
                    onset + length - last.onset_ticks,
                    last.pitch,
                    last.graces,
                    last.marks + raw.marks,
                    last.lyric or _tidy(raw.lyric),
                )
            else:
                notes.append(Note(onset, length, raw.pitch, raw.graces, raw.marks, _tidy(raw.lyric)))
            tie_end = notes[-1].end_ticks if raw.is_tied else -1
    return _with_whole_hairpins(_with_outer_slurs(notes))


def _with_outer_slurs(notes: Sequence[Note]) -> tuple[Note, ...]:
    """The notes with every outermost slur that both begins and ends on different notes, and no other."""
    starts: set[int] = set()
    stops: set[int] = set()
    depth, first = 0, 0
    for index, note in enumerate(notes):
        for mark in note.marks:
            if mark is Mark.SLUR_STOP and depth:
                depth -= 1
                if not depth and index > first:
                    starts.add(first)
                    stops.add(index)
            elif mark is Mark.SLUR_START:
                first = first if depth else index
                depth += 1
    return tuple(
        replace(note, marks=_settled_marks(note.marks, index in starts, index in stops)) if note.marks else note
        for index, note in enumerate(notes)
    )


def _with_whole_hairpins(notes: Sequence[Note]) -> tuple[Note, ...]:
    """The notes with every hairpin that both opens and closes, and no other sign of one."""
    kept: set[tuple[int, Mark]] = set()
    for start, stop, kind in hairpins(notes):
        kept |= {(start, kind), (stop, Mark.HAIRPIN_STOP)}
    return tuple(
        replace(note, marks=marks)
        if (marks := tuple(m for m in note.marks if m not in HAIRPIN_MARKS or (index, m) in kept)) != note.marks
        else note
        for index, note in enumerate(notes)
    )


def _settled_marks(marks: tuple[Mark, ...], starts_slur: bool, stops_slur: bool) -> tuple[Mark, ...]:
    others = dict.fromkeys(mark for mark in marks if mark not in {Mark.SLUR_START, Mark.SLUR_STOP})
    return (*others, *[Mark.SLUR_STOP] * stops_slur, *[Mark.SLUR_START] * starts_slur)


def _check_note(raw: RawNote, onset: int, last: Note | None, bar: Bar) -> None:
    where = bar_message(bar.number)
    if last and onset < last.end_ticks:
        raise TuneError("notes-together", bar=where, pitch=raw.pitch, other=last.pitch)
    if not 0 <= raw.pitch.midi <= 127 or raw.duration_ticks <= 0:
        raise TuneError("note-unplayable", bar=where, pitch=raw.pitch, length=quarter_notes(raw.duration_ticks))


def _chords(raw_bars: Sequence[RawBar], bars: Sequence[Bar], warnings: list[Message]) -> tuple[ChordSpan, ...]:
    found: list[tuple[int, Chord | None, str]] = []
    for raw_bar, bar in zip(raw_bars, bars, strict=True):
        for raw in sorted(raw_bar.chords, key=lambda chord: chord.offset_ticks):
            onset = bar.start_ticks + min(max(raw.offset_ticks, 0), bar.duration_ticks - 1)
            text = _tidy(raw.text)
            chord = raw.chord or _read_chord(text, bar.number, warnings)
            if found and found[-1][0] == onset:
                where, first = bar_message(bar.number), found.pop()[2]
                warnings.append(message("chords-at-one-place", bar=where, first=first, second=text))
            found.append((onset, chord, text))
    following = pairwise([*found, (bars[-1].end_ticks, None, "")])
    return tuple(ChordSpan(onset, end - onset, chord, text) for (onset, chord, text), (end, _, _) in following)


def _read_chord(text: str, number: int, warnings: list[Message]) -> Chord | None:
    try:
        return read_chord(text)
    except TuneError:
        warnings.append(message("chord-kept-as-text", bar=bar_message(number), given=text))
        return None


def _tempos(raw_bars: Sequence[RawBar], bars: Sequence[Bar]) -> tuple[Tempo, ...]:
    tempos: dict[int, float] = {}
    for raw_bar, bar in zip(raw_bars, bars, strict=True):
        for raw in sorted(raw_bar.tempos, key=lambda tempo: tempo.offset_ticks):
            if not MIN_QUARTERS_PER_MINUTE <= raw.quarters_per_minute <= MAX_QUARTERS_PER_MINUTE:
                raise TuneError(
                    "tempo-unplayable",
                    bar=bar_message(bar.number),
                    given=f"{raw.quarters_per_minute:g}",
                    low=MIN_QUARTERS_PER_MINUTE,
                    high=MAX_QUARTERS_PER_MINUTE,
                )
            tempos[bar.start_ticks + min(raw.offset_ticks, bar.duration_ticks)] = raw.quarters_per_minute
    return tuple(Tempo(onset, value) for onset, value in sorted(tempos.items()))


def _tidy(text: str) -> str:
    return " ".join(text.split())
