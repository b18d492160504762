"""Measures of musical judgement: ``make taste`` prints the table and fails below the bar.

Placement and direction of folk grace notes are held against tunes that nobody here wrote and that the model never saw;
directions of jazz grace notes against published shares of recorded solos; identity, variety, playability and the use
of notes outside the chord against stated bars. Tunes are those of `tests/corpus_tunes.py`.
"""

from __future__ import annotations

import os
import random
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import starmap
from pathlib import Path

import numpy as np

from benchmarks.taste_fills import measures as fill_measures
from fioritura.arrange.arranger import best_figures, choose_figures, choose_nearby, ornament
from fioritura.arrange.field import Field, Terms, constraints_of
from fioritura.arrange.grace_taste import folk_grace_taste
from fioritura.arrange.ideas import tell
from fioritura.arrange.levels import LEVELS
from fioritura.arrange.prepare import fitted, fitting_octaves
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.shares import MOST_SHARE, Shares
from fioritura.arrange.survey import Survey, survey
from fioritura.notation.abc.reader import list_abc
from fioritura.notation.read import read_tune
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.grace import LOWER_GRACE_SEMITONE, LOWER_GRACE_STEP, UPPER_GRACE_SEMITONE, UPPER_GRACE_STEP
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import EIGHTH, WHOLE
from fioritura.tune import Note, Tune
from tests.corpus_tunes import corpus_tunes
from tests.playability_checker import violations
from tests.solver_reference import offers_another, quotas_of
from tools.calibrate_taste import sheets
from tools.folk_graces import across_books, folk_tunes, measure

JAZZ_TUNES = 200
RETRIEVAL_TUNES = 1000
OTHER_TUNES = 56
PLAYED = ("alto-sax", "tenor-sax", "clarinet", "flute", "trumpet")


@dataclass(frozen=True)
class Row:
    """One line of the table: a measure, its value, and the bar it must reach (None for a figure that is only shown)."""

    name: str
    value: float
    low: float | None = None
    high: float | None = None
    note: str = ""

    @property
    def holds(self) -> bool:
        return (self.low is None or self.value >= self.low) and (self.high is None or self.value <= self.high)

    def __str__(self) -> str:
        bar = "" if self.low is None and self.high is None else f"{_shown(self.low)} … {_shown(self.high)}"
        sign = " " if not bar else "ok" if self.holds else "BELOW"
        return f"{self.name:<66} {self.value:>8.3f}  {bar:<18} {sign:<6} {self.note}"


def _shown(bar: float | None) -> str:
    return "" if bar is None else f"{bar:g}"


def setting(level: int, idiom: Idiom = "jazz", player: str = "concert", tempo: float = 110.0) -> Setting:
    return Setting(Player.of(player, level), tempo, "swing" if idiom == "jazz" else "straight", idiom)


def sample(count: int, seed: str) -> list[Tune]:
    tunes = corpus_tunes(step=2)
    return random.Random(seed).sample(tunes, min(count, len(tunes)))


def folk_graces() -> Iterator[Row]:
    """Held-out half of the folk tunes: the model never saw it (see tools/folk_graces.py for the split)."""
    tunes = folk_tunes()
    held_out = measure(folk_grace_taste(), [tune for tune in tunes if tune.is_test])
    yield Row(
        "folk: placement of grace notes, mean AUC of a tune", held_out.mean_auc, 0.87, note=f"{held_out.tunes} tunes"
    )
    yield Row("folk: the tune's own count of best places hit", held_out.mean_hit_share, 0.33)
    yield Row("folk: above or below as the players have it", held_out.side_share, 0.92)
    for book, measures in across_books(tunes).items():
        yield Row(f"folk: mean AUC on {book}, trained on the others", measures.mean_auc, 0.83)


