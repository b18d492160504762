"""Takes in a browser: the recording path with a microphone that is fed from a file, by keyboard alone, on small screens.

The browser is Debian's Chromium, whose fake capture device plays a WAV file as the microphone; the file holds a tune that
`tests.take_sound` plays by formula. Accessibility is judged by axe-core's rules for WCAG 2.2 A and AA.
"""

from __future__ import annotations

import base64
import io
import json
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.request import Request, urlopen

import numpy as np
import pytest
import soundfile

from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.shelf.store import Shelf
from fioritura.web.server import _listener
from tests import listening_takes as sound
from tests.served import cached_in, served
from tests.take_sound import wave_of, write_wav
from tests.test_web_page import CHROMIUM, faults_of, opened, playwright

pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="the page is tested in Chromium: apt-get install chromium")

MARCH = (
    'X:1\nT:Gate March\nM:4/4\nL:1/4\nQ:1/4=144\nK:F\n"F"F G A c|"Bb"d2 c2|"C7"B A G E|"F"F3 z|'
    '"F"A c f e|"Bb"d f d2|"C7"c B A G|"F"F4|]\n'
)
COUNT_IN_SEC = 4 * 60 / 144
LINE = "#music[aria-busy=false] .system svg"


@pytest.fixture(scope="module")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shelf]:
    shelf = Shelf(tmp_path_factory.mktemp("takes") / "data")
    yield shelf
    shelf.close()


@pytest.fixture(scope="module")
def address(shelf: Shelf) -> Iterator[str]:
    with cached_in(shelf.path.parent / "cache"), served(shelf, _listener(0)) as address:
        yield address


@pytest.fixture(scope="module")
def march(address: str) -> int:
    """An arrangement of a short tune."""
    return int(asked(address, "/api/tunes/typed", {"text": MARCH})["tunes"][0]["arrangement"])


@pytest.fixture(scope="module")
def files(shelf: Shelf, march: int) -> dict[str, Path]:
    """The march with its ornaments, after as much silence as the count-in takes; and without."""
    arrangement = arrangement_from_json(shelf.step(march).text)
    folder = shelf.path.parent
    late = wave_of(arrangement, lead_sec=COUNT_IN_SEC + 0.3)
    waves = {
        "microphone": np.concatenate([late, np.zeros(20 * sound.RATE)]),
        "take": wave_of(arrangement),
    }
    return {name: write_wav(folder / f"{name}.wav", wave) for name, wave in waves.items()}


@pytest.fixture(scope="module")
def browser(files: dict[str, Path]) -> Iterator[Any]:
    with playwright.sync_playwright() as driver:
        browser = driver.chromium.launch(
            executable_path=CHROMIUM,
            args=[
                "--no-sandbox",
                "--disable-gpu",
                "--disable-background-networking",
                "--use-fake-ui-for-media-stream",
                "--use-fake-device-for-media-stream",
                f"--use-file-for-fake-audio-capture={files['microphone']}",
            ],
        )
        yield browser
        browser.close()


@pytest.fixture
def page(browser: Any, address: str, march: int) -> Iterator[Any]:
    page = opened(browser, address, f"/take/{march}", permissions=["microphone"])
    page.wait_for_selector(LINE)
    yield page
    assert page.faults == []
    page.context.close()


@pytest.fixture(scope="module")
def kept(address: str, march: int, files: dict[str, Path]) -> str:
    """A take that is kept, of a student."""
    student = asked(address, "/api/students", {"name": "Edda"})["id"]
    id = uploaded(address, files["take"], march)
    asked(address, f"/api/takes/{id}", {"student": student}, "PUT")
    return id


def asked(address: str, path: str, data: object, method: str = "POST") -> Any:
    request = Request(address + path, json.dumps(data).encode(), {"Content-Type": "application/json"}, method=method)
    with urlopen(request) as answer:
        return json.load(answer)


def told(address: str, path: str) -> Any:
    with urlopen(address + path) as answer:
        return json.load(answer)


