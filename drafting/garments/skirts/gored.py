"""The gored skirt: four, six or eight gores that flare from the hip or below it.

All gores share waist, hip and hem alike: a gore is a waist, a hip and a hem wide, an nth of each,
its grain down the middle, so that it ripples all round. The waist falls by 1 cm to the centre back.

Source: an nth of waist and hip, the hem wider by the flare at both edges, grain in the middle of
each gore: common practice, no source, and L. I. Baldt, Clothing for Women (1916).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.body import Body
from drafting.craft.around import Round
from drafting.craft.clashes import Clash, given, refuse_clashes
from drafting.craft.closure import zip_opening
from drafting.craft.contour import Contour
from drafting.craft.hemline import leg, skirt_length
from drafting.craft.rules import WAIST_LOWERED, ZIP_ABOVE_HIP
from drafting.craft.seam_pocket import SeamPocket
from drafting.craft.sheet import DraftSheet
from drafting.craft.trueing import square_to_ends
from drafting.craft.uprights import Upright, on_fold, plain_seam
from drafting.errors import ConstructionError, SpecError
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import straight
from drafting.garments.skirts import wants as wish
from drafting.garments.skirts.assembly import assembly
from drafting.garments.skirts.block import LEAST_BELOW_HIP
from drafting.garments.skirts.finishing import (
    above_lining,
    as_lining,
    finished_top,
    opened_by,
    side_pocket,
    traced,
)
from drafting.garments.skirts.gore_lines import Gore, Level, draw_gores
from drafting.garments.skirts.lining import SHORTER
from drafting.garments.skirts.making import LEAST_UNDER_ZIP
from drafting.garments.skirts.options import LINED, Fullness, HipEase, Lined, fullness
from drafting.garments.skirts.pieces import panel_piece
from drafting.garments.skirts.remarks import remarks
from drafting.garments.skirts.symptoms import SYMPTOMS
from drafting.garments.skirts.trueing import Lines
from drafting.garments.skirts.waists import eased
from drafting.geometry import (
    DOWN,
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    mirror,
    polyline,
    quadratic,
    root,
    smooth,
)
from drafting.pattern import EdgeLength, Girth, Notion, Pattern, Piece
from drafting.pattern.allowance import LENGTH
from drafting.trace import Length
from drafting.trace.place import corner_of_paper

FLARE = 30.0
"""By default all edges of half the skirt together flare by 30 cm. House method."""

EASED_CORNER = 6.0
"""A flare that begins below the hip is rounded in over 6 cm above and below. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GoredSkirt(Lined):
    """A gored skirt at the natural waist. Lengths in cm.

    Attributes:
        kind: Always "gored_skirt".
        gores: How many gores: 4 have a seam at each centre, 6 a panel, 8 seams again.
        flare: How far each edge of each gore flares out at the hem; by default 30 cm over the
            number of gores.
        hem_girth: Girth of the hem, instead of `flare`.
        flare_from: Waist to where the flare begins; by default the hip line.
        waistband: A straight waistband, or none, but a facing inside.
        waist_fullness: Skirt top over waistband, all round, eased on when the band is sewn; by
            default 1 cm with a band, none else.
        hip_ease: Skirt over body at the hip line, all round.
    """

    kind: Literal["gored_skirt"]
    gores: Literal[4, 6, 8] = 6
    flare: Annotated[float | None, Interval(ge=0, le=40), LENGTH] = None
    hem_girth: Annotated[float | None, Interval(ge=90, le=600), LENGTH] = None
    flare_from: Annotated[float | None, Interval(ge=15, le=110), LENGTH] = None
    waistband: Literal["straight", "facing"] = "straight"
    waist_fullness: Fullness = None
    hip_ease: HipEase = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Widths:
    """A gore's measures, cm: widths at waist, hip and hem, depths of hip, flare and hem."""

    waist: Length
    hip: Length
    hem: Length
    hip_depth: Length
    flare_depth: Length
    length: Length


CLASHES = (*LINED, Clash("flare", given, "hem_girth", given, "Both say how wide the hem is."))


