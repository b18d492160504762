"""Why a move between two notes is awkward, in words, and how to practise it (common practice)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from fioritura.players.chart import Digit, Fingering, FingeringChart
from fioritura.players.fingering import move_components
from fioritura.theory.pitch import Pitch
from fioritura.words import Message, message

__all__ = ["Cause", "CauseKind", "causes_of", "practice_steps", "start_tempo", "tempo_steps"]

CauseKind = Literal[
    "break", "little finger", "roll", "palm", "crossing", "many fingers", "partial", "slide", "tongue"
]

_FINGERS: Final[dict[Digit, str]] = {
    "LT": "finger-left-thumb",
    "L1": "finger-left-first",
    "L2": "finger-left-second",
    "L3": "finger-left-third",
    "L4": "finger-left-little",
    "LP": "finger-left-palm",
    "R1": "finger-right-first",
    "R2": "finger-right-second",
    "R3": "finger-right-third",
    "R4": "finger-right-little",
    "RS": "finger-right-side",
}
_MANY_FINGERS: Final = 4
_PALM_WEIGHT: Final = 1.6
_FIRST_OF_ALL: Final = 99.0
_MOST_TEMPOS: Final = 8
_SMALLEST_STEP: Final = 4
_LITTLE_FINGERS: Final = frozenset({"L4", "R4"})
_BRASS: Final = frozenset({"trumpet", "flugelhorn", "trombone"})

_CURES: Final[dict[CauseKind, str]] = {
    "break": "practice-break",
    "little finger": "practice-little-finger",
    "roll": "practice-roll",
    "palm": "practice-palm",
    "crossing": "practice-many-fingers",
    "many fingers": "practice-many-fingers",
    "partial": "practice-partial",
    "slide": "practice-slide",
    "tongue": "practice-tongue",
}


@dataclass(frozen=True, slots=True)
class Cause:
    """One reason why a move is awkward."""

    kind: CauseKind
    words: Message


def causes_of(chart: FingeringChart, a: Fingering, b: Fingering) -> tuple[Cause, ...]:
    """Why the move is awkward, the dearest reason first; empty for an easy one."""
    components = move_components(chart, a, b)
    digits_a, digits_b = _digits(chart, a), _digits(chart, b)
    moving = [digit for digit in {**digits_a, **digits_b} if digits_a.get(digit) != digits_b.get(digit)]
    found: list[tuple[float, Cause]] = []
    if a.register != b.register and (chart.family == "clarinet" or chart.family in _BRASS):
        weight = components["register"] if chart.family in _BRASS else _FIRST_OF_ALL
        found.append((weight, _register_cause(chart, a, b)))
    if "slide" in components or "stretch" in components:
        cost = components.get("slide", 0.0) + components.get("stretch", 0.0)
        found.append((cost, _roll_cause(chart, digits_a, digits_b)))
    if "LP" in moving:
        found.append((_PALM_WEIGHT, Cause("palm", message("cause-palm"))))
    if "crossing" in components:
        down, up = (sum(digit not in held for digit in moving) for held in (digits_a, digits_b))
        words = message("cause-crossing", down=_fingers(down), up=_fingers(up))
        found.append((components["crossing"], Cause("crossing", words)))
    elif len(moving) >= _MANY_FINGERS:
        words = message("cause-many-fingers", count=_fingers(len(moving)))
        found.append((components["fingers"], Cause("many fingers", words)))
    if components.get("travel", 0.0) > chart.handling.travel:
        words = message("cause-slide", first=chart.in_words(a), second=chart.in_words(b))
        found.append((components["travel"], Cause("slide", words)))
    return tuple(cause for _, cause in sorted(found, key=lambda pair: -pair[0]))


def practice_steps(
    pair: tuple[Pitch, Pitch],
    notes: Sequence[Pitch],
    kinds: Sequence[CauseKind],
    tempos: Sequence[int],
    beat: str,
) -> tuple[Message, ...]:
    """What to do, in order: the pair alone, the stretch in rhythms, and the tempi (of a beat) to begin and end with."""
    lower, upper = sorted(pair, key=lambda pitch: pitch.midi)
    both = message("note-pair", first=pair[0], second=pair[1])
    cures = dict.fromkeys(_CURES[kind] for kind in kinds[:2])
    steps = [message(cure, pair=both, lower=lower, upper=upper) for cure in cures]
    if len({pitch.midi for pitch in notes}) > 2:
        steps.append(message("practice-dotted"))
    elif not steps:
        steps.append(message("practice-slow-trill", pair=both))
    if len(tempos) > 1:
        up = tempos[1] - tempos[0]
        steps.append(message("practice-tempo", beat=beat, start=tempos[0], step=up, goal=tempos[-1]))
    else:
        steps.append(message("practice-at-tempo", beat=beat, goal=tempos[-1]))
    return tuple(steps)


def tempo_steps(strain: float, beats_per_minute: float) -> tuple[int, ...]:
    """At which tempos to practise a place, in beats a minute: in even steps (the last may be smaller) from one at which
    it takes about 60 % of the player's limit to the goal; eight at most, and no step smaller than 4."""
    start, goal = start_tempo(strain, beats_per_minute), round(beats_per_minute)
    step = max(_SMALLEST_STEP, -(-(goal - start) // (_MOST_TEMPOS - 1)))
    return (*range(start, goal, step), goal)


def start_tempo(strain: float, beats_per_minute: float) -> int:
    """An even tempo at which the place takes about 60 % of the player's limit; at least 30, at most the goal."""
    easy = beats_per_minute * min(1.0, 0.6 / max(strain, 1e-6))
    return int(min(beats_per_minute, max(30, 2 * (easy // 2))))


def _digits(chart: FingeringChart, fingering: Fingering) -> dict[Digit, frozenset[str]]:
    """The keys that each digit holds down."""
    held: dict[Digit, frozenset[str]] = {}
    for key in fingering.keys:
        digit = chart.keys[key].digit
        if digit != "slide":
            held[digit] = held.get(digit, frozenset()) | {key}
    return held


def _register_cause(chart: FingeringChart, a: Fingering, b: Fingering) -> Cause:
    if chart.family in _BRASS:
        low, high = sorted((a.register, b.register))
        skipped = high - low
        if skipped == 1:
            return Cause("partial", message("cause-next-partial"))
        return Cause("partial", message("cause-partials", count=message("count-of-partials", n=skipped)))
    if 1 in (a.register, b.register):
        return Cause("break", message("cause-break"))
    rises = b.register > a.register
    return Cause("break", message("cause-into-altissimo") if rises else message("cause-from-altissimo"))


def _fingers(count: int) -> Message:
    return message("count-of-fingers", n=count)


def _roll_cause(
    chart: FingeringChart, digits_a: dict[Digit, frozenset[str]], digits_b: dict[Digit, frozenset[str]]
) -> Cause:
    """The first finger that goes from key to key, little fingers before others, plain slides before stretches."""
    changed = [digit for digit in digits_a if digit in digits_b and digits_a[digit] != digits_b[digit]]
    changed.sort(key=lambda digit: digits_a[digit] <= digits_b[digit] or digits_a[digit] >= digits_b[digit])
    digit = next((digit for digit in changed if digit in _LITTLE_FINGERS), changed[0])
    left, taken = digits_a[digit] - digits_b[digit], digits_b[digit] - digits_a[digit]
    finger = message(_FINGERS[digit])
    if left and taken:
        before = tuple(message("key-from", key=name) for name in _names(chart, left))
        after = tuple(message("key-to", key=name) for name in _names(chart, taken))
        words = message("cause-finger-goes", finger=finger, before=before, after=after)
    else:
        keys = tuple(message("key-the", key=name) for name in _names(chart, taken or left))
        words = message("cause-finger-takes" if taken else "cause-finger-leaves", finger=finger, keys=keys)
    kind: CauseKind = "palm" if digit == "LP" else "little finger" if digit in _LITTLE_FINGERS else "roll"
    return Cause(kind, words)


def _names(chart: FingeringChart, keys: frozenset[str]) -> Iterator[Message | str]:
    """What keys are called where a finger goes to them."""
    for key in (chart.keys[key] for key in sorted(keys)):
        if isinstance(key.name, str) and key.name.isdecimal():
            yield message("hole-number" if key.is_open_hole else "key-number", number=key.name)
        else:
            yield key.name
