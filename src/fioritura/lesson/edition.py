"""An edition: one rendition in all its files, as the `ornament` command gives it out."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Literal

from fioritura.arrange.arrangement import Arrangement
from fioritura.arrange.arrangement_file import arrangement_to_json
from fioritura.arrange.data import note_data, place_data, quarters
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import difficulty
from fioritura.errors import OptionError
from fioritura.files import staged_folder
from fioritura.notation.part_spelling import written_tune
from fioritura.notation.score import Label, Score, Staff
from fioritura.players.feel import styled
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.techniques.technique import Technique
from fioritura.theory.pitch import Pitch
from fioritura.tune import Note, Tempo, Tune, key_interval
from fioritura.unfold import unfolded
from fioritura.words import Message, capital, message, say

if TYPE_CHECKING:
    from fioritura.sound.performance import Performance

__all__ = [
    "FORMATS",
    "Edition",
    "Paper",
    "chorus_labels",
    "comparison_score",
    "figure_records",
    "line_bytes",
    "line_performance",
    "line_score",
    "plan_record",
    "technique_record",
    "write_edition",
]

Paper = Literal["a4", "letter"]
OnFile = Callable[[str], None]

FORMATS: Final = ("musicxml", "mid", "abc", "svg", "pdf", "mp3", "wav", "flac", "json")
"""What an edition can hold, by file ending."""

USUAL_FORMATS: Final = ("musicxml", "mid", "abc", "pdf", "mp3", "json")


@dataclass(frozen=True, slots=True)
class Edition:
    """How a rendition is given out: at sounding pitch (`is_concert`), with names over the figures, on what paper.

    With the `arrangement` that it comes from, its decisions are saved too.
    """

    rendition: Rendition
    is_concert: bool = False
    has_labels: bool = True
    paper: Paper = "a4"
    formats: tuple[str, ...] = USUAL_FORMATS
    exact: bool = False
    arrangement: Arrangement | None = None

    def __post_init__(self) -> None:
        for name in self.formats:
            if name not in FORMATS:
                raise OptionError("no-such-format", given=str(name), known=FORMATS)


def write_edition(edition: Edition, folder: Path, progress: OnFile = lambda name: None) -> list[Path]:
    """Write all files of an edition into a folder, all or none, and return their paths in order.

    `progress` is told the name of each file when it is begun. Files of the folder with other names stay.

    Raises:
        OutputError: the folder can't be written.
        ToolError: the engraver, synth or encoder failed.
    """
    with staged_folder(folder) as stage:
        for name, write in _jobs(edition):
            progress(name)
            write(stage / name)
        names = sorted(path.name for path in stage.iterdir())
    return [folder / name for name in names]


def _jobs(edition: Edition) -> Iterator[tuple[str, Callable[[Path], Any]]]:
    """The files of an edition: name, and what writes it."""
    from fioritura.notation.engraving import engrave, sheet
    from fioritura.notation.musicxml import writer as musicxml_writer

    rendition = edition.rendition
    tune, wanted, both = rendition.tune, edition.formats, comparison_score(edition)
    if "musicxml" in wanted:
        plain = plain_score(edition)
        yield "plain.musicxml", lambda path: path.write_bytes(musicxml_writer.write_musicxml(plain))
        yield "ornamented.musicxml", lambda path: path.write_bytes(line_bytes(edition, "musicxml"))
        yield "comparison.musicxml", lambda path: path.write_bytes(musicxml_writer.write_musicxml(both))
    if "abc" in wanted:
        yield "ornamented.abc", lambda path: path.write_bytes(line_bytes(edition, "abc"))
    if "svg" in wanted:
        yield "ornamented.svg", lambda path: path.write_bytes(line_bytes(edition, "svg"))
        yield "comparison.svg", lambda path: path.write_text(engrave.engrave_page(both), encoding="utf-8")
    if "json" in wanted:
        records = figure_records(rendition)
        text = json.dumps(records, indent=2, ensure_ascii=False) + "\n"
        yield "figures.json", lambda path: path.write_text(text, encoding="utf-8")
        saved = arrangement_to_json(
            edition.arrangement or Arrangement(tune, rendition.setting, rendition, rendition.seed)
        )
        yield "arrangement.json", lambda path: path.write_text(saved, encoding="utf-8")
    if "pdf" in wanted:
        legend = _legend(rendition)
        comparison = partial(sheet.comparison_pdf, both, paper=edition.paper, legend=legend)
        yield "comparison.pdf", lambda path: path.write_bytes(comparison())
        yield "ornamented.pdf", lambda path: path.write_bytes(line_bytes(edition, "pdf"))
    yield from _sound_jobs(edition)


def _sound_jobs(edition: Edition) -> Iterator[tuple[str, Callable[[Path], Any]]]:
    from fioritura.sound.mixdown import write_audio

    if "mid" in edition.formats:
        yield "ornamented.mid", lambda path: path.write_bytes(line_bytes(edition, "mid"))
    for ending in ("mp3", "wav", "flac"):
        if ending in edition.formats:
            yield f"ornamented.{ending}", lambda path: write_audio(line_performance(edition), path)
            yield f"plain.{ending}", lambda path: write_audio(line_performance(edition, is_plain=True), path)


def line_performance(edition: Edition, *, is_plain: bool = False) -> Performance:
    """The ornamented line, or the plain one, as it is played with its repeats."""
    from fioritura.sound.perform import perform

    rendition = edition.rendition
    setting, name = rendition.setting, rendition.setting.instrument.name
    title = say(message("edition-plain-sound", instrument=name)) if is_plain else capital(say(name))
    line = rendition.plain_line if is_plain else rendition.line
    played = unfolded(replace(rendition.tune, notes=line))
    return perform(
        played,
        played.notes,
        instrument=setting.instrument,
        player=setting.player,
        tempo=setting.quarters_per_minute,
        feel=setting.feel,
        exact=edition.exact,
        seed=rendition.seed,
        name=title,
    )


def line_bytes(edition: Edition, ending: str) -> bytes:
    """The ornamented line as the notation file that an ending names: musicxml, abc, mid, svg or pdf.

    Raises:
        ToolError: the engraver or the typesetter is missing or failed.
    """
    from fioritura.notation.abc import writer as abc_writer
    from fioritura.notation.engraving import engrave, sheet
    from fioritura.notation.musicxml import writer as musicxml_writer
    from fioritura.sound.midi_writer import write_midi

    if ending == "mid":
        return write_midi(line_performance(edition))
    score = line_score(edition)
    if ending == "abc":
        return abc_writer.write_abc(score).encode()
    if ending == "pdf":
        return sheet.line_pdf(score, paper=edition.paper, legend=_legend(edition.rendition))
    return engrave.engrave_page(score).encode() if ending == "svg" else musicxml_writer.write_musicxml(score)


def _legend(rendition: Rendition) -> list[tuple[str, str, str]]:
    """Label, name and bars of each technique used, in order of first use."""
    from fioritura.notation.engraving.sheet import legend_entries

    uses = []
    for figure in rendition.figures:
        technique = technique_named(figure.technique)
        bar = rendition.tune.bar_at(sounding_start(rendition.tune, figure)).number
        uses.append((say(technique.label), say(technique.name), bar))
    return [(entry.label, entry.name, entry.bars) for entry in legend_entries(uses)]


def plain_score(edition: Edition) -> Score:
    """The plain tune alone."""
    return _score(edition, [_staff(edition, edition.rendition.tune.notes)], message("line-plain"))


def line_score(edition: Edition) -> Score:
    """The ornamented line alone."""
    rendition = edition.rendition
    return _score(edition, [_staff(edition, rendition.line, labels=_labels(edition))], _subtitle("line", rendition))


def comparison_score(edition: Edition) -> Score:
    """The plain tune over the ornamented line, bar under bar."""
    rendition = edition.rendition
    staves = [
        _staff(edition, rendition.tune.notes, name=say(message("line-plain"))),
        _staff(
            edition, rendition.line, name=say(message("line-ornamented")), labels=_labels(edition), shows_chords=False
        ),
    ]
    return _score(edition, staves, _subtitle("comparison", rendition))


def _subtitle(what: str, rendition: Rendition) -> Message:
    return message(f"edition-{what}", level=rendition.setting.level, idiom=rendition.setting.idiom)


def _staff(
    edition: Edition,
    line: Sequence[Note],
    *,
    name: str = "",
    labels: tuple[Label, ...] = (),
    shows_chords: bool = True,
) -> Staff:
    instrument = edition.rendition.setting.instrument
    return Staff(tuple(line), name or capital(say(instrument.name)), instrument, labels, shows_chords)


def _score(edition: Edition, staves: Iterable[Staff], subtitle: Message) -> Score:
    return Score(_as_played(edition.rendition), tuple(staves), edition.is_concert, say(subtitle))


def _as_played(rendition: Rendition) -> Tune:
    """The tune with the setting's feel and tempo, which may not be the file's."""
    tune, setting = rendition.tune, rendition.setting
    factor = setting.quarters_per_minute / tune.quarters_per_minute
    tempos = tune.tempos or (Tempo(0, tune.quarters_per_minute),) * (factor != 1.0)
    scaled = tuple(replace(tempo, quarters_per_minute=tempo.quarters_per_minute * factor) for tempo in tempos)
    return replace(styled(tune, setting.feel, setting.idiom), tempos=scaled)


def _labels(edition: Edition) -> tuple[Label, ...]:
    tune, starts = edition.rendition.tune, chorus_labels(edition.rendition)
    if not edition.has_labels:
        return starts
    figures = (
        Label(sounding_start(tune, figure), say(technique_named(figure.technique).label), number)
        for number, figure in enumerate(edition.rendition.figures)
    )
    return (*starts, *figures)


def chorus_labels(rendition: Rendition) -> tuple[Label, ...]:
    """The name of each chorus where it begins; none where there is no plan."""
    plan, tune = rendition.plan, rendition.tune
    if plan is None:
        return ()
    numbers = range(plan.count)
    return tuple(Label(plan.start_ticks(tune, number), say(plan.heading(number))) for number in numbers)


def sounding_start(tune: Tune, figure: Figure) -> int:
    """Where a figure is heard to begin: at its first own note, else at its anchor."""
    if figure.notes:
        return figure.notes[0].onset_ticks
    return tune.notes[figure.anchors[0]].onset_ticks


def plan_record(rendition: Rendition) -> list[dict[str, Any]]:
    """How often the tune is played, and how each time: its density, size, register and role, its bars and its figures."""
    plan, tune = rendition.plan, rendition.tune
    if plan is None:
        return []
    found = Counter(plan.number_at(tune, sounding_start(tune, figure)) for figure in rendition.figures)
    bounds = [*(plan.start_ticks(tune, number) for number in range(plan.count)), tune.duration_ticks]
    return [
        {
            "chorus": number + 1,
            **asdict(each),
            "role": plan.role(number),
            "bars": [tune.bar_at(bounds[number]).number, tune.bar_at(bounds[number + 1] - 1).number],
            "figures": found[number],
        }
        for number, each in enumerate(plan.statements)
    ]


def technique_record(technique: Technique, fields: Iterable[str]) -> dict[str, Any]:
    """Some fields of a technique as plain data, in words."""
    found: dict[str, Any] = {}
    for name in fields:
        value = getattr(technique, name)
        found[name] = say(value) if isinstance(value, Message) else value
    return found | ({"name": capital(found["name"])} if "name" in found else {})


def figure_records(rendition: Rendition) -> list[dict[str, Any]]:
    """The figures of a rendition as plain data, in order, for `figures.json` and `--json`."""
    names = _names_in_part(rendition)
    return [_figure_record(rendition, figure, names) for figure in rendition.figures]


Names = dict[tuple[int, int], Pitch]
"""Onset (of a grace note its main note's) and sounding MIDI number to the pitch as the part has it."""


def _names_in_part(rendition: Rendition) -> Names:
    line = rendition.line
    written = written_tune(replace(rendition.tune, notes=line), rendition.setting.instrument.transposition)
    names: Names = {}
    for sounding, note in zip(line, written.notes, strict=True):
        for pitch, name in zip((*sounding.graces, sounding.pitch), (*note.graces, note.pitch), strict=True):
            names[sounding.onset_ticks, pitch.midi] = name
    return names


def _figure_record(rendition: Rendition, figure: Figure, names: Names) -> dict[str, Any]:
    """One figure as plain data: pitches sounding and written, lengths in quarter notes, places as bar and beat."""
    tune, by = rendition.tune, rendition.setting.instrument.transposition
    technique = technique_named(figure.technique)

    def note(pitch: Pitch, onset: int, ticks: int, anchor: int | None, kind: str) -> dict[str, Any]:
        key = tune.bar_at(onset).key
        usual = pitch.up(key_interval(key, key.transposed(by), by))
        return {
            "kind": kind,
            "written": str(names.get((onset, pitch.midi), usual)),
            **note_data(tune, pitch, onset, ticks),
            "quarters": quarters(ticks),
            "anchor": anchor,
        }

    anchor_onset = tune.notes[figure.anchors[0]].onset_ticks
    notes = [note(pitch, anchor_onset, 0, None, "grace") for pitch in figure.graces]
    notes += [note(n.pitch, n.onset_ticks, n.duration_ticks, n.anchor, "note") for n in figure.notes]
    plan = rendition.plan
    return {
        "id": figure.id,
        **({"chorus": plan.number_at(tune, sounding_start(tune, figure)) + 1} if plan else {}),
        "technique": figure.technique,
        "name": capital(say(technique.name)),
        "family": technique.family,
        **place_data(tune, sounding_start(tune, figure)),
        "anchors": list(figure.anchors),
        "notes": notes,
        "marks": [str(mark) for mark in figure.marks],
        "reason": say(figure.why),
        "level": technique.level,
        "difficulty": difficulty(figure, rendition.setting),
        "score": figure.score,
    }
