"""The lesson pack: every file of a lesson, made side by side, each kept by its content's key, written all or none.

The pack's files are jobs. Music is engraved first, then documents, notation and sound are made from it; jobs that
were done before, with the same inputs and the same program, are taken from the cache.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import astuple, dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any, Final

from fioritura.errors import OptionError
from fioritura.files import opened_beside, staged_folder
from fioritura.lesson.cache import Cache, digest
from fioritura.lesson.clips import CLIP_SIZES, CLIP_WIDTHS_MM, Clip, write_clip
from fioritura.lesson.course import course_document, stage_document, stage_engraving, stage_score, stages
from fioritura.lesson.exercises import exercise_document, exercise_engravings
from fioritura.lesson.handout import example_engraving, handout, handout_engravings, performance_score
from fioritura.lesson.lesson import Drawn, Engraving, Lesson
from fioritura.lesson.manifest import PackSource, write_manifest
from fioritura.lesson.overlays import write_overlay_png, write_overlay_svg
from fioritura.lesson.parts import CLASS_SET, Part, part_document, part_engravings, part_for, part_scores
from fioritura.lesson.running_order import running_order
from fioritura.lesson.soundtrack import (
    Balance,
    Track,
    balance_of,
    example_session,
    line_session,
    performance_session,
    tracks,
    write_midi_track,
    write_track,
)
from fioritura.lesson.web_page import write_web_page
from fioritura.lesson.workers import Workers
from fioritura.notation.engraving.engrave import System, with_staves
from fioritura.notation.engraving.page import Document
from fioritura.notation.engraving.typeset import pdf
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.players.instruments import instrument_named
from fioritura.words import language, message, naming, say

__all__ = ["SECTIONS", "FileToMake", "OnStep", "PackOptions", "write_pack"]

SECTIONS: Final = ("handout", "parts", "sound", "exercises", "levels", "page", "overlays", "clips")
"""What a pack can hold; all but the clips unless asked."""

_ZIP_DATE: Final = (1980, 1, 1, 0, 0, 0)

OnStep = Callable[[str, int, int], None]
"""Told a step's name, how many of its jobs are done, and how many there are."""


@dataclass(frozen=True, slots=True)
class PackOptions:
    """What goes into a pack, for whom, and how."""

    players: tuple[str, ...] = CLASS_SET
    sections: tuple[str, ...] = SECTIONS[:-1]
    audio: str = "mp3"
    workers: int | None = None

    def __post_init__(self) -> None:
        for name in self.sections:
            if name not in SECTIONS:
                raise OptionError("no-such-section", given=str(name), known=SECTIONS)
        for id in self.players:
            instrument_named(id)


@dataclass(frozen=True)
class FileToMake:
    """A file to make: `make` is called with `given` and then the path; the same `given` makes the same file."""

    step: str
    path: str
    make: Callable[..., None]
    given: tuple[Any, ...]

    @property
    def key(self) -> str:
        """What the file's content depends on."""
        return digest(self.make.__qualname__, Path(self.path).suffix, *self.given)


@dataclass
class _Pack:
    """A pack being made: the lesson, what is wanted, and what was found out on the way."""

    lesson: Lesson
    options: PackOptions
    cache: Cache
    workers: Workers
    progress: OnStep
    parts: list[Part] = field(default_factory=list)
    left_out: list[dict[str, str]] = field(default_factory=list)

    def wants(self, section: str) -> bool:
        return section in self.options.sections


