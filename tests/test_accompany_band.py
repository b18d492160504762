"""Bass, chords and drums. Ranges and voice leading are common practice; drum keys are those of General MIDI 1."""

from __future__ import annotations

from collections import Counter
from itertools import groupby, pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.accompany.band import band_parts
from fioritura.accompany.feels import FEELS, default_feel, feel_named
from fioritura.accompany.form import Chorus, Form, form_of
from fioritura.accompany.grid import Dealer, fitted, hits
from fioritura.accompany.harmony import Changes, bass_class
from fioritura.accompany.part import BandNote
from fioritura.accompany.voicing import candidates, led_voicings
from fioritura.chance import Chance
from fioritura.errors import OptionError
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER, WHOLE, Metre
from fioritura.theory.pitch import Interval
from fioritura.theory.scale import chord_scale
from fioritura.tune import Tune, transpose
from tests.charts import BLUES, MINOR_FOURTHS, chart

FOUR = ("swing", "shuffle", "slow-blues", "ballad", "bossa", "soul", "funk", "march", "reel")
METRE_OF = {**dict.fromkeys(FOUR, "4/4"), "waltz": "3/4", "folk-waltz": "3/4", "jig": "6/8"}


def tune_for(feel: str, text: str = MINOR_FOURTHS, key: str = "E minor") -> Tune:
    return chart(text, key=key, metre=METRE_OF[feel])


def form_for(feel: str, choruses: int = 2, **kwargs: str) -> Form:
    return form_of(tune_for(feel, **kwargs), [Chorus("solo")] * choruses)


def part(form: Form, feel: str, name: str, seed: int = 0) -> tuple[BandNote, ...]:
    return next(part.notes for part in band_parts(form, FEELS[feel], seed=seed) if part.name == name)


def bars_of(form: Form, notes: tuple[BandNote, ...]) -> list[list[BandNote]]:
    return [
        [note for note in notes if bar.start_ticks <= note.onset_ticks < bar.end_ticks]
        for _, bar in form.playing_bars()
    ]


@pytest.mark.parametrize("feel", sorted(FEELS))
@pytest.mark.parametrize("seed", range(3))
def test_the_bass_stays_on_its_strings_and_leaps_no_more_than_an_octave(feel: str, seed: int) -> None:
    form = form_for(feel)
    line = part(form, feel, "bass", seed)
    assert all(28 <= note.midi <= 55 for note in line), "E1 to G3"
    assert all(abs(a.midi - b.midi) <= 12 for a, b in pairwise(line))
    assert all(a.onset_ticks < b.onset_ticks for a, b in pairwise(line))
    assert all(a.end_ticks <= b.onset_ticks for a, b in pairwise(line))


@pytest.mark.parametrize("feel", sorted(FEELS))
@pytest.mark.parametrize(("text", "key"), [(BLUES, "F major"), (MINOR_FOURTHS, "E minor")])
def test_new_chords_on_a_downbeat_get_root_or_fifth(feel: str, text: str, key: str) -> None:
    # Wanted: at least 80 %.
    heard, right = 0, 0
    for seed in range(4):
        form = form_for(feel, text=text, key=key)
        at = {note.onset_ticks: note for note in part(form, feel, "bass", seed)}
        changes, before = Changes(form.tune.chords), None
        for _, bar in form.playing_bars():
            chord = changes.at(bar.start_ticks)
            if chord is not None and chord != before:
                heard += 1
                note = at.get(bar.start_ticks)
                fifth = chord.fifth.pitch_class if chord.fifth else None
                right += note is not None and note.midi % 12 in {bass_class(chord), fifth}
            before = changes.at(bar.end_ticks - 1)
    assert right / heard >= 0.8


