"""A folder of orders, drafted on every core into another folder."""

from __future__ import annotations

import multiprocessing
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from pathlib import Path

from drafting.drawing.output import FormatName
from drafting.export import FORMATS
from service.batching.hands import lost
from service.batching.task import Tools
from service.drafts import encoded, worked
from service.problems import ProblemError
from service.reading import decode


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a file of the folder.

    Attributes:
        order: The file.
        verdict: Of the pattern; empty where there is none.
        files: What was written for it.
        problem: Why nothing was.
    """

    order: Path
    verdict: str = ""
    files: tuple[Path, ...] = ()
    problem: ProblemError | None = None


def orders_in(folder: Path) -> list[Path]:
    """The orders of a folder by name. Raises OSError where there are none."""
    found = sorted(path for path in folder.iterdir() if path.suffix == ".json")
    if not found:
        raise FileNotFoundError(f"{folder} holds no order: a file whose name ends in .json")
    return found


def draft_all(
    orders: Sequence[Path], out: Path, formats: Sequence[FormatName], tools: Tools, workers: int
) -> Iterator[Outcome]:
    """Each order's outcome as it is ready; files are named after their orders.

    Args:
        orders: Files.
        out: Folder for what is written; made where it is not there.
        formats: What to write of each.
        tools: Chapters and limits.
        workers: How many at the same time; 0 for one a core.
    """
    out.mkdir(parents=True, exist_ok=True)
    spawn = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(workers or None, mp_context=spawn) as pool:
        doing = {pool.submit(draft_file, path, out, formats, tools): path for path in orders}
        for done in as_completed(doing):
            try:
                yield done.result()
            except BrokenProcessPool:
                yield Outcome(doing[done], problem=lost())


def draft_file(path: Path, out: Path, formats: Sequence[FormatName], tools: Tools) -> Outcome:
    """Draft an order and write it; all of its files are made before any is written."""
    try:
        order = tools.form.read(decode(path.read_bytes(), tools.json_depth))
        done = worked(order, tools.form)
        made = {name: encoded(done, order, tools.form, FORMATS[name]).body for name in formats}
    except ProblemError as problem:
        return Outcome(path, problem=problem)
    files = tuple(out / f"{path.stem}.{FORMATS[name].extension}" for name in made)
    for file, body in zip(files, made.values(), strict=True):
        file.write_bytes(body)
    return Outcome(path, done.verdict, files)
