"""The ABC reader against the abc music standard 2.1 (December 2011, abcnotation.com) and music21.

Section numbers are the standard's; its own examples are the cases wherever it has some. "Custom" marks what old books
do beyond it (common practice).
"""

import html
import random
import time
from collections import Counter
from fractions import Fraction

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from fioritura.errors import FiorituraError, OptionError, ReadError, TuneError
from fioritura.notation.abc.faults import UnreadableError
from fioritura.notation.abc.fields import part_order, read_key, read_metre, read_tempo, text_string
from fioritura.notation.abc.lyrics import syllables
from fioritura.notation.abc.reader import AbcEntry, AbcError, iter_abc, list_abc, read_abc
from fioritura.notation.assemble import Irregular
from fioritura.notation.line import Line
from fioritura.theory.key import Key, Mode
from fioritura.theory.metre import QUARTER, Metre
from fioritura.tune import Jump, Mark, Tune
from fioritura.unfold import playing_order
from fioritura.words import say

from .abc_reference import corpus_entries, disagreement

HEADER = "X:1\nT:Test\nM:4/4\nL:1/8\nK:C\n"


def read(music: str, header: str = HEADER, irregular: Irregular = "keep") -> Tune:
    (tune,) = read_abc(header + music, irregular=irregular)
    return tune


def pitches(music: str, header: str = HEADER) -> str:
    return " ".join(str(note.pitch) for note in read(music, header).notes)


def lengths(music: str, header: str = HEADER) -> list[Fraction]:
    """Note lengths in quarters."""
    return [Fraction(note.duration_ticks, QUARTER) for note in read(music, header).notes]


def sounds(music: str, header: str = HEADER) -> list[tuple[int, int, str]]:
    return [(note.onset_ticks, note.duration_ticks, str(note.pitch)) for note in read(music, header).notes]


def marks(music: str) -> list[tuple[Mark, ...]]:
    return [note.marks for note in read(music).notes]


# --- Pitch, accidentals, lengths (4.1 to 4.5) ------------------------------------------------------------------------


def test_pitches() -> None:
    assert pitches("C,,CcC'c'' c'") == "C2 C4 C5 C5 C7 C6"
    assert pitches("C,',") == pitches("C,") == "C3"
    assert pitches("^C _D =E ^^F __G") == "C#4 Db4 E4 F##4 Gbb4"


def test_accidentals_hold_to_the_bar_line_in_every_octave() -> None:
    """Section 11.3: the default is ``pitch``."""
    music = "^F F f | F"
    assert pitches(music) == "F#4 F#4 F#5 F4"
    assert pitches(music, HEADER.replace("K:", "I:propagate-accidentals octave\nK:")) == "F#4 F#4 F5 F4"
    assert pitches(music, HEADER.replace("K:", "%%propagate-accidentals not\nK:")) == "F#4 F4 F5 F4"
    assert pitches("^F F|[I:propagate-accidentals not]^F F|") == "F#4 F#4 F#4 F4"


def test_a_natural_takes_the_signature_away() -> None:
    assert pitches("f =f f | f", HEADER.replace("K:C", "K:D")) == "F#5 F5 F5 F#5"


def test_an_accidental_on_a_grace_note_holds_in_its_octave() -> None:
    """Common practice; the staff line is altered, another octave is not."""
    tune = read("{^f}f2 F2 f2|f2")
    assert [str(note.pitch) for note in tune.notes] == ["F#5", "F4", "F#5", "F5"]
    assert str(tune.notes[0].graces[0]) == "F#5"
    assert pitches("{^f}f2 =F2 f2|") == "F#5 F4 F5"


def test_lengths() -> None:
    """The multipliers of section 4.3 with L:1/16, and its short forms."""
    sixteenth = HEADER.replace("L:1/8", "L:1/16")
    assert lengths("A A1 A2 A3 A4 A6 A7 A8", sixteenth) == [Fraction(n, 4) for n in (1, 1, 2, 3, 4, 6, 7, 8)]
    assert lengths("A/2 A/ A// A/4 A3/2 A///") == [Fraction(n, 16) for n in (4, 4, 2, 2, 12, 1)]


def test_lengths_down_to_a_128th_are_kept_to_the_nearest_tick() -> None:
    """Section 4.3: compliant software handles a 128th, 52.5 of our ticks."""
    tune = read("A/16A/16A/8 A3/4 A3|")
    assert [note.duration_ticks for note in tune.notes] == [53, 52, 105, 630, 2520]
    assert tune.notes[-1].end_ticks == 2 * QUARTER + 0


@pytest.mark.parametrize(
    ("metre", "quarters"),
    [("2/4", 0.25), ("5/8", 0.25), ("3/4", 0.5), ("6/8", 0.5), ("4/4", 0.5), ("C", 0.5), ("C|", 0.5), ("none", 0.5)],
)
def test_default_unit_note_length(metre: str, quarters: float) -> None:
    """Section 3.1.7: a sixteenth below 0.75, else an eighth."""
    assert lengths("A", f"X:1\nT:\nM:{metre}\nK:C\n") == [quarters]


def test_a_metre_change_keeps_the_unit_note_length() -> None:
    assert lengths("A|[M:2/4]A|[L:1/4]A", "X:1\nT:\nM:4/4\nK:C\n") == [0.5, 0.5, 1]


def test_broken_rhythm() -> None:
    """The three lines of section 4.4 "all mean the same thing"."""
    first = sounds("a3b cd3 a2b2c2d2", HEADER.replace("L:1/8", "L:1/16"))
    assert sounds("a3/2b/2 c/2d3/2 abcd") == first
    assert sounds("a>b c<d abcd") == first
    assert lengths("a>>b a>>>b") == [Fraction(n, 16) for n in (14, 2, 15, 1)]
    assert lengths("a<<b a<<<b") == [Fraction(n, 16) for n in (2, 14, 1, 15)]


def test_grace_notes_are_transparent_to_broken_rhythm() -> None:
    """Section 4.12: ``A<{g}A`` and ``A{g}<A`` are ``A/2{g}A3/2``."""
    first = read("A/2{g}A3/2").notes
    assert read("A<{g}A").notes == first
    assert read("A{g}<A").notes == first
    assert str(first[1].graces[0]) == "G5"


def test_rests() -> None:
    """Section 4.5: the two excerpts are equivalent; X and x are silent like Z and z."""
    assert sounds("Z4|CD EF|GA Bc|") == sounds("z8|z8|z8|z8|CD EF|GA Bc|")
    assert sounds("X2|x2CD|") == sounds("Z2|z2CD|")
    assert sounds("Z|CD|") == sounds("z8|CD|")
    assert sounds("z2C")[0][0] == QUARTER


def test_an_invisible_rest_under_a_sign_is_a_spacer() -> None:
    """Custom: ``Hx`` sets a fermata over the bar line."""
    assert read("C8Hx|D8|").bars[0].duration_ticks == 4 * QUARTER


