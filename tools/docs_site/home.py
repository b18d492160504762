"""What the first page shows: the opening of the demo tune, plain over ornamented, as the program makes it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from importlib.resources import as_file, files
from typing import Final

from fioritura.accompany.excerpt import excerpt
from fioritura.accompany.form import Chorus
from fioritura.arrange.prepare import prepared
from fioritura.lesson.lesson import Lesson, figure_labels, lesson_of
from fioritura.lesson.soundtrack import balance_of, balanced
from fioritura.notation.read import read_tune
from fioritura.notation.score import Score, Staff
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.sound.session import Session, played
from fioritura.words import message, say
from tools.docs_site.media import Media, Sound, both_widths

__all__ = ["Home"]

PLAYER: Final = "alto-sax"
LEVEL: Final = 3
LAST_BAR: Final = 8
_MEDIA: Final = "music/opening"


@dataclass(frozen=True)
class Home:
    """The demo tune ornamented for a player of middle level."""

    lesson: Lesson

    @classmethod
    def made(cls) -> Home:
        """The demo tune read and ornamented now."""
        with as_file(files("fioritura.data") / "lanterns.abc") as path:
            tune = read_tune(path)
        player = Player.of(PLAYER, LEVEL)
        tune = prepared(tune, player.instrument)
        return cls(lesson_of(tune, Setting(player, tune.quarters_per_minute, tune.feel)))

    def media(self) -> Iterator[Media]:
        """The opening as picture, and as sound: plain, then ornamented, with the band."""
        lesson = self.lesson
        names = (say(message("line-plain")), say(message("line-ornamented")))
        line = lesson.rendition.line
        first = lesson.tune.bars[0].number
        plain = excerpt(lesson.tune, first, LAST_BAR)
        ornamented = excerpt(replace(lesson.tune, notes=line), first, LAST_BAR)
        labels = [mark for mark in figure_labels(lesson, lesson.rendition) if mark.onset_ticks < plain.duration_ticks]
        staves = (
            Staff(plain.notes, names[0], lesson.instrument),
            Staff(ornamented.notes, names[1], lesson.instrument, tuple(labels), shows_chords=False),
        )
        yield from both_widths(_MEDIA, Score(plain, staves))
        choruses = (Chorus(names[0], plain.notes), Chorus(names[1], ornamented.notes))
        session = Session(
            plain, choruses, lesson.instrument, lesson.feel, lesson.setting.quarters_per_minute, holds_last=False
        )
        yield Sound(f"{_MEDIA}.mp3", balanced(played(session), balance_of(lesson)))
