"""Fingering charts and the cost of moving between notes.

The charts are checked against acoustics (what the tube of each instrument overblows, the harmonic series of
brass) and the costs against what method books drill: each comparison below is common practice, from memory.
"""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.errors import OptionError, RangeError
from fioritura.players.chart import Fingering, FingeringChart
from fioritura.players.fingering import chart_of, fingering_path, move_components, pair_cost
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.limits import fastest_rate, limits_of
from fioritura.players.player import Player
from fioritura.theory.pitch import Pitch

CHARTED = [id for id in INSTRUMENTS if id != "concert"]
INTERNAL_INSTRUMENTS = st.sampled_from(CHARTED)


def chart(id: str) -> FingeringChart:
    found = chart_of(id)
    assert found is not None
    return found


def usual(id: str, pitch: str | int) -> Fingering:
    midi = pitch if isinstance(pitch, int) else Pitch.parse(pitch).midi
    return chart(id).fingerings[chart(id).numbers_by_midi[midi][0]]


def cost(id: str, pair: str) -> float:
    a, b = (Pitch.parse(text) for text in pair.split("-"))
    return pair_cost(id, a, b)


def path_keys(id: str, pitches: str) -> list[str]:
    path = fingering_path(id, [Pitch.parse(text) for text in pitches.split()])
    return [" ".join(fingering.keys) for fingering in path.fingerings]


# --- the charts -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("id", CHARTED)
def test_every_written_note_of_the_range_has_a_fingering(id: str) -> None:
    instrument = INSTRUMENTS[id]
    charted = chart(id).numbers_by_midi
    assert set(range(instrument.lowest.midi, instrument.highest.midi + 1)) <= set(charted)


@pytest.mark.parametrize("id", CHARTED)
def test_each_key_is_known_and_no_two_notes_of_a_register_share_a_fingering(id: str) -> None:
    seen: dict[tuple[int, frozenset[str]], int] = {}
    for fingering in chart(id).fingerings:
        assert set(fingering.keys) <= set(chart(id).keys)
        place = (fingering.register, frozenset(fingering.keys))
        assert seen.setdefault(place, fingering.pitch.midi) == fingering.pitch.midi, str(fingering)


def test_saxophone_overblows_the_octave() -> None:
    """Acoustics: a conical tube sounds its second mode an octave up (octave key added, fingers the same)."""
    for midi in range(Pitch.parse("D4").midi, Pitch.parse("C#5").midi + 1):
        low, high = usual("alto-sax", midi), usual("alto-sax", midi + 12)
        assert set(high.keys) == {*low.keys, "o"}


def test_clarinet_overblows_the_twelfth_and_its_fifth_partial() -> None:
    """Acoustics: a cylindrical tube closed at one end has odd modes: a twelfth, then two octaves and a third."""
    for midi in range(Pitch.parse("E3").midi, Pitch.parse("F4").midi + 1):
        low, high = usual("clarinet", midi), usual("clarinet", midi + 19)
        assert set(high.keys) == {*low.keys, "R"}
    for midi in range(Pitch.parse("A3").midi, Pitch.parse("D4").midi + 1):
        fundamental = set(usual("clarinet", midi).keys)
        fifth_partials = [
            set(fingering.keys) for fingering in chart("clarinet").fingerings if fingering.pitch.midi == midi + 28
        ]
        assert any(fingers - {"Ab"} == (fundamental - {"1"}) | {"R"} for fingers in fifth_partials), midi


def test_flute_overblows_the_octave() -> None:
    """Acoustics: an open tube; D and E flat vent the first finger's hole (common practice)."""
    for midi in range(Pitch.parse("E4").midi, Pitch.parse("C#5").midi + 1):
        assert usual("flute", midi).keys == usual("flute", midi + 12).keys
    for name in ("D", "Eb"):
        assert set(usual("flute", f"{name}4").keys) - {"1"} == set(usual("flute", f"{name}5").keys)


def test_oboe_overblows_the_octave() -> None:
    for midi in range(Pitch.parse("E4").midi, Pitch.parse("C5").midi + 1):
        low, high = set(usual("oboe", midi).keys), set(usual("oboe", midi + 12).keys)
        assert high - low <= {"back", "side"} and low <= high


