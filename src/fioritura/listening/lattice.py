"""The lattice of readings: every figure that the technique table allows, as an arc over a plain tune.

A reading of a played line is a path through the slots of the plain tune (`figure.head`, `figure.tail`). An arc leads
from one slot to another and says which notes are to be expected on the way: the plain note, or what a figure makes of
it. A note that has begun is *open* until the arc that owns its tail says where it ends, since one figure may own its
attack and another its end.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from itertools import product
from typing import Final

from fioritura.arrange.rendition import laid_out
from fioritura.arrange.survey import survey
from fioritura.players.idiom import idiom_of
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.techniques.context import Context
from fioritura.techniques.figure import NO_REASON, Figure, head, tail
from fioritura.techniques.table import all_techniques
from fioritura.tune import Feel, Mark, Note, Tune

__all__ = ["Arc", "Expected", "Offer", "offers", "plain_arcs", "with_asked"]

_FEELS: Final[tuple[Feel, ...]] = ("straight", "swing")
_IDIOMS: Final[Mapping[Idiom, tuple[Idiom, ...]]] = {"blues": ("blues", "folk"), "irish": ("irish", "folk")}
_USUAL_IDIOMS: Final[tuple[Idiom, ...]] = ("jazz", "folk")
"""The idioms whose figures are looked for in a tune of an idiom; of two names for the same notes the first one's counts."""
TEMPOS: Final = (30.0, 80.0, 160.0)
"""Slow, so that no figure is too quick; and faster, for the figures that take the longer of two values then, or want a
note that is not too long."""

FIGURE_PRICE: Final = 0.6
SCORE_SHARE: Final = 0.06
ASKED_PRICE: Final = 0.1
_MOST_SCORE: Final = 3.0
_REALISED_SCORE: Final = -1.0
"""A figure costs something, the less the better an arranger finds it: of two names for the same notes the likelier."""


@cache
def figure_marks() -> frozenset[Mark]:
    """Signs that are figures in themselves."""
    return frozenset(mark for one in all_techniques().values() if one.is_sign for mark in one.signs)


@dataclass(frozen=True, slots=True)
class Expected:
    """A note that a reading expects; `plain` is the plain note that it is, None for an added one. Times in ticks."""

    onset: float
    end: float
    midi: int
    plain: int | None = None
    is_grace: bool = False
    marks: frozenset[Mark] = frozenset()


@dataclass(frozen=True, slots=True)
class Arc:
    """From slot `start` to slot `stop`: the open note, in the plain tune at `begins`, ends at `closes` with the signs
    `tail_marks`; `notes` follow, and `opens` is left open. `offer` is the number of the figure, None for the plain tune; `price` is what the figure
    costs before any note is heard."""

    start: int
    stop: int
    begins: float
    closes: float | None
    notes: tuple[Expected, ...]
    opens: Expected | None
    tail_marks: frozenset[Mark] = frozenset()
    offer: int | None = None
    price: float = 0.0

    @property
    def wanted(self) -> tuple[Expected, ...]:
        """All notes that the arc expects to begin."""
        return self.notes if self.opens is None else (*self.notes, self.opens)

    @property
    def span(self) -> tuple[float, float]:
        """First onset and last end of what the arc expects, the open note among it."""
        closing = self.begins if self.closes is None else self.closes
        return min([self.begins, *(n.onset for n in self.wanted)]), max([closing, *(n.end for n in self.wanted)])


@dataclass(frozen=True, slots=True)
class Offer:
    """A figure that may have been played, and its arc."""

    figure: Figure
    arc: Arc


@lru_cache(maxsize=8)
def offers(tune: Tune) -> tuple[Offer, ...]:
    """Every figure of the technique table, whatever the idiom, the feel and the player, in order of slots."""
    player = Player.of("concert", 5)
    best: dict[Figure, float] = {}
    own: dict[Figure, str] = {}
    idioms = _IDIOMS.get(idiom_of(tune), _USUAL_IDIOMS)
    for tempo, feel, idiom in product(TEMPOS, _FEELS, idioms):
        offered = survey(tune, Setting(player, tempo, feel, idiom))
        found = list(zip(offered.candidates, offered.scores, strict=True))
        found += [(figure, _REALISED_SCORE) for place in offered.contexts for figure in _realised(place)]
        for figure, score in found:
            bare = _bare(figure)
            if idioms is _USUAL_IDIOMS or own.setdefault(replace(bare, technique=""), idiom) == idiom:
                best[bare] = max(best.get(bare, -9.0), float(score))
    order = sorted(best.items(), key=lambda item: (item[0].first_slot, item[0].last_slot, item[0].technique))
    made: list[Offer] = []
    for figure, score in order:
        arc = _arc_of(tune, figure, len(made))
        if arc is not None:
            price = FIGURE_PRICE - SCORE_SHARE * min(max(score, -_MOST_SCORE), _MOST_SCORE)
            made.append(Offer(figure, replace(arc, price=price)))
    return tuple(made)


