"""What life does to a take, for many takes at once on the GPU: rooms, other sounds, noise, phones.

Arrays run over takes and samples at the ear's rate. Levels are root mean squares over a whole take.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import Any, Final

import torch

from fioritura.listening.pitch import RATE

__all__ = ["Spoiler", "rooms"]

Tensor = Any

ROOM_SAMPLES: Final = 36000
_SOUND_M_A_SEC: Final = 343.0
_FFT: Final = 262144


def rooms(count: int, device: str, seed: int, order: int = 14) -> Tensor:
    """Impulse responses of chance rooms without the direct sound; energy 1, shape (count, `ROOM_SAMPLES`).

    A third each: tails of noise, shoeboxes by their image sources with such a tail behind, and single echoes that grow
    denser with the square of time; high frequencies die faster.
    """
    dice = torch.Generator(device).manual_seed(seed)
    found = torch.empty(count, ROOM_SAMPLES, device=device)
    time = torch.arange(ROOM_SAMPLES, device=device) / RATE
    lines = torch.fft.rfftfreq(2 * ROOM_SAMPLES, 1 / RATE).to(device)
    for place in range(count):
        seconds, split, damp = _uniform(dice, device, (3,), (0.15, 500.0, 0.25), (1.6, 3000.0, 0.9)).tolist()
        low_part = 1 / (1 + (lines / split) ** 2)
        bands = []
        for lasts in (seconds, seconds * damp):
            tail = torch.randn(ROOM_SAMPLES, device=device, generator=dice) * 10 ** (-3 * time / lasts)
            if place % 3 == 2:
                tail = tail * _echoes(dice, device, time)
            elif place % 3:
                direct = _images(dice, device, lasts, order, time)
                tail = direct + tail * direct.norm() / tail.norm() * torch.clamp((time - 0.03) / 0.1, 0, 1)
            else:
                tail = tail * (time > float(torch.rand(1, device=device, generator=dice)) * 0.02)
            bands.append(torch.fft.rfft(tail, 2 * ROOM_SAMPLES))
        wave = torch.fft.irfft(bands[0] * low_part + bands[1] * (1 - low_part))[:ROOM_SAMPLES]
        found[place] = wave / wave.norm()
    return found


def _echoes(dice: Any, device: str, time: Tensor) -> Tensor:
    """Ones where single echoes arrive: some hundred a second at first, all along after a while."""
    early, until = _uniform(dice, device, (2,), (80.0, 0.05), (600.0, 0.4)).tolist()
    chance = (early + (RATE - early) * (time / until) ** 2) / RATE
    return (torch.rand(time.shape, device=device, generator=dice) < chance) & (time > 0.0015)


def _images(dice: Any, device: str, seconds: float, order: int, time: Tensor) -> Tensor:
    """The reflections of a shoebox from its image sources (Allen & Berkley 1979, JASA 65(4), from memory)."""
    size = _uniform(dice, device, (3,), (2.5, 2.5, 2.2), (12.0, 9.0, 5.0)).tolist()
    volume, surface = size[0] * size[1] * size[2], 2 * (size[0] * size[1] + size[1] * size[2] + size[0] * size[2])
    kept = max(0.3, 1 - 0.161 * volume / (surface * seconds)) ** 0.5
    numbers = torch.arange(-order, order + 1, device=device)
    squares, bounces = [], []
    for length in size:
        source, ear = _uniform(dice, device, (2,), (0.1 * length,) * 2, (0.9 * length,) * 2).tolist()
        away = torch.cat([(1 - 2 * p) * source + 2 * numbers * length - ear for p in (0, 1)])
        squares.append(away**2)
        bounces.append(torch.cat([(numbers - p).abs() + numbers.abs() for p in (0, 1)]))
    square = squares[0][:, None, None] + squares[1][None, :, None] + squares[2][None, None, :]
    count = bounces[0][:, None, None] + bounces[1][None, :, None] + bounces[2][None, None, :]
    metres = square.sqrt().clamp(min=0.1).flatten()
    gain = (kept ** count.flatten().float()) / metres
    gain[count.flatten() == 0] = 0
    direct = (sum(one[order] for one in squares)) ** 0.5
    at = (metres - direct) / _SOUND_M_A_SEC * RATE
    whole = at.floor().long().clamp(0, ROOM_SAMPLES - 2)
    part = at - at.floor()
    gain = torch.where((at >= 0) & (at < ROOM_SAMPLES - 2), gain, torch.zeros_like(gain))
    wave = torch.zeros_like(time)
    wave.index_add_(0, whole, gain * (1 - part))
    wave.index_add_(0, whole + 1, gain * part)
    return wave


def _uniform(dice: Any, device: str, shape: tuple[int, ...], low: Any, high: Any) -> Tensor:
    lows, highs = torch.tensor(low, device=device), torch.tensor(high, device=device)
    return lows + (highs - lows) * torch.rand(shape, device=device, generator=dice)


@dataclass
class Spoiler:
    """Mixes and spoils; `rooms` are the impulse responses to choose from."""

    rooms: Tensor
    dice: Any

    def __call__(self, dry: Tensor, beside: Tensor, has_player: Tensor, has_beside: Tensor) -> Tensor:
        """Takes as a microphone might hear them; all arrays' first axis runs over takes."""
        with torch.autocast(dry.device.type, enabled=False):
            player = self._in_room(dry, self._chance(dry, 0.8), self._span(dry, -12, 15)) * has_player[:, None]
            others = self._in_room(beside, self._chance(dry, 0.6), self._span(dry, -8, 12))
            loud = _rms(player).clamp(min=0.02)
            below = torch.where(has_player, self._span(dry, -32, 2), self._span(dry, -10, 0))
            others = others / _rms(others).clamp(min=1e-4)[:, None] * (loud * 10 ** (below / 20))[:, None]
            mix = player + others * has_beside[:, None]
            loud = _rms(mix).clamp(min=0.02)
            mix = mix + self._noise(mix) * (loud * 10 ** (-self._span(dry, 6, 65) / 20))[:, None]
            mix = mix + self._clicks(mix, loud)
            mix = self._through_phone(mix)
            mix = self._coded(mix)
            peak = mix.abs().amax(dim=1, keepdim=True).clamp(min=1e-6)
            return mix / peak * 10 ** (self._span(dry, -26, 0) / 20)[:, None]

    def _span(self, like: Tensor, low: float, high: float) -> Tensor:
        return low + (high - low) * torch.rand(len(like), device=like.device, generator=self.dice)

    def _chance(self, like: Tensor, share: float) -> Tensor:
        return (torch.rand(len(like), device=like.device, generator=self.dice) < share).float()

    def _in_room(self, wave: Tensor, is_wet: Tensor, direct_db: Tensor) -> Tensor:
        """Through a chance tone control and, some of them, a room; the direct sound stays where it was."""
        chosen = torch.randint(len(self.rooms), (len(wave),), device=wave.device, generator=self.dice)
        answer = self.rooms[chosen] * (is_wet * 10 ** (-direct_db / 20))[:, None]
        answer[:, 0] += 1
        spectrum = torch.fft.rfft(wave, _FFT) * torch.fft.rfft(answer, _FFT) * self._tone(wave, 9.0)
        return torch.fft.irfft(spectrum, _FFT)[:, : wave.shape[1]]

    def _tone(self, like: Tensor, most_db: float) -> Tensor:
        """Linear gains of a chance equaliser: a tilt and four humps."""
        octaves = torch.log2(torch.linspace(0, RATE / 2, 513, device=like.device).clamp(min=30) / 1000)
        curve = self._span(like, -2.5, 2.5)[:, None] * octaves
        for _ in range(4):
            centre, width = self._span(like, -4, 3.3)[:, None], self._span(like, 0.2, 1.2)[:, None]
            curve = curve + self._span(like, -most_db, most_db)[:, None] * torch.exp(
                -(((octaves - centre) / width) ** 2)
            )
        curve = curve * self._chance(like, 0.75)[:, None]
        gains = 10 ** (curve.clamp(-20, 20) / 20)
        return torch.nn.functional.interpolate(gains[:, None], _FFT // 2 + 1, mode="linear", align_corners=True)[:, 0]

    def _noise(self, like: Tensor) -> Tensor:
        """Noise between white and brown, some with mains hum; root mean square 1."""
        white = torch.randn(like.shape, device=like.device, generator=self.dice)
        hertz = torch.fft.rfftfreq(like.shape[1], 1 / RATE).to(like.device).clamp(min=20)
        slope = self._span(like, -1.0, 0.1)[:, None]
        noise = torch.fft.irfft(torch.fft.rfft(white) * (hertz / 1000) ** slope, like.shape[1])
        noise = noise / _rms(noise)[:, None]
        time = torch.arange(like.shape[1], device=like.device) / RATE
        mains = torch.where(self._chance(like, 0.5) > 0, 50.0, 60.0)[:, None]
        hum = sum(torch.sin(2 * pi * mains * number * time) / number for number in (1, 2, 3, 5))
        return noise + hum * (self._chance(like, 0.12) * self._span(like, 0.3, 3))[:, None]

    def _clicks(self, like: Tensor, loud: Tensor) -> Tensor:
        """A few knocks and clicks."""
        rate = self._chance(like, 0.2) * self._span(like, 0.5, 8) / RATE
        where = torch.rand(like.shape, device=like.device, generator=self.dice) < rate[:, None]
        pulse = torch.exp(-torch.arange(200, device=like.device) / 20.0) * torch.randn(
            200, device=like.device, generator=self.dice
        )
        filled = torch.nn.functional.conv1d(where.float()[:, None], pulse.flip(0)[None, None], padding=199)
        return filled[:, 0, : like.shape[1]] * (loud * self._span(like, 0.1, 2))[:, None]

    def _through_phone(self, wave: Tensor) -> Tensor:
        """Some takes lose lows and highs, are levelled by an automatic gain, and distort a little."""
        is_phone = self._chance(wave, 0.36)
        hertz = torch.fft.rfftfreq(_FFT, 1 / RATE).to(wave.device)[None].clamp(min=1)
        low, high = self._span(wave, 60, 420)[:, None], self._span(wave, 2600, 9000)[:, None]
        power = self._span(wave, 2, 8)[:, None]
        gains = 1 / torch.sqrt(1 + (low / hertz) ** (2 * power)) / torch.sqrt(1 + (hertz / high) ** (2 * power))
        narrow = torch.fft.irfft(torch.fft.rfft(wave, _FFT) * gains, _FFT)[:, : wave.shape[1]]
        is_quick = self._chance(wave, 0.4)[:, None]
        smooth = is_quick * _levelled(narrow, 1103) + (1 - is_quick) * _levelled(narrow, 4411)
        floor = smooth.amax(dim=1, keepdim=True) * 0.01 + 1e-6
        strength = (self._chance(wave, 0.7) * self._span(wave, 0.1, 0.8))[:, None]
        even = narrow * (smooth + floor) ** -strength
        even = even / even.abs().amax(dim=1, keepdim=True).clamp(min=1e-6)
        drive = (self._chance(wave, 0.4) * self._span(wave, 0.5, 6) + 0.05)[:, None]
        bent = torch.tanh(even * drive) / drive
        return wave + (bent / _rms(bent).clamp(min=1e-6)[:, None] * _rms(wave)[:, None] - wave) * is_phone[:, None]

    def _coded(self, wave: Tensor) -> Tensor:
        """Some takes lose, as in lossy coding, what lies far under its neighbours in the spectrum."""
        chosen = torch.nonzero(self._chance(wave, 0.2) > 0)[:, 0]
        if not len(chosen):
            return wave
        window = torch.hann_window(1024, device=wave.device)
        spectrum = torch.stft(wave[chosen], 1024, 512, window=window, return_complex=True)
        level = spectrum.abs()
        beside = torch.nn.functional.max_pool1d(level.transpose(1, 2), 33, stride=1, padding=16).transpose(1, 2)
        under = 10 ** (-self._span(chosen, 8, 34) / 20)[:, None, None]
        spectrum = torch.where(level > beside * under, spectrum, torch.zeros_like(spectrum))
        wave = wave.clone()
        wave[chosen] = torch.istft(spectrum, 1024, 512, window=window, length=wave.shape[1])
        return wave


def _levelled(wave: Tensor, width: int) -> Tensor:
    """The mean of what a wave's size is within `width` samples around each."""
    mean = torch.nn.functional.avg_pool1d(wave.abs()[:, None], width, stride=441, padding=width // 2)
    return torch.nn.functional.interpolate(mean, wave.shape[1], mode="linear")[:, 0]


def _rms(wave: Tensor) -> Tensor:
    return wave.square().mean(dim=1).sqrt() + 1e-9
