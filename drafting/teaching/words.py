"""Every sentence of a draft sheet that is not the garment's own, one table for each language."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from functools import cache
from typing import Any

from drafting.language import Language, phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class TeachingWords:
    """The sheet's words in one language; braces are filled with the values named in them."""

    # the steps
    first_point: str
    go: str
    go_on: str
    go_and_mark: str
    go_on_and_mark: str
    mark: str
    same: str
    length: str
    straight: str
    curve: str
    bow: str
    arc: str
    join: str
    ends: str
    end: str
    close_darts: str
    open_darts: str
    decided: str
    left_out: str
    solved: str
    true: str
    true_to: str
    trace: str
    trace_on: str
    trace_round: str
    fresh_paper: str
    box: str
    a_point: str
    anew: str
    remark: str
    yes: str
    no: str
    signs: Mapping[str, str]
    listed: str
    apart: str
    line_length: str
    from_origin: str
    right_of: str
    left_of: str
    over: str
    under: str
    at_origin: str
    round_about: str
    hardly: str
    nothing_moved: str
    blank: str
    unknown: str

    # the figures
    detail: str
    scale: str
    ruler: str
    finished: str

    # the class sheet
    sheet_title: str
    learner: str
    date: str
    aims_heading: str
    aims: tuple[str, ...]
    tools_heading: str
    tools: tuple[str, ...]
    paper_needed: str
    measures_heading: str
    measures_columns: tuple[str, ...]
    measures_note: str
    key_heading: str
    key: Mapping[str, tuple[str, str]]
    label_key: str
    step_heading: str
    source: str
    reason: str
    formula: str
    checks_heading: str
    checks_columns: tuple[str, ...]
    at_least: str
    finishing_heading: str
    finishing: tuple[str, ...]
    allowance_columns: tuple[str, ...]
    toile_heading: str
    toile: tuple[str, ...]
    corrections_columns: tuple[str, ...]
    after_corrections: tuple[str, ...]
    cautions_heading: str
    cautions: tuple[str, ...]
    marks_heading: str
    marks: tuple[str, ...]
    marks_columns: tuple[str, ...]
    solutions_heading: str
    solutions_columns: tuple[str, ...]
    sources_heading: str
    page: str
    invented: str

    # two methods side by side
    beside_title: str
    beside_columns: tuple[str, ...]
    beside_measures: str
    beside_lengths: str
    beside_points: str
    beside_point_columns: tuple[str, ...]
    aligned: str


