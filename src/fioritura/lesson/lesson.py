"""A lesson: a tune, its performance and its examples, with all that the parts of a pack share."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from typing import Final

from fioritura.accompany.feels import BandFeel, default_feel
from fioritura.arrange.arranger import choose_figures
from fioritura.arrange.plan import Plan
from fioritura.arrange.playable import places_to_practise
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import Survey, survey
from fioritura.lesson.edition import chorus_labels, sounding_start
from fioritura.lesson.example import Example, examples_of
from fioritura.lesson.overrides import Overrides
from fioritura.notation.engraving.engrave import System, engrave_systems
from fioritura.notation.engraving.page import Legend, Paper, print_area_mm
from fioritura.notation.engraving.sheet import instrument_title, legend_entries, legend_of
from fioritura.notation.score import Label, Score
from fioritura.players.instruments import Instrument
from fioritura.players.playability import HardPlace
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import QUARTER
from fioritura.theory.position import Position
from fioritura.tune import Tune
from fioritura.unfold import unfolded
from fioritura.words import LANGUAGES, Naming, capital, message, say, speaking

__all__ = [
    "Drawn",
    "Engraving",
    "Lesson",
    "drawn_here",
    "figure_labels",
    "figure_legend",
    "lesson_of",
    "lesson_on",
]

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
    """What every part of a pack is made from: the tune `once`, as its file has it, and `tune`, the same or written out as
    often as the plan of the rendition says. `examples` stand easiest first, those of the performance before others.

    Its texts are given in the language that is spoken; `speaking` speaks the lesson's own, and calls notes as `naming`
    says (None: as usual in that language).
    """

    tune: Tune
    setting: Setting
    rendition: Rendition
    examples: tuple[Example, ...]
    feel: BandFeel
    language: str = LANGUAGES[0]
    naming: Naming | None = None
    overrides: Overrides = field(default_factory=Overrides)
    paper: Paper = "a4"
    hard_places: tuple[HardPlace, ...] = ()
    octave: int = 0
    """By how many octaves the tune was moved for the handout's player."""

    own: Tune | None = None
    """The tune once, where the performance goes over it more often."""

    @property
    def once(self) -> Tune:
        """The tune once, its repeats as its file has them."""
        return self.own or self.tune

    @property
    def plan(self) -> Plan:
        """The plan of the performance."""
        return self.rendition.plan or Plan.usual(1)

    def speaking(self) -> AbstractContextManager[None]:
        """Speak the lesson's language in what follows."""
        return speaking(self.language, self.naming)

    @property
    def title(self) -> str:
        """The teacher's title, or the tune's."""
        return self.overrides.get("title", self.tune.title) or say(message("tune-untitled"))

    @property
    def subtitle(self) -> str:
        """The teacher's subtitle, or level and idiom."""
        usual = message("handout-subtitle", level=self.setting.level, idiom=self.setting.idiom)
        return self.overrides.get("subtitle", say(usual))

    @property
    def composer(self) -> str:
        """The teacher's word on the composer, or the tune's."""
        return self.overrides.get("composer", self.tune.composer)

    @property
    def cautions(self) -> tuple[str, ...]:
        """What to take care of: hearing, pain, and rights, for which the teacher may have own words."""
        rights = self.overrides.get("rights", say(message("care-rights")))
        return say(message("care-hearing")), say(message("care-pain")), rights

    @property
    def instrument(self) -> Instrument:
        """What the player of the handout plays."""
        return self.setting.instrument

    @property
    def beat_quarters(self) -> float:
        """Quarter notes in a beat."""
        return self.tune.metre.beat_ticks / QUARTER

    def position_of(self, place: HardPlace) -> Position:
        """Where in its bar a hard place stands."""
        return self.tune.position_at(self.onset_of(place))

    def onset_of(self, place: HardPlace) -> int:
        """The note of the performance at which a hard place begins, in ticks."""
        bar = next(bar for bar in self.tune.bars if bar.number == place.bar)
        return min(
            (note.onset_ticks for note in self.rendition.line if bar.start_ticks <= note.onset_ticks < bar.end_ticks),
            key=lambda ticks: abs(self.tune.beat_at(ticks)[1] - place.beat),
        )

    @property
    def ladder(self) -> tuple[int, ...]:
        """The tempos of practice, in beats a minute: from a slow one to the goal."""
        goal = self.setting.quarters_per_minute / self.beat_quarters
        steps = dict.fromkeys(max(round(goal * share), 20) for share in LADDER)
        return tuple(steps)

    @property
    def taught(self) -> tuple[Example, ...]:
        """The examples that are taught session by session: those of the performance; all where it uses none of them."""
        return tuple(example for example in self.examples if example.bars) or self.examples

    @property
    def width_mm(self) -> float:
        """Width of a page between its margins."""
        return print_area_mm(self.paper)[0]

    @property
    def instrument_line(self) -> str:
        """The handout's instrument as a page names it."""
        return instrument_title(self.instrument)

    def of(self, technique: Technique, field: str) -> str:
        """A text of a technique: the teacher's, or the usual one."""
        own = self.overrides.techniques.get(technique.id, {})
        return own.get(field) or say(getattr(technique, field))

    def heading(self, technique: Technique) -> str:
        """A technique's name where it stands alone."""
        return capital(self.of(technique, "name"))

    def tempo_text(self, beats_per_minute: float) -> str:
        """A tempo as it is printed: ``"♩ = 132"``."""
        return f"{self.tune.metre.beat_sign} = {beats_per_minute:g}"


