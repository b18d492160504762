"""Takes with one fault each and all that is true of them: the material for the tests and the bench of the report.

A player by formula plays a tune (`tests.played_lines.tunes`: settings may be chosen on the train half, measures are
taken on the test half) at a tempo that wanders by 3 percent, onsets off by 15 ms or so; then one thing goes wrong, and
what it is stands in `Truth`. The take is given at the level of notes (`heard_perfectly`), or its notes are played on
recorded ones (`benchmarks.fault_bench`).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Final

import numpy as np

from fioritura.arrange.arranger import ornament
from fioritura.arrange.rendition import Rendition
from fioritura.listening.notes import Attack, PlayedNote, Take
from fioritura.phrase import phrases
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Bar, Tune
from tests.played_lines import ALTO, Half, sounded, tunes

Dice = random.Random

_FEWEST_BARS: Final = 8
_MOST_BARS: Final = 24
_NOTES: Final = range(32, 110)
_GRACE_TICKS: Final = 200
"""About 70 ms at 100 beats a minute."""
HEARD: Final = ["graces", "turns", "runs", "repetitions", "neighbours", "passing-notes"]
"""Families that notes alone tell."""


@dataclass(frozen=True)
class Tone:
    """One played note: where it stands in the tune (ticks), what was played there, and how it was placed.

    `pause_sec` is waited before it, `late_sec` moves its onset alone, `pace` is the tempo there against the take's own,
    `cents` its mistuning. `plain` is the plain note that it is meant as.
    """

    onset: float
    duration: float
    midi: int
    plain: int | None
    step: float = 0.0
    """Ticks from the onset of the tone before."""
    pause_sec: float = 0.0
    late_sec: float = 0.0
    pace: float = 1.0
    cents: float = 0.0
    is_grace: bool = False


@dataclass(frozen=True)
class Fault:
    """What is true of a take beyond its tones: each is empty or neutral where nothing of the kind went wrong."""

    kind: str = "none"
    stops: tuple[tuple[int, float], ...] = ()
    """Bar of the note before which the player stood still, and for how many seconds."""
    again: tuple[int, int] | None = None
    """Bar in which the player broke off, and the bar begun again."""
    skipped: tuple[int, int] | None = None
    part: tuple[int, int] | None = None
    """The only bars that were played."""
    moved: tuple[int, int, int] | None = None
    """First and last bar, and the semitones that they were moved by."""
    semitones: int = 0
    key_forgotten: bool = False
    wrong: tuple[int, ...] = ()
    """Plain notes at which another pitch was played."""
    left_out: tuple[int, ...] = ()
    added: tuple[tuple[int, int], ...] = ()
    """(bar, MIDI number) of added notes."""
    tempo_ratio: float = 1.0
    pace: tuple[int, int, float] | None = None
    """Bars in which the tempo was another, and how many times the usual it was at their end."""
    is_gradual: bool = False
    late: tuple[float, float] | None = None
    """Beat on which the notes came late, and by how many milliseconds."""
    cents: float = 0.0
    flat_midi: tuple[int, float] | None = None
    missed: tuple[int, ...] = ()
    """Numbers of the asked figures that were left out."""
    rhythm: tuple[int, ...] = ()
    """Plain notes that came at another place of the bar."""
    swing: float = 1.0


@dataclass(frozen=True)
class Truth:
    """A take and all that is true of it. `tempo` is the asked one in quarters a minute."""

    tune: Tune
    tones: tuple[Tone, ...]
    fault: Fault
    tempo: float
    jitter_sec: float
    seed: int
    rendition: Rendition | None = None
    onsets: tuple[float, ...] = field(default=(), repr=False)
    offsets: tuple[float, ...] = field(default=(), repr=False)

    @property
    def kind(self) -> str:
        return self.fault.kind

    @property
    def asked(self) -> tuple[Figure, ...]:
        """The ornaments that were to be played."""
        return self.rendition.figures if self.rendition and self.kind != "own" else ()

    def bar_of(self, tone: Tone) -> int:
        return self.tune.bar_at(max(0, round(tone.onset))).number


# Tunes ---------------------------------------------------------------------------------------------------------


@cache
def fault_tunes(half: Half, count: int) -> tuple[Tune, ...]:
    """Tunes of 8 to 24 bars in which every fault can be made."""
    found: list[Tune] = []
    for tune in tunes(half, 200, seed=5):
        numbers = [bar.number for bar in tune.bars]
        is_fit = (
            _FEWEST_BARS <= len(tune.bars) <= _MOST_BARS
            and len(tune.notes) in _NOTES
            and len(set(numbers)) == len(numbers)
            and not any(note.is_ornamented for note in tune.notes)
            and len(key_notes(tune)) >= 3
            and tune.title not in {one.title for one in found}
        )
        if is_fit:
            found.append(tune)
        if len(found) == count:
            return tuple(found)
    raise AssertionError("too few tunes")


def key_notes(tune: Tune) -> list[int]:
    """Plain notes that the key signature of the part, as the alto saxophone reads it, makes sharp or flat."""
    key = tune.key.transposed(ALTO.transposition)
    found = []
    for number, note in enumerate(tune.notes):
        written = ALTO.written(note.pitch)
        if written.alter and written.alter == key.alter(written.step % 7):
            found.append(number)
    return found


# Faults --------------------------------------------------------------------------------------------------------

Line = list[Tone]
Maker = Callable[[Line, Tune, Dice], tuple[Line, Fault]]


def _line(tune: Tune, rendition: Rendition | None) -> Line:
    plain = tune.notes if rendition is None else rendition.line
    notes = [replace(n, anchor=k) for k, n in enumerate(plain)] if rendition is None else plain
    tones = [Tone(s.onset, s.duration, s.midi, s.plain, is_grace=s.is_grace) for s in sounded(tune, notes)]
    return _stepped(_with_graces(tones))


def _with_graces(tones: Sequence[Tone]) -> Line:
    """Grace notes as long as a student plays them, before the beat, none before the note before has begun to sound."""
    line: Line = []
    for number in range(len(tones) - 1, -1, -1):
        tone = tones[number]
        if tone.is_grace and line:
            room = tones[number - 1].onset + _GRACE_TICKS / 2 if number else 0.0
            onset = max(line[-1].onset - _GRACE_TICKS, min(room, line[-1].onset - _GRACE_TICKS / 2))
            tone = replace(tone, onset=onset, duration=line[-1].onset - onset)
        line.append(tone)
    return line[::-1]


def _stepped(tones: Sequence[Tone]) -> Line:
    """Steps by the places in the tune."""
    found: Line = []
    for number, tone in enumerate(tones):
        found.append(replace(tone, step=tone.onset - tones[number - 1].onset if number else 0.0))
    return found


def _bars(tune: Tune) -> list[Bar]:
    return [bar for bar in tune.bars if bar.number]


def _middle(line: Line, tune: Tune, dice: Dice) -> int:
    """A place in the middle of the tune, inside a phrase."""
    starts = {phrase.first for phrase in phrases(tune)}
    places = [n for n in range(len(line) // 5, 4 * len(line) // 5) if line[n].plain not in starts]
    return dice.choice(places)


def _bar_number(tune: Tune, tone: Tone) -> int:
    return tune.bar_at(max(0, round(tone.onset))).number


def _plains(line: Line, places: Sequence[int]) -> tuple[int, ...]:
    """The plain notes of some tones, in order."""
    return tuple(sorted(plain for place in places if (plain := line[place].plain) is not None))


def no_fault(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    return line, Fault()


def _stopped(count: int) -> Maker:
    def make(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
        line, stops = list(line), []
        for turn in range(count):
            low, high = len(line) * (2 * turn + 1) // (2 * count + 1), len(line) * (2 * turn + 2) // (2 * count + 1)
            place = dice.randrange(max(low, 6), max(high, 7))
            seconds = dice.uniform(1.6, 4.0)
            line[place] = replace(line[place], pause_sec=seconds)
            stops.append((_bar_number(tune, line[place]), seconds))
        return line, Fault("stop" if count == 1 else "stops", stops=tuple(stops))

    return make


def _again(line: Line, tune: Tune, dice: Dice, start: int, broke_at: int, kind: str) -> tuple[Line, Fault]:
    """Break off after tone `broke_at`, and begin again with the first tone at or after tick `start`."""
    first = line[: broke_at + 1]
    landing = next(n for n, tone in enumerate(line) if tone.onset >= start)
    rest = list(line[landing:])
    rest[0] = replace(rest[0], step=first[-1].duration, pause_sec=dice.uniform(0.2, 1.4))
    bars = _bar_number(tune, line[broke_at]), _bar_number(tune, line[landing])
    return first + rest, Fault(kind, again=bars)


def begun_again(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """Near the end of a bar, that bar is begun again."""
    bars = _bars(tune)
    for _ in range(100):
        bar = dice.choice(bars[len(bars) // 4 : -2])
        inside = [n for n, tone in enumerate(line) if bar.start_ticks <= tone.onset < bar.end_ticks]
        if len(inside) >= 3:
            return _again(line, tune, dice, bar.start_ticks, inside[-1], "again")
    raise AssertionError(tune.title)


def begun_phrase(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """Two to four bars on, the player goes back to the beginning of the phrase or the tune."""
    starts = [tune.notes[phrase.first].onset_ticks for phrase in phrases(tune)]
    start = dice.choice(starts[: max(1, len(starts) - 2)])
    bar = tune.metre.bar_ticks
    inside = [n for n, tone in enumerate(line) if start + 1.5 * bar <= tone.onset < start + 3.5 * bar]
    return _again(line, tune, dice, start, dice.choice(inside), "again-far")


def _skips(count: int) -> Maker:
    def make(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
        bars = _bars(tune)
        first = dice.randrange(2, len(bars) - count - 1)
        start, end = bars[first].start_ticks, bars[first + count - 1].end_ticks
        kept = [tone for tone in line if not start <= tone.onset < end]
        found: Line = []
        for number, tone in enumerate(kept):
            jumps = number > 0 and kept[number - 1].onset < start <= tone.onset
            found.append(replace(tone, step=tone.step - 0) if not jumps else replace(tone, step=_gap(kept, number)))
        return found, Fault(
            "skip" if count == 1 else "skips", skipped=(bars[first].number, bars[first + count - 1].number)
        )

    def _gap(kept: Line, number: int) -> float:
        return kept[number - 1].duration

    return make


def _part(which: str) -> Maker:
    def make(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
        bars = _bars(tune)
        count = dice.randrange(len(bars) // 3, 2 * len(bars) // 3 + 1)
        first = (
            0
            if which == "first"
            else dice.randrange(1, len(bars) - count)
            if which == "middle"
            else len(bars) - count
        )
        start = tune.bars[0].start_ticks if first == 0 else bars[first].start_ticks
        end = bars[first + count - 1].end_ticks
        kept = [tone for tone in line if start <= tone.onset < end]
        numbers = _bar_number(tune, kept[0]), _bar_number(tune, kept[-1])
        return _stepped(kept), Fault(f"part-{which}", part=numbers)

    return make


def _moved(semitones: Sequence[int], count: int, kind: str) -> Maker:
    def make(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
        bars, away = _bars(tune), dice.choice(semitones)
        for _ in range(200):
            first = dice.randrange(1, len(bars) - count)
            start, end = bars[first].start_ticks, bars[first + count - 1].end_ticks
            inside = [tone for tone in line if start <= tone.onset < end]
            if len(inside) >= 4:
                break
        found = [replace(t, midi=t.midi + away) if start <= t.onset < end else t for t in line]
        return found, Fault(kind, moved=(bars[first].number, bars[first + count - 1].number, away))

    return make


def transposed(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    away = dice.choice([-9, -7, -2, 2, 3, 5, 7, 9])
    return [replace(tone, midi=tone.midi + away) for tone in line], Fault("transposed", semitones=away)


def other_octave(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    away = dice.choice([-12, 12])
    return [replace(tone, midi=tone.midi + away) for tone in line], Fault("octave", semitones=away)


def key_forgotten(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """Every note that the written key signature makes sharp or flat is played natural."""
    own = {number: ALTO.written(tune.notes[number].pitch).alter for number in key_notes(tune)}
    found = [replace(t, midi=t.midi - own.get(t.plain, 0)) if t.plain is not None else t for t in line]
    return found, Fault("key", key_forgotten=True, wrong=tuple(own))


def _wrong(count: int) -> Maker:
    def make(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
        places = sorted(dice.sample(range(2, len(line) - 2), count * 3))[::3]
        found = list(line)
        for place in places:
            around = {line[place - 1].midi, line[place + 1].midi}
            choices = [n for n in (-3, -2, -1, 1, 2, 3) if line[place].midi + n not in around]
            found[place] = replace(line[place], midi=line[place].midi + dice.choice(choices))
        wrong = _plains(line, places)
        return found, Fault("wrong" if count == 1 else "wrongs", wrong=wrong)

    return make


def other_tempo(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    ratio = dice.choice([0.6, 0.7, 0.78, 1.25, 1.35])
    return [replace(tone, pace=ratio) for tone in line], Fault("tempo", tempo_ratio=ratio)


def rushed(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    bars = _bars(tune)
    count = dice.choice([3, 4])
    first = dice.randrange(2, len(bars) - count - 1)
    pace = dice.choice([0.8, 1.22, 1.28])
    start, end = bars[first].start_ticks, bars[first + count - 1].end_ticks
    found = [replace(t, pace=pace) if start < t.onset <= end else t for t in line]
    return found, Fault("rush", pace=(bars[first].number, bars[first + count - 1].number, pace))


def dragged(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """From some bar on the tempo grows or falls steadily to the end."""
    bars = _bars(tune)
    first, goal = dice.randrange(1, len(bars) // 2), dice.choice([0.72, 0.78, 1.25, 1.35])
    start, end = bars[first].start_ticks, tune.duration_ticks
    found = [replace(t, pace=goal ** max(0.0, (t.onset - start) / (end - start))) for t in line]
    return found, Fault("drift", pace=(bars[first].number, bars[-1].number, goal), is_gradual=True)


def late_beat(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """The notes of one beat of the bar come late."""
    counts: dict[float, int] = {}
    for tone in line:
        beat = tune.beat_at(max(0, round(tone.onset)))[1]
        if beat == int(beat) and tone.plain is not None:
            counts[beat] = counts.get(beat, 0) + 1
    beat = dice.choice([beat for beat, count in counts.items() if count >= 6 and beat > 1])
    late = dice.uniform(0.075, 0.12)
    found = [replace(t, late_sec=late) if tune.beat_at(max(0, round(t.onset)))[1] == beat else t for t in line]
    return found, Fault("late", late=(beat, 1000 * late))


def _mistuned(low: float, high: float, kind: str) -> Maker:
    def make(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
        cents = dice.uniform(low, high)
        return [replace(tone, cents=tone.cents + cents) for tone in line], Fault(kind, cents=cents)

    return make


def flat_note(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    counts: dict[int, int] = {}
    for tone in line:
        counts[tone.midi] = counts.get(tone.midi, 0) + 1
    usual = [midi for midi, count in counts.items() if 4 <= count < len(line) / 3]
    midi, cents = dice.choice(usual), dice.choice([-1, 1]) * dice.uniform(26, 38)
    found = [replace(t, cents=t.cents + cents) if t.midi == midi else t for t in line]
    return found, Fault("note", flat_midi=(midi, cents))


def left_out(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """Four notes are not played; their time passes."""
    fit = [
        n
        for n in range(3, len(line) - 3)
        if line[n].midi not in (line[n - 1].midi, line[n + 1].midi) and line[n].plain is not None
    ]
    places: list[int] = []
    for place in dice.sample(fit, len(fit)):
        if len(places) < 4 and all(abs(place - other) > 2 for other in places):
            places.append(place)
    kept = [tone for n, tone in enumerate(line) if n not in places]
    return _stepped(kept), Fault("left-out", left_out=_plains(line, places))


def added(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """Four notes a third to a fifth off the tune, in the second half of longer notes."""
    fit = [n for n in range(2, len(line) - 2) if line[n].duration >= QUARTER / 2]
    places: list[int] = []
    for place in sorted(dice.sample(fit, min(len(fit), 8))):
        if len(places) < 4 and (not places or place > places[-1] + 2):
            places.append(place)
    found: Line = []
    extra = []
    for number, tone in enumerate(line):
        found.append(tone)
        if number in places:
            half = tone.duration / 2
            choices = [n for n in (-8, -6, 6, 8, 10) if tone.midi + n not in (line[number + 1].midi,)]
            midi = tone.midi + dice.choice(choices)
            found[-1] = replace(tone, duration=half)
            found.append(Tone(tone.onset + half, half, midi, None))
            extra.append((_bar_number(tune, tone), midi))
    return _stepped(found), Fault("added", added=tuple(extra))


def other_rhythm(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """The second of two notes comes half of the shorter one's length too early or late, in three places or more."""
    fit = []
    for n in range(3, len(line) - 3):
        short = min(line[n - 1].duration, line[n].duration)
        before = line[n].onset - line[n - 1].onset
        if short >= EIGHTH and before == line[n - 1].duration and line[n].plain is not None:
            fit.append(n)
    places: list[int] = []
    for place in dice.sample(fit, len(fit)):
        if len(places) < 4 and all(abs(place - other) > 3 for other in places):
            places.append(place)
    found = list(line)
    for place in places:
        short = min(line[place - 1].duration, line[place].duration)
        by = dice.choice([-1, 1]) * short / 2
        found[place] = replace(line[place], onset=line[place].onset + by, duration=line[place].duration - by)
        found[place - 1] = replace(line[place - 1], duration=line[place - 1].duration + by)
    return _stepped(found), Fault("rhythm", rhythm=_plains(line, places))