HARMONICS = {partial: round(12 * math.log2(partial)) for partial in range(1, 11)}


@pytest.mark.parametrize("id", ["trumpet", "flugelhorn"])
def test_valves_follow_the_harmonic_series(id: str) -> None:
    """Acoustics: partials over the fundamental (written C3), less 2, 1 and 3 semitones for the valves."""
    lowering = {"1": 2, "2": 1, "3": 3}
    for fingering in chart(id).fingerings:
        expected = 48 + HARMONICS[fingering.register] - sum(lowering[valve] for valve in fingering.keys)
        assert fingering.pitch.midi == expected, str(fingering)
        assert fingering.register != 7


def test_slide_positions_follow_the_harmonic_series() -> None:
    """Acoustics: partials over B flat 1, a semitone lower for each position."""
    for fingering in chart("trombone").fingerings:
        position = int(fingering.keys[0][1:])
        assert fingering.pitch.midi == 34 + HARMONICS[fingering.register] - (position - 1), str(fingering)


# --- the cost of a move -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("id", "dearer", "cheaper"),
    [
        ("alto-sax", "B3-C#4", "G4-A4"),  # little finger slides in the low table; one finger lifts
        ("alto-sax", "Bb3-B3", "F4-G4"),
        ("alto-sax", "C4-Eb4", "C4-D4"),  # right little finger rolls from C to E flat
        ("alto-sax", "C#5-D5", "G4-A4"),  # everything goes down at once
        ("alto-sax", "C6-E6", "A5-C6"),  # palm keys
        ("alto-sax", "D6-F6", "D5-F5"),
        ("clarinet", "A4-B4", "G4-F4"),  # the break
        ("clarinet", "Bb4-B4", "B4-C5"),
        ("clarinet", "A4-B4", "B4-A4"),  # up over the break is harder than down
        ("clarinet", "F3-Ab3", "G3-A3"),  # right little finger from F to A flat
        ("clarinet", "C6-D6", "B5-C6"),  # into the altissimo
        ("flute", "C5-D5", "B4-C5"),  # thumb and first finger off while the others go on
        ("flute", "C4-C#4", "G4-A4"),  # foot joint rollers
        ("flute", "E6-F#6", "E5-F#5"),  # third-octave cross fingerings
        ("oboe", "C5-D5", "A4-B4"),  # half-hole and all fingers on
        ("trumpet", "C4-D4", "F4-E4"),  # first and third valve together, and a partial
        ("trumpet", "C5-G5", "C5-B4"),  # two partials against one valve
        ("trumpet", "D4-Eb4", "F4-E4"),  # valves change over: one for two
        ("trombone", "Bb2-B2", "A2-Bb2"),  # first to seventh position
        ("trombone", "F3-C3", "F3-E3"),
    ],
)
def test_a_teacher_would_call_the_first_pair_harder(id: str, dearer: str, cheaper: str) -> None:
    assert cost(id, dearer) > 1.15 * cost(id, cheaper)
    a, b = (Pitch.parse(text) for text in dearer.split("-"))
    c, d = (Pitch.parse(text) for text in cheaper.split("-"))
    assert fastest_rate(id, a, b) <= fastest_rate(id, c, d)


@pytest.mark.parametrize(
    ("id", "phrase", "place", "keys"),
    [
        ("alto-sax", "F4 F#4 F4 F#4 G4", 1, "1 2 3 4 sideF#"),  # chromatic F sharp by the side key
        ("alto-sax", "B4 C5 B4 C5 B4", 1, "1 sideC"),  # the trill B-C by side C
        ("alto-sax", "A4 B4 C5 D5 E5", 2, "2"),  # but the plain C in a scale
        ("alto-sax", "A4 Bb4 B4 Bb4 A4", 1, "1 2 sideBb"),  # side B flat between A and B
        ("alto-sax", "G4 A4 Bb4 A4 G4", 2, "1 bis"),  # bis with no B natural about
        ("clarinet", "C5 B4 C5 B4 C5", 1, "R T 1 2 3 4 5 6 lE rF"),  # B left while C stays right
        ("clarinet", "D4 Eb4 D4", 1, "T 1 2 side1"),  # side E flat
        ("flute", "F4 G4 A4 Bb4 A4 G4", 3, "Tb 1 Eb"),  # thumb B flat in flat keys
        ("flute", "A4 Bb4 B4 C5", 1, "T 1 4 Eb"),  # one-and-one on the way to B natural
        ("oboe", "D4 F4 E4 F4 D4", 1, "1 2 3 lF 4 5"),  # left F next to D
    ],
)
def test_the_path_takes_the_alternate_that_method_books_teach(id: str, phrase: str, place: int, keys: str) -> None:
    assert path_keys(id, phrase)[place] == keys


