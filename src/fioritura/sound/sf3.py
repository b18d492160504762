"""Compressed soundfonts: an SF3 file is a SoundFont 2 file whose samples are Ogg Vorbis streams. The synth wants plain ones.

What a file holds is unpacked once into the user's cache, under a name that tells which file it was. A sample's header
(``shdr``, 46 bytes) gives byte places in ``smpl`` and loops from the sample's own start where it is compressed (bit 4 of its
type; as MuseScore's ``sf3convert`` documents it); unpacked it gives frames, loops from the start of ``smpl``, and 46 frames
of silence follow (SoundFont 2.04, 7.10).
"""

from __future__ import annotations

import io
import struct
from collections.abc import Iterator
from hashlib import blake2b
from pathlib import Path
from typing import Final

import numpy as np

from fioritura.errors import ToolError
from fioritura.files import cache_folder, write_beside

__all__ = ["is_compressed", "unpacked"]

_HEADER: Final = struct.Struct("<20sIIIIIBbHH")
_COMPRESSED: Final = 0x10
_SILENCE: Final = bytes(2 * 46)
_HEAD_BYTES: Final = 4096


def is_compressed(head: bytes) -> bool:
    """True for the beginning of a soundfont whose version (``ifil``) is 3."""
    place = head.find(b"ifil")
    return place >= 0 and struct.unpack_from("<H", head, place + 8)[0] == 3


def unpacked(path: Path) -> Path:
    """The plain soundfont with the same sounds; made when it is first asked for.

    Raises:
        ToolError: the file can't be read, or a sample in it can't.
    """
    state = path.stat()
    key = blake2b(f"{path.absolute()}/{state.st_size}/{state.st_mtime_ns}".encode(), digest_size=12).hexdigest()
    target = cache_folder() / "soundfonts" / f"{path.stem}-{key}.sf2"
    if not target.exists():
        try:
            write_beside(target, _plain(path.read_bytes()))
        except (OSError, KeyError, struct.error, RuntimeError, ValueError) as error:
            raise ToolError("soundfont-unreadable", path=str(path), reason=str(error)) from None
    return target


def _plain(data: bytes) -> bytes:
    lists = dict(_lists(data))
    packed = dict(_chunks(lists[b"sdta"]))[b"smpl"]
    tables = list(_chunks(lists[b"pdta"]))
    headers, samples = _samples(dict(tables)[b"shdr"], packed)
    made = [(name, headers if name == b"shdr" else body) for name, body in tables]
    info = [(n, struct.pack("<HH", 2, 4) if n == b"ifil" else body) for n, body in _chunks(lists[b"INFO"])]
    parts = (
        _list(b"INFO", info),
        _list(b"sdta", [(b"smpl", samples)]),
        _list(b"pdta", made),
    )
    return _chunk(b"RIFF", b"sfbk" + b"".join(parts))


def _samples(headers: bytes, packed: bytes) -> tuple[bytes, bytes]:
    """The sample headers for unpacked samples, and these."""
    import soundfile

    made, samples = bytearray(), bytearray()
    for fields in _HEADER.iter_unpack(headers):
        name, start, end, loop_start, loop_end, rate, key, correction, link, kind = fields
        first = len(samples) // 2
        if kind & _COMPRESSED:
            frames, rate = soundfile.read(io.BytesIO(packed[start:end]), dtype="int16", always_2d=True)
            samples += np.ascontiguousarray(frames[:, 0]).astype("<i2").tobytes()
            loop_start, loop_end = first + loop_start, first + loop_end
        elif end > start:
            samples += packed[2 * start : 2 * end]
            loop_start, loop_end = first + loop_start - start, first + loop_end - start
        end = len(samples) // 2
        samples += _SILENCE
        made += _HEADER.pack(name, first, end, loop_start, loop_end, rate, key, correction, link, kind & ~_COMPRESSED)
    return bytes(made), bytes(samples)


def _lists(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    for name, body in _chunks(data[12:]):
        if name == b"LIST":
            yield body[:4], body[4:]


def _chunks(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    place = 0
    while place + 8 <= len(data):
        name, size = struct.unpack_from("<4sI", data, place)
        yield name, data[place + 8 : place + 8 + size]
        place += 8 + size + size % 2


def _chunk(name: bytes, body: bytes) -> bytes:
    return name + struct.pack("<I", len(body)) + body + b"\0" * (len(body) % 2)


def _list(kind: bytes, chunks: list[tuple[bytes, bytes]]) -> bytes:
    return _chunk(b"LIST", kind + b"".join(_chunk(name, body) for name, body in chunks))
