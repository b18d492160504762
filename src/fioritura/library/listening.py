"""What was played: heard, named, and reported on."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from numpy.typing import NDArray

from fioritura.arrange.rendition import Rendition
from fioritura.errors import OtherTuneError
from fioritura.listening.naming import Naming
from fioritura.listening.notes import Take
from fioritura.tune import Tune

if TYPE_CHECKING:
    from fioritura.review.take_review import Review

__all__ = ["hear", "listen", "name"]


def hear(recording: str | Path | NDArray[Any], rate: int = 44100) -> Take:
    """The notes of a recording of one wind player: times, pitches, attacks and inflections.

    Args:
        recording: a file (WAV, FLAC, MP3, OGG), or samples within ±1 of shape (frames,) or (frames, channels).
        rate: frames a second of an array; a file knows its own.

    Examples:
        >>> import numpy as np
        >>> t = np.arange(44100) / 44100
        >>> take = hear(0.3 * np.sin(2 * np.pi * 440 * t))
        >>> [note.midi for note in take.notes], round(take.duration_sec, 2)
        ([69], 1.0)

    Raises:
        ReadError: the file is missing or not audio.
        OptionError: the array is not a recording.
    """
    from fioritura.listening.hear import hear as heard

    return heard(recording, rate)


def name(tune: Tune, played: Take | Tune | Rendition) -> Naming:
    """Which ornaments a version of a tune uses: its figures and slips, each with its place.

    Args:
        tune: the plain tune.
        played: what `hear` heard, another setting of the tune as `read` reads it, or a rendition. Key, octave, tempo
            and repeats may differ.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> rendition = fioritura.ornament(tune, only=["turn"])
        >>> {figure.technique for figure in name(tune, rendition).figures}
        {'turn'}

    Raises:
        OtherTuneError: it is another tune.
    """
    from fioritura.listening.name import name_line, name_take

    if isinstance(played, Take):
        naming = name_take(tune, played)
    else:
        naming = name_line(tune, played.line if isinstance(played, Rendition) else played.notes)
    if not naming.alignment.is_this_tune:
        raise OtherTuneError("library-other-tune", title=tune.title, likeness=round(100 * naming.alignment.likeness))
    return naming


def listen(
    recording: str | Path | NDArray[Any], asked: Tune | Rendition, *, level: int | None = None, rate: int = 44100
) -> Review:
    """A report on a take: what came out, pitch and time, and what to practise next.

    Args:
        recording: as for `hear`.
        asked: the rendition that was to be played, or the plain tune.
        level: the player's level (1 to 5), for the next ornament to try; a rendition knows its own, else 3.
        rate: frames a second of an array.

    Examples:
        >>> import fioritura
        >>> rendition = fioritura.ornament(fioritura.demo_tune(), only=["turn"])
        >>> samples, rate = rendition.audio(tempo=240)
        >>> review = listen(samples, rendition, rate=rate)
        >>> review.naming.alignment.is_this_tune, review.praise.id
        (True, 'praise-all-ornaments')

    Raises:
        ReadError: the file can't be read, or is not one player's line (silence, several parts, noise).
        OtherTuneError: it is another tune.
        OptionError: a level or an array that is out of bounds.
    """
    from fioritura.arrange.arrangement import Arrangement
    from fioritura.review.take_review import USUAL_LEVEL, review_take

    if isinstance(asked, Tune):
        return review_take(recording, asked, level=USUAL_LEVEL if level is None else level, rate=rate)
    arrangement = Arrangement(asked.tune, asked.setting, asked, asked.seed)
    return review_take(recording, asked=arrangement, rate=rate)
