"""Do the main jobs once with the installed package: demo, library, listening, lesson pack, page.

    python -I tools/smoke.py FOLDER [JOB ...]

It needs nothing but what the package itself depends on; `tools.bounds` and `tools.wheel` run it in fresh environments, outside
of the source tree. Everything is written below FOLDER, the cache too. A job that fails ends it with an error.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from importlib.metadata import version
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any, Final
from urllib.request import Request, urlopen

FORMATS: Final = ("musicxml", "mid", "abc", "svg", "pdf", "mp3", "wav", "flac", "json")
DEMO_FILES: Final = frozenset(
    ("comparison.pdf", "ornamented.pdf", "ornamented.abc", "ornamented.mid", "plain.mp3", "ornamented.mp3")
)
PATIENCE_SEC: Final = 60.0
_BEGINNINGS: Final = {
    ".pdf": b"%PDF-",
    ".wav": b"RIFF",
    ".flac": b"fLaC",
    ".mid": b"MThd",
    ".svg": b"<svg",
    ".zip": b"PK",
    ".png": b"\x89PNG",
}
_BOUNDARY: Final = "fioritura-smoke"


def main(folder: Path, names: Sequence[str] = ()) -> None:
    """The jobs in turn, all unless named; `listening` needs what `demo` has made."""
    folder.mkdir(parents=True, exist_ok=True)
    os.environ["XDG_CACHE_HOME"] = str(folder / "cache")
    with as_file(files("fioritura.data") / "lanterns.abc") as tune:
        for job in (demo, library, listening, lesson, page):
            if names and job.__name__ not in names:
                continue
            began = time.monotonic()
            job(tune, folder)
            print(f"  {job.__name__}: {time.monotonic() - began:.1f} s", flush=True)


def demo(tune: Path, folder: Path) -> None:
    """The tune that comes with the program, as the README's first command makes it."""
    command("demo", "--out", folder / "demo")
    made = {path.name for path in (folder / "demo").iterdir()}
    check(made >= DEMO_FILES, f"the demo made no {', '.join(sorted(DEMO_FILES - made))}")
    for path in filter(Path.is_file, (folder / "demo").rglob("*")):
        check_file(path)


def library(tune: Path, folder: Path) -> None:
    """Read, find, choose and write every format, then read back what was written."""
    import fioritura

    plain = fioritura.read(tune, player="alto-sax", unfold=True)
    rendition = fioritura.choose(fioritura.find(plain, player="alto-sax", level=3), seed=1)
    check(rendition.figures, "no figure was chosen")
    written = fioritura.write(rendition, folder / "written", formats=FORMATS)
    for format in FORMATS:
        check([path for path in written if path.suffix == f".{format}"], f"no {format} file was written")
    for path in written:
        check_file(path)
    for format in ("musicxml", "abc", "mid"):
        (path,) = (folder / "written").glob(f"ornamented.{format}")
        again = fioritura.read(path)
        check(len(again.notes) >= len(plain.notes), f"{path.name} lost notes: {len(again.notes)}")


def listening(tune: Path, folder: Path) -> None:
    """Hear the ornamented version of the demo as a take."""
    asked = folder / "demo" / "arrangement.json"
    answer = command(
        "listen", folder / "demo" / "ornamented.mp3", "--asked", asked, "--out", folder / "report", "--json"
    )
    report = json.loads(answer)
    check(report["figures"], "no ornament was looked for in the take")
    came_out = sum(figure["status"] == "done" for figure in report["figures"])
    check(2 * came_out >= len(report["figures"]), f"heard {came_out} of {len(report['figures'])} ornaments")
    for path in filter(Path.is_file, (folder / "report").rglob("*")):
        check_file(path)


