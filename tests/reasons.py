"""What each reason says, looked up in the tune: a false reason is one whose claim does not hold there.

Claims are judged from notes, bars and chords alone, not from what the rules asked. A beat is what the metre counts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Final

from fioritura.phrase import phrases
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.pitch import Pitch
from fioritura.tune import Note, Tune


class Claim:
    """A figure at its place, and what can be asked about it."""

    def __init__(self, tune: Tune, setting: Setting, figure: Figure) -> None:
        self.tune, self.setting, self.figure = tune, setting, figure
        self.args = dict(figure.why.args)
        self.index = figure.anchors[0]
        self.note = tune.notes[self.index]
        self.added = [note.pitch for note in figure.notes if note.anchor is None]

    def at(self, offset: int, of: int | None = None) -> Note | None:
        """The plain note so many places on."""
        place = (self.index if of is None else of) + offset
        return self.tune.notes[place] if 0 <= place < len(self.tune.notes) else None

    def move(self, first: Note | None, second: Note | None) -> int | None:
        """Semitones from one note to another."""
        return second.pitch.midi - first.pitch.midi if first and second else None

    @property
    def came(self) -> int | None:
        return self.move(self.at(-1), self.note)

    @property
    def goes(self) -> int | None:
        return self.move(self.note, self.at(1))

    @property
    def places(self) -> int:
        """Staff places to the next note."""
        following = self.at(1)
        return abs(following.pitch.step - self.note.pitch.step) if following else 0

    @property
    def gap_ticks(self) -> int:
        following = self.at(1)
        return (following.onset_ticks if following else self.tune.duration_ticks) - self.note.end_ticks

    @property
    def seconds(self) -> float:
        return self.setting.seconds(self.note.duration_ticks)

    @property
    def starts_phrase(self) -> bool:
        return any(phrase.first == self.index for phrase in phrases(self.tune))

    @property
    def ends_phrase(self) -> bool:
        return any(phrase.last == self.index for phrase in phrases(self.tune))

    def on_beat(self, ticks: int) -> bool:
        bar = self.tune.bar_at(ticks)
        offset, starts = ticks - bar.start_ticks + bar.metre_offset_ticks, [0]
        for length in bar.metre.groups_ticks[:-1]:
            starts.append(starts[-1] + length)
        return offset in starts

    def in_chord(self, pitch: Pitch, ticks: int) -> bool | None:
        """True or False; None where there is no chord."""
        span = self.tune.chord_at(ticks)
        return pitch.midi % 12 in span.chord.pitch_classes if span and span.chord else None

    def stands_out(self, height: object) -> bool:
        """What is said of the note's height."""
        rises = (self.came or 0) > 0
        if height == "peak":
            return rises and self.goes is not None and self.goes < 0
        return height == "plain" or (height == "last" and rises and self.at(1) is None)

    def is_there(self, where: object) -> bool:
        """True where a position is the note's own."""
        return where == self.tune.position_at(self.note.onset_ticks).message


def step(one: Pitch, other: Pitch, direction: int) -> bool:
    """A scale step: the next letter, a semitone or a whole tone away."""
    return other.step - one.step == direction and 1 <= (other.midi - one.midi) * direction <= 2


def _note_there(c: Claim) -> bool:
    there = dict(c.args["note"].args)  # type: ignore[union-attr]
    return c.is_there(there["where"]) and c.stands_out(there["height"])


def _graces(c: Claim) -> list[int]:
    return [pitch.midi - c.note.pitch.midi for pitch in c.figure.graces]


def _upper_step(c: Claim) -> bool:
    coming = {"repeated": c.came == 0, "below": (c.came or 0) > 0, "above": c.came is None or c.came < 0}
    return step(c.note.pitch, c.figure.graces[0], 1) and coming[str(c.args["coming"])] and c.is_there(c.args["where"])


def _runs_up(c: Claim) -> bool:
    low, high = c.figure.graces
    return step(low, high, 1) and step(high, c.note.pitch, 1) and c.is_there(c.args["where"])


def _anticipates(c: Claim) -> bool:
    early = c.note.onset_ticks - c.figure.notes[0].onset_ticks
    span = c.tune.chord_at(c.note.onset_ticks)
    before = c.tune.chord_at(c.note.onset_ticks - 1)
    is_new = span is not None and span.chord is not None and (before is None or before.chord != span.chord)
    is_early = early == {"eighth": EIGHTH, "sixteenth": SIXTEENTH}[str(c.args["value"])]
    return is_early and c.on_beat(c.note.onset_ticks) and bool(c.args["brings"]) == is_new


