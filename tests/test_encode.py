"""Audio files, read back by libsndfile (soundfile) and, for tags, by the letter of ID3v2.4.0 (id3.org)."""

from __future__ import annotations

import io
import struct
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import soundfile

from fioritura.errors import OptionError
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.encode import (
    AUDIO_FORMATS,
    AudioFormat,
    Tags,
    encode_audio,
    encode_blocks,
    format_named,
    tags_of,
)
from fioritura.sound.perform import perform
from fioritura.theory.key import Key, Mode
from fioritura.tune import Tempo
from tests.tunes import line_of

TAGS = Tags("Lantern Étude", Key.of("Bb", "minor"), 132.4, "A. Composer")


def music(seconds: float = 2.0) -> Audio:
    times = np.arange(round(seconds * SAMPLE_RATE)) / SAMPLE_RATE
    left, right = 0.4 * np.sin(2 * np.pi * 440 * times), 0.3 * np.sin(2 * np.pi * 660 * times)
    return np.stack([left, right], axis=1).astype(np.float32)


def frames_of(data: bytes) -> dict[str, str]:
    """Text frames of an ID3v2.4 tag: sizes are 28 bits in four bytes of seven (section 6.2)."""

    def size(four: bytes) -> int:
        assert all(byte < 128 for byte in four)
        return sum(byte << shift for byte, shift in zip(four, (21, 14, 7, 0), strict=True))

    assert data[:5] == b"ID3\x04\x00"
    end, place, found = 10 + size(data[6:10]), 10, {}
    while place < end:
        length = size(data[place + 4 : place + 8])
        assert data[place + 10] == 3, "UTF-8"
        found[data[place : place + 4].decode()] = data[place + 11 : place + 10 + length].decode("utf-8")
        place += 10 + length
    assert struct.unpack(">H", data[end : end + 2])[0] >= 0xFFE0, "an MPEG frame follows"
    return found


@pytest.mark.parametrize("format", ["wav", "flac"])
def test_lossless_formats_give_the_samples_back(format: AudioFormat) -> None:
    audio = music()
    with soundfile.SoundFile(io.BytesIO(encode_audio(audio, format, TAGS))) as file:
        assert (file.samplerate, file.channels, file.title, file.artist) == (SAMPLE_RATE, 2, TAGS.title, TAGS.artist)
        assert "Bb minor" in file.comment
        assert "132.4" in file.comment
        assert np.abs(file.read(dtype="float32") - audio).max() <= 1 / 32768


def test_mp3_sounds_the_same() -> None:
    audio = music()
    decoded, rate = soundfile.read(io.BytesIO(encode_audio(audio, "mp3", TAGS)), dtype="float32")
    assert rate == SAMPLE_RATE
    assert 0 <= len(decoded) - len(audio) <= 4 * 1152
    middle = decoded[SAMPLE_RATE // 2 : SAMPLE_RATE]
    for channel, hertz in ((0, 440), (1, 660)):
        spectrum = np.abs(np.fft.rfft(middle[:, channel] * np.hanning(len(middle))))
        assert np.argmax(spectrum) * SAMPLE_RATE / len(middle) == pytest.approx(hertz, abs=3)
        assert np.sqrt(2 * (middle[:, channel] ** 2).mean()) == pytest.approx((0.4, 0.3)[channel], rel=0.01)


def test_mp3_tags_hold_title_key_tempo_and_artist() -> None:
    found = frames_of(encode_audio(music(), "mp3", TAGS))
    assert found == {"TIT2": "Lantern Étude", "TPE1": "A. Composer", "TKEY": "Bbm", "TBPM": "132"}


@pytest.mark.parametrize("fifths", range(-7, 8))
@pytest.mark.parametrize("mode", ["major", "minor", "dorian"])
def test_the_key_frame_keeps_to_three_characters(fifths: int, mode: Mode) -> None:
    # ID3v2.4.0-frames, TKEY: the note in capitals, b or #, m for minor; at most three characters.
    key = frames_of(encode_audio(music(0.1), "mp3", Tags("x", Key(fifths, mode))))["TKEY"]
    assert len(key) <= 3
    assert key[0] in "ABCDEFG"


def test_the_tempo_tag_counts_the_beats_of_the_metre() -> None:
    for metre, beats in (("4/4", 120), ("6/8", 80), ("2/2", 60)):
        tune = replace(line_of("C4/3", metre=metre), tempos=(Tempo(0, 120.0),))
        made = perform(tune, tune.notes, instrument=INSTRUMENTS["flute"])
        assert tags_of(made).beats_per_minute == pytest.approx(beats)


def test_files_without_tags_begin_with_sound() -> None:
    assert encode_audio(music(0.1), "mp3")[:3] != b"ID3"


@pytest.mark.parametrize("format", AUDIO_FORMATS)
def test_blocks_make_the_same_file_as_the_whole(format: AudioFormat) -> None:
    audio, buffer = music(), io.BytesIO()
    encode_blocks(np.array_split(audio, 5), format, buffer, TAGS)
    whole, _ = soundfile.read(io.BytesIO(encode_audio(audio, format, TAGS)), dtype="float32")
    parts, _ = soundfile.read(io.BytesIO(buffer.getvalue()), dtype="float32")
    assert np.array_equal(whole, parts)


@pytest.mark.parametrize("format", AUDIO_FORMATS)
def test_overloud_audio_is_clipped_not_wrapped(format: AudioFormat) -> None:
    loud = np.full((SAMPLE_RATE // 2, 2), 1.7, np.float32)
    read, _ = soundfile.read(io.BytesIO(encode_audio(loud, format)), dtype="float32")
    assert read[SAMPLE_RATE // 10 : SAMPLE_RATE // 4].min() > 0.5


def test_formats_go_by_ending() -> None:
    assert format_named(Path("x.MP3").suffix) == "mp3"
    with pytest.raises(OptionError, match="mp3, wav or flac"):
        format_named(".ogg")


class _FullDisk(io.BytesIO):
    def write(self, data: bytes) -> int:  # type: ignore[override]
        if self.tell() + len(data) > 20_000:
            raise OSError(28, "No space left on device")
        return super().write(data)


@pytest.mark.parametrize("format", AUDIO_FORMATS)
def test_a_full_disk_is_an_os_error_and_nothing_else(format: AudioFormat, capfd: pytest.CaptureFixture[str]) -> None:
    noise = np.random.default_rng(1).uniform(-0.5, 0.5, (SAMPLE_RATE * 2, 2)).astype(np.float32)
    with pytest.raises(OSError, match="No space left"):
        encode_blocks([noise, noise], format, _FullDisk())
    assert capfd.readouterr().err == ""
