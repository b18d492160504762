"""music21 as an independent reader of ABC, and the list of what it is known to read otherwise.

Each entry of `LIMITS` rewrites a tune into what the abc standard 2.1 says is the same music, in the plainest words:
signs without length taken out, ``A//`` written ``A/4``. When music21 agrees with us on the plainer text, the
difference lay in that sign. Every rewriting but those of voices and parts leaves our own reading as it was, which
the tests check too.
"""

from __future__ import annotations

import re
import warnings
from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from fioritura.errors import FiorituraError
from fioritura.notation.abc.reader import AbcEntry, list_abc
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from fioritura.words import say

BOOKS = ("airdsAirs", "essenFolksong", "oneills1850", "ryansMammoth", "nottingham-dataset", "miscFolk", "josquin")
Sound = tuple[Fraction, int, Fraction]
"""Onset in quarters, MIDI number, length in quarters."""


@cache
def corpus_entries() -> tuple[tuple[str, AbcEntry], ...]:
    """Every tune of the ABC books that music21 carries, each with the name of its file."""
    import music21

    root = Path(music21.__file__).parent / "corpus"
    files = sorted(file for book in BOOKS for file in (root / book).glob("*.abc"))
    return tuple((f"{file.parent.name}/{file.name}", entry) for file in files for entry in list_abc(_decoded(file)))


def _decoded(file: Path) -> str:
    data = file.read_bytes()
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        return data.decode("latin-1")


def source(entry: AbcEntry) -> str:
    return "\n".join(line.text for line in (*entry.text.file_header, *entry.text.lines))


def own_sounds(tune: Tune) -> list[Sound]:
    return [
        (Fraction(note.onset_ticks, QUARTER), note.pitch.midi, Fraction(note.duration_ticks, QUARTER))
        for note in tune.notes
    ]


def reference_sounds(text: str, *, ties_carry_accidentals: bool = False) -> list[Sound]:
    """What music21 reads in the first part: the top note of a chord, tied notes as one, no grace notes."""
    from music21 import chord, converter, harmony, stream

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        score = converter.parse(f"%abc-2.1\n{text}", format="abc", forceSource=True)
    if isinstance(score, stream.Opus):
        score = score.scores[0]
    part = score.parts[0] if score.parts else score
    sounds: list[Sound] = []
    tied = None
    for element in part.flatten().notes:
        if isinstance(element, harmony.ChordSymbol) or element.duration.isGrace:
            continue
        top = max(element.notes, key=lambda note: note.pitch.midi) if isinstance(element, chord.Chord) else element
        length = _exact(element.duration.quarterLength)
        if tied and _is_same(tied, top.pitch, ties_carry_accidentals):
            onset, midi, before = sounds[-1]
            sounds[-1] = (onset, midi, before + length)
        else:
            sounds.append((_exact(element.offset), top.pitch.midi, length))
        tied = top.pitch if element.tie is not None and element.tie.type in ("start", "continue") else None
    return sounds


def _is_same(before: Any, after: Any, ties_carry_accidentals: bool) -> bool:
    if ties_carry_accidentals and before.diatonicNoteNum == after.diatonicNoteNum:
        return True
    return bool(before.midi == after.midi)


def _exact(quarters: float | Fraction) -> Fraction:
    return Fraction(quarters).limit_denominator(100_000)


def agree(own: list[Sound], reference: list[Sound]) -> bool:
    """The same notes at the same places, but for a tick where a length is no whole number of ticks."""
    tick = Fraction(2, QUARTER)
    return len(own) == len(reference) and all(
        mine[1] == theirs[1] and abs(mine[0] - theirs[0]) <= tick and abs(mine[2] - theirs[2]) <= tick
        for mine, theirs in zip(own, reference, strict=True)
    )


# --- What music21 reads otherwise ----------------------------------------------------------------------------------


def _in_music(change: Callable[[str], str]) -> Callable[[str], str]:
    """Apply a change to the lines of music only."""

    def changed(text: str) -> str:
        lines, in_body = [], False
        for line in text.split("\n"):
            is_field = re.match(r"%|[A-Za-z]:(?![|:])", line)
            changed_line = change(line) if in_body and not is_field else line
            lines += [changed_line] if changed_line.strip() or not line.strip() else []
            in_body = in_body or line.startswith("K:")
        return "\n".join(lines)

    return changed


def _outside_fields(change: Callable[[str], str]) -> Callable[[str], str]:
    """Apply a change to a line of music, inline fields excepted."""
    return lambda line: "".join(
        piece if re.match(r"\[[A-Za-z]:", piece) else change(piece)
        for piece in re.split(r"(\[[A-Za-z]:[^\]]*\])", line)
    )


def _without_signs(line: str) -> str:
    line = re.sub(r"(?<!\\)%.*", "", line).rstrip().removesuffix("\\")
    line = re.sub(r'"[^"]*"|\{[^}]*\}|![^!\s|\[\]:]+!', "", line)
    line = re.sub(r"[~.HLMOPSTuv]+x(?!\d)", "", line)
    line = re.sub(r"[~.`HJLMOPRSTUVhijklmnopqrstuvw$!*]|\((?!\d)|\)", "", line)
    line = re.sub(r"\s*([<>]+)\s*", r"\1", line)
    return re.sub(r"x", "z", line)


def _without_odd_header_lines(text: str) -> str:
    header, key, body = text.partition("\nK:")
    kept = [line for line in header.split("\n") if re.match(r"[A-Za-z+]:|%", line)]
    return "\n".join(kept) + key + body


_FALSE_TIE = re.compile(r"([A-Ga-g][,']*)(\d*/*\d*\s*[<>]*)-(?=(\s*[<>]*[\s|]*)[_^=]*([A-Ga-g][,']*))")


