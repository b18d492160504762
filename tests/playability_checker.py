"""An independent judge of playability: range, rate and breath from first principles.

It shares no code and no table with the arranger: ranges are sounding MIDI numbers worked out by hand from the
handbooks' written ranges, rates and breaths are common practice for five levels of player. Where the plain tune
itself already asks for more, the ornamented line may ask for as much, never for more.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

from fioritura.theory.pitch import Pitch
from fioritura.tune import Note

SOUNDING_RANGE = {
    "concert": (36, 108),
    "soprano-sax": (56, 88),
    "alto-sax": (49, 81),
    "tenor-sax": (44, 76),
    "baritone-sax": (36, 69),
    "clarinet": (50, 89),
    "bass-clarinet": (37, 77),
    "flute": (60, 96),
    "oboe": (58, 91),
    "trumpet": (52, 84),
    "flugelhorn": (52, 82),
    "irish-flute": (62, 86),
    "tin-whistle": (74, 98),
    "trombone": (40, 72),
}
NOTES_A_SECOND = {1: 7.0, 2: 9.0, 3: 11.0, 4: 13.0, 5: 15.0}
TONGUED_A_SECOND = {1: 5.0, 2: 6.0, 3: 7.0, 4: 8.0, 5: 9.0}
BREATH_SEC = {1: 5.0, 2: 6.5, 3: 8.0, 4: 10.0, 5: 12.0}
AIR_SHARE = {"flute": 0.8, "baritone-sax": 0.75, "bass-clarinet": 0.8, "trombone": 0.75, "oboe": 1.3, "clarinet": 1.1}
GRACE_SEC = 0.035
CATCH_BREATH_SEC = 0.35
TICKS_A_QUARTER = 1680
TOLERANCE = 1.001


def violations(
    line: Sequence[Note],
    instrument_id: str,
    level: int,
    quarters_per_minute: float,
    plain: Sequence[Note] = (),
) -> list[str]:
    """What a player of the level can't do in a line of sounding notes, in words; empty when all is well."""
    sec = 60 / quarters_per_minute / TICKS_A_QUARTER
    return [
        *_out_of_range(line, instrument_id),
        *_too_fast(line, sec, max(NOTES_A_SECOND[level], _fastest(plain, sec, repeated=False)), repeated=False),
        *_too_fast(line, sec, max(TONGUED_A_SECOND[level], _fastest(plain, sec, repeated=True)), repeated=True),
        *_crowded_graces(line, sec, {(note.onset_ticks, note.graces) for note in plain}),
        *_too_long(line, sec, BREATH_SEC[level] * AIR_SHARE.get(instrument_id, 1.0), _longest(plain, sec)),
    ]


def _out_of_range(line: Sequence[Note], instrument_id: str) -> list[str]:
    low, high = SOUNDING_RANGE[instrument_id]
    pitches = [pitch for note in line for pitch in (*note.graces, note.pitch)]
    return [f"range: {pitch} on {instrument_id}" for pitch in pitches if not low <= pitch.midi <= high]


def _rates(line: Sequence[Note], sec: float, repeated: bool) -> list[tuple[float, int]]:
    """Notes a second from each main note to the next, of those pairs that do (or do not) repeat a pitch."""
    return [
        (1 / ((b.onset_ticks - a.onset_ticks) * sec), a.onset_ticks)
        for a, b in pairwise(line)
        if (a.pitch.midi == b.pitch.midi and not b.graces) == repeated
    ]


def _fastest(line: Sequence[Note], sec: float, repeated: bool) -> float:
    return max((rate for rate, _ in _rates(line, sec, repeated)), default=0.0)


def _too_fast(line: Sequence[Note], sec: float, cap: float, repeated: bool) -> list[str]:
    kind = "tongue" if repeated else "rate"
    return [f"{kind}: {r:.1f}/s at {at}" for r, at in _rates(line, sec, repeated) if r > cap * TOLERANCE]


def _crowded_graces(line: Sequence[Note], sec: float, own: Collection[tuple[int, tuple[Pitch, ...]]]) -> list[str]:
    """Grace notes need their time, and may take at most half of what lies between the main notes.

    The plain tune's own grace notes are let pass.
    """
    return [
        f"graces: {len(b.graces)} before {b.onset_ticks}"
        for a, b in pairwise(line)
        if (b.onset_ticks, b.graces) not in own
        and len(b.graces) * GRACE_SEC > 0.5 * (b.onset_ticks - a.onset_ticks) * sec
    ]


def _stretches(line: Sequence[Note], sec: float) -> list[tuple[float, int]]:
    """Sounding time between chances to breathe: a rest, or a note long enough to give half of itself to a breath."""
    stretches = []
    start = 0.0
    for number, note in enumerate(line):
        following = line[number + 1].onset_ticks if number + 1 < len(line) else None
        start = note.onset_ticks * sec if number == 0 else start
        rests = following is None or (following - note.end_ticks) * sec >= CATCH_BREATH_SEC
        if rests or note.duration_ticks * sec >= 2 * CATCH_BREATH_SEC:
            stretches.append((note.end_ticks * sec - start, note.onset_ticks))
            start = (following if following is not None else note.end_ticks) * sec
    return stretches


def _longest(line: Sequence[Note], sec: float) -> float:
    return max((seconds for seconds, _ in _stretches(line, sec)), default=0.0)


def _too_long(line: Sequence[Note], sec: float, cap: float, plain_longest: float) -> list[str]:
    longest = max(cap, plain_longest) * TOLERANCE
    return [f"breath: {seconds:.1f} s up to {at}" for seconds, at in _stretches(line, sec) if seconds > longest]
