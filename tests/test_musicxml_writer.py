"""MusicXML writing.

Outside checks: the W3C's MusicXML 4.0 schema; music21 as an independent reader of what we write (sounding pitches,
places, lengths, keys, metres, chords, ornaments, order of play); verovio for the ids that an engraver keeps. Rules
for accidentals, grace notes and signs on tied notes are common practice (Gould, "Behind Bars", from memory).
"""

from dataclasses import replace
from datetime import date
from typing import Any

import music21
import pytest
from hypothesis import Phase, assume, given, settings
from lxml import etree

from fioritura.errors import OptionError, OutputError
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.notation.score import Label, Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.metre import Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import DYNAMIC_MARKS, LEVEL_MARKS, Bar, ChordSpan, Jump, Mark, Note, Tempo, Tune
from fioritura.unfold import playing_order
from tests.musicxml_schema import schema_errors
from tests.notation_strategies import CHORDS, METRES, beat_lines, scores

QUARTER = 1680
COMMON = Metre(4, 4)
C_MAJOR = Key(0)


def bars_of(count: int, key: Key = C_MAJOR, metre: Metre = COMMON) -> tuple[Bar, ...]:
    return tuple(Bar(n + 1, n * metre.bar_ticks, metre.bar_ticks, metre, key) for n in range(count))


def quarters(names: str, **changes: Any) -> tuple[Note, ...]:
    return tuple(Note(n * QUARTER, QUARTER, Pitch.parse(name), **changes) for n, name in enumerate(names.split()))


