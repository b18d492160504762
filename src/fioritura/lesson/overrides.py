"""The teacher's own words, from a text file: title, notes, studio line, and the text of any technique.

The file is plain text. Lines ``name: words`` set a word; an indented line goes on with the one before, an empty one
between indented lines begins a paragraph; ``[turn]`` begins the words of the technique with that id::

    title: Lanterns for Anna
    studio: Harbour Street Studio, Tuesdays at four
    notes: Learn the plain tune by heart first.
        Then choose three ornaments that you like.

    [turn]
    how: Think of a small wave.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from fioritura.errors import OptionError
from fioritura.files import read_bytes
from fioritura.techniques.table import technique_named

__all__ = ["LONGEST", "NAMES", "TECHNIQUE_FIELDS", "Overrides", "parse_overrides", "read_overrides"]

TECHNIQUE_FIELDS: Final = ("name", "label", "text", "how", "when", "fault", "cure")
"""The texts of a technique."""

NAMES: Final = ("title", "subtitle", "composer", "student", "studio", "notes", "rights")
LONGEST: Final = 4000
_SIZE_LIMIT: Final = 256 * 1024
_WORD: Final = re.compile(r"(\w[\w-]*)\s*:\s*(.*)")


@dataclass(frozen=True)
class Overrides:
    """What the teacher puts in place of the usual: `words` by name, and `techniques` by id and field."""

    words: Mapping[str, str] = field(default_factory=dict)
    techniques: Mapping[str, Mapping[str, str]] = field(default_factory=dict)

    def get(self, name: str, usual: str = "") -> str:
        """The teacher's word, or the usual one."""
        return self.words.get(name, usual)


def read_overrides(path: Path) -> Overrides:
    """Read a file of overrides.

    Raises:
        ReadError: it can't be read.
        OptionError: a line is no ``name: words``, or names what can't be overridden.
    """
    try:
        return parse_overrides(read_bytes(path, _SIZE_LIMIT).decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise OptionError("override-not-text", file=str(path)) from None


def parse_overrides(text: str) -> Overrides:
    """The overrides of a text; errors are those of `read_overrides`."""
    words: dict[str, str] = {}
    techniques: dict[str, dict[str, str]] = {}
    target, allowed, name = words, NAMES, ""
    for number, line in enumerate(text.splitlines(), start=1):
        stripped = line.strip()
        if stripped.startswith("#"):
            continue
        if not stripped or (line[0].isspace() and name):
            if name and stripped:
                joint = " " if target[name] and not target[name].endswith("\n\n") else ""
                target[name] += joint + stripped
            elif name:
                target[name] = target[name].rstrip() + "\n\n"
        elif stripped.startswith("[") and stripped.endswith("]"):
            id = technique_named(stripped[1:-1].strip()).id
            target, allowed, name = techniques.setdefault(id, {}), TECHNIQUE_FIELDS, ""
        else:
            found = _WORD.fullmatch(stripped)
            if not found or found[1] not in allowed:
                raise OptionError("override-bad-line", line=number, text=stripped[:40], known=allowed)
            name = found[1]
            target[name] = found[2]
    for table in (words, *techniques.values()):
        for key, value in table.items():
            table[key] = value.strip()
            if len(value) > LONGEST:
                raise OptionError("override-too-long", name=key, letters=len(value), limit=LONGEST)
    return Overrides(words, techniques)