def swung(line: Line, tune: Tune, dice: Dice) -> tuple[Line, Fault]:
    """Eighths that are written even are played two to one."""
    ratio = dice.uniform(1.7, 2.2)
    share = ratio / (1 + ratio)

    def at(ticks: float) -> float:
        beat, inside = divmod(ticks, QUARTER)
        moved = inside * 2 * share if inside <= EIGHTH else QUARTER * share + (inside - EIGHTH) * 2 * (1 - share)
        return beat * QUARTER + moved

    found = [replace(t, onset=at(t.onset), duration=at(t.onset + t.duration) - at(t.onset)) for t in line]
    stepped = _stepped(found)
    return [replace(t, onset=o.onset) for t, o in zip(stepped, line, strict=True)], Fault("swing", swing=ratio)


FAULTS: Final[dict[str, Maker]] = {
    "stop": _stopped(1),
    "stops": _stopped(4),
    "again": begun_again,
    "again-far": begun_phrase,
    "skip": _skips(1),
    "skips": _skips(3),
    "part-first": _part("first"),
    "part-middle": _part("middle"),
    "part-last": _part("last"),
    "bar-octave": _moved((-12, 12), 1, "bar-octave"),
    "bars-octave": _moved((-12, 12), 3, "bars-octave"),
    "bars-moved": _moved((-2, -1, 2, 3, 5), 4, "bars-moved"),
    "octave": other_octave,
    "transposed": transposed,
    "key": key_forgotten,
    "wrong": _wrong(1),
    "wrongs": _wrong(4),
    "tempo": other_tempo,
    "rush": rushed,
    "drift": dragged,
    "late": late_beat,
    "flat": _mistuned(-68, -25, "flat"),
    "sharp": _mistuned(25, 60, "sharp"),
    "note": flat_note,
    "left-out": left_out,
    "added": added,
    "rhythm": other_rhythm,
    "swing": swung,
    "ornaments": no_fault,
    "none": no_fault,
    "as-asked": no_fault,
    "own": no_fault,
}
"""All kinds. `ornaments`, `as-asked` and `own` are made of an arrangement: some of its ornaments left out; all of it played
as it was asked; all of it played, and nothing asked. `none` is the plain tune, played well."""


