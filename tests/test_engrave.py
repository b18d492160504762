"""Engraving: what stands in the SVG is checked against the score, its MusicXML, and SVG's own geometry."""

from __future__ import annotations

import hashlib
import itertools
import json
import os
import random
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from lxml import etree

from fioritura.errors import OptionError, OutputError, TuneError
from fioritura.notation.chord_text import chord_pieces
from fioritura.notation.engraving import breaking
from fioritura.notation.engraving.breaking import BarWidth, system_starts
from fioritura.notation.engraving.engrave import System, engrave_page, engrave_systems
from fioritura.notation.engraving.fonts import SIGN_FONT, TEXT_FONT, font_folder
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.notation.score import Label, Score, Staff
from fioritura.players.player import Player
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.tune import Tempo
from tests.scores import ornamented, score_of

SVG = "{http://www.w3.org/2000/svg}"
HEAD = (
    "<attributes><divisions>4</divisions><key><fifths>{key}</fifths></key><time><beats>4</beats>"
    "<beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef></attributes>"
)
NOTE = (
    "<note{id}><pitch><step>{step}</step><octave>4</octave></pitch><duration>4</duration><voice>1</voice>"
    "<type>quarter</type>{more}</note>"
)


def note(step: str = "A", id: str = "", more: str = "") -> str:
    return NOTE.format(step=step, id=f' id="{id}"' if id else "", more=more)


def source_of(bars: list[str], key: int = 0) -> bytes:
    measures = "".join(
        f'<measure number="{number}">{HEAD.format(key=key) if number == 1 else ""}{bar}</measure>'
        for number, bar in enumerate(bars, start=1)
    )
    return (
        '<score-partwise version="4.0"><part-list><score-part id="P1"><part-name/></score-part></part-list>'
        f'<part id="P1">{measures}</part></score-partwise>'
    ).encode()


def read(source: bytes) -> Score:
    tune = read_musicxml(source, irregular="keep")
    return Score(tune, (Staff(tune.notes),))


def document(bars: list[str]) -> Score:
    return read(source_of(bars))


def quarters(count: int) -> Score:
    return document([note() * 4] * count)


def chord(root: str, kind: str, text: str, alter: int = 0) -> str:
    altered = f"<root-alter>{alter}</root-alter>" if alter else ""
    return f'<harmony><root><root-step>{root}</root-step>{altered}</root><kind text="{text}">{kind}</kind></harmony>'


def groups(svg: str, role: str) -> list[etree._Element]:
    root = etree.fromstring(svg.encode())
    return [group for group in root.iter(f"{SVG}g") if role in (group.get("class") or "").split()]


def text_in(group: etree._Element) -> etree._Element:
    found = group.find(f"{SVG}text")
    assert found is not None
    return found


def parent_of(element: etree._Element) -> etree._Element:
    parent = element.getparent()
    assert parent is not None
    return parent


def words(group: etree._Element) -> str:
    return "".join(map(str, group.itertext()))


def numbers(system: System) -> list[str]:
    return [words(group) for group in groups(system.svg, "mNum")]


@cache
def text_width(text: str, size: float, weight: int, style: str) -> float:
    """Width of a text in the page's text face, asked of the typesetter itself."""
    import typst

    source = (
        f'#context [#metadata(measure(text(font: "{TEXT_FONT}", size: {size}pt, weight: {weight}, '
        f'style: "{style}", {json.dumps(text, ensure_ascii=False)})).width.pt()) <width>]'
    )
    fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(font_folder())])
    return float(json.loads(typst.query(source.encode(), "<width>", field="value", one=True, font_paths=fonts)))


def extent(text: etree._Element) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of a text's ink, from its own measures (cap height 0.65, descent 0.22 em)."""
    x, y = float(text.get("x", "0")), float(text.get("y", "0"))
    width, top, bottom = 0.0, y, y
    for span in text.iter(f"{SVG}tspan"):
        size = float(span.get("font-size", "0"))
        base = float(span.get("y", text.get("y", "0")))
        weight = int(span.get("font-weight", "400"))
        width += text_width(span.text or "", 10.0, weight, span.get("font-style", "normal")) / 10.0 * size
        top, bottom = min(top, base - 0.65 * size), max(bottom, base + 0.22 * size)
    lift = re.search(r"translate\(0 (-?[\d.]+)\)", (parent_of(text).get("transform") or ""))
    shift = float(lift[1]) if lift else 0.0
    return x, top + shift, x + width, bottom + shift


