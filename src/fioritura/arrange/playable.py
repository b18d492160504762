"""What only the whole line shows: a breath that a figure has taken away, grace notes that have no time left, and the
places that ask for practice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from fioritura.arrange.rendition import Rendition
from fioritura.players.playability import HardPlace, hardest_places
from fioritura.tune import Note

__all__ = ["places_to_practise", "unplayable_figures"]

BREATH_SEC: Final = 0.35
"""A quick breath between two notes (common practice)."""

_MOST_GRACE_SHARE: Final = 0.5
_LOOKED_AT: Final = 12


def unplayable_figures(rendition: Rendition) -> frozenset[int]:
    """Numbers of the figures that leave the player without breath or a grace note without time.

    The plain tune may ask for a longer breath than the player's; the ornamented line may ask for as long, never for
    longer. Grace notes may take half of the time between the attacks of the notes around them.
    """
    return frozenset((*_without_breath(rendition), *_without_time(rendition)))


def _without_breath(rendition: Rendition) -> Iterator[int]:
    seconds = rendition.setting.seconds
    plain = [end - start for start, end in _stretches(rendition.tune.notes, rendition)]
    longest = max([rendition.setting.player.limits.breath_sec, *map(seconds, plain)])
    for start, end in _stretches(rendition.line, rendition):
        if seconds(end - start) > longest:
            yield from _thieves(rendition, start, end)


def _stretches(line: Sequence[Note], rendition: Rendition) -> Iterator[tuple[int, int]]:
    """Start and end (ticks) of the sound between chances to breathe: a rest, or a note that can give half of itself."""
    seconds = rendition.setting.seconds
    start = line[0].onset_ticks
    for note, following in pairwise(line):
        rests = seconds(following.onset_ticks - note.end_ticks) >= BREATH_SEC
        if rests or seconds(note.duration_ticks) >= 2 * BREATH_SEC:
            yield start, note.end_ticks
            start = following.onset_ticks
    yield start, line[-1].end_ticks


def _thieves(rendition: Rendition, start: int, end: int) -> Iterator[int]:
    """Figures of a stretch that wrote over a rest, or over a plain note long enough to breathe in."""
    seconds, tune = rendition.setting.seconds, rendition.tune
    for number, figure in enumerate(rendition.figures):
        if not figure.notes or figure.end_ticks <= start or figure.start_ticks >= end:
            continue
        for index in range(figure.first_slot // 2, figure.last_slot // 2 + 1):
            note = tune.notes[index]
            following = tune.notes[index + 1].onset_ticks if index + 1 < len(tune.notes) else tune.duration_ticks
            rests = seconds(following - note.end_ticks) >= BREATH_SEC
            if rests or seconds(note.duration_ticks) >= 2 * BREATH_SEC:
                yield number
                break


def _without_time(rendition: Rendition) -> Iterator[int]:
    needed = rendition.setting.player.limits.grace_sec
    for before, note in pairwise(rendition.line):
        between = rendition.setting.seconds(note.onset_ticks - before.onset_ticks)
        if note.figures and len(note.graces) * needed > _MOST_GRACE_SHARE * between:
            yield from (number for number in note.figures if rendition.figures[number].graces)


def places_to_practise(rendition: Rendition, count: int = 3) -> tuple[HardPlace, ...]:
    """The hardest places of a rendition, hardest first, no two of which turn on the same two notes."""
    setting, line = rendition.setting, rendition.line
    if len(line) < 2:
        return ()
    found: dict[frozenset[int], HardPlace] = {}
    for place in hardest_places(setting.player, line, rendition.tune, setting.quarters_per_minute, _LOOKED_AT):
        found.setdefault(frozenset(pitch.midi for pitch in place.pair), place)
    return tuple(found.values())[:count]
