"""What single MusicXML elements mean: keys, metres, tempos, marks, jumps, lyrics and chord symbols.

Each function takes an element and returns a value of the model; none remembers anything. Element names and
meanings are those of the W3C MusicXML 4.0 report.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from math import lcm
from typing import Final

from lxml import etree

from fioritura.errors import ReadError, TuneError
from fioritura.notation.assemble import RawChord
from fioritura.theory.chord import Chord, Degree, DegreeType
from fioritura.theory.chord_symbol import chord_from_kind, read_chord
from fioritura.theory.key import Mode, mode_named
from fioritura.theory.metre import QUARTER, WHOLE, Metre
from fioritura.theory.pitch import LETTERS, Interval, NoteName, Pitch
from fioritura.tune import LEVEL_MARKS, Feel, Jump, Mark
from fioritura.words import Message, message

__all__ = [
    "at_line",
    "chord_symbol",
    "dynamics_in",
    "ending_numbers",
    "jumps_in",
    "key_and_mode",
    "left_out",
    "lyric_text",
    "marks_on",
    "metre_of",
    "nominal_ticks",
    "number",
    "pitch_of",
    "swing_of",
    "tempo_of",
    "transposition_of",
    "whole_number",
]

Element = etree._Element
Ticks = int | Fraction
"""A length in ticks, kept exact: a file's own divisions may be finer than a tick."""

_DECIMAL: Final = re.compile(r"\s*(-?\d{1,9})(?:\.(\d{0,9}))?\s*")

_LEVELS: Final = {level.value: level for level in LEVEL_MARKS}
_WEDGES: Final = {"crescendo": Mark.CRESCENDO, "diminuendo": Mark.DIMINUENDO}

_NOTE_TYPES: Final[dict[str, Ticks]] = {
    "maxima": 8 * WHOLE,
    "long": 4 * WHOLE,
    "breve": 2 * WHOLE,
    "whole": WHOLE,
    "half": WHOLE // 2,
    "quarter": QUARTER,
    "eighth": QUARTER // 2,
    "16th": QUARTER // 4,
    "32nd": QUARTER // 8,
    "64th": QUARTER // 16,
    "128th": Fraction(QUARTER, 32),
    "256th": Fraction(QUARTER, 64),
}

_MARKS: Final[dict[str, tuple[Mark, ...]]] = {
    "staccato": (Mark.STACCATO,),
    "staccatissimo": (Mark.STACCATO,),
    "spiccato": (Mark.STACCATO,),
    "tenuto": (Mark.TENUTO,),
    "detached-legato": (Mark.TENUTO, Mark.STACCATO),
    "accent": (Mark.ACCENT,),
    "soft-accent": (Mark.ACCENT,),
    "stress": (Mark.ACCENT,),
    "strong-accent": (Mark.MARCATO,),
    "breath-mark": (Mark.BREATH,),
    "caesura": (Mark.BREATH,),
    "scoop": (Mark.SCOOP,),
    "falloff": (Mark.FALL,),
    "doit": (Mark.DOIT,),
    "trill-mark": (Mark.TRILL,),
    "turn": (Mark.TURN,),
    "delayed-turn": (Mark.TURN,),
    "vertical-turn": (Mark.TURN,),
    "inverted-turn": (Mark.INVERTED_TURN,),
    "delayed-inverted-turn": (Mark.INVERTED_TURN,),
    "inverted-vertical-turn": (Mark.INVERTED_TURN,),
    "mordent": (Mark.MORDENT,),
    "inverted-mordent": (Mark.INVERTED_MORDENT,),
    "shake": (Mark.SHAKE,),
    "fermata": (Mark.FERMATA,),
}

_SMUFL_MARKS: Final = (
    (re.compile("scoop", re.IGNORECASE), Mark.SCOOP),
    (re.compile("fall", re.IGNORECASE), Mark.FALL),
    (re.compile("doit", re.IGNORECASE), Mark.DOIT),
    (re.compile("shake", re.IGNORECASE), Mark.SHAKE),
    (re.compile("ghost", re.IGNORECASE), Mark.GHOST),
    (re.compile(r"\broll\b|ornamentirishroll", re.IGNORECASE), Mark.ROLL),
    (re.compile(r"\bcran\b", re.IGNORECASE), Mark.CRAN),
)
_NO_PLACE_IN_MODEL: Final = frozenset(
    {"glissando", "slide", "tremolo", "schleifer", "haydn", "bend", "plop", "smear", "flip"}
)

