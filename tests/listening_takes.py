"""Takes made by formula, with their truth: the material for the listening tests and benchmarks.

A `Take` of the truth is a list of `Truth` notes; `render` turns it into sound by additive synthesis with formants,
attack noise, tongue closures, slurs, vibrato, scoops and falls. `room`, `noise` and `backing` spoil the sound as
life does, and `soundfont_take` renders the same notes by a General MIDI synthesiser. Melodies are public-domain
tunes of music21's corpus (Ryan's Mammoth Collection, 1883), split in two halves by a checksum of the file name:
settings of the program may be chosen on the train half alone, and the measures are taken on the test half.
"""

from __future__ import annotations

import io
import zlib
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Final, Literal

import numpy as np
from numpy.typing import NDArray

Wave = NDArray[np.float64]
Half = Literal["train", "test"]
RATE: Final = 44100


@dataclass(frozen=True)
class Truth:
    """One note as it is meant. Cents and seconds; `scoop` and `fall` are (cents, seconds), `vibrato` (Hz, cents)."""

    onset_sec: float
    offset_sec: float
    midi: int
    is_tongued: bool = True
    is_grace: bool = False
    scoop: tuple[float, float] | None = None
    fall: tuple[float, float] | None = None
    vibrato: tuple[float, float] | None = None
    level_db: float = -12.0
    closure_db: float = 30.0
    """How far the tongue lets the level sink before the attack."""


# Melodies -----------------------------------------------------------------------------------------------------


def tune_names(half: Half, count: int) -> list[str]:
    """Names of `count` tunes of one half, the same ones each time, spread over the collection."""
    from music21 import corpus

    paths = sorted(str(path) for path in corpus.corpora.CoreCorpus().getPaths() if "ryansMammoth" in str(path))
    parity = 0 if half == "train" else 1
    keyed = sorted((zlib.crc32(Path(path).name.encode()), path) for path in paths)
    return [path for key, path in keyed if key % 2 == parity][:count]


def melody(path: str, quarters: float = 48.0) -> list[tuple[float, float, int]]:
    """(onset, length, MIDI number) of a tune's first `quarters`, in quarter notes; overlaps and graces left out."""
    from music21 import converter

    notes = converter.parse(path).parts[0].stripTies().flatten().notes
    line: list[tuple[float, float, int]] = []
    for note in notes:
        onset, length = float(note.offset), float(note.quarterLength)
        if note.isNote and length > 0 and onset < quarters and (not line or onset >= sum(line[-1][:2]) - 1e-6):
            line.append((onset, length, note.pitch.midi))
    return line


def fitted(line: Sequence[tuple[float, float, int]], low: int, high: int) -> list[tuple[float, float, int]]:
    """The melody moved by whole octaves towards the middle of a range; notes outside it folded in."""
    middle = float(np.median([midi for *_, midi in line]))
    shift = 12 * round(((low + high) / 2 - middle) / 12)

    def fold(midi: int) -> int:
        while midi < low:
            midi += 12
        while midi > high:
            midi -= 12
        return midi

    return [(onset, length, fold(midi + shift)) for onset, length, midi in line]


# Playing ------------------------------------------------------------------------------------------------------


def played(
    line: Sequence[tuple[float, float, int]],
    rng: np.random.Generator,
    quarters_per_minute: float,
    *,
    graces: float = 0.08,
    scoops: float = 0.07,
    falls: float = 0.25,
    vibratos: float = 0.6,
) -> list[Truth]:
    """A player's way with a melody: tonguing and slurs, loud and soft, some grace notes, scoops, falls and vibrato.

    The rates are the shares of the notes where the ornament is possible that get it.
    """
    beat = 60.0 / quarters_per_minute
    notes: list[Truth] = []
    for number, (onset, length, midi) in enumerate(line):
        start = 0.3 + onset * beat + rng.normal(0, 0.006)
        goes_on = number + 1 < len(line) and line[number + 1][0] - onset - length < 0.01
        is_tongued = not notes or notes[-1].offset_sec < start - 0.02 or rng.random() < 0.5 or notes[-1].midi == midi
        fill = 1.0 if goes_on and rng.random() < 0.6 else rng.uniform(0.7, 0.95)
        end = 0.3 + (onset + length * fill) * beat
        note = Truth(
            start,
            max(end, start + 0.05),
            midi,
            is_tongued=is_tongued,
            level_db=-14 + rng.normal(0, 2.5),
            closure_db=rng.uniform(10, 40),
        )
        note = _inflected(note, rng, scoops, vibratos, falls if not goes_on else 0.0)
        if rng.random() < graces and note.offset_sec - note.onset_sec > 0.17 and not note.scoop:
            grace, note = _graced(note, rng)
            notes.append(grace)
        notes.append(note)
    return _joined(notes)


