"""Speed of reading and of printing: a lead sheet of 32 bars read in about 10 ms, a comparison of 32 bars made in less than a second.

Run with ``make bench``.
"""

from __future__ import annotations

from pytest_benchmark.fixture import BenchmarkFixture

from fioritura.notation.engraving.sheet import comparison_pdf
from fioritura.notation.musicxml.reader import read_musicxml
from tests.musicxml_text import attributes, harmony, notes, score
from tests.scores import ornamented


def bench_a_lead_sheet_is_read(benchmark: BenchmarkFixture) -> None:
    bar = harmony("C", "major-seventh", "maj7") + notes("C4:2 D4:2 E4:2 F4:2 G4:2 A4:2 B4:2 C5:2")
    data = score(attributes() + bar, *[bar] * 31)
    assert len(benchmark(read_musicxml, data).notes) == 256


def bench_a_comparison_is_printed(benchmark: BenchmarkFixture) -> None:
    assert benchmark(comparison_pdf, ornamented(3, bars=32)).startswith(b"%PDF-")
