"""What has once been worked out of a frozen value, kept with it and gone with it.

A line is measured dozens of times on its way through the house, and never changes.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any, Protocol, TypeVar, TypeVarTuple


class Memory(dict[Any, Any]):
    """Answers by the question's name. A copy or a pickle of it is empty."""

    def __reduce__(self) -> tuple[type[Memory], tuple[()]]:
        return Memory, ()


class Remembers(Protocol):
    """A value that keeps what has been worked out of it."""

    @property
    def memory(self) -> Memory:
        """Its memory, no part of what it is: equal values may remember different things."""


T = TypeVar("T", bound=Remembers)
Ts = TypeVarTuple("Ts")
R = TypeVar("R")


def remembered(question: Callable[[T, *Ts], R]) -> Callable[[T, *Ts], R]:
    """The same function of a frozen value, worked out once for each value and each way of asking.

    Whatever is asked beside the value must be hashable and given by position; no answer is None.
    """

    @wraps(question)
    def recalled(value: T, *asked: *Ts) -> R:
        key: Any = (question, *asked) if asked else question
        memory = value.memory
        answer: R | None = memory.get(key)
        if answer is None:
            answer = memory[key] = question(value, *asked)
        return answer

    return recalled
