"""From arrangements to what the page shows of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fioritura.arrange.arrangement import Alternative, Arrangement
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import difficulty, figure_id
from fioritura.lesson.edition import sounding_start
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.svg import described
from fioritura.shelf.store import Step, TuneEntry
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import QUARTER
from fioritura.web.models import (
    AddedNote,
    AlternativeView,
    ArrangementView,
    FigureView,
    SettingView,
    StepView,
    SystemView,
    TuneView,
    VersionView,
)
from fioritura.web.staves import little_staff, renamed
from fioritura.web.words import capital_of
from fioritura.words import message, remembered, say

__all__ = ["alternative_views", "arrangement_view", "setting_view", "system_views", "tune_view"]


def arrangement_view(
    step: Step,
    arrangement: Arrangement,
    systems: Sequence[System],
    title: str,
    other: Rendition | None = None,
) -> ArrangementView:
    """The whole of an arrangement, with another version beside it if there is one."""
    rendition, tune = arrangement.rendition, arrangement.tune
    locked = frozenset(arrangement.decisions.locked)
    return ArrangementView(
        id=step.arrangement_id,
        tune_id=step.tune_id,
        title=title,
        composer=tune.composer,
        key=say(tune.key),
        step=StepView(at=step.number, undoes=say(remembered(step.undoes)), redoes=say(remembered(step.redoes))),
        setting=setting_view(arrangement),
        kept_share=round(rendition.kept_share, 4),
        bar_numbers=[bar.number for bar in tune.bars],
        figures=list(_figure_views(rendition, locked, staff=2)),
        other=list(_figure_views(other, locked, staff=3)) if other else [],
        other_seed=other.seed if other else None,
        left_out=len(arrangement.decisions.refused),
        systems=system_views(systems),
        notes=_notes(arrangement),
    )


def system_views(systems: Sequence[System]) -> list[SystemView]:
    """Systems with the places of their first bars."""
    views, first = [], 0
    for system in systems:
        views.append(SystemView(svg=described(system.svg, "", system.words), first=first, bars=system.bar_count))
        first += system.bar_count
    return views


def alternative_views(arrangement: Arrangement, alternatives: Sequence[Alternative]) -> list[AlternativeView]:
    """Alternatives, each with its little staff."""
    views = []
    for number, alternative in enumerate(alternatives):
        figure, technique = alternative.figure, technique_named(alternative.figure.technique)
        svg = little_staff(arrangement.tune, arrangement.rendition, figure)
        views.append(
            AlternativeView(
                id=figure_id(figure),
                name=capital_of(technique.name),
                family=technique.family,
                reason=say(figure.why),
                level=technique.level,
                difficulty=difficulty(figure, arrangement.setting),
                worth=round(alternative.worth, 3),
                stands=alternative.stands,
                svg=renamed(svg, f"a{number}-"),
            )
        )
    return views


def tune_view(entry: TuneEntry) -> TuneView:
    """A tune on the shelf."""
    latest = max(entry.versions, key=lambda version: version.changed_at, default=None)
    return TuneView(
        id=entry.id,
        title=entry.title,
        composer=entry.composer,
        key=say(remembered(str(entry.facts.get("key", "")))),
        metre=str(entry.facts.get("metre", "")),
        bars=int(entry.facts.get("bars", 0)),
        tags=list(entry.tags),
        source_name=entry.source_name,
        changed_at=latest.changed_at if latest else entry.added_at,
        arrangement=latest.id if latest else None,
        versions=[
            VersionView(id=one.id, name=say(remembered(one.name)), changed_at=one.changed_at)
            for one in entry.versions
        ],
    )


def setting_view(arrangement: Arrangement) -> SettingView:
    """The setting of an arrangement."""
    setting, beat = arrangement.setting, arrangement.tune.metre.beat_ticks / QUARTER
    return SettingView(
        player=setting.instrument.id,
        level=setting.level,
        idiom=setting.idiom,
        feel=setting.feel,
        tempo=round(setting.quarters_per_minute / beat, 2),
        beat=beat,
        only=list(arrangement.only),
        without=list(arrangement.without),
        seed=arrangement.seed,
        density=setting.density,
    )


def _notes(arrangement: Arrangement) -> list[str]:
    """What the player should know: warnings of the reader, inferred chords."""
    notes = [say(warning) for warning in arrangement.tune.warnings]
    if any(span.is_inferred for span in arrangement.tune.chords):
        notes.append(say(message("chords-inferred")))
    return notes


def _figure_views(rendition: Rendition, locked: frozenset[str], staff: int) -> Iterator[FigureView]:
    tune = rendition.tune
    for number, figure in enumerate(rendition.figures):
        technique, name = technique_named(figure.technique), figure_id(figure)
        bar, beat = tune.beat_at(start := sounding_start(tune, figure))
        yield FigureView(
            id=name,
            number=number,
            technique=technique.id,
            name=capital_of(technique.name),
            label=say(technique.label),
            family=technique.family,
            bar=bar,
            beat=round(beat, 3),
            where=say(tune.position_at(start).message.form("full")),
            reason=say(figure.why),
            text=say(technique.text),
            how=say(technique.how),
            level=technique.level,
            difficulty=difficulty(figure, rendition.setting),
            is_kept=name in locked,
            elements=_elements(rendition, number, staff),
            added=list(_added(rendition, figure, number, staff)),
        )


def _elements(rendition: Rendition, number: int, staff: int) -> list[str]:
    """The ids of a figure's notes, grace notes before them."""
    found = []
    for place, note in enumerate(rendition.line):
        if number in note.figures:
            found += [f"s{staff}-n{place}-g{grace + 1}" for grace in range(len(note.graces))]
            found.append(f"s{staff}-n{place}")
    return found


def _added(rendition: Rendition, figure: Figure, number: int, staff: int) -> Iterator[AddedNote]:
    """The notes of a figure that can be raised and lowered."""
    written = rendition.setting.instrument.written
    own = [place for place, note in enumerate(rendition.line) if number in note.figures]
    for grace, pitch in enumerate(figure.graces):
        element = f"s{staff}-n{own[0]}-g{grace + 1 + len(rendition.tune.notes[figure.anchors[0]].graces)}"
        yield AddedNote(note=grace, written=say(written(pitch)), element=element)
    places = {rendition.line[place].onset_ticks: place for place in own}
    for index, note in enumerate(figure.notes):
        if note.anchor is None and note.onset_ticks in places:
            yield AddedNote(
                note=len(figure.graces) + index,
                written=say(written(note.pitch)),
                element=f"s{staff}-n{places[note.onset_ticks]}",
            )
