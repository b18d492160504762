"""The lesson pack speaks: nothing in it but names stays English, and each language has its own words."""

from __future__ import annotations

import json
import re
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Final

import pypdf
import pytest
from lxml import etree

from fioritura.errors import OptionError, RangeError
from fioritura.lesson.cache import Cache
from fioritura.lesson.course import course_document, stages
from fioritura.lesson.edition import Edition, comparison_score, line_score, plain_score
from fioritura.lesson.handout import bars_text
from fioritura.lesson.lesson import Lesson
from fioritura.lesson.pack import PackOptions, write_pack
from fioritura.lesson.plan import LessonPlan, check_language
from fioritura.lesson.practice import in_key
from fioritura.lesson.running_order import running_order
from fioritura.lesson.soundtrack import tracks
from fioritura.lesson.workers import Workers
from fioritura.notation.engraving.page import Bullets, Heading, Keep, Paragraph
from fioritura.notation.engraving.sheet import instrument_title
from fioritura.players.instruments import INSTRUMENTS
from fioritura.theory.key import Key
from fioritura.theory.pitch import Interval
from fioritura.tune import transpose
from fioritura.words import LANGUAGES, Message, message, say, speaking

from .lessons import demo_lesson
from .pseudo import plain_words
from .test_words import texts

OPTIONS = PackOptions(("alto-sax",), ("handout", "parts", "exercises", "page", "overlays"), workers=1)

INTERNATIONAL: Final = {"Swing", "ensp"}
"""A direction over the staff that jazz players read in every language, and a space as HTML writes it."""

_CHORD: Final = re.compile(r"[A-G](?:m|maj|min|dim|aug|sus|add)*|m|maj|min|dim|aug|sus")
_CODE: Final = re.compile(r"`[^`]*`")
_SHOWN: Final = {"aria-label", "title", "alt", "data-playing", "content", "placeholder"}


class _Shown(HTMLParser):
    """The text of a page that people see or hear read to them."""

    def __init__(self) -> None:
        super().__init__()
        self.words: list[str] = []
        self.inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.inside = tag
        if tag != "meta":
            self.words += [value or "" for name, value in attrs if name in _SHOWN]

    def handle_endtag(self, tag: str) -> None:
        self.inside = ""

    def handle_data(self, data: str) -> None:
        if self.inside == "script" and data.startswith("{"):
            self.words += json.loads(data)["words"].values()
        elif self.inside not in ("script", "style"):
            self.words.append(data)


def shown(path: Path) -> str:
    """What a file of a pack shows."""
    if path.suffix == ".pdf":
        return "\n".join(page.extract_text() for page in pypdf.PdfReader(path).pages)
    text = path.read_text(encoding="utf-8")
    if path.suffix == ".html":
        parser = _Shown()
        parser.feed(text)
        return "\n".join(parser.words)
    if path.suffix == ".md":
        return _CODE.sub("", text)
    if path.name == "manifest.json":
        record = json.loads(text)
        return "\n".join([*record["warnings"], *(part["reason"] for part in record["left_out"])])
    root = etree.fromstring(text.encode())
    if path.suffix == ".musicxml":
        chosen = root.iter("words", "part-name", "credit-words")
    else:
        chosen = root.iter(*(f"{{{root.nsmap[None]}}}{name}" for name in ("text", "desc", "title")))
    return "\n".join(str(element.xpath("string()")) for element in chosen)


@cache
def pack(language: str, folder: Path) -> dict[str, str]:
    """What each file of a pack shows, by its path in the pack."""
    target = folder / language
    write_pack(demo_lesson(level=2, language=language), target, OPTIONS, cache=Cache(folder / "cache"))
    kinds = {".pdf", ".html", ".md", ".svg", ".musicxml", ".json"}
    return {
        path.relative_to(target).as_posix(): shown(path) for path in sorted(target.rglob("*")) if path.suffix in kinds
    }


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("packs")


@pytest.fixture(scope="module")
def lesson() -> Lesson:
    return demo_lesson(level=2)


# The whole pack ------------------------------------------------------------------------------------------------


