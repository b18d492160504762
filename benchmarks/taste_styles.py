"""Measures of the languages of style, a part of ``make taste``; alone: ``python -m benchmarks.taste_styles``.

Irish music is held against its own books (O'Neill's and Ryan's, in music21's corpus), on tunes that the model of
`tools.train_irish` never saw; rates of people are those of the tunes that have such signs, jigs and reels apart. A ballad
is held against recorded wind solos of under 90 beats a minute (Weimar Jazz Database, 10th to 90th percentile).
"""

from __future__ import annotations

import random
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from itertools import pairwise
from pathlib import Path

from benchmarks.taste import Row
from fioritura.arrange.arranger import ornament
from fioritura.arrange.harmonise import harmonise
from fioritura.arrange.irish_taste import sign_features
from fioritura.arrange.prepare import prepared
from fioritura.arrange.rendition import Rendition
from fioritura.library.work import demo_tune
from fioritura.notation.read import read_tune
from fioritura.players.idiom import dance_of
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.techniques.irish import CRAN, CUT, LONG_ROLL, SHORT_ROLL, TREBLE, TRIPLET
from fioritura.techniques.turn import INVERTED_TURN, MORDENT, TURN, UPPER_MORDENT
from fioritura.theory.metre import EIGHTH, QUARTER, WHOLE
from fioritura.tune import Note, Tune
from fioritura.unfold import unfolded
from tools.train_irish import irish_tunes

TUNES = 60
TEMPO = {"jig": 168.0, "reel": 176.0, "hornpipe": 140.0}
"""Quarter notes a minute at which dancers take them (common practice)."""

THIRD = 1 / 3
HOME = Path(__file__).parents[1]


@dataclass
class Rates:
    """How many notes of each kind there are, and how many bear a cut or a roll."""

    notes: Counter[str] = field(default_factory=Counter)
    signs: Counter[str] = field(default_factory=Counter)
    triplets: int = 0
    bars: int = 0
    returning: int = 0
    changed: int = 0

    def rate(self, kind: str) -> float:
        return self.signs[kind] / max(self.notes[kind], 1)


def style_rows() -> Iterator[Row]:
    """All rows."""
    yield from irish_rows()
    yield from ballad_rows()
    yield from tempo_rows()
    yield from blues_rows()
    yield from bossa_rows()


def irish_rows(level: int = 3) -> Iterator[Row]:
    """Cuts, rolls and triplets where the books have them, and bars that come again in another form."""
    jigs, reels, hornpipes = (irish_rates(dance, level) for dance in ("jig", "reel", "hornpipe"))
    # irish_placement.json: rolls by length, cuts by the moves before and after; triplets a bar
    for name, rates, kind, people in (
        ("jigs: roll on a dotted quarter", jigs, "roll on 3", 0.325),
        ("reels: roll on a dotted quarter", reels, "roll on 3", 0.55),
        ("jigs: cut on a repeated note that steps down", jigs, "cut same then -2nd", 0.355),
        ("reels: cut on a repeated note that steps down", reels, "cut same then -2nd", 0.507),
        ("jigs: cut between a step up and a step down", jigs, "cut +2nd then -2nd", 0.144),
        ("reels: cut between a step up and a step down", reels, "cut +2nd then -2nd", 0.156),
        ("jigs: cut on any note", jigs, "cut", 0.0341),
        ("reels: cut on any note", reels, "cut", 0.0247),
    ):
        yield near(f"irish, {name}", rates.rate(kind), people, rates.notes[kind])
    for name, rates, people in (("reels", reels, 0.132), ("hornpipes", hornpipes, 0.193)):
        yield near(f"irish, {name}: triplets a bar", rates.triplets / max(rates.bars, 1), people, rates.bars)
    yield Row("irish, jigs: triplets a bar", jigs.triplets / max(jigs.bars, 1), None, 0.02)
    returning = jigs.returning + reels.returning
    changed = (jigs.changed + reels.changed) / max(returning, 1)
    yield near("irish: bars that come again in another form", changed, 0.37, returning)


def near(name: str, value: float, people: float, count: int) -> Row:
    return Row(name, value, people * (1 - THIRD), people * (1 + THIRD), f"people {people:g}; of {count}")


