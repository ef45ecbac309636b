"""Draft a pattern for every customer of a CSV file, and go on where it stopped last time.

    pip install httpx rich
    python batch.py customers.csv --out patterns --format pdf

The columns of the CSV are `id`, measures in cm by their names, and options of the garment; an
empty cell says nothing. Orders go out in pages; answers are written as they come. `done.jsonl` in
the output folder remembers what is drafted: run the script again and only the rest is sent. What
failed for want of a worker is tried again; what was refused is listed in `problems.jsonl`.
"""

import argparse
import base64
import csv
import json
import re
import sys
import time
from pathlib import Path

import httpx
from rich.progress import Progress

ENDINGS = {"json": "json", "svg": "svg", "pdf": "pdf"}
PATIENCE = httpx.Timeout(10, read=120)


def main() -> int:
    asked = arguments()
    asked.out.mkdir(parents=True, exist_ok=True)
    customers = read_customers(asked.customers, asked.garment)
    done = remembered(asked.out / "done.jsonl")
    refused = {}
    left = [order for order in customers if order["id"] not in done]
    print(f"{len(customers)} customers, {len(customers) - len(left)} drafted before")
    with Progress() as progress, httpx.Client(base_url=asked.address, timeout=PATIENCE) as service:
        bar = progress.add_task("drafting", total=len(left))
        for round_ in range(asked.rounds):
            time.sleep(round_ * 2)  # give a service that lost its workers some time
            left = one_round(service, left, asked, refused, lambda: progress.advance(bar))
            if not left:
                break
    write_problems(asked.out / "problems.jsonl", refused)
    print(f"{len(refused)} refused, {len(left)} not drafted")
    return 1 if refused or left else 0


def arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("customers", type=Path, help="CSV file")
    parser.add_argument("--address", default="http://127.0.0.1:8000")
    parser.add_argument("--garment", default="trousers", help="kind of the garment")
    parser.add_argument("--format", default="pdf", choices=ENDINGS)
    parser.add_argument("--out", type=Path, default=Path("patterns"))
    parser.add_argument("--rounds", type=int, default=4, help="how often what failed is tried")
    parser.add_argument("--page", type=int, default=500, help="orders in a request")
    return parser.parse_args()


def read_customers(path: Path, kind: str) -> list[dict]:
    """An order for each row."""
    with path.open(newline="", encoding="utf-8") as file:
        return [order_of(row, kind) for row in csv.DictReader(file)]


def order_of(row: dict[str, str], kind: str) -> dict:
    given = {name: float(text) for name, text in row.items() if name != "id" and text}
    options = {name: given.pop(name) for name in ("hem_girth", "knee_girth") if name in given}
    return {
        "id": row["id"],
        "reference": row["id"],
        "measurements": given,
        "garment": {"kind": kind, **options},
    }


def remembered(path: Path) -> set[str]:
    """Ids of the orders that earlier runs have written."""
    if not path.exists():
        return set()
    return {json.loads(line)["id"] for line in path.read_text("utf-8").splitlines()}


def one_round(service, orders, asked, refused, advance) -> list[dict]:
    """Send all orders, page by page; gives back what is to be tried again."""
    again = []
    for start in range(0, len(orders), asked.page):
        again += one_page(service, orders[start : start + asked.page], asked, refused, advance)
    return again


def one_page(service, orders, asked, refused, advance) -> list[dict]:
    waiting = {order["id"]: order for order in orders}
    again = {}
    body = "".join(json.dumps(order) + "\n" for order in orders)
    try:
        for answer in answers(service, body, asked.format):
            order = waiting.pop(answer["id"], None)
            if answer["type"] == "result":
                write_result(asked, answer)
                advance()
            elif answer["status"] >= 500:
                again[answer["id"]] = order
            else:
                refused[answer["id"]] = answer["answer"]
                advance()
    except (httpx.TransportError, CutOff) as error:
        print(f"the answer was cut: {error}", file=sys.stderr)
    return [order for order in (*again.values(), *waiting.values()) if order]


class CutOff(Exception):
    """The answer has no end line."""


def answers(service: httpx.Client, body: str, format_: str):
    """Result and problem lines as they come. Raises CutOff where the end is missing."""
    ended = False
    sent = {"Content-Type": "application/x-ndjson"}
    query = {"format": format_}
    with service.stream("POST", "/v1/batches", content=body, params=query, headers=sent) as answer:
        if answer.status_code != 200:
            answer.read()
            raise CutOff(answer.text)
        for line in answer.iter_lines():
            told = json.loads(line)
            ended = told["type"] == "end"
            if told["type"] in ("result", "problem"):
                yield told
    if not ended:
        raise CutOff("no end line")


def write_result(asked: argparse.Namespace, answer: dict) -> None:
    """Write a pattern, then remember that it is written."""
    found = answer["answer"]
    if asked.format == "json":
        content = json.dumps(found).encode()
    elif "text" in found:
        content = found["text"].encode()
    else:
        content = base64.b64decode(found["base64"])
    name = re.sub(r"[^\w.-]", "_", answer["id"]) + "." + ENDINGS[asked.format]
    (asked.out / name).write_bytes(content)
    with (asked.out / "done.jsonl").open("a", encoding="utf-8") as done:
        told = {"id": answer["id"], "file": name, "verdict": answer["verdict"]}
        done.write(json.dumps(told) + "\n")


def write_problems(path: Path, refused: dict[str, dict]) -> None:
    lines = (json.dumps({"id": id_, **problem}) + "\n" for id_, problem in refused.items())
    path.write_text("".join(lines), "utf-8")


if __name__ == "__main__":
    sys.exit(main())
