"""Layers of the PDF: told by name, all shown at first, each with what its name says."""

import io

import numpy as np
import pikepdf
import pypdfium2
import pytest

from drafting.drawing import Output, Role
from drafting.export.layers import LAYERED, LAYERS
from drafting.export.pdf import write

NAMES = [
    "Level lines",
    "Stitching lines",
    "Grain, folds and marks",
    "Cutting lines",
    "Labels",
    "Joining marks and rulers",
]


@pytest.fixture(scope="module")
def document(trousers):
    return write(trousers, Output(paper="a3"))


def seen(document, hidden=(), page=3):
    """Darkness of a page with some layers hidden, as a reader would hide them."""
    with pikepdf.open(io.BytesIO(document)) as pdf:
        layers = pdf.Root.OCProperties.OCGs
        off = [layer for layer in layers if str(layer.Name) in hidden]
        pdf.Root.OCProperties.D.OFF = pikepdf.Array(off)
        pdf.Root.OCProperties.D.ON = pikepdf.Array([g for g in layers if g not in off])
        out = io.BytesIO()
        pdf.save(out)
    drawn = pypdfium2.PdfDocument(out.getvalue())[page].render(scale=1, grayscale=True)
    return 255 - drawn.to_numpy().squeeze().astype(int)


def test_the_layers_are_told_and_all_are_shown(document):
    with pikepdf.open(io.BytesIO(document)) as pdf:
        told = pdf.Root.OCProperties
        assert sorted(str(layer.Name) for layer in told.OCGs) == sorted(NAMES)
        assert [str(g.Name) for g in told.D.ON] == [str(g.Name) for g in told.D.Order]
        assert len(told.D.ON) == len(NAMES)
        assert "/OFF" not in told.D


@pytest.mark.parametrize("name", NAMES)
def test_hiding_a_layer_takes_ink_away_and_adds_none_but_what_lay_under_it(document, name):
    whole, without = seen(document), seen(document, {name})
    assert without.sum() < whole.sum()
    if name != "Labels":  # labels white out thin lines; grey marks lie over stitching lines
        assert (without > whole + 8).sum() < 0.001 * (whole > 0).sum()


def test_each_layer_alone_shows_something_and_together_they_show_all(document):
    whole, bare = seen(document), seen(document, set(NAMES))
    assert bare.sum() == 0  # on a tile nothing lies outside the layers
    alone = [seen(document, set(NAMES) - {name}) for name in NAMES]
    assert all(picture.sum() > 0 for picture in alone)
    assert (np.sum(alone, axis=0) >= whole - 30).all()  # where two thin lines cross, inks add up


def test_without_the_grid_nothing_of_the_pages_is_left_but_the_pattern(document, trousers):
    """A sheet without joints shows the same lines as pages whose joining marks are hidden."""
    page = pypdfium2.PdfDocument(document)[3].get_textpage().get_text_bounded()
    assert "joins" in page
    assert seen(document, {"Joining marks and rulers"}).sum() < seen(document).sum()


def test_every_role_lies_on_one_layer_or_always_shows():
    assert sum(len(roles) for roles in LAYERS.values()) == len(LAYERED)
    always = set(Role) - LAYERED
    assert {Role.SQUARE, Role.CAUTION} <= always
    assert not always & {Role.CUT, Role.STITCH, Role.NOTCH, Role.GRAIN}


def test_the_squares_and_cautions_show_whatever_is_hidden(document):
    shown = seen(document, set(NAMES), page=0)
    assert shown.sum() > 0.95 * seen(document, page=0).sum()


def test_lines_that_are_not_drawn_have_no_layer(trousers):
    with pikepdf.open(io.BytesIO(write(trousers, Output(paper="a3", lines="net")))) as pdf:
        names = {str(layer.Name) for layer in pdf.Root.OCProperties.OCGs}
    assert "Stitching lines" in names
    with pikepdf.open(io.BytesIO(write(trousers, Output(paper="whole")))) as pdf:
        names = {str(layer.Name) for layer in pdf.Root.OCProperties.OCGs}
    assert "Joining marks and rulers" not in names
