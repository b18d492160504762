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
from fioritura.theory.chord import Chord
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.pitch import Pitch
from fioritura.theory.scale import chord_scale, key_scale
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
    return is_so and c.note.pitch.message == c.args["pitch"] and (c.at(1) or c.note).pitch.message == c.args["next"]


def _goes_on(c: Claim) -> bool:
    """The melody goes on to another pitch, the one that is named, or ends."""
    following = c.at(1)
    if following is None or c.args["end"] == "last":
        return following is None and c.args["end"] == "last"
    return c.note.pitch.message == c.args["pitch"] != c.args["next"] == following.pitch.message


def _stays(c: Claim) -> bool:
    """The melody, or a phrase, ends with the note, or it lasts as many quarters as is said."""
    is_so = {"last": c.at(1) is None, "phrase": c.ends_phrase, "long": True}[str(c.args["end"])]
    return (
        is_so
        and c.note.duration_ticks == float(str(c.args["count"])) * QUARTER
        and c.note.pitch.message == c.args["pitch"]
    )


def _leads_in(c: Claim) -> bool:
    """Even notes through the chord, the last a semitone or a whole tone from the next note, inside a phrase."""
    following = c.at(1)
    assert following
    *inside, last = c.figure.notes
    values = {note.duration_ticks for note in c.figure.notes}
    away = {"semitone": 1, "step": 2}[str(c.args["way"])]
    span = c.tune.chord_at(last.onset_ticks)
    scale = chord_scale(span.chord if span else None, c.tune.bar_at(last.onset_ticks).key)
    in_scale = last.pitch.midi % 12 in scale.pitch_classes
    return (
        len(values) == 1
        and not c.ends_phrase
        and len(c.figure.notes) == c.args["count"]
        and all(c.in_chord(note.pitch, note.onset_ticks) for note in inside)
        and abs(last.pitch.midi - following.pitch.midi) == away
        and in_scale != c.args["chromatic"]
    )


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
    rests = c.gap_ticks > 0 if c.args["rests"] else c.note.duration_ticks >= 2 * QUARTER
    quick = sum(note.duration_ticks <= SIXTEENTH for note in c.figure.notes)
    doubled = c.setting.quarters_per_minute < 90 and 2 * quick > len(c.added)
    is_so = _IDEAS[str(c.args["idea"])](c) and _WAYS[str(c.args["way"])](c)
    return rests and c.args["count"] == len(c.added) and c.args["doubled"] == doubled and is_so


def _moves(c: Claim) -> list[int]:
    return [b.midi - a.midi for a, b in pairwise(c.added)]


def _ways(c: Claim) -> list[bool]:
    """Up or down, each once as long as it lasts."""
    rises = [move > 0 for move in _moves(c) if move]
    return [way for number, way in enumerate(rises) if number == 0 or way != rises[number - 1]]


def _echoes(c: Claim) -> bool:
    phrase = next(p for p in phrases(c.tune) if p.first <= c.index <= p.last)
    own = [b.pitch.midi - a.pitch.midi for a, b in pairwise(c.tune.notes[phrase.first : c.index + 1])]
    cells = {tuple(own[n : n + 3]) for n in range(len(own) - 2)}
    return any(tuple(_moves(c)[n : n + 3]) in cells for n in range(len(c.added) - 3))


def _over(c: Claim) -> list[tuple[int, Chord | None, Pitch]]:
    """Each added note as semitones above the root of its chord (above the tonic without one), its chord and pitch."""
    found = []
    for note in c.figure.notes:
        span = c.tune.chord_at(note.onset_ticks)
        chord = span.chord if span else None
        root = chord.root.pitch_class if chord else c.tune.bar_at(c.note.onset_ticks).key.tonic.pitch_class
        found.append(((note.pitch.midi - root) % 12, chord, note.pitch))
    return found


def _has_degree(c: Claim, degree: int) -> bool:
    """A blue note: of that degree and not of its chord."""
    return any(one == degree and not (chord and chord.holds(pitch)) for one, chord, pitch in _over(c))


def _guides(c: Claim) -> bool:
    """The first note over a new chord is its third or seventh."""
    over = _over(c)
    for (_, before, _), (degree, chord, _) in pairwise(over):
        if chord != before:
            return chord is not None and degree in (3, 4, 9, 10, 11)
    return False


