"""Let the code that an input reaches choose the next ones: ``python -m tools.fuzz_guided abc --seconds 600``.

For atheris (``pip install atheris``), which changes inputs that reach new branches of the program. It begins with the sound
files of `tests.fuzzing`; an input that is neither read nor refused with a deliberate error, takes longer than two seconds or
more than a gigabyte is kept in ``fuzz-failures``, and ends the run.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

import atheris

with atheris.instrument_imports(include=["fioritura"]):
    from tests.fuzzing import READERS, made, tried

    CHOICES = [name for name in READERS if name not in ("archive", "api")]
    for _reader in CHOICES:
        tried(_reader, READERS[_reader].sound()[0])  # Much is imported only where it is needed.

SEEDS = 300
MOST_BYTES = 20_000
KEPT = Path("fuzz-failures")


def main() -> None:
    """Run until something breaks or time is up."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("reader", choices=CHOICES)
    parser.add_argument("--seconds", type=int, default=600, help="how long (default: 600)")
    parser.add_argument("--corpus", type=Path, help="folder of inputs, which is added to (default: one for this run)")
    options = parser.parse_args()
    with TemporaryDirectory(prefix="fioritura-fuzz-") as name:
        corpus = options.corpus or Path(name)
        corpus.mkdir(parents=True, exist_ok=True)
        seeds = (*READERS[options.reader].sound(), *(made(options.reader, number) for number in range(SEEDS)))
        for number, data in enumerate(seeds):
            (corpus / f"seed-{number}").write_bytes(data)
        KEPT.mkdir(exist_ok=True)
        limits = ["-timeout=2", "-rss_limit_mb=1024", f"-max_len={MOST_BYTES}", f"-max_total_time={options.seconds}"]
        kept = f"-artifact_prefix={KEPT}/"
        atheris.Setup([sys.argv[0], *limits, kept, str(corpus)], lambda data: _once(options.reader, data))
        atheris.Fuzz()


def _once(reader: str, data: bytes) -> None:
    tried(reader, data)


if __name__ == "__main__":
    main()
