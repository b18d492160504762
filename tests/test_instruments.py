"""Instruments. Outside checks: music21.instrument for transpositions, lowest notes and General MIDI programs."""

from dataclasses import replace

import music21
import pytest

from fioritura.errors import OptionError
from fioritura.players.instruments import INSTRUMENTS, Instrument, instrument_named
from fioritura.theory.pitch import Pitch
from fioritura.words import say, speaking

REFERENCES = {
    "soprano-sax": music21.instrument.SopranoSaxophone,
    "alto-sax": music21.instrument.AltoSaxophone,
    "tenor-sax": music21.instrument.TenorSaxophone,
    "baritone-sax": music21.instrument.BaritoneSaxophone,
    "clarinet": music21.instrument.Clarinet,
    "bass-clarinet": music21.instrument.BassClarinet,
    "flute": music21.instrument.Flute,
    "oboe": music21.instrument.Oboe,
    "trumpet": music21.instrument.Trumpet,
    "trombone": music21.instrument.Trombone,
}


@pytest.mark.parametrize("id", REFERENCES)
def test_transposition_and_sound_as_in_music21(id: str) -> None:
    instrument, reference = INSTRUMENTS[id], REFERENCES[id]()
    assert instrument.program == reference.midiProgram + 1
    for name in ("C4", "F#4", "Bb4", "E5"):
        written = music21.pitch.Pitch(name.replace("b", "-"))
        expected = written.transpose(reference.transposition) if reference.transposition else written
        sounding = instrument.sounding(Pitch.parse(name))
        assert str(sounding) == expected.nameWithOctave.replace("-", "b")
        assert instrument.written(sounding) == Pitch.parse(name)


@pytest.mark.parametrize("id", [id for id in REFERENCES if id != "baritone-sax"])
def test_lowest_written_note_as_in_music21(id: str) -> None:
    assert str(INSTRUMENTS[id].lowest) == str(REFERENCES[id]().lowestNote).replace("-", "b")


def test_a_baritone_saxophone_has_the_low_a() -> None:  # common practice; music21 gives the older B flat
    assert INSTRUMENTS["baritone-sax"].lowest == Pitch.parse("A3")


def test_a_flugelhorn_transposes_and_sounds_as_a_trumpet() -> None:  # music21 has none; common practice
    flugelhorn, trumpet = INSTRUMENTS["flugelhorn"], INSTRUMENTS["trumpet"]
    assert (flugelhorn.transposition, flugelhorn.program) == (trumpet.transposition, trumpet.program)


@pytest.mark.parametrize("instrument", INSTRUMENTS.values(), ids=list(INSTRUMENTS))
def test_ranges_are_nested_and_reachable(instrument: Instrument) -> None:
    places = [
        instrument.lowest.midi,
        instrument.comfortable_low.midi,
        instrument.comfortable_high.midi,
        instrument.highest.midi,
    ]
    assert places == sorted(places)
    assert instrument.reaches(instrument.sounding(instrument.lowest))
    assert instrument.reaches(instrument.sounding(instrument.highest))
    assert not instrument.reaches(instrument.sounding(Pitch(instrument.lowest.step - 1, instrument.lowest.alter)))
    assert instrument_named(instrument.id) is instrument


def test_an_unknown_instrument_is_answered_with_those_there_are() -> None:
    with pytest.raises(OptionError, match="alto-sax"):
        instrument_named("kazoo")


@pytest.mark.parametrize(
    ("language", "title", "short"),
    [
        ("en", "Alto saxophone in E♭", "A. Sax."),
        ("de", "Altsaxophon in Es", "A.-Sax."),
        ("fr", "Saxophone alto en mi♭", "Sax. a."),
        ("es", "Saxofón alto en mi♭", "Sax. a."),
    ],
)
def test_instruments_are_named_in_each_language(language: str, title: str, short: str) -> None:
    alto = INSTRUMENTS["alto-sax"]
    with speaking(language):
        assert (say(alto.full_title), say(alto.abbreviation)) == (title, short)
        names = {say(instrument.name) for instrument in INSTRUMENTS.values()}
        assert len(names) == len(INSTRUMENTS)


def test_an_instrument_of_a_plugin_keeps_the_name_that_it_brings() -> None:
    horn = replace(INSTRUMENTS["oboe"], id="english-horn", name="English horn")
    with speaking("de"):
        assert (say(horn.name), say(horn.title)) == ("English horn", "English horn")
