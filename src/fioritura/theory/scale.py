"""Scales, and the scale that suits a chord by its function in the key.

The choice follows common practice: a chord of the key takes the key's own notes from its root; a dominant takes the
scale of the chord that it leads to, or the lydian dominant where it leads nowhere in the key; any other chord takes
the scale of its quality that keeps most notes of the key. The chord's own tones always belong to the scale.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from typing import Final

from fioritura.theory.chord import Chord
from fioritura.theory.key import Key, Mode
from fioritura.theory.pitch import Interval, NoteName, Pitch

__all__ = ["SCALES", "Scale", "blues_scale", "chord_scale", "key_scale", "other_scales", "pentatonic", "scale_named"]


def _intervals(names: str) -> tuple[Interval, ...]:
    return tuple(map(Interval.parse, names.split()))


SCALES: Final[dict[str, tuple[Interval, ...]]] = {
    "major": _intervals("P1 M2 M3 P4 P5 M6 M7"),
    "dorian": _intervals("P1 M2 m3 P4 P5 M6 m7"),
    "phrygian": _intervals("P1 m2 m3 P4 P5 m6 m7"),
    "lydian": _intervals("P1 M2 M3 A4 P5 M6 M7"),
    "mixolydian": _intervals("P1 M2 M3 P4 P5 M6 m7"),
    "aeolian": _intervals("P1 M2 m3 P4 P5 m6 m7"),
    "locrian": _intervals("P1 m2 m3 P4 d5 m6 m7"),
    "melodic minor": _intervals("P1 M2 m3 P4 P5 M6 M7"),
    "dorian b2": _intervals("P1 m2 m3 P4 P5 M6 m7"),
    "lydian augmented": _intervals("P1 M2 M3 A4 A5 M6 M7"),
    "lydian dominant": _intervals("P1 M2 M3 A4 P5 M6 m7"),
    "mixolydian b13": _intervals("P1 M2 M3 P4 P5 m6 m7"),
    "locrian natural 2": _intervals("P1 M2 m3 P4 d5 m6 m7"),
    "altered": _intervals("P1 m2 A2 M3 d5 m6 m7"),
    "harmonic minor": _intervals("P1 M2 m3 P4 P5 m6 M7"),
    "major #5": _intervals("P1 M2 M3 P4 A5 M6 M7"),
    "mixolydian b9 b13": _intervals("P1 m2 M3 P4 P5 m6 m7"),
    "ultralocrian": _intervals("P1 m2 m3 d4 d5 m6 d7"),
    "locrian bb7": _intervals("P1 m2 m3 P4 d5 m6 d7"),
    "spanish eight-tone": _intervals("P1 m2 A2 M3 P4 P5 m6 m7"),
    "half-whole diminished": _intervals("P1 m2 A2 M3 A4 P5 M6 m7"),
    "whole-half diminished": _intervals("P1 M2 m3 P4 d5 m6 d7 M7"),
    "whole tone": _intervals("P1 M2 M3 A4 A5 m7"),
    "major pentatonic": _intervals("P1 M2 M3 P5 M6"),
    "minor pentatonic": _intervals("P1 m3 P4 P5 m7"),
    "blues": _intervals("P1 m3 P4 d5 P5 m7"),
}
"""Scales by the trade's names, with their notes above the tonic."""

_MODE_SCALES: Final[dict[Mode, str]] = {
    "major": "major",
    "minor": "aeolian",
    "dorian": "dorian",
    "phrygian": "phrygian",
    "lydian": "lydian",
    "mixolydian": "mixolydian",
    "locrian": "locrian",
}

_TO_MAJOR: Final = (
    "mixolydian",
    "lydian dominant",
    "mixolydian b13",
    "half-whole diminished",
    "mixolydian b9 b13",
    "whole tone",
    "altered",
    "dorian b2",
    "spanish eight-tone",
)
_TO_MINOR: Final = (
    "mixolydian b9 b13",
    "mixolydian b13",
    "spanish eight-tone",
    "mixolydian",
    "lydian dominant",
    "altered",
    "half-whole diminished",
    "whole tone",
    "dorian b2",
)
_WHOLE_TONE: Final = 2

_UNRESOLVED: Final = ("lydian dominant", *(name for name in _TO_MAJOR if name != "lydian dominant"))
"""Scales of a dominant, first choice first: by the kind of chord a fifth below, and for one that leads nowhere."""