@cache
def irish_rates(dance: str, level: int) -> Rates:
    rates = Rates()
    for tune in tunes_of(dance):
        player = Player.of("concert", level)
        tempo = TEMPO[dance] / 2 if (tune.metre.beats, tune.metre.unit) == (2, 4) else TEMPO[dance]
        rendition = ornament(tune, Setting(player, tempo, "straight", "irish"))
        count(rates, rendition)
    return rates


@cache
def tunes_of(dance: str) -> tuple[Tune, ...]:
    """Held-out tunes of a dance, plain, their repeats written out."""
    found = [tune for tune in irish_tunes(test=True) if tune.dance is not None and dance_of(tune) == dance]
    chosen = random.Random(dance).sample(found, min(TUNES, len(found)))
    return tuple(unfolded(harmonise(plain(tune))) for tune in chosen)


def plain(tune: Tune) -> Tune:
    return replace(tune, notes=tuple(replace(note, graces=(), marks=()) for note in tune.notes))


def count(rates: Rates, rendition: Rendition) -> None:
    tune = rendition.tune
    kinds = {CUT.id: "cut", LONG_ROLL.id: "roll", SHORT_ROLL.id: "roll", CRAN.id: "roll"}
    signed = {(kinds[one.technique], one.anchors[0]) for one in rendition.figures if one.technique in kinds}
    for index, names in enumerate(sign_features(tune)):
        length = next(
            (name.split()[-1] for name in names if len(name.split()) == 2 and name.split()[1].isdigit()), ""
        )
        moves = next(name for name in names if " then " in name and name[:4] not in ("jig ", "reel"))
        for kind in ("cut", "roll"):
            for name in (kind, f"{kind} on {length}", f"{kind} {moves}"):
                rates.notes[name] += 1
                rates.signs[name] += (kind, index) in signed
    rates.triplets += sum(one.technique in (TRIPLET.id, TREBLE.id) for one in rendition.figures)
    rates.bars += sum(bar.number > 0 for bar in tune.bars)
    returning, changed = bars_again(tune, rendition.line)
    rates.returning += returning
    rates.changed += changed


def bars_again(tune: Tune, line: Sequence[Note]) -> tuple[int, int]:
    """How many bars say again what an earlier one said, and how many of those are not played the same."""
    first: dict[object, object] = {}
    again = changed = 0
    for bar in tune.bars:
        told, played = (
            tuple(
                (
                    n.onset_ticks - bar.start_ticks,
                    n.duration_ticks,
                    n.pitch.midi,
                    tuple(g.midi for g in n.graces),
                    n.marks,
                )
                for n in notes
                if bar.start_ticks <= n.onset_ticks < bar.end_ticks
            )
            for notes in (tune.notes, line)
        )
        if told in first:
            again += 1
            changed += played != first[told]
        else:
            first[told] = played
    return again, changed


def ballad_rows(level: int = 5, tempo: float = 58.0) -> Iterator[Row]:
    """Our own tunes as ballads: as many notes, quick runs and ornaments as people have (ballads.json, under 90 a minute)."""
    beats = notes = runs = quick = 0.0
    uses: Counter[str] = Counter()
    for tune in own_tunes():
        rendition = ornament(tune, Setting("alto-sax", tempo, "swing", "jazz", level=level))
        beats += tune.duration_ticks / QUARTER
        notes += sum(1 + len(note.graces) for note in rendition.line)
        groups = quick_runs(rendition.line, tempo)
        runs, quick = runs + len(groups), quick + sum(groups)
        uses.update(figure.technique for figure in rendition.figures)
        uses["graces"] += sum(bool(figure.graces) for figure in rendition.figures)
    bars = beats / 4
    yield Row(
        "ballad, level 5: notes a beat", notes / beats, 1.88, 4.33, "people 3.2: 10th to 90th percentile of solos"
    )
    yield Row(
        "ballad, level 5: runs of 5 and more, 8 a second",
        runs / bars,
        0.12,
        0.48,
        "a bar; people 0.24, half to double",
    )
    yield Row(
        "ballad, level 5: part of all notes in them", quick / notes, 0.084, 0.336, "people 0.168, half to double"
    )
    for name, ids, people in (
        ("grace notes", ("graces",), 0.38),
        ("mordents", (MORDENT.id, UPPER_MORDENT.id), 0.31),
        ("turns", (TURN.id, INVERTED_TURN.id), 0.17),
    ):
        value = sum(uses[id] for id in ids) / bars
        yield Row(f"ballad, level 5: {name} a bar", value, people / 2, people * 2, f"people {people}, half to double")


