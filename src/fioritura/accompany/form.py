"""The form of a performance: count-in, intro, choruses and ending, laid out as one long tune.

A pickup is played in the last beats before its chorus, over the count-in or the end of the chorus before (common
practice). At the end the band strikes one last chord and holds it: with the melody's last note where that stands on
a beat over the tonic, else in a bar that is added.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import zip_longest
from typing import Final, Literal

from fioritura.errors import OptionError
from fioritura.theory.chord import Chord
from fioritura.theory.chord_symbol import chord_from_kind
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER
from fioritura.tune import Bar, ChordSpan, Note, Tempo, Tune

__all__ = [
    "ENDINGS",
    "OPENINGS",
    "USUAL_ENERGY",
    "Chorus",
    "Ending",
    "Form",
    "Manner",
    "Opening",
    "Section",
    "Touch",
    "form_of",
]

Manner = Literal["two", "four", "build", "shout", "drop"]
"""How the band plays a chorus: the bass in two, in four, in four up to a pedal before the climax, all that it has, or in
two for a section after the climax and then in four (common practice)."""

Opening = Literal["count-in", "pickup", "intro"]
OPENINGS: Final[dict[Opening, str]] = {
    "count-in": "clicks a bar or two",
    "pickup": "clicks, and the drums lead in over the last beats",
    "intro": "clicks, and the band plays the last four bars before the melody comes in",
}

BassMode = Literal["two", "four", "pedal"]

Ending = Literal["ritard", "tag", "straight"]
ENDINGS: Final[dict[Ending, str]] = {
    "ritard": "slows down over the last two bars and holds the last chord",
    "tag": "plays the last four bars once more, then holds the last chord",
    "straight": "keeps time up to the last chord",
}

USUAL_ENERGY: Final = 0.65
_SOFTEST: Final = 0.8
_FULL_ENERGY: Final = 0.9
_BUILD_BARS: Final = 8
_BUILD_ENERGY: Final = 0.2
_DROP_ENERGY: Final = 0.1
PEDAL_BARS: Final = 4
INTRO_BARS: Final = 4

MAX_BARS: Final = 20_000
TAG_BARS: Final = 4
RITARD_BARS: Final = 2
RITARD_TO: Final = 0.72
"""Share of the tempo that a ritard reaches."""

SECTION_BARS: Final = 8
"""Where no double bars part the form, sections have eight bars (common practice)."""


@dataclass(frozen=True, slots=True)
class Chorus:
    """Once through the tune. `line` is what the melody instrument plays; None leaves the chorus to a soloist.

    `energy` (0 to 1) is how much the band gives; `manner` how it plays.
    """

    name: str
    line: tuple[Note, ...] | None = None
    energy: float = USUAL_ENERGY
    manner: Manner = "four"


@dataclass(frozen=True, slots=True)
class Touch:
    """How the band plays a bar: how much it gives (0 to 1), and what the bass does."""

    energy: float = USUAL_ENERGY
    bass: BassMode = "four"

    @property
    def loudness(self) -> float:
        """0.8 to 1 of a part's full strength."""
        return _SOFTEST + (1.0 - _SOFTEST) * min(self.energy / _FULL_ENERGY, 1.0)


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of the form: the count-in, or a chorus with its name, energy and manner."""

    name: str
    start_ticks: int
    end_ticks: int
    energy: float = USUAL_ENERGY
    manner: Manner = "four"


@dataclass(frozen=True)
class Form:
    """The whole performance as one tune, with what the band must know about it.

    `tune.notes` is the melody instrument's part. From `final_ticks` on the last chord is held; None for a form that
    simply stops. `phrase_ends` are bar indices: 1 for the last bar of four, 2 of a section, 3 of a chorus.
    """

    tune: Tune
    sections: tuple[Section, ...]
    count_in_ticks: int
    final_ticks: int | None
    phrase_ends: dict[int, int]
    leads_in: bool = False
    """True where the drums lead in over the last beats of the count-in."""

    @cached_property
    def _section_starts(self) -> list[int]:
        return [section.start_ticks for section in self.sections]

    def section_at(self, ticks: int) -> Section:
        """The section that holds a place."""
        return self.sections[max(0, bisect_right(self._section_starts, ticks) - 1)]

    def touch_at(self, bar: Bar) -> Touch:
        """How the band plays a bar."""
        section = self.section_at(bar.start_ticks)
        energy = section.energy
        left = (section.end_ticks - bar.start_ticks) // max(bar.duration_ticks, 1)
        gone = (bar.start_ticks - section.start_ticks) // max(bar.duration_ticks, 1)
        if section.manner == "build":
            energy = min(energy + _BUILD_ENERGY * max(0.0, 1.0 - (left - 1) / _BUILD_BARS), 1.0)
            return Touch(energy, "pedal" if left <= PEDAL_BARS else "four")
        if section.manner == "drop" and gone < SECTION_BARS:
            return Touch(max(energy - _DROP_ENERGY, 0.0), "two")
        return Touch(energy, "two" if section.manner == "two" else "four")

    def playing_bars(self) -> Iterator[tuple[int, Bar]]:
        """The bars in which the band plays in time, with their indices: after the count-in, before the last chord."""
        stop = self.tune.duration_ticks if self.final_ticks is None else self.final_ticks
        for index, bar in enumerate(self.tune.bars):
            if self.count_in_ticks <= bar.start_ticks < stop:
                yield index, bar


@dataclass(frozen=True, slots=True)
class _Body:
    """A chorus without its pickup, from tick 0; the pickup's notes lie before 0."""

    bars: tuple[Bar, ...]
    chords: tuple[ChordSpan, ...]
    tempos: tuple[Tempo, ...]
    pickup_ticks: int

    @property
    def duration_ticks(self) -> int:
        return self.bars[-1].end_ticks

    def line(self, notes: Iterable[Note], start: int) -> Iterator[Note]:
        for note in notes:
            yield replace(note, onset_ticks=note.onset_ticks - self.pickup_ticks + start)


