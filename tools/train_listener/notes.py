"""Recorded single notes made ready for takes: at the ear's rate, with pitch, onset and usable length measured.

    python -m tools.train_listener.notes ../shared/real-notes out/listener/notes.npz

The folder holds FLAC files named by the MIDI number that sounds; every folder of files is a *voice*.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.pitch import FRAME_SEC, RATE, Tracker

__all__ = ["TEST_VOICES", "TRIAL_VOICES", "RecordedNote", "Voices", "read_notes", "read_voices", "write_notes"]

Wave = NDArray[np.float32]

TEST_VOICES: Final = ("mtg/tenor-sax/p", "mtg/tenor-sax/f", "iowa/clarinet")
"""Never trained on and never looked at while choosing."""
TRIAL_VOICES: Final = ("mtg/baritone-sax/m", "mtg/soprano-sax/p")
"""Kept for looking at while choosing; not trained on either."""
ONSET_DB: Final = -15.0
"""A note begins where its level comes this near to its loudest."""
END_DB: Final = -30.0
LONGEST_SEC: Final = 1.85
_FRAME: Final = 110


@dataclass(frozen=True)
class RecordedNote:
    """One note: samples at the ear's rate with a peak of 1, its measured pitch (MIDI, with a fraction), the sample where
    it begins, and the one from which on it is too soft to use."""

    midi: float
    onset: int
    end: int
    wave: Wave


Voices = dict[str, list[RecordedNote]]


def read_notes(folder: Path) -> Voices:
    """All voices of a folder of recorded notes; notes without a clear pitch near their name are left out."""
    voices: Voices = {}
    for path in sorted(folder.rglob("*.flac"), key=lambda path: (path.parent, int(path.stem))):
        note = _read(path)
        if note:
            voices.setdefault(path.parent.relative_to(folder).as_posix(), []).append(note)
        else:
            print(f"left out: {path}", file=sys.stderr)
    return voices


def _read(path: Path) -> RecordedNote | None:
    import soundfile
    import soxr

    wave, rate = soundfile.read(path, dtype="float32", always_2d=True)
    samples = soxr.resample(wave.mean(axis=1), rate, RATE)
    samples = samples / max(float(np.abs(samples).max()), 1e-9)
    level = level_db(samples)
    loud = np.flatnonzero(level > level.max() + ONSET_DB)
    heard = np.flatnonzero(level > level.max() + END_DB)
    tracker = Tracker()
    tracker.feed(samples)
    track = tracker.finish()
    away = track.heard.cents - 100 * (int(path.stem) - 69)
    span = slice(int(loud[0] * _FRAME / RATE / FRAME_SEC) + 15, int(loud[-1] * _FRAME / RATE / FRAME_SEC) - 5)
    near = np.where((np.abs(away) < 80) & (track.heard.aperiodicity < 0.2), away, np.nan)[span]
    if np.isfinite(near).any(axis=1).mean() < 0.5:
        return None
    midi = int(path.stem) + float(np.nanmedian(near)) / 100
    end = min(int(heard[-1] + 1) * _FRAME, samples.size)
    return RecordedNote(midi, int(loud[0]) * _FRAME, end, samples[:end])


def level_db(samples: Wave) -> NDArray[np.float64]:
    """Level of some 20 ms around every 5 ms."""
    energy = np.concatenate([[0.0], np.cumsum(np.pad(samples.astype(np.float64), 2 * _FRAME) ** 2)])
    window = 4 * _FRAME
    return np.asarray(10 * np.log10((energy[window:] - energy[:-window])[::_FRAME] / window + 1e-10))


def write_notes(voices: Voices, path: Path) -> None:
    """Keep voices in one file, 16 bits a sample, of each note `LONGEST_SEC` from its onset."""
    notes = [(voice, _short(note)) for voice, notes in voices.items() for note in notes]
    np.savez_compressed(
        path,
        voice=np.array([voice for voice, _ in notes]),
        midi=np.array([note.midi for _, note in notes]),
        onset=np.array([note.onset for _, note in notes]),
        end=np.array([note.end for _, note in notes]),
        size=np.array([note.wave.size for _, note in notes]),
        wave=np.concatenate([np.round(note.wave * 32767).astype(np.int16) for _, note in notes]),
    )


def _short(note: RecordedNote) -> RecordedNote:
    end = min(note.end, note.onset + int(LONGEST_SEC * RATE))
    return replace(note, end=end, wave=note.wave[:end])


def read_voices(path: Path) -> Voices:
    """What `write_notes` kept."""
    with np.load(path) as file:
        columns = [file[name] for name in ("voice", "midi", "onset", "end", "size")]
        waves = np.split(file["wave"], np.cumsum(columns[4])[:-1])
    voices: Voices = {}
    for voice, midi, onset, end, _, wave in zip(*columns, waves, strict=True):
        note = RecordedNote(float(midi), int(onset), int(end), wave.astype(np.float32) / 32767)
        voices.setdefault(str(voice), []).append(note)
    return voices


def main() -> int:
    """Read a folder, write a file."""
    if len(sys.argv) != 3:
        print(__doc__)
        return 2
    voices = read_notes(Path(sys.argv[1]))
    Path(sys.argv[2]).parent.mkdir(parents=True, exist_ok=True)
    write_notes(voices, Path(sys.argv[2]))
    for voice, notes in voices.items():
        strays = [round(100 * (note.midi - round(note.midi))) for note in notes]
        print(f"{voice}: {len(notes)} notes, {min(strays)} to {max(strays)} cents")
    return 0


if __name__ == "__main__":
    sys.exit(main())
