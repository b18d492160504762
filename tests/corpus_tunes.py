"""Real tunes for tests and measures: the monophonic ABC books of music21's corpus, read by our own reader.

O'Neill's Music of Ireland, Ryan's Mammoth Collection, Aird's Airs and the Essen folk-song collection; all in the public
domain or free to use, as music21 distributes them.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from fioritura.arrange.harmonise import harmonise
from fioritura.errors import FiorituraError
from fioritura.notation.abc.reader import AbcEntry, list_abc
from fioritura.tune import Tune

BOOKS = ("oneills1850", "ryansMammoth", "airdsAirs", "essenFolksong")


@cache
def book_entries() -> tuple[AbcEntry, ...]:
    """Every tune of the books, unread, in order of file and place."""
    from music21 import corpus

    paths = sorted(
        Path(path) for path in corpus.getCorePaths(fileExtensions=("abc",)) if Path(path).parent.name in BOOKS
    )
    return tuple(entry for path in paths for entry in list_abc(path.read_bytes().decode("utf-8", "replace")))


@cache
def corpus_tunes(step: int = 5, fewest_notes: int = 24) -> tuple[Tune, ...]:
    """Every `step`-th tune of at least `fewest_notes` notes, with chords inferred; those that can't be read left out."""
    found = []
    for entry in book_entries()[::step]:
        try:
            tune = entry.read(irregular="keep")
        except FiorituraError:
            continue
        if len(tune.notes) >= fewest_notes:
            found.append(harmonise(tune))
    return tuple(found)
