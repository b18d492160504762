"""A place: one plain note with everything that a technique may ask about it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import Final

from fioritura.phrase import Phrase, phrases
from fioritura.players.setting import Setting
from fioritura.theory.chord import Chord
from fioritura.theory.key import Direction, Key
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH, THIRTYSECOND
from fioritura.theory.pitch import Pitch
from fioritura.theory.scale import Scale, chord_scale, key_scale, other_scales, pentatonic
from fioritura.theory.spelling import is_plain_in
from fioritura.tune import Bar, Note, Tune
from fioritura.words import Message, message

__all__ = ["Context", "contexts", "spelled"]


_LONGEST_SYLLABLE: Final = 8
"""Notes that one syllable may be sung on."""


class Context:
    """One plain note in its surroundings. Built once a tune by `places`; read, never changed, afterwards.

    Intervals are in semitones, positive upwards. `reach_ticks` is the time from this note's attack to the next
    note's (to the end of the tune for the last), `gap_ticks` the rest within it. `is_free` is False for a note that
    the file itself has ornamented.
    """

    def __init__(
        self, tune: Tune, setting: Setting, index: int, phrase: Phrase, scale: Scale, five: Scale, chord: Chord | None
    ) -> None:
        note = tune.notes[index]
        self.tune = tune
        self.setting = setting
        self.index = index
        self.note: Note = note
        self.midi: int = note.pitch.midi
        self.phrase = phrase
        self.bar: Bar = tune.bar_at(note.onset_ticks)
        self.key: Key = self.bar.key
        self.chord = chord
        self.scale = scale
        self.pentatonic = five
        self.is_free: bool = not note.is_ornamented
        self.strength: float = self.strength_at(note.onset_ticks)
        stop = tune.notes[index + 1].onset_ticks if index + 1 < len(tune.notes) else tune.duration_ticks
        self.reach_ticks: int = max(stop - note.onset_ticks, note.duration_ticks)
        self.gap_ticks: int = self.reach_ticks - note.duration_ticks
        self.previous: Context | None = None
        self.next: Context | None = None

    def strength_at(self, ticks: int) -> float:
        """Metrical weight of a time near the place (see `Tune.strength_at`)."""
        bar = self.bar
        if bar.start_ticks <= ticks < bar.end_ticks:
            return bar.metre.strength(ticks - bar.start_ticks + bar.metre_offset_ticks)
        return self.tune.strength_at(ticks)

    @property
    def interval_in(self) -> int | None:
        """From the note before to this one, or None at the start."""
        return self.midi - self.previous.midi if self.previous else None

    @property
    def interval_out(self) -> int | None:
        """From this note to the next, or None at the end."""
        return self.next.midi - self.midi if self.next else None

    @property
    def is_phrase_start(self) -> bool:
        """True for the first note of a phrase."""
        return self.index == self.phrase.first

    @property
    def is_phrase_end(self) -> bool:
        """True for the last note of a phrase."""
        return self.index == self.phrase.last

    @property
    def is_peak(self) -> bool:
        """True for a note higher than both its neighbours, or a last one higher than the note before."""
        return (self.interval_in or 0) > 0 and (self.interval_out is None or self.interval_out < 0)

    @property
    def is_chord_tone(self) -> bool:
        """True when the note belongs to the chord; also where there is no chord."""
        return self.chord is None or self.midi % 12 in self.chord.pitch_classes

    @property
    def is_guide_tone_at_change(self) -> bool:
        """True when the note is the third or seventh of a chord that was not there under the note before."""
        if self.chord is None or self.previous is None or self.previous.chord == self.chord:
            return False
        return any(self.midi % 12 == tone.pitch_class for tone in self.chord.guide_tones)

    @property
    def is_syncopated(self) -> bool:
        """True when the note begins off the beat and is held over one."""
        if self.strength >= 0.5:
            return False
        beat = self.note.onset_ticks - self.beat_offset(self.note.onset_ticks)
        later = range(beat + SIXTEENTH, self.note.end_ticks, SIXTEENTH)
        return any(ticks > self.note.onset_ticks and self.strength_at(ticks) >= 0.5 for ticks in later)

    def harmony_at(self, ticks: int) -> tuple[Chord | None, Scale]:
        """The chord at a time, if there is one, and the scale that suits it in the key of this place."""
        span = self.tune.chord_at(ticks)
        chord = span.chord if span else None
        return chord, chord_scale(chord, self.key)

    @cached_property
    def ending(self) -> Context:
        """The same place under the chord that is in force when the next note comes: a long note may outlast its own."""
        chord, scale = self.harmony_at(self.note.onset_ticks + self.reach_ticks - 1)
        if chord == self.chord:
            return self
        later = Context(self.tune, self.setting, self.index, self.phrase, scale, pentatonic(chord, self.key), chord)
        later.previous, later.next = self.previous, self.next
        return later

    @property
    def begins_word(self) -> bool:
        """False for a note that goes on with a word, or with a syllable, of the note before."""
        sung = self.previous
        while sung and not sung.note.lyric and self.index - sung.index < _LONGEST_SYLLABLE:
            sung = sung.previous
        if sung is None or not sung.note.lyric:
            return True
        return bool(self.note.lyric) and not sung.note.lyric.endswith("-")

    @property
    def follows_directly(self) -> bool:
        """True when the note before lasts up to this one."""
        return self.previous is not None and self.previous.gap_ticks == 0

    @property
    def leads_directly(self) -> bool:
        """True when this note lasts up to the next one."""
        return self.next is not None and self.gap_ticks == 0

    @cached_property
    def step_above(self) -> Pitch | None:
        """The scale step above, on the next letter and a semitone or a whole tone away; None where there is none."""
        return next(iter(self.steps(1)), None)

    @cached_property
    def step_below(self) -> Pitch | None:
        """The scale step below, on the letter before and a semitone or a whole tone away; None where there is none."""
        return next(iter(self.steps(-1)), None)

    def steps(self, count: int, end: Pitch | None = None) -> tuple[Pitch, ...]:
        """So many steps up (down when negative) in the first of `scales` that has them all; empty where none has.

        A scale counts only where it holds the note itself, and, where given, the `end` as the note after the steps.
        Last comes the key with the letters of note and `end` as they are.
        """
        direction = 1 if count > 0 else -1
        for scale in self.scales:
            found = scale.walk(self.note.pitch, count + direction * (end is not None))
            if found and self._is_read(found, end):
                return found[: abs(count)]
        found = tuple(self.key.step(self.note.pitch, direction * n) for n in range(1, abs(count) + 1))
        line = (self.note.pitch, *found, *([end] if end else ()))
        walks = all(1 <= (after.midi - before.midi) * direction <= 2 for before, after in pairwise(line))
        return found if walks and (end is None or line[-2].step + direction == end.step) else ()

    def _is_read(self, found: Sequence[Pitch], end: Pitch | None) -> bool:
        own = found if end is None else found[:-1]
        is_there = end is None or found[-1] == end
        return is_there and all(is_plain_in(pitch, self.key, self.chord) for pitch in own)

    @cached_property
    def scales(self) -> tuple[Scale, ...]:
        """The scales in which the note may move, first choice first: the chord's, the key's, others of the chord."""
        return (self.scale, key_scale(self.key), *other_scales(self.chord, self.key))

    @property
    def is_led_to(self) -> bool:
        """True where the idiom leads up to the note by semitone: anywhere in jazz; in folk only where the semitone below
        is the scale's own (98 % of the graces in open ABC books are notes of the key)."""
        return self.setting.tradition != "folk" or (
            self.step_below is not None and self.midi - self.step_below.midi == 1
        )

    @cached_property
    def where(self) -> Message:
        """Where the note stands in its bar: "on the downbeat", "on the off-beat after 2"."""
        return self.tune.position_at(self.note.onset_ticks).message

    @property
    def height(self) -> str:
        """How the note stands out from its neighbours, as a keyword of texts: ``peak``, ``last`` for a last note higher
        than the one before, else ``plain``."""
        return ("peak" if self.next else "last") if self.is_peak else "plain"

    @cached_property
    def note_there(self) -> Message:
        """The note, to be put into a reason: "the note on beat 3, higher than its neighbours,"."""
        return message("note-there", where=self.where, height=self.height)

    @cached_property
    def leading_note(self) -> Pitch:
        """The semitone below, spelled as it leads up: on the letter before where it reads well."""
        below = Pitch(self.note.pitch.step - 1)
        pitch = Pitch(below.step, self.midi - 1 - below.midi)
        return pitch if is_plain_in(pitch, self.key, self.chord) else self.semitones(-1)

    def semitones(self, count: int, leading: Direction | None = None) -> Pitch:
        """The pitch `count` semitones away, spelled by chord, key or the direction in which it leads."""
        direction = leading or ("up" if count < 0 else "down")
        return self.spell(self.midi + count, direction)

    def spell(self, midi: int, direction: Direction) -> Pitch:
        """Spell a note for this place: as the chord has it, else the chord's scale, else the key and direction."""
        return spelled(self.chord, self.scale, self.key, midi, direction)

    def beat_offset(self, ticks: int) -> int:
        """How far a time lies behind the last beat of its bar, in ticks."""
        bar = self.bar if self.bar.start_ticks <= ticks < self.bar.end_ticks else self.tune.bar_at(ticks)
        offset = ticks - bar.start_ticks + bar.metre_offset_ticks
        for length in bar.metre.groups_ticks:
            if offset < length:
                return offset
            offset -= length
        return offset % bar.metre.beat_ticks

    @property
    def _takes_triplets(self) -> bool:
        return not (self.bar.metre.is_compound or self.setting.is_even)

    def even_value(self, count: int, available_ticks: int, end_ticks: int) -> int | None:
        """The longest good note value for `count` equal quick notes that end at `end_ticks`, or None.

        Values are an eighth down to a thirty-second, and triplets, quintuplets, sextuplets and septuplets where
        the group fills a whole beat or half of one, so that it reads well; none is shorter than the player's level
        allows at the tempo. Straight eighths of a medium tempo take no triplets.
        """
        shortest = self.setting.shortest_ticks
        for value in _VALUES_TICKS:
            total = count * value
            if value < shortest:
                return None
            if total > available_ticks:
                continue
            offset = self.beat_offset(end_ticks - total)
            if value in _PLAIN_VALUES_TICKS:
                if offset % value == 0:
                    return value
            elif total in (EIGHTH, QUARTER) and offset % total == 0 and self._takes_triplets:
                return value
        return None


