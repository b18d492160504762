"""Messages put into words: Fluent texts, the language that is spoken, and how lists, numbers and notes are said.

In a text, ``{ $name }`` is an argument; a function works on one:

``FORM($thing, "dative")``
    another form of a message, an attribute of its text, or the text itself where it has no such form;
``CAPITAL($thing)``
    with a capital first letter;
``LIST($things, "or")``
    several things with "or" before the last (`LIST` alone and a bare ``{ $things }``: with "and");
``NOTE($letter, $alter)``
    a note's name as it is called there; ``LOWER(…)`` in small letters;
``NUMBER($n, maximumFractionDigits: 1)``
    Fluent's own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final

from fioritura.words.message import VERBATIM, Message, Speakable
from fioritura.words.notes import Naming, note_name

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable

    from fluent.runtime import FluentBundle
    from fluent.syntax.ast import Pattern, Resource

__all__ = [
    "LANGUAGES",
    "PSEUDO",
    "Naming",
    "add_words",
    "capital",
    "known_ids",
    "language",
    "language_tag",
    "locale",
    "naming",
    "pattern_of",
    "say",
    "speaking",
]

LANGUAGES: Final = ("en", "de", "fr", "es")
"""The languages in which everything can be said; the first is the source of the others."""

LOCALES: Final[Mapping[str, str]] = {"en": "en-GB", "de": "de-DE", "fr": "fr-FR", "es": "es-ES"}
"""Where each is spoken: numbers and dates follow these tags (BCP 47)."""

PSEUDO: Final = "pseudo"
"""English in letters that nobody writes: what reads as usual in it did not come through here (for the tests)."""

USUAL_NAMING: Final[Mapping[str, Naming]] = {"en": "english", "de": "german", "fr": "solfege", "es": "solfege"}

_language: ContextVar[str] = ContextVar("language", default=LANGUAGES[0])
_naming: ContextVar[Naming | None] = ContextVar("naming", default=None)

_ENTRY: Final = re.compile(r"^(-?[a-zA-Z][\w-]*) *=.*\n?(?:(?:[ \t}].*|[ \t]*)(?:\n|$))*", re.MULTILINE)
_REFERENCE: Final = re.compile(r"\{\s*(-?[a-z][\w-]*)[\s.}(]")
_PSEUDO_LETTERS: Final = str.maketrans(
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ", "àƀçđéƒĝĥîĵķľɱñöþɋŕšťûṽŵẋýžÀƁÇĐÉƑĜĤÎĴĶĽṀÑÖÞɊŔŠŤÛṼŴẊÝŽ"
)
_LONGEST_PART: Final = 500
"""Fluent refuses arguments above a thousand letters."""

_LONGEST_TEXT: Final = 4000
"""What goes on longer is cut: a damaged file may hold a name of megabytes."""

_FIRST_SIGN: Final = 0xF0000

_added: dict[str, dict[str, str]] = {}


def language() -> str:
    """The language that is spoken."""
    return _language.get()


def locale() -> str:
    """The language that is spoken with its region, as numbers and dates need it: ``"en-GB"`` (BCP 47)."""
    return LOCALES.get(language(), LOCALES[LANGUAGES[0]])


def language_tag() -> str:
    """The language that is spoken as other programs know it (BCP 47)."""
    return LANGUAGES[0] if language() == PSEUDO else language()


def naming() -> Naming:
    """How notes are called: as was asked, else as usual in the language."""
    return _naming.get() or USUAL_NAMING.get(_language.get(), "english")


@contextmanager
def speaking(language: str, naming: Naming | None = None) -> Iterator[None]:
    """Speak a language in what follows, and call notes as `naming` says (None: as usual in that language)."""
    tokens = _language.set(language), _naming.set(naming)
    try:
        yield
    finally:
        _language.reset(tokens[0])
        _naming.reset(tokens[1])


def say(said: Message | Speakable | str, /) -> str:
    """A message in words, in the language that is spoken; text stays as it is.

    Raises:
        LookupError: no language has such a text.
        ValueError: an argument that the text needs is missing.
    """
    if isinstance(said, str):
        return said
    if not isinstance(said, Message):
        said = said.message
    if said.id == VERBATIM:
        return str(said["text"])
    return _said(said, language(), naming())


def pattern_of(id: str) -> Pattern:
    """The text of an id in the language that is spoken as `fluent.syntax` reads it, for what puts it together elsewhere.

    Raises:
        LookupError: no language has such a text.
    """
    return _speaker(language(), naming()).pattern(id)


def capital(text: str) -> str:
    """Text with a capital first letter."""
    return text[:1].upper() + text[1:]


def add_words(texts: Mapping[str, str]) -> None:
    """Take in Fluent texts by language, of a technique that does not come with the program.

    A language that is left out falls back to English. Texts that are known already are replaced.
    """
    is_new = False
    for code, text in texts.items():
        entries = _added.setdefault(code, {})
        for id, entry in _entries(text).items():
            is_new |= entries.get(id) != entry
            entries[id] = entry
    if is_new:
        _speaker.cache_clear()
        _said.cache_clear()


def known_ids(language: str) -> frozenset[str]:
    """Ids of all texts that a language has of its own."""
    return frozenset(_texts(language)) | frozenset(_added.get(language, ()))


def is_known_text(id: str) -> bool:
    """True where there is a text of that id, in English at least."""
    return id in _texts(LANGUAGES[0]) or id in _added.get(LANGUAGES[0], ())


@lru_cache(maxsize=8192)
def _said(said: Message, language: str, naming: Naming) -> str:
    return _speaker(language, naming).say(said)


@lru_cache(maxsize=16)
def _speaker(language: str, naming: Naming) -> _Speaker:
    return _Speaker(language, naming)


class _Speaker:
    """One language: its texts, of which each is parsed when it is first said."""

    def __init__(self, language: str, naming: Naming) -> None:
        source = LANGUAGES[0]
        own = source if language == PSEUDO else language
        self.language, self.naming = language, naming
        self.texts = {**_texts(source), **_added.get(source, {}), **_texts(own), **_added.get(own, {})}
        self.spoken = _spoken_type(self)
        self.bundle = self._bundle(LOCALES.get(own, own))
        self.parsed: set[str] = set()

    def say(self, said: Message) -> str:
        id, _, attribute = said.id.partition(".")
        self._parse(id)
        if not self.bundle.has_message(id):
            raise LookupError(f"no text {id!r} in {self.language!r}")
        entry = self.bundle.get_message(id)
        pattern = entry.attributes.get(attribute) if attribute else entry.value
        if pattern is None:
            raise LookupError(f"the text {id!r} has no {attribute or 'value'!r} in {self.language!r}")
        held = _Held()
        text, errors = self.bundle.format_pattern(
            pattern, {name: self.argument(each, held) for name, each in said.args}
        )
        if errors:
            raise ValueError(f"the text {said.id!r} in {self.language!r}: {errors[0]}")
        return held.put_back(str(text))

    def pattern(self, id: str) -> Pattern:
        from fluent.syntax import ast

        for entry in self._resource(id).body if id in self.texts else ():
            if isinstance(entry, ast.Message) and entry.value:
                return entry.value
        raise LookupError(f"no text {id!r} in {self.language!r}")

    def has(self, id: str, attribute: str) -> bool:
        self._parse(id)
        return self.bundle.has_message(id) and attribute in self.bundle.get_message(id).attributes

    def argument(self, value: object, held: _Held) -> object:
        """An argument as Fluent takes it."""
        if isinstance(value, bool):
            return "yes" if value else "no"
        if isinstance(value, str):
            return held.keep(value)
        if isinstance(value, int | float):
            return self.number(value)
        return self.spoken(value, held)

    def number(self, value: float) -> object:
        """A number as Fluent takes it: Spanish groups digits from five on (CLDR, ``minimumGroupingDigits``)."""
        from fluent.runtime.types import fluent_number

        is_short = self.language == "es" and 1000 <= abs(value) < 10_000
        return fluent_number(value, useGrouping=False) if is_short else value

    def thing(self, value: object, attribute: str = "") -> str:
        """Anything in words: a message or what names itself, in a form if it has it; several things listed."""
        if isinstance(value, tuple):
            return self.listed(value, "and")
        if not isinstance(value, Message):
            if not isinstance(value, Speakable):
                return str(value)
            value = value.message
        if value.id == VERBATIM:
            return str(value["text"])
        if attribute and self.has(value.id.partition(".")[0], attribute):
            value = value.form(attribute)
        return self.say(value)

    def listed(self, values: object, joint: str) -> str:
        """Things with commas, and "and" or "or" before the last."""
        if not isinstance(values, tuple):
            return self.thing(values)
        words = [self.thing(value) for value in values]
        if len(words) < 2:
            return "".join(words)
        first = ", ".join(words[:-1])
        return self.say(Message(f"list-{joint}", (("first", first), ("last", words[-1]))))

    def _parse(self, id: str) -> None:
        if id in self.parsed or id not in self.texts:
            return
        self.parsed.add(id)
        for other in _REFERENCE.findall(self.texts[id]):
            self._parse(other)
        self.bundle.add_resource(self._resource(id), allow_overrides=True)

    def _resource(self, id: str) -> Resource:
        from fluent.runtime import FluentResource

        resource = FluentResource(self.texts[id])
        if self.language == PSEUDO:
            _disguise(resource)
        return resource

    def _bundle(self, locale: str) -> FluentBundle:
        from fluent.runtime import FluentBundle

        def worked(work: Callable[[object], str], value: object) -> str:
            held = getattr(value, "held", None)
            text = work(getattr(value, "value", value))
            return held.keep(text) if held else text

        functions: dict[str, Any] = {
            "FORM": lambda value, form: worked(lambda it: self.thing(it, str(form)), value),
            "CAPITAL": lambda value: worked(lambda it: capital(self.thing(it)), value),
            "LIST": lambda value, joint="and": worked(lambda it: self.listed(it, str(joint)), value),
            "NOTE": lambda letter, alter: note_name(str(letter), int(alter), self.naming, self.language),
            "LOWER": lambda value: worked(lambda it: self.thing(it).lower(), value),
        }
        return FluentBundle([locale], functions=functions, use_isolating=False)


class _Held:
    """Long arguments of one text, for which a sign stands while Fluent, which takes no long ones, puts it together."""

    def __init__(self) -> None:
        self.texts: list[str] = []

    def keep(self, text: str) -> str:
        """The text, or the sign that stands for it."""
        if len(text) <= _LONGEST_PART:
            return text
        self.texts.append(text if len(text) <= _LONGEST_TEXT else f"{text[: _LONGEST_TEXT - 1]}…")
        return chr(_FIRST_SIGN + len(self.texts) - 1)

    def put_back(self, text: str) -> str:
        """The text with what the signs stand for."""
        for number, long in enumerate(self.texts):
            text = text.replace(chr(_FIRST_SIGN + number), long)
        return text


def _spoken_type(speaker: _Speaker) -> Callable[[object, _Held], object]:
    """What wraps an argument that Fluent does not know."""
    from fluent.runtime.types import FluentType

    class Spoken(FluentType):
        def __init__(self, value: object, held: _Held) -> None:
            self.value, self.held = value, held

        def format(self, locale: object) -> str:
            return self.held.keep(speaker.thing(self.value))

    return Spoken


def _disguise(node: Any) -> None:
    """Write all text of a parsed Fluent resource in the letters of the pseudo-language."""
    from fluent.syntax import ast
    from fluent.syntax.visitor import Visitor

    class Disguise(Visitor):
        def visit_TextElement(self, element: ast.TextElement) -> None:  # noqa: N802
            element.value = element.value.translate(_PSEUDO_LETTERS)

    Disguise().visit(node)


@lru_cache(maxsize=8)
def _texts(language: str) -> dict[str, str]:
    """The entries of all files of a language by id, not yet parsed."""
    found: dict[str, str] = {}
    source = LANGUAGES[0] if language == PSEUDO else language
    for file in _files(source):
        found.update(_entries(file.read_text(encoding="utf-8")))
    return found


def _files(language: str) -> Iterator[Traversable]:
    from importlib.resources import files

    package = files("fioritura")
    for folder, ending in (
        (package.joinpath("words", language), ".ftl"),
        (package.joinpath("techniques"), f".{language}.ftl"),
    ):
        if folder.is_dir():
            yield from sorted((each for each in folder.iterdir() if each.name.endswith(ending)), key=lambda f: f.name)


def _entries(text: str) -> dict[str, str]:
    return {match[1]: match[0] for match in _ENTRY.finditer(text.replace("\r\n", "\n"))}
