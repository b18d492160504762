"""Find every figure that a tune offers, and refuse those that would not do on paper or on the instrument."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.reading import legible
from fioritura.techniques.technique import Technique

__all__ = ["find_at", "find_figures", "is_sound"]

_WIDEST_LEAP_SEMITONES = 12
_TOLERANCE = 1.001

Heard = tuple[int, bool, float]
"""A note in playing order: MIDI number, whether the figure added it, and seconds to the next attack."""


_FEW_ANCHORS: Final = 2
"""Figures over more notes than that may be offered from two places."""


def find_figures(contexts: Sequence[Context], techniques: Sequence[Technique]) -> list[tuple[Context, Figure]]:
    """All sound figures of the techniques, in order of place, each with the place that offered it first.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> from fioritura.techniques.context import contexts
        >>> from fioritura.techniques.turn import TURN
        >>> {figure.technique for _, figure in find_figures(contexts(tune, setting), [TURN])}
        {'turn'}
    """
    found: list[tuple[Context, Figure]] = []
    reaching: set[str] = set()
    for context in contexts:
        for figure in find_at(context, techniques):
            if len(figure.anchors) > _FEW_ANCHORS:
                if figure.id in reaching:
                    continue
                reaching.add(figure.id)
            found.append((context, figure))
    return found


def find_at(context: Context, techniques: Sequence[Technique]) -> Iterator[Figure]:
    """The sound figures at one place, spelled so that a player reads them without surprise.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[3]
        >>> from fioritura.techniques.grace import LOWER_GRACE_SEMITONE
        >>> [str(figure.graces[0]) for figure in find_at(place, [LOWER_GRACE_SEMITONE])]
        ['G#4']
    """
    for technique in techniques:
        for figure in technique.find(context):
            if is_sound(figure, context, technique) and (read := legible(figure, context)):
                yield read


def is_sound(figure: Figure, context: Context, technique: Technique) -> bool:
    """True when the figure can be played and read: in range, within what the player's fingers and tongue can do at
    the tempo, no note doubled by accident, no leap wider than an octave, no note that the file has ornamented, and not
    from one ending of a repeat into another, which are never played in a row.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[2]
        >>> from fioritura.techniques.grace import LOWER_GRACE_SEMITONE
        >>> from fioritura.techniques.technique import with_graces
        >>> from fioritura.words import verbatim
        >>> far = with_graces("kick", place, [place.semitones(-24)], verbatim(""))
        >>> is_sound(far, place, LOWER_GRACE_SEMITONE)
        False
    """
    if not (figure.notes or figure.graces):
        return True
    if not _is_free(figure, context) or _goes_into_another_ending(figure, context):
        return False
    player = context.setting.player
    limits = player.slurred_sec
    low, high = player.instrument.lowest_midi, player.instrument.highest_midi
    heard = _heard(figure, context)
    midi, is_added, seconds = heard[0]
    if not low <= midi <= high:
        return False
    for next_midi, next_is_added, next_seconds in heard[1:]:
        if not low <= next_midi <= high:
            return False
        if is_added or next_is_added:
            if midi == next_midi and not technique.repeats_pitch:
                return False
            if abs(midi - next_midi) > _WIDEST_LEAP_SEMITONES:
                return False
        if seconds * _TOLERANCE < limits[midi][next_midi]:
            return False
        midi, is_added, seconds = next_midi, next_is_added, next_seconds
    return True


def _is_free(figure: Figure, context: Context) -> bool:
    """No claimed note has an ornament of the file's own."""
    first, last = figure.first_slot // 2, figure.last_slot // 2
    while context.index > first and context.previous is not None:
        context = context.previous
    while context.index <= last:
        if not context.is_free:
            return False
        if context.next is None:
            return True
        context = context.next
    return True


def _goes_into_another_ending(figure: Figure, context: Context) -> bool:
    first, last = figure.first_slot // 2, figure.last_slot // 2
    if first == last:
        return False
    notes, bar_at = context.tune.notes, context.tune.bar_at
    left, entered = bar_at(notes[first].onset_ticks).endings, bar_at(notes[last].onset_ticks).endings
    return bool(left and entered and left != entered)


def _heard(figure: Figure, context: Context) -> list[Heard]:
    """The note before the figure, its own notes, and the note after it.

    Folk players lean again on the note that they come from (94 % of the graces after a falling step lie above, in
    3,050 graces of open ABC books), so there the note before a grace does not count.
    """
    if figure.graces:
        found: list[Heard] = []
        if context.previous is not None and context.setting.tradition != "folk":
            found.append((context.previous.midi, False, inf))
        found += [(pitch.midi, True, inf) for pitch in figure.graces]
        found.append((context.midi, False, inf))
        return found
    notes, seconds = context.tune.notes, context.setting.seconds
    first, last = figure.first_slot // 2, figure.last_slot // 2
    before = first if notes[first].onset_ticks < figure.start_ticks else first - 1
    left = seconds(figure.start_ticks - notes[before].onset_ticks) if before == first else inf
    found = [(notes[before].pitch.midi, False, left)] if before >= 0 else []
    found += [(note.pitch.midi, note.anchor is None, seconds(note.duration_ticks)) for note in figure.notes]
    after = last if notes[last].end_ticks > figure.end_ticks else last + 1
    if after < len(notes):
        found.append((notes[after].pitch.midi, False, inf))
    return found
