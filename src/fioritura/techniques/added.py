"""Techniques of plugins: checked before they are taken in, and watched while they work."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, replace
from typing import Final

from fioritura import plugins
from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique

__all__ = ["added_techniques"]

_ID: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_TEXTS: Final = ("name", "label", "family", "text", "how", "when", "fault", "cure")


def added_techniques(taken: Collection[str]) -> dict[plugins.Plugin, tuple[Technique, ...]]:
    """The techniques of each plugin; one with a fault in any of its own is left out. `taken` are ids in use."""
    found: dict[plugins.Plugin, tuple[Technique, ...]] = {}
    ids = set(taken)
    for plugin in plugins.plugins(plugins.TECHNIQUES):
        try:
            offered = tuple(getattr(plugin.module, "TECHNIQUES", ()))
            problem = _problem(offered, ids)
        except TypeError:
            problem = "its TECHNIQUES are no tuple of techniques"
        if problem:
            plugins.leave_out(plugin, problem)
            continue
        ids.update(technique.id for technique in offered)
        found[plugin] = tuple(replace(each, find=_Watched(each.find, each.id, str(plugin))) for each in offered)
    return found


def _problem(offered: tuple[object, ...], taken: Collection[str]) -> str:
    """What is wrong with a plugin's techniques; empty where nothing is."""
    if not offered:
        return "it has no TECHNIQUES"
    seen = set(taken)
    for technique in offered:
        if not isinstance(technique, Technique):
            return f"{technique!r} in its TECHNIQUES is no technique"
        if not isinstance(technique.id, str) or not _ID.fullmatch(technique.id):
            return f"the id {technique.id!r} is not of the form lower-case-words"
        if technique.id in seen:
            return f"there is a technique {technique.id!r} already"
        if technique.level not in range(1, 6):
            return f"the level of {technique.id!r} is {technique.level!r}, not 1 to 5"
        if not callable(technique.find):
            return f"the `find` of {technique.id!r} can't be called"
        for name in _TEXTS:
            text = getattr(technique, name)
            if not (isinstance(text, str) and text.strip()):
                return f"{technique.id!r} has no {name}"
        seen.add(technique.id)
    return ""


@dataclass(frozen=True, slots=True)
class _Watched:
    """A plugin's `find`: where it fails, or gives what is no figure of this place, nothing is found there."""

    find: Callable[[Context], Iterator[Figure]]
    id: str
    plugin: str

    def __call__(self, context: Context) -> Iterator[Figure]:
        try:
            for figure in self.find(context):
                if problem := self._problem(figure, context):
                    plugins.leave_out(f"{self.plugin} at some places", f"{self.id} gave {problem}")
                else:
                    yield figure
        except Exception as error:
            plugins.leave_out(f"{self.plugin} at some places", f"{self.id} failed ({type(error).__name__}: {error})")

    def _problem(self, figure: object, context: Context) -> str:
        if not isinstance(figure, Figure) or figure.technique != self.id:
            return "something that is not its own figure"
        count = len(context.tune.notes)
        if not figure.anchors or not all(0 <= anchor < count for anchor in figure.anchors):
            return "a figure on notes that the tune does not have"
        if not 0 <= figure.first_slot <= figure.last_slot < 2 * count or figure.start_ticks > figure.end_ticks:
            return "a figure that ends before it begins"
        return ""