def _leads_by_two(c: Claim) -> bool:
    following = c.at(1)
    assert following
    sign = -1 if c.args["direction"] == "up" else 1
    semitones = [pitch.midi - following.pitch.midi for pitch in c.added]
    return semitones == [2 * sign, sign] and c.on_beat(following.onset_ticks)


def _surrounds(c: Claim) -> bool:
    following = c.at(1)
    assert following
    above, below = c.added if c.args["first"] == "above" else c.added[::-1]
    return step(following.pitch, above, 1) and following.pitch.midi - below.midi == 1


def _delays(c: Claim) -> bool:
    plain = [c.tune.notes[anchor] for anchor in c.figure.anchors]
    arrival = c.at(1, c.figure.anchors[-1])
    halves = all(n.duration_ticks * 2 == p.duration_ticks for n, p in zip(c.figure.notes, plain, strict=True))
    late = c.figure.notes[0].onset_ticks > plain[0].onset_ticks
    return len(plain) == c.args["count"] and halves and late and bool(arrival and c.on_beat(arrival.onset_ticks))


def _holds(c: Claim, direction: int) -> bool:
    held, resolution = (c.tune.notes[anchor] for anchor in c.figure.anchors)
    fits = c.in_chord(resolution.pitch, resolution.onset_ticks) and not c.in_chord(held.pitch, resolution.onset_ticks)
    late = c.figure.notes[0].onset_ticks == resolution.onset_ticks
    return bool(fits) and late and 1 <= (resolution.pitch.midi - held.pitch.midi) * direction <= 2


def _lets_go(c: Claim) -> bool:
    end = {"last": c.at(1) is None, "rest": c.gap_ticks > 0, "phrase": c.ends_phrase}[str(c.args["end"])]
    return end and ("rises" not in c.args or bool(c.args["rises"]) == ((c.came or 0) > 0))


def _scoops(c: Claim) -> bool:
    role = c.args["role"]
    if role in ("peak", "last"):
        return c.stands_out(role)
    least_sec = {"start": 0.4, "leap": 0.4, "long": 0.9, "time": 0.4}[str(role)]
    is_so = c.starts_phrase if role == "start" else role != "leap" or (c.came or 0) >= 3
    return is_so and c.seconds >= least_sec


def _ghosts(c: Claim) -> bool:
    is_so = not c.on_beat(c.note.onset_ticks) and c.note.duration_ticks <= EIGHTH and c.gap_ticks == 0
    return is_so and c.note.pitch == c.args["pitch"] and (c.at(1) or c.note).pitch == c.args["next"]


def _goes_on(c: Claim) -> bool:
    """The melody goes on to another pitch, the one that is named, or ends."""
    following = c.at(1)
    if following is None or c.args["end"] == "last":
        return following is None and c.args["end"] == "last"
    return c.note.pitch == c.args["pitch"] != c.args["next"] == following.pitch


def _stays(c: Claim) -> bool:
    """The melody, or a phrase, ends with the note, or it lasts as many quarters as is said."""
    is_so = {"last": c.at(1) is None, "phrase": c.ends_phrase, "long": True}[str(c.args["end"])]
    return is_so and c.note.duration_ticks == c.args["count"] * QUARTER and c.note.pitch == c.args["pitch"]


def _neighbours(c: Claim, main: list[Pitch]) -> bool:
    kind = {"upper": 1, "lower": -1}.get(str(c.args["which"]))
    (outer,) = [pitch for pitch in c.added if pitch.midi != c.note.pitch.midi]
    return step(main[0], outer, kind) if kind else c.note.pitch.midi - outer.midi == 1


def _both_neighbours(c: Claim) -> bool:
    outer = [pitch.midi - c.note.pitch.midi for pitch in c.added if pitch.midi != c.note.pitch.midi]
    first, second = outer if c.args["first"] == "above" else outer[::-1]
    return 1 <= first <= 2 and 1 <= -second <= 2


def _escapes(c: Claim) -> bool:
    sign = 1 if c.args["direction"] == "up" else -1
    following = c.at(1)
    assert following
    away, leap = c.added[0].midi - c.note.pitch.midi, following.pitch.midi - c.added[0].midi
    return (c.goes or 0) * sign > 0 and step(c.note.pitch, c.added[0], -sign) and leap * sign >= 3 and away * sign < 0


def _leans(c: Claim) -> bool:
    before = c.at(-1)
    assert before
    lean, onset = c.added[0], c.note.onset_ticks
    foreign = c.in_chord(lean, onset) is False and c.in_chord(c.note.pitch, onset) is True
    leaps = abs(lean.midi - before.pitch.midi) >= 3 and c.on_beat(onset)
    return leaps and step(c.note.pitch, lean, 1 if c.args["side"] == "above" else -1) and foreign == c.args["foreign"]


