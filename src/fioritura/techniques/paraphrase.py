"""Melodic paraphrase: a phrase of the tune comes late, early, or in another octave, with all its notes.

Back-phrasing and playing ahead are those of ballad singers and jazz players: the notes keep their order and their pitch,
and the structural note at the end keeps its beat (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from fioritura.players.feel import BALLAD_BELOW
from fioritura.techniques.context import Context
from fioritura.techniques.families import PARAPHRASES
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH, WHOLE
from fioritura.theory.pitch import Pitch
from fioritura.words import message

_DOTTED_QUARTER: Final = QUARTER + EIGHTH
_FEWEST_NOTES, _MOST_NOTES = 2, 8
_FEWEST_IN_OCTAVE: Final = 3
_LONGEST_TICKS: Final = 2 * WHOLE
_MOST_ARRIVALS: Final = 2
_QUICK_ABOVE: Final = 180.0
"""Quarter notes a minute, as in the features of taste."""

_SHORT: Final = 0.2
"""What a group of the fewest notes loses."""

_NEAR_THE_TOP: Final = 4
"""Semitones below the highest note of a tune."""

_UNEASY: Final = 3.0
"""What a phrase outside the comfortable range loses."""

_PLAIN_START: Final = 0.25
_LOOKED_BACK_TICKS: Final = 9 * WHOLE
_LATE_NAMES: Final = {EIGHTH: "eighth", QUARTER: "quarter"}

Way = tuple[int, tuple[int, ...]]
"""How late a group starts, and the values of its notes then."""


# Late -------------------------------------------------------------------------------------------------------------


def _back_phrasing(context: Context) -> Iterator[Figure]:
    """Two to eight notes start late and close up, so that the note they lead to keeps its beat: the way that suits the
    tempo best."""
    yield from _back_phrased(context, most_ways=1)


def _back_phrased_by_players(context: Context) -> Iterator[Figure]:
    """The same in all ways."""
    yield from _back_phrased(context, most_ways=5)


def _back_phrased(context: Context, most_ways: int) -> Iterator[Figure]:
    before = context.previous
    if before is None or not (context.is_free and context.begins_word and _opens(context)):
        return
    is_held = before.gap_ticks == 0
    if is_held and not (before.is_free and before.note.duration_ticks >= QUARTER):
        return
    offered = 0
    for group, arrival in _ways_to_arrival(context):
        count = 0
        for late, values in _late_ways(group, is_held=is_held):
            if _fits_late(group, late, values) and not (is_held and _clashes_when_held(context, late)):
                merit = -0.1 * offered - _SHORT * (len(group) == _FEWEST_NOTES)
                yield _late_figure(group, arrival, late, values, is_held=is_held, merit=merit)
                offered, count = offered + 1, count + 1
                if count == most_ways:
                    break


def _opens(context: Context) -> bool:
    """True where a player may set in anew: on a beat, at the start of a phrase, after a rest."""
    before = context.previous
    return context.strength >= 0.5 or context.is_phrase_start or (before is not None and before.gap_ticks > 0)


def _ways_to_arrival(context: Context) -> Iterator[tuple[list[Context], Context]]:
    """Two to eight notes from here without a rest, and the structural note that they lead to: a downbeat, or a note on
    a beat that is longer than they are."""
    group, longest, found = [context], context.note.duration_ticks, 0
    while len(group) <= _MOST_NOTES and found < _MOST_ARRIVALS:
        last = group[-1]
        arrival = last.next
        if last.gap_ticks or arrival is None:
            return
        if arrival.note.onset_ticks - context.note.onset_ticks > _LONGEST_TICKS:
            return
        length = arrival.note.duration_ticks
        is_structural = arrival.strength == 1.0 or (arrival.strength >= 0.5 and length > longest)
        if len(group) >= _FEWEST_NOTES and is_structural and length >= EIGHTH:
            yield list(group), arrival
            found += 1
        if not arrival.is_free or arrival.is_phrase_start:
            return
        group.append(arrival)
        longest = max(longest, length)


def _late_ways(group: Sequence[Context], *, is_held: bool) -> Iterator[Way]:
    """Ways to start late and be in time at the end, those first that suit the tempo."""
    values = tuple(member.note.duration_ticks for member in group)
    tempo = group[0].setting.quarters_per_minute
    ways: Sequence[Iterator[Way]]
    if tempo > _QUICK_ABOVE:
        ways = (_shifted(values),)
    elif tempo < BALLAD_BELOW:
        ways = (_as_triplets(group, values), _halved(group, values, is_held), _squeezed(values), _shifted(values))
    else:
        ways = (_shifted(values), _as_triplets(group, values), _squeezed(values), _halved(group, values, is_held))
    shortest = max(group[0].setting.shortest_ticks, SIXTEENTH)
    for way in ways:
        yield from (found for found in way if min(found[1]) >= shortest)


def _shifted(values: tuple[int, ...]) -> Iterator[Way]:
    """All an eighth late; the last note gives the time back."""
    if values[-1] >= QUARTER and not any(value % SIXTEENTH for value in values):
        yield EIGHTH, (*values[:-1], values[-1] - EIGHTH)


def _squeezed(values: tuple[int, ...]) -> Iterator[Way]:
    """All late; the last notes, at half their value, give the time back."""
    for late in (QUARTER, EIGHTH):
        for count in range(2, len(values)):
            last = values[-count:]
            if sum(last) >= 2 * late:
                if sum(last) == 2 * late and not any(value % EIGHTH for value in values):
                    yield late, (*values[:-count], *(value // 2 for value in last))
                break


def _halved(group: Sequence[Context], values: tuple[int, ...], is_held: bool) -> Iterator[Way]:
    """All at half their value."""
    late = sum(values) // 2
    is_delay = not is_held and len(values) <= 4
    if is_delay or late not in _LATE_NAMES or any(value % EIGHTH for value in values):
        return
    if group[0].strength_at(group[0].note.onset_ticks + late) >= _PLAIN_START:
        yield late, tuple(value // 2 for value in values)


def _as_triplets(group: Sequence[Context], values: tuple[int, ...]) -> Iterator[Way]:
    """Three or six equal notes in the time of two or four."""
    first, value = group[0], values[0]
    if len(values) % 3 or len(set(values)) > 1 or value not in (EIGHTH, QUARTER) or first.bar.metre.is_compound:
        return
    late = len(values) * value // 3
    onset = first.note.onset_ticks + late
    if late in _LATE_NAMES and first.strength_at(onset) >= (0.5 if value == EIGHTH else 0.75):
        yield late, (2 * value // 3,) * len(values)


def _fits_late(group: Sequence[Context], late: int, values: Sequence[int]) -> bool:
    """No note of a quarter or more stands out of the chord that has come in meanwhile."""
    onset = group[0].note.onset_ticks + late
    for member, value in zip(group, values, strict=True):
        if value >= QUARTER and not _belongs(member, onset):
            return False
        onset += value
    return True


def _belongs(member: Context, onset_ticks: int) -> bool:
    """True when a note that comes at another time belongs to the chord there, or the chord is still its own."""
    span = member.tune.chord_at(onset_ticks)
    chord = span.chord if span else None
    return chord is None or chord == member.chord or member.midi % 12 in chord.pitch_classes


def _clashes_when_held(context: Context, late: int) -> bool:
    """True when the note before, held into this note's place, neither belongs there nor leads on by step."""
    assert context.previous is not None
    chord, held = context.chord, context.previous.midi
    belongs = chord is None or held % 12 in chord.pitch_classes
    leads = late <= QUARTER and 1 <= abs(held - context.midi) <= 2
    return not (belongs or leads)


