"""`fioritura transcribe`: write down what was played."""

from __future__ import annotations

import argparse
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import print_files, print_json, print_note, print_words
from fioritura.players.instrument import INSTRUMENTS
from fioritura.words import message, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from fioritura.listening.metres import Reading
    from fioritura.listening.notes import Take
    from fioritura.players.instruments import Instrument
    from fioritura.theory.key import Key
    from fioritura.tune import Tune

__all__ = ["add_parser", "run"]

_ABOUT = """\
Write down a recording of one wind player: bars, key, rhythm with the swing taken out, grace notes and slurs.

  fioritura transcribe take.wav
  fioritura transcribe take.mp3 --key Bb --metre 3/4 --tempo 132 --player tenor-sax --out take

Key, metre, tempo and the place of the bar line are found from the notes unless they are given. A line can often be
counted in more ways than one: the two or three likeliest are listed, the first is written, and --reading 2 writes the
second. A tempo that is about right helps most.
"""

_LOW_MIDI = 57
"""A line whose middle note lies below this A stands in the bass clef at concert pitch."""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "transcribe",
        help="write down a recording as notation",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("take", type=Path, metavar="TAKE", help="a WAV, FLAC, MP3 or OGG recording")
    parser.add_argument("--key", metavar="KEY", help="sounding key, as Bb, Am or D-dorian (default: found)")
    parser.add_argument("--metre", metavar="METRE", help="as 3/4 or 6/8 (default: found)")
    parser.add_argument(
        "--reading",
        type=int,
        choices=(1, 2, 3),
        default=1,
        help="which of the readings of metre and tempo is written",
    )
    parser.add_argument("--pickup", type=float, metavar="BEATS", help="beats before the first bar line, 0 for none")
    parser.add_argument(
        "--tempo", type=float, metavar="BPM", help="beats a minute, about (in 6/8 dotted quarters; default: found)"
    )
    parser.add_argument(
        "--player", metavar="INSTRUMENT", help=f"write it for this instrument: {', '.join(INSTRUMENTS)}"
    )
    parser.add_argument("--title", default="", metavar="TEXT", help="what stands over it (default: the file's name)")
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder for the files (default: the take's name)")
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4")
    parser.add_argument("--json", action="store_true", help="print what was written down as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Hear, write down, and give out."""
    from fioritura.listening.hear import hear
    from fioritura.listening.metres import readings
    from fioritura.listening.transcribe import main_onsets, transcribe
    from fioritura.listening.words import refuse_unclear
    from fioritura.players.instruments import instrument_named
    from fioritura.theory.metre import Metre

    key = _key_of(options.key) if options.key else None
    metre = Metre.parse(options.metre) if options.metre else None
    instrument = instrument_named(options.player) if options.player else None
    take = hear(options.take)
    refuse_unclear(take, options.take.name)
    title = options.title or options.take.stem.replace("_", " ")
    found = readings(main_onsets(take), options.tempo)
    reading = found[min(options.reading, len(found)) - 1]
    tempo = options.tempo or (None if metre else reading.beats_per_minute)
    tune = transcribe(
        take,
        key=key,
        metre=metre or reading.metre,
        beats_per_minute=tempo,
        pickup_beats=options.pickup,
        title=title,
    )
    instrument = instrument or _concert(tune)
    files = _write(options, tune, instrument)
    for warning in tune.warnings:
        print_note(warning)
    if options.json:
        print_json(_record(tune, take, () if metre else found, files))
    else:
        _say(tune, take, instrument, files)
        for number, one in enumerate(() if metre else found, start=1):
            if one is not reading:
                tempo = round(one.beats_per_minute)
                print_words("cli-other-reading", number=number, metre=str(one.metre), tempo=tempo)
    return 0


def _key_of(text: str) -> Key:
    """A key as it is named: ``"Bb"``, ``"Am"``, ``"F# minor"``, ``"D-dorian"``."""
    from fioritura.errors import OptionError, TuneError
    from fioritura.theory.key import Key

    match = re.fullmatch(r"\s*([A-Ga-g][#♯b♭]?)[\s-]*(m?|[a-zA-Z]{3,})\s*", text)
    try:
        if match:
            return Key.of(match[1].capitalize(), {"": "major", "m": "minor"}.get(match[2], match[2].lower()))
    except TuneError as error:
        raise OptionError("cli-bad-key", given=text, reason=error.message) from None
    raise OptionError("cli-no-key", given=text)


def _concert(tune: Tune) -> Instrument:
    """Concert pitch in the clef that the line asks for."""
    from dataclasses import replace
    from statistics import median

    is_low = median(note.pitch.midi for note in tune.notes) < _LOW_MIDI
    return replace(INSTRUMENTS["concert"], clef="bass") if is_low else INSTRUMENTS["concert"]


def _write(options: argparse.Namespace, tune: Tune, instrument: Instrument) -> list[Path]:
    from fioritura.files import staged_folder
    from fioritura.notation.engraving.sheet import line_pdf
    from fioritura.notation.musicxml.writer import write_musicxml
    from fioritura.notation.score import Score, Staff
    from fioritura.sound.midi_writer import write_midi
    from fioritura.sound.perform import perform

    folder = options.out or Path(f"{options.take.stem}-transcription")
    score = Score(
        tune, (Staff(tune.notes, "", instrument),), subtitle=say(message("cli-as-played", name=options.take.name))
    )
    contents = {
        "transcription.musicxml": write_musicxml(score),
        "transcription.pdf": line_pdf(score, paper=options.paper, note=""),
        "transcription.mid": write_midi(perform(tune, tune.notes, instrument=instrument)),
    }
    with staged_folder(folder) as stage:
        for name, content in contents.items():
            (stage / name).write_bytes(content)
    return [folder / name for name in contents]


def _record(tune: Tune, take: Take, found: Sequence[Reading], files: list[Path]) -> dict[str, Any]:
    """What `--json` prints."""
    from fioritura.theory.metre import QUARTER
    from fioritura.words.record import record

    def note_record(number: int) -> dict[str, Any]:
        note = tune.notes[number]
        bar, beat = tune.beat_at(note.onset_ticks)
        return {
            "bar": bar,
            "beat": round(beat, 4),
            "pitch": str(note.pitch),
            "midi": note.pitch.midi,
            "quarters": round(note.duration_ticks / QUARTER, 4),
            "graces": [str(pitch) for pitch in note.graces],
            "marks": [str(mark) for mark in note.marks],
        }

    return {
        "title": tune.title,
        "key": str(tune.key),
        "metre": str(tune.metre),
        "quarters_per_minute": tune.quarters_per_minute,
        "feel": tune.feel,
        "bars": len(tune.bars),
        "tuning_cents": take.tuning_cents,
        "readings": [
            {"metre": str(one.metre), "beats_per_minute": one.beats_per_minute, "likelihood": one.likelihood}
            for one in found
        ],
        "heard": take.heard(),
        "notes": [note_record(number) for number in range(len(tune.notes))],
        "findings": record(take.findings),
        "files": [str(path) for path in files],
    }


def _say(tune: Tune, take: Take, instrument: Instrument, files: list[Path]) -> None:
    from fioritura.theory.metre import QUARTER

    graces = sum(len(note.graces) for note in tune.notes)
    beats = tune.quarters_per_minute / (tune.metre.beat_ticks / QUARTER)
    print_words(
        "cli-transcribed",
        title=tune.title,
        notes=len(tune.notes),
        graces=graces,
        bars=len(tune.bars),
        metre=str(tune.metre),
        key=tune.key,
        written=tune.key.transposed(instrument.transposition),
        transposes=tune.key.transposed(instrument.transposition) != tune.key,
        tempo=round(beats),
        feel=tune.feel,
        tuning=f"{take.tuning_cents:+.0f}",
    )
    print_files(files)