def has_eighths(tune: Tune) -> bool:
    """True where enough eighths stand between the beats to tell swing by, and enough notes on beats."""
    off = sum(note.onset_ticks % QUARTER == EIGHTH for note in tune.notes)
    return tune.metre.beat_ticks == QUARTER and off >= 8


# Playing -------------------------------------------------------------------------------------------------------


def faulty_take(tune: Tune, kind: str, seed: int) -> Truth | None:
    """A take of a tune with a fault; None where the tune has no place for it."""
    dice = Dice(f"{tune.title}-{kind}-{seed}")
    if kind == "swing" and not has_eighths(tune):
        return None
    tempo = dice.uniform(76, 116)
    rendition = None
    fault = Fault(kind)
    if kind in ("ornaments", "as-asked", "own"):
        rendition = ornament(tune, Setting(Player.of("alto-sax", 3), tempo), only=HEARD, seed=seed)
        line, fault = _asked(tune, rendition, kind, dice)
    else:
        try:
            line, fault = FAULTS[kind](_line(tune, None), tune, dice)
        except (IndexError, ValueError):
            return None
    return _played(
        Truth(tune, tuple(line), replace(fault, kind=kind), tempo, dice.uniform(0.008, 0.02), seed, rendition)
    )


def _asked(tune: Tune, rendition: Rendition, kind: str, dice: Dice) -> tuple[Line, Fault]:
    figures = rendition.figures
    heard = [n for n, figure in enumerate(figures) if not figure.marks]
    missed: tuple[int, ...] = ()
    if kind == "ornaments":
        missed = tuple(sorted(dice.sample(heard, max(1, len(heard) // 2))))
    kept = tuple(figure for n, figure in enumerate(figures) if n not in missed)
    return _line(tune, replace(rendition, figures=kept)), Fault(kind, missed=missed)


def _played(truth: Truth) -> Truth:
    """Seconds: a tempo that wanders by 3 percent over the take, onsets off by the player's jitter."""
    dice = Dice(f"{truth.seed}-{truth.kind}-{truth.tune.title}-time")
    noise = np.random.default_rng(dice.randrange(2**30))
    walk = np.convolve(noise.normal(0, 1, 64), np.hanning(9), mode="same")
    walk = 0.03 * walk / np.abs(walk).max()
    onsets: list[float] = []
    offsets: list[float] = []
    now = 0.4
    tones = truth.tones
    total = sum(tone.step for tone in tones) or 1.0
    gone = 0.0
    for tone in tones:
        gone += tone.step
        wander = 1 + float(np.interp(gone / total, np.linspace(0, 1, 64), walk))
        seconds = 60 / truth.tempo / QUARTER / (tone.pace * wander)
        now += tone.step * seconds + tone.pause_sec
        onset = now + tone.late_sec + dice.gauss(0, truth.jitter_sec)
        if onsets:
            onset = max(onset, onsets[-1] + 0.03)
        onsets.append(onset)
        offsets.append(onset + max(0.04, tone.duration * seconds * dice.uniform(0.8, 0.98)))
    ends = [min(end, after - 0.005) for end, after in zip(offsets, [*onsets[1:], 1e9], strict=True)]
    own = dice.uniform(-7, 7)
    tones = tuple(replace(tone, cents=tone.cents + own + dice.gauss(0, 5)) for tone in tones)
    return replace(truth, tones=tones, onsets=tuple(onsets), offsets=tuple(ends))


def heard_perfectly(truth: Truth) -> Take:
    """The take as an ear without fault hears it: notes on the nearest semitone of the player's own tuning."""
    raw = [100.0 * (tone.midi - 69) + tone.cents for tone in truth.tones]
    tuning = float(np.angle(np.exp(2j * np.pi * np.array(raw) / 100).mean()) * 100 / (2 * np.pi))
    dice = Dice(truth.seed)
    notes = tuple(
        PlayedNote(
            round(onset, 4),
            round(offset, 4),
            round(cents, 1),
            69 + round((cents - tuning) / 100),
            -20.0 + dice.gauss(0, 3),
            Attack.TONGUED,
        )
        for onset, offset, cents in zip(truth.onsets, truth.offsets, raw, strict=True)
    )
    return Take(notes, notes[-1].offset_sec + 0.5, round(tuning, 1))


def fault_takes(half: Half, count: int, seed: int, kinds: Sequence[str] = tuple(FAULTS)) -> Iterator[Truth]:
    """Every kind of fault on every tune."""
    for kind in kinds:
        for tune in fault_tunes(half, count):
            take = faulty_take(tune, kind, seed)
            if take is not None:
                yield take
