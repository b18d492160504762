"""Books, folders and checks for the tests of batches."""

from __future__ import annotations

import os
import signal
from itertools import islice
from pathlib import Path

from fioritura.batch.job import Made, TuneTask, make
from tests.corpus_tunes import book_entries

BAD_TUNE = "X:900\nT:No Music Here\nK:C\n%nothing\n"


def write_book(path: Path, tunes: int, *, bad_after: int | None = None) -> Path:
    """The first tunes of the corpus as one book; with a tune that has no notes after `bad_after` of them."""
    texts = [str(entry.text) for entry in islice(book_entries(), tunes)]
    if bad_after is not None:
        texts.insert(bad_after, BAD_TUNE)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("\n\n".join(texts) + "\n", encoding="utf-8")
    return path


def tree(folder: Path) -> dict[str, bytes]:
    """Every file below a folder by its path."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def deadly(job: TuneTask) -> Made:
    """Make a job, but kill the worker whenever its title says so, or once.

    A title that kills once names, after a space at its end, the file which says that it has.
    """
    title = job.tune.title
    if "kills always" in title:
        os.kill(os.getpid(), signal.SIGKILL)
    marker = Path(title.rpartition(" ")[2])
    if "kills once" in title and not marker.exists():
        marker.touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return make(job)


def children(pid: int) -> list[int]:
    """The processes that a process has started; none where it has ended."""
    try:
        return [int(child) for child in Path(f"/proc/{pid}/task/{pid}/children").read_text().split()]
    except OSError:
        return []


def is_running(pid: int) -> bool:
    """True for a process that has not ended."""
    try:
        return Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()[0] not in "ZX"
    except OSError:
        return False
