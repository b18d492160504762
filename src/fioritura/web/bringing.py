"""From sources to arrangements on the shelf: at once for a few, in a process of its own for a folder."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from fioritura.arrange.arrangement_file import arrangement_to_json
from fioritura.errors import FiorituraError
from fioritura.notation.abc.faults import AbcError
from fioritura.players.setting import Idiom
from fioritura.shelf.store import Shelf
from fioritura.web.intake import ReadingOptions, Source, each_tune, facts_of, first_arrangement
from fioritura.web.jobs import Bench, Made
from fioritura.web.models import Problem, Welcome
from fioritura.web.views import tune_view
from fioritura.words import kept, message, say

__all__ = ["TYPED", "Arranged", "Choices", "arrange_all", "each_arranged", "problem_of", "shelved"]


TYPED: Final = "typed.abc"
"""The name of a source that was typed on the page, not brought in as a file."""


@dataclass(frozen=True, slots=True)
class Choices:
    """For whom tunes are arranged when they are brought in, and with which tags they are put on the shelf."""

    player: str
    level: int
    idiom: Idiom | None
    unfolds: bool
    tags: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Arranged:
    """A tune that was read and arranged, ready for the shelf."""

    title: str
    composer: str
    facts: Mapping[str, Any]
    source: Source
    reading: ReadingOptions
    text: str


def each_arranged(source: Source, choices: Choices) -> Iterator[Arranged | Problem]:
    """Every tune of a source arranged, or what kept it from that."""
    for reading, tune in each_tune(source, unfolds=choices.unfolds):
        try:
            if isinstance(tune, FiorituraError):
                raise tune
            arrangement = first_arrangement(
                tune, choices.player, choices.level, choices.idiom, unfolds=choices.unfolds
            )
            text = arrangement_to_json(arrangement, is_compact=True)
            yield Arranged(tune.title, tune.composer, facts_of(tune), source, reading, text)
        except FiorituraError as error:
            yield _problem_in(source, problem_of(error))


def _problem_in(source: Source, problem: Problem) -> Problem:
    if source.name == TYPED:
        return problem
    said = message("upload-problem", file=source.name, problem=problem.problem)
    return problem.model_copy(update={"problem": say(said)})


def shelved(shelf: Shelf, found: Sequence[Arranged | Problem], tags: tuple[str, ...]) -> Welcome:
    """Put what was arranged on the shelf."""
    welcome = Welcome(tunes=[], problems=[])
    for one in found:
        if isinstance(one, Problem):
            welcome.problems.append(one)
            continue
        try:
            id = shelf.add_tune(
                one.title,
                one.composer,
                facts=one.facts,
                source_name=one.source.name,
                source=one.source.content,
                reading=one.reading.data(),
                tags=tags,
            )
            shelf.add_arrangement(id, kept(message("arrangement-first")), one.text)
            welcome.tunes.append(tune_view(shelf.tune(id)))
        except FiorituraError as error:
            welcome.problems.append(problem_of(error))
    return welcome


def arrange_all(bench: Bench, sources: Sequence[Source], choices: Choices) -> Made:
    """As a job: the tunes of many sources; the server puts them on the shelf."""
    found: list[Arranged | Problem] = []
    bench.tell("reading", 0, len(sources))
    for number, source in enumerate(sources, start=1):
        found += each_arranged(source, choices)
        bench.tell("reading", number, len(sources))
    return Made({"found": found})


def problem_of(error: FiorituraError) -> Problem:
    """What an error says, and where in the ABC it lies."""
    if isinstance(error, AbcError):
        return Problem(
            problem=say(error.problem),
            line=error.line,
            column=error.column,
            length=max(1, len(error.text.rstrip())),
        )
    return Problem(problem=str(error))
