"""The PNG: read by Pillow, as big as asked for, texts drawn, the same on every machine."""

import io
from dataclasses import replace

import numpy as np
import pytest
from PIL import Image

from drafting.drawing import Output
from drafting.export import FORMATS


def picture(work, **form):
    drawn = Image.open(io.BytesIO(FORMATS["png"].write(work, Output(**form))))
    drawn.load()
    assert drawn.format == "PNG"
    return drawn


@pytest.mark.parametrize("pixels", [64, 200, 600, 1500])
def test_its_longer_side_is_as_many_pixels_as_asked_for(trousers, pixels):
    assert max(picture(trousers, pixels=pixels).size) == pixels


def test_it_is_dark_lines_on_white(trousers):
    grey = np.asarray(picture(trousers).convert("L"))
    assert 0.85 < (grey > 250).mean() < 0.97
    assert (grey < 100).mean() > 0.01


def test_the_title_of_a_piece_is_drawn(trousers):
    """A longer title takes more ink; nothing else differs."""

    def ink(title):
        net = trousers.pattern.pattern
        pieces = tuple(
            replace(p, piece=replace(p.piece, title=title)) if k == 0 else p
            for k, p in enumerate(trousers.pattern.pieces)
        )
        work = replace(trousers, pattern=replace(trousers.pattern, pattern=net, pieces=pieces))
        drawn = picture(work, pixels=1500, pieces=("front",))
        return int((np.asarray(drawn.convert("L")) < 128).sum())

    assert ink("MMMMMMMM") > ink("i") + 300


def test_letters_without_a_shape_are_seen(trousers):
    def ink(title):
        first, *others = trousers.pattern.pieces
        pieces = (replace(first, piece=replace(first.piece, title=title)), *others)
        work = replace(trousers, pattern=replace(trousers.pattern, pieces=pieces))
        drawn = picture(work, pixels=1500, pieces=("front",))
        return int((np.asarray(drawn.convert("L")) < 128).sum())

    bare = ink("i")
    for title in ("שלוםשלום", "订单订单", "👗🧵👗🧵"):
        assert ink(title) > bare + 200


def test_only_the_pieces_asked_for_are_drawn(trousers):
    whole, one = picture(trousers), picture(trousers, pieces=("belt_loop",))
    assert whole.size != one.size
