"""A draft sheet as JSON: every step in words, and in moves that a program can carry out.

Lengths in mm, X right, Y down, the origin at the upper left corner of the paper; angles in degrees,
turned to the left as one sees it on the paper (against the clock). Points go by their labels, lines
by their names. A point is found from a named point by its moves; a line by its parts, each from
where the last one ended. A part of a line that is drawn over folded darts starts and ends as it
lies while the darts are open; folding carries its end and its direction there along.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from drafting import DRAFTING_VERSION
from drafting.export.compact import compact
from drafting.export.identity import Plain, in_mm, pattern_id
from drafting.export.paths import MM, bounds, downward, path_data, rounded
from drafting.trace import (
    Arc,
    Bearing,
    Bend,
    Bulge,
    Compared,
    Length,
    Place,
    Solved,
    Straight,
    Stroke,
)
from drafting.trace.length import said

if TYPE_CHECKING:
    from drafting.geometry import Point, Transform
    from drafting.teaching.taught import Chapter, TaughtDraft, TaughtStep
    from drafting.trace import Guide, Leg, Move, Outline, Part
    from drafting.workroom import Work

ANGLES = 6
"""Decimals of an angle in degrees: on a leg's length it moves nothing by a ten-thousandth."""


TAKES: dict[str, tuple[str, ...]] = {
    "at": (),
    "right": ("by",),
    "left": ("by",),
    "up": ("by",),
    "down": ("by",),
    "level": ("with",),
    "plumb": ("with",),
    "toward": ("point", "by"),
    "between": ("point", "share"),
    "slant": ("by", "degrees"),
    "reach": ("level", "by", "side"),
    "square": ("start", "end", "by", "side"),
    "meeting": ("first_start", "first_end", "second_start", "second_end"),
    "along": ("line", "by"),
    "before": ("line", "by"),
    "swing": ("about", "degrees"),
}
"""What each move takes, in the order of its operands; what follows are words for people."""


def write(work: Work, draft: TaughtDraft) -> bytes:
    """The draft sheet as UTF-8 JSON, on one line."""
    return compact(document(work, draft))


def document(work: Work, draft: TaughtDraft) -> Plain:
    """The draft sheet as plain values, in the order in which the answer lists them."""
    pencil = _Pencil(draft)
    return {
        "id": pattern_id(work),
        "drafting_version": DRAFTING_VERSION,
        "unit": "mm",
        "shown_in": draft.form.unit,
        "verdict": work.verdict,
        "title": draft.title,
        "method": draft.method,
        "date": draft.form.date,
        "garment": in_mm(work.spec),
        "paper": {"width": rounded(draft.size[0] * MM), "height": rounded(draft.size[1] * MM)},
        "measures": [_measure(draft, i) for i in range(len(draft.measures))],
        "chapters": [pencil.chapter(c) for c in draft.chapters],
        "outlines": [pencil.outline(name, o) for name, o in draft.outlines],
        "checks": [_check(draft, i) for i in range(len(draft.checks))],
        "corrections": [
            {
                "symptom": seen.symptom,
                "cause": seen.cause,
                "change": seen.change,
                "pin": seen.pin,
                "amount": [rounded(seen.low * MM), rounded(seen.high * MM)],
            }
            for seen in draft.symptoms
        ],
        "cautions": [*draft.words.cautions, *draft.cautions],
        "sources": list(draft.sources),
    }


def _measure(draft: TaughtDraft, number: int) -> Plain:
    row = draft.measures[number]
    shares = {"taken": 1.0, "half": 0.5, "quarter": 0.25}
    told: Plain = {"name": row.name, "word": row.word, "title": row.title, "origin": row.origin}
    told |= {name: rounded(row.taken * share * MM) for name, share in shares.items()}
    told["ease"] = None if row.ease is None else rounded(row.ease * MM)
    told["used"] = rounded(row.used * MM)
    told["shown"] = draft.words.blank if draft.form.blank else draft.tape(row.taken)
    return told


def _check(draft: TaughtDraft, number: int) -> Plain:
    row = draft.checks[number]
    factor = MM if row.unit == "cm" else 1.0
    return {
        "what": row.what,
        "kind": row.kind,
        "unit": "mm" if row.unit == "cm" else "deg",
        "wanted": rounded(row.wanted * factor),
        "allowed": bounds(row.low, row.high, factor),
        "drafted": rounded(row.drafted * factor),
    }


