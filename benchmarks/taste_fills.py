"""Measures of answer fills as they are chosen in renditions: ``python benchmarks/taste_fills.py`` prints them.

How like people they are is judged by a measure outside of the program: the script `fill_humanity.py` with its model in the
folder ``HUMAN_FIGURES`` (log-likelihood a note under a model of human jazz phrases, and whether a classifier can tell the
fills from 861 human ones). Tunes are the lead sheets of the folder ``LEAD_SHEETS``, where one is named, tunes of the public
ABC books, and blues that are made here.
"""

from __future__ import annotations

import importlib.util
import os
import random
import sys
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from types import ModuleType
from typing import Any

from fioritura.arrange.arranger import choose_figures
from fioritura.arrange.survey import survey
from fioritura.notation.abc.reader import list_abc
from fioritura.players.idiom import is_blues
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.fill import ANSWER_FILL
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from tests.corpus_tunes import corpus_tunes
from tools.calibrate_taste import sheets

Measure = tuple[str, float, float | None, float | None, str]
"""What is measured, its value, the bar below and above it, a note."""

LEVELS = (2, 3, 4, 5)
TEMPOS = (None, 72.0, 112.0, 144.0, 184.0)
SEEDS = (0, 1, 2)
MOST_BLUES = 12
MOST_CORPUS = 48

_BLUES = ("I", "IV", "I", "I", "IV", "IV", "I", "VI", "II", "V", "I VI", "II V")
_ROOTS = {"I": 0, "II": 2, "IV": 5, "V": 7, "VI": 9}
_NAMES = ("C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B")
_NOTES = ("=C", "_D", "=D", "_E", "=E", "=F", "_G", "=G", "_A", "=A", "_B", "=B")
_SCALE = (0, 2, 3, 4, 5, 7, 9, 10)


def blues(number: int) -> Tune:
    """A twelve-bar blues of call and pause, invented: two bars of melody, two that wait."""
    dice = random.Random(f"blues {number}")
    tonic = dice.choice((0, 3, 5, 7, 10))
    midis = [midi for midi in range(62, 78) if (midi - tonic) % 12 in _SCALE]
    place, bars = len(midis) // 2, []
    for bar, chords in enumerate(_BLUES):
        values = (
            dice.choice(((2, 2, 4), (3, 1, 4), (1, 1, 2, 4))) if bar % 2 == 0 else dice.choice(((8,), (2, 6), (4, 4)))
        )
        symbols = [_symbol(chord, tonic) for chord in chords.split()]
        text, time = "", 0
        for value in values if bar < len(_BLUES) - 1 else (4, 4):
            if time in (0, 4) and symbols:
                text += f'"{symbols.pop(0)}"'
            place = max(0, min(len(midis) - 1, place + dice.choice((-2, -1, -1, 1, 1, 2))))
            text += f"{_abc(midis[place])}{value}"
            time += value
        bars.append(text)
    body = "|".join(bars)
    text = f"X:1\nT:Blues {number}\nM:4/4\nL:1/8\nQ:1/4=120\nK:{_NAMES[tonic]}\n{body}|]\n"
    return list_abc(text)[0].read()


def _symbol(degree: str, tonic: int) -> str:
    return _NAMES[(tonic + _ROOTS[degree]) % 12] + ("m7" if degree == "II" else "7")


def _abc(midi: int) -> str:
    octave, name = midi // 12 - 5, _NOTES[midi % 12]
    return name if octave == 0 else name[:-1] + name[-1].lower() if octave == 1 else name + ","


