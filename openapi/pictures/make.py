"""Make the pictures of this folder: python openapi/pictures/make.py

Every picture is drawn from invented bodies by the drafting itself; run again after a change of the
drafting and look at what moved.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path as File

from PIL import Image
from pypdfium2 import PdfDocument

ROOT = File(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from drafting.body import Body  # noqa: E402
from drafting.drawing import Group, Sheet, Stroke, Text  # noqa: E402
from drafting.drawing.sheet import Pen, Role  # noqa: E402
from drafting.export import draft_pdf  # noqa: E402
from drafting.export.svg import render  # noqa: E402
from drafting.garments import GARMENTS  # noqa: E402
from drafting.garments.trousers.pins import Correction  # noqa: E402
from drafting.geometry import (
    IDENTITY,
    Point,
    Transform,
    Vector,
    mirror,
    polyline,
    scale,
    shift,
    turn,
)  # noqa: E402
from drafting.pattern import Finish, Piece  # noqa: E402
from drafting.pattern.finished import FinishedPiece  # noqa: E402
from drafting.teaching.form import DraftForm  # noqa: E402
from drafting.teaching.taught import teach  # noqa: E402
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
            min(b[0] for b in boxes),
            min(b[1] for b in boxes),
            max(b[2] for b in boxes),
            max(b[3] for b in boxes),
        )


def made(
    measures: dict[str, float] | None = None, kind: str = "trousers", **options: object
) -> Work:
    """A garment for the invented sample body, or one with other measures."""
    garment = GARMENTS[kind]
    body = Body.of({**dict(garment.sample), **(measures or {})})
    return work(garment, body, garment.spec(kind=kind, **options), Finish())


def lines(piece: Piece, pen: Pen, by: Transform = IDENTITY) -> tuple[Stroke, ...]:
    """A piece's stitching line, darts and pleats."""
    darts = (polyline(d.first, d.point, d.second) for d in piece.darts)
    pleats = (line for p in piece.pleats for line in (p.one, p.two))
    return tuple(
        Stroke(p.transformed(by), Role.STITCH, "", pen) for p in (piece.outline, *darts, *pleats)
    )


def drawn(finished: FinishedPiece, by: Transform) -> tuple[Stroke, ...]:
    """A piece with everything on it: cutting and stitching line, notches, marks, levels, grain."""
    piece = finished.piece
    inner = (
        *(m.path for m in piece.marks),
        *(line for pleat in piece.pleats for line in pleat.lines),
        polyline(*piece.grain),
        *(polyline(a, b) for _, a, b in piece.levels),
    )
    return (
        Stroke(finished.cut_line.transformed(by), Role.CUT, "", THIN),
        *lines(piece, Pen(0.3, (2, 2)), by),
        *(
            Stroke(polyline(n.point, n.cut).transformed(by), Role.NOTCH, "", SOLID)
            for n in finished.notches
        ),
        *(Stroke(p.transformed(by), Role.MARK, "", Pen(0.3)) for p in inner),
    )


def in_place(done: Work) -> Tile:
    """Front and back side seam to side seam, the pocket and the fly where they lie under the front."""
    pattern = done.pattern.pattern
    front, back = pattern.piece("front"), pattern.piece("back")
    items = [*lines(front, SOLID)]
    for name, pen, by in (
        ("side_piece", DASHED, IDENTITY),
        ("pocket_bag", DOTTED, IDENTITY),
        ("pocket_facing", THIN, FLIP),
        ("fly_facing", DASHED, FLIP),
    ):
        items += lines(pattern.piece(name), pen, by)
    for mark in front.marks:
        items.append(Stroke(mark.path, Role.MARK, "", THIN))
    beside = shift(
        front.level("hip")[0].x - back.level("hip")[1].x,
        front.level("hip")[0].y - back.level("hip")[0].y,
    )
    items += lines(back, SOLID, beside)
    items += [Stroke(m.path.transformed(beside), Role.MARK, "", THIN) for m in back.marks]
    bag = pattern.piece("back_pocket_bag")
    slit, level = back.marks[1].path.transformed(beside), bag.edge("left_under").path.start
    across = slit.end - slit.start if slit.end.x > slit.start.x else slit.start - slit.end
    left, _, right, _ = bag.outline.bounds()
    middle = Point((left + right) / 2, level.y)
    goal = slit.start.toward(slit.end, 0.5)
    items += lines(
        bag, DOTTED, turn(across.angle, middle).then(shift(goal.x - middle.x, goal.y - middle.y))
    )
    return Tile(
        "in_place",
        "side seam to side seam; dashed side piece and fly facing, dotted bags",
        tuple(items),
    )


