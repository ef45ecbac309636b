"""Draft a garment in a range of sizes: a file for each size, the nest, and the tables.

    pip install httpx rich
    python size_range.py --table women --from 84-regular --to 100-regular --out range
    python size_range.py --own sizes.csv --out range

An own CSV has the columns `name` and measures in cm by their names. Written are one file for each
size in the format asked for, `nest.pdf` with all sizes over each other, `measures.csv`,
`grade.json`, and `manifest.json` with the digests. A file that is there with the right digest is
kept, so a run that was cut goes on where it stopped.
"""

import argparse
import csv
import hashlib
import io
import json
import sys
import time
import zipfile
from pathlib import Path

import httpx
from rich.console import Console
from rich.progress import track
from rich.table import Table

MOST_TRIES = 5


def main() -> int:
    asked = arguments()
    asked.out.mkdir(parents=True, exist_ok=True)
    document = {"garment": {"kind": asked.garment}, "sizes": sizes(asked), "each": asked.each,
                "output": {"paper": asked.paper}}  # fmt: skip
    with httpx.Client(base_url=asked.address, timeout=httpx.Timeout(10, read=120)) as service:
        packed = ask(service, document, "zip")
        manifest = unpack(packed, asked.out)
        (asked.out / "nest.pdf").write_bytes(ask(service, document, "pdf"))
    show(asked.out, manifest)
    return 0 if all("file" in size for size in manifest["sizes"]) else 1


def arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--address", default="http://127.0.0.1:8000")
    parser.add_argument("--garment", default="trousers")
    parser.add_argument("--table", default="women")
    parser.add_argument("--from", dest="first", default="84-regular")
    parser.add_argument("--to", dest="last", default="100-regular")
    parser.add_argument("--own", type=Path, help="CSV of own sizes, in place of a table")
    parser.add_argument("--each", default="pdf", help="format of each size's file")
    parser.add_argument("--paper", default="a0")
    parser.add_argument("--out", type=Path, default=Path("range"))
    return parser.parse_args()


def sizes(asked: argparse.Namespace) -> dict:
    if asked.own is None:
        return {"table": asked.table, "from": asked.first, "to": asked.last}
    with asked.own.open(newline="", encoding="utf-8") as file:
        return {"own": [own_size(row) for row in csv.DictReader(file)]}


def own_size(row: dict[str, str]) -> dict:
    measures = {name: float(text) for name, text in row.items() if name != "name" and text}
    return {"name": row["name"], "measurements": measures}


def ask(service: httpx.Client, document: dict, format_: str) -> bytes:
    """The answer in a format; asked again where the service is busy."""
    for _ in range(MOST_TRIES):
        answer = service.post("/v1/size-ranges", params={"format": format_}, json=document)
        if answer.status_code != 503:
            break
        time.sleep(float(answer.headers.get("Retry-After", 2)))
    if answer.status_code != 200:
        for error in answer.json()["errors"]:
            print(f"{error['pointer']}: {error['detail']}", file=sys.stderr)
        sys.exit(answer.text)
    return answer.content


def unpack(packed: bytes, folder: Path) -> dict:
    """Write the files that are not there yet; each is proven by its digest."""
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        manifest = json.loads(archive.read("manifest.json"))
        for file in track(manifest["files"], "writing"):
            target = folder / file["file"]
            if not target.exists() or digest(target.read_bytes()) != file["sha256"]:
                target.write_bytes(archive.read(file["file"]))
        (folder / "manifest.json").write_bytes(archive.read("manifest.json"))
    return manifest


def digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def show(folder: Path, manifest: dict) -> None:
    """Print the finished measures, the sizes' verdicts, and where the steps are not even."""
    console = Console()
    heading, *rows = csv.reader(io.StringIO((folder / "measures.csv").read_text("utf-8")))
    table = Table(*heading[1:], title="Finished measures")
    for row in rows:
        if row[0] == "finished":
            table.add_row(*row[1:])
    console.print(table)
    for size in manifest["sizes"]:
        console.print(f"{size['name']}: {size['verdict']}")
    for finding in json.loads((folder / "grade.json").read_text("utf-8"))["findings"]:
        console.print(f"- {finding['message']}")


if __name__ == "__main__":
    sys.exit(main())
