"""The workroom's command line: draft orders without a server, or start the server."""

from __future__ import annotations

import argparse
import os
import secrets
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from drafting.drawing import PAPERS
from drafting.export import FORMATS
from drafting.garments import GARMENTS
from service.batching.task import Tools
from service.drafts import encoded, worked
from service.folder import Outcome, draft_all, orders_in
from service.keys import digest
from service.links import KEY_BYTES
from service.measuring import form
from service.openapi import document_bytes
from service.problems import PROBLEMS, ProblemError
from service.reading import decode
from service.schemas import OrderForm
from service.settings import Settings, SettingsError, from_environment
from service.tables import checks_table, findings_list, seams_table
from service.waste import built_to_stay

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from drafting.workroom import Work
    from service.schemas import Order

    Command = Callable[[argparse.Namespace, Settings], int]

DONE, BAD_USE, REFUSED, UNSOUND = 0, 2, 3, 4
"""Exit codes: all well; files or settings cannot be used; the order is refused; unsound pattern."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command and give its exit code."""
    asked = _parser().parse_args(arguments)
    try:
        code: int = asked.command(asked, from_environment(os.environ))
    except ProblemError as problem:
        return _refuse(problem)
    except (OSError, SettingsError) as error:
        print(error, file=sys.stderr)
        return BAD_USE
    return code


ABOUT = """\
Draft made-to-measure sewing patterns.

A first pattern, of an invented person:
  python -m service draft openapi/examples/trousers.json -o out
A customer of your own: print a form, measure, write the measures into a copy of that
order, and draft it:
  python -m service form trousers -o form.pdf
  python -m service draft customer.json -o out -f pdf
A whole day's orders, a file each:
  python -m service draft-folder orders -o patterns -f pdf -f svg
The same over HTTP, with a page to try it on:
  python -m service serve
"""

CODES = """\
Exit codes: 0 done, 2 a file or setting cannot be used, 3 an order is refused, 4 a pattern is
unsound. Limits and keys are set by TAPELINE_... variables; the README lists them.
"""

ORDER = """\
An order is a JSON file: unit, figure, measurements (or a size of a table), garment with its
options, finish (seam allowances), output (paper, language). A refusal names the field and says
what to write instead; nothing is written then.
"""


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m service",
        description=ABOUT,
        epilog=CODES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    def command(name: str, does: str, work: Command, about: str = "") -> argparse.ArgumentParser:
        made = commands.add_parser(name, help=does, description=f"{does.capitalize()}. {about}")
        made.set_defaults(command=work)
        return made

    draft = command("draft", "draft an order into files, without a server", _draft, ORDER)
    draft.add_argument("order", type=Path, metavar="ORDER.json", help="the order")
    _where_to(draft)
    folder = command("draft-folder", "draft every order of a folder", _draft_folder, ORDER)
    folder.add_argument("folder", type=Path, metavar="FOLDER", help="every .json in it is an order")
    _where_to(folder)
    form = command("form", "make a blank form to write measures on, as a PDF", _form)
    form.add_argument(
        "garment", nargs="?", choices=tuple(GARMENTS), help="what it is for; else all"
    )
    form.add_argument("-o", "--out", type=Path, default=Path("form.pdf"), help="the file")
    form.add_argument("--paper", choices=tuple(PAPERS), default="a4", help="paper to print on")
    serve = command("serve", "start the server", _serve)
    serve.add_argument("--host", help="address to listen on (TAPELINE_HOST)")
    serve.add_argument("--port", type=int, help="port to listen on (TAPELINE_PORT)")
    command("key", "make a key for links, or for a client and its digest", _key)
    openapi = command("openapi", "write the API reference as OpenAPI", _openapi)
    openapi.add_argument("-o", "--out", type=Path, help="file; standard output where none is given")
    return parser


