"""The house keeps its shape: who may import whom, tables are complete, the guide is true."""

from __future__ import annotations

import ast
import tomllib
from importlib import import_module
from pathlib import Path as File

import pytest

from drafting.export import FORMATS
from drafting.garments import GARMENTS, Garment

ROOT = File(__file__).parents[1]
ORDER = {
    "geometry": 0,
    "errors": 0,
    "language": 0,
    "trace": 1,
    "pattern": 2,
    "body": 2.5,  # gives findings, which are the pattern's; see Decisions
    "craft": 3,
    "garments": 4,
    "checks": 5,
    "workroom": 6,
    "drawing": 7,
    "export": 8,
    "grading": 9,
    "laying": 7.5,
    "teaching": 7.5,  # its documents are written in export
}
OUTSIDE = {"svgwrite": "export", "reportlab": "export", "ezdxf": "export"}
FONTS = {"drafting/drawing/lettering.py"}  # measures letters with the font's own widths


def modules() -> list[File]:
    return sorted((ROOT / "drafting").rglob("*.py"))


def imported(file: File) -> set[str]:
    """Everything that a module imports while it runs; imports for the type checker left out."""
    tree = ast.parse(file.read_text())
    for node in ast.walk(tree):
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
            node.body = [ast.Pass()]
    found: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
        elif isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
    return found


def room(name: str) -> str:
    return name.split(".")[1] if name.count(".") else ""


def compiled() -> list[str]:
    """The modules of the craft that the build may compile."""
    told = tomllib.loads((ROOT / "pyproject.toml").read_text())
    listed = told["tool"]["hatch"]["build"]["hooks"]["mypyc"]["include"]
    return [name.lstrip("/") for name in listed if "/craft/" in name]


@pytest.mark.parametrize("name", compiled())
def test_what_is_compiled_of_the_craft_meets_no_length_that_remembers(name):
    """There it would come out as a bare number, and the draft sheet would lose its formula."""
    assert not {m for m in imported(ROOT / name) if m.startswith("drafting.trace")}


@pytest.mark.parametrize("file", modules(), ids=lambda f: str(f.relative_to(ROOT)))
def test_no_room_imports_from_a_higher_one(file):
    here = file.relative_to(ROOT / "drafting").parts[0].removesuffix(".py")
    if here == "__init__":
        return
    for name in imported(file):
        top = name.split(".")[0]
        assert top not in {"service", "fastapi", "starlette", "pydantic", "httpx"}, name
        if top == "drafting" and room(name) in ORDER:
            assert ORDER[room(name)] <= ORDER[here], f"{here} imports {name}"


@pytest.mark.parametrize("file", modules(), ids=lambda f: str(f.relative_to(ROOT)))
def test_only_the_export_room_knows_the_writers(file):
    relative = str(file.relative_to(ROOT))
    if relative in FONTS:
        return
    for name in imported(file):
        wanted = OUTSIDE.get(name.split(".")[0])
        assert wanted is None or relative.startswith(f"drafting/{wanted}/"), name


def test_drafting_reads_no_clock_chance_or_network():
    """The packing engine is bounded by time and so exempt; its answer says which engine made it."""
    forbidden = {"random", "time", "datetime", "socket", "urllib", "secrets", "uuid"}
    for file in modules():
        if file.relative_to(ROOT).as_posix() == "drafting/laying/engine.py":
            continue
        assert not {n.split(".")[0] for n in imported(file)} & forbidden, file


def test_every_chapter_is_in_the_table_and_the_table_holds_nothing_else():
    """Every garment that a module of the handbook declares, each folder at least one."""
    folder = ROOT / "drafting" / "garments"
    told: dict[str, Garment] = {}
    for chapter in sorted(p for p in folder.iterdir() if (p / "__init__.py").exists()):
        files = [f.relative_to(ROOT).with_suffix("") for f in chapter.rglob("*.py")]
        modules = [import_module(".".join(f.parts).removesuffix(".__init__")) for f in files]
        found = {v.kind: v for m in modules for v in vars(m).values() if isinstance(v, Garment)}
        assert found, f"{chapter.name} declares no garment"
        told |= found
    assert told == GARMENTS


def test_the_guide_names_every_room():
    guide = (ROOT / "DEVELOPERS.md").read_text()
    for name in ORDER:
        assert name in guide, name


def test_the_readme_names_every_format():
    readme = (ROOT / "README.md").read_text()
    for name in FORMATS:
        assert name.upper() in readme.upper(), name


def test_nothing_stands_at_the_top_but_what_belongs_there():
    card = {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "service",
        "drafting",
        "tests",
        "openapi",
        "Dockerfile",
        "LICENSE",
    }
    found = {p.name for p in ROOT.iterdir() if not p.name.startswith(".")}
    assert found - {"out", "build", "tapeline.egg-info"} <= card
