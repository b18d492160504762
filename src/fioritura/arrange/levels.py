"""What the five levels ask of a player: how many figures, how close together, and how much of the tune stays."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from fioritura.errors import OptionError
from fioritura.players.feel import BALLAD_BELOW, UP_ABOVE
from fioritura.players.setting import Setting
from fioritura.theory.metre import QUARTER, WHOLE

__all__ = ["LEVELS", "Level", "fullness", "level_numbered", "level_of"]


@dataclass(frozen=True, slots=True)
class Level:
    """`figures_per_bar` is how many a phrase may hold for each bar of four quarters, rounded rather up (see
    `most_figures`); `rest_ticks` the least time between two figures; `kept_share` the least weighted share of plain notes that keep pitch and place."""

    number: int
    figures_per_bar: float
    rest_ticks: int
    kept_share: float

    def at_density(self, density: float) -> Level:
        """The level with more or fewer figures, the rests between them shorter or longer to match."""
        rest_ticks = round(self.rest_ticks / density)
        return replace(self, figures_per_bar=self.figures_per_bar * density, rest_ticks=rest_ticks)

    def most_figures(self, duration_ticks: int, share: float = 1.0) -> int:
        """The most figures in a phrase of that length, one at least, where it gets that share of the density."""
        return max(round(duration_ticks / WHOLE * self.figures_per_bar * share + 0.3), 1)


LEVELS: Final[dict[int, Level]] = {
    level.number: level
    for level in (
        Level(1, 0.4, 2 * QUARTER, 0.92),
        Level(2, 0.55, QUARTER, 0.88),
        Level(3, 0.8, QUARTER, 0.84),
        Level(4, 1.2, QUARTER // 2, 0.72),
        Level(5, 1.5, 0, 0.6),
    )
}


def level_numbered(number: int) -> Level:
    """The level 1-5.

    Examples:
        >>> level_numbered(1).kept_share > level_numbered(5).kept_share
        True

    Raises:
        OptionError: outside 1-5.
    """
    if number not in LEVELS:
        raise OptionError("no-such-level", given=f"{number}", low=min(LEVELS), high=max(LEVELS))
    return LEVELS[number]


_IN_BALLADS: Final = {1: 1.0, 2: 1.05, 3: 1.15, 4: 1.25, 5: 1.4}
_UP: Final = 0.8


def fullness(setting: Setting) -> float:
    """How much fuller than a medium tune one is played in the setting: a jazz ballad is, the more so the better the
    player, an up-tempo tune is sparser (recorded wind solos: 3.2 notes a beat under 90 beats a minute, 1.8 from 90 to 160,
    1.4 above; Weimar Jazz Database).

    Examples:
        >>> fullness(Setting("alto-sax", tempo=60, level=5)), fullness(Setting("alto-sax", tempo=220, level=5))
        (1.4, 0.8)
    """
    if setting.tradition != "jazz":
        return 1.0
    tempo = setting.quarters_per_minute
    return _IN_BALLADS[setting.level] if tempo < BALLAD_BELOW else _UP if tempo > UP_ABOVE else 1.0


def level_of(setting: Setting) -> Level:
    """What the setting asks of its player: its level, at its density, as full as its tempo has it.

    Examples:
        >>> level_of(Setting("flute", tempo=120, level=3)) == level_numbered(3)
        True
    """
    return level_numbered(setting.level).at_density(setting.density * fullness(setting))
