"""The one door for files: what a file is shows in its content, and the right reader takes it from there."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal

from fioritura.errors import FiorituraError, OptionError, ReadError
from fioritura.files import read_bytes
from fioritura.notation.lists import first_named
from fioritura.tune import Tune
from fioritura.words import Message, message, say

if TYPE_CHECKING:
    from fioritura.notation.abc.reader import AbcEntry
    from fioritura.notation.assemble import Irregular

__all__ = ["TUNE_SUFFIXES", "Format", "UnreadTune", "format_of", "read_tune", "read_tunes", "unread_tunes"]

Format = Literal["MusicXML", "compressed MusicXML", "ABC", "MIDI"]

TUNE_SUFFIXES: Final[dict[str, Format]] = {
    ".musicxml": "MusicXML",
    ".xml": "MusicXML",
    ".mxl": "compressed MusicXML",
    ".abc": "ABC",
    ".mid": "MIDI",
    ".midi": "MIDI",
}
"""What files of tunes are called, and what they then ought to hold."""

_ABC_FIELD: Final = re.compile(r"^[XK]:", re.MULTILINE)
_CONTROLS: Final = re.compile(r"[\x00-\x08\x0e-\x1f]")
_XML_STARTS: Final = (b"<", b"\xfe\xff\x00<", b"\xff\xfe<\x00", b"\x00<", b"<\x00")
_UTF16: Final = (b"\xfe\xff", b"\xff\xfe")
_OTHER_KINDS: Final = (
    (b"%PDF", "file-is-pdf"),
    (b"\x89PNG", "file-is-picture"),
    (b"\xff\xd8\xff", "file-is-picture"),
    (b"\x1f\x8b", "file-is-gzip"),
    (b"RIFF", "file-is-sound"),
    (b"ID3", "file-is-sound"),
    (b"fLaC", "file-is-sound"),
    (b"OggS", "file-is-sound"),
)
_LISTED_TUNES: Final = 10


def read_tune(
    path: str | Path,
    *,
    part: str | int | None = None,
    tune_number: int | None = None,
    title: str | None = None,
    irregular: Irregular = "refuse",
) -> Tune:
    """Read a tune from a MusicXML (plain or compressed), ABC or MIDI file.

    The content decides how a file is read, not its name. `part` names the part that holds the melody (a name, part
    of one, or a number from 1); without it the likeliest is taken and named in `part_name` and the warnings. Of a
    book, `tune_number` takes a tune by its X: number (its place from 1 where none has that number) and `title` by
    its title or part of it; without them the first is read. A tune without a title gets the file's name.

    Raises:
        ReadError: missing, damaged, unsafe, or of a kind that can't be read.
        TuneError: no melody, several notes at once, bars that do not add up (with ``irregular="refuse"``), or a
            metre or tempo out of reach.
        OptionError: there is no such part or tune.
    """
    path = Path(path)
    data = read_bytes(path)
    with _named(path):
        kind, data = format_of(data)
        if kind == "ABC":
            from fioritura.notation.abc.reader import list_abc

            entries = list_abc(_decoded(data))
            entry = _chosen(entries, tune_number, title)
            tune = entry.read(irregular=irregular, part=part)
            if len(entries) > 1 and tune_number is None and title is None:
                tune = _warned(tune, message("first-of-several-read", count=len(entries)))
        else:
            if title is not None or tune_number not in (None, 1):
                raise OptionError("one-tune-only", kind=_kind_message(kind))
            tune = _reader(kind)(data, part, irregular)
        return _dressed(tune, path, kind)


def read_tunes(path: str | Path, *, irregular: Irregular = "refuse") -> Iterator[Tune]:
    """All tunes of a file one after the other, each read when it is asked for; a file of one tune gives one.

    Raises:
        ReadError, TuneError: as in `read_tune`, when the tune's turn comes.
    """
    return (tune.read(irregular=irregular) for tune in unread_tunes(path))


@dataclass(frozen=True, slots=True)
class UnreadTune:
    """A tune of a file that has not been read yet, with all that it takes to read it elsewhere.

    `place` is its place in the file, from 1; `data` holds a file of one tune, `entry` a tune in ABC.
    """

    path: Path
    place: int
    kind: Format
    data: bytes = b""
    entry: AbcEntry | None = None

    @property
    def content(self) -> bytes:
        """A file that holds this tune alone; of a book, its own lines and the book's header."""
        return str(self.entry.text).encode() if self.entry else self.data

    @property
    def title(self) -> str:
        """Its title where that shows before it is read: in a book."""
        return self.entry.title if self.entry else ""

    @property
    def label(self) -> str:
        """How messages name it: ``"tune X:12, The Swallow"``; empty for the only tune of a file."""
        source = self.entry.source if self.entry else None
        return say(source) if source else ""

    def read(self, *, irregular: Irregular = "refuse") -> Tune:
        """The tune.

        Raises:
            ReadError, TuneError: as in `read_tune`.
        """
        with _named(self.path):
            if self.entry:
                return _dressed(self.entry.read(irregular=irregular), self.path, self.kind)
            return _dressed(_reader(self.kind)(self.data, None, irregular), self.path, self.kind)


