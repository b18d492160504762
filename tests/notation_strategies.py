"""Invented lines, tunes and scores for property tests of the writers."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from itertools import pairwise
from random import Random

from hypothesis import strategies as st

from fioritura.notation.score import Label, Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import MODES, Key
from fioritura.theory.metre import Metre
from fioritura.theory.pitch import Interval, Pitch
from fioritura.tune import Bar, ChordSpan, Feel, Jump, Mark, Note, Tempo, Tune

METRES = tuple(
    Metre(beats, unit)
    for beats, unit in (
        *((4, 4), (3, 4), (2, 4), (5, 4), (6, 4), (7, 4), (1, 4), (9, 4), (10, 4), (2, 2), (3, 2), (4, 2)),
        *((6, 8), (9, 8), (12, 8), (3, 8), (5, 8), (7, 8), (8, 8), (11, 8), (13, 8), (4, 8), (6, 16)),
    )
)
CHORDS = (
    *("C", "Bbmaj7", "F#m7b5", "G7b9", "Ebm(maj7)", "Adim7", "D7alt", "E9sus4", "Abadd9", "C6/9", "Gm7/F"),
    *("Db13#11", "B+", "Csus2", "F7#11/A"),
)
_CELLS = (
    (1680,), (840, 840), (3360,), (2520, 840), (840, 2520), (840, 1680, 840), (420,) * 4, (1260, 420), (420, 840, 420),
    (560,) * 3, (1120, 560), (560, 1120), (280,) * 6, (336,) * 5, (240,) * 7, (1120,) * 3, (210,) * 4, (105, 315),
    (672,) * 5, (840, 280, 280, 280), (2520,), (5040,), (6720,), (630,) * 4,
)  # fmt: skip
_DIVISIONS = {2520: (1, 2, 3, 4, 5, 6, 7, 12), 1260: (1, 2, 3, 4, 5, 6, 7, 12)}
_GRACES = tuple(Interval.parse(name) for name in ("-m2", "M2", "-M3"))

Lines = Callable[[tuple[Bar, ...]], st.SearchStrategy[tuple[Note, ...]]]
"""A line drawn for a row of bars."""

_FEELS: tuple[Feel, ...] = ("straight", "swing")

generators = st.builds(Random, st.integers(0, 2**32))
"""Seeded generators: a line drawn note by note would be slow."""


def _pitch(rng: Random) -> Pitch:
    return Pitch(rng.randint(28, 40), rng.choice((0, 0, 0, 1, -1, 2, -2)))


def _line(rng: Random, lengths: Iterable[int], place: int, end: int) -> tuple[Note, ...]:
    notes = []
    for length in lengths:
        stop = min(place + length, end)
        if stop > place and rng.random() < 0.85:
            notes.append(Note(place, stop - place, _pitch(rng)))
        place = stop
    return tuple(notes)


@st.composite
def grid_lines(draw: st.DrawFn, bars: tuple[Bar, ...]) -> tuple[Note, ...]:
    """Notes and rests in common rhythms, which may begin off the beat and lie over bar lines."""
    rng = draw(generators)
    end = bars[-1].end_ticks
    place = rng.choice((0, 0, 0, 840, 420, 560))
    cells = (length for cell in iter(lambda: rng.choice(_CELLS), None) for length in cell)
    lengths, total = [], place
    while total < end:
        lengths.append(next(cells))
        total += lengths[-1]
    return _line(rng, lengths, place, end)


@st.composite
def beat_lines(draw: st.DrawFn, bars: tuple[Bar, ...]) -> tuple[Note, ...]:
    """Every beat divided evenly (2 to 8 parts, 5 and 7 too), parts then joined at random, over beats as well."""
    rng = draw(generators)
    places = {0, bars[-1].end_ticks}
    for bar in bars:
        place = bar.start_ticks - bar.metre_offset_ticks
        for beat in bar.metre.groups_ticks:
            parts = rng.choice(_DIVISIONS.get(beat, range(1, 9)))
            places |= {place + beat * part // parts for part in range(parts) if rng.random() < 0.7}
            place += beat
    kept = sorted(place for place in places if place >= 0)
    return _line(rng, [end - start for start, end in pairwise(kept)], 0, bars[-1].end_ticks)


@st.composite
def odd_lines(draw: st.DrawFn, bars: tuple[Bar, ...]) -> tuple[Note, ...]:
    """Notes whose places are any ticks at all."""
    end = bars[-1].end_ticks
    cuts = sorted(draw(st.sets(st.integers(0, end), min_size=2, max_size=12)))
    return _line(draw(generators), [stop - start for start, stop in pairwise(cuts)], cuts[0], end)


@st.composite
def bar_rows(draw: st.DrawFn, metres: Sequence[Metre] = METRES, most: int = 4) -> tuple[Bar, ...]:
    """Bars in order, at times with a pickup, a change of metre or key, or a split bar."""
    metre = draw(st.sampled_from(metres))
    key = Key(draw(st.integers(-6, 6)), draw(st.sampled_from(tuple(MODES))))
    bars = []
    place = 0
    if draw(st.booleans()):
        pickup = draw(st.integers(1, max(1, metre.bar_ticks // 840 - 1))) * 840
        if pickup < metre.bar_ticks:
            bars.append(Bar(0, 0, pickup, metre, key))
            place = pickup
    for number in range(1, draw(st.integers(1, most)) + 1):
        if number > 1 and draw(st.integers(0, 5)) == 0:
            metre = draw(st.sampled_from(metres))
        if number > 1 and draw(st.integers(0, 5)) == 0:
            key = Key(draw(st.integers(-6, 6)), key.mode)
        bars.append(Bar(number, place, metre.bar_ticks, metre, key))
        place = bars[-1].end_ticks
    return tuple(bars)


def decorated(rng: Random, line: tuple[Note, ...]) -> tuple[Note, ...]:
    """The line with graces, marks and syllables."""
    notes = []
    for note in line:
        graces = [note.pitch.up(rng.choice(_GRACES)) for _ in range(rng.choice((0, 0, 0, 1, 1, 2, 3)))]
        marks = rng.sample(tuple(Mark), rng.choice((0, 0, 1, 2)))
        lyric = rng.choice(("", "", "la", "Hel-", "<&\x07>"))
        notes.append(replace(note, graces=tuple(graces), marks=tuple(marks), lyric=lyric))
    return tuple(notes)


@st.composite
def tunes(draw: st.DrawFn, lines: Lines = grid_lines) -> Tune:
    bars = draw(bar_rows())
    duration = bars[-1].end_ticks
    bars = tuple(
        replace(
            bar,
            opens_repeat=draw(st.integers(0, 4)) == 0,
            repeats=draw(st.sampled_from((0, 0, 0, 1, 3))),
            endings=draw(st.sampled_from(((), (), (), (1,), (1, 2), (2,)))),
            jumps=tuple(draw(st.lists(st.sampled_from(tuple(Jump)), max_size=1)))
            if draw(st.integers(0, 4)) == 0
            else (),
            ends_section=draw(st.booleans()),
        )
        for bar in bars
    )
    chords = []
    places = sorted(draw(st.sets(st.integers(0, duration // 840 - 1), max_size=5)))
    for number, place in enumerate(places):
        text = draw(st.sampled_from((*CHORDS, "N.C.", "H99")))
        end = (places[number + 1] if number + 1 < len(places) else duration // 840) * 840
        chord = None if text in ("N.C.", "H99") else read_chord(text)
        chords.append(ChordSpan(place * 840, end - place * 840, chord, text, bool(chord) and draw(st.booleans())))
    tempos = (Tempo(0, draw(st.sampled_from((60.0, 132.5, 208.0)))),) if draw(st.booleans()) else ()
    line = decorated(draw(generators), draw(lines(bars)))
    feel = draw(st.sampled_from(_FEELS))
    return Tune(draw(st.sampled_from(("", "A <Tune> & \x01more"))), line, bars, tuple(chords), tempos, feel, "Anon.")


@st.composite
def scores(draw: st.DrawFn, lines: Lines = grid_lines) -> Score:
    """One or two staves over a tune, for any instrument."""
    tune = draw(tunes(lines))
    instrument = INSTRUMENTS[draw(st.sampled_from(tuple(INSTRUMENTS)))]
    labels = tuple(Label(note.onset_ticks, "lower grace", 0) for note in tune.notes[:2])
    staves = [Staff(tune.notes, draw(st.sampled_from(("", "Plain"))), instrument)]
    if draw(st.booleans()):
        line = decorated(draw(generators), draw(lines(tune.bars)))
        staves.append(Staff(line, "Ornamented", instrument, labels, shows_chords=draw(st.booleans())))
    return Score(tune, tuple(staves), draw(st.booleans()), draw(st.sampled_from(("", "for teachers"))))
