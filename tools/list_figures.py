"""List every figure that a few tunes offer: ``python -m tools.list_figures`` rewrites the lists in tests/data/figures.

The lists are read by `tests/test_figure_lists.py`: a change of a rule shows there figure by figure, and is looked at
before it is taken over.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from fioritura.arrange.find import find_figures
from fioritura.players.player import Player
from fioritura.techniques.figure import Figure
from fioritura.techniques.place import Idiom, Setting, places
from fioritura.techniques.table import wanted_techniques
from fioritura.tune import Tune
from tests.tunes import line_of, random_tune

HOME = Path(__file__).parents[1] / "tests" / "data" / "figures"

TUNES: dict[str, tuple[Tune, str, float, Idiom]] = {
    "waltz": (random_tune(11, bars=4, metre="3/4"), "alto-sax", 96.0, "jazz"),
    "jig": (random_tune(12, bars=4, metre="6/8"), "flute", 150.0, "folk"),
    "long-notes": (
        line_of("C5/4 E5/3 r/1 G5/4 r/2 A5/1.5 B4/.5 D5/4", chords="Cmaj7 A7 Dm7 G7 C6"),
        "trumpet",
        80.0,
        "jazz",
    ),
    "leaps": (
        line_of("D4/1 A4/1 B4/1 A4/1 D5/2 F4/1.5 E4/.5 D4/3 C#4/1 D4/4", key="D minor", chords="Dm A7 Dm"),
        "tenor-sax",
        66.0,
        "jazz",
    ),
}
"""Name: the tune, who plays it, quarters a minute, and the idiom."""


def figure_list(name: str) -> Iterator[str]:
    """A line for each figure that a tune offers at level 5, in order of place."""
    tune, player, tempo, idiom = TUNES[name]
    setting = Setting(Player.of(player, 5), tempo, "straight", idiom)
    for _, figure in find_figures(places(tune, setting), wanted_techniques(5, (), ())):
        yield _line(tune, figure)


def _line(tune: Tune, figure: Figure) -> str:
    bar, beat = tune.beat_at(tune.notes[figure.anchors[0]].onset_ticks)
    notes = " ".join(
        f"{note.pitch}@{note.onset_ticks}+{note.duration_ticks}"
        + (f"={note.anchor}" if note.anchor is not None else "")
        + ("~" if note.joins else "")
        + "".join(f"!{mark}" for mark in note.marks)
        for note in figure.notes
    )
    head = f"{bar}:{beat:g} {figure.technique} slots {figure.first_slot}-{figure.last_slot}"
    window = f"{figure.start_ticks}-{figure.end_ticks}{' slurred' if figure.is_slurred else ''}"
    signs = " ".join([*map(str, figure.graces), *map(str, figure.marks)])
    return f"{head} of {','.join(map(str, figure.anchors))} | {window} | {notes} | {signs} | {figure.merit:g} | {figure.why}"


def main() -> None:
    """Rewrite the lists."""
    HOME.mkdir(parents=True, exist_ok=True)
    for name in TUNES:
        (HOME / f"{name}.txt").write_text("\n".join(figure_list(name)) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
