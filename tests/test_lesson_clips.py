"""Clips and overlays: what a decoder and an image reader find in them."""

import io
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from fioritura.lesson.clips import CLIP_SIZES, CLIP_WIDTHS_MM, Clip, clip_marks, write_clip
from fioritura.lesson.geometry import layout_of
from fioritura.lesson.handout import example_engraving
from fioritura.lesson.overlays import write_overlay_png, write_overlay_svg
from fioritura.lesson.soundtrack import balance_of, example_session
from fioritura.sound.session import played

from .lessons import demo_lesson


def test_overlays_have_no_ground_and_show_music(tmp_path: Path) -> None:
    lesson = demo_lesson(level=1)
    example = lesson.examples[0]
    systems = example_engraving(lesson, example).systems()
    write_overlay_png(example.figure_notes, systems, tmp_path / "a.png")
    image = np.array(Image.open(tmp_path / "a.png").convert("RGBA"))
    assert image.shape[1] == 1920
    assert (image[..., 3] == 0).mean() > 0.5
    assert (image[..., 3] == 255).mean() > 0.01
    write_overlay_svg(example.figure_notes, systems, tmp_path / "a.svg")
    assert "<rect" in (tmp_path / "a.svg").read_text()


@pytest.mark.parametrize("way", list(CLIP_SIZES))
def test_a_clip_shows_the_marker_at_the_note_that_sounds(way: str, tmp_path: Path) -> None:
    av = pytest.importorskip("av")
    lesson = demo_lesson(level=1)
    example = lesson.examples[0]
    session = example_session(lesson, example, 1.0)
    clip = Clip(example, "Grace note", lesson.title, session)
    systems = example_engraving(lesson, example, CLIP_WIDTHS_MM[way]).systems()
    path = tmp_path / "clip.mp4"
    write_clip(clip, systems, balance_of(lesson), CLIP_SIZES[way], path)
    performance = played(session)
    marks = clip_marks(clip, performance, [layout_of(system) for system in systems])
    assert len(marks) == len(example.tune.notes) + len(example.line)
    with av.open(io.BytesIO(path.read_bytes())) as container:
        video, sound = container.streams.video[0], container.streams.audio[0]
        assert (video.width, video.height) == CLIP_SIZES[way]
        lasts = float(video.duration * video.time_base)
        assert lasts == pytest.approx(performance.duration_sec + 1.0, abs=0.1)
        assert float(sound.duration * sound.time_base) == pytest.approx(lasts, abs=0.1)
        frames = [frame for number, frame in enumerate(container.decode(video=0)) if number % 5 == 0]
    seen = 0
    for number, frame in enumerate(frames):
        now = number * 5 / 25
        current = [mark for mark in marks if mark[0] <= now]
        red, _, blue = (frame.to_ndarray(format="rgb24")[..., n].astype(int) for n in range(3))
        columns = np.flatnonzero(((red - blue) > 60).sum(axis=0) > 20)
        if not current:
            assert not len(columns)
            continue
        seen += 1
        _, system, left, _ = current[-1]
        margin = 0.04 * CLIP_SIZES[way][0]
        scale = (CLIP_SIZES[way][0] - 2 * margin) / max(s.width_mm for s in systems)
        per_unit = systems[system].width_mm * scale / layout_of(systems[system]).width
        middle = margin + (left + 112) * per_unit
        assert columns.min() <= middle <= columns.max()
    assert seen > 10
