"""Lessons for tests: the tune that comes with the program, for some player."""

from functools import cache
from importlib.resources import as_file, files

from fioritura.arrange.prepare import prepared
from fioritura.lesson.lesson import Lesson, lesson_of
from fioritura.lesson.overrides import Overrides
from fioritura.notation.read import read_tune
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.theory.pitch import Interval
from fioritura.tune import Tune, transpose
from fioritura.words import Naming


@cache
def demo_tune() -> Tune:
    with as_file(files("fioritura.data") / "lanterns.abc") as path:
        return read_tune(path)


def demo_lesson(
    player: str = "alto-sax",
    level: int = 3,
    *,
    language: str = "en",
    naming: Naming | None = None,
    up: Interval | None = None,
    overrides: Overrides | None = None,
) -> Lesson:
    tune = transpose(demo_tune(), up) if up else demo_tune()
    instrument = instrument_named(player)
    ready = prepared(tune, instrument)
    setting = Setting(Player.of(player, level), ready.quarters_per_minute, ready.feel, "jazz")
    octave = instrument.reading_octave
    return lesson_of(ready, setting, language=language, naming=naming, overrides=overrides, octave=octave)
