"""What the information fields of an ABC tune mean: key, metre, note length, tempo, voice, parts and plain texts.

Source: the abc music standard 2.1, sections 3.1, 4.6, 7, 8.2 and 10.1. Each function takes the field's text and
raises `UnreadableError` with the reason; the caller knows the place.

Known deviations: `K:HP` has no signature on paper, but the pipes sound F sharp and C sharp, and so do we. A
signature with accidentals that no mode has keeps the mode's signature, and the notes get the accidentals, as the
standard advises to software without such signatures. German note names (H, Es, As) are understood.
"""

from __future__ import annotations

import html
import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from fioritura.errors import TuneError
from fioritura.notation.abc.faults import UnreadableError
from fioritura.notation.assemble import MAX_QUARTERS_PER_MINUTE, MIN_QUARTERS_PER_MINUTE
from fioritura.theory.key import MODES, Key, Mode
from fioritura.theory.metre import WHOLE, Metre
from fioritura.theory.pitch import LETTERS
from fioritura.words import Message, message

__all__ = [
    "AbcKey",
    "AbcTempo",
    "StaffProperties",
    "default_unit",
    "part_order",
    "read_key",
    "read_metre",
    "read_properties",
    "read_tempo",
    "read_unit",
    "text_string",
]

MAX_PARTS: Final = 64

_KEY: Final = re.compile(r"(?P<tonic>[AE]s(?![a-z])|[A-H])?(?P<accidental>[#b♯♭]?)\s*(?P<mode>[A-Za-z]*)(?P<rest>.*)")
_GERMAN: Final = {"H": "B", "Es": "Eb", "As": "Ab"}
_MODE_STARTS: Final[dict[str, Mode]] = {mode[:3]: mode for mode in MODES} | {
    "m": "minor",
    "ion": "major",
    "aeo": "minor",
    "": "major",
}
_KNOWN_MODES: Final = ("maj", "min", "m", "dor", "phr", "lyd", "mix", "loc", "exp")
_ACCIDENTALS: Final = {"__": -2, "_": -1, "=": 0, "^": 1, "^^": 2}
_MODIFIER: Final = re.compile(r"(?<![=\w])(__?|=|\^\^?)\s*([A-Ga-g])(?![\w=])")
_PROPERTY: Final = re.compile(r"(\w+)\s*=\s*(\"[^\"]*\"|\S+)")
_CLEF: Final = re.compile(
    r"(?:^|\s|=)(?:treble|bass|alto|tenor|baritone|soprano|mezzosoprano|perc|none)?\d?([+-]8)(?:va)?\b"
)
_CLEF_NAMES: Final = ("treble", "bass", "alto", "tenor", "perc", "clef", "none")
_METRE: Final = re.compile(r"\(?(\d+(?:\s*\+\s*\d+)*)\)?\s*/\s*(\d+)(.*)")
_TEMPO: Final = re.compile(r"(?P<beats>(?:\d{1,3}\s*/\s*\d{1,3}\s*){1,8})=\s*(?P<rate>\d{1,5}(?:\.\d+)?)")
_UNIT_TEMPO: Final = re.compile(r"(?:[A-Ga-g](?P<units>\d{0,3})\s*=)?\s*(?P<rate>\d{1,5}(?:\.\d+)?)")
_QUOTED: Final = re.compile(r"\"([^\"]*)\"?")


@dataclass(frozen=True, slots=True)
class AbcKey:
    """A key signature as ABC can write it: the nearest `Key`, and what it does to each letter (0-6 for C-B)."""

    key: Key
    alters: tuple[int, ...]
    warning: Message | None = None


@dataclass(frozen=True, slots=True)
class AbcTempo:
    """The words of a tempo and its rate; 0 where it has none."""

    quarters_per_minute: float
    words: str


@dataclass(frozen=True, slots=True)
class StaffProperties:
    """What a K: or V: field says of the staff; None where it is silent.

    `octaves` moves the notes as they are written, `semitones` leads from written to sounding pitch (section 4.6).
    """

    name: str | None = None
    octaves: int | None = None
    semitones: int | None = None
    is_bass: bool = False
    is_percussion: bool = False


