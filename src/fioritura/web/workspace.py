"""The workspace: the arrangements that are open, each with its history, and what can be done to them.

Every decision makes a new step on the shelf. Arrangements that were open lately are kept in memory with their surveys, so
that a decision costs one run of the chooser and no reading.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace
from threading import Lock, RLock
from typing import Final

from fioritura.arrange.arrangement import Arrangement, rearranged
from fioritura.arrange.arrangement_file import arrangement_from_json, arrangement_to_json
from fioritura.arrange.rendition import Rendition
from fioritura.lesson.plan import at_level
from fioritura.notation.engraving.engrave import System
from fioritura.players.setting import Idiom, Setting
from fioritura.shelf.store import Shelf, StaleError, Step
from fioritura.theory.metre import QUARTER
from fioritura.tune import Feel
from fioritura.web.engraver import Engraver
from fioritura.web.intake import ReadingOptions, Source, read_source, ready
from fioritura.web.staves import PageSize, engraved
from fioritura.words import Message, kept, message

__all__ = ["OpenArrangement", "WantedSetting", "Workspace"]

MOST_OPEN: Final = 24
MOST_KEPT: Final = 12
"""How many steps of an open arrangement stay in memory."""

MOST_LEVELS: Final = 4

Change = Callable[[Arrangement], Arrangement]


@dataclass(frozen=True, slots=True)
class WantedSetting:
    """A setting as the page asks for it; the tempo in beats a minute."""

    player: str
    level: int
    idiom: Idiom
    feel: Feel
    beats_per_minute: float
    only: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    seed: int = 0
    density: float = 1.0


@dataclass
class OpenArrangement:
    """An arrangement that is open: where it stands, and the steps that are in memory."""

    step: Step
    arrangements: OrderedDict[int, Arrangement] = field(default_factory=OrderedDict)
    systems: dict[tuple[PageSize, int], tuple[System, ...]] = field(default_factory=dict)
    others: dict[tuple[int, int], Rendition] = field(default_factory=dict)
    levels: dict[tuple[int, int], Arrangement] = field(default_factory=dict)
    lock: RLock = field(default_factory=RLock)

    @property
    def arrangement(self) -> Arrangement:
        """The arrangement as it stands."""
        number = self.step.number
        if number not in self.arrangements:
            self.keep(self.step, arrangement_from_json(self.step.text))
        return self.arrangements[number]

    def keep(self, step: Step, arrangement: Arrangement) -> None:
        """Stand at a step; what came after it is forgotten."""
        for later in [number for number in self.arrangements if number >= step.number]:
            del self.arrangements[later]
        self.arrangements[step.number] = arrangement
        self.step = step
        while len(self.arrangements) > MOST_KEPT:
            self.arrangements.popitem(last=False)


class Workspace:
    """OpenArrangement arrangements over a shelf. Safe to use from several threads; decisions on one arrangement take turns."""

    def __init__(self, shelf: Shelf, engraver: Engraver | None = None) -> None:
        self.shelf, self.engraver = shelf, engraver or Engraver()
        self._open: OrderedDict[int, OpenArrangement] = OrderedDict()
        self._lock = Lock()
        self._ahead = ThreadPoolExecutor(1, "survey")

    def open(self, id: int) -> OpenArrangement:
        """An arrangement by its number.

        Raises:
            NotOnShelfError: there is none.
            ReadError: it is damaged.
        """
        with self._lock:
            found = self._open.get(id)
            if found is None:
                found = self._open[id] = OpenArrangement(self.shelf.step(id))
            self._open.move_to_end(id)
            while len(self._open) > MOST_OPEN:
                self._open.popitem(last=False)
            return found

    def look_ahead(self, work: OpenArrangement) -> None:
        """Have the tune surveyed before the first decision asks for it: one tune after the other, so that decisions
        made meanwhile wait little."""
        self._ahead.submit(_surveyed, work)

    def close(self) -> None:
        """End what goes on in the background."""
        self._ahead.shutdown(wait=False, cancel_futures=True)
        self.engraver.close()

    def forget(self, ids: Iterable[int]) -> None:
        """Close arrangements."""
        with self._lock:
            for id in ids:
                self._open.pop(id, None)

    def decide(self, id: int, at: int, said: Message, change: Change) -> OpenArrangement:
        """Change an arrangement that stands at step `at`, and keep the change on the shelf; `said` says what it is.

        Raises:
            StaleError: it stands elsewhere by now.
            OptionError: the change makes no sense here.
        """
        work = self.open(id)
        with work.lock:
            self._check(work, id, at)
            changed = replace(change(work.arrangement), past=())  # the shelf keeps earlier decisions as steps
            text = arrangement_to_json(changed, is_compact=True)
            work.keep(self.shelf.add_step(id, at, kept(said), text), changed)
            work.others.clear()
        return work

    def move(self, id: int, at: int, by: int) -> OpenArrangement:
        """Undo (−1) or redo (+1).

        Raises:
            StaleError: the arrangement stands elsewhere by now.
            OptionError: there is nothing to undo or redo.
        """
        work = self.open(id)
        with work.lock:
            work.step = self.shelf.move(id, at, by)
            work.others.clear()
        return work

    def set(self, id: int, at: int, wanted: WantedSetting) -> OpenArrangement:
        """Arrange anew under another setting; decisions about figures that are still on offer hold.

        Raises:
            StaleError: the arrangement stands elsewhere by now.
            OptionError, RangeError: the setting makes no sense for the tune.
        """
        entry = self.shelf.tune(self.open(id).step.tune_id)

        def changed(old: Arrangement) -> Arrangement:
            tune = old.tune
            if wanted.player != old.setting.instrument.id:
                reading = ReadingOptions.of(entry.reading)
                source = Source(entry.source_name, self.shelf.source(entry.id))
                tune = ready(read_source(source, reading), wanted.player, unfolds=reading.unfolds)
            return _rearranged(replace(old, tune=tune, offered=None), wanted)

        return self.decide(id, at, message("step-setting"), changed)

    def other(self, work: OpenArrangement, seed: int) -> Rendition:
        """Another version of an open arrangement under the same decisions."""
        with work.lock:
            key = (work.step.number, seed)
            if key not in work.others:
                work.others[key] = work.arrangement.with_seed(seed).rendition
            return work.others[key]

    def at_level(self, work: OpenArrangement, level: int | None) -> Arrangement:
        """An open arrangement for a player of another level; None leaves it as it is."""
        with work.lock:
            here = work.arrangement
            if level is None or level == here.setting.level:
                return here
            key = (work.step.number, level)
            if key not in work.levels:
                while len(work.levels) >= MOST_LEVELS:
                    work.levels.pop(next(iter(work.levels)))
                work.levels[key] = at_level(here, level)
            return work.levels[key]

    def engrave(
        self, work: OpenArrangement, sheet: PageSize, seed: int | None = None, *, keeps: bool = False
    ) -> tuple[System, ...]:
        """The systems of an open arrangement; with `keeps` every bar stays on the system where it stood."""
        with work.lock:
            other = None if seed is None else self.other(work, seed)
            key = (sheet, 2 if other is None else 3)
            before = work.systems.get(key, ()) if keeps else ()
            systems = engraved(self.engraver, work.arrangement, sheet, other, before)
            if len(work.systems) > MOST_KEPT:
                work.systems.clear()
            work.systems[key] = systems
            return systems

    def _check(self, work: OpenArrangement, id: int, at: int) -> None:
        if work.step.number != at:
            work.step = self.shelf.step(id)
        if work.step.number != at:
            raise StaleError("arrangement-changed-elsewhere", stands=work.step.number, given=at)


def _surveyed(work: OpenArrangement) -> None:
    with work.lock:
        _ = work.arrangement.survey


def _rearranged(old: Arrangement, wanted: WantedSetting) -> Arrangement:
    """The tune arranged under a setting, with the decisions that still make sense.

    Raises:
        OptionError: an unknown technique, or a tempo out of reach.
    """
    setting = Setting(
        wanted.player,
        wanted.beats_per_minute * old.tune.metre.beat_ticks / QUARTER,
        wanted.feel,
        wanted.idiom,
        wanted.density,
        level=wanted.level,
    )
    return rearranged(old, setting, seed=wanted.seed, only=wanted.only, without=wanted.without)
