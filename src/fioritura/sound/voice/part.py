"""A part that sings with a measured voice, or with a sampled one (the path of an SFZ file), as audio."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import numpy as np

from fioritura.sound.audio import Audio
from fioritura.sound.performance import PerformedPart
from fioritura.sound.voice.room import placed_in_room
from fioritura.sound.voice.sampled import sampled
from fioritura.sound.voice.sfz import read_sfz
from fioritura.sound.voice.sing import sung
from fioritura.sound.voice.winds import winds

__all__ = ["with_voice"]

SFZ: Final = ".sfz"
FULL_VOLUME: Final = 100
"""The volume of a channel at which a voice has its own loudness (General MIDI's usual one)."""


def with_voice(part: PerformedPart, audio: Audio) -> Audio:
    """Audio of shape (frames, 2) with the part added in its room, longer where it ends later.

    A channel's volume acts as the square of its value.

    Raises:
        ToolError: the voice is an SFZ file that can't be read.
    """
    if part.voice.endswith(SFZ):
        dry = sampled(read_sfz(Path(part.voice)), part.notes)
    else:
        dry = sung(winds()[part.voice], part.notes)
    dry *= np.float32((part.volume / FULL_VOLUME) ** 2)
    return placed_in_room(dry, part.reverb, part.pan, audio)
