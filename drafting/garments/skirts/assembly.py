"""Skirts, the order of assembly: darts, centre back and zip, sides, lining, waist, hem.

Source: common practice, no source.
"""

from __future__ import annotations

from drafting.craft.around import ZIP, Round, upright_seams
from drafting.craft.assembling import Assembling, in_order
from drafting.craft.seam_pocket import SeamPocket
from drafting.craft.vent import Foot
from drafting.garments.skirts.lining import Lining
from drafting.garments.skirts.waists import Waist
from drafting.pattern import Seam, SewingStep

BAGS_SEWN = "Sew the pocket bags to fronts and backs, and press them out."
BAGS_CLOSED = "Close the pocket bags; bar the ends of the mouths."


def assembly(
    darts: tuple[str, ...], layer: Round, foot: Foot | None, lined: Lining | None, waist: Waist, *, pocket: SeamPocket | None = None, after: tuple[Assembling, ...] = (), zip_last: bool = False, hemmed: bool = False
) -> tuple[tuple[Seam, ...], tuple[SewingStep, ...]]:
    """All seams of a skirt in sewing order, and the steps that close them.

    Args:
        darts: Names of the pieces that have darts.
        layer: The skirt's panels.
        foot: The vent or slit.
        lined: The lining.
        waist: What finishes the waist.
        pocket: The pocket in the side seam.
        after: Steps that come after the upright seams.
        zip_last: Whether the zip is set in by one of those steps.
        hemmed: Whether the hem is sewn by one of them.
    """
    own = upright_seams(layer)
    zipped = tuple(s for s in own if s.name == layer.named(ZIP))
    sewn = tuple(s for s in own if s not in zipped)
    centre = tuple(s for s in sewn if s.name in layer.uprights[0])
    rest = tuple(s for s in sewn if s not in centre)
    at_back = layer.opening == 0
    return in_order((
        Assembling("Fuse the band or facing and the edges of the zip; transfer notches, dart points and the zip's end; neaten the upright edges."),
        Assembling("Sew the darts and press them toward the centre.", (), darts) if darts else None,
        Assembling(_centre_back(foot, at_back=at_back), centre) if centre else None,
        Assembling("Set in the zip.", zipped) if at_back and not zip_last else None,
        None if pocket is None else Assembling(BAGS_SEWN, pocket.seams[:2]),
        Assembling("Sew the other upright seams, and press them open." if centre else "Sew the upright seams, and press them open; leave the left side open for the zip.", rest) if rest else None,
        None if at_back or zip_last else Assembling("Set the zip into the left side.", zipped),
        None if pocket is None else Assembling(BAGS_CLOSED, pocket.seams[2:]),
        *after,
        None if lined is None else Assembling("Make up the lining, its darts laid as pleats the other way round; leave it open along the zip.", upright_seams(lined.layer)),
        Assembling("Make up the band or facing.", waist.making) if waist.making else None,
        Assembling("Sew on the waist." if lined is None else "Baste the lining to the waist where it is caught there; sew on the waist.", (waist.joining,)),
        Assembling("Close the ends, turn the inside in and fell it down to the seam and to the zip's tape.", waist.closing),
        None if hemmed else Assembling("Turn up the hem and sew it blind." if lined is None else "Turn up the hem and sew it blind; hem the lining so that it hangs free."),
        Assembling("Sew on the hook; press."),
    ))


def _centre_back(foot: Foot | None, *, at_back: bool) -> str:
    start = "from the zip's end" if at_back else "from the waist"
    if foot is None:
        return f"Sew the centre back seam {start} down."
    if foot.kind == "vent":
        return f"Sew the centre back seam {start} to the vent and along its upper edge; turn the vent to the left."
    return f"Sew the centre back seam {start} to the slit; turn the slit's edges in."
