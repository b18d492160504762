"""Octave grace notes: a long note is kicked off by itself, an octave lower. Common practice of reed players."""

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, with_graces
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Interval


def _from_below(context: Context) -> Iterator[Figure]:
    if context.is_free and context.strength >= 0.5 and context.note.duration_ticks >= QUARTER:
        why = f"The note on {context.where} is long and strong enough to be kicked off from its own octave."
        yield with_graces("octave-grace-lower", context, [context.note.pitch.up(-Interval.parse("P8"))], why)


TECHNIQUES = (
    Technique(
        id="octave-grace-lower",
        name="Grace note an octave below",
        label="grace 8ve",
        family="octave graces",
        level=3,
        find=_from_below,
        text="The same note an octave lower, touched just before the melody note.",
        how="Start the low note with the air ready for the high one; let the octave key or the lip do the rest.",
        when="On long, strong notes, most of all on peaks and at the start of a phrase.",
        fault="The low note speaks late and the melody note comes after the beat.",
        cure="Slur the octave slowly, evenly and softly; then shorten the low note until it is only a kick.",
    ),
)

TASTE = {
    "jazz": {
        "base": {"octave-grace-lower": 0.4},
        "share": {"octave-grace-lower": 0.1},
        "place": {"octave-grace-lower": {"long": 0.3, "strong": 0.3, "peak": 0.4, "phrase start": 0.3}},
    },
    "folk": {
        "base": {"octave-grace-lower": 0.2},
        "place": {"octave-grace-lower": {"long": 0.3, "strong": 0.3}},
    },
}
