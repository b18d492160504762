"""Approach notes: real notes that aim at the next melody note from close by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fioritura.techniques.context import Context
from fioritura.techniques.definition import STEP_SEMITONES, Definition, Group, is_step
from fioritura.techniques.families import APPROACHES
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.pitch import Pitch
from fioritura.words import Message, message

_LEAP_SEMITONES = 3
_WIDEST_SEMITONES = 9
"""The widest leap to an approach note; from further off the ear hears another voice (common practice)."""


def _aimed(technique: str, context: Context, pitches: Sequence[Pitch], why: Message) -> Iterator[Figure]:
    """Equal eighths or sixteenths off the end of this note, which keeps at least half its time."""
    if abs(pitches[0].midi - context.midi) > _WIDEST_SEMITONES:
        return
    count = len(pitches)
    available = max(context.note.duration_ticks // 2, context.gap_ticks)
    for value in (EIGHTH, SIXTEENTH):
        end = context.note.onset_ticks + context.reach_ticks
        on_grid = context.beat_offset(end - count * value) % value == 0
        if count * value <= available and value >= context.setting.shortest_ticks and on_grid:
            yield before_next(technique, context, pitches, [value] * count, why)
            return


def _has_target(context: Context) -> bool:
    following = context.next
    return following is not None and context.is_free and following.is_free and following.strength >= 0.5


def _from_below(context: Context) -> Iterator[Figure]:
    leaps = abs(context.interval_out or 0) >= _LEAP_SEMITONES
    if _has_target(context) and context.next and context.next.is_led_to and leaps:
        pitch = context.next.leading_note
        yield from _aimed("approach-note", context, [pitch], message("approach-note-why"))


def _two_semitones(context: Context) -> Iterator[Figure]:
    if not (_has_target(context) and context.next):
        return
    out = context.interval_out or 0
    if out >= 4 or out <= -1:
        pitches = [context.next.key.spell(context.next.midi - 2, "up"), context.next.leading_note]
        why = message("approach-chromatic-why", direction="up")
        yield from _aimed("approach-chromatic", context, pitches, why)
    if out <= -4 or out >= 1:
        pitches = [context.next.key.spell(context.next.midi + 2, "down"), context.next.semitones(1)]
        why = message("approach-chromatic-why", direction="down")
        yield from _aimed("approach-chromatic", context, pitches, why)


def _surround(context: Context) -> Iterator[Figure]:
    if not (_has_target(context) and context.next and context.next.is_led_to):
        return
    above, below = context.next.step_above, context.next.leading_note
    if above is None:
        return
    if context.midi != above.midi:
        why = message("surround-why", first="above")
        yield from _aimed("surround", context, [above, below], why)
    if context.midi != below.midi:
        why = message("surround-why", first="below")
        yield from _aimed("surround", context, [below, above], why)


def _enclosure(context: Context) -> Iterator[Figure]:
    """Three or four notes that close in on a structural note from both sides."""
    target = context.next
    if not (_has_target(context) and target and target.is_led_to and _is_structural(target)):
        return
    above, below = target.step_above, target.leading_note
    if above is None:
        return
    high = target.semitones(1)
    low = target.key.spell(target.midi - 2, "up")
    is_whole = above.midi - target.midi == 2
    ways: list[tuple[str, list[Pitch]]] = [("below", [low, below, above])]
    if is_whole:
        ways = [("above-four", [above, high, low, below]), ("above", [above, high, below]), *ways]
    for order, pitches in ways:
        if pitches[0].midi != context.midi and pitches[-1].midi != target.midi:
            why = message("enclosure-why", order=order, where=target.where)
            value = _enclosing_ticks(context, len(pitches))
            if value and abs(pitches[0].midi - context.midi) <= _WIDEST_SEMITONES:
                yield before_next("enclosure", context, pitches, [value] * len(pitches), why)


def _enclosing_ticks(context: Context, count: int) -> int:
    """Eighths, or one beat's triplet or sixteenths, off the end of a note that keeps half its time; 0 where it can't."""
    end = context.note.onset_ticks + context.reach_ticks
    available = max(context.note.duration_ticks // 2, context.gap_ticks)
    for value in (EIGHTH, QUARTER // count):
        fits = count * value <= available and value >= context.setting.shortest_ticks
        is_triplet = value not in (EIGHTH, SIXTEENTH)
        if fits and context.beat_offset(end - count * value) % (QUARTER if is_triplet else value) == 0:
            return 0 if is_triplet and context.bar.metre.is_compound else value
    return 0


def _is_structural(target: Context) -> bool:
    """A chord note on the first beat or the half-bar, or the third or seventh of a new chord, that has time."""
    is_goal = target.strength >= 0.75 or target.is_guide_tone_at_change
    return is_goal and target.is_chord_tone and target.note.duration_ticks >= QUARTER


def _is_approach(g: Group) -> bool:
    return g.is_between and len(g.inner) == 1 and abs(g.moves[0]) > STEP_SEMITONES and g.moves[1] == 1


def _are_two_semitones(g: Group) -> bool:
    return g.around(g.after) in ((-2, -1), (2, 1))


def _closes_in(g: Group) -> bool:
    found = g.around(g.after)
    return len(found) == 2 and is_step(found[0]) and is_step(found[1]) and found[0] * found[1] < 0


def _encloses(g: Group) -> bool:
    return g.around(g.after) in ((2, 1, -1), (2, 1, -2, -1), (-2, -1, 2), (-2, -1, 1))


APPROACH_NOTE = Technique(
    id="approach-note",
    family=APPROACHES.id,
    level=3,
    find=_from_below,
    definition=Definition(_is_approach, breadth=260),
    side="below",
)

APPROACH_CHROMATIC = Technique(
    id="approach-chromatic",
    family=APPROACHES.id,
    level=4,
    find=_two_semitones,
    definition=Definition(_are_two_semitones, breadth=200),
)

SURROUND = Technique(
    id="surround",
    family=APPROACHES.id,
    level=4,
    find=_surround,
    definition=Definition(_closes_in, breadth=190),
)

ENCLOSURE = Technique(
    id="enclosure",
    family=APPROACHES.id,
    level=4,
    find=_enclosure,
    definition=Definition(_encloses, breadth=185),
)

TECHNIQUES = (APPROACH_NOTE, APPROACH_CHROMATIC, SURROUND, ENCLOSURE)