def _inflected(note: Truth, rng: np.random.Generator, scoops: float, vibratos: float, falls: float) -> Truth:
    length = note.offset_sec - note.onset_sec
    if length > 0.22 and note.is_tongued and rng.random() < scoops:
        note = replace(note, scoop=(rng.uniform(70, 200), min(rng.uniform(0.06, 0.14), 0.4 * length)))
    if length > 0.35 and rng.random() < vibratos:
        note = replace(note, vibrato=(rng.uniform(4.5, 6.5), rng.uniform(12, 45)))
    if length > 0.45 and rng.random() < falls:
        note = replace(note, fall=(rng.uniform(150, 500), rng.uniform(0.1, 0.2)))
    return note


def _graced(note: Truth, rng: np.random.Generator) -> tuple[Truth, Truth]:
    """A grace note of 30 to 90 ms slurred into the note; half of its time is taken from the note before."""
    length = rng.uniform(0.03, 0.09)
    start = note.onset_sec - length * rng.choice([0.0, 0.5])
    step = int(rng.choice([-2, -1, 1, 2]))
    grace = replace(
        note,
        onset_sec=start,
        offset_sec=start + length,
        midi=note.midi + step,
        is_grace=True,
        vibrato=None,
        fall=None,
    )
    return grace, replace(note, onset_sec=start + length, is_tongued=False)


def _joined(notes: list[Truth]) -> list[Truth]:
    """No note outlasts the next one's onset; a slurred note begins where the one before it ends."""
    line = list(notes)
    for place in range(1, len(line)):
        before, note = line[place - 1], line[place]
        if before.offset_sec > note.onset_sec or (not note.is_tongued and before.offset_sec < note.onset_sec):
            line[place - 1] = replace(before, offset_sec=max(note.onset_sec, before.onset_sec + 0.02))
        if note.midi == line[place - 1].midi and not note.is_tongued:
            line[place] = replace(note, is_tongued=True)
    return line


# Sound --------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Timbre:
    """Harmonic n has amplitude n ** -`rolloff`, weighted by resonances (Hz, gain, width Hz); even ones by `even`."""

    rolloff: float
    formants: tuple[tuple[float, float, float], ...] = ()
    even: float = 1.0
    breath_db: float = -42.0

    def gains(self, frequency_hz: Wave, number: int) -> Wave:
        gain = np.full_like(frequency_hz, number**-self.rolloff)
        shape = np.ones_like(frequency_hz)
        for centre, height, width in self.formants:
            shape += height * np.exp(-(((frequency_hz - centre) / width) ** 2))
        return gain * shape * (self.even if number % 2 == 0 else 1.0)


TIMBRES: Final = {
    "saxophone": Timbre(1.3, ((650, 2.5, 300), (1400, 1.5, 500), (2800, 1.0, 700)), breath_db=-40),
    "clarinet": Timbre(1.1, ((1500, 1.0, 600),), even=0.12, breath_db=-45),
    "flute": Timbre(2.3, ((900, 0.8, 500),), breath_db=-36),
    "trumpet": Timbre(1.0, ((1200, 3.0, 700), (2400, 2.0, 900)), breath_db=-46),
}
SOUNDING: Final = {"saxophone": (44, 81), "clarinet": (50, 91), "flute": (60, 96), "trumpet": (52, 84)}
PROGRAMS: Final = {"saxophone": (64, 65, 66, 67), "clarinet": (71,), "flute": (73,), "trumpet": (56,)}
"""General MIDI programs, counted from 0."""


