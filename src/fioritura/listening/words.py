"""What was heard, in words for a player."""

from __future__ import annotations

from typing import Final

from fioritura.errors import ReadError
from fioritura.listening.align import LEAST_LIKENESS, Alignment
from fioritura.listening.naming import Slip, SlipKind
from fioritura.listening.notes import QualityKind, Take
from fioritura.players.instruments import all_instruments

__all__ = ["key_words", "likeness_words", "refuse_unclear", "slip_words"]

_HOPELESS: Final = frozenset({QualityKind.SILENCE, QualityKind.POLYPHONY, QualityKind.NOISE, QualityKind.NO_PLAYER})

_INTERVALS: Final = (
    "octave",
    "minor second",
    "major second",
    "minor third",
    "major third",
    "fourth",
    "tritone",
    "fifth",
    "minor sixth",
    "major sixth",
    "minor seventh",
    "major seventh",
)


def key_words(semitones: int) -> str:
    """How a line lies to the tune: ``"a major sixth lower than the tune"``; empty at the tune's own pitch.

    Where instruments sound so far below what they read, they are named.
    """
    if semitones == 0:
        return ""
    octaves, rest = divmod(abs(semitones), 12)
    name = _INTERVALS[rest]
    article = "an" if name[0] in "aeiou" else "a"
    if rest == 0:
        distance = "an octave" if octaves == 1 else f"{octaves} octaves"
    else:
        distance = f"{article} {name}" + (
            " and an octave" if octaves == 1 else f" and {octaves} octaves" if octaves else ""
        )
    words = f"{distance} {'higher' if semitones > 0 else 'lower'} than the tune"
    readers = [i.name.lower() for i in all_instruments().values() if rest and i.transposition.semitones == -semitones]
    return f"{words}, as when its part is read on the {' or the '.join(readers)}" if readers else words


def refuse_unclear(take: Take, name: str) -> None:
    """Say so where a recording can't be heard as one player's line.

    Raises:
        ReadError: silence, several players, noise, or no note at all; the message says what to do.
    """
    for finding in take.findings:
        if finding.kind in _HOPELESS:
            raise ReadError(f"{name}: {finding.advice}")
    if not take.notes:
        raise ReadError(f"{name}: No note can be heard in it: record nearer to the instrument, and longer.")


def likeness_words(alignment: Alignment) -> str:
    """Why a line is refused as a performance of the tune: what was heard, and what to do."""
    name, key = alignment.tune.title or "the tune", alignment.tune.key
    midis = [event.midi for event in alignment.events]
    heard = f"{len(midis)} notes were heard"
    if midis:
        heard += f", from {key.spell(min(midis)).display} to {key.spell(max(midis)).display}"
    return (
        f"This does not sound like {name}. {heard}; {alignment.likeness:.0%} of line and tune agree, and a performance "
        f"has {LEAST_LIKENESS:.0%} and more. Give the tune that was played; if it was {name}, record it again, all of "
        "it and with fewer ornaments."
    )


def slip_words(alignment: Alignment, slip: Slip) -> str:
    """``"B♭4 instead of G4"``, ``"G4 left out"`` or ``"A4 added"``, at the tune's pitch."""
    tune = alignment.tune
    plain = None if slip.plain is None else tune.notes[slip.plain].pitch
    played = ""
    if slip.event is not None:
        event = alignment.events[slip.event]
        key = tune.key if slip.plain is None else tune.bar_at(tune.notes[slip.plain].onset_ticks).key
        midi = event.midi - alignment.semitones
        played = key.spell(midi, "up" if plain is not None and midi < plain.midi else "down").display
    if slip.kind is SlipKind.WRONG and plain is not None:
        return f"{played} instead of {plain.display}"
    return f"{plain.display} left out" if plain is not None else f"{played} added"
