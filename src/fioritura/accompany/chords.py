"""The chord instrument: rhythms of the feel, filled with led voicings.

Both follow the form's energy: shells and few strokes at a low one, wide voicings and many strokes at a high one, higher
the more the band gives. No rhythm stands in more than two bars running.

Signs of a pattern: ``X`` loud, ``x``, ``o`` soft, ``-`` held. What is struck in the last eighth of a bar already has
the next bar's chord (an anticipation, common practice); a chord that no stroke meets gets one where it begins.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from fioritura.accompany.form import USUAL_ENERGY, Form, Touch
from fioritura.accompany.grid import LOUDNESS, Dealer, Hit, fitted, hits, weights_for
from fioritura.accompany.harmony import Changes, beat_lengths
from fioritura.accompany.part import BandNote
from fioritura.accompany.voicing import Voicing, VoicingStyle, led_voicings
from fioritura.chance import Chance
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.theory.scale import chord_scale
from fioritura.tune import Bar

__all__ = ["CompStyle", "chord_notes"]

BASE: Final = 0.62
TOP_VOICE_LIFT: Final = 1.06
DRONE_LOUDNESS: Final = 0.4
DRONE_LOWEST: Final = 43
"""G2, the lowest note of a drone."""

_SHELLS_UNDER: Final = 0.4
_WIDE_FROM: Final = 0.8
_LIFT: Final = 10.0
_STRUMMED_LIFT: Final = 13.0
"""Semitones by which voicings lie higher at full energy than at none."""


@dataclass(frozen=True, slots=True)
class CompStyle:
    """How the chord instrument plays a feel: rhythms by beats in the bar, voicings, General MIDI program from 1."""

    patterns: dict[int, tuple[str, ...]]
    voicing: VoicingStyle
    program: int
    is_strummed: bool = False
    anticipates: bool = True
    has_drone: bool = False
    """True where a fifth lies under the chords: the key's, as long as the chord has it, else the chord's own."""


def chord_notes(form: Form, style: CompStyle, chance: Chance) -> list[BandNote]:
    """The chord instrument's part from the count-in to the last chord."""
    voiced = _Voiced(form, style.voicing, chance.child("voicings"))
    rhythms = _Rhythms(style, voiced, chance.child("patterns"))
    notes: list[BandNote] = []
    stop = form.tune.duration_ticks if form.final_ticks is None else form.final_ticks
    for _, bar in form.playing_bars():
        touch = form.touch_at(bar)
        level = BASE * touch.loudness
        if style.has_drone:
            notes += _drone(bar, voiced.chord_at(bar.start_ticks), min(bar.end_ticks, stop), touch)
        for hit in rhythms.bar(bar, touch.energy, bar.start_ticks - form.section_at(bar.start_ticks).start_ticks):
            place = bar.start_ticks + hit.offset_ticks
            if place < stop and hit.offset_ticks < bar.duration_ticks:
                voicing = voiced.at(_meant(bar, place, style))
                notes += _struck(voicing, place, hit.duration_ticks, level * LOUDNESS[hit.sign])
    if form.final_ticks is not None:
        length = form.tune.duration_ticks - form.final_ticks
        notes += _struck(voiced.at(form.final_ticks), form.final_ticks, length, BASE)
    return notes


def _struck(voicing: Voicing, onset: int, duration: int, loudness: float) -> Iterator[BandNote]:
    for number, midi in enumerate(voicing, start=1):
        lift = TOP_VOICE_LIFT if number == len(voicing) else 1.0
        yield BandNote(onset, duration, midi, min(1.0, loudness * lift))


def _drone(bar: Bar, chord: Chord | None, end_ticks: int, touch: Touch) -> Iterator[BandNote]:
    """A fifth, low, through the bar."""
    if chord is None:
        return
    classes = chord_scale(chord, bar.key).pitch_classes | chord.pitch_classes
    own = bar.key.tonic.pitch_class
    root = own if {own, (own + 7) % 12} <= classes else chord.root.pitch_class
    upper = (root + 7) % 12 in classes
    low = DRONE_LOWEST + (root - DRONE_LOWEST) % 12
    for midi in (low, low + 7) if upper else (low,):
        yield BandNote(bar.start_ticks, end_ticks - bar.start_ticks, midi, DRONE_LOUDNESS * touch.loudness)


def _meant(bar: Bar, place: int, style: CompStyle) -> int:
    """The place whose chord a stroke has: an anticipation that of the next bar."""
    return bar.end_ticks if style.anticipates and place >= bar.end_ticks - EIGHTH else place


Rhythm = tuple[tuple[int, int], ...]
"""Offset in the bar and length of each stroke, in ticks."""