_DEGREE_TYPES: Final[dict[str, DegreeType]] = {"add": "add", "alter": "alter", "subtract": "subtract"}

_USUAL_STEPS: Final = (0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6)
"""Staff steps of a transposition by 0-11 semitones that gives none (m2, M2, m3, M3, P4, A4, P5, m6, M6, m7, M7)."""

_THIRD: Final = 2
_SEVENTH: Final = 6

_JUMP_WORDS: Final = (
    (re.compile(r"\bd\.?\s?c\b\.?|\bda\s+capo\b", re.IGNORECASE), Jump.DA_CAPO),
    (re.compile(r"\bd\.?\s?s\b\.?|\bdal\s+segno\b", re.IGNORECASE), Jump.DAL_SEGNO),
    (re.compile(r"^\W*fine\W*$", re.IGNORECASE), Jump.FINE),
    (re.compile(r"\bto\s+coda\b", re.IGNORECASE), Jump.TO_CODA),
    (re.compile(r"^\W*coda\W*$", re.IGNORECASE), Jump.CODA),
)
_JUMP_SOUNDS: Final = {
    "segno": Jump.SEGNO,
    "coda": Jump.CODA,
    "tocoda": Jump.TO_CODA,
    "fine": Jump.FINE,
    "dacapo": Jump.DA_CAPO,
    "dalsegno": Jump.DAL_SEGNO,
}


def number(element: Element, path: str, default: Ticks | None = None) -> Ticks:
    """A decimal number below `element`, exact; an int where it is whole.

    Raises:
        ReadError: it is missing (and there is no default) or no number.
    """
    found = element.findtext(path)
    if found is None and default is not None:
        return default
    if found and len(found) < 10 and found.isascii() and found.isdecimal():
        return int(found)
    match = _DECIMAL.fullmatch(found or "")
    if match is None:
        raise _fault(element, path, found)
    whole, part = match[1], (match[2] or "").rstrip("0")
    return Fraction(f"{whole}.{part}") if part else int(whole)


def whole_number(element: Element, path: str, default: int | None = None) -> int:
    """As `number`, for what must be whole.

    Raises:
        ReadError: it is missing (and there is no default) or not a whole number.
    """
    value = number(element, path, default)
    if not isinstance(value, int):
        raise _fault(element, path, element.findtext(path))
    return value


def _fault(element: Element, path: str, text: str | None) -> ReadError:
    if text is None:
        return ReadError(at_line(element, message("xml-element-missing", element=path)))
    return ReadError(at_line(element, message("xml-element-senseless", element=path, given=text.strip()[:40])))


def at_line(element: Element, problem: Message) -> Message:
    """A problem with the line of the file in which it lies."""
    return message("xml-at", line=f"{element.sourceline}", problem=problem)


def pitch_of(note: Element) -> Pitch | None:
    """The written pitch; None for a rest and an unpitched note. A quarter tone goes to the nearest semitone.

    Raises:
        ReadError: a step other than A-G, or a missing or impossible octave or alteration.
    """
    pitch = note.find("pitch")
    if pitch is None:
        return None
    octave = whole_number(pitch, "octave")
    alter = round(number(pitch, "alter", 0))
    if not (-1 <= octave <= 10 and -3 <= alter <= 3):
        raise _fault(pitch, "octave" if -3 <= alter <= 3 else "alter", str(octave if -3 <= alter <= 3 else alter))
    return Pitch(_letter(pitch, "step") + 7 * octave, alter)


def _letter(element: Element, path: str) -> int:
    text = (element.findtext(path) or "").strip()
    if len(text) != 1 or text not in LETTERS:
        raise _fault(element, path, element.findtext(path))
    return LETTERS.index(text)


