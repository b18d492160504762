"""`fioritura sounds`: which synth and soundfont are in use, their licences, and how to get a better one."""

from __future__ import annotations

import argparse
import shutil
from importlib.util import find_spec
from pathlib import Path
from typing import Any, Final

from fioritura.cli.options import print_json

__all__ = ["add_parser", "run"]

_ABOUT: Final = "Say which synth and soundfont are used, under which licence, and how to get a better one."

_ORIGINS: Final = {
    "set": "chosen by you",
    "system": "found on this system",
    "fallback": "comes with another package; small, good enough to practise with",
}

_BETTER: Final = """\
A better soundfont: any General MIDI .sf2 file. FluidR3 (MIT licence) is one; Debian and Ubuntu have it as the package
fluid-soundfont-gm. Without root, put the file into ~/.local/share/soundfonts, where it is found by itself, or name it:
  {variable}=/path/to/file.sf2 fioritura play ...        or        fioritura play ... --soundfont /path/to/file.sf2"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser("sounds", help="which synth and soundfont are used", description=_ABOUT)
    parser.add_argument("--soundfont", type=Path, metavar="FILE", help="look at this .sf2 file")
    parser.add_argument("--json", action="store_true", help="print it as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Say what is used."""
    from fioritura.sound.soundfont import SOUNDFONT_VARIABLE, find_soundfont

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
                "variable": SOUNDFONT_VARIABLE,
            }
        )
        return 0
    print(f"Soundfont  {font.name} ({_ORIGINS[font.origin]})")
    print(f"           {font.path}")
    print(f"Licence    {font.licence}")
    synths = ["built-in"] if find_spec("midirenderer") else []
    synths += [f"fluidsynth ({program}), by --synth fluidsynth"] if program else []
    print(f"Synth      {', '.join(synths) or 'none: install the fluidsynth program'}")
    print()
    print(_BETTER.format(variable=SOUNDFONT_VARIABLE))
    return 0
