"""Is what a report says of a take true? Each sentence is held against what is known of the take (`faulty_takes`).

The checker reads the ids and values of the messages, never the report's own measures: what was played, when and where is
in the truth. A sentence that it has no check for is an error. Tolerances: a quarter of a second or of the length for a
stop, a bar for where something begins or ends, 6 percent for a tempo, 30 ms for lateness, 10 cents for tuning.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from statistics import median
from typing import Final

from fioritura.listening.advice import headline_of
from fioritura.listening.naming import SlipKind
from fioritura.listening.rows import Report, Status
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import QUARTER
from fioritura.theory.position import Position
from fioritura.words import Message
from tests.faulty_takes import Tone, Truth
from tests.played_lines import ALTO

Check = Callable[[Message, Truth], bool]

NAMED: Final[dict[str, frozenset[str]]] = {
    "stop": frozenset({"happened-stop"}),
    "stops": frozenset({"happened-stop"}),
    "again": frozenset({"happened-again", "happened-again-from"}),
    "again-far": frozenset({"happened-again", "happened-again-from"}),
    "skip": frozenset({"happened-skipped"}),
    "skips": frozenset({"happened-skipped"}),
    "part-first": frozenset({"happened-part"}),
    "part-middle": frozenset({"happened-part"}),
    "part-last": frozenset({"happened-part"}),
    "bar-octave": frozenset({"happened-off-bars"}),
    "bars-octave": frozenset({"happened-off-bars"}),
    "bars-moved": frozenset({"happened-off-bars"}),
    "octave": frozenset({"happened-off"}),
    "transposed": frozenset({"happened-off"}),
    "key": frozenset({"happened-key"}),
    "wrong": frozenset({"happened-wrong"}),
    "wrongs": frozenset({"happened-wrong"}),
    "tempo": frozenset({"happened-tempo"}),
    "rush": frozenset({"happened-span"}),
    "drift": frozenset({"happened-drift"}),
    "late": frozenset({"happened-late"}),
    "flat": frozenset({"advice-tuning-finding"}),
    "sharp": frozenset({"advice-tuning-finding"}),
    "note": frozenset({"advice-note-finding"}),
    "left-out": frozenset({"happened-left-out"}),
    "added": frozenset({"happened-added"}),
    "rhythm": frozenset({"happened-rhythm", "happened-rhythms"}),
    "swing": frozenset({"advice-straight-finding"}),
    "ornaments": frozenset({"happened-ornament", "happened-ornaments", "happened-ornaments-least"}),
    "none": frozenset({"praise-notes-safe"}),
    "as-asked": frozenset({"praise-all-ornaments", "praise-ornaments"}),
    "own": frozenset({"praise-notes-safe", "praise-notes"}),
}
"""The sentences that name each kind of fault."""


def bare(said: Message) -> Message:
    """A sentence without its perhaps."""
    words = said["words"] if said.id == "perhaps" else said
    assert isinstance(words, Message)
    return words


def names_the_fault(report: Report, truth: Truth) -> bool:
    """True when the first sentence names the fault, without a perhaps, and is true."""
    first = headline_of(report)
    return first.id in NAMED[truth.kind] and is_true(first, truth)


def sentences(report: Report, headline: Message, praise: Message) -> Iterator[Message]:
    """All that a report says of the take, each sentence once."""
    seen = set()
    for said in (headline, praise, *(one.words for one in report.happenings)):
        if said not in seen:
            seen.add(said)
            yield said


def is_true(said: Message, truth: Truth) -> bool:
    """Whether a sentence is true of a take."""
    said = bare(said)
    return CHECKS[said.id](said, truth)


def true_slips(report: Report, truth: Truth) -> Iterator[tuple[float, bool]]:
    """Confidence of each wrong, left-out or added note, and whether it is one."""
    played = {tone.plain: tone for tone in truth.tones}
    out = {tone.midi for tone in truth.tones if tone.plain is None}
    for slip in report.slips:
        if slip.kind is SlipKind.WRONG and slip.plain is not None:
            tone = played.get(slip.plain)
            yield slip.confidence, tone is not None and _is_wrong(tone, truth)
        elif slip.kind is SlipKind.LEFT_OUT and slip.plain is not None:
            yield slip.confidence, slip.plain not in played
        elif slip.kind is SlipKind.ADDED:
            yield slip.confidence, bool(out)


def true_figures(report: Report, truth: Truth) -> Iterator[tuple[Status, float, bool]]:
    """Status and confidence of each ornament that is said to have been played, and whether it was; scoops and the like, which
    a recorded note may have of itself, left out."""
    figures = truth.rendition.figures if truth.rendition else ()
    played = {(f.technique, f.anchors[0]) for n, f in enumerate(figures) if n not in truth.fault.missed}
    for row in report.figures:
        if row.status is not Status.MISSED and not technique_named(row.technique).signs:
            yield row.status, row.confidence, (row.technique, row.anchor) in played


# Each sentence -------------------------------------------------------------------------------------------------


def _is_wrong(tone: Tone, truth: Truth) -> bool:
    assert tone.plain is not None
    return tone.midi - truth.fault.semitones != truth.tune.notes[tone.plain].pitch.midi


def _number(said: Message, name: str) -> float:
    value = said[name]
    assert isinstance(value, int | float)
    return float(value)


def _bars(value: object) -> list[int]:
    """The bars that a name of bars means."""
    assert isinstance(value, Message)
    if value.id == "bar-name":
        return [int(_number(value, "number"))]
    if value.id == "pickup":
        return [0]
    if value.id == "bars-from-to":
        return list(range(int(str(value["first"])), int(str(value["last"])) + 1))
    if value.id == "pickup-to-bar":
        return list(range(int(str(value["last"])) + 1))
    if value.id == "pickup-and-bars":
        return [0, *_bars(value["bars"])]
    assert value.id == "bars-named", value.id
    listed = value["bars"]
    assert isinstance(listed, tuple)
    return [int(str(each)) for each in listed]


def _near(said: list[int], first: int, last: int, give: int = 1) -> bool:
    return abs(min(said) - first) <= give and abs(max(said) - last) <= give


def _stop(said: Message, truth: Truth) -> bool:
    stops, seconds = truth.fault.stops, _number(said, "seconds")
    whole = sum(sec for _, sec in stops)
    if len(stops) != _number(said, "count"):
        return False
    where = _bars(said["bars"])
    is_there = all(any(abs(bar - other) <= 1 for other in where) for bar, _ in stops)
    return is_there and abs(seconds - whole) <= max(0.25, 0.25 * whole)


def _again(said: Message, truth: Truth) -> bool:
    again, bar = truth.fault.again, _bars(said["bar"])[0]
    return again is not None and abs(again[0] - bar) <= 1 and again[0] - again[1] <= 1


def _again_from(said: Message, truth: Truth) -> bool:
    again, bars = truth.fault.again, _bars(said["bars"])
    return again is not None and _near(bars, again[1], again[0]) and abs(_bars(said["bar"])[0] - again[0]) <= 1


def _skipped(said: Message, truth: Truth) -> bool:
    """Bars that are note for note those beside them may be named for them."""
    skipped, bars = truth.fault.skipped, _bars(said["bars"])
    return skipped is not None and _near(bars, *skipped) and len(bars) <= skipped[1] - skipped[0] + 1


def _part(said: Message, truth: Truth) -> bool:
    return truth.fault.part is not None and _near(_bars(said["bars"]), *truth.fault.part, give=0)


def _semitones(value: object) -> int:
    assert isinstance(value, Message)
    if value.id == "distance-octaves":
        return 12 * int(_number(value, "octaves"))
    found = int(_number(value, "semitones"))
    return found + 12 * int(_number(value, "octaves")) if value.id == "distance-and-octaves" else found


def _off(said: Message, truth: Truth) -> bool:
    words = said["words"]
    assert isinstance(words, Message)
    lies = words["lies"] if words.id == "line-read-on" else words
    assert isinstance(lies, Message)
    away = _semitones(lies["distance"]) * (1 if lies.id == "line-higher" else -1)
    return away == truth.fault.semitones


def _off_bars(said: Message, truth: Truth) -> bool:
    moved = truth.fault.moved
    if moved is None:
        return False
    away = _semitones(said["distance"]) * (1 if said["side"] == "higher" else -1)
    return away == moved[2] and _near(_bars(said["bars"]), moved[0], moved[1])


def _key(said: Message, truth: Truth) -> bool:
    count = len(truth.fault.wrong)
    written = said["written"]
    own = {ALTO.written(truth.tune.notes[plain].pitch).name for plain in truth.fault.wrong}
    return truth.fault.key_forgotten and set(written) <= own and abs(_number(said, "count") - count) <= 0.15 * count  # type: ignore[arg-type]


def _wanted(truth: Truth) -> int:
    """How many notes of the tune were to be played: all, or those of the part that was."""
    if truth.fault.part is None:
        return len(truth.tune.notes)
    first, last = truth.fault.part
    bars = [truth.tune.bar_at(note.onset_ticks).number for note in truth.tune.notes]
    return sum(first <= bar <= last for bar in bars)


def _examples(said: Message) -> list[Message]:
    """The places that a list of notes names."""
    value = said["examples"]
    found: list[Message] = []
    while isinstance(value, Message) and value.id == "list-semicolon":
        last = value["rest"]
        assert isinstance(last, Message)
        found.append(last)
        value = value["first"]
    assert isinstance(value, Message)
    return [value, *found]


def _at(example: Message) -> int:
    where = example["where"]
    assert isinstance(where, Position)
    return where.bar


def _of_notes(said: Message, truth: Truth, bars: list[int]) -> bool:
    """A number of notes and the bars of some: the number to a note in ten, each bar one of those that are known."""
    count = _number(said, "count")
    if not bars or abs(count - len(bars)) > 0.1 * len(bars):
        return False
    if "wanted" in dict(said.args) and _number(said, "wanted") != _wanted(truth):
        return False
    return all(any(abs(_at(example) - bar) <= 0 for bar in bars) for example in _examples(said))


def _wrong(said: Message, truth: Truth) -> bool:
    if truth.fault.key_forgotten:
        return False
    return _of_notes(said, truth, [_bar(truth, plain) for plain in truth.fault.wrong])


def _left_out(said: Message, truth: Truth) -> bool:
    return _of_notes(said, truth, [_bar(truth, plain) for plain in truth.fault.left_out])


def _added(said: Message, truth: Truth) -> bool:
    return _of_notes(said, truth, [bar for bar, _ in truth.fault.added])


def _bar(truth: Truth, plain: int) -> int:
    return truth.tune.bar_at(truth.tune.notes[plain].onset_ticks).number


def _ornament(said: Message, truth: Truth) -> bool:
    """Some of the technique are truly missing, and as many as are said."""
    assert truth.rendition is not None
    technique = said["name"]
    assert isinstance(technique, Message)
    own = [n for n, figure in enumerate(truth.rendition.figures) if figure.technique == technique.id]
    missed = [n for n in own if n in truth.fault.missed]
    return _number(said, "asked") == len(own) and _number(said, "missed") == len(missed)


def _ornaments(said: Message, truth: Truth) -> bool:
    """The number missed is right to one in five."""
    assert truth.rendition is not None
    asked, missed = len(truth.rendition.figures), len(truth.fault.missed)
    return _number(said, "asked") == asked and abs(_number(said, "missed") - missed) <= max(0.5, 0.2 * missed)


def _ornaments_least(said: Message, truth: Truth) -> bool:
    assert truth.rendition is not None
    asked, missed = len(truth.rendition.figures), len(truth.fault.missed)
    return _number(said, "asked") == asked and 0 < _number(said, "missed") <= missed


def _tempo(said: Message, truth: Truth) -> bool:
    beat = truth.tune.metre.beat_ticks / QUARTER
    played, asked = truth.tempo * truth.fault.tempo_ratio / beat, truth.tempo / beat
    is_near = abs(_number(said, "played") / played - 1) <= 0.06 and abs(_number(said, "asked") - asked) <= 1
    return is_near and truth.fault.tempo_ratio != 1.0


def _span(said: Message, truth: Truth) -> bool:
    pace = truth.fault.pace
    if pace is None:
        return False
    ratio = 1 + _number(said, "percent") / 100 * (1 if said["way"] == "faster" else -1)
    return not truth.fault.is_gradual and abs(ratio / pace[2] - 1) <= 0.08 and _near(_bars(said["bars"]), *pace[:2])


def _drift(said: Message, truth: Truth) -> bool:
    """Where a slow growth begins is told to three bars."""
    pace = truth.fault.pace
    if pace is None or not truth.fault.is_gradual:
        return False
    ratio = 1 + _number(said, "percent") / 100 * (1 if said["way"] == "faster" else -1)
    return abs(ratio / pace[2] - 1) <= 0.1 and abs(_bars(said["bar"])[0] - pace[0]) <= 3


def _late(said: Message, truth: Truth) -> bool:
    late, beats = truth.fault.late, said["beats"]
    assert isinstance(beats, Message)
    if late is None or said["side"] != "late":
        return False
    return _number(beats, "number") == late[0] and abs(_number(said, "ms") - late[1]) <= 30


def _rhythm(said: Message, truth: Truth) -> bool:
    where = said["where"]
    assert isinstance(where, Position)
    bars = [_bar(truth, plain) for plain in truth.fault.rhythm]
    return len(bars) == 1 and where.bar in bars


def _rhythms(said: Message, truth: Truth) -> bool:
    bars = [_bar(truth, plain) for plain in truth.fault.rhythm]
    is_all = abs(_number(said, "count") - len(bars)) <= 1 and len(bars) > 1
    return is_all and set(_bars(said["bars"])) <= set(bars)


def _swung(said: Message, truth: Truth) -> bool:
    return truth.fault.swing > 1.3 and abs(_number(said, "ratio") / truth.fault.swing - 1) <= 0.25


def _unsteady(said: Message, truth: Truth) -> bool:
    return truth.jitter_sec > 0.03


def _tuning(said: Message, truth: Truth) -> bool:
    """Against the median of the tones, the player's own habit within."""
    own = median(tone.cents for tone in truth.tones)
    return abs(_number(said, "cents") * (1 if said["side"] == "sharp" else -1) - own) <= 10


