"""Make a tune ready for a player: chords where it has none, and an octave that the instrument reaches."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from fioritura.arrange.harmonise import chords_from_text, harmonise
from fioritura.errors import OptionError, RangeError
from fioritura.players.instruments import Instrument, all_instruments
from fioritura.players.setting import Idiom, Setting
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Interval
from fioritura.tune import Feel, Tune, transpose
from fioritura.unfold import unfolded
from fioritura.words import Message, message

__all__ = ["fitted", "fitting_octaves", "nearest_octave", "prepared", "quarters_of", "setting_for"]

_OCTAVES = (0, 1, -1, 2, -2, 3, -3)


def prepared(
    tune: Tune, instrument: Instrument, *, octave: int | None = None, chords: str = "", unfold: bool = False
) -> Tune:
    """The tune as it is to be ornamented for an instrument.

    `octave` moves it by so many octaves from its own pitch; None takes the octave in which the instrument reads lead
    sheets by custom. `chords` gives chord symbols by bars (``"C | Am7 | Dm7 G7 | C"``); a tune without any gets inferred
    ones. With `unfold` the repeats are written out, so that each time can be ornamented in its own way.

    Raises:
        RangeError: notes lie outside the instrument; the message offers octaves and other instruments.
        OptionError: chords that do not fit the bars, or an octave outside −3 to 3.
    """
    if chords:
        tune = chords_from_text(tune, chords)
    elif not any(span.chord for span in tune.chords):
        tune = harmonise(tune)
    moved = fitted(tune, instrument, octave)
    return unfolded(moved) if unfold else moved


def fitted(tune: Tune, instrument: Instrument, octave: int | None = None) -> Tune:
    """The tune in an octave that the instrument reaches; see `prepared`.

    Raises:
        RangeError: notes lie outside the instrument.
        OptionError: an octave outside −3 to 3.
    """
    by = instrument.reading_octave if octave is None else octave
    if by not in _OCTAVES:
        raise OptionError("octave-too-far", given=by)
    outside = _outside(tune, instrument, by)
    if outside:
        raise _range_error(tune, instrument, by, outside)
    moved = transpose(tune, Interval(7 * by, 12 * by))
    if by and octave is None:
        note = message("octave-by-custom", instrument=_called(instrument), octave=_octave(by))
        moved = replace(moved, warnings=(*moved.warnings, note))
    return moved


def fitting_octaves(tune: Tune, instrument: Instrument) -> list[int]:
    """The octave shifts (nearest first) with which every note of the tune lies on the instrument."""
    return [octave for octave in _OCTAVES if not _outside(tune, instrument, octave)]


def nearest_octave(tune: Tune, instrument: Instrument) -> int:
    """The instrument's customary octave where it reaches every note of the tune there, else the nearest in which it does.

    Raises:
        RangeError: there is none.
    """
    custom = instrument.reading_octave
    fitting = fitting_octaves(tune, instrument)
    if not fitting:
        raise _range_error(tune, instrument, custom, _outside(tune, instrument, custom))
    return min(fitting, key=lambda octave: abs(octave - custom))


def setting_for(
    tune: Tune,
    player: str,
    level: int,
    *,
    beats_per_minute: float | None = None,
    feel: Feel | None = None,
    idiom: Idiom = "jazz",
    density: float = 1.0,
) -> Setting:
    """For whom and how a tune is ornamented; tempo and feel are the tune's own where None is given.

    Raises:
        OptionError: an unknown instrument or level, or a tempo outside 20-400 quarter notes a minute.
    """
    quarters = None if beats_per_minute is None else quarters_of(tune, beats_per_minute)
    return Setting(player, quarters, feel, idiom, density, level=level).on(tune)


def quarters_of(tune: Tune, beats_per_minute: float) -> float:
    """A tempo given in the tune's beats (in 6/8 dotted quarters), in quarter notes a minute.

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
        pitch=first.pitch.up(Interval(7 * octave, 12 * octave)),
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
