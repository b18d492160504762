"""The ear's measures, as a table: notes, grace notes, scoops and speed, beside other pitch trackers.

Run it from the repository's root::

    python benchmarks/listen_bench.py                # the test half
    python benchmarks/listen_bench.py --half train   # the half on which settings may be chosen
    python benchmarks/listen_bench.py --others       # beside librosa's pyin and yin, with the same segmentation, and
                                                     # the transcriber basic-pitch, as far as they are installed

Notes are matched by `mir_eval.transcription` (Raffel et al. 2014): onset within 50 ms, pitch within 50 cents; with
offsets also within 50 ms or 20 % of the length. A grace note is found when it is matched; a scoop is found when its
note is matched and carries a scoop, and false when any other note does.
"""

from __future__ import annotations

import argparse
import contextlib
import io
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import Final

import mir_eval
import numpy as np
import soundfile

sys.path.insert(0, str(Path(__file__).parents[1]))

from fioritura.listening.hear import hear, notes_of
from fioritura.listening.notes import Attack, InflectionKind, PlayedNote
from fioritura.listening.pitch import HOP, RATE, Dips, Floats, Track, Tracker
from tests.listening_takes import (
    CONDITIONS,
    ORNATE,
    PROGRAMS,
    TIMBRES,
    WET,
    Half,
    Sounding,
    Truth,
    formula_take,
    synthesised_take,
    tune_names,
)

Listener = Callable[[Sounding], tuple[PlayedNote, ...]]
TUNES: Final = 12
LONG_GRACE_SEC: Final = 0.05
OTHERS_UNCLEAR: Final = 0.05
TARGETS: Final = {"dry": 0.96, "room": 0.94, "noise": 0.85, "soundfont": 0.90}
ORNAMENT_TARGETS: Final = {"long graces": 0.95, "short graces": 0.75, "scoops": 0.85}
MOST_FALSE: Final = 0.05
LEAST_SPEED: Final = 60.0
"""Seconds of sound heard in a second of processor time."""