def _note(said: Message, truth: Truth) -> bool:
    flat, note = truth.fault.flat_midi, said["note"]
    if flat is None:
        return False
    cents = _number(said, "cents") * (1 if said["side"] == "sharp" else -1)
    return note.midi - ALTO.transposition.semitones == flat[0] and abs(cents - flat[1]) <= 12  # type: ignore[union-attr]


def _uneven(said: Message, truth: Truth) -> bool:
    """The player by formula plays figures no more unevenly than his jitter makes them."""
    return _number(said, "percent") <= 100 * 3 * truth.jitter_sec / 0.08


def _graces(said: Message, truth: Truth) -> bool:
    """The usual grace note, where some were played."""
    lengths = [
        1000 * (offset - onset)
        for tone, onset, offset in zip(truth.tones, truth.onsets, truth.offsets, strict=True)
        if tone.is_grace
    ]
    return bool(lengths) and abs(_number(said, "ms") - median(lengths)) <= 40


def _even(said: Message, truth: Truth) -> bool:
    return truth.tune.feel == "swing" and truth.fault.swing < 1.2


def _level(said: Message, truth: Truth) -> bool:
    return False


def _all_ornaments(said: Message, truth: Truth) -> bool:
    assert truth.rendition is not None
    return not truth.fault.missed and _number(said, "asked") == len(truth.rendition.figures)


