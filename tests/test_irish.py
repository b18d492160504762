"""Irish dance music. Outside checks: signs and strokes as common practice has them (ABC 2.1, section 4.14: ``~`` is an Irish
roll), rates of O'Neill's and Ryan's books in music21's corpus."""

from itertools import pairwise

import pytest

from fioritura.arrange.arranger import ornament
from fioritura.arrange.find import find_figures
from fioritura.arrange.rendition import Rendition, laid_out
from fioritura.arrange.survey import survey
from fioritura.listening.name import name_line
from fioritura.notation.abc.reader import read_abc
from fioritura.notation.abc.writer import write_abc
from fioritura.notation.score import Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.setting import Setting
from fioritura.sound.ornaments import realised
from fioritura.techniques.context import contexts
from fioritura.techniques.figure import Figure
from fioritura.techniques.irish import CRAN, CUT, LONG_ROLL, SHORT_ROLL, STRIKE, TREBLE, TRIPLET
from fioritura.techniques.technique import Technique
from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark, Tune


def dance(music: str, rhythm: str = "jig", metre: str = "6/8", key: str = "G", tempo: str = "3/8=112") -> Tune:
    return read_abc(f"X:1\nT:Made by hand\nR:{rhythm}\nM:{metre}\nL:1/8\nQ:{tempo}\nK:{key}\n{music}\n")[0]


def reel(music: str) -> Tune:
    return dance(music, "reel", "4/4", "D", "1/2=88")


def figures(tune: Tune, technique: Technique, player: str = "irish-flute") -> list[Figure]:
    return [figure for _, figure in find_figures(contexts(tune, Setting(player, level=5).on(tune)), [technique])]


def test_a_cut_is_written_above_and_a_strike_below() -> None:
    tune = dance("BAG GAB|c3 A3|")
    cut = next(one for one in figures(tune, CUT) if one.anchors == (3,))
    strike = next(one for one in figures(tune, STRIKE) if one.anchors == (3,))
    assert ([str(p) for p in cut.graces], [str(p) for p in strike.graces]) == (["A4"], ["F#4"])


def test_a_roll_has_a_finger_to_strike_with_and_a_cran_has_none() -> None:
    """On the six-hole flute all fingers are down on D; a saxophone has keys below it."""
    tune = dance("D3 G3|A3 B3|")
    assert [one.anchors for one in figures(tune, LONG_ROLL)] == [(1,), (2,), (3,)]
    assert [one.anchors for one in figures(tune, CRAN)] == [(0,)]
    assert len(figures(tune, LONG_ROLL, "alto-sax")) == 4
    assert figures(tune, LONG_ROLL, "trumpet") == []


def test_a_roll_stands_for_what_circles_a_note_or_says_it_again() -> None:
    tune = dance("GFG A2A|B2d c3|")
    found = {one.anchors: laid_out(tune, [one])[one.anchors[0]] for one in figures(tune, LONG_ROLL)}
    assert set(found) == {(0, 1, 2), (3, 4), (7,)}
    assert all(note.duration_ticks == 2520 and Mark.ROLL in note.marks for note in found.values())


@pytest.mark.parametrize(
    ("mark", "seconds", "strokes"),
    [
        (Mark.ROLL, 0.54, ["G4", "A4", "G4", "F#4", "G4"]),
        (Mark.ROLL, 0.36, ["A4", "G4", "F#4", "G4"]),
        (Mark.CRAN, 0.54, ["G4", "B4", "G4", "A4", "G4"]),
    ],
)
def test_rolls_and_crans_sound_as_fingers_make_them(mark: Mark, seconds: float, strokes: list[str]) -> None:
    """Common practice: long roll note, cut, strike; short roll cut, strike; cran cuts of two fingers."""
    pieces = realised(Pitch.parse("G4"), [mark], Key.of("G"), seconds)
    assert [piece.midi for piece in pieces] == [Pitch.parse(name).midi for name in strokes]
    assert sum(piece.duration_sec for piece in pieces) == pytest.approx(seconds)
    assert all(a.after_sec + a.duration_sec == pytest.approx(b.after_sec) for a, b in pairwise(pieces))


def test_a_triplet_fills_a_third_in_reels_and_never_in_jigs() -> None:
    tune = reel("Bd ef g2 fd|e8|")
    third = next(one for one in figures(tune, TRIPLET) if one.anchors == (0, 1))
    assert [str(note.pitch) for note in third.notes] == ["B4", "C#5", "D5"]
    assert {note.duration_ticks for note in third.notes} == {560}
    assert figures(dance("Bdf edB|G3 G3|"), TRIPLET) == []


def test_irish_ornaments_are_offered_to_nobody_else() -> None:
    tune = reel("~A2AB AFED|B2BA BcdB|A2AB AFED|gfed B4|")
    own = {CUT.id, STRIKE.id, SHORT_ROLL.id, LONG_ROLL.id, CRAN.id, TRIPLET.id, TREBLE.id}
    for idiom in ("jazz", "blues", "folk"):
        assert not own & {one.technique for one in survey(tune, Setting("flute", level=5, idiom=idiom)).candidates}
    assert own & {one.technique for one in survey(tune, Setting("flute", level=5)).candidates}


def test_the_sign_is_written_and_named() -> None:
    tune = reel("A2AB AFED|B2BA BcdB|G3B d4|")
    roll = next(one for one in figures(tune, LONG_ROLL) if one.anchors == (0, 1))
    line = laid_out(tune, [roll])
    text = write_abc(Score(tune, (Staff(line, instrument=INSTRUMENTS["irish-flute"]),), is_concert=True))
    assert "~A3" in text
    assert "R:reel" in text
    (named,) = name_line(tune, line).figures
    assert (named.technique, named.anchors) == (LONG_ROLL.id, (0, 1))


def test_levels_decide_how_much() -> None:
    tune = reel("A2AB AFED|B2BA BcdB|A2AB AFED|gfed BcdB|A2AB AFED|B2BA BcdB|A2AB AFED|gfed B4|")
    counts = [len(rendition(tune, level).figures) for level in (1, 3, 5)]
    assert counts == sorted(counts)
    assert counts[0] < counts[-1]
    assert {one.technique for one in rendition(tune, 1).figures} <= {CUT.id}


def rendition(tune: Tune, level: int) -> Rendition:
    return ornament(tune, Setting("irish-flute", level=level).on(tune))


@pytest.mark.slow
def test_styles_are_those_of_people() -> None:
    """Every bar of `benchmarks/taste_styles.py`, on half as many tunes for a guard."""
    from benchmarks import taste_styles

    assert [str(row) for row in taste_styles.style_rows() if not row.holds] == []
