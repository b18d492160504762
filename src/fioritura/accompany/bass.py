"""The bass: walking where the feel walks, in two where the form asks for it, else patterns of chord tones that lead to
each next root; a pedal on the key's fifth before a climax.

Signs of a bass pattern: ``R`` root (or the note under the stroke), ``3`` ``5`` ``7`` chord tones, ``8`` the octave,
``A`` an approach to the next root (the fifth where the root stays). The first note under a chord is always its root, but
over a pedal.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import groupby
from typing import Final

from fioritura.accompany.form import USUAL_ENERGY, BassMode, Form
from fioritura.accompany.grid import Dealer, Hit, fitted, hits, weights_for
from fioritura.accompany.harmony import Beat, Changes, bass_class, beat_lengths, beats_of, scale_classes
from fioritura.accompany.part import BandNote
from fioritura.accompany.walking import HIGHEST, LOWEST, walk
from fioritura.chance import Chance
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Bar

__all__ = ["BassStyle", "bass_notes"]

ROOT_HIGHEST: Final = 45
"""A2: above it patterns take their roots an octave lower."""

WALKING_LOUDNESS: Final = 0.78
SKIP_LOUDNESS: Final = 0.5
FINAL_LOUDNESS: Final = 0.9
PEDAL_LOUDNESS: Final = 0.8
_LIFT: Final = 8.0
"""Semitones by which a walking bass lies higher at full energy than at none."""

HELD_SHARE: Final = 0.94


@dataclass(frozen=True, slots=True)
class BassStyle:
    """How the bass plays a feel: walking, with skipped eighths at a probability, or patterns by beats in the bar; a
    walking one has its patterns for a chorus in two."""

    walks: bool = False
    skips: float = 0.0
    patterns: dict[int, tuple[str, ...]] = field(default_factory=dict)


def bass_notes(form: Form, style: BassStyle, chance: Chance) -> list[BandNote]:
    """The bass part from the count-in to the last chord."""
    player = _PatternPlayer(Changes(form.tune.chords), Dealer(chance.child("patterns")), style.patterns)
    line, skips = chance.child("line"), chance.child("skips")
    notes: list[BandNote] = []
    by_mode = groupby(((form.touch_at(bar).bass, index, bar) for index, bar in form.playing_bars()), lambda b: b[0])
    stretches = [(mode, [(index, bar) for _, index, bar in bars]) for mode, bars in by_mode]
    beats = beats_of(form) if style.walks else []
    for number, (mode, bars) in enumerate(stretches):
        if style.walks and mode == "four":
            inside = {index for index, _ in bars}
            final = _final_beat(form) if number + 1 == len(stretches) else []
            after = notes[-1].midi if notes else None
            own = [beat for beat in beats if beat.bar in inside]
            notes += _walked(form, own, final, style, line, skips, after)
            player.follow(notes[-1].midi if notes else None)
        else:
            notes += _patterned(form, [bar for _, bar in bars], player, mode)
    if not (style.walks and stretches and stretches[-1][0] == "four"):
        notes += _last_root(form, player)
    return [_as_loud(note, form) for note in notes]


def _as_loud(note: BandNote, form: Form) -> BandNote:
    touch = form.touch_at(form.tune.bar_at(note.onset_ticks))
    return replace(note, loudness=min(1.0, note.loudness * touch.loudness))


def _walked(
    form: Form,
    beats: Sequence[Beat],
    final: Sequence[Beat],
    style: BassStyle,
    chance: Chance,
    skips: Chance,
    after: int | None,
) -> list[BandNote]:
    """A stretch that is walked, and the last chord where it goes on to it."""
    energies = [form.touch_at(form.tune.bars[beat.bar]).energy for beat in beats]
    lifts = [round(_LIFT * (energy - USUAL_ENERGY)) for energy in energies] + [0] * len(final)
    line = walk([*beats, *final], chance, after=after, lifts=lifts)
    notes: list[BandNote] = []
    for number, (beat, midi) in enumerate(zip(beats, line, strict=False)):
        if midi is None:
            continue
        upcoming = line[number + 1] if number + 1 < len(line) else None
        loudness = WALKING_LOUDNESS * (1.04 if beat.number % 2 else 1.0)
        held = round(beat.duration_ticks * HELD_SHARE)
        if (
            beat.duration_ticks == QUARTER
            and upcoming is not None
            and skips.happens(style.skips * energies[number] / USUAL_ENERGY)
        ):
            notes.append(BandNote(beat.onset_ticks, EIGHTH, midi, loudness))
            skipped = midi if abs(midi - upcoming) > 2 else upcoming
            notes.append(BandNote(beat.onset_ticks + EIGHTH, EIGHTH // 2, skipped, SKIP_LOUDNESS))
        else:
            notes.append(BandNote(beat.onset_ticks, held, midi, loudness))
    for beat, midi in zip(final, line[len(beats) :], strict=True):
        if midi is not None and beat.chord is not None:
            root = _nearest(bass_class(beat.chord), midi)
            notes.append(BandNote(beat.onset_ticks, beat.duration_ticks, root, FINAL_LOUDNESS))
    return notes


def _nearest(pitch_class: int, midi: int) -> int:
    """The note of a pitch class on the instrument that lies nearest."""
    choices = (other for other in range(LOWEST, HIGHEST + 1) if other % 12 == pitch_class)
    return min(choices, key=lambda other: abs(other - midi))


def _final_beat(form: Form) -> list[Beat]:
    """The last chord as one long beat."""
    if form.final_ticks is None:
        return []
    chord = Changes(form.tune.chords).at(form.final_ticks)
    length, key = form.tune.duration_ticks - form.final_ticks, form.tune.bars[-1].key
    return [Beat(form.final_ticks, length, len(form.tune.bars) - 1, 0, chord, key, True, None)] if chord else []


def _patterned(form: Form, bars: Sequence[Bar], player: _PatternPlayer, mode: BassMode) -> list[BandNote]:
    """A stretch in patterns."""
    notes: list[BandNote] = []
    stop = form.tune.duration_ticks if form.final_ticks is None else form.final_ticks
    for bar in bars:
        played = player.bar(bar, form.touch_at(bar).energy, is_pedal=mode == "pedal")
        notes += (note for note in played if note.onset_ticks < stop)
    return notes


def _last_root(form: Form, player: _PatternPlayer) -> Iterator[BandNote]:
    for beat in _final_beat(form):
        if beat.chord:
            yield BandNote(beat.onset_ticks, beat.duration_ticks, player.root(beat.chord), FINAL_LOUDNESS)


class _PatternPlayer:
    """Plays patterns bar by bar and remembers the last root and note."""

    def __init__(self, changes: Changes, dealer: Dealer, patterns: dict[int, tuple[str, ...]]) -> None:
        self._changes = changes
        self._dealer = dealer
        self._patterns = patterns
        self._root = 36
        self._last = 36

    def follow(self, midi: int | None) -> None:
        """Go on from a note that was played otherwise."""
        if midi is not None:
            self._last = midi
            self._root = min(midi, ROOT_HIGHEST)

    def bar(self, bar: Bar, energy: float, *, is_pedal: bool = False) -> Iterator[BandNote]:
        """The notes of one bar, by how much the band gives."""
        beats = len(beat_lengths(bar.metre))
        known = beats if beats in self._patterns else max(self._patterns)
        choices = self._patterns[known]
        pattern = fitted(self._dealer.deal(choices, weights_for(choices, energy)), known, beats)
        if is_pedal:
            yield from self._pedal(bar, list(hits(pattern, bar.metre.bar_ticks)))
            return
        under: Chord | None = None
        for hit in self._with_changes(bar, list(hits(pattern, bar.metre.bar_ticks))):
            place = bar.start_ticks + hit.offset_ticks
            chord = self._changes.at(place)
            if chord is None or hit.offset_ticks >= bar.duration_ticks:
                continue
            sign = "R" if chord != under and (under is not None or hit.sign in "A") else hit.sign
            under = chord
            midi = self._pitch(sign, chord, bar.key, self._changes.at(self._next_place(bar, place)))
            loudness = 0.85 if sign in "R8" else 0.74
            yield BandNote(place, round(hit.duration_ticks * HELD_SHARE), midi, loudness)

    def _pedal(self, bar: Bar, found: list[Hit]) -> Iterator[BandNote]:
        """The key's fifth under all chords (common practice), in the rhythm of the pattern."""
        fifth = (bar.key.tonic.pitch_class + 7) % 12
        low = LOWEST + (fifth - LOWEST) % 12
        midi = min((low, low + 12), key=lambda each: abs(each - self._last))
        for hit in found:
            place = bar.start_ticks + hit.offset_ticks
            if hit.offset_ticks < bar.duration_ticks and self._changes.at(place) is not None:
                self._last = self._root = midi
                yield BandNote(place, round(hit.duration_ticks * HELD_SHARE), midi, PEDAL_LOUDNESS)

    def root(self, chord: Chord) -> int:
        """The chord's bass note near the last one, low on the instrument."""
        low = LOWEST + (bass_class(chord) - LOWEST) % 12
        choices = [midi for midi in (low, low + 12) if midi <= ROOT_HIGHEST]
        self._root = min(choices, key=lambda midi: abs(midi - self._root))
        return self._root

    def _with_changes(self, bar: Bar, found: list[Hit]) -> Iterator[Hit]:
        """The hits, with a root added where a chord begins and no hit is near; what sounds before is cut there."""
        for span in self._changes.starting_in(bar.start_ticks + 1, bar.end_ticks):
            offset = span.onset_ticks - bar.start_ticks
            if not any(offset <= hit.offset_ticks < offset + EIGHTH for hit in found):
                later = min(
                    (hit.offset_ticks for hit in found if hit.offset_ticks > offset), default=bar.duration_ticks
                )
                found.append(Hit(offset, later - offset, "R"))
        found.sort(key=lambda hit: hit.offset_ticks)
        ends = [hit.offset_ticks for hit in found[1:]] + [bar.duration_ticks]
        for hit, end in zip(found, ends, strict=True):
            yield replace(hit, duration_ticks=min(hit.duration_ticks, max(1, end - hit.offset_ticks)))

    def _next_place(self, bar: Bar, place: int) -> int:
        """Where the next chord begins, or the next bar."""
        upcoming = next(self._changes.starting_in(place + 1, bar.end_ticks), None)
        return upcoming.onset_ticks if upcoming else bar.end_ticks

    def _pitch(self, sign: str, chord: Chord, key: Key, upcoming: Chord | None) -> int:
        """The pitch of a sign, at most an octave from the last one."""
        midi = self._wanted(sign, chord, key, upcoming)
        while midi - self._last > 12:
            midi -= 12
        while self._last - midi > 12:
            midi += 12
        self._last = midi
        return midi

    def _wanted(self, sign: str, chord: Chord, key: Key, upcoming: Chord | None) -> int:
        if sign == "R":
            return self.root(chord)
        if sign == "8":
            return self._root + 12 if self._root + 12 <= HIGHEST else self._root
        if sign == "A" and upcoming is not None and bass_class(upcoming) != bass_class(chord):
            return self._approach(chord, key, upcoming)
        tone = {"3": chord.third, "7": chord.seventh}.get(sign) or chord.fifth or chord.root
        low = max(LOWEST, self._root - 5)
        near = [midi for midi in range(low, low + 18) if midi % 12 == tone.pitch_class and midi <= HIGHEST]
        return min(near, key=lambda midi: abs(midi - self._last))

    def _approach(self, chord: Chord, key: Key, upcoming: Chord) -> int:
        """A note a semitone or a scale step beside the next root, or its fifth, not far from the last note."""
        roots = (midi for midi in range(LOWEST, ROOT_HIGHEST + 1) if midi % 12 == bass_class(upcoming))
        goal = min(roots, key=lambda midi: abs(midi - self._root))
        scale = scale_classes(chord, key)
        steps = [goal + step for step in (-1, 1)]
        steps += (goal + step for step in (-2, 2) if (goal + step) % 12 in scale)
        steps += (goal + step for step in (7, -5))
        near = [m for m in steps if LOWEST <= m <= HIGHEST and m != self._last and abs(m - self._last) <= 9]
        return self._dealer.deal(near, [1.0 / (1 + abs(midi - self._last)) for midi in near]) if near else self._last
