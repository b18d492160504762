"""`fioritura sounds`: which voices, synth and soundfont are in use, their licences, and how to get better ones."""

from __future__ import annotations

import argparse
import shutil
from importlib.util import find_spec
from pathlib import Path
from typing import Any, Final

from fioritura.cli.options import print_json, print_words
from fioritura.words import Value, message

__all__ = ["add_parser", "run"]

_ABOUT: Final = "Say which synth and soundfont are used, under which licence, and how to get a better one."


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser("sounds", help="which synth and soundfont are used", description=_ABOUT)
    parser.add_argument("--soundfont", type=Path, metavar="FILE", help="look at this .sf2 or .sf3 file")
    parser.add_argument("--json", action="store_true", help="print it as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Say what is used."""
    from fioritura.sound.soundfont import SOUNDFONT_VARIABLE, find_soundfont
    from fioritura.sound.voice.winds import voices_source

    font = find_soundfont(options.soundfont)
    program = shutil.which("fluidsynth")
    if options.json:
        print_json(
            {
                "soundfont": {
                    "path": str(font.path),
                    "name": font.name,
                    "licence": font.licence,
                    "origin": font.origin,
                },
                "synths": {"built-in": find_spec("midirenderer") is not None, "fluidsynth": program},
                "voices": {"source": voices_source()},
                "variable": SOUNDFONT_VARIABLE,
            }
        )
        return 0
    print_words("cli-voice")
    print_words("cli-soundfont", name=font.name, origin=font.origin, path=str(font.path))
    print_words("cli-licence", licence=font.licence)
    synths: list[Value] = [message("cli-synth-built-in")] if find_spec("midirenderer") else []
    synths += [message("cli-synth-fluidsynth", path=program)] if program else []
    print_words("cli-synths", synths=tuple(synths), count=len(synths))
    print()
    print_words("cli-better-soundfont", variable=SOUNDFONT_VARIABLE)
    print()
    print_words("cli-sampled-voices")
    return 0
