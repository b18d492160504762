"""What was heard, to be said to a player."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import reduce
from typing import Final

from fioritura.errors import ReadError
from fioritura.listening.align import LEAST_LIKENESS, Alignment
from fioritura.listening.naming import Slip, SlipKind
from fioritura.listening.notes import QualityKind, Take
from fioritura.players.instruments import Instrument, all_instruments
from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch
from fioritura.tune import Tune
from fioritura.words import Message, message

__all__ = [
    "bar_named",
    "bars_from_to",
    "bars_named",
    "distance_words",
    "in_a_row",
    "key_words",
    "likeness_words",
    "refuse_unclear",
    "slip_words",
    "without_signature",
]

_HOPELESS: Final = frozenset({QualityKind.SILENCE, QualityKind.POLYPHONY, QualityKind.NOISE, QualityKind.NO_PLAYER})


def key_words(semitones: int) -> Message | None:
    """How a line lies to the tune: "a major sixth lower than the tune"; None at the tune's own pitch.

    Where instruments sound so far below what they read, they are named.
    """
    if semitones == 0:
        return None
    distance, rest = distance_words(semitones), abs(semitones) % 12
    lies = message("line-higher", distance=distance) if semitones > 0 else message("line-lower", distance=distance)
    known = all_instruments().values()
    readers = tuple(one.name for one in known if rest and one.transposition.semitones == -semitones)
    return message("line-read-on", lies=lies, instruments=readers) if readers else lies


def distance_words(semitones: int) -> Message:
    """How far two pitches lie apart: "a major sixth", "an octave", "a fifth and an octave"."""
    octaves, rest = divmod(abs(semitones), 12)
    if rest == 0:
        return message("distance-octaves", octaves=octaves)
    if octaves == 0:
        return message("distance", semitones=rest)
    return message("distance-and-octaves", semitones=rest, octaves=octaves)


def refuse_unclear(take: Take, name: str) -> None:
    """Say so where a recording can't be heard as one player's line.

    Raises:
        ReadError: silence, several players, noise, or no note at all; the message says what to do.
    """
    for finding in take.findings:
        if finding.kind in _HOPELESS:
            raise ReadError("recording-unclear", name=name, advice=finding.advice)
    if not take.notes:
        raise ReadError("recording-without-notes", name=name)


def likeness_words(alignment: Alignment, name: str) -> Message:
    """Why a line, of the file or take of that name, is refused as a performance of the tune, and what to do."""
    key = alignment.tune.key
    midis = [event.midi for event in alignment.events]
    heard = message("heard-no-notes")
    if midis:
        heard = message("heard-notes", count=len(midis), low=key.spell(min(midis)), high=key.spell(max(midis)))
    return message(
        "not-this-tune",
        name=name,
        tune=alignment.tune.title or message("the-tune"),
        heard=heard,
        likeness=round(alignment.likeness, 2),
        least=LEAST_LIKENESS,
    )


def slip_words(alignment: Alignment, slip: Slip, instrument: Instrument | None = None) -> Message:
    """ "B♭4 instead of G4", "G4 left out" or "A4 added", as the instrument reads it, else at the tune's pitch."""
    tune = alignment.tune
    plain = None if slip.plain is None else tune.notes[slip.plain].pitch
    written = plain if plain is None or instrument is None else instrument.written(plain)
    if slip.event is None:
        return message("slip-left-out", written=written or message("the-note"))
    key = tune.key if slip.plain is None else tune.bar_at(tune.notes[slip.plain].onset_ticks).key
    played = _heard_pitch(alignment.midi(slip.event), key, written, instrument)
    if slip.kind is SlipKind.WRONG and written is not None:
        return message("slip-wrong", played=played, written=written)
    return message("slip-added", played=played)


def _heard_pitch(midi: int, key: Key, written: Pitch | None, instrument: Instrument | None) -> Pitch:
    """A sounding pitch as the player reads it, spelled in the key of the part."""
    if instrument is not None:
        key, midi = key.transposed(instrument.transposition), midi + instrument.transposition.semitones
    return key.spell(midi, "up" if written is not None and midi < written.midi else "down")


def without_signature(tune: Tune, instrument: Instrument | None = None) -> Iterator[int]:
    """The MIDI number at which each note of a tune sounds when the sharps and flats of its key signature, as the
    instrument reads it, are forgotten."""
    for note in tune.notes:
        written, key = note.pitch, tune.bar_at(note.onset_ticks).key
        if instrument is not None:
            written, key = instrument.written(written), key.transposed(instrument.transposition)
        is_signed = written.alter == key.alter(written.step % 7)
        yield note.pitch.midi - (written.alter if is_signed else 0)


def bar_named(number: int) -> Message:
    """A bar by the number that is printed at it: "bar 5", "the pickup"; form ``at``: "in bar 5"."""
    return message("bar-name", number=number) if number else message("pickup")


def bars_named(numbers: tuple[int, ...]) -> Message:
    """Several bars: "bars 3, 5 and 6"."""
    if len(numbers) == 1:
        return bar_named(numbers[0])
    if 0 in numbers:
        later = tuple(number for number in numbers if number)
        return message("pickup-and-bars", bars=bars_named(later))
    return message("bars-named", bars=tuple(str(number) for number in numbers))


def bars_from_to(first: int, last: int) -> Message:
    """A stretch of bars: "bars 3–6", "bar 3"."""
    if first == last:
        return bar_named(first)
    if not first:
        return message("pickup-to-bar", last=str(last))
    return message("bars-from-to", first=str(first), last=str(last))


def in_a_row(said: Sequence[Message]) -> Message:
    """One or more messages with semicolons between them."""
    return reduce(lambda first, rest: message("list-semicolon", first=first, rest=rest), said)