def takes(half: Half, count: int) -> Iterator[tuple[str, Sounding]]:
    """All takes of a half with the name of their row."""
    names = tune_names(half, count)
    for row, condition in enumerate((*CONDITIONS, WET, ORNATE)):
        for place, name in enumerate(names):
            instrument = list(TIMBRES)[place % len(TIMBRES)]
            yield condition, formula_take(name, condition, instrument, (0, place, row))
    for row, instrument in enumerate(PROGRAMS):
        for place, name in enumerate(names[: max(1, count // 2)]):
            yield f"soundfont {instrument}", synthesised_take(name, instrument, (1, place, row))


# Listeners ----------------------------------------------------------------------------------------------------


def ours(take: Sounding) -> tuple[PlayedNote, ...]:
    return hear(take.wave, take.rate).notes


def librosa_pyin(take: Sounding) -> tuple[PlayedNote, ...]:
    import librosa

    samples, track = _prepared(take)
    pitch, _, _ = librosa.pyin(
        samples, fmin=60, fmax=2200, sr=RATE, hop_length=HOP, frame_length=1024, fill_na=np.nan
    )
    return tuple(notes_of(_with_pitch(track, pitch)))


def librosa_yin(take: Sounding) -> tuple[PlayedNote, ...]:
    import librosa

    samples, track = _prepared(take)
    pitch = librosa.yin(samples, fmin=60, fmax=2200, sr=RATE, hop_length=HOP, frame_length=1024)
    return tuple(notes_of(_with_pitch(track, pitch)))


def basic_pitch(take: Sounding) -> tuple[PlayedNote, ...]:
    from basic_pitch.inference import predict

    with tempfile.NamedTemporaryFile(suffix=".wav") as file, contextlib.redirect_stdout(io.StringIO()):
        soundfile.write(file.name, take.wave, take.rate)
        _, _, events = predict(file.name, _basic_pitch_model(), minimum_frequency=60, maximum_frequency=2200)
    return tuple(
        PlayedNote(start, end, 100 * (midi - 69), midi, 0.0, Attack.TONGUED)
        for start, end, midi, *_ in sorted(events)
    )


@cache
def _basic_pitch_model() -> object:
    from basic_pitch import ICASSP_2022_MODEL_PATH
    from basic_pitch.inference import Model

    return Model(ICASSP_2022_MODEL_PATH)


OTHERS: Final[dict[str, tuple[str, Listener]]] = {
    "librosa.pyin, same segmentation": ("librosa", librosa_pyin),
    "librosa.yin, same segmentation": ("librosa", librosa_yin),
    "basic-pitch": ("basic_pitch", basic_pitch),
}
"""Other listeners by name, with the package that each needs."""


def _prepared(take: Sounding) -> tuple[Floats, Track]:
    import soxr

    samples = soxr.resample(take.wave.astype(np.float32), take.rate, RATE)
    tracker = Tracker()
    tracker.feed(samples)
    return samples, tracker.finish()


def _with_pitch(track: Track, pitch_hz: np.ndarray) -> Track:
    """The track with another tracker's pitch, all of it taken for clean; its frames are centred two hops earlier.

    A tracker's own doubt (pyin's voiced probability) makes it lose more notes than it saves, tried on the train half.
    """
    frames = len(track)
    cents = np.full_like(track.heard.cents, np.nan)
    unclear = np.ones_like(track.heard.aperiodicity)
    with np.errstate(invalid="ignore", divide="ignore"):
        moved = 1200 * np.log2(pitch_hz[2 : frames + 2] / 440)
    cents[: moved.size, 0] = moved
    unclear[: moved.size, 0] = np.where(np.isfinite(moved), OTHERS_UNCLEAR, 1)
    nothing = Dips(np.full_like(cents, np.nan), np.ones_like(unclear))
    return Track(Dips(cents, unclear), nothing, track.level_db, track.hiss_db, track.bands_db)


# Measures -----------------------------------------------------------------------------------------------------


def measured(truth: Sequence[Truth], notes: Sequence[PlayedNote]) -> Counter[str]:
    """Counts for one take; the shares follow from their sums."""
    counts: Counter[str] = Counter(truth=len(truth), found=len(notes))
    if not notes:
        return counts
    reference = np.array([(note.onset_sec, note.offset_sec) for note in truth])
    estimate = np.array([(note.onset_sec, max(note.offset_sec, note.onset_sec + 0.01)) for note in notes])
    pitches = [
        np.array([440 * 2 ** ((note.midi - 69) / 12) for note in truth]),
        [note.frequency_hz for note in notes],
    ]
    match = mir_eval.transcription.match_notes
    pairs = dict(match(reference, pitches[0], estimate, np.array(pitches[1]), offset_ratio=None))
    counts["matched"] = len(pairs)
    counts["matched with offset"] = len(match(reference, pitches[0], estimate, np.array(pitches[1])))
    for place, note in enumerate(truth):
        if note.is_grace:
            kind = "long" if note.offset_sec - note.onset_sec >= LONG_GRACE_SEC else "short"
            counts[f"{kind} graces"] += 1
            counts[f"{kind} graces found"] += place in pairs
        if note.scoop:
            counts["scoops"] += 1
    scooped = {place for place, note in enumerate(notes) if note.inflection(InflectionKind.SCOOP)}
    true = {pairs[place] for place, note in enumerate(truth) if note.scoop and place in pairs}
    counts["scoops found"] = len(scooped & true)
    counts["scoops false"] = len(scooped - true)
    return counts


def f_measure(counts: Counter[str], matched: str = "matched") -> float:
    return 2 * counts[matched] / max(1, counts["truth"] + counts["found"])


def share(part: int, whole: int) -> str:
    return f"{part / whole:6.1%} ({part}/{whole})" if whole else "-"


def table(half: Half, count: int, listener: Listener) -> dict[str, Counter[str]]:
    rows: dict[str, Counter[str]] = {}
    for row, take in takes(half, count):
        rows.setdefault(row, Counter()).update(measured(take.notes, listener(take)))
    return rows


def speed(half: Half, listener: Listener, count: int = 4) -> float:
    """Seconds of sound heard in a second of processor time."""
    played = [take for row, take in takes(half, count) if row == "room"]
    start = time.process_time()
    for take in played:
        listener(take)
    return sum(take.wave.size / take.rate for take in played) / (time.process_time() - start)


def report(name: str, rows: dict[str, Counter[str]]) -> None:
    print(f"\n## {name}\n")
    print("| takes | notes | F1 | precision | recall | F1 with offset | graces ≥ 50 ms | 30-50 ms | scoops | false |")
    print("|---|---|---|---|---|---|---|---|---|---|")
    for row, n in rows.items():
        cells = [
            row,
            str(n["truth"]),
            f"{f_measure(n):.3f}",
            f"{n['matched'] / max(1, n['found']):.3f}",
            f"{n['matched'] / n['truth']:.3f}",
            f"{f_measure(n, 'matched with offset'):.3f}",
            share(n["long graces found"], n["long graces"]),
            share(n["short graces found"], n["short graces"]),
            share(n["scoops found"], n["scoops"]),
            "-" if row.startswith("soundfont") else str(n["scoops false"]),
        ]
        print("| " + " | ".join(cells) + " |")


def missed(rows: dict[str, Counter[str]]) -> list[str]:
    """What lies below its target, in words."""
    found = []
    for row, counts in rows.items():
        target = next((value for name, value in TARGETS.items() if row == name or row.startswith(f"{name} ")), 0.0)
        if f_measure(counts) < target:
            found.append(f"{row}: F1 {f_measure(counts):.3f}, target {target}")
    ornate = rows[ORNATE]
    for name, target in ORNAMENT_TARGETS.items():
        if (found_share := ornate[f"{name} found"] / ornate[name]) < target:
            found.append(f"{name}: {found_share:.1%} found, target {target:.0%}")
    if ornate["scoops false"] > MOST_FALSE * (ornate["scoops found"] + ornate["scoops false"]):
        found.append(f"scoops: {ornate['scoops false']} false")
    return found


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--half", choices=("train", "test"), default="test")
    parser.add_argument("--tunes", type=int, default=TUNES, help="tunes to each row (half as many by soundfont)")
    parser.add_argument("--others", action="store_true", help="measure other listeners too (slow)")
    arguments = parser.parse_args()
    listeners: dict[str, Listener] = {"fioritura": ours}
    if arguments.others:
        listeners |= {name: listener for name, (package, listener) in OTHERS.items() if find_spec(package)}
    below: list[str] = []
    for name, listener in listeners.items():
        rows = table(arguments.half, arguments.tunes, listener)
        report(name, rows)
        ratio = speed(arguments.half, listener)
        print(f"\nSpeed: {ratio:.0f} x real time on one core.", flush=True)
        if listener is ours:
            below = missed(rows)
            if ratio < LEAST_SPEED:
                below.append(f"speed: {ratio:.0f} x real time, target {LEAST_SPEED:.0f}")
    print("\nBelow target: " + ("; ".join(below) or "none") + ".")
    return 1 if below else 0


if __name__ == "__main__":
    sys.exit(main())
