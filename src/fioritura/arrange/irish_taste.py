"""Where players of Irish dance music put cuts and rolls: a small model learned from their own books.

Each note of a tune bears a few named features: how long it is and where in its bar it stands, in jig time or in reel time,
and how the melody comes to it and leaves it. What they weigh stands in `irish_taste.json`, trained by `tools/train_irish.py`
on the cuts (single grace notes) and rolls of O'Neill's and Ryan's books in music21's corpus, in the tunes that have them.
The score of a note is the log-odds of the sign there. Books are sparing, and players are not alike: to each score a draw
is added that is the same for the same tune and place, so that as many notes of a kind bear a sign as in the books, and
not all of them or none.
"""

from __future__ import annotations

import json
from bisect import bisect_right
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from importlib.resources import files
from math import log
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import Chance
from fioritura.players.idiom import dance_of
from fioritura.techniques.context import Context
from fioritura.techniques.irish import CRAN, CUT, LONG_ROLL, SHORT_ROLL, STRIKE
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.tune import Note, Tune
from fioritura.words import Message, message

__all__ = ["draw_keys", "irish_draw", "irish_reasons", "irish_scores", "sign_features", "usual_score"]

_LONGEST_STEP, _LONGEST_THIRD = 2, 4
_LONGEST: Final = 4
_NEW_WAY: Final = 0.5
"""How often a bar that comes again gets draws of its own."""
_LEVEL_ODDS: Final = {1: -1.0, 2: -0.5, 3: 0.0, 4: 0.9, 5: 1.4}
"""Log-odds on top of the books' by the player's level: the third level plays what the books have."""

_CUTS: Final = frozenset({CUT.id, STRIKE.id})
_ROLLS: Final = frozenset({LONG_ROLL.id, SHORT_ROLL.id, CRAN.id})


def sign_features(tune: Tune) -> tuple[frozenset[str], ...]:
    """The features of each note, by name.

    Examples:
        >>> import fioritura
        >>> "before start" in sign_features(fioritura.demo_tune())[0]
        True
    """
    notes = tune.notes
    dance = dance_of(tune)
    found = []
    for index, note in enumerate(notes):
        bar = tune.bar_at(note.onset_ticks)
        rhythm = "jig" if bar.metre.is_compound else "reel"
        unit = SIXTEENTH if (bar.metre.beats, bar.metre.unit) == (2, 4) and dance in ("reel", "hornpipe") else EIGHTH
        beat = 3 * unit if rhythm == "jig" else 4 * unit
        offset = note.onset_ticks - bar.start_ticks + bar.metre_offset_ticks
        place = _place(offset, beat, unit if rhythm == "jig" else 2 * unit)
        length = _length(note, unit)
        before = _move(notes[index - 1], note) if index else "start"
        after = _move(note, notes[index + 1]) if index + 1 < len(notes) else "end"
        names = {f"{rhythm} {place}", f"{rhythm} {length}", f"{rhythm} {place} {length}"}
        moves = f"{before} then {after}"
        found.append(frozenset({*names, f"before {before}", f"after {after}", moves, f"{rhythm} {moves}"}))
    return tuple(found)


def _place(offset_ticks: int, beat_ticks: int, pulse_ticks: int) -> str:
    if offset_ticks == 0:
        return "bar"
    return "beat" if offset_ticks % beat_ticks == 0 else "off" if offset_ticks % pulse_ticks == 0 else "weak"


def _length(note: Note, unit_ticks: int) -> str:
    units, rest = divmod(note.duration_ticks, unit_ticks)
    return "odd" if rest or not units else str(min(units, _LONGEST))


def _move(one: Note, other: Note) -> str:
    if other.onset_ticks - one.end_ticks >= QUARTER:
        return "rest"
    by = other.pitch.midi - one.pitch.midi
    if by == 0:
        return "same"
    name = "2nd" if abs(by) <= _LONGEST_STEP else "3rd" if abs(by) <= _LONGEST_THIRD else "4th"
    return ("+" if by > 0 else "-") + name


@cache
def _weights() -> Mapping[str, Mapping[str, float]]:
    text = files("fioritura.arrange").joinpath("irish_taste.json").read_text(encoding="utf-8")
    weights: dict[str, dict[str, float]] = json.loads(text)["weights"]
    return weights


