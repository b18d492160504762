"""The feels that the band can play, by the trade's names."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from fioritura.accompany.band_feel import BandFeel, Subdivision
from fioritura.accompany.dances import FOLK_WALTZ, JIG, MARCH, REEL
from fioritura.accompany.even import BOSSA, FUNK, SOUL
from fioritura.accompany.jazz import BALLAD, SHUFFLE, SLOW_BLUES, SWING, WALTZ
from fioritura.errors import OptionError
from fioritura.players.feel import feel_of
from fioritura.tune import Feel, Tune

__all__ = ["FEELS", "BandFeel", "Subdivision", "default_feel", "feel_named"]

_ALL: Final = (SWING, SHUFFLE, SLOW_BLUES, BALLAD, BOSSA, SOUL, FUNK, WALTZ, FOLK_WALTZ, MARCH, REEL, JIG)

FEELS: Final[Mapping[str, BandFeel]] = MappingProxyType({feel.id: feel for feel in _ALL})
"""All feels by id, in the order in which they are listed."""


def feel_named(id: str) -> BandFeel:
    """The feel with an id such as ``"bossa"``.

    Raises:
        OptionError: there is no such feel; the message lists those there are.
    """
    try:
        return FEELS[id]
    except KeyError:
        raise OptionError("no-such-feel", given=id, known=tuple(FEELS)) from None


def default_feel(tune: Tune, *, is_folk: bool = False, feel: Feel | None = None) -> BandFeel:
    """The band's feel that suits a tune: its metre, what its file says, and the feel that its line is played in.

    `feel` is the line's where one was asked for, else that of the tune in the idiom (`feel_of`). Straight eighths are
    accompanied as a reel in folk and as a bossa nova in jazz, in 2/4 as a march or polka, and 12/8 in jazz as a slow blues,
    unless the file says more (common practice).
    """
    feel = feel or feel_of(tune, "folk" if is_folk else "jazz")
    wanted = () if is_folk or tune.style in (None, "straight", "swing") else (str(tune.style),)
    even = ("march",) if str(tune.metre) == "2/4" else ("reel",) if is_folk else ("bossa",)
    by_custom = (
        ("swing", "waltz") if feel == "swing" else (*even, "folk-waltz", *(() if is_folk else ("slow-blues",)))
    )
    said = (id for id in wanted if FEELS[id].line_feel == feel)
    return next(FEELS[id] for id in (*said, *by_custom, "jig", "ballad") if FEELS[id].suits(tune.metre))
