"""An arrangement: a rendition under a teacher's decisions, each of which can be taken back.

Decisions are local. To keep what stands, or to take a decision back on a figure, changes no note; to put a figure in or
out chooses its phrase again, by the same programme, with all else as it stands. To choose all the rest anew is a decision
of its own.
"""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Final

from fioritura.arrange.arranger import choose_figures, choose_nearby, rivals
from fioritura.arrange.find import is_sound
from fioritura.arrange.plan import Plan
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import Survey, survey, with_own_figures
from fioritura.errors import OptionError
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.theory.pitch import Pitch
from fioritura.tune import Tune
from fioritura.words import Message, message

__all__ = ["Alternative", "Arrangement", "Decisions", "Earlier", "arranged", "rearranged"]

_BY_HAND: Final = "why-by-hand"


@dataclass(frozen=True, slots=True)
class Decisions:
    """What a teacher has decided: figures that must stand and that must not (by id), and own figures, made
    by changing a pitch of one that the rules had found."""

    locked: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()
    own: tuple[Figure, ...] = ()


@dataclass(frozen=True, slots=True)
class Earlier:
    """An arrangement as it was: its decisions, the figures that stood (by their ids), its seed and its worth.

    `figures` is None where that was not kept: files of earlier versions have the decisions alone.
    """

    decisions: Decisions
    figures: tuple[str, ...] | None = None
    seed: int = 0
    worth: float = 0.0


@dataclass(frozen=True, slots=True)
class Alternative:
    """A figure that could stand at a place, and what the whole arrangement would be worth with it."""

    figure: Figure
    worth: float
    stands: bool


