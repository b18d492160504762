"""The setting: for whom and how a tune is ornamented. Every door makes this value, and making it checks it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final, cast, get_args

from fioritura.errors import OptionError
from fioritura.players.feel import feel_of
from fioritura.players.idiom import IDIOMS, Idiom, Tradition, idiom_of, tradition_of
from fioritura.players.instrument import Instrument
from fioritura.players.player import Player
from fioritura.theory.metre import QUARTER
from fioritura.tune import Feel, Tune

__all__ = ["DENSITIES", "FEELS", "IDIOMS", "TEMPOS", "Idiom", "Setting"]

FEELS: Final[tuple[Feel, ...]] = get_args(Feel)
DENSITIES: Final = (0.25, 2.0)
"""The least and the greatest density that can be asked for."""

TEMPOS: Final = (20.0, 400.0)
"""The slowest and the quickest tempo, in quarter notes a minute."""

_EVEN_FROM: Final = 100.0
_USUAL_TEMPO: Final = 120.0
_USUAL_FEEL: Final[Feel] = "straight"
_USUAL_IDIOM: Final[Idiom] = "jazz"


@dataclass(frozen=True, slots=True, init=False, repr=False)
class Setting:
    """For whom and how a tune is ornamented.

    `tempo` (quarter notes a minute), `asked_feel` and `asked_idiom` are None where the tune's own are to hold; `on` fills
    them in.
    `density` says how many figures there may be, as a share of what is usual at the level.

    Examples:
        >>> Setting("alto-sax", level=4, idiom="folk")
        Setting('alto-sax', level=4, idiom='folk')
        >>> Setting("alto-sax", tempo=float("nan"))
        Traceback (most recent call last):
        fioritura.errors.OptionError: A tempo of nan quarter notes a minute is out of reach: it goes from 20 to 400.
    """

    player: Player
    tempo: float | None
    asked_feel: Feel | None
    asked_idiom: Idiom | None
    density: float

    def __init__(
        self,
        player: str | Instrument | Player = "concert",
        tempo: float | None = None,
        feel: Feel | None = None,
        idiom: Idiom | None = None,
        density: float = 1.0,
        *,
        level: int | None = None,
    ) -> None:
        """A setting; `player` is an instrument's id, an instrument, or a player of some level.

        Raises:
            OptionError: no such instrument, level (1-5), feel or idiom, or a tempo or density out of reach.
        """
        found = _player(player, level)
        if tempo is not None:
            tempo = _within("tempo-out-of-reach", tempo, TEMPOS)
        if feel is not None and feel not in FEELS:
            raise OptionError("no-such-feel", given=str(feel), known=FEELS)
        if idiom is not None and idiom not in IDIOMS:
            raise OptionError("no-such-idiom", given=str(idiom), known=IDIOMS)
        for name, value in (
            ("player", found),
            ("tempo", tempo),
            ("asked_feel", feel),
            ("asked_idiom", idiom),
            ("density", _within("density-out-of-reach", density, DENSITIES)),
        ):
            object.__setattr__(self, name, value)

    def changed(self, **changes: Any) -> Setting:
        """The setting with other arguments (named as for `Setting`).

        Raises:
            OptionError: see `Setting`.
        """
        given = {
            "player": self.player,
            "tempo": self.tempo,
            "feel": self.asked_feel,
            "idiom": self.asked_idiom,
            "density": self.density,
        }
        if "player" in changes and not isinstance(changes["player"], Player):
            given["level"] = self.level
        return Setting(**cast(Any, given | changes))

    def on(self, tune: Tune) -> Setting:
        """The setting with the tune's tempo (at the nearest of `TEMPOS`), its idiom (`idiom_of`) and its feel in the idiom
        (`feel_of`) where none are asked for."""
        low, high = TEMPOS
        own = min(max(tune.quarters_per_minute, low), high)
        idiom = self.asked_idiom or idiom_of(tune)
        return self.changed(
            tempo=own if self.tempo is None else self.tempo,
            idiom=idiom,
            feel=self.asked_feel or feel_of(tune, idiom),
        )

    @property
    def quarters_per_minute(self) -> float:
        """The tempo; 120 as long as none is set."""
        return _USUAL_TEMPO if self.tempo is None else self.tempo

    @property
    def feel(self) -> Feel:
        """The feel; straight as long as none is set."""
        return self.asked_feel or _USUAL_FEEL

    @property
    def idiom(self) -> Idiom:
        """The idiom; jazz as long as none is set."""
        return self.asked_idiom or _USUAL_IDIOM

    @property
    def tradition(self) -> Tradition:
        """The tradition of the idiom."""
        return tradition_of(self.idiom)

    @property
    def is_even(self) -> bool:
        """True where straight eighths stay even, free of triplets: in jazz from a medium tempo on (bossa nova, common
        practice)."""
        return self.tradition == "jazz" and self.feel == "straight" and self.quarters_per_minute >= _EVEN_FROM

    @property
    def level(self) -> int:
        """The player's level, 1 (beginner) to 5 (expert)."""
        return self.player.level

    @property
    def instrument(self) -> Instrument:
        """What the player plays."""
        return self.player.instrument

    def seconds(self, ticks: int) -> float:
        """How long a duration lasts at the tempo."""
        return ticks / QUARTER * 60.0 / self.quarters_per_minute

    @property
    def shortest_ticks(self) -> float:
        """The shortest written note that a player of this level is asked for at the tempo, between easy fingers."""
        return QUARTER * self.quarters_per_minute / 60.0 * self.player.limits.shortest_note_sec

    def __repr__(self) -> str:
        parts = [repr(self.instrument.id), f"level={self.level}"]
        parts += [f"tempo={self.tempo:g}"] if self.tempo is not None else []
        parts += [f"feel={self.asked_feel!r}"] if self.asked_feel else []
        parts += [f"idiom={self.idiom!r}"] if self.idiom != "jazz" else []
        parts += [f"density={self.density:g}"] if self.density != 1.0 else []
        return f"Setting({', '.join(parts)})"


def _player(given: str | Instrument | Player, level: int | None) -> Player:
    if isinstance(given, Player):
        return given if level is None else Player.of(given.instrument.id, level)
    return Player.of(given if isinstance(given, str) else given.id, 3 if level is None else level)


def _within(error: str, given: float, limits: tuple[float, float]) -> float:
    """A number inside its limits.

    Raises:
        OptionError: it lies outside, or is no number.
    """
    if isinstance(given, bool) or not isinstance(given, int | float) or not limits[0] <= given <= limits[1]:
        raise OptionError(error, given=f"{given}", low=limits[0], high=limits[1])
    return float(given)
