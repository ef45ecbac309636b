"""The form of a measurement check: measures alone, vetted and completed without drafting."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import BaseModel, ConfigDict, Field

from drafting import DRAFTING_VERSION
from drafting.body import Figure, measurement_check
from drafting.errors import DraftingError
from drafting.export.identity import body_document
from drafting.export.json import finding_document
from drafting.export.language import told_finding
from drafting.language import Language
from service.catalogue_answers import MeasurementCheckAnswer
from service.lengths import Unit
from service.plan import Fields
from service.problems import Trouble
from service.schemas import MEASUREMENTS, Blank
from service.troubles import drafting_problem


class MeasurementCheck(BaseModel):
    """A set of measures to look over."""

    model_config = ConfigDict(extra="forbid")

    unit: Unit = Field("cm", description="Unit of all lengths.")
    figure: Figure = Field("women", description="Whose ranges and statistics hold.")
    measurements: dict[str, Any] = Field(description="Measures of the body by name.")
    accept_unusual: bool = Field(
        default=False, description="Complete even an unlikely set of measures."
    )


def _nothing_more(_: Mapping[str, Any]) -> Iterator[Trouble]:
    return iter(())


BLANK = Blank(MeasurementCheck, Fields({"measurements": MEASUREMENTS}), _nothing_more)


def checked(raw: Any, language: Language = "en") -> MeasurementCheckAnswer:
    """The body of decoded JSON, completed as far as statistics can, and remarks on it.

    Raises:
        ProblemError: invalid-order, with every trouble that was found, or unusual-body.
    """
    filled, unit = BLANK.filled(raw)
    try:
        body, findings = measurement_check(
            filled.measurements, filled.figure, filled.accept_unusual
        )
    except DraftingError as error:
        raise drafting_problem(error, unit, BLANK.is_length(raw), language) from None
    return {
        "drafting_version": DRAFTING_VERSION,
        "unit": "mm",
        "figure": body.figure,
        "body": body_document(body),
        "findings": [
            finding_document(  # type: ignore[misc]
                told_finding(found, language, "in" if unit == "in" else "cm")
            )
            for found in findings
        ],
    }
