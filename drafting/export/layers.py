"""Layers of a PDF that a reader can show and hide (optional content, ISO 32000-1, 8.11)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFStream, PDFString

if TYPE_CHECKING:
    from collections.abc import Mapping

    from reportlab.pdfgen.canvas import Canvas


def put_on_layers(canvas: Canvas, forms: Mapping[str, str]) -> None:
    """Put forms that were drawn on the canvas on layers of their own, all shown at first.

    Args:
        canvas: The canvas; its forms are finished.
        forms: Name of each form and the name that its layer is shown by.
    """
    document: Any = canvas._doc  # type: ignore[attr-defined]  # noqa: SLF001 - no other way in
    layers = [_layer(document, form, title) for form, title in forms.items()]
    if layers:
        shown = PDFDictionary({"Order": PDFArray(layers), "ON": PDFArray(layers)})
        catalog = document.Catalog
        catalog.__NoDefault__ = [*catalog.__NoDefault__, "OCProperties"]
        catalog.OCProperties = PDFDictionary({"OCGs": PDFArray(layers), "D": shown})


def _layer(document: Any, form: str, title: str) -> Any:
    layer = PDFDictionary({"Type": PDFName("OCG"), "Name": PDFString(title)})
    reference = document.Reference(layer)
    drawn = document.idToObject[document.getXObjectName(form)]
    drawn.Contents = PDFStream(PDFDictionary({"OC": reference}), drawn.stream)
    return reference
