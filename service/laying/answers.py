"""The shapes of a lay plan's JSON answer, for the API reference."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, with_config
from typing_extensions import TypedDict

from service.answers import TOLD, FindingAnswer, PathData


class StretchAnswer(TypedDict):
    """A stretch of the cloth, open or folded."""

    layers: Literal["open", "folded"]
    start: float
    length: float


class AmountAnswer(TypedDict):
    """A length to buy."""

    exact: Annotated[float, Field(description="With ends, repeat and shrinkage, in mm.")]
    metric: Annotated[float, Field(description="Rounded up to 50 mm.")]
    yards: Annotated[float, Field(description="Rounded up to an eighth of a yard; in yards.")]


class PlacementAnswer(TypedDict):
    """A piece on the cloth. X along it from its squared end, Y down; mm."""

    order: Annotated[int, Field(description="Number of the order or size, from 1.")]
    reference: str
    piece: str
    title: str
    number: int
    copies: Annotated[list[int], Field(description="Copies cut here; two on double cloth.")]
    layers: Annotated[
        Literal["single", "double", "fold", "upper"],
        Field(description="Open cloth; both layers; on the fold; the upper layer only."),
    ]
    turn: Annotated[
        Literal[0, 180], Field(description="0 with the piece's top toward the cloth's start.")
    ]
    mirrored: Annotated[bool, Field(description="The pattern lies face down.")]
    x: float
    y: float
    length: float
    breadth: float
    matrix: Annotated[
        list[float],
        Field(
            min_length=6,
            max_length=6,
            description="Takes the pattern's own path of the piece here, as in SVG's matrix().",
        ),
    ]
    outline: PathData


class AlternativeAnswer(TypedDict):
    """Another width of cloth."""

    width: float
    buy: Annotated[AmountAnswer | None, Field(description="null where a piece is too broad.")]
    engine: Literal["plain", "spyrrow"]


class ClothAnswer(TypedDict):
    """The lay of one cloth. Lengths in mm, areas in mm2."""

    cloth: Literal["main", "lining", "pocketing", "fusible"]
    options: Annotated[dict[str, Any], Field(description="What was asked of it, resolved.")]
    usable_width: float
    stretches: list[StretchAnswer]
    length: Annotated[float, Field(description="What the pieces take; its ends not counted.")]
    buy: AmountAnswer
    use: Annotated[float, Field(description="Percent used of the cloth between the selvedges.")]
    area: Annotated[float, Field(description="Of everything that is cut.")]
    waste: Annotated[float, Field(description="What is bought and not used.")]
    least_length: Annotated[float, Field(description="What no lay can undercut.")]
    ratio: Annotated[float, Field(description="Length over the least one.")]
    engine: Annotated[Literal["plain", "spyrrow"], Field(description="Who found this lay.")]
    placements: list[PlacementAnswer]
    findings: list[FindingAnswer]
    alternatives: list[AlternativeAnswer]


class EngineAnswer(TypedDict):
    """The engine that searched."""

    name: str
    version: str


@with_config(TOLD)
class LayAnswer(TypedDict):
    """How much cloth, and where each piece goes."""

    drafting_version: str
    unit: Literal["mm"]
    budget: Annotated[float, Field(description="Seconds that the engine might search.")]
    gap: float
    engine: EngineAnswer
    cloths: list[ClothAnswer]
    findings: list[FindingAnswer]
