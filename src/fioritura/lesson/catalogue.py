"""All words of a lesson pack, by language: one file of texts for each, English being the source.

A language is one file, `words/LANGUAGE.json`, with four tables: `texts` by id; `sentences`, which renders sentences that
other rooms make as text, template by template (techniques and their reasons are messages, see `fioritura.words`); `instruments` by id; and `notes`, which says how notes are called. What a language
leaves out of `sentences` is shown in English.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from importlib.resources import files
from typing import Any, Final, Literal

from fioritura.errors import OptionError
from fioritura.players.instruments import Instrument
from fioritura.techniques.technique import Technique
from fioritura.theory.key import Key
from fioritura.theory.metre import Metre
from fioritura.theory.pitch import LETTERS, NoteName, Pitch
from fioritura.words import Message, capital, say, speaking

__all__ = ["TECHNIQUE_FIELDS", "Catalogue", "NoteNames", "catalogue", "languages"]

NoteNames = Literal["english", "german", "solfege"]

TECHNIQUE_FIELDS: Final = ("name", "label", "text", "how", "when", "fault", "cure")

_PLACE: Final = re.compile(r"\{(\w+)\}")
_KINDS: Final = {"note": r"[A-G][♯♭]?\d?(?:[–/][A-G][♯♭]?\d?)?", "count": r"[\w.]+"}
"""What may stand in a place of a sentence, by the place's name; anything in a place of another name."""

_JOINTS: Final = {", ": "joint.comma", " and ": "joint.and"}
_NOTE: Final = re.compile(r"\b([A-G])([♯♭]?)(?![a-z])")
_GERMAN_FLATS: Final = {"B": "B", "E": "Es", "A": "As"}
_SOLFEGE: Final = ("Do", "Re", "Mi", "Fa", "Sol", "La", "Si")
_SIGNS: Final = {-1: "♭", 0: "", 1: "♯"}


@dataclass(frozen=True)
class Catalogue:
    """The words of one language; `names` says how it calls its notes."""

    language: str
    names: NoteNames
    tables: Mapping[str, Any]

    def __call__(self, id: str, **values: object) -> str:
        """The text of an id with its places filled.

        Raises:
            OptionError: the language has no such text.
        """
        try:
            text = str(self.tables["texts"][id])
        except KeyError:
            raise OptionError(
                f"The words of {self.language!r} lack {id!r}: add it to words/{self.language}.json."
            ) from None
        return text.format(**values)

    def technique(self, technique: Technique, field: str) -> str:
        """A field of a technique (see `TECHNIQUE_FIELDS`) in this language."""
        text = self.said(getattr(technique, field))
        return capital(text) if field == "name" else text

    def said(self, what: Message) -> str:
        """A message in this language."""
        with speaking(self.language, self.names):
            return say(what)

    def sentence(self, text: Message | str) -> str:
        """A sentence of another room in this language; where the language does not know it, itself."""
        if isinstance(text, Message):
            return self.said(text)
        for pattern, wanted in self._patterns:
            found = pattern.fullmatch(text)
            if found:
                return wanted.format(**{name: self._part(name, part) for name, part in found.groupdict().items()})
        return self.notes_in(text)

    def _part(self, name: str, text: str) -> str:
        """What stood in a place of a sentence: note names, keys of an instrument, or sentences set off by semicolons."""
        if name.startswith("note"):
            return self.notes_in(text)
        if name.startswith("keys"):
            pieces = re.split("(, | and )", text)
            return "".join(self(_JOINTS[piece]) if piece in _JOINTS else self.sentence(piece) for piece in pieces)
        return "; ".join(self.sentence(part) for part in text.split("; "))

    @cached_property
    def _patterns(self) -> list[tuple[re.Pattern[str], str]]:
        table: Mapping[str, str] = self.tables.get("sentences", {})
        return [(_pattern(source), wanted) for source, wanted in table.items()]

    def instrument(self, instrument: Instrument) -> str:
        """What an instrument is called."""
        return str(self.tables.get("instruments", {}).get(instrument.id, instrument.name))

    def instrument_line(self, instrument: Instrument) -> str:
        """An instrument with its transposition: ``"Alto saxophone in E♭"``."""
        name, tonic = self.instrument(instrument), instrument.sounding(Pitch.parse("C4")).name
        if tonic == NoteName(0) or " in " in name:
            return name
        return self("instrument.in", instrument=name, tonic=self.note(tonic))

    def note(self, name: NoteName) -> str:
        """A note name: ``"B♭"``, in German ``"B"``, in syllables ``"Si♭"``."""
        if self.names == "solfege":
            return _SOLFEGE[name.letter] + _SIGNS.get(name.alter, name.display[1:])
        letter = LETTERS[name.letter]
        if self.names == "english":
            return name.display
        if letter == "B":
            return "B" if name.alter == -1 else "H" + "is" * name.alter + "es" * (-name.alter - 1)
        if name.alter < 0:
            return _GERMAN_FLATS.get(letter, f"{letter}es") + "es" * (-name.alter - 1)
        return letter + "is" * name.alter

    def notes_in(self, text: str) -> str:
        """A text with the note names in it (``"B♭4"``) as the language has them; a lone ``A`` is no note name."""
        if self.names == "english":
            return text
        return _NOTE.sub(self._renamed, text)

    def _renamed(self, found: re.Match[str]) -> str:
        is_word = not found[2] and found.string[found.end() : found.end() + 1] == " "
        return found[0] if is_word else self.note(NoteName.parse(found[1] + found[2]))

    def key(self, key: Key) -> str:
        """A key: ``"B♭ major"``, in German ``"B-Dur"`` and ``"g-Moll"``."""
        name = self.note(key.tonic)
        if self.names == "german" and key.is_minor:
            name = name.lower()
        return self("key", tonic=name, mode=self(f"mode.{key.mode}"))

    def beat_sign(self, metre: Metre) -> str:
        """The sign of a metre's beat: a quarter note, dotted in compound time."""
        return {1: "♩.", 0: "♩"}[int(metre.is_compound)] if metre.unit != 2 else "𝅗𝅥"


def _pattern(template: str) -> re.Pattern[str]:
    pieces = _PLACE.split(template)
    text = "".join(
        f"(?P<{piece}>{_KINDS.get(piece.rstrip('0123456789'), '.+?')})" if number % 2 else re.escape(piece)
        for number, piece in enumerate(pieces)
    )
    return re.compile(text)


def languages() -> list[str]:
    """The languages there are."""
    folder = files("fioritura.lesson").joinpath("words")
    return sorted(entry.name.removesuffix(".json") for entry in folder.iterdir() if entry.name.endswith(".json"))


@lru_cache(maxsize=32)
def catalogue(language: str = "en", names: NoteNames | None = None) -> Catalogue:
    """The words of a language, its notes called as usual there or as `names` says.

    Raises:
        OptionError: there is no such language.
    """
    if language not in languages():
        raise OptionError(f"No words in {language!r}: choose one of {', '.join(languages())}.")
    text = files("fioritura.lesson").joinpath(f"words/{language}.json").read_text(encoding="utf-8")
    tables = json.loads(text)
    return Catalogue(language, names or tables["notes"], tables)
