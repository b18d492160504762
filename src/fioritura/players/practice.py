"""Why a move between two notes is awkward, in words, and how to practise it (common practice)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from fioritura.players.chart import Digit, Fingering, FingeringChart
from fioritura.players.fingering import move_components
from fioritura.theory.pitch import Pitch

__all__ = ["Cause", "CauseKind", "causes_of", "practice_steps"]

CauseKind = Literal[
    "break", "little finger", "roll", "palm", "crossing", "many fingers", "partial", "slide", "tongue"
]

_DIGIT_NAMES: Final[dict[Digit, str]] = {
    "LT": "left thumb",
    "L1": "left first finger",
    "L2": "left second finger",
    "L3": "left third finger",
    "L4": "left little finger",
    "LP": "left palm",
    "R1": "right first finger",
    "R2": "right second finger",
    "R3": "right third finger",
    "R4": "right little finger",
    "RS": "side of the right hand",
}
_NUMBERS: Final = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_MANY_FINGERS: Final = 4
_PALM_WEIGHT: Final = 1.6
_FIRST_OF_ALL: Final = 99.0
_LITTLE_FINGERS: Final = frozenset({"L4", "R4"})
_BRASS: Final = frozenset({"trumpet", "flugelhorn", "trombone"})

_CURES: Final[dict[CauseKind, str]] = {
    "break": "Slur {pair} with one steady breath; set the right hand for {upper} before you leave {lower}.",
    "little finger": "Slur {pair} eight times each way, the little finger staying on the keys as it glides.",
    "roll": "Roll rather than lift: slur {pair} eight times each way with the finger never off the keys.",
    "palm": "Slur {pair} with the hand still; let only the palm move, as little as will open the key.",
    "crossing": "Loop {pair} slowly until all fingers arrive in one click, then a little faster.",
    "many fingers": "Loop {pair} slowly until all fingers arrive in one click, then a little faster.",
    "partial": "Sing {pair}, then slur it on the air alone with soft lips before the hand joins in.",
    "slide": "Play {pair} with a light legato tongue, the slide moving late and at once.",
    "tongue": "Tongue {lower} alone, four, six, then eight times, with the tip only, the air never stopping.",
}


@dataclass(frozen=True, slots=True)
class Cause:
    """One reason why a move is awkward."""

    kind: CauseKind
    words: str


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
        found.append((_PALM_WEIGHT, Cause("palm", "the palm keys come into play")))
    if "crossing" in components:
        down, up = (sum(digit not in held for digit in moving) for held in (digits_a, digits_b))
        words = f"fingers cross ({_NUMBERS[down]} down while {_NUMBERS[up]} up)"
        found.append((components["crossing"], Cause("crossing", words)))
    elif len(moving) >= _MANY_FINGERS:
        found.append((components["fingers"], Cause("many fingers", f"{_NUMBERS[len(moving)]} fingers move at once")))
    if components.get("travel", 0.0) > chart.handling.travel:
        words = f"the slide goes from {chart.in_words(a)} to {chart.in_words(b)}"
        found.append((components["travel"], Cause("slide", words)))
    return tuple(cause for _, cause in sorted(found, key=lambda pair: -pair[0]))


def practice_steps(
    pair: tuple[Pitch, Pitch],
    notes: Sequence[Pitch],
    kinds: Sequence[CauseKind],
    strain: float,
    quarters_per_minute: float,
) -> tuple[str, ...]:
    """What to do, in order: the pair alone, the stretch in rhythms, and the tempi to begin and end with."""
    lower, upper = sorted(pair, key=lambda pitch: pitch.midi)
    words = {"pair": f"{pair[0].display}–{pair[1].display}", "lower": lower.display, "upper": upper.display}
    steps = [_CURES[kind].format(**words) for kind in dict.fromkeys(kinds[:2])]
    if len({pitch.midi for pitch in notes}) > 2:
        steps.append("Play the whole stretch in dotted rhythm, long–short, then short–long, then even.")
    elif not steps:
        steps.append(f"Slur {words['pair']} back and forth, evenly, until it feels like a slow trill.")
    start = start_tempo(strain, quarters_per_minute)
    if start < quarters_per_minute:
        goal = f"the goal is ♩ = {quarters_per_minute:g}"
        steps.append(f"Begin at ♩ = {start}; when it is clean three times running, go up by 4; {goal}.")
    else:
        steps.append(f"It lies within reach at ♩ = {quarters_per_minute:g}: play it there, evenly.")
    return tuple(steps)


def start_tempo(strain: float, quarters_per_minute: float) -> int:
    """An even tempo at which the place takes about 60 % of the player's limit; at least 30, at most the goal."""
    easy = quarters_per_minute * min(1.0, 0.6 / max(strain, 1e-6))
    return int(min(quarters_per_minute, max(30, 2 * (easy // 2))))


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
        words = (
            "the slur crosses to the next partial" if skipped == 1 else f"the slur leaps {_NUMBERS[skipped]} partials"
        )
        return Cause("partial", words)
    if 1 in (a.register, b.register):
        return Cause("break", "it crosses the break")
    return Cause(
        "break", "it goes over into the altissimo" if b.register > a.register else "it comes down from the altissimo"
    )


def _roll_cause(
    chart: FingeringChart, digits_a: dict[Digit, frozenset[str]], digits_b: dict[Digit, frozenset[str]]
) -> Cause:
    """The first finger that goes from key to key, little fingers before others, plain slides before stretches."""
    changed = [digit for digit in digits_a if digit in digits_b and digits_a[digit] != digits_b[digit]]
    changed.sort(key=lambda digit: digits_a[digit] <= digits_b[digit] or digits_a[digit] >= digits_b[digit])
    digit = next((digit for digit in changed if digit in _LITTLE_FINGERS), changed[0])
    left, taken = digits_a[digit] - digits_b[digit], digits_b[digit] - digits_a[digit]
    finger = _DIGIT_NAMES[digit]
    if left and taken:
        words = f"the {finger} goes from {_named(chart, left)} to {_named(chart, taken)}"
    elif taken:
        words = f"the {finger} takes {_named(chart, taken)} as well"
    else:
        words = f"the {finger} lets go of {_named(chart, left)} alone"
    kind: CauseKind = "palm" if digit == "LP" else "little finger" if digit in _LITTLE_FINGERS else "roll"
    return Cause(kind, words)


def _named(chart: FingeringChart, keys: frozenset[str]) -> str:
    names = []
    for key in (chart.keys[key] for key in sorted(keys)):
        if key.name.isdecimal():
            names.append(f"{'hole' if key.is_open_hole else 'key'} {key.name}")
        else:
            names.append(f"the {key.name}" if key.name.endswith(("key", "hole")) else key.name)
    return " and ".join(names)