def draw(body: Body, cut: GoredSkirt, sheet: DraftSheet) -> Pattern:
    """Draft a gored skirt for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    refuse_clashes(cut, CLASHES)
    under = leg(body)
    widths = gore(body, cut, skirt_length(cut.length, cut.hem_at, under), sheet)
    level = draft(widths, sheet)
    sheet.heading("Trueing", "common practice, no source")
    swing = sheet.solve(
        "swing of an edge at the hem", lambda out: hem_of(widths, out).length(), widths.hem,
        (-1.0, float(widths.hem)), "Brings the hem, curved so that it is square to the edges, to its width.",
    )
    drawn = gores(widths, level, swing, cut.gores, sheet)
    sheet.heading("Details", "common practice, no source")
    top = sheet.length("finished waist", body.waist_girth + Length(cut.waist_ease, "waist ease"), "Body and ease.")
    slit = float(zip_opening(body.hip_girth, top, body.side_waist_to_hip - ZIP_ABOVE_HIP, widths.length - LEAST_UNDER_ZIP, 0.0, sheet))
    behind = len(drawn) // 2
    pocket = side_pocket(drawn[behind].left, (NAMES[len(drawn)][behind], NAMES[len(drawn)][behind - 1]), cut, sheet)
    pieces, layer = panels(drawn, slit, cut, -float(widths.hip_depth), pocket)
    down = above_lining(cut, cut.waistband)
    lined = as_lining(*panels(tuple(trimmed(g, down, SHORTER) for g in drawn), slit - down, cut, -float(widths.hip_depth))) if cut.lining else None
    contours = tuple(_facing(g, down, front=n >= behind) for n, g in enumerate(drawn)) if down else ()
    waist = finished_top(layer, pieces, contours, float(top), eased(fullness(cut.waistband, cut.waist_fullness)), lined, cut)
    seams, sewing = assembly((), layer, None, lined, waist, pocket=pocket)
    hem = wish.all_round(tuple((p.name, "hem") for p in pieces))
    hip = Girth("hip", layer.panels, 2)
    opening = (EdgeLength(layer.panels[max(layer.opening - 1, 0)], ("zip",)),)
    return Pattern(
        kind="gored_skirt",
        title=f"Skirt of {cut.gores} gores",
        pieces=(*pieces, *(pocket.pieces if pocket else ()), *waist.pieces, *(lined.pieces if lined else ())),
        seams=seams,
        sewing=sewing,
        wants=(
            wish.finished_waist(body, cut.waist_ease, waist.tape),
            wish.near("finished_hip_girth", hip, body.hip_girth + cut.hip_ease, 0.5, 0.5, "Body and ease."),
            wish.near("finished_hem_girth", hem, _hem_girth(body, cut), 0.3, 0.3, "The hip and the flare of all edges."),
            wish.passes_hip(body, waist.tape, opening),
            wish.stride(body, under, float(widths.length), hem, ()),
            *wish.passes_hand(body, layer.panels[behind], pocket),
            *wish.crossings(layer),
        ),
        finished_measurements=wish.told(("waist_girth", waist.tape), ("hip_girth", hip), ("hem_girth", hem), ("side_seam", EdgeLength(layer.panels[behind], wish.down_the_side(pieces[behind])))),
        notions=(Notion("zip", 1, float(round(slit))), *wish.pocket_tape(pocket), *waist.notions, Notion("sewing thread")),
        findings=remarks(body, cut.length, under),
    )


def _hem_girth(body: Body, cut: GoredSkirt) -> float:
    """Wanted girth of the hem, cm: as ordered, or hip, ease and the flare of all edges."""
    if cut.hem_girth is not None:
        return cut.hem_girth
    each = FLARE / cut.gores if cut.flare is None else cut.flare
    return float(body.hip_girth) + cut.hip_ease + 2 * each * cut.gores


def gore(body: Body, cut: GoredSkirt, whole: Length, sheet: DraftSheet) -> Widths:
    """Settle a gore's widths and depths.

    Raises:
        SpecError: The hem is narrower than the hip, or the flare begins where it cannot.
    """
    sheet.heading("Measures", "common practice, no source")
    length = sheet.length("skirt length", whole, "Waist to hem.")
    n = cut.gores
    top = body.waist_girth + Length(cut.waist_ease, "waist ease") + Length(fullness(cut.waistband, cut.waist_fullness), "fullness")
    waist = sheet.length("gore's waist", top / n, "Each gore has an equal share.")
    hip = sheet.length("gore's hip", (body.hip_girth + Length(cut.hip_ease, "hip ease")) / n, "Each gore has an equal share.")
    hem = sheet.length("gore's hem", _gore_hem(hip, cut), "The hip, and the flare at both edges.")
    if hem < hip - 1e-9:
        raise SpecError("The hem is narrower than the hip; choose a straight skirt.", where="garment.hem_girth", received=cut.hem_girth, allowed=(float(hip * n), 600.0))
    if length < body.side_waist_to_hip + LEAST_BELOW_HIP:
        raise SpecError("The skirt would end less than 10 cm below the hip line; make it longer.", where="garment.length", received=float(length), allowed=(float(body.side_waist_to_hip) + LEAST_BELOW_HIP, 130.0))
    start = body.side_waist_to_hip if cut.flare_from is None else Length(cut.flare_from, "flare from")
    if not body.side_waist_to_hip <= start <= length - LEAST_BELOW_HIP:
        allowed = (float(body.side_waist_to_hip), float(length) - LEAST_BELOW_HIP)
        raise SpecError(f"The flare begins at the hip line or below it, and at least 10 cm above the hem: {allowed[0]:.1f} to {allowed[1]:.1f} cm from the waist.", where="garment.flare_from", received=cut.flare_from, allowed=allowed)
    return Widths(waist=waist, hip=hip, hem=hem, hip_depth=body.side_waist_to_hip, flare_depth=start, length=length)


def _gore_hem(hip: Length, cut: GoredSkirt) -> Length:
    if cut.hem_girth is None:
        each = FLARE / cut.gores if cut.flare is None else cut.flare
        return hip + Length(each, "flare") * 2
    return Length(cut.hem_girth, "hem girth") / cut.gores


def draft(widths: Widths, sheet: DraftSheet) -> Level:
    """Draw half a gore about its middle line: a waist, a hip and a hem wide."""
    sheet.heading("Gore", "common practice, no source")
    waist = sheet.point("middle of the waist", corner_of_paper(), "The straight grain runs down from it.")
    hip = sheet.point("middle at the hip", waist.down(widths.hip_depth), "Level of the fullest seat.")
    hem = sheet.point("middle of the hem", waist.down(widths.length), "Where the gore ends.")
    corner = sheet.point("edge at the waist", waist.right(widths.waist / 2), "Half the gore's waist.")
    at_hip = sheet.point("edge at the hip", hip.right(widths.hip / 2), "Half the gore's hip.")
    at_hem = sheet.point("edge at the hem", hem.right(widths.hem / 2), "Half the gore's hem.")
    mirrored = sheet.point("left edge at the hip", hip.left(widths.hip / 2), "As far as the right one.")
    hips, flares = (mirrored, at_hip), (mirrored, at_hip)
    if widths.flare_depth > widths.hip_depth:
        below = widths.flare_depth - widths.hip_depth
        flares = (
            sheet.point("where the left flare begins", mirrored.down(below), "Plumb as far as here."),
            sheet.point("where the flare begins", at_hip.down(below), "Plumb as far as here."),
        )
    edge = dict.fromkeys((corner, at_hip, flares[1], at_hem))
    sheet.line("edge", *edge, why="Both edges are alike, so that all seams agree.")
    return Level(waist, hips, flares)


def edge_below(widths: Widths, out: float) -> tuple[Line | Cubic, ...]:
    """The right edge from the hip to the hem, leaning out by `out` cm; all edges equally long."""
    hip = Point(float(widths.hip) / 2, -float(widths.hip_depth))
    start = Point(hip.x, -float(widths.flare_depth))
    down = float(widths.length - widths.flare_depth)
    lean = Vector(out, -down).unit
    end = start + lean * down
    if start.y > hip.y - 1e-9:
        return (Line(hip, end),)
    above = min(EASED_CORNER, (hip.y - start.y) / 2)
    into, out_of = start + -DOWN * above, start + lean * above
    return Line(hip, into), quadratic(into, start, out_of), Line(out_of, end)


def hem_of(widths: Widths, out: float) -> Path:
    """The hem from the left edge to the right one, square to both."""
    below = edge_below(widths, out)
    right, lean = below[-1].end, below[-1].tangent(1.0)
    left, across = Point(-right.x, right.y), Vector(-lean.x, lean.y)
    return Path((square_to_ends(left, across, right, -lean),))


def edge_line(widths: Widths, corner: Point, out: float) -> Path:
    """The right edge of a gore from a waist corner to the hem, bent evenly from waist to hip."""
    below = edge_below(widths, out)
    hip, along = below[0].start, below[0].tangent(0.0)
    chord = (hip - corner).unit
    return Path((smooth(corner, chord * (2 * chord.dot(along)) - along, hip, along), *below))


def gores(widths: Widths, level: Level, swing: Length, count: int, sheet: DraftSheet) -> tuple[Gore, ...]:
    """The gores of half the skirt from the centre back forward; a panel at a centre is halved."""
    out = float(swing)
    whole, up = _level(widths, out)
    halved = count % 4 == 2
    # uprights as shares of the way from the centre back to the centre front; the side is at a half
    first = -1 / count if halved else 0.0
    places = [first + 2 * k / count for k in range(count // 2 + 1 + halved)]
    lengths = [whole - WAIST_LOWERED * max(0.0, 1 - 2 * abs(at)) for at in places]
    sheet.true("waist", (("edges of the gores", up), ("centre back", WAIST_LOWERED)), "Square to the edges and each gore to its width; lower at the centre back.", agree="each gore's waist = its share, all edges alike")
    drawn = [_gore(widths, out, pair) for pair in pairwise(lengths)]
    draw_gores(NAMES[len(drawn)], drawn, level, swing, widths.length - widths.flare_depth, sheet, halved=halved)
    if halved:
        drawn = [_half(drawn[0], right=True), *drawn[1:-1], _half(drawn[-1], right=False)]
    return tuple(drawn)


def _edges(widths: Widths, out: float, x: float, heights: tuple[float, float]) -> tuple[Path, Path]:
    left, right = (edge_line(widths, Point(x, y), out) for y in heights)
    return left.transformed(mirror(Point(0, 0), DOWN)), right


def _waist(edges: tuple[Path, Path]) -> Path:
    """From the left edge to the right one, square to both."""
    left, right = edges
    return Path((smooth(left.start, left.start_tangent.left, right.start, right.start_tangent.left),))


def _level(widths: Widths, out: float) -> tuple[float, float]:
    """Length of the edges of a gore whose waist dips to the waist line, and how far they rise over it."""
    def rise(x: float) -> float:
        def middle(y: float) -> float:
            return _waist(_edges(widths, out, x, (y, y))).segments[0].at(0.5).y

        return _found(middle, -12.0, 12.0)

    def wide(x: float) -> float:
        y = rise(x)
        return _waist(_edges(widths, out, x, (y, y))).length() - float(widths.waist)

    x = _found(wide, float(widths.waist) * 0.4, float(widths.waist) * 0.6)
    return edge_line(widths, Point(x, rise(x)), out).length(), rise(x)


def _gore(widths: Widths, out: float, lengths: tuple[float, float]) -> Gore:
    """A gore with edges of given lengths, its waist to its width."""
    def heights(x: float) -> tuple[float, float]:
        def height(length: float) -> float:
            return _found(lambda y: edge_line(widths, Point(x, y), out).length() - length, -12.0, 12.0)

        return height(lengths[0]), height(lengths[1])

    def wide(x: float) -> float:
        return _waist(_edges(widths, out, x, heights(x))).length() - float(widths.waist)

    x = _found(wide, float(widths.waist) * 0.4, float(widths.waist) * 0.6)
    edges = _edges(widths, out, x, heights(x))
    return Gore(*edges, _waist(edges), hem_of(widths, out))


def _found(f: Callable[[float], float], low: float, high: float) -> float:
    value = root(f, low, high, 1e-9)
    if value is None:
        raise ConstructionError("The waist of a gore cannot be brought to its width.", where="gore")
    return value


def _half(gore: Gore, *, right: bool) -> Gore:
    """One half of a gore that is cut on the fold, or seamed, down its middle."""
    waist, hem = (Path((line.segments[0].split(0.5)[right],)) for line in (gore.waist, gore.hem))
    if right:
        return Gore(polyline(waist.start, hem.start), gore.right, waist, hem)
    return Gore(gore.left, polyline(waist.end, hem.end), waist, hem)


NAMES = {2: ("back", "front"), 4: ("back", "side_back", "side_front", "front")}
TITLES = {"back": "Back gore", "side_back": "Side back gore", "side_front": "Side front gore", "front": "Front gore"}
UPRIGHTS = {
    2: ("centre_back", "side", "centre_front"),
    4: ("centre_back", "back_princess", "side", "front_princess", "centre_front"),
}
HIP_NOTCHES = {"back_princess": 2, "side": 1, "front_princess": 1}


def trimmed(gore: Gore, above: float, below: float) -> Gore:
    """A gore without so much at its top and at its hem, cm, both again square to its edges."""
    left, right = (line.split(above)[1] if above else line for line in (gore.left, gore.right))
    left, right = (line.split(line.length() - below)[0] for line in (left, right))
    waist = _waist((left, right)) if above else gore.waist
    return Gore(left, right, waist, Path((square_to_ends(left.end, left.end_tangent, right.end, -right.end_tangent),)))


def _facing(gore: Gore, depth: float, *, front: bool) -> Contour:
    """A facing of a depth in cm, traced from a gore."""
    foot = trimmed(gore, depth, 0.0).waist
    if front:
        return traced(gore.waist.reversed(), gore.left, gore.right, foot.reversed(), depth)
    return traced(gore.waist, gore.right, gore.left, foot, depth)


def panels(drawn: tuple[Gore, ...], slit: float, cut: GoredSkirt, hip: float, pocket: SeamPocket | None = None) -> tuple[tuple[Piece, ...], Round]:
    """The gores as pieces, from the centre back to the centre front."""
    names, words = NAMES[len(drawn)], UPRIGHTS[len(drawn)]
    opened = words.index("side") if cut.closure == "side" else 0
    folds = _folds(cut, words)
    pieces = list[Piece]()
    sewn: list[tuple[str, ...]] = [()] * len(words)
    for n, gore in enumerate(drawn):
        sides = []
        for k, line in ((n, gore.left), (n + 1, gore.right)):
            upright = on_fold(words[k], line) if words[k] in folds else _seam(words[k], line, slit if k == opened else 0.0, pocket)
            sewn[k] = upright.sewn
            sides.append(upright)
        pieces.append(_piece(names[n], gore, sides, hip, front=n >= len(drawn) // 2))
    return tuple(pieces), Round(names, tuple(sewn))


def _folds(cut: GoredSkirt, words: tuple[str, ...]) -> set[str]:
    """A panel at a centre lies on the fold, unless the zip opens it."""
    if cut.gores != 6:
        return set()
    return {words[-1]} if cut.closure == "centre_back" else {words[0], words[-1]}


def _seam(name: str, line: Path, slit: float, pocket: SeamPocket | None) -> Upright:
    count = HIP_NOTCHES.get(name)
    below = sum(s.length() for s in line.segments[1:]) if count else None
    return plain_seam(name, line, slit, kind="side" if name == "side" else "seam", hip=below, count=count or 1, pocket=opened_by(pocket) if name == "side" else None)


def _piece(name: str, gore: Gore, sides: list[Upright], hip: float, *, front: bool) -> Piece:
    """A gore as a panel, its centre being the edge nearer to the wearer's middle."""
    waist, hem = (gore.waist.reversed(), gore.hem) if front else (gore.waist, gore.hem.reversed())
    near, far = (gore.right, gore.left) if front else (gore.left, gore.right)
    lines = Lines(name=name, closed=waist, waist=waist, darts=(), planned=(), side=far, centre=near, hem=hem, hip=hip)
    centre, side = reversed(sides) if front else sides
    return panel_piece(TITLES[name], lines, centre, side, hem="curved_hem")


GARMENT = Garment(
    kind="gored_skirt",
    title="Gored skirt",
    summary="A skirt of four, six or eight equal gores that flare from the hip or below it, on a straight waistband.",
    spec=GoredSkirt,
    needs=straight.GARMENT.needs,
    optional=straight.GARMENT.optional,
    pieces=("back", "side_back", "side_front", "front", "waistband"),
    valid=(ValidRange("waist_girth", 56, 120), ValidRange("hip_girth", 80, 140)),
    sources=(
        "common practice, no source (an equal share of waist and hip for each gore, zip, waistband)",
        "L. I. Baldt, Clothing for Women, 1916 (grain down the middle of each gore)",
    ),
    sample=straight.GARMENT.sample,
    symptoms=SYMPTOMS,
    draw=draw,
)
