"""Audio files: MP3 (by lameenc), WAV and FLAC (by soundfile), with title, key and tempo in them."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import IO, Final, Literal, get_args

import numpy as np
from numpy.typing import NDArray

from fioritura.errors import OptionError
from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.id3 import id3_tag
from fioritura.sound.performance import Performance
from fioritura.theory.key import Key

__all__ = [
    "AUDIO_FORMATS",
    "OVERSHOOT_DB",
    "AudioFormat",
    "Tags",
    "encode_audio",
    "encode_blocks",
    "format_named",
    "tags_of",
]

AudioFormat = Literal["mp3", "wav", "flac"]
AUDIO_FORMATS: Final[tuple[AudioFormat, ...]] = get_args(AudioFormat)

MP3_KBITS: Final = 192
MP3_QUALITY: Final = 7
"""lame's own scale, 0 best to 9 fastest. At this bit rate 7 takes half the time of 5 and loses nothing that was
measured: noise 28 dB below the music with either."""

MP3_SCALE: Final = 0.97
"""What lame multiplies by at this bit rate before it encodes; it is made up for."""

OVERSHOOT_DB: Final[dict[AudioFormat, float]] = {"mp3": 0.8, "wav": 0.0, "flac": 0.0}
"""How far peaks may rise by encoding: room to leave under a ceiling. Mixes of the band rose by up to 0.6 dB."""


@dataclass(frozen=True, slots=True)
class Tags:
    """What a player's display shows; `key` is sounding pitch, beats are those of the metre (dotted quarters in 6/8)."""

    title: str = ""
    key: Key | None = None
    beats_per_minute: float | None = None
    artist: str = ""


def tags_of(performance: Performance, artist: str = "") -> Tags:
    """The tags of a performance: its title, first key and first tempo."""
    return Tags(performance.title, performance.key, performance.beats_per_minute, artist)


def format_named(name: str) -> AudioFormat:
    """A format by its name or file ending, with or without the dot.

    Raises:
        OptionError: it is none of mp3, wav and flac.
    """
    wanted = name.lower().removeprefix(".")
    for known in AUDIO_FORMATS:
        if known == wanted:
            return known
    raise OptionError("no-audio-format", given=name, known=AUDIO_FORMATS)


def encode_audio(audio: Audio, format: AudioFormat, tags: Tags | None = None) -> bytes:
    """A whole audio file from audio of shape (frames, 2); what lies beyond ±1 is clipped."""
    buffer = io.BytesIO()
    encode_blocks([audio], format, buffer, tags)
    return buffer.getvalue()


def encode_blocks(blocks: Iterable[Audio], format: AudioFormat, file: IO[bytes], tags: Tags | None = None) -> None:
    """Write an audio file from blocks of shape (frames, 2)."""
    tags = tags or Tags()
    if format == "mp3":
        _write_mp3(blocks, file, tags)
    else:
        _write_with_soundfile(blocks, format, file, tags)


def _write_mp3(blocks: Iterable[Audio], file: IO[bytes], tags: Tags) -> None:
    import lameenc

    tempo = tags.beats_per_minute
    file.write(
        id3_tag(
            {
                "TIT2": tags.title,
                "TPE1": tags.artist,
                "TKEY": _id3_key(tags.key) if tags.key else "",
                "TBPM": str(round(tempo)) if tempo else "",
            }
        )
    )
    encoder = lameenc.Encoder()
    encoder.set_bit_rate(MP3_KBITS)
    encoder.set_in_sample_rate(SAMPLE_RATE)
    encoder.set_channels(2)
    encoder.set_quality(MP3_QUALITY)
    encoder.silence()
    for block in blocks:
        file.write(encoder.encode(_pcm16(block / np.float32(MP3_SCALE))))
    file.write(encoder.flush())


def _write_with_soundfile(blocks: Iterable[Audio], format: AudioFormat, file: IO[bytes], tags: Tags) -> None:
    import soundfile

    target = _Sink(file)
    with soundfile.SoundFile(target, "w", SAMPLE_RATE, 2, "PCM_16", format=format.upper()) as sound:
        facts = [str(tags.key)] if tags.key else []
        facts += [f"{tags.beats_per_minute:g} beats a minute"] if tags.beats_per_minute else []
        texts = {"title": tags.title, "artist": tags.artist, "comment": ", ".join(facts)}
        for name, text in texts.items():
            if text:
                setattr(sound, name, text)
        for block in blocks:
            sound.write(np.clip(block, -1.0, 1.0))
            target.check()
    target.check()


class _Sink:
    """A file whose first error waits for `check`: out of the encoder's callbacks it could not be raised."""

    def __init__(self, file: IO[bytes]) -> None:
        self._file = file
        self._error: OSError | None = None

    def check(self) -> None:
        """Raise what went wrong."""
        if self._error:
            raise self._error

    def write(self, data: bytes) -> int:
        """Write, or keep the error."""
        return self._kept(lambda: self._file.write(data))

    def seek(self, offset: int, whence: int = 0) -> int:
        """Go to a place, or keep the error."""
        return self._kept(lambda: self._file.seek(offset, whence))

    def tell(self) -> int:
        """Where the file is."""
        return self._kept(lambda: self._file.tell())

    def read(self, size: int = -1) -> bytes:
        """Read back."""
        return self._file.read(size)

    def _kept(self, action: Callable[[], int]) -> int:
        try:
            return action()
        except OSError as error:
            self._error = self._error or error
            self._file = io.BytesIO()
            return action()


def _pcm16(block: Audio) -> bytes:
    samples: NDArray[np.int16] = np.clip(block * 32767.0, -32768, 32767).astype("<i2")
    return samples.tobytes()


def _id3_key(key: Key) -> str:
    """``"Bb"``, ``"F#m"``: at most three characters."""
    return f"{key.tonic}{'m' if key.is_minor else ''}"[:3]
