"""Breath, hard places, and the independent checker, on worked examples (common practice)."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.errors import OptionError, RangeError
from fioritura.players.breath import BREATH_SEC, HASTY_BREATH_SEC, BreathPlan, breath_marks
from fioritura.players.fingering import chart_of
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.playability import hardest_places
from fioritura.players.player import Player
from fioritura.players.practice import start_tempo
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH, WHOLE, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, Mark, Note, Tune
from fioritura.words import LANGUAGES, message, say, speaking
from tests.playability_checker import violations


def line_of(player: Player, written: str, duration_ticks: int = EIGHTH) -> tuple[Note, ...]:
    """Equal notes from written pitches; ``r`` is a rest."""
    notes = []
    for place, name in enumerate(written.split()):
        if name != "r":
            pitch = player.instrument.sounding(Pitch.parse(name))
            notes.append(Note(place * duration_ticks, duration_ticks, pitch))
    return tuple(notes)


def tune_of(line: tuple[Note, ...]) -> Tune:
    metre = Metre(4, 4)
    count = line[-1].end_ticks // metre.bar_ticks + 1
    bars = (Bar(number + 1, number * metre.bar_ticks, metre.bar_ticks, metre, Key(0)) for number in range(count))
    return Tune("Test", line, tuple(bars))


# --- breath -----------------------------------------------------------------------------------------------------


def test_rests_are_breathed_in_and_short_phrases_need_nothing_else() -> None:
    player = Player.of("alto-sax", 3)
    line = line_of(player, "G4 A4 B4 C5 r r D5 C5 B4 A4", QUARTER)
    plan = breath_marks(player, line, 120)
    assert [(breath.after, breath.kind, breath.stolen_sec) for breath in plan.breaths] == [(3, "rest", 0.0)]
    assert plan.longest_sec == pytest.approx(2.0)
    assert plan.is_playable


def test_a_long_phrase_breathes_after_its_long_note() -> None:
    player = Player.of("alto-sax", 1)
    times = [(number * EIGHTH, EIGHTH) for number in range(16)]
    times += [(16 * EIGHTH, WHOLE)] + [((24 + number) * EIGHTH, EIGHTH) for number in range(12)]
    line = tuple(Note(onset, length, Pitch.parse("C4")) for onset, length in times)
    plan = breath_marks(player, line, 120)
    assert [(breath.after, breath.kind) for breath in plan.breaths] == [(16, "long note")]
    assert plan.breaths[0].stolen_sec == pytest.approx(BREATH_SEC)
    assert plan.longest_sec > player.limits.breath_sec
    assert not plan.is_playable


def test_a_phrase_end_is_a_better_place_than_another_note_of_the_same_length() -> None:
    player = Player.of("alto-sax", 1)
    line = line_of(player, " ".join(["G4 A4"] * 8), HALF)
    plan = breath_marks(player, line, 160, phrase_ends=(5,))
    assert (5, "phrase end") in [(breath.after, breath.kind) for breath in plan.breaths]
    marked = (*line[:4], replace(line[4], marks=(Mark.BREATH,)), *line[5:])
    assert 4 in [breath.after for breath in breath_marks(player, marked, 160).breaths]


def test_a_breath_avoids_the_middle_of_a_slur() -> None:
    player = Player.of("alto-sax", 1)
    line = list(line_of(player, "G4 A4 B4 C5 D5 C5 B4 A4", QUARTER))
    line[0] = replace(line[0], marks=(Mark.SLUR_START,))
    line[4] = replace(line[4], marks=(Mark.SLUR_STOP,))
    plan = breath_marks(player, line, 70)
    assert [breath.after for breath in plan.breaths] == [4]


def test_notes_too_short_to_give_a_breath_make_the_phrase_unplayable() -> None:
    player = Player.of("trombone", 1)
    line = line_of(player, " ".join(["Bb2 C3"] * 40), SIXTEENTH)
    plan = breath_marks(player, line, 100)
    assert plan.breaths == () and not plan.is_playable
    assert plan.longest_sec == pytest.approx(80 * 0.15)


def test_an_empty_line_needs_no_breath_and_a_tempo_of_0_is_refused() -> None:
    player = Player.of("flute", 3)
    assert breath_marks(player, (), 120) == BreathPlan((), 0.0, True)
    with pytest.raises(OptionError, match="tempo of 0"):
        breath_marks(player, (), 0)


@given(
    lengths=st.lists(st.sampled_from([EIGHTH, QUARTER, HALF, WHOLE]), min_size=2, max_size=9),
    tempo=st.integers(40, 200),
)
@settings(max_examples=150, deadline=None)
def test_breaths_cost_as_little_as_trying_every_set_of_places(lengths: list[int], tempo: int) -> None:
    """Against brute force over all sets of places, judged by the published costs alone."""
    player = Player.of("trombone", 1)
    onsets = [sum(lengths[:number]) for number in range(len(lengths))]
    line = [Note(onset, length, Pitch.parse("C3")) for onset, length in zip(onsets, lengths, strict=True)]
    plan = breath_marks(player, line, tempo)
    seconds = [length * 60 / tempo / QUARTER for length in lengths]
    allowed = [number for number in range(len(line) - 1) if seconds[number] >= 2 * HASTY_BREATH_SEC]
    sets = [places for size in range(len(allowed) + 1) for places in combinations(allowed, size)]
    best = min(breath_cost(seconds, places, player.limits.breath_sec) for places in sets)
    chosen = tuple(breath.after for breath in plan.breaths)
    assert breath_cost(seconds, chosen, player.limits.breath_sec) == pytest.approx(best)


def test_where_no_note_is_long_a_hasty_breath_is_taken() -> None:
    player = Player.of("alto-sax", 1)
    line = tuple(Note(number * QUARTER, QUARTER, Pitch.parse("C4")) for number in range(20))
    plan = breath_marks(player, line, 120)
    assert plan.is_playable
    assert {breath.stolen_sec for breath in plan.breaths} == {HASTY_BREATH_SEC}


def breath_cost(seconds: list[float], places: tuple[int, ...], breath_sec: float) -> float:
    """1 a place, 2 for the share stolen of its note and 1 more where the breath is hasty; 100 for each second of a span
    beyond the breath."""
    edges = [0, *(place + 1 for place in places), len(seconds)]
    excess = sum(max(0.0, sum(seconds[a:b]) - breath_sec) for a, b in pairwise(edges))
    calm = [seconds[place] for place in places if seconds[place] >= 2 * BREATH_SEC]
    hasty = [seconds[place] for place in places if seconds[place] < 2 * BREATH_SEC]
    cost = sum(1 + 2 * BREATH_SEC / length for length in calm) + sum(
        2 + 2 * HASTY_BREATH_SEC / length for length in hasty
    )
    return cost + 100 * excess


# --- hard places ------------------------------------------------------------------------------------------------


def test_the_break_is_the_hardest_place_of_a_clarinet_line() -> None:
    player = Player.of("clarinet", 3)
    line = line_of(player, "C4 D4 E4 F4 G4 F4 E4 D4 F4 G4 A4 B4 C5 B4 C5 D5")
    place, *others = hardest_places(player, line, tune_of(line), 120)
    assert [str(pitch) for pitch in place.pair] == ["A4", "B4"]
    assert (place.bar, place.beat) == (2, 2.0)
    assert "break" in say(place.why)
    assert place.strain > max(other.strain for other in others)
    assert any("right hand" in say(step) for step in place.practice)


@pytest.mark.parametrize(
    ("id", "written", "pair", "words"),
    [
        ("alto-sax", "G4 A4 G4 A4 B3 C#4 D4 E4", ["B3", "C#4"], "left little finger"),
        ("alto-sax", "A5 B5 A5 D6 F6 D6 B5 A5", ["D6", "F6"], "palm"),
        ("flute", "G4 A4 B4 C5 D5 E5 F5 G5", ["C5", "D5"], "fingers cross"),
        ("trumpet", "F4 E4 F4 E4 C4 C5 B4 C5", ["C4", "C5"], "partials"),
        ("trombone", "A2 Bb2 A2 Bb2 B2 Bb2 A2 Bb2", ["Bb2", "B2"], "seventh position"),
        ("tenor-sax", "G4 A4 G4 A4 A4 A4 A4 G4", ["A4", "A4"], "tongue"),
    ],
)
def test_hard_places_say_why_in_the_words_of_the_trade(id: str, written: str, pair: list[str], words: str) -> None:
    player = Player.of(id, 3)
    line = line_of(player, written, SIXTEENTH)
    place = hardest_places(player, line, tune_of(line), 96, count=1)[0]
    assert {str(pitch) for pitch in place.pair} == set(pair)
    assert words in say(place.why)
    assert "♩ =" in say(place.practice[-1])


@pytest.mark.parametrize(
    ("language", "why", "step"),
    [
        (
            "de",
            "H3 nach Cis4: der linke kleine Finger geht von der tiefen H-Klappe zu der tiefen Cis-Klappe; "
            "6,4 Noten in der Sekunde.",
            "H3–Cis4 achtmal in jeder Richtung binden; der kleine Finger bleibt beim Gleiten auf den Klappen.",
        ),
        (
            "fr",
            "Si3 vers Do♯4\u00a0: l’auriculaire gauche va de la clé de Si grave à la clé de Do♯ grave\u202f; "
            "cela passe à 6,4 notes par seconde.",
            "Lier Si3–Do♯4 huit fois dans chaque sens\u202f; l’auriculaire reste sur les clés en glissant.",
        ),
        (
            "es",
            "Si3 a Do♯4: el meñique izquierdo va de la llave de Si grave a la llave de Do♯ grave; "
            "pasa a 6,4 notas por segundo.",
            "Ligue Si3–Do♯4 ocho veces en cada sentido; el meñique sigue sobre las llaves al deslizarse.",
        ),
    ],
)
def test_hard_places_are_said_in_each_language(language: str, why: str, step: str) -> None:
    player = Player.of("alto-sax", 3)
    line = line_of(player, "G4 A4 G4 A4 B3 C#4 D4 E4", SIXTEENTH)
    place = hardest_places(player, line, tune_of(line), 96, count=1)[0]
    with speaking(language):
        assert (say(place.why), say(place.practice[0])) == (why, step)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_key_of_every_chart_has_a_name_where_a_finger_goes_to_it(language: str) -> None:
    charts = [chart for id in INSTRUMENTS if (chart := chart_of(id))]
    with speaking(language):
        for chart in charts:
            for fingering in chart.fingerings:
                assert say(chart.in_words(fingering))
            for key in chart.keys.values():
                said = {say(message(id, key=key.name)) for id in ("key-the", "key-from", "key-to")}
                assert all(len(each) > 1 or each.isdecimal() for each in said), said


def test_a_grace_note_over_the_break_is_found_and_named() -> None:
    player = Player.of("clarinet", 2)
    plain = line_of(player, "C5 D5 C5 B4 C5 D5 E5 D5", QUARTER)
    grace = player.instrument.sounding(Pitch.parse("A4"))
    line = (*plain[:3], replace(plain[3], graces=(grace,)), *plain[4:])
    place = hardest_places(player, line, tune_of(line), 100, count=1)[0]
    assert "A4" in {str(pitch) for pitch in place.pair}
    assert place.strain > hardest_places(player, plain, tune_of(plain), 100, count=1)[0].strain


def test_places_come_hardest_first_and_do_not_overlap() -> None:
    player = Player.of("alto-sax", 2)
    line = line_of(player, "B3 C#4 B3 C4 D4 E4 F4 G4 A4 B4 C5 D5 C5 A4 F4 D4 D6 E6 F6 D6 A5 A5 A5 A5", SIXTEENTH)
    places = hardest_places(player, line, tune_of(line), 90, count=4)
    strains = [place.strain for place in places]
    assert len(places) == 4 and strains == sorted(strains, reverse=True)
    assert len({(place.bar, place.beat) for place in places}) == 4


def test_faster_is_harder_and_better_players_find_it_easier() -> None:
    written = "G4 A4 B4 C5 D5 C#5 D5 E5"
    strains = []
    for level in range(1, 6):
        player = Player.of("alto-sax", level)
        line = line_of(player, written, SIXTEENTH)
        slow, fast = (hardest_places(player, line, tune_of(line), tempo, 1)[0].strain for tempo in (60, 120))
        assert fast == pytest.approx(2 * slow)
        strains.append(slow)
    assert strains == sorted(strains, reverse=True)


def test_practice_begins_where_it_is_easy_and_ends_at_the_goal() -> None:
    assert start_tempo(strain=1.2, beats_per_minute=120) == 60
    assert start_tempo(strain=0.3, beats_per_minute=120) == 120
    assert start_tempo(strain=50, beats_per_minute=120) == 30
    assert start_tempo(strain=1.0, beats_per_minute=20) == 20


def test_concert_pitch_has_hard_places_by_speed_alone() -> None:
    player = Player.of("concert", 3)
    line = line_of(player, "C4 D4 C4 D4 E4 E4 E4 E4", SIXTEENTH)
    place = hardest_places(player, line, tune_of(line), 120, count=1)[0]
    assert [str(pitch) for pitch in place.pair] == ["E4", "E4"]


def test_hard_places_refuse_what_cannot_be_played() -> None:
    player = Player.of("flute", 3)
    line = line_of(player, "A3 C4")
    with pytest.raises(RangeError, match="A3"):
        hardest_places(player, line, tune_of(line), 100)
    with pytest.raises(OptionError, match="above 0"):
        hardest_places(player, line, tune_of(line), 100, count=0)


# --- the independent checker catches what it must ---------------------------------------------------------------


@pytest.mark.parametrize(
    ("written", "duration_ticks", "tempo", "kind"),
    [
        ("A3 B3 C4", QUARTER, 100, "range"),
        ("C4 D4 E4 F4 G4", SIXTEENTH, 200, "rate"),
        ("C4 C4 C4 C4", SIXTEENTH, 130, "tongue"),
        (" ".join(["C4 D4"] * 20), EIGHTH, 60, "breath"),
    ],
)
def test_the_checker_finds_each_kind_of_violation(written: str, duration_ticks: int, tempo: int, kind: str) -> None:
    line = tuple(
        Note(place * duration_ticks, duration_ticks, Pitch.parse(name)) for place, name in enumerate(written.split())
    )
    found = violations(line, "flute", 3, tempo)
    assert found and all(text.startswith(kind) for text in found)
    if kind != "range":
        assert violations(line, "flute", 3, tempo, plain=line) == []


def test_the_checker_gives_grace_notes_their_time() -> None:
    graces = tuple(Pitch.parse(name) for name in ("C4", "D4", "E4", "F4"))
    line = (Note(0, EIGHTH, Pitch.parse("C4")), Note(EIGHTH, EIGHTH, Pitch.parse("G4"), graces=graces))
    assert [text.split(":")[0] for text in violations(line, "flute", 5, 150)] == ["graces"]
    assert violations(line, "flute", 5, 80) == []
    assert violations(line, "flute", 5, 150, plain=line) == []


@given(level=st.integers(1, 5), id=st.sampled_from(["alto-sax", "clarinet", "flute", "trumpet", "oboe"]))
@settings(max_examples=25, deadline=None)
def test_what_the_player_tables_allow_passes_the_checker(level: int, id: str) -> None:
    """The two are written apart; what the tables call playable must not break the checker's caps."""
    player = Player.of(id, level)
    low, high = player.instrument.lowest_midi, player.instrument.highest_midi
    for midi in range(low, high - 4):
        for step in (0, 1, 2, 4):
            seconds = player.min_duration_sec(midi, midi + step)
            ticks = round(seconds * 2 * QUARTER) + 1
            a, b = (Pitch((m // 12 - 1) * 7, m % 12) for m in (midi, midi + step))
            assert violations((Note(0, ticks, a), Note(ticks, ticks, b)), id, level, 120) == []
