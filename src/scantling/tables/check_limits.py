"""Numbers by which checks judge, where neither the design nor another table gives the limit."""

from __future__ import annotations

from functools import cache

from scantling.quantities import Figure
from scantling.tables.amounts import amount_of


@cache
def check_limit(name: str) -> Figure:
    """Return a limit with its band, as typical; ``LookUpError`` for a name that is not in the table.

    >>> check_limit("softening of joints").high
    0.6
    """
    return amount_of("check_limits", name, "limit of checks")


def check_number(name: str) -> float:
    """Return a limit that has no band.

    >>> check_number("teeth in mesh")
    6.0
    """
    return check_limit(name).value
