"""Engraving in processes: the same music as here, kept, and going on after a process was ended."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Iterator

import pytest

from fioritura.notation.engraving.engrave import engrave_systems
from fioritura.notation.score import Score, Staff
from fioritura.web.engraver import Engraver
from tests.tunes import random_tune

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="needs POSIX signals")


def music(seed: int) -> Score:
    tune = random_tune(seed, bars=8)
    return Score(tune, (Staff(tune.notes),))


@pytest.fixture(scope="module")
def engraver() -> Iterator[Engraver]:
    engraver = Engraver(1)
    engraver.warm()
    yield engraver
    engraver.close()


def test_a_process_engraves_what_would_be_engraved_here(engraver: Engraver) -> None:
    here = engrave_systems(music(1), width_mm=180, staff_mm=7)
    assert engraver.engrave(music(1), 180, 7) == here
    like = engrave_systems(music(1), width_mm=180, staff_mm=7, bars_per_system=2)
    again = engraver.engrave(music(1), 180, 7, like)
    assert [system.bar_count for system in again] == [system.bar_count for system in like]


def test_what_was_engraved_lately_is_at_hand(engraver: Engraver) -> None:
    first = engraver.engrave(music(2), 180, 7)
    assert engraver.engrave(music(2), 180, 7) is first
    assert engraver.engrave(music(2), 120, 7) is not first


def test_it_goes_on_after_its_process_was_ended(engraver: Engraver) -> None:
    assert engraver._pool is not None
    (process,) = engraver._pool._processes.values()
    assert process.pid is not None
    os.kill(process.pid, signal.SIGKILL)
    assert engraver.engrave(music(3), 180, 7) == engrave_systems(music(3), width_mm=180, staff_mm=7)
