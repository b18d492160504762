"""Chord symbols: one table of qualities reads every common spelling, and writes the trade's own.

A symbol is a root, a quality (``m``, ``maj``, ``°`` ...) with an extension (``7``, ``9`` ...), modifiers (``b5``,
``add9``, ``sus4``, ``no3``, ``alt``) in or out of parentheses, and a bass after a stroke. An accidental after the
root belongs to the root ("Cb5" is the power chord on C flat). What can't be read without a guess is refused.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Final

from fioritura.errors import TuneError
from fioritura.theory.chord import KINDS, Chord, Degree, implied_degrees, stacked
from fioritura.theory.pitch import NoteName

__all__ = ["chord_from_kind", "read_chord"]

_GLYPHS: Final = str.maketrans(
    {"♭": "b", "♯": "#", "♮": None, "𝄫": "bb", "𝄪": "##", "−": "-", "–": "-", "△": "Δ", "∆": "Δ", "^": "Δ"}
    | {"º": "°", "˚": "°", "Ø": "ø", "⌀": "ø", "∅": "ø", "＋": "+", "[": "(", "]": ")", "\N{NO-BREAK SPACE}": " "}
)
_NO_CHORD: Final = re.compile(r"n\.?\s*c\.?|no\s*chord", re.IGNORECASE)
_ROOT: Final = re.compile(r"(?P<letter>[A-Ga-g])(?P<accidental>bb|##|b|#|)")
_BASS: Final = re.compile(r"\s*/\s*([A-Ga-g])(bb|##|b|#|)$")

_QUALITIES: Final = {
    "ø": r"ø|half[- ]?dim(?:inished)?|hdim|h(?=7)",
    "°": r"°|diminished|dim|o(?![a-z])",
    "aug": r"augmented|aug|\+",
    "m": r"minor|min|mi|(?-i:m)(?!a)|(?-i:m)(?=add)|-",
    "maj": r"major|maj|ma(?!dd)|(?-i:M)",
    "Δ": r"Δ|j(?=7)",
    "dom": r"dom(?=\s*\d)",
}
"""Each quality and how it is spelled; capital letters mean the same except in M (major) and m (minor)."""

_SYMBOLS: Final[dict[tuple[str, str], str]] = {
    ("", ""): "major",
    ("", "5"): "power",
    ("", "6"): "major-sixth",
    ("", "69"): "major-sixth add9",
    ("", "7"): "dominant",
    ("", "9"): "dominant-ninth",
    ("", "11"): "dominant-11th",
    ("", "13"): "dominant-13th",
    ("", "7M"): "major-seventh",
    ("dom", "7"): "dominant",
    ("dom", "9"): "dominant-ninth",
    ("dom", "11"): "dominant-11th",
    ("dom", "13"): "dominant-13th",
    ("maj", ""): "major",
    ("maj", "6"): "major-sixth",
    ("maj", "69"): "major-sixth add9",
    ("maj", "7"): "major-seventh",
    ("maj", "9"): "major-ninth",
    ("maj", "11"): "major-11th",
    ("maj", "13"): "major-13th",
    ("Δ", ""): "major-seventh",
    ("Δ", "7"): "major-seventh",
    ("Δ", "9"): "major-ninth",
    ("Δ", "11"): "major-11th",
    ("Δ", "13"): "major-13th",
    ("m", ""): "minor",
    ("m", "6"): "minor-sixth",
    ("m", "69"): "minor-sixth add9",
    ("m", "7"): "minor-seventh",
    ("m", "9"): "minor-ninth",
    ("m", "11"): "minor-11th",
    ("m", "13"): "minor-13th",
    ("m", "7M"): "major-minor",
    ("m maj", "7"): "major-minor",
    ("m maj", "9"): "major-minor add9",
    ("m maj", "11"): "major-minor add9 add11",
    ("m maj", "13"): "major-minor add9 add11 add13",
    ("m Δ", ""): "major-minor",
    ("m Δ", "7"): "major-minor",
    ("m Δ", "9"): "major-minor add9",
    ("°", ""): "diminished",
    ("°", "7"): "diminished-seventh",
    ("°", "9"): "diminished-seventh add9",
    ("°", "11"): "diminished-seventh add9 add11",
    ("° maj", "7"): "diminished add#7",
    ("° Δ", ""): "diminished add#7",
    ("° Δ", "7"): "diminished add#7",
    ("ø", ""): "half-diminished",
    ("ø", "7"): "half-diminished",
    ("ø", "9"): "half-diminished add9",
    ("ø", "11"): "half-diminished add9 add11",
    ("aug", ""): "augmented",
    ("aug", "5"): "augmented",
    ("aug", "7"): "augmented-seventh",
    ("aug", "9"): "augmented-seventh add9",
    ("aug maj", "7"): "major-seventh alter#5",
    ("aug maj", "9"): "major-ninth alter#5",
    ("aug Δ", ""): "major-seventh alter#5",
    ("aug Δ", "7"): "major-seventh alter#5",
}
"""Quality and extension to MusicXML kind and degrees: the one table that gives a symbol its meaning."""

_EXTENSION: Final = re.compile(r"\s*(?:(7M)(?![a-z])|(69|13|11|9|7|6|5)(?!\d))")
_MODIFIER: Final = re.compile(
    r"(?P<omit>(?:omit|no)\s*(?P<gone>13|11|9|7|5|3|1)(?:rd|th)?)(?!\d)"
    r"|(?P<sus>sus(?:pended)?\s*(?P<tone>2/?4|2|4|7|)(?!\d))"
    r"|(?P<alt>alt(?:ered)?7?)"
    r"|(?P<add>add)\s*(?P<add_sign>[b#]?)(?P<added>13|11|9|7|6|4|2)(?!\d)"
    r"|(?P<sign>[b#+-])(?P<altered>13|11|9|7|6|5|4)(?!\d)"
    r"|(?P<sharp_five>\+|aug)(?!\d)"
    r"|(?P<bare>13|11|9)(?!\d)",
    re.IGNORECASE,
)
_SEPARATOR: Final = re.compile(r"[\s,/()]*")
_ALTERATIONS: Final = frozenset({"b5", "#5", "b6", "#7", "b9", "#9", "#11", "#4", "b13"})
_COMPOUND: Final = {"b6": 13, "#4": 11}
_ALTERED: Final = (Degree(5, -1, "alter"), Degree(5, 1, "add"), Degree(9, -1, "add"), Degree(9, 1, "add"))

_PLAIN_KINDS: Final = {
    ("minor-seventh", Degree(5, -1, "alter")): "half-diminished",
    ("minor", Degree(5, -1, "alter")): "diminished",
    ("major", Degree(5, 1, "alter")): "augmented",
    ("dominant", Degree(5, 1, "alter")): "augmented-seventh",
    ("minor", Degree(7, 1, "add")): "major-minor",
}
"""Alterations that make another kind."""

_TEXTS: Final = {
    "major": "",
    "minor": "m",
    "augmented": "aug",
    "diminished": "dim",
    "dominant": "7",
    "major-seventh": "maj7",
    "minor-seventh": "m7",
    "diminished-seventh": "dim7",
    "augmented-seventh": "7#5",
    "half-diminished": "m7b5",
    "major-minor": "m(maj7)",
    "major-sixth": "6",
    "minor-sixth": "m6",
    "dominant-ninth": "9",
    "major-ninth": "maj9",
    "minor-ninth": "m9",
    "dominant-11th": "11",
    "major-11th": "maj11",
    "minor-11th": "m11",
    "dominant-13th": "13",
    "major-13th": "maj13",
    "minor-13th": "m13",
    "suspended-second": "sus2",
    "suspended-fourth": "sus4",
    "Neapolitan": "N6",
    "Italian": "It+6",
    "French": "Fr+6",
    "German": "Ger+6",
    "pedal": "ped",
    "power": "5",
    "Tristan": "tristan",
    "other": "other",
}
_COMBINED: Final = {
    ("dominant", _ALTERED): "7alt",
    ("diminished", (Degree(7, 1, "add"),)): "dim(maj7)",
    ("major-minor", (Degree(9, 0, "add"),)): "m(maj9)",
    ("augmented-seventh", (Degree(9, 0, "add"),)): "9#5",
    ("major-sixth", (Degree(9, 0, "add"),)): "6/9",
    ("minor-sixth", (Degree(9, 0, "add"),)): "m6/9",
}
_NAMED: Final = {
    _TEXTS[kind]: kind for kind in ("Neapolitan", "Italian", "French", "German", "pedal", "Tristan", "other")
}


class _UnreadableError(Exception):
    """The suffix holds something that can't be read."""