# What is kept of the MusicXML --------------------------------------------------------------------------------------


@pytest.mark.parametrize("staves", [1, 2])
def test_every_note_label_and_chord_of_the_musicxml_is_in_the_svg_under_its_id(staves: int) -> None:
    score = ornamented(11, staves=staves)
    source = etree.fromstring(write_musicxml(score))
    wanted = {element.get("id") for tag in ("note", "words", "harmony") for element in source.iter(tag)} - {None}
    drawn = {
        group.get("id")
        for system in engrave_systems(score)
        for group in etree.fromstring(system.svg.encode()).iter(f"{SVG}g")
    }
    assert len(wanted) > 60
    assert wanted <= drawn


def test_chord_symbols_keep_their_text() -> None:
    bar = chord("B", "major-seventh", "maj7", -1) + note() * 2 + chord("F", "half-diminished", "m7♭5", 1) + note() * 2
    bars = [bar, chord("E", "dominant", "7(♯9)", -1) + note() * 4]
    (system,) = engrave_systems(document(bars))
    assert [words(group) for group in groups(system.svg, "harm")] == ["B♭maj7", "F♯m7♭5", "E♭7(♯9)"]


@pytest.mark.parametrize(
    "text", ["B♭maj7", "F♯m7♭5", "(Am7)", "(C7(♭9))", "Cm(maj7)", "N.C.", "G7sus4", "C6/9/A", "C♯°7", "H7", ""]
)
def test_a_chord_symbol_is_divided_without_loss(text: str) -> None:
    assert "".join(piece.text for piece in chord_pieces(text)) == text


def test_figures_of_a_chord_symbol_are_drawn_higher_and_smaller() -> None:
    (system,) = engrave_systems(document([chord("F", "dominant", "7") + note() * 4]))
    root, figure = groups(system.svg, "harm")[0].iter(f"{SVG}tspan")
    assert (root.text, figure.text) == ("F", "7")
    assert float(figure.get("font-size", "0")) < float(root.get("font-size", "0"))
    assert float(figure.get("y", "0")) < float(parent_of(root).get("y", "0"))


def test_figures_of_a_chord_are_raised_and_its_root_and_bass_are_not() -> None:
    pieces = {piece.text: piece.raised for piece in chord_pieces("F♯m7♭5/C")}
    assert pieces["F♯"] == pieces["m"] == pieces["/C"] == 0.0 < pieces["7♭5"]


@pytest.mark.parametrize("effect", ["scoop", "doit", "falloff"])
def test_wind_effects_are_drawn_at_their_note_on_the_right_side(effect: str) -> None:
    marked = note(more=f"<notations><articulations><{effect}/></articulations></notations>")
    (system,) = engrave_systems(document([note() + marked + note() * 2]))
    (group,) = (g for g in groups(system.svg, "note") if g.get("id") == "s1-n1")
    (curve,) = (path for path in group.iter(f"{SVG}path") if path.get("class") == effect)
    head = next(use for part in group.iter(f"{SVG}g") if part.get("class") == "notehead" for use in part)
    head_x = float(re.findall(r"-?[\d.]+", head.get("transform", ""))[0])
    start_x, _, *turns = map(float, re.findall(r"-?[\d.]+", curve.get("d", "")))
    begins_before = start_x + turns[0] < head_x
    assert begins_before == (effect == "scoop")


def test_a_shake_stands_above_its_note() -> None:
    marked = note(more="<notations><ornaments><shake/></ornaments></notations>")
    (system,) = engrave_systems(document([note() * 3 + marked]))
    (sign,) = groups(system.svg, "sign")
    assert float(sign[0].get("y", "0")) < min(extent_y(staff) for staff in groups(system.svg, "staff"))


def extent_y(staff: etree._Element) -> float:
    path = next(staff.iter(f"{SVG}path"))
    return float(path.get("d", "").split()[1])


def test_the_tempo_mark_stands_above_the_first_system_and_can_be_left_out() -> None:
    """126 quarter notes a minute are 84 dotted ones, the beat of 6/8."""
    score = ornamented(1, metre="6/8", staves=1)
    first, second = (engrave_systems(score, shows_tempo=shows)[0] for shows in (True, False))
    assert "Swing ♩\N{MUSICAL SYMBOL COMBINING AUGMENTATION DOT} = 84" in words(etree.fromstring(first.svg))
    assert "Swing" not in second.svg
    assert first.height_mm > second.height_mm


