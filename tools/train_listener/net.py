"""The net, and its input made on the device as `fioritura.listening.spectra` makes it."""

from __future__ import annotations

from typing import Any, Final

import torch
from torch import nn

from fioritura.listening.spectra import (
    BINS_A_SEMITONE,
    FINE_BINS,
    FINE_WINDOW,
    HOP,
    QUICK_BINS,
    QUICK_FFT,
    QUICK_WINDOW,
    filters,
)

__all__ = ["PITCH_STATES", "ListenerNet", "features"]

Tensor = Any

PITCH_STATES: Final = 183
"""Thirds of a semitone, from a third below MIDI 36 to a third above MIDI 96; silence is the state after them."""
_PLACES: Final = 192
_HARMONICS: Final = (1 / 3, 1 / 2, 1, 2, 3, 4, 5, 6)


def features(waves: Tensor) -> Tensor:
    """Input of the net from takes (takes, samples): (takes, frames, bins), as `Spectra` and `scaled` give it."""
    fine, quick = (torch.from_numpy(one).to(waves.device) for one in filters())
    padded = nn.functional.pad(waves, (FINE_WINDOW // 2, FINE_WINDOW // 2))
    frames = padded.unfold(1, FINE_WINDOW, HOP)[:, : -(-waves.shape[1] // HOP)]
    margin = (FINE_WINDOW - QUICK_WINDOW) // 2
    inner = frames[..., margin : margin + QUICK_WINDOW]
    power = torch.fft.rfft(frames * torch.hann_window(FINE_WINDOW, device=waves.device)).abs() ** 2
    short = torch.fft.rfft(inner * torch.hann_window(QUICK_WINDOW, device=waves.device), QUICK_FFT).abs() ** 2
    level = 10 * torch.log10(power.sum(dim=2) * 8 / FINE_WINDOW**2 + 1e-10)
    top = torch.quantile(level, 0.95, dim=1)[:, None, None]
    decibels = 10 * torch.log10(torch.cat([power @ fine, short @ quick], dim=2) + 1e-10)
    return (decibels - top + 80).clamp(min=0) / 30


class _Residual(nn.Module):
    """x + f(x): a convolution over time and frequency."""

    def __init__(self, channels: int) -> None:
        super().__init__()
        self.layers = nn.Sequential(
            nn.Conv2d(channels, channels, 5, padding=2),
            nn.BatchNorm2d(channels),
            nn.ReLU(),
            nn.Conv2d(channels, channels, 5, padding=2),
            nn.BatchNorm2d(channels),
        )

    def forward(self, x: Tensor) -> Tensor:
        return torch.relu(x + self.layers(x))


class _Dilated(nn.Module):
    """x + f(x): a convolution over time that reaches `dilation` frames to either side."""

    def __init__(self, width: int, dilation: int) -> None:
        super().__init__()
        self.wide = nn.Conv1d(width, width, 3, padding=dilation, dilation=dilation)
        self.norm = nn.BatchNorm1d(width)

    def forward(self, x: Tensor) -> Tensor:
        return x + torch.relu(self.norm(self.wide(x)))


class ListenerNet(nn.Module):
    """From spectra (takes, frames, bins) to logits: pitches and silence (takes, frames, 184), onset (takes, frames)."""

    def __init__(self, width: int = 160, memory: int = 96) -> None:
        super().__init__()
        self.first = nn.Sequential(
            nn.Conv2d(len(_HARMONICS), 12, (3, 5), padding=(1, 2)),
            nn.BatchNorm2d(12),
            nn.ReLU(),
            nn.Conv2d(12, 16, (3, 3), stride=(1, 3), padding=(1, 0)),
            nn.BatchNorm2d(16),
            nn.ReLU(),
            _Residual(16),
        )
        self.flat = nn.Conv1d(16 * (_PLACES // BINS_A_SEMITONE), width, 1)
        self.quick = nn.Conv1d(QUICK_BINS, width, 5, padding=2)
        self.norm = nn.BatchNorm1d(width)
        self.body = nn.Sequential(*(_Dilated(width, dilation) for dilation in (1, 2, 4, 8)))
        self.drop = nn.Dropout(0.1)
        self.memory = nn.GRU(width, memory, batch_first=True, bidirectional=True)
        self.pitch = nn.Linear(2 * memory + width, PITCH_STATES + 1)
        self.onset = nn.Linear(2 * memory + width, 1)

    def forward(self, spectra: Tensor) -> tuple[Tensor, Tensor]:
        """Logits of pitches and silence, and of onsets."""
        fine, quick = spectra[..., :FINE_BINS], spectra[..., FINE_BINS:]
        x = self.first(_harmonics(fine))
        x = x.permute(0, 1, 3, 2).flatten(1, 2)
        x = torch.relu(self.norm(self.flat(x) + self.quick(quick.transpose(1, 2))))
        x = self.body(x).transpose(1, 2)
        kept, _ = self.memory(self.drop(x))
        seen = torch.cat([kept, x], dim=2)
        return self.pitch(seen), self.onset(seen)[..., 0]


def _harmonics(fine: Tensor) -> Tensor:
    """The spectrum laid over itself so that a tone's harmonics fall on one place: (takes, harmonics, frames, places)."""
    layers = []
    for number in _HARMONICS:
        shift = round(float(12 * BINS_A_SEMITONE * torch.log2(torch.tensor(number))))
        if shift < 0:
            layers.append(nn.functional.pad(fine[..., : _PLACES + shift], (-shift, 0)))
        else:
            part = fine[..., shift : shift + _PLACES]
            layers.append(nn.functional.pad(part, (0, _PLACES - part.shape[-1])))
    return torch.stack(layers, dim=1)
