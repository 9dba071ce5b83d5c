"""What looking at one file gives back, and how its figures are written."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.quantities import show_number
from scantling.shapes.edges import Point

MOST_POINTS = 6
SAME_MM = 0.0005


@dataclass(frozen=True)
class Feature:
    """One thing found, for people.

    what : in a maker's word    where : from the lower left corner of the box around the part
    fit : how far the worst point lies off, "" where that cannot be
    """

    what: str
    size: str
    where: str = ""
    fit: str = ""


@dataclass(frozen=True)
class Look:
    """What is in one file.

    entries : YAML to paste into a design; the words in capitals are the maker's to give
    """

    file: str
    kind: str
    size: str
    features: tuple[Feature, ...]
    notes: tuple[str, ...] = ()
    entries: str = ""


def mm(value_mm: float) -> str:
    """Return a length to a hundredth, without its unit."""
    return show_number(round(value_mm, 2) + 0.0, 2)


def point_text(point: Sequence[float]) -> str:
    """Return ``84, 60``."""
    return ", ".join(mm(value) for value in point)


def points_text(points: Sequence[Point]) -> str:
    """Return the first points, and how many more there are."""
    shown = "; ".join(point_text(point) for point in points[:MOST_POINTS])
    return f"{shown} and {len(points) - MOST_POINTS} more" if len(points) > MOST_POINTS else shown


def off_text(residual_mm: float) -> str:
    """Return how far the worst point lies off."""
    return "exact" if residual_mm < SAME_MM else f"{show_number(residual_mm, 3)} mm off at most"


def turned(turn_deg: float) -> str:
    """Return the turn in words; nothing for none."""
    return f", turned {show_number(turn_deg, 2)} deg" if abs(turn_deg) > 0.005 else ""
