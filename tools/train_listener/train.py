"""Train the net in one or several runs, each limited in time; a run goes on where the last checkpoint stopped.

    python -m tools.train_listener.train DATA OUT --seconds 500 --total 1500

DATA holds `notes.npz` and `bands.npz`, and `checkpoint.pt` of a run before; OUT gets `checkpoint.pt`, `net.pt` (the
moving average of the weights, half precision) and `log.txt`. The rate of learning falls as a cosine over `--total`
seconds of training. `--all-voices` trains on the trial voices too, for the last run, when nothing is chosen any more.
"""

from __future__ import annotations

import argparse
import multiprocessing
import sys
import time
from copy import deepcopy
from math import cos, pi
from pathlib import Path
from typing import Any, Final

import numpy as np
import torch
from torch.nn import functional

from fioritura.listening.decode import notes_of_frames, tuning_of
from fioritura.listening.spectra import STEP_SEC
from tools.train_listener.bands import read_bands
from tools.train_listener.net import PITCH_STATES, ListenerNet, features
from tools.train_listener.notes import TEST_VOICES, TRIAL_VOICES, Voices, read_voices
from tools.train_listener.spoil import Spoiler, rooms
from tools.train_listener.stock import FRAMES, SAMPLES, SCALE, Inline, Maker, Stock
from tools.train_listener.trials import CONDITIONS, f_measure, matched

Tensor = Any

RATE_OF_LEARNING: Final = 2e-3
WARM_STEPS: Final = 200
KEPT: Final = 0.998
TRIAL_BANDS: Final = 3
NO_PLAYER: Final = 0.07
SMALL_BATCH: Final = 24


class Pool:
    """Takes on the device to draw from: the newest `lines` lines and `others` sounds to lie beside them."""

    def __init__(self, lines: int, others: int, device: str) -> None:
        self._waves = torch.zeros(lines, SAMPLES, dtype=torch.int16, device=device)
        self._truths = torch.zeros(lines, 2, FRAMES, device=device)
        self._others = torch.zeros(others, SAMPLES, dtype=torch.int16, device=device)
        self.lines = self.others = 0
        self._device = device

    def add(self, fresh: list[tuple[bool, Any, Any]]) -> list[int]:
        """Keep fresh takes, the oldest give way; the slots of the lines among them."""
        slots = []
        for is_line, wave, truth in fresh:
            if is_line:
                slot = self.lines % len(self._waves)
                self._waves[slot].copy_(torch.from_numpy(wave), non_blocking=True)
                self._truths[slot].copy_(torch.from_numpy(truth), non_blocking=True)
                slots.append(slot)
                self.lines += 1
            else:
                self._others[self.others % len(self._others)].copy_(torch.from_numpy(wave), non_blocking=True)
                self.others += 1
        return slots

    def draw(self, fresh: list[int], count: int, dice: np.random.Generator) -> tuple[Tensor, Tensor, Tensor, Tensor]:
        """Lines (the fresh ones and others by chance), pitch and onset truths, and sounds to lie beside them."""
        old = dice.integers(min(self.lines, len(self._waves)), size=max(0, count - len(fresh)))
        chosen = torch.tensor([*fresh[:count], *old.tolist()], device=self._device)
        beside = torch.from_numpy(dice.integers(min(self.others, len(self._others)), size=count)).to(self._device)
        truths = self._truths[chosen]
        return self._waves[chosen] / SCALE, truths[:, 0], truths[:, 1], self._others[beside] / SCALE


def loss_of(pitch: Tensor, onset: Tensor, true_pitch: Tensor, true_onset: Tensor) -> tuple[Tensor, Tensor]:
    """Cross-entropy of pitch states (the truth between two states shared by both), and of onsets."""
    place = ((true_pitch - 36) * 3 + 1).clamp(0, PITCH_STATES - 1.001)
    low = place.floor()
    share = (place - low)[..., None]
    logs = functional.log_softmax(pitch.float(), dim=2)
    at_low = logs.gather(2, low.long()[..., None])
    at_high = logs.gather(2, low.long()[..., None] + 1)
    sounding = -((1 - share) * at_low + share * at_high)[..., 0]
    per_frame = torch.where(true_pitch > 0, sounding, -logs[..., PITCH_STATES])
    return per_frame.mean(), functional.binary_cross_entropy_with_logits(onset.float(), true_onset)


