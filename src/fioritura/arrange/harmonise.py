"""Chords for a tune that has none: inferred from the melody, or given as a line of text.

The inference is a hidden Markov model whose best path is found exactly (Viterbi). Its steps are half-bars, or whole
bars in triple and uneven metres; its states are the chords that tunes in the key's mode use (`_VOCABULARY`). A chord
explains the melody over it by the probability of chord tones, scale tones and foreign tones at each metrical weight;
a chord follows another by how common it is, by the motion of the roots, and by where in the bar it comes. All
numbers are natural logarithms of probabilities or of their ratios.

Sources: the shares of melody notes outside the chord are measured on the Nottingham Music Database (9 % on
downbeats, 26 % over all, 37 % on half-beats); the vocabulary and the motions of roots are common practice.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import accumulate, groupby, pairwise
from math import log
from typing import Final

from fioritura.errors import OptionError, TuneError
from fioritura.theory.chord import Chord
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key, Mode
from fioritura.theory.pitch import Interval
from fioritura.theory.scale import chord_scale
from fioritura.tune import Bar, ChordSpan, Tune

__all__ = ["chords_from_text", "harmonise"]

_VOCABULARY: Final[dict[Mode, str]] = {
    "major": "P1:10 P4:6 P5:4 P5-7:5 M6-m:3 M2-m:3 M3-m:0.8 M2-7:0.8 M6-7:0.4 M3-7:0.4 P1-7:0.4 m7:0.4 P4-m:0.1",
    "minor": "P1-m:10 P5-7:5 P4-m:4 m7:4 m3:4 m6:3 m7-7:1 P5:1 P5-m:0.6 P4:0.5 M2-m7b5:0.4 P1-7:0.3 M2-7:0.2",
    "dorian": "P1-m:10 m7:6 P4:3 m3:2 P5-m:2 M2-m:0.8 P4-m:0.5 P5-7:0.8 m6:0.3",
    "mixolydian": "P1:10 m7:6 P4:5 P5:2 P5-m:2 M2-m:2 M6-m:1.5 P5-7:1",
    "phrygian": "P1-m:10 m2:6 m3:3 P4-m:2 m6:3 m7-m:3",
    "lydian": "P1:10 P5:5 M2:5 M6-m:3 M3-m:2 M7-m:1",
    "locrian": "P1-dim:8 m2:4 m3-m:4 d5:4 m6:4 P4-m:2 m7-m:3",
}
"""For each mode the chords of its tunes, as interval above the tonic and suffix, with how common they are."""

_ROOT_MOTION: Final = (0.6, 0.8, 1.3, 0.8, 0.6, 2.5, 0.3, 1.5, 0.9, 1.2, 1.0, 0.4)
"""How readily the root moves up by 0 to 11 semitones to another chord; 5 is the fall of a fifth."""

_OUTSIDE: Final = {1.0: 0.09, 0.75: 0.15, 0.5: 0.20, 0.25: 0.37, 0.125: 0.40, 0.0: 0.45}
"""Share of melody notes outside the chord at each metrical weight (see `Metre.strength`)."""

_FOREIGN: Final = 0.04
"""Share of those that lie outside the chord's scale as well."""
_TONE_WEIGHTS: Final = {0: 1.2, 2: 1.0, 4: 1.0, 6: 0.4}
"""Chord tones by their steps above the root, against each other."""

_EVIDENCE: Final = 3.0
"""How many independent notes the melody over one step counts for."""

_CHANGE: Final = {True: 0.75, False: 0.35}
"""How often the chord changes at a bar line, and inside a bar."""
_RESOLUTION: Final = 4.0
_ASTRAY: Final = 0.15
"""How much likelier a dominant moves to its target than the motion of roots says, and how much less elsewhere."""

_OPENING: Final = 1.5
_CADENCE: Final = 1.0
_HALF_CADENCE: Final = 0.5
_ENDING: Final = 4.0
"""What the tonic gains at the start, at a section's end (the dominant: half a cadence) and at the tune's end."""


