"""The ZIP of everything, opened by the standard library."""

import hashlib
import io
import json
import zipfile

import pytest

from drafting.drawing import Output
from drafting.export import FORMATS, pattern_id


@pytest.fixture(scope="module")
def archive(trousers):
    return zipfile.ZipFile(io.BytesIO(FORMATS["zip"].write(trousers, Output())))


def test_it_holds_each_format_as_it_would_come_alone(archive, trousers):
    assert archive.testzip() is None
    others = [f for f in FORMATS.values() if f.name != "zip"]
    assert set(archive.namelist()) == {"manifest.json", *(f"trousers.{f.name}" for f in others)}
    for kind in others:
        alone = kind.write(trousers, Output())
        assert archive.read(f"trousers.{kind.extension}") == alone


def test_the_manifest_tells_names_media_types_and_digests(archive, trousers):
    manifest = json.loads(archive.read("manifest.json"))
    assert (manifest["id"], manifest["verdict"]) == (pattern_id(trousers), "sound")
    told = {file["file"]: file for file in manifest["files"]}
    assert set(told) == set(archive.namelist()) - {"manifest.json"}
    types = {f"trousers.{f.extension}": f.media_type for f in FORMATS.values()}
    for name, file in told.items():
        body = archive.read(name)
        assert file["sha256"] == hashlib.sha256(body).hexdigest()
        assert file["bytes"] == len(body)
        assert file["media_type"] == types[name]


def test_no_clock_and_no_reference_is_in_its_names(archive):
    assert {info.date_time for info in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    assert not any("1042" in name for name in archive.namelist())
