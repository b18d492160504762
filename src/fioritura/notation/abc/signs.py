"""Decorations, their short forms and the words that send the player elsewhere (abc 2.1, sections 4.14 and 4.16).

One table serves the reader and the writer. Names are compared without regard to case. Known deviations: signs of
bowing, fingering, dynamics and phrasing have no place in the model of a wind player's melody and are left out; the
reader says so.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from fioritura.errors import TuneError
from fioritura.theory.chord import Chord
from fioritura.theory.chord_symbol import read_chord
from fioritura.tune import Jump, Mark

__all__ = [
    "DECORATIONS",
    "HAIRPIN_ENDS",
    "JUMPS",
    "SHORT_FORMS",
    "chord_text",
    "is_chord_text",
    "jump_named",
    "main_chord",
    "mark_in_words",
]

DECORATIONS: Final[dict[str, Mark]] = {
    "trill": Mark.TRILL,
    "trill(": Mark.TRILL,
    "lowermordent": Mark.MORDENT,
    "mordent": Mark.MORDENT,
    "uppermordent": Mark.INVERTED_MORDENT,
    "pralltriller": Mark.INVERTED_MORDENT,
    "roll": Mark.ROLL,
    "cran": Mark.CRAN,
    "turn": Mark.TURN,
    "turnx": Mark.TURN,
    "invertedturn": Mark.INVERTED_TURN,
    "invertedturnx": Mark.INVERTED_TURN,
    ">": Mark.ACCENT,
    "accent": Mark.ACCENT,
    "emphasis": Mark.ACCENT,
    "^": Mark.MARCATO,
    "marcato": Mark.MARCATO,
    "fermata": Mark.FERMATA,
    "invertedfermata": Mark.FERMATA,
    "tenuto": Mark.TENUTO,
    "slide": Mark.SCOOP,
    "wedge": Mark.STACCATO,
    "staccato": Mark.STACCATO,
    "breath": Mark.BREATH,
    "shake": Mark.SHAKE,
    "fall": Mark.FALL,
    "doit": Mark.DOIT,
    "ghost": Mark.GHOST,
    "vibrato": Mark.VIBRATO,
    "pp": Mark.PIANISSIMO,
    "p": Mark.PIANO,
    "mp": Mark.MEZZO_PIANO,
    "mf": Mark.MEZZO_FORTE,
    "f": Mark.FORTE,
    "ff": Mark.FORTISSIMO,
    "crescendo(": Mark.CRESCENDO,
    "<(": Mark.CRESCENDO,
    "diminuendo(": Mark.DIMINUENDO,
    ">(": Mark.DIMINUENDO,
}
"""Marks by decoration. Beyond the standard's list stand the names that later drafts and common programs use
(``^``, ``marcato``, ``staccato``) and those of the effects that the standard has no name for (``shake`` to
``vibrato``); a program that does not know them ignores them, as section 4.14 asks."""

JUMPS: Final[dict[str, Jump]] = {
    "segno": Jump.SEGNO,
    "coda": Jump.CODA,
    "dacoda": Jump.TO_CODA,
    "tocoda": Jump.TO_CODA,
    "fine": Jump.FINE,
    "d.c.": Jump.DA_CAPO,
    "dacapo": Jump.DA_CAPO,
    "d.c.alfine": Jump.DA_CAPO,
    "d.c.alcoda": Jump.DA_CAPO,
    "d.s.": Jump.DAL_SEGNO,
    "dalsegno": Jump.DAL_SEGNO,
    "d.s.alfine": Jump.DAL_SEGNO,
    "d.s.alcoda": Jump.DAL_SEGNO,
}

HAIRPIN_ENDS: Final = frozenset({"crescendo)", "<)", "diminuendo)", ">)"})
"""These stand after the last note of a hairpin (section 4.14)."""

SHORT_FORMS: Final[dict[str, str]] = {
    ".": "staccato",
    "~": "roll",
    "H": "fermata",
    "J": "slide",
    "L": "accent",
    "M": "lowermordent",
    "O": "coda",
    "P": "uppermordent",
    "R": "roll",
    "S": "segno",
    "T": "trill",
    "u": "upbow",
    "v": "downbow",
}
"""The standard's definitions (section 4.16), with J and R of earlier custom."""

_JUMP_WORDS: Final = re.compile(
    r"(?P<segno>segno|sign)"
    r"|(?P<tocoda>(?:to|da)coda)"
    r"|(?P<coda>coda)"
    r"|(?P<fine>fine)"
    r"|(?P<dacapo>(?:dc|dacapo)(?:alfine|alcoda)?)"
    r"|(?P<dalsegno>(?:ds|dalsegno)(?:alfine|alcoda)?)"
)
_WORDS: Final[dict[str, Mark]] = {
    "tr": Mark.TRILL,
    "tr.": Mark.TRILL,
    "^tr": Mark.TRILL,
    "^shake": Mark.SHAKE,
    "^cran": Mark.CRAN,
    "^fall": Mark.FALL,
    "^doit": Mark.DOIT,
    "^vibrato": Mark.VIBRATO,
    "<(": Mark.GHOST,
}
"""A parenthesis to the left of a note is the first half of a pair around it (section 4.19)."""

_BASS: Final = re.compile(r"(?<=/)[a-g](?=[b#♭♯]?$)")
_CHORD_LIKE: Final = re.compile(r"\(?[A-H][b#♭♯]?(?:(?:m|maj|min|dim|aug|sus|add|alt)(?![a-z])|[^a-z .]|$)")


def jump_named(text: str) -> Jump | None:
    """The jump that a decoration's name or a text such as ``"D.C. al Fine"`` means."""
    name = text.strip().lower()
    if name in JUMPS:
        return JUMPS[name]
    match = _JUMP_WORDS.fullmatch(re.sub(r"[^a-z]", "", name))
    return JUMPS[match.lastgroup] if match and match.lastgroup else None


def mark_in_words(text: str) -> Mark | None:
    """The mark that a text stands for: ``"tr"`` of old books, and what the writer has no decoration for."""
    return _WORDS.get(text.strip().lower())


@lru_cache(maxsize=1024)
def is_chord_text(text: str) -> bool:
    """True when a quoted text is meant as a chord symbol (section 4.18), not as a fingering or a word.

    A chord symbol begins with a capital; one that can't be read counts if it looks like one (H is B in German books).
    """
    if not text[:1].isupper() and text[:1] != "(":
        return False
    try:
        read_chord(text)
    except TuneError:
        return _CHORD_LIKE.match(text) is not None
    return True


def chord_text(text: str) -> str:
    """The text of a chord symbol without parentheses around the whole, its bass in a capital (section 4.18)."""
    inner = text[1:-1] if text[:1] == "(" and text[-1:] == ")" else text
    return _BASS.sub(lambda match: match[0].upper(), inner)


@lru_cache(maxsize=256)
def main_chord(text: str) -> Chord | None:
    """The chord to play where another one follows in parentheses, ``"G(Em)"``; None for any other text."""
    match = re.fullmatch(r"(.+)\(([A-G].*)\)", text)
    try:
        return read_chord(match[1]) if match and read_chord(match[2]) else None
    except TuneError:
        return None
