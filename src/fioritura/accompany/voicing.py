"""Voicings for the chord instrument, led from chord to chord by the best path.

Rootless voicings are the four-note forms that pianists use over a bass: third, fifth (or thirteenth), seventh and
ninth with the third or the seventh at the bottom; wide ones are the same with the second voice from above an octave
lower. Shells are third and seventh with one colour above. Strummed chords
are full chords in close position. Each chord has several candidates; a dynamic programme picks the sequence in which
the voices move least and the guide tones go by step (common practice).
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise
from types import MappingProxyType
from typing import Final, Literal

import numpy as np

from fioritura.chance import Chance
from fioritura.paths import Costs, best_path
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.scale import chord_scale

__all__ = ["Voicing", "VoicingStyle", "candidates", "led_voicings"]

Voicing = tuple[int, ...]
"""MIDI numbers, rising."""

VoicingStyle = Literal["rootless", "shell", "strummed", "wide"]

LOWEST: Final = 48
HIGHEST: Final = 74
"""C3 to D5: above the bass, below most of the melody."""

CENTRE: Final = {"rootless": 60.0, "shell": 59.0, "strummed": 59.0, "wide": 62.0}
VARIETY: Final = 0.8
PULL: Final = 0.6
STRUMMED_PULL: Final = 1.2
"""What each semitone away from the centre costs: a strumming hand changes its place sooner than a pianist's voices."""

GUIDE_LEAP_COST: Final = 3.0
_JOINT_SHARE: Final = 0.2
"""How much of its cost the move into a new section has: it may begin elsewhere."""

HEARD_COST: Final = 0.7
STRUMMED_HEARD_COST: Final = 2.5


def led_voicings(
    chords: Sequence[tuple[Chord, Key]],
    style: VoicingStyle | Sequence[VoicingStyle],
    chance: Chance,
    lifts: Sequence[float] | None = None,
    *,
    after: tuple[Chord, Voicing] | None = None,
    heard: Mapping[Chord, Collection[Voicing]] = MappingProxyType({}),
) -> list[Voicing]:
    """A voicing for each chord in its key, in one style or in one for each.

    `lifts` says by how many semitones each lies higher than usual. The voices go on from the chord `after`; voicings in
    which a chord has been `heard` before come again only where others lead badly.
    """
    if not chords:
        return []
    styles = [style] * len(chords) if isinstance(style, str) else list(style)
    lifted = [0.0] * len(chords) if lifts is None else list(lifts)
    following = [chord for chord, _ in chords[1:]]
    choices = [
        candidates(chord, key, own, _leads_to_minor(chord, upcoming))
        for (chord, key), own, upcoming in zip(chords, styles, [*following, None], strict=True)
    ]
    costs = [
        _place_costs(options, own, lift)
        + (STRUMMED_HEARD_COST if own == "strummed" else HEARD_COST)
        * np.array([option in heard.get(chord, ()) for option in options])
        - VARIETY * chance.gumbels(len(options))
        for (chord, _), options, own, lift in zip(chords, choices, styles, lifted, strict=True)
    ]
    if after is not None:
        costs[0] = costs[0] + _JOINT_SHARE * _moves(after[0], chords[0][0], (after[1],), choices[0])[0]
    moves = (
        _moves(before, chord, earlier, later)
        for ((before, _), (chord, _)), (earlier, later) in zip(pairwise(chords), pairwise(choices), strict=True)
    )
    places = best_path(costs, moves).places
    return [options[place] for options, place in zip(choices, places, strict=True)]


@lru_cache(maxsize=2048)
def candidates(chord: Chord, key: Key, style: VoicingStyle, to_minor: bool = False) -> tuple[Voicing, ...]:
    """All voicings of a chord in a style, at least one.

    A plain dominant takes ninth and thirteenth; one that leads `to_minor` the flat ones (common practice).
    """
    found: set[Voicing] = set()
    for tones in _tone_sets(chord, key, style, to_minor):
        for lowest in range(len(tones)):
            order = tones[lowest:] + tones[:lowest]
            if style != "strummed" and len(tones) == 4 and lowest % 2:
                continue
            found.update(_placed(order, doubled=style == "strummed"))
    if style == "wide":
        found = {opened for voicing in found if (opened := _opened(voicing))[0] >= LOWEST} or found
    return tuple(sorted(found))


def _opened(voicing: Voicing) -> Voicing:
    """The voicing with its second voice from above an octave lower (drop 2); a triad as it is."""
    return tuple(sorted((*voicing[:-2], voicing[-2] - 12, voicing[-1]))) if len(voicing) > 3 else voicing


