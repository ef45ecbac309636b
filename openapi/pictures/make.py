"""Make the pictures of this folder: python openapi/pictures/make.py

Every picture is drawn from invented bodies by the drafting itself; run again after a change of the
drafting and look at what moved.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path as File

ROOT = File(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from drafting.body import Body  # noqa: E402
from drafting.drawing import Group, Sheet, Stroke, Text  # noqa: E402
from drafting.drawing.sheet import Pen, Role  # noqa: E402
from drafting.export.svg import render  # noqa: E402
from drafting.garments import GARMENTS  # noqa: E402
from drafting.geometry import IDENTITY, Point, Transform, Vector, mirror, polyline, scale, shift, turn  # noqa: E402
from drafting.pattern import Finish, Piece  # noqa: E402
from drafting.workroom import Work, work  # noqa: E402

HERE = File(__file__).parent
FLIP = mirror(Point(0, 0), Vector(0, 1))
SOLID, THIN, DASHED, DOTTED = Pen(1.2), Pen(0.6), Pen(0.8, (6, 3)), Pen(0.8, (1.5, 2.5))


@dataclass(frozen=True)
class Tile:
    """A picture to be laid on a sheet: its items, box and caption."""

    name: str
    caption: str
    items: tuple[Stroke | Text, ...]

    def box(self) -> tuple[float, float, float, float]:
        """Least x, least y, greatest x, greatest y, cm."""
        boxes = [i.path.bounds() for i in self.items if isinstance(i, Stroke)]
        return (
            min(b[0] for b in boxes), min(b[1] for b in boxes),
            max(b[2] for b in boxes), max(b[3] for b in boxes),
        )


def made(measures: dict[str, float] | None = None, kind: str = "trousers", **options: object) -> Work:
    """A garment for the invented sample body, or one with other measures."""
    garment = GARMENTS[kind]
    body = Body.of({**dict(garment.sample), **(measures or {})})
    return work(garment, body, garment.spec(kind=kind, **options), Finish())


def lines(piece: Piece, pen: Pen, by: Transform = IDENTITY) -> tuple[Stroke, ...]:
    """A piece's stitching line and darts."""
    darts = (polyline(d.first, d.point, d.second) for d in piece.darts)
    return tuple(Stroke(p.transformed(by), Role.STITCH, "", pen) for p in (piece.outline, *darts))


def in_place(done: Work) -> Tile:
    """Front and back side seam to side seam, the pocket and the fly where they lie under the front."""
    pattern = done.pattern.pattern
    front, back = pattern.piece("front"), pattern.piece("back")
    items = [*lines(front, SOLID)]
    for name, pen, by in (
        ("side_piece", DASHED, IDENTITY), ("pocket_bag", DOTTED, IDENTITY),
        ("pocket_facing", THIN, FLIP), ("fly_facing", DASHED, FLIP),
    ):
        items += lines(pattern.piece(name), pen, by)
    for mark in front.marks:
        items.append(Stroke(mark.path, Role.MARK, "", THIN))
    beside = shift(front.level("hip")[0].x - back.level("hip")[1].x, front.level("hip")[0].y - back.level("hip")[0].y)
    items += lines(back, SOLID, beside)
    items += [Stroke(m.path.transformed(beside), Role.MARK, "", THIN) for m in back.marks]
    bag = pattern.piece("back_pocket_bag")
    slit, level = back.marks[1].path.transformed(beside), bag.edge("left_under").path.start
    across = slit.end - slit.start if slit.end.x > slit.start.x else slit.start - slit.end
    left, _, right, _ = bag.outline.bounds()
    middle = Point((left + right) / 2, level.y)
    goal = slit.start.toward(slit.end, 0.5)
    items += lines(bag, DOTTED, turn(across.angle, middle).then(shift(goal.x - middle.x, goal.y - middle.y)))
    return Tile("in_place", "side seam to side seam; dashed side piece and fly facing, dotted bags", tuple(items))


def pieces(done: Work, caption: str, name: str) -> Tile:
    """All pieces of a cut in a row, small."""
    items, x = [], 0.0
    for finished in done.pattern.pieces:
        left, low, right, _ = finished.cut_line.bounds()
        by = shift(x - left, -low)
        items.append(Stroke(finished.cut_line.transformed(by), Role.CUT, "", THIN))
        items += lines(finished.piece, Pen(0.3, (2, 2)), by)
        x += right - left + 4
    return Tile(name, caption, tuple(items))


def sheet(tiles: list[Tile], columns: int, size: float, title: str) -> Sheet:
    """Tiles in rows, each as big as it is at `size` cm to the cm, its caption under it."""
    groups, y, width = [], 0.0, 0.0
    for row in range(0, len(tiles), columns):
        x, height = 0.0, 0.0
        for tile in tiles[row : row + columns]:
            left, low, right, high = tile.box()
            by = shift(-left, -high).then(scale(size)).then(shift(x + 1, -y - 1))
            caption = Text(tile.caption, Point(x + 1, -y - 2.2 - (high - low) * size), 0.4)
            items = (*(i.transformed(by) for i in tile.items if isinstance(i, Stroke)), caption)
            groups.append(Group(tile.name, tile.caption, items))
            x += max((right - left) * size, 0.3 * len(tile.caption)) + 2
            height = max(height, (high - low) * size)
        y, width = y + height + 3.2, max(width, x)
    up = shift(0, y)
    return Sheet(width=width, height=y, title=title, description="Invented bodies.", groups=tuple(g.transformed(up) for g in groups))