def write_pack(
    lesson: Lesson,
    target: Path,
    options: PackOptions | None = None,
    *,
    source: PackSource | None = None,
    settings: dict[str, Any] | None = None,
    cache: Cache | None = None,
    progress: OnStep = lambda step, done, total: None,
) -> dict[str, Any]:
    """Write a pack into a folder, or into one file where `target` ends in ``.zip``; return its manifest.

    Its words are in the lesson's language. All files or none: an earlier pack is unharmed when this one fails or is
    interrupted. `source` is the tune's own file, which goes into the pack, and `settings` what the pack can be made
    from again.

    Raises:
        OutputError: the target can't be written.
        ToolError: the engraver, the typesetter, the synth or an encoder failed.
    """
    options, cache = options or PackOptions(), cache or Cache()
    if target.suffix.lower() == ".zip":
        return _zipped(lesson, target, options, source, settings, cache, progress)
    with lesson.speaking(), staged_folder(target) as stage, Workers(options.workers) as workers:
        pack = _Pack(lesson, options, cache, workers, progress)
        _fill(pack, stage)
        manifest = write_manifest(lesson, stage, source, settings or {}, pack.left_out, _moved(pack))
    cache.trim()
    return manifest


def _zipped(
    lesson: Lesson,
    target: Path,
    options: PackOptions,
    source: PackSource | None,
    settings: dict[str, Any] | None,
    cache: Cache,
    progress: OnStep,
) -> dict[str, Any]:
    import tempfile
    import zipfile

    with opened_beside(target) as file, tempfile.TemporaryDirectory(prefix="fioritura-") as name:
        folder = Path(name) / target.stem
        manifest = write_pack(
            lesson, folder, options, source=source, settings=settings, cache=cache, progress=progress
        )
        with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
            for path in sorted(path for path in folder.rglob("*") if path.is_file()):
                info = zipfile.ZipInfo(f"{target.stem}/{path.relative_to(folder).as_posix()}", _ZIP_DATE)
                is_packed = path.suffix in {".mp3", ".mp4", ".png", ".flac"}
                info.compress_type = zipfile.ZIP_STORED if is_packed else zipfile.ZIP_DEFLATED
                info.external_attr = 0o644 << 16
                archive.writestr(info, path.read_bytes())
    return manifest


def _moved(pack: _Pack) -> dict[str, int]:
    return {part.name: part.octave for part in pack.parts if part.octave}


def _fill(pack: _Pack, stage: Path) -> None:
    """Make all files of the pack in a folder."""
    lesson, path = pack.lesson, stages(pack.lesson) if pack.wants("levels") else ()
    _choose_parts(pack)
    engravings: list[Engraving] = []
    if pack.wants("handout") or pack.wants("page") or pack.wants("overlays") or pack.wants("clips"):
        engravings += handout_engravings(lesson)
    if pack.wants("clips"):
        widths = CLIP_WIDTHS_MM.values()
        engravings += (example_engraving(lesson, each, width) for each in lesson.examples for width in widths)
    for part in pack.parts:
        engravings += part_engravings(lesson, part)
    if pack.wants("exercises"):
        engravings += exercise_engravings(lesson)
    engravings += (stage_engraving(lesson, stage) for stage in path)
    needs_sound = pack.wants("sound") or pack.wants("levels") or pack.wants("clips")
    drawn, balance = _prepared(pack, engravings, needs_sound)
    jobs = [*_sound_jobs(pack, path, balance), *_documents(pack, path, drawn), *_notation(pack, path)]
    jobs += _page_jobs(pack, drawn, balance)
    _make(pack, jobs, stage)


def _choose_parts(pack: _Pack) -> None:
    if not pack.wants("parts"):
        return
    for id in pack.options.players:
        instrument = instrument_named(id)
        part = part_for(pack.lesson, instrument)
        if part:
            pack.parts.append(part)
        else:
            pack.left_out.append({"player": id, "reason": say(message("part-without-octave"))})