def _leads_to_minor(chord: Chord, upcoming: Chord | None) -> bool:
    """True for a dominant before the minor chord a fifth below."""
    if upcoming is None or not chord.is_dominant:
        return False
    return upcoming.is_minor and (chord.root.pitch_class - upcoming.root.pitch_class) % 12 == 7


def _tone_sets(chord: Chord, key: Key, style: VoicingStyle, to_minor: bool) -> Iterator[tuple[int, ...]]:
    """Pitch classes in close order from a guide tone (or the root) up."""
    root = chord.root.pitch_class
    guides = [tone.pitch_class for tone in chord.guide_tones]
    fifth = chord.fifth.pitch_class if chord.fifth else (root + 7) % 12
    if style == "strummed" or len(guides) < 2:
        yield tuple(dict.fromkeys((root, *guides[:1], fifth, *guides[1:])))
        return
    third, seventh = guides
    ninth = _ninth(chord, key, to_minor)
    if style == "shell":
        colours = {ninth, fifth, root} - {third, seventh}
        for colour in sorted(colours):
            yield _rising((third, seventh, colour))
        return
    for inner in _inner(chord, fifth, to_minor):
        yield _rising(tuple(dict.fromkeys((third, inner, seventh, ninth))))


def _rising(tones: tuple[int, ...]) -> tuple[int, ...]:
    """Pitch classes in order from the first one up."""
    return tuple(sorted(tones, key=lambda tone: (tone - tones[0]) % 12))


def _ninth(chord: Chord, key: Key, to_minor: bool) -> int:
    """The ninth that the symbol gives, else a fitting one; the root where that would be flat over no dominant."""
    root = chord.root.pitch_class
    given = [tone.semitones % 12 for tone in chord.intervals if tone.steps == 8]
    if given:
        return (root + given[-1]) % 12
    if chord.is_dominant:
        return (root + (1 if to_minor else 2)) % 12
    fits = not chord.is_diminished and (root + 2) % 12 in chord_scale(chord, key).pitch_classes
    return (root + 2) % 12 if fits else root


def _inner(chord: Chord, fifth: int, to_minor: bool) -> Iterator[int]:
    """What fills the place of the fifth: a thirteenth, an eleventh where the symbol has one, or the fifth."""
    root = chord.root.pitch_class
    upper = [(root + tone.semitones) % 12 for tone in chord.intervals if tone.steps in {10, 12}]
    if upper:
        yield upper[-1]
        return
    yield fifth
    if chord.is_dominant and (fifth - root) % 12 == 7:
        yield (root + (8 if to_minor else 9)) % 12


def _placed(order: Sequence[int], *, doubled: bool) -> Iterator[Voicing]:
    """Close voicings of pitch classes, the first of them lowest, wherever they lie in range.

    With `doubled` the lowest note sounds in the octave above, too.
    """
    for bottom in range(LOWEST, HIGHEST):
        if bottom % 12 != order[0]:
            continue
        notes = [bottom]
        for tone in order[1:]:
            notes.append(notes[-1] + ((tone - notes[-1]) % 12 or 12))
        if doubled:
            notes.append(notes[0] + 12)
        if notes[-1] <= HIGHEST:
            yield tuple(notes)


def _place_costs(options: Sequence[Voicing], style: VoicingStyle, lift: float) -> Costs:
    means = np.array([sum(option) / len(option) for option in options])
    return (STRUMMED_PULL if style == "strummed" else PULL) * np.abs(means - CENTRE[style] - lift)


@lru_cache(maxsize=4096)
def _moves(before: Chord, chord: Chord, earlier: tuple[Voicing, ...], later: tuple[Voicing, ...]) -> Costs:
    """Cost of going from each earlier voicing (row) to each later one (column)."""
    return np.array([[_move(before, chord, one, other) for other in later] for one in earlier])


def _move(before: Chord, chord: Chord, one: Voicing, other: Voicing) -> float:
    travel = sum(min(abs(note - old) for old in one) for note in other) / len(other)
    travel += abs(one[-1] - other[-1]) / 4
    if before == chord:
        return 0.3 * travel
    return travel + GUIDE_LEAP_COST * sum(_leap(one, note) for note in _guides(chord, other))


def _guides(chord: Chord, voicing: Voicing) -> Iterable[int]:
    classes = {tone.pitch_class for tone in chord.guide_tones}
    return (note for note in voicing if note % 12 in classes)


def _leap(voicing: Voicing, note: int) -> int:
    """Semitones beyond a whole tone to the nearest voice."""
    return max(0, min(abs(note - old) for old in voicing) - 2)
