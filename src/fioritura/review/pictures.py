"""The pictures of a review, by name."""

from __future__ import annotations

from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.svg import standalone
from fioritura.review.played import passages
from fioritura.review.plots import level_plot, time_plot, tuning_plot
from fioritura.review.staves import passage_systems
from fioritura.review.take_review import Review

__all__ = ["WIDTH_MM", "Pictures", "pictures", "pictures_of"]

WIDTH_MM = 178.0

Pictures = dict[str, tuple[System, ...]]
"""Pictures by name: the staves of each passage (``"passage-1"`` …), ``"time"``, ``"tuning"`` and ``"level"``."""


def pictures_of(review: Review, width_mm: float = WIDTH_MM) -> Pictures:
    """All pictures of a review; a picture that nothing speaks for is left out.

    Raises:
        ToolError: the engraver is missing or failed.
    """
    found: Pictures = {f"passage-{one.number}": passage_systems(review, one, width_mm) for one in passages(review)}
    plots = {
        "time": time_plot(review.tune, review.report, width_mm),
        "tuning": tuning_plot(review.report, width_mm),
        "level": level_plot(review.tune, review.report, width_mm),
    }
    return found | {name: (plot,) for name, plot in plots.items() if plot is not None}


def pictures(review: Review, width_mm: float = WIDTH_MM) -> dict[str, list[str]]:
    """The pictures as SVG texts by name, each with one or more drawings from top to bottom.

    The names are ``"passage-1"`` and on (played over plain, or over what was asked, with the pitch as it sounded drawn
    behind the notes), ``"time"``, ``"tuning"`` and ``"level"``.

    Raises:
        ToolError: the engraver is missing or failed.
    """
    return {
        name: [standalone(system.svg) for system in systems]
        for name, systems in pictures_of(review, width_mm).items()
    }
