"""How well lines are laid along the tune and their ornaments named: the measures, as a table.

    python benchmarks/name_bench.py [--tunes 100] [--pairs 400] [--half test]

Nothing has been tuned on the test half (see `tests/played_lines.py`). Alignment: F1 of (plain note, played note) pairs
over all takes. Naming: F1 of (technique, first plain note) over all renditions. Settings: of the groups of notes that
one setting of a tune adds between two notes of another, the share that gets a technique; the same with pitches drawn
at random from the notes of the tune, or within a fifth around the notes beside them. Of groups that may be read as
plain notes of the tune after all nothing is counted.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from tempfile import TemporaryDirectory

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from fioritura.listening.align import align
from fioritura.listening.hear import hear
from fioritura.listening.name import name_line, name_take
from fioritura.listening.naming import Naming
from fioritura.listening.notes import Take
from fioritura.players.setting import Setting
from fioritura.sound.mixdown import write_audio
from fioritura.sound.perform import perform
from fioritura.sound.performance import Performance
from fioritura.techniques.inflection import GHOST_NOTE, VIBRATO
from fioritura.theory.metre import QUARTER
from fioritura.tune import Note, Tune
from tests import played_lines as lines

LEAST_LIKENESS = 0.6
"""Two settings that agree less are two tunes, or too far apart to say which notes were added."""

UNHEARD = frozenset({GHOST_NOTE.id, VIBRATO.id})
"""Techniques that a recording does not tell from a player's usual tone."""


@dataclass
class Score:
    """Counts of a comparison of sets."""

    right: int = 0
    wanted: int = 0
    found: int = 0
    missed: Counter[str] = field(default_factory=Counter)

    def add(self, wanted: Counter[object], found: Counter[object]) -> None:
        self.right += sum((wanted & found).values())
        self.wanted += sum(wanted.values())
        self.found += sum(found.values())
        self.missed.update(str(key[0]) for key in (wanted - found) if isinstance(key, tuple))

    @property
    def f1(self) -> float:
        return 2 * self.right / max(self.wanted + self.found, 1)


def alignment_scores(half: lines.Half, count: int) -> dict[str, Score]:
    """F1 of pairs on four kinds of line, one of each kind to a tune."""
    scores = {kind: Score() for kind in ("written", "take", "take with slips", "slips and a jump")}
    for number, tune in enumerate(lines.tunes(half, count)):
        dice = random.Random(number)
        plain = lines.plainly(tune)
        base = plain if number % 6 == 0 else lines.sounded(tune, lines.rendition_of(tune, number).line)
        slips = lines.disturbed(base, dice)
        jump = lines.restarted_or_skipped(lines.disturbed(base, dice), tune, dice)
        for kind, line in zip(scores, (base, base, slips, jump), strict=True):
            is_written = kind == "written"
            played = line if is_written else lines.timed(line, dice)
            found = align(tune, lines.events_of(played, is_written=is_written), is_written=is_written)
            scores[kind].add(Counter(lines.truth_of(played)), Counter(found.pairs))
    return scores


def verdicts(half: lines.Half, count: int) -> tuple[float, float]:
    """Shares of takes with slips and jumps that are taken for their tune, and of takes of other tunes that are not."""
    material = []
    for number, tune in enumerate(lines.tunes(half, count, seed=2)):
        dice = random.Random(number)
        line = lines.sounded(tune, lines.rendition_of(tune, number).line)
        line = lines.restarted_or_skipped(lines.disturbed(line, dice), tune, dice)
        material.append((tune, lines.events_of(lines.timed(line, dice))))
    own = [align(tune, events).is_this_tune for tune, events in material]
    dice = random.Random(3)
    others = [dice.sample(material, 2) for _ in range(2 * count)]
    refused = [not align(tune, events).is_this_tune for (tune, _), (_, events) in others]
    return sum(own) / len(own), sum(refused) / len(refused)


