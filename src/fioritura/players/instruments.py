"""All instruments by name: our own, and those of plugins."""

from __future__ import annotations

from fioritura.errors import OptionError
from fioritura.players.added import added_players
from fioritura.players.instrument import INSTRUMENTS, Clef, Instrument

__all__ = ["INSTRUMENTS", "Clef", "Instrument", "all_instruments", "instrument_named"]


def all_instruments() -> dict[str, Instrument]:
    """All instruments by id: our own, then those of plugins."""
    return {**INSTRUMENTS, **added_players().instruments}


def instrument_named(id: str) -> Instrument:
    """The instrument with an id such as ``"alto-sax"``.

    Raises:
        OptionError: there is no such instrument; the message lists those there are.
    """
    found = INSTRUMENTS.get(id) or all_instruments().get(id)
    if found is None:
        raise OptionError("no-such-instrument", given=id, known=tuple(all_instruments()))
    return found