def _some_ornaments(said: Message, truth: Truth) -> bool:
    assert truth.rendition is not None
    asked = len(truth.rendition.figures)
    done = asked - len(truth.fault.missed)
    return _number(said, "asked") == asked and _number(said, "done") <= done


def _right(truth: Truth) -> int:
    """How many of the tune's notes were played at their pitch, the last time that each was played."""
    last = {tone.plain: tone for tone in truth.tones if tone.plain is not None}
    return sum(not _is_wrong(tone, truth) for tone in last.values())


def _notes(said: Message, truth: Truth) -> bool:
    """All asked notes are counted; the right ones to one in fifty."""
    wanted, right = _wanted(truth), _right(truth)
    return _number(said, "wanted") == wanted and abs(_number(said, "right") - right) <= max(1, wanted / 50)


def _notes_safe(said: Message, truth: Truth) -> bool:
    return _notes(said, truth) and _right(truth) == _wanted(truth)


def _beat(said: Message, truth: Truth) -> bool:
    """Steady, but for what is said: no stop and no change of tempo."""
    fault = truth.fault
    is_kept = not (fault.stops or fault.pace or fault.rhythm or fault.late)
    return is_kept and _number(said, "ms") <= 1000 * truth.jitter_sec * 2.5 + 8


def _recognised(said: Message, truth: Truth) -> bool:
    return True


