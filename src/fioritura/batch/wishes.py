"""What a batch is to make of each tune: its pieces, and for whom."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

from fioritura.errors import OptionError
from fioritura.lesson.pack import SECTIONS
from fioritura.lesson.plan import check_language
from fioritura.notation.assemble import Irregular
from fioritura.notation.engraving.page import Paper
from fioritura.notation.line import Line
from fioritura.players.instruments import instrument_named
from fioritura.players.limits import LEVELS
from fioritura.players.setting import Idiom
from fioritura.techniques.table import wanted_techniques
from fioritura.tune import Feel
from fioritura.words import Message, message

__all__ = ["AUDIO", "FORMATS", "KINDS", "Kind", "Output", "Wishes"]

Kind = Literal["notation", "sound", "pack", "report"]

KINDS: Final[tuple[Kind, ...]] = ("notation", "sound", "pack", "report")
"""What can be made of a tune."""

FORMATS: Final = ("musicxml", "abc", "mid", "svg", "pdf")
"""The files of a notation, by ending."""

AUDIO: Final = ("mp3", "flac", "wav")


@dataclass(frozen=True, slots=True)
class Output:
    """One thing to make of a tune: a file, or the folder of a pack, at `path` in the tune's own folder."""

    kind: Kind
    path: str
    level: int
    ending: str = ""

    @property
    def needs_sound(self) -> bool:
        """True when the piece depends on the soundfont."""
        return self.kind in {"sound", "pack"}


@dataclass(frozen=True, slots=True)
class Wishes:
    """What is made (`kinds`, at each of `levels`), for which player and in what manner.

    `tempo` is in beats a minute, None for the tune's own; `octave` None takes the customary octave, or the
    nearest that holds the tune. `key` is the key that each tune is moved to (a name, or ``"best"``), its own where it is
    empty; `line` which of several notes at once is read. `asked` is the level whose arrangement the takes were to play, 0 for none.
    """

    kinds: tuple[Kind, ...] = ("notation",)
    levels: tuple[int, ...] = (3,)
    formats: tuple[str, ...] = ("musicxml",)
    audio: str = "mp3"
    player: str = "alto-sax"
    idiom: Idiom | None = None
    feel: Feel | None = None
    tempo: float | None = None
    density: float = 1.0
    only: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    seed: int = 0
    irregular: Irregular = "refuse"
    line: Line = "top"
    key: str = ""
    unfold: bool = False
    octave: int | None = None
    sections: tuple[str, ...] = SECTIONS[:-1]
    language: str = "en"
    paper: Paper = "a4"
    asked: int = 0

    def __post_init__(self) -> None:
        _refuse_others(message("batch-kind"), self.kinds, KINDS)
        _refuse_others(message("batch-format"), self.formats, FORMATS)
        _refuse_others(message("batch-audio"), (self.audio,), AUDIO)
        _refuse_others(message("batch-section"), self.sections, SECTIONS)
        _refuse_others(message("batch-level"), self.levels, LEVELS)
        _refuse_others(message("batch-asked"), (self.asked,), (0, *LEVELS))
        if self.octave is not None and not -3 <= self.octave <= 3:
            raise OptionError("octave-too-far", given=self.octave)
        instrument_named(self.player)
        wanted_techniques(max(self.levels), self.only, self.without)
        check_language(self.language)

    def pieces(self) -> Iterator[Output]:
        """The pieces of any tune; reports on takes come on top."""
        for level in self.levels:
            if "notation" in self.kinds:
                for ending in self.formats:
                    yield Output("notation", f"level-{level}.{ending}", level, ending)
            if "sound" in self.kinds:
                yield Output("sound", f"level-{level}.{self.audio}", level, self.audio)
            if "pack" in self.kinds:
                yield Output("pack", f"level-{level}-pack", level)

    def bearing_on(self, piece: Output) -> tuple[object, ...]:
        """All that a piece's content depends on, beside the tune and the program."""
        manner = (
            *(self.player, piece.level, self.idiom, self.feel, self.tempo, self.density),
            *(self.only, self.without, self.seed, self.irregular, self.unfold, self.octave),
            *(self.line, self.key),
        )
        if piece.kind == "pack":
            return (*manner, self.sections, self.language, self.paper, self.audio)
        if piece.kind == "report":
            return (*manner, self.asked, self.language)
        return (*manner, self.paper) if piece.ending == "pdf" else manner


def _refuse_others(what: Message, given: tuple[object, ...], known: tuple[object, ...]) -> None:
    if not given:
        raise OptionError("batch-none-named", what=what, known=tuple(map(str, known)))
    for one in given:
        if one not in known:
            raise OptionError("batch-unknown", what=what, given=str(one), known=tuple(map(str, known)))
