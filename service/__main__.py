"""The workroom's command line: draft an order without a server, or start the server.

python -m service draft ORDER.json -o DIR
python -m service serve
python -m service openapi
python -m service key
"""

from __future__ import annotations

import argparse
import gc
import os
import secrets
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from drafting.export import FORMATS
from drafting.garments import GARMENTS
from service.drafts import encoded, worked
from service.keys import digest
from service.links import KEY_BYTES
from service.openapi import document_bytes
from service.problems import PROBLEMS, ProblemError
from service.reading import decode
from service.schemas import OrderForm
from service.settings import Settings, SettingsError, from_environment
from service.tables import checks_table, findings_list, seams_table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from drafting.workroom import Work
    from service.schemas import Order

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


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m service",
        description="Draft made-to-measure sewing patterns.",
        epilog="Exit codes: 0 done, 2 a file or setting cannot be used, 3 the order is refused, "
        "4 the pattern is unsound.",
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    draft = commands.add_parser("draft", help="draft an order into files, without a server")
    draft.add_argument("order", type=Path, metavar="ORDER.json", help="the order")
    draft.add_argument("-o", "--out", type=Path, default=Path("out"), help="folder for the files")
    draft.add_argument(
        "-f",
        "--format",
        action="append",
        choices=tuple(FORMATS),
        help="format to write, may be given again; all where none is given",
    )
    draft.set_defaults(command=_draft)
    serve = commands.add_parser("serve", help="start the server")
    serve.add_argument("--host", help="address to listen on (TAPELINE_HOST)")
    serve.add_argument("--port", type=int, help="port to listen on (TAPELINE_PORT)")
    serve.set_defaults(command=_serve)
    key = commands.add_parser("key", help="make a key for links, or for a client and its digest")
    key.set_defaults(command=_key)
    openapi = commands.add_parser("openapi", help="write the API reference as OpenAPI")
    openapi.add_argument("-o", "--out", type=Path, help="file; standard output where none is given")
    openapi.set_defaults(command=_openapi)
    return parser


def _refuse(problem: ProblemError) -> int:
    """Print a problem as a person reads it."""
    print(f"{PROBLEMS[problem.code].title}.", file=sys.stderr)
    told = [(t.pointer, t.detail) for t in problem.troubles] or [("", problem.detail)]
    for pointer, detail in told:
        print(f"  {pointer.strip('/').replace('/', '.') or '-'}: {detail}", file=sys.stderr)
    return UNSOUND if problem.code == "unsound-pattern" else REFUSED


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


def _serve(asked: argparse.Namespace, settings: Settings) -> int:
    """Start the server; ends with it.

    What the house is built of is never thrown away, so no search for waste looks through it.
    """
    gc.disable()
    from service.app import create_app  # noqa: PLC0415 - drafting without a server needs none
    from service.logs import set_up  # noqa: PLC0415 - as above
    from service.serving import serve  # noqa: PLC0415 - as above

    set_up()
    host, port = asked.host or settings.host, asked.port or settings.port
    shown = f"[{host}]" if ":" in host else host
    print(f"Tapeline: http://{shown}:{port}/", flush=True)
    app = create_app(settings)
    gc.freeze()
    gc.enable()
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


if __name__ == "__main__":
    sys.exit(main())