def unread_tunes(path: str | Path) -> list[UnreadTune]:
    """The tunes of a file, none of them read yet.

    Raises:
        ReadError: missing, too large, or of a kind that can't be read.
    """
    path = Path(path)
    data = read_bytes(path)
    with _named(path):
        kind, data = format_of(data)
        if kind != "ABC":
            return [UnreadTune(path, 1, kind, data)]
        from fioritura.notation.abc.reader import list_abc

        entries = list_abc(_decoded(data))
        return [UnreadTune(path, place, kind, entry=entry) for place, entry in enumerate(entries, start=1)]


def format_of(data: bytes) -> tuple[Format, bytes]:
    """What the content is, and the content without a wrapping (a MIDI file inside a RIFF chunk).

    Raises:
        ReadError: it is none of the formats; the message says what it is instead where that can be seen.
    """
    if data.startswith(b"MThd"):
        return "MIDI", data
    if data.startswith(b"RIFF") and data[8:12] == b"RMID" and (start := data.find(b"MThd", 12, 64)) > 0:
        return "MIDI", data[start:]
    if data.startswith(b"PK\x03\x04"):
        return "compressed MusicXML", data
    if data.removeprefix(b"\xef\xbb\xbf").lstrip().startswith(_XML_STARTS):
        if re.match(rb"\s*(<!doctype html|<html)", data.removeprefix(b"\xef\xbb\xbf"), re.IGNORECASE):
            raise ReadError("file-is-web-page")
        return "MusicXML", data.removeprefix(b"\xef\xbb\xbf").lstrip() if data[:2] not in _UTF16 else data
    for signature, what_it_is in _OTHER_KINDS:
        if data.startswith(signature):
            raise ReadError(what_it_is)
    text = _decoded(data)
    if _CONTROLS.search(text):
        raise ReadError("file-is-binary")
    if not _ABC_FIELD.search(text.replace("\r", "\n")):
        raise ReadError("file-is-text")
    return "ABC", data


def _decoded(data: bytes) -> str:
    """UTF-8 as the ABC standard wants it, or Windows and Latin-1 as older books have it."""
    for encoding in ("utf-16",) if data[:2] in _UTF16 else ("utf-8-sig", "cp1252"):
        try:
            return data.decode(encoding)
        except UnicodeDecodeError:
            continue
    return data.decode("latin-1")


def _reader(kind: Format) -> Callable[[bytes, str | int | None, Irregular], Tune]:
    """The reader of a format that holds one tune; imported only when it is needed."""
    if kind == "MIDI":
        from fioritura.notation.midi.reader import read_midi

        return lambda data, part, irregular: read_midi(data, part=part, irregular=irregular)
    from fioritura.notation.musicxml.file import unpacked
    from fioritura.notation.musicxml.reader import read_musicxml

    is_packed = kind == "compressed MusicXML"
    return lambda data, part, irregular: read_musicxml(
        unpacked(data) if is_packed else data, part=part, irregular=irregular
    )


def _chosen(entries: list[AbcEntry], number: int | None, title: str | None) -> AbcEntry:
    if title is not None:
        wanted = title.casefold().strip()
        exact = [entry for entry in entries if wanted in (name.casefold() for name in entry.titles)]
        found = exact or [entry for entry in entries if any(wanted in name.casefold() for name in entry.titles)]
        if found and (number is None or number in (entry.number for entry in found)):
            return next(entry for entry in found if number in (None, entry.number))
        raise OptionError("no-tune-titled", given=title, tunes=_listed(entries))
    if number is None:
        return entries[0]
    by_field = [entry for entry in entries if entry.number == number]
    if by_field:
        return by_field[0]
    if 1 <= number <= len(entries):
        return entries[number - 1]
    raise OptionError("no-tune-numbered", given=str(number), tunes=_listed(entries))


def _listed(entries: list[AbcEntry]) -> tuple[str | Message, ...]:
    names = [
        f"{place if entry.number is None else entry.number} {entry.title}".strip()
        for place, entry in enumerate(entries, start=1)
    ]
    return first_named(names, _LISTED_TUNES)


def _dressed(tune: Tune, path: Path, kind: Format) -> Tune:
    """The tune with the file's name for a missing title, and a warning where the name says another format."""
    named = TUNE_SUFFIXES.get(path.suffix.lower())
    if named is not None and named != kind:
        tune = _warned(tune, message("file-named-otherwise", ending=path.suffix, kind=_kind_message(kind)))
    return tune if tune.title else replace(tune, title=path.stem.replace("_", " ").strip() or path.name)


def _warned(tune: Tune, warning: Message) -> Tune:
    return replace(tune, warnings=(warning, *tune.warnings))


def _kind_message(kind: Format) -> Message:
    return message("file-kind", kind="compressed" if kind == "compressed MusicXML" else kind)


@contextmanager
def _named(path: Path) -> Iterator[None]:
    """Put the file's name before the message of any error that comes out."""
    try:
        yield
    except FiorituraError as error:
        error.put_in("problem-in-file", name=path.name)
        raise
