"""The feels that the band can play, by the trade's names: what bass, chords and drums do in each.

Patterns are bars of text (see `grid`): eight signs a bar of four are eighths, sixteen are sixteenths, twelve are
triplets. All are common practice.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

from fioritura.accompany.bass import BassStyle
from fioritura.accompany.chords import CompStyle
from fioritura.accompany.drums import DrumStyle
from fioritura.accompany.form import Ending
from fioritura.accompany.harmony import beat_lengths
from fioritura.errors import OptionError
from fioritura.theory.metre import Metre
from fioritura.tune import Tune
from fioritura.words import Message, message

__all__ = ["FEELS", "BandFeel", "Subdivision", "default_feel", "feel_named"]

Subdivision = Literal["straight", "swing", "triplet"]
"""How two written eighths sound: even, by the drummer's ratio at the tempo, or as the outer notes of a triplet."""

ACOUSTIC_BASS: Final = 33
FINGERED_BASS: Final = 34
PIANO: Final = 1
ELECTRIC_PIANO: Final = 5
ORGAN: Final = 17
NYLON_GUITAR: Final = 25
STEEL_GUITAR: Final = 26
MUTED_GUITAR: Final = 29
JAZZ_KIT: Final = 33
BRUSH_KIT: Final = 41
FUNK_KIT: Final = 1

_MOST_BEATS: Final = 64
"""A bar of 32 halves, the most that a metre may have, is walked in quarters."""

_ANY: Final = frozenset(range(1, _MOST_BEATS + 1))
_THREE: Final = frozenset(beats for beats in _ANY if beats % 3 == 0)
_NOT_ODD_THREES: Final = frozenset(beats for beats in _ANY if beats % 6 != 3)


@dataclass(frozen=True, slots=True)
class Levels:
    """How loud each part is against the melody, in loudness units."""

    bass: float = -5.0
    chords: float = -7.5
    drums: float = -6.5
    click: float = -8.0


@dataclass(frozen=True, slots=True)
class BandFeel:
    """One feel: its id, the metres it suits by beats in the bar, and its parts."""

    id: str
    subdivision: Subdivision
    bass: BassStyle
    bass_program: int
    chords: CompStyle
    drums: DrumStyle
    levels: Levels = Levels()
    ending: Ending = "straight"
    is_compound: bool = False
    beats: frozenset[int] = _NOT_ODD_THREES

    @property
    def name(self) -> Message:
        """What it is called; form ``text``: what is played."""
        return message(f"feel-{self.id}")

    def suits(self, metre: Metre) -> bool:
        """True when the feel can be played in a metre."""
        return metre.is_compound == self.is_compound and len(beat_lengths(metre)) in self.beats


_SWING_TIME: Final = (
    """
    ride  x.xxx.xx
    pedal ..x...x.
    kick  o.o.o.o.
    """,
    """
    ride  x.xxx.xx
    pedal ..x...x.
    kick  o...o...
    """,
    """
    ride  x.xxx.x.
    pedal ..x...x.
    kick  o.o.o.o.
    """,
)
_SWING_COMPS: Final = (
    "snare .......o",
    "snare ...o....",
    "snare .....o..",
    "snare ...o...o",
    "snare .o......",
    "kick  ...o....",
    "kick  .......x",
    "snare ...o....\nkick  .......o",
    "snare ....o..o",
)
_SWING_FILLS: Final = (
    "snare x..x.oo.xx.x\ntom   ........x...\nkick  x.....x.....\npedal ...x.....x..",
    "snare ..xx.o......\ntom   ......x.xx..\nfloor ..........ox\nkick  x.....x.....",
    "snare x.ox.ox.....\ntom   .......ox...\nfloor .........xxx\npedal ...x.....x..",
    "snare o.ox..x.o..x\nkick  x..x.x...x..\npedal ...x.....x..",
)
_WALTZ_TIME: Final = (
    """
    ride  x.xxx.
    pedal ..x...
    kick  o.....
    """,
    """
    ride  x.x.xx
    pedal ..x.x.
    kick  o.....
    """,
    """
    ride  x.xxxx
    pedal ..x...
    kick  o..o..
    """,
)
_WALTZ_COMPS: Final = ("snare ...o..", "snare .....o", "snare .o....", "kick  ...o..", "snare ...o.o")
_WALTZ_FILLS: Final = (
    "snare x.xo.x...\ntom   ......x.x\nkick  x........",
    "snare ..ox.o...\ntom   ......x..\nfloor .......xx\nkick  x........",
)

