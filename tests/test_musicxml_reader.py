"""Reading MusicXML. What an element means is the W3C MusicXML 4.0 report's word; the files in tests/data are our own
tunes and valid against its XSD. An independent reader compares in test_musicxml_corpus.py."""

from __future__ import annotations

from dataclasses import replace

import pytest
from lxml import etree

from fioritura.errors import OptionError, ReadError, TuneError
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.notation.read import read_tune
from fioritura.notation.score import Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.tune import Jump, Mark, Tune
from fioritura.unfold import playing_order
from fioritura.words import say

from .musicxml_schema import schema_errors
from .musicxml_text import DATA, attributes, harmony, note, notes, score, score_of

FULL = notes("C4 D4 E4 F4")


def sounding(tune: Tune) -> list[tuple[str, float]]:
    return [(str(n.pitch), n.duration_ticks / QUARTER) for n in tune.notes]


def marked(notation: str, **options: str) -> tuple[Mark, ...]:
    first = note("C4", 8, after=f"<notations>{notation}</notations>", **options)
    return read_musicxml(score(attributes() + first + notes("D4:8"))).notes[0].marks


@pytest.mark.parametrize("name", ["lantern_lane", "quayside_waltz", "two_rooms"])
def test_the_hand_written_files_are_valid_musicxml(name: str) -> None:
    assert schema_errors((DATA / f"{name}.musicxml").read_bytes()) == []


def test_a_lead_sheet_comes_through_whole() -> None:
    tune = read_tune(DATA / "lantern_lane.musicxml")
    assert (tune.title, tune.composer, tune.part_name) == ("Lantern Lane", "The Fioritura founders", "Lead")
    assert (str(tune.key), str(tune.metre), tune.feel, tune.quarters_per_minute) == ("F major", "4/4", "swing", 132.0)
    assert tune.warnings == ()
    assert [bar.number for bar in tune.bars] == list(range(9))
    assert tune.pickup_ticks == QUARTER
    assert tune.bars[1].opens_repeat and tune.bars[4].repeats == 1
    assert [bar.endings for bar in tune.bars] == [(), (), (), (), (1,), (2,), (), (), ()]
    assert playing_order(tune.bars) == [0, 1, 2, 3, 4, 1, 2, 3, 5, 6, 7, 8]
    assert [span.text for span in tune.chords] == (
        [
            "F6",
            "D7b9",
            "Gm7",
            "C13",
            "Am7b5",
            "D7(#5,#9)",
            "Gm/Bb",
            "C9sus4",
            "Bbm(maj7)",
            "Eb7#11",
            "F/A",
            "Ab°7",
            "N.C.",
            "FΔ7",
            "F+",
            "F6/9",
        ]
    )
    assert [span.text for span in tune.chords if span.chord is None] == ["N.C."]


def test_the_notes_of_the_lead_sheet_are_exact() -> None:
    tune = read_tune(DATA / "lantern_lane.musicxml")
    by_name = {str(n.pitch) + f"@{n.onset_ticks / QUARTER:g}": n for n in tune.notes}
    assert by_name["C5@3"].duration_ticks == 2.5 * QUARTER
    assert [n.onset_ticks for n in tune.notes if n.duration_ticks == QUARTER // 3] == [
        7 * QUARTER,
        7 * QUARTER + QUARTER // 3,
        7 * QUARTER + 2 * QUARTER // 3,
    ]
    assert [str(grace) for grace in by_name["A4@9"].graces] == ["G#4"]
    assert [n.lyric for n in tune.notes[:5]] == ["Lan-", "tern", "light", "on", "snow"]
    assert {str(n.pitch): n.marks for n in tune.notes if Mark.FALL in n.marks} == {"Db5": (Mark.FALL,)}
    assert tune.notes[2].marks == (Mark.SLUR_START,) and tune.notes[3].marks == (Mark.SLUR_STOP,)


