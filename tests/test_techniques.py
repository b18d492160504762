"""Techniques: each figure must be what its label says, judged from the ornamented line alone.

The classifier below knows nothing of the generators. It takes the definitions of Open Music Theory, "Embellishing
tones" (passing: step in, step out, same way; neighbour: step out and back; appoggiatura: leap in, step out; escape
tone: step in, leap out; suspension and retardation: held over, resolved by step down or up; anticipation: the next
note early) and common practice for grace notes, turns, runs and approaches.
"""

from __future__ import annotations

import pickle
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pytest

from fioritura.arrange.find import find_figures
from fioritura.arrange.rendition import laid_out
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.techniques.anticipation import ANTICIPATION
from fioritura.techniques.approach import APPROACH_CHROMATIC, APPROACH_NOTE, ENCLOSURE, SURROUND
from fioritura.techniques.blues import BLUE_THIRD
from fioritura.techniques.chord_notes import ADDED_CHORD_NOTE, ARPEGGIATED_NOTE, GUIDE_TONE_LINE
from fioritura.techniques.context import Context, contexts
from fioritura.techniques.definition import Group
from fioritura.techniques.delay import DELAY, RETARDATION, SUSPENSION
from fioritura.techniques.figure import Figure
from fioritura.techniques.fill import ANSWER_FILL
from fioritura.techniques.grace import (
    DOUBLE_GRACE_LOWER,
    DOUBLE_GRACE_UPPER_LOWER,
    LOWER_GRACE_SEMITONE,
    LOWER_GRACE_STEP,
    UPPER_GRACE_SEMITONE,
    UPPER_GRACE_STEP,
)
from fioritura.techniques.inflection import DOIT, FALL, GHOST_NOTE, SCOOP, VIBRATO
from fioritura.techniques.irish import (
    CRAN,
    CUT,
    DIVIDED_NOTE,
    HELD_NOTE,
    LONG_ROLL,
    SHORT_ROLL,
    STRIKE,
    TRIPLET,
)
from fioritura.techniques.neighbour import (
    APPOGGIATURA,
    DOUBLE_NEIGHBOUR,
    ESCAPE_TONE,
    NEIGHBOUR_LOWER,
    NEIGHBOUR_UPPER,
)
from fioritura.techniques.paraphrase import BACK_PHRASING, OCTAVE_PHRASE, PHRASE_AHEAD
from fioritura.techniques.passing import PASSING_NOTE, PASSING_NOTE_CHROMATIC, PASSING_NOTES_PAIR
from fioritura.techniques.repetition import REPEATED_NOTES, REPEATED_NOTES_LIVELY
from fioritura.techniques.run import RUN_ARPEGGIO, RUN_CHROMATIC, RUN_PENTATONIC, RUN_SCALE
from fioritura.techniques.table import all_techniques, technique_named, wanted_techniques
from fioritura.techniques.technique import Technique
from fioritura.techniques.turn import INVERTED_TURN, MORDENT, SHAKE, TURN, UPPER_MORDENT
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.pitch import NoteName
from fioritura.tune import Feel, Mark, Note, Tune
from tests.tunes import line_of, random_tune

METRES = ("4/4", "3/4", "6/8", "2/4", "5/4")
TEMPO = 80.0


@dataclass
class Heard:
    """What a listener hears around a figure: the note before it, its added or changed notes, and the note after."""

    tune: Tune
    figure: Figure
    line: tuple[Note, ...]

    def __post_init__(self) -> None:
        own = [context for context, note in enumerate(self.line) if 0 in note.figures]
        self.first, self.last = own[0], own[-1]
        self.own = [self.line[context] for context in own]
        self.before = self.line[self.first - 1] if self.first else None
        self.after = self.line[self.last + 1] if self.last + 1 < len(self.line) else None
        self.main = self.tune.notes[self.figure.anchors[0]]

    @property
    def sequence(self) -> list[int]:
        """MIDI numbers from the note before to the note after."""
        around = [self.before, *self.own, self.after]
        return [note.pitch.midi for note in around if note is not None]

    @property
    def steps(self) -> list[int]:
        """Staff places of the same notes."""
        return [note.pitch.step for note in (self.before, *self.own, self.after) if note is not None]


def is_step(low: int, high: int) -> bool:
    return abs(high - low) in (1, 2)


def is_leap(low: int, high: int) -> bool:
    return abs(high - low) >= 3


