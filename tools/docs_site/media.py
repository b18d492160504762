"""Pictures and sounds of the site, and how a page shows them."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from lxml import etree

from fioritura.html import templates_of
from fioritura.lesson.geometry import tinted
from fioritura.lesson.lesson import Engraving
from fioritura.lesson.workers import Workers
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.svg import standalone
from fioritura.notation.score import Score
from fioritura.players.instruments import Instrument
from fioritura.sound.mixdown import write_audio
from fioritura.sound.performance import Performance
from fioritura.words import say

__all__ = ["CARE", "Drawing", "Media", "Sound", "both_widths", "in_sentence", "made", "music_figure", "rendered"]

CARE: Final = "Start playback softly, in headphones most of all."

PAGE_MM: Final = 170.0
NARROW_MM: Final = 98.0
_PHONE: Final = "(max-width: 44.9375em)"
_GAP_MM: Final = 6.0
_TINT: Final = "#f0d9cb"


@dataclass(frozen=True)
class Drawing:
    """Music to engrave as one SVG, with a tint behind some notes of the lower staff."""

    path: str
    score: Score
    width_mm: float
    staff_mm: float = 6.2
    shows_tempo: bool = True
    tinted_notes: tuple[int, ...] = ()

    def make(self) -> bytes:
        """The SVG."""
        engraving = Engraving(self.score, self.width_mm, self.staff_mm, self.shows_tempo)
        systems = [tinted(system, 2, self.tinted_notes, _TINT) for system in engraving.systems()]
        return standalone(_stacked(systems, self.width_mm)).encode()


@dataclass(frozen=True)
class Sound:
    """A performance to play as MP3."""

    path: str
    performance: Performance

    def make(self) -> bytes:
        """The MP3."""
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder) / "sound.mp3"
            write_audio(self.performance, file)
            return file.read_bytes()


Media = Drawing | Sound


def made(media: Sequence[Media]) -> dict[str, bytes]:
    """All pictures and sounds by their paths on the site, made on every core."""
    longest_first = sorted(media, key=_length, reverse=True)
    with Workers() as workers:
        return {longest_first[number].path: data for number, data in workers.spread(_make, longest_first)}


def _make(one: Media) -> bytes:
    return one.make()


def _length(one: Media) -> float:
    return one.performance.duration_sec if isinstance(one, Sound) else 0.0


def both_widths(
    path: str,
    score: Score,
    *,
    width_mm: float = PAGE_MM,
    shows_tempo: bool = True,
    tinted_notes: tuple[int, ...] = (),
) -> list[Media]:
    """Music for a page (`path.svg`) and for a phone (`path-narrow.svg`)."""
    wide = Drawing(f"{path}.svg", score, width_mm, shows_tempo=shows_tempo, tinted_notes=tinted_notes)
    return [wide, replace(wide, path=f"{path}-narrow.svg", width_mm=NARROW_MM)]


def music_figure(path: str, words: str, *, caption: str = "", sound: str = "") -> str:
    """A picture in both widths with its sound under it, as HTML; `path` goes from the page to the files."""
    return rendered("figure.html", path=path, words=words, caption=caption, sound=sound, phone=_PHONE)


def rendered(template: str, **values: object) -> str:
    """A piece of HTML for a page of the site, by its template."""
    return templates_of("tools.docs_site").get_template(template).render(values)


def in_sentence(instrument: Instrument) -> str:
    """An instrument's name in the middle of a sentence: ``"alto saxophone"``."""
    return say(instrument.name)


def _stacked(systems: Sequence[System], width_mm: float) -> str:
    """The systems one below the other on a page of a width, so that all music has one size; lengths in millimetres."""
    drawings: list[str] = []
    top = 0.0
    for system in systems:
        drawing = etree.fromstring(system.svg.encode())
        place = {"x": 0.0, "y": top, "width": system.width_mm, "height": system.height_mm}
        for name, value in place.items():
            drawing.set(name, f"{value:.2f}")
        drawings.append(etree.tostring(drawing, encoding="unicode"))
        top += system.height_mm + _GAP_MM
    height_mm = top - _GAP_MM
    size = f'width="{width_mm:g}mm" height="{height_mm:.2f}mm" viewBox="0 0 {width_mm:g} {height_mm:.2f}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{"".join(drawings)}</svg>'
