"""Do the main jobs with the lowest declared releases of all dependencies, and with the newest that the bounds let in.

    python -m tools.bounds

Each is a fresh environment that holds the package's wheel (`tools.environments`) and does `tools/smoke.py`.
"""

from __future__ import annotations

import tempfile
import time
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from pathlib import Path
from typing import get_args

from tools.environments import ROOT, Kind, build_wheel, fresh_environment, run

__all__ = ["main"]


def main() -> None:
    """Try both, side by side."""
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        wheel = build_wheel(folder)
        with ThreadPoolExecutor() as pool:
            for said in pool.map(partial(_tried, folder, wheel), get_args(Kind)):
                print(said)


def _tried(folder: Path, wheel: Path, kind: Kind) -> str:
    began = time.monotonic()
    programs = fresh_environment(folder / kind, wheel, kind)
    ready = time.monotonic()
    said = run(programs / "python", "-I", ROOT / "tools" / "smoke.py", folder / f"{kind}-made", folder=folder)
    return f"{kind} dependencies: environment {ready - began:.1f} s\n{said.rstrip()}"


if __name__ == "__main__":
    main()
