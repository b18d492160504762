"""Does the report name what went wrong, say nothing false, and know how sure it is? Takes with one fault each, as a table.

Run it from the repository's root::

    python -m benchmarks.fault_bench                       # the played notes given, without sound: a minute or two
    python -m benchmarks.fault_bench --notes FOLDER        # the notes played on recorded ones, in two rooms, and heard
    python -m benchmarks.fault_bench --half train          # tunes, players and voices on which settings may be chosen
    python -m benchmarks.fault_bench --half train --evidence   # how often each claim is right, by the evidence for it

Every kind of fault of `tests.faulty_takes` is made on each of six tunes. The first sentence of the report must name it
(`tests.report_checker.NAMED`) and be true; every sentence is held against what is known of the take. FOLDER holds recorded
notes as `tools.train_listener.notes` reads them: the voices kept for tests on the test half, those kept for trials on the
train half. The reliability table counts all claims: what happened, slips, and ornaments that are said to have been played.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path
from typing import Final

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))

from fioritura.listening import calibration, report
from fioritura.listening.advice import headline_of, praise_for
from fioritura.listening.hear import hear
from fioritura.listening.notes import Take
from fioritura.listening.pitch import RATE
from fioritura.listening.report import report_on
from fioritura.listening.rows import Report
from fioritura.words import say
from tests.faulty_takes import FAULTS, Truth, fault_takes, heard_perfectly
from tests.played_lines import ALTO, Half
from tests.report_checker import is_true, names_the_fault, sentences, true_figures, true_slips
from tools.train_listener import dry
from tools.train_listener.lines import Event
from tools.train_listener.notes import TEST_VOICES, TRIAL_VOICES, Voices, read_notes
from tools.train_listener.trials import CONDITIONS

ROOMS: Final = ("room", "very wet")
LEAST_NAMED: Final = 0.9
LEAST_TRUE: Final = 0.95
EDGES: Final = (0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0001)


@dataclass
class Tally:
    """What was found of one kind of fault."""

    takes: int = 0
    named: int = 0
    true: int = 0
    """Takes of which nothing false was said."""
    said: int = 0
    false: int = 0


@dataclass
class Result:
    """Tallies by kind, and all claims: (what, confidence, whether it is right)."""

    kinds: dict[str, Tally] = field(default_factory=dict)
    claims: list[tuple[str, float, bool]] = field(default_factory=list)
    refused: int = 0


def heard_takes(truth: Truth, voices: Voices | None, seed: int) -> Iterator[Take]:
    """The take as it is heard: without fault, or played on a voice in each room."""
    if voices is None:
        yield heard_perfectly(truth)
        return
    dice = np.random.default_rng([seed, truth.seed, *truth.tune.title.encode()[:8], *truth.kind.encode()[:6]])
    voice = voices[list(voices)[int(dice.integers(len(voices)))]]
    wave = dry.played(_events(truth, dice), voice, dice, 0.0, int((truth.offsets[-1] + 0.6) * RATE), drift_cents=0.0)
    for room in ROOMS:
        spoiled = CONDITIONS[room](wave, dice, wave, wave)
        yield hear(np.asarray(spoiled / np.abs(spoiled).max() * 0.5, np.float64), RATE)


def _events(truth: Truth, dice: np.random.Generator) -> list[Event]:
    times = list(zip(truth.tones, truth.onsets, truth.offsets, strict=True))
    found = []
    for number, (tone, onset, offset) in enumerate(times):
        before = times[number - 1] if number else None
        joins = before is not None and onset - before[2] < 0.02 and before[0].midi != tone.midi
        is_tongued = not joins or dice.random() < 0.6
        found.append(
            Event(
                onset,
                offset,
                tone.midi,
                is_tongued=is_tongued,
                level_db=float(dice.normal(0, 3)),
                closure_db=30.0,
                detune_cents=tone.cents,
            )
        )
    return found


def measured(half: Half, count: int, seed: int, voices: Voices | None, kinds: tuple[str, ...], shows: bool) -> Result:
    """All takes, heard, reported on and held against their truth."""
    result = Result()
    for truth in fault_takes(half, count, seed, kinds):
        for take in heard_takes(truth, voices, seed):
            naming, found = report_on(truth.tune, take, truth.asked, instrument=ALTO, tempo=truth.tempo)
            if not naming.alignment.is_this_tune:
                result.refused += 1
            _count(result, truth, found, shows)
    return result


def _count(result: Result, truth: Truth, found: Report, shows: bool) -> None:
    tally = result.kinds.setdefault(truth.kind, Tally())
    said = list(sentences(found, headline_of(found), praise_for(found)))
    false = [one for one in said if not is_true(one, truth)]
    is_named = names_the_fault(found, truth)
    tally.takes += 1
    tally.named += is_named
    tally.true += not false
    tally.said += len(said)
    tally.false += len(false)
    if shows and (false or not is_named):
        print(
            f"{truth.kind} | {truth.tune.title[:24]} | {'' if is_named else 'NOT NAMED: ' + say(headline_of(found))}"
        )
        for one in false:
            print(f"    false: {say(one)}")
    result.claims += [(one.kind.value, one.confidence, is_true(one.words, truth)) for one in found.happenings]
    result.claims += [("slip", sure, right) for sure, right in true_slips(found, truth)]
    result.claims += [(f"figure {status}", sure, right) for status, sure, right in true_figures(found, truth)]


def table(result: Result) -> list[str]:
    """Print the tallies; what lies below its target, in words."""
    print("| kind | takes | named by the first sentence | nothing false | sentences | false |")
    print("|---|---|---|---|---|---|")
    for kind, one in result.kinds.items():
        print(f"| {kind} | {one.takes} | {one.named} | {one.true} | {one.said} | {one.false} |")
    takes = sum(one.takes for one in result.kinds.values())
    named = sum(one.named for one in result.kinds.values()) / takes
    true = sum(one.true for one in result.kinds.values()) / takes
    said, false = (sum(getattr(one, name) for one in result.kinds.values()) for name in ("said", "false"))
    print(f"\n{takes} takes, {result.refused} refused: named {named:.1%}, nothing false {true:.1%}", end="")
    print(f" ({false} of {said} sentences false).")
    below = [] if named >= LEAST_NAMED else [f"named {named:.1%}, target {LEAST_NAMED:.0%}"]
    return below + ([] if true >= LEAST_TRUE else [f"nothing false {true:.1%}, target {LEAST_TRUE:.0%}"])


def reliability(claims: list[tuple[str, float, bool]]) -> None:
    """Print how many claims of each confidence are right."""
    print("\n| confidence | claims | mean | right |")
    print("|---|---|---|---|")
    for low, high in pairwise(EDGES):
        some = [(sure, right) for _, sure, right in claims if low <= sure < high]
        if some:
            mean, share = (float(np.mean(column)) for column in zip(*some, strict=True))
            print(f"| {low:.2f} to {min(high, 1.0):.2f} | {len(some)} | {mean:.2f} | {share:.2f} |")


def evidence(claims: list[tuple[str, float, bool]]) -> None:
    """Print, for each claim, how often it is right by the evidence for it."""
    for what in sorted({what for what, _, _ in claims}):
        own = sorted((sure, right) for each, sure, right in claims if each == what)
        cells = []
        for part in np.array_split(np.arange(len(own)), max(1, min(6, len(own) // 8))):
            some = [own[n] for n in part]
            cells.append(f"{np.mean([s for s, _ in some]):.2f}: {np.mean([r for _, r in some]):.2f} ({len(some)})")
        print(f"{what:24} " + "  ".join(cells))


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--half", choices=("train", "test"), default="test")
    parser.add_argument("--tunes", type=int, default=6)
    parser.add_argument("--seeds", type=int, default=1, help="players: takes of each fault on each tune")
    parser.add_argument("--notes", type=Path, help="a folder of recorded notes, to play the takes on")
    parser.add_argument("--kinds", nargs="+", default=list(FAULTS), choices=list(FAULTS))
    parser.add_argument("--evidence", action="store_true", help="leave confidence uncalibrated, and print it")
    parser.add_argument("--show", action="store_true", help="print what was not named, and what was false")
    options = parser.parse_args()
    if options.evidence:
        calibration.POINTS.clear()
        vars(report)["LEAST"] = 0.0
    names = TEST_VOICES if options.half == "test" else TRIAL_VOICES
    voices = {name: read_notes(options.notes / name)["."] for name in names} if options.notes else None
    start = time.process_time()
    results = []
    for turn in range(options.seeds):
        seed = 1 + turn + (100 if options.half == "test" else 0)
        results.append(measured(options.half, options.tunes, seed, voices, tuple(options.kinds), options.show))
    whole = Result()
    for one in results:
        whole.refused += one.refused
        whole.claims += one.claims
        for kind, tally in one.kinds.items():
            sums = Counter(vars(whole.kinds.get(kind, Tally()))) + Counter(vars(tally))
            whole.kinds[kind] = Tally(**sums)
    below = table(whole)
    reliability(whole.claims)
    if options.evidence:
        evidence(whole.claims)
    print(f"\n{time.process_time() - start:.0f} s. Below target: {'; '.join(below) or 'none'}.")
    return 1 if below else 0


if __name__ == "__main__":
    sys.exit(main())
