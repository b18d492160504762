"""Every reader reads or refuses whatever it is given: a sample of the sweep in ``tools/fuzz_sweep.py``."""

from __future__ import annotations

import pytest

from fioritura.errors import FiorituraError
from tests.fuzzing import READERS
from tools.fuzz_sweep import MOST_SECONDS, run_chunk

IN_CI = {"whole way": 60, "mxl": 200, "archive": 100, "api": 200}
"""Inputs for the slower readers; the others get 400."""


@pytest.mark.parametrize("reader", READERS)
def test_whatever_comes_is_read_or_refused_in_time(reader: str) -> None:
    count = IN_CI.get(reader, 400)
    outcome = run_chunk((reader, 10_000_000, 10_000_000 + count))
    assert outcome.failed == []
    assert outcome.kinds.total() == count
    assert outcome.kinds["read"] > 0 < count - outcome.kinds["read"], "the sample has both sound and unsound input"
    assert outcome.slowest_sec < MOST_SECONDS


def million_notes(reader: str) -> bytes:
    if reader == "abc":
        return b"X:1\nT:long\nM:4/4\nL:1/8\nK:C\n" + b"CDEF GABc|\n" * 125_000
    if reader == "midi":
        track = b"\x00\x90\x3c\x40\x60\x80\x3c\x40" * 1_000_000 + b"\x00\xff\x2f\x00"
        head = b"MThd\x00\x00\x00\x06\x00\x00\x00\x01\x01\xe0"
        return head + b"MTrk" + len(track).to_bytes(4, "big") + track
    note = b"<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration></note>"
    head = b"<score-partwise><part-list><score-part id='P1'/></part-list><part id='P1'>"
    return head + (b"<measure number='1'>" + note * 4 + b"</measure>") * 250_000 + b"</part></score-partwise>"


@pytest.mark.parametrize("reader", ["abc", "midi", "musicxml"])
def test_a_million_notes_are_refused_with_the_limit(reader: str) -> None:
    with pytest.raises(FiorituraError, match=r"larger|more than|limit"):
        READERS[reader].read(million_notes(reader))
