"""Keys and octaves: a tune too high is set where it fits; any key; the key that suits a player, or a class, best."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fioritura.arrange.keys import best_key, in_key, key_named, keyed
from fioritura.arrange.prepare import nearest_octave, prepared
from fioritura.cli import main
from fioritura.errors import OptionError, RangeError, TuneError
from fioritura.notation.abc.reader import read_abc
from fioritura.notation.read import read_tune
from fioritura.players.instruments import INSTRUMENTS
from fioritura.techniques.inflection import FALL
from fioritura.theory.key import Key
from fioritura.tune import Tune
from fioritura.words import say

HEAD = "X:1\nT:Test\nM:4/4\nL:1/4\n"


def tune_in(key: str, music: str) -> Tune:
    return read_abc(f"{HEAD}K:{key}\n{music}\n")[0]


HIGH = tune_in("C", '"C"cdef|"G7"gabc\'|"C"d\'4|')
"""For the trumpet, whose highest note sounds C6, one tone too high."""


def test_a_tune_one_note_too_high_is_set_in_the_octave_that_fits_and_that_is_said() -> None:
    trumpet = INSTRUMENTS["trumpet"]
    tune = prepared(HIGH, trumpet)
    assert str(tune.notes[0].pitch) == "C4"
    assert [say(warning) for warning in tune.warnings] == [
        "D6 in bar 3, beat 1 would lie outside the trumpet: the tune is played an octave lower."
    ]
    assert nearest_octave(HIGH, trumpet) == -1


def test_an_octave_that_is_asked_for_is_not_changed() -> None:
    with pytest.raises(RangeError, match="D6 in bar 3, beat 1"):
        prepared(HIGH, INSTRUMENTS["trumpet"], octave=0)


def test_only_where_no_octave_fits_is_a_tune_refused() -> None:
    wide = tune_in("C", "C,,c'''|z4|")
    with pytest.raises(RangeError, match="no octave holds all of it on the trumpet"):
        prepared(wide, INSTRUMENTS["trumpet"])


@pytest.mark.parametrize("command", ["ornament", "spots", "play", "backing", "lesson", "batch"])
def test_every_command_sets_it_in_the_octave_that_fits(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "high.abc").write_text(HEAD + 'K:C\n"C"cdef|"G7"gabc\'|"C"d\'4|\n', encoding="utf-8")
    more = {
        "ornament": ["--out", str(tmp_path / "out"), "--formats", "abc"],
        "play": ["--out", str(tmp_path / "out.mid")],
        "backing": ["--out", str(tmp_path / "out"), "--formats", "mid"],
        "lesson": ["--out", str(tmp_path / "out"), "--sections", "overlays"],
        "batch": ["--out", str(tmp_path / "out"), "--formats", "abc"],
    }
    player = [] if command == "backing" else ["--player", "trumpet"]
    assert main([command, str(tmp_path / "high.abc"), *player, *more.get(command, [])]) == 0
    if command in {"ornament", "spots", "play", "lesson"}:
        assert "the tune is played an octave lower." in capsys.readouterr().err


@pytest.mark.parametrize(
    ("name", "like", "key"),
    [
        ("Bb", "C major", "Bb major"),
        ("bb", "C major", "Bb major"),
        ("F#", "A minor", "F# minor"),
        ("Dm", "A minor", "D minor"),
        ("D minor", "A minor", "D minor"),
        ("E♭ major", "C major", "Eb major"),
        ("G dorian", "D dorian", "G dorian"),
    ],
)
def test_names_of_keys(name: str, like: str, key: str) -> None:
    assert str(key_named(name, Key.of(*like.split()))) == key


def test_keys_that_there_are_not() -> None:
    with pytest.raises(OptionError, match="of another mode than the tune"):
        key_named("Dm", Key.of("C"))
    with pytest.raises(OptionError, match="is no key"):
        key_named("D loud", Key.of("C"))
    with pytest.raises(TuneError):
        key_named("H", Key.of("C"))


def test_a_key_moves_notes_graces_chords_and_signatures_the_shortest_way() -> None:
    tune = tune_in("F", '"F"{e}f"Gm7"g"C7/E"c2|[K:Bb]"Bb"B4|')
    moved = prepared(tune, INSTRUMENTS["concert"], key="D")
    assert [str(note.pitch) for note in moved.notes] == ["D5", "E5", "A4", "G4"]
    assert str(moved.notes[0].graces[0]) == "C#5"
    assert [span.text for span in moved.chords] == ["D", "Em7", "A7/C#", "G"]
    assert [str(bar.key) for bar in moved.bars] == ["D major", "G major"]
    up = in_key(tune, Key.of("Bb"))
    assert str(up.notes[0].pitch) == "Bb5"


def test_chords_given_for_the_tune_go_with_it() -> None:
    tune = prepared(tune_in("C", "cdef|g4|"), INSTRUMENTS["concert"], key="G", chords="C | G7")
    assert [span.text for span in tune.chords] == ["G", "D7"]


def test_the_best_key_of_one_instrument_has_no_signs_where_the_range_allows() -> None:
    tune = tune_in("E", '"E"EFGA|Bcde|"E"e4|')
    assert best_key(tune, [INSTRUMENTS["trumpet"]]).transposed(INSTRUMENTS["trumpet"].transposition).fifths in (
        0,
        1,
        -1,
    )
    moved = keyed(tune, "best", [INSTRUMENTS["alto-sax"]])
    assert abs(moved.key.transposed(INSTRUMENTS["alto-sax"].transposition).fifths) <= 1
    said = say(moved.warnings[-1])
    assert "suits best, written in" in said and "alto saxophone" in said


def test_the_best_key_of_a_class_is_the_least_sum() -> None:
    tune = tune_in("E", '"E"EFGA|Bcde|"E"e4|')
    players = [INSTRUMENTS[id] for id in ("flute", "trumpet", "clarinet", "alto-sax")]
    signs = {
        key: sum(abs(Key.of(key).transposed(each.transposition).fifths) for each in players)
        for key in ("C", "F", "Bb", "Eb", "G", "D", "A", "E")
    }
    found = best_key(tune, players)
    assert signs[str(found.tonic)] == min(signs.values())


@pytest.mark.parametrize(("ending", "key"), [("musicxml", "G major"), ("abc", "G major")])
def test_a_key_on_the_command_line_is_what_is_written(ending: str, key: str, tmp_path: Path) -> None:
    (tmp_path / "tune.abc").write_text(HEAD + 'K:C\n"C"CDEF|"G7"GAB2|"C"c4|\n', encoding="utf-8")
    argv = ["ornament", str(tmp_path / "tune.abc"), "--player", "concert", "--key", "G", "--only", FALL.id]
    assert main([*argv, "--formats", ending, "--out", str(tmp_path / "out"), "--concert"]) == 0
    name = "plain.musicxml" if ending == "musicxml" else "ornamented.abc"
    written = read_tune(tmp_path / "out" / name)
    assert str(written.key) == key
    assert str(written.notes[0].pitch) == "G3"
    assert [span.text for span in written.chords] == ["G", "D7", "G"]


def test_the_key_of_a_batch_and_of_a_lesson(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "tune.abc").write_text(HEAD + 'K:E\n"E"EFGA|"B7"Bcd2|"E"e4|\n', encoding="utf-8")
    source = str(tmp_path / "tune.abc")
    assert (
        main(
            [
                "batch",
                source,
                "--key",
                "best",
                "--player",
                "trumpet",
                "--formats",
                "abc",
                "--out",
                str(tmp_path / "b"),
            ]
        )
        == 0
    )
    (made,) = (tmp_path / "b").rglob("*.abc")
    assert abs(read_tune(made).key.transposed(INSTRUMENTS["trumpet"].transposition).fifths) <= 1
    capsys.readouterr()
    argv = ["lesson", source, "--key", "best", "--players", "flute,alto-sax", "--sections", "overlays", "--json"]
    assert main([*argv, "--out", str(tmp_path / "l")]) == 0
    manifest = json.loads(capsys.readouterr().out)
    assert any("suits best" in warning for warning in manifest["warnings"])