# --- Bar lines, repeats, endings (4.8 to 4.10) -----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("line", "repeats", "opens", "ends_section"),
    [
        ("|", 0, False, False),
        ("|]", 0, False, True),
        ("||", 0, False, True),
        ("[|", 0, False, True),
        ("|:", 0, True, False),
        (":|", 1, False, False),
        ("::", 1, True, False),
        (":|:", 1, True, False),
        (":||:", 1, True, False),
        ("|::", 0, True, False),
        ("::|", 2, False, False),
        (".|", 0, False, False),
        ("[|]", 0, False, False),
        ("|| :|", 1, False, False),
        ("|[|", 0, False, True),
    ],
)
def test_bar_lines(line: str, repeats: int, opens: bool, ends_section: bool) -> None:
    bars = read(f"|:C8 {line} D8|").bars
    assert len(bars) == 2
    assert (bars[0].repeats, bars[1].opens_repeat, bars[0].ends_section) == (repeats, opens, ends_section)


def test_a_dotted_bar_line_inside_a_bar_is_only_a_hint() -> None:
    tune = read("C4.|D4|E8|")
    assert len(tune.bars) == 2
    assert [(str(note.pitch), note.onset_ticks) for note in tune.notes] == [
        ("C4", 0),
        ("D4", 2 * QUARTER),
        ("E4", 4 * QUARTER),
    ]


def test_a_repeat_without_a_beginning_goes_back_to_the_last_double_bar() -> None:
    """Section 4.8, the recommendation for developers."""
    assert playing_order(read("C8|D8||E8|F8:|").bars) == [0, 1, 2, 3, 2, 3]
    assert playing_order(read("C8|D8:|E8|F8:|").bars) == [0, 1, 0, 1, 2, 3, 2, 3]
    assert playing_order(read("|:C8|D8||E8:|").bars) == [0, 1, 2, 0, 1, 2]


def test_first_and_second_endings() -> None:
    """Section 4.9: the long and the short way of writing them."""
    long = read("|:faf gfe fe|[1 dfe dBA BA:|[2 d2e dcB cB|]").bars
    short = read("|:faf gfe fe|1 dfe dBA BA:|2 d2e dcB cB|]").bars
    assert long == short
    assert [bar.endings for bar in long] == [(), (1,), (2,)]
    assert playing_order(long) == [0, 1, 0, 2]


def test_an_ending_that_nothing_ends_is_as_long_as_the_first() -> None:
    """Section 4.10 lets it run to the next ``:|``, which closes another section (custom)."""
    open_end = read("|:C8|1 D8:|2 E8|F8|G8:|")
    assert playing_order(open_end.bars) == [0, 1, 0, 2, 3, 4, 3, 4]
    assert "ending" in say(open_end.warnings[0])
    assert playing_order(read("|:C8|1 D8:|2 E8|F8||G8:|").bars) == [0, 1, 0, 2, 3, 4, 4]
    assert playing_order(read("|:C8|1 D8:|2 E8:|F8:|").bars) == [0, 1, 0, 2, 3, 3]


@pytest.mark.parametrize(
    ("text", "numbers"),
    [("1,3", (1, 3)), ("1-3", (1, 2, 3)), ("1,3,5-7", (1, 3, 5, 6, 7))],
)
def test_variant_endings(text: str, numbers: tuple[int, ...]) -> None:
    """Section 4.10."""
    assert read(f"|:C8|[{text} D8:|[2 E8|]").bars[1].endings == numbers


def test_four_variant_endings_play_in_turn() -> None:
    bars = read("|:C8|[1 D8:|[2 E8:|[3 F8:|[4 G8|]").bars
    assert playing_order(bars) == [0, 1, 0, 2, 0, 3, 0, 4]


