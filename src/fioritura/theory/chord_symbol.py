"""Chord symbols: one table of qualities reads every common spelling, and writes the trade's own.

A symbol is a root, a quality (``m``, ``maj``, ``°`` ...) with an extension (``7``, ``9`` ...), modifiers (``b5``,
``add9``, ``sus4``, ``no3``, ``alt``) in or out of parentheses, and a bass after a stroke. An accidental after the
root belongs to the root ("Cb5" is the power chord on C flat). What can't be read without a guess is refused: "C2"
(added or suspended?), "C-5" (minor or flat?), "g7" (small letters mean minor chords to some), free text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Final

from fioritura.errors import TuneError
from fioritura.theory.chord import KINDS, Chord, Degree, DegreeType, implied_degrees, stacked
from fioritura.theory.pitch import Interval, NoteName

__all__ = ["chord_from_kind", "read_chord"]

_GLYPHS: Final = str.maketrans(
    {"♭": "b", "♯": "#", "♮": None, "𝄫": "bb", "𝄪": "##", "−": "-", "–": "-", "△": "Δ", "∆": "Δ", "^": "Δ"}
    | {"º": "°", "˚": "°", "Ø": "ø", "⌀": "ø", "∅": "ø", "＋": "+", "[": "(", "]": ")", "\N{NO-BREAK SPACE}": " "}
)
_NO_CHORD: Final = re.compile(r"n\.?\s*c\.?|no\s*chord", re.IGNORECASE)
_ROOT: Final = re.compile(r"([A-Ga-g])(bb|##|b|#|)")
_BASS: Final = re.compile(r"\s*/\s*(?:([A-Ga-g])(bb|##|b|#|)|([a-g])\+)$")
"""The bass; in some books a small letter with a plus sign is a sharp one ("D/f+")."""

_QUALITIES: Final = {
    "ø": r"ø|half[- ]?dim(?:inished)?|hdim|h(?=7)",
    "°": r"°|diminished|dim|o(?![a-z])",
    "aug": r"augmented|aug|\+",
    "m": r"minor|min|mi|(?-i:m)(?!a)|(?-i:m)(?=add)|-",
    "maj": r"major|maj|ma(?!dd)|(?-i:M)",
    "Δ": r"Δ|j(?=7)",
    "dom": r"dom(?=\s*\d)",
}
"""Each quality and how it is spelled; small and capital letters mean the same except in M (major) and m (minor)."""

_GROUPS: Final = {f"q{number}": quality for number, quality in enumerate(_QUALITIES)}
_QUALITY: Final = re.compile(
    "|".join(f"(?P<{group}>{_QUALITIES[quality]})" for group, quality in _GROUPS.items()), re.IGNORECASE
)
_EXTENSION: Final = re.compile(r"(?:\s*|\((?=7\)))(7M(?![a-z])|(?:69|13|11|9|7|6|5)(?!\d))")

_DOMINANTS: Final = {"7": "dominant", "9": "dominant-ninth", "11": "dominant-11th", "13": "dominant-13th"}
_MAJORS: Final = {"7": "major-seventh", "9": "major-ninth", "11": "major-11th", "13": "major-13th"}
_MINORS: Final = {"7": "minor-seventh", "9": "minor-ninth", "11": "minor-11th", "13": "minor-13th"}
_SIXTHS: Final = {"6": "major-sixth", "69": "major-sixth add9"}

_SYMBOLS: Final[dict[str, dict[str, str]]] = {
    "": {"": "major", "5": "power", "7M": "major-seventh"} | _SIXTHS | _DOMINANTS,
    "dom": _DOMINANTS,
    "maj": {"": "major"} | _SIXTHS | _MAJORS,
    "Δ": {"": "major-seventh"} | _MAJORS,
    "m": {"": "minor", "6": "minor-sixth", "69": "minor-sixth add9", "7M": "major-minor"} | _MINORS,
    "m maj": {
        "7": "major-minor",
        "9": "major-minor add9",
        "11": "major-minor add9 add11",
        "13": "major-minor add9 add11 add13",
    },
    "m Δ": {"": "major-minor", "7": "major-minor", "9": "major-minor add9"},
    "°": {
        "": "diminished",
        "7": "diminished-seventh",
        "9": "diminished-seventh add9",
        "11": "diminished-seventh add9 add11",
    },
    "° maj": {"7": "diminished add#7"},
    "° Δ": {"": "diminished add#7", "7": "diminished add#7"},
    "ø": {
        "": "half-diminished",
        "7": "half-diminished",
        "9": "half-diminished add9",
        "11": "half-diminished add9 add11",
    },
    "aug": {"": "augmented", "5": "augmented", "7": "augmented-seventh", "9": "augmented-seventh add9"},
    "aug maj": {"7": "major-seventh alter#5", "9": "major-ninth alter#5"},
    "aug Δ": {"": "major-seventh alter#5", "7": "major-seventh alter#5"},
}
"""Quality, then extension, to MusicXML kind and degrees: the one table that gives a symbol its meaning."""

_MODIFIER: Final = re.compile(
    r"(?P<omit>(?:omit|no)\s*(?:13|11|9|7|5|3|1)(?!\d)(?:rd|th)?)"
    r"|(?P<sus>sus(?:pended)?\s*(?:2/?4|2|4|7|)(?!\d))"
    r"|(?P<alt>alt(?:ered)?7?)"
    r"|(?P<add>add\s*(?-i:[b#]?)(?:13|11|9|7|6|4|2)(?!\d))"
    r"|(?P<alter>(?-i:[b#+-])(?:13|11|9|7|6|5|4)(?!\d))"
    r"|(?P<sharp_five>(?:\+|aug)(?!\d))"
    r"|(?P<bare>(?:13|11|9)(?!\d))",
    re.IGNORECASE,
)
_SEPARATOR: Final = re.compile(r"[\s,/()]*")

_ALTERATIONS: Final = {
    "b5": (5, -1),
    "#5": (5, 1),
    "b9": (9, -1),
    "#9": (9, 1),
    "#11": (11, 1),
    "#4": (11, 1),
    "b13": (13, -1),
    "b6": (13, -1),
}
"""The alterations of the trade as degree and semitones."""

_ALTERED: Final = (Degree(5, -1, "alter"), Degree(5, 1, "add"), Degree(9, -1, "add"), Degree(9, 1, "add"))
_MAJOR_SEVENTH: Final = Degree(7, 1, "add")
_PERFECT_FIFTH: Final = Interval(4, 7)

_SAME_AS: Final = {
    ("minor-seventh", Degree(5, -1, "alter")): "half-diminished",
    ("minor", Degree(5, -1, "alter")): "diminished",
    ("major", Degree(5, 1, "alter")): "augmented",
    ("dominant", Degree(5, 1, "alter")): "augmented-seventh",
    ("minor", _MAJOR_SEVENTH): "major-minor",
}
"""Alterations that make another kind."""

_SUSPENDED: Final = {
    "major": "",
    "major-sixth": "add6",
    "suspended-second": "add2",
    "dominant": "add7",
    "augmented-seventh": "add7 alter#5",
    "dominant-ninth": "add7 add9",
    "dominant-11th": "add7 add9",
    "dominant-13th": "add7 add9 add13",
    "major-seventh": "add#7",
    "major-ninth": "add#7 add9",
    "minor-seventh": "add7",
}
"""What a suspended chord keeps of the kind that is suspended."""

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
"""The trade's text for each kind."""

