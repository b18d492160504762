"""What happened in time: the tempo and its changes, late notes, another rhythm, swing, unsteady beats and figures."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import exp
from statistics import median
from typing import Final

from fioritura.listening.course import Bend, swung_onset
from fioritura.listening.happening import Happening, Kind, Unit
from fioritura.listening.material import Material
from fioritura.listening.words import bar_named, bars_from_to, bars_named
from fioritura.techniques.grace import LOWER_GRACE_SEMITONE
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.words import Message, message

__all__ = ["told_time"]

_TEMPO_SHARE: Final = 0.12
_LATE_MS: Final = 40.0
_LATE_COUNT: Final = 4
_SPREAD_MS: Final = 35.0
_GRACE_MS: Final = 130.0
_UNEVEN_PERCENT: Final = 30.0
_EVEN_SWING: Final = 1.1
_UNASKED_SWING: Final = 1.3
_FEWEST_EIGHTHS: Final = 6
_FASTEST_SWING: Final = 200.0
_OTHER_PLACE: Final = 0.18
"""In quarters: a note so far from its place is in another rhythm."""
_IN_PLACE: Final = 0.12
_SHORT_SHARE: Final = 0.3


def told_time(of: Material) -> Iterator[Happening]:
    """The happenings of a take that concern time."""
    bend = of.course.bend()
    yield from _tempo(of, bend)
    if bend:
        yield _bent(of, bend)
    late = list(_late(of))
    yield from late
    yield from _rhythm(of, late)
    yield from _swing(of)
    yield from _unsteady(of, bool(late))
    yield from _figures(of)


def _tempo(of: Material, bend: Bend | None) -> Iterator[Happening]:
    played, asked = of.report.timing.quarters_per_minute, of.asked_tempo
    if bend:
        played = 60 * bend.ticks_per_sec / QUARTER
    if asked is None or not of.report.notes or abs(played / asked - 1) < _TEMPO_SHARE:
        return
    beat = of.tune.metre.beat_ticks / QUARTER
    way = "faster" if played > asked else "slower"
    yield Happening(
        Kind.TEMPO,
        message("happened-tempo", played=round(played / beat), asked=round(asked / beat), way=way),
        message("advice-tempo", way=way, asked=round(asked / beat)),
        weight=0.42,
        confidence=min(1.0, 0.6 + abs(played / asked - 1)),
        amount=round(100 * (played / asked - 1), 1),
        unit=Unit.PERCENT,
    )


def _bent(of: Material, bend: Bend) -> Happening:
    percent = 100 * (bend.ratio - 1)
    way = "faster" if percent > 0 else "slower"
    bars = bars_from_to(bend.first, bend.last)
    amount = round(abs(percent))
    if bend.is_gradual:
        words = message("happened-drift", bar=bar_named(bend.first), percent=amount, way=way)
    else:
        words = message("happened-span", bars=bars, percent=amount, way=way)
    return Happening(
        Kind.DRIFT if bend.is_gradual else Kind.SPAN,
        words,
        message("advice-drift", way=way) if bend.is_gradual else message("advice-span", way=way, bars=bars),
        weight=min(0.8, 0.4 + abs(percent) / 60),
        confidence=1 / (1 + exp(-(bend.gain - 4) / 3)),
        bars=tuple(bar.number for bar in of.tune.bars if bend.first <= bar.number <= bend.last),
        amount=round(percent, 1),
        unit=Unit.PERCENT,
    )


def _late(of: Material) -> Iterator[Happening]:
    """The beat whose notes come later or earlier than those of the other beats, if one does."""
    by_beat: dict[int, list[float]] = {}
    for note in of.report.notes:
        if note.late_ms is not None and note.beat == int(note.beat):
            by_beat.setdefault(int(note.beat), []).append(note.late_ms)
    found = []
    for beat, late in by_beat.items():
        others = [ms for other, some in by_beat.items() if other != beat for ms in some]
        if len(late) < _LATE_COUNT or len(others) < _LATE_COUNT:
            continue
        usual = median(others)
        away = median(late) - usual
        share = sum((ms - usual) * (1 if away > 0 else -1) > abs(away) / 2 for ms in late) / len(late)
        if abs(away) >= _LATE_MS and share >= 0.7:
            found.append((abs(away), away, beat, len(late), share))
    if not found:
        return
    size, away, beat, count, share = max(found)
    side = "late" if away > 0 else "early"
    beats = message("beat-name", number=beat)
    yield Happening(
        Kind.LATE,
        message("happened-late", beats=beats, ms=round(size), side=side, count=count),
        message("advice-late", beats=beats, side=side),
        weight=min(0.75, 0.3 + size / 250),
        confidence=min(1.0, 0.3 + size / 150 + 0.3 * (share - 0.7)),
        bars=(),
        count=count,
        amount=round(away, 1),
        unit=Unit.MILLISECONDS,
    )


@dataclass(frozen=True, slots=True)
class _Displaced:
    plain: int
    quarters: float
    onset_sec: float
    beat: float


def _displaced(of: Material) -> Iterator[_Displaced]:
    """Notes in another place of the bar, between two that are in theirs."""
    notes, share = of.tune.notes, of.naming.long_share
    passes = [one for one in of.naming.alignment.passes if one.spans]
    stopped = {(stop.passage, plain) for stop in of.course.stops for plain in (stop.plain, stop.following)}
    figures = [one for one in of.naming.figures if (one.technique, one.anchors[0]) in of.shown]
    elsewhere = stopped | {(one.passage, plain + by) for one in figures for plain in one.anchors for by in (0, 1)}
    for passage, (one, standing) in enumerate(zip(passes, of.naming.standing, strict=True), start=1):
        away = {
            plain: (float(one.ticks[event - one.first_event]) - swung_onset(of.tune, plain, share)) / QUARTER
            for plain, event in standing.items()
            if (passage, plain) not in of.free
        }
        for plain, quarters in away.items():
            before, after = away.get(plain - 1), away.get(plain + 1)
            if before is None or after is None or (passage, plain) in elsewhere:
                continue
            short = min(
                notes[plain].onset_ticks - notes[plain - 1].onset_ticks,
                notes[plain + 1].onset_ticks - notes[plain].onset_ticks,
            )
            by = quarters - (before + after) / 2
            is_far = abs(by) >= max(_OTHER_PLACE, _SHORT_SHARE * short / QUARTER)
            if is_far and max(abs(before), abs(after)) < max(_IN_PLACE, abs(by) / 2):
                onset = of.onset_sec(standing[plain])
                yield _Displaced(plain, by, onset, of.tune.beat_at(notes[plain].onset_ticks)[1])


def _rhythm(of: Material, late: list[Happening]) -> Iterator[Happening]:
    found = list(_displaced(of))
    if late:
        told = late[0].words["beats"]
        beat = told["number"] if isinstance(told, Message) else None
        found = [one for one in found if one.beat != beat]
    if not found:
        return
    plains = [one.plain for one in found]
    bars = tuple(dict.fromkeys(of.bar(plain) for plain in plains))
    if len(found) == 1:
        place = of.tune.position_at(of.tune.notes[plains[0]].onset_ticks)
        side = "late" if found[0].quarters > 0 else "early"
        words = message("happened-rhythm", where=place, side=side)
    else:
        words = message("happened-rhythms", count=len(found), bars=bars_named(bars))
    yield Happening(
        Kind.RHYTHM,
        words,
        message("advice-rhythm", bar=bar_named(bars[0])),
        weight=min(0.8, 0.5 + 0.06 * len(found)),
        confidence=min(1.0, 0.25 + 0.15 * len(found) + max(abs(one.quarters) for one in found) - _OTHER_PLACE),
        bars=bars,
        onset_sec=round(found[0].onset_sec, 2),
        count=len(found),
    )


def _has_eighths(of: Material) -> bool:
    """True where enough notes fall between the beats to tell swing by."""
    off = sum(of.tune.notes[row.plain].onset_ticks % QUARTER == EIGHTH for row in of.report.notes)
    return off >= _FEWEST_EIGHTHS


def _swing(of: Material) -> Iterator[Happening]:
    timing = of.report.timing
    is_slow = timing.quarters_per_minute < _FASTEST_SWING
    if of.feel == "swing" and is_slow and _has_eighths(of) and timing.swing_ratio < _EVEN_SWING:
        words = message("advice-swing-finding", ratio=timing.swing_ratio)
        cure = message("advice-swing", usual=1.3)
        yield Happening(Kind.EVEN, words, cure, 0.45, 0.8, amount=timing.swing_ratio, unit=Unit.RATIO)
    if of.feel == "straight" and timing.swing_ratio > _UNASKED_SWING:
        words = message("advice-straight-finding", ratio=timing.swing_ratio)
        sure = min(1.0, 0.75 + 0.5 * (timing.swing_ratio - _UNASKED_SWING))
        yield Happening(
            Kind.SWUNG, words, message("advice-straight"), 0.6, sure, amount=timing.swing_ratio, unit=Unit.RATIO
        )


def _unsteady(of: Material, is_late: bool) -> Iterator[Happening]:
    spread = of.report.timing.spread_ms
    if spread < _SPREAD_MS or is_late:
        return
    yield Happening(
        Kind.UNSTEADY,
        message("advice-beat-finding", ms=round(spread)),
        message("advice-beat"),
        weight=min(0.7, spread / 110),
        confidence=min(1.0, 0.4 + spread / 100),
        amount=spread,
        unit=Unit.MILLISECONDS,
    )


def _figures(of: Material) -> Iterator[Happening]:
    grace = of.report.timing.grace_ms
    if grace is not None and grace > _GRACE_MS:
        yield Happening(
            Kind.GRACES,
            message("advice-graces-finding", ms=round(grace)),
            message("advice-graces"),
            weight=min(0.55, 0.3 + (grace - _GRACE_MS) / 400),
            confidence=0.8,
            technique=LOWER_GRACE_SEMITONE.id,
            amount=grace,
            unit=Unit.MILLISECONDS,
        )
    worst = max(of.report.evenness, key=lambda row: row.spread_percent, default=None)
    if worst and worst.spread_percent > _UNEVEN_PERCENT:
        bar, percent = bar_named(worst.bar), round(worst.spread_percent)
        yield Happening(
            Kind.UNEVEN,
            message("advice-evenness-finding", bar=bar, percent=percent),
            message("advice-evenness", name=worst.name),
            weight=min(0.5, worst.spread_percent / 90),
            confidence=0.8,
            bars=(worst.bar,),
            amount=worst.spread_percent,
            unit=Unit.PERCENT,
            technique=worst.technique,
        )