def uploaded(address: str, path: Path, arrangement: int) -> str:
    fields = {"arrangement": arrangement, "line": "ornamented", "tempo": 144}
    parts = [
        f'--x\r\nContent-Disposition: form-data; name="{name}"\r\n\r\n{value}\r\n' for name, value in fields.items()
    ]
    parts.append('--x\r\nContent-Disposition: form-data; name="recording"; filename="a.wav"\r\n\r\n')
    body = "".join(parts).encode() + path.read_bytes() + b"\r\n--x--\r\n"
    request = Request(f"{address}/api/takes", body, {"Content-Type": "multipart/form-data; boundary=x"})
    with urlopen(request) as answer:
        started = json.load(answer)
    until = time.monotonic() + 60
    while told(address, f"/api/jobs/{started['job']['id']}")["state"] in ("waiting", "running"):
        assert time.monotonic() < until
        time.sleep(0.1)
    return str(started["take"])


def tab_to(page: Any, id: str) -> None:
    for _ in range(60):
        if page.evaluate("document.activeElement.id") == id:
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"#{id} can't be reached with the Tab key")


# The whole story


def test_a_take_is_recorded_reported_on_and_kept_by_keyboard_alone(page: Any, address: str, march: int) -> None:
    tab_to(page, "student-name")
    page.keyboard.type("Fritz")
    page.keyboard.press("Enter")
    page.wait_for_selector("#student option:text('Fritz')", state="attached")
    page.keyboard.press("Escape")
    page.evaluate("document.activeElement.blur()")
    page.keyboard.press("c")
    assert page.is_checked("input[name=behind][value=click]")
    page.keyboard.press("r")
    page.wait_for_selector("#record[aria-pressed=true]")
    page.wait_for_selector("#count:text-matches('Count-in: [1-4]')")
    page.wait_for_selector(".sounding")
    page.wait_for_selector("#meter[data-state=good]")
    assert page.is_disabled("#tempo")
    page.wait_for_url("**/takes/*", timeout=90_000)
    page.wait_for_selector(LINE)
    take = told(address, f"/api{page.evaluate('location.pathname')}")
    facts = take["facts"]
    assert (take["student"], take["arrangement"], take["is_kept"], facts["is_with_band"]) == (
        "Fritz",
        march,
        False,
        True,
    )
    assert facts["asked"] >= 3
    assert facts["done"] >= 0.7 * facts["asked"]
    assert facts["right"] >= 0.9 * facts["notes"]
    assert take["report"]["timing"]["tempo"] == pytest.approx(144, rel=0.03)
    assert 1 <= len(page.query_selector_all("#advice li")) <= 3
    assert len(page.query_selector_all(".trace path:not(.hit)")) >= facts["right"]
    assert len(page.query_selector_all("#figures tbody tr")) == len(take["report"]["figures"])
    tab_to(page, "along")
    page.keyboard.press("Enter")
    page.wait_for_selector("#along[aria-pressed=true]")
    page.wait_for_selector(".trace .now", state="attached")
    page.keyboard.press("Enter")
    page.wait_for_selector("#along[aria-pressed=false]")
    tab_to(page, "keep")
    page.keyboard.press("Enter")
    page.wait_for_selector("#kept:not([hidden])")
    assert told(address, f"/api/takes/{take['id']}")["is_kept"]
    tab_to(page, "discard")
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    page.wait_for_url(f"**/take/{march}")
    assert take["id"] not in [other["id"] for other in told(address, "/api/takes")]


def test_a_recording_is_brought_instead(page: Any, files: dict[str, Path]) -> None:
    page.set_input_files("#file", str(files["take"]))
    page.wait_for_selector("#outcome:not([hidden]) progress")
    page.wait_for_url("**/takes/*", timeout=60_000)
    page.wait_for_selector(LINE)
    assert "ornament" in page.inner_text("#praise")
    page.click("#figures button >> nth=0")
    page.wait_for_selector(".trace .now", state="attached")
    page.click("#print")
    page.wait_for_selector("#printed:not([hidden])", timeout=60_000)
    with page.expect_download() as download:
        page.click("#printed")
    assert Path(download.value.path()).read_bytes().startswith(b"%PDF")


