"""What a derived value needs and the files do not say.

A machine that is bad is never an exception; a machine that is not described is one inside this room and in the checks,
where it ends as "not looked at" with the facts that would unlock it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from scantling.errors import ScantlingError

S = TypeVar("S")
T = TypeVar("T")


class NotDescribedError(ScantlingError):
    """A derived value cannot be had; ``needs`` names the facts that would give it, as paths in the files."""

    def __init__(self, needs: tuple[str, ...]) -> None:
        """Keep the facts, each once, in the order met."""
        self.needs = tuple(dict.fromkeys(needs))
        super().__init__("not described: " + ", ".join(self.needs))


class MissingFigureError(NotDescribedError):
    """The chosen part lacks a figure that other options of its place have."""


def need(value: T | None, *facts: str) -> T:
    """Return ``value``; raise ``NotDescribedError`` with the facts that would give it where it is None."""
    if value is None:
        raise NotDescribedError(facts)
    return value


def each(function: Callable[[S], T], items: Iterable[S]) -> list[T]:
    """Return ``function`` of every item; where some are not described, raise one error that names all they need."""
    values: list[T] = []
    needs: list[str] = []
    for item in items:
        try:
            values.append(function(item))
        except NotDescribedError as error:
            needs += error.needs
    if needs:
        raise NotDescribedError(tuple(needs))
    return values


def gather(*calls: Callable[[], T]) -> list[T]:
    """Return what all the calls return; where some are not described, raise one error that names all they need."""
    return each(lambda call: call(), calls)