def nominal_ticks(note: Element) -> Ticks | None:
    """The exact length that note type, dots and tuplet say; None where the type is missing or too fine."""
    length = _NOTE_TYPES.get((note.findtext("type") or "").strip())
    if length is None:
        return None
    for place in range(1, len(note.findall("dot")) + 1):
        length += Fraction(_NOTE_TYPES[(note.findtext("type") or "").strip()], 2**place)
    tuplet = note.find("time-modification")
    if tuplet is not None:
        actual, normal = whole_number(tuplet, "actual-notes"), whole_number(tuplet, "normal-notes")
        if actual <= 0 or normal <= 0:
            raise _fault(tuplet, "actual-notes", str(min(actual, normal)))
        length = Fraction(length * normal, actual)
    return int(length) if length == int(length) else length


def key_and_mode(key: Element) -> tuple[int, Mode | None]:
    """Signature and mode; None for the mode where the file does not say. A signature of single signs counts as none.

    Raises:
        TuneError: more than seven sharps or flats.
    """
    if key.find("fifths") is None:
        return 0, None
    fifths = whole_number(key, "fifths")
    if not -7 <= fifths <= 7:
        raise TuneError(at_line(key, message("xml-key-too-far", count=abs(fifths))))
    text = (key.findtext("mode") or "none").strip().lower()
    if text == "none":
        return fifths, None
    try:
        return fifths, mode_named(text)
    except TuneError:
        return fifths, None


def metre_of(time: Element) -> Metre | None:
    """The metre, composite ones summed; None for senza misura.

    Raises:
        TuneError: a metre outside 1-32 beats over 1-32.
    """
    pairs = list(
        zip(
            [(beats.text or "").strip() for beats in time.findall("beats")],
            [(unit.text or "").strip() for unit in time.findall("beat-type")],
            strict=False,
        )
    )
    if not pairs:
        return None
    metres = [Metre.parse(f"{beats.replace(' ', '')[:20]}/{unit[:20]}") for beats, unit in pairs]
    unit = lcm(*(metre.unit for metre in metres))
    return Metre.parse(f"{sum(metre.beats * unit // metre.unit for metre in metres)}/{unit}")


def transposition_of(transpose: Element) -> Interval:
    """From written to sounding pitch.

    Raises:
        ReadError: it is no number, or more than five octaves.
    """
    semitones = whole_number(transpose, "chromatic", 0)
    octaves = whole_number(transpose, "octave-change", 0)
    if abs(semitones + 12 * octaves) > 60:
        raise _fault(transpose, "chromatic", str(semitones + 12 * octaves))
    folds, rest = divmod(abs(semitones), 12)
    usual = (7 * folds + _USUAL_STEPS[rest]) * (-1 if semitones < 0 else 1)
    steps = whole_number(transpose, "diatonic", usual)
    if abs(Interval(steps, semitones).semitones - Pitch(28).to(Pitch(28 + max(-28, min(28, steps)))).semitones) > 2:
        steps = usual
    return Interval(steps + 7 * octaves, semitones + 12 * octaves)


def tempo_of(direction: Element) -> float | None:
    """Quarter notes a minute, from the sound element or a metronome mark; None without either.

    Raises:
        TuneError: a sound element's tempo is no number.
    """
    for sound in direction.iter("sound"):
        text = sound.get("tempo")
        if text is not None:
            return _tempo_number(str(text), sound)
    for metronome in direction.iter("metronome"):
        unit = _NOTE_TYPES.get((metronome.findtext("beat-unit") or "").strip())
        figures = re.search(r"\d{1,4}(?:\.\d{1,4})?", metronome.findtext("per-minute") or "")
        if unit and figures:
            dots = len(metronome.findall("beat-unit-dot"))
            length = Fraction(unit) * (2 - Fraction(1, 2**dots))
            return float(Fraction(figures[0]) * length / QUARTER)
    return None


def _tempo_number(text: str, sound: Element) -> float:
    match = _DECIMAL.fullmatch(text)
    if match is None:
        raise TuneError(at_line(sound, message("xml-tempo-no-number", given=text[:40])))
    return float(match[0])