def naming_scores(half: lines.Half, count: int) -> tuple[Score, Score, Score]:
    """F1 of figures from written lines and from takes, and false figures in plain takes; five renditions to a tune."""
    written, heard, plain = Score(), Score(), Score()
    for number, tune in enumerate(lines.tunes(half, count, seed=4)):
        straight = Setting(lines.rendition_of(tune, number).setting.player, 100.0, "straight", "jazz")
        taken = name_take(tune, lines.take_of(tune, tune.notes, straight, number))
        plain.add(Counter(["chorus"]), _figures(taken))
        for context in range(5):
            rendition = lines.rendition_of(tune, 5 * number + context)
            wanted: Counter[object] = Counter((one.technique, one.anchors[0]) for one in rendition.figures)
            written.add(wanted, _figures(name_line(tune, rendition.line)))
            take = lines.take_of(tune, rendition.line, rendition.setting, number)
            heard.add(_without(wanted), _without(_figures(name_take(tune, take))))
    return written, heard, plain


def _figures(naming: Naming) -> Counter[object]:
    return Counter((one.technique, one.anchors[0]) for one in naming.figures)


def _without(figures: Counter[object]) -> Counter[object]:
    return Counter({key: count for key, count in figures.items() if isinstance(key, tuple) and key[0] not in UNHEARD})


def heard_scores(half: lines.Half, count: int, *, is_dry: bool) -> tuple[Score, Score]:
    """F1 of figures, and false figures in plain takes, from sound: the program's own performance on its synthesiser,
    without reverberation or in the synthesiser's room, heard again; a rendition and a plain take to a tune."""
    ornate, plain = Score(), Score()
    with TemporaryDirectory() as folder:
        for number, tune in enumerate(lines.tunes(half, count, seed=6)):
            rendition = lines.rendition_of(tune, number)
            wanted: Counter[object] = Counter((one.technique, one.anchors[0]) for one in rendition.figures)
            for line, truth, score in ((rendition.line, wanted, ornate), (tune.notes, Counter[object](), plain)):
                performance = _performed(tune, line, rendition.setting, number)
                take = _recorded(_dried(performance) if is_dry else performance, Path(folder) / "take.wav")
                score.add(_without(truth), _without(_figures(name_take(tune, take))))
    return ornate, plain


def _performed(tune: Tune, line: Sequence[Note], setting: Setting, seed: int) -> Performance:
    played = replace(tune, notes=tuple(line))
    return perform(
        played,
        played.notes,
        instrument=setting.instrument,
        tempo=setting.quarters_per_minute,
        feel=setting.feel,
        seed=seed,
    )


def _dried(performance: Performance) -> Performance:
    return replace(performance, parts=tuple(replace(part, reverb=0) for part in performance.parts))


def _recorded(performance: Performance, path: Path) -> Take:
    write_audio(performance, path)
    return hear(path)


@dataclass
class Additions:
    """Groups of added notes, and how many were named."""

    groups: int = 0
    named: int = 0
    random_in_tune: int = 0
    random_nearby: int = 0


def additions(half: lines.Half, count: int) -> Additions:
    """One-sided additions of one setting to another, and the same with pitches at random."""
    dice = random.Random(5)
    found = Additions()
    for pair in lines.setting_pairs(half, count):
        for tune, other in (pair, pair[::-1]):
            naming = name_line(tune, other.notes)
            if naming.alignment.likeness < LEAST_LIKENESS:
                continue
            plain = {event for standing in naming.standing for event in standing.values()}
            groups = [group for group in _added_groups(naming) if not plain.intersection(group)]
            found.groups += len(groups)
            found.named += _named(naming, groups)
            for kind in ("random_in_tune", "random_nearby"):
                line = _with_random(other.notes, groups, naming, dice, kind == "random_nearby")
                named = _named(name_line(tune, line), groups)
                setattr(found, kind, getattr(found, kind) + named)
    return found


def _added_groups(naming: Naming) -> Iterator[tuple[int, ...]]:
    """Events between two notes in a row that were played right, in time, and directly around the group."""
    for one in naming.alignment.passes:
        for span, following in zip(one.spans, one.spans[1:], strict=False):
            is_sure = span.is_right and following.is_right and span.added
            if is_sure and max(abs(span.late_ticks), abs(following.late_ticks)) <= QUARTER / 2:
                yield span.added