def with_asked(tune: Tune, offered: Sequence[Offer], asked: Iterable[Figure]) -> tuple[Offer, ...]:
    """The offers with those that were asked for made likely, and added where the table does not have them."""
    found = list(offered)
    numbers = {offer.figure: number for number, offer in enumerate(found)}
    for figure in map(_bare, asked):
        number = numbers.get(figure)
        arc = _arc_of(tune, figure, len(found)) if number is None else found[number].arc
        if arc is None:
            continue
        offer = Offer(figure, replace(arc, price=ASKED_PRICE))
        if number is None:
            found.append(offer)
        else:
            found[number] = offer
    return tuple(found)


def _bare(figure: Figure) -> Figure:
    """The figure without what does not sound."""
    return replace(figure, why=NO_REASON, merit=0.0, score=0.0)


def _realised(place: Context) -> Iterator[Figure]:
    """Figures by which players realise the signs of techniques, and which their rules do not write."""
    for technique in all_techniques().values():
        if technique.realisations is not None:
            yield from technique.realisations(place)


def plain_arcs(notes: Sequence[Note]) -> Iterator[Arc]:
    """The arcs that read each note as plain."""
    for index, note in enumerate(notes):
        main, graces = _expected(note, index), _graces(note)
        yield Arc(head(index), tail(index), main.onset, None, graces, main)
        yield Arc(tail(index), head(index + 1), main.onset, main.end, (), None)


def _arc_of(tune: Tune, figure: Figure, offer: int) -> Arc | None:
    """The arc of a figure; None for one that leaves nothing of the note that it takes its time from."""
    first, last = figure.first_slot // 2, figure.last_slot // 2
    if figure.marks:
        return _marked(tune.notes[first], figure, offer)
    pieces = _laid_out_alone(tune, figure, first, last)
    starts_inside = figure.first_slot == tail(first)
    ends_inside = figure.last_slot == head(last)
    closes = None
    if starts_inside:
        if not pieces or pieces[0].anchor != first:
            return None
        closes = float(pieces[0].end_ticks)
        pieces = pieces[1:]
    opens = None
    if ends_inside:
        if not pieces or pieces[-1].anchor != last:
            return None
        opens = _expected(pieces[-1], last)
    signed = {note.onset_ticks: frozenset(note.marks) & figure_marks() for note in figure.notes if note.marks}
    notes: list[Expected] = []
    for piece in pieces:
        expected = _expected(piece, _first_use(piece, pieces))
        notes += [*_graces(piece), replace(expected, marks=signed.get(piece.onset_ticks, frozenset()))]
    if ends_inside:
        notes.pop()
    begins = float(tune.notes[first].onset_ticks)
    return Arc(figure.first_slot, figure.last_slot + 1, begins, closes, tuple(notes), opens, offer=offer)


def _laid_out_alone(tune: Tune, figure: Figure, first: int, last: int) -> list[Note]:
    """What the figure makes of the notes it touches; anchors count in the whole tune."""
    own = replace(tune, notes=tune.notes[first : last + 1])
    moved = replace(
        figure,
        anchors=tuple(anchor - first for anchor in figure.anchors if first <= anchor <= last),
        first_slot=figure.first_slot - 2 * first,
        last_slot=figure.last_slot - 2 * first,
        notes=tuple(n if n.anchor is None else replace(n, anchor=n.anchor - first) for n in figure.notes),
    )
    return [n if n.anchor is None else replace(n, anchor=n.anchor + first) for n in laid_out(own, [moved])]


def _first_use(piece: Note, pieces: Iterable[Note]) -> int | None:
    """The plain note that a piece stands for: only the first piece with its anchor does."""
    if piece.anchor is None:
        return None
    return piece.anchor if next(other for other in pieces if other.anchor == piece.anchor) is piece else None


def _marked(note: Note, figure: Figure, offer: int) -> Arc:
    index, marks = figure.anchors[0], frozenset(figure.marks)
    main, graces = _expected(note, index), _graces(note)
    if figure.first_slot == tail(index):
        return Arc(tail(index), head(index + 1), main.onset, main.end, (), None, marks, offer)
    signed = replace(main, marks=marks)
    if figure.last_slot == head(index):
        return Arc(head(index), tail(index), main.onset, None, graces, signed, offer=offer)
    return Arc(head(index), head(index + 1), main.onset, None, (*graces, signed), None, offer=offer)


def _expected(note: Note, plain: int | None) -> Expected:
    return Expected(note.onset_ticks, note.end_ticks, note.pitch.midi, plain)


def _graces(note: Note) -> tuple[Expected, ...]:
    onset = float(note.onset_ticks)
    return tuple(Expected(onset, onset, grace.midi, is_grace=True) for grace in note.graces)
