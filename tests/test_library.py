"""The library's own work: sources, renditions as data and sound, own techniques and taste, evaluation."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from io import BytesIO, StringIO
from pathlib import Path

import mir_eval
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import etree
from numpy.typing import NDArray

import fioritura
from fioritura import Context, Figure, Interval, Rendition, Setting, Technique, Tune, verbatim, with_graces
from fioritura.arrange.taste import FIGURE_FEATURES, figure_features
from fioritura.errors import OptionError, OtherTuneError, ReadError
from fioritura.techniques.turn import TURN
from fioritura.theory.metre import QUARTER
from tests.tunes import random_tune

AIR = b"X:1\nT:Air\nM:4/4\nL:1/4\nK:G\n{d}GABc|d4|cBAG|G4|]"


@pytest.fixture(scope="module")
def tune() -> Tune:
    return fioritura.demo_tune(Setting("alto-sax"))


@pytest.fixture(scope="module")
def rendition(tune: Tune) -> Rendition:
    return fioritura.ornament(tune, Setting("alto-sax", level=4))


def test_a_tune_is_read_from_path_bytes_and_file(tmp_path: Path) -> None:
    path = tmp_path / "air.abc"
    path.write_bytes(AIR)
    from_path = fioritura.read(path)
    with path.open("rb") as file:
        assert fioritura.read(str(path)) == fioritura.read(AIR) == fioritura.read(BytesIO(AIR)) == from_path
        assert fioritura.read(file) == from_path
    untitled = fioritura.read(AIR.replace(b"T:Air\n", b""))
    assert untitled.title == ""
    for nothing in (b"", BytesIO(b"")):
        with pytest.raises(ReadError, match="no content to read"):
            fioritura.read(nothing)
    with pytest.raises(ReadError, match="open as text"):
        fioritura.read(StringIO(AIR.decode()))  # type: ignore[arg-type]


def test_a_rendition_of_the_library_is_the_arrangers(tune: Tune) -> None:
    from fioritura.arrange.arranger import ornament

    setting = Setting("alto-sax", level=4)
    ours, theirs = fioritura.ornament(tune, setting, seed=5), ornament(tune, setting, seed=5)
    assert (ours.figures, ours.line, ours.score, ours.setting) == (
        theirs.figures,
        theirs.line,
        theirs.score,
        theirs.setting,
    )
    plain = fioritura.plain(tune, setting).line
    assert [(note.onset_ticks, note.pitch, note.marks) for note in plain] == [
        (note.onset_ticks, note.pitch, note.marks) for note in ours.plain_line
    ]


def test_reprs_are_short(tune: Tune, rendition: Rendition) -> None:
    survey = fioritura.find(tune)
    for one in (tune, survey, rendition, rendition.figures[0], Setting("alto-sax")):
        assert len(repr(one)) < 100
    assert rendition.figures[0].id in repr(rendition.figures[0])


def test_ids_of_figures_are_their_own(tune: Tune) -> None:
    figures = fioritura.find(tune, Setting(level=5)).figures
    assert len({figure.id for figure in figures}) == len(figures)


@pytest.mark.parametrize("seed", range(6))
def test_a_note_array_is_the_line(seed: int) -> None:
    tune = random_tune(seed, bars=12, metre=("4/4", "6/8")[seed % 2])
    rendition = fioritura.ornament(tune, Setting("flute", level=5, tempo=90), seed=seed)
    rows = rendition.note_array()
    notes, line = rows[~rows["is_grace"]], rendition.line
    assert notes["pitch"].tolist() == [note.pitch.midi for note in line]
    assert (notes["onset_quarter"] * QUARTER).round().tolist() == [note.onset_ticks for note in line]
    assert (notes["duration_quarter"] * QUARTER).round().tolist() == [note.duration_ticks for note in line]
    assert notes["is_added"].tolist() == [note.anchor is None for note in line]
    assert [None if anchor < 0 else anchor for anchor in notes["anchor"]] == [note.anchor for note in line]
    assert list(zip(notes["bar"].tolist(), notes["beat"].tolist(), strict=True)) == [
        tune.beat_at(note.onset_ticks) for note in line
    ]
    assert np.allclose(notes["onset_sec"], notes["onset_quarter"] * 60 / 90)
    assert np.allclose(notes["duration_sec"], notes["duration_quarter"] * 60 / 90)
    assert (np.diff(rows["onset_quarter"]) >= 0).all()
    graces = rows[rows["is_grace"]]
    made = [pitch.midi for figure in rendition.figures for pitch in figure.graces]
    assert Counter(graces["pitch"][graces["is_added"]].tolist()) == Counter(made)
    for row in rows[rows["is_added"]]:
        figure = rendition.figures[row["figure"]]
        pitches = figure.graces if row["is_grace"] else [note.pitch for note in figure.notes]
        assert row["pitch"] in {pitch.midi for pitch in pitches}


def test_a_graces_of_the_file_are_not_added() -> None:
    rows = fioritura.plain(fioritura.read(AIR)).note_array()
    assert rows["is_grace"].sum() == 1
    assert not rows["is_added"].any()
    assert (rows["figure"] == -1).all()


def test_a_notebook_shows_the_staff_with_its_words(rendition: Rendition) -> None:
    html = rendition._repr_html_()
    assert html == rendition.to_svg()
    svg = etree.fromstring(html.encode())
    assert svg.get("role") == "img"
    words = svg.findtext("{http://www.w3.org/2000/svg}desc")
    assert words is not None and "bar 1:" in words


def test_files_are_those_that_write_makes(rendition: Rendition, tmp_path: Path) -> None:
    fioritura.write(rendition, tmp_path, formats=["musicxml", "mid", "abc"])
    assert rendition.to_musicxml() == (tmp_path / "ornamented.musicxml").read_bytes()
    assert rendition.to_midi() == (tmp_path / "ornamented.mid").read_bytes()
    assert rendition.to_abc() == (tmp_path / "ornamented.abc").read_bytes()
    back = fioritura.read(rendition.to_musicxml(concert=True))
    assert [note.pitch.midi for note in back.notes] == [note.pitch.midi for note in rendition.line]


def test_audio_is_stereo_and_the_same_each_time() -> None:
    rendition = fioritura.ornament(fioritura.read(AIR), Setting("flute"))
    (samples, rate), (again, _) = rendition.audio(), rendition.audio()
    assert samples.dtype == np.float32 and samples.shape[1] == 2 and rate == 48_000
    assert np.array_equal(samples, again)
    assert 0.05 < np.abs(samples).max() <= 1.0
    slow, _ = rendition.audio(tempo=60)
    assert len(slow) > 1.7 * len(samples)


# Techniques and taste of one's own


def _kick(context: Context) -> Iterator[Figure]:
    if context.is_free and context.is_peak:
        below = context.note.pitch.up(-Interval.parse("P8"))
        yield with_graces("octave-kick", context, [below], verbatim("A kick."))


KICK = Technique("octave-kick", "octave-graces", 2, _kick, taste={"jazz": {"base": 4.5, "share": 0.3}})


def test_own_techniques_stand_beside_the_tables(tune: Tune, tmp_path: Path) -> None:
    setting = Setting("alto-sax", level=3)
    survey = fioritura.find(tune, setting, techniques=[KICK])
    own = [figure for figure in survey.figures if figure.technique == KICK.id]
    table = [figure for figure in survey.figures if figure.technique != KICK.id]
    assert own and table == list(fioritura.find(tune, setting).figures)
    assert sum(survey.why(own[0]).values()) == pytest.approx(own[0].score, abs=0.01)
    assert KICK.id in {figure.technique for figure in fioritura.choose(survey).figures}
    alone = fioritura.ornament(tune, setting, techniques=[KICK], only=["octave-graces"])
    assert {figure.technique for figure in alone.figures} == {KICK.id}
    names = {path.name for path in fioritura.write(alone, tmp_path, formats=["pdf", "json"])}
    assert "comparison.pdf" in names
    assert "octave kick" in alone.to_svg()
    assert KICK.id not in fioritura.all_techniques()
    with pytest.raises(OptionError, match="octave-kick"):
        fioritura.find(tune, Setting("alto-sax", level=1), only=["warble"], techniques=[KICK])
    assert not [
        f for f in fioritura.find(tune, Setting(level=1), techniques=[KICK]).figures if f.technique == KICK.id
    ]


@pytest.mark.parametrize(
    ("technique", "problem"),
    [
        (TURN.id, f"'{TURN.id}' is no technique: give techniques as objects"),
        (Technique(TURN.id, "turns", 2, _kick), f"there is a technique “{TURN.id}” already"),
        (Technique("Octave Kick", "graces", 2, _kick), "not of the form lower-case-words"),
        (Technique("kick", "graces", 9, _kick), "the level of “kick” is 9, not 1 to 5"),
        (Technique("kick", "graces", 2, _kick), "“kick” gave something that is not its own figure"),
        (Technique("kick", "graces", 2, _kick, words={"en": "x = y\n"}), "“kick” has no words in en"),
        (Technique("kick", "graces", 2, _kick, taste={"jazz": {"base": "much"}}), "the weight 'much' is no number"),
        (Technique("kick", "graces", 2, _kick, taste={"rock": {"base": 1.0}}), "there is no idiom “rock”"),
    ],
)
def test_a_technique_that_can_not_be_used_is_refused(tune: Tune, technique: object, problem: str) -> None:
    with pytest.raises(OptionError, match=problem):
        fioritura.find(tune, techniques=[technique])  # type: ignore[list-item]


@pytest.mark.parametrize("seed", range(4))
def test_a_number_lifts_every_score_by_just_that(seed: int) -> None:
    tune, setting = random_tune(seed, bars=12), Setting("flute", level=5)
    usual = fioritura.find(tune, setting)
    lifted = fioritura.find(tune, setting, taste={TURN.id: 0.5, "graces": -0.25})
    family = {technique.id for technique in usual.techniques if technique.family == "graces"}
    for before, after in zip(usual.figures, lifted.figures, strict=True):
        wanted = 0.5 if before.technique == TURN.id else -0.25 if before.technique in family else 0.0
        assert after.id == before.id
        assert after.score - before.score == pytest.approx(wanted, abs=2e-4)
        assert sum(lifted.why(after).values()) == pytest.approx(after.score, abs=0.01)


def test_weights_of_features_count_where_the_feature_is() -> None:
    tune, setting = random_tune(3, bars=16), Setting("flute", level=5)
    usual = fioritura.find(tune, setting)
    peaks = fioritura.find(tune, setting, taste={"all": {"place": {"peak": 0.75}}})
    for before, after in zip(usual.figures, peaks.figures, strict=True):
        wanted = 0.75 if usual.contexts[usual.places[usual.by_id[before.id]]].is_peak else 0.0
        assert after.score - before.score == pytest.approx(wanted, abs=2e-4)
    added = fioritura.find(tune, setting, taste={"figure": {"added notes": 1.0}})
    for before, after in zip(usual.figures, added.figures, strict=True):
        context = usual.contexts[usual.places[usual.by_id[before.id]]]
        features = dict(zip(FIGURE_FEATURES, figure_features(before, context, 0.0), strict=True))
        assert after.score - before.score == pytest.approx(features["added notes"], abs=2e-4)


def test_a_taste_that_lifts_turns_has_more_of_them(tune: Tune) -> None:
    setting = Setting("alto-sax", level=4)

    def turns(taste: fioritura.TasteTable | None) -> int:
        return Counter(figure.technique for figure in fioritura.ornament(tune, setting, taste=taste).figures)[TURN.id]

    assert turns({TURN.id: {"base": 1.0, "share": 0.5}}) > turns({TURN.id: 0.5}) > turns(None)
    assert turns({TURN.id: -3.0}) == 0


@pytest.mark.parametrize(
    ("taste", "problem"),
    [
        ({"warble": 1.0}, "names “warble”, which is neither a technique nor a family"),
        ({TURN.id: "much"}, "the weight 'much' is no number"),
        ({TURN.id: float("nan")}, "the weight nan is no number"),
        ({TURN.id: True}, "the weight True is no number"),
        ({TURN.id: {"weight": 1.0}}, "it has “weight” for turn: give base, share and place"),
        ({TURN.id: {"place": {"red": 1.0}}}, "places have no feature “red”"),
        ({TURN.id: {"place": 1.0}}, "the weight 1.0 is no number"),
        ({TURN.id: {"share": 1.5}}, "a share of 1.5 makes no sense"),
        ({"turns": {"share": 0.5}}, "a share of 0.5 makes no sense"),
        ({"figure": {"red": 1.0}}, "figures have no feature “red”"),
        ({"figure": {"strain": "much"}}, "the weight 'much' is no number"),
        ({"figure": 1.0}, "the weight 1.0 is no number"),
    ],
)
def test_a_taste_that_can_not_be_used_is_refused(tune: Tune, taste: fioritura.TasteTable, problem: str) -> None:
    with pytest.raises(OptionError, match=problem):
        fioritura.find(tune, taste=taste)


# Listening and evaluation


def test_a_rendition_is_named_and_another_tune_refused(tune: Tune) -> None:
    rendition = fioritura.ornament(tune, only=["runs"])
    named = fioritura.name(tune, rendition)
    assert fioritura.compare_figures(rendition.figures, named.figures).f1 > 0.9
    assert fioritura.name(tune, fioritura.read(rendition.to_musicxml(concert=True))).figures == named.figures
    with pytest.raises(OtherTuneError, match="is not “Air”"):
        fioritura.name(fioritura.read(AIR), rendition)


NOTES = st.lists(st.tuples(st.integers(0, 400), st.integers(60, 64)), max_size=25)


def _array(notes: list[tuple[int, int]], jitter: float) -> NDArray[np.void]:
    rows = [(round(0.02 * place + jitter * (place % 3), 4), pitch) for place, pitch in sorted(notes)]
    return np.array(rows, [("onset_sec", "f8"), ("pitch", "f8")])


@settings(max_examples=60, deadline=None)
@given(NOTES, NOTES, st.sampled_from([0.0, 0.013]))
def test_notes_are_compared_as_the_field_does(
    reference: list[tuple[int, int]], estimate: list[tuple[int, int]], jitter: float
) -> None:
    """Against mir_eval 0.8, onsets and pitches only."""
    own, other = _array(reference, 0.0), _array(estimate, jitter)
    found = fioritura.compare_notes(own, other)
    if not (len(own) and len(other)):
        assert found[:3] == (0.0, 0.0, 0.0)
        return
    times = [np.stack([one["onset_sec"], one["onset_sec"] + 0.1], axis=1) for one in (own, other)]
    pitches = [440.0 * 2 ** ((one["pitch"] - 69) / 12) for one in (own, other)]
    wanted = mir_eval.transcription.precision_recall_f1_overlap(
        times[0], pitches[0], times[1], pitches[1], offset_ratio=None
    )
    assert found[:3] == pytest.approx(wanted[:3])
    assert len({a for a, _ in found.matched}) == len({b for _, b in found.matched}) == len(found.matched)


def test_tolerances_and_fields_are_checked() -> None:
    notes = _array([(0, 60)], 0.0)
    with pytest.raises(OptionError, match="make no sense: give 0 or more"):
        fioritura.compare_notes(notes, notes, onset_sec=-1.0)
    with pytest.raises(OptionError, match="no field “pitch”"):
        fioritura.compare_notes(notes, notes[["onset_sec"]])


def test_figures_are_counted_once() -> None:
    rendition = fioritura.ornament(fioritura.demo_tune(), Setting(level=5))
    figures = rendition.figures
    assert fioritura.compare_figures(figures, figures)[:3] == (1.0, 1.0, 1.0)
    half = fioritura.compare_figures(figures[:4], [*figures[:2], figures[0]])
    assert half[:2] == pytest.approx((2 / 3, 0.5))
    assert fioritura.compare_figures([], figures).f1 == 0.0


# Many tunes


def test_a_folder_is_ornamented_once(tmp_path: Path) -> None:
    (tmp_path / "air.abc").write_bytes(AIR)
    out = tmp_path / "made"
    first = fioritura.ornament_all(tmp_path / "air.abc", Setting("flute"), out=out, levels=[1, 3], workers=1)
    assert (first.tunes, first.made, first.failed) == (1, 2, 0)
    again = fioritura.ornament_all(tmp_path / "air.abc", Setting("flute"), out=out, levels=[1, 3], workers=1)
    assert (again.made, again.done_before) == (0, 2)
    with pytest.raises(OptionError, match="can’t share a tempo of 90"):
        fioritura.ornament_all(tmp_path / "air.abc", Setting(tempo=90), out=out)
    with pytest.raises(OptionError, match="0 workers"):
        fioritura.ornament_all(tmp_path / "air.abc", out=out, workers=0)
