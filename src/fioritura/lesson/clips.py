"""Video clips of the examples: the phrase, plain and ornamented, with a marker that follows the sound.

The picture is typeset once; each frame is that picture with the marker's rectangle tinted in the colour planes, so
that encoding has little to do. Sound and marker come from the same performance.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.errors import ToolError
from fioritura.lesson.example import Example
from fioritura.lesson.geometry import Layout, layout_of, tinted
from fioritura.lesson.handout import TINT
from fioritura.lesson.soundtrack import Balance, balanced
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.page import Canvas, Placed
from fioritura.notation.engraving.typeset import canvas_png
from fioritura.sound.session import Session, played

if TYPE_CHECKING:
    from fioritura.sound.performance import Performance
    from fioritura.sound.synth import Audio

__all__ = ["CLIP_SIZES", "CLIP_WIDTHS_MM", "FRAMES_PER_SECOND", "Clip", "clip_marks", "write_clip"]

CLIP_SIZES: Final = {"": (1920, 1080), "-vertical": (1080, 1920)}
"""Width and height in pixels by what is added to the file's name."""

CLIP_WIDTHS_MM: Final = {"": 178.0, "-vertical": 92.0}
"""How wide the music is engraved, by the same: on an upright picture it takes several systems."""

FRAMES_PER_SECOND: Final = 25
_MARKER_CHROMA: Final = (72, 158)
"""Blue and red difference of the marker's colour, a warm yellow."""
_MARKER_LUMA: Final = 0.88
_TAIL_SEC: Final = 1.0
_ENCODERS: Final = ("libopenh264", "libx264", "mpeg4")
_OPTIONS: Final[dict[str, dict[str, str]]] = {"libx264": {"preset": "superfast", "crf": "20", "tune": "animation"}}

Plane = NDArray[np.uint8]
Rectangle = tuple[int, int, int, int]
"""Left, top, right and bottom pixel, all even."""


@dataclass(frozen=True)
class Clip:
    """What a clip shows and plays."""

    example: Example
    title: str
    subtitle: str
    session: Session


