"""The single grace notes of three folk books: reading them, splitting them, learning from them, measuring.

The books are those of music21's ABC corpus that write grace notes: O'Neill's Music of Ireland, Ryan's Mammoth
Collection and Aird's Airs. A tune counts when it has at least one single grace note; a tune whose opening was met
before (in this or another book) is left out. The split is by title, so that two settings of a tune never stand on
both sides, and it is fixed: the test half is measured, never trained or tuned on.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from pathlib import Path
from zlib import crc32

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.grace_taste import PLACEMENT, SIDE, GraceSite, GraceTaste, grace_sites
from fioritura.errors import FiorituraError
from fioritura.notation.abc.reader import list_abc
from fioritura.tune import Tune

BOOKS = ("oneills1850", "ryansMammoth", "airdsAirs")
OPENING_NOTES = 24
PLACEMENT_RIDGE = 3.0
SIDE_RIDGE = 1.0

Array = NDArray[np.float64]


@dataclass(frozen=True)
class FolkTune:
    """A tune with grace notes: for each note what the features see, and the side of its single grace note.

    `sides` holds +1 (above), −1 (below), 0 (none; also for a grace note on the note's own pitch) for each note;
    `counted` marks the notes that take part: all but those with several grace notes.
    """

    book: str
    title: str
    sites: tuple[GraceSite, ...]
    sides: tuple[int, ...]
    has_grace: tuple[bool, ...]
    counted: tuple[bool, ...]

    @property
    def is_test(self) -> bool:
        """True for the half that is never trained on."""
        return crc32(self.title.encode()) % 2 == 1


@cache
def folk_tunes() -> tuple[FolkTune, ...]:
    """All tunes that count, in order of book, file and place."""
    from music21 import corpus

    paths = [Path(path) for path in corpus.getCorePaths(fileExtensions=("abc",))]
    found = []
    openings = set()
    for path in sorted(path for path in paths if path.parent.name in BOOKS):
        for entry in list_abc(path.read_bytes().decode("utf-8", "replace")):
            if not any("{" in line.text for line in entry.text.lines):
                continue
            try:
                tune = entry.read(irregular="keep")
            except FiorituraError:
                continue
            opening = tuple(b.pitch.midi - a.pitch.midi for a, b in pairwise(tune.notes[: OPENING_NOTES + 1]))
            if any(len(note.graces) == 1 for note in tune.notes) and opening not in openings:
                openings.add(opening)
                found.append(_folk_tune(path.parent.name, re.sub("[^a-z]", "", entry.title.lower()), tune))
    return tuple(found)


def _folk_tune(book: str, title: str, tune: Tune) -> FolkTune:
    single = [note.graces[0].midi - note.pitch.midi if len(note.graces) == 1 else 0 for note in tune.notes]
    return FolkTune(
        book,
        title,
        grace_sites(tune),
        tuple((rise > 0) - (rise < 0) for rise in single),
        tuple(len(note.graces) == 1 for note in tune.notes),
        tuple(len(note.graces) <= 1 for note in tune.notes),
    )


# --- learning ---------------------------------------------------------------------------------------------------


def train(tunes: Sequence[FolkTune]) -> GraceTaste:
    """The model learned from some tunes."""
    placement = _columns(PLACEMENT, [site for tune in tunes for site in _counted_sites(tune)])
    graces = np.concatenate([_graces(tune) for tune in tunes])
    sizes = [sum(tune.counted) for tune in tunes]
    weights = conditional_logit(placement, graces, sizes)
    base = _base_for(placement @ weights, float(graces.mean()))
    chosen = [(site, side) for tune in tunes for site, side in zip(tune.sites, tune.sides, strict=True) if side]
    side_matrix = _columns(SIDE, [site for site, _ in chosen])
    above = np.array([side > 0 for _, side in chosen], dtype=np.float64)
    side_base, side_weights = logistic(side_matrix, above, SIDE_RIDGE)
    return GraceTaste(_named(PLACEMENT, weights), base, _named(SIDE, side_weights), side_base)


def conditional_logit(columns: Array, graces: Array, sizes: Sequence[int], ridge: float = PLACEMENT_RIDGE) -> Array:
    """Weights under which each tune's grace notes are likeliest among the tune's own notes.

    The grace notes of a tune are drawn from a softmax over its notes; a tune with k of them weighs as √k. Newton's
    method with halved steps; `columns` is notes × features, `sizes` the notes of each tune in order.
    """
    edges = np.cumsum([0, *sizes[:-1]])
    owner = np.repeat(np.arange(len(sizes)), sizes)
    counts = np.add.reduceat(graces, edges)
    weigh = 1 / np.sqrt(np.maximum(counts, 1))
    drawn, wanted = counts * weigh, graces * weigh[owner]

    def loss(weights: Array) -> tuple[float, Array]:
        scores = columns @ weights
        top = np.maximum.reduceat(scores, edges)
        shares = np.exp(scores - top[owner])
        totals = np.add.reduceat(shares, edges)
        value = float(drawn @ (np.log(totals) + top) - wanted @ scores + ridge / 2 * weights @ weights)
        return value, shares / totals[owner]

    weights = np.zeros(columns.shape[1])
    value, shares = loss(weights)
    while True:
        expected = shares * drawn[owner]
        gradient = columns.T @ (expected - wanted) + ridge * weights
        means = np.add.reduceat(columns * shares[:, None], edges)
        curvature = (columns * expected[:, None]).T @ columns - (means * drawn[:, None]).T @ means
        step = np.linalg.solve(curvature + ridge * np.eye(len(weights)), gradient)
        length = 1.0
        while (tried := loss(weights - length * step))[0] > value and length > 1e-6:
            length /= 2
        if value - tried[0] < 1e-6:
            return weights
        weights = weights - length * step
        value, shares = tried


def logistic(columns: Array, outcome: Array, ridge: float) -> tuple[float, Array]:
    """Base and weights of a ridge logistic regression, by Newton's method."""
    columns = np.hstack([np.ones((len(columns), 1)), columns])
    penalty = np.r_[0.0, np.full(columns.shape[1] - 1, ridge)]
    weights = np.zeros(columns.shape[1])
    for _ in range(50):
        chance = 1 / (1 + np.exp(-columns @ weights))
        gradient = columns.T @ (chance - outcome) + penalty * weights
        curvature = (columns * (chance * (1 - chance))[:, None]).T @ columns + np.diag(penalty)
        step = np.linalg.solve(curvature, gradient)
        weights -= step
        if np.abs(step).max() < 1e-8:
            break
    return float(weights[0]), weights[1:]


def _columns(features: dict[str, Callable[[GraceSite], float]], found: Sequence[GraceSite]) -> Array:
    return np.array([[feature(site) for feature in features.values()] for site in found], dtype=np.float64)


def _named(features: dict[str, Callable[[GraceSite], float]], weights: Array) -> dict[str, float]:
    return {name: round(float(weight), 3) for name, weight in zip(features, weights, strict=True)}


def _base_for(scores: Array, share: float) -> float:
    """The base at which the mean chance of a grace note is `share`."""
    low, high = -50.0, 50.0
    for _ in range(60):
        base = (low + high) / 2
        mean = float((1 / (1 + np.exp(-(scores + base)))).mean())
        low, high = (base, high) if mean < share else (low, base)
    return round(base, 3)


def _counted_sites(tune: FolkTune) -> list[GraceSite]:
    return [site for site, counts in zip(tune.sites, tune.counted, strict=True) if counts]


def _graces(tune: FolkTune) -> Array:
    return np.array(
        [has for has, counts in zip(tune.has_grace, tune.counted, strict=True) if counts], dtype=np.float64
    )


# --- measuring --------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Measures:
    """How a model does on some tunes.

    `mean_auc`: the area under the curve of a tune's own notes, averaged over tunes (chance 0.5). `hit_share`: of all
    grace notes, how many stand at the k best scores of their tune, k being the tune's own count; `mean_hit_share`
    the same averaged over tunes. `side_share`: grace notes that lie on the side the model says.
    """

    tunes: int
    graces: int
    mean_auc: float
    hit_share: float
    mean_hit_share: float
    side_share: float


def measure(taste: GraceTaste, tunes: Sequence[FolkTune]) -> Measures:
    """Hold a model against tunes."""
    aucs, hits, counts, agreed = [], [], [], []
    for tune in tunes:
        scores = np.array([taste.placement_score(site) for site in _counted_sites(tune)])
        graces = _graces(tune).astype(bool)
        aucs.append(auc(scores, graces))
        best = np.argsort(-scores, kind="stable")[: graces.sum()]
        hits.append(int(graces[best].sum()))
        counts.append(int(graces.sum()))
        agreed += [
            (taste.side_score(site) > 0) == (side > 0)
            for site, side in zip(tune.sites, tune.sides, strict=True)
            if side
        ]
    return Measures(
        len(tunes),
        sum(counts),
        float(np.mean(aucs)),
        sum(hits) / sum(counts),
        float(np.mean([hit / count for hit, count in zip(hits, counts, strict=True)])),
        float(np.mean(agreed)),
    )


def auc(scores: Array, is_hit: NDArray[np.bool_]) -> float:
    """Chance that a note with a grace note scores above one without; ties count half."""
    above = (scores[is_hit][:, None] > scores[~is_hit][None, :]).mean()
    equal = (scores[is_hit][:, None] == scores[~is_hit][None, :]).mean()
    return float(above + equal / 2)


def across_books(tunes: Sequence[FolkTune]) -> dict[str, Measures]:
    """For each book, the measures on all its tunes of a model trained on the other books alone.

    Tunes whose title the book has too are left out of the training.
    """
    found = {}
    for book in BOOKS:
        asked = [tune for tune in tunes if tune.book == book]
        titles = {tune.title for tune in asked}
        others = [tune for tune in tunes if tune.book != book and tune.title not in titles]
        found[book] = measure(train(others), asked)
    return found
