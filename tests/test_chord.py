"""Chord symbols against music21's `ChordSymbol`, the MusicXML 4.0 schema, and worked tables of common practice."""

from __future__ import annotations

from importlib.resources import files
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from lxml import etree
from music21 import harmony as m21_harmony

from fioritura.errors import TuneError
from fioritura.theory.chord import KINDS, Chord, Degree, DegreeType
from fioritura.theory.chord_symbol import chord_from_kind, read_chord
from fioritura.theory.pitch import Interval, NoteName, Pitch

ROOTS = ["C", "C#", "Db", "D", "Eb", "E", "F", "F#", "Gb", "G", "Ab", "A", "Bb", "B"]

M21_READS_WELL = (
    "m min maj7 M7 7 m7 min7 mM7 aug + dim o o7 dim7 m7b5 ø7 +7 aug7 7+ +M7 6 m6 min6 9 M9 m9 min9 mM9 +9 "
    "11 M11 m11 sus sus4 sus2 7sus 7sus4"
)
"""Suffixes whose notes music21's parser gets right for every root."""


def chord(text: str) -> Chord:
    found = read_chord(text)
    assert found is not None
    return found


def spelled(text: str) -> str:
    return " ".join(map(str, chord(text).tones))


@pytest.mark.parametrize("suffix", M21_READS_WELL.split())
@pytest.mark.parametrize("root", ROOTS)
def test_notes_agree_with_music21(root: str, suffix: str) -> None:
    expected = m21_harmony.ChordSymbol(f"{root.replace('b', '-')}{suffix}")
    found = chord(f"{root}{suffix}")
    assert found.pitch_classes == {pitch.pitchClass for pitch in expected.pitches}
    assert {str(tone).replace("b", "-") for tone in found.tones} == {pitch.name for pitch in expected.pitches}


@pytest.mark.parametrize("suffix", ["13", "M13", "m13"])
def test_thirteenths_agree_with_music21_but_for_the_eleventh(suffix: str) -> None:
    # Over a major third no one plays the natural eleventh (common practice); music21 keeps it.
    expected = {pitch.pitchClass for pitch in m21_harmony.ChordSymbol(f"C{suffix}").pitches}
    assert chord(f"C{suffix}").pitch_classes == expected - (set() if suffix == "m13" else {5})


