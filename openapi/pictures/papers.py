"""Look at every paper and view of one order: python openapi/pictures/papers.py

Makes a contact picture of each in `openapi/pictures/papers/`, and `made.json`, the digests of the
documents that they show. Needs pypdfium2 and Pillow, which the tests bring. The body is invented.
"""

from __future__ import annotations

import hashlib
import io
import json
import sys
from pathlib import Path as File

import pypdfium2 as pdfium
from PIL import Image, ImageDraw

ROOT = File(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from drafting.body import Body  # noqa: E402
from drafting.drawing import Output, Shrinkage  # noqa: E402
from drafting.export import FORMATS  # noqa: E402
from drafting.garments import GARMENTS  # noqa: E402
from drafting.pattern import Finish  # noqa: E402
from drafting.workroom import Work, work  # noqa: E402

HERE = File(__file__).parent / "papers"
BREADTH = 1000
"""Of a contact picture, in pixels."""
LARGEST = 420
"""Greatest side of one page in it."""
GAP = 8

VIEWS: dict[str, Output] = {
    **{
        name: Output(format="pdf", paper=name)
        for name in ("a4", "a3", "a2", "a1", "a0", "letter", "legal", "tabloid", "a4-letter")
    },
    "roll-610": Output(format="pdf", paper="roll", roll_width=610),
    "roll-914": Output(format="pdf", paper="roll", roll_width=914),
    "roll-1067": Output(format="pdf", paper="roll", roll_width=1067),
    "whole": Output(format="pdf", paper="whole"),
    "scale-1-2": Output(format="pdf", scale="1:2"),
    "scale-1-4": Output(format="pdf", scale="1:4"),
    "scale-1-5": Output(format="pdf", scale="1:5", paper="letter", unit="in"),
    "net": Output(format="pdf", paper="a1", lines="net"),
    "cut-pairs-unfolded": Output(format="pdf", paper="a1", lines="cut", pairs=True, unfold=True),
    "shrinkage-de": Output(
        format="pdf",
        paper="a2",
        language="de",
        shrinkage=Shrinkage(lengthwise=5, crosswise=2),
    ),
    "one-piece-fr": Output(format="pdf", pieces=("back",), language="fr"),
    "thumbnail": Output(format="png", pixels=600),
}
"""What is looked at, by the name of its picture."""


def ordered() -> Work:
    """Trousers for the invented sample body."""
    garment = GARMENTS["trousers"]
    body = Body.of(dict(garment.sample))
    return work(garment, body, garment.spec(kind="trousers"), Finish(), reference="order 7")


def documents(done: Work) -> dict[str, bytes]:
    """Every view as the service gives it, by the name of its picture."""
    return {name: FORMATS[v.format or "pdf"].write(done, v) for name, v in VIEWS.items()}


def digests(made: dict[str, bytes]) -> dict[str, str]:
    """What each picture was made from."""
    return {name: hashlib.sha256(data).hexdigest()[:16] for name, data in made.items()}


def contact(document: bytes) -> Image.Image:
    """All pages of a document small, in rows, each with a thin frame."""
    if not document.startswith(b"%PDF"):
        return Image.open(io.BytesIO(document)).convert("L")
    pages = pdfium.PdfDocument(document)
    longest = max(max(page.get_size()) for page in pages)
    side = max(LARGEST // (1 + len(pages) // 8), 190) if len(pages) > 1 else BREADTH
    pictures = [
        page.render(scale=side / longest, grayscale=True).to_pil().convert("L") for page in pages
    ]
    rows: list[list[Image.Image]] = [[]]
    for picture in pictures:
        if sum(p.width + GAP for p in (*rows[-1], picture)) > BREADTH and rows[-1]:
            rows.append([])
        rows[-1].append(picture)
    tall = sum(max(p.height for p in row) + GAP for row in rows) + GAP
    wide = max(sum(p.width + GAP for p in row) for row in rows) + GAP
    sheet = Image.new("L", (wide, tall), 215)
    y = GAP
    for row in rows:
        x = GAP
        for picture in row:
            sheet.paste(picture, (x, y))
            box = (x - 1, y - 1, x + picture.width, y + picture.height)
            ImageDraw.Draw(sheet).rectangle(box, outline=120)
            x += picture.width + GAP
        y += max(p.height for p in row) + GAP
    return sheet


def main() -> None:
    """Make all pictures."""
    HERE.mkdir(exist_ok=True)
    made = documents(ordered())
    for name, document in made.items():
        contact(document).quantize(16).save(HERE / f"{name}.png", optimize=True)
    (HERE / "made.json").write_text(json.dumps(digests(made), indent=1) + "\n")


if __name__ == "__main__":
    main()