def _named(naming: Naming, groups: Sequence[tuple[int, ...]]) -> int:
    own = {event for one in naming.figures for event in one.events}
    return sum(set(group) <= own for group in groups)


def _with_random(
    line: Sequence[Note], groups: Sequence[tuple[int, ...]], naming: Naming, dice: random.Random, is_near: bool
) -> list[Note]:
    """The line with other pitches for the notes of the groups."""
    alignment = naming.alignment
    events, spell = alignment.events, alignment.tune.key.spell
    pitches = [event.midi for event in events]
    pool = [note.pitch.midi for note in line]
    for group in groups:
        around = [pitches[context] for context in (group[0] - 1, group[-1] + 1) if 0 <= context < len(pitches)]
        for context in group:
            pitches[context] = dice.randint(min(around) - 7, max(around) + 7) if is_near else dice.choice(pool)
    by_note: dict[int, list[int]] = {}
    for event, midi in zip(events, pitches, strict=True):
        by_note.setdefault(event.source, []).append(midi)
    return [
        replace(note, pitch=spell(midis[-1]), graces=tuple(map(spell, midis[:-1])))
        for note, midis in zip(line, by_note.values(), strict=True)
    ]


def rows(half: lines.Half, count: int, pairs: int) -> Iterator[tuple[str, float, str, str]]:
    """Measure, value, what is asked, and what it was taken on."""
    targets = {"written": "", "take": "", "take with slips": "0.97", "slips and a jump": "0.93"}
    for kind, score in alignment_scores(half, count).items():
        yield f"alignment, {kind}", score.f1, targets[kind], f"{count} lines, {score.wanted} notes"
    accepted, refused = verdicts(half, count)
    yield "own tune accepted", accepted, "", f"{count} takes with slips and a jump"
    yield "other tune refused", refused, "", f"{2 * count} takes"
    written, heard, plain = naming_scores(half, count)
    renditions = f"{5 * count} renditions, {written.wanted} figures"
    yield "naming, written line", written.f1, "0.99", renditions
    yield "naming, take heard without a mistake", heard.f1, "0.90", renditions
    yield "false figures in a plain take", plain.found / count, "below 2", f"{count} takes"
    missed = written.missed + heard.missed
    for name, target, is_dry in (
        ("rendered audio", "0.90", True),
        ("rendered audio in the synth's room", "", False),
    ):
        ornate, bare = heard_scores(half, count, is_dry=is_dry)
        missed += ornate.missed
        yield f"naming, {name}", ornate.f1, target, f"{count} takes, {ornate.wanted} figures"
        yield f"false figures, {name}", bare.found / count, "below 2", f"{count} plain takes"
    found = additions(half, pairs)
    kinds = ((found.named, "0.80"), (found.random_in_tune, "below 0.45"), (found.random_nearby, "below 0.45"))
    names = ("additions of a setting named", "random notes of the tune named", "random notes nearby named")
    for name, (named, target) in zip(names, kinds, strict=True):
        yield name, named / max(found.groups, 1), target, f"{found.groups} groups, {pairs} pairs of settings"
    print("missed:", dict(missed.most_common(12)), file=sys.stderr)


def is_below(value: float, target: str) -> bool:
    """True when a value does not reach what is asked: at least a number, or below one."""
    if not target:
        return False
    return value >= float(target.removeprefix("below ")) if target.startswith("below") else value < float(target)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--half", choices=("train", "test"), default="test")
    parser.add_argument("--tunes", type=int, default=100)
    parser.add_argument("--pairs", type=int, default=400)
    options = parser.parse_args()
    start = time.perf_counter()
    missed = []
    print(f"{'measure':<44}{'value':>8}  {'asked':<12}on")
    for name, value, target, material in rows(options.half, options.tunes, options.pairs):
        print(f"{name:<44}{value:>8.4f}  {target:<12}{material}", flush=True)
        if is_below(value, target):
            missed.append(f"{name}: {value:.4f}, asked {target}")
    print(f"{time.perf_counter() - start:.0f} s")
    print("Below target: " + ("; ".join(missed) or "none") + ".")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
