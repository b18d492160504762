"""Listening to a take, in a process of its own: from a recording to what the page tells of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import isfinite
from pathlib import Path
from statistics import median
from typing import Final

from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.errors import FiorituraError
from fioritura.listening.align import Pass
from fioritura.listening.rows import Report as Heard
from fioritura.listening.rows import Status
from fioritura.listening.words import key_words
from fioritura.review.progress import measures_of
from fioritura.review.take_review import Review, review_take
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.tune import Tune
from fioritura.web.jobs import Bench, Made
from fioritura.web.take_models import (
    KEEPING,
    AdviceView,
    FigureResult,
    HappeningView,
    Report,
    SlipView,
    TakeFacts,
    Tendency,
    TimingView,
    TraceNote,
    Which,
)
from fioritura.words import Value, message, say, verbatim
from fioritura.words.stored import message_of

__all__ = ["Order", "PlayedBar", "listen", "reviewed"]

PlayedBar = tuple[float, float, int]
"""When a bar of the band begins and ends, in seconds, and its index in the tune."""

_FEWEST_BEATS: Final = 4
_FAR_BEATS: Final = 0.5
_MOST_POINTS: Final = 400
_STEP: Final = "listening"


@dataclass(frozen=True, slots=True)
class Order:
    """A recording to be listened to: the arrangement as text, and which line of it was to be played.

    Where it was played to a band or click, `bars` are the band's and `offset_sec` is where in their time the recording
    begins; `tempo` is in beats a minute.
    """

    path: Path
    arrangement: str
    line: Which
    tempo: float
    feel: str
    seconds: float
    offset_sec: float = 0.0
    bars: tuple[PlayedBar, ...] = ()
    name: str = ""


def listen(bench: Bench, order: Order) -> Made:
    """Hear a recording and report on it; the data are `facts` and `report`. A recording that is refused is deleted."""
    bench.tell(_STEP, 0, 1)
    try:
        review = reviewed(order)
    except FiorituraError:
        order.path.unlink(missing_ok=True)
        raise
    report = report_of(review, order)
    facts = _facts(review.report, report, order)
    bench.tell(_STEP, 1, 1)
    return Made({"facts": facts.model_dump(), "report": report.model_dump_json(context=KEEPING)})


def reviewed(order: Order) -> Review:
    """The review of a recording.

    Raises:
        ReadError: it is not one player's line.
        OtherTuneError: it is another tune.
    """
    arrangement = arrangement_from_json(order.arrangement)
    name = order.name or say(message("the-take"))
    tempo = order.tempo * arrangement.tune.metre.beat_ticks / QUARTER if order.bars else None
    if order.line == "ornamented":
        return review_take(order.path, asked=arrangement, tempo=tempo, name=name)
    tune, setting = arrangement.tune, arrangement.setting
    return review_take(order.path, tune, instrument=setting.instrument, level=setting.level, tempo=tempo, name=name)


def report_of(review: Review, order: Order) -> Report:
    """What the page tells of a review."""
    heard, tune = review.report, review.tune
    beat = tune.metre.beat_ticks / QUARTER
    return Report(
        headline=message_of(review.headline),
        praise=message_of(review.praise),
        happenings=[
            HappeningView(
                kind=one.kind.value,
                words=message_of(one.words),
                bars=list(one.bars),
                onset_sec=one.onset_sec,
                count=one.count,
                amount=one.amount,
                unit=one.unit.value if one.unit else "",
                confidence=one.confidence,
            )
            for one in heard.happenings
        ],
        advice=[
            AdviceView(
                subject=one.subject,
                title=message_of(one.title),
                finding=message_of(one.finding),
                practice=message_of(one.practice),
                bars=list(one.bars),
                technique=one.technique,
            )
            for one in review.advice
        ],
        remarks=[message_of(finding.advice) for finding in review.take.findings],
        key_words=key_words(heard.semitones) or verbatim(""),
        likeness=round(heard.likeness, 3),
        tuning_cents=heard.tuning_cents,
        level_db=heard.level.usual_db,
        level_range_db=heard.level.range_db,
        notes=heard.wanted,
        right=heard.right,
        figures=list(_figures(heard, tune)),
        slips=[
            SlipView(
                kind=slip.kind.value,
                bar=slip.bar,
                beat=slip.beat,
                where=slip.position.message.form("full"),
                passage=slip.passage,
                words=message_of(slip.words),
            )
            for slip in heard.slips
        ],
        by_note=[_tendency(row.name, row.count, row.cents) for row in heard.by_note],
        by_register=[_tendency(row.name, row.count, row.cents) for row in heard.by_register],
        timing=TimingView(
            tempo=round(heard.timing.quarters_per_minute / beat, 1),
            drift_percent=heard.timing.drift_percent,
            spread_ms=heard.timing.spread_ms,
            swing_ratio=heard.timing.swing_ratio,
            grace_ms=heard.timing.grace_ms,
            behind_band_ms=_behind_band_ms(heard, tune, order),
            beats=[_tendency(row.name, row.count, row.late_ms) for row in heard.timing.beats],
        ),
        passages=[list(_Trace(review, number).notes()) for number in range(heard.passages)],
    )


def _facts(heard: Heard, report: Report, order: Order) -> TakeFacts:
    done, missed = heard.count(Status.DONE), heard.count(Status.MISSED)
    return TakeFacts(
        line=order.line,
        tempo=order.tempo,
        quarters=heard.timing.quarters_per_minute,
        feel=order.feel,
        seconds=order.seconds,
        is_with_band=bool(order.bars),
        offset_sec=order.offset_sec,
        pitch_cents=measures_of(heard).get("pitch_cents", 0.0),
        spread_ms=heard.timing.spread_ms,
        done=done,
        asked=done + missed,
        added=heard.count(Status.ADDED),
        right=report.right,
        notes=report.notes,
    )


def _figures(heard: Heard, tune: Tune) -> Iterator[FigureResult]:
    for row in heard.figures:
        technique, onset_ticks = technique_named(row.technique), _ticks(tune, row.bar, row.beat)
        yield FigureResult(
            technique=technique.id,
            name=message("sentence", words=technique.name),
            label=message_of(technique.label),
            family=technique.family,
            status=row.status.value,
            bar=row.bar,
            beat=row.beat,
            where=row.position.message.form("full"),
            onset_ticks=onset_ticks,
            passage=row.passage,
            confidence=row.confidence,
            other=row.other,
        )


def _tendency(name: Value, count: int, value: float) -> Tendency:
    return Tendency(name=message("sentence", words=name), count=count, value=value)


def _ticks(tune: Tune, number: int, beat: float) -> int:
    """Where a beat of the bar with a number lies, the first one of that number."""
    bar = next(bar for bar in tune.bars if bar.number == number)
    return bar.start_ticks + round((beat - 1) * bar.metre.beat_ticks) - bar.metre_offset_ticks


def _behind_band_ms(heard: Heard, tune: Tune, order: Order) -> float | None:
    """Median lateness of the notes on a beat against the band's own beat."""
    late = []
    for note in heard.notes:
        written = tune.notes[note.plain]
        if note.beat != int(note.beat):
            continue
        bar = tune.bar_at(written.onset_ticks)
        share = (written.onset_ticks - bar.start_ticks) / bar.duration_ticks
        onset = note.onset_sec + order.offset_sec
        times = [s + share * (e - s) for s, e, index in order.bars if tune.bars[index].number == bar.number]
        nearest = min((onset - time for time in times), key=abs, default=None)
        if nearest is not None and abs(nearest) < _FAR_BEATS * 60 / order.tempo:
            late.append(1000 * nearest)
    return round(median(late), 1) if len(late) >= _FEWEST_BEATS else None


