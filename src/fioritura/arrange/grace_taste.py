"""Where folk players put a single grace note, and on which side: a small model learned from their own books.

Each note of a tune gets a score that is a sum of named features times weights. The features are the two tables
below, each a name with what it looks at; the weights stand in `grace_taste_folk.json`, trained by
`tools/train_taste.py` on the single grace notes of three ABC books of music21's corpus (O'Neill's Music of Ireland,
Ryan's Mammoth Collection, Aird's Airs). A placement score is the log-odds of a grace note at the books' own
density; scores are meant to be compared within a tune. A side score is the log-odds that a grace note there lies
above its main note.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from itertools import pairwise
from math import log2
from typing import Final

from fioritura.theory.key import Key
from fioritura.theory.metre import Metre
from fioritura.tune import Note, Tune

__all__ = ["PLACEMENT", "SIDE", "GraceSite", "GraceTaste", "folk_grace_taste", "grace_sites"]

_NO_INTERVAL: Final = 0.5
"""At the ends of a tune: an interval that is neither up, down nor a repeated note."""


class GraceSite:
    """A note as the features see it.

    Intervals are in semitones, upwards positive: `came` to this note, `leaves` from it, `came_before` to the note
    before, `leaves_after` from the next one. `length` is the binary logarithm of its length in beats (−3 to 2);
    `over_before`, `over_next` and `over_usual` those of its length over its neighbours' and over the tune's mean (−2
    to 2), `flow` that of the note before over its own predecessor. `degree` counts semitones above the tonic,
    `height` those above the tune's mean pitch.
    """

    __slots__ = (
        "after_rest",
        "came",
        "came_before",
        "degree",
        "flow",
        "height",
        "is_compound",
        "is_triple",
        "leaves",
        "leaves_after",
        "length",
        "next_strength",
        "over_before",
        "over_next",
        "over_usual",
        "step_above",
        "step_below",
        "strength",
    )

    def __init__(self, note: Note, metre: Metre, key: Key) -> None:
        self.length = _clipped(log2(max(note.duration_ticks, 1) / metre.beat_ticks), -3.0, 2.0)
        self.degree = (note.pitch.midi - key.tonic.pitch_class) % 12
        self.step_above = key.step(note.pitch, 1).midi - note.pitch.midi
        self.step_below = note.pitch.midi - key.step(note.pitch, -1).midi
        self.is_compound = metre.is_compound
        self.is_triple = metre.beats == 3
        self.came = self.came_before = self.leaves = self.leaves_after = _NO_INTERVAL
        self.over_before = self.over_next = self.over_usual = self.height = 0.0
        self.flow = _NO_INTERVAL
        self.strength = self.next_strength = 0.0
        self.after_rest = False

    @property
    def is_quick(self) -> bool:
        """Shorter than half a beat (0.44 of it)."""
        return self.length <= -1.2

    @property
    def is_half_beat_long(self) -> bool:
        """About half a beat long; the two thirds of a beat in compound time are longer."""
        return -1.2 < self.length <= -0.8

    @property
    def steps_down(self) -> bool:
        """The next note lies a step below."""
        return -2 <= self.leaves < 0

    @property
    def turns(self) -> bool:
        """A step down, and up again."""
        return -2 <= self.leaves < 0 and self.leaves_after >= 1

    @property
    def on_half_beat(self) -> bool:
        """On the half of a beat; on its second or third third in compound time."""
        return self.strength == 0.25

    @property
    def on_beat(self) -> bool:
        """On any beat."""
        return self.strength >= 0.5


PLACEMENT: Final[dict[str, Callable[[GraceSite], float]]] = {
    "length in beats": lambda s: s.length,
    "length over the tune's usual note": lambda s: s.over_usual,
    "on the downbeat": lambda s: s.strength == 1.0,
    "stronger than the next note": lambda s: s.strength > s.next_strength,
    "on a beat in compound time": lambda s: s.on_beat and s.is_compound,
    "quick, on a beat": lambda s: s.on_beat and s.is_quick,
    "on a beat, then falls": lambda s: s.on_beat and s.leaves < 0,
    "on a beat, then a step down": lambda s: s.on_beat and s.steps_down,
    "on a half-beat, then a step down": lambda s: s.on_half_beat and s.steps_down,
    "half a beat long, as the next": lambda s: s.is_half_beat_long and abs(s.over_next) <= 0.2,
    "longer after even notes in compound time": lambda s: (
        s.is_compound and s.over_before > 0.2 and abs(s.flow) <= 0.2
    ),
    "dotted, then a step down": lambda s: s.steps_down and 0.3 < s.over_next <= 1.8,
    "long, then rises": lambda s: s.length > -0.3 and s.leaves >= 1,
    "long, then falls": lambda s: s.length > -0.3 and s.leaves < 0,
    "amid a rise": lambda s: s.came >= 1 and s.leaves >= 1,
    "fallen to, then rises": lambda s: s.came < 0 and s.leaves >= 1,
    "a peak, then a step down": lambda s: s.came >= 1 and s.steps_down,
    "reached by a semitone up": lambda s: s.came == 1,
    "reached by a semitone up, on a half-beat": lambda s: s.came == 1 and s.on_half_beat,
    "reached by a third to a fifth up": lambda s: 3 <= s.came <= 7,
    "half a beat long after a sixth up or more": lambda s: s.came >= 8 and s.is_half_beat_long,
    "on a half-beat after a sixth up or more": lambda s: s.came >= 8 and s.on_half_beat,
    "left by a semitone down": lambda s: s.leaves == -1,
    "left by a sixth down or more": lambda s: s.leaves <= -8,
    "left by an octave down": lambda s: s.leaves == -12,
    "a sixth down or more to a stronger note": lambda s: s.leaves <= -8 and s.strength < s.next_strength,
    "the lower neighbour follows": lambda s: s.steps_down and s.leaves_after == -s.leaves,
    "a step down and up again": lambda s: s.turns,
    "quick, a step down and up again": lambda s: s.turns and s.is_quick,
    "quick, the next note falls": lambda s: s.is_quick and s.leaves_after < 0,
    "on a half-beat, a step down and up again": lambda s: s.turns and s.on_half_beat and s.next_strength < 0.25,
    "repeated, a step down and up again": lambda s: s.turns and s.came == 0,
    "half a beat long, out and back": lambda s: s.is_half_beat_long and s.came == -s.leaves != 0,
    "a neighbour follows on the beat": lambda s: s.next_strength >= 0.5 and s.leaves_after == -s.leaves != 0,
    "repeated, then falls": lambda s: s.came == 0 and s.leaves < 0,
    "repeated, then a step down": lambda s: s.came == 0 and s.steps_down,
    "repeated, on the downbeat": lambda s: s.came == 0 and s.strength == 1.0,
    "repeated, on a beat": lambda s: s.came == 0 and s.on_beat,
    "repeated, on a half-beat": lambda s: s.came == 0 and s.on_half_beat,
    "repeated and very short": lambda s: s.came == 0 and s.length <= -2.3,
    "repeated and much longer than the next": lambda s: s.came == 0 and s.over_next > 1.2,
    "the note before was a repeated one": lambda s: s.came_before == 0,
    "fallen to, on a half-beat": lambda s: s.came < 0 and s.on_half_beat,
    "fallen to and quick": lambda s: s.came < 0 and s.is_quick,
    "a step down in even notes": lambda s: -2 <= s.came < 0 and abs(s.over_before) <= 0.2,
    "very long, the note before reached by a semitone down": lambda s: s.came_before == -1 and s.over_usual >= 0.9,
    "high and much longer than the next": lambda s: s.height >= 3 and s.over_next > 1.2,
    "second degree on the downbeat": lambda s: s.degree == 2 and s.strength == 1.0,
    "second degree in triple time": lambda s: s.degree == 2 and s.is_triple,
    "fourth degree, the next note falls": lambda s: s.degree == 5 and s.leaves_after < 0,
    "fourth degree, then a third down": lambda s: s.degree == 5 and -4 <= s.leaves <= -3,
    "fifth degree in even notes": lambda s: s.degree == 7 and abs(s.over_next) <= 0.2,
    "seventh degree on a beat": lambda s: s.degree >= 10 and s.on_beat,
}
"""What speaks for or against a single grace note at a note; True counts as 1."""

SIDE: Final[dict[str, Callable[[GraceSite], float]]] = {
    "length in beats": lambda s: s.length,
    "on a half-beat": lambda s: s.on_half_beat,
    "after a rest": lambda s: s.after_rest,
    "tonic": lambda s: s.degree == 0,
    "the scale has a semitone below": lambda s: s.step_below == 1,
    "repeated": lambda s: s.came == 0,
    "reached by a step down": lambda s: -2 <= s.came < 0,
    "reached by a leap down": lambda s: s.came <= -3,
    "reached by a whole tone up": lambda s: s.came == 2,
    "reached by a third up": lambda s: 3 <= s.came <= 4,
    "reached by a sixth up or more": lambda s: s.came >= 8,
    "the grace above would repeat the note before": lambda s: s.came == -s.step_above,
    "the grace below would repeat the note before": lambda s: s.came == s.step_below,
    "followed by the same note": lambda s: s.leaves == 0,
    "followed by a step up": lambda s: 1 <= s.leaves <= 2,
    "followed by a leap up": lambda s: s.leaves >= 3,
    "followed by a semitone down": lambda s: s.leaves == -1,
    "followed by a fourth to a seventh down": lambda s: -11 <= s.leaves <= -5,
    "followed by an octave down or more": lambda s: s.leaves <= -12,
    "the last note": lambda s: s.leaves == _NO_INTERVAL,
    "leapt up to and followed by the same note": lambda s: s.came >= 3 and s.leaves == 0,
    "amid a rise": lambda s: s.came >= 1 and s.leaves >= 1,
}
"""What speaks for the side above (positive weights) or below; True counts as 1."""


@dataclass(frozen=True)
class GraceTaste:
    """Weights of the features of `PLACEMENT` and `SIDE` by name, and the log-odds that hold without any of them."""

    placement: Mapping[str, float]
    placement_base: float
    side: Mapping[str, float]
    side_base: float

    def placement_score(self, site: GraceSite) -> float:
        """Log-odds of a single grace note at a note."""
        return self.placement_base + sum(weight * PLACEMENT[name](site) for name, weight in self.placement.items())

    def side_score(self, site: GraceSite) -> float:
        """Log-odds that a single grace note there lies above; below zero it lies below."""
        return self.side_base + sum(weight * SIDE[name](site) for name, weight in self.side.items())

    def placement_reasons(self, site: GraceSite) -> dict[str, float]:
        """What each feature adds to the score of a place, the weightiest first."""
        return _weightiest({name: weight * PLACEMENT[name](site) for name, weight in self.placement.items()})

    def side_reasons(self, site: GraceSite) -> dict[str, float]:
        """What each feature adds to the score of the side above, the weightiest first."""
        return _weightiest({name: weight * SIDE[name](site) for name, weight in self.side.items()})


@cache
def folk_grace_taste() -> GraceTaste:
    """The folk model, read from its file once.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> model = folk_grace_taste()
        >>> long, short = grace_sites(tune)[3], grace_sites(tune)[2]
        >>> model.placement_score(long) > model.placement_score(short)
        True
    """
    text = files("fioritura.arrange").joinpath("grace_taste_folk.json").read_text(encoding="utf-8")
    data = json.loads(text)
    placement, side = data["placement"], data["side"]
    return GraceTaste(placement["weights"], placement["base"], side["weights"], side["base"])


def grace_sites(tune: Tune) -> tuple[GraceSite, ...]:
    """Every note of a tune as the features see it.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> grace_sites(tune)[1].came, grace_sites(tune)[1].strength
        (9, 1.0)
    """
    notes = tune.notes
    found = []
    for note in notes:
        bar = tune.bar_at(note.onset_ticks)
        site = GraceSite(note, bar.metre, bar.key)
        site.strength = tune.strength_at(note.onset_ticks)
        found.append(site)
    if found:
        _compare_with_tune(found, notes)
    for (before, site), (earlier, note) in zip(pairwise(found), pairwise(notes), strict=True):
        before.leaves = site.came = note.pitch.midi - earlier.pitch.midi
        before.next_strength = site.strength
        longer = log2(max(note.duration_ticks, 1) / max(earlier.duration_ticks, 1))
        site.over_before = _clipped(longer, -2.0, 2.0)
        before.over_next = -site.over_before
        site.after_rest = note.onset_ticks > earlier.end_ticks
    for before, site in pairwise(found):
        before.leaves_after, site.came_before = site.leaves, before.came
    for _, before, site in zip(found, found[1:], found[2:], strict=False):
        site.flow = before.over_before
    return tuple(found)


def _compare_with_tune(found: list[GraceSite], notes: tuple[Note, ...]) -> None:
    total = max(sum(note.duration_ticks for note in notes), 1)
    usual_ticks = total / len(notes)
    middle = sum(note.pitch.midi * note.duration_ticks for note in notes) / total
    for site, note in zip(found, notes, strict=True):
        site.over_usual = _clipped(log2(max(note.duration_ticks, 1) / usual_ticks), -2.0, 2.0)
        site.height = note.pitch.midi - middle


def _clipped(value: float, low: float, high: float) -> float:
    return low if value < low else high if value > high else value


def _weightiest(parts: dict[str, float]) -> dict[str, float]:
    return dict(sorted(((n, v) for n, v in parts.items() if v), key=lambda item: -abs(item[1])))