def test_an_ending_may_begin_inside_a_bar() -> None:
    """Custom: ``|G2G [1 G2:|[2 ...``; both endings complete the same half bar."""
    tune = read("|:C8|C4[1 D4:|[2 E4|]", irregular="refuse")
    assert [(bar.number, bar.duration_ticks // QUARTER, bar.endings) for bar in tune.bars] == [
        (1, 4, ()),
        (2, 2, ()),
        (2, 2, (1,)),
        (3, 2, (2,)),
    ]


def test_beats_of_a_pickup_and_of_a_short_second_ending() -> None:
    """A pickup's beats count back from its end; a second ending begins where the first one does (common practice)."""
    tune = read("G2|:C8|1 D8:|2 D6|]", irregular="refuse")
    assert [tune.beat_at(note.onset_ticks) for note in tune.notes] == [(0, 4.0), (1, 1.0), (2, 1.0), (3, 1.0)]


@pytest.mark.parametrize("music", ["|:C6|D8|E8:|:F2|G8|A6:|", "G2|C8|D6||G2|C8|D6|]"])
def test_bars_split_by_a_sign_add_up(music: str) -> None:
    assert not read(music, irregular="refuse").warnings


def test_a_full_bar_at_the_end_of_a_line_ends_there() -> None:
    """Custom of whole collections: no bar line at the end of a line. An accidental holds on until one is written."""
    tune = read("C4^D4\nE4D4|D8|\n", irregular="refuse")
    assert [bar.duration_ticks for bar in tune.bars] == [4 * QUARTER] * 3
    assert [str(note.pitch) for note in tune.notes] == ["C4", "D#4", "E4", "D#4", "D4"]
    assert "understood" in say(tune.warnings[0])


def test_a_bar_goes_on_over_the_end_of_a_line() -> None:
    assert sounds("C4\nD4|E8|") == sounds("C4D4|E8|") == sounds("C4\\\nD4|E8|")


@pytest.mark.parametrize(
    ("sign", "jump", "bar"),
    [
        ("!segno!", Jump.SEGNO, 1),
        ("S", Jump.SEGNO, 1),
        ("!coda!", Jump.CODA, 1),
        ("O", Jump.CODA, 1),
        ('"Segno"', Jump.SEGNO, 1),
        ("!fine!", Jump.FINE, 1),
        ("!D.C.!", Jump.DA_CAPO, 1),
        ("!dacapo!", Jump.DA_CAPO, 1),
        ("!D.S.!", Jump.DAL_SEGNO, 1),
        ("!dacoda!", Jump.TO_CODA, 1),
        ('"^D.C. al Fine"', Jump.DA_CAPO, 1),
        ('"_D.S. al Coda"', Jump.DAL_SEGNO, 1),
    ],
)
def test_jumps_on_a_note(sign: str, jump: Jump, bar: int) -> None:
    bars = read(f"C8|{sign}D8|E8|").bars
    assert [other.jumps for other in bars] == [(jump,) if number == bar else () for number in range(3)]


def test_jumps_on_bar_lines() -> None:
    """Section 4.14: decorations may be applied to bar lines. A segno there opens the next bar, a fine ends its own."""
    assert [bar.jumps for bar in read("C8 !segno!|D8 !fine!|E8 !D.S.!|").bars] == [
        (),
        (Jump.SEGNO, Jump.FINE),
        (Jump.DAL_SEGNO,),
    ]


def test_a_sign_over_the_last_bar_line_opens_no_bar() -> None:
    """Custom: the segno at the end shows where a dal segno turns back."""
    bars = read('C8|"segno"D8|E8 "D.S."[|]"segno"|]').bars
    assert [bar.jumps for bar in bars] == [(), (Jump.SEGNO,), (Jump.DAL_SEGNO,)]


def test_a_word_after_the_last_bar_line_belongs_to_the_bar_before() -> None:
    assert [bar.jumps for bar in read('C8|D8|"D.C."\n').bars] == [(), (Jump.DA_CAPO,)]


# --- Ties, slurs, grace notes, tuplets (4.11 to 4.13) ----------------------------------------------------------------


def test_ties() -> None:
    """Section 4.11: within and between bars."""
    assert sounds("c4-c4|") == sounds("c8|")
    assert [note.duration_ticks for note in read("C7c-|cBA2z4|").notes][1] == 2 * 840
    assert lengths("C4-C4-|C8-|C8|") == [12]


def test_a_tie_carries_its_accidental_over_the_bar_line() -> None:
    """Common practice; a later note of the bar is natural again."""
    assert pitches("z6^f2-|f4f4|") == "F#5 F5"


def test_a_tie_between_different_pitches_is_a_slur() -> None:
    """Custom of early ABC."""
    assert marks("G4-A4|") == [(Mark.SLUR_START,), (Mark.SLUR_STOP,)]


def test_slurs() -> None:
    """Section 4.11: nested ones leave the outermost; two may meet on a note."""
    start, stop = (Mark.SLUR_START,), (Mark.SLUR_STOP,)
    assert marks("(D E F G)") == [start, (), (), stop]
    assert marks("(c (d e f) g a)") == [start, (), (), (), (), stop]
    assert marks("(c d (e) f g a)") == [start, (), stop + start, (), (), stop]
    assert marks("(c) d (e f)") == [(), (), start, stop]
    assert marks("(c d|e f") == [(), (), (), ()]
    assert marks("((3abc) .(d e.)") == [start, (), stop, start, stop]


def test_grace_notes() -> None:
    note = read("{/gagab}C").notes[0]
    assert [str(grace) for grace in note.graces] == ["G5", "A5", "G5", "A5", "B5"]
    assert [str(grace) for grace in read("{a3/2b/}C {vEFG}A").notes[1].graces] == ["E4", "F4", "G4"]
    assert read("{c}d").notes[0].is_ornamented


@pytest.mark.parametrize(
    ("count", "simple", "compound"),
    [(2, 3, 3), (3, 2, 2), (4, 3, 3), (5, 2, 3), (6, 2, 2), (7, 2, 3), (8, 3, 3), (9, 2, 3)],
)
def test_tuplets(count: int, simple: int, compound: int) -> None:
    """The table of section 4.13."""
    music = f"({count}{'abcdefgab'[:count]}"
    for metre, normal in (("4/4", simple), ("6/8", compound), ("3/4", simple)):
        tune = read(music, HEADER.replace("4/4", metre))
        assert tune.notes[-1].end_ticks == normal * 840
        assert all(abs(note.duration_ticks - Fraction(840 * normal, count)) < 1 for note in tune.notes)


def test_general_tuplets() -> None:
    """Section 4.13: what is equal to what, and notes of different lengths."""
    assert sounds("(3abc") == sounds("(3::abc") == sounds("(3:2abc") == sounds("(3:2:3abc") == sounds("(3 abc")
    assert sounds("(3::2 G4c2") == sounds("(3:2:2 G4c2")
    assert lengths("(3:2:4 G2A2Bc") == [Fraction(n, 3) for n in (2, 2, 1, 1)]
    assert lengths("(3 D3EF2") == [Fraction(n, 3) for n in (3, 1, 2)]
    assert lengths("(3zab c") == [Fraction(1, 3), Fraction(1, 3), Fraction(1, 2)]


# --- Signs and texts (4.14 to 4.20) ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("sign", "mark"),
    [
        (".", Mark.STACCATO),
        ("~", Mark.ROLL),
        ("H", Mark.FERMATA),
        ("L", Mark.ACCENT),
        ("M", Mark.MORDENT),
        ("P", Mark.INVERTED_MORDENT),
        ("T", Mark.TRILL),
        ("!trill!", Mark.TRILL),
        ("!trill(!", Mark.TRILL),
        ("!lowermordent!", Mark.MORDENT),
        ("!uppermordent!", Mark.INVERTED_MORDENT),
        ("!mordent!", Mark.MORDENT),
        ("!pralltriller!", Mark.INVERTED_MORDENT),
        ("!roll!", Mark.ROLL),
        ("!turn!", Mark.TURN),
        ("!turnx!", Mark.TURN),
        ("!invertedturn!", Mark.INVERTED_TURN),
        ("!>!", Mark.ACCENT),
        ("!accent!", Mark.ACCENT),
        ("!emphasis!", Mark.ACCENT),
        ("!fermata!", Mark.FERMATA),
        ("!invertedfermata!", Mark.FERMATA),
        ("!tenuto!", Mark.TENUTO),
        ("!slide!", Mark.SCOOP),
        ("!breath!", Mark.BREATH),
        ("+trill+", Mark.TRILL),
        ("+Turn+", Mark.TURN),
        ('"tr"', Mark.TRILL),
        ('"<(" ">)"', Mark.GHOST),
    ],
)
def test_decorations(sign: str, mark: Mark) -> None:
    """The tables of section 4.14; ``+...+`` is the deprecated form of 10.2.2. The standard's ``!lowermordent!`` has
    the vertical line, which MusicXML calls a mordent."""
    assert marks(f"{sign}A B") == [(mark,), ()]


@pytest.mark.parametrize("sign", ["u", "v", "!upbow!", "!5!", "!sfz!", "!somethingnew!", "k"])
def test_other_decorations_are_left_out_and_named(sign: str) -> None:
    """Section 4.14: an unknown symbol should be ignored."""
    tune = read(f"{sign}A B")
    assert tune.notes[0].marks == ()
    assert "left out" in say(tune.warnings[0])


def test_several_signs_before_a_note_in_any_spacing() -> None:
    """The example of section 4.14, but for its chord."""
    assert marks("!coda! y  !p! !trill! C  .~D") == [(Mark.PIANO, Mark.TRILL), (Mark.STACCATO, Mark.ROLL)]


@pytest.mark.parametrize(
    ("opens", "closes", "mark"),
    [
        ("!crescendo(!", "!crescendo)!", Mark.CRESCENDO),
        ("!<(!", "!<)!", Mark.CRESCENDO),
        ("!diminuendo(!", "!diminuendo)!", Mark.DIMINUENDO),
        ("!>(!", "!>)!", Mark.DIMINUENDO),
    ],
)
def test_hairpins(opens: str, closes: str, mark: Mark) -> None:
    """Section 4.14: the end is placed after the last note; an end or a beginning alone is none."""
    assert marks(f"{opens}A B{closes} c") == [(mark,), (Mark.HAIRPIN_STOP,), ()]
    assert marks(f"{opens}A B c") == marks(f"A B{closes} c") == [(), (), ()]


def test_symbols_can_be_redefined() -> None:
    """Section 4.16."""
    header = HEADER.replace("K:C", 'U: W = !trill!\nU:T=!nil!\nU: p = "^+"\nK:C')
    assert [note.marks for note in read("WA TB pc", header).notes] == [(Mark.TRILL,), (), ()]
    assert [note.marks for note in read("WA\nU:W=!turn!\nWA", header).notes] == [(Mark.TRILL,), (Mark.TURN,)]


