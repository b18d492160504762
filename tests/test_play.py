"""The commands `play`, `backing` and `sounds`, and the practice versions behind them."""

from __future__ import annotations

import io
import json
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import mido
import numpy as np
import pretty_midi
import pytest
import soundfile

from fioritura.accompany.feels import FEELS
from fioritura.arrange.keys import key_named, twelve_keys
from fioritura.cli import main
from fioritura.errors import RangeError
from fioritura.lesson.practice import Practice, in_key, versions
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound.loudness import integrated_loudness
from fioritura.sound.midi_writer import write_midi
from fioritura.sound.session import played
from fioritura.theory.key import Key
from tests.charts import BLUES, chart
from tests.test_encode import frames_of

AIR = """X:1
T:Short Air
C:A. Composer
M:4/4
L:1/4
Q:1/4=140
K:Bb
F | "Bb"B2 d f | "Eb"g2 "F7"f e | "Gm"d B G2 | "Bb"B3 |]
"""


@pytest.fixture
def air(tmp_path: Path) -> Path:
    path = tmp_path / "air.abc"
    path.write_text(AIR, encoding="utf-8")
    return path


def run(capsys: pytest.CaptureFixture[str], *arguments: Any) -> tuple[int, str, str]:
    code = main([str(argument) for argument in arguments])
    out, err = capsys.readouterr()
    return code, out, err