def test_nothing_in_a_pack_is_said_without_the_words(folder: Path, lesson: Lesson) -> None:
    allowed = plain_words(f"{lesson.title} {lesson.composer}") | INTERNATIONAL
    left = {
        name: words
        for name, text in pack("pseudo", folder).items()
        if (words := {word for word in plain_words(text) - allowed if not _CHORD.fullmatch(word)})
    }
    assert left == {}


@pytest.mark.parametrize("language", LANGUAGES[1:])
def test_a_pack_speaks_its_language(language: str, folder: Path) -> None:
    english, other = pack("en", folder), pack(language, folder)
    assert set(other) == set(english)
    said = {
        "handout.pdf": (
            "handout-contents",
            "handout-techniques-intro",
            "handout-hard",
            "care-hearing",
            "care-rights",
        ),
        "exercises.pdf": ("exercises-title", "exercises-intro", "exercises-keys", "exercises-turn-intro"),
        "parts/alto-sax.pdf": ("handout-performance", "sheet-legend", "care-rights.short"),
        "lesson.html": ("offline-intro", "offline-both", "offline-stopped", "care-pain"),
        "running-order.md": ("order-quiet", "order-homework"),
    }
    for name, ids in said.items():
        for id in ids:
            with speaking(language):
                assert _squeezed(say(Message(id))) in _squeezed(other[name]), (name, id)
            assert _squeezed(say(Message(id))) not in _squeezed(other[name]), (name, id)
    assert "\n".join(other[name] for name in other if name.endswith(".svg")) != "\n".join(
        english[name] for name in english if name.endswith(".svg")
    )


def test_packs_of_two_languages_share_a_cache_and_no_file(folder: Path) -> None:
    pack("en", folder), pack("de", folder)
    again = folder / "again"
    write_pack(demo_lesson(level=2), again, OPTIONS, cache=Cache(folder / "cache"))
    assert (again / "lesson.html").read_bytes() == (folder / "en/lesson.html").read_bytes()
    assert (again / "lesson.html").read_bytes() != (folder / "de/lesson.html").read_bytes()


def _squeezed(text: str) -> str:
    """Without spaces and hyphens, which line breaks change."""
    return re.sub(r"[\s\-\u00ad‐]+", "", text)


# Every text ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("language", LANGUAGES[1:])
def test_no_sentence_of_the_room_is_left_english(language: str) -> None:
    """What has four words or more reads differently in each language."""
    for id in texts("en")["lesson"]:
        arguments = {name: f"<{name}>" for name in (*texts("en")["lesson"][id][1], "idiom")}
        said = Message(id, tuple(sorted(arguments.items())))
        with speaking(language):
            other = say(said)
        assert other != say(said) or len(plain_words(re.sub("<.*?>", "", other))) < 4, id


def test_workers_speak_the_language_that_is_spoken_where_their_work_is_given() -> None:
    given = [message("handout-contents"), Key(-2, "major").message]
    with speaking("de", "english"), Workers(2) as workers:
        assert dict(workers.spread(say, given)) == {0: "In dieser Lektion", 1: "B♭-Dur"}


# Sounds, course, running order --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("language", "backing", "ladder"),
    [
        ("en", "Backing", "Performance at 79 beats a minute"),
        ("de", "Begleitung", "Fassung mit 79 Schlägen in der Minute"),
        ("fr", "Accompagnement", "Version de concert à 79 temps par minute"),
        ("es", "Acompañamiento", "Versión de concierto a 79 tiempos por minuto"),
    ],
)
def test_sound_files_have_titles_in_the_language_and_names_in_none(
    language: str, backing: str, ladder: str, lesson: Lesson
) -> None:
    with speaking(language):
        found = {track.name: track.title for track in tracks(lesson)}
    assert found["backing"] == backing
    assert found["ladder-079"] == ladder


@pytest.mark.parametrize("language", LANGUAGES[1:])
def test_course_plan_and_running_order_speak_the_language(language: str, lesson: Lesson) -> None:
    path = stages(lesson)
    english = _course_texts(lesson), running_order(lesson, "mp3", has_clips=True)
    with speaking(language):
        course = _course_texts(lesson)
        order = running_order(lesson, "mp3", has_clips=True)
        assert course_document(lesson, path).language == language
    assert not set(course) & set(english[0])
    assert order.startswith(f"# {lesson.title}")
    assert "`sound/plain.mp3`" in order
    assert not [
        line
        for line in set(order.splitlines()) & set(english[1].splitlines())
        if line and "`" not in line and not line.startswith("#")
    ]


