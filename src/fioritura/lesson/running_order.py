"""The running order of a lesson on video: what to say, which example to play, how long it takes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from fioritura.lesson.example import Example
from fioritura.lesson.lesson import Lesson
from fioritura.lesson.soundtrack import SLOW_SHARE
from fioritura.theory.metre import QUARTER
from fioritura.words import message, say

__all__ = ["example_sec", "running_order"]

_WORDS_A_SECOND: Final = 2.3
"""An unhurried speaker (common practice: about 140 words a minute)."""

_PAUSE_SEC: Final = 4.0


def example_sec(lesson: Lesson, example: Example, share: float) -> float:
    """How long an example's recording lasts: count-in, plain, ornamented."""
    metre = example.tune.metre
    count_in = metre.bar_ticks * (1 if len(metre.groups_ticks) > 2 else 2)
    ticks = 2 * example.tune.duration_ticks + count_in
    return ticks / QUARTER * 60.0 / (lesson.setting.quarters_per_minute * share)


def running_order(lesson: Lesson, audio: str, has_clips: bool) -> str:
    """The running order as Markdown."""
    return "\n".join(_lines(lesson, audio, has_clips)) + "\n"


def _lines(lesson: Lesson, audio: str, has_clips: bool) -> Iterator[str]:
    yield f"# {message('order-title', title=_plain(lesson.title))}"
    yield ""
    yield say(message("order-intro", tempo=lesson.tempo_text(lesson.ladder[-1])))
    yield ""
    yield f"- [ ] {message('order-quiet')}"
    yield f"- [ ] {message('order-play', file=f'`sound/plain.{audio}`')}"
    total = 0.0
    for example in lesson.examples:
        said = [lesson.of(example.technique, field) for field in ("text", "how", "when")]
        fault = f"{lesson.of(example.technique, 'fault')} {lesson.of(example.technique, 'cure')}"
        slow, fast = (example_sec(lesson, example, share) for share in (SLOW_SHARE, 1.0))
        lasts = len(" ".join((*said, fault)).split()) / _WORDS_A_SECOND + slow + fast + _PAUSE_SEC
        name = _plain(lesson.of(example.technique, "name"))
        yield ""
        heading = message("order-technique", technique=name, clock=_clock(total), seconds=round(lasts))
        sounds = f"`sound/{example.name}-slow.{audio}`, `sound/{example.name}.{audio}`"
        pictures = f"`overlays/{example.name}.png`" + (
            f", `clips/{example.name}.mp4`, `clips/{example.name}-vertical.mp4`" if has_clips else ""
        )
        yield f"## {example.number}. {heading}"
        yield ""
        yield f"- {message('order-say', text=_plain(' '.join(said)))}"
        yield f"- {message('order-listen', files=sounds)}"
        yield f"- {message('order-show', files=pictures)}"
        yield f"- {message('order-warn', text=_plain(fault))}"
        total += lasts
    yield ""
    yield f"## {message('order-end', clock=_clock(total))}"
    yield ""
    yield f"- [ ] {message('order-play', file=f'`sound/performance.{audio}`')}"
    yield f"- [ ] {message('order-homework')}"


def _clock(seconds: float) -> str:
    minutes, rest = divmod(round(seconds), 60)
    return f"{minutes}:{rest:02}"


def _plain(text: str) -> str:
    """The text without what Markdown would take for its own."""
    return "".join(f"\\{char}" if char in "\\`*_{}[]<>#|" else char for char in text)
