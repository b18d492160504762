"""Fresh dry takes, made by many processes into shared memory: lines with their truth, and sounds to lie beside them."""

from __future__ import annotations

import mmap
import multiprocessing
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.pitch import RATE
from fioritura.listening.spectra import HOP
from tools.train_listener.dry import drummed, formula_voice, held, played, plucked, read_at, struck_tones, talk
from tools.train_listener.lines import Event, chance_line
from tools.train_listener.notes import RecordedNote, Voices

__all__ = ["FRAMES", "SAMPLES", "SCALE", "Inline", "Maker", "Stock", "truth_of"]

FRAMES: Final = 1000
SAMPLES: Final = FRAMES * HOP
SECONDS: Final = SAMPLES / RATE
LOW_MIDI: Final = 45
"""Instruments that go below this are drawn twice as often: rooms and phones spoil low notes most."""
SCALE: Final = 12000.0
"""Samples are kept as whole numbers of this part of 1."""

Wave = NDArray[np.float32]
Dice = np.random.Generator
Take = tuple[bool, NDArray[np.int16], NDArray[np.float32]]
"""Whether it is a line, its samples, and its truth."""


def truth_of(events: Sequence[Event], tuning_cents: float) -> tuple[Wave, Wave]:
    """What the net should say at each frame: the note's own pitch on the take's tuning (MIDI, −1 in silence), and how
    near an onset is (1 at it, a bell of one frame's width around it)."""
    frames = np.arange(FRAMES) * HOP / RATE
    pitch = np.full(FRAMES, -1.0, np.float32)
    onset = np.zeros(FRAMES, np.float32)
    for event in events:
        pitch[(frames >= event.onset_sec) & (frames < event.offset_sec)] = event.midi + tuning_cents / 100
        onset = np.maximum(onset, np.exp(-0.5 * ((frames - event.onset_sec) * RATE / HOP) ** 2).astype(np.float32))
    return pitch, onset


class Maker:
    """Makes takes by chance from voices and bands."""

    def __init__(self, voices: Voices, bands: Sequence[Wave], seed: Sequence[int]) -> None:
        self.dice = np.random.default_rng(list(seed))
        self._bands = bands
        self._instruments: dict[str, list[list[RecordedNote]]] = {}
        for name, notes in voices.items():
            key = "/".join(name.split("/")[:2])
            self._instruments.setdefault(key, []).append(notes)
        low = [key for key, kinds in self._instruments.items() if min(note.midi for note in kinds[0]) < LOW_MIDI]
        self._drawn = sorted([*self._instruments, *low])
        self._formula = formula_voice(self.dice)
        self._made = 0

    def line(self) -> tuple[Wave, Wave, Wave]:
        """A player's line: samples, pitch and onset as `truth_of` gives them."""
        dice = self.dice
        self._made += 1
        if self._made % 60 == 0:
            self._formula = formula_voice(dice)
        tape = float(dice.uniform(-6, 6)) if dice.random() < 0.2 else float(dice.uniform(-1, 1))
        voice = self._formula if dice.random() < 0.1 else self._voice()
        low = int(np.clip(round(min(note.midi for note in voice) + min(tape, 0)) - 1, 36, 84))
        high = int(np.clip(round(max(note.midi for note in voice) + max(tape, 0)) + 2, low + 12, 96))
        if dice.random() < 0.2:
            high = low + 12
        elif dice.random() < 0.4:
            low = int(dice.integers(low, max(low + 1, high - 14)))
            high = min(high, low + int(dice.integers(10, 24)))
        tuning = float(np.clip(dice.normal(0, 22), -60, 60))
        events = chance_line(dice, low, high, SECONDS)
        wave = played(events, voice, dice, tuning, SAMPLES, tape)
        if dice.random() < 0.07:
            wave += self._along(events, tuning)
        return (wave, *truth_of(events, tuning))

    def _along(self, events: Sequence[Event], tuning_cents: float) -> Wave:
        """A softer second player: with the first, not quite together, also an octave or a third off, or on a line of
        its own."""
        dice = self.dice
        voice, softer = self._voice(), 10 ** (-float(dice.uniform(6, 20)) / 20)
        tuning = tuning_cents + float(dice.normal(0, 8))
        if dice.random() < 0.3:
            low = int(min(note.midi for note in voice))
            events = chance_line(dice, low, low + 24, SECONDS)
        else:
            shift, late = int(dice.choice([0, 0, 12, -12, 3, 4, -5])), float(dice.normal(0, 0.03))
            moved = (
                replace(one, onset_sec=one.onset_sec + move, offset_sec=one.offset_sec + move, midi=one.midi + shift)
                for one in events
                for move in (max(late + float(dice.normal(0, 0.012)), -one.onset_sec),)
            )
            events = [one for one in moved if one.offset_sec - one.onset_sec > 0.015]
        return played(events, voice, dice, tuning, SAMPLES) * np.float32(softer)

    def beside(self) -> Wave:
        """What sounds beside a player, or without one."""
        dice = self.dice
        kind = str(dice.choice(["band", "band", "band", "struck", "struck", "winds", "talk", "drums"]))
        if kind == "band":
            return self._band()
        if kind == "struck":
            wave = struck_tones(dice, SAMPLES, plucked(dice), float(dice.uniform(0, 1)))
            wave += np.float32(dice.choice([0, 0.5])) * struck_tones(dice, SAMPLES, plucked(dice), 0.0)
            wave += np.float32(dice.choice([0, 0.3, 1])) * drummed(dice, SAMPLES)
            return wave
        if kind == "winds":
            chords = struck_tones(dice, SAMPLES, held(dice, self._voice()), 0.1)
            return chords + float(dice.choice([0, 1])) * 0.1 * struck_tones(dice, SAMPLES, plucked(dice), 0.8)
        return talk(dice, SAMPLES) if kind == "talk" else drummed(dice, SAMPLES)

    def _voice(self) -> list[RecordedNote]:
        kinds = self._instruments[str(self.dice.choice(self._drawn))]
        if len(kinds) > 1 and self.dice.random() < 0.4:
            return [note for notes in kinds for note in notes]
        return kinds[int(self.dice.integers(len(kinds)))]

    def _band(self) -> Wave:
        dice = self.dice
        wave = self._bands[int(dice.integers(len(self._bands)))]
        speed = float(2 ** (dice.uniform(-4, 4) / 12))
        position = np.mod(float(dice.uniform(0, wave.size)) + speed * np.arange(SAMPLES), wave.size - 4) + 1
        return read_at(wave, position).astype(np.float32)


