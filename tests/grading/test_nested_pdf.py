"""Layers of the nested PDF, seen by two other libraries."""

from __future__ import annotations

import io

import numpy as np
import pikepdf
import pypdfium2
import pytest

from drafting.drawing import Output
from drafting.grading import nested_pdf


@pytest.fixture(scope="module")
def document(trousers) -> bytes:
    return nested_pdf(trousers, Output(paper="a0"))


def test_each_size_is_a_layer_of_the_document(document, trousers):
    with pikepdf.open(io.BytesIO(document)) as pdf:
        layers = pdf.Root.OCProperties.OCGs
        assert [str(layer.Name) for layer in layers] == [f"Size {n}" for n in trousers.names]
        assert all(layer.is_indirect for layer in layers)
        for page in pdf.pages:
            drawn = [x for x in page.Resources.XObject.values() if "/OC" in x]
            assert len(drawn) == len(layers)


def ink(document: bytes, *hidden: int) -> np.ndarray:
    """Darkness of the first page with some layers hidden."""
    with pikepdf.open(io.BytesIO(document)) as pdf:
        layers = pdf.Root.OCProperties.OCGs
        pdf.Root.OCProperties.D.OFF = pikepdf.Array([layers[k] for k in hidden])
        shown = [layer for k, layer in enumerate(layers) if k not in hidden]
        pdf.Root.OCProperties.D.ON = pikepdf.Array(shown)
        out = io.BytesIO()
        pdf.save(out)
    page = pypdfium2.PdfDocument(out.getvalue())[0]
    return 255 - page.render(scale=0.5, grayscale=True).to_numpy().astype(int)


def test_hiding_a_layer_hides_that_size_alone(document, trousers):
    count = len(trousers.sizes)
    whole, bare = ink(document), ink(document, *range(count))
    single = [ink(document, *(k for k in range(count) if k != size)) for size in range(count)]
    for one in single:
        assert one.sum() > bare.sum() * 1.05  # the size is there
        assert one.sum() < whole.sum()  # and the others are not
        assert (one + 40 >= bare).all()  # what is common stays
    together = np.max(single, axis=0)
    assert np.count_nonzero(np.abs(together - whole) > 128) < 0.001 * whole.size


def test_small_paper_gives_pages_that_all_carry_the_layers(trousers):
    document = nested_pdf(trousers, Output(paper="a3"))
    with pikepdf.open(io.BytesIO(document)) as pdf:
        assert len(pdf.pages) > 10
        assert all("/XObject" in page.Resources for page in list(pdf.pages)[1:])


def test_the_same_range_gives_the_same_bytes(document, trousers):
    assert nested_pdf(trousers, Output(paper="a0")) == document
