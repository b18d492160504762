"""A rendition: a tune with a set of figures that do not collide, laid out as one line of notes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from typing import Final

from fioritura.arrange.plan import Plan
from fioritura.errors import TuneError
from fioritura.players.articulation import articulated
from fioritura.players.phrasing import Phrasing, phrased, phrasing_of
from fioritura.players.setting import Setting
from fioritura.players.shading import shaded
from fioritura.techniques.figure import Figure, head
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.tune import Mark, Note, Tune
from fioritura.words import Message

__all__ = ["Rendition", "kept_part", "kept_share", "laid_out", "note_weights"]

_LAST_NOTE_MARKS: Final = frozenset({Mark.SLUR_STOP, Mark.FERMATA, Mark.BREATH, Mark.HAIRPIN_STOP})
_DROPPED_MARKS: Final = frozenset({Mark.STACCATO, Mark.TENUTO})


@dataclass(frozen=True, repr=False)
class Rendition:
    """One version of a tune. `figures` stand in order of place and do not collide."""

    tune: Tune
    setting: Setting
    figures: tuple[Figure, ...]
    seed: int = 0
    score: float = 0.0
    plan: Plan | None = None
    """The plan by which it was chosen; None where the tune is played once, all of it alike."""

    def __repr__(self) -> str:
        return f"<Rendition of {self.tune.title!r}: {len(self.figures)} figures, seed {self.seed}>"

    @cached_property
    def line(self) -> tuple[Note, ...]:
        """The ornamented line as it is written and played: with breaths, articulation and dynamics.

        Each note knows its plain note (`anchor`), its figures and its phrase. Without figures nothing but breaths is added."""
        if not self.figures:
            return self.phrased_line
        line = articulated(self.tune, self.phrased_line, self.setting)
        return shaded(self.tune, line, self.setting, self.plan.levels(self.tune, line) if self.plan else None)

    @cached_property
    def phrased_line(self) -> tuple[Note, ...]:
        """The ornamented line, breaths marked, before its second pass."""
        return phrased(self._laid_out, self.phrasing)

    @cached_property
    def plain_line(self) -> tuple[Note, ...]:
        """The tune's own notes, phrased and with the breaths of a player of the setting."""
        tune, setting = self.tune, self.setting
        return phrased(tune.notes, phrasing_of(tune, tune.notes, setting.player, setting.quarters_per_minute))

    @cached_property
    def phrasing(self) -> Phrasing:
        """Phrases of the line, and where the player breathes at the tempo."""
        return phrasing_of(self.tune, self._laid_out, self.setting.player, self.setting.quarters_per_minute)

    @cached_property
    def _laid_out(self) -> tuple[Note, ...]:
        return laid_out(self.tune, self.figures)

    @cached_property
    def kept_share(self) -> float:
        """See `kept_share`."""
        return kept_share(self.tune, self._laid_out)


def laid_out(tune: Tune, figures: Sequence[Figure]) -> tuple[Note, ...]:
    """Write figures over the plain tune.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> [note.anchor for note in laid_out(tune, ())[:3]]
        [0, 1, 2]

    Raises:
        TuneError: two figures claim the same slot or time.
    """
    starts = [note.onset_ticks for note in tune.notes]
    ends = [note.end_ticks for note in tune.notes]
    graces: dict[int, tuple[int, Figure]] = {}
    marks: dict[int, list[tuple[int, Mark]]] = {}
    pieces: list[tuple[Note, bool]] = []
    claimed: set[int] = set()
    for number, figure in enumerate(figures):
        slots = set(range(figure.first_slot, figure.last_slot + 1))
        if claimed & slots:
            raise TuneError(
                "figures-collide", technique=_name(figure), where=tune.position_at(starts[figure.anchors[0]])
            )
        claimed |= slots
        if figure.graces:
            graces[figure.anchors[0]] = (number, figure)
        for mark in figure.marks:
            marks.setdefault(figure.anchors[0], []).append((number, mark))
        _cut_out(figure, starts, ends)
        pieces += _figure_pieces(tune, figure, number)
    for index, note in enumerate(tune.notes):
        if starts[index] < ends[index]:
            owners = [number for number, _ in marks.get(index, [])]
            added: tuple[Mark, ...] = tuple(mark for _, mark in marks.get(index, []))
            before = note.graces
            if index in graces:
                owners.append(graces[index][0])
                before += graces[index][1].graces
            plain = replace(
                note,
                onset_ticks=starts[index],
                duration_ticks=ends[index] - starts[index],
                graces=before,
                marks=note.marks + added,
                anchor=index,
                figures=tuple(sorted(owners)),
            )
            pieces.append((plain, False))
    pieces.sort(key=lambda piece: piece[0].onset_ticks)
    return _slurred(list(_joined(pieces)), figures)


def _name(figure: Figure) -> Message:
    return technique_named(figure.technique).name


