"""What there is to hear: melody lines and band parts as single sounds of one length, which the page mixes.

So plain and ornamented, the faders, loops and playing in turn cost no rendering: only a new line or a new tempo does. No
audio is ever stretched: another tempo is another performance. Sounds are FLAC, kept in the user's cache by their content.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import OrderedDict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import accumulate
from math import isfinite
from threading import Lock
from typing import Final

import numpy as np

from fioritura.accompany.excerpt import excerpt
from fioritura.accompany.feels import BandFeel, default_feel, feel_named
from fioritura.accompany.form import Chorus
from fioritura.arrange.arrangement import Arrangement
from fioritura.arrange.rendition import Rendition
from fioritura.files import cache_folder
from fioritura.lesson.cache import Cache, digest
from fioritura.sound.audio import Audio
from fioritura.sound.calibrate import calibrated
from fioritura.sound.encode import encode_audio
from fioritura.sound.loudness import integrated_loudness
from fioritura.sound.perform import perform
from fioritura.sound.performance import Performance, PerformedPart
from fioritura.sound.render import render, render_short
from fioritura.sound.session import Session, played, played_melody
from fioritura.sound.synth import Synth, synth_named
from fioritura.techniques.figure import Figure
from fioritura.theory.metre import QUARTER
from fioritura.tune import Note, Tune
from fioritura.unfold import playing_order, unfolded
from fioritura.web.models import BarTime, HearingView, LineTime
from fioritura.web.staves import bars_of
from fioritura.words import message, say

__all__ = ["Sounds", "figure_sound", "hearing"]

MOST_OFFERED: Final = 400
MOST_BALANCES: Final = 24
MELODY_LUFS: Final = -20.0
"""How loud a melody alone is, with headroom for the band that the page adds to it."""

PEAK: Final = 0.95
PROBE_SEC: Final = 12.0

SEED: Final = 0


@dataclass
class _Offer:
    make: Callable[[], bytes]
    lock: Lock = field(default_factory=Lock)


class Sounds:
    """Sounds by key: made when they are first asked for, then kept. Safe to use from several threads."""

    def __init__(self, synth: Synth | None = None) -> None:
        self._cache = Cache(cache_folder() / "page")
        self._offers: OrderedDict[str, _Offer] = OrderedDict()
        self._balances: OrderedDict[str, _Balance] = OrderedDict()
        self._lock = Lock()
        self._given = synth

    @cached_property
    def synth(self) -> Synth:
        """The synth in use."""
        return self._given or synth_named()

    def offer(self, key: str, make: Callable[[], bytes]) -> str:
        """Have a sound at hand under a key, which is returned."""
        with self._lock:
            self._offers.setdefault(key, _Offer(make))
            self._offers.move_to_end(key)
            while len(self._offers) > MOST_OFFERED:
                self._offers.popitem(last=False)
        return key

    def get(self, key: str) -> bytes | None:
        """A sound as FLAC; None when none is offered under the key.

        Raises:
            ToolError: the synth is missing or failed.
        """
        kept = self._cache.get(key)
        offer = self._offers.get(key)
        if kept is not None or offer is None:
            return kept
        with offer.lock:
            kept = self._cache.get(key)
            if kept is None:
                kept = offer.make()
                self._cache.put(key, kept)
        return kept

    def trim(self) -> None:
        """Drop the oldest sounds where there are too many."""
        self._cache.trim()

    def balance_of(self, performance: Performance) -> _Balance:
        """How loud the parts of a performance are to be; measured once."""
        key = digest("balance", performance.parts)
        with self._lock:
            found = self._balances.setdefault(key, _Balance(performance, self, key))
            self._balances.move_to_end(key)
            while len(self._balances) > MOST_BALANCES:
                self._balances.popitem(last=False)
        return found


class _Balance:
    """The volumes and attacks of a performance's parts and their common gain, measured when they are first needed."""

    def __init__(self, performance: Performance, sounds: Sounds, key: str) -> None:
        self.performance, self.sounds, self.key = performance, sounds, key
        self._lock = Lock()
        self._parts: Mapping[str, PerformedPart] = {}
        self._gain = np.float32(1.0)

    def fitted(self, part: PerformedPart) -> tuple[PerformedPart, np.float32]:
        """The part with its volume and attack, and the gain."""
        with self._lock:
            if not self._parts:
                measured = calibrated(self.performance, self.sounds.synth)
                melody = measured.parts[0]
                first = tuple(note for note in melody.notes if note.end_sec < PROBE_SEC) or melody.notes[:1]
                probe = replace(measured, parts=(replace(melody, notes=first),), lasts_sec=0.0)
                self._gain = _gain(render_short(probe, self.sounds.synth))
                self._parts = {other.name: other for other in measured.parts}
        like = self._parts.get(part.name, part)
        return replace(part, volume=like.volume, attack_sec=like.attack_sec), self._gain

    def offered(self, part: PerformedPart) -> str:
        """The key of the part's sound."""

        def make() -> bytes:
            fitted, gain = self.fitted(part)
            lasts_sec = self.performance.duration_sec
            alone = replace(self.performance, parts=(fitted,), lasts_sec=lasts_sec, title=part.name)
            return encode_audio(render(alone, self.sounds.synth) * gain, "flac")

        return self.sounds.offer(digest("part", part, self.key), make)