def _where_to(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("-o", "--out", type=Path, default=Path("out"), help="folder for the files")
    parser.add_argument(
        "-f",
        "--format",
        action="append",
        choices=tuple(FORMATS),
        help="format to write, may be given again; all where none is given",
    )


def _refuse(problem: ProblemError) -> int:
    """Print a problem as a person reads it."""
    print(_told(problem), file=sys.stderr)
    return UNSOUND if problem.code == "unsound-pattern" else REFUSED


def _told(problem: ProblemError) -> str:
    """A problem as a person reads it: what it is, and each field with what to change."""
    troubles = [(t.pointer, t.detail) for t in problem.troubles] or [("", problem.detail)]
    lines = (f"  {at.strip('/').replace('/', '.') or '-'}: {detail}" for at, detail in troubles)
    return "\n".join((f"{PROBLEMS[problem.code].title}.", *lines))


def _draft(asked: argparse.Namespace, settings: Settings) -> int:
    form = OrderForm(GARMENTS)
    order = form.read(decode(asked.order.read_bytes(), settings.max_json_depth))
    done = worked(order, form)
    print(f"{done.pattern.pattern.title}: {done.verdict.replace('_', ' ')}\n")
    print(seams_table(done), checks_table(done), findings_list(done), sep="\n")
    for path in _write(done, order, form, asked):
        print(path)
    return DONE


def _write(done: Work, order: Order, form: OrderForm, asked: argparse.Namespace) -> list[Path]:
    """Write the formats asked for, named after the order; all of them are made before any is."""
    formats = [each for name, each in FORMATS.items() if name in (asked.format or FORMATS)]
    made = [(each.extension, encoded(done, order, form, each).body) for each in formats]
    asked.out.mkdir(parents=True, exist_ok=True)
    written = [asked.out / f"{asked.order.stem}.{extension}" for extension, _ in made]
    for path, (_, body) in zip(written, made, strict=True):
        path.write_bytes(body)
    return written


def _draft_folder(asked: argparse.Namespace, settings: Settings) -> int:
    """Draft every order of a folder; the others go on where one is refused."""
    from rich.console import Console  # noqa: PLC0415 - only here is progress shown
    from rich.progress import track  # noqa: PLC0415 - as above

    orders = orders_in(asked.folder)
    tools = Tools.of(GARMENTS, settings.max_json_depth, settings.order_seconds)
    formats = tuple(asked.format or FORMATS)
    done = draft_all(orders, asked.out, formats, tools, settings.batch_workers)
    shown = track(done, "Drafting", len(orders), console=Console(stderr=True), transient=True)
    outcomes = sorted(shown, key=lambda outcome: outcome.order)
    for outcome in outcomes:
        _tell(outcome)
    failed = [outcome for outcome in outcomes if outcome.problem]
    print(f"{len(orders)} orders: {len(orders) - len(failed)} drafted, {len(failed)} refused.")
    return REFUSED if failed else DONE


def _tell(outcome: Outcome) -> None:
    if outcome.problem:
        print(f"{outcome.order.name}: {_told(outcome.problem)}", file=sys.stderr)
    else:
        files = ", ".join(file.name for file in outcome.files)
        print(f"{outcome.order.name}: {outcome.verdict.replace('_', ' ')}: {files}")


def _form(asked: argparse.Namespace, _: Settings) -> int:
    asked.out.write_bytes(form(GARMENTS.get(asked.garment), asked.paper))
    print(asked.out)
    return DONE


def _serve(asked: argparse.Namespace, settings: Settings) -> int:
    """Start the server; ends with it."""
    with built_to_stay():
        from service.app import create_app  # noqa: PLC0415 - drafting without a server needs none
        from service.logs import set_up  # noqa: PLC0415 - as above
        from service.serving import serve  # noqa: PLC0415 - as above

        set_up()
        host, port = asked.host or settings.host, asked.port or settings.port
        shown = f"[{host}]" if ":" in host else host
        print(f"Tapeline: http://{shown}:{port}/", flush=True)
        app = create_app(settings)
    serve(app, host, port)
    return DONE


def _key(_: argparse.Namespace, __: Settings) -> int:
    made = secrets.token_urlsafe(KEY_BYTES)
    print(f"key:    {made}\ndigest: {digest(made)}")
    return DONE


def _openapi(asked: argparse.Namespace, _: Settings) -> int:
    from service.app import create_app  # noqa: PLC0415 - drafting needs no web framework

    document = document_bytes(create_app(Settings()).openapi())
    if asked.out:
        asked.out.write_bytes(document)
    else:
        sys.stdout.buffer.write(document)
    return DONE
