"""Measured figures of the lot in hand: a part as it really is, so that whatever reads the part reads the real one."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from scantling.model.features import feature_name, figure_fields
from scantling.model.part import Part
from scantling.model.workshop import Actual
from scantling.quantities import Figure, Grade, dimension_of, parse_figure


def as_measured(part: Part, actuals: Iterable[Actual]) -> Part:
    """Return ``part`` with what was measured on the lot in hand; the first of several readings of one figure counts.

    A figure that was measured needs no class of fit and no usual value any more. Raises ``QuantityError`` where a
    reading is not in the unit of its figure, which reading of files has refused before.
    """
    fields = figure_fields(type(part))
    changed: dict[str, Any] = {}
    sizes = dict(part.sizes)
    for actual in reversed([one for one in actuals if one.part == part.id]):
        name = feature_name(type(part), actual.size)
        if name in fields:
            changed[fields[name]] = measured(actual, dimension_of(fields[name]) or "length")
        else:
            sizes[name] = measured(actual, "length")
    if sizes != part.sizes:
        changed["sizes"] = sizes
    return part.model_copy(update=changed) if changed else part


def measured(actual: Actual, dimension: str) -> Figure:
    """Return the figure of a reading; of readings of several pieces their mean, between the least and the greatest."""
    read = [parse_figure(text, dimension) for text in (actual.samples or (actual.value or "",))]
    mean = sum(figure.value for figure in read) / len(read)
    low, high = min(figure.low for figure in read), max(figure.high for figure in read)
    return Figure(mean, low, high, Grade.MEASURED, "measured")
