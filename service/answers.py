"""The shapes of JSON answers, for the API reference and for those who type-check against it.

No field has a default: what stands here is in every answer, unless it is marked NotRequired.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal, NotRequired

from pydantic import ConfigDict, Field, with_config
from typing_extensions import TypedDict

TOLD = ConfigDict(defer_build=True)
"""For whole answers: no route checks what it sends, so the shapes wait for a reader of the
reference."""

Point = Annotated[list[float], Field(min_length=2, max_length=2, description="X and Y in mm.")]
Stretch = Annotated[
    list[Point], Field(min_length=2, max_length=2, description="A straight line, end to end.")
]
Bounds = Annotated[
    list[float], Field(min_length=2, max_length=2, description="Least and greatest value.")
]
Allowed = Annotated[
    list[float | None],
    Field(
        min_length=2,
        max_length=2,
        description="Least and greatest value that will do; null where there is no bound.",
    ),
]
PathData = Annotated[str, Field(description="SVG path data in mm, Y down.")]


class TroubleAnswer(TypedDict):
    """One thing to change in a request."""

    pointer: Annotated[str, Field(description='JSON pointer into the order; "" for the whole.')]
    code: Annotated[str, Field(description="Stable snake_case name.")]
    detail: Annotated[str, Field(description="What is wrong and what to send instead.")]
    received: Annotated[Any, Field(description="What was sent, shortened; in the order's unit.")]
    allowed: Annotated[Any, Field(description="What would do: [low, high] or a list of names.")]


class Problem(TypedDict):
    """What went wrong and how to mend it (RFC 9457)."""

    type: Annotated[str, Field(description="Address of the problem's page.")]
    title: str
    status: int
    detail: str
    errors: list[TroubleAnswer]


BodyValue = TypedDict(
    "BodyValue",
    {
        "value": Annotated[float, Field(description="mm (degrees, kilograms).")],
        "origin": Literal["measured", "derived", "estimated", "size table"],
        "sides": NotRequired[
            Annotated[dict[Literal["left", "right"], float], Field(description="Each side's own.")]
        ],
        "sd": NotRequired[Annotated[float, Field(description="Standard deviation.")]],
        "from": NotRequired[Annotated[list[str], Field(description="What it comes from.")]],
    },
)
"""A measure as it was used, and where it comes from."""


class CutAnswer(TypedDict):
    """How many copies are cut of which cloth."""

    cloth: str
    quantity: int
    mirrored: Annotated[bool, Field(description="Half of the copies are turned over.")]


class EdgeAnswer(TypedDict):
    """A named stretch of the stitching line."""

    name: str
    path: PathData
    cut_length: Annotated[float, Field(description="Length of the path in mm.")]
    length: Annotated[float, Field(description="What is sewn, darts closed, in mm.")]
    allowance: Annotated[float, Field(description="mm beyond the stitching line.")]
    role: Literal["seam", "hem", "fold", "opening", "finished"]


class DartAnswer(TypedDict):
    """A wedge that is sewn away; lengths in mm."""

    edge: str
    intake: float
    length: float
    legs: Bounds
    mouth: Stretch
    point: Point
    drill: Point
    bends: Annotated[
        list[Point],
        Field(description="Where the legs bend in a raised waist's dart; else none."),
    ]


class PleatAnswer(TypedDict):
    """Cloth that is folded away at an edge and opens below; lengths in mm."""

    edge: str
    intake: float
    depth: float
    mouth: Stretch
    fold: Annotated[str, Field(description="The line that becomes the fold, as path data in mm.")]
    placement: Annotated[
        str, Field(description="The line that the fold is laid on, as path data in mm.")
    ]


class NotchAnswer(TypedDict):
    """A balance mark; the other edge of its seam carries the same match."""

    edge: str
    at: Annotated[float, Field(description="mm along the edge.")]
    count: int
    match: str
    point: Point
    direction: Point


class MarkAnswer(TypedDict):
    """An inside line or hole."""

    kind: str
    path: PathData


class LabelAnswer(TypedDict):
    """A text inside the piece."""

    text: str
    at: Point
    height: float
    angle: float


class PieceAnswer(TypedDict):
    """A pattern piece, right side up, in its own frame; half of it where it lies on the fold."""

    name: str
    title: str
    number: int
    half: bool
    cut: list[CutAnswer]
    edges: list[EdgeAnswer]
    stitch_line: PathData
    cut_line: PathData
    area: Annotated[float, Field(description="mm2 within the stitching line.")]
    darts: list[DartAnswer]
    pleats: list[PleatAnswer]
    notches: list[NotchAnswer]
    grain_line: Stretch
    levels: dict[str, Stretch]
    lengthen_lines: list[Stretch]
    marks: list[MarkAnswer]
    labels: list[LabelAnswer]


class SeamPartAnswer(TypedDict):
    """An edge's place in a side of a seam."""

    piece: str
    edge: str
    copy: Literal["left", "right", "each", "both"]
    count: int
    reversed: bool
    length: float


