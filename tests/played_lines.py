"""Played lines with their truth, for the tests and the benchmark of alignment and naming.

Tunes are those of music21's public ABC books, cut in two halves by their place in the books: settings of the program
may be chosen on the train half alone, measures are taken on the test half. A line is a rendition by the arranger, its
notes disturbed and timed as a player might; or another setting of the tune from another book.
"""

from __future__ import annotations

import random
import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations
from typing import Final, Literal

import numpy as np

from fioritura.arrange.arranger import ornament
from fioritura.arrange.harmonise import harmonise
from fioritura.arrange.prepare import fitted, fitting_octaves
from fioritura.arrange.rendition import Rendition
from fioritura.errors import FiorituraError
from fioritura.listening.event import GRACE_TICKS, Event
from fioritura.listening.notes import Attack, Inflection, InflectionKind, PlayedNote, Take, Vibrato
from fioritura.notation.abc.reader import AbcEntry
from fioritura.phrase import phrases
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.sound.perform import perform
from fioritura.theory.metre import QUARTER, SIXTEENTH
from fioritura.tune import Mark, Note, Tune
from tests.test_corpus import entries

Half = Literal["train", "test"]

ALTO: Final = instrument_named("alto-sax")
TEMPOS: Final = (60.0, 80.0, 100.0, 120.0, 160.0, 200.0)
_FEWEST_NOTES: Final = 16
_INFLECTIONS: Final = {
    Mark.SCOOP: InflectionKind.SCOOP,
    Mark.FALL: InflectionKind.FALL,
    Mark.DOIT: InflectionKind.DOIT,
}


# Tunes and renditions ---------------------------------------------------------------------------------------------


@cache
def half_of(half: Half) -> tuple[AbcEntry, ...]:
    return entries()[0 if half == "train" else 1 :: 2]


def tunes(half: Half, count: int, seed: int = 1) -> Iterator[Tune]:
    """Tunes of one half, with chords, in an octave that the alto saxophone reaches; always the same ones."""
    dice = random.Random(seed)
    while count:
        try:
            tune = dice.choice(half_of(half)).read(irregular="keep")
        except FiorituraError:
            continue
        octaves = fitting_octaves(tune, ALTO)
        if octaves and len(tune.notes) >= _FEWEST_NOTES:
            yield fitted(harmonise(tune), ALTO, octaves[0])
            count -= 1


def rendition_of(tune: Tune, number: int) -> Rendition:
    """Levels 1 to 5, both idioms, both feels and all tempos in turn."""
    dice = random.Random(number)
    setting = Setting(
        Player.of("alto-sax", 1 + number % 5),
        dice.choice(TEMPOS),
        "swing" if number % 3 == 0 else "straight",
        "folk" if number % 2 else "jazz",
    )
    return ornament(tune, setting, seed=number if dice.random() < 0.5 else 0)


# Lines with their truth -------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Sounded:
    """One note of a line, in ticks or seconds; `plain` is the plain note that it is."""

    onset: float
    duration: float
    midi: int
    plain: int | None = None
    is_grace: bool = False


def sounded(tune: Tune, line: Sequence[Note]) -> list[Sounded]:
    """A rendition's line, grace notes before their main notes; the first note of a plain note's pitch,
    in any octave, stands for it."""
    seen: set[int] = set()
    found = []
    for note in line:
        count = len(note.graces)
        for context, grace in enumerate(note.graces):
            onset = note.onset_ticks - (count - context) * GRACE_TICKS
            found.append(Sounded(onset, GRACE_TICKS, grace.midi, is_grace=True))
        anchor = note.anchor
        if anchor is not None and (anchor in seen or (tune.notes[anchor].pitch.midi - note.pitch.midi) % 12):
            anchor = None
        if anchor is not None:
            seen.add(anchor)
        found.append(Sounded(note.onset_ticks, note.duration_ticks, note.pitch.midi, anchor))
    return found


def plainly(tune: Tune) -> list[Sounded]:
    """The plain tune as a line."""
    return sounded(tune, [replace(note, anchor=number) for number, note in enumerate(tune.notes)])


def disturbed(line: Sequence[Sounded], dice: random.Random, share: float = 0.04) -> list[Sounded]:
    """A share of the notes wrong, another left out, and as many added in the time of longer notes."""
    found: list[Sounded] = []
    for note in line:
        chance = dice.random()
        if chance < share:
            continue
        if chance < 2 * share and not note.is_grace:
            note = replace(note, midi=note.midi + dice.choice([-3, -2, -1, 1, 2, 3]))
        found.append(note)
        if dice.random() < share and note.duration >= SIXTEENTH:
            kept = note.duration * dice.choice([0.5, 0.66, 0.75])
            found[-1] = replace(note, duration=kept)
            away = dice.choice([-5, -4, -3, -2, -1, 1, 2, 3, 4, 5])
            found.append(Sounded(note.onset + kept, note.duration - kept, note.midi + away))
    return found