def read_key(text: str, *, is_lenient: bool = False) -> AbcKey | None:
    """The signature of a K: field; None when the field names only a clef or other staff properties.

    With `is_lenient` an unknown mode is read as major, with a warning.

    Raises:
        UnreadableError: no key, or one with more than seven sharps or flats.
    """
    text = text.strip()
    if text[:2] == "Hp" or text[:2] == "HP":
        return _signed(Key.of("A", "mixolydian"))
    if not text or text.lower().startswith("none"):
        return _signed(Key(0))
    match = _KEY.match(text)
    if not match or not match["tonic"]:
        if text.lower().startswith(_CLEF_NAMES) or _PROPERTY.match(text):
            return None
        if _MODIFIER.match(text):
            return _modified(Key(0), _signed(Key(0)).alters, text)
        raise UnreadableError("abc-no-key")
    tonic = _GERMAN.get(match["tonic"], match["tonic"]) + match["accidental"]
    mode, rest = match["mode"].lower(), match["rest"]
    if mode.startswith(_CLEF_NAMES) or (rest.startswith("=") and mode[:3] not in _MODE_STARTS):
        mode, rest = "", ""
    if rest[:1].strip(" \t=^_") and not is_lenient:
        raise UnreadableError("abc-after-key", given=rest[:10].strip())
    is_guessed = match["tonic"] in _GERMAN
    if is_lenient and mode != "exp" and mode[:3] not in _MODE_STARTS:
        mode, is_guessed = "", True
    key = _key_of(tonic, "major" if mode == "exp" else _mode(mode))
    read = _modified(key, (0,) * 7 if mode == "exp" else _signed(key).alters, rest)
    guess = message("abc-key-guessed", given=f"K:{text}", key=read.key)
    return AbcKey(read.key, read.alters, guess) if is_guessed else read


def _mode(text: str) -> Mode:
    mode = _MODE_STARTS.get(text[:3])
    if mode is None:
        raise UnreadableError("abc-no-mode", given=text, known=_KNOWN_MODES)
    return mode


def _key_of(tonic: str, mode: Mode) -> Key:
    try:
        return Key.of(tonic, mode)
    except TuneError as error:
        raise UnreadableError(error.message) from None


def _signed(key: Key) -> AbcKey:
    return AbcKey(key, tuple(key.alter(letter) for letter in range(7)))


def _modified(key: Key, alters: tuple[int, ...], text: str) -> AbcKey:
    """The signature with its modifying accidentals; a mode on the same tonic that fits takes its place."""
    changed = list(alters)
    for sign, letter in _MODIFIER.findall(text):
        changed[LETTERS.index(letter.upper())] = _ACCIDENTALS[sign]
    final = tuple(changed)
    if final == _signed(key).alters:
        return AbcKey(key, final)
    for mode, fifths in MODES.items():
        other = key.tonic.fifths + fifths
        if -7 <= other <= 7 and _signed(Key(other, mode)).alters == final:
            return AbcKey(Key(other, mode), final)
    return AbcKey(key, final, message("abc-key-changed", key=key))


def read_properties(text: str) -> StaffProperties:
    """Name, octave, transposition and clef from the text of a K: or V: field."""
    found = {name.lower(): value.strip('"') for name, value in _PROPERTY.findall(text)}
    octave_clef = _CLEF.search(text)
    octaves = _integer(found.get("octave"), 4)
    if octave_clef:
        octaves = (octaves or 0) + (1 if octave_clef[1] == "+8" else -1)
    return StaffProperties(
        name=found.get("name", found.get("nm")),
        octaves=octaves,
        semitones=_integer(found.get("transpose", found.get("t")), 36),
        is_bass=re.search(r"\bbass\b", text) is not None,
        is_percussion=re.search(r"\bperc\b", text) is not None,
    )


def _integer(text: str | None, limit: int) -> int | None:
    if text is None or not re.fullmatch(r"[+-]?\d{1,3}", text):
        return None
    return max(-limit, min(limit, int(text)))


def read_metre(text: str) -> tuple[Metre | None, Message | None]:
    """The metre of an M: field, None for free metre, with a warning where something was left out.

    Raises:
        UnreadableError: not a metre, or one outside 1-32 beats over 1-32.
    """
    text = text.strip()
    lowered = text.lower()
    if not text or lowered.startswith(("none", "free", "frei")):
        return None, None
    if text in {"C", "C|", "c", "c|"}:
        return Metre.parse(text.upper()), None
    match = _METRE.match(text)
    if not match:
        raise UnreadableError("abc-no-metre")
    try:
        metre = Metre.parse(f"{match[1].replace(' ', '')}/{match[2]}")
    except TuneError as error:
        raise UnreadableError(error.message) from None
    rest = match[3].strip()
    return metre, message("abc-after-metre", given=rest, metre=str(metre)) if rest else None


def default_unit(metre: Metre | None) -> Fraction:
    """The unit note length in ticks where no L: says it: an eighth, or a sixteenth below 3/4 (section 3.1.7)."""
    return Fraction(WHOLE, 16 if metre and metre.bar_ticks * 4 < WHOLE * 3 else 8)


def read_unit(text: str) -> Fraction:
    """The unit note length in ticks of an L: field.

    Raises:
        UnreadableError: not a part of a whole note between 1/512 and 4.
    """
    match = re.fullmatch(r"(\d{1,3})\s*(?:/\s*(\d{1,3}))?", text.strip())
    value = Fraction(int(match[1]), int(match[2] or 1)) if match and match[2] not in {"0", "00", "000"} else None
    if value is None or not Fraction(1, 512) <= value <= 4:
        raise UnreadableError("abc-no-unit")
    return value * WHOLE


