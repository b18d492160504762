"""The offline page: one HTML file with notation, texts, and players that sound at any tempo while a marker follows.

The page holds the notes of the lesson's instrument, one every few semitones, and the events of each line; the browser
plays the events with those notes. So any tempo is a performance, no recording is stretched, and one file holds all.
"""

from __future__ import annotations

import base64
import io
import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from importlib.resources import files
from pathlib import Path
from typing import Any, Final

from markupsafe import Markup

from fioritura.html import templates_of
from fioritura.lesson.example import Example
from fioritura.lesson.geometry import Layout, layout_of, tinted
from fioritura.lesson.handout import TINT, bars_text, example_engraving, handout_engravings
from fioritura.lesson.lesson import Drawn, Lesson
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.fonts import MUSIC_SIGNS, sign_font_css
from fioritura.notation.engraving.svg import described
from fioritura.sound.perform import perform
from fioritura.sound.performance import Performance, PerformedNote, PerformedPart
from fioritura.theory.metre import QUARTER
from fioritura.tune import Note, Tune
from fioritura.unfold import unfolded
from fioritura.words import capital, language_tag, message, say

__all__ = ["Mark", "line_marks", "numbered", "web_page", "write_web_page"]

SAMPLE_STEP: Final = 3
SAMPLE_SEC: Final = 4.0
SAMPLE_RATE: Final = 24_000
_SLOT_SEC: Final = 5
_SAMPLE_VELOCITY: Final = 88
_SLOWEST_SHARE: Final = 0.4
_FASTEST_SHARE: Final = 1.2
_MARKER_WIDTH: Final = 300
_IDS: Final = re.compile(r' id="s\d+-[^"]*"')
_SVG_SIZE: Final = re.compile(r' width="[\d.]+mm" height="[\d.]+mm"')

Mark = tuple[float, int, float, float, float]
"""When the marker moves, to which system, and its left, top and bottom edge there."""


@dataclass(frozen=True)
class _Score:
    """A block of notation with its players: systems, and the lines that can be played, each with its staff."""

    id: str
    label: str
    systems: tuple[System, ...]
    tune: Tune
    lines: dict[str, tuple[tuple[Note, ...], int]]

    @property
    def ways(self) -> tuple[str, ...]:
        """What can be played: each line, and where there are two, one after the other."""
        return (*self.lines,) if len(self.lines) == 1 else (*self.lines, " ".join(self.lines))


def write_web_page(lesson: Lesson, drawn: Drawn, path: Path) -> None:
    """Write the page.

    Raises:
        ToolError: the synth is missing or failed.
    """
    path.write_text(web_page(lesson, drawn), encoding="utf-8")


def web_page(lesson: Lesson, drawn: Drawn) -> str:
    """The page as HTML, in the language that is spoken; `drawn` holds the music of the handout."""
    scores = list(_scores(lesson, drawn))
    folder = files("fioritura.lesson").joinpath("page")
    style, script = (folder.joinpath(name).read_text(encoding="utf-8") for name in ("page.css", "page.js"))
    body = _body(lesson, scores)
    signs = frozenset(char for char in body if char in MUSIC_SIGNS or "\ue000" <= char <= "\uf8ff")
    style = f"{sign_font_css(signs)}\n{style}" if signs else style
    music = json.dumps(_music(lesson, scores), separators=(",", ":"), ensure_ascii=False).replace("</", "<\\/")
    parts = {"body": body, "style": style, "script": script, "music": music}
    markup = {name: Markup(part) for name, part in parts.items()}
    return _rendered("page.html", lesson=lesson, language=language_tag(), **markup)


def _rendered(template: str, **values: Any) -> str:
    return templates_of("fioritura.lesson", "page").get_template(template).render(values, message=message, say=say)


def _scores(lesson: Lesson, drawn: Drawn) -> Iterator[_Score]:
    plain, performance, *_ = handout_engravings(lesson)
    tune, line = lesson.tune, lesson.rendition.line
    once = lesson.once
    yield _Score("tune", say(message("handout-plain")), drawn[plain], once, {"plain": (once.notes, 1)})
    for example in lesson.examples:
        systems = tuple(
            tinted(system, 2, example.figure_notes, TINT) for system in drawn[example_engraving(lesson, example)]
        )
        place = bars_text(example.first_bar, example.last_bar)
        label = say(message("offline-score", technique=lesson.of(example.technique, "name"), place=place))
        lines = {"plain": (example.tune.notes, 1), "ornamented": (example.line, 2)}
        yield _Score(example.name, label, systems, example.tune, lines)
    label = say(message("handout-performance"))
    yield _Score("performance", label, drawn[performance], tune, {"ornamented": (line, 1)})


# The text of the page ------------------------------------------------------------------------------------------


def _body(lesson: Lesson, scores: Sequence[_Score]) -> str:
    goal = lesson.ladder[-1]

    def place(example: Example) -> str:
        return capital(bars_text(example.first_bar, example.last_bar))

    return _rendered(
        "body.html",
        lesson=lesson,
        scores={score.id: score for score in scores},
        tempos=(round(goal * _SLOWEST_SHARE), goal, round(goal * _FASTEST_SHARE)),
        drawing=_drawing,
        place=place,
    )