def swing_of(direction: Element) -> Feel | None:
    """The feel that a swing element or a metronome equation (two eighths as a triplet) asks for."""
    for swing in direction.iter("swing"):
        if swing.find("straight") is not None:
            return "straight"
        return "swing" if number(swing, "first", 1) > number(swing, "second", 1) else "straight"
    return "swing" if next(direction.iter("metronome-tuplet"), None) is not None else None


def jumps_in(direction: Element) -> tuple[Jump, ...]:
    """Segno, coda, Fine and the like; what its sound element says goes before signs and words."""
    sounds = [jump for sound in direction.iter("sound") for name, jump in _JUMP_SOUNDS.items() if _says(sound, name)]
    if sounds:
        return tuple(dict.fromkeys(sounds))
    found = [jump for name, jump in (("segno", Jump.SEGNO), ("coda", Jump.CODA)) if _has_sign(direction, name)]
    for words in direction.iter("words"):
        text = (words.text or "").strip()
        found += (jump for pattern, jump in _JUMP_WORDS if pattern.search(text))
    shown_with = {Jump.TO_CODA: Jump.CODA, Jump.DAL_SEGNO: Jump.SEGNO}
    beside = {sign for order, sign in shown_with.items() if order in found}
    return tuple(dict.fromkeys(jump for jump in found if jump not in beside))


def _says(sound: Element, name: str) -> bool:
    return str(sound.get(name, "no")).strip().lower() not in {"no", ""}


def dynamics_in(direction: Element) -> tuple[Mark, ...]:
    """The levels (pp to ff) and the hairpins that begin at a direction."""
    levels = (_LEVELS.get(str(sign.tag)) for group in direction.iter("dynamics") for sign in group)
    wedges = (_WEDGES.get(str(wedge.get("type"))) for wedge in direction.iter("wedge"))
    return tuple(mark for mark in (*levels, *wedges) if mark is not None)


def _has_sign(direction: Element, name: str) -> bool:
    return next(direction.iter(name), None) is not None or any(
        (symbol.text or "").strip() == name for symbol in direction.iter("symbol")
    )


def ending_numbers(text: str) -> tuple[int, ...]:
    """The passes of an ending: ``"1, 2"`` and ``"1-3"``; empty where there is no number."""
    passes: list[int] = []
    for first, last in re.findall(r"(\d{1,2})(?:\s*-\s*(\d{1,2}))?", text):
        passes += range(int(first), int(last or first) + 1)
    return tuple(dict.fromkeys(value for value in passes if value > 0))


def marks_on(note: Element) -> tuple[Mark, ...]:
    """The marks on a note, slurs that stop before slurs that start."""
    marks: list[Mark] = []
    stops = starts = 0
    for group in _notation_groups(note):
        if group.tag == "slur":
            stops += group.get("type") == "stop"
            starts += group.get("type") == "start"
        elif group.tag == "fermata":
            marks.append(Mark.FERMATA)
        elif group.tag in ("articulations", "ornaments", "technical"):
            for sign in group:
                marks += _marks_of_sign(sign, group)
    for head in note.iterfind("notehead"):
        if head.get("parentheses") == "yes" or (head.text or "").strip() in ("x", "cross"):
            marks.append(Mark.GHOST)
    return (*dict.fromkeys(marks), *[Mark.SLUR_STOP] * stops, *[Mark.SLUR_START] * starts)


def _notation_groups(note: Element) -> Iterator[Element]:
    for notations in note.iterfind("notations"):
        yield from notations


def _marks_of_sign(sign: Element, group: Element) -> tuple[Mark, ...]:
    tag = str(sign.tag)
    if tag == "wavy-line":
        return (Mark.VIBRATO,) if sign.get("type") == "start" and group.find("trill-mark") is None else ()
    if tag.startswith("other-"):
        text = f"{sign.get('smufl', '')} {sign.text or ''}"
        return tuple(mark for pattern, mark in _SMUFL_MARKS if pattern.search(text))
    return _MARKS.get(tag, ())


def left_out(note: Element) -> Iterator[str]:
    """Names of signs on a note that change its sound and have no place in the model."""
    for group in _notation_groups(note):
        if group.tag in _NO_PLACE_IN_MODEL:
            if group.get("type") != "stop":
                yield str(group.tag)
        elif group.tag in ("articulations", "ornaments", "technical"):
            yield from (str(sign.tag) for sign in group if sign.tag in _NO_PLACE_IN_MODEL)