def form_of(
    tune: Tune,
    choruses: Sequence[Chorus],
    *,
    count_in_bars: int = 1,
    opening: Opening = "count-in",
    ending: Ending = "straight",
    holds_last: bool = True,
) -> Form:
    """Lay out a performance of an unfolded tune.

    Without `holds_last` the form just stops after the last chorus, as a loop does.

    Raises:
        OptionError: no chorus, a negative count-in, or more than 20,000 bars in all.
    """
    body = _body_of(tune)
    if not choruses or count_in_bars < 0:
        raise OptionError("too-few-choruses", choruses=len(choruses), bars=count_in_bars)
    if (total := len(choruses) * len(body.bars) + count_in_bars) > MAX_BARS:
        raise OptionError("too-many-bars", bars=total, limit=MAX_BARS)
    if (body.pickup_ticks or opening == "pickup") and not count_in_bars:
        count_in_bars = 1
    return _Layout(tune, body, count_in_bars).laid_out(choruses, opening, ending, holds_last=holds_last)


def _body_of(tune: Tune) -> _Body:
    pickup = tune.pickup_ticks
    bars = [bar for bar in tune.bars if not (pickup and bar is tune.bars[0])]
    if not bars:
        raise OptionError("no-full-bar", title=tune.title)
    last = bars[-1]
    if 0 < last.metre.bar_ticks - last.duration_ticks <= max(pickup, 0):
        bars[-1] = replace(last, duration_ticks=last.metre.bar_ticks)
    shifted = tuple(replace(bar, start_ticks=bar.start_ticks - pickup) for bar in bars)
    end = shifted[-1].end_ticks
    chords: list[ChordSpan] = []
    for span in tune.chords:
        start, stop = max(0, span.onset_ticks - pickup), min(end, span.end_ticks - pickup)
        if span is tune.chords[-1]:
            stop = end
        if start < stop:
            chords.append(replace(span, onset_ticks=start, duration_ticks=stop - start))
    tempos = [replace(tempo, onset_ticks=max(0, tempo.onset_ticks - pickup)) for tempo in tune.tempos]
    tempos[:1] = [Tempo(0, tune.quarters_per_minute)]
    return _Body(shifted, tuple(chords), tuple(tempos), pickup)