def pieces(done: Work, caption: str, name: str) -> Tile:
    """All pieces of a cut, small: the panels side by side, the others stacked in columns beside them."""
    items, x, y, wide = list[Stroke](), 0.0, 0.0, 0.0
    tall = max(high - low for _, low, _, high in (f.cut_line.bounds() for f in done.pattern.pieces))
    for finished in done.pattern.pieces:
        left, low, right, high = finished.cut_line.bounds()
        if y and y + high - low > tall:
            x, y, wide = x + wide + 4, 0.0, 0.0
        items += drawn(finished, shift(x - left, tall - y - high))
        y, wide = y + high - low + 3, max(wide, right - left)
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
    return Sheet(
        width=width,
        height=y,
        title=title,
        description="Invented bodies.",
        groups=tuple(g.transformed(up) for g in groups),
    )


def panels(done: Work, caption: str, name: str) -> Tile:
    """Front, back and what fills the pocket's corner, as they are sewn side to side."""
    pattern = done.pattern.pattern
    front, back = pattern.piece("front"), pattern.piece("back")
    left, right = front.level("hip")[0], back.level("hip")[1]
    beside = shift(left.x - right.x - 3, left.y - right.y)
    items = (
        *lines(front, THIN),
        *lines(pattern.piece("side_piece"), Pen(0.3, (2, 2))),
        *lines(back, THIN, beside),
    )
    return Tile(name, caption, items)


BODIES = (
    # waist, hip, stature, and what was measured or told beside them; all invented
    (60, 84, 150, {}),
    (64, 90, 160, {}),
    (68, 94, 165, {}),
    (74, 101, 168, {}),
    (80, 104, 168, {}),
    (92, 112, 168, {}),
    (110, 124, 165, {}),
    (132, 142, 170, {}),
    (160, 168, 172, {}),
    (66, 104, 168, {}),
    (100, 98, 165, {}),
    (120, 112, 170, {}),
    (74, 101, 185, {}),
    (74, 101, 150, {}),
    (74, 101, 168, {"body_rise": 24.0}),
    (74, 101, 168, {"body_rise": 32.0}),
    (74, 101, 168, {"body_rise": 27.5, "side_waist_to_hip": 26.5}),
    (74, 101, 168, {"total_crotch_length": 76.0}),
    (74, 101, 168, {"seat": "flat"}),
    (74, 101, 168, {"seat": "full"}),
)


def body_tile(
    number: int, waist: float, hip: float, stature: float, extra: dict[str, object]
) -> Tile:
    """A body's panels; the options among the extras are told apart from the measures."""
    from drafting.body import prepare

    garment = GARMENTS["trousers"]
    options = {k: v for k, v in extra.items() if k == "seat"}
    measured = {k: v for k, v in extra.items() if k != "seat"}
    given = {
        "waist_girth": float(waist),
        "hip_girth": float(hip),
        "stature": float(stature),
        **measured,
    }
    body, _ = prepare(given, "women", garment.needs, garment.optional, accept_unusual=True)
    done = work(garment, body, garment.spec(kind="trousers", **options), Finish())
    told = "".join(f", {k.replace('_', ' ')} {v}" for k, v in extra.items())
    return panels(done, f"{waist}/{hip}, {stature}{told}", f"body{number}")


