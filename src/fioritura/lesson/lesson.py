"""A lesson: a tune, its performance and its examples, with all that the parts of a pack share."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final

from fioritura.accompany.feels import BandFeel, default_feel
from fioritura.arrange.arranger import choose_figures
from fioritura.arrange.playable import places_to_practise
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import Survey, survey
from fioritura.lesson.catalogue import Catalogue, NoteNames, catalogue
from fioritura.lesson.edition import sounding_start
from fioritura.lesson.example import Example, examples_of
from fioritura.lesson.overrides import Overrides
from fioritura.notation.engraving.engrave import System, engrave_systems
from fioritura.notation.engraving.page import Legend, Paper, print_area_mm
from fioritura.notation.engraving.sheet import legend_entries
from fioritura.notation.score import Label, Score
from fioritura.players.instruments import Instrument
from fioritura.players.playability import HardPlace
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from fioritura.unfold import unfolded

__all__ = ["Drawn", "Engraving", "Lesson", "drawn_here", "figure_labels", "figure_legend", "lesson_of", "lesson_on"]

LADDER: Final = (0.6, 0.7, 0.8, 0.9, 1.0)
"""Shares of the goal tempo, from the first practice to the performance."""


@dataclass(frozen=True, slots=True)
class Engraving:
    """Music to engrave: a score and how large; the same engraving gives the same systems."""

    score: Score
    width_mm: float
    staff_mm: float
    shows_tempo: bool = True
    bars_per_system: int | None = None

    def systems(self) -> tuple[System, ...]:
        """Engrave it.

        Raises:
            ToolError: the engraver is missing or can't lay out the music.
        """
        return engrave_systems(
            self.score,
            width_mm=self.width_mm,
            staff_mm=self.staff_mm,
            shows_tempo=self.shows_tempo,
            bars_per_system=self.bars_per_system,
        )


Drawn = Mapping[Engraving, tuple[System, ...]]
"""Engraved music by what it was engraved from."""


def drawn_here(engravings: list[Engraving]) -> Drawn:
    """Engrave one after the other in this process."""
    return {engraving: engraving.systems() for engraving in dict.fromkeys(engravings)}


@dataclass(frozen=True)
class Lesson:
    """What every part of a pack is made from. `examples` stand easiest first."""

    tune: Tune
    setting: Setting
    rendition: Rendition
    examples: tuple[Example, ...]
    feel: BandFeel
    words: Catalogue
    overrides: Overrides = field(default_factory=Overrides)
    paper: Paper = "a4"
    hard_places: tuple[HardPlace, ...] = ()
    octave: int = 0
    """By how many octaves the tune was moved for the handout's player."""

    @property
    def title(self) -> str:
        """The teacher's title, or the tune's."""
        return self.overrides.get("title", self.tune.title) or self.words("untitled")

    @property
    def composer(self) -> str:
        """The teacher's word on the composer, or the tune's."""
        return self.overrides.get("composer", self.tune.composer)

    @property
    def instrument(self) -> Instrument:
        """What the player of the handout plays."""
        return self.setting.instrument

    @property
    def beat_quarters(self) -> float:
        """Quarter notes in a beat."""
        return self.tune.metre.beat_ticks / QUARTER

    @property
    def ladder(self) -> tuple[int, ...]:
        """The tempos of practice, in beats a minute: from a slow one to the goal."""
        goal = self.setting.quarters_per_minute / self.beat_quarters
        steps = dict.fromkeys(max(round(goal * share), 20) for share in LADDER)
        return tuple(steps)

    @property
    def width_mm(self) -> float:
        """Width of a page between its margins."""
        return print_area_mm(self.paper)[0]

    @property
    def instrument_line(self) -> str:
        """The handout's instrument as a page names it."""
        return self.words.instrument_line(self.instrument)

    def of(self, technique: Technique, field: str) -> str:
        """A text of a technique: the teacher's, or the catalogue's."""
        own = self.overrides.techniques.get(technique.id, {})
        return own.get(field) or self.words.technique(technique, field)

    def tempo_text(self, beats_per_minute: float) -> str:
        """A tempo as it is printed: ``"♩ = 132"``."""
        return f"{self.words.beat_sign(self.tune.metre)} = {beats_per_minute:g}"


def figure_labels(lesson: Lesson, rendition: Rendition) -> tuple[Label, ...]:
    """The names over the figures of a rendition of the lesson's tune."""
    return tuple(
        Label(sounding_start(lesson.tune, figure), lesson.of(technique_named(figure.technique), "label"), number)
        for number, figure in enumerate(rendition.figures)
    )


def figure_legend(lesson: Lesson, rendition: Rendition) -> tuple[Legend, ...]:
    """The labels of a rendition explained, with their bars; nothing where there are none."""
    uses = []
    for figure in rendition.figures:
        technique = technique_named(figure.technique)
        bar = lesson.tune.beat_at(sounding_start(lesson.tune, figure))[0]
        uses.append((lesson.of(technique, "label"), lesson.of(technique, "name"), bar))
    return (Legend(lesson.words("handout.performance.legend"), legend_entries(uses)),) if uses else ()


def lesson_of(
    tune: Tune,
    setting: Setting,
    *,
    seed: int = 0,
    only: tuple[str, ...] = (),
    without: tuple[str, ...] = (),
    language: str = "en",
    note_names: NoteNames | None = None,
    overrides: Overrides | None = None,
    paper: Paper = "a4",
    octave: int = 0,
) -> Lesson:
    """Survey and ornament a tune, and choose an example for each technique.

    `octave` says by how many octaves the tune has been moved from where its file has it.

    Raises:
        OptionError: an unknown technique or language.
    """
    found = survey(tune, setting, only, without)
    return lesson_on(
        found,
        choose_figures(found, seed=seed),
        language=language,
        note_names=note_names,
        overrides=overrides,
        paper=paper,
        octave=octave,
    )


def lesson_on(
    found: Survey,
    rendition: Rendition,
    *,
    is_shown: Callable[[Figure], bool] = lambda figure: True,
    language: str = "en",
    note_names: NoteNames | None = None,
    overrides: Overrides | None = None,
    paper: Paper = "a4",
    octave: int = 0,
) -> Lesson:
    """A lesson on a rendition that has been chosen; only figures that `is_shown` holds for become examples.

    Raises:
        OptionError: an unknown language.
    """
    tune, setting = found.tune, found.setting
    return Lesson(
        tune,
        setting,
        rendition,
        examples_of(found, rendition, is_shown),
        default_feel(unfolded(tune), is_folk=setting.idiom == "folk"),
        catalogue(language, note_names),
        overrides or Overrides(),
        paper,
        places_to_practise(rendition),
        octave,
    )
