"""How each technique is found: a page for each family, made from the technique table and the demo tune.

For each technique the engine is asked where the tune offers it; the best place is shown as `fioritura lesson` would
show it, with the reason, what counted, and the rule itself. Techniques of an idiom of their own are shown in a tune of it.
"""

from __future__ import annotations

import inspect
import sys
from collections.abc import Iterator
from dataclasses import dataclass, replace
from html import escape
from pathlib import Path
from typing import Final

from fioritura.arrange.arranger import choose_figures
from fioritura.arrange.prepare import prepared
from fioritura.arrange.survey import Survey, survey
from fioritura.lesson.example import Example, example_score
from fioritura.lesson.lesson import Lesson, lesson_on
from fioritura.lesson.soundtrack import balance_of, balanced, example_session
from fioritura.notation.read import read_tune
from fioritura.players.setting import Setting
from fioritura.sound.session import played
from fioritura.techniques.table import all_techniques
from fioritura.techniques.technique import Technique
from fioritura.words import capital, message, say
from tools.docs_site.media import CARE, Media, Sound, both_widths, in_sentence, music_figure, rendered

__all__ = ["TUNES", "Ornaments", "family_pages"]

HOME: Final = Path(__file__).parents[2]

LEVEL: Final = 5
TUNES: Final = (
    (HOME / "src" / "fioritura" / "data" / "lanterns.abc", "alto-sax"),
    (HOME / "docs" / "gallery" / "ferry.abc", "tenor-sax"),
    (HOME / "docs" / "gallery" / "gangway.abc", "irish-flute"),
)
"""The demo tune, a blues and a reel, each with its player."""
_MOST_REASONS: Final = 8
_EXAMPLE_MM: Final = 150.0
_MEDIA: Final = "ornaments/music"


def family_pages() -> list[tuple[str, str]]:
    """Title and path of each family's page, the easiest family first."""
    families = dict.fromkeys(technique.family for technique in all_techniques().values())
    return [(_title(family), f"ornaments/{family}.md") for family in families]


@dataclass(frozen=True)
class Shown:
    """A technique's example, with the survey and the lesson that it is of."""

    example: Example
    found: Survey
    lesson: Lesson


