"""The example scripts, run as users run them, against a real server."""

from __future__ import annotations

import csv
import json
import os
import subprocess
import sys

import pytest
from serving import ROOT, Server

EXAMPLES = ROOT / "openapi" / "examples"

pytest.importorskip("rich")


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory):
    server = Server(tmp_path_factory.mktemp("examples") / "log", TAPELINE_BATCH_WORKERS="2")
    try:
        server.wait()
        yield server
    finally:
        server.kill()


def run(script: str, *arguments: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run(  # noqa: S603 - our own script
        [sys.executable, EXAMPLES / script, *map(str, arguments)],
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
        env={**os.environ, "COLUMNS": "120"},
    )


def customers(path, *changes: dict[str, str]):
    """The example's customers, some of them changed."""
    with (EXAMPLES / "customers.csv").open(newline="") as file:
        rows = list(csv.DictReader(file))
    for row, change in zip(rows, changes, strict=False):
        row.update(change)
    with path.open("w", newline="") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows(rows)
    return path


def test_every_customer_gets_a_pattern_and_a_second_run_has_nothing_to_do(server, tmp_path):
    out = tmp_path / "patterns"
    arguments = (EXAMPLES / "customers.csv", "--address", server.address, "--format", "svg")
    first = run("batch.py", *arguments, "--out", out, "--page", 4)
    assert first.returncode == 0, first.stderr
    assert len(list(out.glob("invented-*.svg"))) == 6
    assert all(file.read_bytes().startswith(b"<?xml") for file in out.glob("*.svg"))
    (out / "invented-3.svg").unlink()
    second = run("batch.py", *arguments, "--out", out)
    assert "6 customers, 6 drafted before" in second.stdout
    assert not (out / "invented-3.svg").exists()


def test_it_goes_on_where_it_stopped_and_lists_what_was_refused(server, tmp_path):
    out = tmp_path / "patterns"
    out.mkdir()
    (out / "done.jsonl").write_text('{"id": "invented-2"}\n')
    path = customers(tmp_path / "customers.csv", {"waist_girth": "9"})
    done = run("batch.py", path, "--address", server.address, "--format", "pdf", "--out", out)
    assert done.returncode == 1
    assert {file.stem for file in out.glob("*.pdf")} == {f"invented-{n}" for n in (3, 4, 5, 6)}
    (problem,) = map(json.loads, (out / "problems.jsonl").read_text().splitlines())
    assert problem["id"] == "invented-1"
    assert problem["errors"][0]["pointer"] == "/measurements/waist_girth"


def test_a_service_that_is_away_is_no_disaster(tmp_path):
    done = run("batch.py", EXAMPLES / "customers.csv", "--address", "http://127.0.0.1:1",
               "--out", tmp_path, "--rounds", 1)  # fmt: skip
    assert done.returncode == 1
    assert "6 not drafted" in done.stdout


def test_a_range_is_written_with_its_nest_and_tables(server, tmp_path):
    own = ("--own", EXAMPLES / "sizes.csv", "--each", "svg", "--out", tmp_path)
    done = run("size_range.py", "--address", server.address, *own)
    assert done.returncode == 0, done.stderr
    names = {file.name for file in tmp_path.iterdir()}
    assert {"trousers-S.svg", "trousers-M.svg", "trousers-L.svg", "nest.pdf", "measures.csv",
            "grade.json", "manifest.json"} <= names  # fmt: skip
    assert "waist_girth" in done.stdout
    assert "M: sound" in done.stdout
