"""The work on one tune: its pieces, made from its own text alone, so that any worker anywhere makes the same bytes."""

from __future__ import annotations

import signal
import tempfile
import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import Any, Final

from fioritura.arrange.arrangement import Arrangement
from fioritura.arrange.arranger import choose_figures
from fioritura.arrange.prepare import nearest_octave, prepared, setting_for
from fioritura.arrange.survey import survey
from fioritura.batch.wishes import Output, Wishes
from fioritura.errors import FiorituraError, ToolError
from fioritura.lesson.cache import code_digest
from fioritura.lesson.edition import Edition, line_bytes, line_performance
from fioritura.notation.read import UnreadTune
from fioritura.players.instruments import instrument_named
from fioritura.players.setting import Setting
from fioritura.tune import Tune
from fioritura.words import Message, message, say, speaking

__all__ = ["LIMIT_SEC", "Failure", "Made", "MadeOutput", "TakeFile", "TuneTask", "make", "soundfont_id"]

READING, ENGINE, WRITING, OTHER = "reading", "engine", "writing", "sound, packs and takes"
"""The stages of the work, by which its cost is told."""

LIMIT_SEC: Final = 900.0

_NAMES_THE_TUNE: Final = ("problem-in-file", "problem-in-tune")
_ONE_AT_A_TIME: Final = threading.Lock()
"""Workers of a cluster may run threads; the engraver and the typesetter are used by one at a time."""


@dataclass(frozen=True, slots=True)
class TakeFile:
    """A recording of the tune: the piece that its report is, and the file's name and content."""

    piece: Output
    name: str
    data: bytes = field(repr=False)


@dataclass(frozen=True, slots=True)
class TuneTask:
    """A tune and the pieces to make of it. `code` and `soundfont` are those that the results must be made with;
    after `limit_sec` the tune is given up (where the work is done in a process's main thread, and the system can)."""

    name: str
    source: str
    tune: UnreadTune
    wishes: Wishes
    pieces: tuple[Output, ...]
    takes: tuple[TakeFile, ...] = ()
    code: str = ""
    soundfont: tuple[str, int] | None = None
    limit_sec: float = LIMIT_SEC


@dataclass(frozen=True, slots=True)
class Failure:
    """Why a tune (or, with `piece`, a piece of it) was not made; `kind` is the error's name."""

    source: str
    piece: str
    kind: str
    reason: str


@dataclass(frozen=True, slots=True)
class MadeOutput:
    """A piece that was made: its files by their paths in it (``""`` where it is a file itself), and what is in it."""

    piece: Output
    files: Mapping[str, bytes] = field(repr=False)
    facts: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Made:
    """What came of a job. `cpu_sec` is the processor time of each stage."""

    title: str = ""
    warnings: tuple[str, ...] = ()
    pieces: tuple[MadeOutput, ...] = ()
    failures: tuple[Failure, ...] = ()
    cpu_sec: Mapping[str, float] = field(default_factory=dict)


def make(job: TuneTask) -> Made:
    """Make the pieces of a job, each as far as it goes; what fails is told, not raised.

    Raises:
        ToolError: this worker has another version of the program, or another soundfont, than the job asks for.
    """
    if job.code and job.code != code_digest():
        raise ToolError("worker-other-version")
    if job.soundfont and job.soundfont != soundfont_id():
        raise ToolError("worker-other-soundfont", name=job.soundfont[0])
    with _ONE_AT_A_TIME, _limited(job.limit_sec), speaking(job.wishes.language):
        return _Work(job).made()


@contextmanager
def _limited(seconds: float) -> Iterator[None]:
    """Raise `_OverTimeError` in the block once it lasts longer."""

    def stop(*arguments: object) -> None:
        raise _OverTimeError(message("batch-over-time", seconds=seconds))

    if not hasattr(signal, "setitimer") or threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


class _OverTimeError(BaseException):
    """A tune has taken too long; no piece of it is to take this for its own failure."""


def soundfont_id() -> tuple[str, int]:
    """Name and size in bytes of the soundfont in use: the same on every machine of a cluster.

    Raises:
        ToolError: there is no soundfont.
    """
    from fioritura.sound.soundfont import find_soundfont

    font = find_soundfont()
    return font.path.name, font.path.stat().st_size


