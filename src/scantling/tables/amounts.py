"""Amounts of tables as they are written: ``0.2 (0.1..0.6)``, a usual value with its band, or a value alone."""

from __future__ import annotations

import re

from scantling.errors import BrokenPromiseError
from scantling.quantities import Figure, Grade
from scantling.tables.csv_table import pick, rows

_AMOUNT = re.compile(r"(?P<value>-?[0-9.]+)(?: \((?P<low>-?[0-9.]+?)\.\.(?P<high>-?[0-9.]+)\))?")


def amount_of(table: str, name: str, what: str) -> Figure:
    """Return the amount of a row by its name in the column ``limit``, as typical.

    what : the row in words, for the ``LookUpError`` of a name that is not in the table
    """
    row = pick(what, name, {row["limit"]: row for row in rows(table)})
    found = _AMOUNT.fullmatch(row["amount"])
    if found is None:
        raise BrokenPromiseError(f"the table has no amount in {dict(row)}")
    value = float(found["value"])
    return Figure(value, float(found["low"] or value), float(found["high"] or value), Grade.TYPICAL, row["source"])
