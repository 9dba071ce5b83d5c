"""Tables in .ods workbooks (OpenDocument): the text that each cell shows."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from scantling.errors import Where
from scantling.reading.cell_text import plain_number
from scantling.reading.collecting import Faults
from scantling.reading.grid import MOST_COLUMNS, MOST_ROWS, REFUSED, Grid, grid_of
from scantling.reading.workbooks import chosen, opened

_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_VALUES = ("string-value", "date-value", "boolean-value", "value")


def ods_grid(data: bytes, file: str, section: str, faults: Faults) -> Grid | None:
    """Return the table in a workbook as it is shown; None after a fault."""
    from defusedxml.ElementTree import fromstring

    packed = opened(data, file, faults)
    if packed is None:
        return None
    try:
        root = fromstring(packed.read("content.xml"), forbid_dtd=True)
    except Exception as error:  # no content, no XML, entities: whatever a damaged file provokes
        what = f"the workbook cannot be read ({str(error)[:80]})"
        faults.add("16", what, "save it anew with a spreadsheet program, or as .csv", Where(file))
        return None
    sheets = list(root.iter(f"{_TABLE}table"))
    grids = [grid_of(file, _rows(one, file, faults), faults, one.get(f"{_TABLE}name", "")) for one in sheets]
    return chosen([grid for grid in grids if grid is not None], section, file, faults)


def _rows(sheet: Any, file: str, faults: Faults) -> list[tuple[int, list[str]]]:
    """Return the rows that hold something, repeated rows written out."""
    rows: list[tuple[int, list[str]]] = []
    number = 1
    for row in sheet.iter(f"{_TABLE}table-row"):
        texts = _cells(row, number, file, faults)
        times = _repeated(row, "number-rows-repeated")
        if any(texts):
            rows += [(number + extra, texts) for extra in range(min(times, MOST_ROWS + 1 - len(rows)))]
        number += times
    return rows


def _repeated(element: Any, name: str) -> int:
    text = element.get(f"{_TABLE}{name}", "1")
    return max(1, int(text)) if text.isdigit() and len(text) < 10 else 1


def _cells(row: Any, number: int, file: str, faults: Faults) -> list[str]:
    texts: list[str] = []
    for cell in row:
        if cell.tag not in (f"{_TABLE}table-cell", f"{_TABLE}covered-table-cell"):
            continue
        text = _shown(cell)
        if not text and cell.get(f"{_TABLE}formula"):
            mend = "open and save the file with a spreadsheet program, or write the value"
            faults.add("15", "a formula has no value", mend, Where(file, number, len(texts) + 1))
            text = REFUSED
        texts += [text] * min(_repeated(cell, "number-columns-repeated"), MOST_COLUMNS + 1 - len(texts))
    while texts and not texts[-1]:
        texts.pop()
    return texts


def _shown(cell: Any) -> str:
    """Return the text of a cell, or its stored value where no text was written."""
    paragraphs = ["".join(_pieces(paragraph)) for paragraph in cell.findall(f"{_TEXT}p")]
    if paragraphs:
        return "\n".join(paragraphs)
    values = (cell.get(f"{_OFFICE}{name}") for name in _VALUES)
    value = next((one for one in values if one is not None), "")
    is_number = cell.get(f"{_OFFICE}value") is not None and cell.get(f"{_OFFICE}value-type") != "string"
    try:
        return plain_number(float(value)) if is_number else value
    except ValueError:
        return value


def _pieces(element: Any) -> Iterator[str]:
    """Yield the texts of a paragraph; ``text:s`` stands for blanks, remarks of the spreadsheet are left out."""
    yield element.text or ""
    for child in element:
        if child.tag == f"{_TEXT}s":
            yield " " * _count(child)
        elif child.tag == f"{_TEXT}tab":
            yield "\t"
        else:
            yield from _pieces(child)
        yield child.tail or ""


def _count(blank: Any) -> int:
    text = blank.get(f"{_TEXT}c", "1")
    return min(int(text), 1000) if text.isdigit() and len(text) < 6 else 1