@dataclass(frozen=True)
class Scale:
    """A scale: tonic, its notes as intervals above the tonic (rising, inside an octave), and the trade's name."""

    tonic: NoteName
    intervals: tuple[Interval, ...]
    name: str
    names: tuple[NoteName, ...] = field(init=False, repr=False, compare=False)
    """The notes from the tonic up, spelled; a double accidental gives way to the plain name."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "names", tuple(_plain(self.tonic.up(each)) for each in self.intervals))

    def __str__(self) -> str:
        return f"{self.tonic} {self.name}"

    @property
    def display(self) -> str:
        """For people: ``"B♭ lydian dominant"``."""
        return f"{self.tonic.display} {self.name.replace('bb', '𝄫').replace(' b', ' ♭').replace('#', '♯')}"

    @cached_property
    def pitch_classes(self) -> frozenset[int]:
        """0-11 of the notes."""
        return frozenset(name.pitch_class for name in self.names)

    def holds(self, pitch: Pitch) -> bool:
        """True when the pitch sounds as a note of the scale, in any octave and spelling."""
        return pitch.midi % 12 in self.pitch_classes

    @cached_property
    def _octave(self) -> tuple[Pitch, ...]:
        """The notes with MIDI numbers 12 to 23 (octave 0), rising."""
        pitches = (Pitch(name.letter, name.alter) for name in self.names)
        placed = (Pitch(pitch.step - 7 * (pitch.midi // 12 - 1), pitch.alter) for pitch in pitches)
        return tuple(sorted(placed, key=lambda pitch: pitch.midi))

    @cached_property
    def _places(self) -> tuple[tuple[int, int], ...]:
        """For each pitch class the count of notes in an octave up to it, and of those below it."""
        midis = [pitch.midi - 12 for pitch in self._octave]
        return tuple((sum(m <= pc for m in midis), sum(m < pc for m in midis)) for pc in range(12))

    def step(self, pitch: Pitch, steps: int) -> Pitch:
        """The scale note `steps` scale notes above the pitch (below when negative), spelled by the scale.

        The pitch need not be in the scale: one step up from it is the next higher note of the scale. No steps give
        the pitch itself.
        """
        if steps == 0:
            return pitch
        octave, pitch_class = divmod(pitch.midi, 12)
        up_to, below = self._places[pitch_class]
        place = up_to + steps - 1 if steps > 0 else below + steps
        octaves, number = divmod(place, len(self._octave))
        note = self._octave[number]
        return Pitch(note.step + 7 * (octave + octaves - 1), note.alter)

    def walk(self, start: Pitch, steps: int) -> tuple[Pitch, ...]:
        """So many scale steps up from a note of the scale (down when negative), each on the next letter, a semitone or
        a whole tone away and without a double accidental; empty where the scale has not all of them.

        Examples:
            >>> from fioritura.theory.pitch import NoteName
            >>> minor = scale_named(NoteName.parse("A"), "harmonic minor")
            >>> [str(pitch) for pitch in minor.walk(Pitch.parse("D5"), 2)]
            ['E5', 'F5']
            >>> minor.walk(Pitch.parse("D5"), 3)
            ()
        """
        if not self.holds(start):
            return ()
        direction = 1 if steps > 0 else -1
        found = [start]
        for _ in range(abs(steps)):
            here = found[-1]
            midi, natural = self.step(here, direction).midi, Pitch(here.step + direction)
            there = Pitch(natural.step, midi - natural.midi)
            if abs(midi - here.midi) > _WHOLE_TONE or abs(there.alter) > 1:
                return ()
            found.append(there)
        return tuple(found[1:])

    def between(self, low: Pitch, high: Pitch) -> tuple[Pitch, ...]:
        """The notes of the scale from `low` to `high`, both counted in, rising."""
        found: list[Pitch] = []
        note = self.step(low, 1) if not self.holds(low) else self.step(self.step(low, 1), -1)
        while note.midi <= high.midi:
            found.append(note)
            note = self.step(note, 1)
        return tuple(found)


@lru_cache(maxsize=1024)
def scale_named(tonic: NoteName, name: str) -> Scale:
    """The scale of a name in `SCALES` on a tonic.

    Examples:
        >>> [str(name) for name in scale_named(NoteName.parse("D"), "dorian").names]
        ['D', 'E', 'F', 'G', 'A', 'B', 'C']

    Raises:
        KeyError: there is no scale of that name.
    """
    return Scale(tonic, SCALES[name], name)


def key_scale(key: Key) -> Scale:
    """The notes of the key signature from the tonic (natural minor in a minor key).

    Examples:
        >>> key_scale(Key.of("A", "minor")).name
        'aeolian'
    """
    return scale_named(key.tonic, _MODE_SCALES[key.mode])


@lru_cache(maxsize=4096)
def chord_scale(chord: Chord | None, key: Key) -> Scale:
    """The scale that suits a chord by its function in the key; the key's own scale where there is no chord.

    Examples:
        >>> from fioritura.theory.chord_symbol import read_chord
        >>> chord_scale(read_chord("G7"), Key.of("C")).name, chord_scale(read_chord("G7"), Key.of("C", "minor")).name
        ('mixolydian', 'mixolydian b9 b13')
    """
    if chord is None or len(chord.intervals) < 2:
        return key_scale(key)
    fitting = [name for name in _candidates(chord, key) if _fits(chord, name)]
    if not fitting:
        fitting = [name for name in SCALES if len(SCALES[name]) >= 7 and _fits(chord, name)]
    if not fitting:
        return _filled(chord, key)
    if _leads(chord, key):
        return _spelled_by(chord, scale_named(chord.root, fitting[0]))
    at_home = key_scale(key).pitch_classes
    scales = [scale_named(chord.root, name) for name in fitting]
    best = max(scales, key=lambda scale: len(scale.pitch_classes & at_home) - 0.5 * len(scale.intervals))
    return _spelled_by(chord, best)


@lru_cache(maxsize=4096)
def other_scales(chord: Chord | None, key: Key) -> tuple[Scale, ...]:
    """Further scales of the chord's quality than `chord_scale`, those with most of its notes first: for a melody note
    that it has not.

    Examples:
        >>> from fioritura.theory.key import Key
        >>> from fioritura.theory.chord_symbol import read_chord
        >>> len(other_scales(read_chord("C7"), Key.of("F"))) > 1
        True
    """
    if chord is None or len(chord.intervals) < 2:
        return ()
    first = chord_scale(chord, key)
    scales = [
        _spelled_by(chord, scale_named(chord.root, name)) for name in _candidates(chord, key) if _fits(chord, name)
    ]
    further = [scale for scale in scales if scale.name != first.name]
    return tuple(sorted(further, key=lambda scale: -len(scale.pitch_classes & first.pitch_classes)))


def _candidates(chord: Chord, key: Key) -> Sequence[str]:
    """The scales that common practice gives to the chord's quality, first choice first."""
    if _leads(chord, key):
        target = _target_is_minor(chord.root, key)
        return _UNRESOLVED if target is None else _TO_MINOR if target else _TO_MAJOR
    if chord.is_diminished:
        return _diminished_scales(chord, key)
    if chord.is_half_diminished:
        return ("locrian", "locrian natural 2")
    if chord.is_augmented:
        if chord.pitch_classes <= _minor_collection(key):
            return ("major #5", "lydian augmented")
        return ("lydian augmented", "major #5") if chord.seventh else ("whole tone",)
    if chord.is_minor:
        if Interval(6, 11) in chord.intervals:
            return ("melodic minor", "harmonic minor")
        sixth = ("melodic minor",) if Interval(5, 9) in chord.intervals else ()
        return ("dorian", "aeolian", "phrygian", *sixth)
    if chord.is_major:
        return ("major", "lydian", "mixolydian", "lydian dominant")
    if chord.is_dominant:
        return ("mixolydian", "dorian", "aeolian", "phrygian", "dorian b2")
    return ("major", "mixolydian", "dorian", "aeolian", "lydian", "phrygian")