# Trials -------------------------------------------------------------------------------------------------------


def _trial(job: tuple[Voices, list[Any], int, str]) -> tuple[str, Any, Any]:
    voices, bands, seed, condition = job
    maker = Maker(voices, bands, (777, seed))
    maker.dice = np.random.default_rng([778, seed])
    wave, pitch, onset = maker.line()
    backing = maker.beside()
    band = bands[seed % len(bands)]
    spoilt = CONDITIONS[condition](wave, np.random.default_rng([779, seed]), backing, band)
    return condition, spoilt / max(1e-6, float(np.abs(spoilt).max())) * 0.5, _notes_of_truth(pitch, onset)


def _notes_of_truth(pitch: Any, onset: Any) -> list[tuple[float, float, float]]:
    held = np.pad(onset, 1)
    begins = np.flatnonzero((onset > 0.6) & (onset >= held[:-2]) & (onset > held[2:]))
    found = []
    for begin in begins:
        inside = pitch[min(begin + 1, len(pitch) - 1)]
        if inside > 0:
            found.append((float(begin) * STEP_SEC, 0.0, float(inside)))
    return found


def make_trials(voices: Voices, bands: list[Any], count: int, processes: int) -> list[tuple[str, Any, Any]]:
    """Takes of the trial voices under every condition."""
    jobs = [(voices, bands, seed, condition) for condition in CONDITIONS for seed in range(count)]
    if processes < 2:
        return [_trial(job) for job in jobs]
    with multiprocessing.get_context("fork").Pool(processes) as pool:
        return pool.map(_trial, jobs, chunksize=2)


def try_net(net: ListenerNet, trials: list[tuple[str, Any, Any]], device: str) -> str:
    """F1, precision, recall and the mean lateness of onsets in ms for each condition, as a line each."""
    net.eval()
    net.memory.flatten_parameters()
    counts: dict[str, list[float]] = {}
    late: dict[str, list[float]] = {}
    for condition, wave, truth in trials:
        with torch.no_grad():
            pitch, onset = net(features(torch.from_numpy(wave)[None].to(device)))
        likely = torch.softmax(pitch[0].float(), dim=1).cpu().numpy()
        tuning = tuning_of(likely)
        notes = notes_of_frames(likely, torch.sigmoid(onset[0].float()).cpu().numpy(), tuning)
        found = [(note.start * STEP_SEC, note.stop * STEP_SEC, note.midi + tuning) for note in notes]
        row = counts.setdefault(condition, [0, 0, 0])
        for place, value in enumerate((matched(truth, found), len(truth), len(found))):
            row[place] += value
        for start, _, midi in found:
            late.setdefault(condition, []).extend(
                1000 * (start - one) for one, _, other in truth if abs(start - one) < 0.05 and abs(midi - other) < 0.5
            )
    lines = []
    for condition, (right, wanted, found_count) in counts.items():
        f1 = f_measure(int(right), int(wanted), int(found_count))
        lag = late.get(condition) or [0.0]
        lines.append(
            f"  {condition:<28}{f1:.4f}  p {right / max(1, found_count):.3f}  r {right / max(1, wanted):.3f}"
            f"  late {np.mean(lag):+.1f} ms sd {np.std(lag):.1f}"
        )
    return "\n".join(lines)


# The run ------------------------------------------------------------------------------------------------------


