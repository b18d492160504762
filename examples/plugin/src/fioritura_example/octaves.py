"""Octave grace notes: a long note is kicked off by itself, an octave lower. Common practice of reed players."""

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.families import Family
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, with_graces
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Interval
from fioritura.words import message


def _from_below(context: Context) -> Iterator[Figure]:
    if context.is_free and context.strength >= 0.5 and context.note.duration_ticks >= QUARTER:
        why = message("octave-grace-lower-why", where=context.where)
        yield with_graces("octave-grace-lower", context, [context.note.pitch.up(-Interval.parse("P8"))], why)


def _is_an_octave_below(group: Group) -> bool:
    return group.is_quick and group.around(group.after) == (-12,)


OCTAVE_GRACES = Family("octave-graces", icon="M-4 9V-9H4V9Z", hue=20, lead_on=True)

FAMILIES = (OCTAVE_GRACES,)

OCTAVE_GRACE_LOWER = Technique(
    id="octave-grace-lower",
    family=OCTAVE_GRACES.id,
    level=3,
    find=_from_below,
    definition=Definition(_is_an_octave_below, breadth=35),
    side="below",
    words={
        "en": """
family-octave-graces = octave grace notes
octave-grace-lower = grace note an octave below
    .label = grace 8ve
    .text = The same note an octave lower, touched just before the melody note.
    .how = Start the low note with the air ready for the high one; let the octave key or the lip do the rest.
    .when = On long, strong notes, most of all on peaks and at the start of a phrase.
    .fault = The low note speaks late and the melody note comes after the beat.
    .cure = Slur the octave slowly, evenly and softly; then shorten the low note until it is only a kick.
octave-grace-lower-why = The note { $where } is long and strong enough to be kicked off from its own octave.
""",
        "de": """
family-octave-graces = Oktavvorschläge
octave-grace-lower = Vorschlag eine Oktave tiefer
    .label = Oktavvorschl.
    .text = Derselbe Ton eine Oktave tiefer, knapp vor der Melodienote berührt.
    .how = Die tiefe Note mit der Luft für die hohe beginnen; die Oktavklappe oder die Lippe tut den Rest.
    .when = Bei langen, schweren Noten, vor allem auf Höhepunkten und am Anfang einer Phrase.
    .fault = Die tiefe Note spricht spät an, und die Melodienote kommt nach dem Schlag.
    .cure = Die Oktave langsam, gleichmäßig und leise binden; dann die tiefe Note kürzen, bis sie nur noch ein Anstoß ist.
octave-grace-lower-why = Die Note { $where } ist lang und schwer genug, um aus ihrer eigenen Oktave angestoßen zu werden.
""",
    },
    taste={
        "jazz": {
            "base": 0.4,
            "share": 0.1,
            "place": {"long": 0.3, "strong": 0.3, "peak": 0.4, "phrase start": 0.3},
        },
        "folk": {"base": 0.2, "place": {"long": 0.3, "strong": 0.3}},
    },
)

TECHNIQUES = (OCTAVE_GRACE_LOWER,)