def jazz_directions() -> Iterator[Row]:
    """Published: 82 % of grace-like notes in recorded saxophone solos come from below, semitone to whole tone 61:39."""
    uses: Counter[str] = Counter()
    bars = 0.0
    for tune in sample(JAZZ_TUNES, "jazz"):
        rendition = ornament(tune, setting(3))
        uses.update(figure.technique for figure in rendition.figures)
        bars += tune.duration_ticks / WHOLE
    lower = uses[LOWER_GRACE_SEMITONE.id] + uses[LOWER_GRACE_STEP.id]
    upper = uses[UPPER_GRACE_SEMITONE.id] + uses[UPPER_GRACE_STEP.id]
    yield Row("jazz: single grace notes from below", lower / max(lower + upper, 1), 0.78, 0.86, f"of {lower + upper}")
    yield Row("jazz: semitone among those from below", uses[LOWER_GRACE_SEMITONE.id] / max(lower, 1), 0.55, 0.70)
    families = Counter[str]()
    for technique, count in uses.items():
        families[technique_named(technique).family] += count
    for family, most in (("fills", 0.16), ("runs", 0.2), ("turns", 0.2)):
        yield Row(f"jazz, level 3: {family} a bar", families[family] / bars, 0.01, most)
    total = sum(uses.values())
    yield Row("jazz, level 3: techniques in use", len(uses), 20)
    yield Row("jazz, level 3: share of the commonest technique", max(uses.values()) / total, None, 0.2)


def identity() -> Iterator[Row]:
    """Weighted share of plain notes that keep pitch and place, and whether the tune is still found by ear."""
    tunes = sample(JAZZ_TUNES, "identity")
    for level, promise in LEVELS.items():
        shares = [ornament(tune, setting(level, idiom)).kept_share for tune in tunes for idiom in ("jazz",)]
        least = 0.8 if level <= 3 else promise.kept_share - 0.1
        yield Row(f"kept share, level {level}: mean", float(np.mean(shares)), promise.kept_share)
        yield Row(f"kept share, level {level}: 5th percentile", float(np.percentile(shares, 5)), least)
    pool = sample(RETRIEVAL_TUNES, "retrieval")
    plain = np.stack([contour(tune.notes) for tune in pool])
    for level, bar in ((3, 0.99), (5, 0.95)):
        asked = list(range(0, len(pool), 4))
        hits = 0
        for number in asked:
            line = contour(ornament(pool[number], setting(level)).line)
            hits += int(np.abs(plain - line).clip(max=4).mean(axis=1).argmin() == number)
        yield Row(f"right tune among {len(pool)} from the ornamented line, level {level}", hits / len(asked), bar)


def contour(line: Sequence[Note], eighths: int = 128) -> np.ndarray:
    """The pitch that sounds at each eighth of the first sixteen bars or so: a distance that knows no figures."""
    onsets = np.array([note.onset_ticks for note in line])
    midis = np.array([note.pitch.midi for note in line])
    contexts = np.searchsorted(onsets, np.arange(eighths) * EIGHTH + 1, side="left") - 1
    heard = midis[np.clip(contexts, 0, len(midis) - 1)].astype(float)
    heard[np.arange(eighths) * EIGHTH > onsets[-1]] = 0.0
    return heard


def variety() -> Iterator[Row]:
    """Ten seeds on a tune: how many differ, and how far the worst is from the best by the rules' own score."""
    distinct, worst = [], []
    whole = [tune for tune in sample(200, "variety") if tune.duration_ticks >= 16 * WHOLE][:20]
    for tune in whole:
        found = survey(tune, setting(3))
        best = choose_figures(found)
        renditions = [choose_figures(found, seed=seed) for seed in range(1, 11)]
        distinct.append(len({rendition.line for rendition in renditions}))
        merits = [sum(figure.score for figure in rendition.figures) for rendition in renditions]
        worst.append(min(merits) / max(sum(figure.score for figure in best.figures), 1e-9))
    yield Row("variety: distinct renditions of ten seeds, fewest", min(distinct), 8)
    yield Row("variety: score of the worst seed to the best, mean", float(np.mean(worst)), 0.9)