def _prepared(pack: _Pack, engravings: Sequence[Engraving], needs_sound: bool) -> tuple[Drawn, Balance]:
    """The music engraved, and the band balanced; from the cache where they were before."""
    said = language(), naming()
    wanted: dict[str, Engraving | Lesson] = {digest("engrave", *said, each): each for each in engravings}
    if needs_sound:
        lesson = pack.lesson
        wanted[digest("balance", lesson.instrument, lesson.feel, lesson.tune, lesson.plan, _soundfont(), *said)] = (
            lesson
        )
    found = {key: _unpacked(kept) for key in wanted if (kept := pack.cache.get(key)) is not None}
    todo = [key for key in wanted if key not in found]
    items = [wanted[key] for key in todo]
    if todo:
        pack.progress("engraving", 0, len(todo))
    for number, (place, made) in enumerate(pack.workers.spread(_prepare, items), start=1):
        found[todo[place]] = made
        pack.cache.put(todo[place], _packed(made))
        pack.progress("engraving", number, len(todo))
    drawn: dict[Engraving, tuple[System, ...]] = {}
    balance: Balance = ()
    for key, item in wanted.items():
        if isinstance(item, Engraving):
            drawn[item] = with_staves([System(*fields) for fields in found[key]], item.score)
        else:
            balance = tuple((name, volume, attack_sec) for name, volume, attack_sec in found[key])
    return drawn, balance


def _prepare(item: Engraving | Lesson) -> list[tuple[Any, ...]]:
    """What an engraving's systems, or a band's balance, are made of."""
    return (
        [astuple(replace(system, staves=()))[:-1] for system in item.systems()]
        if isinstance(item, Engraving)
        else list(balance_of(item))
    )


def _packed(made: list[tuple[Any, ...]]) -> bytes:
    return json.dumps(made).encode()


def _unpacked(data: bytes) -> list[tuple[Any, ...]]:
    return [tuple(fields) for fields in json.loads(data)]


def _soundfont() -> tuple[str, int, int]:
    """The soundfont in use, as far as sound depends on it."""
    from fioritura.sound.soundfont import find_soundfont

    font = find_soundfont()
    state = font.path.stat()
    return font.name, state.st_size, state.st_mtime_ns


def _sound_jobs(pack: _Pack, path: Sequence[Any], balance: Balance) -> Iterator[FileToMake]:
    lesson, ending = pack.lesson, pack.options.audio
    if not (pack.wants("sound") or path):
        return
    font = _soundfont()
    made = partial(_sound_job, balance, lesson.composer, font, ending)
    if pack.wants("sound"):
        yield from (made(f"sound/{track.name}", track) for track in tracks(lesson))
        whole = Track("performance", lesson.title, performance_session(lesson))
        yield FileToMake("sound", "sound/performance.mid", write_midi_track, (whole,))
    for stage in path:
        title = say(message("sound-level", title=lesson.title, level=stage.level))
        track = Track(f"level-{stage.level}", title, line_session(lesson, stage.rendition.line))
        yield made(f"levels/level-{stage.level}", track)


def _sound_job(
    balance: Balance, artist: str, font: tuple[str, int, int], ending: str, name: str, track: Track
) -> FileToMake:
    return FileToMake("sound", f"{name}.{ending}", _write_sound, (track, balance, artist, font))


def _write_sound(track: Track, balance: Balance, artist: str, font: tuple[str, int, int], path: Path) -> None:
    write_track(track, balance, artist, path)


def _documents(pack: _Pack, path: Sequence[Any], drawn: Drawn) -> Iterator[FileToMake]:
    lesson = pack.lesson
    if pack.wants("handout"):
        yield _pdf_job("handout.pdf", handout(lesson, drawn))
    if pack.wants("exercises"):
        yield _pdf_job("exercises.pdf", exercise_document(lesson, drawn))
    for part in pack.parts:
        yield _pdf_job(f"parts/{part.name}.pdf", part_document(lesson, part, drawn))
    for stage in path:
        yield _pdf_job(f"levels/level-{stage.level}.pdf", stage_document(lesson, stage, drawn))
    if path:
        yield _pdf_job("course-plan.pdf", course_document(lesson, tuple(path)))
    if pack.wants("page") or pack.wants("clips"):
        yield _text_job("running-order.md", running_order(lesson, pack.options.audio, pack.wants("clips")))


def _pdf_job(path: str, document: Document) -> FileToMake:
    return FileToMake("documents", path, _write_pdf, (document,))


