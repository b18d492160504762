"""Chords as values: root, tones as spelled intervals, bass, and the MusicXML kind and degrees they come from.

`fioritura.theory.chord_symbol` reads the trade's many spellings into these values.

Conventions and known deviations from MusicXML 4.0 (`kind-value`, `degree`):

* A thirteenth chord on a major third leaves out the natural eleventh, which no one plays over it (common practice);
  its kind implies one, so that a sharp eleventh is still an "alter" there.
* MusicXML does not say what the functional sixths hold. Here the Italian, French and German sixths stand on the
  lowered sixth degree with the augmented sixth above it, and a Neapolitan is a major triad (common practice).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final, Literal

from fioritura.theory.pitch import Interval, NoteName, Pitch

__all__ = ["KINDS", "Chord", "Degree", "DegreeType", "implied_degrees", "stacked"]

DegreeType = Literal["add", "alter", "subtract"]


def _intervals(names: str) -> tuple[Interval, ...]:
    return tuple(map(Interval.parse, names.split()))


KINDS: Final[dict[str, tuple[Interval, ...]]] = {
    "major": _intervals("P1 M3 P5"),
    "minor": _intervals("P1 m3 P5"),
    "augmented": _intervals("P1 M3 A5"),
    "diminished": _intervals("P1 m3 d5"),
    "dominant": _intervals("P1 M3 P5 m7"),
    "major-seventh": _intervals("P1 M3 P5 M7"),
    "minor-seventh": _intervals("P1 m3 P5 m7"),
    "diminished-seventh": _intervals("P1 m3 d5 d7"),
    "augmented-seventh": _intervals("P1 M3 A5 m7"),
    "half-diminished": _intervals("P1 m3 d5 m7"),
    "major-minor": _intervals("P1 m3 P5 M7"),
    "major-sixth": _intervals("P1 M3 P5 M6"),
    "minor-sixth": _intervals("P1 m3 P5 M6"),
    "dominant-ninth": _intervals("P1 M3 P5 m7 M9"),
    "major-ninth": _intervals("P1 M3 P5 M7 M9"),
    "minor-ninth": _intervals("P1 m3 P5 m7 M9"),
    "dominant-11th": _intervals("P1 M3 P5 m7 M9 P11"),
    "major-11th": _intervals("P1 M3 P5 M7 M9 P11"),
    "minor-11th": _intervals("P1 m3 P5 m7 M9 P11"),
    "dominant-13th": _intervals("P1 M3 P5 m7 M9 M13"),
    "major-13th": _intervals("P1 M3 P5 M7 M9 M13"),
    "minor-13th": _intervals("P1 m3 P5 m7 M9 P11 M13"),
    "suspended-second": _intervals("P1 M2 P5"),
    "suspended-fourth": _intervals("P1 P4 P5"),
    "Neapolitan": _intervals("P1 M3 P5"),
    "Italian": _intervals("P1 M3 A6"),
    "French": _intervals("P1 M3 A4 A6"),
    "German": _intervals("P1 M3 P5 A6"),
    "pedal": _intervals("P1"),
    "power": _intervals("P1 P5"),
    "Tristan": _intervals("P1 A4 A6 A9"),
    "other": _intervals("P1"),
}
"""Every MusicXML 4.0 kind-value but "none", with its tones above the root."""

_DOMINANT_DEGREES: Final = {
    number + 1: interval for number, interval in enumerate(_intervals("P1 M2 M3 P4 P5 M6 m7 P8 M9 M10 P11 P12 M13"))
}


@dataclass(frozen=True, slots=True)
class Degree:
    """A MusicXML degree: chord degree `value` (2-13) and `alter` in semitones.

    An added degree counts from a dominant chord (major and perfect intervals, minor seventh), an altered one from
    the kind's own tone.
    """

    value: int
    alter: int
    type: DegreeType


def implied_degrees(kind: str) -> frozenset[int]:
    """The degrees (1-13) that a kind holds as MusicXML defines it.

    Examples:
        >>> sorted(implied_degrees("dominant"))
        [1, 3, 5, 7]
    """
    held = frozenset(interval.steps + 1 for interval in KINDS[kind])
    return held | {11} if kind.endswith("13th") else held


def stacked(kind: str, degrees: tuple[Degree, ...]) -> tuple[Interval, ...]:
    """The tones of a kind with its degrees added, altered and taken away, in order of step.

    An added altered fifth, ninth, eleventh or thirteenth takes the place of the kind's plain one, and an altered
    degree that the kind has not is added: other programs write both, and mean that.

    Examples:
        >>> [tone.semitones for tone in stacked("dominant", (Degree(9, -1, "add"),))]
        [0, 4, 7, 10, 13]
    """
    tones = list(KINDS[kind])
    for degree in degrees:
        place = degree.value - 1
        present = [tone for tone in tones if tone.steps == place]
        if degree.type == "subtract":
            tones = [tone for tone in tones if tone.steps != place]
            continue
        natural = _DOMINANT_DEGREES[degree.value]
        if degree.type == "alter" and present:
            natural = present[0]
            tones.remove(natural)
        elif degree.value in {5, 9, 11, 13} and degree.alter and natural in tones:
            tones.remove(natural)
        tones.append(natural + Interval(0, degree.alter))
    return tuple(sorted(set(tones), key=lambda tone: (tone.steps, tone.semitones)))


@dataclass(frozen=True, slots=True)
class Chord:
    """A chord: its root, its tones as spelled intervals above the root (in order of step), its bass and its text.

    `kind` and `degrees` say the same as `intervals` in MusicXML's terms. `text` is the symbol in ASCII as it was
    given, spaces and odd glyphs put right: root, suffix, and the bass after a stroke. `bass` is None where the root
    is the bass.
    """

    root: NoteName
    intervals: tuple[Interval, ...]
    bass: NoteName | None
    text: str
    kind: str
    degrees: tuple[Degree, ...] = ()
    pitch_classes: frozenset[int] = field(init=False, repr=False, compare=False)
    """0-11 of the chord tones; a bass that is no chord tone is left out."""
    _hash: int = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        classes = frozenset((self.root.pitch_class + tone.semitones) % 12 for tone in self.intervals)
        object.__setattr__(self, "pitch_classes", classes)
        object.__setattr__(self, "_hash", hash((self.root, self.intervals, self.bass, self.text)))

    def __hash__(self) -> int:
        return self._hash

    @property
    def suffix(self) -> str:
        """The text after the root, without the bass: ``"m7"`` of ``"Am7/G"``."""
        return self.text.removeprefix(str(self.root)).removesuffix(self._bass_text)

    @property
    def display(self) -> str:
        """For people: ``"B♭m7(♭5)/A♭"``."""
        suffix = self.suffix.replace("b", "♭").replace("#", "♯")
        return self.root.display + suffix + (f"/{self.bass.display}" if self.bass else "")

    @property
    def _bass_text(self) -> str:
        return f"/{self.bass}" if self.bass else ""

    def up(self, interval: Interval) -> Chord:
        """The chord an interval higher, its text respelled; a root with a double accidental takes the plain name."""
        root = _plain(self.root.up(interval))
        shift = _pitch(self.root).to(_pitch(root))
        bass = _plain(self.bass.up(shift)) if self.bass else None
        text = f"{root}{self.suffix}" + (f"/{bass}" if bass else "")
        return Chord(root, self.intervals, bass, text, self.kind, self.degrees)

    @property
    def tones(self) -> tuple[NoteName, ...]:
        """The chord tones from the root up, spelled."""
        return tuple(self.root.up(interval) for interval in self.intervals)

    def holds(self, pitch: Pitch) -> bool:
        """True when the pitch sounds as one of the chord tones, in any octave and spelling."""
        return pitch.midi % 12 in self.pitch_classes

    @property
    def third(self) -> NoteName | None:
        """The third, or None in a suspended or power chord."""
        return self._tone_at(2)

    @property
    def fifth(self) -> NoteName | None:
        """The fifth (the lower one where both are altered), or None."""
        return self._tone_at(4)

    @property
    def seventh(self) -> NoteName | None:
        """The seventh, or None."""
        return self._tone_at(6)

    @property
    def guide_tones(self) -> tuple[NoteName, ...]:
        """Third and seventh; a suspended fourth or second stands for the third, a sixth for the seventh."""
        thirds = self._tone_at(2) or self._tone_at(3) or self._tone_at(1)
        sevenths = self._tone_at(6) or self._tone_at(5)
        return tuple(tone for tone in (thirds, sevenths) if tone is not None)

    @property
    def is_minor(self) -> bool:
        """True with a minor third and no major one."""
        return self._has(2, 3) and not self._has(2, 4)

    @property
    def is_major(self) -> bool:
        """True with a major third."""
        return self._has(2, 4)

    @property
    def is_suspended(self) -> bool:
        """True without a third but with a fourth or second."""
        return self.third is None and (self._has(3, 5) or self._has(1, 2))

    @property
    def is_dominant(self) -> bool:
        """True with a minor seventh over a major third or a suspended fourth."""
        return self._has(6, 10) and (self._has(2, 4) or (self.is_suspended and self._has(3, 5)))

    @property
    def is_diminished(self) -> bool:
        """True for a diminished triad or seventh chord, but not a half-diminished one."""
        return self._has(2, 3) and self._has(4, 6) and not self._has(4, 7) and not self._has(6, 10)

    @property
    def is_half_diminished(self) -> bool:
        """True with minor third, diminished fifth and minor seventh."""
        return self._has(2, 3) and self._has(4, 6) and not self._has(4, 7) and self._has(6, 10)

    @property
    def is_augmented(self) -> bool:
        """True with a major third and an augmented fifth in place of the perfect one."""
        return self._has(2, 4) and self._has(4, 8) and not self._has(4, 6)

    def __str__(self) -> str:
        return self.text

    def _tone_at(self, steps: int) -> NoteName | None:
        return next((self.root.up(tone) for tone in self.intervals if tone.steps == steps), None)

    def _has(self, steps: int, semitones: int) -> bool:
        return Interval(steps, semitones) in self.intervals


def _plain(name: NoteName) -> NoteName:
    return name if abs(name.alter) <= 1 else _pitch(name).respelled().name


def _pitch(name: NoteName) -> Pitch:
    return Pitch(name.letter, name.alter)