def _leads(chord: Chord, key: Key) -> bool:
    """True for a dominant seventh, and for a foreign major or augmented triad that leads to a chord of the key."""
    if not chord.is_major or Interval(6, 11) in chord.intervals:
        return False
    if chord.seventh is not None:
        return True
    foreign = not chord.pitch_classes <= key_scale(key).pitch_classes
    return foreign and _target_is_minor(chord.root, key) is not None and chord.third not in key.scale


def _target_is_minor(root: NoteName, key: Key) -> bool | None:
    """Whether the key's chord a fifth below the root has a minor third; None where the key has no such note."""
    notes = key.scale
    target = root.up(Interval(-4, -7))
    if target not in notes:
        return None
    place = notes.index(target)
    third = notes[(place + 2) % 7]
    return (third.pitch_class - target.pitch_class) % 12 == 3


def _minor_collection(key: Key) -> frozenset[int]:
    return scale_named(key.tonic, "harmonic minor").pitch_classes if key.is_minor else frozenset()


def _diminished_scales(chord: Chord, key: Key) -> Sequence[str]:
    """A leading-note chord takes a mode of the key it leads to; any other the whole-half scale."""
    leads = chord.root.up(Interval(1, 1)) in key.scale
    if chord.seventh is None and chord.pitch_classes <= key_scale(key).pitch_classes:
        return ("locrian",)
    return ("ultralocrian", "locrian bb7") if leads else ("whole-half diminished",)