def _goes_through_the_chord(c: Claim) -> bool:
    moves, inside = _moves(c), [not chord or chord.holds(pitch) for _, chord, pitch in _over(c)]
    return any(
        all(inside[n : n + 3]) and moves[n] * moves[n + 1] > 0 and all(3 <= abs(m) <= 5 for m in moves[n : n + 2])
        for n in range(len(moves) - 1)
    )


def _closes_in(line: list[int]) -> bool:
    """Two notes on both sides of the third, each within a whole tone."""
    one, other, goal = line
    return (one - goal) * (other - goal) < 0 and abs(one - goal) <= 2 and abs(other - goal) <= 2


def _surrounds_one(c: Claim) -> bool:
    midis = [pitch.midi for pitch in c.added]
    return any(_closes_in(midis[n : n + 3]) for n in range(len(midis) - 2))


def _is_foreign(c: Claim) -> bool:
    key = c.tune.bar_at(c.note.onset_ticks).key
    inside = key_scale(key).pitch_classes
    return any(pitch.midi % 12 not in inside and not (chord and chord.holds(pitch)) for _, chord, pitch in _over(c))


def _last_move(c: Claim) -> int:
    following = c.at(1)
    assert following
    return abs(following.pitch.midi - c.added[-1].midi)


def _is_held_up(c: Claim) -> bool:
    """The last note lasts until the next of the tune."""
    following, last = c.at(1), c.figure.notes[-1]
    return following is not None and last.onset_ticks + last.duration_ticks == following.onset_ticks


def _surrounds_the_next(c: Claim) -> bool:
    following = c.at(1)
    assert following
    return _is_held_up(c) and _closes_in([c.added[-2].midi, c.added[-1].midi, following.pitch.midi])


_IDEAS: Final[dict[str, Callable[[Claim], bool]]] = {
    "echo": _echoes,
    "third": lambda c: _has_degree(c, 3),
    "fifth": lambda c: _has_degree(c, 6),
    "guide": _guides,
    "arpeggio": _goes_through_the_chord,
    "around": _surrounds_one,
    "chromatic": _is_foreign,
    "waves": lambda c: len(_ways(c)) > 2,
    "arch": lambda c: _ways(c) == [True, False],
    "valley": lambda c: _ways(c) == [False, True],
    "falling": lambda c: _ways(c) == [False],
    "rising": lambda c: _ways(c) == [True],
}
_WAYS: Final[dict[str, Callable[[Claim], bool]]] = {
    "enclosed": _surrounds_the_next,
    "semitone": lambda c: _is_held_up(c) and _last_move(c) == 1,
    "step": lambda c: _is_held_up(c) and _last_move(c) == 2,
    "third": lambda c: _is_held_up(c) and 3 <= _last_move(c) <= 4,
    "rest": lambda c: not _is_held_up(c) and _in_force(c),
    "colour": lambda c: not _is_held_up(c) and _over(c)[-1][0] in (1, 2, 5, 8, 9, 11),
}


def _in_force(c: Claim) -> bool:
    """The last note is of its chord, or of the tonic triad where there is none."""
    degree, chord, pitch = _over(c)[-1]
    return chord.holds(pitch) if chord else degree in (0, 3, 4, 7)


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


def _ends_in_time(c: Claim) -> bool:
    """The notes that are named lead to the note that is named, and come as late as is said."""
    anchors = c.figure.anchors[1:] if c.args["held"] else c.figure.anchors
    arrival = c.at(1, anchors[-1])
    late = {"eighth": EIGHTH, "quarter": QUARTER}
    first, notes = c.tune.notes[anchors[0]], [n for n in c.figure.notes if not n.joins]
    is_late = notes[0].onset_ticks - first.onset_ticks == late[str(c.args["late"])]
    there = bool(arrival) and c.args["where"] == c.tune.position_at(arrival.onset_ticks).message  # type: ignore[union-attr]
    closes = bool(arrival) and notes[-1].onset_ticks + notes[-1].duration_ticks == arrival.onset_ticks  # type: ignore[union-attr]
    before = c.at(-1, anchors[0])
    touches = before is not None and before.end_ticks == first.onset_ticks
    return len(anchors) == c.args["count"] and is_late and there and closes and touches == c.args["held"]


def _comes_early(c: Claim) -> bool:
    plain = [c.tune.notes[anchor] for anchor in c.figure.anchors]
    early = {p.onset_ticks - n.onset_ticks for p, n in zip(plain, c.figure.notes, strict=True)}
    there = c.args["where"] == c.tune.position_at(plain[-1].onset_ticks).message
    longest = max(note.duration_ticks for note in plain)
    is_so = early == {{"eighth": EIGHTH, "sixteenth": SIXTEENTH}[str(c.args["value"])]}
    return is_so and there and len(plain) == c.args["count"] and plain[-1].duration_ticks == longest