ENGLISH = TeachingWords(
    first_point="Mark {label}, {across} from the left edge of the paper and {down} from its top.",
    go="From {base} go {move}.",
    go_on="From there go {move}.",
    go_and_mark="From {base} go {move}; mark {label}.",
    go_on_and_mark="From there go {move}; mark {label}.",
    mark="Mark {label} {move}.",
    same="Mark {label} at {base}.",
    length="Work out {name}: {value}.",
    straight="Draw straight from {start} to {end}.",
    curve="Curve from {start} to {end}.",
    arc="Swing an arc about {about} from {start} to {end}.",
    bow="Curve from {start} to {end}, {guide}.",
    join="Curve from {start} to {end}, {guide}.",
    ends="Leave {leaving}; arrive {arriving}.",
    end="Arrive {arriving}.",
    close_darts="Fold the darts shut: {darts}.",
    open_darts="Open the darts again; join each dart's legs straight across.",
    decided="Yes: {name}.",
    left_out="No. Left out: {name}.",
    solved="By trial the {name} comes to {value}.",
    true="True the {name}.",
    true_to="True the {name}: {agree}.",
    trace="Trace the {name} along {lines}.",
    trace_on="Go on along {line}.",
    trace_round="Trace the {name} all round.",
    fresh_paper="Take a fresh sheet of paper.",
    box="Draw a rectangle from {start}: {one}, {two}.",
    a_point="a point",
    anew="where this piece starts",
    remark="It runs {remark}.",
    yes="yes",
    no="no",
    signs={">=": "at least", ">": "over", "<=": "at most", "<": "under"},
    listed="{first} and {last}",
    apart="{start} to {end}: {value}",
    line_length="{value} long",
    from_origin="{across}, {down}",
    right_of="{value} to the right of {origin}",
    left_of="{value} to the left of {origin}",
    over="{value} over it",
    under="{value} under it",
    at_origin="where all heights start",
    round_about="{value} once round",
    hardly="less than {smallest}",
    nothing_moved="nothing moved",
    blank="______",
    unknown="?",
    detail="Detail, scale 1:{scale}",
    scale="Scale 1:{scale}",
    ruler="{value} on the draft",
    finished="The finished draft",
    sheet_title="Draft sheet: {title}",
    learner="Learner: ________________________________",
    date="Date: {date}",
    aims_heading="What this sheet is for",
    aims=(
        "Draft the pattern from a body's measures, net, without allowances.",
        "Say for each line which rule it follows and why.",
        "Prove the draft with tape and set square before cutting.",
    ),
    tools_heading="Tools",
    tools=(
        "tape measure",
        "long ruler and set square",
        "hip curve and French curve",
        "soft and hard pencil, two colours",
        "eraser, paper scissors, tape",
        "tracing wheel",
    ),
    paper_needed="Paper of at least {width} by {height}.",
    measures_heading="Measures",
    measures_columns=("Measure", "Taken", "Half", "Quarter", "Ease", "Used"),
    measures_note="Write this table in the upper right corner of the paper. Ease is all round.",
    key_heading="Key of terms",
    key={
        "to the right": ("to the right, to the left", "Along a level line, square to the plumb."),
        " up": ("up, down", "Along a plumb line, square to the level one."),
        "to the level of": ("to the level of", "Straight up or down until as high as that point."),
        "plumb with": ("plumb with", "Straight across until over or under that point."),
        "toward": ("toward", "Along the straight line to that point."),
        "meet the level": ("to meet the level", "Swing the ruler until it ends on that level."),
        "square to": ("square to", "At a right angle to that line."),
        "swung about": ("swing an arc", "A string or a compass held at the centre draws it."),
        "meets the line": ("where lines meet", "Carry both lines on until they cross."),
        "degrees": ("degrees", "Counted from level, upward, with a protractor."),
        "diagonal": ("diagonal of a corner", "The line at 45 degrees between its two sides."),
        "its middle": ("its middle", "Measured square to the straight line between the ends."),
        "arriving": ("leave, arrive", "The direction of the curve at its start and at its end."),
        "ease": ("ease", "What the garment has over the body, so that one can move."),
        "trued": ("true", "Redraw until seams agree and lines run on smoothly."),
        "darts closed": (
            "fold the darts shut",
            "Fold the paper from the dart's point, leg on leg.",
        ),
    },
    label_key="A letter stands for a chapter, the number for a point in it: {labels}.",
    step_heading="{number}. {heading}",
    source="Source: {source}.",
    reason="Why: {reason}",
    formula="{formula}",
    checks_heading="Check list",
    checks_columns=("What", "Wanted", "By the draft", "On your paper"),
    at_least="{value} or more",
    finishing_heading="Finishing the pattern",
    finishing=(
        "Trace each piece off the draft along its outline; keep the draft whole.",
        "Add the allowances outside the stitching line.",
        "Draw the grain line, plumb on the draft, on every piece.",
        "Mark notches: one at the hip, two at the knee; crotch one in front, two behind.",
        "Fold the darts shut before cutting the waist, so that their caps come out right.",
        "Write on each piece: garment, size or name, date, piece, how many to cut.",
    ),
    allowance_columns=("Edge", "Allowance"),
    toile_heading="Toile and fitting",
    toile=(
        "Cut the toile in firm, plain cloth of the final weight, with allowances of {allowance}.",
        "Draw grain, waist, hip, crotch and knee lines on it before sewing.",
        "Baste, put on the shoes that belong to it; stand, sit, climb a step.",
        "Look at length first, then girths, crotch curve, hang, leg, and last the hem.",
        "Change one thing at a time, baste again, and look again.",
    ),
    corrections_columns=("What is seen", "Why", "Change on the pattern", "By"),
    after_corrections=(
        "After every change walk inseams and side seams again; both must agree.",
        "A changed rise moves the pocket and the fly's end; redraw them.",
        "Note the date and every change on this sheet.",
    ),
    cautions_heading="Mind this",
    cautions=(
        "A quarter of an inch on each of four seams is an inch round the body.",
        "Ease is written all round: a quarter of it belongs to each quarter.",
        "Say of each number whether it is whole, half or a quarter.",
        "A hem girth goes round the whole leg; each panel takes half.",
        "A dart widens the waist of the panel, never the band.",
        "The draft is net: never add allowances twice.",
        "Sew a toile before cutting good cloth.",
    ),
    marks_heading="Marks",
    marks=("Tools and workplace", "Accuracy", "Order of work", "Lines and labels", "Time"),
    marks_columns=("What is looked at", "Points", "Of"),
    solutions_heading="Solutions",
    solutions_columns=("Step", "Worked", "Result"),
    sources_heading="Sources",
    page="Page {page} of {pages}",
    invented="The measures are those of an invented person.",
    beside_title="{title}: {one} and {two}",
    beside_columns=("What", "{one}", "{two}", "Difference"),
    beside_measures="Finished measures",
    beside_lengths="What the construction works out otherwise",
    beside_points="Points that lie elsewhere",
    beside_point_columns=("Point", "To the right", "Up"),
    aligned="Both drafts lie on each other at the {place}.",
)


@cache
def teaching_words(language: Language) -> TeachingWords:
    """The sheet's words in a language; what a catalogue lacks stays English."""
    told = {f.name: _told(getattr(ENGLISH, f.name), language) for f in fields(ENGLISH)}
    return replace(ENGLISH, **told)


def _told(value: Any, language: Language) -> Any:
    """A text, or every text of a table, in a language; the words that a table goes by stay."""
    match value:
        case str():
            return phrase(value, language)
        case tuple():
            return tuple(_told(v, language) for v in value)
        case _:
            return {word: _told(v, language) for word, v in value.items()}