def falls(*midis: int) -> bool:
    return all(b < a for a, b in zip(midis, midis[1:], strict=False))


def rises(*midis: int) -> bool:
    return all(b > a for a, b in zip(midis, midis[1:], strict=False))


def graces(heard: Heard) -> list[int]:
    return [pitch.midi - heard.main.pitch.midi for pitch in heard.own[0].graces]


def scale_gap(heard: Heard, midi: int) -> bool:
    """A semitone or whole tone away, with no note of the chord's or the key's scale between."""
    from fioritura.theory.scale import chord_scale, key_scale

    onset = heard.main.onset_ticks
    span, key = heard.tune.chord_at(onset), heard.tune.bar_at(onset).key
    low, high = sorted((heard.main.pitch.midi, midi))
    scales = [chord_scale(span.chord if span else None, key).pitch_classes, key_scale(key).pitch_classes]
    near = [s for s in scales if midi % 12 in s and not any(m % 12 in s for m in range(low + 1, high))]
    return high - low <= 2 and bool(near)


def chord_classes(h: Heard, onset: int) -> frozenset[int]:
    span = h.tune.chord_at(onset)
    return span.chord.pitch_classes if span and span.chord else frozenset()


def between_neighbours(h: Heard, grace: int) -> bool:
    """True when the grace note is a whole tone off though the melody has just had the semitone between."""
    return h.before is not None and h.before.pitch.midi - h.main.pitch.midi == grace // 2


def comes_near(h: Heard) -> bool:
    """The added notes begin within a sixth of the note that they leave."""
    return h.before is None or abs(h.own[0].pitch.midi - h.before.pitch.midi) <= 9


def lower_semitone(h: Heard) -> bool:
    return graces(h) == [-1]


def lower_step(h: Heard) -> bool:
    fits = scale_gap(h, h.main.pitch.midi + graces(h)[0]) and not between_neighbours(h, graces(h)[0])
    return len(graces(h)) == 1 and graces(h)[0] == -2 and fits


def upper_step(h: Heard) -> bool:
    grace = graces(h)[0]
    fits = scale_gap(h, h.main.pitch.midi + grace) and not (grace == 2 and between_neighbours(h, grace))
    return len(graces(h)) == 1 and grace in (1, 2) and fits


def upper_semitone(h: Heard) -> bool:
    return graces(h) == [1] and h.before is not None and h.before.pitch.midi - h.main.pitch.midi == 2


def double_below(h: Heard) -> bool:
    found = graces(h)
    return len(found) == 2 and -5 <= found[0] < found[1] < 0 and found[1] >= -2


def double_around(h: Heard) -> bool:
    found = graces(h)
    return len(found) == 2 and found[0] in (1, 2) and found[1] == -1


def anticipated(h: Heard) -> bool:
    (note,) = h.own
    early = h.main.onset_ticks - note.onset_ticks
    return (
        note.pitch.midi == h.main.pitch.midi
        and early in (SIXTEENTH, EIGHTH)
        and note.end_ticks >= h.main.onset_ticks + 1
        and h.tune.strength_at(h.main.onset_ticks) >= 0.5
    )


def delayed(h: Heard) -> bool:
    plain = [h.tune.notes[anchor] for anchor in h.figure.anchors]
    halves = all(n.duration_ticks * 2 == p.duration_ticks for n, p in zip(h.own, plain, strict=True))
    pitches = [n.pitch for n in h.own] == [p.pitch for p in plain]
    counted = h.tune.strength_at(h.own[0].onset_ticks) >= 0.25
    in_time = h.after is None or h.after.onset_ticks == h.tune.notes[h.figure.anchors[-1] + 1].onset_ticks
    return halves and pitches and counted and in_time and h.own[-1].end_ticks == plain[-1].end_ticks


def held_over(h: Heard, direction: int) -> bool:
    (held,) = h.own
    assert h.after is not None
    chord = chord_classes(h, h.tune.notes[h.figure.anchors[1]].onset_ticks)
    clashes = held.pitch.midi % 12 not in chord and h.after.pitch.midi % 12 in chord
    crosses = held.onset_ticks < h.tune.notes[h.figure.anchors[1]].onset_ticks < held.end_ticks
    move = h.after.pitch.midi - held.pitch.midi
    return crosses and clashes and held.end_ticks == h.after.onset_ticks and 1 <= move * direction <= 2


