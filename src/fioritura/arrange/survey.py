"""A survey: every figure that a tune offers a player, each with its score and the reasons for it."""

from __future__ import annotations

import gc
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.find import find_figures
from fioritura.arrange.irish_taste import irish_scores
from fioritura.arrange.own_taste import NO_CHANGE, TasteTable, changed_taste, own_weights
from fioritura.arrange.plan import Plan, leanings
from fioritura.arrange.rendition import kept_part, note_weights
from fioritura.arrange.taste import Taste, context_features, contributions, figure_features, learned_scores, taste_of
from fioritura.arrange.weights import is_at_home
from fioritura.players.setting import Setting
from fioritura.techniques.context import Context, contexts
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import all_techniques, introduced, technique_named, wanted_techniques
from fioritura.techniques.technique import Technique
from fioritura.tune import Tune
from fioritura.words import Message

__all__ = ["Survey", "difficulty", "loss_of", "no_collector", "survey", "with_own_figures"]


@dataclass(frozen=True, repr=False)
class Survey:
    """All figures that a tune offers in a setting, in order of place.

    `figures[n]` was offered at plain note `places[n]`, scores `scores[n]` and costs the tune `losses[n]` (in sixteenths of
    weight, see `rendition.note_weights`).
    """

    tune: Tune
    setting: Setting
    techniques: tuple[Technique, ...]
    contexts: tuple[Context, ...]
    candidates: tuple[Figure, ...]
    places: tuple[int, ...]
    scores: NDArray[np.float64]
    losses: tuple[float, ...]
    taste: Taste
    """By what the figures are scored."""
    is_asked: bool = False
    """True when the techniques were asked for by name."""

    plan: Plan | None = None
    """How often the written-out tune is played, and how it grows; None where it is played once, all of it alike."""

    def __repr__(self) -> str:
        offer = f"{len(self.candidates)} figures of {len(self.techniques)} techniques"
        return f"<Survey of {self.tune.title!r}: {offer}>"

    @cached_property
    def figures(self) -> tuple[Figure, ...]:
        """The figures with their scores."""
        return tuple(self.scored(number) for number in range(len(self.candidates)))

    @cached_property
    def by_id(self) -> dict[str, int]:
        """Numbers of the figures by their ids."""
        return {figure.id: number for number, figure in enumerate(self.candidates)}

    def scored(self, number: int) -> Figure:
        """A figure with its score."""
        return replace(self.candidates[number], score=round(float(self.scores[number]), 4))

    def why(self, figure: Figure) -> dict[Message, float]:
        """What each feature of place and figure adds to the figure's score, largest first."""
        number = self.by_id[figure.id]
        technique = technique_named(figure.technique)
        context = self.contexts[self.places[number]]
        return contributions(self.taste, technique, context, figure, self.losses[number])


