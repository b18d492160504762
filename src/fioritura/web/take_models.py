"""What the JSON API takes and gives about students and takes; the OpenAPI document is drawn from these."""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from pydantic import (
    BaseModel,
    ConfigDict,
    Field,
    PlainSerializer,
    PlainValidator,
    SerializationInfo,
    WithJsonSchema,
    model_validator,
)

from fioritura.web.jobs_api import JobView
from fioritura.web.models import SystemView
from fioritura.words import Message, message, say
from fioritura.words.stored import message_data, message_of

__all__ = [
    "KEEPING",
    "AdviceView",
    "FigureResult",
    "HappeningView",
    "Keeping",
    "LineNote",
    "LineView",
    "Name",
    "Report",
    "Said",
    "SlipView",
    "Started",
    "StudentView",
    "TakeFacts",
    "TakeLine",
    "TakeSummary",
    "TakeView",
    "Tendency",
    "TimingView",
    "TraceNote",
    "Which",
]

KEEPING: Final = {"keeps": True}
"""The context in which a report is written for the shelf: what it says stays in messages, for any reader's language."""


def _said(value: Message, info: SerializationInfo) -> Any:
    return message_data(value) if (info.context or {}).get("keeps") else say(value)


Said = Annotated[Message, PlainValidator(message_of), PlainSerializer(_said), WithJsonSchema({"type": "string"})]
"""What is said: text in answers, a message on the shelf (see `KEEPING`)."""

Which = Literal["plain", "ornamented"]
"""The line that is to be played."""


class Name(BaseModel):
    """A student's name."""

    model_config = ConfigDict(extra="forbid")
    name: Annotated[str, Field(max_length=200)]


class Keeping(BaseModel):
    """Whose take it is; None for nobody in particular."""

    model_config = ConfigDict(extra="forbid")
    student: Annotated[int | None, Field(ge=1, le=2**53)] = None


class StudentView(BaseModel):
    """A student, how many takes are kept, and when the last was made (empty for none)."""

    id: int
    name: str
    takes: int
    last_at: str


class LineNote(BaseModel):
    """A printed note: its element in the SVG, when it begins (ticks, 1680 a quarter note), and its staff place above
    written C0."""

    element: str
    onset_ticks: int
    step: int


class LineView(BaseModel):
    """One line of an arrangement, engraved alone; `ends_ticks` is where each bar ends."""

    systems: list[SystemView]
    bar_numbers: list[int]
    ends_ticks: list[int]
    notes: list[LineNote]


class TraceNote(BaseModel):
    """A played note over the printed line: from where to where (ticks, and seconds of the recording), its staff place above
    written C0, and the course of its pitch in cents against that place and the player's own tuning, evenly spaced over its
    length."""

    start_ticks: float
    end_ticks: float
    onset_sec: float
    end_sec: float
    step: int
    kind: Literal["right", "wrong", "figure", "added"]
    name: Said
    contour: list[int]


class TakeLine(LineView):
    """What was to be played, engraved, with what was played in one passage of the take; labels are those of `figures`
    of the report (element ``s1-l`` and the figure's number)."""

    passage: int
    trace: list[TraceNote]


class _Placed(BaseModel):
    """`where` is the place in words. Reports of older versions have a bar and a beat alone."""

    bar: int
    beat: float
    where: Said

    @model_validator(mode="before")
    @classmethod
    def _with_place(cls, data: Any) -> Any:
        if isinstance(data, dict) and "where" not in data and {"bar", "beat"} <= data.keys():
            return data | {"where": message("beat-in-bar", bar=data["bar"], beat=data["beat"])}
        return data


class FigureResult(_Placed):
    """An ornament: asked and done, asked and missed, or added by the player; `other` is the nearest other reading."""

    technique: str
    name: Said
    label: Said
    family: str
    status: Literal["done", "missed", "added"]
    onset_ticks: int
    passage: int
    confidence: float
    other: str


class SlipView(_Placed):
    """A wrong, left-out or added note, in words."""

    kind: Literal["wrong", "left out", "added"]
    passage: int
    words: Said


class AdviceView(BaseModel):
    """One thing to practise: what was measured, and what to do."""

    subject: str
    title: Said
    finding: Said
    practice: Said
    bars: list[int] = []
    technique: str = ""


class Tendency(BaseModel):
    """A median over `count` notes of one kind: cents of a note or register, or milliseconds late on a beat."""

    name: Said
    count: int
    value: float


class TimingView(BaseModel):
    """Tempo and time: drift from first to last quarter in percent, spread around the player's own beat, swing ratio, the
    usual grace note, and how far behind the band or click the notes on the beat came (None without one)."""

    tempo: float
    drift_percent: float
    spread_ms: float
    swing_ratio: float
    grace_ms: float | None
    behind_band_ms: float | None
    beats: list[Tendency]


class HappeningView(BaseModel):
    """One thing that happened, in one sentence; `kind` is one of `listening.happening.Kind`, `bars` are those it touches,
    `onset_sec` is where it is first heard in the recording, `amount` how much, in `unit`."""

    kind: str
    words: Said
    bars: list[int]
    onset_sec: float | None
    count: int
    amount: float | None
    unit: str
    confidence: float


class Report(BaseModel):
    """What a take says. `headline` is its first sentence, the one thing that matters most; `key_words` tell how far it lies from the tune's pitch, empty where it does not."""

    headline: Said
    praise: Said
    happenings: list[HappeningView] = []
    advice: list[AdviceView]
    remarks: list[Said]
    key_words: Said
    likeness: float
    tuning_cents: float
    level_db: float
    level_range_db: float
    notes: int
    right: int
    figures: list[FigureResult]
    slips: list[SlipView]
    by_note: list[Tendency]
    by_register: list[Tendency]
    timing: TimingView
    passages: list[list[TraceNote]]

    @model_validator(mode="before")
    @classmethod
    def _with_headline(cls, data: Any) -> Any:
        """Reports of older versions begin with the praise."""
        if isinstance(data, dict) and "headline" not in data and "praise" in data:
            return data | {"headline": data["praise"]}
        return data


class TakeFacts(BaseModel):
    """A take in figures: the `tempo` asked for in beats and the one played in `quarters` a minute, `pitch_cents` the median
    distance of its notes from their pitch, `spread_ms` the standard deviation of their lateness, `done` of `asked` ornaments,
    `right` of `notes` melody notes."""

    line: Which
    tempo: float
    quarters: float
    feel: str
    seconds: float
    is_with_band: bool
    offset_sec: float
    pitch_cents: float
    spread_ms: float
    done: int
    asked: int
    added: int
    right: int
    notes: int


class TakeSummary(BaseModel):
    """A take as lists show it."""

    id: str
    tune_id: int
    tune: str
    arrangement: int | None
    student_id: int | None
    student: str
    taken_at: str
    is_kept: bool
    facts: TakeFacts


class TakeView(TakeSummary):
    """A take with its report."""

    report: Report


class Started(BaseModel):
    """A recording has come in and is being listened to: the take's name, and the job that listens. The take is there
    when the job is done; when it fails, its problem says what is wrong with the recording, which is then gone."""

    take: str
    job: JobView
