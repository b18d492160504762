"""Making a lesson's pack, in a process of its own."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from fioritura.arrange.arrangement import Arrangement
from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.lesson.manifest import PackSource
from fioritura.lesson.pack import write_pack
from fioritura.lesson.plan import plan_of, planned_lesson
from fioritura.web.intake import ReadingOptions, Source, read_source
from fioritura.web.jobs import Bench, Made

__all__ = ["make_pack", "moved_octaves"]


def make_pack(
    bench: Bench, text: str, data: Mapping[str, Any], revision: int, source: Source, reading: ReadingOptions
) -> Made:
    """Write the pack of a plan (`data`, which stood at `revision`) on an arrangement (`text`) into one ZIP file."""
    plan, arrangement = plan_of(data), arrangement_from_json(text)
    octave = moved_octaves(arrangement, source, reading)
    lesson = planned_lesson(arrangement, plan, octave)
    kept = bench.folder / "arrangement.json"
    kept.write_text(text, encoding="utf-8")
    name = f"{_file_name(lesson.title)}.zip"
    manifest = write_pack(
        lesson,
        bench.folder / name,
        plan.options,
        source=PackSource(kept),
        settings={"plan": plan.data(), "octave": octave},
        progress=bench.tell,
    )
    facts = {
        "revision": revision,
        "files": len(manifest["files"]) + 1,
        "bytes": (bench.folder / name).stat().st_size,
        "techniques": len(lesson.examples),
        "left_out": manifest["left_out"],
    }
    return Made(facts, file=name)


def moved_octaves(arrangement: Arrangement, source: Source, reading: ReadingOptions) -> int:
    """By how many octaves an arrangement's tune lies above its file's."""
    written = read_source(source, reading).notes[0].pitch
    return (arrangement.tune.notes[0].pitch.midi - written.midi) // 12


def _file_name(title: str) -> str:
    return re.sub(r"[^\w.()' -]", "_", title).strip(". ")[:80] or "lesson"
