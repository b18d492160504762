"""The band follows the plan: choruses that differ, and comping that does not repeat itself.

In two before four, a dominant pedal before the climax and hi-hat before ride are common practice of jazz rhythm sections.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import groupby, pairwise

import numpy as np
import pytest
from scipy.stats import spearmanr

from fioritura.accompany.band import band_parts
from fioritura.accompany.feels import FEELS, default_feel
from fioritura.accompany.form import Form, Section, form_of
from fioritura.accompany.harmony import Changes
from fioritura.accompany.part import BandNote
from fioritura.accompany.shape import manner_of, planned_choruses
from fioritura.arrange.plan import Plan
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.calibrate import calibrated
from fioritura.sound.loudness import integrated_loudness
from fioritura.sound.render import render
from fioritura.sound.session import Session, played, session_form
from fioritura.theory.metre import EIGHTH, QUARTER, WHOLE
from tests.charts import BLUES, MINOR_FOURTHS, chart
from tests.test_accompany_band import METRE_OF

TUNES = ((BLUES, "F major"), (MINOR_FOURTHS, "E minor"))


def form_for(feel: str, count: int, text: str = BLUES, key: str = "F major") -> Form:
    tune = chart(text, key=key, metre=METRE_OF[feel])
    return form_of(tune, planned_choruses(Plan.usual(count)), opening="pickup")


def parts_of(form: Form, feel: str, seed: int) -> dict[str, tuple[BandNote, ...]]:
    return {part.name: part.notes for part in band_parts(form, FEELS[feel], seed=seed) if part.name != "click"}


def choruses(form: Form) -> list[Section]:
    return [section for section in form.sections if section.name.startswith("chorus")]


def within(section: Section, notes: tuple[BandNote, ...]) -> Iterator[BandNote]:
    return (note for note in notes if section.start_ticks <= note.onset_ticks < section.end_ticks)


@pytest.mark.parametrize("feel", sorted(FEELS))
@pytest.mark.parametrize("count", [3, 5])
def test_hits_register_and_level_follow_the_plan(feel: str, count: int) -> None:
    for seed, (text, key) in enumerate(TUNES):
        form = form_for(feel, count, text, key)
        parts = parts_of(form, feel, seed)
        hits, register, level = [], [], []
        for section in choruses(form):
            inside = {name: list(within(section, notes)) for name, notes in parts.items()}
            hits.append(
                sum(
                    len({(n.onset_ticks, n.midi if name == "drums" else 0) for n in own})
                    for name, own in inside.items()
                )
            )
            register.append(np.mean([note.midi for note in inside["chords"]]))
            # Power goes with the fourth power of velocity where a channel's gain is 40 log10 of it (General MIDI 2).
            level.append(sum(note.loudness**4 for own in inside.values() for note in own))
        energies = [section.energy for section in choruses(form)]
        for measured in (hits, register, level):
            assert spearmanr(energies, measured).statistic >= 0.9 - 1e-9, measured
        assert max(hits) >= 1.25 * min(hits)
        assert max(register) - min(register) >= 2.0


def test_the_level_is_heard() -> None:
    # ITU-R BS.1770 loudness of each chorus as it is rendered.
    tune = chart(BLUES, key="F major")
    session = Session(tune, planned_choruses(Plan.usual(3)), INSTRUMENTS["alto-sax"], FEELS["swing"])
    form, performance = session_form(session), calibrated(played(session))
    audio = render(performance)
    bounds = [
        (performance.clock.seconds(each.start_ticks), performance.clock.seconds(each.end_ticks))
        for each in (form.sections[0], *choruses(form))
    ]
    count_in, *loudness = (
        integrated_loudness(audio[round(start * SAMPLE_RATE) : round(end * SAMPLE_RATE)]) for start, end in bounds
    )
    assert all(later - earlier >= 1.0 for earlier, later in pairwise(loudness)), loudness
    assert count_in <= loudness[0], "the count-in is no louder than the band"


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_no_comping_comes_more_than_twice_running(feel: str) -> None:
    for seed in range(3):
        for text, key in TUNES:
            form = form_for(feel, 3, text, key)
            notes = parts_of(form, feel, seed)["chords"]
            if FEELS[feel].chords.has_drone:
                notes = tuple(note for note in notes if note.duration_ticks < form.tune.metre.bar_ticks)
            bars = [
                tuple(
                    sorted(
                        {
                            (n.onset_ticks - bar.start_ticks, n.duration_ticks)
                            for n in notes
                            if bar.start_ticks <= n.onset_ticks < bar.end_ticks
                        }
                    )
                )
                for _, bar in form.playing_bars()
            ]
            assert max(len(list(run)) for _, run in groupby(bars)) <= 2


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_a_chord_has_three_voicings_and_two_rhythms_in_a_session(feel: str) -> None:
    form = form_for(feel, 3, MINOR_FOURTHS, "E minor")
    changes = Changes(form.tune.chords)
    struck: dict[int, list[int]] = defaultdict(list)
    for note in parts_of(form, feel, 1)["chords"]:
        if note.onset_ticks < (form.final_ticks or 0) and note.duration_ticks < form.tune.metre.bar_ticks:
            struck[note.onset_ticks].append(note.midi)
    voicings: dict[str, set[tuple[int, ...]]] = defaultdict(set)
    rhythms: dict[str, set[tuple[int, ...]]] = defaultdict(set)
    for _, bar in form.playing_bars():
        chord = changes.at(bar.start_ticks)
        assert chord is not None
        places = [onset for onset in sorted(struck) if bar.start_ticks <= onset < bar.end_ticks - EIGHTH]
        voicings[chord.text].update(tuple(sorted(struck[onset])) for onset in places)
        rhythms[chord.text].add(tuple(onset - bar.start_ticks for onset in places))
    few = [name for name, found in voicings.items() if len(found) < 3]
    assert len(few) <= 1, "one chord that comes once in a chorus may be struck too seldom"
    assert all(len(found) >= 2 for found in rhythms.values())


def test_the_bass_goes_from_two_to_four_with_a_pedal_before_the_climax() -> None:
    form = form_for("swing", 3)
    bass = parts_of(form, "swing", 0)["bass"]
    by_chorus = [list(within(section, bass)) for section in choruses(form)]
    assert len(by_chorus[0]) <= 2.6 * 12
    assert len(by_chorus[2]) >= 4 * 12
    climax = choruses(form)[2].start_ticks
    pedal = [note for note in bass if climax - 4 * WHOLE <= note.onset_ticks < climax]
    assert {note.midi % 12 for note in pedal} == {0}, "C under all chords of the last four bars in F"
    for feel in ("swing", "waltz", "shuffle"):
        for seed in range(3):
            line = parts_of(form_for(feel, 4), feel, seed)["bass"]
            assert all(abs(one.midi - other.midi) <= 12 for one, other in pairwise(line))
            assert all(one.end_ticks <= other.onset_ticks for one, other in pairwise(line))


def test_the_drums_lead_in_and_keep_the_ride_for_later() -> None:
    form = form_for("swing", 3)
    drums = parts_of(form, "swing", 0)["drums"]
    lead_in = [note.onset_ticks for note in drums if note.onset_ticks < form.count_in_ticks]
    assert lead_in
    assert min(lead_in) >= form.count_in_ticks - 2 * QUARTER
    head, _, climax = ({note.midi for note in within(section, drums)} for section in choruses(form))
    assert 51 not in head, "no ride cymbal in the first chorus"
    assert 51 in climax


def test_an_intro_plays_the_last_bars_before_the_melody() -> None:
    tune = chart(BLUES, key="F major", melody="F4 A4 C5 A4 F4 A4 C5 A4")
    form = form_of(tune, planned_choruses(Plan.usual(2), [tune.notes] * 2), opening="intro")
    assert [section.name for section in form.sections[:3]] == ["count-in", "intro", "chorus 1"]
    assert form.tune.notes[0].onset_ticks == 5 * WHOLE
    assert any(note.onset_ticks < 5 * WHOLE for note in parts_of(form, "swing", 0)["bass"])


def test_a_plan_of_five_builds_shouts_and_drops() -> None:
    plan = Plan.usual(5)
    assert [manner_of(plan, number) for number in range(5)] == ["two", "four", "build", "shout", "drop"]


@pytest.mark.parametrize(
    ("metre", "folk", "feel"),
    [("2/4", True, "march"), ("12/8", False, "slow-blues"), ("12/8", True, "jig"), ("4/4", True, "reel")],
)
def test_old_tunes_get_their_dances(metre: str, folk: bool, feel: str) -> None:
    assert default_feel(chart("C | G7", metre=metre, feel="straight"), is_folk=folk).id == feel


def test_reels_and_jigs_have_a_drone_under_chords_off_the_beat() -> None:
    for feel, beat in (("reel", 2 * QUARTER), ("jig", 3 * EIGHTH)):
        form = form_for(feel, 3, "D | D | A7 | D | G | D | A7 | D", "D major")
        notes = parts_of(form, feel, 0)["chords"]
        stop = form.final_ticks or 0
        drone = {n.midi % 12 for n in notes if n.duration_ticks == form.tune.metre.bar_ticks and n.onset_ticks < stop}
        assert drone == {2, 9}, "the tonic and its fifth"
        loud = [n for n in notes if n.loudness > 0.45 and n.onset_ticks < stop]
        assert np.mean([(n.onset_ticks % beat) != 0 for n in loud]) >= 0.9
