"""What the readers of files say: in every language, with the same facts, and with nothing that did not come through it.

The expected sentences are what a musician of the language would say (common practice).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Final

import pytest

from fioritura.cli import main
from fioritura.errors import FiorituraError, TuneError
from fioritura.notation.abc.faults import AbcError
from fioritura.notation.abc.reader import read_abc
from fioritura.notation.assemble import quarter_notes
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.notation.read import format_of
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from fioritura.words import LANGUAGES, Message, message, say, speaking
from fioritura.words.speech import PSEUDO, known_ids

HEAD: Final = "X:1\nT:A\nM:4/4\nL:1/8\nK:C\n"
BOOK: Final = HEAD + "C8|D9|E8|\n\n" + HEAD.replace("X:1", "X:2")
XML: Final = b"<score-partwise><part id='P1'><measure number='1'>%s</measure></part></score-partwise>"

REFUSED: Final[dict[str, Callable[[], object]]] = {
    "bars-irregular": lambda: read_abc(HEAD + "C8|D9|E8|"),
    "abc-notes-together": lambda: read_abc(HEAD + "[CE]8|"),
    "abc-voices-together": lambda: read_abc(HEAD + "C8&E8|"),
    "abc-no-metre": lambda: read_abc(HEAD.replace("4/4", "x") + "C8|"),
    "no-metre": lambda: read_abc(HEAD.replace("4/4", "4/5") + "C8|"),
    "abc-no-mode": lambda: read_abc(HEAD.replace("K:C", "K:Cxyz") + "C8|"),
    "abc-unknown-sign": lambda: read_abc(HEAD + "C4 \u00a7 D4|"),
    "abc-no-key-no-music": lambda: read_abc("X:1\n"),
    "xml-element-missing": lambda: read_musicxml(XML % b"<note><rest/></note>"),
    "xml-key-too-far": lambda: read_musicxml(XML % b"<attributes><key><fifths>11</fifths></key></attributes>"),
    "xml-damaged": lambda: read_musicxml(b"<score-partwise>"),
    "file-is-pdf": lambda: format_of(b"%PDF-1.7"),
    "file-is-text": lambda: format_of(b"hello"),
}
"""What is wrong, by the id of what is said of it."""


def error_of(read: Callable[[], object]) -> FiorituraError:
    with pytest.raises(FiorituraError) as caught:
        read()
    return caught.value


def kept() -> Tune:
    """A tune in which much is guessed or left out."""
    text = (
        HEAD.replace("K:C", "K:C\nm:x=y")
        + '!4!C2[CE]2 "G9zz"D2-E2|D9|E4 \u00a7 )F4|"^word"z8|\nw:la la\nw:lo lo\n\nC8|'
    )
    return read_abc(text, irregular="keep")[0]


@pytest.mark.parametrize("id", REFUSED)
def test_what_is_wrong_is_named_whatever_place_is_said_before_it(id: str) -> None:
    assert error_of(REFUSED[id]).core.id == id


@pytest.mark.parametrize("language", LANGUAGES[1:])
@pytest.mark.parametrize("id", REFUSED)
def test_errors_speak_every_language(id: str, language: str) -> None:
    error = error_of(REFUSED[id])
    english = str(error)
    with speaking(language):
        assert str(error) != english and str(error)


def test_an_error_that_is_put_in_a_file_keeps_its_place_and_what_it_is() -> None:
    error = error_of(lambda: read_abc(HEAD + "C4 \u00a7 D4|"))
    error.put_in("problem-in-file", name="my.abc")
    assert isinstance(error, AbcError)
    assert str(error).startswith("my.abc: line 6, column 4, “\u00a7”: no sign of ABC")
    assert (error.core, error.problem, error.line) == (error.problem, message("abc-unknown-sign"), 6)


@pytest.mark.parametrize("music", ["C8|D9|E8|", "[CE]8|"])
def test_the_command_line_adds_the_option_that_helps(
    music: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "my.abc").write_text(HEAD + music, encoding="utf-8")
    assert main(["spots", str(tmp_path / "my.abc")]) == 2
    said = capsys.readouterr().err
    assert "my.abc: " in said and said.rstrip().endswith(("(--irregular keep keeps them)", "keeps the top note)"))


def test_a_book_names_its_tune_before_errors_and_warnings() -> None:
    with pytest.raises(TuneError, match=r"^tune X:1, A: bar 2 holds 4\.5 quarter notes where 4/4 has 4: "):
        read_abc(BOOK)
    tune = read_abc(BOOK + "C8|", irregular="keep")[0]
    with speaking("fr"):
        assert str(tune.warnings[-1]).startswith("air X:1, A\u00a0: mesure 2\u00a0: 4,5 noires, alors")


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", ("1 quarter note", "2.5 quarter notes", "1/3 quarter notes", "2 2/3 quarter notes")),
        ("de", ("1 Viertel", "2,5 Viertel", "1/3 Viertel", "2 2/3 Viertel")),
        ("fr", ("1 noire", "2,5 noires", "1/3 de noire", "2 2/3 de noire")),
        ("es", ("1 negra", "2,5 negras", "1/3 de negra", "2 2/3 de negra")),
    ],
)
def test_lengths(language: str, words: tuple[str, ...]) -> None:
    lengths = (QUARTER, 5 * QUARTER // 2, QUARTER // 3, 8 * QUARTER // 3)
    with speaking(language):
        assert tuple(say(quarter_notes(length)) for length in lengths) == words


def test_a_short_pickup_is_no_bar_0() -> None:
    with pytest.raises(TuneError, match=r"^the pickup has a tempo of 999 "):
        read_musicxml(
            XML.replace(b"</measure>", b"</measure><measure><note><rest/><duration>4</duration></note></measure>")
            % b"<attributes><time><beats>4</beats><beat-type>4</beat-type></time></attributes><sound tempo='999'/>"
            b"<note><pitch><step>C</step><octave>4</octave></pitch><duration>1</duration></note>"
        )


def plain_words(said: Message) -> set[str]:
    """The words of a message that are not in the letters of the pseudo-language."""
    with speaking(PSEUDO):
        return set(re.findall(r"[a-z]{2,}", str(said)))


def test_all_that_is_said_comes_through_words() -> None:
    allowed = {"zz", "word"}
    warnings = kept().warnings
    assert {"bar-kept", "chord-kept-as-text", "abc-signs-left-out", "abc-top-notes", "abc-ties-as-slurs"} <= {
        warning.id for warning in warnings
    }
    for warning in warnings:
        assert plain_words(warning) <= allowed
    for id, read in REFUSED.items():
        names = {"abc-no-mode": {"maj", "min", "dor", "phr", "lyd", "mix", "loc", "exp", "xyz", "Cxyz"}}.get(
            id, set()
        )
        files = {"xml-element-missing": {"duration"}}.get(id, set())
        if id != "xml-damaged":  # its reason is the parser's
            assert plain_words(error_of(read).message) <= names | files, id


def test_no_text_of_the_core_names_an_option_of_the_command_line() -> None:
    for language in LANGUAGES:
        for id in known_ids(language):
            if id in REFUSED:
                with speaking(language):
                    assert " --" not in str(error_of(REFUSED[id]))
