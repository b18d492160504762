"""What happened to the tune as a whole: stops, bars begun again or skipped, only a part, another octave or key."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise
from typing import Final

from fioritura.listening.course import Step
from fioritura.listening.happening import Happening, Kind, Unit
from fioritura.listening.material import Material
from fioritura.listening.words import bar_named, bars_from_to, bars_named, distance_words, key_words
from fioritura.words import message

__all__ = ["FEWEST_UNPLAYED", "told_form"]

FEWEST_UNPLAYED: Final = 3
"""A last note alone may be overheard; so many that are missing at the ends were not played."""
_NEAR_JUMP: Final = 2


def told_form(of: Material) -> Iterator[Happening]:
    """The happenings of a take that concern its form."""
    yield from _stops(of)
    yield from _again(of)
    yield from _skipped(of)
    yield from _part(of)
    yield from _off_as_a_whole(of)
    yield from _off_in_part(of)


def _stops(of: Material) -> Iterator[Happening]:
    stops = [stop for stop in of.course.stops if not _is_beside_jump(of, stop)]
    if not stops:
        return
    seconds = sum(stop.waited_sec for stop in stops)
    bars = tuple(dict.fromkeys(of.bar(stop.following) for stop in stops))
    around = bars_from_to(of.bar(stops[0].plain), of.bar(stops[0].following))
    where = around if len(stops) == 1 else bars_named(bars)
    yield Happening(
        Kind.STOP,
        message("happened-stop", count=len(stops), seconds=round(seconds, 1), bars=where),
        message("advice-stop", bars=where),
        weight=min(0.95, 0.7 + 0.04 * seconds),
        confidence=min(1.0, 0.5 + 0.5 * _stop_strength(stops)),
        bars=bars,
        onset_sec=round(stops[0].onset_sec, 2),
        count=len(stops),
        amount=round(seconds, 1),
        unit=Unit.SECONDS,
    )


def _is_beside_jump(of: Material, stop: Step) -> bool:
    """True for the breath before going back, which may be heard a note or two from where it was."""
    standing = of.naming.standing
    passes = [one for one in of.naming.alignment.passes if one.spans]
    landed = stop.passage > 1 and not passes[stop.passage - 1].is_expected
    leaves = stop.passage < len(passes) and not passes[stop.passage].is_expected
    own = sorted(standing[stop.passage - 1])
    is_first = landed and sum(plain < stop.following for plain in own) <= _NEAR_JUMP
    return is_first or (leaves and sum(plain > stop.plain for plain in own) <= _NEAR_JUMP)


def _stop_strength(stops: Sequence[Step]) -> float:
    return max(min(stop.waited_sec - 0.5, stop.waited_sec * stop.ticks_per_sec / 1680 - 0.6) for stop in stops)


def _jumps(of: Material) -> Iterator[tuple[int, int, float]]:
    """(last plain note before, first after, second) of each jump that nothing asks for."""
    passes = [one for one in of.naming.alignment.passes if one.spans]
    for (_, standing), (after, landing) in pairwise(zip(passes, of.naming.standing, strict=True)):
        if not after.is_expected and standing and landing:
            yield max(standing), min(landing), of.onset_sec(landing[min(landing)])


def _again(of: Material) -> Iterator[Happening]:
    jumps = [(last, first, sec) for last, first, sec in _jumps(of) if first <= last]
    if not jumps:
        return
    last, first, sec = jumps[0]
    start, end = of.bar(first), of.bar(last)
    landed = tuple(dict.fromkeys(of.bar(first) for _, first, _ in jumps))
    if len(jumps) > 1:
        words = message("happened-again-often", count=len(jumps), bars=bars_named(landed))
    elif start == end:
        words = message("happened-again", bar=bar_named(start))
    else:
        words = message("happened-again-from", bar=bar_named(end), bars=bars_from_to(start, end))
    bars = tuple(dict.fromkeys(bar for last, first, _ in jumps for bar in of.bars(range(first, last + 1))))
    yield Happening(
        Kind.AGAIN,
        words,
        message("advice-again", bar=bar_named(end)),
        weight=0.85,
        confidence=min(1.0, 0.5 + 0.1 * max(last - first + 1 for last, first, _ in jumps)),
        bars=bars,
        onset_sec=round(sec, 2),
        count=len(jumps),
    )


def _skipped(of: Material) -> Iterator[Happening]:
    gaps = [(last + 1, first, sec) for last, first, sec in _jumps(of) if first > last + 1]
    gaps += [
        (step.plain + 1, step.following, step.onset_sec + step.seconds)
        for step in of.course.steps
        if step.following > step.plain + 1 and _is_passed_over(of, step)
    ]
    found = [(of.whole_bars(first, stop), stop - first, sec) for first, stop, sec in gaps]
    found = [(bars, count, sec) for bars, count, sec in found if bars]
    if not found:
        return
    bars = tuple(bar for some, _, _ in found for bar in some)
    count = sum(count for _, count, _ in found)
    where = bars_from_to(bars[0], bars[-1]) if len(found) == 1 else bars_named(bars)
    yield Happening(
        Kind.SKIPPED,
        message("happened-skipped", count=len(bars), bars=where),
        message("advice-skipped", bars=where),
        weight=0.85,
        confidence=min(1.0, 0.5 + 0.1 * count),
        bars=bars,
        onset_sec=round(found[0][2], 2),
        count=len(bars),
    )


def _is_passed_over(of: Material, step: Step) -> bool:
    """True where the time of the notes left out did not pass either."""
    notes = of.tune.notes
    left_out = notes[step.following].onset_ticks - notes[step.plain + 1].onset_ticks
    return -step.waited_sec * step.ticks_per_sec > left_out / 2


def _part(of: Material) -> Iterator[Happening]:
    played = [plain for standing in of.naming.standing for plain in standing]
    if not played:
        return
    first, last, count = min(played), max(played), len(of.tune.notes)
    missing = (*of.whole_bars(0, first), *of.whole_bars(last + 1, count))
    if not missing or first + count - 1 - last < FEWEST_UNPLAYED:
        return
    bars = of.bars(range(first, last + 1))
    yield Happening(
        Kind.PART,
        message("happened-part", bars=bars_from_to(bars[0], bars[-1]), last=str(of.tune.bars[-1].number)),
        message("advice-part", missing=bars_named(missing) if len(missing) < 3 else message("the-rest")),
        weight=0.6,
        confidence=min(1.0, 0.6 + 0.1 * len(missing)),
        bars=bars,
        count=len(bars),
    )


def _off_as_a_whole(of: Material) -> Iterator[Happening]:
    semitones = of.report.semitones
    words = key_words(semitones)
    if words is None:
        return
    is_octave = semitones % 12 == 0
    yield Happening(
        Kind.OCTAVE if is_octave else Kind.TRANSPOSED,
        message("happened-off", words=words),
        message("advice-octave-whole") if is_octave else message("advice-transposed"),
        weight=0.5 if is_octave else 0.95,
        confidence=min(1.0, of.naming.alignment.likeness + 0.1),
        amount=float(semitones),
        unit=Unit.SEMITONES,
    )


def _off_in_part(of: Material) -> Iterator[Happening]:
    shifts = of.naming.alignment.shifts
    plain_of = {event: plain for standing in of.naming.standing for plain, event in standing.items()}
    is_moved = bool(shifts) and not of.naming.alignment.is_unsigned
    line = [(shifts[event], event, plain) for event, plain in sorted(plain_of.items())] if is_moved else []
    for semitones, group in groupby(line, key=lambda each: each[0]):
        if not semitones:
            continue
        notes = list(group)
        bars = tuple(dict.fromkeys(of.bar(plain) for _, _, plain in notes))
        where = bars_from_to(bars[0], bars[-1])
        is_octave = semitones % 12 == 0
        side = "higher" if semitones > 0 else "lower"
        yield Happening(
            Kind.OCTAVE if is_octave else Kind.TRANSPOSED,
            message("happened-off-bars", bars=where, distance=distance_words(semitones), side=side, count=len(bars)),
            message("advice-octave" if is_octave else "advice-transposed-bars", bars=where),
            weight=0.8,
            confidence=min(1.0, 0.5 + 0.1 * len(notes)),
            bars=bars,
            onset_sec=of.onset_sec(notes[0][1]),
            count=len(notes),
            amount=float(semitones),
            unit=Unit.SEMITONES,
        )
