"""The feels in even eighths and sixteenths: bossa nova, soul and funk."""

from __future__ import annotations

from typing import Final

from fioritura.accompany.band_feel import (
    ACOUSTIC_BASS,
    ELECTRIC_PIANO,
    FINGERED_BASS,
    FUNK_KIT,
    NYLON_GUITAR,
    BandFeel,
    Levels,
)
from fioritura.accompany.bass import BassStyle
from fioritura.accompany.chords import CompStyle
from fioritura.accompany.drums import DrumStyle

__all__ = ["BOSSA", "FUNK", "SOUL"]

BOSSA: Final = BandFeel(
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
        soft={
            4: ("hat   x.x.x.x.\nstick x..x..x.\nkick  x...x...", "hat   x.x.x.x.\nstick ..x.x...\nkick  x...x...")
        },
        layers={4: ("maracas xoxoxoxo", "maracas xoxoxoxo\nclave   ...x..x.")},
    ),
    levels=Levels(chords=-6.5, drums=-9.0),
    ending="ritard",
)

SOUL: Final = BandFeel(
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
        soft={
            4: ("hat   x.x.x.x.\nstick ..x...x.\nkick  x...x...", "hat   x.xox.x.\nstick ..x...x.\nkick  x..xx...")
        },
        layers={4: ("tamb xoxoxoxo", "tamb x.x.x.x.\nkick ......x.")},
    ),
    levels=Levels(drums=-5.0),
)

FUNK: Final = BandFeel(
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
        layers={4: ("tamb x...x...x...x...", "tamb ..x...x...x...x.\nsnare .......o......o.")},
    ),
    levels=Levels(bass=-4.0, drums=-4.5),
)