def _turns(c: Claim, first: int, *, raised: bool = False) -> bool:
    pitches = [note.pitch for note in c.figure.notes]
    one, other = pitches[1], pitches[3]
    values = [note.duration_ticks for note in c.figure.notes]
    if "start" in c.args and (values[0] < values[-1]) != (c.args["start"] == "at-once"):
        return False
    second = c.note.pitch.midi - other.midi == 1 if raised else step(c.note.pitch, other, -first)
    return step(c.note.pitch, one, first) and second


def _flicks(c: Claim, direction: int) -> bool:
    other = next(pitch for pitch in c.added if pitch.midi != c.note.pitch.midi)
    return step(c.note.pitch, other, direction) and c.figure.notes[1].duration_ticks <= SIXTEENTH


def _goes(c: Claim) -> bool:
    return (c.goes or 0) * (1 if c.args["direction"] == "up" else -1) > 0


def _by_semitone(c: Claim) -> bool:
    following = c.at(1)
    assert following
    line = [c.note.pitch.midi, *(pitch.midi for pitch in c.added), following.pitch.midi]
    return (
        _goes(c)
        and {abs(b - a) for a, b in pairwise(line)} == {1}
        and c.places == (3 if c.args["size"] == "fourth" else 2)
    )


def _fills_by_step(c: Claim, inside: int) -> bool:
    following = c.at(1)
    assert following
    line = [c.note.pitch, *c.added, following.pitch]
    direction = 1 if (c.goes or 0) > 0 else -1
    walks = all(step(one, other, direction) for one, other in pairwise(line))
    return walks and (len(c.added) == inside if inside else c.places >= 4)


def _answers(c: Claim) -> bool:
    values = [note.duration_ticks for note in c.figure.notes]
    midis = [pitch.midi for pitch in c.added]
    signs = [(b > a) - (b < a) for a, b in pairwise(midis)]
    ways = [sign for number, sign in enumerate(signs) if number == 0 or sign != signs[number - 1]]
    shape = {"arch": [1, -1], "valley": [-1, 1], "falling": [-1], "rising": [1]}[str(c.args["shape"])]
    rests = c.gap_ticks > 0 if c.args["rests"] else c.note.duration_ticks >= 2 * QUARTER
    return ways == shape and rests and _is_rhythm(c, values)


