"""Limits and usual values of wires, ports, supplies and heat."""

from __future__ import annotations

from functools import cache

from scantling.quantities import Figure
from scantling.tables.amounts import amount_of


@cache
def electric_limit(name: str) -> Figure:
    """Return a limit or usual value with its band, as typical; ``LookUpError`` for a name that is not in the table.

    >>> electric_limit("creep margin").low
    15.0
    """
    return amount_of("electric_limits", name, "limit of wires and heat")
