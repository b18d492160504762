"""Long lists in messages, cut to their beginning."""

from __future__ import annotations

from collections.abc import Sequence

from fioritura.words import Message, message

__all__ = ["first_named"]


def first_named(names: Sequence[str | Message], limit: int) -> tuple[str | Message, ...]:
    """The names for a message that lists them: the first `limit`, and how many more there are."""
    more = (message("and-more", count=len(names) - limit),) if len(names) > limit else ()
    return (*names[:limit], *more)
