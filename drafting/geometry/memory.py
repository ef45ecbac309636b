"""What has once been worked out of a frozen value, kept with it and gone with it.

A line is measured dozens of times on its way through the house, and never changes.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any, Concatenate, ParamSpec, Protocol, TypeVar


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
P = ParamSpec("P")
R = TypeVar("R")


def remembered(question: Callable[Concatenate[T, P], R]) -> Callable[Concatenate[T, P], R]:
    """The same function of a frozen value, worked out once for each value and each way of asking.

    Whatever is asked beside the value must be hashable and given by position.
    """

    @wraps(question)
    def recalled(value: T, /, *args: P.args, **kwargs: P.kwargs) -> R:
        key = (question, args) if args else question
        memory = value.memory
        if key not in memory:
            memory[key] = question(value, *args, **kwargs)
        answer: R = memory[key]
        return answer

    return recalled
