"""A part that sings with a measured voice, as audio."""

from __future__ import annotations

import numpy as np

from fioritura.sound.audio import Audio
from fioritura.sound.performance import PerformedPart
from fioritura.sound.voice.room import placed_in_room
from fioritura.sound.voice.sing import sung
from fioritura.sound.voice.winds import winds

__all__ = ["with_voice"]

FULL_VOLUME = 100
"""The volume of a channel at which a voice has its own loudness (General MIDI's usual one)."""


def with_voice(part: PerformedPart, audio: Audio) -> Audio:
    """Audio of shape (frames, 2) with the part added in its room, longer where it ends later.

    A channel's volume acts as the square of its value.
    """
    dry = sung(winds()[part.voice], part.notes)
    dry *= np.float32((part.volume / FULL_VOLUME) ** 2)
    return placed_in_room(dry, part.reverb, part.pan, audio)