def usual_score(technique: Technique, features: Iterable[str]) -> float:
    """The log-odds of a cut or roll at a note with these features, in the tunes of the books that have any; 0.0 for
    other techniques.

    Examples:
        >>> from fioritura.techniques.turn import TURN
        >>> usual_score(TURN, ["jig bar"])
        0.0
    """
    kind = "cuts" if technique.id in _CUTS else "rolls" if technique.id in _ROLLS else None
    if kind is None:
        return 0.0
    weights = _weights()[kind]
    return weights["base"] + sum(weights.get(name, 0.0) for name in features)


def draw_keys(tune: Tune) -> tuple[str, ...]:
    """For each note what its draw hangs on: what its bar says, and where in it the note stands. A bar that comes again is
    played as before, or in a way of its own, as players do (bars come again in another form in 37 % of the books' tunes).

    Examples:
        >>> import fioritura
        >>> keys = draw_keys(fioritura.demo_tune())
        >>> len(set(keys)) <= len(keys) == len(fioritura.demo_tune().notes)
        True
    """
    starts = [bar.start_ticks for bar in tune.bars]
    by_bar: dict[int, list[Note]] = {}
    for note in tune.notes:
        by_bar.setdefault(max(bisect_right(starts, note.onset_ticks) - 1, 0), []).append(note)
    heard: Counter[str] = Counter()
    keys: list[str] = []
    for number, notes in by_bar.items():
        start = starts[number]
        said = " ".join(f"{note.onset_ticks - start}:{note.pitch.midi}" for note in notes)
        time = heard[said]
        heard[said] += 1
        is_new = time > 0 and Chance.of(0, "irish bar", tune.title, said, str(time)).happens(_NEW_WAY)
        keys += (f"{time if is_new else 0} {place} {said}" for place in range(len(notes)))
    return tuple(keys)


def irish_draw(technique: Technique, tune: Tune, key: str) -> float:
    """A draw from the logistic distribution, the same for the same technique, tune and key (`draw_keys`).

    Examples:
        >>> import fioritura
        >>> from fioritura.techniques.turn import TURN
        >>> tune = fioritura.demo_tune()
        >>> irish_draw(TURN, tune, "a place") == irish_draw(TURN, tune, "a place")
        True
    """
    part = min(max(Chance.of(0, "irish", technique.id, tune.title, key).unit(), 1e-6), 1.0 - 1e-6)
    return log(part / (1.0 - part))


def irish_reasons(context: Context, technique: Technique) -> dict[Message, float]:
    """What `irish_scores` adds for a technique at a note, by what it comes from.

    Examples:
        >>> import fioritura
        >>> from fioritura.techniques.context import contexts
        >>> from fioritura.techniques.turn import TURN
        >>> tune = fioritura.demo_tune()
        >>> len(irish_reasons(contexts(tune, fioritura.Setting().on(tune))[1], TURN))
        3
    """
    features = sign_features(context.tune)[context.index]
    return {
        message("feature-usual-place"): usual_score(technique, features),
        message("feature-level"): _LEVEL_ODDS[context.setting.level],
        message("feature-draw"): irish_draw(technique, context.tune, draw_keys(context.tune)[context.index]),
    }


def irish_scores(around: Sequence[Context], techniques: Sequence[Technique]) -> NDArray[np.float64]:
    """What place, level and draw add to each technique at each note: shape (notes, techniques).

    Examples:
        >>> import fioritura
        >>> from fioritura.techniques.context import contexts
        >>> tune = fioritura.demo_tune()
        >>> irish_scores(contexts(tune, fioritura.Setting().on(tune)), ()).shape == (len(tune.notes), 0)
        True
    """
    added = np.zeros((len(around), len(techniques)))
    if not techniques:
        return added
    tune = around[0].tune
    for context, features, key in zip(around, sign_features(tune), draw_keys(tune), strict=True):
        more = _LEVEL_ODDS[context.setting.level]
        for column, technique in enumerate(techniques):
            drawn = irish_draw(technique, tune, key)
            added[context.index, column] = usual_score(technique, features) + drawn + more
    return added
