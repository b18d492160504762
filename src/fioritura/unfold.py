"""Play a tune out: repeats, endings, da capo, dal segno and coda become bars in playing order."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final, TypeVar

from fioritura.errors import TuneError
from fioritura.tune import Bar, ChordSpan, Jump, Note, Tempo, Tune

__all__ = ["playing_order", "unfolded", "written_out"]

MAX_PLAYED_BARS: Final = 5000

Timed = TypeVar("Timed", Note, Tempo)


def playing_order(bars: Sequence[Bar]) -> list[int]:
    """Indices of the written bars in the order in which they are played.

    A da capo or dal segno is taken once, without repeats, up to Fine or through To Coda to the coda (common
    practice). An ending that no repeat leads to is played like any other bar.

    Raises:
        TuneError: more than 5000 bars would be played.
    """
    order = _order(bars)
    played = set(order)
    stray = {index for index, bar in enumerate(bars) if bar.endings and index not in played}
    if not stray:
        return order
    return _order([replace(bar, endings=()) if index in stray else bar for index, bar in enumerate(bars)])


def _order(bars: Sequence[Bar]) -> list[int]:
    order: list[int] = []
    section_start, played_pass = 0, 1
    jumped = False
    index = 0
    while index < len(bars):
        bar = bars[index]
        if bar.opens_repeat and section_start != index:
            section_start, played_pass = index, 1
        if bar.endings and not jumped and played_pass not in bar.endings:
            index += 1
            continue
        if bar.endings and jumped and _has_later_ending(bars, index):
            index += 1
            continue
        order.append(index)
        if len(order) > MAX_PLAYED_BARS:
            raise TuneError("repeats-too-long", limit=MAX_PLAYED_BARS)
        if bar.repeats and not jumped and played_pass <= bar.repeats:
            played_pass += 1
            index = section_start
            continue
        next_has_ending = index + 1 < len(bars) and bool(bars[index + 1].endings)
        if (bar.repeats or bar.endings) and not next_has_ending:
            section_start, played_pass = index + 1, 1
        if jumped and Jump.FINE in bar.jumps:
            break
        if jumped and Jump.TO_CODA in bar.jumps:
            coda = _bar_with(bars, Jump.CODA, index + 1)
            if coda is not None:
                index = coda
                continue
        if not jumped and (Jump.DA_CAPO in bar.jumps or Jump.DAL_SEGNO in bar.jumps):
            segno = _bar_with(bars, Jump.SEGNO, 0) if Jump.DAL_SEGNO in bar.jumps else None
            jumped = True
            index = segno or 0
            continue
        index += 1
    return order


def _has_later_ending(bars: Sequence[Bar], index: int) -> bool:
    """True when a later ending of the same group stands directly after the ending at `index`."""
    current = bars[index].endings
    while index < len(bars) and bars[index].endings == current:
        index += 1
    return index < len(bars) and bool(bars[index].endings)


def _bar_with(bars: Sequence[Bar], jump: Jump, start: int) -> int | None:
    return next((index for index in range(start, len(bars)) if jump in bars[index].jumps), None)


def unfolded(tune: Tune) -> Tune:
    """The tune as it is played, its bars numbered anew; itself when nothing repeats.

    Raises:
        TuneError: more than 5000 bars would be played, or not a single note.
    """
    order = playing_order(tune.bars)
    if order == list(range(len(tune.bars))):
        return tune
    notes: list[Note] = []
    chords: list[ChordSpan] = []
    bars: list[Bar] = []
    tempos: list[Tempo] = []
    start = 0
    for place, index in enumerate(order):
        bar = tune.bars[index]
        shift = start - bar.start_ticks
        goes_on = place + 1 < len(order) and order[place + 1] == index + 1
        _append_bar(bars, replace(bar, start_ticks=start, repeats=0, endings=(), jumps=(), opens_repeat=False))
        for note in _starting_in(tune.notes, bar):
            length = note.duration_ticks if goes_on else min(note.duration_ticks, bar.end_ticks - note.onset_ticks)
            notes.append(replace(note, onset_ticks=note.onset_ticks + shift, duration_ticks=length))
        _append_tempos(tempos, tune.tempos, bar, shift)
        for span in _sounding_in(tune.chords, bar):
            first, last = max(span.onset_ticks, bar.start_ticks), min(span.end_ticks, bar.end_ticks)
            moved = replace(span, onset_ticks=first + shift, duration_ticks=last - first)
            _append_chord(chords, moved, goes_on=first > span.onset_ticks)
        start += bar.duration_ticks
    if not notes:
        raise TuneError("repeats-leave-nothing")
    return replace(
        tune, notes=tuple(notes), chords=tuple(chords), bars=tuple(bars), tempos=tuple(tempos) or tune.tempos
    )


def written_out(tune: Tune, times: int) -> Tune:
    """The tune played out several times, one after the other, its bars numbered on.

    A pickup is played again over the end of the last bar each time but the first (common practice); a last bar that
    leaves room for it becomes a full one. A double bar parts one time from the next.

    Raises:
        TuneError: more than 5000 bars would be played, or not a single note.
    """
    played = unfolded(tune)
    pickup = played.pickup_ticks
    bars = list(played.bars[1:] if pickup else played.bars)
    if times == 1 or not bars:
        return played
    if len(bars) * times > MAX_PLAYED_BARS:
        raise TuneError("repeats-too-long", limit=MAX_PLAYED_BARS)
    last = bars[-1]
    lacking = last.metre.bar_ticks - last.duration_ticks
    length = last.duration_ticks + (lacking if 0 < lacking <= pickup else 0)
    bars[-1] = replace(last, duration_ticks=length, ends_section=True)
    frame = [*played.bars[:1], *bars] if pickup else bars
    span = frame[-1].end_ticks - pickup
    notes: list[Note] = []
    for number in range(times):
        _append_notes(notes, [replace(n, onset_ticks=n.onset_ticks + number * span) for n in played.notes])
    copies = [(frame if number == 0 else bars, number * span) for number in range(times)]
    numbered = [replace(bar, start_ticks=bar.start_ticks + by) for each, by in copies for bar in each]
    first = numbered[0].number
    numbered = [replace(bar, number=first + place) for place, bar in enumerate(numbered)]
    numbered[-1] = replace(numbered[-1], ends_section=last.ends_section)
    return replace(
        played,
        notes=tuple(notes),
        bars=tuple(numbered),
        chords=tuple(_repeated_chords(played, span, times)),
        tempos=tuple(_repeated_tempos(played, span, times)),
    )


def _append_notes(line: list[Note], notes: Sequence[Note]) -> None:
    """Add the notes of another time; what the line plays when they begin is let go."""
    start = notes[0].onset_ticks
    while line and line[-1].onset_ticks >= start:
        line.pop()
    if line and line[-1].end_ticks > start:
        line[-1] = replace(line[-1], duration_ticks=start - line[-1].onset_ticks)
    line += notes


def _repeated_chords(tune: Tune, span_ticks: int, times: int) -> Iterator[ChordSpan]:
    """The chords each time; those of the pickup the first time alone, and the last one up to where the next begins."""
    pickup = tune.pickup_ticks
    end = pickup + span_ticks
    for number in range(times):
        for chord in tune.chords:
            start = chord.onset_ticks if number == 0 else max(chord.onset_ticks, pickup)
            stop = end if chord is tune.chords[-1] else chord.end_ticks
            if start < stop:
                yield replace(chord, onset_ticks=start + number * span_ticks, duration_ticks=stop - start)


def _repeated_tempos(tune: Tune, span_ticks: int, times: int) -> Iterator[Tempo]:
    """The tempos each time, where they change what goes on."""
    current: float | None = None
    for number in range(times):
        for tempo in tune.tempos:
            if tempo.quarters_per_minute != current:
                current = tempo.quarters_per_minute
                place = tempo.onset_ticks if number == 0 else max(tempo.onset_ticks, tune.pickup_ticks)
                yield replace(tempo, onset_ticks=place + number * span_ticks)


def _append_bar(bars: list[Bar], bar: Bar) -> None:
    """Add a bar; a bar that a repeat sign split in two becomes one again."""
    last = bars[-1] if bars else None
    full = bar.metre.bar_ticks
    if (
        last
        and last.metre == bar.metre
        and last.duration_ticks < full
        and last.duration_ticks + bar.duration_ticks == full
        and len(bars) > 1
    ):
        bars[-1] = replace(last, duration_ticks=full, ends_section=bar.ends_section)
        return
    number = last.number + 1 if last else bar.number
    bars.append(replace(bar, number=number))


def _append_tempos(tempos: list[Tempo], written: Sequence[Tempo], bar: Bar, shift_ticks: int) -> None:
    """Add the tempo in force at the bar and those inside it, each only where it changes what goes on."""
    before = bisect_right(written, bar.start_ticks, key=_onset) - 1
    in_force = [replace(written[before], onset_ticks=bar.start_ticks)] if before >= 0 else []
    for tempo in (*in_force, *_starting_in(written, bar)):
        if not tempos or tempos[-1].quarters_per_minute != tempo.quarters_per_minute:
            tempos.append(replace(tempo, onset_ticks=tempo.onset_ticks + shift_ticks))


def _append_chord(chords: list[ChordSpan], span: ChordSpan, *, goes_on: bool) -> None:
    """Add a span; one that goes on over a bar line lengthens the span before it."""
    if goes_on and chords and chords[-1].end_ticks == span.onset_ticks and chords[-1].text == span.text:
        chords[-1] = replace(chords[-1], duration_ticks=chords[-1].duration_ticks + span.duration_ticks)
    else:
        chords.append(span)


def _starting_in(items: Sequence[Timed], bar: Bar) -> Sequence[Timed]:
    first = bisect_left(items, bar.start_ticks, key=_onset)
    return items[first : bisect_left(items, bar.end_ticks, lo=first, key=_onset)]


def _sounding_in(spans: Sequence[ChordSpan], bar: Bar) -> Sequence[ChordSpan]:
    """The chords that hold for a part of the bar; they follow one another without overlapping."""
    first = max(0, bisect_right(spans, bar.start_ticks, key=_onset) - 1)
    found = spans[first : bisect_left(spans, bar.end_ticks, key=_onset)]
    return [span for span in found if span.end_ticks > bar.start_ticks]


def _onset(item: Note | Tempo | ChordSpan) -> int:
    return item.onset_ticks
