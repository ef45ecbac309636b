"""The display list: strokes and texts with roles, in groups. Exporters know roles, not garments.

Centimetres, Y up, the origin at the sheet's lower left corner. Curves stay curves. Strokes and
texts are kept from change as points are (`geometry/point.py`).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final, Literal

from drafting.geometry import Path, Point, Transform, Vector

Anchor = Literal["start", "middle", "end"]


class Role(StrEnum):
    """What a stroke or a text is for."""

    CUT = "cut"
    STITCH = "stitch"
    DART = "dart"
    FOLD = "fold"
    GRAIN = "grain"
    NOTCH = "notch"
    DRILL = "drill"
    LEVEL = "level"
    LENGTHEN = "lengthen"
    MARK = "mark"
    LABEL = "label"
    CAUTION = "caution"
    SQUARE = "square"
    GRID = "grid"
    JOIN = "join"
    DIAMOND = "diamond"
    NEW = "new"
    OLD = "old"
    FAINT = "faint"
    DIMENSION = "dimension"


@dataclass(frozen=True, slots=True)
class Pen:
    """A look of its own for a line: breadth, and dashes and gaps (none: solid), all in mm."""

    width: float
    dashes: tuple[float, ...] = ()


@dataclass(slots=True, init=False, unsafe_hash=True)
class Stroke:
    """A line to draw.

    Attributes:
        path: Where.
        role: What it is for.
        name: Unique within its group where it is worth finding again, else empty.
        pen: How it is drawn where that is not by its role.
    """

    path: Final[Path]
    role: Final[Role]
    name: Final[str]
    pen: Final[Pen | None]

    def __init__(self, path: Path, role: Role, name: str = "", pen: Pen | None = None) -> None:
        self.path = path
        self.role = role
        self.name = name
        self.pen = pen

    def transformed(self, by: Transform) -> Stroke:
        """The stroke's image."""
        return Stroke(self.path.transformed(by), self.role, self.name, self.pen)


@dataclass(slots=True, init=False, unsafe_hash=True)
class Text:
    """A line of text to write.

    Attributes:
        text: What, as typed.
        at: Where its base line starts, has its middle or ends (see `anchor`).
        height: Height of its capitals in cm.
        role: What it is for.
        angle: Direction of its base line in degrees, counter-clockwise from +X.
        anchor: Which part of the base line lies at `at`.
    """

    text: Final[str]
    at: Final[Point]
    height: Final[float]
    role: Final[Role]
    angle: Final[float]
    anchor: Final[Anchor]

    def __init__(
        self,
        text: str,
        at: Point,
        height: float,
        role: Role = Role.LABEL,
        angle: float = 0.0,
        anchor: Anchor = "start",
    ) -> None:
        self.text = text
        self.at = at
        self.height = height
        self.role = role
        self.angle = angle
        self.anchor = anchor

    def transformed(self, by: Transform) -> Text:
        """The text's image under a move that does not mirror; its size stays."""
        turned = self.angle + by.vector(Vector(1.0, 0.0)).angle
        return Text(self.text, by.point(self.at), self.height, self.role, turned, self.anchor)


Item = Stroke | Text


@dataclass(frozen=True, slots=True)
class Group:
    """What belongs together: a piece with all its marks, or the legend.

    Attributes:
        name: Stable name, unique in the sheet.
        title: For people.
        items: In the order of drawing.
        layer: What a reader may show and hide by itself, such as a size; empty for what always
            shows. Groups of one layer follow each other.
    """

    name: str
    title: str
    items: tuple[Item, ...]
    layer: str = ""

    def transformed(self, by: Transform) -> Group:
        """The group's image."""
        return replace(self, items=tuple(item.transformed(by) for item in self.items))


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A drawing ready for any exporter; width and height in cm."""

    width: float
    height: float
    title: str
    description: str
    groups: tuple[Group, ...]