class _Trace:
    """The played notes of one passage, as they are drawn over the printed line."""

    def __init__(self, review: Review, number: int) -> None:
        self.review, self.naming = review, review.naming
        self.alignment = review.naming.alignment
        passes = [one for one in self.alignment.passes if one.spans]
        self.one: Pass = passes[number]
        standing = self.naming.standing[number]
        self.plain: Mapping[int, int] = {event: plain for plain, event in standing.items()}
        self.figures = [one for one in self.naming.figures if one.passage == number + 1]

    def notes(self) -> Iterator[TraceNote]:
        """In order of onset."""
        wrong = {slip.event for slip in self.naming.slips if slip.event is not None}
        inside = {event for figure in self.figures for event in figure.events}
        for place in range(len(self.one.ticks)):
            event = self.one.first_event + place
            pitch, plain = self._pitch(event), self.plain.get(event)
            heard = self.alignment.events[event]
            is_right = plain is not None and self.review.tune.notes[plain].pitch.midi == self._midi(event)
            is_slip = event in wrong or (plain is not None and not is_right)
            yield TraceNote(
                start_ticks=round(float(self.one.ticks[place]), 1),
                end_ticks=round(float(self.one.end_ticks[place]), 1),
                onset_sec=round(heard.onset, 3),
                end_sec=round(heard.end, 3),
                step=self.review.instrument.written(pitch).step,
                kind="figure" if event in inside else "wrong" if is_slip else "right" if is_right else "added",
                name=self.review.instrument.written(pitch).message,
                contour=self._contour(event),
            )

    def _midi(self, event: int) -> int:
        """The pitch at the tune's own height."""
        return self.alignment.events[event].midi - self.alignment.semitones

    def _pitch(self, event: int) -> Pitch:
        """As it is printed where it is printed, else as the key spells it."""
        tune, midi, plain = self.review.tune, self._midi(event), self.plain.get(event)
        if plain is not None and tune.notes[plain].pitch.midi == midi:
            return tune.notes[plain].pitch
        for named in self.figures:
            if event in named.events and named.figure is not None:
                for note in named.figure.notes:
                    if note.pitch.midi == midi:
                        return note.pitch
                for grace in named.figure.graces:
                    if grace.midi == midi:
                        return grace
        ticks = int(self.one.ticks[event - self.one.first_event])
        return tune.bar_at(max(0, ticks)).key.spell(midi)

    def _contour(self, event: int) -> list[int]:
        """Cents against the equal-tempered pitch on the player's own A."""
        note = self.review.take.notes[self.alignment.events[event].source]
        zero = 100.0 * (note.midi - 69) + self.review.take.tuning_cents
        points = [cents for cents in note.contour if isfinite(cents)] or [note.pitch_cents] * 2
        stride = -(-len(points) // _MOST_POINTS)
        return [round(cents - zero) for cents in points[::stride]]
