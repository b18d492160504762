"""Lyrics and symbol lines set under the notes of an ABC voice (abc 2.1, sections 4.15 and 5).

Every written note head takes a syllable, tied ones too; rests and grace notes take none. In files that don't call
themselves abc 2.1 a ``w:`` line belongs to the line of music before it (section 10.6). Only the first verse is
kept. A syllable that goes on in the next one ends with a hyphen.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from fioritura.notation.abc.bars import Sound
from fioritura.notation.abc.fields import text_string

__all__ = ["Slots", "syllables"]

_SYLLABLE: Final = re.compile(r"(?P<text>(?:\\.|[^\s*_|\-])+)(?P<hyphen>-?)|(?P<sign>[*_|-])")
_SYMBOL: Final = re.compile(r'"[^"]*"|![^!\s]+!|\+[^+\s]+\+|[*|]')

NEXT_BAR: Final = "|"


class Slots:
    """The note heads of a voice in order, and how far the lyrics have come."""

    def __init__(self, is_strict: bool) -> None:
        self._sounds: list[Sound] = []
        self._is_strict = is_strict
        self._line_starts = [0, 0]
        self._sung = -1

    def add(self, sound: Sound) -> None:
        """A note head was read."""
        self._sounds.append(sound)

    def end_line(self) -> None:
        """A line of music ends."""
        self._line_starts = [self._line_starts[1], len(self._sounds)]

    def set_lyrics(self, text: str) -> bool:
        """Set a line of lyrics; False for a further verse, which is left out."""
        if self._sung == len(self._sounds):
            return False
        start = max(0, self._sung)
        for sound, syllable in self._aligned(list(syllables(text)), start if self._is_strict else self._line_start):
            if sound.note:
                sound.note.lyric = syllable
        self._sung = len(self._sounds)
        return True

    def symbols(self, text: str) -> Iterator[tuple[Sound, str]]:
        """The symbols of an ``s:`` line, each with the note head that it belongs to."""
        pieces = ["" if piece == "*" else piece for piece in _SYMBOL.findall(text)]
        return ((sound, piece) for sound, piece in self._aligned(pieces, self._line_start) if piece)

    @property
    def _line_start(self) -> int:
        return self._line_starts[0]

    def _aligned(self, pieces: Sequence[str], place: int) -> Iterator[tuple[Sound, str]]:
        sounds = self._sounds
        bar = sounds[place].bar.index if place < len(sounds) else 0
        for piece in pieces:
            if piece == NEXT_BAR:
                bar += 1
                while place < len(sounds) and sounds[place].bar.index < bar:
                    place += 1
            elif place < len(sounds):
                bar = sounds[place].bar.index
                yield sounds[place], piece
                place += 1


def syllables(text: str) -> Iterator[str]:
    """The syllables of a ``w:`` line, one for each note; ``""`` for a note without one, ``"|"`` for the next bar."""
    for match in _SYLLABLE.finditer(text.removesuffix("\\")):
        if match["sign"]:
            yield NEXT_BAR if match["sign"] == "|" else ""
        else:
            yield text_string(match["text"].replace("\\-", "-").replace("~", " ")) + match["hyphen"]
