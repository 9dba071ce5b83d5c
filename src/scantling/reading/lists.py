"""Somebody else's list of parts or prices: columns matched once by its reader, every row read or named as left out.

Nothing is taken silently: columns are proposals until a match is given, and whether a quantity counts pieces or packs
must be said. A match can be kept in a small YAML file beside the list.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from pydantic import Field

from scantling.errors import FaultsError, QuantityError, Where, nearest
from scantling.model.base import Data
from scantling.quantities import CURRENCIES, Figure, Money, parse_count, parse_figure, parse_money
from scantling.reading.collecting import Faults
from scantling.reading.document import read_document
from scantling.reading.files import MOST_TEXT_BYTES, Folder
from scantling.reading.grid import REFUSED, Cell, Grid
from scantling.reading.list_columns import ROLES, PackHint, Proposal, header_row, numbered, pack_hints, proposals
from scantling.reading.sections import TABLE_ENDINGS, read_grid

_COUNT = re.compile(r"(?P<count>[0-9]+)\s*(?:x|×|pcs?\.?|pieces?|off|st)?", re.IGNORECASE)


class ListMatch(Data):
    """How to read one list.

    columns : header by role (``part: Item``)    quantity_means : what a quantity counts
    currency : of prices that name none    sheet : of a workbook
    """

    columns: dict[str, str]
    quantity_means: Literal["pieces", "packs"] | None = None
    currency: str | None = None
    parts: dict[str, str] = Field(default_factory=dict)


@dataclass(frozen=True)
class ForeignList:
    """A list that was opened but not yet understood.

    headers : as written    proposals : columns that seem to hold what we need
    pack_hints : rows that speak of packs; where there are any, ask what the quantity counts
    """

    grid: Grid
    header: int
    headers: tuple[str, ...]
    proposals: tuple[Proposal, ...]
    pack_hints: tuple[PackHint, ...]

    def proposed(self) -> ListMatch:
        """Return the match that takes all proposals; what the quantity counts stays open."""
        return ListMatch(columns={one.role: one.header for one in self.proposals})


@dataclass(frozen=True)
class ListRow:
    """One row as understood; ``pieces`` is None where the pack's size is needed and not given.

    quantity : as written    pack : pieces in a pack    price : of a pack    price_each : of a piece
    """

    where: Where
    part: str
    quantity: int
    pieces: int | None
    pack: int | None = None
    price: Money | None = None
    price_each: Money | None = None
    vendor: str = ""
    length_mm: Figure | None = None
    note: str = ""


@dataclass(frozen=True)
class LeftOut:
    """A row that was not used, and why."""

    where: Where
    text: str
    because: str


@dataclass(frozen=True)
class ListRead:
    """All rows of a list: understood, or left out with the reason."""

    rows: tuple[ListRow, ...]
    left_out: tuple[LeftOut, ...] = field(default_factory=tuple)


def open_list(path: Path, sheet: str = "") -> ForeignList:
    """Return a list with proposals for its columns; raises ``FaultsError`` where the file cannot be read."""
    faults = Faults()
    folder = Folder(path.parent, faults, {})
    name = path.name
    found = folder.find(name, path.parent, Where(name))
    if found is not None and path.suffix.casefold() not in TABLE_ENDINGS:
        mend = f"save it as one of {', '.join(TABLE_ENDINGS)}"
        faults.add("13", f"{name!r} is no table that can be read", mend, Where(name))
    data = folder.read(found, MOST_TEXT_BYTES) if found is not None and not faults.found else None
    grid = read_grid(data, name, sheet, faults) if data is not None else None
    if grid is not None and not grid.rows:
        faults.add("05", f"{name} holds no table", "write a header and rows", Where(name))
    faults.raise_any()
    if grid is None:
        raise FaultsError(faults.found)
    header = header_row(grid)
    headers = tuple(cell.text for cell in grid.rows[header] if cell.text)
    proposed = proposals(grid.rows[header], numbered(grid, header))
    return ForeignList(grid, header, headers, proposed, pack_hints(grid, header + 1))


def read_match(path: Path) -> ListMatch:
    """Return a match kept in a file; raises ``FaultsError``."""
    faults = Faults()
    document = read_document(path, ListMatch, Folder(path.parent, faults, {}), faults)
    faults.raise_any()
    return document.value


def match_text(match: ListMatch) -> str:
    """Return a match as the text of a YAML file that ``read_match`` reads."""
    lines = ["columns:", *(f"  {role}: {_quoted(header)}" for role, header in match.columns.items())]
    if match.quantity_means is not None:
        lines.append(f"quantity-means: {match.quantity_means}")
    if match.currency is not None:
        lines.append(f"currency: {match.currency}")
    if match.parts:
        lines += ["parts:", *(f"  {_quoted(text)}: {_quoted(part)}" for text, part in match.parts.items())]
    return "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    return "'" + text.replace("'", "''") + "'"


def read_list(foreign: ForeignList, match: ListMatch) -> ListRead:
    """Return every row of a list, read as the match says or left out with the reason.

    Raises ``FaultsError`` where the match names columns or roles that are not there, or leaves open what a
    quantity counts although rows speak of packs or a column gives their size.
    """
    faults = Faults()
    columns = _columns(foreign, match, faults)
    faults.raise_any()
    reader = _Rows(foreign, match, columns)
    for row in foreign.grid.rows[foreign.header + 1 :]:
        reader.take({cell.column: cell for cell in row if cell.text and cell.text != REFUSED})
    return ListRead(tuple(reader.rows), tuple(reader.left_out))


def _columns(foreign: ForeignList, match: ListMatch, faults: Faults) -> dict[str, int]:
    by_header = {cell.text: cell.column for cell in foreign.grid.rows[foreign.header]}
    where = Where(foreign.grid.file, foreign.grid.rows[foreign.header][0].row, 1)
    found: dict[str, int] = {}
    for role, header in match.columns.items():
        if role not in ROLES:
            faults.add("60", f"{role!r} is nothing that a column can hold", nearest(role, ROLES), where)
        elif header not in by_header:
            faults.add("60", f"no column is called {header!r}", nearest(header, foreign.headers), where)
        else:
            found[role] = by_header[header]
    for role in ("part", "quantity"):
        if role not in match.columns:
            faults.add(
                "60", f"no column is said to hold the {role}", f"name one of {', '.join(foreign.headers)}", where
            )
    if match.quantity_means is None and ("pack" in match.columns or foreign.pack_hints):
        reason = f"row {foreign.pack_hints[0].row} speaks of packs" if foreign.pack_hints else "there are packs"
        what = f"does the quantity count pieces or packs? ({reason})"
        faults.add("60", what, "say quantity-means: pieces, or packs", where)
    if match.currency is not None and match.currency not in CURRENCIES:
        faults.add("46", f"no currency called {match.currency!r}", nearest(match.currency, CURRENCIES), where)
    return found


class _Rows:
    """Reads row after row."""

    def __init__(self, foreign: ForeignList, match: ListMatch, columns: dict[str, int]) -> None:
        self.file = foreign.grid.file
        self.match = match
        self.columns = columns
        self.rows: list[ListRow] = []
        self.left_out: list[LeftOut] = []

    def take(self, cells: dict[int, Cell]) -> None:
        """Understand a row, or say why not."""
        first = cells[min(cells)]
        texts = {role: cells[column].text for role, column in self.columns.items() if column in cells}
        where = first.where(self.file)
        shown = " · ".join(cell.text for cell in cells.values())[:80]
        if "part" not in texts or "quantity" not in texts:
            missing = "part" if "part" not in texts else "quantity"
            self.left_out.append(LeftOut(where, shown, f"it has no {missing}; a heading or a remark?"))
            return
        try:
            self.rows.append(self._row(texts, where))
        except QuantityError as error:
            self.left_out.append(LeftOut(where, shown, f"{error.what} - {error.mend}"))

    def _row(self, texts: dict[str, str], where: Where) -> ListRow:
        quantity, pack = _count(texts["quantity"]), _count(texts["pack"]) if "pack" in texts else None
        if pack == 0:
            raise QuantityError("a pack of 0", "write how many pieces are in it")
        in_packs = self.match.quantity_means == "packs"
        return ListRow(
            where,
            self.match.parts.get(texts["part"], texts["part"]),
            quantity,
            quantity * pack if in_packs and pack is not None else (None if in_packs else quantity),
            pack,
            self._money(texts.get("price")),
            self._money(texts.get("price-each")),
            texts.get("vendor", ""),
            parse_figure(texts["length"], "length") if "length" in texts else None,
            texts.get("note", ""),
        )

    def _money(self, text: str | None) -> Money | None:
        return None if text is None else parse_money(text, self.match.currency)


def _count(text: str) -> int:
    found = _COUNT.fullmatch(text.strip())
    if found is None:
        raise QuantityError(f"{text!r} is no count", "write a whole number")
    return parse_count(found["count"])
