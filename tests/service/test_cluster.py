"""Batches on a Dask cluster of real processes on loopback: workers and scheduler killed."""

from __future__ import annotations

import json
import os
import subprocess
import sys

import httpx
import pytest
from asking import example
from serving import ROOT, Server, free_port
from test_batch_faults import assert_each_once, batch

pytest.importorskip("distributed")


class Cluster:
    """A scheduler and workers."""

    def __init__(self, folder, count: int) -> None:
        port = free_port()
        self.address = f"tcp://127.0.0.1:{port}"
        self.folder = folder
        self.scheduler = self._start("scheduler", "--host", "127.0.0.1", "--port", str(port))
        self.workers = [
            self._start("worker", self.address, "--nthreads", "1", "--no-nanny", name=f"w{n}")
            for n in range(count)
        ]

    def _start(self, role: str, *arguments: str, name: str = "s") -> subprocess.Popen:
        with (self.folder / f"{name}.log").open("wb") as sink:
            return subprocess.Popen(  # noqa: S603 - the engine's own commands
                [
                    sys.executable,
                    "-m",
                    f"distributed.cli.dask_{role}",
                    *arguments,
                    "--no-dashboard",
                ],
                cwd=ROOT,
                env={**os.environ, "PYTHONPATH": str(ROOT)},
                stdout=sink,
                stderr=subprocess.STDOUT,
            )

    def end(self) -> None:
        for process in (*self.workers, self.scheduler):
            if process.poll() is None:
                process.kill()
                process.wait()


@pytest.fixture(name="cluster", scope="module")
def cluster_fixture(tmp_path_factory):
    cluster = Cluster(tmp_path_factory.mktemp("cluster"), 3)
    yield cluster
    cluster.end()


@pytest.fixture(name="server", scope="module")
def server_fixture(cluster, tmp_path_factory):
    server = Server(
        tmp_path_factory.mktemp("clustered") / "log",
        TAPELINE_CLUSTER=cluster.address,
        TAPELINE_BEAT_SECONDS="0.2",
    )
    try:
        server.wait()
        yield server
    finally:
        server.kill()


def read(answer, at=-1, do=None) -> list[dict]:
    """All lines; something is done after so many results."""
    answers, results = [], 0
    for line in answer.iter_lines():
        answers.append(json.loads(line))
        results += answers[-1]["type"] == "result"
        if results == at and do:
            do()
            do = None
    return answers


def test_a_batch_is_drafted_on_the_cluster_and_survives_a_worker(cluster, server):
    count = 18
    with batch(server, count) as answer:
        answers = read(answer, 8, cluster.workers[0].kill)
    assert_each_once(answers, count)
    assert answers[-1]["failed"] == 0
    assert cluster.workers[0].wait(10) != 0


def test_a_size_range_is_drafted_on_the_cluster(server):
    asked = {"garment": {"kind": "trousers"},
             "sizes": {"table": "women", "names": ["84-regular", "88-regular"]}}  # fmt: skip
    answer = httpx.post(f"{server.address}v1/size-ranges?format=csv", json=asked, timeout=30)
    assert answer.status_code == 200
    assert answer.text.startswith("kind,measure,unit,84-regular,88-regular\r\n")


def test_a_scheduler_that_is_lost_on_the_way_is_told_line_by_line(cluster, server):
    count = 18
    with batch(server, count) as answer:
        answers = read(answer, 4, cluster.scheduler.kill)
    assert_each_once(answers, count)
    problems = [a for a in answers if a["type"] == "problem"]
    assert len(problems) >= 6
    assert {p["answer"]["type"] for p in problems} == {"/problems/no-workers"}
    assert httpx.post(f"{server.address}v1/patterns", json=example()).status_code == 200
    # and from then on it is away from the start
    with batch(server, 5) as answer:
        answers = read(answer)
    assert_each_once(answers, 5)
    assert {a["status"] for a in answers if a["type"] == "problem"} == {503}
    asked = {"garment": {"kind": "trousers"}, "sizes": {"table": "women", "names": ["84-regular"]}}
    refused = httpx.post(f"{server.address}v1/size-ranges", json=asked, timeout=30)
    assert refused.status_code == 503
    assert int(refused.headers["retry-after"]) > 0
    assert httpx.get(f"{server.address}readyz").status_code == 200
