"""Which idiom a tune asks for. Fields as the ABC standard has them (2.1, sections 3.1.7 and 3.1.13); the form of a blues:
common practice."""

import pytest

from fioritura.notation.abc.reader import read_abc
from fioritura.notation.style_words import dance_in
from fioritura.players.idiom import dance_of, idiom_of
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.setting import Setting
from fioritura.theory.pitch import Pitch
from fioritura.tune import Tune


def tune(fields: str, music: str = "D12|") -> Tune:
    text = f"X:1\n{fields}L:1/8\nK:D\n{music}\n"
    return read_abc(text, irregular="keep")[0]


@pytest.mark.parametrize(
    ("fields", "idiom"),
    [
        ("R:reel\nM:4/4\n", "irish"),
        ("R:Slip Jig\nM:9/8\n", "irish"),
        ("R:reel\nO:Scotland\nM:4/4\n", "jazz"),
        ("R:march\nO:Ireland; Kerry\nM:4/4\n", "irish"),
        ("R:waltz\nM:3/4\n", "jazz"),
        ("M:4/4\nT:Kitchen Blues\n", "blues"),
        ("M:4/4\n", "jazz"),
    ],
)
def test_the_file_says_the_idiom(fields: str, idiom: str) -> None:
    found = tune(fields)
    assert idiom_of(found) == Setting().on(found).idiom == idiom
    assert Setting(idiom="folk").on(found).idiom == "folk"


def test_twelve_bars_of_blues_are_known_by_their_chords() -> None:
    def bars(chords: str) -> str:
        return "".join(f'"{chord}"D8|' for chord in chords.split())

    assert idiom_of(tune("M:4/4\n", bars("D7 D7 D7 D7 G7 G7 D7 D7 A7 G7 D7 A7"))) == "blues"
    assert idiom_of(tune("M:4/4\n", bars("D7 G7 D7 D7 G7 G7 D7 B7 Em7 A7 D7 A7"))) == "blues"
    assert idiom_of(tune("M:4/4\n", bars("D D A A D D A A D G A D"))) == "jazz"


def test_a_dance_is_what_the_file_says_or_its_metre() -> None:
    assert [dance_of(tune(f"M:{metre}\n")) for metre in ("6/8", "9/8", "4/4", "2/4", "3/4")] == [
        *("jig", "slip-jig", "reel", "polka", "waltz")
    ]
    assert dance_of(tune("R:hornpipe\nM:4/4\n")) == "hornpipe"
    assert dance_in([], "The Trip to Sligo Jig") == "jig"


def test_a_tin_whistle_sounds_an_octave_above_what_it_reads() -> None:  # common practice
    whistle = INSTRUMENTS["tin-whistle"]
    assert str(whistle.sounding(Pitch.parse("D4"))) == "D5"
    assert str(whistle.written(Pitch.parse("B6"))) == "B5"