@dataclass(frozen=True, slots=True)
class _Step:
    """A stretch of a bar that holds one chord."""

    start_ticks: int
    end_ticks: int
    bar: Bar
    opens_bar: bool
    closes_section: bool


@dataclass(frozen=True, slots=True)
class _State:
    """A chord as the model sees it: `weight` is how common it is, `logs` the log probability of each pitch class
    at each metrical weight; `target` is the pitch class that a dominant leads to."""

    chord: Chord
    weight: float
    logs: dict[float, tuple[float, ...]]
    target: int | None
    is_tonic: bool
    is_dominant: bool


def harmonise(tune: Tune) -> Tune:
    """Give a tune the chords that its melody suggests, marked as inferred; a tune with chords stays as it is.

    The upbeat stays without a chord. The result is the likeliest sequence under the model above, found exactly.
    """
    steps = _steps(tune)
    if tune.chords or not steps:
        return tune
    path = _best_path(tune, steps)
    spans: list[ChordSpan] = []
    for chord, group in groupby(zip(path, steps, strict=True), key=lambda pair: pair[0]):
        held = [step for _, step in group]
        start = held[0].start_ticks
        spans.append(ChordSpan(start, held[-1].end_ticks - start, chord, chord.text, is_inferred=True))
    return replace(tune, chords=tuple(spans))


def _steps(tune: Tune) -> list[_Step]:
    steps: list[_Step] = []
    for number, bar in enumerate(tune.bars):
        if bar.number == 0 or bar.duration_ticks <= 0:
            continue
        following = tune.bars[number + 1] if number + 1 < len(tune.bars) else None
        closes = bar.ends_section or bar.repeats > 0 or following is None or following.opens_repeat
        places = _chord_places(bar)
        ends = [*places[1:], bar.duration_ticks]
        for place, end in zip(places, ends, strict=True):
            steps.append(
                _Step(
                    bar.start_ticks + place,
                    bar.start_ticks + end,
                    bar,
                    opens_bar=place == 0 and bar.metre_offset_ticks == 0,
                    closes_section=closes and end == bar.duration_ticks,
                )
            )
    return steps


