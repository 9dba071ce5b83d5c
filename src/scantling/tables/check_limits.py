"""Numbers by which checks judge, where neither the design nor another table gives the limit."""

from __future__ import annotations

import re
from functools import cache

from scantling.errors import BrokenPromiseError
from scantling.quantities import Figure, Grade
from scantling.tables.csv_table import pick, rows

_AMOUNT = re.compile(r"(?P<value>-?[0-9.]+)(?: \((?P<low>-?[0-9.]+?)\.\.(?P<high>-?[0-9.]+)\))?")


@cache
def check_limit(name: str) -> Figure:
    """Return a limit with its band, as typical; ``LookUpError`` for a name that is not in the table.

    >>> check_limit("softening of joints").high
    0.6
    """
    row = pick("limit of checks", name, {row["limit"]: row for row in rows("check_limits")})
    found = _AMOUNT.fullmatch(row["amount"])
    if found is None:
        raise BrokenPromiseError(f"the table has no amount in {dict(row)}")
    value = float(found["value"])
    return Figure(value, float(found["low"] or value), float(found["high"] or value), Grade.TYPICAL, row["source"])


def check_number(name: str) -> float:
    """Return a limit that has no band.

    >>> check_number("teeth in mesh")
    6.0
    """
    return check_limit(name).value
