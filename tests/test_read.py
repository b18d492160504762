"""The one door: what a file is, every class of bad input, and random rubbish that never gets more than an error.

XML attacks and their names (entity bomb, external entity, zip bomb, zip slip) after OWASP's XML External Entity and
zip testing pages, from memory.
"""

from __future__ import annotations

import io
import random
import zipfile
import zlib
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fioritura.errors import FiorituraError, OptionError, ReadError, TuneError
from fioritura.notation.read import format_of, read_tune, read_tunes
from fioritura.words import say

from .musicxml_text import DATA, attributes, notes, score

LEAD = (DATA / "lantern_lane.musicxml").read_bytes()
BOOK = "X:1\nT:First\nK:C\nCDEF|\n\nX:7\nT:The Second\nK:G\nGABc|\n\nX:9\nT:Third\nK:D\nM:4/4\nL:1/4\nDEFG|\n"


def packed(members: dict[str, bytes], method: int = zipfile.ZIP_DEFLATED) -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", method) as archive:
        for name, data in members.items():
            archive.writestr(name, data)
    return buffer.getvalue()


def container(name: str) -> bytes:
    return f'<container><rootfiles><rootfile full-path="{name}"/></rootfiles></container>'.encode()


def written(tmp_path: Path, name: str, data: bytes) -> Path:
    path = tmp_path / name
    path.write_bytes(data)
    return path


def test_a_compressed_score_reads_like_a_plain_one(tmp_path: Path) -> None:
    mxl = packed({"META-INF/container.xml": container("deep/score.xml"), "deep/score.xml": LEAD, "a.xml": b"<x/>"})
    assert read_tune(written(tmp_path, "tune.mxl", mxl)) == read_tune(DATA / "lantern_lane.musicxml")


def test_a_compressed_score_without_container_is_found(tmp_path: Path) -> None:
    assert read_tune(written(tmp_path, "t.mxl", packed({"score.xml": LEAD}))).title == "Lantern Lane"


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16"])
def test_other_encodings_of_xml(tmp_path: Path, encoding: str) -> None:
    text = LEAD.decode().replace('encoding="UTF-8"', "").replace("Lantern", "Lantérn")
    assert read_tune(written(tmp_path, "t.xml", text.encode(encoding))).title == "Lantérn Lane"


@pytest.mark.parametrize("suffix", [".mid", ".abc", ".mxl"])
def test_the_content_decides_and_a_wrong_name_is_said(tmp_path: Path, suffix: str) -> None:
    tune = read_tune(written(tmp_path, "tune" + suffix, LEAD))
    assert tune.title == "Lantern Lane"
    assert say(tune.warnings[0]) == f"the file's name ends in {suffix}, but it holds MusicXML and was read as that"


def test_a_tune_without_title_gets_the_files_name(tmp_path: Path) -> None:
    data = score(attributes() + notes("C4 D4 E4 F4"))
    assert read_tune(written(tmp_path, "my_tune.musicxml", data)).title == "my tune"


def test_books_give_tunes_by_number_title_and_one_after_the_other(tmp_path: Path) -> None:
    book = written(tmp_path, "book.abc", BOOK.encode())
    assert [tune.title for tune in read_tunes(book, irregular="keep")] == ["First", "The Second", "Third"]
    assert read_tune(book, tune_number=7, irregular="keep").title == "The Second"
    assert read_tune(book, tune_number=3, irregular="keep").title == "Third"  # no X:3, so the third
    assert read_tune(book, title="second", irregular="keep").title == "The Second"
    first = read_tune(book, irregular="keep")
    assert first.title == "First" and "holds 3 tunes; the first was read" in say(first.warnings[0])
    with pytest.raises(OptionError, match="no tune number 12 here; there are: 1 First, 7 The Second"):
        read_tune(book, tune_number=12)
    with pytest.raises(OptionError, match="No tune here has the title “Fourth”; there are: 1 First"):
        read_tune(book, title="Fourth")
    with pytest.raises(OptionError, match="holds one tune only"):
        read_tune(DATA / "lantern_lane.musicxml", tune_number=2)