def quick_runs(line: Sequence[Note], tempo: float) -> list[int]:
    """Lengths of the runs of five notes and more of which each follows the last within an eighth of a second."""
    found, length = [], 1
    for one, other in pairwise((*line, line[-1])):
        gap = (other.onset_ticks - one.onset_ticks) / QUARTER * 60 / tempo
        if 0 < gap <= 1 / 8 + 0.005:
            length += 1
            continue
        if length >= 5:
            found.append(length)
        length = 1
    return found


def tempo_rows() -> Iterator[Row]:
    """The same tunes medium and up: people play 1.78 notes a beat from 90 to 160, 1.38 above (ballads.json)."""
    added = {}
    for tempo in (132.0, 220.0):
        total = bars = 0.0
        for tune in own_tunes():
            rendition = ornament(tune, Setting("alto-sax", tempo, "swing", "jazz", level=4))
            total += len(rendition.line) - len(tune.notes)
            bars += tune.duration_ticks / WHOLE
        added[tempo] = total / bars
    yield Row("up tempo: added notes a bar, to those of a medium tempo", added[220.0] / added[132.0], None, 0.85)


def blues_rows() -> Iterator[Row]:
    """Blue thirds and flat fifths of our own blues, at each level and several seeds."""
    blue = bars = plain = 0
    tune = tune_at("docs/trial/ferry.plain.abc")
    for level in range(2, 6):
        for seed in range(3):
            rendition = ornament(tune, Setting("alto-sax", level=level), seed=seed)
            blue += blue_notes(rendition.line, tune)
            plain += blue_notes(tune.notes, tune)
            bars += len(tune.bars)
    yield Row("blues: blue thirds and flat fifths a bar, beyond the tune's own", (blue - plain) / bars, 0.25)


def blue_notes(line: Sequence[Note], tune: Tune) -> int:
    """Minor thirds and flat fifths of the key, grace notes too, under chords that have neither."""
    tonic, count = tune.key.tonic.pitch_class, 0
    for note in line:
        span = tune.chord_at(note.onset_ticks)
        chord = span.chord.pitch_classes if span and span.chord else frozenset()
        for pitch in (*note.graces, note.pitch):
            blue = (pitch.midi - tonic) % 12 in (3, 6)
            count += blue and pitch.midi % 12 not in chord
    return count


def bossa_rows() -> Iterator[Row]:
    """Straight eighths stay straight: no value of a triplet, and no bend where a swing tune would have some."""
    uneven = notes = 0
    tune = tune_at("docs/trial/saltwind.plain.abc")
    for level in range(1, 6):
        rendition = ornament(tune, Setting("flute", level=level))
        uneven += sum(note.onset_ticks % (EIGHTH // 4) != 0 for note in rendition.line)
        notes += len(rendition.line)
    yield Row("bossa: notes that begin on a triplet's place", uneven / notes, None, 0.02, f"of {notes}")


@cache
def own_tunes() -> tuple[Tune, ...]:
    """The tunes of the trial and the gallery that are not Irish dances, and the program's demo."""
    names = ("trial/saints", "trial/londonderry", "trial/ferry", "trial/towpath", "trial/saltwind", "trial/grace")
    return (*(tune_at(f"docs/{name}.plain.abc") for name in names), demo())


def demo() -> Tune:
    return prepared(demo_tune(), instrument_named("alto-sax"), unfold=True)


@cache
def tune_at(path: str) -> Tune:
    return prepared(read_tune(HOME / path), instrument_named("alto-sax"), unfold=True)


def main() -> int:
    rows = list(style_rows())
    for row in rows:
        print(row)
    return int(not all(row.holds for row in rows))


if __name__ == "__main__":
    sys.exit(main())
