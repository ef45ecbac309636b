"""The workroom's command line, as a person calls it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import apron
import pytest
from asking import EXAMPLES, example

from drafting.export import FORMATS
from service.__main__ import BAD_USE, DONE, REFUSED, UNSOUND, main

ROOT = Path(__file__).parents[2]


def test_an_order_becomes_files_and_a_table(tmp_path, capsys):
    assert main(["draft", str(EXAMPLES / "trousers.json"), "-o", str(tmp_path / "out")]) == DONE
    for each in FORMATS.values():
        assert (tmp_path / "out" / f"trousers.{each.extension}").stat().st_size > 1000
    printed = capsys.readouterr().out
    assert "Trousers: sound" in printed
    for name in ("inseam", "side", "finished_hip_girth", "matches", "passed"):
        assert name in printed
    assert "DOES NOT MATCH" not in printed
    assert "FAILED" not in printed


def test_one_format_may_be_asked_for(tmp_path):
    order = str(EXAMPLES / "trousers.json")
    assert main(["draft", order, "-o", str(tmp_path), "--format", "svg"]) == DONE
    assert [path.name for path in tmp_path.iterdir()] == ["trousers.svg"]


def test_the_picture_of_the_readme_is_fresh(tmp_path):
    main(["draft", str(EXAMPLES / "trousers.json"), "-o", str(tmp_path), "--format", "svg"])
    kept = ROOT / "openapi" / "pictures" / "trousers.svg"
    assert (tmp_path / "trousers.svg").read_bytes() == kept.read_bytes(), (
        "python -m service draft openapi/examples/trousers.json -o openapi/pictures --format svg"
    )


def test_files_are_the_bytes_that_the_service_sends(tmp_path, service):
    main(["draft", str(EXAMPLES / "trousers.json"), "-o", str(tmp_path)])
    for name in FORMATS:
        sent = service.order(example(), f"?format={name}").content
        assert (tmp_path / f"trousers.{name}").read_bytes() == sent


def test_a_refused_order_is_told_field_by_field(tmp_path, capsys):
    order = example()
    order["measurements"]["waist_girth"] = 29
    order["measurements"]["hip_girt"] = 101
    del order["measurements"]["hip_girth"]
    path = tmp_path / "order.json"
    path.write_text(json.dumps(order), "utf-8")
    assert main(["draft", str(path), "-o", str(tmp_path)]) == REFUSED
    told = capsys.readouterr().err
    assert "measurements.hip_girt: There is no measure 'hip_girt'. Did you mean" in told
    assert "Traceback" not in told
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"\xff"])
def test_a_file_that_is_no_order_is_refused(tmp_path, capsys, body):
    path = tmp_path / "order.json"
    path.write_bytes(body)
    assert main(["draft", str(path)]) == REFUSED
    assert capsys.readouterr().err


def test_a_file_that_is_not_there_is_named(tmp_path, capsys):
    assert main(["draft", str(tmp_path / "none.json")]) == BAD_USE
    assert "none.json" in capsys.readouterr().err


def test_an_unsound_pattern_has_its_own_exit_code(tmp_path, capsys, monkeypatch):
    monkeypatch.setattr("service.__main__.GARMENTS", {"apron": apron.GARMENT})
    path = tmp_path / "apron.json"
    path.write_text(json.dumps(apron.order(trouble="unsound")), "utf-8")
    assert main(["draft", str(path), "-o", str(tmp_path)]) == UNSOUND
    assert "5 cm" in capsys.readouterr().err.replace("-5.00", "5")


def test_a_wrong_setting_is_named(capsys, monkeypatch):
    monkeypatch.setenv("TAPELINE_WORKERS", "many")
    assert main(["openapi"]) == BAD_USE
    assert "TAPELINE_WORKERS" in capsys.readouterr().err


def test_it_runs_as_a_module(tmp_path):
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONWARNINGS": "error"}
    done = subprocess.run(
        [sys.executable, "-m", "service", "--help"],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    )
    assert "draft" in done.stdout
    assert "Exit codes" in done.stdout
