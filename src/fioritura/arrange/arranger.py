"""Ornament a tune: find, weigh, choose and lay out; the door through which every face comes in."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from hashlib import blake2s
from math import ceil
from typing import Final

import numpy as np

from fioritura.arrange.choose import Candidate, Model, choose, gumbel
from fioritura.arrange.find import find_figures
from fioritura.arrange.levels import Level, level_numbered
from fioritura.arrange.rendition import Rendition, note_weights
from fioritura.arrange.taste import Taste, contributions, figure_features, place_features, taste_of
from fioritura.errors import OptionError
from fioritura.techniques.figure import Figure
from fioritura.techniques.place import Place, Setting, places
from fioritura.techniques.table import wanted_techniques
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import SIXTEENTH, WHOLE
from fioritura.tune import Tune

__all__ = ["Survey", "figure_id", "ornament", "survey"]

SEED_NOISE: Final = 0.3
_MOST_ROUNDS: Final = 8


@dataclass(frozen=True)
class Survey:
    """All figures that a tune offers in a setting, scored, in order of place, with the places that offer them."""

    tune: Tune
    setting: Setting
    techniques: tuple[Technique, ...]
    places: tuple[Place, ...]
    figures: tuple[Figure, ...]
    losses: tuple[float, ...] = field(repr=False, default=())

    @cached_property
    def by_id(self) -> dict[str, Figure]:
        """The figures by `figure_id`."""
        return {figure_id(figure): figure for figure in self.figures}

    def why(self, figure: Figure) -> dict[str, float]:
        """What each feature of place and figure adds to the figure's score, largest first."""
        number = self.figures.index(figure)
        technique = next(t for t in self.techniques if t.id == figure.technique)
        place = _offering_place(self.places, figure)
        return contributions(taste_of(self.setting.idiom), technique, place, figure, self.losses[number])


def figure_id(figure: Figure) -> str:
    """A name for a figure that stays the same as long as tune and figure do: ``"turn-12-3fa9c1"``."""
    notes = [(note.onset_ticks, note.duration_ticks, note.pitch.midi) for note in figure.notes]
    content = repr((notes, [pitch.midi for pitch in figure.graces], [str(mark) for mark in figure.marks]))
    return f"{figure.technique}-{figure.anchors[0]}-{blake2s(content.encode(), digest_size=3).hexdigest()}"


def survey(tune: Tune, setting: Setting, only: Iterable[str] = (), without: Iterable[str] = ()) -> Survey:
    """Find and score every figure of the wanted techniques.

    `only` and `without` hold ids or families; `only` also brings in techniques above the player's level.

    Raises:
        OptionError: an unknown technique.
    """
    techniques = wanted_techniques(setting.level, only, without)
    columns = {technique.id: (number, technique) for number, technique in enumerate(techniques)}
    around = places(tune, setting)
    taste = taste_of(setting.idiom)
    scores = np.array([place_features(place) for place in around]) @ taste.matrix(techniques)
    weights = note_weights(tune)
    figures, losses = [], []
    for place, figure in find_figures(around, techniques):
        column, technique = columns[figure.technique]
        loss = sum(weights[anchor] for anchor in _displaced(figure, tune))
        score = float(scores[place.index][column]) + taste.base.get(technique.id, 0.0)
        score += _figure_score(taste, figure, place, loss) + figure.merit
        difficulty = _difficulty(technique, figure, place)
        figures.append(replace(figure, level=technique.level, score=round(score, 4), difficulty=difficulty))
        losses.append(loss)
    return Survey(tune, setting, techniques, around, tuple(figures), tuple(losses))


def ornament(
    tune: Tune,
    setting: Setting,
    *,
    seed: int = 0,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
    locked: Collection[str] = (),
    refused: Collection[str] = (),
) -> Rendition:
    """The best rendition of a tune for a player.

    Seed 0 gives the best; every other seed gives another good version, always the same. `locked` and `refused` hold
    figures by `figure_id`: the former stand in the rendition, the latter do not, the rest is the best around them.

    Raises:
        OptionError: an unknown technique or figure, or locked figures that collide.
    """
    only = tuple(only)
    return chosen(survey(tune, setting, only, without), seed=seed, locked=locked, refused=refused)


def chosen(found: Survey, *, seed: int = 0, locked: Collection[str] = (), refused: Collection[str] = ()) -> Rendition:
    """Choose among the figures of a survey; see `ornament`."""
    unknown = [name for name in (*locked, *refused) if name not in found.by_id]
    if unknown:
        raise OptionError(f"No figure {unknown[0]!r} in this tune and setting: list them with `spots`.")
    level = level_numbered(found.setting.level)
    toll = 0.0
    for _ in range(_MOST_ROUNDS):
        numbers, model = _model(found, level, seed, frozenset(locked), frozenset(refused), toll)
        indices, worth = choose(model)
        figures = tuple(found.figures[numbers[index]] for index in indices)
        rendition = Rendition(found.tune, found.setting, figures, seed, round(worth, 4))
        if rendition.kept_share >= level.kept_share or locked:
            break
        toll = 2 * toll + 0.1
    return rendition


