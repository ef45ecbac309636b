"""The README says what holds."""

from __future__ import annotations

import re
from dataclasses import fields

from asking import EXAMPLES

from service.settings import PREFIX, Settings

README = (EXAMPLES.parents[1] / "README.md").read_text("utf-8")


def test_every_setting_stands_in_the_table_with_its_default():
    told = {}
    for row in re.findall(r"^\| (`TAPELINE_.*?) \| (.*?) \|", README, re.MULTILINE):
        names, defaults = (each.split(", ") for each in row)
        told |= {n.strip("`"): d for n, d in zip(names, defaults, strict=True)}
    assert told == {PREFIX + f.name.upper(): shown(f.default) for f in fields(Settings)}


def shown(default: object) -> str:
    if default in ((), ""):
        return "none"
    return f"{default:g}" if isinstance(default, float) else str(default)


def test_every_file_that_is_named_is_there():
    for path in re.findall(r"(?:\]\(|`)((?:openapi|service|tests)/[\w./-]+)", README):
        assert (EXAMPLES.parents[1] / path).exists(), path
    for name in re.findall(r"`([\w.]+\.(?:html|ts|py|csv))`", README):
        assert (EXAMPLES / name).exists(), name
