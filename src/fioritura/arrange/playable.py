"""What only the whole line shows: a breath that a figure has taken away, grace notes that have no time left, and the
places that ask for practice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import Final

from fioritura.arrange.rendition import Rendition
from fioritura.players.breath import HASTY_BREATH_SEC, BreathPlan
from fioritura.players.phrasing import phrasing_of
from fioritura.players.playability import HardPlace, hardest_places
from fioritura.players.player import Player
from fioritura.tune import Note, Tune

__all__ = ["places_to_practise", "unplayable_figures"]

_MOST_GRACE_SHARE: Final = 0.5
_LOOKED_AT: Final = 12


def unplayable_figures(rendition: Rendition) -> frozenset[int]:
    """Numbers of the figures that leave the player without breath or a grace note without time.

    The plain tune may ask for a longer breath than the player's; the ornamented line may ask for as long, never for
    longer. Grace notes may take half of the time between the attacks of the notes around them.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> rendition = fioritura.ornament(tune, fioritura.Setting("alto-sax", level=3))
        >>> unplayable_figures(rendition)
        frozenset()
    """
    return frozenset((*_without_breath(rendition), *_without_time(rendition)))


def _without_breath(rendition: Rendition) -> Iterator[int]:
    setting = rendition.setting
    plain_sec = _longest_plain_sec(rendition.tune, setting.player, setting.quarters_per_minute)
    longest = max(setting.player.limits.breath_sec, plain_sec)
    if rendition.phrasing.breaths.longest_sec <= longest:
        return
    for start, end in _stretches(rendition.phrased_line, rendition.phrasing.breaths):
        if setting.seconds(end - start) > longest:
            yield from _thieves(rendition, start, end)


@lru_cache(maxsize=8)
def _longest_plain_sec(tune: Tune, player: Player, quarters_per_minute: float) -> float:
    """How long the plain tune asks for one breath."""
    return phrasing_of(tune, tune.notes, player, quarters_per_minute).breaths.longest_sec


def _stretches(line: Sequence[Note], plan: BreathPlan) -> Iterator[tuple[int, int]]:
    """Start and end (ticks) of the sound between breaths."""
    start = line[0].onset_ticks
    for breath in plan.breaths:
        if breath.after + 1 < len(line):
            yield start, line[breath.after].end_ticks
            start = line[breath.after + 1].onset_ticks
    yield start, line[-1].end_ticks


def _thieves(rendition: Rendition, start: int, end: int) -> Iterator[int]:
    """Figures of a stretch that wrote over a place to breathe."""
    seconds, tune = rendition.setting.seconds, rendition.tune
    for number, figure in enumerate(rendition.figures):
        if not figure.notes or figure.end_ticks <= start or figure.start_ticks >= end:
            continue
        for index in range(figure.first_slot // 2, figure.last_slot // 2 + 1):
            note = tune.notes[index]
            following = tune.notes[index + 1].onset_ticks if index + 1 < len(tune.notes) else tune.duration_ticks
            if seconds(following - note.end_ticks) + seconds(note.duration_ticks) / 2 >= HASTY_BREATH_SEC:
                yield number
                break


def _without_time(rendition: Rendition) -> Iterator[int]:
    needed = rendition.setting.player.limits.grace_sec
    for before, note in pairwise(rendition.phrased_line):
        between = rendition.setting.seconds(note.onset_ticks - before.onset_ticks)
        if note.figures and len(note.graces) * needed > _MOST_GRACE_SHARE * between:
            yield from (number for number in note.figures if rendition.figures[number].graces)


def places_to_practise(rendition: Rendition, count: int = 3) -> tuple[HardPlace, ...]:
    """The hardest places of a rendition, hardest first, no two of which turn on the same two notes.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> rendition = fioritura.ornament(tune, fioritura.Setting("alto-sax", level=3))
        >>> len(places_to_practise(rendition, 2))
        2
    """
    setting, line = rendition.setting, rendition.line
    if len(line) < 2:
        return ()
    found: dict[frozenset[int], HardPlace] = {}
    for place in hardest_places(setting.player, line, rendition.tune, setting.quarters_per_minute, _LOOKED_AT):
        found.setdefault(frozenset(pitch.midi for pitch in place.pair), place)
    return tuple(found.values())[:count]