@pytest.mark.parametrize("feel", ["swing", "shuffle", "waltz"])
def test_a_walking_bass_plays_every_beat_and_approaches_new_roots(feel: str) -> None:
    form = form_for(feel, choruses=6)
    line = [note for note in part(form, feel, "bass") if note.onset_ticks % QUARTER == 0]
    playing = sum(len(bar.metre.groups_ticks) for _, bar in form.playing_bars())
    assert len(line) == playing + 1, "every beat, and the last chord"
    changes = Changes(form.tune.chords)
    arrivals = [
        b.midi - a.midi
        for a, b in pairwise(line)
        if (one := changes.at(a.onset_ticks))
        and (two := changes.at(b.onset_ticks))
        and bass_class(one) != bass_class(two)
    ]
    steps = Counter(abs(step) for step in arrivals)
    assert (steps[1] + steps[2]) / len(arrivals) >= 0.6, "by step"
    assert (steps[1] + steps[2] + steps[5] + steps[7]) / len(arrivals) >= 0.8, "by step, fourth or fifth"
    moves = [b.midi - a.midi for a, b in pairwise(line)]
    assert sum(abs(move) <= 4 for move in moves) / len(moves) >= 0.6, "mostly steps and thirds"
    assert sum(move == 0 for move in moves) / len(moves) <= 0.1, "few repeated notes"
    directions = [np.sign(move) for move in moves if move]
    assert max(len(list(run)) for _, run in groupby(directions)) <= 9, "it turns around"
    assert np.std([note.midi for note in line]) >= 3, "it uses the instrument"


def test_a_walking_bass_plays_chord_tones_on_strong_beats_and_no_loose_chromatic_notes() -> None:
    form = form_for("swing", choruses=6)
    line = [note for note in part(form, "swing", "bass") if note.onset_ticks % QUARTER == 0]
    changes = Changes(form.tune.chords)
    strong = [note for note in line if note.onset_ticks % (2 * QUARTER) == 0]
    inside = [note.midi % 12 in chord.pitch_classes for note in strong if (chord := changes.at(note.onset_ticks))]
    assert sum(inside) / len(inside) >= 0.85
    for note, following in pairwise(line):
        chord = changes.at(note.onset_ticks)
        assert chord is not None
        known = chord_scale(chord, form.tune.bar_at(note.onset_ticks).key).pitch_classes | chord.pitch_classes
        assert note.midi % 12 in known or abs(following.midi - note.midi) == 1


def test_slash_chords_put_their_bass_in_the_bass() -> None:
    tune = chart("C | C/E | F | C/G | Am7/G | D7/F# | G7sus4/D | C", melody="")
    form = form_of(tune, [Chorus("solo")] * 3)
    for feel in ("swing", "bossa", "soul"):
        at = {note.onset_ticks: note.midi % 12 for note in part(form, feel, "bass")}
        changes = Changes(form.tune.chords)
        starts = [bar.start_ticks for _, bar in form.playing_bars()]
        slashed = {start: c for start in starts if (c := changes.at(start)) and c.bass is not None}
        assert all(at[start] == bass_class(chord) for start, chord in slashed.items())


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_the_last_chord_rests_on_its_root(feel: str) -> None:
    for seed in range(5):
        form = form_for(feel, text="C6 | Am7 | Dm7 G7 | C6 | C6", key="C major")
        assert part(form, feel, "bass", seed)[-1].midi % 12 == 0


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_no_bar_is_played_for_long(feel: str) -> None:
    tune = chart("C7 | " * 31 + "C7", metre=METRE_OF[feel])
    form = form_of(tune, [Chorus("solo")] * 2, holds_last=False)
    for name in ("bass", "chords"):
        if feel == "reel" and name == "bass":
            continue
        bars = [
            tuple((note.onset_ticks - notes[0].onset_ticks, note.midi) for note in notes) if notes else ()
            for notes in bars_of(form, part(form, feel, name))
        ]
        longest = max(len(list(run)) for _, run in groupby(bars))
        assert longest <= 4, name


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_the_same_seed_is_the_same_band_and_another_seed_another(feel: str) -> None:
    form = form_for(feel)
    assert band_parts(form, FEELS[feel], seed=1) == band_parts(form, FEELS[feel], seed=1)
    assert band_parts(form, FEELS[feel], seed=1) != band_parts(form, FEELS[feel], seed=2)