def _late_figure(
    group: Sequence[Context], arrival: Context, late: int, values: Sequence[int], *, is_held: bool, merit: float
) -> Figure:
    first, onset = group[0], group[0].note.onset_ticks
    before = first.previous if is_held else None
    notes = []
    if before is not None:
        notes.append(FigureNote(onset, late, before.note.pitch, before.index, joins=True))
    onset += late
    for member, value in zip(group, values, strict=True):
        notes.append(FigureNote(onset, value, member.note.pitch, member.index))
        onset += value
    members = tuple(member.index for member in group)
    why = message("back-phrasing-why", count=len(group), late=_LATE_NAMES[late], held=is_held, where=arrival.where)
    return Figure(
        "back-phrasing",
        members if before is None else (before.index, *members),
        head(first.index) if before is None else tail(before.index),
        tail(members[-1]),
        first.note.onset_ticks,
        onset,
        notes=tuple(notes),
        why=why,
        merit=merit,
    )


# Early ------------------------------------------------------------------------------------------------------------


def _phrase_ahead(context: Context) -> Iterator[Figure]:
    """Two to eight notes come early; the last of them, a longer note, is held from there."""
    before = context.previous
    if before is None or not (context.is_free and context.begins_word) or context.strength < 0.5:
        return
    early, most = _earliness(context)
    if before.midi == context.midi or before.reach_ticks < 2 * early or not before.is_free:
        return
    if before.gap_ticks < early and before.note.duration_ticks < 2 * early:
        return
    group, longest = [context], context.note.duration_ticks
    while len(group) < most and group[-1].gap_ticks == 0 and (following := group[-1].next) is not None:
        if not following.is_free or following.is_phrase_start:
            return
        group.append(following)
        length = following.note.duration_ticks
        if following.strength >= 0.5 and length > longest and length >= QUARTER:
            is_even = all(member.note.duration_ticks % SIXTEENTH == 0 for member in group)
            if is_even and (not following.next or following.next.begins_word):
                yield _early_figure(group, early)
            return
        longest = max(longest, length)


