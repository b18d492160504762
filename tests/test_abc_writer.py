"""The ABC writer against its own reader, music21 as an independent one, and the abc standard 2.1.

Section numbers are the standard's (December 2011, abcnotation.com).
"""

import random
import re
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from fioritura.errors import OutputError
from fioritura.notation.abc.reader import read_abc
from fioritura.notation.abc.writer import write_abc
from fioritura.notation.score import Label, Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import HAIRPIN_MARKS, Bar, ChordSpan, Mark, Note, Tempo, Tune
from fioritura.unfold import playing_order

from .abc_reference import LIMITS, agree, corpus_entries, own_sounds, reference_sounds
from .notation_strategies import bar_rows, beat_lines, decorated, generators, grid_lines, odd_lines, scores

COMMON = Metre(4, 4)
C_MAJOR = Key(0)


def score_of(tune: Tune, instrument: str = "concert", **more: Any) -> Score:
    return Score(tune, (Staff(tune.notes, instrument=INSTRUMENTS[instrument], **more),))


def body(tune: Tune, **more: Any) -> str:
    """What follows the K: field."""
    return write_abc(score_of(tune, **more)).partition("\nK:")[2].partition("\n")[2]


def bars_of(count: int, key: Key = C_MAJOR, metre: Metre = COMMON) -> tuple[Bar, ...]:
    return tuple(Bar(n + 1, n * metre.bar_ticks, metre.bar_ticks, metre, key) for n in range(count))


def line_of(text: str, length: int = EIGHTH) -> tuple[Note, ...]:
    return tuple(Note(n * length, length, Pitch.parse(name)) for n, name in enumerate(text.split()) if name != "r")