@pytest.mark.parametrize("semitones", range(-5, 7))
def test_guide_tones_go_by_step_through_two_five_one_in_every_key(semitones: int) -> None:
    steps = {-5: -3, -4: -2, -3: -2, -2: -1, -1: -1, 0: 0, 1: 1, 2: 1, 3: 2, 4: 2, 5: 3, 6: 3}[semitones]
    for text, key in (("Dm7 | G7 | Cmaj7 | Cmaj7", "C major"), ("Dm7b5 | G7b9 | Cm6 | Cm6", "C minor")):
        tune = transpose(chart(text, key=key), Interval(steps, semitones))
        chords = [(span.chord, tune.key) for span in tune.chords if span.chord]
        voicings = led_voicings(chords, "rootless", Chance(semitones + 9))
        for ((earlier, _), before), ((chord, _), after) in pairwise(zip(chords, voicings, strict=True)):
            if chord == earlier:
                continue
            for guide in {tone.pitch_class for tone in chord.guide_tones}:
                note = next(note for note in after if note % 12 == guide)
                assert min(abs(note - old) for old in before) <= 2


SYMBOLS = [
    "C",
    "Cm",
    "C7",
    "Cmaj7",
    "Cm7",
    "Cm7b5",
    "Cdim7",
    "C6",
    "Cm6",
    "C9",
    "C13",
    "C7b9",
    "C7#9",
    "C7alt",
    "Csus4",
    "C7sus4",
    "Caug",
    "C+7",
    "C7#11",
    "Cmaj7#11",
    "Cm(maj7)",
    "C11",
    "Cm11",
    "C6/9",
    "C5",
    "Csus2",
    "Cadd9",
    "Cm9",
    "Cmaj9",
    "C13b9",
    "C7b13",
    "C/E",
    "Cm7/Bb",
]


@pytest.mark.parametrize("style", ["rootless", "shell", "strummed"])
@pytest.mark.parametrize("symbol", SYMBOLS)
def test_voicings_lie_in_range_and_say_the_chord(style: str, symbol: str) -> None:
    chord = read_chord(symbol)
    assert chord is not None
    for key in (Key.of("C"), Key.of("F"), Key.of("A", "minor")):
        found = candidates(chord, key, style)
        assert found
        guides = {tone.pitch_class for tone in chord.guide_tones}
        for voicing in found:
            classes = {note % 12 for note in voicing}
            assert all(48 <= note <= 74 for note in voicing), "C3 to D5"
            assert list(voicing) == sorted(set(voicing))
            assert guides <= classes, "third and seventh, or what stands for them"
            assert voicing[-1] - voicing[0] <= 17
            if style == "rootless" and len(voicing) == 4 and not chord.is_diminished:
                assert voicing[0] % 12 in guides, "third or seventh at the bottom"


def test_voicings_never_rub_against_the_symbol() -> None:
    # A plain dominant with natural ninth and thirteenth, the flat ones before the minor chord a fifth below.
    dominant, major_tonic, minor_tonic = (read_chord(symbol) for symbol in ("G7", "Cmaj7", "Cm7"))
    assert dominant and major_tonic and minor_tonic
    in_major, in_minor = Key.of("C"), Key.of("C", "minor")
    major = led_voicings([(dominant, in_major), (major_tonic, in_major)], "rootless", _dice())
    minor = led_voicings([(dominant, in_minor), (minor_tonic, in_minor)], "rootless", _dice())
    assert {note % 12 for note in major[0]} <= {11, 2, 5, 9, 4}
    assert {note % 12 for note in minor[0]} <= {11, 2, 5, 8, 3}


