"""What checks are asked about: ``axis y``, ``joint z-motor-to-bracket`` …, always a word and an identifier."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from scantling.build.reader import Reader
from scantling.model.axis import BeltAxis, ScrewAxis
from scantling.model.design import Design


def ident(subject: str) -> str:
    """Return the identifier of a subject.

    >>> ident("axis y"), ident("y")
    ('y', 'y')
    """
    return subject.rpartition(" ")[2]


def named(word: str, identifiers: Iterable[str]) -> tuple[str, ...]:
    """Return subjects of one word."""
    return tuple(f"{word} {identifier}" for identifier in identifiers)


def all_of(word: str, section: Callable[[Design], Mapping[str, Any]]) -> Callable[[Design], tuple[str, ...]]:
    """Return the function that lists a section of the design as subjects."""
    return lambda design: named(word, section(design))


def belt_axes(design: Design) -> tuple[str, ...]:
    """Return the axes driven by a belt."""
    return named("axis", (name for name, axis in design.axes.items() if isinstance(axis, BeltAxis)))


def screw_axes(design: Design) -> tuple[str, ...]:
    """Return the axes driven by a screw."""
    return named("axis", (name for name, axis in design.axes.items() if isinstance(axis, ScrewAxis)))


def belt_axis(reader: Reader, subject: str) -> BeltAxis:
    """Return the axis of a subject that ``belt_axes`` lists."""
    axis = reader.design.axes[ident(subject)]
    assert isinstance(axis, BeltAxis)
    return axis


def screw_axis(reader: Reader, subject: str) -> ScrewAxis:
    """Return the axis of a subject that ``screw_axes`` lists."""
    axis = reader.design.axes[ident(subject)]
    assert isinstance(axis, ScrewAxis)
    return axis