def test_symbol_lines() -> None:
    """The two excerpts of section 4.15 are equivalent."""
    stacked = read('C2  C2 Ez   A2|\ns: "C" *  "Am" * |\ns: *   *  !>!  * |\n')
    inline = read('"C" C2 C2 "Am" !>! Ez A2|\n')
    assert (stacked.notes, stacked.chords) == (inline.notes, inline.chords)


def test_of_several_notes_at_once_the_top_one_is_read_or_another_that_is_asked_for() -> None:
    tune = read("G8|[CEGc]8|[^c2e2]4|", irregular="refuse")
    assert [str(note.pitch) for note in tune.notes] == ["G4", "C5", "E5"]
    assert say(tune.warnings[0]) == (
        "at 2 places, the first in bar 2, several notes sound at once: the top line is taken"
    )
    text = HEADER + "[CEGc]8|[^ce]8|"
    lines: list[Line] = ["top", "bottom", 1, 2, 3, 4, 5]
    found = ["C5 E5", "C4 C#5", "C5 E5", "G4 C#5", "E4 C#5", "C4 C#5", "C4 C#5"]
    for line, pitches in zip(lines, found, strict=True):
        tune = list_abc(text)[0].read(line=line)
        assert " ".join(str(note.pitch) for note in tune.notes) == pitches


def test_chords_multiply_their_lengths() -> None:
    """Section 4.17: ``[C2E2G2]3`` is ``[CEG]6``; the first note says how long."""
    assert lengths("[C2E2G2]3") == lengths("[CEG]6") == [3]
    assert lengths("[C4e2]") == [2]


def test_a_unison_is_one_note() -> None:
    assert sounds("[DD]8|") == sounds("D8|")
    assert not read("[DD]8|", irregular="refuse").warnings


def test_chords_take_ties_and_broken_rhythm() -> None:
    """The example of section 4.17."""
    music = '( "^I" !f! [CEG]- > [CEG] "^IV" [F=AC]3/2"^V"[GBD]/  H[CEG]2 )'
    tune = read(music)
    assert [str(note.pitch) for note in tune.notes] == ["G4", "A4", "B4", "G4"]
    assert [note.duration_ticks for note in tune.notes] == [2 * 840, 1260, 420, 1680]
    assert Mark.FERMATA in tune.notes[-1].marks


def test_old_chords_between_plus_signs() -> None:
    """Section 10.2.3."""
    assert sounds("+C8E8G8+|") == sounds("[CEG]8|")


def test_of_a_voice_overlay_one_voice_is_read() -> None:
    """The example of section 7.4."""
    music = "A2 | c d e f g  a  &\\\n     A A A A A  A  &\\\n     F E D C B, A, |]\n"
    assert sounds(music) == sounds("A2|cdefga|]")
    tune = read(music, irregular="refuse")
    assert "at 1 place, in bar 1, several notes sound at once" in say(tune.warnings[0])
    low = list_abc(HEADER + music)[0].read(irregular="keep", line="bottom")
    assert [str(note.pitch) for note in low.notes] == ["A4", "F4", "E4", "D4", "C4", "B3", "A3"]


def test_chord_symbols_and_annotations() -> None:
    """Sections 4.18 and 4.19: an annotation is no chord; nor is a fingering or a word (custom)."""
    tune = read('"Am7"A2"^G7"D2 "4"A "SEGUE"B "<(" ">)" "@C"c2|"C/e"C4"N.C."C4|"G(Em)"G4"A7zz"z4|')
    assert [(span.onset_ticks // 840, span.text) for span in tune.chords] == [
        (0, "Am7"),
        (8, "C/E"),
        (12, "N.C."),
        (16, "G(Em)"),
        (20, "A7zz"),
    ]
    assert [span.chord is not None for span in tune.chords] == [True, True, False, True, False]
    assert tune.chords[3].chord is not None
    assert str(tune.chords[3].chord.root) == "G"
    assert any("A7zz" in say(warning) for warning in tune.warnings)
    assert any('"4" (1)' in warning and '"SEGUE" (1)' in warning for warning in map(say, tune.warnings))


def test_a_chord_before_a_bar_line_holds_from_the_next_bar() -> None:
    assert [span.onset_ticks for span in read('C8"G7"|D8|').chords] == [4 * QUARTER]


def test_order_of_constructs() -> None:
    """Section 4.20: ``"Gm7"v.=G,2`` and ``~^c'3``."""
    tune = read('"Gm7"v.=G,2 ~^c\'3')
    assert [(str(note.pitch), note.marks) for note in tune.notes] == [("G3", (Mark.STACCATO,)), ("C#6", (Mark.ROLL,))]
    assert tune.chords[0].text == "Gm7"


# --- Fields (3) ------------------------------------------------------------------------------------------------------

KEY_TABLE = """
7: C# A#m G#Mix D#Dor E#Phr F#Lyd B#Loc
6: F# D#m C#Mix G#Dor A#Phr BLyd E#Loc
5: B G#m F#Mix C#Dor D#Phr ELyd A#Loc
4: E C#m BMix F#Dor G#Phr ALyd D#Loc
3: A F#m EMix BDor C#Phr DLyd G#Loc
2: D Bm AMix EDor F#Phr GLyd C#Loc
1: G Em DMix ADor BPhr CLyd F#Loc
0: C Am GMix DDor EPhr FLyd BLoc
-1: F Dm CMix GDor APhr BbLyd ELoc
-2: Bb Gm FMix CDor DPhr EbLyd ALoc
-3: Eb Cm BbMix FDor GPhr AbLyd DLoc
-4: Ab Fm EbMix BbDor CPhr DbLyd GLoc
-5: Db Bbm AbMix EbDor FPhr GbLyd CLoc
-6: Gb Ebm DbMix AbDor BbPhr CbLyd FLoc
-7: Cb Abm GbMix DbDor EbPhr FbLyd BbLoc
"""
"""The table of section 3.1.14, sharps counted up and flats down."""

MODE_NAMES: tuple[Mode, ...] = ("major", "minor", "mixolydian", "dorian", "phrygian", "lydian", "locrian")


@pytest.mark.parametrize("row", KEY_TABLE.strip().splitlines())
def test_keys(row: str) -> None:
    fifths, _, names = row.partition(": ")
    for name, mode in zip(names.split(), MODE_NAMES, strict=True):
        found = read_key(name)
        assert found is not None
        assert found.key == Key(int(fifths), mode)


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("C ionian", "C major"),
        ("A aeolian", "A minor"),
        ("F# mixolydian", "F# mixolydian"),
        ("F#MIX", "F# mixolydian"),
        ("D dorian", "D dorian"),
        ("E Minor", "E minor"),
        ("G maj", "G major"),
        ("EM", "E minor"),
        ("B♭", "Bb major"),
        ("none", "C major"),
        ("", "C major"),
        ("D =c", "D mixolydian"),
        ("D maj =c", "D mixolydian"),
        ("D exp ^f", "D mixolydian"),
        ("Hp", "A mixolydian"),
        ("G clef=bass", "G major"),
        ("G treble-8", "G major"),
        ("Am transpose=-2", "A minor"),
        ("Es", "Eb major"),
    ],
)
def test_key_spellings(text: str, key: str) -> None:
    """Section 3.1.14; case is ignored for modes, so M is minor like m."""
    found = read_key(text)
    assert found is not None
    assert str(found.key) == key


