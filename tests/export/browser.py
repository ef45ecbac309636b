"""Other programs that draw: Chromium and librsvg, where they are found; else tests skip."""

import io
import os
import shutil
import subprocess

import numpy as np
import pytest
from PIL import Image

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")


def chromium(page, size, tmp_path):
    """A page as Chromium shows it: RGB, height by width by 3."""
    found = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, NAMES)), None)
    if found is None:
        pytest.skip("Chromium is not installed")
    source, picture = tmp_path / "page.html", tmp_path / "page.png"
    source.write_text(page, encoding="utf-8")
    subprocess.run(  # noqa: S603 - a page of its own
        [
            found, "--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
            "--force-device-scale-factor=1", f"--window-size={size[0]},{size[1]}",
            f"--user-data-dir={tmp_path / 'profile'}", f"--screenshot={picture}", source.as_uri(),
        ],
        check=True, capture_output=True, timeout=120,
    )  # fmt: skip
    return np.asarray(Image.open(picture).convert("RGB")).astype(int)


def librsvg(drawing, width, tmp_path):
    """A drawing as librsvg draws it, so many pixels broad, on white: grey, height by width."""
    found = shutil.which("rsvg-convert")
    if found is None:
        pytest.skip("librsvg (rsvg-convert) is not installed")
    source = tmp_path / "drawing.svg"
    source.write_bytes(drawing)
    drawn = subprocess.run(  # noqa: S603 - a drawing of its own
        [found, "-w", str(width), "-b", "white", str(source)], check=True, capture_output=True
    )
    return np.asarray(Image.open(io.BytesIO(drawn.stdout)).convert("L"))


def inline(drawing):
    """An SVG as it is pasted into a page: without the XML declaration."""
    return drawing.decode().partition("?>")[2]
