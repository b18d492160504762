"""Batches on a cluster: a scheduler and three workers on loopback give the files of one machine, byte for byte."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from fioritura.batch.batch import Summary, run_batch
from fioritura.batch.cluster import Cluster
from fioritura.batch.job import Made, make
from fioritura.batch.pool import Lost, Pool
from fioritura.batch.sources import Sources
from fioritura.batch.wishes import Wishes
from fioritura.cli import main
from fioritura.cli.batch import SOME_FAILED
from tests.batches import deadly, tree, write_book
from tests.test_batch import jobs_titled

distributed = pytest.importorskip("distributed")

WISHES = Wishes(levels=(1, 3), irregular="keep")


@pytest.fixture(scope="module")
def cluster() -> Iterator[Any]:
    with distributed.LocalCluster(
        n_workers=3, threads_per_worker=1, host="127.0.0.1", dashboard_address=None, silence_logs=50
    ) as made:
        yield made


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_book(tmp_path_factory.mktemp("book") / "book.abc", 14, bad_after=6)


@pytest.fixture(scope="module")
def here(book: Path) -> dict[str, bytes]:
    """What one machine makes of the book."""
    out = book.parent / "here"
    run_batch(Sources(book, out), out, WISHES, Pool(2))
    return tree(out)


def test_the_same_bytes_by_the_command(book: Path, here: dict[str, bytes], cluster: Any) -> None:
    out = book.parent / "there"
    arguments = ["batch", str(book), "--out", str(out), "--levels", "1,3", "--irregular", "keep"]
    assert main([*arguments, "--scheduler", cluster.scheduler_address, "--json"]) == SOME_FAILED
    assert tree(out) == here
    assert len(here) == 14 * 3 + 2


def test_a_killed_worker_loses_nothing(book: Path, here: dict[str, bytes], cluster: Any) -> None:
    """One of three workers gets SIGKILL while it is at work."""
    out = book.parent / "killed"
    with distributed.Client(cluster.scheduler_address, set_as_default=False) as client:
        pids = list(client.run(os.getpid).values())
    assert len(set(pids)) == 3

    def kill(summary: Summary) -> None:
        if summary.made and pids:
            os.kill(pids.pop(), signal.SIGKILL)
            pids.clear()

    summary = run_batch(Sources(book, out), out, WISHES, Cluster(cluster.scheduler_address), kill)
    assert not pids
    assert summary.reasons == {"TuneError": 1}
    assert tree(out) == here


def test_a_tune_that_kills_workers_is_lost_alone(cluster: Any, tmp_path: Path) -> None:
    """The scheduler gives it to one worker after the other until it gives up; all other tunes are made."""
    titles = ["a", "b", "kills always", "c", "d"]
    with Cluster(cluster.scheduler_address) as team:
        outcomes = {job.name: outcome for job, outcome in team.spread(deadly, jobs_titled(tmp_path, *titles))}
    assert sorted(outcomes) == sorted(titles)
    assert [name for name, outcome in outcomes.items() if isinstance(outcome, Lost)] == ["kills always"]
    for job in jobs_titled(tmp_path, "a", "b"):
        outcome = outcomes[job.name]
        assert isinstance(outcome, Made)
        assert outcome.pieces == make(job).pieces