@pytest.mark.parametrize("text", ["D Phr ^f", "D exp _b _e ^f"])
def test_a_signature_that_no_mode_has_is_written_at_the_notes(text: str) -> None:
    """The two spellings of section 3.1.14 for one signature."""
    tune = read("efgab c'd'2|", HEADER.replace("K:C", f"K:{text}"))
    assert [str(note.pitch) for note in tune.notes] == ["Eb5", "F#5", "G5", "A5", "Bb5", "C6", "D6"]
    assert any("signature" in say(warning) for warning in tune.warnings)


def test_pipe_tunes_sound_with_f_sharp_and_c_sharp() -> None:
    """Section 3.1.14: the pipe scale is G A B ^c d e ^f g a."""
    for text in ("HP", "Hp"):
        assert pitches("GABcdefga", HEADER.replace("K:C", f"K:{text}")) == "G4 A4 B4 C#5 D5 E5 F#5 G5 A5"


@pytest.mark.parametrize("text", ["X", "C#maj7", "Qdor", "C##", "Fb", "Dfoo"])
def test_impossible_keys(text: str) -> None:
    with pytest.raises(AbcError, match=r"line 5, column 1"):
        read("C8|", HEADER.replace("K:C", f"K:{text}"), irregular="refuse")


@pytest.mark.parametrize(
    ("text", "metre"),
    [
        ("4/4", Metre(4, 4)),
        ("C", Metre(4, 4)),
        ("C|", Metre(2, 2)),
        ("(2+3+2)/8", Metre(7, 8)),
        ("2+2+3/8", Metre(7, 8)),
        (" 6 / 8 ", Metre(6, 8)),
        ("none", None),
        ("", None),
    ],
)
def test_metres(text: str, metre: Metre | None) -> None:
    """Section 3.1.6."""
    assert read_metre(text) == (metre, None)


@pytest.mark.parametrize("text", ["4", "4/3", "99/4", "0/4", "waltz", "4/0"])
def test_impossible_metres(text: str) -> None:
    with pytest.raises(AbcError, match=r"line 3, column 1.*M:"):
        read("C8|", HEADER.replace("M:4/4", f"M:{text}"), irregular="refuse")


def test_free_metre_takes_its_bars_as_they_are() -> None:
    """Section 3.1.6: in free metre bar lines can be placed anywhere; so too where no M: is given."""
    for header in (HEADER.replace("M:4/4", "M:none"), HEADER.replace("M:4/4\n", "")):
        bars = read("CDE|FGABc|d8|", header, irregular="refuse").bars
        assert [str(bar.metre) for bar in bars] == ["3/8", "5/8", "4/4"]


@pytest.mark.parametrize(
    ("text", "quarters", "words"),
    [
        ("1/2=120", 240, ""),
        ("1/4 3/8 1/4 3/8=40", 200, ""),
        ('"Allegro" 1/4=120', 120, "Allegro"),
        ('3/8=50 "Slowly"', 75, "Slowly"),
        ('"Andante"', 0, "Andante"),
        ("120", 60, ""),
        ("C=120", 60, ""),
        ("C3=80", 120, ""),
        ("Lively", 0, "Lively"),
        ("1/4=92.5", 92.5, ""),
    ],
)
def test_tempos(text: str, quarters: float, words: str) -> None:
    """Sections 3.1.8 and 10.1; the unit note is an eighth."""
    tempo = read_tempo(text, 840)
    assert (tempo.quarters_per_minute, tempo.words) == (quarters, words)


@pytest.mark.parametrize("text", ["1/4=", "=120", "1/4=999999", "1/4=0", "1/0=", "3/8=5"])
def test_impossible_tempos(text: str) -> None:
    with pytest.raises(AbcError, match="Q:"):
        read("C8|", HEADER.replace("K:C", f"Q:{text}\nK:C"), irregular="refuse")


def test_changes_in_the_body() -> None:
    """Section 3.2: the two excerpts are equivalent."""
    header = "X:1\nT:\nM:6/8\nL:1/8\nQ:3/8=100\nK:D\n"
    inline = read("E2E EFE|E2E EFG|[M:9/8] A2G F2E D2z|]", header)
    own_line = read("E2E EFE|E2E EFG|\\\nM:9/8\nA2G F2E D2z|]", header)
    assert inline.bars == own_line.bars
    assert [str(bar.metre) for bar in inline.bars] == ["6/8", "6/8", "9/8"]
    changed = read("E2E EFE|[K:G]f3 f3|[Q:1/4=60]f6|\nK:Am\nf6|", header)
    assert [str(bar.key) for bar in changed.bars] == ["D major", "G major", "G major", "A minor"]
    assert [(tempo.onset_ticks // 840, tempo.quarters_per_minute) for tempo in changed.tempos] == [(0, 150), (12, 60)]
    assert str(changed.notes[-1].pitch) == "F5"


def test_comments_remarks_and_continuations() -> None:
    """The examples of sections 2.2.5 and 6.1.1."""
    assert sounds("|:DEF FED| % a comment\n% a comment line\nDEF [r:a remark] FED:|") == sounds("|:DEF FED|DEF FED:|")
    assert sounds("abc cab|\\\n%%setbarnb 10\nM:9/8\n%comment\nabc cba abc|") == sounds("abc cab|[M:9/8]abc cba abc|")
    assert sounds("cdef|\\\n\\\ncedf:|") == sounds("cdef|cedf:|")
    assert sounds("A2``B``C") == sounds("A2BC")
    assert read("C8|", HEADER.replace("T:Test", "T:50\\% off % yes")).title == "50% off"


def test_reserved_characters_are_ignored() -> None:
    """The example of section 8.1, but for its text."""
    assert sounds("@a !pp! #bc2/3* [K:C#] de?f y |**") == sounds("a !pp! bc2/3 [K:C#] def y |")


def test_exclamation_marks_break_lines_in_old_files() -> None:
    """Section 12.2's rule for developers, and the example of 12.1.1."""
    assert sounds("ABC DEF|!FED ABC|]") == sounds("ABC DEF|FED ABC|]")
    assert sounds("AB!cd!|", HEADER.replace("K:", "I:linebreak !\nK:")) == sounds("ABcd|")
    assert sounds("|:abc def|$fed cba:|") == sounds("|:abc def|fed cba:|")


def test_feel() -> None:
    assert read("C8|").feel == "straight"
    assert read("C8|", HEADER.replace("K:", 'Q:"Medium swing" 1/4=140\nK:')).feel == "swing"
    assert read("C8|", HEADER.replace("K:", "R:swing\nK:")).feel == "swing"
    assert read('"^Swing"C8|').feel == "swing"


def test_titles_and_composers() -> None:
    tune = read("C8|", "X:7\nT:First, The\nT:Second\nC:Ann\nC:Ben\nK:C\n")
    assert (tune.title, tune.composer) == ("First, The", "Ann; Ben")


# --- Texts (8.2, 14.1) -----------------------------------------------------------------------------------------------

ACCENTS = {
    "`": ("grave", "AEIOU"),
    "'": ("acute", "AEIOUY"),
    "^": ("circ", "AEIOUY"),
    "~": ("tilde", "ANO"),
    '"': ("uml", "AEIOUY"),
    "c": ("cedil", "C"),
    "v": ("caron", "SZ"),
}


@pytest.mark.parametrize("sign", ACCENTS)
def test_accents(sign: str) -> None:
    """The table of section 14.1: each mnemonic is what its HTML entity says."""
    name, letters = ACCENTS[sign]
    for letter in letters + letters.lower():
        expected = html.unescape(f"&{letter}{name};")
        assert text_string(f"\\{sign}{letter}") == expected
        assert text_string(f"&{letter}{name};") == expected
        assert text_string(f"\\u{ord(expected):04x}") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (r"\AA\aa\/O\/o", "ÅåØø"),
        (r"\AE\ae\OE\oe\ss", "ÆæŒœß"),
        (r"\DH\dh\TH\th", "ÐðÞþ"),
        (r"\uA\ua\uE\ue\HO\Ho\HU\Hu", "ĂăĔĕŐőŰű"),
        (r"\u00e9 \U000000e9 \u266d", "é é ♭"),
        (r"\\ \% \& gin & tonic", "\\ % & gin & tonic"),
        (r"&quot;x&quot; \u0022", '"x" "'),
        (r"\q unknown", r"\q unknown"),
        (r"\ud800 \U00110000", r"\ud800 \U00110000"),
    ],
)
def test_text_strings(text: str, expected: str) -> None:
    assert text_string(text) == expected


