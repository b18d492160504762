"""List what the rules say: ``python -m tools.list_rules`` rewrites the lists in tests/data/rules.

Every figure that a few tunes offer, and the notes and scales of many chord symbols in several keys. The lists are read by
`tests/test_rule_lists.py`: a change of a rule shows there line by line, and is looked at before it is taken over.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import Final

from fioritura.arrange.find import find_figures
from fioritura.errors import FiorituraError
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.techniques.context import contexts
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import wanted_techniques
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.scale import blues_scale, chord_scale, pentatonic
from fioritura.tune import Tune
from tests.tunes import line_of, random_tune

HOME = Path(__file__).parents[1] / "tests" / "data" / "rules"

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
    "answers": (
        line_of(
            "E5/1 r/3 G4/4 r/2.5 C5/1.5 D5/6 r/2 F4/3.5 A5/4.5 B4/5 r/3 Bb4/4 C5/4",
            chords="C7 F7 Bdim7 G7 Am7 Ebmaj7 D7 G7b9 Bb7 C C",
        ),
        "clarinet",
        72.0,
        "jazz",
    ),
    "leaps-in-flats": (
        line_of(
            "Db5/1 F5/.5 Ab5/.5 Gb5/2 Db5/1 Db5/1 Ab4/2 Bb4/1 Ab4/.5 Gb4/.5 F4/2 Eb4/3 Ab4/1 Db5/4",
            key="Db major",
            chords="Db Ebm7 Ab7sus4 Ab7 Fm7b5 Bb7alt Ebm7 Db6",
        ),
        "concert",
        100.0,
        "folk",
    ),
}
"""Name: the tune, who plays it, quarters a minute, and the idiom."""


def figure_list(name: str) -> Iterator[str]:
    """A line for each figure that a tune offers at level 5, in order of place."""
    tune, player, tempo, idiom = TUNES[name]
    setting = Setting(Player.of(player, 5), tempo, "straight", idiom)
    for _, figure in find_figures(contexts(tune, setting), wanted_techniques(5, (), ())):
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


SYMBOLS: Final = (
    *(
        "",
        "m",
        "dim",
        "aug",
        "sus4",
        "sus2",
        "sus24",
        "5",
        "6",
        "m6",
        "6/9",
        "m6/9",
        "7",
        "maj7",
        "m7",
        "m(maj7)",
        "m#7",
        "dim7",
        "m7b5",
    ),
    *(
        "7sus4",
        "maj7sus4",
        "9sus4",
        "13sus4",
        "9",
        "maj9",
        "m9",
        "11",
        "maj11",
        "m11",
        "13",
        "maj13",
        "m13",
        "add9",
        "madd9",
        "add11",
    ),
    *(
        "7b5",
        "7#5",
        "7b9",
        "7#9",
        "7#11",
        "7b13",
        "7(b9,#11)",
        "7(b9,b13)",
        "7(#9,#5)",
        "9#11",
        "13b9",
        "13#11",
        "7alt",
        "maj7#11",
        "maj7#5",
    ),
    *(
        "+7",
        "m7b13",
        "m9b5",
        "dim(maj7)",
        "6#11",
        "no3",
        "7no5",
        "/3",
        "m7/11",
        "maj7b5",
        "69#11",
        "m(add11)",
        "7sus4b9",
    ),
)
ROOTS: Final = ("C", "F#", "Bb", "E", "Ab")
KEYS: Final = (Key.of("C"), Key.of("Bb"), Key.of("E", "minor"), Key.of("D", "dorian"), Key.of("Ab", "mixolydian"))


def chord_list() -> Iterator[str]:
    """A line for each chord symbol and key: its notes, its text anew, its scale and its pentatonic."""
    for root in ROOTS:
        for suffix in SYMBOLS:
            text = (
                f"{root}{suffix}"
                if not suffix.startswith("/")
                else f"{root}/{Key.of(root).scale[int(suffix[1:]) - 1]}"
            )
            try:
                chord = read_chord(text)
            except FiorituraError as error:
                yield f"{text}: {error}"
                continue
            assert chord is not None
            tones = " ".join(map(str, chord.tones))
            yield f"{text}: {chord.text} = {tones}; guides {' '.join(map(str, chord.guide_tones))}; {chord.kind} {chord.display}"
            for key in KEYS:
                scale, five = chord_scale(chord, key), pentatonic(chord, key)
                yield f"    in {key}: {scale} ({' '.join(map(str, scale.names))}), {five}"


def spelling_list() -> Iterator[str]:
    """How each key spells every note, upwards and downwards."""
    for fifths in range(-7, 8):
        for mode in ("major", "minor", "dorian", "mixolydian"):
            key = Key(fifths, mode)
            ways = (" ".join(str(key.spell(midi, way)) for midi in range(60, 73)) for way in ("up", "down"))
            yield f"{key}: {' | '.join(ways)} | blues {' '.join(map(str, blues_scale(key).names))}"


LISTS: Final[dict[str, Callable[[], Iterator[str]]]] = {
    **{name: partial(figure_list, name) for name in TUNES},
    "chords": chord_list,
    "spelling": spelling_list,
}


def main() -> None:
    """Rewrite the lists."""
    HOME.mkdir(parents=True, exist_ok=True)
    for name, lines in LISTS.items():
        (HOME / f"{name}.txt").write_text("\n".join(lines()) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
