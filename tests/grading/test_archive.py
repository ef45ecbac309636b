"""The ZIP of a range, opened by the standard library."""

from __future__ import annotations

import hashlib
import io
import json
import zipfile

import pytest
import tabard

from drafting.drawing import Output
from drafting.export import FORMATS
from drafting.grading import range_archive, range_document, size_range


@pytest.fixture(scope="module")
def archive(trousers):
    return zipfile.ZipFile(io.BytesIO(range_archive(trousers, FORMATS["svg"], Output())))


def test_every_size_has_the_file_that_it_would_get_alone(archive, trousers):
    assert archive.testzip() is None
    for name, work in trousers.works:
        alone = FORMATS["svg"].write(work, Output())
        assert archive.read(f"trousers-{name}.svg") == alone


def test_the_manifest_tells_name_media_type_size_and_digest_of_every_file(archive):
    manifest = json.loads(archive.read("manifest.json"))
    told = {file["file"]: file for file in manifest["files"]}
    assert set(told) == set(archive.namelist()) - {"manifest.json"}
    for name, file in told.items():
        body = archive.read(name)
        assert file["sha256"] == hashlib.sha256(body).hexdigest()
        assert file["bytes"] == len(body)
    types = {"svg": "image/svg+xml", "csv": "text/csv", "json": "application/json"}
    assert all(file["media_type"] == types[n.rsplit(".", 1)[1]] for n, file in told.items())


def test_no_clock_is_in_the_archive(archive, trousers):
    assert {info.date_time for info in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    again = range_archive(trousers, FORMATS["svg"], Output())
    archive.fp.seek(0)
    assert archive.fp.read() == again


def test_sizes_that_cannot_be_cut_are_in_the_manifest_without_a_file():
    bodies = tabard.bodies(80, 130, 160)
    found = size_range(tabard.GARMENT, bodies, tabard.Tabard(), tabard.FINISH)
    archive = zipfile.ZipFile(io.BytesIO(range_archive(found, FORMATS["json"], Output())))
    good, unsound, refused = json.loads(archive.read("manifest.json"))["sizes"]
    assert good["file"] == "tabard-80.json"
    assert unsound["verdict"] == "unsound"
    assert unsound["failed"]
    assert "file" not in unsound
    assert refused["verdict"] == "refused"
    assert refused["refusal"]["where"] == "hem corner"
    assert "tabard-130.json" not in archive.namelist()


def test_names_that_differ_only_where_files_cannot_get_files_of_their_own():
    (_, small), (_, big) = tabard.bodies(80, 84)
    bodies = (("8/10", small), ("8 10", big))
    found = size_range(tabard.GARMENT, bodies, tabard.Tabard(), tabard.FINISH)
    archive = zipfile.ZipFile(io.BytesIO(range_archive(found, FORMATS["json"], Output())))
    assert {"tabard-8-10.json", "tabard-8-10-2.json"} <= set(archive.namelist())


def test_the_range_as_json_holds_every_pattern_or_its_refusal(trousers):
    told = range_document(trousers, Output())
    for size, (name, work) in zip(told["sizes"], trousers.works, strict=True):
        assert size["name"] == name
        assert size["pattern"] == json.loads(FORMATS["json"].write(work, Output()))
    bodies = tabard.bodies(80, 160)
    found = size_range(tabard.GARMENT, bodies, tabard.Tabard(), tabard.FINISH)
    refused = range_document(found, Output())["sizes"][1]
    assert refused["verdict"] == "refused"
    assert refused["refusal"]["message"] == "No cloth is so wide."