def _earliness(context: Context) -> tuple[int, int]:
    """How early, and of how many notes at most: an eighth where it swings or is quick, else a sixteenth."""
    setting = context.setting
    if setting.feel == "swing" or setting.quarters_per_minute >= 110.0:
        return EIGHTH, _MOST_NOTES
    return SIXTEENTH, 4


def _early_figure(group: Sequence[Context], early: int) -> Figure:
    first, last = group[0], group[-1]
    assert first.previous is not None
    notes = [
        FigureNote(member.note.onset_ticks - early, member.note.duration_ticks, member.note.pitch, member.index)
        for member in group[:-1]
    ]
    held = last.note.onset_ticks
    notes.append(FigureNote(held - early, early, last.note.pitch, last.index, joins=True))
    return Figure(
        "phrase-ahead",
        tuple(member.index for member in group),
        tail(first.previous.index),
        head(last.index),
        first.note.onset_ticks - early,
        held,
        notes=tuple(notes),
        why=message(
            "phrase-ahead-why",
            count=len(group),
            value="eighth" if early == EIGHTH else "sixteenth",
            where=last.where,
        ),
    )


# Another octave ---------------------------------------------------------------------------------------------------


def _octave_phrase(context: Context) -> Iterator[Figure]:
    """Notes that repeat or answer what was just heard, in another octave."""
    segment = _segment(context)
    if not segment:
        return
    found = _heard_before(segment)
    if found is None:
        return
    model, kind = found
    for place, octaves in enumerate((1, -1)):
        if _is_near(segment, 12 * octaves) and not (octaves < 0 and _reaches_up(segment)):
            notes = tuple(
                FigureNote(
                    member.note.onset_ticks,
                    member.note.duration_ticks,
                    Pitch(member.note.pitch.step + 7 * octaves, member.note.pitch.alter),
                    member.index,
                )
                for member in segment
            )
            bar = context.tune.position_at(model.note.onset_ticks).bar_message
            yield Figure(
                "octave-phrase",
                tuple(member.index for member in segment),
                head(context.index),
                tail(segment[-1].index),
                context.note.onset_ticks,
                segment[-1].note.end_ticks,
                notes=notes,
                why=message("octave-phrase-why", bar=bar, kind=kind, direction="up" if octaves > 0 else "down"),
                merit=-0.1 * place
                - 0.2 * (kind == "answer")
                - _SHORT * (len(segment) == _FEWEST_IN_OCTAVE)
                - _UNEASY * (not _is_easy(segment, 12 * octaves)),
            )