_COMBINED_TEXTS: Final = {
    ("dominant", _ALTERED): "7alt",
    ("diminished", (_MAJOR_SEVENTH,)): "dim(maj7)",
    ("major-minor", (Degree(9, 0, "add"),)): "m(maj9)",
    ("augmented-seventh", (Degree(9, 0, "add"),)): "9#5",
    ("major-sixth", (Degree(9, 0, "add"),)): "6/9",
    ("minor-sixth", (Degree(9, 0, "add"),)): "m6/9",
}
_NAMED: Final = {
    _TEXTS[kind]: kind for kind in ("Neapolitan", "Italian", "French", "German", "pedal", "Tristan", "other")
}


class _UnreadableError(Exception):
    """The symbol holds something that can't be read."""


@lru_cache(maxsize=4096)
def read_chord(text: str) -> Chord | None:
    """Read a chord symbol; None for "no chord" (N.C.).

    Raises:
        TuneError: the text is no chord symbol that can be read without a guess.
    """
    plain = text.translate(_GLYPHS).strip()
    if _NO_CHORD.fullmatch(plain):
        return None
    try:
        return _read(plain)
    except _UnreadableError:
        raise TuneError("no-chord-symbol", given=text) from None


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
    if kind not in KINDS:
        raise TuneError("no-chord-kind", given=kind, known=(*KINDS, "none"))
    degrees = tuple(degrees)
    wrong = next((degree.value for degree in degrees if not 1 <= degree.value <= 13), None)
    if wrong is not None:
        raise TuneError("chord-degree-outside", degree=wrong, root=root)
    suffix = " ".join(text.translate(_GLYPHS).split())
    if not suffix or not _says(root, suffix, stacked(kind, degrees)):
        suffix = _suffix_text(kind, degrees)
    return _chord(root, kind, degrees, bass, suffix)