def write_clip(clip: Clip, systems: tuple[System, ...], balance: Balance, size: tuple[int, int], path: Path) -> None:
    """Write a clip as MP4.

    Raises:
        ToolError: the video library, the synth or the typesetter is missing or failed.
    """
    try:
        import av
    except ImportError as error:
        raise ToolError("clips-need-library", package="av", error=str(error)) from None
    from fioritura.sound.master import master
    from fioritura.sound.render import render
    from fioritura.sound.synth import SAMPLE_RATE

    performance = balanced(played(clip.session), balance)
    audio = master(render(performance))
    picture, origins = _picture(clip, systems, size)
    planes = _planes(av, picture)
    marks = _rectangles(clip, performance, systems, origins)
    count = round((performance.duration_sec + _TAIL_SEC) * FRAMES_PER_SECOND)
    try:
        with av.open(str(path), "w", format="mp4", options={"movflags": "+faststart"}) as container:
            name = next(name for name in _ENCODERS if name in av.codecs_available)
            video: Any = container.add_stream(name, rate=FRAMES_PER_SECOND, options=_OPTIONS.get(name, {}))
            video.width, video.height, video.pix_fmt = *size, "yuv420p"
            sound: Any = container.add_stream("aac", rate=SAMPLE_RATE, layout="stereo")
            for number, frame in enumerate(_frames(av, planes, marks, count)):
                frame.pts = number
                container.mux(video.encode(frame))
            container.mux(video.encode(None))
            for block in _sound_frames(av, audio, count * SAMPLE_RATE // FRAMES_PER_SECOND, SAMPLE_RATE):
                container.mux(sound.encode(block))
            container.mux(sound.encode(None))
    except av.FFmpegError as error:
        raise ToolError("clip-not-encoded", file=path.name, error=str(error)) from None


def clip_marks(clip: Clip, performance: Performance, layouts: list[Layout]) -> list[tuple[float, int, float, int]]:
    """When the marker moves, to which system, to the left edge of which head, on which staff."""
    lines = [chorus.line or () for chorus in clip.session.choruses]
    total = len(lines[0])
    found = []
    seen: set[int] = set()
    for note in performance.parts[0].notes:
        if note.source is None or note.source in seen:
            continue
        seen.add(note.source)
        staff, number = (1, note.source) if note.source < total else (2, note.source - total)
        for system, layout in enumerate(layouts):
            left = layout.heads.get((staff, number))
            if left is not None:
                found.append((note.onset_sec, system, left, staff))
                break
    return found


def _picture(
    clip: Clip, systems: tuple[System, ...], size: tuple[int, int]
) -> tuple[bytes, list[tuple[float, float, float]]]:
    """The still as PNG, and each system's left and top edge and pixels per drawing unit."""
    width, height = size
    margin, title_size = 0.04 * width, 0.034 * (width + height) / 2
    widest = max(system.width_mm for system in systems)
    scale = (width - 2 * margin) / widest
    music = sum(system.height_mm for system in systems) * scale
    gap = 0.03 * height
    y = max((height - music - gap * (len(systems) - 1)) / 2, 5 * title_size)
    items = [
        Placed(clip.title, margin, 0.07 * height, width - 2 * margin, title_size * 1.5),
        Placed(
            clip.subtitle, margin, 0.07 * height + 2.2 * title_size, width - 2 * margin, title_size, is_quiet=True
        ),
    ]
    origins = []
    for system in systems:
        marked = tinted(system, 2, clip.example.figure_notes, TINT)
        items.append(Placed(marked, margin, y, system.width_mm * scale))
        origins.append((margin, y, system.width_mm * scale / layout_of(system).width))
        y += system.height_mm * scale + gap
    return canvas_png(Canvas(width, height, tuple(items))), origins


def _planes(av: Any, png: bytes) -> Plane:
    """The still as one array of its luma and chroma planes, of shape (1.5 x height, width)."""
    with av.open(io.BytesIO(png)) as container:
        frame = next(container.decode(video=0))
    planes: Plane = frame.reformat(format="yuv420p").to_ndarray()
    return planes


def _rectangles(
    clip: Clip,
    performance: Performance,
    systems: tuple[System, ...],
    origins: list[tuple[float, float, float]],
) -> list[tuple[float, Rectangle]]:
    layouts = [layout_of(system) for system in systems]
    found = []
    for onset, system, left, staff in clip_marks(clip, performance, layouts):
        x, y, per_unit = origins[system]
        box = layouts[system].staves[staff - 1]
        edges = (left - 50, box.top - 330, left + 275, box.bottom + 330)
        pixels = [round((edge * per_unit + (x, y)[n % 2]) / 2) * 2 for n, edge in enumerate(edges)]
        found.append((onset, (pixels[0], pixels[1], pixels[2], pixels[3])))
    return found


def _frames(av: Any, planes: Plane, marks: list[tuple[float, Rectangle]], count: int) -> Iterator[Any]:
    """The frames; a picture is made anew only when the marker moves."""
    place, current = -1, av.VideoFrame.from_ndarray(planes, format="yuv420p")
    for number in range(count):
        now, before = number / FRAMES_PER_SECOND, place
        while place + 1 < len(marks) and marks[place + 1][0] <= now:
            place += 1
        if place != before:
            current = av.VideoFrame.from_ndarray(_marked(planes, marks[place][1]), format="yuv420p")
        yield current


def _marked(planes: Plane, rectangle: Rectangle) -> Plane:
    """The planes with a rectangle tinted: luma lowered a little, chroma set to the marker's."""
    left, top, right, bottom = rectangle
    width = planes.shape[1]
    height = planes.shape[0] * 2 // 3
    top, bottom, left, right = max(top, 0), min(bottom, height), max(left, 0), min(right, width)
    tinted_planes = planes.copy()
    luma = tinted_planes[top:bottom, left:right]
    luma[:] = (luma * _MARKER_LUMA).astype(np.uint8)
    chroma = tinted_planes[height:].reshape(2, height // 2, width // 2)
    for plane, value in zip(chroma, _MARKER_CHROMA, strict=True):
        plane[top // 2 : bottom // 2, left // 2 : right // 2] = value
    return tinted_planes


def _sound_frames(av: Any, audio: Audio, length: int, rate: int) -> Iterator[Any]:
    padded = np.pad(audio[:length], ((0, max(0, length - len(audio))), (0, 0)))
    for start in range(0, length, 1024):
        block = np.ascontiguousarray(padded[start : start + 1024].T)
        frame = av.AudioFrame.from_ndarray(block, format="fltp", layout="stereo")
        frame.sample_rate, frame.pts = rate, start
        yield frame
