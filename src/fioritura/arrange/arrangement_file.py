"""Arrangements on disk: one JSON file that holds the tune, the setting, the decisions and the notes that were chosen.

It reopens exactly, whatever later versions of the rules would choose: tune and figures are stored as they are.
The format is documented in ``docs/arrangement-file.md``; `VERSION` counts its incompatible changes.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from itertools import pairwise
from math import isfinite
from typing import Any, Final, get_args

from fioritura.arrange.arrangement import Arrangement, Decisions, Earlier
from fioritura.arrange.data import time_data
from fioritura.arrange.plan import Plan, Statement
from fioritura.arrange.rendition import Rendition
from fioritura.errors import FiorituraError, ReadError
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure, FigureNote
from fioritura.techniques.table import technique_named
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key, mode_named
from fioritura.theory.metre import Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, ChordSpan, Dance, Jump, Mark, Note, Style, Tempo, Tune
from fioritura.words import Message, message_data, message_from, say

__all__ = ["VERSION", "arrangement_from_json", "arrangement_to_json"]

FORMAT: Final = "fioritura arrangement"
VERSION: Final = 1
MOST_REPEATS: Final = 99


def arrangement_to_json(arrangement: Arrangement, *, is_compact: bool = False) -> str:
    """The arrangement as JSON text; the same arrangement gives the same text.

    Where it `is_compact` it is one line, without what only helps others to read it (places and quarter notes).

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> from fioritura.arrange.arrangement import arranged
        >>> arrangement_to_json(arranged(tune, setting)).splitlines()[1]
        ' "format": "fioritura arrangement",'
    """
    setting = arrangement.setting
    told = None if is_compact else arrangement.tune
    data = {
        "format": FORMAT,
        "version": VERSION,
        "tune": _tune_data(arrangement.tune, is_compact),
        "setting": {
            "player": setting.instrument.id,
            "level": setting.level,
            "quarters_per_minute": setting.quarters_per_minute,
            "feel": setting.feel,
            "idiom": setting.idiom,
            "density": setting.density,
        },
        **({"plan": [asdict(each) for each in arrangement.plan.statements]} if arrangement.plan else {}),
        "seed": arrangement.seed,
        "only": list(arrangement.only),
        "without": list(arrangement.without),
        "figures": [_figure_data(figure, told) for figure in arrangement.rendition.figures],
        "worth": arrangement.rendition.score,
        "decisions": _decisions_data(arrangement.decisions),
        "past": [_earlier_data(earlier) for earlier in arrangement.past],
    }
    return json.dumps(data, indent=None if is_compact else 1, ensure_ascii=False) + "\n"


def arrangement_from_json(text: str) -> Arrangement:
    """Read an arrangement.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> from fioritura.arrange.arrangement import arranged
        >>> arrangement = arranged(tune, setting)
        >>> again = arrangement_from_json(arrangement_to_json(arrangement))
        >>> [figure.id for figure in again.rendition.figures] == [figure.id for figure in arrangement.rendition.figures]
        True

    Raises:
        ReadError: not an arrangement, of a later version, or damaged; the message says where.
    """
    try:
        data = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise ReadError("arrangement-unreadable", reason=str(error)) from None
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        raise ReadError("arrangement-none")
    if data.get("version") != VERSION:
        raise ReadError("arrangement-version", given=str(data.get("version")), readable=str(VERSION))
    try:
        return _arrangement(data)
    except FiorituraError as error:
        raise ReadError("arrangement-damaged", reason=error.message) from None
    except (LookupError, TypeError, ValueError, AttributeError, OverflowError) as error:
        raise ReadError("arrangement-damaged", reason=f"{type(error).__name__}: {error}") from None


def _arrangement(data: Mapping[str, Any]) -> Arrangement:
    tune = _tune(data["tune"])
    chosen = data["setting"]
    setting = Setting(
        chosen["player"],
        float(chosen["quarters_per_minute"]),
        chosen["feel"],
        chosen["idiom"],
        float(chosen.get("density", 1.0)),
        level=int(chosen["level"]),
    )
    plan = _plan(data["plan"]).checked(tune) if "plan" in data else None
    figures = tuple(_figure(entry, len(tune.notes)) for entry in data["figures"])
    rendition = Rendition(tune, setting, figures, int(data["seed"]), float(data["worth"]), plan)
    _check_order(rendition.line, tune.bars)
    return Arrangement(
        tune,
        setting,
        rendition,
        int(data["seed"]),
        tuple(map(str, data["only"])),
        tuple(map(str, data["without"])),
        _decisions(data["decisions"], len(tune.notes)),
        tuple(_earlier(entry, len(tune.notes)) for entry in data["past"]),
        plan,
    )


def _plan(data: Sequence[Mapping[str, Any]]) -> Plan:
    return Plan(
        tuple(Statement(float(each["density"]), float(each["size"]), float(each["register"])) for each in data)
    )


def _tune_data(tune: Tune, is_compact: bool) -> dict[str, Any]:
    return {
        "title": tune.title,
        "composer": tune.composer,
        "part_name": tune.part_name,
        "feel": tune.feel,
        "style": tune.style,
        "dance": tune.dance,
        "origin": tune.origin,
        "warnings": [message_data(warning) for warning in tune.warnings],
        "tempos": [asdict(tempo) for tempo in tune.tempos],
        "bars": [
            {
                "number": bar.number,
                "ticks": [bar.start_ticks, bar.duration_ticks],
                "metre": [bar.metre.beats, bar.metre.unit],
                "key": [bar.key.fifths, bar.key.mode],
                "opens_repeat": bar.opens_repeat,
                "repeats": bar.repeats,
                "endings": list(bar.endings),
                "jumps": [str(jump) for jump in bar.jumps],
                "ends_section": bar.ends_section,
            }
            for bar in tune.bars
        ],
        "chords": [
            {
                "ticks": [span.onset_ticks, span.duration_ticks],
                "symbol": span.chord.text if span.chord else None,
                "text": span.text,
                "is_inferred": span.is_inferred,
            }
            for span in tune.chords
        ],
        "notes": [
            {
                "ticks": [note.onset_ticks, note.duration_ticks],
                "pitch": str(note.pitch),
                "graces": [str(grace) for grace in note.graces],
                "marks": [str(mark) for mark in note.marks],
                "lyric": note.lyric,
                **({} if is_compact else time_data(tune, note.onset_ticks, note.duration_ticks)),
            }
            for note in tune.notes
        ],
    }


def _tune(data: Mapping[str, Any]) -> Tune:
    notes = tuple(
        Note(
            int(entry["ticks"][0]),
            int(entry["ticks"][1]),
            Pitch.parse(entry["pitch"]),
            tuple(map(Pitch.parse, entry["graces"])),
            tuple(map(Mark, entry["marks"])),
            str(entry["lyric"]),
        )
        for entry in data["notes"]
    )
    bars = tuple(
        Bar(
            int(entry["number"]),
            int(entry["ticks"][0]),
            int(entry["ticks"][1]),
            Metre.parse(f"{entry['metre'][0]}/{entry['metre'][1]}"),
            _key(*entry["key"]),
            bool(entry["opens_repeat"]),
            int(entry["repeats"]),
            tuple(map(int, entry["endings"])),
            tuple(map(Jump, entry["jumps"])),
            bool(entry["ends_section"]),
        )
        for entry in data["bars"]
    )
    chords = tuple(
        ChordSpan(
            int(entry["ticks"][0]),
            int(entry["ticks"][1]),
            read_chord(entry["symbol"]) if entry["symbol"] is not None else None,
            str(entry["text"]),
            bool(entry["is_inferred"]),
        )
        for entry in data["chords"]
    )
    tempos = tuple(Tempo(int(entry["onset_ticks"]), float(entry["quarters_per_minute"])) for entry in data["tempos"])
    _check_frame(bars, tempos)
    _check_order(notes, bars)
    return Tune(
        str(data["title"]),
        notes,
        bars,
        chords,
        tempos,
        "swing" if data["feel"] == "swing" else "straight",
        str(data["composer"]),
        str(data["part_name"]),
        tuple(map(_reason, data["warnings"])),
        data["style"] if data.get("style") in get_args(Style) else None,
        data["dance"] if data.get("dance") in get_args(Dance) else None,
        str(data.get("origin", "")),
    )


def _key(fifths: int, mode: str) -> Key:
    if not -7 <= int(fifths) <= 7:
        raise ReadError("damaged-key", fifths=int(fifths))
    return Key(int(fifths), mode_named(mode))


def _check_frame(bars: Sequence[Bar], tempos: Sequence[Tempo]) -> None:
    if not bars or bars[0].start_ticks != 0 or any(bar.duration_ticks <= 0 for bar in bars):
        raise ReadError("damaged-bar")
    if any(bar.end_ticks != following.start_ticks for bar, following in pairwise(bars)):
        raise ReadError("damaged-bars")
    if any(not 0 <= bar.repeats <= MOST_REPEATS for bar in bars):
        raise ReadError("damaged-repeats", most=MOST_REPEATS)
    for tempo in tempos:
        _check_tempo(tempo.quarters_per_minute)


def _check_tempo(quarters_per_minute: float) -> None:
    if not 0 < quarters_per_minute < 10_000:
        raise ReadError("damaged-tempo", given=quarters_per_minute)


def _check_order(notes: Sequence[Note], bars: Sequence[Bar]) -> None:
    if not notes or any(note.duration_ticks <= 0 for note in notes):
        raise ReadError("damaged-note")
    if notes[0].onset_ticks < 0 or any(note.end_ticks > after.onset_ticks for note, after in pairwise(notes)):
        raise ReadError("damaged-notes")
    if notes[-1].end_ticks > bars[-1].end_ticks:
        raise ReadError("damaged-end")


def _figure_data(figure: Figure, tune: Tune | None = None) -> dict[str, Any]:
    """A figure; where its `tune` is given its notes say for the reader where they stand."""
    return {
        "technique": figure.technique,
        "anchors": list(figure.anchors),
        "slots": [figure.first_slot, figure.last_slot],
        "window": [figure.start_ticks, figure.end_ticks],
        "notes": [
            {
                "ticks": [note.onset_ticks, note.duration_ticks],
                "pitch": str(note.pitch),
                "anchor": note.anchor,
                "joins": note.joins,
                "marks": [str(mark) for mark in note.marks],
                **(time_data(tune, note.onset_ticks, note.duration_ticks) if tune else {}),
            }
            for note in figure.notes
        ],
        "graces": [str(grace) for grace in figure.graces],
        "marks": [str(mark) for mark in figure.marks],
        "why": message_data(figure.why),
        "merit": figure.merit,
        "is_slurred": figure.is_slurred,
        "score": figure.score,
    }


def _figure(data: Mapping[str, Any], note_count: int) -> Figure:
    anchors = tuple(map(int, data["anchors"]))
    if not anchors or not all(0 <= anchor < note_count for anchor in anchors):
        raise ReadError("damaged-figure-place", notes=anchors, count=note_count)
    first_slot, last_slot = map(int, data["slots"])
    start_ticks, end_ticks = map(int, data["window"])
    if not (0 <= first_slot <= last_slot < 2 * note_count and 0 <= start_ticks <= end_ticks):
        raise ReadError("damaged-figure-claim")
    if any(not (start_ticks <= entry["ticks"][0] and entry["ticks"][1] > 0) for entry in data["notes"]):
        raise ReadError("damaged-figure-note")
    if not (isfinite(float(data["merit"])) and isfinite(float(data["score"]))):
        raise ReadError("damaged-figure-score")
    return Figure(
        technique_named(str(data["technique"])).id,
        anchors,
        first_slot,
        last_slot,
        start_ticks,
        end_ticks,
        notes=tuple(
            FigureNote(
                int(entry["ticks"][0]),
                int(entry["ticks"][1]),
                Pitch.parse(entry["pitch"]),
                None if entry["anchor"] is None else int(entry["anchor"]),
                bool(entry["joins"]),
                tuple(map(Mark, entry["marks"])),
            )
            for entry in data["notes"]
        ),
        graces=tuple(map(Pitch.parse, data["graces"])),
        marks=tuple(map(Mark, data["marks"])),
        why=_reason(data["why"]),
        merit=float(data["merit"]),
        is_slurred=bool(data["is_slurred"]),
        score=float(data["score"]),
    )


def _reason(data: Any) -> Message:
    """A message of the file that can be said; those of earlier versions were text.

    Raises:
        LookupError, ValueError: there is no such text, or it lacks arguments.
    """
    found = message_from(data)
    say(found)
    return found


def _decisions_data(decisions: Decisions) -> dict[str, Any]:
    return {
        "locked": list(decisions.locked),
        "refused": list(decisions.refused),
        "own": [_figure_data(figure) for figure in decisions.own],
    }


def _decisions(data: Mapping[str, Any], note_count: int) -> Decisions:
    return Decisions(
        tuple(map(str, data["locked"])),
        tuple(map(str, data["refused"])),
        tuple(_figure(entry, note_count) for entry in data["own"]),
    )


def _earlier_data(earlier: Earlier) -> dict[str, Any]:
    data = _decisions_data(earlier.decisions)
    if earlier.figures is not None:
        data |= {"figures": list(earlier.figures), "seed": earlier.seed, "worth": earlier.worth}
    return data


def _earlier(data: Mapping[str, Any], note_count: int) -> Earlier:
    decisions = _decisions(data, note_count)
    if "figures" not in data:
        return Earlier(decisions)
    if not isfinite(float(data["worth"])):
        raise ReadError("damaged-figure-score")
    return Earlier(decisions, tuple(map(str, data["figures"])), int(data["seed"]), float(data["worth"]))
