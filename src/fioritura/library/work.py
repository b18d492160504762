"""The work, from a file to files: read, find, choose, write, of one tune or of many."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from functools import wraps
from importlib.resources import files
from inspect import signature
from pathlib import Path
from typing import IO, TYPE_CHECKING, Final, ParamSpec, TypeVar

from fioritura.errors import OptionError
from fioritura.library.rendition import Rendition
from fioritura.players.setting import Setting

if TYPE_CHECKING:
    from fioritura.arrange.own_taste import TasteTable
    from fioritura.arrange.plan import Plan
    from fioritura.arrange.survey import Survey
    from fioritura.batch.batch import Summary
    from fioritura.techniques.technique import Technique
    from fioritura.tune import Tune

__all__ = ["choose", "demo_tune", "find", "ornament", "ornament_all", "plain", "read", "write"]

P = ParamSpec("P")
R = TypeVar("R")

_IN_THE_SETTING: Final = ("player", "level", "idiom", "feel", "quarters_per_minute", "tempo", "density")
_EXAMPLE: Final = 'fioritura.Setting("alto-sax", level=3)'


def _takes_setting(function: Callable[P, R]) -> Callable[P, R]:
    """Say what to write where an argument of the setting is given by itself, as it used to be."""
    place = list(signature(function).parameters).index("setting")

    @wraps(function)
    def checked(*args: P.args, **kwargs: P.kwargs) -> R:
        for name in _IN_THE_SETTING:
            if name in kwargs:
                raise OptionError("library-in-the-setting", name=name, example=_EXAMPLE)
        given = kwargs.get("setting", args[place] if len(args) > place else None)
        if given is not None and not isinstance(given, Setting):
            raise OptionError("library-no-setting", given=repr(given), example=_EXAMPLE)
        return function(*args, **kwargs)

    return checked


@_takes_setting
def read(
    source: str | Path | bytes | IO[bytes],
    setting: Setting | None = None,
    *,
    part: str | int | None = None,
    number: int | None = None,
    octave: int | None = None,
    chords: str = "",
    unfold: bool = False,
) -> Tune:
    """Read a tune from MusicXML, ABC or MIDI and make it ready for the setting's instrument.

    Args:
        source: the path of a file, its content, or the file open for bytes.
        setting: for whom; without it a player of level 3 at concert pitch.
        part: the part that holds the melody, by name or number from 1; else the likeliest.
        number: the tune of a book.
        octave: moves the tune by octaves, −3 to 3; else the octave in which the instrument reads by custom.
        chords: chord symbols by bars, ``"C | Am7 | Dm7 G7 | C"``; a tune without any gets inferred ones.
        unfold: writes repeats out.

    Examples:
        >>> tune = read(b"X:1\\nT:Air\\nM:4/4\\nL:1/4\\nK:G\\nGABc|d4|cBAG|G4|]")
        >>> tune, str(tune.key), str(tune.chords[0].chord)
        (<Tune 'Air': 10 notes, 4 bars>, 'G major', 'G')

    Raises:
        ReadError, TuneError: the source can't be read as a tune.
        RangeError: notes lie outside the instrument.
        OptionError: no such part or tune number, chords that do not fit, or an octave out of reach.
    """
    from fioritura.arrange.prepare import prepared
    from fioritura.notation.read import read_tune

    instrument = (setting or Setting()).instrument
    return prepared(
        read_tune(source, part=part, tune_number=number), instrument, octave=octave, chords=chords, unfold=unfold
    )


@_takes_setting
def demo_tune(setting: Setting | None = None) -> Tune:
    """The tune that comes with the program, ready for the setting's instrument.

    Examples:
        >>> demo_tune()
        <Tune 'Lanterns on the Quay': 71 notes, 27 bars>
    """
    return read(files("fioritura.data").joinpath("lanterns.abc").read_bytes(), setting)


@_takes_setting
def find(
    tune: Tune,
    setting: Setting | None = None,
    *,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
    techniques: Iterable[Technique] = (),
    taste: TasteTable | None = None,
    plan: Plan | None = None,
) -> Survey:
    """Every figure that fits the tune in a setting, each with its score and the reason for it.

    Args:
        tune: what `read` gave.
        setting: for whom and how; tempo and feel are the tune's own unless the setting has them.
        only: ids or families of the techniques that are wanted, whatever their level.
        without: ids or families of the techniques that are not.
        techniques: techniques of your own, beside those of the table.
        taste: weights of your own on top of the idiom's, by technique, family or ``"all"``: a number, or a mapping of
            ``base``, ``share`` and ``place`` (see docs/plugins.md).
        plan: how often the tune is played, and how that grows; the tune is then one that is written out
            (`Plan.written_out`).

    Examples:
        >>> survey = find(demo_tune(), Setting("alto-sax"), only=["turn"])
        >>> [technique.id for technique in survey.techniques], {figure.technique for figure in survey.figures}
        (['turn'], {'turn'})

    Raises:
        OptionError: no such technique, a technique or taste that is not of the right form, or a plan for a tune of
            another length.
    """
    from fioritura.arrange.survey import survey

    return survey(tune, setting or Setting(), only, without, own=techniques, taste_table=taste or {}, plan=plan)


def choose(
    survey: Survey, *, seed: int = 0, locked: Collection[str] = (), refused: Collection[str] = ()
) -> Rendition:
    """The best set of figures of a survey; another `seed` gives another good set, always the same.

    `locked` and `refused` hold figures by their ids (`Figure.id`): the former stand, the latter do not, and the rest is
    the best around them.

    Examples:
        >>> survey = find(demo_tune(), Setting("alto-sax", level=1))
        >>> best = choose(survey)
        >>> other = choose(survey, refused=[best.figures[0].id])
        >>> best.figures[0].id in [figure.id for figure in other.figures]
        False

    Raises:
        OptionError: an unknown figure, or locked figures that collide.
    """
    from fioritura.arrange.arranger import choose_figures

    return Rendition.of(choose_figures(survey, seed=seed, locked=locked, refused=refused))


@_takes_setting
def ornament(
    tune: Tune,
    setting: Setting | None = None,
    *,
    seed: int = 0,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
    techniques: Iterable[Technique] = (),
    taste: TasteTable | None = None,
    plan: Plan | None = None,
) -> Rendition:
    """`find` and `choose` in one; see there. With a `plan` the tune is written out as often as it says.

    Examples:
        >>> from fioritura import Plan
        >>> plan = Plan.usual(2)
        >>> ornament(demo_tune(), Setting("flute", level=2), plan=plan).tune.notes == plan.written_out(demo_tune()).notes
        True
        >>> rendition = ornament(demo_tune(), Setting("flute", level=2), without=["runs"])
        >>> rendition == choose(find(demo_tune(), Setting("flute", level=2), without=["runs"]))
        True

    Raises:
        OptionError: no such technique, or a technique or taste that is not of the right form.
    """
    return choose(
        find(
            plan.written_out(tune) if plan else tune,
            setting,
            only=only,
            without=without,
            techniques=techniques,
            taste=taste,
            plan=plan,
        ),
        seed=seed,
    )


@_takes_setting
def plain(tune: Tune, setting: Setting | None = None) -> Rendition:
    """The tune alone, as a rendition without figures: to write, hear, count or compare it like any other.

    Examples:
        >>> plain(demo_tune())
        <Rendition of 'Lanterns on the Quay': 0 figures, seed 0>
    """
    return Rendition(tune, (setting or Setting()).on(tune), ())


def write(
    rendition: Rendition, folder: str | Path, *, formats: Iterable[str] = (), concert: bool = False
) -> list[Path]:
    """Write a rendition's notation, sheets and sound into a folder, all or nothing, and return the paths.

    `formats` are file endings (of musicxml, mid, abc, svg, pdf, mp3, wav, flac, json); with `concert` all is notated
    at sounding pitch.

    Examples:
        >>> from tempfile import TemporaryDirectory
        >>> with TemporaryDirectory() as folder:
        ...     [path.name for path in write(plain(demo_tune()), folder, formats=["abc", "mid"])]
        ['ornamented.abc', 'ornamented.mid']

    Raises:
        OptionError: an unknown format.
        OutputError: the folder can't be written.
        ToolError: the engraver, synth or encoder failed.
    """
    from fioritura.lesson.edition import USUAL_FORMATS, Edition, write_edition

    edition = Edition(rendition, is_concert=concert, formats=tuple(formats) or USUAL_FORMATS)
    return write_edition(edition, Path(folder))


@_takes_setting
def ornament_all(
    source: str | Path,
    setting: Setting | None = None,
    *,
    out: str | Path,
    formats: Iterable[str] = ("musicxml",),
    levels: Iterable[int] = (),
    seed: int = 0,
    unfold: bool = False,
    workers: int | None = None,
) -> Summary:
    """Ornament every tune of a folder or a book; what lies in `out` already is not made again.

    Args:
        source: a folder of tunes, or a file with one or more.
        setting: for whom and how; without a tempo, each tune has its own.
        out: the folder for what is made: a folder a tune, ``batch.json`` with the sum of it, and ``failures.csv`` with
            what failed and why.
        formats: of musicxml, abc, mid, svg and pdf.
        levels: the levels (1 to 5) for which each tune is made; the setting's unless given.
        seed: another good version.
        unfold: writes repeats out.
        workers: processes at once; one a core unless told. On systems that start processes afresh, call this from
            under ``if __name__ == "__main__":``.

    Examples:
        >>> from tempfile import TemporaryDirectory
        >>> with TemporaryDirectory() as folder:
        ...     _ = Path(folder, "air.abc").write_text("X:1\\nT:Air\\nM:4/4\\nL:1/4\\nK:G\\nGABc|d4|cBAG|G4|]")
        ...     summary = ornament_all(folder, Setting("flute"), out=Path(folder, "made"), formats=["abc"], workers=1)
        >>> summary.tunes, summary.made, summary.failed
        (1, 1, 0)

    Raises:
        OptionError: a format, level or number of workers that there is not, or a setting with a tempo.
        ReadError: the source can't be read.
        OutputError: `out` can't be written, or another batch is at work in it.
    """
    from fioritura.batch.batch import run_batch
    from fioritura.batch.pool import Pool
    from fioritura.batch.sources import Sources
    from fioritura.batch.wishes import Wishes
    from fioritura.lesson.workers import worker_count

    if workers is not None and workers < 1:
        raise OptionError("library-no-workers", given=workers)
    setting = setting or Setting()
    if setting.tempo is not None:
        raise OptionError("library-one-tempo", given=setting.tempo)
    wishes = Wishes(
        kinds=("notation",),
        levels=tuple(levels) or (setting.level,),
        formats=tuple(formats),
        player=setting.instrument.id,
        idiom=setting.asked_idiom,
        feel=setting.asked_feel,
        density=setting.density,
        seed=seed,
        unfold=unfold,
    )
    sources = Sources(Path(source), Path(out), None)
    return run_batch(sources, Path(out), wishes, Pool(workers or worker_count()))
