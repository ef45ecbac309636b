"""The reference under a public linter, and as the types of a client in another language.

Needs node, and once `npm install --no-package-lock` in tests/typescript.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from serving import Server

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "tests" / "typescript"
REFERENCE = ROOT / "openapi" / "openapi.json"
TOOLS = FOLDER / "node_modules" / ".bin"
QUIET = {"REDOCLY_TELEMETRY": "off", "REDOCLY_SUPPRESS_UPDATE_NOTICE": "true"}
PATH = os.pathsep.join((str(Path(sys.executable).parent), os.environ.get("PATH", os.defpath)))
NODE = shutil.which("node", path=PATH)

pytestmark = [
    pytest.mark.skipif(NODE is None, reason="node is not installed"),
    pytest.mark.skipif(
        not (TOOLS / "tsc").exists(),
        reason="run `npm install --no-package-lock` in tests/typescript",
    ),
]


def run(*command: object, cwd: Path = FOLDER) -> str:
    """What a tool prints; a failure shows all of it."""
    done = subprocess.run(  # noqa: S603 - our own tools
        [str(each) for each in command],
        cwd=cwd,
        env={**os.environ, **QUIET, "PATH": PATH},
        check=False,
        capture_output=True,
        text=True,
        timeout=300,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_the_reference_is_clean_under_a_public_linter():
    run(TOOLS / "redocly", "lint", "--config", "redocly.yaml", REFERENCE)


@pytest.fixture(name="client", scope="module")
def client_fixture(tmp_path_factory):
    """The client of the examples, checked against the reference's types and made to run."""
    folder = tmp_path_factory.mktemp("client")
    shutil.copy(ROOT / "openapi" / "examples" / "order.ts", folder)
    for name in ("tsconfig.json", "package.json"):
        shutil.copy(FOLDER / name, folder)
    (folder / "node_modules").symlink_to(FOLDER / "node_modules")
    types = (REFERENCE, "--default-non-nullable", "false", "-o", "tapeline.d.ts")
    run(TOOLS / "openapi-typescript", *types, cwd=folder)
    run(TOOLS / "tsc", cwd=folder)
    return folder


def test_a_typed_client_orders_a_pattern_reads_its_seams_and_handles_a_problem(client, tmp_path):
    server = Server(tmp_path / "log", TAPELINE_ORDER_SECONDS="60")
    try:
        server.wait()
        told = run(NODE, "order.js", server.address.rstrip("/"), cwd=client)
    finally:
        server.kill()
    lines = told.splitlines()
    assert lines[0].startswith("trousers: sound")
    seams = [line for line in lines if line.startswith("seam ")]
    assert len(seams) > 5
    assert all(line.endswith(", matches") for line in seams)
    assert any(line.startswith("seam inseam: 7") for line in seams)
    assert any(line.startswith("422 ") for line in lines)
    assert any(line.startswith("at /measurements/waist_girth: ") for line in lines)


WRONG = {
    'kind: "trousers", method: "block"': 'kind: "trouser"',
    "waist_girth: 74": "waist_girt: 74",
    "seam.matches": "seam.match",
}


def test_the_compiler_finds_what_does_not_fit_the_reference(client, tmp_path):
    for path in client.iterdir():
        if path.name != "order.ts":
            (tmp_path / path.name).symlink_to(path)
    text = (client / "order.ts").read_text()
    for number, (right, wrong) in enumerate(WRONG.items()):
        assert right in text
        (tmp_path / f"wrong{number}.ts").write_text(text.replace(right, wrong))
    with pytest.raises(AssertionError) as found:
        run(TOOLS / "tsc", "--noEmit", cwd=tmp_path)
    for number in range(len(WRONG)):
        assert f"wrong{number}.ts" in str(found.value)
