"""What did not come through words: texts made in the pseudo-language have no plain letters but in what is no language.

Speak ``"pseudo"`` (see `fioritura.words.speech.PSEUDO`), make a page, and look for plain words in its text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

__all__ = ["plain_words"]

_WORD = re.compile(r"(?<![\w.])[^\W\d_]+(?:['’-][^\W\d_]+)*")
_PLAIN = re.compile(r"[A-Za-z][a-z]+(?:['’-][a-z]+)*|[a-z]")


def plain_words(text: str, allowed: Iterable[str] = ()) -> set[str]:
    """Words of a text that are written in plain a-z, less those of `allowed` texts (titles, file names, ids).

    Names of notes and chords (``B♭4``, ``Dm7``) and words in capitals are no language.
    """
    known = {word for each in allowed for word in _WORD.findall(each)}
    found = {word for word in _WORD.findall(text) if _PLAIN.fullmatch(word)}
    return {word for word in found - known if not _is_chord(word)}


def _is_chord(word: str) -> bool:
    """True for what is left of a chord symbol, with its digits taken off: ``Bm``, ``Cmaj``, ``maj``."""
    return bool(re.fullmatch(r"[A-G]?(?:b|m|maj|min|dim|aug|sus|add)+", word))
