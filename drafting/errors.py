"""Why an order cannot be drafted. No HTTP word in here; the service maps these to answers.

DraftingError
├── MeasurementError        a measure is missing, impossible, or contradicts another
│   └── MissingMeasureError a measure that the garment needs was not given
├── SpecError               an option is unknown, out of range, or excludes another
│   └── ClashError          two options exclude each other
├── ConstructionError       a step of the construction has no answer for this body
├── LabelError              a text that no sheet can carry
└── OutputError             what was asked for on paper cannot be made (paper, pages, scale)
"""

from __future__ import annotations


class DraftingError(Exception):
    """The order cannot be drafted.

    Attributes:
        code: Stable snake_case name of the trouble.
        where: The measure, option or step at fault, as a dotted path or the step's name.
        message: What is wrong and what to change, one or two sentences.
        received: The value at fault (cm for lengths), where there is one.
        allowed: Lowest and highest value that would do, or the names that would do.
        also: Further troubles of the same order, so that a client can mend all at once.
    """

    code = "cannot_draft"

    def __init__(
        self,
        message: str,
        *,
        where: str = "",
        code: str | None = None,
        received: object = None,
        allowed: object = None,
        also: tuple[DraftingError, ...] = (),
    ) -> None:
        super().__init__(message)
        self.message = message
        self.where = where
        self.code = code or type(self).code
        self.received = received
        self.allowed = allowed
        self.also = also


class MeasurementError(DraftingError):
    """A measure is impossible or contradicts another; `where` names it."""

    code = "impossible_measure"


class MissingMeasureError(MeasurementError):
    """A measure that the garment needs was not given; `where` names it."""

    code = "missing_measure"


class SpecError(DraftingError):
    """An option is out of range or excludes another; `where` names the option."""

    code = "impossible_option"


class ClashError(SpecError):
    """Two options exclude each other; `where` names the first.

    Attributes:
        pair: Both options, each with the value at fault (cm for lengths).
        why: One sentence of the trade.
    """

    def __init__(
        self,
        message: str,
        *,
        where: str = "",
        pair: tuple[tuple[str, object], ...] = (),
        why: str = "",
    ) -> None:
        super().__init__(message, where=where, received=pair[0][1] if pair else None)
        self.pair = pair
        self.why = why


class ConstructionError(DraftingError):
    """A step has no answer for this body; `where` is the step's name."""

    code = "construction_failed"


class LabelError(DraftingError):
    """A text that no sheet can carry; `where` names the field."""

    code = "bad_text"


class OutputError(DraftingError):
    """What was asked for on paper cannot be made; `where` names the output option."""

    code = "cannot_print"