CHECKS: Final[dict[str, Check]] = {
    "happened-stop": _stop,
    "happened-again": _again,
    "happened-again-from": _again_from,
    "happened-again-often": lambda said, truth: False,
    "happened-skipped": _skipped,
    "happened-part": _part,
    "happened-off": _off,
    "happened-off-bars": _off_bars,
    "happened-key": _key,
    "happened-wrong": _wrong,
    "happened-left-out": _left_out,
    "happened-added": _added,
    "happened-ornament": _ornament,
    "happened-ornaments": _ornaments,
    "happened-ornaments-least": _ornaments_least,
    "happened-tempo": _tempo,
    "happened-span": _span,
    "happened-drift": _drift,
    "happened-late": _late,
    "happened-rhythm": _rhythm,
    "happened-rhythms": _rhythms,
    "advice-straight-finding": _swung,
    "advice-beat-finding": _unsteady,
    "advice-tuning-finding": _tuning,
    "advice-note-finding": _note,
    "advice-evenness-finding": _uneven,
    "advice-graces-finding": _graces,
    "advice-swing-finding": _even,
    "advice-level-finding": _level,
    "praise-all-ornaments": _all_ornaments,
    "praise-ornaments": _some_ornaments,
    "praise-notes": _notes,
    "praise-notes-safe": _notes_safe,
    "praise-beat": _beat,
    "praise-tune": _recognised,
}
"""Whether a sentence with an id is true of a take."""