def _dice() -> Chance:
    return Chance(4)


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_every_chord_is_heard_and_no_voices_lie_outside_it(feel: str) -> None:
    form = form_for(feel)
    notes = part(form, feel, "chords")
    changes = Changes(form.tune.chords)
    stop = form.final_ticks or 0
    struck: set[int] = set()
    for note in notes:
        now, soon = changes.span_at(note.onset_ticks), changes.span_at(note.onset_ticks + EIGHTH)
        fitting = [(span, span.chord) for span in (now, soon) if span and span.chord]
        classes = [chord_scale(chord, form.tune.key).pitch_classes | chord.pitch_classes for _, chord in fitting]
        natural = [
            {(chord.root.pitch_class + n) % 12 for n in (1, 2, 8, 9)} for _, chord in fitting if chord.is_dominant
        ]
        assert any(note.midi % 12 in known for known in [*classes, *natural])
        struck.update(span.onset_ticks for span, _ in fitting)
    assert {span.onset_ticks for span in form.tune.chords if span.onset_ticks < stop} <= struck


def test_nobody_but_the_drums_plays_without_a_chord() -> None:
    tune = chart("C | N.C. | F | N.C.")
    form = form_of(tune, [Chorus("solo")] * 2, holds_last=False)
    for feel in FOUR:
        for name in ("bass", "chords"):
            for bar, notes in zip(form.playing_bars(), bars_of(form, part(form, feel, name)), strict=True):
                silent = Changes(form.tune.chords).at(bar[1].start_ticks) is None
                own = [note for note in notes if note.onset_ticks < bar[1].end_ticks - EIGHTH]
                assert not (silent and own)
        assert all(bars_of(form, part(form, feel, "drums")))


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_drums_play_general_midi_keys_in_every_bar_and_fill_at_the_ends(feel: str) -> None:
    tune = chart(" | ".join(["C7"] * 16), metre=METRE_OF[feel])
    form = form_of(tune, [Chorus("solo")] * 2, holds_last=False)
    notes = part(form, feel, "drums")
    assert all(35 <= note.midi <= 81 for note in notes)
    bars = [
        tuple((note.onset_ticks - bar.start_ticks, note.midi) for note in found)
        for (_, bar), found in zip(form.playing_bars(), bars_of(form, notes), strict=True)
    ]
    assert all(bars)
    if FEELS[feel].drums.fills:
        assert bars[15] != bars[14]
        assert Counter(bars)[bars[15]] <= 2
    if FEELS[feel].drums.crashes:
        assert (0, 49) in bars[16], "a crash after the fill"


def test_the_swing_ride_plays_its_pattern_and_the_hi_hat_two_and_four() -> None:
    # Common practice: ride on every beat with the skip before two and four's followers, pedal hi-hat on 2 and 4.
    form = form_for("swing", choruses=1)
    for index, ((number, bar), notes) in enumerate(
        zip(form.playing_bars(), bars_of(form, part(form, "swing", "drums")), strict=True)
    ):
        assert index < number
        if form.phrase_ends.get(number):
            continue
        places = {key: {n.onset_ticks - bar.start_ticks for n in notes if n.midi == key} for key in (51, 44)}
        assert {0, QUARTER, 2 * QUARTER, 3 * QUARTER} <= places[51]
        assert places[44] == {QUARTER, 3 * QUARTER}


def test_the_bossa_clave_alternates_its_two_sides() -> None:
    form = form_for("bossa", choruses=1)
    sides = []
    for (number, bar), notes in zip(form.playing_bars(), bars_of(form, part(form, "bossa", "drums")), strict=True):
        if not form.phrase_ends.get(number):
            sides.append((number % 2, tuple(n.onset_ticks - bar.start_ticks for n in notes if n.midi == 37)))
    assert len(set(sides)) == 2