def _drawing(score: _Score, number: int) -> Markup:
    """A system as an image with a name and its words, with a marker that is not shown yet, and without ids that come
    twice."""
    svg = _SVG_SIZE.sub("", _IDS.sub("", score.systems[number].svg))
    several = len(score.systems) > 1
    label = say(message("offline-system", score=score.label, number=number + 1)) if several else score.label
    svg = re.sub(r"(id=\"|href=\"#)(E[0-9A-F]+-)", rf"\g<1>{score.id}-{number}-\g<2>", svg)
    start = svg.index(">") + 1
    marker = f'<rect class="marker" visibility="hidden" width="{_MARKER_WIDTH}" x="0" y="0" height="0" rx="60"/>'
    return Markup(described(svg[:start] + marker + svg[start:], label, score.systems[number].words))


# The music of the page -----------------------------------------------------------------------------------------


def _music(lesson: Lesson, scores: Sequence[_Score]) -> dict[str, Any]:
    metre = lesson.tune.metre
    bars = 1 if len(metre.groups_ticks) > 2 else 2
    tick_sec = 60.0 / (QUARTER * lesson.setting.quarters_per_minute)
    clicks, at = [], 0
    for _ in range(bars):
        for length in metre.groups_ticks:
            clicks.append(round(at * tick_sec, 4))
            at += length
    played = {score.id: {name: _line(lesson, score, name) for name in score.lines} for score in scores}
    used = {note[2] for lines in played.values() for line in lines.values() for note in line["notes"]}
    return {
        "beat": metre.beat_sign,
        "goal": lesson.ladder[-1],
        "clicks": clicks,
        "countIn": round(at * tick_sec, 4),
        "scores": played,
        "samples": _samples(lesson, min(used), max(used)),
        "words": {"stopped": say(message("offline-stopped"))},
    }


def _line(lesson: Lesson, score: _Score, name: str) -> dict[str, Any]:
    """The events of a line in seconds at the goal tempo, and where the marker goes."""
    notes, staff = score.lines[name]
    played = unfolded(replace(score.tune, notes=numbered(notes)))
    performance = _performed(lesson, played)
    events = [
        [
            round(note.onset_sec, 4),
            round(note.duration_sec, 4),
            note.midi,
            round((note.velocity / 127) ** 1.5, 3),
            [[round(point.after_sec, 4), round(point.value, 3)] for point in note.bend],
        ]
        for note in performance.parts[0].notes
    ]
    layouts = [layout_of(system) for system in score.systems]
    return {
        "notes": events,
        "marks": line_marks(performance, played.notes, layouts, staff),
        "lasts": round(performance.clock.seconds(played.duration_ticks), 4),
    }


def _performed(lesson: Lesson, played: Tune) -> Performance:
    return perform(
        played,
        played.notes,
        instrument=lesson.instrument,
        player=lesson.setting.player,
        tempo=lesson.setting.quarters_per_minute,
        feel=lesson.feel.line_feel,
        seed=lesson.rendition.seed,
    )


def numbered(notes: Sequence[Note]) -> tuple[Note, ...]:
    """The notes of a written line, each knowing its own number, so that it is known again when it is repeated."""
    return tuple(replace(note, anchor=number) for number, note in enumerate(notes))


def line_marks(performance: Performance, played: Sequence[Note], layouts: Sequence[Layout], staff: int) -> list[Mark]:
    """Where the marker stands when each note of a performed line begins; see `numbered`."""
    marks: list[Mark] = []
    seen: set[int] = set()
    for note in performance.parts[0].notes:
        if note.source is None or note.source in seen:
            continue
        seen.add(note.source)
        written = played[note.source].anchor
        for system, layout in enumerate(layouts):
            left = layout.heads.get((staff, written if written is not None else -1))
            if left is not None:
                box = layout.staves[staff - 1]
                marks.append(
                    (
                        round(note.onset_sec, 4),
                        system,
                        round(left - 40),
                        round(box.top - 300),
                        round(box.bottom + 300),
                    )
                )
                break
    return marks


def _samples(lesson: Lesson, low: int, high: int) -> list[tuple[int, str]]:
    """Long notes of the instrument from `low` to `high`, every few semitones: MIDI number and FLAC in base 64."""
    import soundfile
    import soxr

    from fioritura.sound.render import render_short
    from fioritura.sound.synth import SAMPLE_RATE as SYNTH_RATE
    from fioritura.sound.synth import synth_named
    from fioritura.sound.voice.winds import wind_of

    midis = range(low + (high - low) % SAMPLE_STEP // 2, high + 1, SAMPLE_STEP)
    notes = tuple(
        PerformedNote(float(_SLOT_SEC * number), SAMPLE_SEC, midi, _SAMPLE_VELOCITY)
        for number, midi in enumerate(midis)
    )
    voice = wind_of(lesson.instrument.id, lesson.instrument.program)
    part = PerformedPart("Melody", lesson.instrument.program, notes, reverb=0, voice=voice)
    bank = _performed(lesson, lesson.tune)
    audio = render_short(replace(bank, parts=(part,), lasts_sec=float(_SLOT_SEC * len(notes))), synth_named())
    mono = audio.mean(axis=1)
    peak = float(abs(mono).max()) or 1.0
    found = []
    for number, midi in enumerate(midis):
        start = number * _SLOT_SEC * SYNTH_RATE
        piece = soxr.resample(
            mono[start : start + round(SAMPLE_SEC * SYNTH_RATE)] * (0.8 / peak), SYNTH_RATE, SAMPLE_RATE
        )
        buffer = io.BytesIO()
        soundfile.write(buffer, piece, SAMPLE_RATE, format="FLAC", subtype="PCM_16")
        found.append((midi, base64.b64encode(buffer.getvalue()).decode("ascii")))
    return found
