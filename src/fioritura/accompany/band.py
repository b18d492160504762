"""The band: bass, chords, drums and click for a form in a feel."""

from __future__ import annotations

from typing import Final

from fioritura.accompany.bass import bass_notes
from fioritura.accompany.chords import chord_notes
from fioritura.accompany.drums import click_notes, drum_notes
from fioritura.accompany.feels import FEELS, BandFeel
from fioritura.accompany.form import Form
from fioritura.accompany.part import BandPart
from fioritura.chance import Chance
from fioritura.errors import OptionError

__all__ = ["band_parts"]

WOODBLOCK: Final = 116


def band_parts(form: Form, feel: BandFeel, *, seed: int = 0, clicks: bool = False) -> tuple[BandPart, ...]:
    """Bass, chords, drums and click; the click counts in, and goes on to the end with `clicks`.

    The same form, feel and seed give the same notes.

    Raises:
        OptionError: the feel does not suit the tune's metre.
    """
    metre = form.tune.metre
    if not feel.suits(metre):
        fitting = [other.name for other in FEELS.values() if other.suits(metre)]
        raise OptionError("feel-not-in-metre", feel=feel.name, metre=str(metre), fitting=tuple(fitting))
    levels, chords = feel.levels, feel.chords
    return (
        BandPart("bass", feel.bass_program, tuple(bass_notes(form, feel.bass, Chance.of(seed, "bass"))), levels.bass),
        BandPart(
            "chords",
            chords.program,
            tuple(chord_notes(form, chords, Chance.of(seed, "chords"))),
            levels.chords,
            is_strummed=chords.is_strummed,
        ),
        BandPart(
            "drums", feel.drums.kit, tuple(drum_notes(form, feel.drums, Chance.of(seed, "drums"))), levels.drums
        ),
        BandPart("click", WOODBLOCK, tuple(click_notes(form, throughout=clicks)), levels.click),
    )