def test_unclear_takes_and_other_tunes_are_said_plainly(
    browser: Any, address: str, files: dict[str, Path], tmp_path: Path
) -> None:
    page = opened(browser, address, "/take/1")
    page.wait_for_selector(LINE)
    words = tmp_path / "notes.txt"
    words.write_text("no sound")
    disguised = tmp_path / "notes.wav"
    disguised.write_text("no sound")
    for path, said in (
        (files["take"], "does not sound like Lanterns on the Quay"),
        (words, "It is no recording"),
        (disguised, "no recording that can be read"),
    ):
        page.set_input_files("#file", str(path))
        page.wait_for_selector("#outcome.failed:not([hidden])", timeout=60_000)
        assert said in page.inner_text("#outcome-words")
        assert page.is_enabled("#record")
        page.evaluate("document.getElementById('outcome').hidden = true")
    assert page.faults == []
    page.context.close()


def test_a_tune_in_any_metre_is_counted_in_and_what_can_not_be_reported_on_is_deleted(
    browser: Any, address: str, shelf: Shelf
) -> None:
    text = "X:1\nT:Steps\nM:1/4\nL:1/4\nQ:1/4=50\nK:C\n" + "C|^f|_B|^g|_E|=a|^c|=g|" * 4
    arrangement = asked(address, "/api/tunes/typed", {"text": text})["tunes"][0]["arrangement"]
    assert told(address, f"/api/arrangements/{arrangement}/hearing?tempo=100")["band"]
    page = opened(browser, address, f"/take/{arrangement}", permissions=["microphone"])
    page.wait_for_selector(LINE)
    page.keyboard.press("r")
    page.wait_for_selector("#count:text-matches('Count-in: 1')")
    page.wait_for_selector("#count:text-matches('Bar 8 of 32')")
    files = set(shelf.takes.recordings.folder.iterdir()) if shelf.takes.recordings.folder.is_dir() else set()
    page.keyboard.press("r")
    page.wait_for_selector("#outcome.failed:not([hidden])", timeout=60_000)
    page.wait_for_selector("#record:enabled")
    assert page.is_visible("#playback")
    assert set(shelf.takes.recordings.folder.iterdir()) == files
    assert page.faults == []
    page.context.close()


def test_the_microphone_is_tried_and_its_delay_set_by_hand(page: Any) -> None:
    page.keyboard.press("m")
    page.wait_for_selector("#meter[data-state=good]")
    assert "decibels" in page.get_attribute("#meter", "aria-valuetext")
    page.click("#delay-part summary")
    assert page.inner_text("#delay-words").endswith("guessed")
    page.fill("#delay", "123")
    assert page.inner_text("#delay-words") == "123 ms, set by hand"
    page.reload()
    page.wait_for_selector(LINE)
    page.keyboard.press("m")
    page.wait_for_selector("#delay-words:text('123 ms, set by hand')")
    page.click("#delay-part summary")
    page.click("#measure")
    page.wait_for_selector("#said:text-matches('did not come back clearly')")
    page.click("#guess")
    assert page.inner_text("#delay-words").endswith("guessed")
    page.keyboard.press("m")
    page.wait_for_selector("#meter[aria-valuetext=closed]")


# What the modules work out


@pytest.fixture(scope="module")
def bare(browser: Any, address: str) -> Iterator[Any]:
    """A page of the server that has nothing to prepare."""
    page = opened(browser, address, "/students")
    yield page
    page.context.close()


def module(page: Any, name: str, body: str, values: object = None) -> Any:
    """What a function body returns that knows a module as `m` and what it is given as `given`."""
    return page.evaluate(f"async given => {{ const m = await import('/static/{name}.js'); {body} }}", values)


