"""The English horn: it reads a fifth above what sounds, and is fingered like the oboe.

Transposition and written range (B3 to E6) are those of orchestration handbooks; General MIDI sound 70. The reed takes
little air, so that a breath lasts longer than usual. From memory.
"""

from fioritura.players.charts import oboe
from fioritura.players.instruments import Instrument
from fioritura.theory.pitch import Interval, Pitch

INSTRUMENTS = (
    Instrument(
        id="english-horn",
        name="English horn",
        abbreviation="E. Hn.",
        transposition=Interval.parse("P5"),
        lowest=Pitch.parse("B3"),
        highest=Pitch.parse("E6"),
        comfortable_low=Pitch.parse("D4"),
        comfortable_high=Pitch.parse("B5"),
        program=70,
    ),
)

CHARTS = {"english-horn": oboe.CHART}

BREATH = {"english-horn": 1.2}