def _is_rhythm(c: Claim, values: list[int]) -> bool:
    origin, third = c.args["origin"], QUARTER // 3
    if origin in ("phrase", "opening"):
        phrase = next(p for p in phrases(c.tune) if p.first <= c.index <= p.last)
        first, last = (phrase.first, phrase.last) if origin == "phrase" else (0, len(c.tune.notes) - 1)
        onsets = [note.onset_ticks for note in c.tune.notes[first : last + 2]]
        own = [(b - a) // (2 if c.args["halved"] else 1) for a, b in pairwise(onsets)]
        return own[: len(values)] == values
    is_triplet, pair = [third] * 3, [SIXTEENTH] * 2
    pair_there = [*pair, EIGHTH]
    ends = {"triplet": (is_triplet, 0, 0), "eighth-triplet": (is_triplet, 1, 1), "to-triplet": (is_triplet, 2, 9)}
    ends |= {"eighth-pair": (pair_there, 0, 0), "to-pair": (pair_there, 1, 9)}
    if origin in ends:
        closing, least, most = ends[str(origin)]
        lead = values[: -len(closing)]
        return values[-len(closing) :] == closing and set(lead) <= {EIGHTH} and least <= len(lead) <= most
    starts = {"from-triplet": is_triplet, "from-pair": [EIGHTH, *pair], "from-long": [QUARTER]}.get(str(origin), [])
    after = values if values[: len(starts)] == starts else values[1:]
    return (
        after[: len(starts)] == starts and {EIGHTH, *starts} >= set(values) and set(after[len(starts) :]) <= {EIGHTH}
    )


def _colours(c: Claim) -> bool:
    (colour,), onset = c.added, c.figure.notes[0].onset_ticks
    span = c.tune.chord_at(onset)
    assert span
    assert span.chord
    above = (colour.midi - span.chord.root.pitch_class) % 12
    is_held = onset < c.note.end_ticks and c.figure.notes[0].duration_ticks >= QUARTER
    ends = c.at(1) is None and c.in_chord(c.note.pitch, c.note.onset_ticks) is True
    return ends and is_held and above == {"ninth": 2, "sixth": 9}[str(c.args["colour"])]


def _closes(c: Claim) -> bool:
    onset, values = c.note.onset_ticks, [note.duration_ticks for note in c.figure.notes]
    has_time = c.tune.duration_ticks - onset >= 3 * QUARTER and c.figure.end_ticks <= c.tune.duration_ticks
    sign = 1 if c.args["rises"] else -1
    goes = all((b.midi - a.midi) * sign > 0 for a, b in pairwise(c.added))
    return c.at(1) is None and has_time and goes and max(values[:-1]) <= EIGHTH and values[-1] >= QUARTER


CLAIMS: Final[dict[str, Callable[[Claim], bool]]] = {
    "lower-grace-semitone-why": lambda c: _graces(c) == [-1] and _note_there(c),
    "lower-grace-step-why": lambda c: (
        _graces(c) == [-2] and step(c.note.pitch, c.figure.graces[0], -1) and _note_there(c)
    ),
    "upper-grace-step-why": _upper_step,
    "upper-grace-semitone-why": lambda c: c.came == -2 and _graces(c) == [1],
    "double-grace-lower-why": _runs_up,
    "double-grace-upper-lower-why": lambda c: (
        step(c.note.pitch, c.figure.graces[0], 1) and _graces(c)[1] == -1 and _note_there(c)
    ),
    "anticipation-why": _anticipates,
    "approach-note-why": lambda c: (
        abs(c.goes or 0) >= 3
        and bool((n := c.at(1)) and c.on_beat(n.onset_ticks) and n.pitch.midi - c.added[0].midi == 1)
    ),
    "approach-chromatic-why": _leads_by_two,
    "surround-why": _surrounds,
    "delay-why": _delays,
    "suspension-why": lambda c: _holds(c, -1),
    "retardation-why": lambda c: _holds(c, 1),
    "fall-why": _lets_go,
    "doit-why": _lets_go,
    "scoop-why": _scoops,
    "ghost-note-why": _ghosts,
    "vibrato-why": lambda c: c.seconds >= 0.8 and _stays(c),
    "neighbour-why-repeated": lambda c: c.goes == 0 and _neighbours(c, [c.note.pitch]),
    "neighbour-why-long": lambda c: c.note.duration_ticks >= QUARTER and _neighbours(c, [c.note.pitch]),
    "double-neighbour-why-repeated": lambda c: c.goes == 0 and _both_neighbours(c),
    "double-neighbour-why-long": lambda c: c.note.duration_ticks >= QUARTER and _both_neighbours(c),
    "escape-tone-why": _escapes,
    "appoggiatura-why": _leans,
    "passing-note-why": lambda c: c.places == 2 and _fills_by_step(c, 1),
    "passing-notes-pair-why": lambda c: c.places == 3 and _fills_by_step(c, 2),
    "passing-note-chromatic-why": lambda c: (
        abs(c.goes or 0) == 2
        and (c.added[0].midi - c.note.pitch.midi) * 2 == c.goes
        and not c.on_beat(c.figure.notes[0].onset_ticks)
    ),
    "repeated-notes-why": lambda c: (
        len(c.figure.notes) == 2 and {n.pitch for n in c.figure.notes} == {c.note.pitch} and _goes_on(c)
    ),
    "repeated-notes-lively-why": lambda c: (
        len(c.figure.notes) == c.args["count"] and {n.pitch for n in c.figure.notes} == {c.note.pitch}
    ),
    "run-chromatic-why": _by_semitone,
    "run-scale-why": lambda c: _goes(c) and _fills_by_step(c, 0),
    "run-pentatonic-why": lambda c: _goes(c) and abs(c.goes or 0) >= 7,
    "run-arpeggio-why": lambda c: (
        _goes(c) and abs(c.goes or 0) >= 7 and all(c.in_chord(p, c.figure.end_ticks - 1) for p in c.added)
    ),
    "answer-fill-why": _answers,
    "held-colour-why": _colours,
    "closing-phrase-why": _closes,
    "turn-why": lambda c: _turns(c, 1),
    "turn-why-raised": lambda c: _turns(c, 1, raised=True),
    "inverted-turn-why": lambda c: _turns(c, -1),
    "mordent-why": lambda c: _flicks(c, -1),
    "upper-mordent-why": lambda c: _flicks(c, 1),
    "shake-why": lambda c: _flicks_on(c),
}
"""For each reason what must hold where it is given."""


def _flicks_on(c: Claim) -> bool:
    other = c.added[0]
    return (
        step(c.note.pitch, other, 1)
        and c.note.duration_ticks >= QUARTER + EIGHTH
        and c.figure.notes[-1].pitch == c.note.pitch
    )


def false_reasons(tune: Tune, setting: Setting, figures: list[Figure]) -> Iterator[Figure]:
    """The figures whose reason does not hold; one that nobody judges counts as false."""
    for figure in figures:
        claim = CLAIMS.get(figure.why.id)
        if claim is None or not claim(Claim(tune, setting, figure)):
            yield figure
