"""Tables in CSV: comma, semicolon or tab, told from the header."""

from __future__ import annotations

import csv
import io

from scantling.errors import Where
from scantling.reading.collecting import Faults
from scantling.reading.files import decoded
from scantling.reading.grid import Grid, grid_of

_DELIMITERS = (",", ";", "\t")


def csv_grid(data: bytes, file: str, faults: Faults) -> Grid | None:
    """Return the table in a CSV file; None after a fault."""
    text = decoded(data, file, faults)
    if text is None:
        return None
    rows: list[tuple[int, list[str]]] = []
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter_of(text), strict=True)
    first = 1
    try:
        for row in reader:
            rows.append((first, row))
            first = reader.line_num + 1
    except csv.Error as error:
        mend = "close quotation marks, and double those inside a text"
        faults.add("15", f"the row cannot be read ({error})", mend, Where(file, first, 1))
        return None
    return grid_of(file, rows, faults)


def delimiter_of(text: str) -> str:
    """Return what parts the cells of the first line that holds any; a comma where nothing does.

    >>> delimiter_of("vendor;part;price\\nyard;rod;2,40")
    ';'
    """
    lines = (line for line in text.splitlines() if line.strip() and not line.lstrip().startswith("# "))
    outside_quotes = "".join(next(lines, "").split('"')[::2])
    return max(_DELIMITERS, key=outside_quotes.count)