class _Pencil:
    """Turns places, lines and steps into plain values, in the paper's frame."""

    def __init__(self, draft: TaughtDraft) -> None:
        self.labels = draft.labels
        self.say = draft.say
        self.to: Transform = downward(draft.corner.x, draft.corner.y)

    def chapter(self, chapter: Chapter) -> Plain:
        steps = [self.step(s) for s in chapter.steps]
        head = {"letter": chapter.letter, "heading": chapter.heading, "paper": chapter.paper}
        return {**head, "steps": steps}

    def step(self, told: TaughtStep) -> Plain:
        step = told.step
        place, line = told.place, told.line
        return {
            "number": told.number,
            "kind": step.kind,
            "heading": told.heading,
            "sentences": list(told.sentences),
            "formula": told.formula,
            "worked": told.worked,
            "result": told.result,
            "value": _value(step.value),
            "reason": told.reason,
            "source": told.source,
            "points": [self.point(place)] if place else [],
            "lines": [self.line(line)] if line else [],
            **self._more(told),
        }

    def _more(self, told: TaughtStep) -> Plain:
        """What only some kinds of steps tell: decisions, solutions, trueings, outlines."""
        step = told.step
        match step.kind:
            case "decision":
                return {"decision": _decision(told)}
            case "solved":
                return {"solved": _solved(told)}
            case "trued" if isinstance(step.value, tuple):
                moved = [{"what": what, "by": rounded(far * MM)} for what, far in step.value]
                return {
                    "trued": {
                        "agree": step.how if isinstance(step.how, str) else "",
                        "moved": moved,
                    }
                }
        return {}

    def point(self, place: Place) -> Plain:
        return {
            "label": self.labels(place),
            "name": place.name,
            "at": self.at(place),
            **self.way(place),
        }

    def way(self, place: Place) -> Plain:
        base = None if place.base is None else self.ref(place.base)
        return {"from": base, "moves": [self.move(m) for m in place.moves]}

    def at(self, point: Point) -> list[float]:
        image = self.to.point(point)
        return [rounded(image.x), rounded(image.y)]

    def ref(self, place: Place) -> str | Plain:
        """A place by its label; one that was never named by the way to it."""
        return self.labels(place) if place.name in self.labels.by_name else self.way(place)

    def move(self, move: Move) -> Plain:
        told = {"do": move.verb, **self._takes(move), "to": self.at(move.to)}
        lengths = [o for o in move.operands if isinstance(o, Length)]
        if lengths:
            told["formula"] = said(lengths[0], word=self.say)
        return told

    def _takes(self, move: Move) -> Plain:
        return {
            name: self._operand(value)
            for name, value in zip(TAKES[move.verb], move.operands, strict=False)
        }

    def _operand(self, value: object) -> str | float | Plain:
        match value:
            case Place():
                return self.ref(value)
            case Stroke():
                return value.name
            case Length():
                return _mm(value)
            case str() | float() | int():
                return value
        raise TypeError(f"no move takes {value!r}")

    def line(self, stroke: Stroke) -> Plain:
        return {
            "name": stroke.name,
            "from": self.ref(stroke.start),
            "parts": [self.part(p) for p in stroke.parts],
            "folded": [[self.ref(p) for p in (f.near, f.far, f.point)] for f in stroke.folds],
            "length": _mm(stroke.path.length()),
            "path": path_data(stroke.path, self.to),
        }

    def part(self, part: Part) -> Plain:
        end = self.ref(part.end)
        match part:
            case Straight():
                return {"do": "straight", "end": end}
            case Bulge():
                return {"do": "bulge", "end": end, "by": _mm(part.by), "side": part.side}
            case Arc():
                about, degrees = self.ref(part.about), round(part.degrees, ANGLES)
                return {"do": "arc", "end": end, "about": about, "degrees": degrees}
            case Bend():
                return self._bend(part, end)

    def _bend(self, bend: Bend, end: str | Plain) -> Plain:
        told: Plain = {
            "do": "curve",
            "end": end,
            "leaving": self.bearing(bend.leaving),
            "arriving": self.bearing(bend.arriving),
            "handles": [_mm(h) for h in bend.handles],
        }
        return told if bend.guide is None else told | {"guide": self.guide(bend.guide)}

    def guide(self, guide: Guide) -> Plain:
        match guide.operands:
            case (Place() as corner, distance):
                return {"kind": guide.verb, "corner": self.ref(corner), "by": _mm(distance)}
            case (distance, side, _):
                return {"kind": guide.verb, "by": _mm(distance), "side": side}
        return {"kind": guide.verb}

    def bearing(self, bearing: Bearing) -> Plain:
        turned = {"turned": round(bearing.turned, ANGLES)} if bearing.turned else {}
        match bearing.verb, bearing.operands:
            case "along", (Place() as start, Place() as end):
                return {"along": [self.ref(start), self.ref(end)], **turned}
            case "runs", (Stroke() as line, end):
                return {"line": line.name, "at": end, **turned}
            case "degrees", (degrees,):
                return {"degrees": degrees, **turned}
        return {"way": bearing.verb, **turned}

    def outline(self, name: str, outline: Outline) -> Plain:
        legs = [self._leg(leg) for leg in outline.legs]
        return {"name": name, "lines": legs, "length": _mm(outline.length)}

    def _leg(self, leg: Leg) -> Plain:
        told: Plain = {"line": leg.line.name, "backward": leg.backward}
        if leg.stretch is None:
            return told
        start, end = leg.stretch
        return told | {"from": self.ref(start), "to": self.ref(end)}


def _mm(cm: Any) -> float:
    return rounded(float(cm) * MM)


def _value(value: object) -> float | bool | None:
    """The step's number, where it is one: a length in mm, a decision's answer."""
    match value:
        case bool():
            return value
        case float() | int():
            return _mm(value)
        case Stroke():
            return _mm(value.path.length())
    return None


def _decision(told: TaughtStep) -> Plain:
    step = told.step
    compared = {}
    if isinstance(step.how, Compared):
        how = step.how
        compared = {"measured": _mm(how.measured), "sign": how.sign, "limit": _mm(how.limit)}
    return {"question": step.question, "taken": bool(step.value), "compared": compared or None}


def _solved(told: TaughtStep) -> Plain:
    how = told.step.how
    if not isinstance(how, Solved):
        return {"how": told.formula}
    return {
        "how": told.formula,
        "wanted": _mm(how.wanted),
        "reached": _mm(how.reached),
        "between": [_mm(v) for v in how.between],
    }