def _cut_out(figure: Figure, starts: list[int], ends: list[int]) -> None:
    for index in range(figure.first_slot // 2, figure.last_slot // 2 + 1):
        if figure.start_ticks <= starts[index] and ends[index] <= figure.end_ticks:
            ends[index] = starts[index]
        elif figure.start_ticks <= starts[index] < figure.end_ticks:
            starts[index] = figure.end_ticks
        elif figure.start_ticks < ends[index] <= figure.end_ticks:
            ends[index] = figure.start_ticks
        elif starts[index] < figure.start_ticks < figure.end_ticks < ends[index]:
            raise TuneError("figure-splits-note", technique=_name(figure), number=index + 1)


def _figure_pieces(tune: Tune, figure: Figure, number: int) -> Iterable[tuple[Note, bool]]:
    """The figure's notes; lyrics and articulations of a plain note go to the note that now stands for it."""
    seen: set[int] = set()
    count = len(figure.notes)
    last_of = {written.anchor: number for number, written in enumerate(figure.notes) if not written.joins}
    for context, written in enumerate(figure.notes):
        note = Note(
            written.onset_ticks,
            written.duration_ticks,
            written.pitch,
            marks=written.marks,
            anchor=written.anchor,
            figures=(number,),
        )
        if written.anchor is not None and not written.joins and written.anchor not in seen:
            seen.add(written.anchor)
            plain = tune.notes[written.anchor]
            kept = tuple(m for m in plain.marks if m not in _DROPPED_MARKS and m not in _LAST_NOTE_MARKS)
            note = replace(note, marks=note.marks + kept, lyric=plain.lyric)
        if context == count - 1 and len(figure.anchors) == 1 and not written.joins:
            plain = tune.notes[figure.anchors[0]]
            if plain.end_ticks == note.end_ticks:
                note = replace(note, marks=note.marks + tuple(m for m in plain.marks if m in _LAST_NOTE_MARKS))
        elif len(figure.anchors) > 1 and written.anchor is not None and last_of.get(written.anchor) == context:
            plain = tune.notes[written.anchor]
            note = replace(note, marks=note.marks + tuple(m for m in plain.marks if m in _LAST_NOTE_MARKS))
        yield note, written.joins


def _joined(pieces: Sequence[tuple[Note, bool]]) -> Iterable[Note]:
    """Merge a joining piece with what is left of its anchor beside it."""
    line: list[tuple[Note, bool]] = []
    for note, joins in pieces:
        if line:
            last, last_joins = line[-1]
            touches = last.end_ticks == note.onset_ticks and last.anchor == note.anchor is not None
            if touches and (joins or last_joins):
                line[-1] = (
                    replace(
                        last,
                        duration_ticks=last.duration_ticks + note.duration_ticks,
                        graces=last.graces + note.graces,
                        marks=tuple(dict.fromkeys(last.marks + note.marks)),
                        lyric=last.lyric or note.lyric,
                        figures=tuple(sorted({*last.figures, *note.figures})),
                    ),
                    False,
                )
                continue
        line.append((note, joins))
    return (note for note, _ in line)


def _slurred(line: list[Note], figures: Sequence[Figure]) -> tuple[Note, ...]:
    """Slur the figures that ask for it, wherever the file has no slur of its own."""
    is_open, taken = False, []
    for note in line:
        touches = is_open or Mark.SLUR_START in note.marks or Mark.SLUR_STOP in note.marks
        taken.append(touches)
        is_open = Mark.SLUR_START in note.marks or (is_open and Mark.SLUR_STOP not in note.marks)
    made: dict[int, list[int]] = {}
    for context, note in enumerate(line):
        for number in note.figures:
            made.setdefault(number, []).append(context)
    for number, contexts in made.items():
        figure = figures[number]
        if not (figure.is_slurred and figure.notes):
            continue
        leads_on = figure.last_slot == head(figure.last_slot // 2) and figure.notes[-1].anchor is None
        first, last = contexts[0], contexts[-1] + (1 if leads_on else 0)
        if first < last < len(line) and not any(taken[first : last + 1]):
            line[first] = replace(line[first], marks=(*line[first].marks, Mark.SLUR_START))
            line[last] = replace(line[last], marks=(Mark.SLUR_STOP, *line[last].marks))
            taken[first:last] = [True] * (last - first)
    return tuple(line)


@lru_cache(maxsize=8)
def note_weights(tune: Tune) -> tuple[float, ...]:
    """How much each plain note counts for recognising the tune: its quarters times its metrical weight.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> weights = note_weights(tune)
        >>> weights[3] > weights[2]  # the longer note on the stronger beat
        True
    """
    return tuple(note.duration_ticks / SIXTEENTH * (0.25 + tune.strength_at(note.onset_ticks)) for note in tune.notes)


def kept_part(semitones: int, ticks: int) -> float:
    """How much of a plain note is kept where it is played so many semitones and ticks away, 0.0-1.0: all of it within an
    eighth, half of it within a quarter, or in the next octave.

    Examples:
        >>> kept_part(0, -EIGHTH), kept_part(0, EIGHTH + 1), kept_part(12, 0), kept_part(2, 0)
        (1.0, 0.5, 0.5, 0.0)
    """
    octaves, other = divmod(abs(semitones), 12)
    if other or octaves > 1 or abs(ticks) > QUARTER:
        return 0.0
    return (0.5 if octaves else 1.0) * (1.0 if abs(ticks) <= EIGHTH else 0.5)


def kept_share(tune: Tune, line: Sequence[Note]) -> float:
    """Weighted share (0.0-1.0) of the tune that is kept (see `kept_part`): plain notes with their pitch, near their place.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> kept_share(tune, laid_out(tune, ())), kept_share(tune, ())
        (1.0, 0.0)
    """
    weights = note_weights(tune)
    kept: dict[int, float] = {}
    for note in line:
        if note.anchor is not None:
            plain = tune.notes[note.anchor]
            part = kept_part(note.pitch.midi - plain.pitch.midi, note.onset_ticks - plain.onset_ticks)
            kept[note.anchor] = max(kept.get(note.anchor, 0.0), part)
    total = sum(weights)
    return sum(weights[anchor] * part for anchor, part in kept.items()) / total if total else 1.0
