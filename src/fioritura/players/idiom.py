"""Idioms: whose ornaments a player takes. This is the one place that says which a tune asks for where nobody does.

There are two traditions, jazz and folk, which differ in direction (see docs/how-it-works.md), and in each a dialect with
figures of its own: blues in jazz, Irish dance music in folk.
"""

from __future__ import annotations

import re
from typing import Final, Literal, get_args

from fioritura.tune import Dance, Tune

__all__ = [
    "IDIOMS",
    "AskedIdiom",
    "Idiom",
    "Tradition",
    "asked_idiom",
    "dance_of",
    "idiom_of",
    "is_blues",
    "tradition_of",
]

Idiom = Literal["jazz", "blues", "folk", "irish"]
IDIOMS: Final[tuple[Idiom, ...]] = get_args(Idiom)
AskedIdiom = Literal["file", "jazz", "blues", "folk", "irish"]
"""An idiom, or ``file`` where the tune's file is to say."""
Tradition = Literal["jazz", "folk"]

_IRISH_DANCES: Final = frozenset({"reel", "jig", "slip-jig", "slide", "hornpipe", "polka"})
_IRELAND: Final = re.compile(r"\b(ireland|irish|[ée]ire|irland|irlande|irlanda)\b", re.IGNORECASE)
_BLUES: Final = re.compile(r"\bblues\b", re.IGNORECASE)
_TWELVE: Final = 12
_FOURTH, _FIFTH, _SECOND = 5, 7, 2
"""Roots over the tonic, in semitones."""


def asked_idiom(asked: AskedIdiom) -> Idiom | None:
    """The idiom that is asked for; None where the file is to say.

    Examples:
        >>> asked_idiom("irish"), asked_idiom("file")
        ('irish', None)
    """
    return None if asked == "file" else asked


def tradition_of(idiom: Idiom) -> Tradition:
    """The tradition of an idiom.

    Examples:
        >>> tradition_of("irish"), tradition_of("blues")
        ('folk', 'jazz')
    """
    return "folk" if idiom in ("folk", "irish") else "jazz"


def idiom_of(tune: Tune) -> Idiom:
    """The idiom that a tune's file asks for: Irish by its origin, or by its dance where it tells no origin; blues by
    title or form; else jazz.

    Examples:
        >>> import fioritura
        >>> from dataclasses import replace
        >>> tune = fioritura.demo_tune()
        >>> idiom_of(tune), idiom_of(replace(tune, dance="reel")), idiom_of(replace(tune, dance="reel", origin="Scotland"))
        ('jazz', 'irish', 'jazz')
    """
    if _IRELAND.search(tune.origin) or (not tune.origin and tune.dance in _IRISH_DANCES):
        return "irish"
    return "blues" if is_blues(tune) else "jazz"


def is_blues(tune: Tune) -> bool:
    """True where the title says so, or the chords go the way of the twelve bars: tonic in the first, fourth degree in the
    fifth, tonic in the seventh, second or fifth degree in the ninth, a seventh chord on the tonic or the fourth degree.

    Examples:
        >>> import fioritura
        >>> is_blues(fioritura.demo_tune())
        False
    """
    if _BLUES.search(tune.title):
        return True
    bars = [bar for bar in tune.bars if bar.number > 0]
    if len(bars) < _TWELVE or len(bars) % _TWELVE or not tune.chords:
        return False
    tonic = tune.key.tonic.pitch_class
    found = []
    for number in (0, 4, 6, 8):
        span = tune.chord_at(bars[number].start_ticks)
        if span is None or span.chord is None:
            return False
        found.append(span.chord)
    roots = [(chord.root.pitch_class - tonic) % 12 for chord in found]
    has_sevenths = any((chord.root.pitch_class + 10) % 12 in chord.pitch_classes for chord in found[:2])
    return roots[:3] == [0, _FOURTH, 0] and roots[3] in (_FIFTH, _SECOND) and has_sevenths


def dance_of(tune: Tune) -> Dance:
    """The dance of a folk tune: what its file says, else the commonest in its metre.

    Examples:
        >>> import fioritura
        >>> dance_of(fioritura.demo_tune())
        'reel'
    """
    if tune.dance is not None:
        return tune.dance
    metre = tune.metre
    if metre.is_compound:
        by_beats: dict[int, Dance] = {9: "slip-jig", 12: "slide"}
        return by_beats.get(metre.beats, "jig")
    if metre.beats == 3:
        return "waltz"
    return "polka" if (metre.beats, metre.unit) == (2, 4) else "reel"
