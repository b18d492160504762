"""A synth that needs no soundfont: sines, so that tests of the sound chain run fast and exactly."""

from __future__ import annotations

import io
from dataclasses import dataclass, field

import mido
import numpy as np

from fioritura.sound.audio import SAMPLE_RATE, Audio


@dataclass
class SineSynth:
    """Renders every note as a decaying sine; remembers how often it was asked."""

    loudness: float = 0.1
    decay_sec: float = 0.4
    calls: list[int] = field(default_factory=list)

    def render(self, midi: bytes) -> Audio:
        file = mido.MidiFile(file=io.BytesIO(midi))
        audio = np.zeros((round(file.length * SAMPLE_RATE), 2), np.float32)
        self.calls.append(len(audio))
        now, volume = 0.0, dict.fromkeys(range(16), 1.0)
        for message in file:
            now += message.time
            if message.type == "control_change" and message.control == 7:
                volume[message.channel] = (message.value / 127) ** 2
            if message.type == "note_on" and message.velocity:
                self._add(audio, round(now * SAMPLE_RATE), message, volume[message.channel])
        pcm = np.clip(np.round(audio * 32768), -32768, 32767)
        return (pcm / 32768).astype(np.float32)

    def keys(self, program: int) -> frozenset[int]:
        return frozenset(range(128))

    def _add(self, audio: Audio, start: int, message: mido.Message, volume: float) -> None:
        times = np.arange(max(0, min(2 * SAMPLE_RATE, len(audio) - start))) / SAMPLE_RATE
        hertz = 440 * 2 ** ((message.note - 69) / 12)
        height = self.loudness * volume * (message.velocity / 127) ** 2
        wave = height * np.exp(-times / self.decay_sec) * np.sin(2 * np.pi * hertz * times)
        audio[start : start + len(times)] += wave[:, None].astype(np.float32)