def playability() -> Iterator[Row]:
    """A thousand renditions under a checker that shares nothing with the generator."""
    found: list[str] = []
    count = 0
    dice = random.Random("playable")
    tunes = sample(400, "playable")
    while count < 1000:
        tune, player = dice.choice(tunes), dice.choice(PLAYED)
        octaves = fitting_octaves(tune, instrument_named(player))
        if not octaves:
            continue
        moved = fitted(tune, instrument_named(player), octaves[0])
        level, tempo = dice.randint(1, 5), dice.choice((70.0, 100.0, 140.0, 200.0))
        rendition = ornament(
            moved, setting(level, dice.choice(("jazz", "folk")), player, tempo), seed=dice.randrange(9)
        )
        found += added_violations(rendition)
        count += 1
    yield Row("playability: violations of range, rate and breath", len(found), None, 0, f"in {count}; {found[:1]}")


def added_violations(rendition: Rendition) -> list[str]:
    """Violations of the ornamented line that the plain tune has not already."""
    setting = rendition.setting
    arguments = (setting.instrument.id, setting.level, setting.quarters_per_minute)
    return violations(rendition.line, *arguments, plain=rendition.tune.notes)


def folk_notes() -> Iterator[Row]:
    """Folk neighbours, mordents and turns keep to the notes of the key, the chord and the tune."""
    foreign = total = 0
    for tune in sample(JAZZ_TUNES, "folk notes"):
        own = {note.pitch.midi % 12 for note in tune.notes}
        for figure in ornament(tune, setting(5, "folk")).figures:
            if technique_named(figure.technique).family not in ("neighbours", "turns"):
                continue
            key = tune.bar_at(tune.notes[figure.anchors[0]].onset_ticks).key
            for note in figure.notes:
                span = tune.chord_at(note.onset_ticks)
                chord = span.chord.pitch_classes if span and span.chord else ()
                total += 1
                foreign += not (key.holds(note.pitch) or note.pitch.midi % 12 in own.union(chord))
    yield Row("folk: notes of neighbours and turns that are not the tune's own", foreign, None, 0, f"of {total}")


def outside_the_chord() -> Iterator[Row]:
    """People's own figures (Nottingham collection): 9 % of notes outside the chord on downbeats, 37 % on half-beats."""
    counts: Counter[tuple[str, bool]] = Counter()
    for tune in sample(JAZZ_TUNES, "outside"):
        for note in ornament(tune, setting(4)).line:
            span = tune.chord_at(note.onset_ticks)
            if span and span.chord:
                strength = tune.strength_at(note.onset_ticks)
                context = "downbeats" if strength == 1.0 else "beats" if strength >= 0.5 else "half-beats"
                counts[context, note.pitch.midi % 12 in span.chord.pitch_classes] += 1
    for context, people in (("downbeats", "people: 0.09"), ("beats", ""), ("half-beats", "people: 0.37")):
        outside = counts[context, False] / max(counts[context, False] + counts[context, True], 1)
        yield Row(f"outside the chord on {context}, level 4", outside, note=people)


@dataclass
class Tried:
    """Renditions of tunes at a level, counted."""

    level: int
    offered: set[str]
    uses: Counter[str]
    directions: list[tuple[int, int]]
    values: list[float]
    added: list[int]
    kept: list[float]
    wrong_steps: int
    elsewhere: int
    over: list[Survey]
    """Those with a technique over a quarter of eight and more figures."""
    firm: int = 0
    ends: int = 0


def tried(tunes: Sequence[Tune], level: int) -> Tried:
    """Each tune at its own tempo, chosen at a level."""
    counted = Tried(level, set(), Counter(), [], [], [], [], 0, 0, [])
    for tune in tunes:
        found = survey(tune, setting(level, tempo=tune.quarters_per_minute))
        rendition = choose_figures(found)
        counts = Counter(figure.technique for figure in rendition.figures)
        counted.offered |= {figure.technique for figure in found.candidates}
        counted.uses.update(counts)
        counted.directions.append(directed(counts))
        counted.values.append(rendition.score / max(best_figures(found).score, 1e-9))
        counted.added += [figure.size for figure in rendition.figures]
        counted.kept.append(rendition.kept_share)
        counted.wrong_steps += sum(not is_step(tune, figure) for figure in found.candidates)
        counted.elsewhere += changed_elsewhere(found, rendition)
        counted.firm += len(rendition.figures) >= 8
        if len(rendition.figures) >= 8 and max(counts.values()) > MOST_SHARE * len(rendition.figures):
            counted.over.append(found)
        counted.ends += any(one.graces and one.anchors[0] == len(tune.notes) - 1 for one in rendition.figures)
    return counted


