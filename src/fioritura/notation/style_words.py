"""What the words on a sheet say of how it is played.

The words are those that lead sheets have (common practice, from memory), in the languages that the program speaks.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from fioritura.tune import Dance, Style, Tune
from fioritura.words import Message, message

__all__ = ["dance_in", "style_in", "style_in_title", "style_said"]

_WORDS: Final[tuple[tuple[Style, str], ...]] = (
    (
        "straight",
        r"\b(straight|even)\b|\b(no|not|without|un)[ -]?(swing|swung)|\bgerade\b|\bbinaires?\b|"
        r"\b(corcheas|croches) (rectas|iguales|[ée]gales)\b",
    ),
    ("bossa", r"\b(bossa|samba|latin|beguine|rhumba|rumba|bolero|mambo|cha[ -]cha)\b"),
    ("shuffle", r"\bshuffle\b"),
    ("funk", r"\bfunky?\b"),
    ("soul", r"\b(rock|pop|soul|gospel|r ?& ?b|straight[ -]?8)\b"),
    ("ballad", r"\b(ballad|ballade|balada)\b"),
    ("swing", r"\b(swing|swung|swingin[g']?|ternaires?)\b"),
)
_PATTERNS: Final = tuple((style, re.compile(words, re.IGNORECASE)) for style, words in _WORDS)
_TITLE_WORDS: Final[tuple[tuple[Style, str], ...]] = (
    ("bossa", r"\b(bossa( nova)?|samba)\b"),
    ("shuffle", r"\bshuffle\b"),
    ("ballad", r"\bballad$"),
)
_TITLES: Final = tuple((style, re.compile(words, re.IGNORECASE)) for style, words in _TITLE_WORDS)

_DANCE_WORDS: Final[tuple[tuple[Dance, str], ...]] = (
    ("slip-jig", r"(slip|hop)[ -]?jigs?"),
    ("slide", r"slides?|single jigs?"),
    ("jig", r"(double )?jigs?"),
    ("reel", r"reels?"),
    ("hornpipe", r"hornpipes?"),
    ("polka", r"polkas?"),
    ("strathspey", r"strathspeys?"),
    ("mazurka", r"mazurkas?"),
    ("march", r"march(es)?"),
    ("waltz", r"waltz(es)?"),
    ("air", r"(slow )?airs?"),
)
"""Kinds of tunes as collections of folk music name them (common practice), the narrower before the wider."""
_DANCES: Final = tuple(
    (dance, re.compile(rf"\b({words})\b", re.IGNORECASE), re.compile(rf"\b({words})$", re.IGNORECASE))
    for dance, words in _DANCE_WORDS
)
_DANCES_IN_TITLES: Final = frozenset({"slip-jig", "jig", "reel", "hornpipe", "strathspey"})
"""Those that a title ends in only where it means them."""


def dance_in(words: Sequence[str], title: str = "") -> Dance | None:
    """The dance that words name (``"Reel"``), else the one that the title ends in; None where there is none.

    Examples:
        >>> dance_in(["Double Jig"]), dance_in([], "The Morning Reel"), dance_in([], "Hot House Jigsaw")
        ('jig', 'reel', None)
    """
    for text in words:
        for dance, pattern, _ in _DANCES:
            if pattern.search(text):
                return dance
    named = (dance for dance, _, at_end in _DANCES if dance in _DANCES_IN_TITLES and at_end.search(title.strip()))
    return next(named, None)


def style_in(words: Sequence[str]) -> Style | None:
    """The style that words name (``"Medium swing"``), None when none does; the first word that names one decides."""
    for text in words:
        for style, pattern in _PATTERNS:
            if pattern.search(text):
                return style
    return None


def style_in_title(title: str) -> Style | None:
    """The style that a title names, which is less than words about it: ``"Kitchen Bossa"``, not ``"Ballad of ..."``."""
    return next((style for style, pattern in _TITLES if pattern.search(title.strip())), None)


def style_said(tune: Tune) -> Message | None:
    """The words that a sheet of the tune has for how it is played; None where it needs none."""
    style = tune.style or ("swing" if tune.feel == "swing" else None)
    return message("style-name", style=style) if style else None