def tunes(most_sheets: int | None = None) -> list[Tune]:
    """The tunes on which fills are measured."""
    folder = os.environ.get("LEAD_SHEETS", "")
    found = sheets(Path(folder), step=1) if folder else []
    if most_sheets is not None and found:
        found = found[:: max(len(found) // most_sheets, 1)][:most_sheets]
    corpus = random.Random("fills").sample(corpus_tunes(step=20), MOST_CORPUS)
    return [*found, *corpus, *(blues(number) for number in range(MOST_BLUES))]


@dataclass(frozen=True)
class Chosen:
    """A fill that was chosen."""

    tune: Tune
    setting: Setting
    seed: int
    figure: Figure

    @property
    def data(self) -> dict[str, Any]:
        """The fill as the measure reads it: times in quarters, counted from a bar line."""
        bar = self.tune.bar_at(self.figure.notes[0].onset_ticks)
        origin = bar.start_ticks - bar.metre_offset_ticks
        notes = [
            {
                "onset": (note.onset_ticks - origin) / QUARTER,
                "duration": note.duration_ticks / QUARTER,
                "midi": note.pitch.midi,
                "chord": _chord(self.tune, note.onset_ticks),
            }
            for note in self.figure.notes
        ]
        return {
            "tune": self.tune.title,
            "key": str(self.tune.key),
            "tempo": self.setting.quarters_per_minute,
            "meter": bar.metre.bar_ticks / QUARTER,
            "notes": notes,
        }


def _chord(tune: Tune, ticks: int) -> str:
    span = tune.chord_at(ticks)
    return span.text if span else ""


def chosen(found: Sequence[Tune], seeds: Iterable[int] = SEEDS) -> Iterator[Chosen]:
    """The fills of renditions of some tunes at levels 2 to 5, tempos in turn."""
    seeds = tuple(seeds)
    for number, tune in enumerate(found):
        level, tempo = LEVELS[number % len(LEVELS)], TEMPOS[number % len(TEMPOS)]
        setting = Setting("concert", tempo or tune.quarters_per_minute, "swing", level=level)
        offered = survey(tune, setting)
        for seed in seeds:
            for figure in choose_figures(offered, seed=seed).figures:
                if figure.technique == ANSWER_FILL.id:
                    yield Chosen(tune, setting, seed, figure)


def measures(most_sheets: int | None = None) -> Iterator[Measure]:
    """All measures with their bars."""
    found = tunes(most_sheets)
    fills = list(chosen(found))
    distinct = {(fill.tune.title, fill.figure.id): fill for fill in fills}
    yield "fills: chosen in renditions, of so many tunes", len(distinct), 100, None, f"{len(found)} tunes"
    yield from likeness([fill.data for fill in distinct.values()])
    yield from shapes([tuple(note.pitch.midi for note in fill.figure.notes) for fill in distinct.values()])
    echoes = sum(dict(fill.figure.why.args)["idea"] == "echo" for fill in distinct.values()) / max(len(distinct), 1)
    yield "fills: that take up four notes of their phrase", echoes, 0.1, 0.35, "people: 0.18"
    in_blues = [fill for fill in distinct.values() if is_blues(fill.tune)]
    share = sum(map(has_blue_note, in_blues)) / max(len(in_blues), 1)
    yield "fills: with a blue note, in blues", share, 0.25, None, f"of {len(in_blues)}"
    yield "fills: different ones of five seeds at a place", variety(found), 4.0, None, "where all five have one"


def likeness(fills: list[dict[str, Any]]) -> Iterator[Measure]:
    """How like people's phrases they are."""
    folder = os.environ.get("HUMAN_FIGURES", "")
    if not folder:
        print("likeness of fills: left out; name the folder of the measure in HUMAN_FIGURES")
        return
    measure = _measure(Path(folder) / "fill_humanity.py")
    result = measure.evaluate(fills, measure.load(str(Path(folder) / "fill_humanity_model.json")))
    yield "fills: AUC of a classifier, pitches", result["AUC_pitch"], None, 0.70, "people: 0.5"
    yield "fills: AUC of a classifier, rhythms", result["AUC_rhythm"], None, 0.70, "people: 0.5"
    yield "fills: log-likelihood of a note", result["pitch_loglik_per_note"], -2.6, -2.0, "people: -2.27"
    bland, odd = (value for key, value in result.items() if key.startswith("share_of_fills"))
    yield "fills: blander than nine in ten of people's", bland, 0.03, 0.2, "people: 0.1"
    yield "fills: neither blander nor odder than that", 1 - bland - odd, 0.7, 0.9, "people: 0.8"
    if "--features" in sys.argv:
        for name, values in result["features: human, fills, AUC of it alone"].items():
            print(f"{name:20}", *values)


def _measure(path: Path) -> ModuleType:
    spec = importlib.util.spec_from_file_location("fill_humanity", path)
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def shapes(lines: Sequence[tuple[int, ...]]) -> Iterator[Measure]:
    """Moves and contours, as they were counted in people's short phrases."""
    moves = [[b - a for a, b in pairwise(line)] for line in lines]
    every = [abs(move) for each in moves for move in each]
    yield "fills: steps among moves", sum(1 <= move <= 2 for move in every) / len(every), None, 0.6, "people: 0.51"
    yield "fills: of three notes", sum(len(line) == 3 for line in lines) / len(lines), None, 0.25, "people: 0.17"
    yield "fills: waves", sum(map(_is_wave, moves)) / len(moves), 0.25, None, "people: 0.39"
    longer = [each for each in moves if len(each) >= 3]
    wide = sum(max(map(abs, each)) >= 3 for each in longer) / max(len(longer), 1)
    yield "fills of four notes and more: with a third or wider", wide, 0.8, None, "people: 0.87"


def _is_wave(moves: Sequence[int]) -> bool:
    signs = [move > 0 for move in moves if move]
    return sum(a != b for a, b in pairwise(signs)) >= 2


def has_blue_note(fill: Chosen) -> bool:
    """A minor third over a major or dominant chord, or a flat fifth that is not the chord's own."""
    for note in fill.figure.notes:
        span = fill.tune.chord_at(note.onset_ticks)
        chord = span.chord if span else None
        if chord is None or note.pitch.midi % 12 in chord.pitch_classes:
            continue
        degree = (note.pitch.midi - chord.root.pitch_class) % 12
        if degree == 6 or (degree == 3 and not chord.is_minor):
            return True
    return False


def variety(found: Sequence[Tune]) -> float:
    """How many different fills five seeds give, on average, at places where all five have one."""
    at_place: dict[tuple[str, int], list[str]] = defaultdict(list)
    for fill in chosen(found[:: max(len(found) // 15, 1)], range(1, 6)):
        at_place[fill.tune.title, fill.figure.anchors[0]].append(fill.figure.id)
    counts = [len(set(ids)) for ids in at_place.values() if len(ids) == 5]
    return sum(counts) / max(len(counts), 1)


def main() -> int:
    """Print the measures; the exit code is 1 when a bar is missed."""
    missed = 0
    for name, value, low, high, note in measures(int(os.environ.get("MOST_SHEETS", "0")) or None):
        holds = (low is None or value >= low) and (high is None or value <= high)
        missed += not holds
        bar = f"{'' if low is None else low} … {'' if high is None else high}"
        print(f"{name:<66} {value:>8.3f}  {bar:<18} {'ok' if holds else 'MISSED':<6} {note}", flush=True)
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
