"""ABC text cut into tunes, lines and tokens, each with its place.

Source: the abc music standard 2.1 (December 2011), abcnotation.com; section numbers in this package's comments are
its own. The lexer knows shapes only; what a token means is said by `abc_fields`, `abc_signs` and `abc_voice`.

Conventions: lines and columns count from 1 in the text as given. Known deviations: a body line such as ``B:||`` is
music, while ``B:Ryan's`` is a field (section 3 allows neither B: nor G: fields in the body, but books hold them).
Signs garbled by e-mail are understood: ``=3D`` before a note is ``=``, and ``=20`` is a space.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal, NamedTuple, cast

from fioritura.notation.abc.faults import AbcError
from fioritura.words import message

__all__ = [
    "Field",
    "Kind",
    "Line",
    "Token",
    "TuneText",
    "header_fields",
    "music_tokens",
    "read_field",
    "split_book",
]

MAX_LINE_CHARACTERS: Final = 100_000

Kind = Literal[
    "note",
    "rest",
    "bar_rest",
    "bar",
    "ending",
    "quoted",
    "graces",
    "tuplet",
    "slur_start",
    "slur_stop",
    "tie",
    "broken",
    "decoration",
    "sign",
    "chord",
    "chord_end",
    "field",
    "overlay",
    "reserved",
    "line_end",
    "other",
]


class Token(NamedTuple):
    """The smallest piece of music code. A field's text is ``"K:G"``, without brackets."""

    kind: Kind
    text: str
    line: int
    column: int


class Line(NamedTuple):
    """A line of the text as it stands, and its number."""

    number: int
    text: str

    @property
    def is_continued(self) -> bool:
        """True when a backslash joins the next line of music to this one (section 6.1.1)."""
        return "\\" in self.text and without_comment(self.text).rstrip().endswith("\\")


class Field(NamedTuple):
    """An information field: its letter and what follows the colon, at its place."""

    letter: str
    text: str
    token: Token


@dataclass(frozen=True, slots=True)
class TuneText:
    """The lines of one tune, from X: on, with the lines of the file's header and of its version comment."""

    lines: tuple[Line, ...]
    file_header: tuple[Line, ...] = ()
    is_strict: bool = False
    """True in a file that begins with ``%abc-2.1`` or later (section 2.1)."""

    def __str__(self) -> str:
        """A text that holds this tune alone, and reads as the same tune."""
        version = ["%abc-2.1"] if self.is_strict and not self.file_header else []
        header = [line.text for line in self.file_header]
        gap = [""] if header else []
        return "\n".join([*version, *header, *gap, *(line.text for line in self.lines)])


_LENGTH: Final = r"[0-9]*(?:/+[0-9]*)?"
NOTE: Final = rf"(?:\^\^?|__?|=(?:3D(?=[A-Ga-g]))?)?[A-Ga-g][,']*{_LENGTH}"

_TOKEN: Final = re.compile(
    rf"""[\s`$\\]*(?:
      (?P<note>{NOTE})
    | (?P<bar>\.?(?:\[(?=\|))?(?:\||::|:[ ]*(?=\|))(?:[|:\]]|\[(?=[|]))*(?:[0-9][0-9,\-]*)?)
    | (?P<rest>[zx]{_LENGTH})
    | (?P<field>\[[A-Za-z]:[^\[\]]*\])
    | (?P<ending>\[[0-9][0-9,\-]*)
    | (?P<quoted>"[^"]*")
    | (?P<graces>\{{[^{{}}]*\}})
    | (?P<tuplet>\([0-9]+(?::[0-9]*){{0,2}})
    | (?P<slur_start>\.?\()
    | (?P<slur_stop>\.?\))
    | (?P<tie>\.?-)
    | (?P<broken>>+|<+)
    | (?P<decoration>![^!\s|\[\]:"]+!|\+[^+\s|\[\]:"]+\+)
    | (?P<bar_rest>[ZX][0-9]*)
    | (?P<sign>[~.H-Wh-w])
    | (?P<chord_end>\]{_LENGTH})
    | (?P<chord>\[)
    | (?P<spacer>y[0-9]*)
    | (?P<overlay>&+)
    | (?P<reserved>[\#*;?@]+|=20|=$)
    | (?P<linebreak>!)
    | (?P<other>.)
    )""",
    re.VERBOSE,
)
_FIELD_LINE: Final = re.compile(r"([A-Za-z+]):(.*)", re.DOTALL)
_BODY_FIELD_LINE: Final = re.compile(r"(?:[H-Wh-w+]:|[A-GXYZ]:(?![ ]*[|:\]]))")
_COMMENT: Final = re.compile(r"(?<!\\)%.*")
_NEWLINE: Final = re.compile(r"\r\n?|\n")
_TUNE_START: Final = re.compile(r"X:")
_VERSION: Final = re.compile(r"%abc-(\d{1,4})\.(\d{1,4})")
_SPACING: Final = frozenset({"spacer", "linebreak"})