@lru_cache(maxsize=2048)
def _classes(intervals: tuple[Interval, ...]) -> frozenset[int]:
    return frozenset(interval.semitones % 12 for interval in intervals)


def _fits(chord: Chord, name: str) -> bool:
    """True when the scale holds the chord's tones, and no perfect fifth beside an altered one."""
    scale, tones = _classes(SCALES[name]), _classes(chord.intervals)
    altered_fifth = chord.is_major and chord.fifth is not None and Interval(4, 7) not in chord.intervals
    return tones <= scale and not (altered_fifth and 7 in scale)


def _spelled_by(chord: Chord, scale: Scale) -> Scale:
    """The scale with the chord's own names for the chord's tones."""
    named: dict[int, Interval] = {}
    for tone in chord.intervals:
        octaves = tone.semitones // 12
        named.setdefault(tone.semitones % 12, tone - Interval(7 * octaves, 12 * octaves))
    intervals = tuple(named.get(each.semitones, each) for each in scale.intervals)
    return scale if intervals == scale.intervals else Scale(scale.tonic, intervals, scale.name)


def _filled(chord: Chord, key: Key) -> Scale:
    """For a chord that no known scale holds: its tones, and the key's notes on the letters that it leaves free."""
    tones = {tone.semitones % 12: tone.steps % 7 for tone in reversed(chord.intervals)}
    taken = set(tones.values())
    for name in key.scale:
        steps = (name.letter - chord.root.letter) % 7
        semitones = (name.pitch_class - chord.root.pitch_class) % 12
        if steps not in taken:
            tones.setdefault(semitones, steps)
    intervals = tuple(Interval(steps, semitones) for semitones, steps in sorted(tones.items()))
    return Scale(chord.root, intervals, f"{key} with the chord's tones")


@lru_cache(maxsize=4096)
def pentatonic(chord: Chord | None, key: Key) -> Scale:
    """The major or minor pentatonic that suits the chord: inside its chord scale, with most of its tones.

    Each tone of the chord counts for it, each note outside the chord scale against it; one on the chord's root wins a
    tie. Without a chord it is the key's own.

    Examples:
        >>> from fioritura.theory.chord_symbol import read_chord
        >>> pentatonic(read_chord("Am7"), Key.of("C")).name
        'minor pentatonic'
    """
    home = chord_scale(chord, key)
    if chord is None or len(chord.intervals) < 2:
        return scale_named(key.tonic, "minor pentatonic" if key.is_minor else "major pentatonic")
    own = "minor pentatonic" if chord.is_minor or Interval(2, 3) in chord.intervals else "major pentatonic"
    choices = [scale_named(chord.root, own)]
    choices += (scale_named(name, kind) for name in home.names for kind in ("major pentatonic", "minor pentatonic"))

    def fit(scale: Scale) -> tuple[int, bool]:
        outside = len(scale.pitch_classes - home.pitch_classes)
        return len(scale.pitch_classes & chord.pitch_classes) - outside, scale.tonic == chord.root

    return max(choices, key=fit)


def blues_scale(of: Key | Chord) -> Scale:
    """The blues scale on a key's tonic or a chord's root.

    Examples:
        >>> [str(name) for name in blues_scale(Key.of("F")).names]
        ['F', 'Ab', 'Bb', 'Cb', 'C', 'Eb']
    """
    return scale_named(of.tonic if isinstance(of, Key) else of.root, "blues")


def _plain(name: NoteName) -> NoteName:
    return name if abs(name.alter) <= 1 else Pitch(name.letter, name.alter).respelled().name
