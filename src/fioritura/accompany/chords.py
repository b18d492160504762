"""The chord instrument: rhythms of the feel, filled with led voicings.

Signs of a pattern: ``X`` loud, ``x``, ``o`` soft, ``-`` held. What is struck in the last eighth of a bar already has
the next bar's chord (an anticipation, common practice); a chord that no stroke meets gets one where it begins.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from fioritura.accompany.form import Form
from fioritura.accompany.grid import LOUDNESS, Dealer, Hit, fitted, hits
from fioritura.accompany.harmony import Changes, beat_lengths
from fioritura.accompany.part import BandNote
from fioritura.accompany.voicing import Voicing, VoicingStyle, led_voicings
from fioritura.chance import Chance
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Bar

__all__ = ["CompStyle", "chord_notes"]

BASE: Final = 0.62
TOP_VOICE_LIFT: Final = 1.06


@dataclass(frozen=True, slots=True)
class CompStyle:
    """How the chord instrument plays a feel: rhythms by beats in the bar, voicings, General MIDI program from 1."""

    patterns: dict[int, tuple[str, ...]]
    voicing: VoicingStyle
    program: int
    is_strummed: bool = False
    anticipates: bool = True


def chord_notes(form: Form, style: CompStyle, chance: Chance) -> list[BandNote]:
    """The chord instrument's part from the count-in to the last chord."""
    voiced = _Voiced(form, style.voicing, chance.child("voicings"))
    dealer = Dealer(chance.child("patterns"))
    notes: list[BandNote] = []
    stop = form.tune.duration_ticks if form.final_ticks is None else form.final_ticks
    for _, bar in form.playing_bars():
        beats = len(beat_lengths(bar.metre))
        known = beats if beats in style.patterns else max(style.patterns)
        pattern = fitted(dealer.deal(style.patterns[known]), known, beats)
        level = BASE * form.section_at(bar.start_ticks).loudness
        for hit in _complete(bar, list(hits(pattern, bar.metre.bar_ticks)), voiced, style):
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


def _meant(bar: Bar, place: int, style: CompStyle) -> int:
    """The place whose chord a stroke has: an anticipation that of the next bar."""
    return bar.end_ticks if style.anticipates and place >= bar.end_ticks - EIGHTH else place


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


class _Voiced:
    """The voicing at each place: one for every chord in every bar, led as one sequence."""

    def __init__(self, form: Form, style: VoicingStyle, chance: Chance) -> None:
        self._changes = Changes(form.tune.chords)
        self.is_anticipated = False
        chords: list[tuple[Chord, Key]] = []
        self._starts: list[int] = []
        stops = [(bar.start_ticks, bar.end_ticks, bar.key) for _, bar in form.playing_bars()]
        if form.final_ticks is not None:
            stops.append((form.final_ticks, form.tune.duration_ticks, form.tune.bars[-1].key))
        for start, end, key in stops:
            for place in [start, *(span.onset_ticks for span in self._changes.starting_in(start + 1, end))]:
                chord = self._changes.at(place)
                if chord is not None:
                    self._starts.append(place)
                    chords.append((chord, key))
        self._voicings = led_voicings(chords, style, chance)

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