@pytest.mark.parametrize(
    ("texts", "tones"),
    [
        # Common practice, each line one chord in its spellings.
        ("C CM Cmaj CMaj CMA Cma C_major C♮", "C E G"),
        ("Cm Cmin Cmi CMI C- C_minor C−", "C Eb G"),
        ("Cmaj7 CM7 CΔ CΔ7 C△7 C∆ C^7 C^ Cma7 CMA7 Cj7 CMaj7 C_maj_7 Cmaj(7) C7M C(maj7)", "C E G B"),
        ("Cm7 Cmin7 Cmi7 CMI7 C-7 C_min_7", "C Eb G Bb"),
        ("E-7 Em7 Emin7 E−7", "E G B D"),
        ("C7 Cdom7 C_7", "C E G Bb"),
        ("Bb B♭ Bbmaj B♭M", "Bb D F"),
        ("Bbmaj7 B♭Δ BbM7", "Bb D F A"),
        ("Bb-7b5 Bbm7b5 B♭ø B♭Ø7 Bbø7 Bbh7 Bb-7(b5) Bbmi7(♭5) Bbm7-5 Bb-7-5 Bbhalf-dim7 Bbhalfdim", "Bb Db Fb Ab"),
        ("F#m7 F♯m7 F♯-7 F#min7", "F# A C# E"),
        ("Cdim C° Co Cº Cmb5 Cm(b5) Cdiminished", "C Eb Gb"),
        ("Cdim7 C°7 Co7 Cº7", "C Eb Gb Bbb"),
        ("Caug C+ C(#5) C+5 Caugmented", "C E G#"),
        ("C+7 Caug7 C7+ C7#5 C7+5 C7(#5) C7(♯5) C7aug", "C E G# Bb"),
        ("Cmaj7#5 CM7#5 C+maj7 CaugM7 CΔ7#5 C+Δ", "C E G# B"),
        ("C7b5 C7-5 C7(b5) C7♭5", "C E Gb Bb"),
        ("Csus4 Csus C_sus_4 Csuspended4", "C F G"),
        ("Csus2", "C D G"),
        ("Csus24 Csus2/4 Csus2sus4", "C D F G"),
        ("C7sus4 C7sus Csus7 C7(sus4) Cm7sus4", "C F G Bb"),
        ("C9sus4 C9sus C7sus4(9)", "C F G Bb D"),
        ("C13sus4 C13sus", "C F G Bb D A"),
        ("C7susb9 C7sus4(b9) C7b9sus4 C7(b9)sus", "C F G Bb Db"),
        ("C6 Cmaj6 CM6", "C E G A"),
        ("Cm6 C-6 Cmin6", "C Eb G A"),
        ("C6/9 C69 C6add9 C6(9) C6(add9)", "C E G A D"),
        ("Cm6/9 Cm69 C-6/9", "C Eb G A D"),
        ("C9 C7(9)", "C E G Bb D"),
        ("Cmaj9 CM9 CΔ9 CMA9", "C E G B D"),
        ("Cm9 C-9 Cmin9", "C Eb G Bb D"),
        ("C11", "C E G Bb D F"),
        ("Cm11 C-11", "C Eb G Bb D F"),
        ("C13", "C E G Bb D A"),
        ("Cmaj13", "C E G B D A"),
        ("C7b9 C7(b9) C7♭9 C7-9 C7(-9)", "C E G Bb Db"),
        ("C7#9 C7(#9) C7♯9 C7+9", "C E G Bb D#"),
        ("C7#11 C7(#11) C7+11 C7#4", "C E G Bb F#"),
        ("C7b13 C7(b13) C7-13 C7b6", "C E G Bb Ab"),
        ("C7b9#11 C7(b9,#11) C7(b9_#11) C7(b9)(#11) C7[b9,#11] C7(b9/#11)", "C E G Bb Db F#"),
        ("C7#9b13 C7(#9,b13) C7(#9_b13)", "C E G Bb D# Ab"),
        ("C7#5#9 C+7#9 C7(#5,#9)", "C E G# Bb D#"),
        ("C7b9#9", "C E G Bb Db D#"),
        ("C9#11 C9(#11)", "C E G Bb D F#"),
        ("C9#5 C9+ C+9 Caug9", "C E G# Bb D"),
        ("C13#11 C13(#11)", "C E G Bb D F# A"),
        ("C13b9 C13(b9)", "C E G Bb Db A"),
        ("C7(13) C7add13 C7/13 C7,13", "C E G Bb A"),
        ("C7alt Calt C7(alt) C(alt) C_alt C7altered", "C E Gb G# Bb Db D#"),
        ("Cmaj7#11 CΔ#11 CM7(#11) Cmaj7(♯11)", "C E G B F#"),
        ("Cadd9 C(add9) C(9) C_add_9 C/9", "C E G D"),
        ("Cadd2 C(add2)", "C D E G"),
        ("Cadd4", "C E F G"),
        ("Cadd11", "C E G F"),
        ("Cmadd9 Cm(add9) C-add9 Cmin(9) CmAdd9", "C Eb G D"),
        ("CmMaj7 CmM7 Cm(maj7) C-Δ7 C-Δ Cmin/maj7 CmΔ7 Cm#7 Cm+7 Cm7M C-maj7 CMIMA7 Cminmaj7", "C Eb G B"),
        ("Cm(maj9) CmM9", "C Eb G B D"),
        ("Cdim(maj7) C°Δ7 C°maj7", "C Eb Gb B"),
        ("Cm9b5 Cm9(b5) Cø9", "C Eb Gb Bb D"),
        ("C5", "C G"),
        ("Cno3 C(no3) Comit3", "C G"),
        ("C7no5 C7omit5 C7(omit5) C7(no_5th)", "C E Bb"),
        ("Cb5", "Cb Gb"),
        ("F#11", "F# A# C# E G# B"),
        ("am amin a-", "A C E"),
        ("bbmaj7", "Bb D F A"),
    ],
)
def test_spellings(texts: str, tones: str) -> None:
    for text in texts.split():
        found = chord(text.replace("_", " "))
        assert sorted(map(str, found.tones)) == sorted(tones.split()), text
        assert str(found.root) == tones.split()[0]
        assert found.bass is None