def test_a_transposing_part_is_chosen_and_sounds_right_with_the_other_parts_chords_and_tempo() -> None:
    tune = read_tune(DATA / "quayside_waltz.musicxml")
    assert tune.part_name == "Alto Saxophone"
    assert "the melody was taken from Alto Saxophone; there are: 1 Piano and 2 Alto Saxophone" in say(
        tune.warnings[0]
    )
    assert str(tune.key) == "C major"
    assert sounding(tune)[:4] == [("C4", 1.5), ("D4", 0.5), ("E4", 1.0), ("G4", 4.0)]
    assert [span.text for span in tune.chords] == ["C", "G7", "G7", "C"]
    assert tune.quarters_per_minute == 120.0  # a dotted half at 40


def test_another_part_can_be_asked_for_and_of_its_chords_the_top_line_is_taken() -> None:
    piano = read_tune(DATA / "quayside_waltz.musicxml", part="piano")
    low = read_tune(DATA / "quayside_waltz.musicxml", part="piano", line="bottom")
    assert (str(piano.notes[0].pitch), str(low.notes[0].pitch)) == ("G4", "E4")
    assert "several notes sound at once: the top line is taken" in " ".join(map(say, piano.warnings))
    assert read_tune(DATA / "quayside_waltz.musicxml", part=2).part_name == "Alto Saxophone"
    with pytest.raises(OptionError, match="there are: 1 Piano and 2 Alto Saxophone"):
        read_tune(DATA / "quayside_waltz.musicxml", part="tuba")


def test_a_size_of_type_that_is_no_number_counts_as_none() -> None:
    text = (DATA / "two_rooms.musicxml").read_text(encoding="utf-8")
    assert 'font-size="24"' in text
    assert read_musicxml(text.replace('font-size="24"', 'font-size="²"').encode()).title != "Two Rooms"


def test_key_and_metre_changes_and_unmeasured_bars() -> None:
    tune = read_tune(DATA / "two_rooms.musicxml")
    assert tune.title == "Two Rooms"  # from the largest credit words
    assert [str(bar.key) for bar in tune.bars] == ["E minor"] * 2 + ["C minor"] * 4
    assert [str(bar.metre) for bar in tune.bars] == ["4/4", "4/4", "6/8", "6/8", "5/4", "2/2"]
    assert [bar.ends_section for bar in tune.bars] == [False, True, False, False, False, False]


@pytest.mark.parametrize(
    "kind, text, more, expected, kind_read",
    [
        ("major", "", "", "C", "major"),
        ("minor-seventh", "-7", "", "C-7", "minor-seventh"),
        ("dominant", "7alt", "", "C7alt", "dominant"),
        ("dominant", "7sus4", "", "C7sus4", "suspended-fourth"),
        ("minor-seventh", "7", "", "Cm7", "minor-seventh"),
        ("other", "7alt", "", "C7alt", "dominant"),
        ("half-diminished", "ø7", "", "Cø7", "half-diminished"),
        ("major-seventh", "", "<inversion>1</inversion>", "Cmaj7/E", "major-seventh"),
        ("minor", "m", "<bass><bass-step>E</bass-step><bass-alter>-1</bass-alter></bass>", "Cm/Eb", "minor"),
    ],
)
def test_chord_symbols(kind: str, text: str, more: str, expected: str, kind_read: str) -> None:
    tune = read_musicxml(score(attributes() + harmony("C", kind, text, more) + FULL))
    assert tune.chords[0].text == expected
    assert tune.chords[0].chord and tune.chords[0].chord.kind == kind_read


def test_a_chord_symbol_without_a_meaning_is_kept_and_reported() -> None:
    numeral = "<harmony><function>V7</function><kind>dominant</kind></harmony>"
    tune = read_musicxml(score(attributes() + numeral + FULL))
    assert (tune.chords[0].text, tune.chords[0].chord) == ("V7", None)
    assert "bar 1: “V7” can't be read" in say(tune.warnings[0])


def test_a_chord_symbol_counts_at_its_offset_and_sounds_in_a_transposing_part() -> None:
    transpose = "<transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></transpose>"
    chord = harmony("A", "minor", more="<offset>8</offset>")
    tune = read_musicxml(score(attributes(more=transpose) + chord + FULL))
    assert (tune.chords[0].text, tune.chords[0].onset_ticks) == ("Gm", 2 * QUARTER)
    assert str(tune.key) == "Bb major"