@dataclass(frozen=True)
class Arrangement:
    """A tune, a setting, decisions and the rendition under them; `past` holds what was before each decision."""

    tune: Tune
    setting: Setting
    rendition: Rendition
    seed: int = 0
    only: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    decisions: Decisions = Decisions()
    past: tuple[Earlier, ...] = ()
    plan: Plan | None = None
    """How often the written-out tune is played, and how it grows; None where it is played once, all of it alike."""

    offered: Survey | None = field(default=None, repr=False, compare=False)
    """What `survey` is to be, where it is known: one of the same tune, setting, techniques and own figures."""

    @cached_property
    def survey(self) -> Survey:
        """Every figure that is on offer, own ones included; made at the first use unless it was `offered`."""
        if self.offered is not None:
            return self.offered
        found = survey(self.tune, self.setting, self.only, self.without, plan=self.plan)
        return with_own_figures(found, self.decisions.own)

    def accept(self, id: str) -> Arrangement:
        """Lock a figure: it must stand. Where it stands already nothing else changes.

        Raises:
            OptionError: there is no such figure, or it collides with another locked one.
        """
        self._figure(id)
        kept = tuple(name for name in self.decisions.locked if not self._collide(name, id))
        refused = tuple(name for name in self.decisions.refused if name != id)
        return self._decide(replace(self.decisions, locked=(*kept, id), refused=refused), id, is_in=True)

    def refuse(self, id: str) -> Arrangement:
        """Bar a figure: it must not stand.

        Raises:
            OptionError: there is no such figure.
        """
        self._figure(id)
        locked = tuple(name for name in self.decisions.locked if name != id)
        refused = tuple(dict.fromkeys((*self.decisions.refused, id)))
        return self._decide(replace(self.decisions, locked=locked, refused=refused), id, is_in=False)

    def release(self, id: str) -> Arrangement:
        """Take a lock or a refusal back: the figure stands or falls by its worth when the rest is chosen anew.

        Raises:
            OptionError: there is no such figure.
        """
        self._figure(id)
        locked = tuple(name for name in self.decisions.locked if name != id)
        refused = tuple(name for name in self.decisions.refused if name != id)
        return self._decide(replace(self.decisions, locked=locked, refused=refused), id, is_in=None)

    def swap(self, old: str, new: str) -> Arrangement:
        """Put one figure in the place of another.

        Raises:
            OptionError: there is no such figure.
        """
        self._figure(old), self._figure(new)
        kept = tuple(name for name in self.decisions.locked if name != old and not self._collide(name, new))
        refused = tuple(name for name in self.decisions.refused if name not in (new, old))
        return self._decide(replace(self.decisions, locked=(*kept, new), refused=(*refused, old)), new, is_in=True)

    def bend(self, id: str, note: int, semitones: int) -> Arrangement:
        """Raise or lower one added pitch of a figure by a semitone (+1, −1), and lock the new figure.

        `note` counts from 0 over the figure's grace notes and then its notes.

        Raises:
            OptionError: no such figure or note, a plain note of the tune, or a result that can't be played.
        """
        if semitones not in (-1, 1):
            raise OptionError("bend-too-far", given=semitones)
        changed = self._bent(self._figure(id), note, semitones)
        context = self.survey.contexts[changed.anchors[0]]
        if not is_sound(changed, context, technique_named(changed.technique)):
            raise OptionError("bend-unplayable")
        own = (*self.decisions.own, changed)
        moved = replace(self, decisions=replace(self.decisions, own=own), offered=None)
        return replace(moved.swap(id, changed.id), past=(*self.past, self._now))

    def anew(self) -> Arrangement:
        """Choose all anew that is not decided."""
        return replace(self, past=(*self.past, self._now), offered=self.survey)._chosen()

    def with_seed(self, seed: int) -> Arrangement:
        """Another version under the same decisions."""
        return replace(self, seed=seed, past=(*self.past, self._now), offered=self.survey)._chosen()

    def with_plan(self, plan: Plan) -> Arrangement:
        """The same statements on another curve, all chosen anew that is not decided. It can't be taken back: what was
        decided stays, and what was before does not.

        Raises:
            OptionError: the plan has another number of statements than the tune is written out for.
        """
        now = self.plan.count if self.plan else 1
        if plan.count != now:
            raise OptionError("plan-other-count", given=plan.count, count=now)
        return replace(self, plan=plan, past=(), offered=None)._chosen()

    def undo(self) -> Arrangement:
        """Take the last decision back.

        Raises:
            OptionError: nothing has been decided.
        """
        if not self.past:
            raise OptionError("nothing-to-take-back")
        was = self.past[-1]
        offered = self.survey if was.decisions.own == self.decisions.own else None
        seed = self.seed if was.figures is None else was.seed
        earlier = replace(self, decisions=was.decisions, past=self.past[:-1], seed=seed, offered=offered)
        known = earlier.survey.by_id
        if was.figures is None or not all(name in known for name in was.figures):
            return earlier._chosen()
        figures = tuple(earlier.survey.scored(known[name]) for name in was.figures)
        rendition = Rendition(self.tune, self.setting, figures, seed, was.worth, self.plan)
        return replace(earlier, rendition=rendition, offered=earlier.survey)

    def alternatives(self, id: str, count: int = 8) -> tuple[Alternative, ...]:
        """The figures that could stand where this one does, best first by what the whole would be worth.

        Raises:
            OptionError: there is no such figure.
        """
        decisions = self.decisions
        ranked = rivals(
            self.survey,
            id,
            count=count,
            seed=self.seed,
            locked=decisions.locked,
            refused=decisions.refused,
            standing=[name for name in self._standing if name in self.survey.by_id],
        )
        standing = set(self._standing)
        figures = [(self.survey.scored(number), worth) for number, worth in ranked]
        return tuple(Alternative(figure, worth, figure.id in standing) for figure, worth in figures)

    def _figure(self, id: str) -> Figure:
        number = self.survey.by_id.get(id)
        if number is None:
            raise OptionError("no-such-figure", given=id)
        return self.survey.scored(number)

    def _collide(self, one: str, other: str) -> bool:
        return self._figure(one).collides(self._figure(other))

    @property
    def _standing(self) -> tuple[str, ...]:
        return tuple(figure.id for figure in self.rendition.figures)

    @property
    def _now(self) -> Earlier:
        return Earlier(self.decisions, self._standing, self.seed, self.rendition.score)

    def _decide(self, decisions: Decisions, id: str, *, is_in: bool | None) -> Arrangement:
        """Decide on a figure: whether it stands is to be so (None: as it is)."""
        decided = replace(self, decisions=decisions, past=(*self.past, self._now), offered=self.survey)
        if is_in in (None, id in self._standing):
            return decided
        rendition = choose_nearby(
            self.survey,
            self._standing,
            id,
            seed=self.seed,
            locked=decisions.locked,
            refused=decisions.refused,
        )
        return replace(decided, rendition=rendition)

    def _chosen(self) -> Arrangement:
        """The best rendition under the decisions."""
        rendition = choose_figures(
            self.survey, seed=self.seed, locked=self.decisions.locked, refused=self.decisions.refused
        )
        return replace(self, rendition=rendition, offered=self.survey)

    def _bent(self, figure: Figure, note: int, semitones: int) -> Figure:
        key = self.survey.contexts[figure.anchors[0]].key

        def moved(pitch: Pitch) -> Pitch:
            return key.spell(pitch.midi + semitones, "up" if semitones > 0 else "down")

        graces, notes = list(figure.graces), list(figure.notes)
        if 0 <= note < len(graces):
            graces[note] = moved(graces[note])
        elif 0 <= note - len(graces) < len(notes):
            chosen = notes[note - len(graces)]
            if chosen.anchor is not None:
                raise OptionError("bend-own-note")
            notes[note - len(graces)] = replace(chosen, pitch=moved(chosen.pitch))
        else:
            total = len(graces) + len(notes)
            raise OptionError("bend-no-such-note", given=str(note), count=total)
        return replace(figure, graces=tuple(graces), notes=tuple(notes), why=_by_hand(figure.why))


