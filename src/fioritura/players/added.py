"""Instruments of plugins, with their fingering charts and breath: checked before they are taken in."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from functools import cache

from fioritura import plugins
from fioritura.players.chart import FingeringChart
from fioritura.players.instrument import INSTRUMENTS, Instrument
from fioritura.words import Message, message, say

__all__ = ["Added", "added_players"]


@dataclass(frozen=True, slots=True)
class Added:
    """What plugins add, each by the instrument's id."""

    instruments: Mapping[str, Instrument] = field(default_factory=dict)
    charts: Mapping[str, FingeringChart] = field(default_factory=dict)
    breath: Mapping[str, float] = field(default_factory=dict)


@cache
def added_players() -> Added:
    """The instruments of all plugins; a plugin with a fault in any of its own is left out."""
    instruments: dict[str, Instrument] = {}
    charts: dict[str, FingeringChart] = {}
    breath: dict[str, float] = {}
    for plugin in plugins.plugins(plugins.PLAYERS):
        module = plugin.module
        own = Added(
            {getattr(one, "id", repr(one)): one for one in getattr(module, "INSTRUMENTS", ())},
            getattr(module, "CHARTS", {}),
            getattr(module, "BREATH", {}),
        )
        try:
            problem = _problem(own, {*INSTRUMENTS, *instruments})
        except (AttributeError, TypeError, ValueError) as error:
            problem = message("plugin-wrong-form", reason=str(error))
        if problem:
            plugins.leave_out(plugin, say(problem))
            continue
        instruments.update(own.instruments)
        charts.update(own.charts)
        breath.update(own.breath)
    return Added(instruments, charts, breath)


def _problem(own: Added, taken: Collection[str]) -> Message | None:
    """What is wrong with a plugin's players; None where nothing is."""
    if not own.instruments:
        return message("plugin-no-instruments")
    for id, instrument in own.instruments.items():
        if not isinstance(instrument, Instrument):
            return message("plugin-not-an-instrument", id=str(id))
        if id in taken:
            return message("plugin-instrument-taken", id=id)
        if instrument.lowest.midi > instrument.highest.midi or instrument.program not in range(1, 129):
            return message("plugin-instrument-bounds", id=id)
        chart = own.charts.get(id)
        if chart and (missing := _missing(chart, instrument)):
            return message("plugin-chart-lacks", id=id, number=missing)
        if not 0.2 <= own.breath.get(id, 1.0) <= 5.0:
            return message("plugin-breath", id=id, low=0.2, high=5)
    if strangers := {*own.charts, *own.breath} - {*own.instruments}:
        return message("plugin-stranger", id=min(strangers))
    return None


def _missing(chart: FingeringChart, instrument: Instrument) -> int:
    """The first written note of an instrument that its chart has no fingering for; 0 where there is none."""
    written = range(instrument.lowest.midi, instrument.highest.midi + 1)
    return next((midi for midi in written if midi not in chart.numbers_by_midi), 0)