def one_pitch(h: Heard) -> bool:
    whole = sum(note.duration_ticks for note in h.own)
    onset = h.main.onset_ticks
    inside = range(onset + SIXTEENTH, h.main.end_ticks, SIXTEENTH)
    held_over_a_beat = any(h.tune.strength_at(ticks) >= 0.5 for ticks in inside)
    if h.tune.strength_at(onset) < 0.5 and held_over_a_beat:
        return False
    return {note.pitch for note in h.own} == {h.main.pitch} and len(h.own) >= 2 and whole == h.main.duration_ticks


def run_of(h: Heard, smallest: int, largest: int, gap: int) -> bool:
    s = h.sequence
    span = abs(s[-1] - s[0])
    even = len({note.duration_ticks for note in h.own}) == 1
    moves = [abs(b - a) for a, b in zip(s, s[1:], strict=False)]
    return (rises(*s) or falls(*s)) and smallest <= span <= largest and max(moves) <= gap and even


def arpeggio(h: Heard) -> bool:
    chord = chord_classes(h, h.own[-1].end_ticks - 1)
    return run_of(h, 7, 16, 12) and all(note.pitch.midi % 12 in chord for note in h.own)


def passing(h: Heard, count: int) -> bool:
    s = h.sequence
    steps = all(is_step(a, b) for a, b in zip(s, s[1:], strict=False))
    return len(h.own) == count and steps and (rises(*s) or falls(*s)) and min(n.duration_ticks for n in h.own) > 0


def chromatic_passing(h: Heard) -> bool:
    before, middle, after = h.sequence
    return (
        abs(after - before) == 2 and middle * 2 == before + after and h.tune.strength_at(h.own[0].onset_ticks) < 0.5
    )


def neighbour(h: Heard, direction: int) -> bool:
    (outer,) = [note for note in h.own if note.pitch.midi != h.main.pitch.midi]
    s = h.sequence
    if h.own[-1].anchor is None and h.own[-1] is not outer and h.after and h.after.pitch == outer.pitch:
        return h.after.onset_ticks > h.own[-1].end_ticks
    context = s.index(outer.pitch.midi, 1 if h.before else 0)
    returns = s[context - 1] == s[context + 1] == h.main.pitch.midi
    return returns and 1 <= (outer.pitch.midi - h.main.pitch.midi) * direction <= 2


def double_neighbour(h: Heard) -> bool:
    main = h.main.pitch.midi
    outer = [note.pitch.midi - main for note in h.own if note.pitch.midi != main]
    s = h.sequence
    context = next(n for n, midi in enumerate(s) if midi == main + outer[0] and s[n + 1] == main + outer[1])
    sides = outer[0] * outer[1] < 0 and all(1 <= abs(side) <= 2 for side in outer)
    return len(outer) == 2 and sides and s[context - 1] == s[context + 2] == main


def escape(h: Heard) -> bool:
    before, away, after = h.sequence
    return 1 <= abs(away - before) <= 2 and is_leap(away, after) and (away - before) * (after - away) < 0


def appoggiatura(h: Heard) -> bool:
    lean, resolution = h.own
    assert h.before is not None
    leap = is_leap(h.before.pitch.midi, lean.pitch.midi)
    foreign = lean.pitch.midi % 12 not in chord_classes(h, lean.onset_ticks)
    return (
        leap
        and foreign
        and 1 <= abs(lean.pitch.midi - resolution.pitch.midi) <= 2
        and resolution.pitch == h.main.pitch
    )


def approach(h: Heard) -> bool:
    assert h.after is not None
    return comes_near(h) and len(h.own) == 1 and h.after.pitch.midi - h.own[0].pitch.midi == 1


def chromatic_approach(h: Heard) -> bool:
    assert h.after is not None
    target = h.after.pitch.midi
    return comes_near(h) and [note.pitch.midi - target for note in h.own] in ([-2, -1], [2, 1])


def surround(h: Heard) -> bool:
    assert h.after is not None
    sides = [note.pitch.midi - h.after.pitch.midi for note in h.own]
    return (
        comes_near(h) and len(sides) == 2 and sides[0] * sides[1] < 0 and all(1 <= abs(side) <= 2 for side in sides)
    )


def turn(h: Heard, direction: int) -> bool:
    main = h.main.pitch.midi
    first, up, middle, down, last = (note.pitch.midi - main for note in h.own)
    return first == middle == last == 0 and 1 <= up * direction <= 2 and 1 <= -down * direction <= 2