@lru_cache(maxsize=4096)
def read_chord(text: str) -> Chord | None:
    """Read a chord symbol; None for "no chord" (N.C.).

    Raises:
        TuneError: the text is no chord symbol that can be read without a guess.
    """
    plain = text.translate(_GLYPHS).strip()
    if _NO_CHORD.fullmatch(plain):
        return None
    root = _ROOT.match(plain)
    if root is None:
        raise _refusal(text)
    bass = _BASS.search(plain, root.end())
    suffix = " ".join(plain[root.end() : bass.start() if bass else None].split())
    try:
        _check_root(root["letter"], root["accidental"], suffix)
        kind, degrees = _read_suffix(suffix)
    except _UnreadableError:
        raise _refusal(text) from None
    name = NoteName.parse(root[0])
    bass_name = NoteName.parse(bass[1] + bass[2]) if bass else None
    return _chord(name, kind, degrees, bass_name, suffix)


def chord_from_kind(
    root: NoteName, kind: str, degrees: Iterable[Degree] = (), bass: NoteName | None = None, text: str = ""
) -> Chord | None:
    """The chord of a MusicXML kind-value and its degrees; None for the kind "none".

    `text` (the symbol's suffix as it was printed) is kept where it reads as the same chord; else the trade's own
    text is made.

    Raises:
        TuneError: the kind is not one of MusicXML 4.0's 33, or a degree lies outside 1-13.
    """
    if kind == "none":
        return None
    degrees = tuple(degrees)
    if kind not in KINDS:
        raise TuneError(f"{kind!r} is not a chord kind of MusicXML 4.0; known are {', '.join(KINDS)} and none.")
    wrong = next((degree for degree in degrees if not 1 <= degree.value <= 13), None)
    if wrong:
        raise TuneError(f"Chord degree {wrong.value} lies outside 1-13; take it out of the chord on {root}.")
    suffix = " ".join(text.translate(_GLYPHS).split())
    made = _chord(root, kind, degrees, bass, _suffix_text(kind, degrees))
    try:
        given = read_chord(f"{root}{suffix}") if suffix else None
    except TuneError:
        given = None
    return _chord(root, kind, degrees, bass, suffix) if given and given.intervals == made.intervals else made