@pytest.mark.parametrize(
    "transpose, written, sounds",
    [
        ("<diatonic>-5</diatonic><chromatic>-9</chromatic>", "A4", "C4"),
        ("<diatonic>-1</diatonic><chromatic>-2</chromatic><octave-change>-1</octave-change>", "D5", "C4"),
        ("<chromatic>-2</chromatic>", "D4", "C4"),
        ("<chromatic>0</chromatic><octave-change>-1</octave-change>", "C5", "C4"),
    ],
)
def test_transposition_leads_from_written_to_sounding_pitch(transpose: str, written: str, sounds: str) -> None:
    """The examples are alto and tenor saxophone, B flat trumpet without a diatonic value, and guitar."""
    text = attributes(more=f"<transpose>{transpose}</transpose>") + note(written, 16)
    assert str(read_musicxml(score(text)).notes[0].pitch) == sounds


def test_octave_shift_lines_and_octave_clefs_change_nothing() -> None:
    """W3C: the pitch element is the true octave; an octave-shift says how it is printed."""
    shift = '<direction><direction-type><octave-shift type="down" size="8"/></direction-type></direction>'
    clef = "<clef><sign>G</sign><line>2</line><clef-octave-change>-1</clef-octave-change></clef>"
    assert sounding(read_musicxml(score(attributes(more=clef) + shift + FULL)))[0] == ("C4", 1.0)


@pytest.mark.parametrize(
    "notation, mark",
    [
        ("<articulations><staccato/></articulations>", Mark.STACCATO),
        ("<articulations><strong-accent/></articulations>", Mark.MARCATO),
        ("<articulations><scoop/></articulations>", Mark.SCOOP),
        ("<articulations><falloff/></articulations>", Mark.FALL),
        ("<articulations><doit/></articulations>", Mark.DOIT),
        ("<articulations><breath-mark/></articulations>", Mark.BREATH),
        ('<articulations><other-articulation smufl="brassScoop"/></articulations>', Mark.SCOOP),
        ("<technical><other-technical>fall</other-technical></technical>", Mark.FALL),
        ("<ornaments><trill-mark/></ornaments>", Mark.TRILL),
        ("<ornaments><inverted-turn/></ornaments>", Mark.INVERTED_TURN),
        ("<ornaments><mordent/></ornaments>", Mark.MORDENT),
        ("<ornaments><shake/></ornaments>", Mark.SHAKE),
        ('<ornaments><wavy-line type="start"/></ornaments>', Mark.VIBRATO),
        ("<fermata/>", Mark.FERMATA),
    ],
)
def test_marks(notation: str, mark: Mark) -> None:
    assert marked(notation) == (mark,)


def test_signs_that_have_no_place_are_counted_in_a_warning() -> None:
    text = attributes() + note("C4", 16, after='<notations><glissando type="start"/></notations>')
    assert "1 glissando sign left out" in say(read_musicxml(score(text)).warnings[0])


def test_slurs_from_a_grace_note_go_to_the_main_note_or_without_saying() -> None:
    def slur(kind: str, number: int = 1) -> str:
        return f'<notations><slur type="{kind}" number="{number}"/></notations>'

    grace = note("B3", before="<grace/>", after=slur("start"))
    short = score(attributes() + grace + note("C4", 8, after=slur("stop")) + notes("D4:8"))
    long = score(attributes() + grace + note("C4", 8) + note("D4", 8, after=slur("stop")))
    assert [n.marks for n in read_musicxml(short).notes] == [(), ()]
    assert [n.marks for n in read_musicxml(long).notes] == [(Mark.SLUR_START,), (Mark.SLUR_STOP,)]
    assert [str(p) for p in read_musicxml(long).notes[0].graces] == ["B3"]


def test_grace_notes_wait_for_the_next_note_over_a_bar_line() -> None:
    grace = note("B3", before="<grace/>")
    tune = read_musicxml(score(attributes() + FULL + grace, FULL))
    assert [str(p) for p in tune.notes[4].graces] == ["B3"]


