"""What happened to single notes: the key signature, wrong notes, notes left out and added, ornaments."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import mean
from typing import Final

from fioritura.listening.happening import LEAST, Happening, Kind
from fioritura.listening.material import Material
from fioritura.listening.naming import Slip, SlipKind
from fioritura.listening.rows import FigureRow, SlipRow, Status
from fioritura.listening.words import bar_named, bars_named, in_a_row, slip_words, without_signature
from fioritura.techniques.table import technique_named
from fioritura.theory.pitch import NoteName
from fioritura.words import Message, Value, message

__all__ = ["told_notes"]

_FORGOTTEN_SHARE: Final = 0.7
_FEWEST_FORGOTTEN: Final = 2
_EXAMPLES: Final = 3
_EACH: Final = 0.7

Natural = tuple[int, int, int]
"""Passage, plain note and event of a note that was played without its accidental."""
Forgotten = dict[tuple[NoteName, NoteName], list[Natural]]


def told_notes(of: Material) -> Iterator[Happening]:
    """The happenings of a take that concern notes and ornaments."""
    forgotten = _forgotten(of)
    if forgotten:
        yield _key(of, forgotten)
    explained = {(passage, plain) for some in forgotten.values() for passage, plain, _ in some}
    wrong = [(row, slip) for row, slip in of.slips(SlipKind.WRONG) if (slip.passage, slip.plain) not in explained]
    if wrong:
        yield _told(of, Kind.WRONG, wrong, "happened-wrong", "advice-wrong", 0.6)
    left_out = [(row, slip) for row, slip in of.slips(SlipKind.LEFT_OUT) if _was_passed(of, slip)]
    if left_out:
        yield _told(of, Kind.LEFT_OUT, left_out, "happened-left-out", "advice-left-out", 0.58)
    added = of.slips(SlipKind.ADDED)
    if added:
        yield _told(of, Kind.ADDED, added, "happened-added", "advice-added", 0.5)
    yield from _ornaments(of)


def _forgotten(of: Material) -> Forgotten:
    """Notes that were played without the accidental that the key signature gives them, by (written, played) name, where
    nearly all notes of that name were."""
    alignment = of.naming.alignment
    unsigned = list(without_signature(of.tune, of.instrument))
    found: dict[NoteName, list[Natural | None]] = {}
    for passage, standing in enumerate(of.naming.standing, start=1):
        for plain, event in sorted(standing.items()):
            pitch = of.tune.notes[plain].pitch
            if unsigned[plain] == pitch.midi:
                continue
            is_natural = alignment.events[event].midi - alignment.semitones == unsigned[plain]
            found.setdefault(of.as_read(pitch).name, []).append((passage, plain, event) if is_natural else None)
    return {
        (name, NoteName(name.letter)): [natural for natural in notes if natural is not None]
        for name, notes in found.items()
        if len(notes) >= _FEWEST_FORGOTTEN and sum(one is not None for one in notes) >= _FORGOTTEN_SHARE * len(notes)
    }


def _key(of: Material, forgotten: Forgotten) -> Happening:
    naturals = sorted(one for some in forgotten.values() for one in some)
    written: tuple[Value, ...] = tuple(name for name, _ in forgotten)
    played: tuple[Value, ...] = tuple(name for _, name in forgotten)
    bars = tuple(dict.fromkeys(of.bar(plain) for _, plain, _ in naturals))
    return Happening(
        Kind.KEY,
        message("happened-key", written=written, played=played, count=len(naturals)),
        message("advice-key", written=written),
        weight=0.95,
        confidence=min(1.0, 0.5 + 0.15 * len(naturals)),
        bars=bars,
        onset_sec=of.onset_sec(naturals[0][2]),
        count=len(naturals),
    )


def _was_passed(of: Material, slip: Slip) -> bool:
    """False for a note left out with whole bars, which is said of the bars."""
    assert slip.plain is not None
    standing = of.naming.standing[slip.passage - 1] if slip.passage <= len(of.naming.standing) else {}
    before = max((plain for plain in standing if plain < slip.plain), default=None)
    after = min((plain for plain in standing if plain > slip.plain), default=None)
    if before is None or after is None:
        return not of.whole_bars(0 if before is None else before + 1, len(of.tune.notes) if after is None else after)
    passed = next((step for step in of.course.steps if step.passage == slip.passage and step.plain == before), None)
    if passed is None or not of.whole_bars(before + 1, after):
        return True
    return -passed.waited_sec * passed.ticks_per_sec <= 0.5 * passed.ticks


def _told(
    of: Material, kind: Kind, found: Sequence[tuple[SlipRow, Slip]], id: str, cure: str, weight: float
) -> Happening:
    slips = [slip for _, slip in found]
    wanted = of.report.wanted
    counts: dict[int, int] = {}
    for slip in slips:
        counts[slip.bar] = counts.get(slip.bar, 0) + 1
    worst = max(counts, key=lambda bar: counts[bar])
    examples = in_a_row([_there(of, row, slip) for row, slip in found[:_EXAMPLES]])
    more = len(slips) - min(len(slips), _EXAMPLES)
    return Happening(
        kind,
        message(id, count=len(slips), wanted=wanted, examples=examples, more=more),
        message(cure, bar=bar_named(worst)),
        weight=min(0.9, weight + 2.0 * len(slips) / max(wanted, 1)),
        confidence=_together([row.confidence for row, _ in found]),
        bars=(worst, *sorted(set(counts) - {worst})),
        onset_sec=_onset(of, slips[0]),
        count=len(slips),
    )


def _together(confidences: Sequence[float]) -> float:
    """How sure several slips are together: more so than each alone."""
    usual = mean(confidences)
    return float(usual + (1 - usual) * (1 - _EACH ** (len(confidences) - 1)))


def _there(of: Material, row: SlipRow, slip: Slip) -> Message:
    words = slip_words(of.naming.alignment, slip, of.instrument)
    if slip.kind is not SlipKind.WRONG:
        words = message("note-itself", note=words["written" if slip.kind is SlipKind.LEFT_OUT else "played"])
    return message("slip-there", words=words, where=row.position)


def _onset(of: Material, slip: Slip) -> float | None:
    return None if slip.event is None else of.onset_sec(slip.event)


def _ornaments(of: Material) -> Iterator[Happening]:
    missed: dict[str, list[FigureRow]] = {}
    for row in of.report.figures:
        if row.status is Status.MISSED and row.confidence >= LEAST:
            missed.setdefault(row.technique, []).append(row)
    for id, rows in missed.items():
        technique = technique_named(id)
        asked = len(rows) + sum(row.status is Status.DONE and row.technique == id for row in of.report.figures)
        bars = tuple(sorted({row.bar for row in rows}))
        yield Happening(
            Kind.ORNAMENTS,
            message("happened-ornament", name=technique.name, missed=len(rows), asked=asked, bars=bars_named(bars)),
            message("advice-ornament", name=technique.name, cure=technique.cure),
            weight=0.4 + 0.1 * min(len(rows), 3) + 0.1 * len(rows) / asked,
            confidence=mean(row.confidence for row in rows),
            bars=bars,
            count=len(rows),
            technique=id,
        )