def test_sax_scale_crosses_octaves_by_the_plain_fingerings() -> None:
    scale = "C4 D4 E4 F4 G4 A4 B4 C5 D5 E5 F5 G5 A5 B5"
    plain = [" ".join(usual("tenor-sax", note).keys) for note in scale.split()]
    assert path_keys("tenor-sax", scale) == plain


@pytest.mark.parametrize("id", CHARTED)
def test_a_repeated_note_moves_nothing(id: str) -> None:
    pitch = INSTRUMENTS[id].comfortable_low
    assert pair_cost(id, pitch, pitch) == 0.0
    assert fingering_path(id, (pitch,) * 4).cost == 0.0


@given(data=st.data(), id=INTERNAL_INSTRUMENTS)
@settings(max_examples=150, deadline=None)
def test_every_pair_costs_something_and_no_more_than_its_usual_fingerings(data: st.DataObject, id: str) -> None:
    instrument = INSTRUMENTS[id]
    midis = st.integers(instrument.lowest.midi, instrument.highest.midi)
    a, b = data.draw(midis), data.draw(midis)
    plain = sum(move_components(chart(id), usual(id, a), usual(id, b)).values())
    assert pair_cost(id, spelled(a), spelled(b)) <= plain + 1e-9
    assert a == b or pair_cost(id, spelled(a), spelled(b)) > 0.5


@given(data=st.data(), id=INTERNAL_INSTRUMENTS)
@settings(max_examples=60, deadline=None)
def test_the_path_is_as_cheap_as_trying_every_fingering(data: st.DataObject, id: str) -> None:
    """Against brute force over all fingerings of up to four notes."""
    instrument = INSTRUMENTS[id]
    midis = st.integers(instrument.lowest.midi, instrument.highest.midi)
    line = data.draw(st.lists(midis, min_size=1, max_size=4).filter(lambda line: combinations(id, line) <= 600))
    found = fingering_path(id, [spelled(midi) for midi in line])
    cheapest = min(whole_cost(id, numbers) for numbers in product(*(numbers_of(id, midi) for midi in line)))
    assert found.cost == pytest.approx(cheapest)
    assert [fingering.pitch.midi for fingering in found.fingerings] == line


