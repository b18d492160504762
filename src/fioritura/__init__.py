"""Fioritura: take a plain melody with chord symbols and make it sing.

The engine in a few lines::

    import fioritura

    tune = fioritura.read("tune.musicxml", player="alto-sax")       # chords inferred where the file has none
    spots = fioritura.find(tune, player="alto-sax", level=3)        # every figure that fits, with score and reason
    rendition = fioritura.choose(spots, seed=1)                     # the best set of them
    print(rendition.kept_share, [figure.technique for figure in rendition.figures])
    fioritura.write(rendition, "out")                               # notation, sheets and sound

`ornament` is `find` and `choose` in one. All errors are `FiorituraError`s.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from fioritura.errors import FiorituraError

if TYPE_CHECKING:
    from fioritura.arrange.rendition import Rendition
    from fioritura.arrange.survey import Survey
    from fioritura.players.setting import Idiom, Setting
    from fioritura.tune import Feel, Tune

__all__ = ["FiorituraError", "choose", "find", "ornament", "read", "write"]


def read(
    path: str | Path,
    *,
    player: str = "concert",
    part: str | int | None = None,
    number: int | None = None,
    octave: int | None = None,
    chords: str = "",
    unfold: bool = False,
) -> Tune:
    """Read a tune from a MusicXML, ABC or MIDI file and make it ready for a player.

    `player` is an instrument's id (``"alto-sax"``), `part` the part that holds the melody, `number` the tune of a book;
    `octave` moves the tune by octaves, `chords` gives chord symbols (``"C | Am7 | Dm7 G7 | C"``), and with `unfold`
    repeats are written out.

    Raises:
        ReadError, TuneError: the file can't be read as a tune.
        RangeError: notes lie outside the instrument.
        OptionError: no such instrument, part or tune number, or chords that do not fit.
    """
    from fioritura.arrange.prepare import prepared
    from fioritura.notation.read import read_tune
    from fioritura.players.instruments import instrument_named

    instrument = instrument_named(player)
    tune = read_tune(path, part=part, tune_number=number)
    return prepared(tune, instrument, octave=octave, chords=chords, unfold=unfold)


def find(
    tune: Tune,
    *,
    player: str = "concert",
    level: int = 3,
    idiom: Idiom = "jazz",
    feel: Feel | None = None,
    quarters_per_minute: float | None = None,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
) -> Survey:
    """Every figure that fits the tune for a player of a level (1-5), scored.

    Feel and tempo are the tune's own unless given. `only` and `without` hold technique ids or families.

    Raises:
        OptionError: no such instrument, level or technique.
    """
    from fioritura.arrange.survey import survey

    return survey(tune, _setting(tune, player, level, idiom, feel, quarters_per_minute), only, without)


def choose(spots: Survey, *, seed: int = 0, locked: Collection[str] = (), refused: Collection[str] = ()) -> Rendition:
    """The best set of figures of a survey; another `seed` gives another good set, always the same.

    `locked` and `refused` hold figures by their ids (`fioritura.arrange.survey.figure_id`).

    Raises:
        OptionError: an unknown figure, or locked figures that collide.
    """
    from fioritura.arrange.arranger import choose_figures

    return choose_figures(spots, seed=seed, locked=locked, refused=refused)


def ornament(
    tune: Tune,
    *,
    player: str = "concert",
    level: int = 3,
    idiom: Idiom = "jazz",
    feel: Feel | None = None,
    quarters_per_minute: float | None = None,
    seed: int = 0,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
) -> Rendition:
    """`find` and `choose` in one; see there.

    Raises:
        OptionError: no such instrument, level or technique.
    """
    return choose(
        find(
            tune,
            player=player,
            level=level,
            idiom=idiom,
            feel=feel,
            quarters_per_minute=quarters_per_minute,
            only=only,
            without=without,
        ),
        seed=seed,
    )


def write(
    rendition: Rendition, folder: str | Path, *, formats: Iterable[str] = (), concert: bool = False
) -> list[Path]:
    """Write a rendition's notation, sheets and sound into a folder, all or nothing, and return the paths.

    `formats` are file endings (of musicxml, mid, abc, svg, pdf, mp3, wav, flac, json); with `concert` all is notated
    at sounding pitch.

    Raises:
        OptionError: an unknown format.
        OutputError: the folder can't be written.
        ToolError: the engraver, synth or encoder failed.
    """
    from fioritura.lesson.edition import USUAL_FORMATS, Edition, write_edition

    edition = Edition(rendition, is_concert=concert, formats=tuple(formats) or USUAL_FORMATS)
    return write_edition(edition, Path(folder))


def _setting(
    tune: Tune, player: str, level: int, idiom: Idiom, feel: Feel | None, quarters_per_minute: float | None
) -> Setting:
    from fioritura.players.player import Player
    from fioritura.players.setting import Setting

    tempo = quarters_per_minute or tune.quarters_per_minute
    return Setting(Player.of(player, level), tempo, feel or tune.feel, idiom)