@contextmanager
def no_collector() -> Iterator[None]:
    """Hold Python's cycle collector: thousands of figures are made and none is garbage, so its rounds find nothing.

    Examples:
        >>> with no_collector():
        ...     gc.isenabled()
        False
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@no_collector()
def survey(
    tune: Tune,
    setting: Setting,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
    *,
    own: Iterable[Technique] = (),
    taste_table: TasteTable = NO_CHANGE,
    plan: Plan | None = None,
) -> Survey:
    """Find and score every figure of the wanted techniques.

    `only` and `without` hold ids or families; `only` also brings in techniques above the player's level. `own` are
    techniques beside those of the table, and `taste_table` changes the idiom's weights (see `own_taste`). With a `plan`
    the tune is one that is written out as often as it says (`Plan.written_out`), and figures score by their size and
    register in the statement in which they stand.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> found = survey(tune, setting, only=["turn"])
        >>> {figure.technique for figure in found.figures}, found.is_asked
        ({'turn'}, True)

    Raises:
        OptionError: an unknown technique, a technique or table of weights that is not of the right form, or a plan for
            a tune of another length.
    """
    only, setting, own = tuple(only), setting.on(tune), introduced(own)
    plan = plan.checked(tune) if plan else None
    techniques = wanted_techniques(setting.level, only, without, own)
    if not only:
        techniques = tuple(technique for technique in techniques if is_at_home(technique, setting.idiom))
    columns = {technique.id: column for column, technique in enumerate(techniques)}
    around = contexts(tune, setting)
    known = (*all_techniques().values(), *own)
    taste = changed_taste(taste_of(setting.idiom), own_weights(own, setting.idiom), known)
    taste = changed_taste(taste, taste_table, known).at_level(setting.level)
    offered = find_figures(around, techniques)
    losses = tuple(
        loss_of(figure, context, weights) for weights in [note_weights(tune)] for context, figure in offered
    )
    if not offered:
        return Survey(tune, setting, techniques, around, (), (), np.zeros(0), (), taste, bool(only), plan)
    by_place = np.array([context_features(context) for context in around]) @ taste.matrix(techniques)
    by_place += learned_scores(taste, tune, techniques)
    if setting.idiom == "irish":
        by_place += irish_scores(around, techniques)
    by_place += [taste.base.get(technique.id, 0.0) for technique in techniques]
    rows = [context.index for context, _ in offered]
    kinds = [columns[figure.technique] for _, figure in offered]
    scores = by_place[rows, kinds]
    by_figure = [
        figure_features(figure, context, loss) for (context, figure), loss in zip(offered, losses, strict=True)
    ]
    scores += (np.array(by_figure) * taste.figure_matrix(techniques).T[kinds]).sum(axis=1)
    figures = tuple(figure for _, figure in offered)
    scores += [figure.merit for figure in figures]
    if plan:
        scores += leanings(plan, tune, figures)
    return Survey(tune, setting, techniques, around, figures, tuple(rows), scores, losses, taste, bool(only), plan)


def difficulty(figure: Figure, setting: Setting) -> float:
    """0.0 (easy) to 1.0: the technique's level, and how near its quickest note comes to the player's limit.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> figure = survey(tune, setting, only=["turn"]).figures[0]
        >>> 0.0 <= difficulty(figure, setting) <= 1.0
        True
    """
    level = technique_named(figure.technique).level / 10
    if not figure.notes:
        return round(level, 2)
    quickest = min(note.duration_ticks for note in figure.notes)
    return round(level + 0.5 * min(setting.shortest_ticks / quickest, 1.0), 2)


def loss_of(figure: Figure, context: Context, weights: Sequence[float]) -> float:
    """Weight of what is not kept of the plain notes (see `kept_part`): their pitch, or their place.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> found = survey(tune, setting, only=["graces"])
        >>> loss_of(found.figures[0], found.contexts[found.places[0]], note_weights(tune))  # the tune stays as it is
        0.0
    """
    if not figure.notes:
        return 0.0
    placed = {note.anchor: note for note in reversed(figure.notes) if note.anchor is not None}
    lost = 0.0
    for anchor in figure.anchors:
        plain = context.tune.notes[anchor]
        onset = plain.onset_ticks
        if onset < figure.start_ticks and anchor in figure.anchors[:1] and not _comes_early(figure, anchor, onset):
            continue
        played = placed.get(anchor)
        if played is not None:
            semitones = played.pitch.midi - plain.pitch.midi
            lost += weights[anchor] * (1.0 - kept_part(semitones, played.onset_ticks - onset))
        elif figure.start_ticks <= onset < figure.end_ticks:
            lost += weights[anchor] * (1.0 - kept_part(0, figure.end_ticks - onset))
    return lost


def _comes_early(figure: Figure, anchor: int, plain_ticks: int) -> bool:
    return any(note.anchor == anchor and note.onset_ticks < plain_ticks for note in figure.notes)


def with_own_figures(found: Survey, own: Iterable[Figure]) -> Survey:
    """The survey with figures made by hand, which score as the best that stands there.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> found = survey(tune, setting, only=["turn"])
        >>> own = survey(tune, setting, only=["mordent"]).figures[:1]
        >>> len(with_own_figures(found, own).figures) - len(found.figures)
        1
    """
    own = tuple(own)
    if not own:
        return found
    weights = note_weights(found.tune)
    losses = tuple(loss_of(figure, found.contexts[figure.anchors[0]], weights) for figure in own)
    scores = np.concatenate([found.scores, [max(figure.score, 1.0) for figure in own]])
    return replace(
        found,
        candidates=(*found.candidates, *own),
        places=(*found.places, *(figure.anchors[0] for figure in own)),
        scores=scores,
        losses=(*found.losses, *losses),
    )