# --- Lyrics (5) ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("syll-a-ble", ["syll-", "a-", "ble"]),
        ("syll-a--ble", ["syll-", "a-", "", "ble"]),
        ("syll-a -ble", ["syll-", "a", "", "ble"]),
        ("time__", ["time", "", ""]),
        ("of~the~day", ["of the day"]),
        ("1.~Three blind", ["1. Three", "blind"]),
        (r"e\-mail", ["e-mail"]),
        ("a * b|c", ["a", "", "b", "|", "c"]),
    ],
)
def test_syllables(text: str, expected: list[str]) -> None:
    """The examples of sections 5.1 and 5.3."""
    assert list(syllables(text)) == expected


def lyrics(music: str, header: str = HEADER) -> list[str]:
    return [note.lyric for note in read(music, header).notes]


def test_lyrics_are_aligned_with_notes() -> None:
    words = ["doh", "re", "mi", "fa", "sol", "la", "ti", "doh"]
    assert lyrics("C D E F|\nw: doh re mi fa\nG A B c|\nw: sol la ti doh\n") == words
    strict = "%abc-2.1\n" + HEADER
    assert lyrics("C D E F|\nG A B c|\nw: doh re mi fa sol la ti doh\n", strict) == words
    assert lyrics("C D|\nw: doh re\n+: mi fa\n") == ["doh", "re"]


def test_an_empty_line_of_lyrics_skips_its_notes() -> None:
    """Section 5.1."""
    music = "C D E F|\nw: doh re mi fa\nG G G G|\nw:\nF E F C|\nw: fa mi re doh\n"
    expected = ["doh", "re", "mi", "fa", "", "", "", "", "fa", "mi", "re", "doh"]
    assert lyrics(music) == lyrics(music, "%abc-2.1\n" + HEADER) == expected


def test_lyrics_in_old_and_new_files() -> None:
    """Section 10.6: with the line before in abc 2.0, from the beginning in abc 2.1."""
    music = "CDEF|\nFEDC|\ncdef|]\nw:these are lyr-ics\n"
    assert lyrics(music)[8:] == ["these", "are", "lyr-", "ics"]
    assert lyrics(music, "%abc-2.1\n" + HEADER)[:4] == ["these", "are", "lyr-", "ics"]


def test_lyrics_pass_rests_and_grace_notes_but_not_tied_notes() -> None:
    assert lyrics("{a}C z D-|D E\nw:one two _ three\n") == ["one", "two", "three"]
    assert lyrics("CD z6|E F\nw:one|two\n") == ["one", "", "two", ""]


def test_further_verses_are_left_out() -> None:
    tune = read("CD|\nw:one two\nw:three four\n")
    assert [note.lyric for note in tune.notes] == ["one", "two"]
    assert any("further verses" in say(warning) for warning in tune.warnings)


def test_words_after_the_tune_are_not_aligned() -> None:
    assert lyrics("CD|\nW:one two\n") == ["", ""]


# --- Voices and transposition (4.6, 7) -------------------------------------------------------------------------------

VOICES = """X:1
T:Zocharti Loch
C:Louis Lewandowski (1821-1894)
M:C
Q:1/4=76
%%score (T1 T2) (B1 B2)
V:T1           clef=treble-8  name="Tenore I"   snm="T.I"
V:T2           clef=treble-8  name="Tenore II"  snm="T.II"
V:B1  middle=d clef=bass      name="Basso I"    snm="B.I"  transpose=-24
V:B2  middle=d clef=bass      name="Basso II"   snm="B.II" transpose=-24
K:Gm
% 1
[V:T1]  (B2c2 d2g2)  | f6e2      | (d2c2 d2)e2 | d4 c2z2 |
[V:T2]  (G2A2 B2e2)  | d6c2      | (B2A2 B2)c2 | B4 A2z2 |
[V:B1]       z8      | z2f2 g2a2 | b2z2 z2 e2  | f4 f2z2 |
[V:B2]       x8      |     x8    |      x8     |    x8   |
% 5
[V:T1]  (B2c2 d2g2)  | f8        | d3c (d2fe)  | H d6    ||
[V:T2]       z8      |     z8    | B3A (B2c2)  | H A6    ||
[V:B1]  (d2f2 b2e'2) | d'8       | g3g  g4     | H^f6    ||
[V:B2]       x8      | z2B2 c2d2 | e3e (d2c2)  | H d6    ||
"""
"""The example of section 7 (the composer died in 1894)."""


def test_the_melody_voice_is_chosen_and_the_others_are_named() -> None:
    (tune,) = read_abc(VOICES)
    assert tune.part_name == "Tenore I"
    assert str(tune.notes[0].pitch) == "Bb3"
    assert "Tenore II" in say(tune.warnings[0])
    assert "Basso II" in say(tune.warnings[0])


@pytest.mark.parametrize("part", ["Basso I", "3"])
def test_a_voice_can_be_asked_for(part: str) -> None:
    (tune,) = read_abc(VOICES, part=part)
    assert tune.part_name == "Basso I"
    assert str(tune.notes[0].pitch) == "F3"
    with pytest.raises(OptionError, match="Tenore I"):
        read_abc(VOICES, part="Soprano")


def test_voices_one_after_the_other_or_line_by_line() -> None:
    blocks = "V:1\nCDEF GABc|\nc8|\nV:2\nC8|C8|\n"
    lines = "[V:1] CDEF GABc|\n[V:2] C8|\n[V:1] c8|\n[V:2] C8|\n"
    assert sounds(blocks) == sounds(lines) == sounds("CDEF GABc|c8|")


def test_music_before_the_first_voice_field_is_a_voice_too() -> None:
    tune = read("[K:D]f8|\nV:2\nF,8|\n")
    assert [str(note.pitch) for note in tune.notes] == ["F#5"]
    assert say(tune.warnings[0]) == "the melody is voice without a name; left out: 1 2"
    (second,) = read_abc(HEADER + "[K:D]f8|\nV:2\nF,8|\n", part="2")
    assert [str(note.pitch) for note in second.notes] == ["F#3"]