@pytest.mark.parametrize(
    ("text", "suffix", "bass"),
    [
        ("C/E", "", "E"),
        ("Am7/G", "m7", "G"),
        ("C6/9/E", "6/9", "E"),
        ("Am/C", "m", "C"),
        ("Bb/Ab", "", "Ab"),
        ("F♯m7/C♯", "m7", "C#"),
        ("D / F#", "", "F#"),
        ("G7/b", "7", "B"),
        ("D/f+", "", "F#"),
        ("C/Bb", "", "Bb"),
    ],
)
def test_slash_bass(text: str, suffix: str, bass: str) -> None:
    found = chord(text)
    assert (found.suffix, str(found.bass)) == (suffix, bass)
    assert found.text == f"{found.root}{suffix}/{bass}"


def test_a_bass_that_is_the_root_is_none() -> None:
    assert chord("C/C").bass is None


@pytest.mark.parametrize("text", ["N.C.", "NC", "n.c.", "N. C.", "nc", "No chord"])
def test_no_chord(text: str) -> None:
    assert read_chord(text) is None


@pytest.mark.parametrize(
    "text",
    """
    |H7|C2|C4|C-5|g7|bb|b|C7B9|CaddB9|C713|C7b10|C+11|C11+|Cmaj-7|Cm7-|Fine|Coda|D.C.|D.S.|Chorus|Bridge|A tempo|Add9|
    Dim|Aug|Bbb5|Abb9|C//E|C/E/G|C/H|Am G|C7/D7|Cmm|C77|Csusus|C7no9|IV|V7/ii|#11|-7|7|/E|?|Em7?|%|C7sus4sus4|Cdimsus|
    Do re mi|Fast|Edelweiss|Guitar|C7altb9x|C7#|C#b|CMm7
    """.replace("\n", "")
    .replace("    ", "")
    .split("|"),
)
def test_what_cannot_be_read_is_refused(text: str) -> None:
    with pytest.raises(TuneError, match="not a chord symbol"):
        read_chord(text)