def _is_heard_before(c: Claim) -> bool:
    """Somewhere in the bar that is named the rhythm begins, on the same notes, on others, or with other moves."""
    sign = 1 if c.args["direction"] == "up" else -1
    notes, count = c.tune.notes, len(c.figure.anchors)
    own = notes[c.index : c.index + count]
    moved = all(n.pitch.midi - p.pitch.midi == 12 * sign for p, n in zip(own, c.figure.notes, strict=True))

    def shape(first: int) -> tuple[list[int], list[int]]:
        line = notes[first : first + count]
        times = [b.onset_ticks - a.onset_ticks for a, b in pairwise(line)]
        return times, [b.pitch.midi - a.pitch.midi for a, b in pairwise(line)]

    for start in range(c.index):
        if c.tune.position_at(notes[start].onset_ticks).bar_message != c.args["bar"]:
            continue
        is_same_rhythm, is_same = shape(start)[0] == shape(c.index)[0], shape(start) == shape(c.index)
        same_pitch = notes[start].pitch.midi == own[0].pitch.midi
        kinds = {"repeat": is_same and same_pitch, "sequence": is_same and not same_pitch}
        kinds["answer"] = is_same_rhythm and not is_same and start + count == c.index
        if kinds[str(c.args["kind"])]:
            return moved
    return False


def _adds_chord_note(c: Claim) -> bool:
    (pitch,), onset = c.added, c.figure.notes[0].onset_ticks
    sign = 1 if c.args["direction"] == "up" else -1
    away = pitch.midi - c.note.pitch.midi
    if c.args["kind"] == "repeated":
        fits = c.goes == 0 and away * sign > 0
    else:
        fits = (c.goes or 0) * sign > 0 and 0 < away * sign < abs(c.goes or 0)
    return fits and c.in_chord(pitch, onset) is True


def _breaks(c: Claim) -> bool:
    pitches, onset = c.added, c.note.onset_ticks
    if c.args["way"] == "from":
        is_long = c.note.duration_ticks >= 2 * QUARTER
        return (
            is_long
            and len(pitches) == c.args["count"]
            and all(c.in_chord(pitch, c.note.end_ticks - 1) for pitch in pitches)
        )
    goal = c.at(1)
    assert goal
    rises = all(a.midi < b.midi for a, b in pairwise([*pitches, goal.pitch]))
    return (
        c.gap_ticks > 0
        and rises
        and len(pitches) == c.args["count"]
        and all(c.in_chord(pitch, goal.onset_ticks) for pitch in pitches)
        and onset < goal.onset_ticks
    )


def _guides_by_step(c: Claim) -> bool:
    following = c.at(1)
    assert following
    chords = []
    for ticks in (c.note.onset_ticks, *(note.onset_ticks for note in c.figure.notes), following.onset_ticks):
        span = c.tune.chord_at(ticks)
        chords.append(span.chord if span else None)
    changes = sum(a != b for a, b in pairwise(chords))
    guide = [
        chord is not None and pitch.midi % 12 in {tone.pitch_class for tone in chord.guide_tones}
        for pitch, chord in zip(c.added, chords[1:-1], strict=True)
    ]
    return all(guide) and changes == c.args["changes"] and changes > 0 and len(c.added) == c.args["count"]


def _encloses(c: Claim) -> bool:
    goal = c.at(1)
    assert goal
    sides = [pitch.midi - goal.pitch.midi for pitch in c.added]
    above = next(pitch for pitch in c.added if pitch.midi > goal.pitch.midi)
    orders = {"above": ([2, 1, -1],), "above-four": ([2, 1, -2, -1],), "below": ([-2, -1, 1], [-2, -1, 2])}
    steps = c.args["order"] != "below" or step(goal.pitch, above, 1)
    return (
        sides in orders[str(c.args["order"])]
        and steps
        and c.args["where"] == c.tune.position_at(goal.onset_ticks).message
    )


def _unit(c: Claim) -> int:
    """What a dance runs in: eighths; sixteenths where a reel or hornpipe is written in 2/4 (common practice)."""
    metre = c.tune.bar_at(c.note.onset_ticks).metre
    is_narrow = (metre.beats, metre.unit) == (2, 4) and c.tune.dance in ("reel", "hornpipe")
    return SIXTEENTH if is_narrow else EIGHTH