def hearing(
    arrangement: Arrangement,
    sounds: Sounds,
    *,
    beats_per_minute: float,
    feel: str = "",
    other: Rendition | None = None,
) -> HearingView:
    """Plain and ornamented line (and another version), and the band, at a tempo.

    Raises:
        OptionError: the tempo is out of reach, or there is no such feel.
    """
    rendition, tune = arrangement.rendition, arrangement.tune
    tempo = beats_per_minute * tune.metre.beat_ticks / QUARTER
    band_feel, remark = _band_feel(tune, rendition, feel)
    lines = {"plain": (1, rendition.plain_line), "ornamented": (2, rendition.line)}
    if other is not None:
        lines["other"] = (3, other.line)
    written = {name: unfolded(replace(tune, notes=_numbered(line))) for name, (_, line) in lines.items()}
    plain = _performed(written["plain"], rendition, band_feel, tempo)
    melodies = {
        name: plain.parts[0] if name == "plain" else _performed_line(one, rendition, band_feel, tempo)
        for name, one in written.items()
    }
    balance = sounds.balance_of(plain)
    bars = list(_bar_times(tune, plain))
    return HearingView(
        tempo=beats_per_minute,
        feel=band_feel.id if band_feel else "",
        starts_at=bars[0].start,
        ends_at=bars[-1].end,
        bars=bars,
        lines=[
            LineTime(
                name=name,
                sound=balance.offered(melodies[name]),
                notes=list(_note_times(melodies[name], written[name].notes, staff)),
            )
            for name, (staff, _) in lines.items()
        ],
        band={part.name.lower(): balance.offered(part) for part in plain.parts[1:]},
        remark=remark,
    )


def figure_sound(arrangement: Arrangement, figure: Figure, line: Sequence[Note], sounds: Sounds) -> str:
    """The key of the sound of a figure in its bars and the bar after them, as `line` has it."""
    tune, setting = arrangement.tune, arrangement.setting
    first, last = bars_of(tune, figure)
    numbers = [bar.number for bar in tune.bars]
    last = min(last + 1, numbers[-1])
    part = excerpt(tune, first, last)
    notes = excerpt(replace(tune, notes=tuple(line)), first, last).notes
    performance = perform(
        part,
        notes,
        instrument=setting.instrument,
        player=setting.player,
        tempo=setting.quarters_per_minute,
        feel=setting.feel,
        seed=SEED,
    )

    def make() -> bytes:
        audio = render(performance, sounds.synth)
        return encode_audio(audio * _gain(audio), "flac")

    return sounds.offer(digest("figure", performance.parts), make)


