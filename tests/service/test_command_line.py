"""The workroom's command line, as a person calls it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import apron
import pypdfium2
import pytest
from asking import EXAMPLES, example

from drafting.body import MEASURES
from drafting.export import FORMATS
from drafting.garments import GARMENTS
from service.command_line import BAD_USE, DONE, REFUSED, UNSOUND, main

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
    monkeypatch.setattr("service.command_line.GARMENTS", {"apron": apron.GARMENT})
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


def folder_of_orders(path: Path) -> Path:
    path.mkdir()
    for name in ("trousers", "trousers_inches"):
        (path / f"{name}.json").write_text(json.dumps(example(name)), "utf-8")
    spoilt = example()
    spoilt["measurements"]["waist_girth"] = "wide"
    (path / "spoilt.json").write_text(json.dumps(spoilt), "utf-8")
    (path / "broken.json").write_bytes(b"{")
    (path / "notes.txt").write_text("no order")
    return path


def test_a_folder_of_orders_is_drafted_and_what_is_refused_holds_up_no_other(tmp_path, capfd):
    folder, out = folder_of_orders(tmp_path / "orders"), tmp_path / "out"
    asked = ["draft-folder", str(folder), "-o", str(out), "-f", "svg", "-f", "json"]
    assert main(asked) == REFUSED
    told = capfd.readouterr()
    assert told.out.splitlines() == [
        "trousers.json: sound: trousers.svg, trousers.json",
        "trousers_inches.json: sound: trousers_inches.svg, trousers_inches.json",
        "4 orders: 2 drafted, 2 refused.",
    ]
    assert "spoilt.json: The order has to be changed.\n  measurements.waist_girth: " in told.err
    assert "broken.json: " in told.err
    assert "Traceback" not in told.err
    names = {f"{n}.{e}" for n in ("trousers", "trousers_inches") for e in ("svg", "json")}
    assert {path.name for path in out.iterdir()} == names
    assert main(["draft", str(folder / "trousers.json"), "-o", str(tmp_path), "-f", "svg"]) == DONE
    assert (tmp_path / "trousers.svg").read_bytes() == (out / "trousers.svg").read_bytes()


def test_progress_is_shown_to_whoever_watches(tmp_path):
    folder = tmp_path / "orders"
    folder.mkdir()
    (folder / "one.json").write_text(json.dumps(example()), "utf-8")
    command = [sys.executable, "-m", "service", "draft-folder", str(folder), "-o", str(tmp_path)]
    environment = {**os.environ, "FORCE_COLOR": "1", "TERM": "xterm", "TAPELINE_BATCH_WORKERS": "1"}
    done = subprocess.run(  # noqa: S603 - our own
        [*command, "-f", "json"],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=True,
    )
    assert "Drafting" in done.stderr
    assert "100%" in done.stderr
    assert "Drafting" not in done.stdout


def test_a_folder_without_orders_is_named(tmp_path, capsys):
    assert main(["draft-folder", str(tmp_path)]) == BAD_USE
    assert str(tmp_path) in capsys.readouterr().err


def test_a_blank_form_has_a_row_for_every_measure_of_its_garment(tmp_path, capsys):
    path = tmp_path / "form.pdf"
    assert main(["form", "trousers", "-o", str(path), "--paper", "letter"]) == DONE
    with pypdfium2.PdfDocument(path) as pdf:
        words = "\n".join(page.get_textpage().get_text_range() for page in pdf)
    for name in GARMENTS["trousers"].needs:
        assert MEASURES[name].title in words
    assert MEASURES["wrist_girth"].title not in words
    assert "Date" in words


def test_the_help_leads_to_a_first_pattern(tmp_path, capsys):
    with pytest.raises(SystemExit):
        main(["--help"])
    told = capsys.readouterr().out
    first = next(line for line in told.splitlines() if "draft openapi/" in line)
    command = first.split()[3:]
    assert main([*command[:2], "-o", str(tmp_path)]) == DONE