def render(
    notes: Sequence[Truth], timbre: Timbre, rng: np.random.Generator, *, tuning_cents: float = 0.0, rate: int = RATE
) -> Wave:
    """The notes as sound, mono, at `rate` Hz."""
    total = int((notes[-1].offset_sec + 0.5) * rate)
    cents = _pitch_line(notes, total, rate, rng) + tuning_cents
    level = _level_line(notes, total, rate, rng)
    frequency = 440.0 * 2.0 ** ((cents - 6900) / 1200)
    phase = 2 * np.pi * np.cumsum(frequency) / rate
    wave = np.zeros(total)
    for number in range(1, 25):
        harmonic = frequency * number
        audible = harmonic < 0.45 * rate
        if not audible.any():
            break
        wave += np.where(audible, timbre.gains(harmonic, number) * np.sin(number * phase), 0.0)
    return normalised(wave * level + _noises(notes, level, timbre, rate, rng))


def _pitch_line(notes: Sequence[Truth], total: int, rate: int, rng: np.random.Generator) -> Wave:
    """Cents above MIDI 0 at each sample: steps with slur glides, scoops, falls, vibrato and slow drift."""
    cents = np.full(total, 100.0 * notes[0].midi)
    for place, note in enumerate(notes):
        start, stop = int(note.onset_sec * rate), int(note.offset_sec * rate)
        until = int(notes[place + 1].onset_sec * rate) if place + 1 < len(notes) else total
        cents[start:until] = 100.0 * note.midi
        time = np.arange(stop - start) / rate
        bend = np.zeros(stop - start)
        if note.scoop:
            depth, length = note.scoop
            bend -= np.where(time < length, depth * 0.5 * (1 + np.cos(np.pi * np.minimum(time / length, 1))), 0)
        if note.fall:
            depth, length = note.fall
            bend -= depth * np.clip((time - (time[-1] - length)) / length, 0, 1) ** 1.3
        if note.vibrato:
            hertz, extent = note.vibrato
            grown = np.clip((time - 0.12) / 0.15, 0, 1)
            bend += extent * grown * np.sin(2 * np.pi * hertz * np.maximum(time - 0.12, 0))
        cents[start:stop] += bend
        if not note.is_tongued and place:
            half = int(rng.uniform(0.004, 0.009) * rate)
            before, after = cents[start - half], cents[min(start + half, stop - 1)]
            ramp = 0.5 * (1 - np.cos(np.pi * np.arange(2 * half) / (2 * half)))
            cents[start - half : start + half] = before + (after - before) * ramp
    drift = np.cumsum(rng.normal(0, 1, total // 2205 + 2))
    drift = 2.0 * drift / max(1.0, float(np.abs(drift).max()))
    return cents + np.interp(np.arange(total), np.arange(drift.size) * 2205, drift)


def _level_line(notes: Sequence[Truth], total: int, rate: int, rng: np.random.Generator) -> Wave:
    """Linear amplitude at each sample: attacks, tongue closures, slurs, releases."""
    decibels = np.full(total, -90.0)
    for place, note in enumerate(notes):
        start, stop = int(note.onset_sec * rate), int(note.offset_sec * rate)
        attack = int(rng.uniform(0.008, 0.03) * rate)
        body = np.full(stop - start, note.level_db)
        body += rng.normal(0, 0.7) * np.sin(np.linspace(0, np.pi, stop - start))
        if note.is_tongued:
            ramp = min(attack, len(body))
            body[:ramp] -= note.closure_db * (1 - np.arange(ramp) / ramp) ** 2
        elif place:
            ramp = min(int(0.02 * rate), len(body))
            blend = np.arange(ramp) / ramp
            body[:ramp] = decibels[start - 1] * (1 - blend) + body[:ramp] * blend
        decibels[start:stop] = np.maximum(decibels[start:stop], body)
        follower = notes[place + 1] if place + 1 < len(notes) else None
        if follower is None or follower.is_tongued:
            joined = follower is not None and follower.onset_sec - note.offset_sec < 0.03
            depth = follower.closure_db if joined and follower is not None else 78.0
            closing = min(int((0.015 if joined else 0.03) * rate), len(body) // 2)
            decibels[stop - closing : stop] -= depth * (np.arange(closing) / closing) ** 2
            gap = slice(stop, int(follower.onset_sec * rate)) if joined and follower is not None else slice(0, 0)
            decibels[gap] = np.maximum(decibels[gap], note.level_db - depth)
    smooth = np.hanning(int(0.004 * rate))
    return np.convolve(10 ** (decibels / 20), smooth / smooth.sum(), mode="same")


def _noises(notes: Sequence[Truth], level: Wave, timbre: Timbre, rate: int, rng: np.random.Generator) -> Wave:
    """Breath along the tone, and a burst at each tongued attack."""
    hiss = np.convolve(rng.normal(0, 1, level.size), [0.5, 0.5], mode="same")
    wave = hiss * (level * 10 ** (timbre.breath_db / 20) + 1e-5)
    for note in notes:
        if note.is_tongued:
            start = int(note.onset_sec * rate)
            length = min(int(0.02 * rate), level.size - start)
            burst = np.exp(-np.arange(length) / (0.005 * rate)) * 10 ** ((note.level_db - rng.uniform(20, 32)) / 20)
            wave[start : start + length] += rng.normal(0, 1, length) * burst
    return wave


# Life ---------------------------------------------------------------------------------------------------------


def normalised(wave: Wave, peak: float = 0.5) -> Wave:
    """The wave scaled to a peak of full scale 1."""
    return wave * (peak / max(float(np.abs(wave).max()), 1e-9))


def rms(wave: Wave) -> float:
    """Root mean square."""
    return float(np.sqrt(np.mean(wave**2)))


def room(
    wave: Wave, rng: np.random.Generator, *, seconds: float = 0.5, direct_db: float = 4.0, rate: int = RATE
) -> Wave:
    """The wave in a room with a reverberation time; `direct_db` is the direct sound over the reverberation."""
    from scipy.signal import fftconvolve

    length = int(seconds * 1.2 * rate)
    time = np.arange(length) / rate
    tail = rng.normal(0, 1, length) * 10 ** (-3 * time / seconds)
    tail = np.convolve(tail, np.hanning(9) / np.hanning(9).sum(), mode="same")
    tail[: int(0.004 * rate)] = 0
    tail *= 10 ** (-direct_db / 20) / np.sqrt(np.sum(tail**2))
    tail[0] += 1.0
    return normalised(fftconvolve(wave, tail)[: wave.size + length // 2])


def noise(wave: Wave, rng: np.random.Generator, *, snr_db: float, colour: Literal["white", "pink"]) -> Wave:
    """The wave with steady noise at a signal-to-noise ratio over the whole band."""
    hiss = rng.normal(0, 1, wave.size)
    if colour == "pink":
        spectrum = np.fft.rfft(hiss)
        hiss = np.fft.irfft(spectrum / np.sqrt(np.maximum(np.arange(spectrum.size), 1)), wave.size)
    return normalised(wave + hiss * rms(wave) / rms(hiss) * 10 ** (-snr_db / 20))


def backing(wave: Wave, rng: np.random.Generator, *, below_db: float, rate: int = RATE) -> Wave:
    """The wave with a quiet accompaniment: plucked bass, struck chords and a brush, `below_db` under it."""
    time = np.arange(wave.size) / rate
    band = np.zeros(wave.size)
    for number in range(int(time[-1] / 0.5)):
        start = int(number * 0.5 * rate)
        length = min(int(0.45 * rate), wave.size - start)
        inside = np.arange(length) / rate
        root = int(rng.choice([36, 41, 43]))
        chord = [root] if number % 2 == 0 else [root + 24, root + 28, root + 31]
        for midi in chord:
            hertz = 440.0 * 2 ** ((midi - 69) / 12)
            for harmonic in range(1, 6):
                band[start : start + length] += (
                    np.sin(2 * np.pi * hertz * harmonic * inside) * np.exp(-inside * 5) / harmonic**1.5
                )
        brush = min(int(0.08 * rate), length)
        band[start : start + brush] += rng.normal(0, 0.3, brush) * np.exp(-np.arange(brush) / (0.02 * rate))
    return normalised(wave + band * rms(wave) / rms(band) * 10 ** (-below_db / 20))


# Soundfont ----------------------------------------------------------------------------------------------------


def speaking(notes: Sequence[Truth], program: int) -> list[Truth]:
    """The notes without those whose key makes no sound in the soundfont (its alto saxophone has no E4)."""
    keys = sorted({note.midi for note in notes})
    wave, rate = soundfont_take(
        [Truth(2.0 * place, 2.0 * place + 0.5, key) for place, key in enumerate(keys)], program
    )
    loud = {key: rms(wave[int(2 * place * rate) :][: rate // 4]) for place, key in enumerate(keys)}
    usual = float(np.median(list(loud.values())))
    return [note for note in notes if loud[note.midi] > 0.1 * usual]


def soundfont_take(notes: Sequence[Truth], program: int) -> tuple[Wave, int]:
    """The notes by a General MIDI synthesiser with the soundfont that the pretty_midi wheel carries; wave and rate."""
    import midirenderer
    import mido
    import pretty_midi
    import soundfile

    events: list[tuple[float, int, Any]] = [(0.0, 0, mido.Message("program_change", program=program))]
    for note in notes:
        velocity = int(np.clip(90 + 2.5 * (note.level_db + 14), 50, 120))
        events.append((note.onset_sec, 2, mido.Message("note_on", note=note.midi, velocity=velocity)))
        events.append((note.offset_sec, 1, mido.Message("note_off", note=note.midi)))
    events.append((notes[-1].offset_sec + 1.0, 3, mido.MetaMessage("end_of_track")))
    events.sort(key=lambda event: event[:2])
    track, now = mido.MidiTrack(), 0
    for seconds, _, message in events:
        ticks = round(seconds * 960)
        track.append(message.copy(time=ticks - now))
        now = ticks
    file = mido.MidiFile(ticks_per_beat=480)
    file.tracks.append(track)
    buffer = io.BytesIO()
    file.save(file=buffer)
    font = next(Path(pretty_midi.__file__).parent.rglob("*.sf2")).read_bytes()
    wave, rate = soundfile.read(io.BytesIO(midirenderer.render_wave_from(font, buffer.getvalue())))
    return normalised(wave.mean(axis=1)), rate


# Conditions ---------------------------------------------------------------------------------------------------

CONDITIONS: Final = ("dry", "room", "noise 10 dB white", "noise 10 dB pink", "backing -24 dB")
WET: Final = "wet room"
ORNATE: Final = "dry, many ornaments"


@dataclass(frozen=True)
class Sounding:
    """A take with its truth: a mono wave at `rate` Hz."""

    instrument: str
    notes: tuple[Truth, ...]
    wave: Wave
    rate: int


def formula_take(path: str, condition: str, instrument: str, seed: Sequence[int], quarters: float = 32.0) -> Sounding:
    """A tune played by formula under a condition: one of `CONDITIONS`, or `WET`.

    The room has a reverberation time of 0.3 to 0.6 s and 4 to 8 dB more direct sound than reverberation, as near a
    microphone on a music stand in a practice room; the wet room 0.6 to 0.9 s and 1 to 4 dB.
    `ORNATE` has five times the usual grace notes and scoops, to count them by the hundred.
    """
    rng = np.random.default_rng(list(seed))
    rates = {"graces": 0.4, "scoops": 0.4} if condition == ORNATE else {}
    line = fitted(melody(path, quarters), *SOUNDING[instrument])
    notes = played(line, rng, rng.uniform(84, 126), **rates)
    wave = render(notes, TIMBRES[instrument], rng)
    if condition == "room":
        wave = room(wave, rng, seconds=rng.uniform(0.3, 0.6), direct_db=rng.uniform(4, 8))
    elif condition == WET:
        wave = room(wave, rng, seconds=rng.uniform(0.6, 0.9), direct_db=rng.uniform(1, 4))
    elif condition.startswith("noise"):
        wave = noise(wave, rng, snr_db=10, colour="white" if condition.endswith("white") else "pink")
    elif condition.startswith("backing"):
        wave = backing(wave, rng, below_db=24)
    return Sounding(instrument, tuple(notes), wave, RATE)


def synthesised_take(path: str, instrument: str, seed: Sequence[int], quarters: float = 32.0) -> Sounding:
    """A tune by the soundfont, with grace notes but none of the inflections that its samples can't play."""
    rng = np.random.default_rng(list(seed))
    line = fitted(melody(path, quarters), *SOUNDING[instrument])
    notes = played(line, rng, rng.uniform(84, 126), scoops=0, falls=0, vibratos=0)
    program = int(rng.choice(PROGRAMS[instrument]))
    notes = speaking(notes, program)
    wave, rate = soundfont_take(notes, program)
    return Sounding(instrument, tuple(notes), wave, rate)