class Run:
    """A net with its optimiser and moving average, kept in a checkpoint."""

    def __init__(self, device: str, rate: float = RATE_OF_LEARNING) -> None:
        self.rate, self.warm_steps, self.is_still = rate, WARM_STEPS, False
        self.net = ListenerNet().to(device)
        self.kept = deepcopy(self.net).requires_grad_(False)
        self.optimiser = torch.optim.AdamW(self.net.parameters(), lr=rate, weight_decay=0.01)
        self.steps, self.spent_sec = 0, 0.0

    def read(self, path: Path, device: str) -> None:
        """Go on from a checkpoint."""
        state = torch.load(path, map_location=device, weights_only=True)
        self.net.load_state_dict(state["net"])
        self.kept.load_state_dict(state["kept"])
        self.optimiser.load_state_dict(state["optimiser"])
        self.steps, self.spent_sec = state["steps"], state["spent_sec"]

    def begin_again(self, is_still: bool) -> None:
        """Go on from the averaged weights at a rate of one's own; small batches hold the normalisations still."""
        self.net.load_state_dict(self.kept.state_dict())
        self.optimiser = torch.optim.AdamW(self.net.parameters(), lr=self.rate, weight_decay=0.01)
        self.steps, self.spent_sec, self.is_still = 0, 0.0, is_still

    def write(self, folder: Path, spent_sec: float) -> None:
        """Keep a checkpoint and the averaged net."""
        state = {
            "net": self.net.state_dict(),
            "kept": self.kept.state_dict(),
            "optimiser": self.optimiser.state_dict(),
            "steps": self.steps,
            "spent_sec": spent_sec,
        }
        half = {name: one.half() if one.is_floating_point() else one for name, one in self.kept.state_dict().items()}
        for name, value in (("checkpoint.pt", state), ("net.pt", half)):
            torch.save(value, folder / f"{name}.new")
            (folder / f"{name}.new").replace(folder / name)

    def step(self, takes: tuple[Tensor, ...], spoil: Spoiler, progress: float) -> tuple[float, float]:
        """One step; the losses of pitch and onset."""
        dry, true_pitch, true_onset, beside = takes
        device = dry.device
        has_player = torch.rand(len(dry), device=device, generator=spoil.dice) >= NO_PLAYER
        has_beside = (torch.rand(len(dry), device=device, generator=spoil.dice) < 0.6) | ~has_player
        true_pitch = torch.where(has_player[:, None], true_pitch, torch.full_like(true_pitch, -1))
        true_onset = true_onset * has_player[:, None]
        with torch.no_grad():
            spectra = features(spoil(dry, beside, has_player, has_beside.float()))
        rate = self.rate * min(1, (self.steps + 1) / self.warm_steps) * (0.01 + 0.99 * 0.5 * (1 + cos(pi * progress)))
        for group in self.optimiser.param_groups:
            group["lr"] = rate
        self.net.train()
        if self.is_still:
            for layer in self.net.modules():
                if isinstance(layer, torch.nn.modules.batchnorm._BatchNorm):
                    layer.eval()
        with torch.autocast(device.type, torch.bfloat16, enabled=device.type == "cuda"):
            pitch, onset = self.net(spectra)
        of_pitch, of_onset = loss_of(pitch, onset, true_pitch, true_onset)
        self.optimiser.zero_grad(set_to_none=True)
        (of_pitch + 4 * of_onset).backward()
        torch.nn.utils.clip_grad_norm_(self.net.parameters(), 1.0)
        self.optimiser.step()
        self.steps += 1
        self._keep()
        return of_pitch.detach(), of_onset.detach()

    def _keep(self) -> None:
        share = min(KEPT, (1 + self.steps) / (10 + self.steps))
        with torch.no_grad():
            for old, new in zip(self.kept.state_dict().values(), self.net.state_dict().values(), strict=True):
                if old.is_floating_point():
                    old.lerp_(new.to(old.dtype), 1 - share)
                else:
                    old.copy_(new)