def test_a_wav_file_holds_what_was_recorded(bare: Any) -> None:
    rng = np.random.default_rng(1)
    samples = rng.uniform(-1, 1, 5000).astype(np.float32)
    body = """
        const bytes = new Uint8Array(await m.wavOf(new Float32Array(given), 44100).arrayBuffer());
        return btoa(String.fromCharCode(...bytes));
    """
    data = base64.b64decode(module(bare, "take-microphone", body, samples.tolist()))
    read, rate = soundfile.read(io.BytesIO(data), dtype="float64")
    assert rate == 44100
    assert np.abs(read - samples).max() <= 1.6 / 32768


@pytest.mark.parametrize(("height", "is_clipped"), [(0.5, False), (0.97, False), (1.4, True)])
def test_clipping_is_noticed(bare: Any, height: float, is_clipped: bool) -> None:
    wave = np.clip(height * np.sin(2 * np.pi * 220 * np.arange(2048) / 48000), -1, 1)
    level = module(bare, "take-microphone", "return m.levelOf(new Float32Array(given));", wave.tolist())
    assert level["clipped"] == is_clipped
    assert level["peak"] == pytest.approx(min(height, 1), abs=0.01)


@pytest.mark.parametrize("delay_ms", [0.0, 23.4, 180.0])
def test_a_delay_is_measured_through_noise(bare: Any, delay_ms: float) -> None:
    """Clicks a tenth as loud as they were played, in noise 20 dB below them."""
    assert measured(bare, [delay_ms] * 5, noise=0.002) == pytest.approx(delay_ms, abs=0.5)


def test_a_delay_that_is_not_clear_is_not_told(bare: Any) -> None:
    assert measured(bare, [None] * 5, noise=0.05) is None
    assert measured(bare, [20.0, 90.0, 40.0, 150.0, 10.0], noise=0.001) is None


def measured(bare: Any, delays_ms: list[float | None], noise: float) -> float | None:
    rate = 16000
    wave = np.array(module(bare, "take-delay", f"return Array.from(m.click({rate}));"))
    samples = np.random.default_rng(5).normal(0, noise, int(2.8 * rate))
    times = [0.2 + 0.4 * number for number in range(5)]
    for start, delay in zip(times, delays_ms, strict=True):
        if delay is not None:
            at = round((start + delay / 1000) * rate)
            samples[at : at + len(wave)] += 0.1 * wave
    given = {"samples": samples.tolist(), "times": times, "wave": wave.tolist()}
    body = f"return m.delayOf(new Float32Array(given.samples), {rate}, given.times, new Float32Array(given.wave));"
    found = module(bare, "take-delay", body, given)
    return None if found is None else 1000 * found


@pytest.mark.parametrize("delay_sec", [0.0, 0.08, 0.25])
def test_what_was_played_with_the_beat_is_kept_on_the_beat(bare: Any, delay_sec: float) -> None:
    """A knock on the first beat of the hearing, which comes back late, lies on that beat of what is kept."""
    body = """
        const rate = 8000, zeroAt = 3.7, startsAt = 3.2;
        const samples = new Float32Array(12 * rate);
        samples[Math.round((zeroAt + 2.0 + given - startsAt) * rate)] = 1;
        const session = new m.Session({ stop: () => ({ samples, rate, startsAt }) }, () => {});
        session.hearing = { starts_at: 2.0, ends_at: 6.0, lines: [{ notes: [[2.0, 2.4, "s1-n0"]] }], band: {}, bars: [] };
        session.zeroAt = zeroAt;
        session.wish = { behind: "band" };
        const kept = session.stop(given);
        return { knock: kept.samples.indexOf(1) / rate + kept.offset, offset: kept.offset, length: kept.samples.length / rate };
    """
    kept = module(bare, "take-session", body, delay_sec)
    assert kept["knock"] == pytest.approx(2.0, abs=0.001)
    assert kept["offset"] == pytest.approx(1.2)
    assert kept["length"] == pytest.approx(6.8, abs=0.01)


