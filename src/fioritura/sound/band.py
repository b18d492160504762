"""Play a band part: from its notes in ticks to timed notes in seconds.

Off-beats swing by the drummer's ratio at the tempo, or as triplets. Players drift a few milliseconds around the beat,
well within the 30 to 50 ms of ensembles (Rasch 1979); the click does not.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from fioritura.accompany.feels import BandFeel, Subdivision
from fioritura.accompany.form import Form
from fioritura.accompany.part import BandPart, PartName
from fioritura.chance import Chance
from fioritura.sound.clock import Clock
from fioritura.sound.performance import PerformedNote, PerformedPart
from fioritura.sound.swing import TRIPLET_RATIO, SwingGrid, drummer_ratio
from fioritura.sound.timing import Ratio, drifts_sec

__all__ = ["offbeat_ratio", "perform_band"]

DEVIATION_SEC: Final[dict[PartName, float]] = {"bass": 0.006, "chords": 0.008, "drums": 0.004, "click": 0.0}


@dataclass(frozen=True, slots=True)
class Seat:
    """Where a part stands in the mix, as MIDI values: volume before it is balanced, pan, reverberation."""

    volume: int
    pan: int
    reverb: int


SEATS: Final[dict[PartName, Seat]] = {
    "bass": Seat(82, 64, 12),
    "chords": Seat(100, 44, 44),
    "drums": Seat(112, 76, 36),
    "click": Seat(90, 64, 0),
}

VELOCITY_DEVIATION: Final = 3.0
STRUM_SEC: Final = 0.009
SHORTEST_SEC: Final = 0.05


def perform_band(
    parts: Sequence[BandPart], form: Form, feel: BandFeel, clock: Clock, *, exact: bool = False, seed: int = 0
) -> tuple[PerformedPart, ...]:
    """The parts as played in a feel; with `exact` on the swung grid, all strokes as loud as written."""
    return tuple(
        _performed(part, form, feel.subdivision, clock, exact, Chance.of(seed, "performance", part.name))
        for part in parts
    )


def offbeat_ratio(subdivision: Subdivision) -> Ratio:
    """Long to short eighth of the band at a tempo, where it swings: the drummer's, or a triplet's."""
    return (lambda tempo: TRIPLET_RATIO) if subdivision == "triplet" else drummer_ratio


def _performed(
    part: BandPart, form: Form, subdivision: Subdivision, clock: Clock, exact: bool, chance: Chance
) -> PerformedPart:
    onsets = sorted({note.onset_ticks for note in part.notes})
    grid, ratio = SwingGrid.of(form.tune, onsets), offbeat_ratio(subdivision)
    deviation = 0.0 if exact else DEVIATION_SEC[part.name]
    drift_at = dict(zip(onsets, drifts_sec(len(onsets), chance, deviation), strict=True))

    def sounding_sec(ticks: int) -> float:
        if subdivision == "straight":
            return clock.seconds(ticks)
        return clock.seconds(grid.swung(ticks, ratio(clock.tempo_at(ticks))))

    notes: list[PerformedNote] = []
    last_onset, rank = -1, 0
    for note in part.notes:
        rank = rank + 1 if note.onset_ticks == last_onset else 0
        last_onset = note.onset_ticks
        onset_sec = max(0.0, sounding_sec(note.onset_ticks) + drift_at[note.onset_ticks])
        onset_sec += rank * STRUM_SEC if part.is_strummed else 0.0
        end_sec = max(sounding_sec(note.end_ticks), onset_sec + SHORTEST_SEC)
        loudness = 127 * note.loudness + (0.0 if exact else chance.normal(VELOCITY_DEVIATION))
        velocity = max(1, min(127, round(loudness)))
        notes.append(PerformedNote(onset_sec, end_sec - onset_sec, note.midi, velocity))
    place = SEATS[part.name]
    return PerformedPart(
        part.name.capitalize(),
        part.program,
        tuple(notes),
        volume=place.volume,
        pan=place.pan,
        reverb=place.reverb,
        is_drums=part.is_drums,
        level_lu=part.level_lu,
    )
