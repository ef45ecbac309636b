"""One order, one way through: body and options in, a finished and checked pattern out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from drafting.body import Body
from drafting.pattern import Finish, FinishedPattern
from drafting.trace import Step

Verdict = Literal["sound", "sound_with_remarks", "unsound"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """What leaves the workroom.

    Attributes:
        body: The measures used, each with its origin.
        spec: The garment's options, all resolved.
        finish: Purpose and allowances.
        steps: The construction in the order of the pencil.
        pattern: The finished pattern with its checks and findings.
        verdict: Whether it can be cut: `must` checks decide, remarks are told.
    """

    body: Body
    spec: Any
    finish: Finish
    steps: tuple[Step, ...]
    pattern: FinishedPattern
    verdict: Verdict