@pytest.mark.parametrize("by_sec", [0.0, 1.25, -0.5])
def test_a_take_is_put_where_it_was_in_the_time_of_the_band(bare: Any, by_sec: float) -> None:
    body = """
        const recorded = new AudioBuffer({ length: 8000, sampleRate: 8000 });
        recorded.getChannelData(0)[6000] = 1;
        return m.shifted(recorded, given).getChannelData(0).indexOf(1) / 8000;
    """
    assert module(bare, "take-along", body, by_sec) == pytest.approx(0.75 + by_sec)


# Students and progress


def test_students_are_added_renamed_and_removed_by_keyboard(browser: Any, address: str) -> None:
    page = opened(browser, address, "/students")
    page.wait_for_selector("#students[aria-busy=false]", state="attached")
    tab_to(page, "name")
    page.keyboard.type("Gerda")
    page.keyboard.press("Enter")
    page.wait_for_selector("h2:has-text('Gerda')")
    page.keyboard.type("gerda")
    page.keyboard.press("Enter")
    page.wait_for_selector("#said:text-matches('already')")
    page.focus("button[aria-label='Another name for Gerda']")
    page.keyboard.press("Enter")
    page.keyboard.press("Control+a")
    page.keyboard.type("Hanno")
    page.keyboard.press("Enter")
    page.wait_for_selector("h2:has-text('Hanno')")
    page.focus("button[aria-label='Remove Hanno']")
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    page.wait_for_selector("h2:has-text('Hanno')", state="detached")
    assert "child" in page.inner_text(".privacy")
    assert page.faults == []
    page.context.close()


def test_progress_is_drawn_and_told(browser: Any, address: str, kept: str) -> None:
    take = told(address, f"/api/takes/{kept}")
    page = opened(browser, address, f"/students/{take['student_id']}")
    page.wait_for_selector("#charts[aria-busy=false] svg")
    labels = [chart.get_attribute("aria-label") for chart in page.query_selector_all("#charts svg")]
    facts = take["facts"]
    share = round(100 * facts["done"] / facts["asked"])
    assert labels[2] == f"Ornaments: {share} % in the latest of 1 take"
    assert f"{facts['done']} of {facts['asked']}" in page.inner_text("#takes")
    page.click("#takes a")
    page.wait_for_url(f"**/takes/{kept}")
    page.wait_for_selector(LINE)
    assert page.is_hidden("#keep")
    assert page.faults == []
    page.context.close()


# Accessibility


@pytest.mark.parametrize(("scheme", "width"), [("light", 360), ("dark", 1280)])
def test_no_screen_has_an_accessibility_fault(
    browser: Any, address: str, kept: str, march: int, tmp_path: Path, scheme: str, width: int
) -> None:
    options = {"viewport": {"width": width, "height": 760}, "color_scheme": scheme, "bypass_csp": True}
    page = opened(browser, address, f"/take/{march}", permissions=["microphone"], **options)
    page.wait_for_selector(LINE)
    assert_fine(page, width)
    if width < 900:
        page.click("#wishes-button")
        assert_fine(page, width)
    page.click("#delay-part summary")
    page.click("#try")
    page.wait_for_selector("#meter[data-state=good]")
    assert_fine(page, width)
    page.keyboard.press("Escape")
    words = tmp_path / "notes.txt"
    words.write_text("no sound")
    page.set_input_files("#file", str(words))
    page.wait_for_selector("#outcome.failed:not([hidden])")
    assert_fine(page, width)
    page.keyboard.press("?")
    assert_fine(page, width)
    student = told(address, f"/api/takes/{kept}")["student_id"]
    for path, ready in (
        (f"/takes/{kept}", LINE),
        ("/students", "#students[aria-busy=false]"),
        (f"/students/{student}", "#charts[aria-busy=false]"),
    ):
        page.goto(address + path)
        page.wait_for_selector(ready)
        assert_fine(page, width)
    assert page.faults == []
    page.context.close()


def assert_fine(page: Any, width: int) -> None:
    assert faults_of(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width
