"""What audio is in this room: float32 of shape (frames, 2), full scale ±1, at 48 000 frames a second."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["SAMPLE_RATE", "Audio"]

SAMPLE_RATE: Final = 48_000
"""Frames a second."""

Audio = NDArray[np.float32]
"""Shape (frames, 2), full scale ±1."""
