"""Works and draft sheets of every garment and method, on bodies at both ends of the tables."""

from __future__ import annotations

from dataclasses import fields
from typing import Literal, get_args, get_origin, get_type_hints

from drafting.body import SIZE_TABLES, Body, prepare, size_body
from drafting.garments import GARMENTS
from drafting.garments.trousers.corrections import PINS
from drafting.garments.trousers.pins import Correction
from drafting.pattern import Finish
from drafting.teaching.form import DraftForm
from drafting.teaching.taught import TaughtDraft, teach
from drafting.workroom import Work, work


def methods() -> list[tuple[str, str]]:
    """Every garment with each of its drafting methods; "" where it has but one way."""
    found = []
    for kind, garment in GARMENTS.items():
        hint = get_type_hints(garment.spec).get("method")
        ways = get_args(hint) if get_origin(hint) is Literal else ("",)
        found += [(kind, way) for way in ways]
    return found


def options(kind: str) -> list[dict]:
    """Every value of every option that has a list of them, and yes and no, one at a time."""
    spec = GARMENTS[kind].spec
    hints = get_type_hints(spec)
    values = [(f.name, v) for f in fields(spec) for v in _listed(hints[f.name]) if f.name != "kind"]
    return [{name: value} for name, value in values]


def _listed(hint) -> tuple:
    if hint is bool:
        return (True, False)
    kinds = (hint, *get_args(hint))
    return tuple(v for part in kinds if get_origin(part) is Literal for v in get_args(part))


SMALLEST, LARGEST = next(iter(SIZE_TABLES["women"].sizes)), list(SIZE_TABLES["women"].sizes)[-1]
BODIES = ("sample", SMALLEST, LARGEST)


def body_of(kind: str, name: str) -> Body:
    if name == "sample":
        return Body.of(dict(GARMENTS[kind].sample))
    return size_body("women", name)


def worked(kind: str, method: str, name: str, **options) -> Work:
    garment = GARMENTS[kind]
    chosen = {"method": method} if method else {}
    spec = garment.spec(kind=kind, **chosen, **options)
    return work(garment, body_of(kind, name), spec, Finish())


def sheet_of(kind: str, done: Work, **form) -> TaughtDraft:
    return teach(done, GARMENTS[kind], DraftForm(**form))


FIRST = list({kind: (kind, method) for kind, method in reversed(methods())}.values())[::-1]
"""Every garment by its first method."""

CASES = [(kind, method, name) for kind, method in methods() for name in BODIES]

_UNEVEN = {"outside_leg_length": {"left": 103.0, "right": 105.0}}
_PINS = tuple(Correction(pin=name, by=pin.high / 2) for name, pin in PINS.items())
OPTION_CUTS: list[tuple[str, dict, dict]] = [
    ("trousers", {}, {"turn_ups": 3.0, "hem_girth": 40.0, "waist_position": 4.0}),
    ("trousers", {}, {"waist_position": -4.0, "waistband": "contoured", "back": "yoke"}),
    ("trousers", {}, {"leg": "culottes", "waistband": "elastic"}),
    ("trousers", {}, {"front": "two_pleats", "hip_ease": 8.0, "back_pocket": "welt"}),
    ("trousers", {}, {"back_pocket": "patch", "front_pocket": "in_seam"}),
    ("trousers", {}, {"length": "shorts", "leg": "flared", "waistband": "faced"}),
    ("trousers", {"thigh_girth": 70.0, "total_crotch_length": 62.0}, {}),
    ("trousers", {}, {"corrections": _PINS}),
    ("trousers", _UNEVEN, {"method": "block"}),
    ("trousers", {"waist_girth": 104.0}, {"method": "mens_block", "hem": "shaped"}),
    ("straight_skirt", {}, {"lining": True, "hem_opening": "slit", "closure": "side"}),
    ("straight_skirt", {}, {"waistband": "facing", "hem_opening": "vent"}),
    ("a_line_skirt", {}, {"flare": 8.0, "pocket": "in_seam"}),
    ("a_line_skirt", {}, {"hem_girth": 180.0}),
    ("gored_skirt", {}, {"flare_from": 35.0}),
    ("gored_skirt", {}, {"gores": 4, "lining": True}),
    ("circle_skirt", {}, {"panels": 4, "pocket": "in_seam", "bias_give": 0.0}),
    ("gathered_skirt", {}, {"tiers": 3, "waistband": "elastic"}),
    ("pleated_skirt", {}, {"pleats": "inverted", "top": "yoke"}),
    ("knit_top", {"head_girth": 60.0, "hand_girth": 21.0}, {"sleeve_end": "cuff", "hem": "band"}),
    ("knit_top", {"shoulder_slope": 30.0}, {"neckline": "v", "sleeve": "none"}),
    ("shirt", {"upper_chest_girth": 86.0}, {"placket": "tower", "front_edge": "band"}),
    ("shirt", {}, {"method": "womens", "sleeve": "short", "hem": "straight"}),
    ("bodice", {"bust_girth": 116.0}, {"method": "shoulder_dart", "sleeve": "none"}),
    ("bodice", {"waist_girth": 60.0}, {"bust_dart": "waist", "neckline": "square"}),
    ("bodice", {"shoulder_slope": 30.0}, {"sleeve": "short", "shaping": "princess_armhole"}),
    ("dress", {"waist_girth": 60.0}, {"method": "armhole_dart", "bust_dart": "french"}),
]
"""Cuts that ask for what the plain drafts lack: measures and options, on the sample body."""


def cut(kind: str, more: dict, options: dict) -> Work:
    garment = GARMENTS[kind]
    given = {**dict(garment.sample), **more}
    body, _ = prepare(given, "women", garment.needs, garment.optional, accept_unusual=True)
    return work(garment, body, garment.spec(kind=kind, **options), Finish())
