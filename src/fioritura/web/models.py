"""What the JSON API takes and gives; the OpenAPI document is drawn from these."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from fioritura.players.idiom import AskedIdiom, Idiom

__all__ = [
    "AbcText",
    "AbcView",
    "AddedNote",
    "AlternativeView",
    "ArrangementView",
    "BarTime",
    "Copied",
    "Decision",
    "FigureView",
    "HearingView",
    "LineTime",
    "NewCopy",
    "Problem",
    "RestoredView",
    "SettingChange",
    "SettingView",
    "StepChange",
    "StepView",
    "SystemView",
    "TuneChange",
    "TuneView",
    "Typed",
    "VersionView",
    "Welcome",
]

FigureId = Annotated[str, Field(max_length=120, pattern=r"^[a-z0-9-]+$")]
At = Annotated[
    int, Field(ge=0, description="The step that was looked at; the answer is 409 when there is a newer one.")
]
Names = Annotated[list[Annotated[str, Field(max_length=60)]], Field(max_length=60)]


class _Request(BaseModel):
    model_config = ConfigDict(extra="forbid")


class Decision(_Request):
    """A decision about a figure. `other` is the figure that replaces it; `note` counts from 0 over the figure's grace
    notes and then its notes."""

    at: At
    kind: Literal["keep", "release", "leave-out", "replace", "raise", "lower"]
    figure: FigureId
    other: FigureId | None = None
    note: Annotated[int, Field(ge=0, le=200)] | None = None


class NewCopy(_Request):
    """What a copy of an arrangement is to be called."""

    name: Annotated[str, Field(min_length=1, max_length=80)]


class Copied(BaseModel):
    """The number of a new arrangement."""

    id: int


class StepChange(_Request):
    """Undo or redo."""

    at: At


class SettingChange(_Request):
    """For whom and how the tune is arranged; the tempo in beats a minute."""

    at: At
    player: Annotated[str, Field(max_length=40)]
    level: Annotated[int, Field(ge=1, le=5)]
    idiom: Idiom
    feel: Literal["straight", "swing"]
    tempo: Annotated[float, Field(ge=5, le=800)]
    only: Names = []
    without: Names = []
    seed: Annotated[int, Field(ge=0, le=1_000_000)] = 0
    density: Annotated[float, Field(ge=0.25, le=2.0, description="Figures as a share of what is usual")] = 1.0


class AbcText(_Request):
    """Typed ABC, to be looked at."""

    text: Annotated[str, Field(max_length=200_000)]
    width: Annotated[float, Field(ge=60, le=600)] = 180.0


class Typed(_Request):
    """Typed ABC, to be brought in."""

    text: Annotated[str, Field(max_length=200_000)]
    player: Annotated[str, Field(max_length=40)] = "alto-sax"
    level: Annotated[int, Field(ge=1, le=5)] = 3
    idiom: AskedIdiom = "file"
    unfolds: bool = True


class TuneChange(_Request):
    """Another title or other tags."""

    title: Annotated[str, Field(max_length=200)] | None = None
    tags: Annotated[list[Annotated[str, Field(max_length=60)]], Field(max_length=40)] | None = None


class Problem(BaseModel):
    """What is wrong, in words; for ABC, where (line and column from 1) and how many characters are meant."""

    problem: str
    line: int | None = None
    column: int | None = None
    length: int = 1


class RestoredView(BaseModel):
    """How many tunes an archive has added, and how many of its tunes stood on the shelf already; where the page was to ask
    first, and some did, nothing was added."""

    tunes: int
    doubles: int


class SystemView(BaseModel):
    """One engraved system. `first` is the index (from 0) of its first bar."""

    svg: str
    first: int
    bars: int


class AbcView(BaseModel):
    """Typed ABC as it is read: its systems as far as it can be read, and what is wrong with it."""

    systems: list[SystemView] = []
    problem: Problem | None = None
    warnings: list[str] = []


class AddedNote(BaseModel):
    """A note that a figure adds: its number in the figure, its written pitch, and its element in the SVG."""

    note: int
    written: str
    element: str


class FigureView(BaseModel):
    """A figure of the arrangement. `where` is its place in words, `elements` are the ids of its
    notes in the SVG, `difficulty` goes from 0 to 1."""

    id: str
    number: int
    technique: str
    name: str
    label: str
    family: str
    bar: int
    beat: float
    where: str
    reason: str
    text: str
    how: str
    level: int
    difficulty: float
    is_kept: bool
    elements: list[str]
    added: list[AddedNote]


class SettingView(BaseModel):
    """The setting in force; the tempo in beats a minute, `beat` is the beat's length in quarter notes."""

    player: str
    level: int
    idiom: str
    feel: str
    tempo: float
    beat: float
    only: list[str]
    without: list[str]
    seed: int
    density: float


class StepView(BaseModel):
    """Where the arrangement stands in its history, and what can be undone and redone."""

    at: int
    undoes: str
    redoes: str


class ArrangementView(BaseModel):
    """An arrangement as the page shows it. `other` holds the figures of the version beside it."""

    id: int
    tune_id: int
    title: str
    composer: str
    key: str
    step: StepView
    setting: SettingView
    kept_share: float
    bar_numbers: list[int]
    figures: list[FigureView]
    other: list[FigureView]
    other_seed: int | None
    left_out: int
    systems: list[SystemView]
    notes: list[str]


class AlternativeView(BaseModel):
    """A figure that could stand at a place; `worth` is what the whole arrangement would be worth with it."""

    id: str
    name: str
    family: str
    reason: str
    level: int
    difficulty: float
    worth: float
    stands: bool
    svg: str


class BarTime(BaseModel):
    """When a bar begins and ends, in seconds, and its index in the arrangement."""

    start: float
    end: float
    bar: int


class LineTime(BaseModel):
    """When the notes of a line sound: onset and end in seconds, and the element in the SVG."""

    name: str
    sound: str
    notes: list[tuple[float, float, str]]


class HearingView(BaseModel):
    """What there is to hear at a tempo: lines (one at a time) and band parts, each a sound of the same length by its key
    under ``/api/sounds``. The count-in ends at `starts_at` seconds, the music at `ends_at`."""

    tempo: float
    feel: str
    starts_at: float
    ends_at: float
    bars: list[BarTime]
    lines: list[LineTime]
    band: dict[str, str]
    remark: str


class VersionView(BaseModel):
    """An arrangement of a tune by its number and name."""

    id: int
    name: str
    changed_at: str


class TuneView(BaseModel):
    """A tune on the shelf and its arrangements."""

    id: int
    title: str
    composer: str
    key: str
    metre: str
    bars: int
    tags: list[str]
    source_name: str
    changed_at: str
    arrangement: int | None
    versions: list[VersionView]


class Welcome(BaseModel):
    """What was brought in: the tunes, and what could not be."""

    tunes: list[TuneView]
    problems: list[Problem]