def _refusal(text: str) -> TuneError:
    return TuneError(
        f"{text!r} is not a chord symbol that can be read; write root, quality and bass, as in Dm7, Bb7(b9) or C/E."
    )


def _chord(root: NoteName, kind: str, degrees: tuple[Degree, ...], bass: NoteName | None, suffix: str) -> Chord:
    lower = None if bass == root else bass
    text = f"{root}{suffix}" + (f"/{lower}" if lower else "")
    return Chord(root, stacked(kind, degrees), lower, text, kind, degrees)


def _check_root(letter: str, accidental: str, suffix: str) -> None:
    """Refuse a root that may mean two things: a small letter without its quality, a double flat before a number."""
    if letter.islower() and not re.match(r"m|-|dim|°|ø|sus|Δ", suffix):
        raise _UnreadableError
    if len(accidental) == 2 and re.match(r"[b#]?(5|6|9|11|13)", suffix):
        raise _UnreadableError


def _read_suffix(suffix: str) -> tuple[str, tuple[Degree, ...]]:
    if suffix in _NAMED:
        return _NAMED[suffix], ()
    quality, place = _quality(suffix)
    match = _EXTENSION.match(suffix, place)
    extension = (match[1] or match[2]) if match else ""
    place = match.end() if match else place
    if not extension and not quality and suffix.lower().startswith(("alt", "(alt")):
        extension = "7"
    if (quality, extension) not in _SYMBOLS:
        raise _UnreadableError
    kind, *extra = _SYMBOLS[quality, extension].split()
    return _modified(kind, [_extra_degree(word) for word in extra], suffix, place, extension)


