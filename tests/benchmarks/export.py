"""Beside reportlab by hand, in one run: the PDF of trousers on A4.

The hand-written rival is given the finished list of strokes and texts and writes the same of them,
with the same font and the same number of pages, by reportlab's plain calls, in three ways: the
sheet and the rulers as forms that pages show (the hardest rival), the sheet as a form and each
page's rulers on the page, or every stroke on every page. Ours starts at the finished pattern:
pieces are marked, labelled and arranged, the cover is set, and all of it is written.

    python tests/benchmarks/export.py
"""

import sys
import time
from functools import cache
from io import BytesIO
from pathlib import Path
from statistics import median

from reportlab.pdfgen.canvas import Canvas

sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1] / "export")]

from conftest import draft  # noqa: E402

from drafting.drawing import WORDS, Output, Stroke  # noqa: E402
from drafting.drawing.lettering import CAPITAL  # noqa: E402
from drafting.export.ink import FONT, POINT  # noqa: E402
from drafting.export.pdf import _map, _written, render, write  # noqa: E402
from drafting.export.plan import MAX_PAGES, planned  # noqa: E402
from drafting.export.sheets import WorkContent  # noqa: E402
from drafting.export.style import look  # noqa: E402
from drafting.geometry import Cubic, direction  # noqa: E402

ROUNDS = 15
FACTOR, BYTES = 1.5, 300_000


def by_hand(plan, *, forms):
    """The same items with plain calls of reportlab."""
    out = BytesIO()
    canvas = Canvas(out, invariant=1, pageCompression=1, initialFontName=FONT)
    items, rulers, fronts, names = listed(plan)
    for name, drawn in (("sheet", items), ("rulers", rulers)):
        if name in forms:
            canvas.beginForm(name, 0, 0, 20000, 20000)
            put(canvas, drawn)
            canvas.endForm()
    for front in fronts:
        canvas.translate(28, 814)
        put(canvas, front)
        canvas.showPage()
    for tile, told in zip(plan.joints.tiles, names, strict=True):
        corner = plan.joints.corner(tile)
        canvas.translate(28, 28)
        show(canvas, "rulers", rulers, forms)
        canvas.translate(-corner.x * POINT, -corner.y * POINT)
        put(canvas, told)
        show(canvas, "sheet", items, forms)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def show(canvas, name, items, forms):
    if name in forms:
        canvas.doForm(name)
    else:
        put(canvas, items)


@cache
def listed(plan):
    """What is drawn, as lists that lie ready: the sheet, the rulers, the first pages, the names."""
    items = (*plan.joints.marks(), *(i for g in plan.composed.sheet.groups for i in g.items))
    fronts = ((*plan.legend.group.items, *_map(plan)), *(note.group.items for note in plan.notes))
    names = [tuple(plan.joints.names(t, "1 / 1", WORDS["en"])) for t in plan.joints.tiles]
    return items, tuple(plan.joints.rulers()), fronts, names


def put(canvas, items):
    for item in items:
        if isinstance(item, Stroke):
            style = look(item)
            canvas.setLineWidth(style.width / 10 * POINT)
            canvas.setDash([d / 10 * POINT for d in style.dashes])
            canvas.setStrokeGray(style.grey)
            path = canvas.beginPath()
            path.moveTo(item.path.start.x * POINT, item.path.start.y * POINT)
            for s in item.path.segments:
                points = (s.leaving, s.arriving, s.end) if isinstance(s, Cubic) else (s.end,)
                numbers = [n * POINT for p in points for n in (p.x, p.y)]
                (path.curveTo if len(points) == 3 else path.lineTo)(*numbers)
            canvas.drawPath(path)
        else:
            along = direction(item.angle)
            line = canvas.beginText()
            line.setFont(FONT, item.height / CAPITAL * POINT)
            line.setTextTransform(
                along.x, along.y, -along.y, along.x, item.at.x * POINT, item.at.y * POINT
            )
            line.textOut(item.text)
            canvas.drawText(line)


def main():
    work, output = draft(), Output()
    content = WorkContent.of(work, output)
    plan = planned(content, output, MAX_PAGES)
    ways = {
        "whole": lambda: write(work, output),
        "laid out and written": lambda: render(content, output),
        "written": lambda: _written(plan, output),
        "by hand, two forms": lambda: by_hand(plan, forms=("sheet", "rulers")),
        "by hand, one form": lambda: by_hand(plan, forms=("sheet",)),
        "by hand, each page": lambda: by_hand(plan, forms=()),
    }
    times = {name: [] for name in ways}
    sizes = {}
    for _ in range(ROUNDS):
        for name, way in ways.items():
            start = time.process_time()
            sizes[name] = len(way())
            times[name].append(time.process_time() - start)
    for name in ways:
        print(f"{name:22} {median(times[name]) * 1e3:7.1f} ms {sizes[name]:8} bytes")  # noqa: T201
    ratios = [median(times["whole"]) / median(t) for n, t in times.items() if n.startswith("by")]
    told = ", ".join(f"{ratio:.2f}" for ratio in ratios)
    print(f"{plan.pages} pages; {told} times the three by hand; bound {FACTOR}")  # noqa: T201
    return 0 if sizes["whole"] < BYTES and ratios[0] <= FACTOR else 1


if __name__ == "__main__":
    sys.exit(main())
