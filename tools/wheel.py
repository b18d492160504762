"""Build the wheel and prove it alone: nothing of the package missing, the demo made and the page served outside of the source tree.

    python -m tools.wheel [FOLDER]

The wheel is left in FOLDER (default: ``dist``).
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from tools.environments import ROOT, build_wheel, fresh_environment, missing_files, run

__all__ = ["main"]


def main(folder: Path) -> None:
    """Build, look inside, install and use.

    Raises:
        SystemExit: files are missing from the wheel, or a job failed.
    """
    wheel = build_wheel(folder)
    if missing := missing_files(wheel):
        raise SystemExit(f"{wheel.name} lacks {', '.join(missing)}: add them to package-data in pyproject.toml.")
    with tempfile.TemporaryDirectory() as made:
        programs = fresh_environment(Path(made) / "environment", wheel, "newest")
        smoke = (programs / "python", "-I", ROOT / "tools" / "smoke.py")
        print(run(*smoke, Path(made) / "made", "demo", "page", folder=Path(made)).rstrip())
    print(f"{wheel}: {wheel.stat().st_size / 1e6:.1f} MB")


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "dist"))