def test_a_later_tempo_mark_stands_over_its_note() -> None:
    score = quarters(4)
    later = replace(score.tune, tempos=(Tempo(0, 100.0), Tempo(2 * 4 * QUARTER, 72.5)))
    (system,) = engrave_systems(replace(score, tune=later))
    (mark,) = groups(system.svg, "tempo")
    (head,) = (group for group in groups(system.svg, "note") if group.get("id") == "s1-n8")
    assert words(mark) == "♩ = 72.5"
    assert abs(float(text_in(mark).get("x", "0")) - left_of(head)) < 250


def left_of(note: etree._Element) -> float:
    use = next(note.iter(f"{SVG}use"))
    return float(re.findall(r"-?[\d.]+", use.get("transform", ""))[0])


# Geometry ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("staff_mm", "width_mm"), [(7.2, 178.0), (6.3, 178.0), (5.0, 85.0)])
def test_sizes_are_those_asked_for(staff_mm: float, width_mm: float) -> None:
    systems = engrave_systems(quarters(24), width_mm=width_mm, staff_mm=staff_mm)
    for system in systems:
        root = etree.fromstring(system.svg.encode())
        mm_per_unit = system.height_mm / float(root.get("viewBox", "").split()[3])
        lines = [float(path.get("d", "").split()[1]) for path in groups(system.svg, "staff")[0].findall(f"{SVG}path")]
        assert (max(lines) - min(lines)) * mm_per_unit == pytest.approx(staff_mm, rel=0.002)
        assert system.width_mm == pytest.approx(width_mm, abs=0.2)
        assert root.get("width") == f"{system.width_mm:.3f}mm"


def assert_labels_are_apart(score: Score, staff_mm: float) -> None:
    for system in engrave_systems(score, staff_mm=staff_mm):
        texts = [text_in(group) for role in ("figure", "harm") for group in groups(system.svg, role)]
        for one, other in itertools.combinations(texts, 2):
            left, top, right, bottom = extent(one)
            left2, top2, right2, bottom2 = extent(other)
            apart = right <= left2 or right2 <= left or bottom <= top2 or bottom2 <= top
            assert apart, f"{words(one)} and {words(other)} in bars from {system.first_bar}"


@pytest.mark.parametrize("staves", [1, 2])
@pytest.mark.parametrize("seed", [1, 2, 3, 4, 5, 6])
def test_no_label_touches_another_or_a_chord_symbol(seed: int, staves: int) -> None:
    assert_labels_are_apart(ornamented(seed, staves=staves), 6.3 if staves == 2 else 7.2)


@pytest.mark.slow
def test_tunes_of_a_corpus_are_engraved_without_lone_bars_or_touching_labels() -> None:
    """60 folk tunes of music21's corpus, harmonised and ornamented for the flute at level 5."""
    from pathlib import Path

    import music21

    from fioritura.arrange.harmonise import harmonise
    from fioritura.errors import FiorituraError
    from fioritura.notation.read import read_tune

    engraved = 0
    for path in sorted((Path(music21.__file__).parent / "corpus" / "ryansMammoth").glob("*.abc"))[:120]:
        try:
            score = score_of(harmonise(read_tune(path)), Player.of("flute", 5), idiom="folk")
        except FiorituraError:
            continue
        assert_labels_are_apart(score, 6.3)
        assert all(system.bar_count > 1 for system in engrave_systems(score, staff_mm=6.3)), path.name
        engraved += 1
        if engraved == 60:
            break
    assert engraved == 60


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_chord_symbols_of_a_single_line_stand_on_one_level_above_all_labels(seed: int) -> None:
    for system in engrave_systems(ornamented(seed, staves=1)):
        chords = [extent(text_in(group)) for group in groups(system.svg, "harm")]
        labels = [extent(text_in(group)) for group in groups(system.svg, "figure")]
        baselines = {text_in(group).get("y") for group in groups(system.svg, "harm")}
        assert len(baselines) == 1
        assert all(chord_bottom <= label_top + 90 for *_, chord_bottom in chords for _, label_top, *_ in labels)