class EaseAnswer(TypedDict):
    """By how much side one is longer on purpose, in mm."""

    kind: Literal["none", "ease", "stretch", "gathers"]
    wanted: float
    min: float
    max: float


class SeamAnswer(TypedDict):
    """Two sides that are sewn together, in sewing order."""

    name: str
    sides: Annotated[list[list[SeamPartAnswer]], Field(min_length=2, max_length=2)]
    ease: EaseAnswer
    difference: float
    tolerance: float
    matches: bool


class SewingStepAnswer(TypedDict):
    """One step at the machine."""

    text: str
    seams: Annotated[list[str], Field(description="Names of the seams that it closes.")]
    darts: Annotated[list[str], Field(description="Names of the pieces whose darts it sews.")]


class CheckAnswer(TypedDict):
    """What was wanted beside what was measured on the drawn lines; mm or degrees."""

    name: str
    kind: Annotated[Literal["must", "advice"], Field(description="Only must decides the verdict.")]
    unit: Literal["mm", "deg"]
    wanted: float
    allowed: Allowed
    drafted: float
    passed: bool


class NotionAnswer(TypedDict):
    """What is bought beside the cloth."""

    name: str
    quantity: int
    length: NotRequired[float]


class FindingAnswer(TypedDict):
    """A remark on the drafted pattern."""

    code: str
    severity: Literal["note", "warning", "error"]
    where: str
    message: str
    measured: NotRequired[float]
    allowed: NotRequired[Allowed]


class ShrinkageAnswer(TypedDict):
    """What the pieces are drawn larger for, in percent; there only where the order asks for it.

    Pieces with all their lengths are those of the paper and the unwashed cloth. Seams, checks,
    finished measurements and body are those of the washed garment: of a length along the grain on
    the paper, 100 - lengthwise percent are left.
    """

    lengthwise: Annotated[float, Field(description="Along the grain.")]
    crosswise: Annotated[float, Field(description="Across it.")]


@with_config(TOLD)
class PatternAnswer(TypedDict):
    """A drafted pattern. Lengths in mm, areas in mm2, X right, Y down."""

    id: Annotated[str, Field(description="Digest of the resolved order without its reference.")]
    drafting_version: str
    unit: Literal["mm"]
    verdict: Literal["sound", "sound_with_remarks", "unsound"]
    garment: Annotated[dict[str, Any], Field(description="Every option, resolved; lengths in mm.")]
    body: dict[str, BodyValue]
    shrinkage: NotRequired[ShrinkageAnswer]
    pieces: list[PieceAnswer]
    seams: list[SeamAnswer]
    sewing: Annotated[list[SewingStepAnswer], Field(description="The order of assembly.")]
    checks: list[CheckAnswer]
    finished_measurements: dict[str, float]
    notions: list[NotionAnswer]
    findings: list[FindingAnswer]
    cautions: list[str]


@with_config(TOLD)
class LimitsAnswer(TypedDict):
    """The limits in force on this installation."""

    body_bytes: int
    json_depth: int
    reference_characters: int
    order_seconds: float
    orders_at_once: int
    orders_waiting: int
    pages: Annotated[int, Field(description="Most pages of a document.")]
    batch_lines: Annotated[int, Field(description="Most orders in a batch.")]
    batch_bytes: Annotated[int, Field(description="Longest batch.")]
    batches_at_once: int
    link_characters: Annotated[int, Field(description="Longest token of a link; 0 where off.")]
    link_seconds: Annotated[int, Field(description="Longest life of a link; 0 for no end.")]
    range_sizes: Annotated[int, Field(description="Most sizes in a range.")]
    lay_orders: Annotated[int, Field(description="Most orders in a lay plan.")]
    lay_pieces: Annotated[int, Field(description="Most pieces of one cloth in a lay plan.")]
    lay_budget: Annotated[float, Field(description="Seconds of searching where none is named.")]


@with_config(TOLD)
class LinkAnswer(TypedDict):
    """An address that carries an order, sealed."""

    token: str
    href: Annotated[str, Field(description="In the format that the order names or Accept asks.")]
    formats: Annotated[dict[str, str], Field(description="The same in each format.")]
    expires: Annotated[
        str | None, Field(description="Moment (UTC) from which it leads nowhere; null for none.")
    ]


class Health(TypedDict):
    """The service is there."""

    status: Literal["ok"]


@with_config(TOLD)
class ProblemPage(TypedDict):
    """What a problem means and how to mend it."""

    code: str
    status: int
    title: str
    meaning: str
    mend: str