def mordent(h: Heard, direction: int) -> bool:
    first, other, last = h.own
    move = other.pitch.midi - h.main.pitch.midi
    quick = first.duration_ticks == other.duration_ticks <= SIXTEENTH < last.duration_ticks + 1
    return first.pitch == last.pitch == h.main.pitch and 1 <= move * direction <= 2 and quick


def shake(h: Heard) -> bool:
    moves = [note.pitch.midi - h.main.pitch.midi for note in h.own]
    return len(moves) >= 5 and set(moves[::2]) == {0} and len(set(moves[1::2])) == 1 and 1 <= moves[1] <= 2


def fill(h: Heard) -> bool:
    """It lets the held note speak, leads by a third at most or rests in the chord's scale; what is foreign to key and
    chord moves by step (from a blue third also down to the root), and no wide leap goes on in its direction."""
    midis = [note.pitch.midi for note in h.own]
    moves = [b - a for a, b in zip(midis, midis[1:], strict=False)]
    assert h.after is not None
    rests = h.own[-1].end_ticks < h.after.onset_ticks
    ends_well = midis[-1] % 12 in fill_scale(h, h.own[-1]) if rests else 1 <= abs(h.after.pitch.midi - midis[-1]) <= 4
    spoke = h.own[0].onset_ticks - h.tune.notes[h.figure.anchors[0]].onset_ticks >= QUARTER
    left = zip(h.own, [*moves, h.after.pitch.midi - midis[-1]], strict=True)
    resolves = all(abs(move) <= 3 for note, move in left if note.pitch.midi % 12 not in fill_scale(h, note))
    turns = all(a * b <= 0 or abs(b) <= 2 for a, b in zip(moves, moves[1:], strict=False) if abs(a) >= 7)
    return ends_well and spoke and resolves and turns and max(map(abs, moves)) <= 12 and len(midis) >= 3


def fill_scale(h: Heard, note: Note) -> frozenset[int]:
    """The key's notes, the chord's, and its plain ninth, eleventh and thirteenth."""
    from fioritura.theory.scale import key_scale

    span, key = h.tune.chord_at(note.onset_ticks), h.tune.bar_at(note.onset_ticks).key
    classes = set(key_scale(key).pitch_classes)
    if span and span.chord:
        classes |= span.chord.pitch_classes | {(span.chord.root.pitch_class + step) % 12 for step in (2, 5, 9)}
    return frozenset(classes)


def lets_go(h: Heard) -> bool:
    """A fall or a doit needs a rest after it, or a note long enough to be left early; a very long one is held."""
    rests = h.after is None or h.after.onset_ticks > h.main.end_ticks
    seconds = h.main.duration_ticks / QUARTER * 60 / TEMPO
    return 0.45 <= seconds <= 3.0 and (rests or seconds >= 0.9)


def marked(mark: Mark) -> Callable[[Heard], bool]:
    return lambda h: [note.pitch for note in h.own] == [h.main.pitch] and mark in h.own[0].marks


def moved_notes(h: Heard) -> list[tuple[Note, Note]]:
    """The plain notes that a figure moves, each with what has become of it."""
    found = [(h.tune.notes[note.anchor], note) for note in h.own if note.anchor is not None]
    return [
        (plain, note) for plain, note in found if note.onset_ticks != plain.onset_ticks or note.pitch != plain.pitch
    ]


def back_phrased(h: Heard) -> bool:
    """Two to eight notes come late in their order, none in the time of the next structural note, which is in its place;
    where the tune had no rest before them there is none now."""
    moved = moved_notes(h)
    late = [note.onset_ticks - plain.onset_ticks for plain, note in moved]
    last = h.tune.notes.index(moved[-1][0])
    arrival = h.tune.notes[last + 1]
    assert h.after is not None
    in_time = (h.after.onset_ticks, h.after.pitch) == (arrival.onset_ticks, arrival.pitch)
    silent = [
        a.end_ticks < b.onset_ticks for a, b in zip(h.line[h.first :], h.line[h.first + 1 : h.last + 2], strict=False)
    ]
    started = moved[0][0].onset_ticks
    plain_rest = not any(n.end_ticks == started for n in h.tune.notes)
    filled = plain_rest or any(n.onset_ticks < started <= n.end_ticks - EIGHTH for n in h.line)
    pitches = all(plain.pitch == note.pitch for plain, note in moved)
    structural = h.tune.strength_at(arrival.onset_ticks) >= 0.5
    return (
        pitches and 2 <= len(moved) <= 8 and min(late) > 0 and in_time and not any(silent) and filled and structural
    )


