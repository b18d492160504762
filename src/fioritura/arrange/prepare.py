"""Make a tune ready for a player: chords where it has none, a key, and an octave that the instrument reaches."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from fioritura.arrange.harmonise import chords_from_text, harmonise
from fioritura.arrange.keys import OCTAVES, keyed, octaves_that_fit
from fioritura.errors import OptionError, RangeError
from fioritura.players.instruments import Instrument, all_instruments
from fioritura.players.setting import Idiom, Setting
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Interval, Pitch
from fioritura.tune import Feel, Note, Tune, transpose
from fioritura.unfold import unfolded
from fioritura.words import Message, message

__all__ = ["fitted", "fitting_octaves", "nearest_octave", "prepared", "quarters_of", "setting_for"]


def prepared(
    tune: Tune,
    instrument: Instrument,
    *,
    octave: int | None = None,
    chords: str = "",
    unfold: bool = False,
    key: Key | str | None = None,
) -> Tune:
    """The tune as it is to be ornamented for an instrument.

    `chords` gives chord symbols by bars (``"C | Am7 | Dm7 G7 | C"``), in the tune's own key; a tune without any gets
    inferred ones. `key` is the sounding key it is moved to, a key, its name (``"Bb"``), or ``"best"`` for the one that
    suits the instrument best. `octave` moves it by so many octaves from there; None takes the octave in which the
    instrument reads lead sheets by custom, or the nearest that holds the tune, and says so among the warnings. With
    `unfold` the repeats are written out, so that each time can be ornamented in its own way.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.players.instruments import instrument_named
        >>> prepared(tune, instrument_named("tenor-sax"), unfold=True).warnings[-1].id
        'octave-by-custom'

    Raises:
        RangeError: no octave, or not the one asked for, holds the tune; the message offers octaves and instruments.
        OptionError: chords that do not fit the bars, an octave outside −3 to 3, or a key of another mode.
        TuneError: `key` names no key.
    """
    if chords:
        tune = chords_from_text(tune, chords)
    elif not any(span.chord for span in tune.chords):
        tune = harmonise(tune)
    if key is not None:
        tune = keyed(tune, key, [instrument])
    moved = fitted(tune, instrument, octave)
    return unfolded(moved) if unfold else moved


def fitted(tune: Tune, instrument: Instrument, octave: int | None = None) -> Tune:
    """The tune in an octave that the instrument reaches; see `prepared`.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.players.instruments import instrument_named
        >>> fitted(tune, instrument_named("flute"), 1).notes[0].pitch.midi - tune.notes[0].pitch.midi
        12

    Raises:
        RangeError: no octave, or not the one asked for, holds the tune.
        OptionError: an octave outside −3 to 3.
    """
    by = nearest_octave(tune, instrument) if octave is None else octave
    if by not in OCTAVES:
        raise OptionError("octave-too-far", given=by)
    outside = _outside(tune, instrument, by)
    if outside:
        raise _range_error(tune, instrument, by, outside)
    moved = transpose(tune, Interval(7 * by, 12 * by))
    note = _moved_note(tune, instrument, by) if octave is None else None
    return replace(moved, warnings=(*moved.warnings, note)) if note else moved


def fitting_octaves(tune: Tune, instrument: Instrument) -> list[int]:
    """The octave shifts (nearest first) with which every note of the tune lies on the instrument.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.players.instruments import instrument_named
        >>> fitting_octaves(tune, instrument_named("flute"))
        [0, 1]
    """
    return octaves_that_fit(tune, instrument)


def nearest_octave(tune: Tune, instrument: Instrument) -> int:
    """The instrument's customary octave where it reaches every note of the tune there, else the nearest in which it does.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.players.instruments import instrument_named
        >>> nearest_octave(tune, instrument_named("tenor-sax"))
        -1

    Raises:
        RangeError: there is none.
    """
    custom = instrument.reading_octave
    fitting = octaves_that_fit(tune, instrument)
    if not fitting:
        raise _range_error(tune, instrument, custom, _outside(tune, instrument, custom))
    return min(fitting, key=lambda octave: abs(octave - custom))


def _moved_note(tune: Tune, instrument: Instrument, by: int) -> Message | None:
    """What is said of the octave that was chosen: nothing where the instrument plays the tune as it stands."""
    custom = instrument.reading_octave
    if by == custom:
        return message("octave-by-custom", instrument=_called(instrument), octave=_octave(by)) if by else None
    outside = _outside(tune, instrument, custom)
    first = tune.notes[outside[0]]
    return message(
        "octave-to-fit",
        pitch=_farthest(first, instrument, custom),
        place=tune.position_at(first.onset_ticks).message.form("full"),
        others=len(outside) - 1,
        instrument=_called(instrument),
        octave=_octave(by),
    )


def _farthest(note: Note, instrument: Instrument, octave: int) -> Pitch:
    """The pitch of a note or its graces, moved by octaves, that lies outside the instrument."""
    moved = [pitch.up(Interval(7 * octave, 12 * octave)) for pitch in (note.pitch, *note.graces)]
    return next((pitch for pitch in moved if not instrument.reaches(pitch)), moved[0])


def setting_for(
    tune: Tune,
    player: str,
    level: int,
    *,
    beats_per_minute: float | None = None,
    feel: Feel | None = None,
    idiom: Idiom | None = None,
    density: float = 1.0,
) -> Setting:
    """For whom and how a tune is ornamented; tempo, feel and idiom are the tune's own where None is given.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting_for(tune, "flute", 2, beats_per_minute=90)
        Setting('flute', level=2, tempo=90, feel='swing')

    Raises:
        OptionError: an unknown instrument or level, or a tempo outside 20-400 quarter notes a minute.
    """
    quarters = None if beats_per_minute is None else quarters_of(tune, beats_per_minute)
    return Setting(player, quarters, feel, idiom, density, level=level).on(tune)


def quarters_of(tune: Tune, beats_per_minute: float) -> float:
    """A tempo given in the tune's beats (in 6/8 dotted quarters), in quarter notes a minute.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> quarters_of(tune, 90)
        90.0

    Raises:
        OptionError: it is outside 20 to 400 quarter notes a minute.
    """
    beat = tune.metre.beat_ticks / QUARTER
    if not 20 <= beats_per_minute * beat <= 400:
        raise OptionError("beats-out-of-reach", given=beats_per_minute, low=20 / beat, high=400 / beat)
    return beats_per_minute * beat


def _outside(tune: Tune, instrument: Instrument, octave: int) -> list[int]:
    """Numbers of the notes that the instrument does not reach."""
    low, high = instrument.lowest_midi - 12 * octave, instrument.highest_midi - 12 * octave
    return [
        number
        for number, note in enumerate(tune.notes)
        if not all(low <= pitch.midi <= high for pitch in (note.pitch, *note.graces))
    ]


def _range_error(tune: Tune, instrument: Instrument, octave: int, outside: list[int]) -> RangeError:
    first = tune.notes[outside[0]]
    fitting = fitting_octaves(tune, instrument)[:2]
    fits = tuple(other.name for other in _instruments_that_fit(tune))
    return RangeError(
        "notes-out-of-range",
        pitch=_farthest(first, instrument, octave),
        place=tune.position_at(first.onset_ticks).message.form("full"),
        others=len(outside) - 1,
        instrument=_called(instrument),
        low=instrument.sounding(instrument.lowest),
        high=instrument.sounding(instrument.highest),
        remedy=message("other-octaves", octaves=tuple(map(_octave, fitting)))
        if fitting
        else message("no-octave-fits", instrument=_called(instrument)),
        other=message("other-instruments", instruments=fits) if fits else message("smaller-tune"),
    )


def _octave(shift: int) -> Message:
    return message("octaves", count=abs(shift), direction="down" if shift < 0 else "up" if shift else "none")


def _called(instrument: Instrument) -> Message | str:
    """The instrument as it stands in a sentence."""
    return str(instrument.name).lower()


def _instruments_that_fit(tune: Tune) -> Iterable[Instrument]:
    return (other for other in all_instruments().values() if not _outside(tune, other, other.reading_octave))
