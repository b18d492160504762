"""Fresh environments that hold the package's wheel and what it depends on, at their lowest or their newest releases.

Dependencies are kept below ``fioritura-bounds`` in the user's cache, so that they are fetched once for a list of dependencies;
the newest are fetched anew each week. An environment itself is new each time and never sees the source tree.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import tomllib
import venv
from datetime import date
from hashlib import sha256
from pathlib import Path
from typing import Final, Literal
from zipfile import ZipFile

__all__ = ["ROOT", "Kind", "build_wheel", "declared", "fresh_environment", "lowest", "missing_files", "run"]

Kind = Literal["lowest", "newest"]

ROOT: Final = Path(__file__).parents[1]
_KEPT_DAYS: Final = 30
"""Dependencies that nobody has asked for so long are removed."""

_BUILT_FROM: Final = ("pyproject.toml", "README.md", "LICENSE", "src")
_NO_SOURCE: Final = shutil.ignore_patterns("__pycache__", "*.egg-info")


def declared(root: Path = ROOT) -> list[str]:
    """The run-time dependencies as ``pyproject.toml`` declares them."""
    project = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    return list(project["dependencies"])


def lowest(requirement: str) -> str:
    """A requirement narrowed to its lowest release: ``"numpy>=2.0"`` to ``"numpy==2.0"``.

    Raises:
        ValueError: the requirement has no lower bound.
    """
    found = re.fullmatch(r"([\w.-]+)>=([\w.]+)(?:,<[\w.]+)?(\s*;.*)?", requirement)
    if found is None:
        raise ValueError(f"{requirement!r} has no lower bound: declare it as NAME>=VERSION.")
    return f"{found[1]}=={found[2]}{found[3] or ''}"


def build_wheel(folder: Path) -> Path:
    """Build the wheel from a clean copy of the sources, so that nothing of an earlier build gets into it."""
    with tempfile.TemporaryDirectory() as made:
        copy = Path(made) / "source"
        copy.mkdir()
        for name in _BUILT_FROM:
            source = ROOT / name
            if source.is_dir():
                shutil.copytree(source, copy / name, ignore=_NO_SOURCE)
            else:
                shutil.copy(source, copy / name)
        run(sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--wheel-dir", Path(made) / "wheel", copy)
        (wheel,) = (Path(made) / "wheel").glob("*.whl")
        folder.mkdir(parents=True, exist_ok=True)
        return Path(shutil.copy(wheel, folder))


def missing_files(wheel: Path, source: Path = ROOT / "src") -> list[str]:
    """The files of the source tree that a wheel lacks; types that only check the page's scripts are not for it."""
    with ZipFile(wheel) as archive:
        packed = set(archive.namelist())
    files = (path.relative_to(source) for path in source.rglob("*") if path.is_file())
    ours = {path.as_posix() for path in files if not _is_made(path) and not path.name.endswith(".d.ts")}
    return sorted(ours - packed)


def fresh_environment(folder: Path, wheel: Path, kind: Kind) -> Path:
    """Make an environment with a wheel and its dependencies; returns the folder of its programs."""
    venv.create(folder, with_pip=False, symlinks=os.name != "nt")
    programs = folder / ("Scripts" if os.name == "nt" else "bin")
    python = programs / "python"
    place = run(python, "-I", "-c", "import sysconfig; print(sysconfig.get_path('purelib'))").strip()
    (Path(place) / "dependencies.pth").write_text(f"{_dependencies(kind)}\n", encoding="utf-8")
    pip = (sys.executable, "-m", "pip", "--python", python)
    run(*pip, "install", "--quiet", "--no-deps", "--no-index", wheel)
    run(*pip, "check")
    return programs


def run(*command: str | Path, folder: Path | None = None) -> str:
    """What a command prints, run without this environment's packages; a failure ends the program with its words.

    Raises:
        SystemExit: the command failed.
    """
    outside = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "VIRTUAL_ENV")}
    done = subprocess.run(
        [str(word) for word in command], capture_output=True, text=True, check=False, cwd=folder, env=outside
    )
    if done.returncode:
        raise SystemExit(f"{' '.join(map(str, command))} failed ({done.returncode}):\n{done.stdout}{done.stderr}")
    return done.stdout


def _dependencies(kind: Kind) -> Path:
    """The folder that holds the dependencies, fetched on first use."""
    wanted = [lowest(one) if kind == "lowest" else one for one in declared()]
    when = "" if kind == "lowest" else f"{date.today():%G-%V}"
    key = sha256("\n".join([sys.version, when, *wanted]).encode()).hexdigest()[:16]
    kept = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "fioritura-bounds"
    kept.mkdir(parents=True, exist_ok=True)
    folder = kept / f"{kind}-{key}"
    if folder.is_dir():
        os.utime(folder)
        return folder
    _forget_old(kept)
    with tempfile.TemporaryDirectory(dir=kept) as made:
        target = Path(made) / "packages"
        run(sys.executable, "-m", "pip", "install", "--quiet", "--target", target, *wanted)
        try:
            target.rename(folder)
        except OSError:
            if not folder.is_dir():
                raise
    return folder


def _forget_old(kept: Path) -> None:
    for folder in kept.iterdir():
        if folder.stat().st_mtime < time.time() - _KEPT_DAYS * 86_400:
            shutil.rmtree(folder, ignore_errors=True)


def _is_made(path: Path) -> bool:
    return any(part == "__pycache__" or part.endswith(".egg-info") for part in path.parts)