def brought_forward(h: Heard) -> bool:
    """Two to eight notes come as early as one another, the last of them on a beat, longer than the others and held to
    its old end."""
    moved = moved_notes(h)
    early = {plain.onset_ticks - note.onset_ticks for plain, note in moved}
    plain, last = moved[-1]
    held = last.end_ticks == plain.end_ticks and plain.duration_ticks >= max(p.duration_ticks for p, _ in moved)
    pitches = all(plain.pitch == note.pitch for plain, note in moved)
    return pitches and len(early) == 1 and early <= {SIXTEENTH, EIGHTH} and 2 <= len(moved) <= 8 and held


def in_another_octave(h: Heard) -> bool:
    """All notes in the same other octave, in time, and no more than an octave from the notes around them."""
    moved = moved_notes(h)
    shifts = {note.pitch.midi - plain.pitch.midi for plain, note in moved}
    letters = all(note.pitch.name == plain.pitch.name for plain, note in moved)
    in_time = all(note.onset_ticks == plain.onset_ticks for plain, note in moved)
    s = h.sequence
    return letters and in_time and shifts in ({12}, {-12}) and 3 <= len(moved) <= 8 and abs(s[1] - s[0]) <= 12


def chord_note_between(h: Heard) -> bool:
    """One note of the chord, by leap from both: inside a leap, or away from a note that comes again."""
    before, middle, after = h.sequence
    in_chord = middle % 12 in chord_classes(h, h.own[0].onset_ticks)
    inside = (middle - before) * (after - middle) > 0 or before == after
    return in_chord and inside and is_leap(before, middle) and is_leap(middle, after) and len(h.own) == 1


def broken_chord(h: Heard) -> bool:
    """Notes of one chord, no two of them the same after one another, from a note that has sounded for half its time, or
    in a rest, upwards to a note of the chord."""
    added = [note for note in h.own if note.anchor is None]
    chord = chord_classes(h, added[-1].end_ticks - 1)
    leaves = h.own[0].anchor is not None
    if leaves:
        sounded = h.own[0].duration_ticks * 2 >= h.main.duration_ticks
    else:
        chord, sounded = chord_classes(h, added[-1].end_ticks), rises(*(n.pitch.midi for n in added), h.sequence[-1])
    return sounded and len(added) >= 2 and all(note.pitch.midi % 12 in chord for note in added)


def guides(h: Heard) -> bool:
    """Each added note is the third or seventh (or what stands for it) of its chord, has real value, and the line moves by
    step where the chord changes."""
    for note in h.own:
        span = h.tune.chord_at(note.onset_ticks)
        if span is None or span.chord is None or note.duration_ticks < QUARTER:
            return False
        if note.pitch.midi % 12 not in {tone.pitch_class for tone in span.chord.guide_tones}:
            return False
    assert h.after is not None
    line = [*h.own, h.after]
    changes = [
        (a, b)
        for a, b in zip(line, line[1:], strict=False)
        if _chord(h.tune, a.onset_ticks) != _chord(h.tune, b.onset_ticks)
    ]
    first = h.before is not None and _chord(h.tune, h.main.onset_ticks) != _chord(h.tune, h.own[0].onset_ticks)
    return bool(changes or first) and all(is_step(a.pitch.midi, b.pitch.midi) for a, b in changes)


def _chord(tune: Tune, ticks: int) -> object:
    span = tune.chord_at(ticks)
    return span.chord if span else None


def enclosed(h: Heard) -> bool:
    """Three or four notes of an eighth or a sixteenth around a note on a beat, on both sides of it, a step away at most."""
    assert h.after is not None
    sides = [note.pitch.midi - h.after.pitch.midi for note in h.own]
    both = min(sides) < 0 < max(sides) and all(1 <= abs(side) <= 2 for side in sides)
    return both and 3 <= len(sides) <= 4 and h.tune.strength_at(h.after.onset_ticks) >= 0.5 and comes_near(h)


def rolled(h: Heard, sign: Mark, ticks: int) -> bool:
    return (
        [note.duration_ticks for note in h.own] == [ticks]
        and sign in h.own[0].marks
        and h.own[0].pitch == h.main.pitch
    )