@dataclass(slots=True)
class _Layout:
    """Puts count-in, choruses and ending one after the other."""

    source: Tune
    body: _Body
    count_in_bars: int
    bars: list[Bar] = field(default_factory=list)
    chords: list[ChordSpan] = field(default_factory=list)
    tempos: list[Tempo] = field(default_factory=list)
    notes: list[Note] = field(default_factory=list)
    sections: list[Section] = field(default_factory=list)
    phrase_ends: dict[int, int] = field(default_factory=dict)

    def laid_out(self, choruses: Sequence[Chorus], opening: Opening, ending: Ending, *, holds_last: bool) -> Form:
        """The form."""
        self._add_count_in()
        count_in_ticks = self._end
        if opening == "intro":
            self._add_closing_bars("intro", INTRO_BARS, replace(choruses[0], line=None))
        for chorus in choruses:
            self._add_chorus(chorus)
        last = choruses[-1]
        final_ticks: int | None = None
        if holds_last:
            if ending == "tag" and len(self.body.bars) > TAG_BARS:
                self._add_closing_bars("tag", TAG_BARS, last)
            final_ticks = self._add_final(last)
            if ending == "ritard":
                self._slow_down(final_ticks)
        tune = replace(
            self.source,
            notes=tuple(_one_at_a_time(self.notes)),
            bars=tuple(replace(bar, number=number) for number, bar in enumerate(self.bars, start=1)),
            chords=tuple(self.chords),
            tempos=tuple(_settled(self.tempos)),
        )
        leads_in = opening == "pickup" and count_in_ticks > 0
        return Form(tune, tuple(self.sections), count_in_ticks, final_ticks, self.phrase_ends, leads_in)

    @property
    def _end(self) -> int:
        return self.bars[-1].end_ticks if self.bars else 0

    def _add_count_in(self) -> None:
        first = self.body.bars[0]
        full = replace(first, number=1, duration_ticks=first.metre.bar_ticks, ends_section=False)
        for _ in range(self.count_in_bars):
            self.bars.append(replace(full, start_ticks=self._end))
        if self.count_in_bars:
            self.sections.append(Section("count-in", 0, self._end))
            self.tempos.append(replace(self.body.tempos[0], onset_ticks=0))

    def _add_chorus(self, chorus: Chorus) -> None:
        start, first = self._end, len(self.bars)
        self._add_bars(self.body.bars, start)
        if chorus.line is not None:
            self.notes += self.body.line(chorus.line, start)
        for index, rank in _phrase_ends(self.body.bars):
            self.phrase_ends[first + index] = rank
        self.sections.append(Section(chorus.name, start, self._end, chorus.energy, chorus.manner))

    def _add_bars(self, bars: Sequence[Bar], start: int) -> None:
        """Bars of the body, with what stands in them, from `start` on."""
        first, last = bars[0].start_ticks, bars[-1].end_ticks
        shift = start - first
        self.bars += (replace(bar, start_ticks=bar.start_ticks + shift) for bar in bars)
        for span in self.body.chords:
            onset, stop = max(span.onset_ticks, first), min(span.end_ticks, last)
            if onset < stop:
                self.chords.append(replace(span, onset_ticks=onset + shift, duration_ticks=stop - onset))
        before = [tempo for tempo in self.body.tempos if tempo.onset_ticks <= first][-1:]
        inside = [tempo for tempo in self.body.tempos if first < tempo.onset_ticks < last]
        self.tempos += (replace(t, onset_ticks=max(t.onset_ticks, first) + shift) for t in before + inside)

    def _add_closing_bars(self, name: str, count: int, chorus: Chorus) -> None:
        """The last bars by themselves; notes that begin before them and reach into them are left out."""
        bars, start = self.body.bars[-count:], self._end
        first = bars[0].start_ticks
        shift = start - first
        inside = (n for n in self.body.line(chorus.line or (), 0) if n.onset_ticks >= first)
        self.notes += (replace(note, onset_ticks=note.onset_ticks + shift) for note in inside)
        index = len(self.bars)
        self._add_bars(bars, start)
        self.phrase_ends[index + len(bars) - 1] = 3
        self.sections.append(Section(name, start, self._end, chorus.energy, chorus.manner))

    def _add_final(self, chorus: Chorus) -> int:
        """Where the last chord is struck; the form ends with the bar in which it is let go."""
        tonic = self.source.bars[-1].key.tonic
        line = [note for note in self.notes if note.onset_ticks >= self.sections[-1].start_ticks]
        last = line[-1] if chorus.line is not None and line else None
        if last is not None and last.onset_ticks >= self.bars[-min(2, len(self.bars))].start_ticks:
            bar = next(bar for bar in reversed(self.bars) if bar.start_ticks <= last.onset_ticks)
            span = next((s for s in self.chords if s.onset_ticks <= last.onset_ticks < s.end_ticks), None)
            is_home = span is not None and span.chord is not None and span.chord.root == tonic
            if is_home and bar.metre.strength(last.onset_ticks - bar.start_ticks) >= 0.5:
                return self._hold(last.onset_ticks, last.end_ticks)
        start, closing = self._end, self.bars[-1]
        self.bars.append(replace(closing, start_ticks=start, duration_ticks=closing.metre.bar_ticks))
        chord = _home_chord(self.source.chords, closing.key)
        self.chords.append(ChordSpan(start, closing.metre.bar_ticks, chord, chord.text if chord else ""))
        self.sections.append(Section("last chord", start, self._end, chorus.energy, chorus.manner))
        return start

    def _hold(self, final_ticks: int, release_ticks: int) -> int:
        """Let the chord at `final_ticks` last to the end of the bar in which the melody lets go."""
        while len(self.bars) > 1 and self.bars[-1].start_ticks >= release_ticks:
            self.bars.pop()
        self.chords = [span for span in self.chords if span.onset_ticks <= final_ticks]
        held = self.chords[-1]
        if held.onset_ticks < final_ticks:
            self.chords[-1] = replace(held, duration_ticks=final_ticks - held.onset_ticks)
            self.chords.append(held)
        self.chords[-1] = replace(held, onset_ticks=final_ticks, duration_ticks=self._end - final_ticks)
        self.tempos = [tempo for tempo in self.tempos if tempo.onset_ticks <= final_ticks]
        self.sections[-1] = replace(self.sections[-1], end_ticks=self._end)
        return final_ticks

    def _slow_down(self, final_ticks: int) -> None:
        """A tempo for each quarter of the bars before the last chord, falling ever faster."""
        before = [bar for bar in self.bars if bar.start_ticks < final_ticks][-RITARD_BARS:]
        start, tempo = before[0].start_ticks, _tempo_at(self.tempos, final_ticks)
        steps = max(1, (final_ticks - start) // QUARTER)
        self.tempos = [kept for kept in self.tempos if kept.onset_ticks < start]
        for step in range(steps):
            share = 1.0 - (1.0 - RITARD_TO) * ((step + 1) / steps) ** 1.5
            self.tempos.append(Tempo(start + step * QUARTER, tempo * share))


def _phrase_ends(bars: Sequence[Bar]) -> Iterator[tuple[int, int]]:
    """Bar indices at which phrases end, with 1 for four bars, 2 for a section, 3 for the chorus."""
    is_parted = any(bar.ends_section for bar in bars[:-1])
    since = 0
    for index, bar in enumerate(bars):
        since += 1
        if index == len(bars) - 1:
            yield index, 3
        elif bar.ends_section or (not is_parted and since == SECTION_BARS):
            yield index, 2
            since = 0
        elif since % 4 == 0:
            yield index, 1


def _home_chord(chords: Sequence[ChordSpan], key: Key) -> Chord | None:
    """The tonic chord as the tune last spells it, or the plain triad."""
    own = [span.chord for span in chords if span.chord and span.chord.root == key.tonic and span.chord.bass is None]
    return own[-1] if own else chord_from_kind(key.tonic, "minor" if key.is_minor else "major")


def _tempo_at(tempos: Sequence[Tempo], ticks: int) -> float:
    return next(t.quarters_per_minute for t in reversed(tempos) if t.onset_ticks <= ticks)


def _settled(tempos: Iterable[Tempo]) -> Iterator[Tempo]:
    """Tempos without those that change nothing."""
    tempo: float | None = None
    for change in tempos:
        if change.quarters_per_minute != tempo:
            tempo = change.quarters_per_minute
            yield change


def _one_at_a_time(notes: Iterable[Note]) -> Iterator[Note]:
    """Notes in order, each let go when the next one begins."""
    ordered = sorted(notes, key=lambda note: note.onset_ticks)
    for note, following in zip_longest(ordered, ordered[1:]):
        if following is None or note.end_ticks <= following.onset_ticks:
            yield note
        elif note.onset_ticks < following.onset_ticks:
            yield replace(note, duration_ticks=following.onset_ticks - note.onset_ticks)
