"""A session: a tune played by a melody instrument and a band, chorus after chorus, as one performance."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from fioritura.accompany.band import band_parts
from fioritura.accompany.feels import BandFeel
from fioritura.accompany.form import Chorus, Ending, Form, Opening, form_of
from fioritura.accompany.part import BandPart
from fioritura.players.instruments import Instrument
from fioritura.players.player import Player
from fioritura.sound.band import offbeat_ratio, perform_band
from fioritura.sound.clock import Clock
from fioritura.sound.perform import clock_of, perform_line
from fioritura.sound.performance import Performance, PerformedPart
from fioritura.tune import Feel, Tune

__all__ = ["Session", "played", "played_melody", "session_form"]


@dataclass(frozen=True, slots=True)
class Session:
    """What is to be played.

    `tune` is unfolded; `choruses` hold the lines over its bars. `ending` None takes the feel's own; without
    `holds_last` the music stops with the last chorus, as a loop does. Without `has_band` only melody and click are
    heard; the click counts in, and goes on with `clicks`. `opening` says what comes before the melody. `player` says whose breath it is (see `perform`).
    """

    tune: Tune
    choruses: tuple[Chorus, ...]
    instrument: Instrument
    feel: BandFeel
    quarters_per_minute: float | None = None
    has_band: bool = True
    clicks: bool = False
    count_in_bars: int | None = None
    opening: Opening = "count-in"
    ending: Ending | None = None
    holds_last: bool = True
    exact: bool = False
    seed: int = 0
    player: Player | None = None

    @property
    def line_feel(self) -> Feel:
        """How the melody's eighths are played."""
        return self.feel.line_feel


def session_form(session: Session) -> Form:
    """The form of a session: a count-in of one bar, or of two where a bar has fewer than three beats.

    Raises:
        OptionError: no chorus, or too many bars.
    """
    count_in = session.count_in_bars
    if count_in is None:
        count_in = 1 if len(session.tune.metre.groups_ticks) > 2 else 2
    return form_of(
        session.tune,
        session.choruses,
        count_in_bars=count_in,
        opening=session.opening,
        ending=session.ending or session.feel.ending,
        holds_last=session.holds_last,
    )


def played(session: Session) -> Performance:
    """The performance of a session: melody, bass, chords, drums and click over one clock.

    Raises:
        OptionError: the feel does not suit the metre, the tempo is out of reach, or there are too many bars.
    """
    form = session_form(session)
    clock = _clock(session, form)
    melody = _melody(session, form, clock)
    band = perform_band(
        tuple(_wanted(session, form)), form, session.feel, clock, exact=session.exact, seed=session.seed
    )
    parts = (melody, *band) if melody.notes else band
    end_sec = clock.seconds(form.tune.duration_ticks)
    performance = Performance(session.tune.title, session.tune.key, clock, form.tune.bars, parts)
    return replace(performance, lasts_sec=end_sec)


def played_melody(session: Session) -> PerformedPart:
    """The melody of a session alone, as it is in `played`.

    Raises:
        OptionError: the tempo is out of reach, or there are too many bars.
    """
    form = session_form(session)
    return _melody(session, form, _clock(session, form))


def _clock(session: Session, form: Form) -> Clock:
    return clock_of(form.tune, form.tune.notes, session.quarters_per_minute)


def _melody(session: Session, form: Form, clock: Clock) -> PerformedPart:
    return perform_line(
        form.tune,
        form.tune.notes,
        clock,
        instrument=session.instrument,
        player=session.player,
        feel=session.line_feel,
        exact=session.exact,
        laid_back=session.has_band,
        offbeats=offbeat_ratio(session.feel.subdivision),
        plain=tuple(_plain(session, form)),
        seed=session.seed,
    )


def _plain(session: Session, form: Form) -> Iterator[tuple[int, int]]:
    """Where the choruses lie whose line no figure adorns: they are played without vibrato, so that comparing teaches."""
    is_adorned = [any(note.figures for note in chorus.line or ()) for chorus in session.choruses]
    opened = bool(form.count_in_ticks) + (session.opening == "intro")
    for number, section in enumerate(form.sections[opened:]):
        if not is_adorned[min(number, len(is_adorned) - 1)]:
            yield section.start_ticks, section.end_ticks


def _wanted(session: Session, form: Form) -> Iterator[BandPart]:
    """The parts that have something to play."""
    for part in band_parts(form, session.feel, seed=session.seed, clicks=session.clicks):
        if part.notes and (session.has_band or part.name == "click"):
            yield part
