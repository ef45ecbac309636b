"""The SVG for screens: sizes and colours of the page, two on one page, other programs."""

import re
from dataclasses import replace
from xml.etree import ElementTree as ET

import numpy as np
import pytest
from browser import chromium, inline, librsvg
from pages import beside

from drafting.drawing import Output
from drafting.errors import OutputError
from drafting.export import FORMATS, pattern_id

NAME = "{http://www.w3.org/2000/svg}"
SCREEN = Output(view="screen")
DARK, LIGHT, ORANGE, BLUE = (18, 34, 51), (255, 255, 238), (255, 160, 0), (0, 102, 204)


def draw(work, **form):
    return FORMATS["svg"].write(work, Output(view="screen", **form))


def read(drawing):
    return ET.fromstring(drawing)  # noqa: S314 - the project's own bytes


@pytest.fixture(scope="module")
def drawing(trousers):
    return draw(trousers)


def test_it_has_a_view_box_and_no_size_of_its_own(drawing):
    root = read(drawing)
    assert root.get("width") is None
    assert root.get("height") is None
    assert len(root.get("viewBox").split()) == 4
    assert root.get("role") == "img"


def test_every_line_keeps_its_breadth_and_takes_the_colour_of_the_text(drawing):
    for element in read(drawing).iter():
        if element.tag == f"{NAME}path":
            assert element.get("vector-effect") == "non-scaling-stroke"
            assert element.get("stroke") is None
        if element.tag == f"{NAME}g":
            assert element.get("stroke") == "currentColor"
        if element.tag == f"{NAME}text":
            assert element.get("fill") == "currentColor"
    assert not re.search(r'"#[0-9a-f]{3,6}"', drawing.decode())


def test_nothing_runs_or_reaches_outside(drawing):
    text = drawing.decode()
    assert not re.search(r"href|url\(|@import|\son\w+=|<!|<script", text)
    tags = {e.tag.removeprefix(NAME) for e in read(drawing).iter()}
    assert tags == {"svg", "title", "desc", "style", "defs", "g", "path", "text"}


def test_its_style_touches_nothing_but_itself(drawing):
    """Every selector starts with the drawing's own id."""
    root = read(drawing)
    (style,) = root.iter(f"{NAME}style")
    own = f"#{root.get('id')}"
    for selectors in re.findall(r"([^{}@]+)\{[^{}]*\}", re.sub(r"@[^{]+\{", "", style.text)):
        assert all(s.strip().startswith(own) for s in selectors.split(",")), selectors


def test_ids_tell_patterns_apart_and_a_prefix_may_be_chosen(trousers, drafting_again):
    def ids(drawing):
        return {e.get("id") for e in read(drawing).iter() if e.get("id")}

    one, two = ids(draw(trousers)), ids(draw(drafting_again(hip_ease=5.0)))
    assert not one & two
    assert all(name.startswith(f"pattern-{pattern_id(trousers)[:8]}") for name in one)
    left = ids(draw(trousers, prefix="left"))
    assert all(name.startswith("left") for name in left)
    assert not one & left
    printed = ids(FORMATS["svg"].write(trousers, Output(prefix="mine")))
    assert all(name.startswith("mine") for name in printed)


@pytest.mark.parametrize("prefix", ["1a", "a b", 'a"><script>', "a{}", "ä", "-a", "a\n"])
def test_a_prefix_that_no_id_can_have_is_refused(trousers, prefix):
    with pytest.raises(OutputError) as caught:
        draw(trousers, prefix=prefix)
    assert caught.value.where == "output.prefix"


def test_it_says_that_it_is_not_true_to_scale(drawing):
    (told,) = (e.text for e in read(drawing) if e.tag == f"{NAME}desc")
    assert "not true to scale" in told


def test_an_unsound_pattern_says_so_on_every_piece(trousers):
    drawing = draw(replace(trousers, verdict="unsound"))
    pieces = [g for g in read(drawing).iter(f"{NAME}g") if g.get("class") == "piece"]
    assert len(pieces) == len(trousers.pattern.pieces)
    for piece in pieces:
        said = "".join(text.text or "" for text in piece.iter(f"{NAME}text"))
        assert "NOTFORCUTTING" in said.replace(" ", "")


def page(*drawings):
    """Two halves of a page, dark and light, each with its own colours."""
    colours = (
        "background:rgb(18,34,51);color:rgb(255,255,238);--pattern-cut:rgb(255,160,0)",
        "background:#fff;color:#000;--pattern-cut:rgb(0,102,204)",
    )
    boxes = "".join(
        f'<div style="width:600px;height:500px;float:left;{colour}">{inline(each)}</div>'
        for colour, each in zip(colours, drawings, strict=True)
    )
    return f"<!doctype html><meta charset=utf-8><style>body{{margin:0}}</style>{boxes}"


ABSENT = 0.0005
"""Less than this of a picture is the blur of other edges."""


def share(picture, colour):
    """How much of a picture has nearly that colour."""
    return float((np.abs(picture - np.array(colour)).max(axis=2) < 30).mean())


def test_two_patterns_on_one_page_each_follow_their_own_part_of_it(
    trousers, drafting_again, tmp_path
):
    picture = chromium(
        page(draw(trousers), draw(drafting_again(hip_ease=5.0))), (1200, 500), tmp_path
    )
    dark, light = picture[:, :600], picture[:, 600:]
    assert share(dark, DARK) > 0.8
    assert share(light, (255, 255, 255)) > 0.8
    for half, own, other in ((dark, ORANGE, BLUE), (light, BLUE, ORANGE)):
        assert share(half, own) > 0.004
        assert share(half, other) < ABSENT
    assert share(dark, LIGHT) > ABSENT  # texts and marks in the colour of the page's text
    assert share(light, (0, 0, 0)) > ABSENT


def test_the_same_pattern_twice_is_no_matter_with_two_prefixes(trousers, tmp_path):
    one, two = draw(trousers, prefix="one"), draw(trousers, prefix="two")
    picture = chromium(page(one, two), (1200, 500), tmp_path)
    assert share(picture[:, :600], ORANGE) > 0.004
    assert share(picture[:, 600:], BLUE) > 0.004


@pytest.mark.parametrize("view", ["print", "screen"])
def test_chromium_and_librsvg_draw_the_same(trousers, tmp_path, view):
    """Whatever is dark in one has something dark within three pixels in the other."""
    drawing = FORMATS["svg"].write(trousers, Output(view=view))
    theirs = librsvg(drawing, 1200, tmp_path)
    height = theirs.shape[0]
    body = "margin:0;background:#fff"
    html = (
        f'<!doctype html><meta charset=utf-8><body style="{body}"><style>#pattern{{width:1200px;'
        f'height:auto;display:block}}</style><div style="width:1200px">{inline(drawing)}</div>'
    )
    ours = chromium(html, (1200, height), tmp_path).min(axis=2)
    assert beside(only_broad(theirs), ours, 4)
    assert beside(only_broad(ours), theirs, 4)


def only_broad(picture):
    """The picture without letters: each program has its own fonts. Lines longer than 40 px."""
    dark = picture < 128
    long = np.zeros_like(dark)
    for axis in (0, 1):
        runs = dark
        size = 1
        while size < 32:
            runs = runs & np.roll(runs, -size, axis=axis)
            size *= 2
        kept = runs.copy()
        for k in range(1, size):
            kept |= np.roll(runs, k, axis=axis)
        long |= kept
    return np.where(long, 0, 255)
