"""A take, listened to: what is heard, named and measured, in one value that pictures and pages are made of."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from numpy.typing import NDArray

from fioritura.arrange.arrangement import Arrangement
from fioritura.errors import OptionError, OtherTuneError
from fioritura.listening.advice import Advice, advice_on, headline_of, praise_for
from fioritura.listening.hear import hear
from fioritura.listening.naming import Naming
from fioritura.listening.notes import Take
from fioritura.listening.report import report_on
from fioritura.listening.rows import Report
from fioritura.listening.words import likeness_words, refuse_unclear
from fioritura.players.instruments import INSTRUMENTS, Instrument
from fioritura.players.limits import LEVELS
from fioritura.tune import Feel, Tune
from fioritura.words import Message, message, say
from fioritura.words.record import record

__all__ = ["Review", "review_of", "review_take"]

USUAL_LEVEL = 3


@dataclass(frozen=True)
class Review:
    """A take of a tune. `headline` is the first sentence: the one thing that matters most; it is the praise where nothing is
    to be mended. `asked` is the arrangement that was to be played, `instrument` the one that notes are named for."""

    name: str
    tune: Tune
    take: Take
    naming: Naming
    report: Report
    headline: Message
    praise: Message
    advice: tuple[Advice, ...]
    asked: Arrangement | None = None
    instrument: Instrument = INSTRUMENTS["concert"]

    @property
    def feel(self) -> Feel:
        """How the tune was to be played."""
        return self.asked.setting.feel if self.asked else self.tune.feel

    def to_dict(self) -> dict[str, Any]:
        """The report with its first sentence, praise, advice and what spoils the recording, as plain data for JSON in the
        language spoken."""
        return {
            "take": self.name,
            "headline": say(self.headline),
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
    tempo: float | None = None,
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
        tempo: the tempo that was to be played, in quarters a minute; without it that of `asked`, else any will do.
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
    take = hear(source, rate, tune)
    refuse_unclear(take, name)
    instrument = instrument or (asked.setting.instrument if asked else None)
    return review_of(take, tune, asked=asked, instrument=instrument, level=level, tempo=tempo, name=name)


def review_of(
    take: Take,
    tune: Tune,
    *,
    asked: Arrangement | None = None,
    instrument: Instrument | None = None,
    level: int = USUAL_LEVEL,
    tempo: float | None = None,
    name: str = "",
) -> Review:
    """Review a take that was heard; see `review_take`.

    Raises:
        OtherTuneError: it is another tune.
    """
    setting = asked.setting if asked else None
    naming, report = report_on(
        tune,
        take,
        asked.rendition.figures if asked else (),
        instrument=instrument,
        tempo=tempo or (setting.quarters_per_minute if setting else None),
        feel=setting.feel if setting else None,
    )
    if not naming.alignment.is_this_tune:
        raise OtherTuneError(likeness_words(naming.alignment, name))
    advice = advice_on(report, setting.level if setting else level)
    said = headline_of(report), praise_for(report)
    return Review(name, tune, take, naming, report, *said, advice, asked, instrument or INSTRUMENTS["concert"])