def written(
    line: tuple[Note, ...],
    bars: tuple[Bar, ...] | None = None,
    *,
    instrument: str = "concert",
    is_concert: bool = False,
    **frame: Any,
) -> bytes:
    bars = bars or bars_of(-(-line[-1].end_ticks // COMMON.bar_ticks))
    tune = Tune("Test", line, bars, **frame)
    return write_musicxml(Score(tune, (Staff(line, instrument=INSTRUMENTS[instrument]),), is_concert))


def tree(data: bytes) -> Any:
    return etree.fromstring(data)


def parsed(data: bytes) -> Any:
    return music21.converter.parseData(data.decode(), format="musicxml")


def heard(stream: Any) -> list[tuple[int, int, int]]:
    """What music21 hears in a part: (MIDI number, onset and length in ticks) of every note.

    Ties are joined here by the tie that music21 reads on each note; its own `stripTies` leaves some apart that begin
    in a tuplet after grace notes.
    """
    found: list[tuple[int, int, int]] = []
    for note in stream.toSoundingPitch().flatten().getElementsByClass(music21.note.Note):
        if note.duration.isGrace:
            continue
        onset, length = round(note.offset * QUARTER), round(note.quarterLength * QUARTER)
        if note.tie and note.tie.type in ("continue", "stop"):
            midi, first, before = found.pop()
            assert (midi, first + before) == (note.pitch.midi, onset)
            found.append((midi, first, before + length))
        else:
            found.append((note.pitch.midi, onset, length))
    return found


def expected_sound(line: tuple[Note, ...]) -> list[tuple[int, int, int]]:
    return [(note.pitch.midi, note.onset_ticks, note.duration_ticks) for note in line]


# --- Validity and repeatability -------------------------------------------------------------------------------


@given(scores())
@settings(max_examples=60, deadline=None)
def test_every_score_is_valid(score: Score) -> None:
    data = write_musicxml(score, bars_per_system=2)
    assert schema_errors(data) == []
    assert data == write_musicxml(score, bars_per_system=2)


def test_the_schema_check_can_fail() -> None:
    assert schema_errors(b'<score-partwise version="4.0"><part-list/></score-partwise>')


def test_only_a_given_date_is_written() -> None:
    score = Score(Tune("T", (), bars_of(1)), (Staff(()),))
    assert b"encoding-date" not in write_musicxml(score)
    dated = write_musicxml(score, encoded_on=date(2024, 2, 29))
    assert schema_errors(dated) == []
    assert tree(dated).findtext(".//encoding-date") == "2024-02-29"


def test_title_composer_and_software_stand_in_the_header() -> None:
    root = tree(write_musicxml(Score(Tune("A & B", (), bars_of(1), composer="Anon."), (Staff(()),), subtitle="sub")))
    assert root.findtext("work/work-title") == "A & B"
    assert root.findtext("identification/creator[@type='composer']") == "Anon."
    assert root.findtext("identification/encoding/software").startswith("Fioritura ")
    assert [credit.findtext("credit-words") for credit in root.iter("credit")] == ["A & B", "sub", "Anon."]


# --- music21 reads the same music -----------------------------------------------------------------------------


@given(scores(beat_lines))
@settings(max_examples=25, deadline=None, phases=set(Phase) - {Phase.shrink})
def test_music21_hears_the_same_notes_in_the_same_bars(score: Score) -> None:
    plain_bars = tuple(replace(bar, endings=(), jumps=(), repeats=0, opens_repeat=False) for bar in score.tune.bars)
    score = replace(score, tune=replace(score.tune, bars=plain_bars))
    data = write_musicxml(score)
    parts = parsed(data).parts
    assert len(parts) == len(score.staves)
    for element, part, staff in zip(tree(data).iter("part"), parts, score.staves, strict=True):
        assert heard(part) == expected_sound(staff.line)
        measures = part.getElementsByClass(music21.stream.Measure)
        assert [round(measure.offset * QUARTER) for measure in measures] == [bar.start_ticks for bar in plain_bars]
        assert [measure.number for measure in measures] == [bar.number for bar in plain_bars]
        diatonic = {int(each.text) % 7 for each in element.iter("diatonic")}
        if not score.is_concert and diatonic - {-staff.instrument.transposition.steps % 7}:
            continue  # a respelled key: music21 transposes key signatures by plain intervals only
        sounding = part.toSoundingPitch()
        time: Any = None
        signature: Any = None
        for bar, measure in zip(plain_bars, sounding.getElementsByClass(music21.stream.Measure), strict=True):
            time = measure.timeSignature or time
            assert time.ratioString == str(bar.metre)
            signature = measure.keySignature or signature
            assert (signature.sharps - bar.key.fifths) % 12 == 0


@given(scores(beat_lines))
@settings(max_examples=60, deadline=None, phases=set(Phase) - {Phase.shrink})
def test_our_own_reader_finds_the_tune_again(score: Score) -> None:
    line = score.staves[0].line
    assume(line and score.staves[0].shows_chords)
    plain_bars = tuple(replace(bar, endings=(), jumps=(), repeats=0, opens_repeat=False) for bar in score.tune.bars)
    tune = read_musicxml(write_musicxml(replace(score, tune=replace(score.tune, bars=plain_bars))), part=1)
    sound = [(n.pitch.midi, n.onset_ticks, n.duration_ticks, [g.midi for g in n.graces]) for n in line]
    assert [(n.pitch.midi, n.onset_ticks, n.duration_ticks, [g.midi for g in n.graces]) for n in tune.notes] == sound
    assert [(bar.key, bar.metre) for bar in tune.bars] == [(bar.key, bar.metre) for bar in plain_bars]
    assert (tune.feel, tune.tempos) == (score.tune.feel, score.tune.tempos)
    assert list(map(chord_meaning, tune.chords)) == list(map(chord_meaning, score.tune.chords))


def chord_meaning(span: ChordSpan) -> tuple[object, ...]:
    """A chord without its spelling: a root with a double accidental in the part comes back as its plain name."""
    if span.chord is None:
        return span.onset_ticks, span.text
    bass = span.chord.bass or span.chord.root
    return span.onset_ticks, span.chord.root.pitch_class, span.chord.suffix, bass.pitch_class


@pytest.mark.parametrize("id", INSTRUMENTS)
def test_parts_are_transposed_and_spelled_for_their_instrument(id: str) -> None:
    line = quarters("D4 F#4 A4 Bb4", graces=(Pitch.parse("C#4"),))
    part = parsed(written(line, bars_of(1, Key(2)), instrument=id)).parts[0]
    instrument = INSTRUMENTS[id]
    names = [note.nameWithOctave.replace("-", "b") for note in part.flatten().notes if not note.duration.isGrace]
    assert names == [str(instrument.written(note.pitch)) for note in line]
    assert heard(part) == expected_sound(line)
    interval = part.getInstrument(returnDefault=False).transposition
    assert (interval.semitones if interval else 0) == -instrument.transposition.semitones
    assert (interval.generic.staffDistance if interval else 0) == -instrument.transposition.steps


@pytest.mark.parametrize("id", ["alto-sax", "tenor-sax", "baritone-sax", "clarinet"])
@pytest.mark.parametrize("fifths", range(-6, 7))
def test_written_keys_stay_within_six_accidentals(id: str, fifths: int) -> None:
    key = Key(fifths)
    tonic = Pitch(28 + key.tonic.letter, key.tonic.alter)
    data = written((Note(0, QUARTER, tonic),), bars_of(1, key), instrument=id)
    signature = int(tree(data).findtext(".//fifths"))
    assert abs(signature) <= 6
    part = parsed(data).parts[0]
    note = part.flatten().notes[0]
    assert note.name == music21.key.KeySignature(signature).asKey("major").tonic.name
    assert heard(part) == [(tonic.midi, 0, QUARTER)]


def test_a_concert_score_is_written_as_it_sounds() -> None:
    line = quarters("C3 D3 E3 F3")
    root = tree(written(line, instrument="baritone-sax", is_concert=True))
    assert root.find(".//transpose") is None
    assert root.findtext(".//clef/sign") == "F"
    assert [step.text for step in root.iter("step")] == list("CDEF")
    assert tree(written(line, instrument="baritone-sax")).findtext(".//clef/sign") == "G"


@pytest.mark.parametrize("mode", ["major", "minor", "dorian", "mixolydian", "lydian", "phrygian", "locrian"])
def test_the_mode_is_written(mode: str) -> None:
    part = parsed(written(quarters("D4"), bars_of(1, Key.of("D", mode)))).parts[0]
    key = part.recurse().getElementsByClass(music21.key.Key).first()
    assert (key.tonic.name, key.mode) == ("D", mode)


@pytest.mark.parametrize("metre", METRES, ids=str)
def test_metres_and_their_changes(metre: Metre) -> None:
    bars = (*bars_of(1, metre=metre), replace(bars_of(1)[0], number=2, start_ticks=metre.bar_ticks))
    part = parsed(written((Note(0, metre.unit_ticks, Pitch(30)),), bars)).parts[0]
    signatures = part.recurse().getElementsByClass(music21.meter.TimeSignature)
    expected = [str(metre)] if metre == COMMON else [str(metre), "4/4"]
    assert [signature.ratioString for signature in signatures] == expected


def test_bars_of_two_staves_line_up() -> None:
    tune = Tune("T", quarters("C4 D4 E4 F4"), bars_of(1))
    ornamented = tuple(Note(n * 560, 560, Pitch(30)) for n in range(12))
    root = tree(write_musicxml(Score(tune, (Staff(tune.notes, "Plain"), Staff(ornamented, "Ornamented")))))
    first, second = root.findall("part")
    assert [measure.get("number") for measure in first] == [measure.get("number") for measure in second]
    for measure in (*first, *second):
        assert sum(int(duration.text) for duration in measure.iter("duration")) == COMMON.bar_ticks


# --- Chord symbols --------------------------------------------------------------------------------------------


def chord_at(place: int, text: str, **changes: Any) -> ChordSpan:
    return ChordSpan(place, QUARTER, None if text == "H99" or text == "N.C." else read_chord(text), text, **changes)


@pytest.mark.parametrize("text", CHORDS)
@pytest.mark.parametrize("id", ["concert", "alto-sax"])
def test_music21_reads_the_chord_symbols(text: str, id: str) -> None:
    chord = read_chord(text)
    assert chord is not None
    data = written(quarters("C4 D4 E4 F4"), instrument=id, chords=(chord_at(QUARTER, text),))
    (symbol,) = parsed(data).parts[0].toSoundingPitch().recurse().getElementsByClass(music21.harmony.ChordSymbol)
    assert symbol.root().pitchClass == chord.root.pitch_class
    assert symbol.bass().pitchClass == (chord.bass or chord.root).pitch_class
    assert round(symbol.getOffsetInHierarchy(symbol.activeSite) * QUARTER) == QUARTER
    kind = tree(data).find(".//kind")
    assert kind.text == chord.kind
    assert kind.get("text").replace("♭", "b").replace("♯", "#") == chord.suffix


def test_a_chord_inside_a_note_or_an_empty_bar_keeps_its_place() -> None:
    bars = bars_of(2)
    chords = (chord_at(3 * QUARTER, "G7"), chord_at(6 * QUARTER, "C6"))
    part = parsed(written((Note(0, 4 * QUARTER, Pitch(30)),), bars, chords=chords)).parts[0]
    symbols = part.recurse().getElementsByClass(music21.harmony.ChordSymbol)
    assert [symbol.getOffsetInHierarchy(part) for symbol in symbols] == [3.0, 6.0]


def test_no_chord_and_unknown_texts_are_kept() -> None:
    chords = (chord_at(0, "N.C."), chord_at(QUARTER, "H99"))
    data = written(quarters("C4 D4"), instrument="alto-sax", chords=chords)
    assert [(kind.text, kind.get("text")) for kind in tree(data).iter("kind")] == [("none", "N.C."), ("other", "H99")]
    assert [(span.chord, span.text) for span in read_musicxml(data).chords] == [(None, "N.C."), (None, "H99")]


def test_an_inferred_chord_stands_in_parentheses() -> None:
    data = written(quarters("C4 D4"), chords=(chord_at(0, "Bbm7", is_inferred=True),))
    harmony = tree(data).find(".//harmony")
    assert harmony.find("root/root-step").get("text") + harmony.find("kind").get("text") == "(Bm7)"
    assert harmony.find("level").get("parentheses") == "yes"
    assert read_musicxml(data).chords[0].chord == read_chord("Bbm7")


def test_degrees_are_there_but_not_printed_twice() -> None:
    degrees = tree(written(quarters("C4"), chords=(chord_at(0, "G7b9"),))).findall(".//degree")
    assert [(degree.findtext("degree-value"), degree.get("print-object")) for degree in degrees] == [("9", "no")]


# --- Notes and what hangs on them -------------------------------------------------------------------------------


SIGNS = {
    Mark.ACCENT: "articulations/accent",
    Mark.MARCATO: "articulations/strong-accent",
    Mark.STACCATO: "articulations/staccato",
    Mark.TENUTO: "articulations/tenuto",
    Mark.BREATH: "articulations/breath-mark",
    Mark.SCOOP: "articulations/scoop",
    Mark.FALL: "articulations/falloff",
    Mark.DOIT: "articulations/doit",
    Mark.FERMATA: "fermata",
    Mark.TRILL: "ornaments/trill-mark",
    Mark.TURN: "ornaments/turn",
    Mark.INVERTED_TURN: "ornaments/inverted-turn",
    Mark.MORDENT: "ornaments/mordent",
    Mark.INVERTED_MORDENT: "ornaments/inverted-mordent",
    Mark.SHAKE: "ornaments/shake",
    Mark.ROLL: "ornaments/other-ornament",
    Mark.CRAN: "ornaments/other-ornament",
    Mark.VIBRATO: "ornaments/wavy-line",
}


@pytest.mark.parametrize("level", LEVEL_MARKS)
def test_levels_stand_before_their_note(level: Mark) -> None:
    data = written(quarters("C4", marks=(level,)))
    assert schema_errors(data) == []
    assert read_musicxml(data).notes[0].marks == (level,)
    assert [sign.value for sign in parsed(data)[music21.dynamics.Dynamic]] == [level.value]


@pytest.mark.parametrize("kind", [Mark.CRESCENDO, Mark.DIMINUENDO])
def test_hairpins_reach_over_their_last_note(kind: Mark) -> None:
    """music21 hears the same hairpin from the first to the last note."""
    first, middle, last, after = quarters("C4 D4 E4 F4")
    line = (replace(first, marks=(kind,)), middle, replace(last, marks=(Mark.HAIRPIN_STOP,)), after)
    data = written(line)
    assert schema_errors(data) == []
    assert [note.marks for note in read_musicxml(data).notes] == [(kind,), (), (Mark.HAIRPIN_STOP,), ()]
    (wedge,) = parsed(data)[music21.dynamics.DynamicWedge]
    assert (type(wedge).__name__.lower(), wedge.getFirst().name, wedge.getLast().name) == (kind.value, "C", "E")


@pytest.mark.parametrize("mark", [mark for mark in Mark if not mark.startswith("slur") and mark not in DYNAMIC_MARKS])
def test_every_mark_is_written_and_read_back(mark: Mark) -> None:
    data = written(quarters("C4", marks=(mark,)))
    assert schema_errors(data) == []
    note = tree(data).find(".//note")
    if mark is Mark.GHOST:
        assert note.find("notehead").get("parentheses") == "yes"
    else:
        assert note.find(f"notations/{SIGNS[mark]}") is not None
    assert read_musicxml(data).notes[0].marks == (mark,)


@pytest.mark.parametrize(
    ("mark", "expression", "first_way"),
    [
        (Mark.MORDENT, music21.expressions.Mordent, "down"),
        (Mark.INVERTED_MORDENT, music21.expressions.InvertedMordent, "up"),
        (Mark.TURN, music21.expressions.Turn, "up"),
        (Mark.INVERTED_TURN, music21.expressions.InvertedTurn, "down"),
        (Mark.TRILL, music21.expressions.Trill, "up"),
    ],
)
def test_music21_realises_the_ornament_that_was_meant(mark: Mark, expression: type[Any], first_way: str) -> None:
    note = parsed(written(quarters("C5", marks=(mark,)))).parts[0].recurse().notes.first()
    (sign,) = note.expressions
    assert type(sign) is expression
    before, main, after = sign.realize(note)
    played = [each.pitch.midi for each in (*before, *([main] if main else []), *after)]
    way = next(midi for midi in played if midi != note.pitch.midi) - note.pitch.midi
    assert ("up" if way > 0 else "down") == first_way


def test_signs_on_a_tied_note_stand_at_the_end_they_belong_to() -> None:
    marks = (Mark.ACCENT, Mark.FALL, Mark.FERMATA, Mark.VIBRATO, Mark.TURN, Mark.SLUR_START)
    line = (Note(0, 6 * QUARTER, Pitch(35), marks=marks, lyric="la"), *quarters("C4", marks=(Mark.SLUR_STOP,)))
    line = (line[0], replace(line[1], onset_ticks=6 * QUARTER))
    first, second, third, _ = tree(written(line)).iter("note")
    assert [note.get("id") for note in (first, second, third)] == ["s1-n0", "s1-n0-2", "s1-n1"]
    tags = [[element.tag for element in note.find("notations").iter()] for note in (first, second)]
    assert {"accent", "turn", "tied", "slur"} <= set(tags[0]) and not {"falloff", "fermata"} & set(tags[0])
    assert {"falloff", "fermata", "tied"} <= set(tags[1]) and not {"accent", "turn", "slur"} & set(tags[1])
    waves = [note.find("notations/ornaments/wavy-line").get("type") for note in (first, second)]
    assert waves == ["start", "stop"]
    assert (first.find("lyric") is None, second.find("lyric") is None) == (False, True)
    assert third.find("notations/slur").get("type") == "stop"


def test_one_grace_is_slashed_and_several_are_beamed() -> None:
    line = (
        Note(0, QUARTER, Pitch(35), graces=(Pitch(34),)),
        Note(QUARTER, QUARTER, Pitch(35), graces=(Pitch(34), Pitch(36), Pitch(34))),
    )
    data = written(line)
    graces = [note for note in tree(data).iter("note") if note.find("grace") is not None]
    assert [note.get("id") for note in graces] == ["s1-n0-g1", "s1-n1-g1", "s1-n1-g2", "s1-n1-g3"]
    assert [note.find("grace").get("slash") for note in graces] == ["yes", "no", "no", "no"]
    assert [note.findtext("type") for note in graces] == ["eighth", "16th", "16th", "16th"]
    assert [[beam.text for beam in note.iter("beam")] for note in graces] == [
        [], ["begin", "begin"], ["continue", "continue"], ["end", "end"]
    ]  # fmt: skip
    slurs = parsed(data).parts[0].recurse().getElementsByClass(music21.spanner.Slur)
    ends = [(slur.getFirst().duration.isGrace, slur.getLast().duration.isGrace) for slur in slurs]
    assert ends == [(True, False), (True, False)]


def test_a_scoop_from_a_grace_note_is_a_slide() -> None:
    root = tree(written(quarters("C4", graces=(Pitch.parse("B3"),), marks=(Mark.SCOOP,))))
    assert [slide.get("type") for slide in root.iter("slide")] == ["start", "stop"]
    assert next(root.iter("scoop", "slur"), None) is None


def test_slurs_are_paired_and_lone_signs_left_out() -> None:
    marks = [(Mark.SLUR_STOP,), (Mark.SLUR_START,), (Mark.SLUR_STOP, Mark.SLUR_START), (Mark.SLUR_STOP,)]
    marks += [(Mark.SLUR_START,)]
    line = tuple(replace(note, marks=m) for note, m in zip(quarters("C4 D4 E4 F4 G4"), marks, strict=True))
    data = written(line)
    spans = parsed(data).parts[0].recurse().getElementsByClass(music21.spanner.Slur)
    assert [(slur.getFirst().name, slur.getLast().name) for slur in spans] == [("D", "E"), ("E", "F")]
    assert len(list(tree(data).iter("slur"))) == 4


def test_syllables_of_a_word() -> None:
    line = tuple(
        replace(n, lyric=t) for n, t in zip(quarters("C4 D4 E4 F4"), ("A-", "ma-", "zing", "grace"), strict=True)
    )
    lyrics = [note.lyrics[0] for note in parsed(written(line)).parts[0].recurse().notes]
    assert [(lyric.text, lyric.syllabic) for lyric in lyrics] == [
        ("A", "begin"), ("ma", "middle"), ("zing", "end"), ("grace", "single")
    ]  # fmt: skip


def test_music21_reads_beams_and_tuplets() -> None:
    lengths = [560, 560, 560, 1260, 420, 420, 840, 420, 840, 840]
    places = [sum(lengths[:n]) for n in range(len(lengths))]
    line = tuple(Note(place, length, Pitch(33)) for place, length in zip(places, lengths, strict=True))
    data = written(line)
    notes = list(parsed(data).parts[0].recurse().notes)
    assert [[beam.type for beam in note.beams] for note in notes] == [
        ["start"], ["continue"], ["stop"],
        ["start"], ["stop", "partial"],
        ["start", "partial"], ["continue"], ["stop", "partial"],
        ["start"], ["stop"],
    ]  # fmt: skip
    assert [beam.direction for note in notes for beam in note.beams if beam.type == "partial"] == [
        "left",
        "right",
        "left",
    ]
    assert [note.duration.tuplets[0].type if note.duration.tuplets else None for note in notes[:4]] == [
        "start", None, "stop", None
    ]  # fmt: skip
    assert tree(data).find(".//tuplet").get("bracket") == "no"


# --- Accidentals -----------------------------------------------------------------------------------------------


def signs_of(names: str, fifths: int = 0, **kwargs: Any) -> list[str]:
    """The accidental of each note ("" for none); a courtesy in parentheses; bars of four quarters."""
    data = written(quarters(names), bars_of(-(-len(names.split()) // 4), Key(fifths)), **kwargs)
    found = []
    for note in tree(data).iter("note"):
        sign = note.find("accidental")
        if note.find("pitch") is not None:
            text = "" if sign is None else sign.text
            found.append(f"({text})" if sign is not None and sign.get("cautionary") == "yes" else text)
    return found


@pytest.mark.parametrize(
    ("names", "fifths", "signs"),
    [
        ("C4 F#4 F#4 F4", 0, ["", "sharp", "", "natural"]),
        ("F#4 F4 F#4 C4", 1, ["", "natural", "sharp", ""]),
        ("F#4 C4 C4 C4 F4 F4 C4 C4", 0, ["sharp", "", "", "", "(natural)", "", "", ""]),
        ("F#4 C4 C4 C4 F#4 C4 C4 C4 F4 C4", 0, ["sharp", "", "", "", "sharp", "", "", "", "(natural)", ""]),
        ("F#4 F5 C4 C4", 0, ["sharp", "(natural)", "", ""]),
        ("F#4 F#5 C4 C4", 0, ["sharp", "sharp", "", ""]),
        ("Bb4 Bbb4 B4 B#4", -2, ["", "flat-flat", "natural", "sharp"]),
        ("F##4 F#4 A4 A4", 3, ["double-sharp", "sharp", "", ""]),
    ],
)
def test_accidentals_by_common_practice(names: str, fifths: int, signs: list[str]) -> None:
    assert signs_of(names, fifths) == signs


def test_a_tie_over_the_bar_line_carries_its_accidental_and_no_further() -> None:
    sharp = Pitch.parse("F#4")
    line = (
        Note(3 * QUARTER, 2 * QUARTER, sharp),
        Note(5 * QUARTER, QUARTER, sharp),
        Note(6 * QUARTER, QUARTER, Pitch(31)),
    )
    notes = [note for note in tree(written(line)).iter("note") if note.find("pitch") is not None]
    assert [note.findtext("accidental", "") for note in notes] == ["sharp", "", "sharp", "natural"]


def sight_read(measure: Any, signature: dict[str, int], carried: int) -> tuple[list[tuple[int, int]], int]:
    """The alterations that a player reads from staff places, signature, accidentals and ties alone, next to those
    that the pitch elements give."""
    alters = {"flat-flat": -2, "flat": -1, "natural": 0, "sharp": 1, "double-sharp": 2}
    in_force, read = {}, []
    for note in measure.iter("note"):
        if note.find("pitch") is None:
            continue
        place = (note.findtext("pitch/step"), note.findtext("pitch/octave"))
        if any(tie.get("type") == "stop" for tie in note.iter("tie")):
            alter = carried
        else:
            if note.find("accidental") is not None:
                in_force[place] = alters[note.findtext("accidental")]
            alter = in_force.get(place, signature[place[0]])
        read.append((alter, int(note.findtext("pitch/alter", "0"))))
        carried = alter
    return read, carried


@given(scores())
@settings(max_examples=40, deadline=None)
def test_a_player_reads_the_right_accidentals(score: Score) -> None:
    for part in tree(write_musicxml(score)).iter("part"):
        signature, carried = {}, 0
        for measure in part:
            fifths = measure.findtext("attributes/key/fifths")
            if fifths is not None:
                altered = music21.key.KeySignature(int(fifths)).alteredPitches
                signature = dict.fromkeys("CDEFGAB", 0) | {pitch.step: int(pitch.alter) for pitch in altered}
            read, carried = sight_read(measure, signature, carried)
            assert all(seen == meant for seen, meant in read)


# --- Bars, repeats, tempo, labels --------------------------------------------------------------------------------


def form(*changes: dict[str, Any]) -> Tune:
    """Bars that each hold one whole note of their own pitch."""
    bars = tuple(replace(bar, **change) for bar, change in zip(bars_of(len(changes)), changes, strict=True))
    return Tune("T", tuple(Note(bar.start_ticks, 6720, Pitch(25 + bar.number)) for bar in bars), bars)


FORMS = {
    "repeat": form({}, {"opens_repeat": True}, {"repeats": 1}, {}),
    "repeat from the start": form({}, {"repeats": 1}, {}),
    "three times": form({"opens_repeat": True}, {"repeats": 2}, {}),
    "endings": form({"opens_repeat": True}, {"endings": (1,), "repeats": 1}, {"endings": (2,)}, {}),
    "long endings": form(
        {"opens_repeat": True}, {"endings": (1,)}, {"endings": (1,), "repeats": 1}, {"endings": (2,)}, {"endings": (2,)}, {}
    ),
    "da capo al fine": form({}, {"jumps": (Jump.FINE,), "ends_section": True}, {}, {"jumps": (Jump.DA_CAPO,)}),
    "dal segno al coda": form(
        {},
        {"jumps": (Jump.SEGNO,)},
        {"jumps": (Jump.TO_CODA,)},
        {},
        {"jumps": (Jump.DAL_SEGNO,), "ends_section": True},
        {"jumps": (Jump.CODA,)},
    ),
}  # fmt: skip


@pytest.mark.parametrize("tune", FORMS.values(), ids=list(FORMS))
def test_music21_plays_the_bars_in_the_same_order(tune: Tune) -> None:
    data = write_musicxml(Score(tune, (Staff(tune.notes), Staff(tune.notes))))
    assert schema_errors(data) == []
    played = parsed(data).parts[0].expandRepeats().recurse().notes
    assert [note.pitch.midi for note in played] == [
        tune.notes[index].pitch.midi for index in playing_order(tune.bars)
    ]
    assert read_musicxml(data, part=1).bars == tune.bars


def test_a_pickup_is_bar_0_and_a_split_bar_has_one_number() -> None:
    bars = (
        Bar(0, 0, QUARTER, COMMON, Key(0)),
        Bar(1, QUARTER, 3 * QUARTER, COMMON, Key(0), repeats=1),
        Bar(1, 4 * QUARTER, QUARTER, COMMON, Key(0), is_pickup=True, opens_repeat=True),
        Bar(2, 5 * QUARTER, 4 * QUARTER, COMMON, Key(0)),
    )
    line = tuple(Note(n * QUARTER, QUARTER, Pitch(30)) for n in range(9))
    measures = tree(written(line, bars)).findall(".//measure")
    assert [(m.get("number"), m.get("implicit")) for m in measures] == [
        ("0", "yes"),
        ("1", None),
        ("X1", "yes"),
        ("2", None),
    ]


@pytest.mark.parametrize(
    ("metre", "tempo", "unit", "dotted", "per_minute"),
    [
        ("4/4", 132.0, "quarter", False, "132"),
        ("6/8", 90.0, "quarter", True, "60"),
        ("2/2", 160.0, "half", False, "80"),
    ],
)
def test_the_tempo_counts_the_beats_of_the_metre(
    metre: str, tempo: float, unit: str, dotted: bool, per_minute: str
) -> None:
    data = written(quarters("C4 D4"), bars_of(1, metre=Metre.parse(metre)), tempos=(Tempo(0, tempo),))
    metronome = tree(data).find(".//metronome")
    assert metronome.findtext("beat-unit") == unit
    assert (metronome.find("beat-unit-dot") is not None) == dotted
    assert metronome.findtext("per-minute") == per_minute
    mark = parsed(data).recurse().getElementsByClass(music21.tempo.MetronomeMark).first()
    assert mark.getQuarterBPM() == tempo


@pytest.mark.parametrize("tempos", [(), (Tempo(0, 120.0),)])
def test_swing_is_said_in_words_and_for_players(tempos: tuple[Tempo, ...]) -> None:
    data = written(quarters("C4 D4"), feel="swing", tempos=tempos)
    assert schema_errors(data) == []
    root = tree(data)
    assert [words.text for words in root.iter("words")] == ["Swing"]
    assert [root.findtext(f".//swing/{tag}") for tag in ("first", "second", "swing-type")] == ["2", "1", "eighth"]
    assert read_musicxml(data).feel == "swing"
    assert tree(written(quarters("C4 D4"))).find(".//swing") is None


def test_labels_stand_above_their_notes_with_ids() -> None:
    labels = (Label(QUARTER, "turn", 0), Label(QUARTER + 840, "fall"))
    line = quarters("C4 D4 E4 F4")
    root = tree(write_musicxml(Score(Tune("T", line, bars_of(1)), (Staff(line), Staff(line, labels=labels)))))
    words = list(root.iter("words"))
    assert [(w.text, w.get("id"), w.get("font-style")) for w in words] == [
        ("turn", "s2-l0", "italic"), ("fall", "s2-l1", "italic")
    ]  # fmt: skip
    directions = list(root.iter("direction"))
    assert [direction.getnext().getnext().get("id") for direction in directions[:1]] == ["s2-n1"]
    assert directions[1].findtext("offset") == "840"


@pytest.mark.parametrize(("per_system", "starts"), [(None, []), (1, ["2", "3", "4"]), (2, ["3"]), (3, ["4"])])
def test_systems_of_so_many_bars(per_system: int | None, starts: list[str]) -> None:
    pickup = Bar(0, 0, QUARTER, COMMON, Key(0))
    full = tuple(replace(bar, start_ticks=bar.start_ticks + QUARTER) for bar in bars_of(4))
    score = Score(Tune("T", (), (pickup, *full)), (Staff(()), Staff(())))
    root = tree(write_musicxml(score, bars_per_system=per_system))
    for part in root.iter("part"):
        assert [m.get("number") for m in part if m.find("print[@new-system='yes']") is not None] == starts


def test_verovio_keeps_the_ids_of_all_notes() -> None:
    import verovio

    line = (Note(0, 6 * QUARTER, Pitch(33), graces=(Pitch(32),)), Note(6 * QUARTER, QUARTER, Pitch(34)))
    data = write_musicxml(Score(Tune("T", line, bars_of(2)), (Staff(line), Staff(line))))
    ids = {note.get("id") for note in tree(data).iter("note") if note.get("id")}
    assert ids == {f"s{staff}-{name}" for staff in (1, 2) for name in ("n0-g1", "n0", "n0-2", "n1")}
    toolkit = verovio.toolkit()
    assert toolkit.loadData(data.decode())
    svg = toolkit.renderToSVG(1)
    assert all(f'id="{id}"' in svg for id in ids)


# --- What can't be written ----------------------------------------------------------------------------------------


def test_bad_input_is_refused_in_words() -> None:
    tune = Tune("T", (), bars_of(1))
    with pytest.raises(OptionError, match="0 bars a system"):
        write_musicxml(Score(tune, (Staff(()),)), bars_per_system=0)
    with pytest.raises(OutputError, match="without staves"):
        write_musicxml(Score(tune, ()))
    with pytest.raises(OutputError, match="octaves 0 to 9"):
        written((Note(0, QUARTER, Pitch.parse("C-1")),))