class _Work:
    """A job being done: what several pieces need is made once."""

    def __init__(self, job: TuneTask) -> None:
        self.job, self.wishes = job, job.wishes
        self.cpu_sec: dict[str, float] = {}
        self.failures: list[Failure] = []
        self.arrangements: dict[int, Arrangement] = {}

    def made(self) -> Made:
        pieces: list[MadeOutput] = []
        takes = {take.piece: take for take in self.job.takes}
        title = ""
        warnings: tuple[str, ...] = ()
        try:
            with self._told(""):
                title, warnings = self.tune.title, tuple(map(say, self.tune.warnings))
                for piece in self.job.pieces:
                    with self._told(piece.path):
                        pieces.append(self._piece(piece, takes.get(piece)))
        except _OverTimeError as error:
            self._fail("", "TimeLimit", str(error))
        return Made(title, warnings, tuple(pieces), tuple(self.failures), self.cpu_sec)

    @contextmanager
    def _told(self, piece: str) -> Iterator[None]:
        """Note what goes wrong, whatever it is: the other pieces and tunes go on.

        That the message names the tune again is left out.
        """
        try:
            yield
        except FiorituraError as error:
            said = error.message
            while said.id in _NAMES_THE_TUNE and isinstance(problem := said["problem"], Message):
                said = problem
            self._fail(piece, type(error).__name__, say(said))
        except Exception as error:
            self._fail(piece, "Fault", say(message("batch-fault", kind=type(error).__name__, reason=str(error))))

    def _fail(self, piece: str, kind: str, reason: str) -> None:
        """Note a failure."""
        self.failures.append(Failure(self.job.source, piece, kind, reason))

    @contextmanager
    def _stage(self, name: str) -> Iterator[None]:
        start = time.thread_time()
        try:
            yield
        finally:
            self.cpu_sec[name] = self.cpu_sec.get(name, 0.0) + time.thread_time() - start

    @cached_property
    def tune(self) -> Tune:
        """The tune, ready for the player."""
        with self._stage(READING):
            tune = self.job.tune.read(irregular=self.wishes.irregular)
        with self._stage(ENGINE):
            instrument = instrument_named(self.wishes.player)
            octave = nearest_octave(tune, instrument) if self.wishes.octave is None else self.wishes.octave
            is_usual = self.wishes.octave is None and octave == instrument.reading_octave
            ready = prepared(tune, instrument, octave=None if is_usual else octave, unfold=self.wishes.unfold)
        if self.wishes.octave is None and not is_usual:
            ready = replace(ready, warnings=(*ready.warnings, message("batch-moved", octaves=octave)))
        self.octave = octave
        return ready

    def arrangement(self, level: int) -> Arrangement:
        """The tune ornamented for a level."""
        if level not in self.arrangements:
            wishes, tune = self.wishes, self.tune
            with self._stage(ENGINE):
                found = survey(tune, self._setting(level), wishes.only, wishes.without)
                rendition = choose_figures(found, seed=wishes.seed)
            self.arrangements[level] = Arrangement(
                tune, found.setting, rendition, wishes.seed, wishes.only, wishes.without
            )
        return self.arrangements[level]

    def _setting(self, level: int) -> Setting:
        wishes = self.wishes
        return setting_for(
            self.tune,
            wishes.player,
            level,
            beats_per_minute=wishes.tempo,
            feel=wishes.feel,
            idiom=wishes.idiom,
            density=wishes.density,
        )

    def _piece(self, piece: Output, take: TakeFile | None) -> MadeOutput:
        if piece.kind == "pack":
            return self._pack(piece)
        if take is not None:
            return self._report(piece, take)
        arrangement = self.arrangement(piece.level)
        rendition = arrangement.rendition
        edition = Edition(rendition, paper=self.wishes.paper)
        if piece.kind == "notation":
            with self._stage(WRITING):
                data = line_bytes(edition, piece.ending)
        else:
            with self._stage(OTHER):
                data = _sound(edition, piece.ending)
        facts = {"figures": len(rendition.figures), "kept_share": round(rendition.kept_share, 4)}
        return MadeOutput(piece, {"": data}, facts)

    def _pack(self, piece: Output) -> MadeOutput:
        from fioritura.lesson.lesson import lesson_of
        from fioritura.lesson.manifest import PackSource
        from fioritura.lesson.pack import PackOptions, write_pack

        wishes, setting = self.wishes, self._setting(piece.level)
        with self._stage(OTHER), tempfile.TemporaryDirectory(prefix="fioritura-") as name:
            folder = Path(name)
            source = folder / f"{Path(self.job.name).name}{self.job.tune.path.suffix}"
            source.write_bytes(self.job.tune.content)
            lesson = lesson_of(
                self.tune,
                setting,
                seed=wishes.seed,
                only=wishes.only,
                without=wishes.without,
                language=wishes.language,
                paper=wishes.paper,
                octave=self.octave,
            )
            options = PackOptions(sections=wishes.sections, audio=wishes.audio, workers=1)
            manifest = write_pack(
                lesson, folder / "pack", options, source=PackSource(source), settings=self._pack_settings(piece)
            )
            files = {
                path.relative_to(folder / "pack").as_posix(): path.read_bytes()
                for path in sorted((folder / "pack").rglob("*"))
                if path.is_file()
            }
        return MadeOutput(piece, files, {"techniques": len(manifest["techniques"])})

    def _pack_settings(self, piece: Output) -> dict[str, Any]:
        """What `fioritura lesson` makes the same pack from again."""
        wishes = self.wishes
        return {
            "irregular": wishes.irregular,
            "unfold": wishes.unfold,
            "octave": self.octave,
            "player": wishes.player,
            "level": piece.level,
            "idiom": wishes.idiom,
            "feel": wishes.feel,
            "tempo": wishes.tempo,
            "density": wishes.density,
            "only": ",".join(wishes.only),
            "without": ",".join(wishes.without),
            "seed": wishes.seed,
            "sections": ",".join(wishes.sections),
            "paper": wishes.paper,
            "language": wishes.language,
            "audio": wishes.audio,
        }

    def _report(self, piece: Output, take: TakeFile) -> MadeOutput:
        import json

        from fioritura.review.take_review import review_take

        asked = self.arrangement(self.wishes.asked) if self.wishes.asked else None
        with (
            self._stage(OTHER),
            tempfile.TemporaryDirectory(prefix="fioritura-") as name,
            speaking(self.wishes.language),
        ):
            path = Path(name) / f"take{Path(take.name).suffix}"
            path.write_bytes(take.data)
            review = review_take(
                path,
                self.tune,
                asked=asked,
                instrument=instrument_named(self.wishes.player),
                level=piece.level,
                name=take.name,
            )
            text = json.dumps(review.to_dict(), indent=2, ensure_ascii=False) + "\n"
            praise = say(review.praise)
        return MadeOutput(piece, {"": text.encode()}, {"praise": praise})


def _sound(edition: Edition, ending: str) -> bytes:
    from fioritura.sound.mixdown import write_audio

    with tempfile.TemporaryDirectory(prefix="fioritura-") as name:
        path = Path(name) / f"line.{ending}"
        write_audio(line_performance(edition), path)
        return path.read_bytes()
