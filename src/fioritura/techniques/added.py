"""Techniques that do not come with the program: checked before they are taken in, and watched while they work."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Final

from fioritura import plugins
from fioritura.techniques.context import Context
from fioritura.techniques.families import Family
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import WORDS, Technique
from fioritura.words import LANGUAGES, Message, add_words, message
from fioritura.words.speech import known_ids

__all__ = ["added_families", "added_techniques", "take_in_words"]

_ID: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def added_techniques(taken: Collection[str]) -> dict[plugins.Plugin, tuple[Technique, ...]]:
    """The techniques of each plugin; one with a fault in any of its own is left out. `taken` are ids in use."""
    found: dict[plugins.Plugin, tuple[Technique, ...]] = {}
    ids = set(taken)
    for plugin in plugins.plugins(plugins.TECHNIQUES):
        try:
            offered = tuple(getattr(plugin.module, "TECHNIQUES", ()))
            problem = _problem(offered, ids)
        except TypeError:
            problem = message("plugin-no-tuple")
        if problem:
            plugins.leave_out(plugin, problem)
            continue
        ids.update(technique.id for technique in offered)
        take_in_words(offered)
        found[plugin] = tuple(replace(each, find=_Watched(each.find, each.id, str(plugin))) for each in offered)
    return found


def added_families(offered: Iterable[plugins.Plugin]) -> Iterator[Family]:
    """The families that plugins bring with their techniques."""
    for plugin in offered:
        yield from (family for family in getattr(plugin.module, "FAMILIES", ()) if isinstance(family, Family))


def take_in_words(offered: Iterable[Technique | Family]) -> None:
    """Let the words be said that techniques have with them; a family without any is called by its id."""
    known = known_ids(LANGUAGES[0])
    for one in offered:
        if isinstance(one, Technique):
            if one.words:
                add_words(one.words)
        elif one.name.id not in known:
            add_words({LANGUAGES[0]: f"{one.name.id} = {one.id.replace('-', ' ')}\n"})


def _problem(offered: tuple[object, ...], taken: Collection[str]) -> Message | None:
    """What is wrong with a plugin's techniques; None where nothing is."""
    if not offered:
        return message("plugin-without-techniques")
    seen = set(taken)
    for technique in offered:
        if not isinstance(technique, Technique):
            return message("plugin-no-technique", given=repr(technique))
        problem = _problem_of_one(technique, seen) or _problem_of_words(technique)
        if problem:
            return problem
        seen.add(technique.id)
    return None


def _problem_of_one(technique: Technique, taken: Collection[str]) -> Message | None:
    id = str(technique.id)
    if not _ID.fullmatch(id):
        return message("plugin-technique-id", id=id)
    if id in taken:
        return message("plugin-technique-taken", id=id)
    if not _ID.fullmatch(str(technique.family)):
        return message("plugin-technique-family", id=id, family=str(technique.family))
    if technique.level not in range(1, 6):
        return message("plugin-technique-level", id=id, level=repr(technique.level))
    if not callable(technique.find):
        return message("plugin-technique-find", id=id)
    return None


def _problem_of_words(technique: Technique) -> Message | None:
    """What is wrong with the words of a technique: they must be in English, and whole in each language they are in."""
    from fluent.syntax import FluentParser, ast

    for language in dict.fromkeys((LANGUAGES[0], *technique.words)):
        entries = {
            entry.id.name: entry
            for entry in FluentParser().parse(str(technique.words.get(language, ""))).body
            if isinstance(entry, ast.Message) and entry.value
        }
        entry = entries.get(technique.id)
        if entry is None:
            return message("plugin-technique-no-name", id=technique.id, language=language)
        missing = set(WORDS) - {attribute.id.name for attribute in entry.attributes}
        if missing:
            return message("plugin-technique-no-words", id=technique.id, language=language, missing=min(missing))
    return None


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
                    plugins.leave_out(self._where, message("plugin-gave", id=self.id, what=problem))
                else:
                    yield figure
        except Exception as error:
            said = f"{type(error).__name__}: {error}"
            plugins.leave_out(self._where, message("plugin-failed", id=self.id, error=said))

    @property
    def _where(self) -> Message:
        return message("plugin-at-some-places", plugin=self.plugin)

    def _problem(self, figure: object, context: Context) -> Message | None:
        if not isinstance(figure, Figure) or figure.technique != self.id:
            return message("plugin-figure-strange")
        count = len(context.tune.notes)
        if not figure.anchors or not all(0 <= anchor < count for anchor in figure.anchors):
            return message("plugin-figure-nowhere")
        if not 0 <= figure.first_slot <= figure.last_slot < 2 * count or figure.start_ticks > figure.end_ticks:
            return message("plugin-figure-backwards")
        if not isinstance(figure.why, Message):
            return message("plugin-figure-without-reason")
        return None
