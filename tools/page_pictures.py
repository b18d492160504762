"""Pictures of the page for the documentation: each screen on a desktop, a tablet and a phone, light and dark.

    python tools/page_pictures.py [SCREEN ...]

Serves a shelf of its own with a few tunes and a lesson, opens it in Chromium, and writes into docs/pictures one picture of
the screen on a desktop and one sheet of all sizes. Needs playwright, Chromium and pillow.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final
from urllib.request import Request, urlopen

from PIL import Image
from playwright.sync_api import sync_playwright

PICTURES: Final = Path(__file__).parents[1] / "docs" / "pictures"
SIZES: Final = {"desktop": (1280, 860), "tablet": (820, 1180), "phone": (360, 740)}
SHEET_HEIGHT: Final = 620
COLOURS: Final = 220
READY: Final = "#music[aria-busy=false] .system svg"
TUNES: Final = {
    'X:1\nT:Gate March\nM:4/4\nL:1/4\nQ:1/4=144\nK:F\n"F"F G A c|"Bb"d2 c2|"C7"B A G E|"F"F3 z|"F"A c f e|"Bb"d f d2|"C7"c B A G|"F"F4|]\n': [
        "march",
        "beginners",
    ],
    'X:1\nT:Small Waltz\nC:Trad.\nM:3/4\nL:1/4\nQ:1/4=120\nK:D\n"D"D F A|"G"B2 A|"A7"G2 E|"D"F3|"D"D F A|"G"d2 B|"A7"A G E|"D"D3|]\n': [
        "waltz",
        "winter concert",
    ],
}
WORDS: Final = {
    "title": "Lanterns for Anna",
    "student": "Anna, Thursdays",
    "studio": "Harbour Street Studio",
    "notes": "Learn the plain tune by heart first. Then choose three ornaments that you like.",
}


def main(wanted: list[str]) -> None:
    """Take the pictures of the wanted screens, or of all."""
    with served() as address, sync_playwright() as driver:
        chromium = shutil.which("chromium") or shutil.which("chromium-browser")
        browser = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox", "--disable-gpu"])
        for name, show in SCREENS.items():
            if not wanted or name in wanted:
                shots = [shot(browser, address, show, size, dark) for size in SIZES for dark in (False, True)]
                save(shots[0], PICTURES / f"{name}.png")
                save(sheet(shots), PICTURES / f"{name}-sizes.png")
        browser.close()


@contextmanager
def served() -> Iterator[str]:
    """A server with a few tunes and a lesson on its shelf."""
    with tempfile.TemporaryDirectory(prefix="fioritura-") as folder:
        command = [sys.executable, "-m", "fioritura", "serve", "--port", "0", "--data", folder]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=os.environ) as process:
            assert process.stdout is not None
            address = process.stdout.readline().split(" is at ")[1].split()[0]
            for text, tags in TUNES.items():
                tune = ask(f"{address}/api/tunes/typed", {"text": text})["tunes"][0]
                ask(f"{address}/api/tunes/{tune['id']}", {"tags": tags}, "PATCH")
            plan: dict[str, object] = {
                "sections": ["handout", "parts", "sound"],
                "players": ["alto-sax", "flute", "trumpet"],
                "overrides": {"words": WORDS},
            }
            ask(f"{address}/api/lessons", {"arrangement": 1, "plan": plan})
            yield address
            process.terminate()


def ask(url: str, body: object, method: str = "POST") -> Any:
    """Send JSON, take JSON."""
    request = Request(url, json.dumps(body).encode(), {"Content-Type": "application/json"}, method=method)
    with urlopen(request) as answer:
        return json.load(answer)


def shot(browser: Any, address: str, show: Callable[[Any, str], None], size: str, dark: bool) -> Image.Image:
    """One screen at one size."""
    width, height = SIZES[size]
    scheme = "dark" if dark else "light"
    context = browser.new_context(viewport={"width": width, "height": height}, color_scheme=scheme)
    page = context.new_page()
    show(page, address)
    page.wait_for_timeout(400)
    with tempfile.NamedTemporaryFile(suffix=".png") as file:
        page.screenshot(path=file.name)
        picture = Image.open(file.name).convert("RGB")
    context.close()
    return picture


def stand(page: Any, address: str) -> None:
    """A figure chosen on the stand."""
    page.goto(f"{address}/stand/1")
    page.wait_for_selector(READY)
    page.wait_for_selector("#hear-words:empty", state="attached", timeout=120_000)
    if page.viewport_size["width"] > 960:
        page.keyboard.press("ArrowRight")
        page.wait_for_selector(".alternative svg")


def setting(page: Any, address: str) -> None:
    """The setting, and another version beside this one."""
    page.goto(f"{address}/stand/1")
    page.wait_for_selector(READY)
    page.keyboard.press("v")
    page.wait_for_selector("[id^=s3-n]")
    page.keyboard.press("s")


def lesson(page: Any, address: str) -> None:
    """The lesson."""
    page.goto(f"{address}/lesson/1")
    page.wait_for_selector(".example svg")


def examples(page: Any, address: str) -> None:
    """The lesson's examples."""
    lesson(page, address)
    page.evaluate("document.getElementById('preview-title').scrollIntoView()")


def shelf(page: Any, address: str) -> None:
    """The shelf."""
    page.goto(f"{address}/shelf")
    page.wait_for_selector(".tune")


def bring(page: Any, address: str) -> None:
    """Bringing in, with an error in what is typed."""
    page.goto(f"{address}/bring")
    page.wait_for_selector("#preview svg")
    page.fill("#abc", 'X:1\nT:My tune\nM:4/4\nL:1/8\nQ:1/4=120\nK:G\n"G"G2 AB "C"c2 e2 | "D7"d4 "G"B3/0 |]\n')
    page.wait_for_selector("#marks mark", state="attached")


SCREENS: Final = {
    "stand": stand,
    "setting": setting,
    "lesson": lesson,
    "examples": examples,
    "shelf": shelf,
    "bring-in": bring,
}


def sheet(shots: list[Image.Image]) -> Image.Image:
    """Pictures side by side, all of one height."""
    small = [
        one.resize((round(one.width * SHEET_HEIGHT / one.height), SHEET_HEIGHT), Image.Resampling.LANCZOS)
        for one in shots
    ]
    rows = [small[:2], small[2:]]
    width = max(sum(one.width + 8 for one in row) for row in rows) + 8
    whole = Image.new("RGB", (width, len(rows) * (SHEET_HEIGHT + 8) + 8), "#8a8378")
    for number, row in enumerate(rows):
        x = 8
        for one in row:
            whole.paste(one, (x, 8 + number * (SHEET_HEIGHT + 8)))
            x += one.width + 8
    return whole


def save(picture: Image.Image, path: Path) -> None:
    """Write a small file: few colours are enough for paper and ink."""
    picture.quantize(COLOURS, dither=Image.Dither.NONE).save(path, optimize=True)
    print(f"{path.name}: {path.stat().st_size // 1024} KB")


if __name__ == "__main__":
    main(sys.argv[1:])
