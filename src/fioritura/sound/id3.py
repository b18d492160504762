"""The few ID3v2.4 frames that a practice file needs: title, key, tempo, artist (id3.org, ID3v2.4.0)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

__all__ = ["id3_tag"]

_UTF8: Final = b"\x03"


def id3_tag(texts: Mapping[str, str]) -> bytes:
    """A tag, to stand before the first MP3 frame, with a text frame for each four-letter id such as ``TIT2``."""
    frames = b"".join(_frame(name, text) for name, text in texts.items() if text)
    return b"ID3\x04\x00\x00" + _syncsafe(len(frames)) + frames if frames else b""


def _frame(name: str, text: str) -> bytes:
    body = _UTF8 + text.encode("utf-8")
    return name.encode("ascii") + _syncsafe(len(body)) + b"\0\0" + body


def _syncsafe(size: int) -> bytes:
    """28 bits, seven to a byte."""
    return bytes(size >> shift & 0x7F for shift in (21, 14, 7, 0))