def tune_of(text: str, length: int = EIGHTH, key: Key = C_MAJOR, metre: Metre = COMMON, **more: Any) -> Tune:
    notes = line_of(text, length)
    count = -(-len(text.split()) * length // metre.bar_ticks)
    return Tune("Test", notes, bars_of(count, key, metre), **more)


SPANS = {Mark.SLUR_START, Mark.SLUR_STOP, *HAIRPIN_MARKS}
"""Signs that come in pairs."""


def facts(note: Note) -> tuple[int, int, Pitch, tuple[Pitch, ...], frozenset[Mark], str]:
    graces = tuple(grace.respelled() if abs(grace.alter) > 2 else grace for grace in note.graces)
    return (note.onset_ticks, note.duration_ticks, note.pitch, graces, frozenset(note.marks), note.lyric)


# --- The text itself -------------------------------------------------------------------------------------------------


def test_header() -> None:
    """Sections 3.1 and 2.1: X, T first and K last; the version; the creator that exporting software must name."""
    tune = tune_of("C4 D4 E4 F4", QUARTER, Key(2, "mixolydian"), tempos=(Tempo(0, 96),), composer="Ann & Ben")
    lines = write_abc(replace(score_of(replace(tune, feel="swing")), subtitle="for flute")).splitlines()
    assert lines[0] == "%abc-2.1"
    assert re.fullmatch(r"I:abc-creator Fioritura \S+", lines[1])
    assert lines[2:9] == ["X:1", "T:Test", "T:for flute", "C:Ann & Ben", "M:4/4", "L:1/8", 'Q:"Swing" 1/4=96']
    assert lines[9] == "K:Amix"
    assert lines[10] == "=C2 D2 E2 =F2 |]"


@pytest.mark.parametrize(
    ("metre", "rate", "text"),
    [("6/8", 120, "3/8=80"), ("2/2", 120, "1/2=60"), ("4/4", 92.5, "1/4=92.5"), ("6/8", 100, "1/4=100")],
)
def test_tempo_counts_the_beat(metre: str, rate: float, text: str) -> None:
    tune = tune_of("C4 " * 8, metre=Metre.parse(metre), tempos=(Tempo(0, rate),))
    assert f"\nQ:{text}\n" in write_abc(score_of(tune))


@pytest.mark.parametrize(
    ("key", "text"),
    [
        (Key(-1), "F"),
        (Key(-2, "minor"), "Gm"),
        (Key(0, "dorian"), "Ddor"),
        (Key(6), "F#"),
        (Key(-3, "lydian"), "Ablyd"),
        (Key(0, "phrygian"), "Ephr"),
        (Key(0, "locrian"), "Bloc"),
    ],
)
def test_keys(key: Key, text: str) -> None:
    """Section 3.1.14."""
    assert f"\nK:{text}\n" in write_abc(score_of(tune_of("C4 " * 8, key=key)))


def test_octaves() -> None:
    """Section 4.1."""
    assert body(tune_of("C2 B3 C4 B4 C5 B5 C6 C8")) == "C,,B,CB cbc'c''' |]\n"


def test_only_needed_accidentals() -> None:
    """An accidental stands where either rule in use asks for it: for its octave or for all (section 11.3)."""
    tune = tune_of("F#4 F#4 F4 F#4 F#5 F#4 F5 F#4 F4 F#5 F5 F5 Bb4 B4 B4 B4")
    assert body(tune) == "^FF=F^F ^fF=f^F | F^f=ff _B=BBB |]\n"
    assert body(tune_of("F#4 F4 F4 C#5 C5 C#5 G4 G4", key=Key(2))) == "F=FFc =c^cGG |]\n"


def test_triple_accidentals_are_respelled() -> None:
    tune = tune_of("C4 " * 8)
    odd = replace(tune, notes=(replace(tune.notes[0], pitch=Pitch(28, 3)), *tune.notes[1:]))
    assert body(odd) == "^DCCC CCCC |]\n"


def test_beams_go_by_the_beat() -> None:
    """Section 4.7: notes under one beam stand together."""
    assert body(tune_of("C4 D4 E4 F4 G4 A4 B4 C5")) == "CDEF GABc |]\n"
    assert body(tune_of("C4 D4 E4 F4 G4 A4", metre=Metre(6, 8))) == "CDE FGA |]\n"
    sixteenths = tune_of("C4 " * 8, EIGHTH // 2, metre=Metre(2, 4))
    assert body(sixteenths) == "C/C/C/C/ C/C/C/C/ |]\n"
    assert body(tune_of("C4 r E4 F4 r r r C5")) == "C z EF z2 z c |]\n"


def test_tuplets_are_exact() -> None:
    """Section 4.13."""
    triplet = tune_of("C4 D4 E4 " * 4, 560)
    assert body(triplet) == "(3CDE (3CDE (3CDE (3CDE |]\n"
    notes = (Note(0, 1120, Pitch(28)), Note(1120, 560, Pitch(29)), Note(1680, 5040, Pitch(30)))
    assert body(Tune("", notes, bars_of(1))) == "(3:2:2C2 D E6 |]\n"
    quintuplet = tuple(Note(336 * n, 336, Pitch(28)) for n in range(5))
    assert body(Tune("", quintuplet, bars_of(1))).startswith("(5:4:5C/C/C/C/C/ ")


def test_notes_over_a_bar_line_are_tied() -> None:
    notes = (Note(0, 5040, Pitch(28)), Note(5040, 3360, Pitch(31, 1)), Note(8400, 1680, Pitch(31, 1)))
    assert body(Tune("", notes, bars_of(2))).split(" |") == ["C6 ^F2-", " ^F2 F2 z4", "]\n"]


def test_chord_symbols_cut_a_held_note() -> None:
    chords = (
        ChordSpan(0, 3360, read_chord("C"), "C"),
        ChordSpan(3360, 3360, read_chord("Am7"), "Am7", is_inferred=True),
        ChordSpan(6720, 6720, None, "N.C."),
    )
    tune = Tune("", (Note(0, 6720, Pitch(28), (), (Mark.SLUR_START,)),), bars_of(2), chords)
    assert body(tune) == '"C"(C4-"(Am7)"C4 | "N.C."z8 |]\n'
    assert body(tune, shows_chords=False) == "(C8 | z8 |]\n"


def test_order_of_constructs() -> None:
    """Section 4.20: grace notes, chord symbols, annotations and decorations, accidental, note, octave, length."""
    marks = (Mark.STACCATO, Mark.TRILL, Mark.SLUR_START, Mark.FERMATA)
    notes = (
        Note(0, 3360, Pitch.parse("C#6"), (Pitch.parse("D6"), Pitch.parse("B5")), marks),
        Note(3360, 3360, Pitch.parse("C#6"), (), (Mark.SLUR_STOP,)),
    )
    tune = Tune("", notes, bars_of(1), (ChordSpan(0, 6720, read_chord("A7"), "A7"),))
    text = body(tune, labels=(Label(0, 'lower "grace" 100%'),))
    assert text == ('{d\'b}"A7""^lower \\u0022grace\\u0022 100\\%"(.!trill!!fermata!^c\'4 c\'4) |]\n')


@pytest.mark.parametrize("mark", [mark for mark in Mark if mark not in SPANS])
def test_every_mark_comes_back(mark: Mark) -> None:
    """By the standard's decorations (4.14), or by a text over the note (4.19)."""
    notes = (Note(0, 5040, Pitch(28), (), (mark,)), Note(5040, 3360, Pitch(30)), Note(8400, 1680, Pitch(30)))
    tune = Tune("", notes, bars_of(2))
    assert list(map(facts, read_abc(write_abc(score_of(tune)))[0].notes)) == list(map(facts, notes))


def test_hairpins_come_back() -> None:
    """Section 4.14 of the standard: `!crescendo(!` before the first note, `!crescendo)!` after the last."""
    marks = ((Mark.CRESCENDO,), (), (Mark.HAIRPIN_STOP,))
    notes = tuple(Note(n * 1680, 1680, Pitch(28), (), marks[n]) for n in range(3))
    tune = Tune("", notes, bars_of(1))
    assert body(tune) == "!crescendo(!C2 C2 C2!crescendo)! z2 |]\n"
    assert [note.marks for note in read_abc(write_abc(score_of(tune)))[0].notes] == list(marks)


def test_what_marks_the_end_of_a_note_stands_on_its_last_piece() -> None:
    notes = (Note(0, 10080, Pitch(28), (), (Mark.TRILL, Mark.FERMATA, Mark.FALL)),)
    assert body(Tune("", notes, bars_of(2))) == '!trill!C8- | !fermata!"^fall"C4 z4 |]\n'


def test_four_bars_a_line() -> None:
    lines = body(tune_of("C4 " * 80)).splitlines()
    assert [line.count("|") for line in lines] == [4, 4, 2]
    pickup = Bar(0, 0, QUARTER, COMMON, Key(0))
    shifted = [replace(bar, start_ticks=bar.start_ticks + QUARTER) for bar in bars_of(5)]
    lines = body(Tune("", line_of("C4 D4"), (pickup, *shifted))).splitlines()
    assert [line.count("|") for line in lines] == [5, 1]


def test_lyrics_stand_under_their_notes() -> None:
    """Section 5.1."""
    words = ("Hel-", "lo", "", "of the day", "e-mail", "", "a*b_c|d", "")
    tune = tune_of("C4 D4 E4 F4 G4 A4 B4 C5")
    sung = tuple(replace(note, lyric=word) for note, word in zip(tune.notes, words, strict=True))
    text = body(replace(tune, notes=sung))
    assert text.splitlines()[1] == "w:Hel-lo * of~the~day e\\-mail * a∗b＿c∣d"
    back = read_abc(write_abc(score_of(replace(tune, notes=sung))))[0]
    assert [note.lyric for note in back.notes][:6] == list(words[:6])


REPEATS = {
    "|:C8 | D8 :: E8 | F8 :|": [0, 1, 0, 1, 2, 3, 2, 3],
    "|:C8 |1 D8 :|2 E8 || F8 |]": [0, 1, 0, 2, 3],
    "|:C8 |[1,3 D8 :|2 E8 |]": [0, 1, 0, 2],
    "|:C8 | D8 || E8 :|": [0, 1, 2, 0, 1, 2],
    "C8 | D8 || E8 ||: F8 ::| G8 |]": [0, 1, 2, 3, 3, 3, 4],
    "!segno!C8 | D8 !fine!| E8 !D.S.!|]": [0, 1, 2, 0, 1],
    "C8 | D8 !dacoda!| E8 !D.C.!| !coda!F8 |]": [0, 1, 2, 0, 1, 3],
    "|:C8 | C4 [1 D4 :|[2 E4 |]": [0, 1, 2, 0, 1, 3],
    "|:C8 | ^D4 [1 D4 :|[2 D4 |]": [0, 1, 2, 0, 1, 3],
}


@pytest.mark.parametrize("music", REPEATS)
def test_repeats_and_jumps(music: str) -> None:
    """Sections 4.8 to 4.10: written, read, and written again the same; played in the expected order."""
    (tune,) = read_abc(f"X:1\nT:\nM:4/4\nL:1/8\nK:C\n{music}\n")
    assert playing_order(tune.bars) == REPEATS[music]
    (back,) = read_abc(write_abc(score_of(tune)))
    assert (back.bars, back.notes) == (tune.bars, tune.notes)
    assert body(back) == body(tune)


def test_an_ending_at_a_line_break_opens_the_next_line() -> None:
    music = "|:C8|C8|C8|1 C8:|2 D8|]"
    (tune,) = read_abc(f"X:1\nT:\nM:4/4\nL:1/8\nK:C\n{music}\n")
    assert body(tune) == "|:C8 | C8 | C8 |1 C8 :|\n[2 D8 |]\n"


def test_a_repeat_over_a_double_bar_says_where_it_begins() -> None:
    """Reading, the latest double bar would be its beginning (section 4.8)."""
    bars = [replace(bar, ends_section=bar.number == 2, repeats=bar.number == 3) for bar in bars_of(3)]
    tune = Tune("", line_of("C4 D4 E4", 6720), tuple(bars))
    assert playing_order(read_abc(write_abc(score_of(tune)))[0].bars) == playing_order(tune.bars)


def test_changes_of_metre_key_and_tempo() -> None:
    two = Metre(2, 4)
    bars = (
        Bar(1, 0, 6720, COMMON, Key(0)),
        Bar(2, 6720, 3360, two, Key(0)),
        Bar(3, 10080, 3360, two, Key(3, "minor")),
    )
    tempos = (Tempo(0, 120), Tempo(1680, 60), Tempo(6720, 90))
    tune = Tune(
        "", (Note(0, 6720, Pitch(28)), Note(6720, 3360, Pitch(29)), Note(10080, 3360, Pitch(30))), bars, (), tempos
    )
    text = body(tune)
    assert text == "C2-[Q:1/4=60]C6 | [M:2/4][Q:1/4=90]D4 | [K:F#m]E4 |]\n"
    (back,) = read_abc(write_abc(score_of(tune)))
    assert (back.bars, back.tempos) == (tune.bars, tune.tempos)


@pytest.mark.parametrize(
    ("instrument", "key", "note"),
    [
        ("alto-sax", "K:A transpose=-9", "C4"),
        ("tenor-sax", "K:D transpose=-14", "C4"),
        ("flute", "K:C", "C4"),
        ("trombone", "K:C clef=bass", "C4"),
    ],
)
def test_written_for_an_instrument(instrument: str, key: str, note: str) -> None:
    """Section 4.6: transpose= leads from written to sounding pitch."""
    score = score_of(tune_of(f"{note} " * 8), instrument)
    text = write_abc(score)
    assert f"\n{key}\n" in text
    assert str(read_abc(text)[0].notes[0].pitch) == note
    concert = write_abc(replace(score, is_concert=True))
    assert "transpose" not in concert
    assert str(read_abc(concert)[0].notes[0].pitch) == note


def test_a_low_line_at_sounding_pitch_has_the_bass_clef() -> None:
    low = score_of(tune_of("C2 " * 8), "baritone-sax")
    assert "clef" not in write_abc(low)
    assert "clef=bass" in write_abc(replace(low, is_concert=True))


def test_texts_are_escaped() -> None:
    """Section 8.2."""
    tune = replace(tune_of("C4 " * 8), title='100% \\ G&T "é"\nK:D', composer="\u0000 Ann")
    text = write_abc(score_of(tune))
    assert 'T:100\\% \\\\ G\\&T "é" K:D\n' in text
    (back,) = read_abc(text)
    assert (back.title, back.composer) == ('100% \\ G&T "é" K:D', "Ann")


@pytest.mark.parametrize("score", [Score(tune_of("C4"), ()), Score(Tune("", (), ()), (Staff(()),))])
def test_nothing_to_write(score: Score) -> None:
    with pytest.raises(OutputError, match="at least one"):
        write_abc(score)


# --- There and back --------------------------------------------------------------------------------------------------


@st.composite
def plain_scores(draw: st.DrawFn) -> Score:
    """Lines of every kind over plain bars, at concert pitch."""
    bars = draw(bar_rows())
    lines = draw(st.sampled_from((grid_lines, beat_lines, odd_lines)))
    line = decorated(draw(generators), draw(lines(bars)))
    clean = tuple(replace(note, lyric=note.lyric if note.lyric in ("la", "Hel-") else "") for note in line)
    spans = draw(st.sets(st.integers(0, bars[-1].end_ticks // 420 - 1), max_size=6))
    places = [*sorted(spans), bars[-1].end_ticks // 420]
    chords = tuple(
        ChordSpan(first * 420, (last - first) * 420, read_chord("F#m7b5"), "F#m7b5")
        for first, last in zip(places, places[1:], strict=False)
    )
    return score_of(Tune("Made up", clean, bars, chords, (), draw(st.sampled_from(("straight", "swing")))))


@settings(max_examples=150, deadline=None)
@given(plain_scores())
def test_what_is_written_is_read_back(score: Score) -> None:
    """Notes, bars, chords and feel, to the tick, for any line at all."""
    assume(score.tune.notes)
    (back,) = read_abc(write_abc(score), irregular="keep")
    tune = score.tune
    assert [facts(replace(note, marks=_without_spans(note))) for note in back.notes] == [
        facts(replace(note, marks=_without_spans(note))) for note in tune.notes
    ]
    assert [(bar.number, bar.start_ticks, bar.metre, bar.key) for bar in back.bars] == [
        (bar.number, bar.start_ticks, bar.metre, bar.key) for bar in tune.bars
    ]
    assert (back.chords, back.feel, back.title) == (tune.chords, tune.feel, tune.title)


def _without_spans(note: Note) -> tuple[Mark, ...]:
    return tuple(mark for mark in note.marks if mark not in SPANS)


def cut_at_repeats(score: Score) -> list[tuple[int, int, int]]:
    """The sounds of the first staff; a note held over a repeat sign is struck again, as the reader has it."""
    bars = score.tune.bars
    lines = [bar.end_ticks for bar, after in pairwise(bars) if bar.repeats or after.opens_repeat]
    sounds = []
    for note in score.staves[0].line:
        places = [note.onset_ticks, *(at for at in lines if note.onset_ticks < at < note.end_ticks), note.end_ticks]
        sounds += [(start, end - start, note.pitch.midi) for start, end in pairwise(places)]
    return sounds


@settings(max_examples=100, deadline=None)
@given(scores())
def test_any_score_is_written_and_sounds_the_same(score: Score) -> None:
    """Any instrument, repeat signs without order, texts of any kind: the same sounds at the same places."""
    assume(score.staves[0].line)
    (back,) = read_abc(write_abc(score), irregular="keep")
    assert [(note.onset_ticks, note.duration_ticks, note.pitch.midi) for note in back.notes] == cut_at_repeats(score)
    assert [bar.start_ticks for bar in back.bars] == [bar.start_ticks for bar in score.tune.bars]


@settings(max_examples=40, deadline=None)
@given(
    bar_rows(metres=(Metre(4, 4), Metre(3, 4), Metre(6, 8))).flatmap(
        lambda bars: st.tuples(st.just(bars), grid_lines(bars))
    )
)
def test_music21_reads_the_same_sounds(made: tuple[tuple[Bar, ...], tuple[Note, ...]]) -> None:
    """An independent reader: onsets, lengths and pitches of lines in common rhythms, tuplets and ties. It knows no
    locrian mode and no tuplet of ten notes and more, and is not asked for double accidentals."""
    bars, line = made
    if line:
        simple = tuple(replace(note, pitch=Pitch(note.pitch.step, note.pitch.alter // 2)) for note in line)
        known = tuple(
            replace(bar, key=Key(bar.key.fifths, "minor" if bar.key.mode == "locrian" else bar.key.mode))
            for bar in bars
        )
        tune = Tune("Made up", simple, known)
        text = LIMITS["inline fields"](write_abc(score_of(tune)))
        assume(not re.search(r"\(\d:\d:\d\d", text))
        assert agree(own_sounds(tune), reference_sounds(text, ties_carry_accidentals=True))


def test_music21_reads_the_same_grace_notes() -> None:
    from music21 import converter

    graces = (Pitch.parse("F#5"), Pitch.parse("D5"))
    tune = tune_of("E5 F#5 G5 A5")
    text = write_abc(
        score_of(replace(tune, notes=(tune.notes[0], replace(tune.notes[1], graces=graces), *tune.notes[2:])))
    )
    notes = converter.parse(text, format="abc", forceSource=True).flatten().notes
    assert [(note.nameWithOctave, note.duration.isGrace) for note in notes] == [
        ("E5", False),
        ("F#5", True),
        ("D5", True),
        ("F#5", False),
        ("G5", False),
        ("A5", False),
    ]


def real_tunes(count: int) -> list[Tune]:
    entries = random.Random(7).sample(corpus_entries(), count)
    return [entry.read(irregular="keep") for _, entry in entries]


def differences(tune: Tune, instrument: str) -> list[str]:
    """What a tune has lost on the way; a transposed part may be spelled another way, and so may its key."""
    (back,) = read_abc(write_abc(score_of(tune, instrument)), irregular="keep")
    is_concert = instrument == "concert"
    checks = {
        "notes": [_seen(note, is_concert) for note in back.notes] == [_seen(note, is_concert) for note in tune.notes],
        "bars": [_framed(bar, is_concert) for bar in back.bars] == [_framed(bar, is_concert) for bar in tune.bars],
        "chords": [_named(span, is_concert) for span in back.chords]
        == [_named(span, is_concert) for span in tune.chords],
        "tempos": back.tempos == tune.tempos,
        "titles": (back.title, back.composer) == (tune.title, tune.composer),
    }
    return [name for name, holds in checks.items() if not holds]


def _seen(note: Note, is_spelled: bool) -> tuple[object, ...]:
    onset, length, pitch, graces, marks, lyric = facts(note)
    return (
        (onset, length, pitch, graces, marks, lyric)
        if is_spelled
        else (
            onset,
            length,
            pitch.midi,
            tuple(grace.midi for grace in graces),
            marks,
            lyric,
        )
    )


def _framed(bar: Bar, is_spelled: bool) -> Bar:
    return bar if is_spelled else replace(bar, key=Key(bar.key.fifths % 12 - 5, bar.key.mode))


def _named(span: ChordSpan, is_spelled: bool) -> tuple[object, ...]:
    root = span.chord and (span.chord.root if is_spelled else span.chord.root.pitch_class)
    return span.onset_ticks, span.duration_ticks, root, span.chord and span.chord.kind


@pytest.mark.parametrize("instrument", ["concert", "alto-sax", "tenor-sax"])
def test_real_tunes_come_back(instrument: str) -> None:
    """Tunes of the ABC books in music21's corpus; where the part's key is respelled (E major as D flat major for an
    alto saxophone), its chromatic notes come back in the same sound, in another spelling."""
    assert [differences(tune, instrument) for tune in real_tunes(60)] == [[]] * 60


@pytest.mark.slow
def test_all_real_tunes_come_back() -> None:
    failed = [
        f"{name} X:{entry.number} {found}"
        for name, entry in corpus_entries()
        if (found := differences(entry.read(irregular="keep"), "alto-sax"))
    ]
    assert failed == []


@pytest.mark.slow
def test_music21_reads_the_same_sounds_in_real_tunes() -> None:
    """Without grace notes: music21 counts them among the notes of a tuplet."""
    failed = []
    for tune in real_tunes(1500):
        tune = replace(tune, notes=tuple(replace(note, graces=()) for note in tune.notes))
        text = LIMITS["inline fields"](write_abc(score_of(tune)))
        if not agree(own_sounds(tune), reference_sounds(text, ties_carry_accidentals=True)):
            failed.append(tune.title)
    assert failed == []