def _write_pdf(document: Document, path: Path) -> None:
    path.write_bytes(pdf(document))


def _text_job(path: str, text: str) -> FileToMake:
    return FileToMake("documents", path, _write_bytes, (text.encode(),))


def _write_bytes(data: bytes, path: Path) -> None:
    path.write_bytes(data)


def _notation(pack: _Pack, path: Sequence[Any]) -> Iterator[FileToMake]:
    lesson = pack.lesson
    if pack.wants("handout"):
        yield _bytes_job("performance.musicxml", write_musicxml(performance_score(lesson)))
    for part in pack.parts:
        plain, ornamented = part_scores(lesson, part)
        yield _bytes_job(f"parts/{part.name}.musicxml", write_musicxml(ornamented))
        yield _bytes_job(f"parts/{part.name}-plain.musicxml", write_musicxml(plain))
    for stage in path:
        yield _bytes_job(f"levels/level-{stage.level}.musicxml", write_musicxml(stage_score(lesson, stage)))


def _bytes_job(path: str, data: bytes) -> FileToMake:
    return FileToMake("documents", path, _write_bytes, (data,))


def _page_jobs(pack: _Pack, drawn: Drawn, balance: Balance) -> Iterator[FileToMake]:
    lesson = pack.lesson
    if pack.wants("page"):
        yield FileToMake("page", "lesson.html", _write_page, (lesson, drawn, _soundfont()))
    if pack.wants("overlays"):
        for example in lesson.examples:
            systems = drawn[example_engraving(lesson, example)]
            yield FileToMake(
                "overlays", f"overlays/{example.name}.png", write_overlay_png, (example.figure_notes, systems)
            )
            yield FileToMake(
                "overlays", f"overlays/{example.name}.svg", write_overlay_svg, (example.figure_notes, systems)
            )
    if pack.wants("clips"):
        for example in lesson.examples:
            session = example_session(lesson, example, 1.0)
            clip = Clip(example, lesson.heading(example.technique), lesson.title, session)
            for name, size in CLIP_SIZES.items():
                systems = drawn[example_engraving(lesson, example, CLIP_WIDTHS_MM[name])]
                given = (clip, systems, balance, size, _soundfont())
                yield FileToMake("clips", f"clips/{example.name}{name}.mp4", _write_clip, given)


def _write_page(lesson: Lesson, drawn: Drawn, font: tuple[str, int, int], path: Path) -> None:
    write_web_page(lesson, drawn, path)


def _write_clip(
    clip: Clip,
    systems: tuple[System, ...],
    balance: Balance,
    size: tuple[int, int],
    font: tuple[str, int, int],
    path: Path,
) -> None:
    write_clip(clip, systems, balance, size, path)


def _make(pack: _Pack, jobs: Sequence[FileToMake], stage: Path) -> None:
    """Do the jobs, those that the cache holds by copying."""
    totals: dict[str, int] = {}
    for job in jobs:
        totals[job.step] = totals.get(job.step, 0) + 1
        (stage / job.path).parent.mkdir(parents=True, exist_ok=True)
    done = dict.fromkeys(totals, 0)
    for step, total in totals.items():
        pack.progress(step, 0, total)
    todo: list[FileToMake] = []

    def tell(job: FileToMake) -> None:
        done[job.step] += 1
        pack.progress(job.step, done[job.step], totals[job.step])

    keys = {job.path: job.key for job in jobs if job.make is not _write_bytes}
    for job in jobs:
        if job.make is _write_bytes:
            job.make(*job.given, stage / job.path)
            tell(job)
        elif pack.cache.fetch(keys[job.path], stage / job.path):
            tell(job)
        else:
            todo.append(job)
    for place, _ in pack.workers.spread(partial(_done, stage), todo):
        job = todo[place]
        pack.cache.keep(keys[job.path], stage / job.path)
        tell(job)


def _done(stage: Path, job: FileToMake) -> None:
    job.make(*job.given, stage / job.path)