@lru_cache(maxsize=16384)
def spelled(chord: Chord | None, scale: Scale, key: Key, midi: int, direction: Direction) -> Pitch:
    """The spelling of a note: as a chord has it, else its scale, else the key and the direction in which it leads.

    Examples:
        >>> from fioritura.theory.chord_symbol import read_chord
        >>> chord, key = read_chord("Ab7"), Key.of("C")
        >>> str(spelled(chord, chord_scale(chord, key), key, 66, "up"))
        'Gb4'
    """
    for source in (chord.tones if chord else (), scale.names):
        for name in source:
            if name.pitch_class == midi % 12 and abs(name.alter) <= 1:
                pitch = Pitch(name.letter + 7 * (midi // 12 - 1), name.alter)
                return Pitch(pitch.step + 7 * ((midi - pitch.midi) // 12), pitch.alter)
    return key.spell(midi, direction)


_PLAIN_VALUES_TICKS: Final = frozenset({EIGHTH, SIXTEENTH, THIRTYSECOND})
_VALUES_TICKS: Final = (EIGHTH, QUARTER // 3, SIXTEENTH, QUARTER // 5, QUARTER // 6, QUARTER // 7, THIRTYSECOND)


def contexts(tune: Tune, setting: Setting) -> tuple[Context, ...]:
    """A place for each plain note, linked to its neighbours.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> places = contexts(tune, fioritura.Setting().on(tune))
        >>> len(places) == len(tune.notes), places[1].interval_out, places[2].is_peak
        (True, 3, True)
    """
    found: list[Context] = []
    of_note: dict[int, Phrase] = {}
    for phrase in phrases(tune):
        of_note.update((index, phrase) for index in range(phrase.first, phrase.last + 1))
    for index, note in enumerate(tune.notes):
        span = tune.chord_at(note.onset_ticks)
        chord = span.chord if span else None
        key = tune.bar_at(note.onset_ticks).key
        scale = chord_scale(chord, key)
        found.append(Context(tune, setting, index, of_note[index], scale, pentatonic(chord, key), chord))
    _link(found)
    return tuple(found)


def _link(found: Sequence[Context]) -> None:
    for before, after in pairwise(found):
        before.next, after.previous = after, before