def test_a_duration_that_the_divisions_only_round_is_exact_by_its_type_and_tuplet() -> None:
    """Divisions of 4 can't hold a triplet: 1, 1 and 2 of them stand for three thirds of a quarter."""
    triplet = "<type>eighth</type><time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>"
    text = attributes() + "".join(note("C4", n, after=triplet) for n in (1, 1, 2)) + notes("D4 E4 F4")
    tune = read_musicxml(score(text))
    assert [n.onset_ticks for n in tune.notes] == [0, 560, 1120, 1680, 3360, 5040]
    assert tune.bars[0].duration_ticks == 4 * QUARTER


def test_lengths_finer_than_a_tick_are_rounded_with_a_warning() -> None:
    eleven = "<type>16th</type><time-modification><actual-notes>11</actual-notes><normal-notes>8</normal-notes></time-modification>"
    text = attributes().replace("<divisions>4</divisions>", "<divisions>11</divisions>")
    body = "".join(note("C4" if i % 2 else "D4", 2, after=eleven) for i in range(11)) + note("C4", 22)
    tune = read_musicxml(score(text + body))
    assert tune.bars[0].duration_ticks == 4 * QUARTER
    assert sum(n.duration_ticks for n in tune.notes) == 4 * QUARTER
    assert "finer than 1/1680 of a quarter note" in say(tune.warnings[0])


