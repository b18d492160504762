"""Fioritura: take a plain melody with chord symbols and make it sing.

The engine in a few lines::

    import fioritura

    setting = fioritura.Setting("alto-sax", level=3)
    tune = fioritura.read("tune.musicxml", setting)        # chords inferred where the file has none
    survey = fioritura.find(tune, setting)                 # every figure that fits, with score and reason
    rendition = fioritura.choose(survey, seed=1)           # the best set of them
    print(rendition.kept_share, [figure.technique for figure in rendition.figures])
    fioritura.write(rendition, "out")                      # notation, sheets and sound

`ornament` is `find` and `choose` in one. All errors are `FiorituraError`s. What is named here is what can be built on;
it is imported when it is first used.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from fioritura.arrange.own_taste import TasteTable
    from fioritura.arrange.plan import Plan, Statement
    from fioritura.arrange.survey import Survey
    from fioritura.errors import (
        FiorituraError,
        OptionError,
        OtherTuneError,
        OutputError,
        RangeError,
        ReadError,
        ToolError,
        TuneError,
    )
    from fioritura.library.evaluation import Agreement, compare_figures, compare_notes
    from fioritura.library.listening import hear, listen, name
    from fioritura.library.rendition import Rendition
    from fioritura.library.work import choose, demo_tune, find, ornament, ornament_all, plain, read, write
    from fioritura.listening.naming import NamedFigure, Naming, Slip
    from fioritura.listening.notes import PlayedNote, Take
    from fioritura.players.instrument import Instrument
    from fioritura.players.player import Player
    from fioritura.players.setting import Setting
    from fioritura.techniques.context import Context
    from fioritura.techniques.figure import Figure, FigureNote
    from fioritura.techniques.table import all_techniques
    from fioritura.techniques.technique import Technique, before_next, instead, with_graces, with_mark
    from fioritura.theory.chord import Chord
    from fioritura.theory.key import Key
    from fioritura.theory.metre import Metre
    from fioritura.theory.pitch import Interval, NoteName, Pitch
    from fioritura.tune import Bar, ChordSpan, Mark, Note, Tune
    from fioritura.words import Message, message, say, speaking, verbatim

    __version__: str

_HOMES: Final = {
    "arrange.own_taste": ("TasteTable",),
    "arrange.plan": ("Plan", "Statement"),
    "arrange.survey": ("Survey",),
    "errors": (
        "FiorituraError",
        "OptionError",
        "OtherTuneError",
        "OutputError",
        "RangeError",
        "ReadError",
        "ToolError",
        "TuneError",
    ),
    "library.evaluation": ("Agreement", "compare_figures", "compare_notes"),
    "library.listening": ("hear", "listen", "name"),
    "library.rendition": ("Rendition",),
    "library.work": ("choose", "demo_tune", "find", "ornament", "ornament_all", "plain", "read", "write"),
    "listening.naming": ("NamedFigure", "Naming", "Slip"),
    "listening.notes": ("PlayedNote", "Take"),
    "players.instrument": ("Instrument",),
    "players.player": ("Player",),
    "players.setting": ("Setting",),
    "techniques.context": ("Context",),
    "techniques.figure": ("Figure", "FigureNote"),
    "techniques.table": ("all_techniques",),
    "techniques.technique": ("Technique", "before_next", "instead", "with_graces", "with_mark"),
    "theory.chord": ("Chord",),
    "theory.key": ("Key",),
    "theory.metre": ("Metre",),
    "theory.pitch": ("Interval", "NoteName", "Pitch"),
    "tune": ("Bar", "ChordSpan", "Mark", "Note", "Tune"),
    "words": ("Message", "message", "say", "speaking", "verbatim"),
}
"""The module in which each name is at home."""

_HOME_OF: Final = {name: module for module, names in _HOMES.items() for name in names}

__all__ = [
    "Agreement",
    "Bar",
    "Chord",
    "ChordSpan",
    "Context",
    "Figure",
    "FigureNote",
    "FiorituraError",
    "Instrument",
    "Interval",
    "Key",
    "Mark",
    "Message",
    "Metre",
    "NamedFigure",
    "Naming",
    "Note",
    "NoteName",
    "OptionError",
    "OtherTuneError",
    "OutputError",
    "Pitch",
    "Plan",
    "PlayedNote",
    "Player",
    "RangeError",
    "ReadError",
    "Rendition",
    "Setting",
    "Slip",
    "Statement",
    "Survey",
    "Take",
    "TasteTable",
    "Technique",
    "ToolError",
    "Tune",
    "TuneError",
    "__version__",
    "all_techniques",
    "before_next",
    "choose",
    "compare_figures",
    "compare_notes",
    "demo_tune",
    "find",
    "hear",
    "instead",
    "listen",
    "message",
    "name",
    "ornament",
    "ornament_all",
    "plain",
    "read",
    "say",
    "speaking",
    "verbatim",
    "with_graces",
    "with_mark",
    "write",
]


def __getattr__(name: str) -> Any:
    """Import what is asked for, once."""
    if name == "__version__":
        from importlib.metadata import version

        found: Any = version("fioritura")
    elif name in _HOME_OF:
        from importlib import import_module

        found = getattr(import_module(f"fioritura.{_HOME_OF[name]}"), name)
    else:
        raise AttributeError("module 'fioritura' has no attribute " + repr(name))
    globals()[name] = found
    return found


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
