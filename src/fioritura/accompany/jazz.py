"""The feels of jazz: swing, shuffle, slow blues, ballad and jazz waltz."""

from __future__ import annotations

from typing import Final

from fioritura.accompany.band_feel import (
    ACOUSTIC_BASS,
    ANY,
    BRUSH_KIT,
    JAZZ_KIT,
    ORGAN,
    PIANO,
    THREE,
    BandFeel,
    Levels,
)
from fioritura.accompany.bass import BassStyle
from fioritura.accompany.chords import CompStyle
from fioritura.accompany.drums import DrumStyle

__all__ = ["BALLAD", "SHUFFLE", "SLOW_BLUES", "SWING", "WALTZ"]

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

_SWING_SOFT: Final = (
    """
    hat   x.xxx.xx
    pedal ..o...o.
    """,
    """
    hat   x.x.x.xx
    kick  o.......
    """,
    """
    hat   x.xxx.x.
    pedal ..o...o.
    """,
)
_SWING_LOUD: Final = (
    """
    ride  X.xxX.xx
    pedal ..X...X.
    kick  o.o.o.o.
    """,
    """
    ride  X.xxX.xx
    pedal ..X...X.
    kick  x.o.x.o.
    snare ......o.
    """,
    """
    ride  XxxxX.xx
    pedal ..X...X.
    kick  o.o.o.oo
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

_WALTZ_SOFT: Final = (
    """
    hat   x..xx.
    kick  o.....
    """,
    """
    hat   x.x.x.
    kick  o.....
    """,
    """
    hat   x..xxx
    pedal ..o...
    """,
)
_WALTZ_LOUD: Final = (
    """
    ride  X.xxxx
    pedal ..X.x.
    kick  x..o..
    """,
    """
    ride  X.xX.x
    pedal ..X...
    kick  x..x..
    """,
    """
    ride  Xxx.xx
    pedal ..X.x.
    kick  x...o.
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

_SWING_TWO: Final = ("R---5---", "R---3---", "R---8---", "R---R---", "R---5--A", "R---5-A-", "R--R5---")
_WALTZ_TWO: Final = ("R-----", "R-----", "R---A-", "R--.5-", "R---5A")

_WALTZ_RHYTHMS: Final = ("x--x..", "..x-..", ".x-...", "...x-.", "X----.", "..x..x", ".x-.x.")

SWING: Final = BandFeel(
    "swing",
    "swing",
    BassStyle(walks=True, skips=0.07, patterns={4: _SWING_TWO, 3: _WALTZ_TWO}),
    ACOUSTIC_BASS,
    CompStyle({4: _SWING_RHYTHMS, 3: _WALTZ_RHYTHMS}, "rootless", PIANO),
    DrumStyle(
        {4: _SWING_TIME, 3: _WALTZ_TIME},
        {4: _SWING_COMPS, 3: _WALTZ_COMPS},
        {4: _SWING_FILLS, 3: _WALTZ_FILLS},
        JAZZ_KIT,
        soft={4: _SWING_SOFT, 3: _WALTZ_SOFT},
        loud={4: _SWING_LOUD, 3: _WALTZ_LOUD},
    ),
    ending="tag",
)

SHUFFLE: Final = BandFeel(
    "shuffle",
    "triplet",
    BassStyle(walks=True, skips=0.3, patterns={4: _SWING_TWO, 3: _WALTZ_TWO}),
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
        soft={
            4: ("hat   x.xxx.xx\npedal ..x...x.\nsnare ..o...o.", "hat   x.xxx.xx\npedal ..x...x.\nkick  o...o...")
        },
        layers={4: ("tamb ..x...x.", "tamb x.x.x.x.", "kick .......x\ntamb ..x...xo")},
    ),
    levels=Levels(drums=-5.5),
    ending="tag",
)

BALLAD: Final = BandFeel(
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
        layers={4: ("snare .o.o.o.o", "snare ...x...x\nkick  ..o...o."), 3: ("snare .o.o.o", "snare ...x.x")},
    ),
    levels=Levels(chords=-7.0, drums=-11.0),
    ending="ritard",
    beats=ANY,
)

WALTZ: Final = BandFeel(
    "waltz",
    "swing",
    BassStyle(walks=True, skips=0.05, patterns={3: _WALTZ_TWO}),
    ACOUSTIC_BASS,
    CompStyle({3: _WALTZ_RHYTHMS}, "rootless", PIANO),
    DrumStyle(
        {3: _WALTZ_TIME},
        {3: _WALTZ_COMPS},
        {3: _WALTZ_FILLS},
        JAZZ_KIT,
        crashes=False,
        soft={3: _WALTZ_SOFT},
        loud={3: _WALTZ_LOUD},
    ),
    levels=Levels(drums=-8.0),
    ending="ritard",
    beats=THREE,
)

_TWELVE_TIME: Final = (
    """
    hat   xooxooxooxoo
    snare ...X.....X..
    kick  x.....x.....
    """,
    """
    hat   xooxooxooxoo
    snare ...X.....X.o
    kick  x....xx.....
    """,
    """
    hat   xooxooxooxoo
    snare ...X.....X..
    kick  x....xx....x
    """,
)
_TWELVE_FILLS: Final = (
    "hat   xoo.........\nsnare ...X..xooXxx\nkick  x.....x.....",
    "snare ...X..x.x...\ntom   .........xx.\nfloor ...........x\nkick  x.....x.....",
    "hat   xooxoo......\nsnare ...X..xxxxxx\nkick  x...........",
)
SLOW_BLUES: Final = BandFeel(
    "slow-blues",
    "triplet",
    BassStyle(
        patterns={
            4: (
                "R-----5-----",
                "R--.-R5-----",
                "R--R--5--5--",
                "R--3--5--A--",
                "R--8-75--A--",
                "R-R3-35-5A-A",
            ),
        },
    ),
    ACOUSTIC_BASS,
    CompStyle(
        {
            4: (
                "x-----------",
                "x-----o-----",
                "...x-----...",
                "..x--....x--",
                "x----x......",
                "..x..x..x..x",
                "...xx-...xx-",
            )
        },
        "rootless",
        ORGAN,
        anticipates=False,
    ),
    DrumStyle(
        {4: _TWELVE_TIME},
        fills={4: _TWELVE_FILLS},
        soft={
            4: (
                "hat   x..x..x..x..\nstick ...x.....x..",
                "hat   x..x.ox..x..\nstick ...x.....x..\nkick  x.....o.....",
            )
        },
        loud={
            4: (
                "ride  xxxxxxxxxxxx\nsnare ...X.....X..\nkick  x....xx.....\npedal ...x.....x..",
                "ride  xxxxxxxxxxxx\nsnare ...X....oX.o\nkick  x....xx....x\npedal ...x.....x..",
            )
        },
    ),
    levels=Levels(chords=-8.0, drums=-7.5),
    ending="ritard",
    is_compound=None,
    beats=frozenset({4}),
)
