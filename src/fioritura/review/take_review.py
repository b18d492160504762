"""A take, listened to: what is heard, named and measured, in one value that pictures and pages are made of."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from numpy.typing import NDArray

from fioritura.arrange.arrangement import Arrangement
from fioritura.errors import OptionError, OtherTuneError
from fioritura.listening.advice import Advice, advice_on, praise_for
from fioritura.listening.hear import hear
from fioritura.listening.naming import Naming
from fioritura.listening.notes import Take
from fioritura.listening.report import Report, report_on
from fioritura.listening.words import likeness_words, refuse_unclear
from fioritura.players.instruments import INSTRUMENTS, Instrument
from fioritura.players.limits import LEVELS
from fioritura.tune import Feel, Tune
from fioritura.words import Message, message, say
from fioritura.words.record import record

__all__ = ["Review", "review_take"]

USUAL_LEVEL = 3


@dataclass(frozen=True)
class Review:
    """A take of a tune. `asked` is the arrangement that was to be played, `instrument` the one that notes are named for."""

    name: str
    tune: Tune
    take: Take
    naming: Naming
    report: Report
    praise: Message
    advice: tuple[Advice, ...]
    asked: Arrangement | None = None
    instrument: Instrument = INSTRUMENTS["concert"]

    @property
    def feel(self) -> Feel:
        """How the tune was to be played."""
        return self.asked.setting.feel if self.asked else self.tune.feel

    def to_dict(self) -> dict[str, Any]:
        """The report with praise, advice and what spoils the recording, as plain data for JSON in the language spoken."""
        return {
            "take": self.name,
            **self.report.to_dict(),
            "praise": say(self.praise),
            "advice": [{**record(one), "note": say(one.note) if one.note else ""} for one in self.advice],
            "findings": record(self.take.findings),
        }


def review_take(
    source: Path | str | NDArray[Any],
    tune: Tune | None = None,
    *,
    asked: Arrangement | None = None,
    instrument: Instrument | None = None,
    level: int = USUAL_LEVEL,
    name: str = "",
    rate: int = 44100,
) -> Review:
    """Listen to a take as a performance of a tune.

    Args:
        source: a file (WAV, FLAC, MP3, OGG), or samples within ±1 of shape (frames,) or (frames, channels).
        tune: the plain tune; not needed with `asked`, whose tune it is then.
        asked: the arrangement that was to be played.
        instrument: names notes as this instrument reads them; without it the arrangement's, or concert pitch.
        level: the player's level, 1 to 5, for the next ornament to try; with `asked` its own.
        name: what the take is called in messages and on pages; without it the file's name.
        rate: sampling rate of an array in Hz.

    Raises:
        ReadError: the file can't be read, or is not one player's line (silence, several parts, noise).
        OtherTuneError: it is another tune.
        OptionError: neither tune nor arrangement is given, or the level or the array is out of bounds.
    """
    if asked is not None:
        tune = asked.tune
    if tune is None:
        raise OptionError("which-tune")
    if level not in LEVELS:
        raise OptionError("no-such-level", given=f"{level}", low=LEVELS[0], high=LEVELS[-1])
    name = name or (Path(source).name if isinstance(source, Path | str) else say(message("the-take")))
    take = hear(source, rate)
    refuse_unclear(take, name)
    instrument = instrument or (asked.setting.instrument if asked else None)
    naming, report = report_on(tune, take, asked.rendition.figures if asked else (), instrument=instrument)
    if not naming.alignment.is_this_tune:
        raise OtherTuneError(likeness_words(naming.alignment, name))
    feel = asked.setting.feel if asked else tune.feel
    advice = advice_on(report, feel, asked.setting.level if asked else level)
    chosen = instrument or INSTRUMENTS["concert"]
    return Review(name, tune, take, naming, report, praise_for(report), advice, asked, chosen)