CUTS: dict[str, dict[str, object]] = {
    "as the block has it": {},
    "men's block": {"method": "mens_block", "lap": "left_over_right"},
    "quarter draft": {"method": "quarter"},
    "slim": {"fit": "slim"},
    "slim, stretch 20 %": {"fit": "slim", "stretch": 20.0},
    "classic": {"fit": "classic"},
    "relaxed": {"fit": "relaxed"},
    "wide fit": {"fit": "wide"},
    "ease waist 3, hip 8, knee 16": {"waist_ease": 3.0, "hip_ease": 8.0, "knee_ease": 16.0},
    "top 2 over the band": {"waist_fullness": 2.0},
    "thigh ease 8": {"thigh_ease": 8.0},
    "tapered leg": {"leg": "tapered"},
    "flared leg": {"leg": "flared"},
    "wide leg": {"leg": "wide"},
    "culottes to the knee": {"leg": "culottes", "length": "knee"},
    "narrow hem and knee": {"hem_girth": 36.0, "knee_girth": 42.0},
    "cropped": {"length": "cropped"},
    "to the knee": {"length": "knee"},
    "shorts": {"length": "shorts"},
    "inside leg 5, hem 66": {"inside_leg": 5.0, "hem_girth": 66.0},
    "shoe 6, hem 1 over the floor": {"shoe_height": 6.0, "hem_over_floor": 1.0},
    "shaped hem": {"hem": "shaped"},
    "turn-ups 4": {"turn_ups": 4.0},
    "turn-ups on tapered shorts": {"turn_ups": 3.0, "length": "shorts", "leg": "tapered"},
    "waist 3 lower": {"waist_position": -3.0},
    "waist 6 lower, contoured": {"waist_position": -6.0, "waistband": "contoured"},
    "waist 6 higher": {"waist_position": 6.0},
    "waist 5 higher, contoured": {"waist_position": 5.0, "waistband": "contoured"},
    "flat front": {"front": "flat"},
    "one pleat": {"front": "one_pleat"},
    "one pleat, forward, 6 deep": {
        "front": "one_pleat",
        "pleat_direction": "forward",
        "pleat_depth": 6.0,
    },
    "two pleats": {"front": "two_pleats"},
    "two pleats, forward": {"front": "two_pleats", "pleat_direction": "forward"},
    "one back dart": {"back": "one_dart"},
    "darts by the figure, patch": {"back": "darts", "back_pocket": "patch"},
    "two back darts, patch": {"back": "two_darts", "back_pocket": "patch"},
    "yoke": {"back": "yoke"},
    "left over right": {"lap": "left_over_right"},
    "side zip": {"closure": "side_zip"},
    "side zip, contoured": {"closure": "side_zip", "waistband": "contoured"},
    "side zip, faced": {"closure": "side_zip", "waistband": "faced"},
    "elastic": {"waistband": "elastic", "closure": "none", "front": "flat", "back": "flat"},
    "elastic, no pockets, wide leg": {
        "waistband": "elastic",
        "front_pocket": "none",
        "leg": "wide",
    },
    "contoured band": {"waistband": "contoured"},
    "faced": {"waistband": "faced"},
    "faced, 8 deep": {"waistband": "faced", "facing_depth": 8.0},
    "band 6, underlap 5, no loops": {"band_depth": 6.0, "underlap": 5.0, "belt_loops": False},
    "curved pockets, flat front": {"front_pocket": "curved", "front": "flat"},
    "curved pockets beside a dart": {"front_pocket": "curved"},
    "pockets in the seam": {"front_pocket": "in_seam"},
    "slant pockets, mouth 18, inset 3": {"pocket_mouth": 18.0, "pocket_inset": 3.0},
    "no pockets": {"front_pocket": "none", "back_pocket": "none"},
    "flat seat": {"seat": "flat"},
    "full seat": {"seat": "full"},
    "full abdomen": {"abdomen": "full"},
    "hollow back": {"hollow_back": True},
    "toile: fork, scoop, swing": {
        "corrections": (
            Correction(pin="lengthen_back_fork", by=1.0),
            Correction(pin="scoop_back", by=0.5),
            Correction(pin="swing_leg", by=1.0),
        )
    },
    "jeans": {
        "waist_position": -5.0,
        "waistband": "contoured",
        "front": "flat",
        "back": "yoke",
        "front_pocket": "curved",
        "back_pocket": "patch",
        "lap": "left_over_right",
        "fit": "slim",
    },
}
"""At least one row for each value of each option; a test proves it."""