def _quality(suffix: str) -> tuple[str, int]:
    """The quality at the head of a suffix, such as ``"m maj"``, and where it ends."""
    found: list[str] = []
    place = 0
    while len(found) < 2:
        start = _SEPARATOR.match(suffix, place)
        head = _HEAD.match(suffix, start.end() if start and found else place)
        if head is None or (found and head.lastgroup not in _MAJOR_GROUPS):
            break
        found.append(_GROUPS[str(head.lastgroup)])
        place = head.end()
    return " ".join(found), place


_GROUPS: Final = {f"q{number}": quality for number, quality in enumerate(_QUALITIES)}
_MAJOR_GROUPS: Final = frozenset(group for group, quality in _GROUPS.items() if quality in {"maj", "Δ"})
_HEAD: Final = re.compile(
    "|".join(f"(?P<{group}>{_QUALITIES[quality]})" for group, quality in _GROUPS.items()), re.IGNORECASE
)


def _extra_degree(word: str) -> Degree:
    """``"add9"``, ``"add#7"`` or ``"alter#5"`` as a degree."""
    match = re.fullmatch(r"(add|alter)(#?)(\d+)", word)
    if match is None:
        raise ValueError(word)
    return Degree(int(match[3]), 1 if match[2] else 0, "add" if match[1] == "add" else "alter")


def _modified(
    kind: str, degrees: list[Degree], suffix: str, place: int, extension: str
) -> tuple[str, tuple[Degree, ...]]:
    """Read the modifiers from `place` on into the kind and its degrees."""
    while True:
        gap = _SEPARATOR.match(suffix, place)
        start = gap.end() if gap else place
        if start == len(suffix):
            return kind, tuple(dict.fromkeys(degrees))
        match = _MODIFIER.match(suffix, start)
        if match is None or (match["bare"] and start == place):
            raise _UnreadableError
        if match["sus"] is not None:
            kind, degrees = _suspended(kind, degrees, match["tone"])
        else:
            for degree in _degrees_of(match, kind, degrees, extension):
                plain = _PLAIN_KINDS.get((kind, degree))
                if plain and not any(known.value == degree.value for known in degrees):
                    kind = plain
                else:
                    degrees.append(degree)
        place = match.end()


def _degrees_of(match: re.Match[str], kind: str, known: list[Degree], extension: str) -> tuple[Degree, ...]:
    """The degrees that one modifier stands for."""
    if match["omit"]:
        value = int(match["gone"])
        if value not in implied_degrees(kind):
            raise _UnreadableError
        return (Degree(value, 0, "subtract"),)
    if match["alt"]:
        if kind != "dominant":
            raise _UnreadableError
        return _ALTERED
    if match["add"]:
        return (Degree(int(match["added"]), {"b": -1, "#": 1, "": 0}[match["add_sign"]], "add"),)
    if match["bare"]:
        return (Degree(int(match["bare"]), 0, "add"),)
    if match["sharp_five"]:
        if extension not in {"", "7", "9"}:
            raise _UnreadableError
        return (_alteration(kind, known, 5, 1),)
    sign = "#" if match["sign"] in "#+" else "b"
    if sign + match["altered"] not in _ALTERATIONS:
        raise _UnreadableError
    value = _COMPOUND.get(sign + match["altered"], int(match["altered"]))
    if value == 7:
        return (Degree(7, 1, "add"),) if kind == "minor" else _refuse()
    return (_alteration(kind, known, value, 1 if sign == "#" else -1),)