def test_transposing_parts_sound_where_they_should() -> None:
    """Section 4.6: ``K:C transpose=-2`` is how a B flat clarinet sees its part."""
    tune = read('"C"CDE ^F2|', HEADER.replace("K:C", "K:C transpose=-2"))
    assert str(tune.key) == "Bb major"
    assert [str(note.pitch) for note in tune.notes] == ["Bb3", "C4", "D4", "E4"]
    assert tune.chords[0].text == "Bb"
    up = read("C8|", HEADER.replace("K:C", "K:C clef=treble+8"))
    assert str(up.notes[0].pitch) == "C5"
    assert pitches("C8|", HEADER.replace("K:C", "K:C octave=-1")) == "C3"
    assert pitches("C8|", HEADER.replace("K:C", "K:C middle=d clef=bass")) == "C4"


# --- Parts (3.1.9) ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "order"),
    [
        ("ABABCDCD", "ABABCDCD"),
        ("A3", "AAA"),
        ("(AB)3", "ABABAB"),
        ("((AB)3.(CD)3)2", "ABABABCDCDCDABABABCDCDCD"),
        ("(AB)2(AC)2A", "ABABACACA"),
    ],
)
def test_part_orders(text: str, order: str) -> None:
    assert "".join(part_order(text)) == order


def test_digits_that_are_no_numbers_and_numbers_without_end_are_read_past() -> None:
    """Found by throwing invented text at the reader: int() takes neither a superscript nor more than 4,300 digits."""
    with pytest.raises(UnreadableError):
        part_order("A³")
    assert read("C8|", "%abc-" + "9" * 5000 + ".1\n" + HEADER).notes


def parts(order: str, body: str) -> Tune:
    return read(body, HEADER.replace("K:C", f"P:{order}\nK:C"))


PARTS = "P:A\nC8|D8|\nP:B\nE8|F8|\n"


def played(tune: Tune) -> str:
    by_start = {note.onset_ticks: note.pitch.letter for note in tune.notes}
    return "".join(by_start[tune.bars[index].start_ticks] for index in playing_order(tune.bars))


@pytest.mark.parametrize(
    ("order", "expected", "bars"),
    [
        ("AB", "CDEF", 4),
        ("AABB", "CDCDEFEF", 4),
        ("ABA", "CDEFCD", 4),
        ("A3B", "CDCDCDEF", 4),
        ("ABAB", "CDEFCDEF", 8),
        ("BA", "EFCD", 4),
    ],
)
def test_parts_are_played_in_their_order(order: str, expected: str, bars: int) -> None:
    """Repeats and a da capo where they can say it, else written out."""
    tune = parts(order, PARTS)
    assert played(tune) == expected
    assert len(tune.bars) == bars


def test_parts_written_out_begin_in_their_own_key() -> None:
    tune = parts("ABAB", "P:A\nf8|\nP:B\nK:D\nf8|\n")
    assert [str(note.pitch) for note in tune.notes] == ["F5", "F#5", "F5", "F#5"]


def test_an_order_of_parts_that_are_not_there_is_named() -> None:
    tune = parts("ABC", PARTS)
    assert played(tune) == "CDEF"
    assert "no part C" in say(tune.warnings[0])


@pytest.mark.parametrize("order", ["((A9)9)9", "(AB", "A)", "9", "A0"])
def test_absurd_orders_of_parts(order: str) -> None:
    with pytest.raises(AbcError, match="P:"):
        read(PARTS, HEADER.replace("K:C", f"P:{order}\nK:C"), irregular="refuse")


# --- Books (2) -------------------------------------------------------------------------------------------------------

BOOK = """%abc-2.1
H:A book
O:England
M:3/4

This is free text | with a bar line.

X:1 % the first
T:Dusty Miller, The
T:Binny's Jig
K:G
B>cd BAG|FA Ac BA|

%%text between

X:5
T:Second
M:4/4
K:C
[CE]8|C2]

X:
T:Third
K:C
C2 D2 E2|
"""


def test_a_book_is_listed_without_reading_its_music() -> None:
    entries = list_abc(BOOK)
    assert [(entry.number, entry.title, entry.line) for entry in entries] == [
        (1, "Dusty Miller, The", 8),
        (5, "Second", 16),
        (None, "Third", 22),
    ]
    assert entries[0].titles == ("Dusty Miller, The", "Binny's Jig")
    assert str(entries[2].read().metre) == "3/4"


def test_tunes_are_read_one_by_one() -> None:
    tunes = iter_abc(BOOK)
    assert next(tunes).title == "Dusty Miller, The"
    with pytest.raises(AbcError, match="line 20"):
        next(tunes)
    assert [tune.title for tune in iter_abc(BOOK, irregular="keep")] == ["Dusty Miller, The", "Second", "Third"]


def test_messages_about_a_book_name_the_tune() -> None:
    with pytest.raises(TuneError, match=r"tune X:1, Dusty"):
        list_abc(BOOK.replace("B>cd BAG|", "B>cd BAG G|"))[0].read()


def test_a_tune_without_number() -> None:
    """Section 10.5.1: earlier versions allowed it."""
    assert read_abc("T:Alone\nK:C\nC8|")[0].title == "Alone"


def test_music_after_an_empty_line() -> None:
    """Section 2.2.1: an empty line ends the tune; old books have them inside (custom)."""
    text = HEADER + "C8|\n\nD8|\n\nfree text\n"
    assert [len(read_abc(text, irregular=mode)[0].notes) for mode in ("refuse", "keep")] == [1, 2]
    assert "line 8" in say(read_abc(text)[0].warnings[0])


@pytest.mark.parametrize("newline", ["\r\n", "\r", "\n"])
def test_line_ends_and_byte_order_mark(newline: str) -> None:
    """Sections 2.1 and 8."""
    text = "\ufeff" + (HEADER + "C8|\nD8|\n").replace("\n", newline)
    tune = read_abc(text)[0]
    assert [str(note.pitch) for note in tune.notes] == ["C4", "D4"]
    assert (len(tune.bars), tune.warnings) == (2, ())


def test_fields_may_be_continued() -> None:
    """Section 3.3."""
    assert read("C8|", HEADER.replace("K:C", "R:medium\n+:swing\nK:C")).feel == "swing"