def _made(maker: Maker) -> Take:
    """A take: four of five are lines."""
    truth = np.zeros((2, FRAMES), np.float32)
    is_line = maker.dice.random() < 0.8
    if is_line:
        wave, truth[0], truth[1] = maker.line()
    else:
        wave = maker.beside()
        wave = wave * (0.1 / (wave.std() + 1e-6))
    return is_line, np.clip(np.round(wave * SCALE), -32767, 32767).astype(np.int16), truth


class Inline:
    """Takes made as they are asked for, without other processes."""

    def __init__(self, voices: Voices, bands: Sequence[Wave], seed: int) -> None:
        self._maker = Maker(voices, bands, (seed, 0))

    def take(self, most: int, wait: bool) -> list[Take]:
        """As of `Stock`."""
        return [_made(self._maker) for _ in range(most)]

    def close(self) -> None:
        """Nothing to end."""


@dataclass
class _Ring:
    """Slots in memory that processes share."""

    waves: NDArray[np.int16]
    truths: NDArray[np.float32]

    @staticmethod
    def of(slots: int) -> _Ring:
        waves = np.frombuffer(mmap.mmap(-1, slots * SAMPLES * 2), np.int16).reshape(slots, SAMPLES)
        truths = np.frombuffer(mmap.mmap(-1, slots * 2 * FRAMES * 4), np.float32).reshape(slots, 2, FRAMES)
        return _Ring(waves, truths)


class Stock:
    """Takes as they become ready; begin it before anything touches the GPU."""

    def __init__(self, voices: Voices, bands: Sequence[Wave], seed: int, processes: int, slots: int = 512) -> None:
        context: Any = multiprocessing.get_context("fork")
        self._ring = _Ring.of(slots)
        self._free, self._ready = context.Queue(), context.Queue()
        for slot in range(slots):
            self._free.put(slot)
        self._processes = [
            context.Process(target=self._work, args=(Maker(voices, bands, (seed, number)),), daemon=True)
            for number in range(processes)
        ]
        for process in self._processes:
            process.start()

    def _work(self, maker: Maker) -> None:
        while True:
            slot = self._free.get()
            is_line, self._ring.waves[slot], self._ring.truths[slot] = _made(maker)
            self._ready.put((slot, is_line))

    def take(self, most: int, wait: bool) -> list[Take]:
        """Up to `most` fresh takes: is it a line, samples, truth. With `wait` at least one."""
        from queue import Empty

        found: list[Take] = []
        while len(found) < most:
            try:
                slot, is_line = self._ready.get(block=wait and not found)
            except Empty:
                break
            found.append((is_line, self._ring.waves[slot].copy(), self._ring.truths[slot].copy()))
            self._free.put(slot)
        return found

    def close(self) -> None:
        """End the processes."""
        for process in self._processes:
            process.terminate()
