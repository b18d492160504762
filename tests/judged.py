"""Figures of a tune as readers and teachers would judge them: how they are spelled, and whether their reasons hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from fioritura.arrange.find import find_figures
from fioritura.arrange.rendition import laid_out
from fioritura.notation.part_spelling import written_tune
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.techniques.context import contexts
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import all_techniques
from fioritura.tune import Tune
from tests.legibility import read_line, surprises

PARTS = ("alto-sax", "tenor-sax", "clarinet", "bass-clarinet", "trumpet")


def offers(tune: Tune, idiom: Idiom, level: int = 5) -> tuple[Setting, list[Figure]]:
    """Everything that the rules offer in a tune, whatever its taste."""
    setting = Setting(Player.of("concert", level), tune.quarters_per_minute, tune.feel, idiom)
    return setting, [figure for _, figure in find_figures(contexts(tune, setting), tuple(all_techniques().values()))]


def unread(tune: Tune, figure: Figure, instruments: tuple[str, ...] = ()) -> Iterator[str]:
    """What would surprise who reads a figure, at sounding pitch or in parts."""
    if not (figure.notes or figure.graces):
        return
    line = laid_out(tune, [figure])
    own = [number for number, note in enumerate(line) if note.figures]
    around = replace(tune, notes=line[max(own[0] - 2, 0) : own[-1] + 3])
    views = [written_tune(around, INSTRUMENTS[id].transposition) for id in instruments] or [around]
    for view in views:
        for fault in surprises(read_line(view, view.notes), figure.technique, is_part=bool(instruments)):
            yield f"{tune.title}: {figure.technique} at note {figure.anchors[0]}: {fault}"
