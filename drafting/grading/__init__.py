"""A garment over many sizes, each redrafted by the same rules: measures, grade report, nest, ZIP.

Stands above the workroom in the import order, beside nothing else; `service` calls it. Lengths in
cm inside, in mm in documents.
"""

from drafting.grading.archive import range_archive
from drafting.grading.documents import range_document
from drafting.grading.grade import grade_report
from drafting.grading.measures import MeasureRow, MeasureTable, measure_table
from drafting.grading.nested import nested_dxf, nested_pdf, nested_svg
from drafting.grading.report import GradeFinding, GradeReport, PointMoves
from drafting.grading.sizes import SizeDrafted, SizeRange, draft_size, size_range

__all__ = [
    "GradeFinding",
    "GradeReport",
    "MeasureRow",
    "MeasureTable",
    "PointMoves",
    "SizeDrafted",
    "SizeRange",
    "draft_size",
    "grade_report",
    "measure_table",
    "nested_dxf",
    "nested_pdf",
    "nested_svg",
    "range_archive",
    "range_document",
    "size_range",
]
