"""Tables in .xlsx workbooks."""

from __future__ import annotations

import datetime
import io
import warnings
from itertools import zip_longest
from typing import Any

from scantling.errors import Where
from scantling.reading.cell_text import shown_date, shown_number
from scantling.reading.collecting import Faults
from scantling.reading.grid import REFUSED, Grid, grid_of
from scantling.reading.workbooks import chosen, opened


def xlsx_grid(data: bytes, file: str, section: str, faults: Faults) -> Grid | None:
    """Return the table in a workbook as it is shown; None after a fault."""
    if opened(data, file, faults) is None:
        return None
    try:
        shown, written = _load(data, values=True), _load(data, values=False)
        sheets = [(sheet.title, _rows(sheet, written[sheet.title], file, faults)) for sheet in shown.worksheets]
    except Exception as error:  # the library lets anything through that a damaged file provokes
        what = f"the workbook cannot be read ({str(error)[:80]})"
        faults.add("16", what, "save it anew with a spreadsheet program, or as .csv", Where(file))
        return None
    grids = [grid_of(file, rows, faults, title) for title, rows in sheets]
    return chosen([grid for grid in grids if grid is not None], section, file, faults)


def _load(data: bytes, *, values: bool) -> Any:
    """Open with the values that formulas had, or with the formulas."""
    from openpyxl import load_workbook

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of features that no table needs
        return load_workbook(io.BytesIO(data), read_only=True, data_only=values, keep_links=False)


def _rows(shown: Any, written: Any, file: str, faults: Faults) -> list[tuple[int, list[str]]]:
    shown.reset_dimensions()  # some programs write wrong ones, and rows would be lost
    written.reset_dimensions()
    pairs = zip_longest(shown.iter_rows(), written.iter_rows(), fillvalue=())
    return [
        (number, [_text(cell, formula, number, column, file, faults) for column, (cell, formula) in enumerate(both, 1)])
        for number, both in ((number, list(zip(*pair, strict=False))) for number, pair in enumerate(pairs, 1))
    ]


def _text(cell: Any, formula: Any, row: int, column: int, file: str, faults: Faults) -> str:
    """Return what a cell shows; a formula whose value was never stored is a fault."""
    value = cell.value
    if value is None:
        if formula.value is not None:
            mend = "open and save the file with a spreadsheet program, or write the value"
            faults.add("15", f"the formula {str(formula.value)[:40]!r} has no value", mend, Where(file, row, column))
            return REFUSED
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return shown_number(value, cell.number_format)
    if isinstance(value, datetime.date | datetime.time | datetime.timedelta):
        return shown_date(value)
    return str(value)