def _untied(match: re.Match[str]) -> str:
    return match[0] if match[1] == match[4] else match[1] + match[2]


def _with_written_lengths(line: str) -> str:
    """Every broken rhythm of a line as lengths: ``A>B>c`` is ``A3/2B3/4c/2``."""
    if not re.search("[<>]", line):
        return line
    pieces: list[tuple[str, Fraction | None]] = []
    factor = Fraction(1)
    for match in re.finditer(r"([_^=]*[A-Ga-gz][,']*)(\d*)(/*)(\d*)|([<>]+)|.", line):
        if match[5]:
            half = Fraction(1, 2 ** len(match[5]))
            first, factor = (2 - half, half) if match[5][0] == ">" else (half, 2 - half)
            last, length = next((place, length) for place, (_, length) in reversed([*enumerate(pieces)]) if length)
            pieces[last] = (pieces[last][0], length * first)
        elif match[1]:
            below = int(match[4]) if match[4] else 2 ** len(match[3])
            pieces.append((match[1], Fraction(int(match[2] or 1), below) * factor))
            factor = Fraction(1)
        else:
            pieces.append((match[0], None))
    return "".join(text if length is None else f"{text}{length}" for text, length in pieces)


def _top(match: re.Match[str]) -> str:
    notes = re.findall(r"([_^=]*)([A-Ga-g])([,']*)(\d*/*\d*)", match[1] or match[2])
    sign, letter, octave, _ = max(notes, key=lambda note: _height(note[1], note[2]))
    tie = "-" if re.search(rf"{letter}{octave}[\d/]*-", match[0]) else ""
    return f"{sign}{letter}{octave}{notes[0][3]}{tie}"


def _height(letter: str, octave: str) -> int:
    return "CDEFGABcdefgab".index(letter) + 7 * (octave.count("'") - octave.count(","))


def _first_voice(text: str) -> str:
    lines: list[str] = []
    voices: list[str] = []
    current = None
    for line in text.split("\n"):
        match = re.match(r"\[?V:\s*(\w+)[^\]]*\]?", line)
        in_body = any(other.startswith("K:") for other in lines)
        if match and not in_body:
            continue
        if match:
            current = match[1]
            voices.append(current)
            line = line[match.end() :]
        if not voices or current == voices[0] or re.match(r"[KMLP]:", line):
            lines.append(line)
    return "\n".join(line for line in lines if line.strip())


LIMITS: dict[str, Callable[[str], str]] = {
    "signs, texts, grace notes and invisible rests": _in_music(_outside_fields(_without_signs)),
    "the double repeat sign ::": _in_music(lambda line: re.sub(r":\|?\|?:", ":| |:", line)),
    "strokes for short lengths": _in_music(lambda line: re.sub(r"//+", lambda m: f"/{2 ** len(m[0])}", line)),
    "inline fields": _in_music(lambda line: re.sub(r"\[([KML]):([^\]]*)\]", r"\n\1:\2\n", line).strip("\n")),
    "signs garbled by e-mail": _in_music(lambda line: re.sub(r"=20|=$", " ", line).replace("=3D", "=")),
    "several notes at once": _in_music(
        lambda line: re.sub(r"\[(?![A-Za-z]:|[\d|])([^\]]*)\]|\+([^+]*)\+", _top, line)
    ),
    "ties that are slurs": _in_music(lambda line: _FALSE_TIE.sub(_untied, line)),
    "broken rhythms in a row": _in_music(_with_written_lengths),
    "clefs that transpose": lambda text: re.sub(r"(?m)^(K:.*?)(bass|treble8)", r"\1", text),
    "header lines that are no fields": _without_odd_header_lines,
    "German note names": lambda text: re.sub(r"(?m)^K: ?(H|Es|As)\s*$", _english_key, text),
    "several voices": _first_voice,
    "an order of parts": lambda text: (
        re.sub(r"(?m)^P:.*$", "", text.partition("\nK:")[0]) + "\nK:" + text.partition("\nK:")[2]
    ),
}


def _english_key(match: re.Match[str]) -> str:
    return "K:" + {"H": "B", "Es": "Eb", "As": "Ab"}[match[1]]


CHANGES_MUSIC = frozenset({"several voices", "an order of parts"})


def plainer_texts(text: str) -> Iterator[tuple[str, str]]:
    """The text rewritten by one limit after another, each with the limit's name."""
    for name, rewrite in LIMITS.items():
        rewritten = rewrite(text)
        if rewritten != text:
            text = rewritten
            yield name, text


def disagreement(entry: AbcEntry) -> str:
    """``""`` when music21 reads the same sounds, else the name of the limit that explains the difference, or
    ``"damaged text"`` where the file itself holds what is no ABC, or ``"unexplained"``."""
    text = source(entry)
    tune = entry.read(irregular="keep")
    own = own_sounds(tune)
    if _reference_agrees(own, text, ties_carry_accidentals=False):
        return ""
    if _reference_agrees(own, text, ties_carry_accidentals=True):
        return "accidentals over ties"
    for name, plainer in plainer_texts(text):
        try:
            again = own_sounds(list_abc(plainer)[0].read(irregular="keep"))
        except FiorituraError:
            return "unexplained"
        if again != own and name not in CHANGES_MUSIC:
            break
        own = again
        if _reference_agrees(own, plainer, ties_carry_accidentals=True):
            return name
    return "damaged text" if any(" is left out: " in say(warning) for warning in tune.warnings) else "unexplained"


def _reference_agrees(own: list[Sound], text: str, *, ties_carry_accidentals: bool) -> bool:
    try:
        return agree(own, reference_sounds(text, ties_carry_accidentals=ties_carry_accidentals))
    except Exception:  # whatever music21 raises over a text that it does not understand
        return False
