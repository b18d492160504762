"""From arrangements and plans to what the lesson screen shows of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any, Final

from pydantic import ValidationError

from fioritura.accompany.excerpt import excerpt
from fioritura.arrange.arrangement import Arrangement
from fioritura.errors import ReadError
from fioritura.lesson.edition import sounding_start
from fioritura.lesson.example import Example, example_score
from fioritura.lesson.lesson import Lesson
from fioritura.lesson.overrides import TECHNIQUE_FIELDS
from fioritura.lesson.parts import part_for
from fioritura.lesson.plan import LessonPlan, check_language, phrase_of, plan_of
from fioritura.notation.engraving.engrave import System, engrave_systems
from fioritura.notation.engraving.svg import described
from fioritura.notation.score import Label, Score, Staff
from fioritura.phrase import Phrase, phrases
from fioritura.players.instruments import instrument_named
from fioritura.techniques.table import all_techniques, technique_named
from fioritura.web.lesson_models import (
    ExampleView,
    LeftOut,
    OfferView,
    PhraseView,
    Plan,
    PreviewView,
    TechniqueOffer,
)
from fioritura.web.staves import renamed
from fioritura.words import message, say, speaking

__all__ = ["check_plan", "examples_of_plan", "offer_view"]

_STAFF_MM: Final = 5.5


def check_plan(data: Mapping[str, Any]) -> None:
    """Make sure that a plan from elsewhere can be shown and packed.

    Raises:
        OptionError: it names what there is not.
        ReadError: it is not of the form that the page gives plans.
    """
    plan_of(data)
    try:
        Plan.model_validate(dict(data))
    except ValidationError as error:
        raise ReadError("plan-damaged", count=error.error_count()) from None


def offer_view(arrangement: Arrangement, title: str, language: str, width_mm: float) -> OfferView:
    """Phrases and techniques of an arrangement.

    Raises:
        OptionError: an unknown language.
    """
    parts = phrases(arrangement.tune)
    return OfferView(
        title=title,
        composer=arrangement.tune.composer,
        level=arrangement.setting.level,
        phrases=[_phrase_view(arrangement, parts, phrase, width_mm) for phrase in parts],
        techniques=list(_technique_offers(arrangement, parts, language)),
    )


def examples_of_plan(lesson: Lesson, plan: LessonPlan, width_mm: float) -> PreviewView:
    """The examples of a lesson, and the players for whom it has no part."""
    left_out = []
    if "parts" in plan.sections:
        for id in plan.players:
            instrument = instrument_named(id)
            if part_for(lesson, instrument) is None:
                reason = say(message("part-without-octave"))
                left_out.append(LeftOut(player=say(instrument.title), reason=reason))
    with lesson.speaking():
        views = [_example_view(lesson, example, width_mm) for example in lesson.examples]
    return PreviewView(examples=views, left_out=left_out, problem="")


@lru_cache(maxsize=256)
def _systems(score: Score, width_mm: float) -> tuple[System, ...]:
    """The systems of some bars; kept, as a change of words leaves the music as it is."""
    return tuple(engrave_systems(score, width_mm=width_mm, staff_mm=_STAFF_MM, shows_tempo=False))


def _engraved(score: Score, width_mm: float, prefix: str) -> list[str]:
    drawings = (described(system.svg, "", system.words) for system in _systems(score, width_mm))
    return [renamed(svg, f"{prefix}{number}-") for number, svg in enumerate(drawings)]


def _phrase_view(arrangement: Arrangement, parts: tuple[Phrase, ...], phrase: Phrase, width_mm: float) -> PhraseView:
    tune, rendition = arrangement.tune, arrangement.rendition
    first, last = tune.bar_at(phrase.start_ticks), tune.bar_at(tune.notes[phrase.last].end_ticks - 1)
    part = excerpt(tune, first.number, last.number)
    line = excerpt(replace(tune, notes=rendition.line), first.number, last.number).notes
    inside = [
        (number, figure)
        for number, figure in enumerate(rendition.figures)
        if phrase_of(tune, parts, figure) == phrase.number
    ]
    labels = tuple(
        Label(place - first.start_ticks, say(technique_named(figure.technique).label), number)
        for number, figure in inside
        if first.start_ticks <= (place := sounding_start(tune, figure)) < last.end_ticks
    )
    staff = Staff(line, instrument=arrangement.setting.instrument, labels=labels)
    return PhraseView(
        number=phrase.number,
        first_bar=first.number,
        last_bar=last.number,
        returns=phrase.statement > 1,
        figures=len(inside),
        svgs=_engraved(Score(part, (staff,)), width_mm, f"p{phrase.number}-"),
    )


def _technique_offers(arrangement: Arrangement, parts: tuple[Phrase, ...], language: str) -> Iterator[TechniqueOffer]:
    check_language(language)
    used = Counter(figure.technique for figure in arrangement.rendition.figures)
    where: dict[str, set[int]] = {}
    for figure in arrangement.survey.candidates:
        where.setdefault(figure.technique, set()).add(phrase_of(arrangement.tune, parts, figure))
    for id, technique in all_techniques().items():
        if id in where:
            with speaking(language):
                texts = {field: say(getattr(technique, field)) for field in TECHNIQUE_FIELDS}
            yield TechniqueOffer(
                id=id,
                name=texts["name"],
                family=technique.family,
                level=technique.level,
                used=used[id],
                phrases=sorted(where[id]),
                texts=texts,
            )


def _example_view(lesson: Lesson, example: Example, width_mm: float) -> ExampleView:
    names = ("\N{NO-BREAK SPACE}", "\N{NO-BREAK SPACE}")
    score = example_score(example, lesson.instrument, lesson.of(example.technique, "label"), names)
    return ExampleView(
        number=example.number,
        technique=example.technique.id,
        name=lesson.of(example.technique, "name"),
        family=example.technique.family,
        first_bar=example.first_bar,
        last_bar=example.last_bar,
        reason=say(example.figure.why),
        svgs=_engraved(score, width_mm, f"e{example.number}-"),
    )
