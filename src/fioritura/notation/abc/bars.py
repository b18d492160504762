"""The bars of an ABC voice as they are written: what fills them, their lines, repeats, endings and jumps.

Source: the abc music standard 2.1, sections 4.3 to 4.10. Lengths are exact: a 128th or a note of a nonuplet is a
fraction of a tick inside its bar, and its ends go to the nearest tick when the bar is handed on.

Conventions: an end of repeat without a beginning goes back to the latest double bar or end of repeat (4.8). A
dotted or invisible bar line inside a bar that isn't full yet is an editor's hint, no bar line. Where a line of music
ends with its bar just full, a bar line is understood, as whole collections leave it out there; in free metre the end
of a line closes a bar of more than 16 quarter notes. A last ending that nothing ends before the next end of repeat is
as long as the first one.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Final

from fioritura.errors import TuneError
from fioritura.notation.abc.faults import UnreadableError
from fioritura.notation.abc.signs import main_chord
from fioritura.notation.assemble import RawBar, RawChord, RawNote, RawTempo, free_metre
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER, Metre
from fioritura.tune import Jump

__all__ = ["AbcBar", "BarBuilder", "Sound", "Ticks", "scaled"]

MAX_BARS: Final = 5000
MAX_PASSES: Final = 20

Ticks = int | Fraction
"""A length or a place in a bar, exact; almost always a whole number."""

_LONG_TICKS: Final = 16 * QUARTER
_COMMON_TIME: Final = Metre(4, 4)
_STARTING_JUMPS: Final = frozenset({Jump.SEGNO, Jump.CODA})
_BAR_SIGN: Final = re.compile(r"(?P<dot>\.?)(?P<sign>[^0-9]*)(?P<ending>.*)")


def scaled(length: Ticks, numerator: int, denominator: int) -> Ticks:
    """A length times a fraction, a plain integer wherever it is one."""
    product = length * numerator
    if isinstance(product, int) and product % denominator == 0:
        return product // denominator
    value = Fraction(product) / denominator
    return value.numerator if value.denominator == 1 else value


def nearest_tick(place: Ticks) -> int:
    """The nearest whole tick, halves up, so that lengths of a tick and more never vanish."""
    return place if isinstance(place, int) else int((2 * place + 1) // 2)


@dataclass(slots=True)
class Sound:
    """A note head, or a rest (no `note`), at its exact place in its bar."""

    bar: AbcBar
    start: Ticks
    length: Ticks
    note: RawNote | None


@dataclass(slots=True)
class AbcBar:
    """One written bar with exact places; `content` is what fills it."""

    raw: RawBar
    index: int
    sounds: list[Sound] = field(default_factory=list)
    chords: list[tuple[Ticks, str]] = field(default_factory=list)
    tempos: list[tuple[Ticks, float]] = field(default_factory=list)
    content: Ticks = 0

    def settle(self) -> RawBar:
        """The raw bar with everything in it at whole ticks."""
        raw = self.raw
        for sound in self.sounds:
            if sound.note:
                sound.note.offset_ticks = nearest_tick(sound.start)
                sound.note.duration_ticks = nearest_tick(sound.start + sound.length) - sound.note.offset_ticks
                raw.notes.append(sound.note)
        raw.chords = [RawChord(nearest_tick(start), text, main_chord(text)) for start, text in self.chords]
        raw.tempos = [RawTempo(nearest_tick(start), rate) for start, rate in self.tempos]
        raw.content_ticks = nearest_tick(self.content)
        if raw.is_free and raw.content_ticks and not _is_measurable(raw.content_ticks):
            raw.is_free, raw.is_implicit = False, True
        return raw


def _is_measurable(ticks: int) -> bool:
    try:
        free_metre(ticks)
    except TuneError:
        return False
    return True


class BarBuilder:
    """Bars in the making. A bar opens with the first thing in it, so signs between bar lines make no empty one."""

    def __init__(self, key: Key, metre: Metre | None, tempo: float) -> None:
        self.bars: list[AbcBar] = []
        self._key = key
        self._metre = metre
        self._open: AbcBar | None = None
        self._next = _NextBar(tempos=[tempo] if tempo else [])
        self._endings: tuple[int, ...] = ()
        self._section_start = 0
        self._is_in_repeat = False
        self._loose_jumps: list[Jump] = []
        self.cut_endings = 0
        """How many last endings had no end of their own and were cut to the length of the first."""

    def set_key(self, key: Key) -> None:
        """The key from here on; the bar's own where the bar is still empty."""
        self._key = key
        if self._open and not self._open.content:
            self._open.raw.key = key

    def set_metre(self, metre: Metre | None) -> None:
        """The metre from here on, None for free metre; the bar's own where the bar is still empty."""
        self._metre = metre
        if self._open and not self._open.content:
            self._open.raw.metre = metre or _COMMON_TIME
            self._open.raw.is_free = metre is None

    def add(self, length: Ticks, note: RawNote | None) -> Sound:
        """Append a note, or a rest, at the end of the bar."""
        bar = self._bar()
        if self._loose_jumps:
            self._take_jumps(bar)
        sound = Sound(bar, bar.content, length, note)
        bar.sounds.append(sound)
        bar.content += length
        return sound

    def stretch(self, sound: Sound, numerator: int, denominator: int) -> None:
        """Change the length of the last sound of the open bar.

        Raises:
            UnreadableError: a bar line stands after the sound.
        """
        if sound.bar is not self._open:
            raise UnreadableError("abc-broken-over-bar-line")
        sound.length = scaled(sound.length, numerator, denominator)
        sound.bar.content = sound.start + sound.length

    def add_chord(self, text: str) -> None:
        """A chord symbol from here on."""
        if self._open:
            self._open.chords.append((self._open.content, text))
        else:
            self._next.chords.append(text)

    def add_tempo(self, quarters_per_minute: float) -> None:
        """A tempo from here on."""
        if self._open:
            self._open.tempos.append((self._open.content, quarters_per_minute))
        else:
            self._next.tempos.append(quarters_per_minute)

    def add_jump(self, jump: Jump) -> None:
        """A sign at this place; the bar that it belongs to follows from what comes next."""
        self._loose_jumps.append(jump)

    def end_line(self) -> bool:
        """A line of music ends. True where it ends a bar too, though no bar line says so: the bar is full, or it is
        a long one without metre. Signs after the line's last bar line belong to the bar before it."""
        bar = self._open
        if bar and (bar.content > _LONG_TICKS if bar.raw.is_free else bar.content == bar.raw.metre.bar_ticks):
            self._end_bar(0, False)
            return True
        if self._loose_jumps and self._open is None and self.bars:
            starting = [jump for jump in self._loose_jumps if jump in _STARTING_JUMPS]
            ending = [jump for jump in self._loose_jumps if jump not in _STARTING_JUMPS]
            _mark(self.bars[-1], ending)
            self._loose_jumps = starting
        return False

    def add_bar_rests(self, count: int) -> None:
        """Whole bars of silence, the last one still open.

        Raises:
            UnreadableError: the bar holds something already.
        """
        if self._open and self._open.content:
            raise UnreadableError("abc-bar-rest-inside-bar")
        for number in range(count):
            if number:
                self._close()
            bar = self._bar()
            bar.content = bar.raw.metre.bar_ticks

    def bar_line(self, text: str) -> bool:
        """A bar line with its dots and ending numbers; False where it is no more than a hint.

        Raises:
            UnreadableError: the numbers of an ending make no sense.
        """
        match = _BAR_SIGN.match(text)
        sign = re.sub(r"\s", "", match["sign"]) if match else text
        is_hidden = sign == "[|]"
        is_hint = is_hidden or (match is not None and match["dot"] == ".")
        if is_hint and self._open and self._open.content < self._open.raw.metre.bar_ticks:
            return False
        before = len(sign) - len(sign.lstrip(":"))
        after = len(sign) - len(sign.rstrip(":"))
        if before == len(sign):
            before = after = max(1, before // 2)
        is_double = not before and not is_hidden and ("||" in sign or "]" in sign or "[" in sign)
        self._end_bar(min(before, MAX_PASSES), is_double)
        if before or is_double or after:
            self._endings = ()
        if before or after or (is_double and not self._is_in_repeat):
            self._section_start = len(self.bars)
            self._is_in_repeat = after > 0
            self._next.opens_repeat = self._next.opens_repeat or after > 0
        if match and match["ending"]:
            self.start_ending(match["ending"])
        return True

    def start_ending(self, text: str) -> None:
        """A first, second or further ending begins: ``"1"``, ``"1,3"`` or ``"1-3"``.

        Raises:
            UnreadableError: not such numbers, or one outside 1-20.
        """
        numbers: list[int] = []
        for piece in text.strip(",-").split(","):
            first, dash, last = piece.partition("-")
            if not first.isdecimal() or not (last or first).isdecimal() or len(first + last) > 4:
                raise UnreadableError("abc-no-ending-numbers")
            numbers += range(int(first), int(last if dash else first) + 1)
        if not numbers or min(numbers) < 1 or max(numbers) > MAX_PASSES:
            raise UnreadableError("abc-ending-outside", limit=MAX_PASSES)
        if self._open and self._open.content:
            self._open.raw.is_implicit = self._next.is_implicit = True
            self._close()
        self._endings = tuple(sorted(set(numbers)))

    def finish(self) -> list[RawBar]:
        """Close the last bar; all bars as the common last step of the readers takes them. A sign that would open
        a bar after the last one is dropped."""
        if not self.end_line():
            self._end_bar(0, False)
        self.cut_endings = _cut_long_endings([bar.raw for bar in self.bars])
        return [bar.settle() for bar in self.bars]

    def _bar(self) -> AbcBar:
        if self._open is None:
            if len(self.bars) >= MAX_BARS:
                raise UnreadableError("abc-too-many-bars", limit=MAX_BARS)
            ahead, self._next = self._next, _NextBar()
            raw = RawBar(
                metre=self._metre or _COMMON_TIME,
                key=self._key,
                opens_repeat=ahead.opens_repeat,
                endings=self._endings,
                is_implicit=ahead.is_implicit,
                is_free=self._metre is None,
            )
            self._open = AbcBar(raw, len(self.bars))
            self._open.chords = [(0, text) for text in ahead.chords]
            self._open.tempos = [(0, rate) for rate in ahead.tempos]
            _mark(self._open, ahead.jumps)
        return self._open

    def _end_bar(self, repeats: int, is_double: bool) -> None:
        """Close the open bar, if any, and put the line's signs on the last bar."""
        starting = [jump for jump in self._loose_jumps if jump in _STARTING_JUMPS]
        if self._open is None and self._next.chords:
            self._bar()
        if self._open:
            _mark(self._open, [jump for jump in self._loose_jumps if jump not in _STARTING_JUMPS])
            self._loose_jumps = []
            self._close()
            self._next.jumps += starting
        if not self.bars:
            return
        last = self.bars[-1].raw
        last.ends_section = last.ends_section or (is_double and not last.repeats)
        if repeats:
            last.repeats = repeats
            last.ends_section = False
            self._open_section()

    def _open_section(self) -> None:
        """Give an end of repeat its beginning where none is written."""
        start = self._section_start
        if not self._is_in_repeat and 0 < start < len(self.bars) and not self.bars[start].raw.endings:
            self.bars[start].raw.opens_repeat = True

    def _close(self) -> None:
        bar = self._open
        if bar is None:
            return
        if bar.content:
            self._next.chords += [text for start, text in bar.chords if start >= bar.content]
            bar.chords = [(start, text) for start, text in bar.chords if start < bar.content]
        self.bars.append(bar)
        self._open = None

    def _take_jumps(self, bar: AbcBar) -> None:
        _mark(bar, self._loose_jumps)
        self._loose_jumps = []


def _cut_long_endings(bars: list[RawBar]) -> int:
    """Cut last endings that run into the end of another repeat; the rest is that repeat's section."""
    count = 0
    index = 0
    while index < len(bars):
        runs = _ending_runs(bars, index)
        if len(runs) > 1:
            start, end = runs[-1]
            first = runs[0][1] - runs[0][0]
            if bars[end - 1].repeats and end - start > first:
                for bar in bars[start + first : end]:
                    bar.endings = ()
                bars[start + first].opens_repeat = True
                count += 1
        index = runs[-1][1] if runs else index + 1
    return count


def _ending_runs(bars: list[RawBar], index: int) -> list[tuple[int, int]]:
    """The endings that follow each other from a bar on, each with its first bar and the bar after its last."""
    runs: list[tuple[int, int]] = []
    while index < len(bars) and bars[index].endings:
        start = index
        while index < len(bars) and bars[index].endings == bars[start].endings:
            index += 1
        runs.append((start, index))
    return runs


@dataclass(slots=True)
class _NextBar:
    """What is known of a bar before it opens."""

    opens_repeat: bool = False
    is_implicit: bool = False
    chords: list[str] = field(default_factory=list)
    tempos: list[float] = field(default_factory=list)
    jumps: list[Jump] = field(default_factory=list)


def _mark(bar: AbcBar, jumps: list[Jump]) -> None:
    """Add signs to a bar, those at its start first."""
    if jumps:
        found = dict.fromkeys((*bar.raw.jumps, *jumps))
        bar.raw.jumps = tuple(sorted(found, key=lambda jump: jump not in _STARTING_JUMPS))