def shift_of(root: etree._Element) -> float:
    """How far down the drawing stands in its picture."""
    return float(re.findall(r"-?[\d.]+", next(root.iterfind(f"{SVG}g")).get("transform", ""))[1])


@pytest.mark.parametrize("seed", [7, 8])
def test_all_text_lies_inside_its_system(seed: int) -> None:
    for system in engrave_systems(ornamented(seed)):
        root = etree.fromstring(system.svg.encode())
        _, _, _, height = map(float, root.get("viewBox", "").split())
        shift = shift_of(root)
        for text in root.iter(f"{SVG}text"):
            _, top, _, bottom = extent(text)
            assert top + shift >= -1 and bottom + shift <= height + 1, words(text)


def test_lyrics_are_not_cut_off() -> None:
    sung = note(more="<lyric><syllabic>single</syllabic><text>gypsy</text></lyric>")
    (system,) = engrave_systems(document([sung * 4]))
    root = etree.fromstring(system.svg.encode())
    height = float(root.get("viewBox", "").split()[3])
    syllables = [text_in(group) for group in groups(system.svg, "syl")]
    assert [words(text) for text in syllables] == ["gypsy"] * 4
    assert all(extent(text)[3] + shift_of(root) <= height for text in syllables)


# Division into systems ---------------------------------------------------------------------------------------------


def test_four_bars_a_system_with_a_number_at_each_but_the_first() -> None:
    systems = engrave_systems(quarters(16), staff_mm=7.2, width_mm=178)
    assert [system.bar_count for system in systems] == [4, 4, 4, 4]
    assert [numbers(system) for system in systems] == [[], ["5"], ["9"], ["13"]]
    assert [system.first_bar for system in systems] == ["1", "5", "9", "13"]


def test_a_number_of_bars_a_system_can_be_asked_for() -> None:
    assert [system.bar_count for system in engrave_systems(quarters(12), bars_per_system=3)] == [3, 3, 3, 3]
    assert [system.bar_count for system in engrave_systems(quarters(7), bars_per_system=2)][-1] != 1


def test_a_pickup_is_not_counted() -> None:
    bars = [note()] + [note() * 4] * 8
    source = source_of(bars).replace(b'number="1"', b'number="0" implicit="yes"', 1)
    assert [system.bar_count for system in engrave_systems(read(source), bars_per_system=4)] == [5, 4]


def test_a_bar_divided_by_a_repeat_sign_counts_once_and_its_second_half_bears_the_next_number() -> None:
    half = note() * 2
    ends = '<barline location="right"><bar-style>light-heavy</bar-style><repeat direction="backward"/></barline>'
    bars = [note() * 4] * 3 + [half + ends, half] + [note() * 4] * 4
    source = source_of(bars)
    for written, number in ((5, "X4"), *((n, str(n - 1)) for n in range(6, 10))):
        implicit = ' implicit="yes"' if number == "X4" else ""
        source = source.replace(f'number="{written}"'.encode(), f'number="{number}"{implicit}'.encode())
    systems = engrave_systems(read(source), staff_mm=7.2)
    assert [(system.bar_count, system.first_bar) for system in systems] == [(4, "1"), (5, "5")]
    assert [numbers(system) for system in systems] == [[], ["5"]]


def test_dense_music_has_fewer_bars_a_system_and_sparse_music_more() -> None:
    sixteenth = note().replace("<duration>4", "<duration>1").replace("quarter", "16th")
    whole = note().replace("<duration>4", "<duration>16").replace("quarter", "whole")
    dense = engrave_systems(document([sixteenth * 16] * 12), staff_mm=7.2)
    sparse = engrave_systems(document([whole] * 32), staff_mm=7.2)
    assert max(system.bar_count for system in dense) <= 2
    assert {system.bar_count for system in sparse} == {8}


def test_a_bar_wider_than_the_page_makes_the_staff_smaller() -> None:
    tiny = note().replace("<duration>4", "<duration>1").replace("quarter", "16th")
    systems = engrave_systems(document([tiny * 64] * 2), width_mm=100, staff_mm=8)
    assert [system.bar_count for system in systems] == [1, 1]
    assert all(system.width_mm == pytest.approx(100, abs=0.2) for system in systems)


