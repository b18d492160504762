"""The program's own band on chance chords, to be heard beside a player: rendered once, kept as 8-bit mu-law.

python -m tools.train_listener.bands out/listener/bands.npz --seconds 600 --seed 1
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.pitch import RATE

__all__ = ["band_alone", "read_bands"]

Wave = NDArray[np.float32]

METRES: Final = {"waltz": "3/4", "folk-waltz": "3/4", "jig": "6/8"}
_TONICS: Final = ("C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B")
_KINDS: Final = ("", "m", "7", "maj7", "m7", "m7b5", "dim7", "6", "7b9", "sus4", "9", "m6", "13", "aug")
_MU: Final = 255.0


def band_alone(seed: int, bars: int = 12) -> Wave:
    """Bass, chords and drums over chance chords in a chance feel and tempo; mono at the ear's rate, peak 1."""
    import soxr

    from fioritura.accompany.feels import FEELS
    from fioritura.accompany.form import Chorus
    from fioritura.players.instruments import all_instruments
    from fioritura.sound.audio import SAMPLE_RATE
    from fioritura.sound.render import render
    from fioritura.sound.session import Session, played
    from tests.tunes import line_of

    dice = np.random.default_rng(seed)
    feel = FEELS[str(dice.choice(sorted(FEELS)))]
    metre = METRES.get(feel.id, "4/4")
    length = {"3/4": "3", "6/8": "3", "4/4": "4"}[metre]
    chords = " ".join(str(dice.choice(_TONICS)) + str(dice.choice(_KINDS)) for _ in range(bars))
    tune = line_of(" ".join([f"C5/{length}"] * bars), metre, "C major", chords)
    session = Session(
        tune,
        (Chorus("band", None),),
        all_instruments()["alto-sax"],
        feel,
        quarters_per_minute=float(dice.uniform(70, 200)),
        count_in_bars=0,
        seed=seed,
    )
    performance = played(session).without(["melody"])
    wave = soxr.resample(render(performance).mean(axis=1), SAMPLE_RATE, RATE)
    return np.asarray(wave / np.abs(wave).max(), np.float32)


def packed(wave: Wave) -> NDArray[np.uint8]:
    """Mu-law (ITU-T G.711's curve), 8 bits a sample."""
    curve = np.sign(wave) * np.log1p(_MU * np.abs(wave)) / np.log1p(_MU)
    return np.asarray(np.round(127.5 + 127.5 * curve), np.uint8)


def read_bands(path: Path) -> list[Wave]:
    """What was kept: one wave a band."""
    with np.load(path) as file:
        curve = (file["wave"].astype(np.float32) - 127.5) / 127.5
        wave = np.sign(curve) * np.expm1(np.abs(curve) * np.log1p(_MU)) / _MU
        return [np.asarray(part, np.float32) for part in np.split(wave, np.cumsum(file["size"])[:-1])]


def main() -> int:
    """Render, keep."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("path", type=Path)
    parser.add_argument("--seconds", type=float, default=600.0)
    parser.add_argument("--seed", type=int, default=1, help="of the first band; the next ones count up")
    options = parser.parse_args()
    waves: list[NDArray[np.uint8]] = []
    while sum(wave.size for wave in waves) < options.seconds * RATE:
        waves.append(packed(band_alone(options.seed + len(waves))))
    np.savez_compressed(options.path, wave=np.concatenate(waves), size=np.array([wave.size for wave in waves]))
    print(f"{len(waves)} bands, {sum(wave.size for wave in waves) / RATE:.0f} s")
    return 0


if __name__ == "__main__":
    sys.exit(main())