def _gain(audio: Audio) -> np.float32:
    """What brings a melody to its loudness, without clipping."""
    loudness, peak = integrated_loudness(audio), float(np.abs(audio).max(initial=0.0))
    if not isfinite(loudness) or peak == 0.0:
        return np.float32(1.0)
    return np.float32(min(10 ** ((MELODY_LUFS - loudness) / 20), PEAK / peak))


def _band_feel(tune: Tune, rendition: Rendition, name: str) -> tuple[BandFeel | None, str]:
    """The band's feel by its name, or what suits the tune; none, and why, where the band can't play the metre."""
    setting = rendition.setting
    if name:
        feel = feel_named(name)
        return (
            (feel, "")
            if feel.suits(tune.metre)
            else (None, say(message("feel-unplayed", feel=feel.name, metre=str(tune.metre))))
        )
    return default_feel(tune, is_folk=setting.tradition == "folk", feel=setting.feel), ""


def _performed(tune: Tune, rendition: Rendition, feel: BandFeel | None, tempo: float) -> Performance:
    """An unfolded tune as it is played, once through, with the band after a count-in; without a feel alone."""
    return _alone(tune, rendition, tempo) if feel is None else played(_session(tune, rendition, feel, tempo))


def _performed_line(tune: Tune, rendition: Rendition, feel: BandFeel | None, tempo: float) -> PerformedPart:
    """The melody of such a performance."""
    if feel is None:
        return _alone(tune, rendition, tempo).parts[0]
    return played_melody(_session(tune, rendition, feel, tempo))


def _alone(tune: Tune, rendition: Rendition, tempo: float) -> Performance:
    setting = rendition.setting
    return perform(
        tune,
        tune.notes,
        instrument=setting.instrument,
        player=setting.player,
        tempo=tempo,
        feel=setting.feel,
        seed=SEED,
    )


def _session(tune: Tune, rendition: Rendition, feel: BandFeel, tempo: float) -> Session:
    return Session(
        tune=tune,
        choruses=(Chorus("chorus", tune.notes),),
        instrument=rendition.setting.instrument,
        player=rendition.setting.player,
        feel=feel,
        quarters_per_minute=tempo,
        clicks=True,
        ending="straight",
        holds_last=False,
        seed=SEED,
    )


def _numbered(line: Sequence[Note]) -> tuple[Note, ...]:
    """The line with each note's number in place of its lyric, which playing leaves as it is."""
    return tuple(replace(note, lyric=str(number)) for number, note in enumerate(line))


def _note_times(part: PerformedPart, notes: Sequence[Note], staff: int) -> Iterator[tuple[float, float, str]]:
    """Onset, end and element of the notes of a performed line; a note's grace notes are marked with it."""
    sounding: dict[int, tuple[float, float]] = {}
    for note in part.notes:
        if note.source is not None:
            start, end = sounding.get(note.source, (note.onset_sec, note.end_sec))
            sounding[note.source] = (min(start, note.onset_sec), max(end, note.end_sec))
    for source, (start, end) in sorted(sounding.items(), key=lambda item: item[1]):
        yield round(start, 4), round(end, 4), f"s{staff}-n{notes[source].lyric}"


def _bar_times(tune: Tune, performance: Performance) -> Iterator[BarTime]:
    """The played bars after the count-in; a bar that a repeat plays twice comes twice."""
    order = playing_order(tune.bars)
    starts = [0, *accumulate(tune.bars[index].duration_ticks for index in order)]
    total = starts[-1]
    shift = performance.bars[-1].end_ticks - total
    clock = performance.clock
    for bar in performance.bars:
        place = bar.start_ticks - shift
        if place < 0:
            continue
        index = order[bisect_right(starts, place) - 1]
        yield BarTime(
            start=round(clock.seconds(bar.start_ticks), 4), end=round(clock.seconds(bar.end_ticks), 4), bar=index
        )