def even_triplet(h: Heard) -> bool:
    """Three even notes by step; a third filled, the way to a fourth, or a note circled once (common practice)."""
    first, second, third = (note.pitch.midi for note in h.own)
    even = {note.duration_ticks for note in h.own} == {QUARTER // 3}
    return even and is_step(first, second) and is_step(second, third)


IS_WHAT_IT_SAYS: dict[str, Callable[[Heard], bool]] = {
    LOWER_GRACE_SEMITONE.id: lower_semitone,
    LOWER_GRACE_STEP.id: lower_step,
    UPPER_GRACE_STEP.id: upper_step,
    UPPER_GRACE_SEMITONE.id: upper_semitone,
    DOUBLE_GRACE_LOWER.id: double_below,
    DOUBLE_GRACE_UPPER_LOWER.id: double_around,
    ANTICIPATION.id: anticipated,
    DELAY.id: delayed,
    SUSPENSION.id: lambda h: held_over(h, -1),
    RETARDATION.id: lambda h: held_over(h, 1),
    REPEATED_NOTES.id: one_pitch,
    REPEATED_NOTES_LIVELY.id: one_pitch,
    RUN_CHROMATIC.id: lambda h: run_of(h, 3, 5, 1),
    RUN_SCALE.id: lambda h: run_of(h, 6, 16, 3),
    RUN_PENTATONIC.id: lambda h: run_of(h, 7, 16, 5),
    RUN_ARPEGGIO.id: arpeggio,
    PASSING_NOTE.id: lambda h: passing(h, 1),
    PASSING_NOTES_PAIR.id: lambda h: passing(h, 2),
    PASSING_NOTE_CHROMATIC.id: chromatic_passing,
    NEIGHBOUR_UPPER.id: lambda h: neighbour(h, 1),
    NEIGHBOUR_LOWER.id: lambda h: neighbour(h, -1),
    DOUBLE_NEIGHBOUR.id: double_neighbour,
    ESCAPE_TONE.id: escape,
    APPOGGIATURA.id: appoggiatura,
    APPROACH_NOTE.id: approach,
    APPROACH_CHROMATIC.id: chromatic_approach,
    SURROUND.id: surround,
    ENCLOSURE.id: enclosed,
    BACK_PHRASING.id: back_phrased,
    PHRASE_AHEAD.id: brought_forward,
    OCTAVE_PHRASE.id: in_another_octave,
    ADDED_CHORD_NOTE.id: chord_note_between,
    ARPEGGIATED_NOTE.id: broken_chord,
    GUIDE_TONE_LINE.id: guides,
    TURN.id: lambda h: turn(h, 1),
    INVERTED_TURN.id: lambda h: turn(h, -1),
    MORDENT.id: lambda h: mordent(h, -1),
    UPPER_MORDENT.id: lambda h: mordent(h, 1),
    SHAKE.id: shake,
    ANSWER_FILL.id: fill,
    SCOOP.id: marked(Mark.SCOOP),
    FALL.id: lambda h: Mark.FALL in h.own[0].marks and h.own[0].pitch == h.main.pitch and lets_go(h),
    DOIT.id: lambda h: Mark.DOIT in h.own[0].marks and h.own[0].pitch == h.main.pitch and lets_go(h),
    GHOST_NOTE.id: marked(Mark.GHOST),
    VIBRATO.id: marked(Mark.VIBRATO),
    BLUE_THIRD.id: lambda h: graces(h) == [-1] or [n.pitch.midi - h.main.pitch.midi for n in h.own] == [-1, 0],
    CUT.id: lambda h: len(graces(h)) == 1 and 1 <= graces(h)[0] <= 4,
    STRIKE.id: lambda h: len(graces(h)) == 1 and -4 <= graces(h)[0] <= -1,
    SHORT_ROLL.id: lambda h: rolled(h, Mark.ROLL, QUARTER),
    LONG_ROLL.id: lambda h: rolled(h, Mark.ROLL, QUARTER + EIGHTH),
    CRAN.id: lambda h: rolled(h, Mark.CRAN, QUARTER + EIGHTH) and h.main.pitch.name == NoteName.parse("D"),
    TRIPLET.id: even_triplet,
    DIVIDED_NOTE.id: lambda h: (
        [n.duration_ticks for n in h.own] == [EIGHTH, EIGHTH] and h.own[0].pitch == h.main.pitch
    ),
    HELD_NOTE.id: lambda h: [n.duration_ticks for n in h.own] == [QUARTER] and h.own[0].pitch == h.main.pitch,
}


def offered(
    tune: Tune, technique: str, idiom: Idiom = "jazz", feel: Feel = "straight"
) -> list[tuple[Context, Figure]]:
    setting = Setting(Player.of("concert", 5), TEMPO, feel, idiom)
    return find_figures(contexts(tune, setting), wanted_techniques(5, [technique]))


def meets_its_definition(technique: Technique) -> Callable[[Heard], bool]:
    """Judged by the technique's own definition, in any scale and chord: for one that came without a classifier here."""

    def is_one(h: Heard) -> bool:
        assert technique.definition is not None
        graces = tuple(pitch.midi for note in h.own for pitch in note.graces)
        group: tuple[Note | None, tuple[int, ...], Note | None]
        if graces:
            group = (h.before, graces, h.own[0])
        else:
            added = [n for n, note in enumerate(h.line) if 0 in note.figures and note.anchor is None]
            before = h.line[added[0] - 1] if added[0] else None
            after = h.line[added[-1] + 1] if added[-1] + 1 < len(h.line) else None
            group = (before, tuple(h.line[n].pitch.midi for n in added), after)
        around = [None if note is None else note.pitch.midi for note in (group[0], group[2])]
        every = frozenset(range(12))
        return technique.definition.is_met(
            Group(around[0], group[1], around[1], bool(graces), is_fill=True, five=every, chord=every)
        )

    return is_one


def judge_of(id: str) -> Callable[[Heard], bool]:
    return IS_WHAT_IT_SAYS.get(id) or meets_its_definition(technique_named(id))


def test_every_technique_is_judged() -> None:
    """By the classifier here, which knows nothing of the generators, or by a definition of its own."""
    assert all(id in IS_WHAT_IT_SAYS or one.definition for id, one in all_techniques().items())
    assert set(IS_WHAT_IT_SAYS) <= set(all_techniques())


@pytest.mark.parametrize("technique", sorted(all_techniques()))
def test_every_figure_is_what_its_label_says(technique: str) -> None:
    count = 0
    for seed in range(12):
        tune = random_tune(
            seed, bars=24, metre=METRES[seed % len(METRES)], mode="minor" if seed % 3 == 2 else "major"
        )
        for feel in ("straight", "swing"):
            for _, figure in offered(tune, technique, feel=feel, idiom="jazz"):
                assert figure.technique == technique
                heard = Heard(tune, figure, laid_out(tune, [figure]))
                assert judge_of(technique)(heard), (seed, figure, heard.sequence)
                count += 1
    assert count >= 4, f"only {count} figures: the test would not notice much"


@pytest.mark.parametrize("technique", sorted(all_techniques()))
def test_every_figure_fills_its_time_exactly(technique: str) -> None:
    """The sum of sounding time outside the window is untouched, and no two notes overlap (arithmetic)."""
    for seed in range(8):
        tune = random_tune(seed, bars=16, metre=METRES[seed % len(METRES)])
        for _, figure in offered(tune, technique):
            line = laid_out(tune, [figure])
            assert all(a.end_ticks <= b.onset_ticks for a, b in zip(line, line[1:], strict=False))
            assert all(note.duration_ticks > 0 for note in line)
            assert line[-1].end_ticks <= tune.duration_ticks
            outside = [n for n in line if not n.figures and not _touches(n, figure, tune)]
            plain = {(n.onset_ticks, n.duration_ticks, n.pitch) for n in tune.notes}
            assert all((n.onset_ticks, n.duration_ticks, n.pitch) in plain for n in outside)


def _touches(note: Note, figure: Figure, tune: Tune) -> bool:
    return note.anchor is not None and figure.first_slot // 2 <= note.anchor <= figure.last_slot // 2


@pytest.mark.parametrize("technique", sorted(all_techniques()))
def test_no_pitch_is_doubled_by_accident(technique: str) -> None:
    """Common practice: an ornament that repeats the note before or after it sounds like a mistake."""
    if technique_named(technique).repeats_pitch:
        pytest.skip("repeating the pitch is the point")
    for seed in range(8):
        tune = random_tune(seed, metre=METRES[seed % len(METRES)])
        for _, figure in offered(tune, technique):
            sounding: list[tuple[int, bool]] = []
            for note in laid_out(tune, [figure]):
                sounding += [(pitch.midi, True) for pitch in note.graces]
                sounding.append((note.pitch.midi, note.anchor is None))
            for (midi, added), (following, also_added) in zip(sounding, sounding[1:], strict=False):
                assert midi != following or not (added or also_added), figure


def test_chromatic_notes_are_spelled_as_they_lead() -> None:
    """Common practice: sharps lead up, flats lead down; the chord and the key go before."""
    tune = line_of("C4/2 D4/2 E4/2 D4/2 C4/4", chords="C")
    pitches = [str(figure.notes[0].pitch) for _, figure in offered(tune, PASSING_NOTE_CHROMATIC.id)]
    assert pitches[0] == "C#4"
    assert "Eb4" in pitches
    lower = [str(figure.graces[0]) for _, figure in offered(tune, LOWER_GRACE_SEMITONE.id)]
    assert lower[:3] == ["B3", "C#4", "D#4"]
    in_flats = line_of("F4/2 G4/2 Bb4/2 A4/2", key="F major", chords="F")
    assert [str(f.graces[0]) for _, f in offered(in_flats, LOWER_GRACE_SEMITONE.id)] == ["E4", "F#4", "A4", "G#4"]


def test_runs_have_as_many_notes_as_their_names_say() -> None:
    """Common practice: an octave of a major scale has 7 steps, of a pentatonic 5, a fourth 5 semitones."""
    octave = line_of("C4/3 C5/1 C5/4", chords="C")
    (scale,) = [figure for _, figure in offered(octave, RUN_SCALE.id)]
    assert [str(note.pitch) for note in scale.notes] == ["D4", "E4", "F4", "G4", "A4", "B4"]
    (five,) = [figure for _, figure in offered(octave, RUN_PENTATONIC.id)]
    assert [str(note.pitch) for note in five.notes] == ["D4", "E4", "G4", "A4"]
    fourth = line_of("C4/3 F4/1 F4/4", chords="C")
    (chromatic,) = [figure for _, figure in offered(fourth, RUN_CHROMATIC.id)]
    assert [str(note.pitch) for note in chromatic.notes] == ["C#4", "D4", "D#4", "E4"]


def realised(sign: Any) -> list[tuple[int, float]]:
    """MIDI numbers and quarter lengths with which music21 plays an ornament sign on a half note E4 in C major."""
    from music21 import key, note

    main = note.Note("E4", quarterLength=2.0)
    signature = key.Key("C")
    sign.resolveOrnamentalPitches(main, keySig=signature)
    before, middle, after = sign.realize(main, keySig=signature)
    return [(n.pitch.midi, float(n.quarterLength)) for n in (*before, *([middle] if middle else []), *after)]


def test_turns_and_mordents_are_those_that_music21_realises() -> None:
    """Reference: music21.expressions, Turn (upper, main, lower, main), its inversion, Mordent and InvertedMordent."""
    from music21 import expressions

    tune = line_of("E4/2 G4/2", chords="C")
    for technique, sign in ((TURN.id, expressions.Turn()), (INVERTED_TURN.id, expressions.InvertedTurn())):
        ours = next(figure for _, figure in offered(tune, technique))
        pitches = [note.pitch.midi for note in ours.notes]
        assert pitches == [64, *(midi for midi, _ in realised(sign))]
    for technique, sign in ((MORDENT.id, expressions.Mordent()), (UPPER_MORDENT.id, expressions.InvertedMordent())):
        (ours,) = [figure for _, figure in offered(tune, technique)][:1]
        assert [(note.pitch.midi, note.duration_ticks / QUARTER) for note in ours.notes] == realised(sign)


def test_notes_that_the_file_ornamented_are_left_alone() -> None:
    from dataclasses import replace

    from fioritura.theory.pitch import Pitch

    tune = random_tune(3)
    graced = replace(tune.notes[5], graces=(Pitch.parse("C4"),))
    tune = replace(tune, notes=(*tune.notes[:5], graced, *tune.notes[6:]))
    for _, figure in find_figures(
        contexts(tune, Setting(Player.of("concert", 5), 80.0)), tuple(all_techniques().values())
    ):
        changes = figure.notes or figure.graces or figure.marks
        owns = figure.first_slot // 2 <= 5 <= figure.last_slot // 2
        assert not (changes and owns), figure


@pytest.mark.parametrize("technique", all_techniques().values(), ids=lambda technique: technique.id)
def test_a_technique_can_be_handed_to_another_process(technique: Technique) -> None:
    assert pickle.loads(pickle.dumps(technique)).id == technique.id
