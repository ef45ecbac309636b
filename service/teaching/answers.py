"""The shapes of a draft sheet's JSON answer, for the API reference."""

from __future__ import annotations

from typing import Annotated, Any, Literal, NotRequired

from pydantic import Field
from typing_extensions import TypedDict

from service.answers import Allowed, PathData, Point

Ref = Annotated[
    str | dict[str, Any],
    Field(description="A point by its label; one without a label by `from` and `moves`."),
]


class SheetMeasureAnswer(TypedDict):
    """A measure as it goes into the draft; lengths in mm."""

    name: str
    word: Annotated[str, Field(description="What formulas call it.")]
    title: str
    origin: str
    taken: float
    half: float
    quarter: float
    ease: float | None
    used: float
    shown: Annotated[str, Field(description="As the tape shows it, in the sheet's unit.")]


class MoveAnswer(TypedDict):
    """One move of the pencil; what each takes beside `do` is told with the format."""

    do: Literal[
        "at", "right", "left", "up", "down", "level", "plumb", "toward", "between",
        "slant", "reach", "square", "meeting", "along", "before", "swing",
    ]  # fmt: skip
    to: Annotated[Point, Field(description="Where it leads.")]
    formula: NotRequired[str]


class SheetPointAnswer(TypedDict, total=False):
    """A point that a step adds: from a point, by moves."""

    label: str
    name: str
    at: Point
    moves: list[MoveAnswer]


class PartAnswer(TypedDict, total=False):
    """A part of a line, from where the last one ended."""

    do: Literal["straight", "curve", "bulge", "arc"]
    end: Ref
    leaving: Annotated[dict[str, Any], Field(description="Direction of a curve at its start.")]
    arriving: Annotated[dict[str, Any], Field(description="Direction of travel at its end.")]
    handles: Annotated[list[float], Field(description="Of a curve, mm along both directions.")]
    guide: Annotated[dict[str, Any], Field(description="What a hand goes by.")]


class SheetLineAnswer(TypedDict):
    """A line that a step adds."""

    name: str
    parts: list[PartAnswer]
    folded: Annotated[
        list[list[Ref]],
        Field(description="Darts closed while it is drawn: near leg, far leg, point."),
    ]
    length: float
    path: PathData


class SheetDecisionAnswer(TypedDict):
    """A decision, taken or not."""

    question: str
    taken: bool
    compared: dict[str, Any] | None


class SheetStepAnswer(TypedDict):
    """One step of the construction."""

    number: int
    kind: Literal["point", "length", "line", "decision", "solved", "trued", "outline"]
    heading: str
    sentences: list[str]
    formula: str
    worked: str
    result: str
    value: float | bool | None
    reason: str
    source: str
    points: list[SheetPointAnswer]
    lines: list[SheetLineAnswer]
    decision: NotRequired[SheetDecisionAnswer]
    solved: NotRequired[dict[str, Any]]
    trued: NotRequired[dict[str, Any]]


class ChapterAnswer(TypedDict):
    """Steps under one heading; its letter is that of its points."""

    letter: str
    heading: str
    paper: Annotated[
        int, Field(description="0 for the draft; a piece drawn by itself has a paper of its own.")
    ]
    steps: list[SheetStepAnswer]


class SheetOutlineAnswer(TypedDict):
    """The lines that bound a piece, in walking order."""

    name: str
    lines: Annotated[
        list[dict[str, Any]],
        Field(
            description="Each line by its name, and whether it is walked backward; `from` and `to` "
            "where only a stretch of it is walked."
        ),
    ]
    length: float


class SheetCheckAnswer(TypedDict):
    """What to measure on the finished draft; mm or degrees."""

    what: str
    kind: Literal["seam", "corner", "measure"]
    unit: Literal["mm", "deg"]
    wanted: float
    allowed: Allowed
    drafted: float


class CorrectionAnswer(TypedDict):
    """What a toile may show; amounts in mm, 0 where none can be told."""

    symptom: str
    cause: str
    change: str
    pin: Annotated[str, Field(description="The order's correction that does it; empty for none.")]
    amount: list[float]


class DraftSheetAnswer(TypedDict):
    """The construction, step by step. Lengths in mm, X right, Y down from the paper's corner."""

    id: str
    drafting_version: str
    unit: Literal["mm"]
    shown_in: Annotated[Literal["cm", "in"], Field(description="Unit of the texts.")]
    verdict: Literal["sound", "sound_with_remarks", "unsound"]
    title: str
    method: str
    date: str
    garment: Annotated[dict[str, Any], Field(description="Every option, resolved; lengths in mm.")]
    paper: dict[str, float]
    measures: list[SheetMeasureAnswer]
    chapters: list[ChapterAnswer]
    outlines: list[SheetOutlineAnswer]
    checks: list[SheetCheckAnswer]
    corrections: list[CorrectionAnswer]
    cautions: list[str]
    sources: list[str]
    frames: NotRequired[list[str]]


class DifferenceAnswer(TypedDict):
    """One value of two drafts; null where one has none."""

    what: str
    unit: Literal["mm", "deg"]
    one: float | None
    two: float | None
    difference: float | None


class MovedPointAnswer(TypedDict):
    """A point of both that lies elsewhere in the second, mm."""

    name: str
    right: float
    up: float


class BesideAnswer(TypedDict):
    """Two methods side by side, on one body."""

    drafting_version: str
    unit: Literal["mm"]
    title: str
    methods: list[str]
    aligned_at: str
    measures: list[DifferenceAnswer]
    lengths: list[DifferenceAnswer]
    points: list[MovedPointAnswer]