def _says(root: NoteName, suffix: str, intervals: tuple[Interval, ...]) -> bool:
    try:
        chord = read_chord(f"{root}{suffix}")
    except TuneError:
        return False
    return chord is not None and chord.root == root and chord.bass is None and chord.intervals == intervals


def _chord(root: NoteName, kind: str, degrees: tuple[Degree, ...], bass: NoteName | None, suffix: str) -> Chord:
    lower = None if bass is None or bass.pitch_class == root.pitch_class else bass
    text = f"{root}{suffix}" + (f"/{lower}" if lower else "")
    return Chord(root, stacked(kind, degrees), lower, text, kind, degrees)


def _read(symbol: str) -> Chord:
    root = _ROOT.match(symbol)
    if root is None:
        raise _UnreadableError
    bass = _BASS.search(symbol, root.end())
    suffix = " ".join(symbol[root.end() : bass.start() if bass else None].split())
    _check_root(root[1], root[2], suffix)
    if suffix.endswith(("/", ",")):
        raise _UnreadableError
    kind, degrees = _meaning(suffix)
    low = NoteName.parse(f"{bass[3]}#" if bass[3] else bass[1] + bass[2]) if bass else None
    return _chord(NoteName.parse(root[0]), kind, degrees, low, suffix)


def _check_root(letter: str, accidental: str, suffix: str) -> None:
    """Refuse a root that may mean two things: a small letter without its quality, a double flat before a number."""
    if letter.islower() and not re.match(r"m|-|dim|°|ø|sus|Δ", suffix):
        raise _UnreadableError
    if len(accidental) == 2 and re.match(r"[b#]?(5|6|9|11|13)", suffix):
        raise _UnreadableError


def _meaning(suffix: str) -> tuple[str, tuple[Degree, ...]]:
    """The kind and degrees of what stands between root and bass."""
    if suffix in _NAMED:
        return _NAMED[suffix], ()
    quality, place = _quality(suffix)
    match = _EXTENSION.match(suffix, place)
    extension = match[1] if match else ""
    if not quality and not extension and suffix.lower().startswith(("alt", "(alt")):
        extension = "7"
    meaning = _SYMBOLS.get(quality, {}).get(extension)
    if meaning is None:
        raise _UnreadableError
    kind, *words = meaning.split()
    return _modified(kind, _degrees(words), suffix, match.end() if match else place, extension)


def _quality(suffix: str) -> tuple[str, int]:
    """The quality at the head of a suffix, such as ``"m maj"``, and where it ends."""
    first = _QUALITY.match(suffix, suffix.startswith("("))
    if first is None or (first.start() and first[0] in "+-"):
        return "", 0
    quality = _GROUPS[str(first.lastgroup)]
    second = _QUALITY.match(suffix, _after_separator(suffix, first.end()))
    added = _GROUPS[str(second.lastgroup)] if second else ""
    if second and added in {"maj", "Δ"}:
        return f"{quality} {added}", second.end()
    return quality, first.end()


def _after_separator(suffix: str, place: int) -> int:
    match = _SEPARATOR.match(suffix, place)
    return match.end() if match else place


def _degrees(words: Iterable[str]) -> list[Degree]:
    """``"add9"``, ``"add#7"`` and ``"alter#5"`` as degrees."""
    found: list[Degree] = []
    for word in words:
        type_: DegreeType = "add" if word.startswith("add") else "alter"
        number = word.removeprefix(type_)
        found.append(Degree(int(number.lstrip("#")), number.count("#"), type_))
    return found


