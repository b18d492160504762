"""The plan of a lesson: what a teacher chooses of an arrangement, in whose words, for whom; and the lesson made by it.

A plan is plain data (`LessonPlan.data`, `plan_of`), so that it can be kept, changed and made again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from typing import Any, Final, get_args

from fioritura.arrange.arrangement import Arrangement, rearranged
from fioritura.arrange.levels import level_numbered
from fioritura.errors import OptionError
from fioritura.lesson.lesson import Lesson, lesson_on
from fioritura.lesson.overrides import LONGEST, NAMES, TECHNIQUE_FIELDS, Overrides
from fioritura.lesson.pack import SECTIONS, PackOptions
from fioritura.lesson.parts import CLASS_SET
from fioritura.notation.engraving.page import Paper, paper_mm
from fioritura.phrase import Phrase, phrases
from fioritura.players.player import Player
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.tune import Tune
from fioritura.words import LANGUAGES, Naming
from fioritura.words.speech import PSEUDO

__all__ = ["AUDIO", "LessonPlan", "at_level", "check_language", "phrase_of", "plan_of", "planned_lesson"]

AUDIO: Final = ("mp3", "flac", "wav")


@dataclass(frozen=True, slots=True)
class LessonPlan:
    """What a lesson holds. Of `techniques` and `phrases` (numbers from 0) None means those of the arrangement, and all;
    a `level` of None is the arrangement's own."""

    techniques: tuple[str, ...] | None = None
    phrases: tuple[int, ...] | None = None
    level: int | None = None
    language: str = LANGUAGES[0]
    note_names: Naming | None = None
    paper: Paper = "a4"
    players: tuple[str, ...] = CLASS_SET
    sections: tuple[str, ...] = SECTIONS[:-1]
    audio: str = "mp3"
    overrides: Overrides = field(default_factory=Overrides)

    @property
    def options(self) -> PackOptions:
        """What goes into the pack."""
        return PackOptions(self.players, self.sections, self.audio)

    def data(self) -> dict[str, Any]:
        """The plan as plain data."""
        return asdict(self)


def plan_of(data: Mapping[str, Any]) -> LessonPlan:
    """A plan from plain data; what is missing is as usual.

    Raises:
        OptionError: it names what there is not, or a text is too long.
    """
    try:
        given = dict(data)
        words = given.pop("overrides", {})
        own = Overrides(
            {name: str(text) for name, text in words.get("words", {}).items() if str(text).strip()},
            {
                technique_named(id).id: {name: str(text) for name, text in texts.items() if str(text).strip()}
                for id, texts in words.get("techniques", {}).items()
            },
        )
        lists: dict[str, Any] = {
            name: tuple(value) if isinstance(value, list | tuple) else value for name, value in given.items()
        }
        plan = LessonPlan(**lists, overrides=own)
        _check(plan)
    except (TypeError, AttributeError) as error:
        raise OptionError("lesson-plan-damaged") from error
    return plan


def planned_lesson(arrangement: Arrangement, plan: LessonPlan, octave: int = 0) -> Lesson:
    """The lesson on an arrangement that a plan asks for; `octave` as in `Lesson`.

    Raises:
        OptionError: nothing is left to show.
    """
    arrangement = at_level(arrangement, plan.level)
    found = arrangement.survey
    used = {figure.technique for figure in arrangement.rendition.figures}
    wanted = used if plan.techniques is None else set(plan.techniques)
    parts = phrases(found.tune)

    def is_shown(figure: Figure) -> bool:
        in_phrase = plan.phrases is None or phrase_of(found.tune, parts, figure) in plan.phrases
        return figure.technique in wanted and in_phrase

    lesson = lesson_on(
        found,
        arrangement.rendition,
        is_shown=is_shown,
        language=plan.language,
        naming=plan.note_names,
        overrides=plan.overrides,
        paper=plan.paper,
        octave=octave,
    )
    if not lesson.examples:
        raise OptionError("lesson-without-figures")
    return lesson


def at_level(arrangement: Arrangement, level: int | None) -> Arrangement:
    """The arrangement for a player of another level; decisions about figures that are still on offer hold."""
    setting = arrangement.setting
    if level is None or level == setting.level:
        return arrangement
    player = Player.of(setting.instrument.id, level)
    return rearranged(arrangement, setting.changed(player=player))


def phrase_of(tune: Tune, parts: tuple[Phrase, ...], figure: Figure) -> int:
    """The number of the phrase that a figure belongs to: that of its first plain note."""
    anchor = figure.anchors[0]
    return next(phrase.number for phrase in parts if phrase.first <= anchor <= phrase.last)


def check_language(language: str) -> None:
    """See that a lesson can be given in a language.

    Raises:
        OptionError: it can't.
    """
    if language not in (*LANGUAGES, PSEUDO):
        raise OptionError("no-such-language", given=str(language), known=LANGUAGES)


def _check(plan: LessonPlan) -> None:
    """See that everything the plan names is there.

    Raises:
        OptionError: something is not, or a text is too long.
    """
    check_language(plan.language)
    if plan.note_names not in (None, *get_args(Naming)):
        raise OptionError("no-such-naming", given=str(plan.note_names), known=get_args(Naming))
    if plan.audio not in AUDIO:
        raise OptionError("no-such-audio", given=str(plan.audio), known=AUDIO)
    paper_mm(plan.paper)
    if plan.level is not None:
        level_numbered(plan.level)
    for id in plan.techniques or ():
        technique_named(id)
    for number in plan.phrases or ():
        if type(number) is not int or number < 0:
            raise OptionError("no-such-phrase", given=str(number))
    _ = plan.options
    own = plan.overrides
    for names, texts in ((NAMES, own.words), *((TECHNIQUE_FIELDS, each) for each in own.techniques.values())):
        for name, text in texts.items():
            if name not in names:
                raise OptionError("no-such-override", given=name, known=names)
            if len(text) > LONGEST:
                raise OptionError("override-too-long", name=name, letters=len(text), limit=LONGEST)
