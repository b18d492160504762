"""What the API of lessons takes and gives."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

__all__ = [
    "ExampleView",
    "LeftOut",
    "LessonChange",
    "LessonView",
    "NewLesson",
    "OfferView",
    "PhraseView",
    "Plan",
    "PreviewView",
    "TechniqueOffer",
]

Name = Annotated[str, Field(max_length=60)]
Words = Annotated[str, Field(max_length=4000)]
Id = Annotated[int, Field(ge=1, le=2**53)]


class _Request(BaseModel):
    model_config = ConfigDict(extra="forbid")


class OwnWords(_Request):
    """The teacher's words: on the lesson by name (title, subtitle, composer, student, studio, notes, rights), and on
    techniques by id and field (name, label, text, how, when, fault, cure)."""

    words: Annotated[dict[Name, Words], Field(max_length=20)] = {}
    techniques: Annotated[dict[Name, Annotated[dict[Name, Words], Field(max_length=20)]], Field(max_length=120)] = {}


class Plan(_Request):
    """What a lesson holds. Techniques null: those of the arrangement; phrases (numbers from 0) null: all; level null:
    the arrangement's."""

    techniques: Annotated[list[Name], Field(max_length=120)] | None = None
    phrases: Annotated[list[Annotated[int, Field(ge=0, le=2000)]], Field(max_length=500)] | None = None
    level: Annotated[int, Field(ge=1, le=5)] | None = None
    language: Annotated[str, Field(max_length=12)] = "en"
    note_names: Literal["english", "german", "solfege"] | None = None
    paper: Literal["a4", "letter"] = "a4"
    players: Annotated[list[Name], Field(max_length=40)] = []
    sections: Annotated[list[Name], Field(min_length=1, max_length=12)]
    audio: Literal["mp3", "flac", "wav"] = "mp3"
    overrides: OwnWords = OwnWords()


class NewLesson(_Request):
    """A lesson to be made on an arrangement, or to be looked at beforehand."""

    arrangement: Id
    plan: Plan


class LessonChange(_Request):
    """Another plan; the answer is 409 when the lesson is past revision `at`."""

    at: Annotated[int, Field(ge=0, le=2**53)]
    plan: Plan


class LessonView(BaseModel):
    """A lesson on the shelf."""

    id: int
    arrangement: int
    tune: str
    title: str
    plan: Plan
    revision: int
    changed_at: str


class PhraseView(BaseModel):
    """A phrase of the arrangement, engraved alone in one or more systems; `returns` when its idea was heard before."""

    number: int
    first_bar: int
    last_bar: int
    returns: bool
    figures: int
    svgs: list[str]


class TechniqueOffer(BaseModel):
    """A technique that the tune offers: how often the arrangement uses it, in which phrases it could be shown, and its
    usual words."""

    id: str
    name: str
    family: str
    level: int
    used: int
    phrases: list[int]
    texts: dict[str, str]


class OfferView(BaseModel):
    """What there is to choose among for a lesson."""

    title: str
    composer: str
    level: int
    phrases: list[PhraseView]
    techniques: list[TechniqueOffer]


class ExampleView(BaseModel):
    """An example as it will be printed, plain over ornamented."""

    number: int
    technique: str
    name: str
    family: str
    first_bar: int
    last_bar: int
    reason: str
    svgs: list[str]


class LeftOut(BaseModel):
    """A player who gets no part, and why."""

    player: str
    reason: str


class PreviewView(BaseModel):
    """The examples that a plan leads to, and the players who get no part. `problem` says why there is nothing."""

    examples: list[ExampleView]
    left_out: list[LeftOut]
    problem: str