def spelled(midi: int) -> Pitch:
    return Pitch(midi // 12 * 7 - 7, midi % 12)


def numbers_of(id: str, midi: int) -> tuple[int, ...]:
    return chart(id).numbers_by_midi[midi]


def combinations(id: str, line: list[int]) -> int:
    return math.prod(len(numbers_of(id, midi)) for midi in line)


def whole_cost(id: str, numbers: tuple[int, ...]) -> float:
    penalties = sum(chart(id).fingerings[number].penalty for number in numbers)
    return penalties + sum(move_cost(id, a, b) for a, b in pairwise(numbers))


@cache
def move_cost(id: str, a: int, b: int) -> float:
    return sum(move_components(chart(id), chart(id).fingerings[a], chart(id).fingerings[b]).values())


def test_concert_pitch_has_no_fingerings_and_equal_costs() -> None:
    assert chart_of("concert") is None
    assert cost("concert", "C4-D4") == cost("concert", "C4-B5") > 0
    assert fingering_path("concert", [Pitch.parse("C4"), Pitch.parse("E4")]).fingerings == ()


def test_a_note_without_fingering_is_refused_in_words() -> None:
    with pytest.raises(RangeError, match=r"A3.*C4 to C7"):
        pair_cost("flute", Pitch.parse("A3"), Pitch.parse("C4"))
    with pytest.raises(OptionError, match="kazoo"):
        pair_cost("kazoo", Pitch.parse("A3"), Pitch.parse("C4"))


# --- rates, levels and the player's tables ----------------------------------------------------------------------


@pytest.mark.parametrize("id", list(INSTRUMENTS))
def test_rates_lie_where_players_live(id: str) -> None:
    """Single tonguing about 5-9 notes a second (common practice); nobody passes 15.

    In recorded jazz wind solos 99 % of the fastest eight-note runs stay under 15 notes a second (open jazz solo
    annotations).
    """
    for level in range(1, 6):
        limits = limits_of(id, level)
        assert 5 <= limits.tongue_rate <= 9
        assert limits.finger_rate <= 15
        table = Player.of(id, level).slurred_sec
        inside = [seconds for row in table for seconds in row if seconds < math.inf]
        assert min(inside) >= 1 / 15
        assert max(inside) <= 1.0


def test_easy_slurs_are_faster_than_the_tongue_and_hard_ones_are_not() -> None:
    a, g = Pitch.parse("A4"), Pitch.parse("G4")
    assert 12 <= fastest_rate("alto-sax", g, a, level=5) <= 15
    assert fastest_rate("alto-sax", g, a, tongued=True, level=5) == 9
    assert fastest_rate("alto-sax", g, g, level=5) == 9
    assert fastest_rate("clarinet", a, Pitch.parse("B4"), level=5) < 9


@given(data=st.data(), id=st.sampled_from(list(INSTRUMENTS)))
@settings(max_examples=100, deadline=None)
def test_tables_agree_with_the_written_rates_and_grow_easier_with_level(data: st.DataObject, id: str) -> None:
    instrument = INSTRUMENTS[id]
    midis = st.integers(instrument.lowest_midi, instrument.highest_midi)
    a, b = data.draw(midis), data.draw(midis)
    shift = instrument.transposition.semitones
    for tongued in (False, True):
        needed = [Player.of(id, level).min_duration_sec(a, b, tongued) for level in range(1, 6)]
        assert needed == sorted(needed, reverse=True) and needed[0] > needed[-1]
        rate = fastest_rate(id, spelled(a + shift), spelled(b + shift), tongued=tongued, level=4)
        assert needed[3] == pytest.approx(1 / rate)
    assert Player.of(id, 3).tongued_sec[a][b] >= Player.of(id, 3).slurred_sec[a][b]


def test_grace_notes_take_35_to_50_ms_when_easy_and_longer_when_hard() -> None:
    for level, least in zip(range(1, 6), (0.050, 0.046, 0.042, 0.038, 0.035), strict=True):
        player = Player.of("clarinet", level)
        assert player.graces_sec([62, 60]) >= least
        assert player.graces_sec([60, 62]) == pytest.approx(max(least, 0.4 * player.slurred_sec[60][62]))
        assert player.graces_sec([67, 69]) > player.graces_sec([60, 62])
        assert player.graces_sec([60, 62, 64]) == pytest.approx(player.grace_sec[60][62] + player.grace_sec[62][64])


def test_notes_outside_the_instrument_are_never_playable() -> None:
    player = Player.of("alto-sax", 5)
    low = INSTRUMENTS["alto-sax"].lowest_midi
    assert player.min_duration_sec(low - 1, low) == math.inf
    assert player.strain([low - 1, low, low + 1], [1.0, 1.0]) == math.inf
    assert player.strain([low], []) == 0.0
    assert player.strain([60, 62, 64], [0.5, 0.25]) == pytest.approx(
        max(player.slurred_sec[60][62] / 0.5, player.slurred_sec[62][64] / 0.25)
    )


def test_players_are_shared_and_levels_checked() -> None:
    assert Player.of("flute", 2) is Player.of("flute", 2)
    with pytest.raises(OptionError, match="level 6"):
        Player.of("flute", 6)
    with pytest.raises(OptionError, match="theremin"):
        Player.of("theremin", 3)