def _course_texts(lesson: Lesson) -> list[str]:
    """Headings, paragraphs and bullets of the plan of the weeks."""
    found: list[str] = []
    for block in course_document(lesson, stages(lesson)).blocks:
        for part in block.blocks if isinstance(block, Keep) else (block,):
            if isinstance(part, Heading | Paragraph):
                found.append(str(part.text))
            elif isinstance(part, Bullets):
                found += map(str, part.items)
    return found


# Names and places ------------------------------------------------------------------------------------------------------


def test_bars_are_named_and_a_pickup_is_no_bar_0() -> None:
    assert [bars_text(3, 3), bars_text(3, 5)] == ["bar 3", "bars 3–5"]
    assert [bars_text(0, 0), bars_text(0, 2)] == ["the pickup", "pickup to bar 2"]
    with speaking("de"):
        assert [bars_text(3, 5), bars_text(0, 2)] == ["Takte 3–5", "Auftakt bis Takt 2"]
    with speaking("fr"):
        assert [bars_text(3, 5), bars_text(0, 2)] == ["mesures 3 à 5", "de la levée à la mesure 2"]


def test_a_hard_place_is_named_by_bar_and_beat() -> None:
    lesson = demo_lesson()
    for place in lesson.hard_places:
        position = lesson.position_of(place)
        assert (position.bar, position.beat) == (place.bar, int(place.beat))


@pytest.mark.parametrize(
    ("language", "tonic"), [("en", "in E♭"), ("de", "in Es"), ("fr", "en mi♭"), ("es", "en mi♭")]
)
def test_an_instrument_says_its_transposition_once(language: str, tonic: str) -> None:
    with speaking(language):
        assert instrument_title(INSTRUMENTS["alto-sax"]).endswith(f" {tonic}")
        assert not instrument_title(INSTRUMENTS["flute"]).endswith(" C")
    assert instrument_title(INSTRUMENTS["clarinet"]) == "Clarinet in B♭"


def test_notes_are_called_as_the_lesson_asks() -> None:
    lesson = demo_lesson(level=1, language="de")
    with lesson.speaking():
        assert say(Key(-2, "major")) == "B-Dur"
    with demo_lesson(level=1, language="de", naming="english").speaking():
        assert say(Key(-2, "major")) == "B♭-Dur"


def test_editions_are_titled_in_the_language(lesson: Lesson) -> None:
    edition = Edition(lesson.rendition)
    assert line_score(edition).subtitle == "level 2, jazz"
    with speaking("de"):
        assert plain_score(edition).subtitle == "schlicht"
        assert comparison_score(edition).subtitle == "schlicht und verziert, Stufe 2, Jazz"
        assert [staff.name for staff in comparison_score(edition).staves] == ["schlicht", "verziert"]


# Errors ------------------------------------------------------------------------------------------------------------


def test_a_language_that_is_not_there_is_refused() -> None:
    for language in LANGUAGES:
        check_language(language)
    with pytest.raises(OptionError) as refused:
        check_language("xx")
    assert refused.value.message.id == "no-such-language"
    with speaking("fr"):
        assert str(refused.value) == "Pas de langue «\u202fxx\u202f»\u202f: choisissez en, de, fr ou es."
    assert LessonPlan().language in LANGUAGES


def test_a_key_outside_the_instrument_is_named_in_the_language() -> None:
    lesson = demo_lesson()
    wide = transpose(lesson.tune, Interval(14, 24))
    far = (*lesson.tune.notes[:4], *wide.notes[4:])
    with pytest.raises(RangeError) as refused:
        in_key(lesson.tune, far, Key(-2, "major"), INSTRUMENTS["trumpet"])
    assert refused.value.message.id == "key-outside-instrument"
    with speaking("de"):
        assert str(refused.value).startswith("In B-Dur liegt die Linie in jeder Oktave außerhalb")