def test_play_writes_a_tagged_mp3_and_says_so(air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "air.mp3"
    code, text, _ = run(capsys, "play", air, "--out", out)
    assert code == 0
    assert str(out) in text
    assert "volume low" in text
    tags = frames_of(out.read_bytes())
    assert tags == {
        "TIT2": "Short Air (ornamented), B♭ major, ♩ = 140",
        "TPE1": "A. Composer",
        "TKEY": "Bb",
        "TBPM": "140",
    }
    audio, rate = soundfile.read(out, dtype="float32")
    assert integrated_loudness(audio) == pytest.approx(-16.0, abs=0.5)
    assert 3 * 4 * 4 * 60 / 140 < len(audio) / rate < 27, "three choruses of four bars, count-in and ending"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["air.abc", "air.mp3"]


def test_play_writes_midi_with_named_tracks(air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "air.mid"
    code, text, _ = run(capsys, "play", air, "--out", out, "--mute", "drums", "--what", "plain", "--json")
    assert code == 0
    record = json.loads(text)
    assert record["parts"] == ["melody", "bass", "chords", "click"]
    assert [track.name for track in mido.MidiFile(out).tracks][1:] == ["Melody", "Bass", "Chords", "Click"]


def test_a_ladder_of_tempi_in_two_keys_is_one_file_for_each(
    air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    arguments = ("--tempo", "90,120,150", "--key", "C,G", "--bars", "1-2", "--times", "2")
    code, text, _ = run(capsys, "play", air, "--out", tmp_path / "loop.mid", "--json", *arguments)
    assert code == 0
    names = sorted(path.name for path in tmp_path.glob("*.mid"))
    assert names == sorted(f"loop-{key}-{tempo}.mid" for key in "CG" for tempo in (90, 120, 150))
    lengths = {v["quarters_per_minute"]: v["duration_sec"] for v in json.loads(text)["versions"]}
    assert lengths[90] == pytest.approx(5 * 4 * 60 / 90, abs=0.5), "a bar of count-in and two bars twice"
    assert lengths[90] / lengths[150] == pytest.approx(150 / 90, rel=0.05)


def test_stems_lie_beside_the_mix(air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "stems" / "air.wav"
    code, _, _ = run(capsys, "play", air, "--out", out, "--stems")
    assert code == 0
    names = {path.stem for path in out.parent.iterdir()}
    assert names == {"air", *(f"air-{part}" for part in ("melody", "bass", "chords", "drums", "click"))}
    read = {name: soundfile.read(out.with_stem(name), dtype="float32")[0] for name in names}
    mix = read.pop("air")
    assert np.abs(mix - sum(read.values())).max() < 0.02
    assert all(np.abs(stem).max() > 0.01 for stem in read.values())


def test_backing_writes_its_folder_without_a_melody(
    air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, text, _ = run(
        capsys, "backing", air, "--choruses", 4, "--feel", "swing", "--out", tmp_path / "band", "--json"
    )
    assert code == 0
    assert {path.name for path in (tmp_path / "band").iterdir()} == {"backing.mp3", "backing.mid"}
    record = json.loads(text)
    assert record["choruses"] == [f"chorus {n}" for n in (1, 2, 3, 4)]
    assert record["parts"] == ["bass", "chords", "drums", "click"]
    assert record["bars"] >= 1 + 4 * 4


def test_one_run_gives_every_loop_tempo_and_line_up_titled(
    air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    asked = ("--bars", "1-2,3-4", "--tempo", "90,120", "--minus", "bass,drums", "--formats", "mid", "--json")
    code, text, _ = run(capsys, "backing", air, *asked, "--out", tmp_path / "band")
    assert code == 0
    made = json.loads(text)["versions"]
    assert {path.name for path in (tmp_path / "band").iterdir()} == {
        f"backing-{bars}-{tempo}-without-{part}.mid"
        for bars in ("1-2", "3-4")
        for tempo in (90, 120)
        for part in ("bass", "drums")
    }
    assert made[0]["title"] == "Short Air (backing), B♭ major, ♩ = 90, bars 1–2, without bass"
    assert all({"bass", "drums"} - set(version["parts"]) for version in made)
    code, text, _ = run(capsys, "backing", air, "--just", "drums", "--click", "--out", tmp_path / "alone", "--json")
    assert code == 0
    assert json.loads(text)["parts"] == ["drums", "click"]
    assert frames_of((tmp_path / "alone" / "backing.mp3").read_bytes())["TIT2"].endswith("♩ = 140, drums")


def test_play_goes_by_a_plan_unless_told(air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    def record(*asked: str) -> Any:
        code, text, _ = run(capsys, "play", air, *asked, "--out", tmp_path / "air.mid", "--json")
        assert code == 0
        return json.loads(text)

    energies = record()["energies"]
    assert len(energies) == 3
    assert energies == sorted(energies)
    assert record("--choruses", "1")["choruses"] == ["head"]
    assert record("--what", "in-turn")["choruses"] == ["plain", "ornamented"]
    assert record("--curve", "0.2,1.4", "--solos", "1")["choruses"] == ["chorus 1", "solo 1", "chorus 2"]
    assert record("--opening", "intro")["bars"] == record()["bars"] + 4


def test_sounds_names_font_licence_and_remedy(capsys: pytest.CaptureFixture[str]) -> None:
    code, text, _ = run(capsys, "sounds")
    assert code == 0
    for word in ("Soundfont", "Licence", "FIORITURA_SOUNDFONT", ".sf2", "FluidR3"):
        assert word in text
    code, text, _ = run(capsys, "sounds", "--json")
    assert set(json.loads(text)["soundfont"]) == {"path", "name", "licence", "origin"}


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--feel", "polka"), "swing, shuffle"),
        (("--feel", "waltz"), "is not played in 4/4"),
        (("--tempo", "fast"), "give numbers"),
        (("--tempo", "5"), "20 to 400"),
        (("--key", "H"), "note name"),
        (("--key", "Fb"), "7 is the limit"),
        (("--bars", "9-12"), "has 0 to 4"),
        (("--bars", "4-2"), "5-8"),
        (("--times", "0"), "1 to 200"),
        (("--choruses", "0"), "1 to 200"),
        (("--solos", "-1"), "0 to 200"),
        (("--curve", "loud"), "give numbers"),
        (("--curve", "0.3,2.5"), "0 to 2"),
        (("--curve", "0.3,1.5", "--choruses", "3"), "one density for each chorus"),
        (("--mute", "bass", "--just", "drums"), "contradict"),
        (("--mute", "tuba"), "no part “tuba”"),
        (("--mute", "melody,bass,chords,drums,click"), "at least one"),
        (("--out", "x.ogg"), ".mp3, .wav, .flac or .mid"),
        (("--soundfont", "nowhere.sf2"), "can't be read"),
        (("--player", "kazoo"), "kazoo"),
    ],
)
def test_bad_requests_are_refused_in_one_line_and_leave_nothing(
    arguments: tuple[str, ...], words: str, air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = () if "--out" in arguments else ("--out", tmp_path / "air.mp3")
    code, text, err = run(capsys, "play", air, *out, *arguments)
    assert code == 2
    assert not text
    assert words in err
    assert len(err.strip().splitlines()) == 1
    assert [path.name for path in tmp_path.iterdir()] == ["air.abc"]


def practice(**changes: Any) -> Practice:
    tune = chart(BLUES, key="F major", melody="F4 A4 C5 A4 Eb5 C5 A4 F4")
    options: dict[str, Any] = {"tune": tune, "line": tune.notes[::2], "instrument": INSTRUMENTS["alto-sax"]}
    return Practice(**{**options, "feel": FEELS["swing"], **changes})


def test_twelve_keys_are_all_pitch_classes_along_the_fourths() -> None:
    for mode in ("major", "minor", "dorian"):
        keys = twelve_keys(Key.of("G", mode))
        assert keys[0].tonic.pitch_class == 7
        assert {key.tonic.pitch_class for key in keys} == set(range(12))
        assert all((b.tonic.pitch_class - a.tonic.pitch_class) % 12 == 5 for a, b in pairwise(keys))
        assert all(abs(key.fifths) <= 6 for key in keys)


@pytest.mark.parametrize("instrument", ["alto-sax", "tenor-sax", "flute", "clarinet"])
def test_every_key_keeps_the_line_on_the_instrument_and_its_intervals(instrument: str) -> None:
    made = practice()
    for key in twelve_keys(made.tune.key):
        tune, line = in_key(made.tune, made.line, key, INSTRUMENTS[instrument])
        assert tune.key.tonic.pitch_class == key.tonic.pitch_class
        assert all(INSTRUMENTS[instrument].reaches(note.pitch) for note in (*tune.notes, *line))
        moves = {a.pitch.midi - b.pitch.midi for a, b in zip(line, made.line, strict=True)}
        assert len(moves) == 1
        assert abs(moves.pop()) <= 12


def test_a_line_too_wide_for_a_key_is_refused() -> None:
    tune = chart("F7", key="F major", melody="Db3 C6")
    with pytest.raises(RangeError, match="choose another key"):
        in_key(tune, tune.notes, key_named("C", tune.key), INSTRUMENTS["alto-sax"])


def test_in_turn_plays_plain_then_ornamented() -> None:
    (version,) = versions(practice(what="in-turn", times=2))
    names = [chorus.name for chorus in version.session.choruses]
    assert names == ["plain", "ornamented"] * 2
    plain, ornamented = version.session.choruses[:2]
    assert plain.line != ornamented.line


def test_a_loop_starts_with_one_bar_of_count_in_and_stops_on_the_bar_line() -> None:
    (version,) = versions(practice(loops=((3, 6),), times=3, quarters_per_minute=(120.0,)))
    performance = played(version.session)
    assert performance.duration_sec == pytest.approx((1 + 3 * 4) * 2.0, abs=0.2)
    clicks = next(part for part in performance.parts if part.name == "Click")
    assert len(clicks.notes) == 4
    melody = next(part for part in performance.parts if part.name == "Melody")
    assert melody.notes[0].onset_sec == pytest.approx(2.0, abs=0.1)


def test_tempo_is_changed_by_performing_anew_not_by_stretching() -> None:
    slow, fast = (
        played(version.session) for version in versions(practice(quarters_per_minute=(100.0, 240.0), exact=True))
    )
    melody = [next(part.notes for part in made.parts if part.name == "Melody") for made in (slow, fast)]
    ride = [next(part.notes for part in made.parts if part.name == "Drums") for made in (slow, fast)]
    assert len(melody[0]) == len(melody[1])
    swung = [[n.onset_sec for n in notes if n.midi == 51][:40] for notes in ride]
    stretched = [onset * 100 / 240 for onset in swung[0]]
    assert max(abs(a - b) for a, b in zip(stretched, swung[1], strict=True)) > 0.02, (
        "the swing ratio follows the tempo"
    )


def test_parts_of_a_session_start_and_end_together() -> None:
    for feel in ("swing", "bossa", "ballad", "funk"):
        (version,) = versions(practice(feel=FEELS[feel], solos=1))
        performance = played(version.session)
        ends = {part.name: part.end_sec for part in performance.parts if part.name not in {"Click", "Melody"}}
        assert max(ends.values()) - min(ends.values()) < 0.5
        assert performance.duration_sec == pytest.approx(max(ends.values()), abs=0.5)


def test_without_a_band_only_melody_and_count_in_are_left() -> None:
    (version,) = versions(practice(has_band=False, exact=True, feel=FEELS["soul"]))
    performance = played(version.session)
    assert [part.name for part in performance.parts] == ["Melody", "Click"]
    read = pretty_midi.PrettyMIDI(io.BytesIO(write_midi(performance)))
    count_in = 4 * 60 / 140
    first = min(note.start for made in read.instruments if made.name == "Melody" for note in made.notes)
    assert first == pytest.approx(count_in, abs=0.002)


def test_a_session_of_one_seed_is_always_the_same() -> None:
    (version,) = versions(practice(seed=3))
    assert write_midi(played(version.session)) == write_midi(played(version.session))
    other = replace(version.session, seed=4)
    assert write_midi(played(version.session)) != write_midi(played(other))