def lyric_text(lyric: Element) -> str:
    """The syllables of one verse under a note, with a hyphen at the end inside a word."""
    text = ""
    for part in lyric:
        if part.tag == "text":
            text += part.text or ""
        elif part.tag == "elision":
            text += part.text or " "
    endings = [(syllabic.text or "").strip() for syllabic in lyric.iterfind("syllabic")]
    goes_on = bool(endings) and endings[-1] in ("begin", "middle")
    return text.strip() + ("-" if goes_on and text.strip() else "")


def chord_symbol(harmony: Element, offset_ticks: int, interval: Interval) -> RawChord | None:
    """The chord symbol at sounding pitch; None for an element that holds none.

    A symbol without a meaning here (a function such as "V7", two stacked chords, a kind that no standard has) comes
    back as its text alone, so that it can be reported.
    """
    kinds = harmony.findall("kind")
    if not kinds:
        return None
    kind = (kinds[0].text or "").strip()
    text = str(kinds[0].get("text", "")).strip()
    if kind == "none":
        return RawChord(offset_ticks, "N.C.")
    root = _name(harmony.find("root"), "root-step", "root-alter")
    if root is None or len(kinds) > 1:
        return RawChord(offset_ticks, _plain_text(harmony))
    shown = next((step.get("text") for step in harmony.iter("root-step")), None)
    if shown == "" and kind == "other":
        return RawChord(offset_ticks, text)
    if shown and shown.startswith("("):
        text = text.removesuffix(")")
    root = root.up(interval)
    bass = _name(harmony.find("bass"), "bass-step", "bass-alter")
    bass = bass.up(interval) if bass else None
    printed = f"{root}{text}" + (f"/{bass}" if bass else "")
    degrees = tuple(_degrees(harmony))
    if kind in ("other", "") and not degrees:
        return RawChord(offset_ticks, printed if text else f"{root}?")
    try:
        chord = chord_from_kind(root, kind or "other", degrees, bass, text)
        inversion = whole_number(harmony, "inversion", 0)
        if chord and not bass and 0 < inversion < len(chord.intervals):
            lowest = root.up(chord.intervals[inversion])
            chord = chord_from_kind(root, kind or "other", degrees, lowest, text)
        if chord and text and not degrees:
            chord = _as_printed(printed, chord)
    except TuneError:
        return RawChord(offset_ticks, printed if text else f"{root} {kind}")
    return RawChord(offset_ticks, chord.text if chord else printed, chord)


def _as_printed(text: str, chord: Chord) -> Chord:
    """The chord that the printed text means, where it says more than the kind and does not contradict it."""
    try:
        printed = read_chord(text)
    except TuneError:
        return chord
    for step in (_THIRD, _SEVENTH):
        tones = [{tone for tone in each.intervals if tone.steps == step} for each in (chord, printed) if each]
        if printed is None or (all(tones) and tones[0].isdisjoint(tones[1])):
            return chord
    return chord if printed is None or printed.intervals == chord.intervals else printed


def _name(element: Element | None, step: str, alter: str) -> NoteName | None:
    if element is None:
        return None
    return NoteName(_letter(element, step), max(-2, min(2, round(number(element, alter, 0)))))


def _degrees(harmony: Element) -> Iterator[Degree]:
    for degree in harmony.iterfind("degree"):
        kind = _DEGREE_TYPES.get((degree.findtext("degree-type") or "").strip(), "add")
        alter = round(number(degree, "degree-alter", 0))
        yield Degree(whole_number(degree, "degree-value"), alter, kind)


def _plain_text(harmony: Element) -> str:
    """All that is printed in a harmony element, in order."""
    words = [(part.text or "").strip() for part in harmony.iter("root-step", "function", "numeral-root")]
    kinds = [str(kind.get("text", "")) for kind in harmony.iterfind("kind")]
    return " ".join(f"{word}{kind}" for word, kind in zip(words, kinds, strict=False)) or "?"
