"""The shapes of a size range's JSON answer, for the API reference."""

from __future__ import annotations

from typing import Annotated, Any, Literal, NotRequired

from pydantic import Field, with_config
from typing_extensions import TypedDict

from service.answers import TOLD, PatternAnswer, TroubleAnswer

Step = Annotated[list[float], Field(min_length=2, max_length=2, description="Right, down; mm.")]


class SizeAnswer(TypedDict):
    """One size: its pattern, or what stands against it."""

    name: str
    verdict: Literal["sound", "sound_with_remarks", "unsound", "refused"]
    pattern: NotRequired[PatternAnswer]
    failed: NotRequired[Annotated[list[str], Field(description="Which checks failed.")]]
    refusal: NotRequired[TroubleAnswer]


class RowAnswer(TypedDict):
    """One measure over all sizes."""

    kind: Literal["body", "finished", "seam"]
    name: str
    unit: Literal["mm", "deg"]
    values: Annotated[list[float | None], Field(description="One for each size.")]


class TableAnswer(TypedDict):
    """Measures in rows, sizes in columns."""

    sizes: list[str]
    rows: list[RowAnswer]


class PointAnswer(TypedDict):
    """A labelled point of the draft, and how it moves from each size to the next."""

    chapter: str
    name: str
    steps: list[Step | None]


class GradeFindingAnswer(TypedDict):
    """Where the step from size to size is not even."""

    code: Literal[
        "uneven_sizes", "decision_changes", "limit_reached", "points_differ", "uneven_step"
    ]
    where: str
    sizes: list[str]
    message: str
    names: list[str]
    by: NotRequired[Annotated[float, Field(description="Second difference; mm or degrees.")]]


class GradeAnswer(TypedDict):
    """How the garment grows over the sizes that could be drafted."""

    sizes: list[str]
    origin: Annotated[str, Field(description="The point that the others are measured from.")]
    points: list[PointAnswer]
    findings: list[GradeFindingAnswer]


@with_config(TOLD)
class RangeAnswer(TypedDict):
    """A garment in many sizes. Lengths in mm."""

    drafting_version: str
    unit: Literal["mm"]
    garment: Annotated[dict[str, Any], Field(description="Every option, resolved; lengths in mm.")]
    sizes: list[SizeAnswer]
    measures: TableAnswer
    grade: GradeAnswer