def read_tempo(text: str, unit: int | Fraction) -> AbcTempo:
    """The tempo of a Q: field; `unit` is the unit note length in ticks, which the oldest form counts.

    Raises:
        UnreadableError: neither a rate nor a text, or a rate outside 20-400 quarter notes a minute.
    """
    words = "; ".join(text_string(quoted) for quoted in _QUOTED.findall(text))
    bare = _QUOTED.sub(" ", text).strip()
    rate = _rate(bare, unit)
    if rate is None:
        if "=" in bare or any(character.isdecimal() for character in bare):
            raise UnreadableError("abc-no-tempo")
        return AbcTempo(0.0, "; ".join(filter(None, (words, text_string(bare)))))
    if not MIN_QUARTERS_PER_MINUTE <= rate <= MAX_QUARTERS_PER_MINUTE:
        raise UnreadableError(
            "abc-tempo-outside", given=f"{rate:g}", low=MIN_QUARTERS_PER_MINUTE, high=MAX_QUARTERS_PER_MINUTE
        )
    return AbcTempo(rate, words)


def _rate(text: str, unit: int | Fraction) -> float | None:
    """Quarter notes a minute: of ``"3/8=80"`` or ``"1/4 1/8=80"``, and of ``"120"`` or ``"C3=40"`` (section 10.1)."""
    if match := _TEMPO.search(text):
        beats = re.findall(r"(\d+)\s*/\s*(\d+)", match["beats"])
        whole_notes = sum((Fraction(int(upper), int(lower) or 1) for upper, lower in beats), Fraction(0))
        return float(whole_notes * 4) * float(match["rate"])
    if match := _UNIT_TEMPO.fullmatch(text):
        return float(Fraction(4 * unit, WHOLE) * int(match["units"] or 1)) * float(match["rate"])
    return None


def part_order(text: str) -> list[str]:
    """The parts in playing order from a header's P: field: ``"(AB)3.C"`` is A B A B A B C (section 3.1.9).

    Raises:
        UnreadableError: not such an order, or one of more than 64 parts.
    """
    pieces = re.findall(r"[A-Za-z]|\d+|[()]|[^.\s]", text)
    stack: list[list[str]] = [[]]
    last: list[str] = []
    for piece in pieces:
        if piece == "(":
            stack.append([])
            last = []
        elif piece == ")" and len(stack) > 1:
            last = stack.pop()
            stack[-1] += last
        elif piece.isdecimal() and last and int(piece[:4]) >= 1:
            _require_few(len(last) * int(piece[:4]))
            stack[-1] += last * (int(piece[:4]) - 1)
            last = []
        elif piece.isalpha():
            last = [piece]
            stack[-1] += last
        else:
            raise UnreadableError("abc-no-part-order")
        _require_few(sum(map(len, stack)))
    if len(stack) != 1:
        raise UnreadableError("abc-bracket-open")
    return stack[0]


def _require_few(count: int) -> None:
    if count > MAX_PARTS:
        raise UnreadableError("abc-too-many-parts", limit=MAX_PARTS)


_ACCENTS: Final = {
    "`": "\u0300",
    "'": "\u0301",
    "^": "\u0302",
    "~": "\u0303",
    '"': "\u0308",
    "c": "\u0327",
    "u": "\u0306",
    "v": "\u030c",
    "H": "\u030b",
}
_LETTERS: Final = {
    "AA": "Å",
    "aa": "å",
    "/O": "Ø",
    "/o": "ø",
    "ss": "ß",
    "AE": "Æ",
    "ae": "æ",
    "OE": "Œ",
    "oe": "œ",
    "DH": "Ð",
    "dh": "ð",
    "TH": "Þ",
    "th": "þ",
}
_ESCAPE: Final = re.compile(
    r"\\(?:u(?P<short>[0-9A-Fa-f]{4})|U(?P<long>[0-9A-Fa-f]{8})|(?P<letter>AA|aa|/[Oo]|ss|AE|ae|OE|oe|DH|dh|TH|th)"
    r"|(?P<accent>[`'^~\"cuvH])(?P<base>[A-Za-z])|(?P<plain>[\\%&]))"
)


def text_string(text: str) -> str:
    r"""A text string with its escapes, HTML entities and font marks resolved (section 8.2): ``\'e`` is é."""
    if "\\" in text:
        text = _ESCAPE.sub(_unescaped, text)
    if "&" in text:
        text = html.unescape(text)
    return "".join(character if character.isprintable() else " " for character in text).strip()


def _unescaped(match: re.Match[str]) -> str:
    if code := match["short"] or match["long"]:
        number = int(code, 16)
        return chr(number) if number <= 0x10FFFF and not 0xD800 <= number <= 0xDFFF else match[0]
    if match["accent"]:
        return unicodedata.normalize("NFC", match["base"] + _ACCENTS[match["accent"]])
    return _LETTERS[match["letter"]] if match["letter"] else match["plain"]