def _figure_score(taste: Taste, figure: Figure, place: Place, loss: float) -> float:
    return sum(taste.figure.get(name, 0.0) * value for name, value in figure_features(figure, place, loss).items())


def _difficulty(technique: Technique, figure: Figure, place: Place) -> float:
    """0.0 (easy) to 1.0: the technique's level and how near its quickest note comes to the player's limit."""
    if not figure.notes:
        return round(technique.level / 10, 2)
    quickest = min(note.duration_ticks for note in figure.notes)
    return round(technique.level / 10 + 0.5 * min(place.setting.shortest_ticks / quickest, 1.0), 2)


def _displaced(figure: Figure, tune: Tune) -> Iterable[int]:
    """Anchors that lose their pitch, or their place by more than a sixteenth."""
    if not figure.notes:
        return
    placed = {note.anchor: note.onset_ticks for note in reversed(figure.notes) if note.anchor is not None}
    for anchor in figure.anchors:
        plain = tune.notes[anchor]
        onset = placed.get(anchor, plain.onset_ticks)
        if anchor not in placed and figure.start_ticks <= plain.onset_ticks < figure.end_ticks:
            onset = figure.end_ticks
        elif anchor in placed and plain.onset_ticks < figure.start_ticks:
            onset = plain.onset_ticks
        if abs(onset - plain.onset_ticks) > SIXTEENTH:
            yield anchor


def _offering_place(around: Sequence[Place], figure: Figure) -> Place:
    return around[figure.anchors[0]]


def _model(
    found: Survey, level: Level, seed: int, locked: frozenset[str], refused: frozenset[str], toll: float
) -> tuple[list[int], Model]:
    """The chooser's model, and for each of its candidates the number of the figure."""
    slot_times = _slot_times(found.tune)
    families = sorted({technique.family for technique in found.techniques})
    ordered = sorted(found.techniques, key=lambda technique: families.index(technique.family))
    numbers_of = {technique.id: number for number, technique in enumerate(ordered)}
    fixed = [found.by_id[name] for name in sorted(locked)]
    best: dict[tuple[int, int, int], tuple[float, int]] = {}
    names = [figure_id(figure) for figure in found.figures] if seed or locked or refused else []
    for number, figure in enumerate(found.figures):
        name = names[number] if names else ""
        is_locked = name in locked
        if name in refused or (not is_locked and any(_collides(figure, other) for other in fixed)):
            continue
        score = figure.score + gumbel(seed, name, SEED_NOISE) - toll * found.losses[number]
        if score <= 0 and not is_locked:
            continue
        free = _next_free(figure, slot_times, level.rest_ticks)
        free = min([free, *(other.first_slot for other in fixed if other.first_slot > figure.last_slot)])
        key = (figure.first_slot, free, numbers_of[figure.technique])
        if is_locked:
            score += 1000.0
        if key not in best or best[key][0] < score:
            best[key] = (score, number)
    entries = sorted(best.items())
    candidates = tuple(
        Candidate(first, free, technique, score, bool(names) and names[number] in locked)
        for (first, free, technique), (score, number) in entries
    )
    return [number for _, (_, number) in entries], _complete_model(found, level, ordered, candidates, fixed)


def _complete_model(
    found: Survey, level: Level, ordered: Sequence[Technique], candidates: tuple[Candidate, ...], fixed: list[Figure]
) -> Model:
    phrase_of_slot: list[int] = []
    limits: list[int] = []
    for place in found.places:
        if place.is_phrase_start:
            bars = (place.phrase.end_ticks - place.phrase.start_ticks) / WHOLE
            held = sum(place.phrase.first <= figure.anchors[0] <= place.phrase.last for figure in fixed)
            limits.append(max(ceil(bars * level.figures_per_bar), 1, held))
        phrase_of_slot += [len(limits) - 1] * 2
    families = sorted({technique.family for technique in ordered})
    numbers = tuple(families.index(technique.family) for technique in ordered)
    if len(ordered) == 1:
        return Model(candidates, tuple(phrase_of_slot), tuple(limits), numbers, 0.0, 0.0, 0.0)
    return Model(candidates, tuple(phrase_of_slot), tuple(limits), numbers)


def _slot_times(tune: Tune) -> list[int]:
    return [time for note in tune.notes for time in (note.onset_ticks, note.onset_ticks + note.duration_ticks // 2)]


def _next_free(figure: Figure, slot_times: Sequence[int], rest_ticks: int) -> int:
    slot = figure.last_slot + 1
    ready = figure.end_ticks + rest_ticks
    while slot < len(slot_times) and rest_ticks and slot_times[slot] < ready:
        slot += 1
    return slot


def _collides(figure: Figure, fixed: Figure) -> bool:
    return figure.first_slot <= fixed.last_slot and fixed.first_slot <= figure.last_slot
