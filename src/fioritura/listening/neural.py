"""The small net that tells a player's notes from a room, a band and a phone; run by onnxruntime where it is installed.

It hears a take in pieces with generous margins, on the level of the whole take, so that a long take is heard like a
short one. What it was trained on is told beside the model (`model/README.md`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from importlib.resources import files
from importlib.util import find_spec
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.decode import SILENCE, Expected, NetNote, notes_of_frames, tuning_of
from fioritura.listening.pitch import RATE, Floats
from fioritura.listening.spectra import HOP, Spectra, scaled

__all__ = ["Heard", "NeuralEar", "has_net", "seconds_of"]

PIECE: Final = 3000
MARGIN: Final = 600
"""Frames heard before and after each piece and not used, 6 s."""


@dataclass(frozen=True)
class Heard:
    """What the net heard: notes in frames, and the player's tuning in cents, −50 to 50."""

    notes: list[NetNote]
    tuning_cents: float
    likely: NDArray[Any] = field(repr=False)
    onsets: Floats = field(repr=False)

    def informed(self, expected: Sequence[Expected]) -> Heard:
        """Heard again by one who knows what may come."""
        tuning = self.tuning_cents / 100
        return replace(self, notes=notes_of_frames(self.likely, self.onsets, tuning, expected))

    @property
    def sounding_sec(self) -> float:
        """How long notes sound, all together."""
        return sum(note.stop - note.start for note in self.notes) * HOP / RATE

    @property
    def sureness(self) -> float:
        """How likely the notes are where they sound, 0 to 1; 0 without notes."""
        total = sum(note.stop - note.start for note in self.notes)
        return sum(note.confidence * (note.stop - note.start) for note in self.notes) / total if total else 0.0


def has_net() -> bool:
    """True where onnxruntime is installed."""
    return find_spec("onnxruntime") is not None


def seconds_of(frame: float) -> float:
    """The time of a frame, or of a place between two, in seconds."""
    return frame * HOP / RATE


class NeuralEar:
    """Hears a stream of blocks."""

    def __init__(self) -> None:
        self._spectra = Spectra()

    def feed(self, samples: Floats) -> None:
        """Take the next samples, mono at `RATE` Hz."""
        self._spectra.feed(samples)

    def finish(self) -> Heard:
        """The notes of all that was fed."""
        decibels, level = self._spectra.finish()
        likely, onsets = _probabilities(decibels, level)
        tuning = tuning_of(likely)
        return Heard(notes_of_frames(likely, onsets, tuning), 100 * tuning, likely, onsets)


def _probabilities(decibels: Any, level: float) -> tuple[Any, Floats]:
    """Probabilities of pitches and silence at each frame, in half precision, and of onsets."""
    session = _session()
    pitches = np.empty((len(decibels), SILENCE + 1), np.float16)
    onsets = np.empty(len(decibels), np.float32)
    for start in range(0, len(decibels), PIECE):
        first = max(0, start - MARGIN)
        part = decibels[first : start + PIECE + MARGIN].astype(np.float32)
        pitch, onset = session.run(None, {"spectra": scaled(part, level)[None]})
        wanted = slice(start - first, start - first + PIECE)
        pitches[start : start + PIECE] = pitch[0, wanted]
        onsets[start : start + PIECE] = onset[0, wanted]
    return pitches, onsets


@cache
def _session() -> Any:
    """The net, on one thread: takes are heard side by side by processes, not by threads."""
    import onnxruntime

    options = onnxruntime.SessionOptions()
    options.intra_op_num_threads = options.inter_op_num_threads = 1
    options.log_severity_level = 3
    model = (files("fioritura.listening") / "model" / "listener.onnx").read_bytes()
    return onnxruntime.InferenceSession(model, options, providers=["CPUExecutionProvider"])