BOMB = b"""<?xml version="1.0"?><!DOCTYPE b [<!ENTITY a "ha">
<!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;"><!ENTITY d "&c;&c;&c;&c;&c;&c;&c;&c;">]>
<score-partwise><movement-title>&d;</movement-title></score-partwise>"""
EXTERNAL = b"""<?xml version="1.0"?><!DOCTYPE s [<!ENTITY x SYSTEM "file:///etc/hostname">]>
<score-partwise><movement-title>&x;</movement-title></score-partwise>"""

REFUSED = {
    "empty.xml": (b"", "is empty"),
    "rubbish.mid": (bytes(range(256)) * 4, "binary data"),
    "nul.abc": (b"X:1\nK:C\n\x00\x01", "binary data"),
    "text.txt": (b"just a few words", "text, but not ABC"),
    "page.xml": (b"<!DOCTYPE html><html></html>", "web page"),
    "paper.pdf": (b"%PDF-1.7 ...", "a PDF"),
    "sound.wav": (b"RIFF\x00\x00\x00\x00WAVEfmt ", "a sound file"),
    "cut.musicxml": (LEAD[: len(LEAD) // 2], r"breaks off or is damaged at line \d+"),
    "tags.xml": (b"<score-partwise><part></score-partwise>", "damaged at line 1"),
    "other.xml": (b"<svg/>", "first element is <svg>"),
    "bomb.xml": (BOMB, "entities"),
    "external.xml": (EXTERNAL, "entities"),
    "deep.xml": (b"<a>" * 100_000, "damaged"),
    "cut.mxl": (packed({"s.xml": LEAD})[:200], "compressed file is damaged"),
    "empty.mxl": (packed({}), "binary data|no score"),
    "noscore.mxl": (packed({"a.txt": b"x"}), "holds no score"),
    "lost.mxl": (packed({"META-INF/container.xml": container("gone.xml"), "s.xml": LEAD}), "names no score"),
    "slip.mxl": (packed({"../../evil.xml": LEAD}), "unsafe name"),
    "rooted.mxl": (packed({"/etc/evil.xml": LEAD}), "unsafe name"),
    "many.mxl": (packed({f"{i}.xml": b"" for i in range(501)}), "holds 501 files"),
    "zip_bomb.mxl": (packed({"s.xml": b"0" * 20_000_000}), "would unpack from"),
    "bzip.mxl": (packed({"s.xml": LEAD}, zipfile.ZIP_BZIP2), "packed in a way"),
    "cut.mid": (b"MThd\x00\x00\x00\x06\x00\x01\x00\x01\x01\xe0MTrk\x00\x00\x00\x20\x00\x90", "breaks off"),
    "gzip.xml": (zlib.compress(b"x", wbits=31), "gzip archive"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_bad_files_are_refused_by_name_with_a_reason(tmp_path: Path, name: str) -> None:
    data, message = REFUSED[name]
    with pytest.raises(ReadError, match=message) as caught:
        read_tune(written(tmp_path, name, data))
    assert name in str(caught.value)


def test_missing_files_and_folders(tmp_path: Path) -> None:
    with pytest.raises(ReadError, match="does not exist"):
        read_tune(tmp_path / "gone.xml")
    with pytest.raises(ReadError, match="is a folder"):
        read_tune(tmp_path)


def test_a_member_that_lies_about_its_size_is_still_bounded(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("fioritura.notation.musicxml.file.MAX_XML_BYTES", 1000)
    data = bytearray(packed({"s.xml": LEAD}))
    for size_place in (22, data.rfind(b"PK\x01\x02") + 24):  # uncompressed size: local header, central directory
        data[size_place : size_place + 4] = (500).to_bytes(4, "little")
    with pytest.raises(ReadError):
        read_tune(written(tmp_path, "liar.mxl", bytes(data)))


def test_too_many_elements_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("fioritura.notation.musicxml.file.MAX_ELEMENTS", 100)
    with pytest.raises(ReadError, match="more than 100 elements"):
        read_tune(written(tmp_path, "t.xml", LEAD))


def test_errors_about_music_name_the_file_too(tmp_path: Path) -> None:
    path = written(tmp_path, "odd.xml", score(attributes() + notes("C4 D4 E4 F4"), notes("C4"), notes("C4:16")))
    with pytest.raises(TuneError, match=r"^odd\.xml: bar 2 holds 1 quarter note where 4/4 has 4"):
        read_tune(path)
    assert len(read_tune(path, irregular="keep").bars) == 3


def test_a_midi_file_inside_riff_is_unwrapped() -> None:
    assert format_of(b"RIFF\x00\x00\x00\x00RMIDdata\x00\x00\x00\x00MThd...") == ("MIDI", b"MThd...")


def only_deliberate_errors(path: Path) -> None:
    try:
        read_tune(path)
    except FiorituraError as error:
        assert str(error)


FUZZ = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@FUZZ
@given(
    data=st.binary(min_size=1, max_size=400), head=st.sampled_from([b"", b"<", b"MThd", b"PK\x03\x04", b"X:1\nK:C\n"])
)
def test_random_bytes_give_nothing_but_deliberate_errors(tmp_path: Path, data: bytes, head: bytes) -> None:
    only_deliberate_errors(written(tmp_path, "fuzz", head + data))


@FUZZ
@given(seed=st.integers(0, 2**32))
def test_mutated_scores_give_nothing_but_deliberate_errors(tmp_path: Path, seed: int) -> None:
    dice = random.Random(seed)
    only_deliberate_errors(written(tmp_path, "fuzz.xml", mutated(LEAD, dice)))


@FUZZ
@given(seed=st.integers(0, 2**32))
def test_shuffled_elements_give_nothing_but_deliberate_errors(tmp_path: Path, seed: int) -> None:
    """Well-formed XML with texts, attributes and tags that stand where they should not."""
    dice = random.Random(seed)
    text = LEAD.decode()
    for _ in range(dice.randint(1, 6)):
        lines = text.split("\n")
        first, second = dice.randrange(4, len(lines)), dice.randrange(4, len(lines))
        if dice.random() < 0.5:
            lines[first] = lines[second]
        text = "\n".join(lines)
        old = dice.choice(
            ["<duration>6<", "<octave>4<", "<alter>", "quarter", "<divisions>12<", "major", "<beats>4<", "yes"]
        )
        new = dice.choice(
            ["<duration>-1<", "<octave>99<", "<alter>x", "0", "<divisions>0.3<", "", "<beats>77<", "\u2460"]
        )
        text = text.replace(old, new, dice.randint(0, 3))
    only_deliberate_errors(written(tmp_path, "fuzz.xml", text.encode()))


@FUZZ
@given(seed=st.integers(0, 2**32))
def test_mutated_archives_give_nothing_but_deliberate_errors(tmp_path: Path, seed: int) -> None:
    mxl = packed({"META-INF/container.xml": container("s.xml"), "s.xml": LEAD})
    only_deliberate_errors(written(tmp_path, "fuzz.mxl", mutated(mxl, random.Random(seed))))


def mutated(data: bytes, dice: random.Random) -> bytes:
    changed = bytearray(data)
    for _ in range(dice.randint(1, 12)):
        place = dice.randrange(len(changed))
        match dice.randrange(3):
            case 0:
                changed[place] = dice.randrange(256)
            case 1:
                del changed[place : place + dice.randrange(1, 40)]
            case _:
                changed[place:place] = changed[dice.randrange(len(changed)) :][: dice.randrange(1, 40)]
    return bytes(changed)