def _chord_places(bar: Bar) -> list[int]:
    """Offsets in the bar at which the chord may change: its start and, with an even count of beats, its middle."""
    groups = bar.metre.groups_ticks
    if len(groups) % 2:
        return [0]
    middle = sum(groups[: len(groups) // 2]) - bar.metre_offset_ticks
    return [0, middle] if 0 < middle < bar.duration_ticks else [0]


def _best_path(tune: Tune, steps: Sequence[_Step]) -> list[Chord]:
    """The likeliest chord for each step, by dynamic programming over all sequences."""
    first = steps[0]
    states = _states(first.bar.key)
    fits = _fits(tune, steps)
    scores = [fit + log(s.weight) + _OPENING * s.is_tonic for s, fit in zip(states, fits[0], strict=True)]
    back: list[list[int]] = []
    for step, before, fit in zip(steps[1:], steps, fits[1:], strict=False):
        moves = _moves(before.bar.key, step.bar.key, step.opens_bar)
        reached, origins = [], []
        for column, own in zip(moves, fit, strict=True):
            totals = [score + move for score, move in zip(scores, column, strict=True)]
            best = max(totals)
            reached.append(best + own)
            origins.append(totals.index(best))
        scores = reached
        back.append(origins)
    place = scores.index(max(scores))
    path = [place]
    for origins in reversed(back):
        place = origins[place]
        path.append(place)
    path.reverse()
    return [_states(step.bar.key)[place].chord for step, place in zip(steps, path, strict=True)]


def _fits(tune: Tune, steps: Sequence[_Step]) -> list[list[float]]:
    """For each step, the log probability of its melody under each chord, with what cadences add."""
    last_sounding = max((n for n, s in enumerate(steps) if s.start_ticks < tune.notes[-1].end_ticks), default=0)
    fits: list[list[float]] = []
    first = 0
    for number, step in enumerate(steps):
        while first < len(tune.notes) and tune.notes[first].end_ticks <= step.start_ticks:
            first += 1
        heard = _heard(tune, first, step)
        states = _states(step.bar.key)
        fit = [sum(weight * s.logs[strength][pc] for pc, strength, weight in heard) for s in states]
        if number >= last_sounding:
            fit = [value + _ENDING * s.is_tonic for value, s in zip(fit, states, strict=True)]
        elif step.closes_section:
            gains = (_CADENCE * s.is_tonic + _HALF_CADENCE * s.is_dominant for s in states)
            fit = [value + gain for value, gain in zip(fit, gains, strict=True)]
        fits.append(fit)
    return fits


def _heard(tune: Tune, first: int, step: _Step) -> list[tuple[int, float, float]]:
    """Pitch class, metrical weight and share of the step's evidence of each note that sounds in the step."""
    heard = []
    length = step.end_ticks - step.start_ticks
    for note in tune.notes[first:]:
        if note.onset_ticks >= step.end_ticks:
            break
        start, end = max(note.onset_ticks, step.start_ticks), min(note.end_ticks, step.end_ticks)
        offset = start - step.bar.start_ticks + step.bar.metre_offset_ticks
        strength = step.bar.metre.strength(offset)
        if note.onset_ticks < start:
            strength = min(strength, 0.5)
        heard.append((note.pitch.midi % 12, strength, _EVIDENCE * (end - start) / length))
    return heard


@lru_cache(maxsize=128)
def _states(key: Key) -> tuple[_State, ...]:
    return tuple(_state(key, entry) for entry in _VOCABULARY[key.mode].split())


def _state(key: Key, entry: str) -> _State:
    place, weight = entry.split(":")
    interval, _, suffix = place.partition("-")
    root = key.tonic.up(Interval.parse(interval))
    chord = read_chord(f"{root}{suffix}")
    if chord is None:
        raise ValueError(entry)
    leads = chord.is_dominant or (chord.is_major and not chord.pitch_classes <= chord_scale(None, key).pitch_classes)
    target = root.up(Interval(3, 5)).pitch_class if leads else None
    return _State(
        chord,
        float(weight),
        {strength: _tone_logs(chord, key, outside) for strength, outside in _OUTSIDE.items()},
        target,
        is_tonic=interval == "P1" and not leads,
        is_dominant=interval == "P5" and chord.is_major,
    )


def _tone_logs(chord: Chord, key: Key, outside: float) -> tuple[float, ...]:
    """Log probability of each pitch class over the chord when a share `outside` of the notes is outside it."""
    tones = {(chord.root.pitch_class + tone.semitones) % 12: _TONE_WEIGHTS[tone.steps] for tone in chord.intervals}
    scale = chord_scale(chord, key).pitch_classes - chord.pitch_classes
    foreign = 12 - len(scale) - len(tones)

    def share(pitch_class: int) -> float:
        if pitch_class in tones:
            return (1 - outside) * tones[pitch_class] / sum(tones.values())
        if pitch_class in scale:
            return outside * (1 - _FOREIGN) / len(scale)
        return outside * _FOREIGN / foreign

    return tuple(log(share(pitch_class)) for pitch_class in range(12))


@lru_cache(maxsize=256)
def _moves(source: Key, target: Key, opens_bar: bool) -> tuple[tuple[float, ...], ...]:
    """Log probability of each chord of the target key (rows) after each chord of the source key (columns)."""
    before, after = _states(source), _states(target)
    columns = []
    for state in before:
        weights = [_readiness(state, following) for following in after]
        total = sum(weights)
        stays = any(following.chord == state.chord for following in after)
        change = _CHANGE[opens_bar] if stays else 1.0
        columns.append(
            [
                log(1 - change) if following.chord == state.chord else log(change * weight / total)
                for following, weight in zip(after, weights, strict=True)
            ]
        )
    return tuple(zip(*columns, strict=True))


def _readiness(state: _State, following: _State) -> float:
    """How readily one chord is followed by another one, not normalised; 0 for itself."""
    if state.chord == following.chord:
        return 0.0
    root, target = state.chord.root.pitch_class, following.chord.root.pitch_class
    weight = following.weight * _ROOT_MOTION[(target - root) % 12]
    if state.target is not None:
        weight *= _RESOLUTION if target == state.target else _ASTRAY
    return weight


def chords_from_text(tune: Tune, text: str) -> Tune:
    """Give a tune the chords of a line such as ``"C | Am7 | Dm7 G7 | C"``.

    Bars stand between bar lines; ``%`` repeats the bar before. The chords of a bar share its beats evenly, the first
    ones taking what is left over. A line that is shorter than the tune, and divides it, is repeated. The upbeat has
    no chord.

    Raises:
        OptionError: a bar is empty or its chords can't be read or fitted, or the count of bars is not the tune's.
    """
    bars = _counted_bars(tune.bars)
    cells = _cells(text)
    repeats, rest = divmod(len(bars), len(cells))
    if rest or not repeats:
        raise OptionError(
            f"The chords fill {_bars_text(len(cells))} and the tune has {len(bars)}, the upbeat not counted: write "
            "one cell for each bar between | signs, with % to repeat a bar, or a shorter line that divides the tune."
        )
    spans: list[ChordSpan] = []
    for bar, cell in zip(bars, cells * repeats, strict=True):
        for (start, end), (chord, symbol) in zip(_shares(bar, len(cell)), cell, strict=True):
            last = spans[-1] if spans else None
            if last and last.text == symbol:
                spans[-1] = replace(last, duration_ticks=end - last.onset_ticks)
            else:
                spans.append(ChordSpan(start, end - start, chord, symbol))
    return replace(tune, chords=tuple(spans))


def _counted_bars(bars: Sequence[Bar]) -> list[Bar]:
    """The bars as a player counts them: without upbeats, and a bar that a repeat sign splits as one."""
    counted: list[Bar] = []
    for bar in bars:
        if counted and counted[-1].number == bar.number:
            whole = counted[-1].duration_ticks + bar.duration_ticks
            counted[-1] = replace(counted[-1], duration_ticks=whole)
        elif bar.number != 0 and not bar.is_pickup:
            counted.append(bar)
    return counted


def _cells(text: str) -> list[list[tuple[Chord | None, str]]]:
    """The chords of each bar of a line of text."""
    cells: list[list[tuple[Chord | None, str]]] = []
    for number, cell in enumerate(re.sub(r"^\s*\|+|\|+\s*$", "", text).replace("||", "|").split("|"), start=1):
        symbols = cell.split()
        if symbols == ["%"] and cells:
            cells.append(cells[-1])
        elif symbols and "%" not in symbols:
            cells.append([_read(symbol, number) for symbol in symbols])
        else:
            raise OptionError(
                f"Bar {number} of the chords holds {cell.strip() or 'nothing'!r}: write its chords, N.C. for none, "
                "or % alone to repeat the bar before."
            )
    return cells


def _read(symbol: str, number: int) -> tuple[Chord | None, str]:
    try:
        return read_chord(symbol), symbol
    except TuneError as error:
        raise OptionError(f"Bar {number} of the chords: {error}") from None


def _shares(bar: Bar, count: int) -> list[tuple[int, int]]:
    """Start and end of each of `count` chords in a bar, by whole beats, or by smaller units where they are many.

    Raises:
        OptionError: the bar has fewer units than chords.
    """
    metre = bar.metre
    for lengths in (metre.groups_ticks, (metre.unit_ticks,) * metre.beats):
        places = [place for place in accumulate(lengths, initial=0) if place < bar.duration_ticks]
        if len(places) >= count:
            base, extra = divmod(len(places), count)
            firsts = [number * base + min(number, extra) for number in range(count)]
            edges = [*(bar.start_ticks + places[first] for first in firsts), bar.end_ticks]
            return list(pairwise(edges))
    raise OptionError(
        f"Bar {bar.number} is given {count} chords and has room for {len(places)}, one to each beat of {metre}: "
        "write fewer."
    )


def _bars_text(count: int) -> str:
    return f"{count} bar{'' if count == 1 else 's'}"
