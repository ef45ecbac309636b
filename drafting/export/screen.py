"""How a pattern is dressed for screens: it takes the size and the colours of the page it stands on.

Lines keep their breadth in pixels whatever the size. Colours are custom properties, each with one
for all behind it, and behind that the colour of the page's text; so dark pages work. A drawing by
itself follows the reader's wish for light or dark.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from svgwrite.base import Title

from drafting.drawing import Role
from drafting.export.paths import number

if TYPE_CHECKING:
    from drafting.drawing import Sheet, Text
    from drafting.export.style import Style

PIXELS = 2.0
"""Pixels for each millimetre of a line's breadth on paper."""
LEAST = 0.7
"""Breadth of the thinnest line in pixels."""
DASHES = 1.6
"""Pixels for each millimetre of a dash."""

COLOURS: dict[str, tuple[Role, ...]] = {
    "cut": (Role.CUT, Role.NOTCH),
    "stitch": (Role.STITCH, Role.DART),
    "mark": (Role.FOLD, Role.GRAIN, Role.DRILL, Role.MARK),
    "level": (Role.LEVEL, Role.LENGTHEN),
}
"""Lines that share a colour: `--pattern-cut` and so on; `--pattern-label` is that of texts,
`--pattern-piece` that of the pieces' areas, and `--pattern-ink` stands behind all but the last."""


@dataclass(frozen=True, slots=True)
class Page:
    """For an HTML page.

    Attributes:
        pixel: How much of the drawing a pixel shows, in mm, where that is known; None for
            drawings that are shown at any size.
    """

    pixel: float | None = None

    @property
    def colour(self) -> str:
        """Colour of lines where nothing else is told."""
        return "currentColor"

    def root(self, drawing: Any, sheet: Sheet, prefix: str) -> None:  # noqa: ARG002
        """The style sheet; it touches nothing but this drawing."""
        if self.pixel is None:
            drawing.elements.insert(2, _StyleSheet(style_sheet(prefix)))

    def pen(self, style: Style) -> dict[str, str]:
        """Attributes of a line; grey is told by opacity, which suits any colour."""
        size = 1.0 if self.pixel is None else self.pixel
        pen = {"stroke_width": number(max(style.width * PIXELS, LEAST) * size)}
        if self.pixel is None:
            pen["vector_effect"] = "non-scaling-stroke"
        if style.dashes:
            pen["stroke_dasharray"] = " ".join(number(d * DASHES * size) for d in style.dashes)
        if style.grey:
            pen["stroke_opacity"] = number(1 - style.grey)
        return pen

    def ink(self, text: Text) -> dict[str, str]:  # noqa: ARG002 - all alike
        """Attributes of a text's colour."""
        return {"fill": "currentColor", "stroke": "none"}


class _StyleSheet(Title):  # type: ignore[misc]  # svgwrite tells no types
    """A style sheet as plain text: it has no letter that XML would take for its own."""

    elementname = "style"


PAGE = Page()


def style_sheet(prefix: str) -> str:
    """Colours of the lines and texts under one id, and light or dark for a drawing by itself.

    What does not know custom properties passes over them: lines then have the text's colour.
    """
    own = f"#{prefix}"
    rules = []
    for name, roles in COLOURS.items():
        lines = ",".join(f"{own} path.{role}" for role in roles)
        rules.append(f"{lines}{{stroke:var(--pattern-{name},var(--pattern-ink,currentColor))}}")
    rules.append(f"{own} path.cut{{fill:var(--pattern-piece,none)}}")
    rules.append(f"{own} text{{fill:var(--pattern-label,var(--pattern-ink,currentColor))}}")
    alone = f"{own}:root{{color:#111}}"
    dark = f"@media (prefers-color-scheme:dark){{{own}:root{{color:#eee;background:#111}}}}"
    return f"{alone}{dark}@supports (color:var(--a)){{{''.join(rules)}}}"
