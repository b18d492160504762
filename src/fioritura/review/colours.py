"""The colours of a review, told apart by lightness as well, so that a print in grey can be read."""

from __future__ import annotations

from typing import Final

__all__ = ["ADDED", "DONE", "FLAT", "GRID", "INK", "IN_TUNE", "MISSED", "QUIET", "SHARP", "SLIP"]

INK: Final = "#1a1a1a"
QUIET: Final = "#555555"
GRID: Final = "#d4d4d4"

DONE: Final = "#dfeee0"
ADDED: Final = "#e3e6f5"
MISSED: Final = "#f6e3bd"
SLIP: Final = "#f4cfc8"

IN_TUNE: Final = "#7fb8a4"
SHARP: Final = "#d9622b"
FLAT: Final = "#4a63b8"