def test_backup_forward_and_a_second_voice() -> None:
    second = "<backup><duration>16</duration></backup>" + note("C3", 16, voice="2")
    gap = note("C4", 4) + "<forward><duration>4</duration></forward>" + note("E4", 8)
    tune = read_musicxml(score(attributes() + gap + second))
    assert [(str(n.pitch), n.onset_ticks // QUARTER) for n in tune.notes] == [("C4", 0), ("E4", 2)]
    assert "only voice 1 of the top staff was read; 1 note of other voices" in say(tune.warnings[0])


def test_a_piano_staff_gives_its_upper_staff_and_voices_that_cross_staves_stay_whole() -> None:
    low = "<backup><duration>16</duration></backup>" + note("C2", 16, voice="5", after="<staff>2</staff>")
    upper = notes("C5 D5").replace("</note>", "<staff>1</staff></note>")
    crossing = notes("E3 F3").replace("</note>", "<staff>2</staff></note>")
    tune = read_musicxml(score(attributes(more="<staves>2</staves>") + upper + crossing + low))
    assert [str(n.pitch) for n in tune.notes] == ["C5", "D5", "E3", "F3"]


def test_grace_notes_without_a_note_to_follow_are_reported() -> None:
    tune = read_musicxml(score(attributes() + FULL + note("B3", before="<grace/>")))
    assert "grace notes at the end" in say(tune.warnings[0])


def test_cue_and_slash_notes_are_not_melody() -> None:
    cue = note("G5", 4, before="<cue/>")
    slash = note("B4", 4, after="<notehead>slash</notehead>")
    tune = read_musicxml(score(attributes() + cue + slash + notes("C4:8")))
    assert sounding(tune) == [("C4", 2.0)]


def test_repeats_with_times_and_jumps() -> None:
    times = '<barline location="right"><repeat direction="backward" times="3"/></barline>'
    sign = "<direction><direction-type><segno/></direction-type></direction>"
    order = '<direction><direction-type><words>D.S. al Fine</words></direction-type><sound dalsegno="a"/></direction>'
    fine = "<direction><direction-type><words>Fine</words></direction-type></direction>"
    tune = read_musicxml(score(attributes() + FULL + times, sign + FULL, FULL + fine, FULL + order))
    assert tune.bars[0].repeats == 2
    assert [bar.jumps for bar in tune.bars] == [(), (Jump.SEGNO,), (Jump.FINE,), (Jump.DAL_SEGNO,)]
    assert playing_order(tune.bars) == [0, 0, 0, 1, 2, 3, 1, 2]


def test_two_bare_coda_signs_are_where_to_leave_and_where_to_go() -> None:
    coda = "<direction><direction-type><coda/></direction-type></direction>"
    capo = "<direction><direction-type><words>D.C. al Coda</words></direction-type></direction>"
    tune = read_musicxml(score(attributes() + FULL, coda + FULL, FULL + capo, coda + FULL))
    assert [bar.jumps for bar in tune.bars] == [(), (Jump.TO_CODA,), (Jump.DA_CAPO,), (Jump.CODA,)]


def test_a_segno_at_the_end_of_a_bar_belongs_to_the_next() -> None:
    sign = "<direction><direction-type><segno/></direction-type></direction>"
    tune = read_musicxml(score(attributes() + FULL + sign, FULL))
    assert [bar.jumps for bar in tune.bars] == [(), (Jump.SEGNO,)]


def test_an_ending_that_is_never_closed_ends_with_its_repeat() -> None:
    first = '<barline location="left"><ending number="1" type="start"/></barline>'
    back = '<barline location="right"><repeat direction="backward"/></barline>'
    second = '<barline location="left"><ending number="2" type="start"/></barline>'
    stop = '<barline location="right"><ending number="2" type="discontinue"/></barline>'
    tune = read_musicxml(score(attributes() + FULL, first + FULL, FULL + back, second + FULL + stop, FULL))
    assert [bar.endings for bar in tune.bars] == [(), (1,), (1,), (2,), ()]


@pytest.mark.parametrize(
    "direction, tempo, feel",
    [
        ('<sound tempo="96"/>', 96.0, "straight"),
        (
            "<direction><direction-type><metronome><beat-unit>quarter</beat-unit><beat-unit-dot/>"
            "<per-minute>80</per-minute></metronome></direction-type></direction>",
            120.0,
            "straight",
        ),
        ("<sound><swing><first>2</first><second>1</second></swing></sound>", 120.0, "swing"),
        ("<sound><swing><straight/></swing></sound>", 120.0, "straight"),
        ("<direction><direction-type><words>Easy swing</words></direction-type></direction>", 120.0, "swing"),
    ],
)
def test_tempo_and_feel(direction: str, tempo: float, feel: str) -> None:
    tune = read_musicxml(score(attributes() + direction + FULL))
    assert (tune.quarters_per_minute, tune.feel) == (tempo, feel)


def test_a_timewise_score_reads_like_a_partwise_one() -> None:
    partwise = (DATA / "quayside_waltz.musicxml").read_bytes()
    root = etree.fromstring(partwise)
    timewise = etree.Element("score-timewise", version="4.0")
    timewise.extend([child for child in root if child.tag != "part"])
    for number in range(4):
        measure = etree.SubElement(timewise, "measure", number=str(number + 1))
        for part in root.iterfind("part"):
            copy = etree.SubElement(measure, "part", id=part.get("id", ""))
            copy.extend(list(part[0]))
            part.remove(part[0])
    assert read_musicxml(etree.tostring(timewise)) == read_musicxml(partwise)


def test_composite_metres_are_summed() -> None:
    time_of_five = "<time><beats>3+2</beats><beat-type>8</beat-type><beats>1</beats><beat-type>4</beat-type></time>"
    text = f"<attributes><divisions>4</divisions>{time_of_five}</attributes>" + notes("C4:6 D4:4 E4:4")
    assert str(read_musicxml(score(text)).metre) == "7/8"


def test_without_any_time_signature_bars_have_the_metre_of_their_content() -> None:
    text = "<attributes><divisions>4</divisions></attributes>"
    tune = read_musicxml(score(text + FULL, notes("C4 D4 E4")))
    assert [str(bar.metre) for bar in tune.bars] == ["4/4", "3/4"]


@pytest.mark.parametrize(
    "number_of_measure, fault",
    [('number="X1" implicit="yes"', False), ('number="2a"', False), ('number="2"', True)],
)
def test_a_bar_that_the_file_does_not_count_may_be_short(number_of_measure: str, fault: bool) -> None:
    measures = (attributes() + FULL, f"<measure {number_of_measure}>{notes('C4 D4 E4')}</measure>", FULL)
    if fault:
        with pytest.raises(TuneError, match="bar 2 holds 3 quarter notes where 4/4 has 4"):
            read_musicxml(score(*measures))
    else:
        assert len(read_musicxml(score(*measures)).bars) == 3


@pytest.mark.parametrize(
    "body, message",
    [
        ("<attributes><divisions>x</divisions></attributes>", "<divisions> holds “x”"),
        ("<attributes><divisions>0</divisions></attributes>", "0 divisions"),
        ("<attributes><divisions>1e999999</divisions></attributes>", "makes no sense"),
        (note("H4", 4), "<step> holds “H”"),
        (note("C4", -4), "negative duration"),
        ("<note><pitch><step>C</step></pitch><duration>4</duration></note>", "<octave> is missing"),
        (
            "<note><pitch><step>C</step><octave>99</octave></pitch><duration>4</duration></note>",
            "<octave> holds “99”",
        ),
        ("<note><rest/></note>", "<duration> is missing"),
        ("<backup><duration>99</duration></backup>" + FULL, "before the start of the measure"),
        ("<attributes><transpose><chromatic>999</chromatic></transpose></attributes>" + FULL, "<chromatic> holds"),
    ],
)
def test_values_that_make_no_sense_are_refused_by_line(body: str, message: str) -> None:
    with pytest.raises(ReadError, match=message) as caught:
        read_musicxml(score(attributes() + FULL + body))
    assert str(caught.value).startswith("Line ")


@pytest.mark.parametrize("beats, unit", [(0, 4), (99, 8), (4, 3), ("x", 4), (-3, 4)])
def test_metres_out_of_reach_are_refused(beats: int | str, unit: int) -> None:
    with pytest.raises(TuneError, match="is not a metre that can be worked with"):
        read_musicxml(score(attributes(beats, unit) + FULL))


def test_tempos_and_keys_out_of_reach_are_refused() -> None:
    with pytest.raises(TuneError, match="tempo of 9999"):
        read_musicxml(score(attributes() + '<sound tempo="9999"/>' + FULL))
    with pytest.raises(TuneError, match="11 sharps or flats"):
        read_musicxml(score(attributes().replace("<fifths>0", "<fifths>11") + FULL))


def test_a_score_without_melody_is_refused() -> None:
    with pytest.raises(TuneError, match="no notes to ornament"):
        read_musicxml(score(attributes() + notes("r:16")))
    with pytest.raises(TuneError, match="chord symbols but no melody"):
        read_musicxml(score(attributes() + harmony("C", "major") + notes("r:16")))


def test_drums_are_not_a_melody_and_names_count() -> None:
    drum = note(None, 16).replace("<rest/>", "<unpitched/>")
    high = notes("C6 D6 E6 F6")
    tune = read_musicxml(
        score_of({"Drums": [attributes() + drum], "Piano": [attributes() + high], "Voice": [attributes() + FULL]})
    )
    assert tune.part_name == "Voice"


def test_a_part_with_a_fault_does_not_harm_the_melody() -> None:
    broken = attributes() + note("C3", 4).replace("<octave>3", "<octave>x")
    tune = read_musicxml(score_of({"Bass": [broken], "Melody": [attributes() + FULL]}))
    assert tune.part_name == "Melody"


@pytest.mark.parametrize("instrument", ["concert", "alto-sax", "tenor-sax"])
@pytest.mark.parametrize("name", ["lantern_lane", "quayside_waltz", "two_rooms"])
def test_what_the_writer_writes_reads_as_the_same_tune(name: str, instrument: str) -> None:
    """But for one grace, which an alto saxophone's part has as F natural: neither D major nor the chord has E sharp."""
    tune = read_tune(DATA / f"{name}.musicxml")
    staff = Staff(tune.notes, name=tune.part_name, instrument=INSTRUMENTS[instrument])
    eased = {Pitch.parse("G#4"): Pitch.parse("Ab4")} if (name, instrument) == ("lantern_lane", "alto-sax") else {}
    expected = [replace(n, graces=tuple(eased.get(grace, grace) for grace in n.graces)) for n in tune.notes]
    assert read_musicxml(write_musicxml(Score(tune, (staff,)))) == replace(tune, notes=tuple(expected))
