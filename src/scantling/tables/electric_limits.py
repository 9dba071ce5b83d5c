"""Limits and usual values of wires, ports, supplies and heat."""

from __future__ import annotations

import re
from functools import cache

from scantling.errors import BrokenPromiseError
from scantling.quantities import Figure, Grade
from scantling.tables.csv_table import pick, rows

_AMOUNT = re.compile(r"(?P<value>[0-9.]+)(?: \((?P<low>[0-9.]+?)\.\.(?P<high>[0-9.]+)\))?")


@cache
def electric_limit(name: str) -> Figure:
    """Return a limit or usual value with its band, as typical; ``LookUpError`` for a name that is not in the table.

    >>> electric_limit("creep margin").low
    15.0
    """
    row = pick("limit of wires and heat", name, {row["limit"]: row for row in rows("electric_limits")})
    found = _AMOUNT.fullmatch(row["amount"])
    if found is None:
        raise BrokenPromiseError(f"the table has no amount in {dict(row)}")
    value = float(found["value"])
    return Figure(value, float(found["low"] or value), float(found["high"] or value), Grade.TYPICAL, row["source"])
