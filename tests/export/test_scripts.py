"""Labels in ten scripts, right-to-left among them, and hostile text, in every format."""

import io
import json
from xml.etree import ElementTree as ET

import pikepdf
import pytest
from ezdxf import recover
from pages import Pages
from PIL import Image

from drafting.drawing import Output
from drafting.export import FORMATS

SCRIPTS = {
    "latin": "Größe für Zoë, çà 7", "greek": "φόρεμα Ωμέγα 7", "cyrillic": "Жакет Анны 7",
    "hebrew": "שלום 7", "arabic": "طلب رقم 7", "devanagari": "नमस्ते 7", "thai": "สวัสดี 7",
    "chinese": "订单 7", "korean": "주문 7", "japanese": "ズボン 7",
}  # fmt: skip
HOSTILE = {
    "markup": '</text><script>alert(1)</script>&"', "pdf": ") Tj (x \\", "dxf": "0\nEOF\n",
    "turned": "a\u202eb\u202c", "joined": "e\u0301\u0302\u200d", "half": "\ud800",
}  # fmt: skip
TEXTS = SCRIPTS | HOSTILE


@pytest.fixture(scope="module", params=TEXTS, ids=str)
def written(request, drafting_again):
    work = drafting_again(reference=TEXTS[request.param])
    form = Output(paper="whole", pieces=("front",))
    names = ("json", "svg", "pdf", "png", "dxf")
    return request.param, {name: FORMATS[name].write(work, form) for name in names}


def test_every_format_can_be_read_back(written):
    _, files = written
    json.loads(files["json"])
    tags = {e.tag.rpartition("}")[2] for e in ET.fromstring(files["svg"]).iter()}  # noqa: S314
    assert tags <= {"svg", "title", "desc", "defs", "g", "path", "text"}
    with pikepdf.open(io.BytesIO(files["pdf"])) as pdf:
        assert not pdf.check_pdf_syntax()
    Image.open(io.BytesIO(files["png"])).verify()
    _, audit = recover.read(io.BytesIO(files["dxf"]))
    assert not audit.has_errors


def test_a_text_of_any_script_is_read_from_the_page_as_typed(written):
    name, files = written
    if name in HOSTILE:
        pytest.skip("what cannot be written is replaced; other tests tell how")
    said = "".join(Pages(files["pdf"]).text(0).split())
    # readers put words that run from right to left in either order; each must be whole
    assert all(word in said for word in TEXTS[name].split())
