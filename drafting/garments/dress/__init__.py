"""The dress: a bodice and any skirt, joined at the waist.

A chapter made of two others: the bodice is drafted, its waist tells the skirt how wide to be and where its
darts must lie, and the skirt comes without its waistband.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields

from drafting.body import Body
from drafting.craft.assembling import Assembling, in_order
from drafting.craft.rules import OPENING_OVER_HIP
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.garments.bodice import NEEDS, OPTIONAL, SAMPLE, SOURCES, wants
from drafting.garments.bodice.assembly import (
    arm_steps,
    facing_zip,
    neck_facing_shoulder,
    neckline_seam,
    panel_seams,
    shoulder_seam,
    side_seam,
)
from drafting.garments.bodice.made import Cut, cut_out
from drafting.garments.bodice.symptoms import SYMPTOMS as BODICE
from drafting.garments.dress.joining import Skirt, apart, meeting, stations, taken_off, waist_seam
from drafting.garments.dress.spec import Dress, SkirtKind
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import a_line, circle, gathered, gored, pleated, straight
from drafting.garments.skirts.block import Moving
from drafting.garments.skirts.symptoms import SYMPTOMS as BELOW
from drafting.pattern import (
    CombinedLength,
    EdgeLength,
    Notion,
    Number,
    Pattern,
    Piece,
    Seam,
    SeamPart,
    Want,
)

SKIRTS: dict[SkirtKind, Garment] = {
    "straight": straight.GARMENT, "a_line": a_line.GARMENT, "gored": gored.GARMENT,
    "circle": circle.GARMENT, "gathered": gathered.GARMENT, "pleated": pleated.GARMENT,
}

DARTED: dict[SkirtKind, Callable[..., Pattern]] = {"straight": straight.draw, "a_line": a_line.draw}
"""Skirts whose darts are moved to meet the bodice's."""

ABOVE = 75.0
"""cm on the paper from the skirt's waist up to the bodice's top."""

MEET = 0.2
"""Darts meet to 2 mm. Source: common practice, no source."""


def draw(body: Body, cut: Dress, sheet: DraftSheet) -> Pattern:
    """Draft a dress for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    made = cut_out(body, cut, "back_zip", sheet, ABOVE)
    panels = made.body.panels
    goals = _goals(panels)
    skirt, missed = _skirt(body, cut, made, goals, sheet)
    waist = waist_seam(panels, skirt)
    seams, steps = in_order(_steps(made, skirt, waist, darted=cut.skirt in DARTED))
    whole = made.body.panels[0].edge("zip").path.length() + skirt.zip
    return Pattern(
        kind="dress", title="Dress", pieces=(*made.pieces, *skirt.pieces), seams=seams, sewing=steps,
        wants=(
            *wants.wants(body, cut, made.body, made.sleeve, made.bust, made.ease, made.loose), *skirt.wants,
            *(() if made.sleeve is None else (wants.armhole_advice(body, made.armhole, made.ease),)),
            *_darts_meet(cut, missed), _passes(body, panels, skirt),
        ),
        finished_measurements=(*wants.told(made.body, made.sleeve, made.bust), *(w for w in skirt.told if w.name not in TOLD)),
        findings=(*made.findings, *skirt.pattern.findings),
        resolved=made.resolved,
        notions=(Notion("zip", 1, float(round(whole))), Notion("fusible, for the facings"), Notion("hook and eye"), Notion("sewing thread")),
    )


TOLD = frozenset({"side_seam"})
"""What is told of the bodice already."""


def _goals(panels: tuple[Piece, ...]) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Where the skirt's darts must lie, from the centres: under the bodice's darts, or under its princess lines."""
    back, front = panels[0], panels[-1]
    if len(panels) > 2:
        return (back.sewn_length("waist"),), (front.sewn_length("waist"),)
    return stations(back, centre_first=True), stations(front, centre_first=False)


def _skirt(body: Body, cut: Dress, made: Cut, goals: tuple[tuple[float, ...], tuple[float, ...]], sheet: DraftSheet) -> tuple[Skirt, float]:
    """The skirt for the bodice's waist, and how far its darts miss the bodice's, cm."""
    top = 2 * sum(p.sewn_length("waist") for p in made.body.panels)
    spec = _spec(cut, top - float(body.waist_girth))
    if cut.skirt not in DARTED:
        return taken_off(SKIRTS[cut.skirt].draw(body, spec, sheet.beside("skirt"))), 0.0
    draw_skirt, asked = DARTED[cut.skirt], goals
    waists = _waists(made.body.panels)
    for _ in range(4):
        found = _found(draw_skirt(body, spec, Scrap(), meeting(asked, waists)))
        if max(map(apart, goals, found)) < MEET / 10:
            break
        asked = (_corrected(asked[0], goals[0], found[0]), _corrected(asked[1], goals[1], found[1]))
    moved: Moving = meeting(asked, waists)
    skirt = taken_off(draw_skirt(body, spec, sheet.beside("skirt"), moved))
    off = abs(waists[0] - next(p for p in skirt.pieces if p.name == "skirt_back").sewn_length("waist"))
    return skirt, max(off, *map(apart, goals, _found(skirt.pattern)))


def _waists(panels: tuple[Piece, ...]) -> tuple[float, float]:
    """Sewn waists of the back and the front half, cm."""
    back, front = (sum(p.sewn_length("waist") for p in panels if p.name.startswith(word)) for word in ("back", "front"))
    return back, front


