"""MEI written straight from a score, against what the engraver's own importer makes of the same score's MusicXML.

Both are drawn by the engraver, and as many notes, accidentals, curves, beams and so on must stand on the page.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from lxml import etree

from fioritura.errors import FiorituraError
from fioritura.notation.abc.reader import list_abc
from fioritura.notation.engraving.mei import piece_of
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.notation.score import Label, Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.player import Player
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark, Note
from tests.corpus_tunes import corpus_tunes
from tests.scores import ornamented, score_of

SVG = "{http://www.w3.org/2000/svg}"
MEI = "{http://www.music-encoding.org/ns/mei}"
XML_ID = "{http://www.w3.org/XML/1998/namespace}id"
ROLES = frozenset(
    [
        "note",
        "notehead",
        "rest",
        "mRest",
        "accid",
        "tie",
        "slur",
        "tuplet",
        "tupletNum",
        "tupletBracket",
        "beam",
        "flag",
        "dots",
        "measure",
        "barLine",
        "staff",
        "stem",
        "clef",
        "keySig",
        "keyAccid",
        "meterSig",
        "harm",
        "fermata",
        "trill",
        "turn",
        "mordent",
        "breath",
        "artic",
        "gliss",
        "ending",
        "voltaBracket",
        "verse",
        "syl",
        "repeatMark",
        "ledgerLines",
        "grpSym",
    ]
)
RICH = """X:1
T:All of it
M:4/4
L:1/8
Q:1/4=100
K:Bb
"Bb"F2|:"Eb7"(3Bcd (e2 f)g !fermata!a2|"F#m7b5"B4-B2 (3z cd|1 "Bb"!trill!B2 !turn!c2 !mordent!d2 .e2:|2 "C7"!accent!B2 !tenuto!c2 ^d2 !breath!=e2||
w:la * * * gyp-sy_ moon
K:A
[M:3/4]!segno!"N.C."A2 B2 c2|{d}e2 {cd}f2 z2|!coda!a6-|a4 z2|z6|c>d e/2f/2g/2a/2 A2|A{Bc}B c{d}d A2|A6!D.S.!|]
"""


def rich(*, staves: int) -> Score:
    """A score with everything that a page can hold: every mark stands on some note of the last staff."""
    tune = list_abc(RICH)[0].read(irregular="keep")
    line = list(tune.notes)
    for number, mark in enumerate(mark for mark in Mark if mark not in (Mark.SLUR_START, Mark.SLUR_STOP)):
        line[number + 6] = replace(line[number + 6], marks=(*line[number + 6].marks, mark))
    line[3] = replace(line[3], graces=(Pitch.parse("G4"),), marks=(Mark.SCOOP,))
    alto = INSTRUMENTS["alto-sax"]
    both = (Staff(tune.notes, "plain", alto), Staff(tuple(line), "ornamented", alto, (Label(0, "a & b", 0),)))
    return Score(tune, both[-staves:])


def drawn(music: str) -> Counter[str]:
    """How many groups of each role the engraver draws."""
    import verovio

    verovio.enableLog(verovio.LOG_OFF)
    toolkit = verovio.toolkit()
    toolkit.setOptions({"breaks": "none", "header": "none", "footer": "none", "svgFormatRaw": True})
    assert toolkit.loadData(music), toolkit.getLog()
    found: Counter[str] = Counter()
    for number in range(1, toolkit.getPageCount() + 1):
        for group in etree.fromstring(toolkit.renderToSVG(number).encode()).iter(f"{SVG}g"):
            role = (group.get("class") or "").split()[:1]
            if len(group) and role and role[0] in ROLES:
                found[role[0]] += 1
            if "-g" in group.get("id", "") and role == ["note"]:
                found["grace"] += 1
    return found


def assert_drawn_alike(score: Score) -> None:
    """Left out of the import: names of staves, and vibrato, which the importer takes for the line of a trill."""
    imported = etree.fromstring(write_musicxml(score))
    for ornaments in imported.iter("ornaments"):
        for wave in ornaments.findall("wavy-line"):
            ornaments.remove(wave)
    for label in imported.iter("part-name", "part-abbreviation"):
        label.text = None
    written = drawn(piece_of(score).mei())
    assert written == drawn(etree.tostring(imported, encoding="unicode"))
    assert written["note"] > 10


@pytest.mark.parametrize("staves", [1, 2])
def test_all_that_a_page_can_hold_is_drawn_as_from_musicxml(staves: int) -> None:
    score = rich(staves=staves)
    assert_drawn_alike(score)
    found = drawn(piece_of(score).mei())
    wanted = [
        "grace",
        "slur",
        "tie",
        "tuplet",
        "beam",
        "fermata",
        "trill",
        "turn",
        "mordent",
        "breath",
        "gliss",
        "voltaBracket",
        "syl",
        "repeatMark",
        "mRest",
    ]
    assert all(found[role] for role in wanted)


@pytest.mark.parametrize("metre", ["4/4", "3/4", "6/8"])
@pytest.mark.parametrize("staves", [1, 2])
def test_an_ornamented_tune_is_drawn_as_from_musicxml(metre: str, staves: int) -> None:
    assert_drawn_alike(ornamented(3, metre=metre, staves=staves))


def book_scores(step: int, most: int) -> list[Score]:
    found = []
    for tune in corpus_tunes(60)[::step]:
        try:
            found.append(score_of(tune, Player.of("flute", 5), idiom="folk"))
        except FiorituraError:
            continue
    return found[:most]


def test_tunes_of_the_books_are_drawn_as_from_musicxml() -> None:
    for score in book_scores(20, 10):
        assert_drawn_alike(score)


@pytest.mark.slow
def test_sixty_tunes_of_the_books_are_drawn_as_from_musicxml() -> None:
    scores = book_scores(3, 60)
    assert len(scores) == 60
    for score in scores:
        assert_drawn_alike(score)


def test_everything_on_a_tied_note_hangs_on_its_right_piece() -> None:
    """What begins a note belongs to its first piece, what ends it to its last (common practice)."""
    marks = (Mark.TRILL, Mark.ACCENT, Mark.FERMATA, Mark.FALL)
    tune = list_abc("X:1\nM:4/4\nL:1/4\nK:C\nCDEF-|FGAB|]\n")[0].read()
    notes = [replace(note, marks=marks) if note.pitch == Pitch.parse("F4") else note for note in tune.notes]
    root = etree.fromstring(piece_of(Score(tune, (Staff(tuple(notes)),))).mei())
    artics = {note.get(XML_ID): [a.get("artic") for a in note] for note in root.iter(f"{MEI}note") if len(note)}
    assert artics == {"s1-n3": ["acc"], "s1-n3-2": ["fall"]}
    assert [trill.get("startid") for trill in root.iter(f"{MEI}trill")] == ["#s1-n3"]
    assert [fermata.get("startid") for fermata in root.iter(f"{MEI}fermata")] == ["#s1-n3-2"]
    assert [(tie.get("startid"), tie.get("endid")) for tie in root.iter(f"{MEI}tie")] == [("#s1-n3", "#s1-n3-2")]


def test_labels_and_chord_symbols_are_elements_with_ids_and_no_font() -> None:
    root = etree.fromstring(piece_of(ornamented(3, staves=1)).mei())
    labels = [each for each in root.iter(f"{MEI}dir") if each.get("type") == "figure"]
    assert [each.get(XML_ID) for each in labels] == [f"s1-l{number}" for number in range(len(labels))]
    assert len(labels) > 5
    assert not [rend for rend in root.iter(f"{MEI}rend") if rend.get("fontfam")]
    chords = [each.get(XML_ID) for each in root.iter(f"{MEI}harm")]
    assert chords == [f"s1-c{number}" for number in range(len(chords))]


def test_every_pointer_leads_to_a_note() -> None:
    for score in (rich(staves=2), ornamented(4), ornamented(5, staves=1)):
        root = etree.fromstring(piece_of(score).mei())
        names = [note.get(XML_ID) for note in root.iter(f"{MEI}note")]
        ids = [element.get(XML_ID) for element in root.iter() if element.get(XML_ID)]
        assert len(ids) == len(set(ids))
        pointers = [element.get(end) for element in root.iter() for end in ("startid", "endid") if element.get(end)]
        assert pointers
        assert {str(pointer).removeprefix("#") for pointer in pointers} <= set(names)


def test_a_staff_to_write_on_shows_no_rests() -> None:
    tune = list_abc("X:1\nM:4/4\nL:1/4\nK:C\nCDEF|z2AB|]\n")[0].read()
    line: tuple[Note, ...] = tune.notes[:5]
    found = drawn(piece_of(Score(tune, (Staff(line, shows_rests=False), Staff((), shows_rests=False)))).mei())
    assert found["rest"] == found["mRest"] == 0
    assert found["note"] == 5