def test_the_click_counts_in_and_goes_on_only_when_asked() -> None:
    form = form_for("swing", choruses=1)
    count_in = part(form, "swing", "click")
    assert [note.onset_ticks for note in count_in] == [0, QUARTER, 2 * QUARTER, 3 * QUARTER]
    assert count_in[0].midi > count_in[1].midi
    throughout = next(p.notes for p in band_parts(form, FEELS["swing"], clicks=True) if p.name == "click")
    assert len(throughout) > 4 * 16


METRES = (
    "1/4",
    "2/4",
    "3/4",
    "4/4",
    "5/4",
    "6/4",
    "7/4",
    "12/4",
    "2/2",
    "3/8",
    "6/8",
    "9/8",
    "12/8",
    "15/8",
    "5/8",
    "7/8",
)


@pytest.mark.parametrize("metre", METRES)
@pytest.mark.parametrize("feel", sorted(FEELS))
def test_every_feel_plays_the_metres_it_suits_and_names_others_for_the_rest(metre: str, feel: str) -> None:
    tune = chart("C | F G7 | Am | Dm7 G7", metre=metre)
    form = form_of(tune, [Chorus("solo")] * 2)
    if FEELS[feel].suits(Metre.parse(metre)):
        parts = band_parts(form, FEELS[feel])
        assert all(p.notes for p in parts)
        assert all(0 <= n.onset_ticks < form.tune.duration_ticks for p in parts for n in p.notes)
        assert all(p.notes[-1].onset_ticks == form.final_ticks for p in parts if p.name in {"bass", "chords"})
    else:
        with pytest.raises(OptionError, match=f"is not played in {metre}"):
            band_parts(form, FEELS[feel])


@pytest.mark.parametrize("unit", [1, 2, 4, 8, 16, 32])
@pytest.mark.parametrize("beats", range(1, 33))
def test_a_default_feel_always_suits(beats: int, unit: int) -> None:
    metre = f"{beats}/{unit}"
    for swing in ("swing", "straight"):
        for is_folk in (True, False):
            tune = chart("C", metre=metre, feel=swing)
            assert default_feel(tune, is_folk=is_folk).suits(tune.metre)


def test_unknown_feels_are_refused_with_the_list() -> None:
    with pytest.raises(OptionError, match="bossa"):
        feel_named("polka")


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.sampled_from([*SYMBOLS, "N.C.", "F#m7b5 B7", "Eb7 D7 Db7 C7", "Bb/D"]), min_size=1, max_size=12),
    st.sampled_from(FOUR),
    st.integers(0, 3),
)
def test_any_changes_can_be_accompanied(cells: list[str], feel: str, seed: int) -> None:
    form = form_of(chart(" | ".join(cells)), [Chorus("solo")] * 2)
    for made in band_parts(form, FEELS[feel], seed=seed):
        assert all(a.onset_ticks <= b.onset_ticks for a, b in pairwise(made.notes))
        assert all(note.duration_ticks > 0 and 0 < note.loudness <= 1 for note in made.notes)
        assert all(note.end_ticks <= form.tune.duration_ticks + WHOLE for note in made.notes)


def test_patterns_are_read_sign_by_sign() -> None:
    found = [(hit.offset_ticks, hit.duration_ticks, hit.sign) for hit in hits("X-.x--o.", WHOLE)]
    assert found == [(0, QUARTER, "X"), (3 * EIGHTH, 3 * EIGHTH, "x"), (6 * EIGHTH, EIGHTH, "o")]
    assert fitted("abcdefgh", 4, 3) == "abcdef"
    assert fitted("abcdefgh", 4, 5) == "abcdefghab"


@given(st.lists(st.sampled_from("abc"), min_size=2, unique=True), st.integers(0, 99))
def test_nothing_is_dealt_three_times_in_a_row(items: list[str], seed: int) -> None:
    dealer = Dealer(Chance(seed))
    dealt = [dealer.deal(items) for _ in range(60)]
    assert max(len(list(run)) for _, run in groupby(dealt)) <= 2
    assert set(dealt) == set(items)