@pytest.mark.parametrize("count", range(2, 40))
def test_no_bar_is_left_alone_on_the_last_system(count: int) -> None:
    bars = [BarWidth(100.0, 60.0 if number else 0.0) for number in range(count)]
    starts = system_starts(bars, 600.0)
    assert count - starts[-1] > 1


def test_a_short_last_system_is_not_stretched_over_the_page() -> None:
    systems = engrave_systems(quarters(18), width_mm=178, staff_mm=7.2)
    assert systems[-1].bar_count == 2
    assert systems[-1].width_mm < 0.65 * 178


def test_a_lone_bar_is_not_stretched_over_the_page() -> None:
    (system,) = engrave_systems(quarters(1), width_mm=178)
    assert system.width_mm < 80


def test_the_division_is_the_best_of_all() -> None:
    """Against an exhaustive search over all divisions."""
    dice = random.Random(7)
    for _ in range(40):
        count = dice.randrange(3, 11)
        bars = [
            BarWidth(dice.uniform(60, 260), dice.uniform(40, 90) if number else 0.0, dice.random() < 0.15)
            for number in range(count)
        ]
        wanted = dice.choice([None, None, 2, 3])
        found = cost_of(bars, system_starts(bars, 600.0, wanted), wanted)
        divisions = ([0, *inner] for size in range(count) for inner in itertools.combinations(range(1, count), size))
        assert found == pytest.approx(min(cost_of(bars, starts, wanted) for starts in divisions))


def cost_of(bars: list[BarWidth], starts: list[int], wanted: int | None) -> float:
    places = breaking._phrase_places(bars)
    total = 0.0
    for start, end in zip(starts, [*starts[1:], len(bars)], strict=True):
        fill = (bars[start].head + sum(bar.width for bar in bars[start:end])) / 600.0
        if fill > 1.0 and end - start > 1:
            return float("inf")
        total += breaking._line_cost(end - start, fill, places[end], end == len(bars), wanted)
    return total


# The SVG itself ----------------------------------------------------------------------------------------------------


def test_the_same_music_gives_the_same_bytes() -> None:
    score, other = ornamented(5), ornamented(6)
    systems, page = engrave_systems(score), engrave_page(score)
    engrave_systems(other)
    assert engrave_systems(score) == systems
    assert engrave_page(score) == page


def test_another_process_gives_the_same_bytes() -> None:
    program = (
        "import hashlib; from fioritura.notation.engraving.engrave import engrave_page; "
        "from tests.scores import ornamented; print(hashlib.sha256(engrave_page(ornamented(5)).encode()).hexdigest())"
    )
    made = {
        subprocess.run(
            [sys.executable, "-c", program],
            capture_output=True,
            text=True,
            check=True,
            env=os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)},
        ).stdout.strip()
        for seed in ("1", "2")
    }
    assert made == {hashlib.sha256(engrave_page(ornamented(5)).encode()).hexdigest()}


def test_ids_are_those_of_the_music_and_of_its_glyphs_and_come_once() -> None:
    ids = [
        str(element.get("id"))
        for system in engrave_systems(ornamented(5))
        for element in etree.fromstring(system.svg.encode()).iter()
        if element.get("id")
    ]
    assert len(ids) == len(set(ids)) > 60
    glyph = r"[0-9A-F]{4}-[0-9a-f]{8}(-last)?-\d+"
    assert all(re.fullmatch(rf"s\d+-[nlc]\d+(-g?\d+)?|{glyph}", each) for each in ids)


def test_the_svg_has_no_ground_no_style_sheet_and_no_foreign_fonts() -> None:
    for system in engrave_systems(ornamented(4)):
        root = etree.fromstring(system.svg.encode())
        assert not list(root.iter(f"{SVG}style"))
        assert not list(root.iter(f"{SVG}image"))
        width = float(root.get("viewBox", "").split()[2])
        assert all(float(rect.get("width", "0")) < width / 4 for rect in root.iter(f"{SVG}rect"))
        families = {element.get("font-family") for element in root.iter() if element.get("font-family")}
        assert families <= {SIGN_FONT, f"'{TEXT_FONT}', 'Times New Roman', Times, serif"}


