"""What the pseudo-language leaves in usual letters did not come through the words."""

from __future__ import annotations

import re

__all__ = ["plain_words"]

_WORD = re.compile(r"[^\W\d_]+")
_USUAL = re.compile(r"[A-Za-z]{2,}")


def plain_words(text: str) -> set[str]:
    """The words of a text that are written in the letters a to z alone; single letters are none."""
    return {word for word in _WORD.findall(text) if _USUAL.fullmatch(word)}