def _comes(c: Claim) -> bool:
    came = c.came
    return c.args["coming"] == (
        "first" if came is None else "repeated" if came == 0 else "below" if came > 0 else "above"
    )


def _in_three(c: Claim) -> bool:
    """The tune holds a note for three units, says it again within them, or circles it by step."""
    pitches = [c.tune.notes[anchor].pitch.midi for anchor in c.figure.anchors]
    total = sum(c.tune.notes[anchor].duration_ticks for anchor in c.figure.anchors)
    form = c.args["form"]
    if total != 3 * _unit(c) or pitches[0] != pitches[-1]:
        return False
    if form == "held":
        return len(pitches) == 1
    return len(set(pitches)) == 1 if form == "said-again" else len(pitches) == 3 and abs(pitches[1] - pitches[0]) <= 2


def _trips(c: Claim) -> bool:
    pitches, form, goal = [note.pitch for note in c.figure.notes], c.args["form"], c.at(1)
    assert goal
    if form == "third":
        return abs(goal.pitch.step - c.note.pitch.step) == 2 and pitches[2] == goal.pitch
    is_long = c.note.duration_ticks == 2 * _unit(c)
    if form == "fourth":
        return is_long and abs(goal.pitch.step - c.note.pitch.step) == 3 and pitches[0] == c.note.pitch
    return is_long and -4 <= (c.goes or 0) < 0 and pitches[0] == pitches[2] == c.note.pitch


def _is_major_third(c: Claim) -> bool:
    span = c.tune.chord_at(c.note.onset_ticks)
    over = (
        span.chord.root.pitch_class
        if span and span.chord
        else c.tune.bar_at(c.note.onset_ticks).key.tonic.pitch_class
    )
    return (c.note.pitch.midi - over) % 12 == 4 and c.is_there(c.args["where"])


def _degrees(c: Claim) -> tuple[int, int]:
    """This note and the next, in semitones over the key note."""
    tonic = c.tune.bar_at(c.note.onset_ticks).key.tonic.pitch_class
    return (c.note.pitch.midi - tonic) % 12, ((c.at(1) or c.note).pitch.midi - tonic) % 12


def _passes_the_flat_fifth(c: Claim) -> bool:
    first, second = _degrees(c)
    way = "down" if (c.goes or 0) < 0 else "up"
    is_there = (first, second) == (5, 7) if way == "up" else first == 7 and second in (3, 5)
    return c.args["way"] == way and is_there and (c.added[0].midi - c.note.pitch.midi) in (-1, 1)


CLAIMS: Final[dict[str, Callable[[Claim], bool]]] = {
    "irish-cut-why": lambda c: 1 <= _graces(c)[0] <= 3 and _comes(c) and c.is_there(c.args["where"]),
    "irish-strike-why": lambda c: _graces(c)[0] < 0 and _comes(c) and (c.came == 0 or (c.came or 0) <= -3),
    "irish-short-roll-why": lambda c: c.note.duration_ticks == 2 * _unit(c),
    "irish-long-roll-why": _in_three,
    "irish-cran-why": _in_three,
    "irish-triplet-why": _trips,
    "irish-treble-why": lambda c: (
        c.note.duration_ticks == 2 * _unit(c) and [n.pitch for n in c.figure.notes] == [c.note.pitch] * 3
    ),
    "irish-divided-note-why": lambda c: (
        c.note.duration_ticks == 2 * _unit(c) and (c.added[0].midi > c.note.pitch.midi) == (c.args["side"] == "above")
    ),
    "irish-held-note-why": lambda c: (
        abs((c.at(1) or c.note).pitch.midi - c.note.pitch.midi) <= 2
        and any(
            phrase.first <= c.index <= phrase.last and (phrase.statement > 1) == (c.args["heard"] == "before")
            for phrase in phrases(c.tune)
        )
    ),
    "blue-third-why": _is_major_third,
    "flat-fifth-why": _passes_the_flat_fifth,
    "blue-drop-why": lambda c: _degrees(c)[0] == 0 and _graces(c) == [3] and c.on_beat(c.note.onset_ticks),
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
    "lead-in-why": _leads_in,
    "back-phrasing-why": _ends_in_time,
    "phrase-ahead-why": _comes_early,
    "octave-phrase-why": _is_heard_before,
    "added-chord-note-why": _adds_chord_note,
    "arpeggiated-note-why": _breaks,
    "guide-tone-line-why": _guides_by_step,
    "enclosure-why": _encloses,
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