DRAFTS = tuple(
    (method, fit)
    for method in ("block", "mens_block", "quarter")
    for fit in (None, "slim", "classic", "relaxed", "wide")
)


def draft_tile(number: int, method: str, fit: str | None) -> Tile:
    """A method's panels in a fit, on the sample body."""
    return panels(
        made(method=method, fit=fit),
        f"{method.replace('_', ' ')}, {fit or 'its own eases'}",
        f"draft{number}",
    )


SKIRTS: dict[str, dict[str, dict[str, object]]] = {
    "straight_skirt": {
        "straight skirt, block": {},
        "proportional draft, facing, lined": {
            "method": "proportional",
            "waistband": "facing",
            "lining": True,
            "hem_at": "mid_calf",
        },
        "contoured band, side zip, slit": {
            "waistband": "contoured",
            "closure": "side",
            "hem_opening": "slit",
            "hem_at": "mid_calf",
        },
        "pockets in the sides": {"pocket": "in_seam", "hem_opening": "none"},
    },
    "a_line_skirt": {
        "A-line": {},
        "22 degrees, contoured band": {"flare": 22.0, "waistband": "contoured"},
        "hem 200, to the calf, facing": {
            "hem_girth": 200.0,
            "hem_at": "mid_calf",
            "waistband": "facing",
        },
    },
    "gored_skirt": {
        "six gores": {},
        "four gores, facing, pockets": {"gores": 4, "waistband": "facing", "pocket": "in_seam"},
        "eight gores, flared from 40": {"gores": 8, "flare_from": 40.0, "closure": "side"},
    },
    "circle_skirt": {
        "full circle": {},
        "half circle in one, facing, lined": {
            "circle": "half",
            "waistband": "facing",
            "lining": True,
            "cloth_width": 300.0,
        },
        "three quarters, side zip": {"circle": "three_quarter", "closure": "side"},
        "cloth 70 wide": {"cloth_width": 70.0},
    },
    "gathered_skirt": {
        "gathered": {},
        "three tiers, to the calf": {"tiers": 3, "hem_at": "mid_calf"},
        "elastic waist, pockets": {"waistband": "elastic", "pocket": "in_seam"},
    },
    "pleated_skirt": {
        "knife pleats": {},
        "box pleats on a yoke": {"pleats": "box", "top": "yoke"},
        "inverted pleats": {"pleats": "inverted", "face": 9.0},
        "knife pleats on a yoke, side zip": {"top": "yoke", "closure": "side"},
    },
}


TOPS: dict[str, dict[str, object]] = {
    "regular, short sleeves": {},
    "fitted, stretch 50 %, V neck, long sleeves": {
        "fit": "fitted",
        "stretch": 50.0,
        "neckline": "v",
        "sleeve": "long",
    },
    "loose, three quarter sleeves, cuffs and hem band": {
        "fit": "loose",
        "sleeve": "three_quarter",
        "sleeve_end": "cuff",
        "hem": "band",
    },
    "no sleeves, match marks": {"sleeve": "none", "match_marks": True},
}


def tops() -> list[Tile]:
    """Knit tops in several cuts."""
    return [
        pieces(made(kind="knit_top", **options), name, f"top{n}")
        for n, (name, options) in enumerate(TOPS.items())
    ]


def skirts() -> list[Tile]:
    """Every kind of skirt in several cuts."""
    cuts = [
        (kind, name, options) for kind, named in SKIRTS.items() for name, options in named.items()
    ]
    return [
        pieces(made(kind=kind, **options), name, f"skirt{n}")
        for n, (kind, name, options) in enumerate(cuts)
    ]