def _reaches_up(segment: Sequence[Context]) -> bool:
    """True where the tune is near its height: there it does not go down."""
    highest = max(note.pitch.midi for note in segment[0].tune.notes)
    return max(member.midi for member in segment) >= highest - _NEAR_THE_TOP


def _segment(context: Context) -> list[Context]:
    """The notes from here to the next rest or longer note, where a rest, a longer note or the phrase's start goes before;
    empty where that is no gesture of three to eight notes."""
    before = context.previous
    if before is None or not (context.is_phrase_start or _closes(before)):
        return []
    segment = [context]
    while not (len(segment) >= _FEWEST_IN_OCTAVE and _closes(segment[-1])):
        following = segment[-1].next
        if following is None or segment[-1].is_phrase_end or len(segment) == _MOST_NOTES:
            break
        segment.append(following)
    is_whole = len(segment) >= _FEWEST_IN_OCTAVE and (segment[-1].is_phrase_end or _closes(segment[-1]))
    span = segment[-1].note.end_ticks - context.note.onset_ticks
    return segment if is_whole and span <= _LONGEST_TICKS and all(member.is_free for member in segment) else []


def _closes(context: Context) -> bool:
    return context.gap_ticks >= EIGHTH or context.note.duration_ticks >= _DOTTED_QUARTER


def _heard_before(segment: Sequence[Context]) -> tuple[Context, str] | None:
    """Where the gesture was heard before, and whether it comes again as it was, on other notes, or is answered by one
    of the same rhythm directly after it."""
    rhythm, moves = _shape(segment)
    count, first = len(segment), segment[0]
    start = first.previous
    for _ in range(count - 1):
        start = start.previous if start else None
    is_next = True
    while start is not None and first.note.onset_ticks - start.note.onset_ticks <= _LOOKED_BACK_TICKS:
        if start.note.duration_ticks == first.note.duration_ticks:
            other = [start]
            while len(other) < count and (following := other[-1].next) is not None:
                other.append(following)
            other_rhythm, other_moves = _shape(other)
            if other_rhythm == rhythm and other_moves == moves:
                return start, "repeat" if start.midi == first.midi else "sequence"
            if is_next and other_rhythm == rhythm:
                return start, "answer"
        is_next = False
        start = start.previous
    return None


def _shape(segment: Sequence[Context]) -> tuple[list[int], list[int]]:
    """Times between attacks, and semitones between notes."""
    times = [b.note.onset_ticks - a.note.onset_ticks for a, b in pairwise(segment)]
    return times, [b.midi - a.midi for a, b in pairwise(segment)]


def _is_near(segment: Sequence[Context], semitones: int) -> bool:
    """True when the notes are entered and left by an octave at most."""
    before, after = segment[0].previous, segment[-1].next
    into = abs(segment[0].midi + semitones - before.midi) if before else 1
    out = abs(after.midi - segment[-1].midi - semitones) if after else 1
    return 0 < into <= 12 and 0 < out <= 12


def _is_easy(segment: Sequence[Context], semitones: int) -> bool:
    """True when the notes lie in the instrument's comfortable range there."""
    instrument = segment[0].setting.instrument
    low, high = instrument.comfortable_low, instrument.comfortable_high
    shift = semitones + instrument.transposition.semitones
    return all(low.midi <= member.midi + shift <= high.midi for member in segment)


BACK_PHRASING = Technique(
    id="back-phrasing",
    family=PARAPHRASES.id,
    level=3,
    find=_back_phrasing,
    realisations=_back_phrased_by_players,
)

PHRASE_AHEAD = Technique(id="phrase-ahead", family=PARAPHRASES.id, level=3, find=_phrase_ahead)

OCTAVE_PHRASE = Technique(id="octave-phrase", family=PARAPHRASES.id, level=3, find=_octave_phrase)

TECHNIQUES = (BACK_PHRASING, PHRASE_AHEAD, OCTAVE_PHRASE)
