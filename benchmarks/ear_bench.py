"""The ear on takes of recorded notes: players, rooms and a phone that the net was not trained on, in one run.

    python benchmarks/ear_bench.py NOTES [--tunes 8] [--figures 8] [--alone]
    python benchmarks/ear_bench.py NOTES --own FOLDER     # and on corrected recordings of one's own

NOTES is a folder of recorded single notes (see `tools.train_listener.notes`; those of the test voices are read).
Measured are F1 of notes (onset within 50 ms, pitch within 50 cents; `mir_eval`), false octaves, F1 of named figures
where the arrangement is known (technique and first plain note; scoops, falls, doits, ghosts and vibrato apart), false
figures on plain takes, held notes with vibrato, and whether takes are taken for their own tune and refused for others.
basic-pitch and librosa's pyin (with the ear's segmentation) hear the same takes where they are installed; `--alone`
leaves them out.

A folder of one's own holds recordings, each beside a text file of the same name (`take.wav`, `take.txt`) with a line
a note: onset and offset in seconds, MIDI number. `fioritura transcribe take.wav --json` prints what was heard under
`heard`, to be corrected; nothing leaves the machine.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from importlib.util import find_spec
from pathlib import Path
from typing import Final

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.listen_bench import OTHERS, Listener, f_measure, measured, ours
from benchmarks.name_bench import Score
from benchmarks.recorded_takes import asked_takes, held_takes, recorded_takes, test_voices
from fioritura.listening.align import align
from fioritura.listening.event import Event, events_of_take
from fioritura.listening.hear import hear
from fioritura.listening.name import name_take
from fioritura.listening.notes import PlayedNote
from fioritura.listening.pitch import RATE
from fioritura.techniques.families import INFLECTIONS
from fioritura.techniques.table import all_techniques
from fioritura.tune import Tune
from tests.listening_takes import Sounding, Truth
from tools.train_listener.notes import Voices

NOTE_TARGETS: Final = {
    "dry": 0.995,
    "room": 0.985,
    "very wet": 0.97,
    "phone": 0.97,
    "backing -20 dB": 0.99,
    "backing -10 dB": 0.965,
    "own band in the room -5 dB": 0.97,
}
FIGURE_TARGETS: Final = {
    "dry": 0.98,
    "room": 0.95,
    "very wet": 0.92,
    "phone": 0.93,
    "backing -20 dB": 0.95,
    "backing -10 dB": 0.92,
    "own band in the room -5 dB": 0.92,
}
MOST_SPLIT: Final = 0.01
MOST_OCTAVES: Final = 0.003
LEAST_REFUSED: Final = 0.99
MOST_OWN_REFUSED: Final = 0.005
FOREIGN: Final = 200
_INFLECTED: Final = frozenset(one.id for one in all_techniques().values() if one.family == INFLECTIONS.id)

Below = list[str]


def notes_table(voices: Voices, count: int, listeners: dict[str, Listener]) -> Iterator[str]:
    """Print F1 of notes of every listener under every condition; what lies below its target."""
    rows: dict[str, dict[str, Counter[str]]] = {}
    for row, take in recorded_takes(voices, count):
        for name, listener in listeners.items():
            counts = rows.setdefault(row, {}).setdefault(name, Counter())
            counts.update(with_octaves(take.notes, listener(take)))
    print(f"\n## Notes of {', '.join(voices)}\n")
    others = [name for name in listeners if listeners[name] is not ours]
    head = ["takes", "notes", "F1", "with offset", "octaves", "onsets, mean", "sd", *others]
    print(f"| {' | '.join(head)} |")
    print("|" + "---|" * (7 + len(others)))
    for row, by_name in rows.items():
        n = by_name["fioritura"]
        mean = n["late"] / max(1, n["timed"])
        spread = (n["late squared"] / max(1, n["timed"]) - mean**2) ** 0.5
        cells = [row, str(n["truth"]), f"{f_measure(n):.4f}", f"{f_measure(n, 'matched with offset'):.4f}"]
        cells += [str(n["octaves"]), f"{mean / 10:+.1f} ms", f"{spread / 10:.1f} ms"]
        print("| " + " | ".join([*cells, *(f"{f_measure(by_name[one]):.3f}" for one in others)]) + " |", flush=True)
        if f_measure(n) < NOTE_TARGETS[row]:
            yield f"{row}: F1 of notes {f_measure(n):.4f}, asked {NOTE_TARGETS[row]}"
        if n["octaves"] > MOST_OCTAVES * n["truth"]:
            yield f"{row}: {n['octaves']} octaves of {n['truth']} notes"


def with_octaves(truth: Sequence[Truth], notes: Sequence[PlayedNote]) -> Counter[str]:
    """`measured`, with wrong octaves, and how late onsets are: sums over tenths of milliseconds."""
    counts = measured(truth, notes)
    for note in notes:
        for one in truth:
            late = round(10_000 * (note.onset_sec - one.onset_sec))
            if abs(late) > 500:
                continue
            if note.midi == one.midi:
                counts.update({"timed": 1, "late": late, "late squared": late**2})
            elif abs(note.midi - one.midi) == 12:
                counts["octaves"] += 1
    return counts


def held_notes(voices: Voices) -> Iterator[str]:
    """Print how many notes are heard for long ones with vibrato."""
    held = [(len(take.notes), len(ours(take))) for _, take in held_takes(voices)]
    wanted, found = sum(one for one, _ in held), sum(one for _, one in held)
    print(f"\nHeld notes with vibrato of 40 cents: {found} heard for {wanted}.", flush=True)
    if abs(found - wanted) > MOST_SPLIT * wanted:
        yield f"held notes: {found} for {wanted}"


def figures_table(voices: Voices, count: int) -> Iterator[str]:
    """Print F1 of named figures, false figures on plain takes, and verdicts on own and other tunes."""
    scores: dict[str, Score] = {}
    heard: list[tuple[Tune, list[Event]]] = []
    refused: Counter[str] = Counter()
    for row, take in asked_takes(voices, count):
        played = hear(take.wave, RATE)
        naming = name_take(take.tune, played, take.figures)
        wanted = Counter[object]((one.technique, one.anchors[0]) for one in take.figures)
        found = Counter[object]((one.technique, one.anchors[0]) for one in naming.figures)
        scores.setdefault(row, Score()).add(_fingered(wanted), _fingered(found))
        refused[row] += not naming.alignment.is_this_tune
        heard.append((take.tune, events_of_take(played)))
    plain: Counter[str] = Counter()
    for row, take in asked_takes(voices, count, is_plain=True):
        found = Counter[object](
            (one.technique, one.anchors[0]) for one in name_take(take.tune, hear(take.wave, RATE)).figures
        )
        plain[row] += sum(_fingered(found).values())
    print("\n## Named figures\n\n| takes | figures | F1 | own tune refused | false figures a plain take |")
    print("|---|---|---|---|---|")
    for row, score in scores.items():
        print(f"| {row} | {score.wanted} | {score.f1:.3f} | {refused[row]} of {count} | {plain[row] / count:.2f} |")
        if score.f1 < FIGURE_TARGETS[row]:
            yield f"{row}: F1 of figures {score.f1:.3f}, asked {FIGURE_TARGETS[row]}"
    if sum(refused.values()) > MOST_OWN_REFUSED * len(heard):
        yield f"own tunes refused: {sum(refused.values())} of {len(heard)}"
    yield from _foreign(heard)


def _fingered(figures: Counter[object]) -> Counter[object]:
    """Figures of fingers: without scoops, falls, doits, ghosts and vibrato."""
    return Counter({key: n for key, n in figures.items() if isinstance(key, tuple) and key[0] not in _INFLECTED})


def _foreign(heard: Sequence[tuple[Tune, list[Event]]]) -> Iterator[str]:
    dice = random.Random(3)
    pairs = [(tune, events) for tune, _ in heard for other, events in heard if other.title != tune.title]
    chosen = dice.sample(pairs, min(FOREIGN, len(pairs)))
    refused = sum(not align(tune, events).is_this_tune for tune, events in chosen)
    print(f"\nOther tunes refused: {refused} of {len(chosen)}.", flush=True)
    if refused < LEAST_REFUSED * len(chosen):
        yield f"other tunes refused: {refused} of {len(chosen)}"


def own_takes(folder: Path) -> None:
    """Print F1 of notes on recordings that somebody has corrected."""
    import soundfile

    print("\n## Own recordings\n\n| recording | notes | F1 | with offset |\n|---|---|---|---|")
    for text in sorted(folder.glob("*.txt")):
        sound = next((one for one in sorted(folder.glob(f"{text.stem}.*")) if one != text), None)
        if sound is None:
            continue
        rows = [line.split() for line in text.read_text(encoding="utf-8").splitlines() if line.strip()]
        truth = tuple(Truth(float(start), float(end), int(midi)) for start, end, midi in rows)
        wave, rate = soundfile.read(sound, always_2d=True)
        n = measured(truth, ours(Sounding("", truth, wave.mean(axis=1), rate)))
        print(f"| {sound.name} | {len(truth)} | {f_measure(n):.3f} | {f_measure(n, 'matched with offset'):.3f} |")


def speed(voices: Voices, count: int) -> float:
    """Seconds of sound heard in a second of processor time."""
    waves = [take.wave.astype(np.float32) for row, take in recorded_takes(voices, count) if row == "room"]
    hear(waves[0], RATE)
    start = time.process_time()
    for wave in waves:
        hear(wave, RATE)
    return sum(wave.size for wave in waves) / RATE / (time.process_time() - start)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("notes", type=Path, help="a folder of recorded notes")
    parser.add_argument("--tunes", type=int, default=8, help="takes of plain lines to a condition")
    parser.add_argument("--figures", type=int, default=8, help="takes of renditions to a condition")
    parser.add_argument("--alone", action="store_true", help="measure no other listeners")
    parser.add_argument("--own", type=Path, help="a folder of corrected recordings")
    options = parser.parse_args()
    listeners: dict[str, Listener] = {"fioritura": ours}
    if not options.alone:
        names = ("basic-pitch", "librosa.pyin, same segmentation")
        listeners |= {name: OTHERS[name][1] for name in names if find_spec(OTHERS[name][0])}
    voices = test_voices(options.notes)
    below = [*notes_table(voices, options.tunes, listeners), *held_notes(voices)]
    below += figures_table(voices, options.figures)
    print(f"\nSpeed: {speed(voices, 4):.0f} x real time on one core.")
    if options.own:
        own_takes(options.own)
    print("\nBelow what is asked: " + ("; ".join(below) or "none") + ".")
    return 1 if below else 0


if __name__ == "__main__":
    sys.exit(main())