SHIRTS: dict[str, dict[str, object]] = {
    "men's, classic": {},
    "men's, slim": {"fit": "slim"},
    "men's, relaxed": {"fit": "relaxed"},
    "women's, classic": {"method": "womens"},
    "women's, slim": {"method": "womens", "fit": "slim"},
    "women's, relaxed": {"method": "womens", "fit": "relaxed"},
    "women's, no dart": {"method": "womens", "bust_dart": 0.0},
    "women's, dart 5": {"method": "womens", "bust_dart": 5.0},
    "chest ease 30, neck ease 3": {"chest_ease": 30.0, "neck_ease": 3.0},
    "no shaping at the waist": {"waist_shaping": 0.0},
    "shoulders 2 lower": {"shoulder_drop": 2.0},
    "shoulders 1.5 higher": {"shoulder_drop": -1.5},
    "straight hem, length 72": {"hem": "straight", "length": 72.0},
    "tail 12": {"tail": 12.0},
    "yoke 10 deep": {"yoke_depth": 10.0},
    "no pleat": {"back_pleat": "none"},
    "side pleats of 3": {"back_pleat": "sides", "pleat_intake": 3.0},
    "front band, stand 1.75": {"front_edge": "band", "button_stand": 1.75},
    "buttons 7 apart": {"button_gap": 7.0},
    "spread collar": {"collar": "spread"},
    "button-down collar, two pockets": {"collar": "button_down", "chest_pocket": "both"},
    "stand alone": {"collar": "stand", "chest_pocket": "none"},
    "high stand, deep fall, long point": {
        "collar_stand": 4.0,
        "collar_fall": 5.5,
        "collar_point": 9.0,
    },
    "short sleeve": {"sleeve": "short"},
    "sleeve 70, cap ease 2": {"sleeve_length": 70.0, "cap_ease": 2.0},
    "rounded cuffs 8 deep, ease 8": {"cuff": "rounded", "cuff_depth": 8.0, "cuff_ease": 8.0},
    "bound slits": {"placket": "bound"},
    "marks for stripes": {"match": "stripes"},
    "marks for checks": {"match": "checks"},
}


BODICES = {
    "side dart, elbow dart": {},
    "armhole method, French dart, sleeveless V": {
        "method": "armhole_dart",
        "bust_dart": "french",
        "sleeve": "none",
        "neckline": "v",
    },
    "shoulder dart, boat neck, short sleeve": {
        "bust_dart": "shoulder",
        "neckline": "boat",
        "sleeve": "short",
    },
    "dart in the armhole, square neck, cuff": {
        "bust_dart": "armhole",
        "neckline": "square",
        "sleeve_finish": "cuff",
    },
    "darts in the waist, buttons in front": {
        "bust_dart": "waist",
        "opening": "front_buttons",
        "sleeve": "three_quarter",
    },
    "princess line from the shoulder": {"shaping": "princess_shoulder", "sleeve_finish": "plain"},
    "princess line from the armhole": {"shaping": "princess_armhole", "sleeve": "none"},
    "buttons behind": {"method": "armhole_dart", "opening": "back_buttons", "sleeve": "short"},
}
DRESSES = {
    kind.replace("_", "-"): {"skirt": kind, "sleeve": sleeve, "neckline": neck}
    for kind, sleeve, neck in (
        ("straight", "none", "square"),
        ("a_line", "short", "round"),
        ("gored", "long", "round"),
        ("circle", "none", "v"),
        ("gathered", "short", "square"),
        ("pleated", "three_quarter", "boat"),
    )
}


def shirt_in_place(done: Work, caption: str, name: str) -> Tile:
    """Yoke and back as drafted, the front turned shoulder to shoulder, the leaf over the stand, the sleeve."""
    pattern = done.pattern.pattern
    yoke, front = pattern.piece("yoke"), pattern.piece("front")
    here, there = front.edge("shoulder").path, yoke.edge("shoulder").path.reversed()
    along, onto = here.end - here.start, there.end - there.start
    by = turn(onto.angle - along.angle, here.start).then(
        shift(there.start.x - here.start.x, there.start.y - here.start.y)
    )
    items = [*lines(yoke, SOLID), *lines(pattern.piece("back"), THIN), *lines(front, THIN, by)]
    items += [Stroke(m.path.transformed(by), Role.MARK, "", DOTTED) for m in front.marks]
    _, low, right, _ = pattern.piece("back").outline.bounds()
    sleeve = pattern.piece("sleeve")
    left, foot, wide, _ = sleeve.outline.bounds()
    beside = shift(right + 10 - left, low - foot)
    items += lines(sleeve, THIN, beside)
    stand, leaf = pattern.piece("collar_stand"), pattern.piece("collar")
    fold, over = stand.edge("centre_back").path, leaf.edge("centre_back").path
    at = shift(right + wide - left + 20 - fold.end.x, low + 10 - fold.end.y)
    top = at.point(fold.start)
    items += lines(stand, SOLID, at)
    items += lines(leaf, DASHED, shift(top.x - over.end.x, top.y - over.end.y))
    return Tile(name, caption, tuple(items))