def _found(pattern: Pattern) -> tuple[tuple[float, ...], tuple[float, ...]]:
    return stations(pattern.piece("back"), centre_first=False), stations(pattern.piece("front"), centre_first=True)


def _corrected(asked: tuple[float, ...], goal: tuple[float, ...], found: tuple[float, ...]) -> tuple[float, ...]:
    """Where the darts are asked for next; those that the bodice does not have go with the last one."""
    there = (*found, *goal[len(found):])[:len(goal)]
    return tuple(a + g - f for a, g, f in zip(asked, goal, there, strict=True))


def _spec(cut: Dress, waist_ease: float) -> object:
    """The skirt's own options."""
    garment = SKIRTS[cut.skirt]
    wanted = {"length": cut.length, "hem_at": cut.hem_at, "waist_ease": waist_ease, "closure": "centre_back", "hip_ease": max(cut.hip_ease, 2.0), "waistband": "facing"}
    own = {f.name: f.type for f in fields(garment.spec)}
    chosen = {name: value for name, value in wanted.items() if name in own and (name != "waistband" or cut.skirt in FACED)}
    return garment.spec(kind=garment.kind, **chosen)


FACED = frozenset({"straight", "a_line", "gored"})
"""Skirts that come with a facing, whose top is the waist itself."""


def _steps(made: Cut, skirt: Skirt, waist: Seam, *, darted: bool) -> tuple[Assembling | None, ...]:
    """The bodice, the skirt, the waist seam, the zip, the facings, the hem."""
    body = made.body
    named = {s.name: s for s in skirt.seams}
    zips = tuple(s for s in skirt.seams if s.name == "skirt_zip")
    darts = tuple(p.name for p in body.panels if p.darts)
    panels = panel_seams(body)
    below = tuple(
        Assembling(step.text, tuple(named[n] for n in step.seams if named[n] not in zips), step.darts)
        for step in skirt.sewing if step.darts or any(named[n] not in zips for n in step.seams)
    )
    bodice_zip = Seam("zip", (SeamPart("back", "zip", "right"),), (SeamPart("back", "zip", "left"),))
    return (
        Assembling("Fuse the facings and the edges of the opening; transfer notches and dart points; neaten the edges."),
        Assembling("Sew the darts; press those of shoulder and waist toward the centre, bust darts down.", (), darts) if darts else None,
        Assembling("Sew the princess seams, notch to notch; clip and press them open.", panels) if panels else None,
        Assembling("Sew the shoulder seams and press them open.", (shoulder_seam(body),)),
        Assembling("Sew the side seams and press them open.", (side_seam(body),)),
        Assembling("Sew the shoulder seams of the neck facing; neaten its lower edge.", (neck_facing_shoulder(body),)),
        *arm_steps(body),
        *below,
        Assembling("Join bodice and skirt at the waist, side seam to side seam and dart to dart; press the seam up." if darted else "Join bodice and skirt at the waist, centre to centre; press the seam up.", (waist,)),
        Assembling("Set in the zip from the neck down to its end in the skirt.", (bodice_zip, *zips)),
        Assembling("Sew the facing to the neckline, clip, turn it in and understitch it.", (neckline_seam(body),)),
        Assembling("Fell the facing's ends down to the tape of the zip.", facing_zip(body)),
        Assembling("Turn up the hem and sew it blind; sew on the hook; press."),
    )


def _darts_meet(cut: Dress, missed: float) -> tuple[Want, ...]:
    if cut.skirt not in DARTED:
        return ()
    how = "the waist of bodice and skirt from the centre to each dart and to the side, darts closed"
    return (Want(name="darts_meet", measuring=Number(missed, how), wanted=0.0, low=0.0, high=MEET, reason="Darts and side seams of bodice and skirt run on into each other."),)


def _passes(body: Body, panels: tuple[Piece, ...], skirt: Skirt) -> Want:
    """Whether the dress goes over the hips: its waist and both sides of the zip below it.

    Above the waist the zip runs up to the neck, so that the waist itself lies open.
    """
    opened = next(p.name for p in skirt.pieces if any(e.name == "zip" for e in p.edges))
    waist = tuple((2.0, EdgeLength(p.name, ("waist",))) for p in panels)
    least = float(body.hip_girth) + OPENING_OVER_HIP
    return Want(name="opening_passes_hip", measuring=CombinedLength((*waist, (2.0, EdgeLength(opened, ("zip",))))), wanted=least, low=least, high=float("inf"), reason="Waist and twice the opening must reach the hip and 2 cm.")


GARMENT = Garment(
    kind="dress",
    title="Dress",
    summary="A close-fitting bodice and a straight, A-line, gored, circle, gathered or pleated skirt, joined at the waist, darts to darts; a zip at the centre back.",
    spec=Dress,
    needs=(*NEEDS, "hip_girth", "side_waist_to_hip"),
    optional=(*OPTIONAL, *straight.GARMENT.optional),
    pieces=("back", "front", "sleeve", "neck_facing_back", "neck_facing_front", "skirt_back", "skirt_front"),
    valid=(ValidRange("bust_girth", 76, 124), ValidRange("waist_girth", 58, 112), ValidRange("hip_girth", 80, 140)),
    sources=(*SOURCES, *straight.GARMENT.sources),
    sample=(*SAMPLE, ("hip_girth", 100.0), ("side_waist_to_hip", 20.5), ("outside_leg_length", 104.0)),
    symptoms=(*BODICE, *(s for s in BELOW if s.symptom not in {b.symptom for b in BODICE})),
    draw=draw,
)