def _by_hand(why: Message) -> Message:
    return why if why.id == _BY_HAND else message(_BY_HAND, why=why)


def arranged(
    tune: Tune,
    setting: Setting,
    *,
    seed: int = 0,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
    locked: Iterable[str] = (),
    refused: Iterable[str] = (),
    plan: Plan | None = None,
) -> Arrangement:
    """The best arrangement under the first decisions, `locked` and `refused` (see `arranger.ornament`), of a tune that is
    written out as often as a `plan` says.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> arranged(tune, setting, seed=2).rendition.seed
        2

    Raises:
        OptionError: an unknown technique or figure, locked figures that collide, or a plan for a tune of another length.
    """
    only, without = tuple(only), tuple(without)
    decisions = Decisions(tuple(locked), tuple(refused))
    setting = setting.on(tune)
    found = survey(tune, setting, only, without, plan=plan)
    rendition = choose_figures(found, seed=seed, locked=decisions.locked, refused=decisions.refused)
    return Arrangement(tune, setting, rendition, seed, only, without, decisions, plan=plan, offered=found)


def rearranged(
    old: Arrangement,
    setting: Setting,
    *,
    seed: int | None = None,
    only: Iterable[str] | None = None,
    without: Iterable[str] | None = None,
) -> Arrangement:
    """The tune arranged under another setting, with the decisions on figures that are still on offer; without them
    where they collide now.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> again = rearranged(arranged(tune, setting), setting.changed(level=1))
        >>> again.rendition.setting.level
        1

    Raises:
        OptionError: an unknown technique.
    """
    fresh = arranged(
        old.tune,
        setting,
        seed=old.seed if seed is None else seed,
        only=old.only if only is None else only,
        without=old.without if without is None else without,
        plan=old.plan,
    )
    offered = fresh.survey.by_id
    kept = Decisions(
        tuple(id for id in old.decisions.locked if id in offered),
        tuple(id for id in old.decisions.refused if id in offered),
    )
    if kept == Decisions():
        return fresh
    with suppress(OptionError):
        return replace(fresh, decisions=kept)._chosen()
    return fresh
