"""Pictures of a draft as SVG: one step, or the finished draft with all its construction lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from drafting.errors import OutputError
from drafting.export.svg import render
from drafting.teaching.frames import finished, frame

if TYPE_CHECKING:
    from drafting.teaching.taught import TaughtDraft

PREFIX = "draft"
"""Every id starts with it."""


def write(draft: TaughtDraft, step: int | None = None) -> bytes:
    """The picture of a step, or of the finished draft where none is named, in UTF-8.

    Raises:
        OutputError: There is no step of that number.
    """
    if step is None:
        return render(finished(draft), PREFIX)
    last = len(draft.steps)
    if not 1 <= step <= last:
        raise OutputError(
            f"There is no step {step}: the draft has steps 1 to {last}.",
            where="step",
            received=step,
            allowed=(1, last),
        )
    return render(frame(draft, step), PREFIX)
