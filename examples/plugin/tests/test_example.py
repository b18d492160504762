"""What the plugin adds, once it is installed beside Fioritura."""

from music21 import instrument as reference

import fioritura
from fioritura.players.fingering import fingering_path
from fioritura.players.instruments import all_instruments, instrument_named
from fioritura.players.limits import limits_of
from fioritura.techniques.table import technique_named
from fioritura.theory.pitch import Pitch

TUNE = (
    "X:1\nT:Air\nM:4/4\nL:1/4\nK:G\n"
    + '"G"g2 B d|"C"e2 "D7"d c|"Em"B G e2|"Am7"A2 "D7"D F|"G"G2 d2|"C"e g e2|"G"d4|]\n' * 2
)


def test_octave_grace_notes_lie_an_octave_below(tmp_path):
    path = tmp_path / "air.abc"
    path.write_text(TUNE)
    setting = fioritura.Setting("alto-sax", level=3)
    tune = fioritura.read(path, setting)
    found = fioritura.find(tune, setting, only=["octave-grace-lower"])
    assert found.figures
    for figure in found.figures:
        (grace,) = figure.graces
        assert tune.notes[figure.anchors[0]].pitch.midi - grace.midi == 12
    chosen = fioritura.choose(found)
    assert {figure.technique for figure in chosen.figures} == {"octave-grace-lower"}
    assert technique_named("octave-grace-lower").level == 3


def test_the_english_horn_is_that_of_music21():
    ours, theirs = instrument_named("english-horn"), reference.EnglishHorn()
    assert ours.transposition.semitones == -theirs.transposition.semitones
    assert ours in all_instruments().values()
    assert ours.program == theirs.midiProgram + 1


def test_it_is_fingered_and_has_breath():
    line = [Pitch.parse(name) for name in ("B3", "D4", "F#4", "B4", "E6")]
    assert len(fingering_path("english-horn", line).fingerings) == len(line)
    assert limits_of("english-horn", 3).breath_sec > limits_of("alto-sax", 3).breath_sec
