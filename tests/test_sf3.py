"""Compressed soundfonts: one that is packed from the small soundfont at hand sounds like it."""

from __future__ import annotations

import io
import struct
from pathlib import Path

import numpy as np
import pytest
import soundfile

from fioritura.errors import ToolError
from fioritura.sound.performance import PerformedNote
from fioritura.sound.render import render
from fioritura.sound.soundfont import find_soundfont, read_soundfont
from fioritura.sound.synth import BuiltInSynth
from tests.test_synth import performance

HEADER = struct.Struct("<20sIIIIIBbHH")


def chunks(data: bytes) -> list[tuple[bytes, bytes]]:
    found, place = [], 0
    while place + 8 <= len(data):
        name, size = struct.unpack_from("<4sI", data, place)
        found.append((name, data[place + 8 : place + 8 + size]))
        place += 8 + size + size % 2
    return found


def chunk(name: bytes, body: bytes) -> bytes:
    return name + struct.pack("<I", len(body)) + body + b"\0" * (len(body) % 2)


def packed(data: bytes) -> bytes:
    """A soundfont's bytes as SF3, as MuseScore's converter lays it out: version 3, samples as Ogg Vorbis by byte places."""
    lists = {body[:4]: chunks(body[4:]) for name, body in chunks(data[12:]) if name == b"LIST"}
    samples, tables = dict(lists[b"sdta"])[b"smpl"], dict(lists[b"pdta"])
    stream, headers = bytearray(), bytearray()
    for name, start, end, loop, loop_end, rate, key, correction, link, kind in HEADER.iter_unpack(tables[b"shdr"]):
        first = len(stream)
        if end > start:
            frames = np.frombuffer(samples[2 * start : 2 * end], "<i2")
            buffer = io.BytesIO()
            soundfile.write(buffer, frames, max(rate, 8000), format="OGG", subtype="VORBIS")
            stream += buffer.getvalue()
            loop, loop_end, kind = loop - start, loop_end - start, kind | 0x10
        headers += HEADER.pack(name, first, len(stream), loop, loop_end, rate, key, correction, link, kind)
    lists[b"INFO"] = [(n, struct.pack("<HH", 3, 1) if n == b"ifil" else body) for n, body in lists[b"INFO"]]
    lists[b"sdta"] = [(b"smpl", bytes(stream))]
    lists[b"pdta"] = [(n, bytes(headers) if n == b"shdr" else body) for n, body in lists[b"pdta"]]
    parts = (chunk(b"LIST", kind + b"".join(chunk(*one) for one in inside)) for kind, inside in lists.items())
    return chunk(b"RIFF", b"sfbk" + b"".join(parts))


def test_a_compressed_soundfont_sounds_like_the_plain_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    plain = find_soundfont()
    (tmp_path / "small.sf3").write_bytes(packed(plain.path.read_bytes()))
    font = read_soundfont(tmp_path / "small.sf3")
    assert font.is_compressed and font.name == plain.name
    music = performance(*(PerformedNote(0.4 * n, 0.35, 60 + 3 * n, 100) for n in range(5)))
    one, other = (render(music, BuiltInSynth(each)) for each in (plain, font))
    assert np.corrcoef(one[:, 0], other[:, 0])[0, 1] > 0.98
    assert font.plain_path == font.plain_path != font.path
    assert BuiltInSynth(font).keys(67) == BuiltInSynth(plain).keys(67)


def test_a_damaged_compressed_soundfont_is_refused_by_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    info = b"INFO" + chunk(b"ifil", struct.pack("<HH", 3, 1))
    (tmp_path / "cut.sf3").write_bytes(chunk(b"RIFF", b"sfbk" + chunk(b"LIST", info)))
    with pytest.raises(ToolError, match=r"cut\.sf3"):
        render(performance(PerformedNote(0.0, 0.3, 60, 100)), BuiltInSynth(read_soundfont(tmp_path / "cut.sf3")))