def test_the_page_carries_its_own_font_for_the_signs_in_its_text() -> None:
    import base64
    from io import BytesIO

    from fontTools.ttLib import TTFont

    page = engrave_page(document([chord("B", "dominant", "7(♯9)", -1) + note() * 4]))
    data = re.search(r"data:font/woff2;base64,([A-Za-z0-9+/=]+)", page)
    assert data is not None
    font = TTFont(BytesIO(base64.b64decode(data[1])))
    assert {ord("♭"), ord("♯")} <= set(font.getBestCmap())


def test_a_page_is_as_high_as_its_systems_and_the_gaps() -> None:
    score = quarters(8)
    systems = engrave_systems(score)
    root = etree.fromstring(engrave_page(score, gap_mm=5.0).encode())
    height_mm = float(root.get("height", "").removesuffix("mm"))
    assert height_mm == pytest.approx(
        sum(system.height_mm for system in systems) + 5.0 * (len(systems) - 1), abs=0.01
    )


# Bad input ---------------------------------------------------------------------------------------------------------


def test_a_score_without_staves_or_bars_can_not_be_engraved() -> None:
    score = quarters(2)
    for empty in (replace(score, staves=()), replace(score, tune=replace(score.tune, bars=()))):
        with pytest.raises(OutputError, match="without staves or bars"):
            engrave_systems(empty)


def test_notes_that_overlap_or_lie_outside_the_octaves_can_not_be_engraved() -> None:
    score = quarters(2)
    first, second, *rest = score.tune.notes
    with pytest.raises(TuneError, match="lies over the note before"):
        engrave_systems(Score(score.tune, (Staff((first, replace(second, onset_ticks=0), *rest)),)))
    with pytest.raises(OutputError, match="octaves 0 to 9"):
        engrave_systems(Score(score.tune, (Staff((replace(first, pitch=Pitch.parse("C-1")), second, *rest)),)))


@pytest.mark.parametrize(
    "text", ["a < b & c > d", "\"quoted\" 'single'", "<!-- x -->", "]]>", "\x0bbell\x07", "🎷 é"]
)
def test_text_is_never_taken_for_markup(text: str) -> None:
    tune = quarters(2).tune
    sung = (replace(tune.notes[0], lyric=text), *tune.notes[1:])
    staff = Staff(sung, text, labels=(Label(0, text, 0),))
    (system,) = engrave_systems(Score(replace(tune, title=text), (staff, staff)))
    shown = "".join(char for char in text if char not in "\x0b\x07")
    assert [words(group) for group in groups(system.svg, "figure")] == [shown] * 2
    assert [words(group) for group in groups(system.svg, "label")] == [shown] * 2
    assert [words(group) for group in groups(system.svg, "syl")] == [shown] * 2


@pytest.mark.parametrize(
    ("options", "message"),
    [
        ({"staff_mm": 0.5}, "2 to 40 mm"),
        ({"width_mm": 10.0}, "give 35 to 1400 mm"),
        ({"bars_per_system": 0}, "1 to 32"),
    ],
)
def test_options_outside_their_limits(options: dict[str, Any], message: str) -> None:
    with pytest.raises(OptionError, match=message):
        engrave_systems(quarters(2), **options)


def test_the_engraver_is_silent_and_imported_only_when_used() -> None:
    program = (
        "import sys; from fioritura.notation.engraving import engrave, sheet; assert 'verovio' not in sys.modules\n"
        "from tests.test_engrave import quarters\n"
        "assert engrave.engrave_systems(quarters(2)) and 'verovio' in sys.modules"
    )
    path = os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)}
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True, env=path)
    assert (done.stdout, done.stderr) == ("", "")


def test_engraves_alike_in_any_thread() -> None:
    here = engrave_systems(quarters(8))
    with ThreadPoolExecutor(2) as pool:
        assert all(systems == here for systems in pool.map(engrave_systems, [quarters(8)] * 4))


def test_every_bar_stays_on_its_system_when_engraved_like_before() -> None:
    dense, sparse = document([note() * 8] * 8), document([note()] * 8)
    before = engrave_systems(dense, bars_per_system=2)
    after = engrave_systems(sparse, like=before)
    assert [system.bar_count for system in after] == [system.bar_count for system in before] == [2, 2, 2, 2]
    assert [system.width_mm for system in after] == pytest.approx([system.width_mm for system in before], abs=0.5)


def test_an_earlier_engraving_of_other_bars_is_not_followed() -> None:
    assert engrave_systems(quarters(9), like=engrave_systems(quarters(8))) == engrave_systems(quarters(9))