def restarted_or_skipped(line: Sequence[Sounded], tune: Tune, dice: random.Random) -> list[Sounded]:
    """A player who breaks off in a phrase and starts it again, or leaves a phrase out."""
    starts = [tune.notes[phrase.first].onset_ticks for phrase in phrases(tune)] + [tune.duration_ticks]
    if len(starts) < 4:
        return list(line)
    number = dice.randrange(1, len(starts) - 2)
    start, stop = starts[number], starts[number + 1]
    if dice.random() < 0.5:
        broken_off = start + (stop - start) * dice.uniform(0.4, 0.9)
        pause = dice.choice([0.0, QUARTER, 2 * QUARTER, 1.37 * QUARTER])
        first = [note for note in line if note.onset < broken_off]
        again = [note for note in line if note.onset >= start - (GRACE_TICKS if note.is_grace else 0)]
        return first + [replace(note, onset=note.onset + broken_off - start + pause) for note in again]
    first = [note for note in line if note.onset < start]
    return first + [replace(note, onset=note.onset - (stop - start)) for note in line if note.onset >= stop]


def timed(line: Sequence[Sounded], dice: random.Random) -> list[Sounded]:
    """Seconds: a tempo of 60 to 180 that wanders by up to an eighth, onsets off by 25 ms, shortened notes."""
    tempo = dice.uniform(60, 180)
    noise = np.random.default_rng(dice.randrange(2**30))
    last = max(note.onset + note.duration for note in line)
    grid = np.arange(-4 * QUARTER, last + 4 * QUARTER, QUARTER / 2)
    wander = np.convolve(np.cumsum(noise.normal(0, 1, grid.size)), np.hanning(9) / 4, mode="same")
    wander -= wander.mean()
    beats = 30.0 / tempo * np.exp(0.12 * wander / max(1e-9, float(np.abs(wander).max())))
    clock = np.concatenate([[0.0], np.cumsum(beats)])[: grid.size]
    found: list[Sounded] = []
    for note in line:
        start = float(np.interp(note.onset, grid, clock))
        end = float(np.interp(note.onset + note.duration, grid, clock))
        onset = start + dice.gauss(0, 0.025)
        if found:
            onset = max(onset, found[-1].onset + 0.02)
        found.append(replace(note, onset=onset, duration=max(0.03, (end - start) * dice.uniform(0.75, 1.0))))
    return found


def events_of(line: Sequence[Sounded], *, is_written: bool = False) -> list[Event]:
    """The line as the aligner takes it; in a recording no note is marked as a grace note."""
    return [
        Event(note.onset, note.duration, note.midi, number, note.is_grace and is_written)
        for number, note in enumerate(line)
    ]


def truth_of(line: Sequence[Sounded]) -> set[tuple[int, int]]:
    """(plain note, place in the line) of all plain notes."""
    return {(note.plain, context) for context, note in enumerate(line) if note.plain is not None}


def take_of(tune: Tune, line: Sequence[Note], setting: Setting, seed: int) -> Take:
    """A line as `perform` plays it, heard without a mistake but for 8 ms in the onsets."""
    played = replace(tune, notes=tuple(line))
    performance = perform(
        played,
        played.notes,
        instrument=setting.instrument,
        tempo=setting.quarters_per_minute,
        feel=setting.feel,
        seed=seed,
    )
    dice = random.Random(seed)
    notes = sorted(performance.parts[0].notes, key=lambda note: note.onset_sec)
    found = []
    for context, note in enumerate(notes):
        following = notes[context + 1] if context + 1 < len(notes) else None
        is_main = following is None or following.source != note.source
        marks = line[note.source].marks if is_main and note.source is not None else ()
        end = note.end_sec if following is None else min(note.end_sec, following.onset_sec)
        onset = note.onset_sec + dice.gauss(0, 0.008)
        found.append(
            PlayedNote(
                onset,
                max(end, onset + 0.02),
                100.0 * (note.midi - 69),
                note.midi,
                -20.0,
                Attack.TONGUED,
                tuple(Inflection(_INFLECTIONS[mark], onset, 0.1, -100.0) for mark in marks if mark in _INFLECTIONS),
                Vibrato(5.0, 20.0) if Mark.VIBRATO in marks else None,
            )
        )
    return Take(tuple(found), found[-1].offset_sec, 0.0)


# Two settings of one tune -----------------------------------------------------------------------------------------


def setting_pairs(half: Half, count: int) -> Iterator[tuple[Tune, Tune]]:
    """Pairs of tunes of the books whose titles are the same but for article, kind and source, in the same metre."""
    by_title: dict[str, list[AbcEntry]] = {}
    for entry in entries():
        by_title.setdefault(_bare(entry.title), []).append(entry)
    groups = [group for title, group in by_title.items() if len(title) >= 6 and 2 <= len(group) <= 6]
    for group in groups[0 if half == "train" else 1 :: 2]:
        for one, other in combinations(_readable(group), 2):
            if one.metre == other.metre:
                yield one, other
                count -= 1
                if not count:
                    return


def _bare(title: str) -> str:
    text = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    text = re.sub(r"\(.*?\)|--.*|, s\. .*", "", text)
    text = re.sub(r"[^a-z ]", "", text)
    return " ".join(re.sub(r"\b(the|a|der|die|das|reel|jig|hornpipe|setting)\b", " ", text).split())


def _readable(group: Sequence[AbcEntry]) -> Iterator[Tune]:
    for entry in group:
        try:
            tune = entry.read(irregular="keep")
        except FiorituraError:
            continue
        if 12 <= len(tune.notes) <= 400:
            yield tune
