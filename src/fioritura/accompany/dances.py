"""The feels of old dances: waltz, march and polka, reel and jig."""

from __future__ import annotations

from typing import Final

from fioritura.accompany.band_feel import ACCORDION, ACOUSTIC_BASS, ANY, STEEL_GUITAR, THREE, BandFeel, Levels
from fioritura.accompany.bass import BassStyle
from fioritura.accompany.chords import CompStyle
from fioritura.accompany.drums import DrumStyle

__all__ = ["FOLK_WALTZ", "JIG", "MARCH", "REEL"]

FOLK_WALTZ: Final = BandFeel(
    "folk-waltz",
    "straight",
    BassStyle(patterns={3: ("R-....", "R-....", "5-....", "R---A-", "R-5-A-")}),
    ACOUSTIC_BASS,
    CompStyle(
        {3: ("..x...", "..x-x-", "..x-xx", "..xxx-", "..xxxx")},
        "strummed",
        STEEL_GUITAR,
        is_strummed=True,
        anticipates=False,
    ),
    DrumStyle(
        {3: ("kick  o.....\ntamb  ..o.o.", "kick  o.....\ntamb  ..o.oo")},
        crashes=False,
        layers={3: ("tamb .o.o.o", "tamb .o.o.x")},
    ),
    levels=Levels(bass=-5.0, chords=-6.0, drums=-12.0),
    ending="ritard",
    beats=THREE,
)
MARCH: Final = BandFeel(
    "march",
    "straight",
    BassStyle(
        patterns={
            4: ("R-..5-..", "R-..R-..", "R-..5-A-", "R-..3-5-", "R-3-5-A-"),
            2: ("R-..", "R.5.", "R.R.", "R.5A", "R35A"),
        }
    ),
    ACOUSTIC_BASS,
    CompStyle(
        {4: ("..x...x.", "..x...xx", "..xx..x.", ".xx..xx.", "..xx..xx"), 2: (".x..", ".x.x", ".xxx", "oxox")},
        "strummed",
        ACCORDION,
        anticipates=False,
    ),
    DrumStyle(
        {
            4: (
                "kick  x...x...\nsnare ..x...x.",
                "kick  x...x...\nsnare ..x...xo",
                "kick  x...x...\nsnare ..xo..xo",
            ),
            2: ("kick  x.x.\nsnare .x.x", "kick  x.x.\nsnare .xox", "kick  x...\nsnare .xox"),
        },
        fills={
            4: ("kick  x...x...\nsnare ..xxx.xx", "kick  x.......\nsnare x.xxxxxx"),
            2: ("kick  x...\nsnare .xxx", "kick  x.......\nsnare ..xxxxxx"),
        },
        soft={
            4: ("kick  o...o...\nstick ..o...o.", "kick  o.......\nstick ..o...o."),
            2: ("kick  o...\nstick .o.o",),
        },
        layers={4: ("snare .o.o.ooo", "open  x...x..."), 2: ("snare o.oo", "open  x...")},
    ),
    levels=Levels(chords=-7.0, drums=-8.0),
    beats=frozenset({2, 4}),
)
REEL: Final = BandFeel(
    "reel",
    "straight",
    BassStyle(
        patterns={4: ("R-..5-..", "R-..R-..", "R-..5-A-", "R-R-5-A-"), 2: ("R-..", "R-5-", "R-5A")},
    ),
    ACOUSTIC_BASS,
    CompStyle(
        {
            4: ("..x...x.", "..x...xx", "o.x.o.x.", "o.xxo.x.", "o.x.o.xx", "o.xxo.xx"),
            2: ("..x.", "o.x.", "o.xx"),
        },
        "strummed",
        STEEL_GUITAR,
        is_strummed=True,
        anticipates=False,
        has_drone=True,
    ),
    DrumStyle(
        {
            4: ("conga x..xx..x", "conga x.oox.oo", "conga x.oxx.oo", "conga xoooxooo"),
            2: ("conga x.oo", "conga xooo"),
        },
        crashes=False,
        fills={4: ("conga x.xxx.xxx.xxx.xx", "conga x.x.x...\nskin  ....xxxx"), 2: ("conga x.xxx.xx",)},
        layers={4: ("skin .x.x.x.x", "skin ..x...xx"), 2: ("skin .x.x",)},
    ),
    levels=Levels(bass=-6.0, chords=-5.5, drums=-11.0),
)
JIG: Final = BandFeel(
    "jig",
    "straight",
    BassStyle(
        patterns={
            2: ("R-....", "R-.5-.", "R-.R-.", "R-.5-A"),
            3: ("R-.5-.R-.", "R-.R-.5-A"),
            4: ("R-....5-....", "R-.5-.R-.5-.", "R-.5-.R-.5-A"),
            1: ("R-.", "R-A"),
        }
    ),
    ACOUSTIC_BASS,
    CompStyle(
        {
            2: ("..x..x", "o.xo.x", "o.xoxx", "oxxo.x"),
            3: ("..x..x..x", "o.xo.xo.x", "o.xo.xoxx"),
            4: ("..x..x..x..x", "o.xo.xo.xo.x", "o.xo.xo.xoxx"),
            1: ("..x", "o.x", "oxx"),
        },
        "strummed",
        STEEL_GUITAR,
        is_strummed=True,
        anticipates=False,
        has_drone=True,
    ),
    DrumStyle(
        {
            2: ("conga x..x.o", "conga x.ox.o", "conga xooxoo"),
            3: ("conga x.ox.ox.o", "conga xooxooxoo"),
            4: ("conga x.ox.ox.ox.o", "conga xooxooxooxoo"),
            1: ("conga x.o", "conga xoo"),
        },
        crashes=False,
        fills={2: ("conga x.xxxxx.xxxx", "conga x.....\nskin  ..oxxx"), 4: ("conga x.o.o.x.o.o.x.xxxxx.xxxx",)},
        layers={
            2: ("skin .x..x.", "skin ..x.xx"),
            3: ("skin .x..x..x.",),
            4: ("skin .x..x..x..x.",),
            1: ("skin .x.",),
        },
    ),
    levels=Levels(bass=-6.0, chords=-5.5, drums=-11.0),
    is_compound=True,
    beats=ANY,
)
