"""Taste: how well a figure suits its place, as a sum of named reasons.

The score of a figure is a base for its technique in the idiom, plus a weight for each feature of the place, plus a
weight for each feature of the figure itself. All weights stand in readable files: those of all techniques in
`taste_jazz.json` and `taste_folk.json`, those of one beside it (`weights`); `contributions` shows what each feature adds. Features lie between about −2 and 2.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from importlib.resources import files
from math import log2
from typing import Final
from zlib import crc32

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.grace_taste import folk_grace_taste, grace_sites
from fioritura.arrange.irish_taste import irish_reasons
from fioritura.arrange.weights import weights_of
from fioritura.players.feel import BALLAD_BELOW, UP_ABOVE
from fioritura.players.setting import Idiom
from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure, FigureNote
from fioritura.techniques.table import family_of
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Tune
from fioritura.words import Message, message

__all__ = [
    "FEATURES",
    "FIGURE_FEATURES",
    "Taste",
    "context_features",
    "contributions",
    "figure_features",
    "learned_scores",
    "taste_of",
]

FEATURES: Final = (
    "long",
    "strong",
    "peak",
    "phrase start",
    "phrase end",
    "repeated note",
    "reached by leap",
    "reached by step up",
    "reached by step down",
    "left by leap",
    "chord changes",
    "chord note",
    "rest after",
    "busy around",
    "next is strong",
    "next is long",
    "next is peak",
    "heard before",
    "first statement",
    "near the end",
    "guide tone at a change",
    "next is guide tone at a change",
    "last note",
    "ballad",
    "up tempo",
    "swing",
    "even",
)
"""Features of a place, in the order of `context_features`."""

FIGURE_FEATURES: Final = (
    "change from earlier statements",
    "loss of the tune",
    "added notes",
    "strain",
    "outside the chord on a beat",
    "added notes in a ballad",
)
"""Features of a figure, in the order of `figure_features`."""


_LARGE_TICKS: Final = 3 * EIGHTH
_MOST_MOVED: Final = 2
"""Of the notes that a figure moves no more count for its worth: a phrase that comes late is one idea, however long."""

_NO_LETTERS: Final = re.compile("[^a-z0-9]+")


@dataclass(frozen=True)
class Taste:
    """Weights of an idiom: `base` by technique, `context` by technique and feature, `figure` by feature.

    `share` says what part of all figures a technique may make up (``"usual"`` for those not named). Where `learned`
    is not empty, grace notes are placed by the model of `grace_taste`, weighed by its entries.
    """

    share: Mapping[str, float]
    base: Mapping[str, float]
    context: Mapping[str, Mapping[str, float]]
    figure: Mapping[str, float]
    learned: Mapping[str, float]
    below: float | None = None
    """What part of the single grace notes comes from below; None where that is left to the place."""
    aversion: float = 1.0
    """How much figures of one technique or family in a row are disliked (see `choose`): 1.0 as usual, 0.0 not at all."""
    seed_variety: float = 1.0
    """How far seeds move the scores: 1.0 as usual."""
    own_figure: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
    """How far the weights in `figure` count, by technique or family and feature; 1.0 for those not named."""
    size: tuple[float, ...] = ()
    """What four notes that a figure adds are worth, beyond the weight of added notes, at each level from 1."""

    def at_level(self, level: int) -> Taste:
        """The taste with small figures for beginners and large ones for those who can play them."""
        if not self.size:
            return self
        added = self.figure.get("added notes", 0.0) + self.size[level - 1]
        return replace(self, figure={**self.figure, "added notes": added})

    def matrix(self, techniques: Sequence[Technique]) -> NDArray[np.float64]:
        """Weights as an array, features by techniques; a technique's own weights come on top of its family's."""
        weights = np.zeros((len(FEATURES), len(techniques)))
        for column, technique in enumerate(techniques):
            for name in ("all", technique.family, technique.id):
                for feature, weight in self.context.get(name, {}).items():
                    weights[FEATURES.index(feature), column] += weight
        return weights

    def figure_matrix(self, techniques: Sequence[Technique]) -> NDArray[np.float64]:
        """Weights of `FIGURE_FEATURES` as an array, features by techniques."""
        columns = []
        for technique in techniques:
            own = {**self.own_figure.get(technique.family, {}), **self.own_figure.get(technique.id, {})}
            columns.append([self.figure.get(name, 0.0) * own.get(name, 1.0) for name in FIGURE_FEATURES])
        return np.array(columns).reshape(-1, len(FIGURE_FEATURES)).T


@lru_cache(maxsize=8)
def taste_of(idiom: Idiom) -> Taste:
    """The taste of an idiom, read from its file and those of the techniques.

    Examples:
        >>> taste_of("jazz").share["usual"]
        0.14
    """
    text = (
        files("fioritura.arrange")
        .joinpath(f"taste_{'jazz' if idiom == 'blues' else idiom}.json")
        .read_text(encoding="utf-8")
    )
    data = json.loads(text)
    weights = weights_of(idiom, FEATURES)
    share = {id: own["share"] for id, own in weights.items() if "share" in own}
    base = {id: own["base"] for id, own in weights.items() if "base" in own}
    place = {id: own["place"] for id, own in weights.items() if "place" in own}
    own_figure = {id: own["figure"] for id, own in weights.items() if "figure" in own}
    return Taste(
        {"usual": data["usual share"], **share},
        base,
        {"all": data["place"], **place},
        data["figure"],
        data["learned"],
        data.get("graces from below"),
        data.get("aversion to the same", 1.0),
        data.get("variety of seeds", 1.0),
        own_figure,
        tuple(data.get("added notes by level", ())),
    )


def context_features(context: Context) -> list[float]:
    """The features of a place, each about −2 to 2, in the order of `FEATURES`.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[2]
        >>> features = dict(zip(FEATURES, context_features(place), strict=True))
        >>> features["peak"], features["reached by leap"]
        (1.0, 0.0)
    """
    note, came, after = context.note, context.interval_in, context.next
    before = context.previous
    quick_around = sum(1 for near in (before, after) if near is not None and near.reach_ticks <= EIGHTH)
    span = max(context.tune.duration_ticks, 1)
    return [
        max(-2.0, min(2.0, log2(max(note.duration_ticks, 1) / QUARTER))),
        context.strength,
        float(context.is_peak),
        float(context.is_phrase_start),
        float(context.is_phrase_end),
        float(came == 0),
        float(came is not None and abs(came) >= 5),
        float(came is not None and 0 < came <= 2),
        float(came is not None and -2 <= came < 0),
        float(abs(context.interval_out or 0) >= 5),
        float(before is None or context.chord != before.chord),
        float(context.is_chord_tone),
        min(context.gap_ticks / QUARTER, 2.0),
        quick_around / 2,
        after.strength if after else 0.0,
        max(-2.0, min(2.0, log2(max(after.note.duration_ticks, 1) / QUARTER))) if after else 0.0,
        float(after is not None and after.is_peak),
        min(context.phrase.statement - 1, 3) / 2,
        float(context.phrase.statement == 1),
        note.onset_ticks / span,
        float(context.is_guide_tone_at_change),
        float(after is not None and after.is_guide_tone_at_change),
        float(after is None),
        float(context.setting.quarters_per_minute < BALLAD_BELOW),
        float(context.setting.quarters_per_minute > UP_ABOVE),
        float(context.setting.feel == "swing"),
        float(context.setting.feel == "straight"),
    ]


def figure_features(figure: Figure, context: Context, loss: float) -> list[float]:
    """The features of the figure itself, in the order of `FIGURE_FEATURES`; `loss` is what it costs the tune.

    Notes count in full where they fill a beat and a half: four quick ones are an ornament, four eighths a gesture.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> from fioritura.arrange.survey import survey
        >>> found = survey(tune, setting, only=["graces"])
        >>> figure_features(found.figures[0], found.contexts[found.places[0]], loss=0.0)[1:]
        [0.0, 0.0, 0.0, 0.0, 0.0]
    """
    phrase = context.phrase
    change = _variation(figure.technique, phrase.model, phrase.statement) if phrase.statement > 1 else 0.0
    if not figure.notes:
        return [change, 0.0, 0.0, 0.0, 0.0, 0.0]
    standing_out, shortest, filled = 0.0, QUARTER * 4, 0
    for note in figure.notes:
        shortest = min(shortest, note.duration_ticks)
        if note.anchor is None:
            standing_out += _stands_out(context, note)
        if note.anchor is None or len(figure.anchors) > 1:
            filled += note.duration_ticks
    strain = min(context.setting.shortest_ticks / shortest, 1.5)
    in_ballad = context.setting.quarters_per_minute < BALLAD_BELOW
    moved = figure.size - figure.added_notes
    counted = figure.counts_as or figure.added_notes + min(moved, _MOST_MOVED)
    size = counted / 4 * min(filled / _LARGE_TICKS, 1.0)
    return [change, loss / 4, size, strain, standing_out, size * in_ballad]


@lru_cache(maxsize=4096)
def _variation(technique: str, model: int, statement: int) -> float:
    """−1.0 to 1.0, another for each technique and statement of a phrase: what leads a repeat to other figures at the
    same good places."""
    return crc32(f"{technique}/{model}/{statement}".encode()) / 2**31 - 1.0


def _stands_out(context: Context, note: FigureNote) -> float:
    strength = context.strength_at(note.onset_ticks)
    if strength < 0.5:
        return 0.0
    span = context.tune.chord_at(note.onset_ticks)
    return strength if span and span.chord and note.pitch.midi % 12 not in span.chord.pitch_classes else 0.0


@lru_cache(maxsize=256)
def feature_name(name: str) -> Message:
    """A feature as it is said to people; its own name is a key of the files of weights.

    Examples:
        >>> str(feature_name("phrase start"))
        'start of a phrase'
    """
    return message(f"feature-{_NO_LETTERS.sub('-', name)}")


def learned_scores(taste: Taste, tune: Tune, techniques: Sequence[Technique]) -> NDArray[np.float64]:
    """What the learned model of grace notes adds to each technique at each note: shape (notes, techniques).

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> learned_scores(taste_of("jazz"), tune, ()).shape == (len(tune.notes), 0)
        True
    """
    added = np.zeros((len(tune.notes), len(techniques)))
    columns = [n for n, technique in enumerate(techniques) if family_of(technique).are_graces]
    if not (taste.learned and columns):
        return added
    model = folk_grace_taste()
    sides = np.array([_side(techniques[column]) for column in columns])
    for row, site in enumerate(grace_sites(tune)):
        context = taste.learned["placement"] * (model.placement_score(site) - taste.learned["usual placement"])
        added[row, columns] = context + taste.learned["side"] * model.side_score(site) * sides
    return added


def learned_reasons(taste: Taste, tune: Tune, index: int, technique: Technique) -> dict[Message, float]:
    """What each feature of the learned model adds for a technique at a note; empty where nothing is learned.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.turn import TURN
        >>> learned_reasons(taste_of("folk"), tune, 0, TURN)  # grace notes alone are learned
        {}
    """
    if not (taste.learned and family_of(technique).are_graces):
        return {}
    model, site = folk_grace_taste(), grace_sites(tune)[index]
    by_place, by_side = taste.learned["placement"], taste.learned["side"] * _side(technique)
    reasons = {feature_name("usual place"): by_place * (model.placement_base - taste.learned["usual placement"])}
    places, sides = model.placement_reasons(site), model.side_reasons(site)
    reasons |= {message("feature-placement", feature=feature_name(n)): by_place * v for n, v in places.items()}
    reasons[feature_name("usual side")] = by_side * model.side_base
    return reasons | {message("feature-side", feature=feature_name(n)): by_side * v for n, v in sides.items()}


def _side(technique: Technique) -> float:
    """+1 for a technique above the note, −1 below, 0 for both or neither."""
    return float(technique.side == "above") - float(technique.side == "below")


def contributions(
    taste: Taste, technique: Technique, context: Context, figure: Figure, loss: float
) -> dict[Message, float]:
    """What each feature adds to the score of a figure, largest first; zeros are left out.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> from fioritura.arrange.survey import survey
        >>> found = survey(tune, setting, only=["turn"])
        >>> reasons = found.why(found.figures[0])
        >>> abs(sum(reasons.values()) - found.figures[0].score) < 0.01
        True
    """
    weights = taste.matrix([technique])[:, 0]
    found = {feature_name("technique"): taste.base.get(technique.id, 0.0)}
    found[feature_name("choice among its variants")] = figure.merit
    found |= {
        feature_name(name): w * v for name, w, v in zip(FEATURES, weights, context_features(context), strict=True)
    }
    found |= learned_reasons(taste, context.tune, context.index, technique)
    if context.setting.idiom == "irish":
        found |= irish_reasons(context, technique)
    own = zip(
        FIGURE_FEATURES, taste.figure_matrix([technique])[:, 0], figure_features(figure, context, loss), strict=True
    )
    found |= {feature_name(name): w * v for name, w, v in own}
    counted = ((name, float(value)) for name, value in found.items() if abs(value) > 5e-4)
    return dict(sorted(counted, key=lambda item: -abs(item[1])))