def main() -> int:
    """Train for some time."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("data", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--checkpoint", type=Path, help="to go on from; DATA/checkpoint.pt unless told")
    parser.add_argument("--seconds", type=float, default=500.0, help="of this run, everything included")
    parser.add_argument("--total", type=float, default=1500.0, help="of training in all runs")
    parser.add_argument("--batch", type=int, default=64)
    parser.add_argument("--processes", type=int, default=15)
    parser.add_argument("--pool", type=int, default=16384)
    parser.add_argument("--rooms", type=int, default=1600)
    parser.add_argument("--trials", type=int, default=16)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--rate", type=float, default=RATE_OF_LEARNING, help="of learning, at the beginning")
    parser.add_argument("--again", action="store_true", help="begin again from the averaged weights, gently")
    parser.add_argument("--all-voices", action="store_true")
    options = parser.parse_args()
    start = time.monotonic()
    device = "cuda" if torch.cuda.device_count() else "cpu"
    voices, bands = read_voices(options.data / "notes.npz"), read_bands(options.data / "bands.npz")
    kept_out = TEST_VOICES if options.all_voices else (*TEST_VOICES, *TRIAL_VOICES)
    own = {name: notes for name, notes in voices.items() if name not in kept_out}
    tried = {name: notes for name, notes in voices.items() if name in TRIAL_VOICES}
    few = options.processes == 0
    stock = (
        Inline(own, bands[TRIAL_BANDS:], options.seed)
        if few
        else Stock(own, bands[TRIAL_BANDS:], options.seed, options.processes)
    )
    trials = make_trials(tried, bands[:TRIAL_BANDS], options.trials, min(4, options.processes))
    options.out.mkdir(parents=True, exist_ok=True)
    with (options.out / "log.txt").open("a", encoding="utf-8") as log:

        def say(text: str) -> None:
            print(text, flush=True)
            print(text, file=log, flush=True)

        say(f"{sorted(own)}; {len(bands)} bands; {len(trials)} trials; {time.monotonic() - start:.0f} s")
        train(options, stock, trials, device, start, say)
    stock.close()
    return 0


def train(options: Any, stock: Stock | Inline, trials: Any, device: str, start: float, say: Any) -> None:
    """The loop: until the time is up, with a look at the trials now and then."""
    torch.backends.cuda.matmul.allow_tf32 = True
    torch.backends.cudnn.allow_tf32 = torch.backends.cudnn.benchmark = True
    torch.manual_seed(options.seed)
    run = Run(device, options.rate)
    path = options.checkpoint or options.data / "checkpoint.pt"
    if path.exists():
        run.read(path, device)
        if options.again:
            run.begin_again(options.batch < SMALL_BATCH)
    dice = np.random.default_rng([options.seed, run.steps])
    maker = torch.Generator(device).manual_seed(options.seed + run.steps)
    spoil = Spoiler(rooms(options.rooms, device, options.seed), maker)
    pool = Pool(options.pool, max(64, options.pool // 4), device)
    while pool.lines < min(options.pool, 24 * options.batch) or pool.others < min(options.batch, 16):
        pool.add(stock.take(64, wait=True))
    begun = time.monotonic()
    say(f"step {run.steps}, {run.spent_sec:.0f} s spent; {pool.lines} lines ready after {begun - start:.0f} s")
    sums, count, told, saved = torch.zeros(2, device=device), 0, begun, begun
    looked = begun
    while (now := time.monotonic()) - start < options.seconds - 25 * (device == "cuda"):
        fresh = pool.add(stock.take(options.batch, wait=False))
        takes = pool.draw(fresh, options.batch, dice)
        progress = min(1.0, (run.spent_sec + now - begun) / options.total)
        sums += torch.stack(run.step(takes, spoil, progress))
        count += 1
        if now - told > 15:
            pitch, onset = (sums / count).tolist()
            say(
                f"{now - begun:5.0f} s  step {run.steps}  pitch {pitch:.4f}  onset {onset:.5f}  lines {pool.lines}"
                f"  progress {progress:.3f}"
            )
            sums, count, told = torch.zeros(2, device=device), 0, now
        if now - saved > 90:
            run.write(options.out, run.spent_sec + now - begun)
            saved = now
        if now - looked > 240:
            say(try_net(run.kept, trials, device))
            looked = time.monotonic()
    run.write(options.out, run.spent_sec + time.monotonic() - begun)
    say(f"step {run.steps}\n{try_net(run.kept, trials, device)}\n{time.monotonic() - start:.0f} s")


if __name__ == "__main__":
    sys.exit(main())
