"""Plugins: what other packages add, found by their entry points and loaded when it is first needed.

A package names a module of its own under ``fioritura.techniques`` or ``fioritura.players`` (see docs/plugins.md). One
that can't be loaded or does not hold what it should is named in a `PluginWarning` and left out; nothing else stops.
"""

from __future__ import annotations

import sys
import warnings
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from types import ModuleType
from typing import Final

from fioritura.words import Message, message, say

__all__ = ["PLAYERS", "TECHNIQUES", "Plugin", "PluginWarning", "leave_out", "plugin_files", "plugins"]

TECHNIQUES: Final = "fioritura.techniques"
"""Entry points of modules with `TECHNIQUES` and, for the chooser, `TASTE`."""

PLAYERS: Final = "fioritura.players"
"""Entry points of modules with `INSTRUMENTS`, and `CHARTS` and `BREATH` for them."""


class PluginWarning(UserWarning):
    """A plugin, or something of it, is left out."""


@dataclass(frozen=True, slots=True)
class Plugin:
    """A plugin's module, and how messages name it: ``"octaves (of fioritura-example 1.0)"``."""

    name: str
    module: ModuleType

    def __str__(self) -> str:
        return self.name


@lru_cache(maxsize=8)
def plugins(group: str) -> tuple[Plugin, ...]:
    """The plugins of a group that can be loaded, in order of name."""
    from importlib.metadata import entry_points

    found = []
    for point in sorted(entry_points(group=group), key=lambda point: (point.name, point.value)):
        owner = f"{point.dist.name} {point.dist.version}" if point.dist else "?"
        name = f"{point.name} (of {owner})"
        try:
            module = point.load()
        except (Exception, SystemExit) as error:
            leave_out(name, message("plugin-not-loaded", error=f"{type(error).__name__}: {error}"))
            continue
        if isinstance(module, ModuleType):
            found.append(Plugin(name, module))
        else:
            leave_out(name, message("plugin-no-module", given=point.value))
    return tuple(found)


def leave_out(plugin: Plugin | Message | str, problem: Message | str) -> None:
    """Say that a plugin, or something of it, is left out, and why."""
    name = str(plugin) if isinstance(plugin, Plugin) else plugin
    warnings.warn(say(message("plugin-left-out", plugin=name, problem=problem)), PluginWarning, stacklevel=2)


def plugin_files() -> Iterator[Path]:
    """The code of all plugins: what results depend on, beside our own."""
    for group in (PLAYERS, TECHNIQUES):
        for plugin in plugins(group):
            package = sys.modules[plugin.module.__name__.partition(".")[0]]
            folders = [Path(folder) for folder in getattr(package, "__path__", ())]
            if not folders and package.__file__:
                yield Path(package.__file__)
            for folder in folders:
                yield from sorted(folder.rglob("*.py"))
