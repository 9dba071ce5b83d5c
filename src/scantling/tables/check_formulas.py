"""The rule of each check as a line of formula; the names in braces are those of its figures."""

from __future__ import annotations

import re
from collections.abc import Container
from functools import cache

from scantling.tables.csv_table import rows

_NAME = re.compile(r"\{(\w+)\}")


@cache
def check_formulas(code: str) -> tuple[str, ...]:
    """Return the formulas of a check, none where its rule is kept or not and has no value.

    >>> check_formulas("ROD-05")
    ('{free} - {carriage} - {stops}',)
    """
    return tuple(row["formula"] for row in rows("check_formulas") if row["check"] == code)


def check_formula(code: str, names: Container[str]) -> str:
    """Return the first formula of a check whose figures all are among ``names``; empty where there is none."""
    return next((text for text in check_formulas(code) if all(name in names for name in _NAME.findall(text))), "")