def _refuse() -> tuple[Degree, ...]:
    raise _UnreadableError


def _alteration(kind: str, known: list[Degree], value: int, alter: int) -> Degree:
    """A raised or lowered degree: altered where the kind has it untouched, else added."""
    untouched = value in implied_degrees(kind) and not any(degree.value == value for degree in known)
    if value == 5 and kind in {"augmented", "augmented-seventh", "diminished", "half-diminished"}:
        untouched = False
    return Degree(value, alter, "alter" if untouched else "add")


_SUSPENDED_OVER: Final[dict[str, tuple[Degree, ...]]] = {
    "major": (),
    "major-sixth": (Degree(6, 0, "add"),),
    "dominant": (Degree(7, 0, "add"),),
    "dominant-ninth": (Degree(7, 0, "add"), Degree(9, 0, "add")),
    "dominant-11th": (Degree(7, 0, "add"), Degree(9, 0, "add")),
    "dominant-13th": (Degree(7, 0, "add"), Degree(9, 0, "add"), Degree(13, 0, "add")),
    "major-seventh": (Degree(7, 1, "add"),),
    "major-ninth": (Degree(7, 1, "add"), Degree(9, 0, "add")),
    "minor-seventh": (Degree(7, 0, "add"),),
}


def _suspended(kind: str, degrees: list[Degree], tone: str) -> tuple[str, list[Degree]]:
    if kind not in _SUSPENDED_OVER:
        raise _UnreadableError
    base = "suspended-second" if tone == "2" else "suspended-fourth"
    kept = list(_SUSPENDED_OVER[kind])
    for degree in degrees:
        clash = next((place for place, other in enumerate(kept) if other.value == degree.value), None)
        if degree.type == "alter" and clash is not None:
            kept[clash] = Degree(degree.value, degree.alter, "add")
        else:
            kept.append(degree)
    if tone in {"24", "2/4"}:
        kept.append(Degree(2, 0, "add"))
    if tone == "7":
        kept.insert(0, Degree(7, 0, "add"))
    return base, kept


def _suffix_text(kind: str, degrees: tuple[Degree, ...]) -> str:
    """The trade's text for a kind and its degrees: ``"7(b9,#11)"``, ``"9sus4"``, ``"6/9"``."""
    if (kind, degrees) in _COMBINED:
        return _COMBINED[kind, degrees]
    text, rest = _TEXTS[kind], list(degrees)
    if kind.startswith("suspended"):
        text, rest = _suspended_text(text, rest)
    words = [_degree_text(degree) for degree in rest]
    if len(words) == 1 and (text or words[0].startswith(("add", "no"))):
        return text + words[0]
    return text + (f"({','.join(words)})" if words else "")


def _suspended_text(text: str, degrees: list[Degree]) -> tuple[str, list[Degree]]:
    """Move an added seventh, ninth and thirteenth of a suspended chord to the front: ``"13sus4"``."""
    seventh, ninth, thirteenth = Degree(7, 0, "add"), Degree(9, 0, "add"), Degree(13, 0, "add")
    if Degree(7, 1, "add") in degrees:
        return "maj7" + text, [degree for degree in degrees if degree != Degree(7, 1, "add")]
    for number, taken in (("13", {seventh, ninth, thirteenth}), ("9", {seventh, ninth}), ("7", {seventh})):
        if taken <= set(degrees):
            return number + text, [degree for degree in degrees if degree not in taken]
    return text, degrees


def _degree_text(degree: Degree) -> str:
    if degree.type == "subtract":
        return f"no{degree.value}"
    sign = "#" * degree.alter if degree.alter > 0 else "b" * -degree.alter
    wanted = degree.type == "add" and f"{sign}{degree.value}" not in _ALTERATIONS - _COMPOUND.keys()
    return f"{'add' if wanted else ''}{sign}{degree.value}"