def test_the_standards_sample_tunes() -> None:
    """English.abc, Strspys.abc and Reels.abc of section 13 (traditional), in part: every bar adds up."""
    english = """%abc-2.1
O:England             % the origin of all tunes is England

X:2
T:Old Sir Simon the King
C:Trad.
M:9/8
R:SJ                  % slip jig
K:G
D|GFG GAG G2D|GFG GAG F2D|EFE EFE EFG|A2G F2E D2:|
D|GAG GAB d2D|GAG GAB c2D|[1 EFE EFE EFG|A2G F2E D2:|\\ % no line-break in score
M:12/8                % change of meter
[2 E2E EFE E2E EFG|\\  % no line-break in score
M:9/8                 % change of meter
A2G F2E D2|]

X:3
T:William and Nancy
P:(AB)2(AC)2A                 % play the parts in this order
M:6/8
K:G
[P:A] D|"G"G2G GBd|"C"e2e "G"dBG|"D7"A2d "G"BAG|"C"E2"D7"F "G"G2:|
[P:B] d|"G"e2d B2d|"C"gfe "G"d2d| "G"e2d    B2d|"C"gfe    "D7"d2c|
        "G"B2B Bcd|"C"e2e "G"dBG|"D7"A2d "G"BAG|"C"E2"D7"F "G"G2:|
% changes of meter, using inline fields
[T:Slows][M:4/4][L:1/4][P:C]"G"d2|"C"e2 "G"d2|B2 d2|"Em"gf "A7"e2|"D7"d2 "G"d2|\\
       "C"e2 "G"d2|[M:3/8][L:1/8] "G"B2 d |[M:6/8] "C"gfe "D7"d2c|
        "G"B2B Bcd|"C"e2e "G"dBG|"D7"A2d "G"BAG|"C"E2"D7"F "G"G2:|

X:4
T:A. A. Cameron's
M:4/4
K:D
e<A A2 B>G d>B|e<A A2 d>g (3fed|e<A A2 B>G d>B|B<G G>B d>g (3fed:|
B<e e>f g>e a>f|B<e e>f g>e (3fed|B<e e>f g>e a>f|d<B G>B d>g (3fed:|
"""
    simon, nancy, cameron = read_abc(english, irregular="keep")
    assert not simon.warnings
    assert [bar.metre.beats for bar in simon.bars].count(12) == 1
    assert not cameron.warnings
    assert len({bar.duration_ticks for bar in cameron.bars}) == 1
    assert [span.text for span in nancy.chords[:5]] == ["G", "C", "G", "D7", "G"]
    assert any("written out" in say(warning) for warning in nancy.warnings)


# --- What can't be read ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("music", "column", "text"),
    [
        ("CD 5 EF", 4, "5"),
        ("C8|^|", 4, "^"),
        ('C8|"Am', 4, '"'),
        ("C2 {gx3} D2", 4, "{gx3}"),
        ("C2 {g", 4, "{"),
        ("C2 (99abc", 4, "(99"),
        ("C2 (1a", 4, "(1"),
        ("C2 >> |", 7, "|"),
        ("C2 C999999999", 4, "C999999999"),
        ("C2 C/0", 4, "C/0"),
        ("C2 C'''''''''", 4, "C'''''''''"),
        ("C2 C/8192", 4, "C/8192"),
        ("C > > E", 5, ">"),
        ("> C", 1, ">"),
        ("C ]", 3, "]"),
        ("C [ab|", 6, "|"),
        ("C Z", 3, "Z"),
        ("Z9999", 1, "Z9999"),
        ("C8|[99 D8|", 4, "[99"),
        ("C8|[3-1 D8|", 4, "[3-1"),
        ("[K:Q]C", 1, "K:Q"),
        ("[M:1]C", 1, "M:1"),
        ("[L:0]C", 1, "L:0"),
        ("C[z2E]", 3, "z2"),
    ],
)
def test_faults_are_placed(music: str, column: int, text: str) -> None:
    with pytest.raises(AbcError) as caught:
        read(music, irregular="refuse")
    assert isinstance(caught.value, ReadError)
    assert (caught.value.line, caught.value.column, caught.value.text) == (6, column, text)
    assert f"line 6, column {column}" in str(caught.value)
    kept = read(music + "|C8|")
    assert any("left out" in say(warning) for warning in kept.warnings)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "no K: field"),
        ("just some words", "no K: field"),
        ("X:1\nT:Empty\nK:C\n", "no notes"),
        ('X:1\nT:Chords only\nM:4/4\nK:C\n"C"|"G7"|', "no melody"),
        (HEADER + "x" * 100_001, "100,000"),
        (HEADER + "C8|C9|", "bar 2 holds 4.5"),
        (HEADER + "Z999|" * 6 + "C8|", "5,000"),
    ],
)
def test_bad_input(text: str, message: str) -> None:
    with pytest.raises(FiorituraError, match=message):
        read_abc(text)


def test_a_bar_that_does_not_add_up_is_kept_when_asked() -> None:
    tune = read("C8|C9|C8|")
    assert [bar.duration_ticks for bar in tune.bars] == [3360 * 2, 840 * 9, 3360 * 2]
    assert "bar 2" in say(tune.warnings[0])


ALPHABET = "ABCDEFGabcdefgzxZXy^_=,'/0123456789|:[](){}<>-.~HLMOPSTuvkU\"!+&$\\`%*@ \nKMLQPVwsTIXRr"


@settings(max_examples=300, deadline=None)
@given(st.text(ALPHABET, max_size=120), st.sampled_from(["refuse", "keep"]))
@example("[K:=c]^/C", "keep")
@example("[" * 60, "keep")
@example("[M:none]" + "C99" * 30, "keep")
def test_any_text_is_read_or_refused_in_words(text: str, mode: Irregular) -> None:
    try:
        read_abc(HEADER + text, irregular=mode)
    except FiorituraError as error:
        assert str(error)


@settings(max_examples=200, deadline=None)
@given(st.randoms(use_true_random=False), st.integers(1, 4))
def test_damaged_tunes_are_read_or_refused_in_words(rng: random.Random, cuts: int) -> None:
    text = VOICES + BOOK
    for _ in range(cuts):
        start = rng.randrange(len(text))
        text = text[:start] + rng.choice(("", chr(rng.randrange(1, 0x2FF)))) + text[start + rng.randrange(6) :]
    for entry in list_abc(text):
        for mode in ("refuse", "keep"):
            try:
                entry.read(irregular=mode)
            except FiorituraError as error:
                assert str(error)


@pytest.mark.parametrize("piece", ["{", "[", '"', "(", "!", "+a", "(3:", "[1", "C-", ">", "[K:", "&", "::", "x!a"])
def test_long_lines_take_linear_time(piece: str) -> None:
    text = HEADER + piece * (90_000 // len(piece))
    start = time.process_time()
    with pytest.raises(FiorituraError):
        read_abc(text)
    assert time.process_time() - start < 5


# --- Real books ------------------------------------------------------------------------------------------------------


def sample(count: int) -> list[tuple[str, AbcEntry]]:
    return random.Random(20).sample(corpus_entries(), count)


def test_a_sample_of_real_tunes_against_music21() -> None:
    """60 tunes of the ABC books in music21's corpus; each difference has a name (see `abc_reference`)."""
    results = Counter(disagreement(entry) for _, entry in sample(60))
    assert results["unexplained"] == 0, results
    assert results[""] >= 50, results


@pytest.mark.slow
def test_all_real_tunes_against_music21() -> None:
    """All tunes of the ABC books in music21's corpus."""
    unexplained = [
        f"{name} X:{entry.number}" for name, entry in corpus_entries() if disagreement(entry) == "unexplained"
    ]
    assert unexplained == []


@pytest.mark.slow
def test_all_real_tunes_are_read_in_time() -> None:
    """Over 12,000 tunes, every one read, in well under a minute of one core."""
    start = time.process_time()
    tunes = [entry.read(irregular="keep") for _, entry in corpus_entries()]
    assert time.process_time() - start < 60
    assert len(tunes) > 12_000
    assert all(tune.notes and tune.bars for tune in tunes)
    assert sum(bool(note.marks or note.graces) for tune in tunes for note in tune.notes) > 20_000