class Ornaments:
    """The tunes surveyed and ornamented for the highest level, and the pages about them."""

    def __init__(self) -> None:
        self.examples: dict[str, Shown] = {}
        surveys = []
        for path, player in TUNES:
            setting = Setting(player, level=LEVEL)
            tune = prepared(read_tune(path), setting.instrument)
            found = survey(tune, setting)
            lesson = lesson_on(found, choose_figures(found))
            surveys.append(found)
            for example in lesson.examples:
                self.examples.setdefault(example.technique.id, Shown(example, found, lesson))
        self.found: Survey = surveys[0]
        self.families: dict[str, list[Technique]] = {}
        for technique in all_techniques().values():
            self.families.setdefault(technique.family, []).append(technique)

    def media(self) -> Iterator[Media]:
        """Picture and sound of each technique's example."""
        names = (say(message("line-plain")), say(message("line-ornamented")))
        for id, shown in self.examples.items():
            example, lesson = shown.example, shown.lesson
            balance = balance_of(lesson)
            score = example_score(example, lesson.instrument, say(example.technique.label), names)
            notes = example.figure_notes
            yield from both_widths(
                f"{_MEDIA}/{id}", score, width_mm=_EXAMPLE_MM, shows_tempo=False, tinted_notes=notes
            )
            performance = replace(
                played(example_session(lesson, example, 1.0)), title=lesson.heading(example.technique)
            )
            yield Sound(f"{_MEDIA}/{id}.mp3", balanced(performance, balance))

    def pages(self) -> Iterator[tuple[str, str]]:
        """The overview and the families' pages: path and Markdown."""
        yield "ornaments/index.md", self._overview()
        for family, techniques in self.families.items():
            yield f"ornaments/{family}.md", self._family(family, techniques)

    def _overview(self) -> str:
        rows = [
            f"| [{one.name}]({one.family}.md#{one.id}) | {one.level} | [{_title(one.family)}]({one.family}.md) | {one.text} |"
            for one in all_techniques().values()
        ]
        return "\n".join(
            [
                "# The ornaments\n",
                f"Fioritura knows {len(rows)} techniques in {len(self.families)} families. Each is a rule that looks at every",
                "note of a tune and proposes figures where they fit; [How it works](../how-it-works.md) tells how the best of them",
                "are chosen. The pages of the families show, for each technique, the place that the rule finds in the demo tune",
                f"*{self.found.tune.title}*, why it is that place, and how it sounds.\n",
                "| technique | level | family | what it is |",
                "|---|---|---|---|",
                *rows,
                "",
            ]
        )

    def _family(self, family: str, techniques: list[Technique]) -> str:
        module = sys.modules[techniques[0].find.__module__]
        head = inspect.cleandoc(module.__doc__ or "").partition("\n\n")[0]
        setting = self.found.setting
        lines = [
            f"# {_title(family)}\n",
            f"{head}\n",
            f"Found in *{self.found.tune.title}* ({in_sentence(setting.instrument)}, level {setting.level}, "
            f"{setting.idiom}) and played plain, then ornamented. {CARE}\n{{ .care }}\n",
        ]
        for technique in techniques:
            lines += self._technique(technique)
        return "\n".join(lines)

    def _technique(self, technique: Technique) -> Iterator[str]:
        yield f"## {capital(say(technique.name))} {{ #{technique.id} }}\n"
        yield f"{say(technique.text)}\n"
        yield f"{rendered('level.html', level=technique.level).strip()} `{technique.id}`\n"
        shown = self.examples.get(technique.id)
        if shown is None:
            yield f"*{self.found.tune.title}* has no place for it.\n"
        else:
            yield from self._place(shown)
        yield "| | |\n|---|---|"
        for title, text in (
            ("How", say(technique.how)),
            ("When", say(technique.when)),
            ("A common fault", say(technique.fault)),
            ("Its cure", say(technique.cure)),
        ):
            yield f"| **{title}** | {text} |"
        yield ""
        if shown is not None:
            yield from self._score(shown)
        yield '??? example "The rule, as it runs"\n'
        yield from _indented(["```python", *inspect.getsource(technique.find).splitlines(), "```"])
        yield ""

    def _place(self, shown: Shown) -> Iterator[str]:
        example, setting = shown.example, shown.found.setting
        tune, figure = shown.found.tune, example.figure
        onset = figure.notes[0].onset_ticks if figure.notes else tune.notes[figure.anchors[0]].onset_ticks
        where = say(tune.position_at(onset).message.form("full"))
        words = f"{capital(say(example.technique.name))}, {where}: {say(figure.why)}"
        path = f"music/{example.technique.id}"
        yield music_figure(path, words, caption=f"{capital(where)}. {say(figure.why)}", sound=f"{path}.mp3")
        places = "place" if example.places == 1 else "places"
        bars = f"{'bar' if len(example.bars) == 1 else 'bars'} {', '.join(map(str, example.bars))}"
        used = f"the performance uses it in {bars}" if example.bars else "the performance does without it"
        told = f"*{tune.title}* ({in_sentence(setting.instrument)}, {setting.idiom})"
        yield f"{'The tune' if shown.found is self.found else told} offers it at {example.places} {places}; {used}.\n"

    def _score(self, shown: Shown) -> Iterator[str]:
        example = shown.example
        reasons = list(shown.found.why(example.figure).items())
        yield f'??? note "What counted here: a score of {example.figure.score:.2f}"\n'
        rows = [f"| {escape(say(name))} | {value:+.2f} |" for name, value in reasons[:_MOST_REASONS]]
        rest = sum(value for _, value in reasons[_MOST_REASONS:])
        if len(reasons) > _MOST_REASONS:
            rows.append(f"| {len(reasons) - _MOST_REASONS} smaller ones | {rest:+.2f} |")
        yield from _indented(["| feature | adds |", "|---|---:|", *rows])
        yield ""


def _indented(lines: list[str]) -> Iterator[str]:
    for line in lines:
        yield f"    {line}" if line else ""


def _title(family: str) -> str:
    return family.replace("-", " ").capitalize()