def is_step(tune: Tune, figure: Figure) -> bool:
    """Whether a grace note that is called a step is another letter and at most a whole tone away."""
    if figure.technique not in (LOWER_GRACE_STEP.id, UPPER_GRACE_STEP.id):
        return True
    interval = figure.graces[0].to(tune.notes[figure.anchors[0]].pitch)
    return abs(interval.steps) == 1 and 1 <= abs(interval.semitones) <= 2


def changed_elsewhere(found: Survey, rendition: Rendition) -> int:
    """Figures outside the phrase of the middle one that come or go when that one is left out."""
    if not rendition.figures:
        return 0
    ids = [figure.id for figure in rendition.figures]
    gone = rendition.figures[len(ids) // 2]
    again = choose_nearby(found, ids, gone.id, refused=[gone.id])
    phrase_of = [context.phrase.number for context in found.contexts]
    changed = set(rendition.figures) ^ set(again.figures)
    return sum(phrase_of[one.first_slot // 2] != phrase_of[gone.first_slot // 2] for one in changed)


def lead_sheets() -> Iterator[Row]:
    """Shares, directions, endings and the use of each technique on lead sheets of a folder, ``LEAD_SHEETS``: on the half
    by which nothing was set (see ``tools/calibrate_taste.py``), and directions on all."""
    folder = os.environ.get("LEAD_SHEETS", "")
    if not folder:
        print("lead sheets: left out; name a folder of them in LEAD_SHEETS")
        return
    by_level = [tried(sheets(Path(folder), is_held_out=True), level) for level in LEVELS]
    others = [tried(sheets(Path(folder), is_held_out=False), level) for level in LEVELS]
    for name, half in (("held-out sheets", by_level), ("other sheets", others)):
        for each in half:
            yield from from_below(f"{name}, level {each.level}", each.directions)
    every = [*by_level, *others]
    count = sum(len(each.values) for each in every)
    over = [found for each in every for found in each.over]
    firm = sum(each.firm for each in every)
    yield Row("sheets: renditions with a technique over a quarter", len(over) / firm, note=f"{len(over)} of {firm}")
    offered = [found for found in over if is_another_offered(found)]
    yield Row("sheets: of these, where another choice is not ruled out by proof", len(offered), None, 0)
    values = [value for each in every for value in each.values]
    yield Row("sheets: worth to that without quotas, mean", float(np.mean(values)), 0.97)
    yield Row("sheets: worth to that without quotas, least", min(values), 0.9)
    yield Row("sheets: a grace note on the last note", sum(each.ends for each in every) / count, None, 0.25)
    at_hand = sorted(set[str]().union(*(each.offered for each in by_level)))
    parts = {id: part_of_its_levels(by_level, id) for id in at_hand}
    rarest = min(parts, key=lambda id: parts[id])
    yield Row("held-out sheets: the rarest technique's part of its levels", parts[rarest], 0.005, note=rarest)
    turns = sum(part for id, part in parts.items() if technique_named(id).family == "turns")
    yield Row("held-out sheets: turns' part of their levels", turns, 0.02)
    yield Row(
        "sheets: step grace notes on the same letter or over a whole tone",
        sum(each.wrong_steps for each in every),
        None,
        0,
    )
    yield Row(
        "sheets: bars outside its phrase that leaving a figure out changes",
        sum(each.elsewhere for each in every),
        None,
        0,
    )
    for each in by_level:
        bars = {1: (0.6, 1.4), 5: (3.0, None)}.get(each.level, (None, None))
        yield Row(
            f"held-out sheets, level {each.level}: notes added or changed by a figure",
            float(np.mean(each.added)),
            *bars,
        )
        yield Row(f"held-out sheets, level {each.level}: share of the tune kept", float(np.mean(each.kept)))


def part_of_its_levels(by_level: Sequence[Tried], id: str) -> float:
    """What part of the figures a technique makes up, at the levels that have it."""
    own = [each for each in by_level if each.level >= technique_named(id).level]
    return sum(each.uses[id] for each in own) / sum(each.uses.total() for each in own)


def is_another_offered(found: Survey) -> bool:
    """Whether a set of figures within the quotas is worth nine tenths of the best; True also when it is not ruled out.

    By the bound of Lagrange's prices, else by OR-Tools CP-SAT.
    """
    field = Field(found, constraints_of(found, 0, (), ()))
    tell(field, Terms(0))
    best = field.solve(Terms(0))
    shares = Shares(field, best.rendition.score)
    if shares.bound(best) < shares.least:
        return False
    return offers_another(field.model(Terms(0))[1], quotas_of(found), shares.least, 240.0) is not False


def other_jazz() -> Iterator[Row]:
    """Tunes that are no lead sheets and by which nothing was set: those with chords of their own that music21 carries,
    and tunes of the folk books with inferred chords, read as jazz."""
    tunes = [*chorded(), *sample(OTHER_TUNES, "other jazz")]
    for level in LEVELS:
        directions = [
            directed(Counter(one.technique for one in ornament(tune, setting(level)).figures)) for tune in tunes
        ]
        yield from from_below(f"{len(tunes)} other tunes as jazz, level {level}", directions)


def chorded() -> list[Tune]:
    """The tunes with chords that music21 carries: two reels and two songs."""
    from music21 import corpus

    paths = [Path(path) for path in corpus.getCorePaths()]
    books = [path for path in paths if path.parent.name == "nottingham-dataset"]
    songs = [path for path in paths if path.parent.name == "leadSheet"]
    entries = [entry for book in books for entry in list_abc(book.read_text(encoding="utf-8"))]
    return [*(entry.read(irregular="keep") for entry in entries), *(read_tune(path) for path in songs)]


def from_below(name: str, directions: Sequence[tuple[int, int]]) -> Iterator[Row]:
    """Recorded soloists: 82 %."""
    tens = [share_below(directions[start : start + 10]) for start in range(0, len(directions) - 9, 5)]
    yield Row(f"{name}: single grace notes from below", share_below(directions), 0.78, 0.86)
    yield Row(f"{name}: the fewest in ten tunes", min(tens), 0.76)
    yield Row(f"{name}: the most in ten tunes", max(tens), None, 0.88)


def directed(counts: Counter[str]) -> tuple[int, int]:
    """Single grace notes from below and from above."""
    below = counts[LOWER_GRACE_SEMITONE.id] + counts[LOWER_GRACE_STEP.id]
    return below, counts[UPPER_GRACE_SEMITONE.id] + counts[UPPER_GRACE_STEP.id]


def share_below(directions: Sequence[tuple[int, int]]) -> float:
    below, above = (sum(each[side] for each in directions) for side in (0, 1))
    return below / max(below + above, 1)


def fills() -> Iterator[Row]:
    """Answer fills as they are chosen (see `taste_fills`)."""
    yield from starmap(Row, fill_measures())


def main() -> int:
    """Print the table; the exit code is 1 when a bar is missed."""
    from benchmarks.taste_styles import style_rows  # it takes `Row` from here

    failed = 0
    for rows in (
        lead_sheets,
        other_jazz,
        folk_graces,
        jazz_directions,
        identity,
        variety,
        playability,
        outside_the_chord,
        style_rows,
        fills,
    ):
        for row in rows():
            print(row, flush=True)
            failed += not row.holds
    print(f"{failed} below the bar." if failed else "All bars reached.")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