_SWING_RHYTHMS: Final = (
    "X-.x....",
    "...x...x",
    "X-.x-...",
    ".x-....x",
    "...X-...",
    ".x....x-",
    "x-...x-.",
    ".......X",
    "X--...x.",
    ".x.x-...",
)
_WALTZ_RHYTHMS: Final = ("x--x..", "..x-..", ".x-...", "...x-.", "X----.", "..x..x", ".x-.x.")

_SWING: Final = BandFeel(
    "swing",
    "swing",
    BassStyle(walks=True, skips=0.07),
    ACOUSTIC_BASS,
    CompStyle({4: _SWING_RHYTHMS, 3: _WALTZ_RHYTHMS}, "rootless", PIANO),
    DrumStyle(
        {4: _SWING_TIME, 3: _WALTZ_TIME},
        {4: _SWING_COMPS, 3: _WALTZ_COMPS},
        {4: _SWING_FILLS, 3: _WALTZ_FILLS},
        JAZZ_KIT,
    ),
    ending="tag",
)
_SHUFFLE: Final = BandFeel(
    "shuffle",
    "triplet",
    BassStyle(walks=True, skips=0.3),
    ACOUSTIC_BASS,
    CompStyle(
        {4: (".x.x.x.x", "...x...x", "x..x-...", ".x.....x", "X-.x..x."), 3: _WALTZ_RHYTHMS}, "rootless", ORGAN
    ),
    DrumStyle(
        {
            4: (
                """
                ride  xxxxxxxx
                pedal ..x...x.
                snare ..X...X.
                kick  x...x...
                """,
                """
                ride  xxxxxxxx
                pedal ..x...x.
                snare ..X...Xo
                kick  x..xx...
                """,
                """
                ride  xxxxxxxx
                pedal ..x...x.
                snare .oX...X.
                kick  x...x..x
                """,
            ),
        },
        fills={4: _SWING_FILLS},
    ),
    levels=Levels(drums=-5.5),
    ending="tag",
)
_BALLAD: Final = BandFeel(
    "ballad",
    "triplet",
    BassStyle(
        patterns={
            4: ("R---5---", "R---5--A", "R---3-A-", "R--R5---", "R---5-A-", "R---8-5-"),
            3: ("R-----", "R---5-", "R---A-", "R--.5A"),
        },
    ),
    ACOUSTIC_BASS,
    CompStyle(
        {4: ("x-------", "x---o---", "x-----o-", "..x-----", "x--o----"), 3: ("x-----", "x---o-", "..x---")},
        "rootless",
        PIANO,
        anticipates=False,
    ),
    DrumStyle(
        {
            4: (
                """
                swirl x---x---
                snare ..o...o.
                pedal ..o...o.
                kick  o...o...
                """,
                """
                swirl x---x---
                snare ..oo..o.
                pedal ..o...o.
                kick  o.......
                """,
                """
                swirl x---x---
                snare ..o...oo
                pedal ..o...o.
                kick  o...o...
                """,
            ),
            3: (
                "swirl x-----\nsnare ..o.o.\npedal ..o.o.\nkick  o.....",
                "swirl x-----\nsnare ..oo..\npedal ..o.o.\nkick  o.....",
            ),
        },
        fills={
            4: ("snare ..o...oo\nkick  o...o...", "snare ...o..oo\nkick  o......."),
            3: ("snare ..o.oo\nkick  o.....",),
        },
        kit=BRUSH_KIT,
        crashes=False,
    ),
    levels=Levels(chords=-7.0, drums=-11.0),
    ending="ritard",
    beats=_ANY,
)
_BOSSA: Final = BandFeel(
    "bossa",
    "straight",
    BassStyle(patterns={4: ("R--55--A", "R--55--5", "R--R5--A", "R--58--A", "R--55---")}),
    ACOUSTIC_BASS,
    CompStyle(
        {4: ("x.x..x.x", "x..x..x.", ".x.x..x.", "x.x..x-.", "x..x.x.x", "..x..x.x", "x.x..xx.")},
        "rootless",
        NYLON_GUITAR,
    ),
    DrumStyle(
        {
            4: (
                """
                hat   xoxoxoxo
                stick x..x..x.
                kick  x..xx..x
                """,
                """
                hat   xoxoxoxo
                stick ..x.x...
                kick  x..xx..x
                """,
            )
        },
        alternates=True,
        fills={
            4: (
                "hat   xoxo....\nstick x..x....\nsnare ....o.xx\nkick  x..xx..x",
                "hat   xoxoxo..\nstick ..x.x.xx\nkick  x..xx..x",
                "stick x..x....\ntom   ....xx..\nfloor ......xx\nkick  x..xx..x",
            )
        },
        crashes=False,
    ),
    levels=Levels(chords=-6.5, drums=-9.0),
    ending="ritard",
)
_SOUL: Final = BandFeel(
    "soul",
    "straight",
    BassStyle(patterns={4: ("R-.RR-.5", "R-.5R-.A", "R--RR-5A", "R-.R5-.A", "R-8.R-.A", "R-.5.5-A")}),
    FINGERED_BASS,
    CompStyle(
        {4: ("x---x---", "x--x----", "X-.x..x.", "x-.xx-..", "..x-..x.", "x--x..x.")},
        "rootless",
        ELECTRIC_PIANO,
    ),
    DrumStyle(
        {
            4: (
                """
                hat   xoxoxoxo
                snare ..X...X.
                kick  x..xx...
                """,
                """
                hat   xoxoxoxo
                snare ..X...X.
                kick  x..x.x..
                """,
                """
                hat   xoxoxoxo
                snare ..X...Xo
                kick  x...xx..
                """,
            )
        },
        fills={
            4: (
                "hat   xoxo............\nsnare ....x...x.xxxxxx\nkick  x.......x.......",
                "snare ....x...xx......\ntom   ..........xx....\nfloor ............xxxx\nkick  x.....x.........",
                "snare ....x..ox.x.x.xx\nkick  x.....x.....x...",
            )
        },
        kit=FUNK_KIT,
    ),
    levels=Levels(drums=-5.0),
)
_FUNK: Final = BandFeel(
    "funk",
    "straight",
    BassStyle(
        patterns={
            4: (
                "R-.R..8.R-..5-7.",
                "R-....R.8..R..A-",
                "R-.8..R...5-7-A-",
                "R..R..8...7-5-A-",
                "R---..RR..8-..A-",
            )
        }
    ),
    FINGERED_BASS,
    CompStyle(
        {
            4: (
                "....x..x....x...",
                "..x...x....x..x.",
                "x..x..x.........",
                "......X..x....x.",
                "....x.......x..x",
                "..x..x....x..x..",
            )
        },
        "shell",
        ELECTRIC_PIANO,
        anticipates=False,
    ),
    DrumStyle(
        {
            4: (
                """
                hat   xoxoxoxoxoxoxoxo
                snare ....X..o.o..X..o
                kick  x.....x...x.....
                """,
                """
                hat   xoxoxoxoxoxoxoxo
                snare ....X..o.o..X...
                kick  x..x......x..x..
                """,
                """
                hat   xoxoxoxoxoxoxo..
                open  ..............x.
                snare ....X..o....X..o
                kick  x..x..x...x.....
                """,
            )
        },
        fills={
            4: (
                "hat   xoxo............\nsnare ....X..ox.oxx.xx\nkick  x.....x.........",
                "snare ....X...xxo.....\ntom   ...........xxx..\nfloor ..............xx\nkick  x..x............",
                "snare ....X..o.xox.oxx\nkick  x..x..x.....x...",
            )
        },
        kit=FUNK_KIT,
    ),
    levels=Levels(bass=-4.0, drums=-4.5),
)
_WALTZ: Final = BandFeel(
    "waltz",
    "swing",
    BassStyle(walks=True, skips=0.05),
    ACOUSTIC_BASS,
    CompStyle({3: _WALTZ_RHYTHMS}, "rootless", PIANO),
    DrumStyle({3: _WALTZ_TIME}, {3: _WALTZ_COMPS}, {3: _WALTZ_FILLS}, JAZZ_KIT, crashes=False),
    levels=Levels(drums=-8.0),
    ending="ritard",
    beats=_THREE,
)
_FOLK_WALTZ: Final = BandFeel(
    "folk-waltz",
    "straight",
    BassStyle(patterns={3: ("R-....", "R-....", "5-....", "R---A-")}),
    ACOUSTIC_BASS,
    CompStyle({3: ("..x-x-", "..x-xx", "..xxx-")}, "strummed", STEEL_GUITAR, is_strummed=True, anticipates=False),
    DrumStyle({3: ("kick  o.....\ntamb  ..o.o.", "kick  o.....\ntamb  ..o.oo")}, crashes=False),
    levels=Levels(bass=-5.0, chords=-6.0, drums=-12.0),
    ending="ritard",
    beats=_THREE,
)
_REEL: Final = BandFeel(
    "reel",
    "straight",
    BassStyle(patterns={4: ("R-..5-..", "R-..R-..", "R-..5-A-"), 2: ("R-..", "R-5-")}),
    ACOUSTIC_BASS,
    CompStyle(
        {4: ("o.x.o.x.", "o.xxo.x.", "o.x.o.xx", "o.xxo.xx"), 2: ("o.x.", "o.xx")},
        "strummed",
        STEEL_GUITAR,
        is_strummed=True,
        anticipates=False,
    ),
    DrumStyle(
        {4: ("conga x.oox.oo", "conga x.oxx.oo", "conga xoooxooo"), 2: ("conga x.oo", "conga xooo")},
        crashes=False,
    ),
    levels=Levels(bass=-6.0, chords=-5.5, drums=-11.0),
)
_JIG: Final = BandFeel(
    "jig",
    "straight",
    BassStyle(
        patterns={2: ("R-.5-.", "R-.R-.", "R-.5-A"), 3: ("R-.5-.R-.", "R-.R-.5-A"), 4: ("R-.5-.R-.5-.",), 1: ("R-.",)}
    ),
    ACOUSTIC_BASS,
    CompStyle(
        {2: ("o.xo.x", "o.xoxx", "oxxo.x"), 3: ("o.xo.xo.x", "o.xo.xoxx"), 4: ("o.xo.xo.xoxx",), 1: ("o.x",)},
        "strummed",
        STEEL_GUITAR,
        is_strummed=True,
        anticipates=False,
    ),
    DrumStyle(
        {2: ("conga xooxoo", "conga x.ox.o"), 3: ("conga xooxooxoo",), 4: ("conga xooxooxooxoo",), 1: ("conga xoo",)},
        crashes=False,
    ),
    levels=Levels(bass=-6.0, chords=-5.5, drums=-11.0),
    is_compound=True,
    beats=_ANY,
)

FEELS: Final[Mapping[str, BandFeel]] = MappingProxyType(
    {feel.id: feel for feel in (_SWING, _SHUFFLE, _BALLAD, _BOSSA, _SOUL, _FUNK, _WALTZ, _FOLK_WALTZ, _REEL, _JIG)}
)
"""All feels by id, in the order in which they are listed."""


def feel_named(id: str) -> BandFeel:
    """The feel with an id such as ``"bossa"``.

    Raises:
        OptionError: there is no such feel; the message lists those there are.
    """
    try:
        return FEELS[id]
    except KeyError:
        raise OptionError("no-such-feel", given=id, known=tuple(FEELS)) from None


def default_feel(tune: Tune, *, is_folk: bool = False) -> BandFeel:
    """The feel that suits a tune's metre and its swing or straight eighths; straight ones as folk, or as soul."""
    by_custom = (
        ("swing", "waltz") if tune.feel == "swing" else ("reel", "folk-waltz") if is_folk else ("soul", "folk-waltz")
    )
    return next(FEELS[id] for id in (*by_custom, "jig", "ballad") if FEELS[id].suits(tune.metre))
