"""Tables as rows of located cells, whatever file they stand in."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.errors import Where
from scantling.reading.collecting import Faults

MOST_ROWS = 100_000
MOST_COLUMNS = 200
MOST_CELLS = 2_000_000
REFUSED = "\0"  # the text of a cell that was refused already; no file that was read holds this character
_ERRORS = ("#REF!", "#N/A", "#VALUE!", "#DIV/0!", "#NAME?", "#NULL!", "#NUM!", "Err:")


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell's text as shown, without blanks around it; ``row`` and ``column`` count from 1."""

    text: str
    row: int
    column: int

    def where(self, file: str) -> Where:
        """Return its place."""
        return Where(file, self.row, self.column)


@dataclass(frozen=True)
class Grid:
    """A table of a file: its rows without the empty ones; ``sheet`` is the name of the workbook's sheet."""

    file: str
    rows: list[list[Cell]]
    sheet: str = ""


def grid_of(file: str, texts: list[tuple[int, list[str]]], faults: Faults, sheet: str = "") -> Grid | None:
    """Return the table with these texts, each row with its number; None where it is beyond reason.

    Empty rows and remarks (first cell begins with ``# ``) are left out; a cell that shows an error is a fault.
    """
    widths = [len(row) for _, row in texts]
    if len(texts) > MOST_ROWS or max(widths, default=0) > MOST_COLUMNS or sum(widths) > MOST_CELLS:
        what = f"more than {MOST_ROWS} rows, {MOST_COLUMNS} columns or {MOST_CELLS} cells"
        faults.add("12", what, "split the table, or delete what stands far out", Where(file))
        return None
    rows = [
        [Cell(text.strip(), number, column) for column, text in enumerate(row, 1)]
        for number, row in texts
        if any(text.strip() for text in row) and not row[0].lstrip().startswith("# ")
    ]
    return Grid(file, [[_without_error(cell, file, faults) for cell in row] for row in rows], sheet)


def _without_error(cell: Cell, file: str, faults: Faults) -> Cell:
    """Refuse a cell that shows a spreadsheet's error."""
    if not cell.text.startswith(_ERRORS):
        return cell
    what = f"the cell shows the error {cell.text!r}"
    faults.add("15", what, "mend its formula, or write the value", cell.where(file))
    return Cell(REFUSED, cell.row, cell.column)