def panels(done: Work, caption: str, name: str) -> Tile:
    """Front, back and what fills the pocket's corner, as they are sewn side to side."""
    pattern = done.pattern.pattern
    front, back = pattern.piece("front"), pattern.piece("back")
    left, right = front.level("hip")[0], back.level("hip")[1]
    beside = shift(left.x - right.x - 3, left.y - right.y)
    items = (*lines(front, THIN), *lines(pattern.piece("side_piece"), Pen(0.3, (2, 2))), *lines(back, THIN, beside))
    return Tile(name, caption, items)


BODIES = (
    # waist, hip, stature, and what was measured or told beside them; all invented
    (60, 84, 150, {}), (64, 90, 160, {}), (68, 94, 165, {}), (74, 101, 168, {}), (80, 104, 168, {}),
    (92, 112, 168, {}), (110, 124, 165, {}), (132, 142, 170, {}), (160, 168, 172, {}), (66, 104, 168, {}),
    (100, 98, 165, {}), (120, 112, 170, {}), (74, 101, 185, {}), (74, 101, 150, {}),
    (74, 101, 168, {"body_rise": 24.0}), (74, 101, 168, {"body_rise": 32.0}),
    (74, 101, 168, {"body_rise": 27.5, "side_waist_to_hip": 26.5}), (74, 101, 168, {"total_crotch_length": 76.0}),
    (74, 101, 168, {"seat": "flat"}), (74, 101, 168, {"seat": "full"}),
)


def body_tile(number: int, waist: float, hip: float, stature: float, extra: dict[str, object]) -> Tile:
    """A body's panels; the options among the extras are told apart from the measures."""
    from drafting.body import prepare

    garment = GARMENTS["trousers"]
    options = {k: v for k, v in extra.items() if k == "seat"}
    measured = {k: v for k, v in extra.items() if k != "seat"}
    given = {"waist_girth": float(waist), "hip_girth": float(hip), "stature": float(stature), **measured}
    body, _ = prepare(given, "women", garment.needs, garment.optional, accept_unusual=True)
    done = work(garment, body, garment.spec(kind="trousers", **options), Finish())
    told = "".join(f", {k.replace('_', ' ')} {v}" for k, v in extra.items())
    return panels(done, f"{waist}/{hip}, {stature}{told}", f"body{number}")


CUTS = {
    "as the block has it": {},
    "left over right": {"lap": "left_over_right"},
    "contoured band": {"waistband": "contoured"},
    "no pockets": {"front_pocket": "none", "back_pocket": "none"},
    "narrow hem": {"hem_girth": 36.0, "knee_girth": 42.0},
    "wide leg": {"hem_girth": 64.0, "knee_girth": 62.0},
    "men's block": {"method": "mens_block", "lap": "left_over_right"},
    "quarter draft": {"method": "quarter"},
    "slim": {"fit": "slim"},
    "slim, stretch 20 %": {"fit": "slim", "stretch": 20.0},
    "classic": {"fit": "classic"},
    "relaxed": {"fit": "relaxed"},
    "wide": {"fit": "wide"},
}


DRAFTS = tuple(
    (method, fit)
    for method in ("block", "mens_block", "quarter")
    for fit in (None, "slim", "classic", "relaxed", "wide")
)


def draft_tile(number: int, method: str, fit: str | None) -> Tile:
    """A method's panels in a fit, on the sample body."""
    return panels(made(method=method, fit=fit), f"{method.replace('_', ' ')}, {fit or 'its own eases'}", f"draft{number}")


def main() -> None:
    """Write every picture."""
    pictures = {
        "trousers_in_place": sheet([in_place(made())], 1, 0.25, "Trousers laid seam to seam"),
        "trousers_cuts": sheet(
            [pieces(made(**options), name, f"cut{n}") for n, (name, options) in enumerate(CUTS.items())],
            1, 0.12, "Trousers, one body, several cuts",
        ),
    }
    pictures["trousers_bodies"] = sheet(
        [body_tile(n, *body) for n, body in enumerate(BODIES)], 5, 0.1, "Trousers on twenty bodies"
    )
    pictures["trousers_methods"] = sheet(
        [draft_tile(n, *draft) for n, draft in enumerate(DRAFTS)], 5, 0.1, "Trousers, each method in each fit"
    )
    for name, picture in pictures.items():
        (HERE / f"{name}.svg").write_bytes(render(picture, name))
        print(HERE / f"{name}.svg")


if __name__ == "__main__":
    main()