def _modified(
    kind: str, degrees: list[Degree], suffix: str, place: int, extension: str
) -> tuple[str, tuple[Degree, ...]]:
    """Read the modifiers from `place` on into the kind and its degrees."""
    while (start := _after_separator(suffix, place)) < len(suffix):
        match = _MODIFIER.match(suffix, start)
        if match is None or (match["bare"] and start == place) or (match["sharp_five"] and len(extension) == 2):
            raise _UnreadableError
        if match["sus"]:
            kind, degrees = _suspended(kind, degrees, re.sub(r"\D", "", match[0]))
        elif match["alt"]:
            kind, degrees = _altered(kind, degrees)
        else:
            degree = _degree_of(match, kind, degrees)
            is_first = all(known.value != degree.value for known in degrees)
            if is_first and (kind, degree) in _SAME_AS:
                kind = _SAME_AS[kind, degree]
            else:
                degrees.append(degree)
        place = match.end()
    return kind, tuple(dict.fromkeys(degrees))


def _degree_of(match: re.Match[str], kind: str, known: list[Degree]) -> Degree:
    """The degree that a modifier stands for."""
    number = int(re.sub(r"\D", "", match[0]) or 5)
    if match["omit"]:
        if number not in implied_degrees(kind):
            raise _UnreadableError
        return Degree(number, 0, "subtract")
    if match["add"]:
        sign = match[0][3:].strip()[0]
        return Degree(number, {"b": -1, "#": 1}.get(sign, 0), "add")
    if match["bare"]:
        return Degree(number, 0, "add")
    sign = "b" if match[0][0] in "b-" else "#"
    if sign == "#" and number == 7 and kind == "minor":
        return _MAJOR_SEVENTH
    if f"{sign}{number}" not in _ALTERATIONS:
        raise _UnreadableError
    value, alter = _ALTERATIONS[f"{sign}{number}"]
    return Degree(value, alter, "alter" if _is_untouched(value, kind, known) else "add")


def _is_untouched(value: int, kind: str, known: list[Degree]) -> bool:
    """True when the kind holds the degree in its plain form and nothing has changed it."""
    if value == 5 and _PERFECT_FIFTH not in KINDS[kind]:
        return False
    return value in implied_degrees(kind) and all(degree.value != value for degree in known)


def _altered(kind: str, degrees: list[Degree]) -> tuple[str, list[Degree]]:
    if kind != "dominant" or degrees:
        raise _UnreadableError
    return kind, list(_ALTERED)


def _suspended(kind: str, degrees: list[Degree], tone: str) -> tuple[str, list[Degree]]:
    """The kind suspended by a fourth or second (`tone` 4, 2, 24 or none; 7 adds the seventh)."""
    if kind not in _SUSPENDED:
        raise _UnreadableError
    kept = _degrees(_SUSPENDED[kind].split())
    if tone == "7" and kind == "major":
        kept = [Degree(7, 0, "add")]
    for degree in degrees:
        if degree.type == "alter":
            kept = [other for other in kept if other.value != degree.value]
            degree = Degree(degree.value, degree.alter, "alter" if degree.value == 5 else "add")
        kept.append(degree)
    if tone == "24":
        kept.append(Degree(2, 0, "add"))
    return "suspended-second" if tone == "2" else "suspended-fourth", kept


def _suffix_text(kind: str, degrees: tuple[Degree, ...]) -> str:
    """The trade's text for a kind and its degrees: ``"7(b9,#11)"``, ``"9sus4"``, ``"6/9"``."""
    if (kind, degrees) in _COMBINED_TEXTS:
        return _COMBINED_TEXTS[kind, degrees]
    text, rest = _TEXTS[kind], degrees
    if kind.startswith("suspended"):
        front, rest = _front_of_suspended(degrees)
        text = front + text
    words = [_degree_text(degree) for degree in rest]
    if len(words) == 1 and (text or words[0].startswith(("add", "no"))):
        return text + words[0]
    return text + (f"({','.join(words)})" if words else "")


def _front_of_suspended(degrees: tuple[Degree, ...]) -> tuple[str, tuple[Degree, ...]]:
    """What stands before "sus" for an added seventh, ninth and thirteenth, and the degrees that are left."""
    for front, words in (("13", "add7 add9 add13"), ("9", "add7 add9"), ("7", "add7"), ("maj7", "add#7")):
        taken = set(_degrees(words.split()))
        if taken <= set(degrees):
            return front, tuple(degree for degree in degrees if degree not in taken)
    return "", degrees


def _degree_text(degree: Degree) -> str:
    if degree.type == "subtract":
        return f"no{degree.value}"
    sign = "#" * degree.alter if degree.alter > 0 else "b" * -degree.alter
    is_plain = _ALTERATIONS.get(f"{sign}{degree.value}") == (degree.value, degree.alter)
    return f"{'' if is_plain or degree.type == 'alter' else 'add'}{sign}{degree.value}"
