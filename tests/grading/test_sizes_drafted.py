"""Every size is drafted for itself, and none is hidden."""

from __future__ import annotations

import csv
import io
import json

import pytest
import tabard

from drafting.body import size_body
from drafting.drawing import Output
from drafting.export import FORMATS
from drafting.grading import measure_table, size_range
from drafting.grading.documents import table_csv, table_document
from drafting.pattern import Finish
from drafting.workroom import work


def test_each_size_is_the_pattern_that_its_body_gets_alone(trousers):
    for name, done in trousers.works[:2]:
        alone = work(
            trousers.garment, size_body("women", name), trousers.spec, Finish(), reference=name
        )
        assert done.pattern == alone.pattern


def test_a_size_that_cannot_be_drafted_stays_in_the_range_and_says_why():
    found = size_range(tabard.GARMENT, tabard.bodies(70, 160, 74), tabard.Tabard(), tabard.FINISH)
    assert found.names == ("70", "160", "74")
    assert [name for name, _ in found.works] == ["70", "74"]
    assert found.sizes[1].refusal.where == "hem corner"
    assert not found.sizes[1].sound
    table = measure_table(found)
    assert all(row.values[1] is None and row.values[0] is not None for row in table.rows)


def test_sizes_of_the_same_name_are_refused():
    with pytest.raises(ValueError, match="own name"):
        size_range(tabard.GARMENT, tabard.bodies(70, 70), tabard.Tabard(), tabard.FINISH)


def test_the_table_tells_what_each_sizes_own_answer_tells(trousers):
    told = table_document(measure_table(trousers))
    rows = {(row["kind"], row["name"]): row["values"] for row in told["rows"]}
    assert told["sizes"] == list(trousers.names)
    for column, (_, done) in enumerate(trousers.works):
        answer = json.loads(FORMATS["json"].write(done, Output()))
        for name, value in answer["finished_measurements"].items():
            assert rows["finished", name][column] == value
        for seam in answer["seams"]:
            for part in (*seam["sides"][0], *seam["sides"][1]):
                label = f"{seam['name']}: {part['piece']} {part['edge']}"
                assert rows["seam", label][column] == part["length"]


def test_the_table_as_csv_reads_back_to_the_same_numbers(trousers):
    table = measure_table(trousers)
    heading, *lines = csv.reader(io.StringIO(table_csv(table), newline=""))
    assert heading == ["kind", "measure", "unit", *trousers.names]
    for line, row in zip(lines, table_document(table)["rows"], strict=True):
        assert line[:3] == [row["kind"], row["name"], row["unit"]]
        assert [float(cell) for cell in line[3:]] == row["values"]


def test_a_size_without_a_value_is_an_empty_field_in_csv():
    found = size_range(tabard.GARMENT, tabard.bodies(70, 160), tabard.Tabard(), tabard.FINISH)
    lines = list(csv.reader(io.StringIO(table_csv(measure_table(found)), newline="")))
    assert all(line[4] == "" and line[3] for line in lines[1:])