def class_sheet() -> Image.Image:
    """The class sheet of the trousers: its first page, and the one that draws the front crotch."""
    garment = GARMENTS["trousers"]
    told = teach(made(), garment, DraftForm(), invented=True)
    document = PdfDocument(draft_pdf.write(told))
    texts = [page.get_textpage().get_text_bounded() for page in document]
    crotch = next(f"{s.number}. {s.heading}" for s in told.steps if s.heading == "Front crotch")
    drawn = next(n for n, text in enumerate(texts) if crotch in text)
    pages = [document[n].render(scale=PIXELS / 72).to_pil() for n in (0, drawn)]
    width, height = pages[0].size
    both = Image.new("L", (2 * width + RIM, height), 128)
    for n, page in enumerate(pages):
        both.paste(page.convert("L"), (n * (width + RIM), 0))
    return both.quantize(16)


PIXELS = 72
"""Pixels an inch."""
RIM = 8


def main() -> None:
    """Write every picture."""
    pictures = {
        "trousers_in_place": sheet([in_place(made())], 1, 0.25, "Trousers laid seam to seam"),
        "trousers_cuts": sheet(
            [
                pieces(made(**options), name, f"cut{n}")
                for n, (name, options) in enumerate(CUTS.items())
            ],
            5,
            0.1,
            "Trousers, one body, every option",
        ),
    }
    pictures["trousers_bodies"] = sheet(
        [body_tile(n, *body) for n, body in enumerate(BODIES)], 5, 0.1, "Trousers on twenty bodies"
    )
    pictures["trousers_methods"] = sheet(
        [draft_tile(n, *draft) for n, draft in enumerate(DRAFTS)],
        5,
        0.1,
        "Trousers, each method in each fit",
    )
    pictures["knit_tops"] = sheet(tops(), 2, 0.12, "Knit tops, one body, several cuts")
    pictures["skirts_cuts"] = sheet(skirts(), 2, 0.08, "Skirts, one body, several cuts")
    pictures["shirts_in_place"] = sheet(
        [
            shirt_in_place(made(kind="shirt", method=method), told, method)
            for method, told in (("mens", "men's"), ("womens", "women's"))
        ],
        1,
        0.15,
        "Shirts laid shoulder to shoulder; dashed the leaf over its stand",
    )
    pictures["bodices_cuts"] = sheet(
        [
            pieces(made(kind="bodice", **options), name, f"bodice{n}")
            for n, (name, options) in enumerate(BODICES.items())
        ],
        2,
        0.08,
        "Bodices, one body, several cuts",
    )
    pictures["dresses_cuts"] = sheet(
        [
            pieces(made(kind="dress", **options), name, f"dress{n}")
            for n, (name, options) in enumerate(DRESSES.items())
        ],
        2,
        0.08,
        "Dresses, one body, every skirt",
    )
    pictures["shirts_cuts"] = sheet(
        [
            pieces(made(kind="shirt", **options), name, f"shirt{n}")
            for n, (name, options) in enumerate(SHIRTS.items())
        ],
        3,
        0.08,
        "Shirts, one body, every option",
    )
    for name, picture in pictures.items():
        (HERE / f"{name}.svg").write_bytes(render(picture, name))
        print(HERE / f"{name}.svg")
    class_sheet().save(HERE / "class_sheet.png", optimize=True)
    print(HERE / "class_sheet.png")


if __name__ == "__main__":
    main()
