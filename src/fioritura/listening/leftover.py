"""What the technique table leaves unexplained: figures by definition, and slips."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from fioritura.listening.definition import Group, techniques_of
from fioritura.listening.naming import PLAIN, NamedFigure
from fioritura.listening.reading import Heard
from fioritura.players.idiom import idiom_of
from fioritura.techniques.table import family_of, technique_named
from fioritura.theory.metre import EIGHTH, HALF, THIRTYSECOND
from fioritura.theory.scale import chord_scale, key_scale, pentatonic
from fioritura.tune import Tune

__all__ = ["Leftover"]

WHOLE_CONFIDENCE: Final = 0.6
PART_CONFIDENCE: Final = 0.5
LEAST_CONFIDENCE: Final = 0.45
"""A figure by definition must be as sure as this."""

_QUICK_SEC: Final = 0.1


@dataclass
class Leftover:
    """The events of a passage that nothing explains (`extras`) among all that were heard.

    `standing` holds the event that stands for each plain note, `exact` the figures of the table that were read, with
    events counted from `first_event`. `figures` names what it can, gives up figures of `exact` that leave notes beside
    them where a reading by definition explains all, and leaves in `extras` what stays unexplained.
    """

    tune: Tune
    heard: Sequence[Heard]
    standing: Mapping[int, int]
    extras: set[int]
    exact: list[NamedFigure]
    first_event: int
    passage: int

    def figures(self) -> list[NamedFigure]:
        """The exact figures that stand, and those by definition."""
        plain_of = {event: plain for plain, event in self.standing.items()}
        loose = [event for event in range(len(self.heard)) if event not in plain_of]
        for run in _neighbours(loose):
            if not self.extras.intersection(run):
                continue
            before, after = plain_of.get(run[0] - 1), plain_of.get(run[-1] + 1)
            if any(self.tune.notes[plain].is_ornamented for plain in (before, after) if plain is not None):
                self.extras.difference_update(run)
            elif self.extras.issuperset(run) or self._gives_way(run):
                self._name(run, before, after)
        return self.exact

    def _gives_way(self, run: Sequence[int]) -> bool:
        """True when the exact figures inside a run own no note outside it but such as stand for the tune's."""
        own = {event + self.first_event for event in (*run, *self.standing.values())}
        touched = [one for one in self.exact if {event + self.first_event for event in run}.intersection(one.events)]
        return all(own.issuperset(one.events) for one in touched)

    def _name(self, run: Sequence[int], before: int | None, after: int | None) -> None:
        """Name a run as a whole, or not at all."""
        if before is None and after is None:
            return
        parts = techniques_of(self._group(run, before, after), idiom_of(self.tune))
        share = WHOLE_CONFIDENCE if len(parts) == 1 else PART_CONFIDENCE
        named = [self._named(technique, run[first:stop], before, after, share) for technique, first, stop in parts]
        if not named or min(one.confidence for one in named) < LEAST_CONFIDENCE:
            return
        own = {event + self.first_event for event in run}
        self.exact[:] = [one for one in self.exact if not own.intersection(one.events)] + named
        self.extras.difference_update(run)

    def _named(
        self, technique: str, events: Sequence[int], before: int | None, after: int | None, share: float
    ) -> NamedFigure:
        sure = round(share * min(self.heard[event].confidence for event in events) ** 2, 3)
        bar, beat = self.tune.beat_at(max(0, round(self.heard[events[0]].onset)))
        around = (after, before) if family_of(technique_named(technique)).lead_on else (before, after)
        return NamedFigure(
            technique,
            bar,
            round(beat, 3),
            sure,
            PLAIN,
            round(1 - sure, 3),
            tuple(plain for plain in around if plain is not None),
            tuple(event + self.first_event for event in events),
            self.passage,
            is_exact=False,
        )

    def _group(self, run: Sequence[int], before: int | None, after: int | None) -> Group:
        tune, own = self.tune, [self.heard[event] for event in run]
        anchor = before if before is not None else after
        assert anchor is not None
        note = tune.notes[anchor]
        span, key = tune.chord_at(note.onset_ticks), tune.bar_at(note.onset_ticks).key
        chord = span.chord if span else None
        goal = tune.notes[after].onset_ticks if after is not None else tune.duration_ticks
        return Group(
            before=None if before is None else self.heard[run[0] - 1].midi,
            inner=tuple(one.midi for one in own),
            after=None if after is None else self.heard[run[-1] + 1].midi,
            is_quick=all(map(_is_quick, own)),
            is_light=max(one.end - one.onset for one in own) <= self._light_ticks(run),
            is_fill=before is not None and goal - note.onset_ticks >= HALF,
            scale=chord_scale(chord, key).pitch_classes | key_scale(key).pitch_classes,
            five=pentatonic(chord, key).pitch_classes,
            chord=chord.pitch_classes if chord else frozenset(),
        )

    def _light_ticks(self, run: Sequence[int]) -> float:
        """An eighth, or half of the longer note beside a run, where that is less."""
        beside = [self.heard[place] for place in (run[0] - 1, run[-1] + 1) if 0 <= place < len(self.heard)]
        return min(EIGHTH, max(one.end - one.onset for one in beside) / 2) + THIRTYSECOND / 2


def _is_quick(one: Heard) -> bool:
    if one.seconds is not None:
        return one.seconds <= _QUICK_SEC
    return one.is_grace or one.end - one.onset <= THIRTYSECOND


def _neighbours(events: Sequence[int]) -> Iterator[list[int]]:
    """Runs of consecutive numbers."""
    group: list[int] = []
    for event in events:
        if group and event != group[-1] + 1:
            yield group
            group = []
        group.append(event)
    if group:
        yield group
