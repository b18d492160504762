"""One line out of several notes at once: the top one, the bottom one, or one by its number from the top.

A double stop, a chord or a second voice in the melody's own part does not keep a tune from being read: one of the notes
is taken at each place, and the reader says where. A note that goes on under (or over) a later one gives way to it: in
the top line a later note that lies higher cuts the one before it, and one that lies lower is left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from fioritura.errors import OptionError
from fioritura.words import Message, message

__all__ = ["TOP", "Line", "Sounding", "checked_line", "line_of", "line_taken", "pick"]

Line = Literal["top", "bottom"] | int
"""Which of several notes at once: 1 is the top one; where there are fewer, the lowest there is."""

TOP: Final[Line] = "top"
_NAMES: Final[dict[str, Line]] = {"top": "top", "bottom": "bottom"}
_MOST_NOTES: Final = 99


@dataclass(frozen=True, slots=True)
class Sounding:
    """When a note sounds, in ticks, and its MIDI number."""

    start: float | Fraction
    end: float | Fraction
    midi: int


def checked_line(given: str | int) -> Line:
    """A line by its name or number.

    Raises:
        OptionError: neither ``"top"`` nor ``"bottom"`` nor a number from 1 to 99.
    """
    text = str(given).strip().lower()
    if text in _NAMES:
        return _NAMES[text]
    if text.isascii() and text.isdecimal() and 1 <= int(text[:4]) <= _MOST_NOTES:
        return int(text)
    raise OptionError("no-such-line", given=str(given), limit=_MOST_NOTES)


def pick(count: int, line: Line) -> int:
    """Which of `count` things, the top one first (0), a line takes."""
    if line == "top":
        return 0
    return count - 1 if line == "bottom" else min(line, count) - 1


def line_of(sounds: Sequence[Sounding], line: Line, *, together: float = 0.0) -> tuple[dict[int, float], list[int]]:
    """The numbers of the sounds (in order of start) that make a line, each with where it ends in it; and the numbers
    of those of them that had others beside them.

    Sounds that overlap and begin within `together` ticks are one chord.
    """
    ends: dict[int, float] = {}
    chosen: list[int] = []
    last = -1
    for group in _groups(sounds, together):
        by_height = sorted(dict.fromkeys(group), key=lambda number: -sounds[number].midi)
        number = by_height[pick(len(by_height), line)]
        sound = sounds[number]
        others = len({sounds[other].midi for other in group}) > 1
        if last >= 0 and ends[last] > sound.start:
            if _gives_way(sounds[last].midi, sound.midi, line):
                ends[last] = float(sound.start)
            else:
                chosen.append(last)
                continue
            others = others or sounds[last].midi != sound.midi
        ends[number] = float(sound.end)
        last = number
        if others:
            chosen.append(number)
    return ends, list(dict.fromkeys(chosen))


def _gives_way(held: int, later: int, line: Line) -> bool:
    """True when a held note ends for a later one."""
    return later >= held if line in ("top", 1) else later <= held if line == "bottom" else True


def _groups(sounds: Sequence[Sounding], together: float) -> list[list[int]]:
    groups: list[list[int]] = []
    for number, sound in enumerate(sounds):
        first = sounds[groups[-1][0]] if groups else None
        if first is not None and sound.start - first.start <= together and sound.start < first.end:
            groups[-1].append(number)
        else:
            groups.append([number])
    return groups


def line_taken(count: int, bar: Message, line: Line) -> Message:
    """Says at how many places one of several notes was taken, and which; `bar` is the bar of the first."""
    return message("line-taken", count=count, bar=bar, line=str(line))
