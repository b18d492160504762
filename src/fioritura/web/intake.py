"""Bringing tunes in: uploaded bytes or typed ABC become tunes that are ready to be arranged."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from fioritura.arrange.arrangement import Arrangement, arranged
from fioritura.arrange.prepare import prepared
from fioritura.errors import FiorituraError, ReadError
from fioritura.notation.read import format_of, read_tune
from fioritura.players.instruments import instrument_named
from fioritura.players.setting import Idiom, Setting
from fioritura.tune import Tune
from fioritura.words import kept

if TYPE_CHECKING:
    from fioritura.notation.abc.reader import AbcEntry

__all__ = [
    "DEMO",
    "MOST_TUNES",
    "ReadingOptions",
    "Source",
    "check_tune",
    "demo_source",
    "each_tune",
    "facts_of",
    "first_arrangement",
    "read_source",
    "ready",
    "source_of",
]

MOST_TUNES: Final = 100
"""How many tunes of one book are taken."""

DEMO: Final = "lanterns.abc"
_SUFFIXES: Final = {"MusicXML": ".musicxml", "compressed MusicXML": ".mxl", "ABC": ".abc", "MIDI": ".mid"}


@dataclass(frozen=True, slots=True)
class ReadingOptions:
    """How a tune is read from its file: its place in a book, and whether its repeats are written out."""

    place: int | None = None
    unfolds: bool = True

    @classmethod
    def of(cls, data: Mapping[str, Any]) -> ReadingOptions:
        """From plain data."""
        place = data.get("place")
        return cls(None if place is None else int(place), bool(data.get("unfolds", True)))

    def data(self) -> dict[str, Any]:
        """As plain data."""
        return asdict(self)


@dataclass(frozen=True, slots=True)
class Source:
    """A file's content under a harmless name."""

    name: str
    content: bytes


def demo_source() -> Source:
    """The tune that comes with the program."""
    from importlib.resources import files

    return Source(DEMO, (files("fioritura.data") / DEMO).read_bytes())


def source_of(name: str, content: bytes) -> Source:
    """An upload as a source; only letters, digits and a few signs of its name are kept, and none of its path.

    Raises:
        ReadError: it is of no kind that can be read.
    """
    kind, _ = format_of(content) if content else (None, b"")
    if kind is None:
        raise ReadError("upload-empty")
    base = name.replace("\\", "/").rsplit("/", 1)[-1].rsplit(".", 1)[0]
    kept = "".join(char for char in base if char.isalnum() or char in " -_()'").strip()[:80]
    return Source((kept or "tune") + _SUFFIXES[kind], content)


def _places(source: Source) -> list[int | None]:
    """The places of a book's tunes, or just None for a file of one tune.

    Raises:
        ReadError: a line of ABC is too long.
    """
    if not source.name.endswith(".abc"):
        return [None]
    count = len(_book(source.content))
    return [None] if count <= 1 else list(range(1, min(count, MOST_TUNES) + 1))


def read_source(source: Source, reading: ReadingOptions) -> Tune:
    """The tune as it stands in its file.

    Raises:
        ReadError, TuneError: it can't be read; the message says where and why.
    """
    if reading.place is not None:
        entries = _book(source.content)
        if not 1 <= reading.place <= len(entries):
            raise ReadError("no-such-tune-in-book", count=len(entries), given=reading.place)
        tune = entries[reading.place - 1].read()
        return tune if tune.title else replace(tune, title=f"{Path(source.name).stem} {reading.place}")
    with tempfile.TemporaryDirectory(prefix="fioritura-") as folder:
        path = Path(folder, source.name)
        path.write_bytes(source.content)
        return read_tune(path)


def ready(tune: Tune, player: str, *, unfolds: bool) -> Tune:
    """The tune in an octave of the instrument, with chords, its repeats written out if wanted.

    Raises:
        RangeError: no octave holds all of it.
    """
    return prepared(tune, instrument_named(player), unfold=unfolds)


def first_arrangement(tune: Tune, player: str, level: int, idiom: Idiom | None, *, unfolds: bool) -> Arrangement:
    """The best arrangement for a player, at the tune's own tempo and feel, in its own idiom where none is given.

    Raises:
        RangeError: no octave of the tune lies on the instrument.
        OptionError: no such instrument or level.
    """
    fitting = ready(tune, player, unfolds=unfolds)
    return arranged(fitting, Setting(player, idiom=idiom, level=level).on(fitting))


def facts_of(tune: Tune) -> dict[str, Any]:
    """What the shelf says of a tune; the key as a kept message."""
    return {
        "key": kept(tune.key),
        "metre": str(tune.metre),
        "bars": sum(bar.number > 0 for bar in tune.bars),
        "quarters_per_minute": tune.quarters_per_minute,
    }


def check_tune(facts: Mapping[str, Any], reading: Mapping[str, Any], name: str, content: bytes) -> None:
    """Make sure that what is said of a tune elsewhere can be used here, and that the tune can be read from its file.

    Raises:
        ReadError: it can't.
    """
    place = reading.get("place")
    is_sound = (
        all(isinstance(facts.get(name, ""), str) for name in ("key", "metre"))
        and type(facts.get("bars", 0)) is int
        and (place is None or type(place) is int)
        and isinstance(reading.get("unfolds", True), bool)
    )
    if not is_sound:
        raise ReadError("tune-facts-unfit")
    read_source(source_of(name, content), ReadingOptions.of(reading))


@lru_cache(maxsize=1)
def _book(content: bytes) -> list[AbcEntry]:
    """The tunes of a book; of one book after the other, each of whose tunes is asked for."""
    from fioritura.notation.abc.reader import list_abc

    return list_abc(content.decode("utf-8", "replace"))


def each_tune(source: Source, *, unfolds: bool) -> Iterator[tuple[ReadingOptions, Tune | FiorituraError]]:
    """Every tune of a source, or the error that keeps it from being read."""
    for place in _places(source):
        reading = ReadingOptions(place, unfolds)
        try:
            yield reading, read_source(source, reading)
        except FiorituraError as error:
            yield reading, error