@given(st.text(max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        found = read_chord(text)
    except TuneError:
        return
    if found is not None:
        assert read_chord(found.text) == found


def kind_values() -> list[str]:
    """The kind-values of the MusicXML 4.0 schema, from the copy in the `musicxml` package."""
    schema = etree.fromstring((files("musicxml") / "generate_classes" / "musicxml_4_0.xsd").read_bytes())
    space = {"xs": "http://www.w3.org/2001/XMLSchema"}
    values: Any = schema.xpath("//xs:simpleType[@name='kind-value']//xs:enumeration/@value", namespaces=space)
    return [str(value) for value in values]


def test_every_kind_of_the_schema_is_known() -> None:
    assert len(kind_values()) == 33
    assert {*KINDS, "none"} == set(kind_values())
    assert chord_from_kind(NoteName(0), "none") is None


FUNCTIONAL_SIXTHS = {"Neapolitan", "Italian", "French", "German"}
"""The schema does not say what they hold; music21 counts them from the tonic."""


@pytest.mark.parametrize("kind", sorted(set(KINDS) - FUNCTIONAL_SIXTHS - {"other"}))
def test_kinds_agree_with_music21(kind: str) -> None:
    expected = {pitch.pitchClass for pitch in m21_harmony.ChordSymbol(kind=kind, root="C").pitches}
    missing = {5} if kind in {"dominant-13th", "major-13th"} else set()
    found = chord_from_kind(NoteName(0), kind)
    assert found is not None
    assert found.pitch_classes == expected - missing


def test_functional_sixths() -> None:
    # Common practice: on the lowered sixth degree of C.
    ab = NoteName.parse("Ab")
    spellings = {"Italian": "Ab C F#", "French": "Ab C D F#", "German": "Ab C Eb F#"}
    for kind, tones in spellings.items():
        found = chord_from_kind(ab, kind)
        assert found is not None
        assert " ".join(map(str, found.tones)) == tones


adds = st.builds(Degree, st.sampled_from([2, 4, 6, 9, 11, 13]), st.just(0), st.just("add"))
alterations = st.sampled_from([(5, -1), (5, 1), (9, -1), (9, 1), (11, 1), (13, -1)])
types: st.SearchStrategy[DegreeType] = st.sampled_from(["add", "alter"])
altered = st.builds(lambda pair, type_: Degree(pair[0], pair[1], type_), alterations, types)
names = st.builds(NoteName, st.integers(0, 6), st.integers(-1, 1))
SUSPENDED_OR_OTHER = {kind for kind in KINDS if kind.startswith("susp") or kind[0].isupper()} | {"pedal", "other"}
PLAIN_KINDS = sorted(set(KINDS) - SUSPENDED_OR_OTHER)
ALTERED_FIFTH = {"augmented", "augmented-seventh", "diminished", "diminished-seventh", "half-diminished"}


@given(names, st.sampled_from(sorted(KINDS)), st.none() | names)
def test_the_text_of_every_kind_reads_as_that_kind(root: NoteName, kind: str, bass: NoteName | None) -> None:
    made = chord_from_kind(root, kind, (), bass)
    assert made is not None
    assert read_chord(made.text) == made


@given(names, st.sampled_from(PLAIN_KINDS), st.lists(adds | altered, max_size=3, unique_by=lambda d: d.value))
def test_the_text_of_altered_kinds_reads_as_the_same_notes(root: NoteName, kind: str, degrees: list[Degree]) -> None:
    assume(not (kind in ALTERED_FIFTH and any(degree.value == 5 for degree in degrees)))
    made = chord_from_kind(root, kind, degrees)
    assert made is not None
    assert chord(made.text).pitch_classes == made.pitch_classes
    assert chord(made.text).root == root


@pytest.mark.parametrize(
    ("kind", "degrees", "text"),
    [
        # Common practice.
        ("dominant", [(9, -1, "add")], "C7b9"),
        ("dominant", [(9, -1, "add"), (11, 1, "add")], "C7(b9,#11)"),
        ("dominant", [(5, -1, "alter")], "C7b5"),
        ("dominant", [(9, -1, "alter")], "C7b9"),
        ("dominant-13th", [(11, 1, "alter")], "C13#11"),
        ("suspended-fourth", [(7, 0, "add")], "C7sus4"),
        ("suspended-fourth", [(7, 0, "add"), (9, 0, "add")], "C9sus4"),
        ("suspended-fourth", [(7, 0, "add"), (9, -1, "add")], "C7sus4b9"),
        ("major-sixth", [(9, 0, "add")], "C6/9"),
        ("major", [(9, 0, "add")], "Cadd9"),
        ("minor", [(9, 0, "add")], "Cmadd9"),
        ("major", [(5, -1, "alter")], "C(b5)"),
        ("dominant", [(5, 0, "subtract")], "C7no5"),
        ("major-minor", [], "Cm(maj7)"),
        ("half-diminished", [], "Cm7b5"),
        ("dominant", [(5, -1, "alter"), (5, 1, "add"), (9, -1, "add"), (9, 1, "add")], "C7alt"),
    ],
)
def test_texts_of_the_trade(kind: str, degrees: list[tuple[int, int, DegreeType]], text: str) -> None:
    made = chord_from_kind(NoteName(0), kind, [Degree(*degree) for degree in degrees])
    assert made is not None
    assert made.text == text
    assert chord(text).intervals == made.intervals


def test_a_printed_text_is_kept_only_where_it_says_the_same() -> None:
    c = NoteName(0)
    ninth = [Degree(9, -1, "add")]
    kept, remade = chord_from_kind(c, "minor-seventh", text="-7"), chord_from_kind(c, "dominant", ninth, text="7")
    assert kept is not None
    assert remade is not None
    assert (kept.text, remade.text) == ("C-7", "C7b9")


@pytest.mark.parametrize(("kind", "value"), [("majorish", 9), ("major", 14), ("major", 0)])
def test_unknown_kind_or_degree_is_refused(kind: str, value: int) -> None:
    with pytest.raises(TuneError, match=r"kind|outside"):
        chord_from_kind(NoteName(0), kind, [Degree(value, 0, "add")])


def test_the_degrees_of_the_reader_are_musicxml_degrees() -> None:
    # The schema: an altered degree counts from the kind's own tone, an added one from a dominant chord.
    assert chord("C7b9").degrees == (Degree(9, -1, "add"),)
    assert chord("C13b9").degrees == (Degree(9, -1, "alter"),)
    assert chord("C13#11").degrees == (Degree(11, 1, "alter"),)
    assert chord("C7b5").degrees == (Degree(5, -1, "alter"),)
    assert chord("Cm(maj9)").degrees == (Degree(9, 0, "add"),)
    assert chord("C°maj7").degrees == (Degree(7, 1, "add"),)


simple_symbols = st.builds(
    lambda root, suffix, bass: f"{root}{suffix}{bass}",
    st.sampled_from(ROOTS),
    st.sampled_from(["", "m", "7", "m7", "maj7", "m7b5", "dim7", "7(b9,#11)", "7alt", "6/9", "9sus4", "+7"]),
    st.sampled_from(["", "/E", "/Bb", "/F#"]),
)
intervals = st.sampled_from([Interval.parse(name) for name in ("m2", "M2", "m3", "P4", "A4", "P5", "M6", "m7")])


@given(simple_symbols, intervals)
def test_transposition_moves_notes_bass_and_text_together(symbol: str, interval: Interval) -> None:
    found = chord(symbol)
    moved = found.up(interval)
    assert moved.pitch_classes == {(each + interval.semitones) % 12 for each in found.pitch_classes}
    assert moved == chord(moved.text)
    assert moved.suffix == found.suffix
    assert abs(moved.root.alter) <= 1
    if found.bass:
        assert moved.bass is not None
        assert moved.bass.pitch_class == (found.bass.pitch_class + interval.semitones) % 12


def test_transposed_names() -> None:
    assert chord("C7/E").up(Interval.parse("m3")).text == "Eb7/G"
    assert chord("Bb-7b5/Fb").up(Interval.parse("M2")).text == "C-7b5/Gb"
    assert chord("Db7").up(Interval.parse("m2")).text == "D7"  # Not E double flat.
    assert chord("Gbmaj7/Bb").up(Interval.parse("d5")).text == "Cmaj7/E"


@pytest.mark.parametrize(
    ("text", "guide_tones"),
    [("G7", "B F"), ("Cmaj7", "E B"), ("Dm7", "F C"), ("C6", "E A"), ("G7sus4", "C F"), ("Bø", "D A"), ("C", "E")],
)
def test_guide_tones(text: str, guide_tones: str) -> None:
    # Common practice: third and seventh; a sixth and a suspended fourth stand in for them.
    assert " ".join(map(str, chord(text).guide_tones)) == guide_tones


@pytest.mark.parametrize(
    ("text", "qualities"),
    [
        ("C", {"major"}),
        ("Cm", {"minor"}),
        ("C7", {"major", "dominant"}),
        ("C7sus4", {"suspended", "dominant"}),
        ("Csus2", {"suspended"}),
        ("Cdim", {"minor", "diminished"}),
        ("Cdim7", {"minor", "diminished"}),
        ("Cm7b5", {"minor", "half_diminished"}),
        ("C+", {"major", "augmented"}),
        ("C7#5", {"major", "dominant", "augmented"}),
        ("C7alt", {"major", "dominant"}),
        ("C5", set()),
    ],
)
def test_qualities(text: str, qualities: set[str]) -> None:
    names = ("major", "minor", "dominant", "diminished", "half_diminished", "augmented", "suspended")
    assert {name for name in names if getattr(chord(text), f"is_{name}")} == qualities


def test_chord_tones() -> None:
    found = chord("Ebm7")
    assert [str(tone) for tone in (found.third, found.fifth, found.seventh)] == ["Gb", "Bb", "Db"]
    assert found.holds(Pitch.parse("F#5"))
    assert not found.holds(Pitch.parse("F5"))
    assert chord("C5").third is None


def test_display() -> None:
    assert chord("Bb-7b5/Ab").display == "B♭-7♭5/A♭"
    assert chord("F#7(b9,#11)").display == "F♯7(♭9,♯11)"
    assert chord("C7sus4").display == "C7sus4"