def figure_labels(lesson: Lesson, rendition: Rendition) -> tuple[Label, ...]:
    """The names over the choruses and the figures of a rendition of the lesson's tune."""
    figures = (
        Label(sounding_start(rendition.tune, figure), lesson.of(technique_named(figure.technique), "label"), number)
        for number, figure in enumerate(rendition.figures)
    )
    return (*chorus_labels(rendition), *figures)


def figure_legend(lesson: Lesson, rendition: Rendition) -> tuple[Legend, ...]:
    """The labels of a rendition explained, with their bars; nothing where there are none."""
    uses = []
    for figure in rendition.figures:
        technique = technique_named(figure.technique)
        bar = rendition.tune.beat_at(sounding_start(rendition.tune, figure))[0]
        uses.append((lesson.of(technique, "label"), lesson.of(technique, "name"), bar))
    return (legend_of(legend_entries(uses)),) if uses else ()


def lesson_of(
    tune: Tune,
    setting: Setting,
    *,
    seed: int = 0,
    only: tuple[str, ...] = (),
    without: tuple[str, ...] = (),
    language: str = "en",
    naming: Naming | None = None,
    overrides: Overrides | None = None,
    paper: Paper = "a4",
    octave: int = 0,
    plan: Plan | None = None,
) -> Lesson:
    """Survey and ornament a tune, written out as often as a `plan` says, and choose an example for each technique.

    `octave` says by how many octaves the tune has been moved from where its file has it.

    Raises:
        OptionError: an unknown technique.
    """
    found = survey(plan.written_out(tune) if plan else tune, setting, only, without, plan=plan)
    return lesson_on(
        found,
        choose_figures(found, seed=seed),
        language=language,
        naming=naming,
        overrides=overrides,
        paper=paper,
        octave=octave,
        once=tune,
    )


def lesson_on(
    found: Survey,
    rendition: Rendition,
    *,
    is_shown: Callable[[Figure], bool] = lambda figure: True,
    language: str = "en",
    naming: Naming | None = None,
    overrides: Overrides | None = None,
    paper: Paper = "a4",
    octave: int = 0,
    once: Tune | None = None,
) -> Lesson:
    """A lesson on a rendition that has been chosen; only figures that `is_shown` holds for become examples.

    `once` is the tune as its file has it, where the rendition goes over it more often; else its first statement.
    """
    tune, setting = found.tune, found.setting
    return Lesson(
        tune,
        setting,
        rendition,
        examples_of(found, rendition, is_shown),
        default_feel(unfolded(tune), is_folk=setting.tradition == "folk", feel=setting.feel),
        language,
        naming,
        overrides or Overrides(),
        paper,
        places_to_practise(rendition),
        octave,
        (once or rendition.plan.once(tune)) if rendition.plan else None,
    )