def split_book(text: str) -> list[TuneText]:
    """The tunes of a text, in order: one for each X: field, or the whole text where there is none.

    The file header is the block of fields before the first tune (section 2.2.2).

    Raises:
        AbcError: a line is longer than 100,000 characters.
    """
    version = _VERSION.match(text.lstrip("\ufeff"))
    is_strict = version is not None and (int(version[1]), int(version[2])) >= (2, 1)
    lines = [Line(number, line) for number, line in enumerate(_NEWLINE.split(text.lstrip("\ufeff")), start=1)]
    for line in lines:
        if len(line.text) > MAX_LINE_CHARACTERS:
            raise AbcError(
                message("abc-line-too-long", count=len(line.text), limit=MAX_LINE_CHARACTERS),
                line=line.number,
                column=1,
                text=line.text[:40],
            )
    starts = [index for index, line in enumerate(lines) if _TUNE_START.match(line.text)]
    if not starts:
        return [TuneText(tuple(lines), is_strict=is_strict)]
    header = _file_header(lines[: starts[0]])
    ends = [*starts[1:], len(lines)]
    return [TuneText(tuple(lines[start:end]), header, is_strict) for start, end in zip(starts, ends, strict=True)]


def _file_header(lines: list[Line]) -> tuple[Line, ...]:
    """The first block of lines, if it consists of fields and comments."""
    block: list[Line] = []
    for line in lines:
        if not line.text.strip():
            break
        if not line.text.startswith("%") and not _FIELD_LINE.match(line.text):
            return ()
        block.append(line)
    return tuple(block)


def without_comment(text: str) -> str:
    """The line up to its ``%``; an escaped ``\\%`` is no comment."""
    return _COMMENT.sub("", text) if "%" in text else text


def read_field(line: Line, *, in_body: bool = False) -> Field | None:
    """The information field that a line is, None for any other line.

    A stylesheet directive ``%%name value`` is the same as ``I:name value`` (section 3.1.17).
    """
    if line.text.startswith("%%"):
        return Field("I", line.text[2:].strip(), Token("field", line.text, line.number, 1))
    text = without_comment(line.text)
    if in_body and not _BODY_FIELD_LINE.match(text):
        return None
    match = _FIELD_LINE.match(text)
    return Field(match[1], match[2].strip(), Token("field", text.rstrip(), line.number, 1)) if match else None


def header_fields(lines: tuple[Line, ...]) -> Iterator[Field]:
    """The fields of header lines, continued ones (``+:``, section 3.3) joined; other lines are skipped."""
    last: Field | None = None
    for line in lines:
        field = read_field(line)
        if field is None:
            continue
        if field.letter == "+" and last:
            last = Field(last.letter, f"{last.text} {field.text}", last.token)
            continue
        if last:
            yield last
        last = field
    if last:
        yield last


def music_tokens(line: Line) -> Iterator[Token]:
    """The tokens of a line of music code, without spaces, spacers, back quotes and line-break signs.

    A character that begins nothing is a token of kind ``"other"``.
    """
    text = without_comment(line.text).rstrip(" \t`$\\")
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup
        if kind is None or kind in _SPACING:
            continue
        piece = match[kind]
        text_of = piece[1:-1].lstrip() if kind == "field" else piece
        yield Token(cast(Kind, kind), text_of, line.number, match.start(kind) + 1)