class _Rhythms:
    """Deals a rhythm for each bar: none more than twice running, and none that the same bar had in an earlier chorus as
    long as there are others."""

    def __init__(self, style: CompStyle, voiced: _Voiced, chance: Chance) -> None:
        self._style = style
        self._voiced = voiced
        self._dealer = Dealer(chance)
        self._last: list[Rhythm] = []
        self._heard: dict[int, list[Rhythm]] = {}

    def bar(self, bar: Bar, energy: float, place: int) -> list[Hit]:
        """The hits of a bar that stands at a place in its chorus; where what is dealt has been heard, the next best."""
        beats = len(beat_lengths(bar.metre))
        known = beats if beats in self._style.patterns else max(self._style.patterns)
        choices = self._style.patterns[known]
        weights = weights_for(choices, energy)
        dealt = self._dealer.deal(choices, weights)
        others = sorted(choices, key=lambda each: -weights[choices.index(each)])
        was_anticipated = self._voiced.is_anticipated
        heard = self._heard.setdefault(place, [])

        def played(pattern: str) -> list[Hit]:
            self._voiced.is_anticipated = was_anticipated
            written = list(hits(fitted(pattern, known, beats), bar.metre.bar_ticks))
            return _complete(bar, written, self._voiced, self._style)

        def staleness(pattern: str) -> int:
            rhythm = _rhythm(played(pattern))
            return 1000 * (self._last == [rhythm] * 2) + heard.count(rhythm)

        chosen = min((dealt, *others), key=staleness)
        found = played(chosen)
        heard.append(_rhythm(found))
        self._last = [*self._last[-1:], heard[-1]]
        return found


def _rhythm(found: list[Hit]) -> Rhythm:
    return tuple((hit.offset_ticks, hit.duration_ticks) for hit in found)


def _complete(bar: Bar, found: list[Hit], voiced: _Voiced, style: CompStyle) -> list[Hit]:
    """The hits, and one more for each chord of the bar that has none; a hit is cut where the next one comes."""
    pushed_from = bar.duration_ticks - (EIGHTH if style.anticipates else 0)
    for start, end in voiced.stretches(bar):
        is_met = any(start <= hit.offset_ticks < min(end, pushed_from) for hit in found)
        if not is_met and not (start == 0 and voiced.is_anticipated):
            found.append(Hit(start, min(QUARTER, end - start), "x"))
    found.sort(key=lambda hit: hit.offset_ticks)
    voiced.is_anticipated = bool(found) and found[-1].offset_ticks >= pushed_from
    changes = [start for start, _ in voiced.stretches(bar)]
    cut: list[Hit] = []
    for number, hit in enumerate(found):
        later = [found[number + 1].offset_ticks] if number + 1 < len(found) else []
        later += [change for change in changes if change > hit.offset_ticks]
        length = min([hit.duration_ticks, *(place - hit.offset_ticks for place in later)])
        cut.append(Hit(hit.offset_ticks, max(1, length), hit.sign))
    return cut


def _style_at(style: VoicingStyle, energy: float) -> VoicingStyle:
    """Shells for a quiet band and wide voicings for a loud one, where the feel has the voicings of a pianist."""
    if style == "strummed":
        return style
    return "shell" if energy < _SHELLS_UNDER else "wide" if energy >= _WIDE_FROM else style


def _led(places: Sequence[tuple[Chord, Key, float, int]], style: VoicingStyle, chance: Chance) -> list[Voicing]:
    """Voicings for chords with their key, energy and section: section by section, in each other ones than before."""
    found: list[Voicing] = []
    heard: dict[Chord, set[Voicing]] = {}
    for _, group in groupby(places, lambda place: place[3]):
        section = list(group)
        styles = [_style_at(style, energy) for _, _, energy, _ in section]
        lift = _STRUMMED_LIFT if style == "strummed" else _LIFT
        lifts = [lift * (energy - USUAL_ENERGY) for _, _, energy, _ in section]
        chords = [(chord, key) for chord, key, _, _ in section]
        after = (places[len(found) - 1][0], found[-1]) if found else None
        led = led_voicings(chords, styles, chance, lifts, after=after, heard=heard)
        for (chord, _), voicing in zip(chords, led, strict=True):
            heard.setdefault(chord, set()).add(voicing)
        found += led
    return found


class _Voiced:
    """The voicing at each place: one for every chord in every bar, led as one sequence."""

    def __init__(self, form: Form, style: VoicingStyle, chance: Chance) -> None:
        self._changes = Changes(form.tune.chords)
        self.is_anticipated = False
        places: list[tuple[Chord, Key, float, int]] = []
        self._starts: list[int] = []
        stops = [
            (bar.start_ticks, bar.end_ticks, bar.key, form.section_at(bar.start_ticks).energy)
            for _, bar in form.playing_bars()
        ]
        if form.final_ticks is not None:
            stops.append((form.final_ticks, form.tune.duration_ticks, form.tune.bars[-1].key, USUAL_ENERGY))
        for start, end, key, energy in stops:
            for place in [start, *(span.onset_ticks for span in self._changes.starting_in(start + 1, end))]:
                chord = self._changes.at(place)
                if chord is not None:
                    self._starts.append(place)
                    section = form.section_at(place).start_ticks
                    places.append((chord, key, energy, section))
        self._voicings = _led(places, style, chance)

    def chord_at(self, ticks: int) -> Chord | None:
        """The chord in force."""
        return self._changes.at(ticks)

    def at(self, ticks: int) -> Voicing:
        """The voicing in force; empty where there is no chord."""
        if self._changes.at(ticks) is None:
            return ()
        number = bisect_right(self._starts, ticks) - 1
        return self._voicings[number] if number >= 0 else ()

    def stretches(self, bar: Bar) -> list[tuple[int, int]]:
        """Start and end, as offsets in the bar, of each chord in it."""
        places = [
            bar.start_ticks,
            *(s.onset_ticks for s in self._changes.starting_in(bar.start_ticks + 1, bar.end_ticks)),
        ]
        ends = [*places[1:], bar.end_ticks]
        return [
            (start - bar.start_ticks, end - bar.start_ticks)
            for start, end in zip(places, ends, strict=True)
            if self._changes.at(start) is not None
        ]