def lesson(tune: Path, folder: Path) -> None:
    """A lesson pack of the demo tune, on one technique: every kind of page and picture."""
    from fioritura.techniques.turn import TURN

    chosen = (
        "--only",
        TURN.id,
        "--sections",
        "handout,parts,exercises,page,overlays",
        "--players",
        "alto-sax,trumpet",
    )
    manifest = json.loads(command("lesson", tune, "--out", folder / "pack", *chosen, "--json"))
    check(manifest["files"], "the pack is empty")
    for file in manifest["files"]:
        check_file(folder / "pack" / file["path"])


def page(tune: Path, folder: Path) -> None:
    """Serve the page, ask for it and what it needs, and bring a tune in."""
    with served(folder / "data") as base:
        for place in ("/", "/shelf", "/bring", "/lesson", "/take", "/students"):
            check(b"<html" in asked_for(f"{base}{place}"), f"{place} is no page")
        check(
            asked_for(f"{base}/fonts/signs.ttf").startswith(b"\0\1\0\0"), "the page's music font is no TrueType font"
        )
        check(asked_for(f"{base}/static/page.css"), "the page has no style")
        welcome = json.loads(
            asked_for(f"{base}/api/tunes", form_of(tune), f"multipart/form-data; boundary={_BOUNDARY}")
        )
        check(len(welcome["tunes"]) == 1 and not welcome["problems"], f"the tune was not brought in: {welcome}")
        arrangement = welcome["tunes"][0]["versions"][0]["id"]
        shown = json.loads(asked_for(f"{base}/api/arrangements/{arrangement}"))
        check(shown["figures"] and "<svg" in shown["systems"][0]["svg"], "the arrangement was not engraved")
        heard = json.loads(asked_for(f"{base}/api/arrangements/{arrangement}/hearing?tempo=120"))
        sound = asked_for(f"{base}/api/sounds/{heard['lines'][0]['sound']}")
        check(sound.startswith(b"fLaC"), "what is to be heard is no FLAC")


def form_of(tune: Path) -> bytes:
    """A file as a form sends it."""
    head = f'--{_BOUNDARY}\r\nContent-Disposition: form-data; name="files"; filename="{tune.name}"\r\n\r\n'
    return head.encode() + tune.read_bytes() + f"\r\n--{_BOUNDARY}--\r\n".encode()


@contextmanager
def served(data: Path) -> Iterator[str]:
    """The address of a page that is served while the block lasts."""
    arguments = [program(), "serve", "--port", "0", "--data", str(data)]
    with subprocess.Popen(arguments, stdout=subprocess.PIPE, text=True) as server:
        try:
            said = server.stdout.readline() if server.stdout else ""
            check("http://" in said, f"the page was not served: {said!r}")
            yield "http://" + said.split("http://")[1].split()[0]
        finally:
            server.terminate()


def asked_for(address: str, body: bytes | None = None, kind: str = "application/json") -> bytes:
    """What the server answers; an error status is an error."""
    request = Request(address, data=body, headers={"Content-Type": kind} if body else {})
    with urlopen(request, timeout=PATIENCE_SEC) as answer:
        return bytes(answer.read())


def command(*words: Any) -> str:
    """What a command of the installed program prints; a failure is an error."""
    done = subprocess.run([program(), *map(str, words)], capture_output=True, text=True, check=False)
    check(done.returncode == 0, f"fioritura {words[0]} failed ({done.returncode}): {done.stderr}")
    return done.stdout


def program() -> str:
    """The command as it was installed beside the interpreter."""
    return str(Path(sys.executable).with_name("fioritura"))


def check_file(path: Path) -> None:
    """A file is there, not empty, and begins as its kind does."""
    head = path.read_bytes()[:200]
    check(head, f"{path.name} is empty")
    check(head.startswith(_BEGINNINGS.get(path.suffix, b"")), f"{path.name} begins with {head[:12]!r}")


def check(holds: object, trouble: str) -> None:
    """End with an error unless something holds."""
    if not holds:
        raise SystemExit(f"smoke test, fioritura {version('fioritura')}: {trouble}")


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
