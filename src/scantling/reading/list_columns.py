"""Which columns of somebody's list hold what: proposals with their reasons, never more than that."""

from __future__ import annotations

import re
from dataclasses import dataclass

from scantling.reading.grid import Cell, Grid

# what a column can hold -> words that headers use for it, the tellingest first
ROLES: dict[str, tuple[str, ...]] = {
    "part": ("part", "item", "component", "description", "article", "name", "designation", "what"),
    "quantity": ("quantity", "qty", "pieces", "pcs", "count", "amount", "number", "no.", "needed", "off"),
    "pack": ("pack size", "per pack", "pack", "pieces per pack", "unit size", "bag"),
    "price": ("price per pack", "pack price", "price", "cost"),
    "price-each": ("price each", "unit price", "each", "per piece", "piece price"),
    "vendor": ("vendor", "supplier", "shop", "seller", "source", "from", "where"),
    "length": ("length", "cut to", "long"),
    "note": ("note", "notes", "remark", "remarks", "comment", "comments"),
}
_HEADER_SEARCH_ROWS = 15
_IN_PACKS = (
    re.compile(r"(?:pack|bag|box|set|lot)s? of (?P<count>[0-9]+)", re.IGNORECASE),
    re.compile(r"(?P<count>[0-9]+)\s*(?:pcs|pieces|pc)\b", re.IGNORECASE),
    re.compile(r"\b(?P<count>[0-9]+)[- ]pack\b", re.IGNORECASE),
)


@dataclass(frozen=True)
class Proposal:
    """A column that may hold what a role says; ``sure`` where the header is exactly a word for it."""

    role: str
    header: str
    because: str
    sure: bool


@dataclass(frozen=True)
class PackHint:
    """A row whose text speaks of packs, so that its quantity may count packs."""

    row: int
    text: str
    pack: int


def header_row(grid: Grid) -> int:
    """Return the index of the row that looks most like a header: the most cells that are words for something."""
    rows = grid.rows[:_HEADER_SEARCH_ROWS]
    scores = [sum(any(_fits(cell.text, words) for words in ROLES.values()) for cell in row) for row in rows]
    return scores.index(max(scores)) if scores else 0


def _fits(header: str, words: tuple[str, ...]) -> bool:
    return any(re.search(rf"\b{re.escape(word)}(?:\b|$)", header.casefold()) for word in words)


def numbered(grid: Grid, header: int) -> frozenset[str]:
    """Return the headers of columns that hold nothing but whole numbers: they count something and name no part."""
    below = grid.rows[header + 1 :]
    found = set()
    for title in grid.rows[header]:
        texts = [cell.text for row in below for cell in row if cell.column == title.column and cell.text]
        if texts and all(text.strip(" .").isdecimal() for text in texts):
            found.add(title.text)
    return frozenset(found)


def proposals(headers: list[Cell], counting: frozenset[str] = frozenset()) -> tuple[Proposal, ...]:
    """Return at most one column for each role and one role for each column, exact words first.

    counting : headers of columns of numbers, which name no part
    """
    found: list[Proposal] = []
    left = dict(ROLES)
    open_headers = [cell.text for cell in headers if cell.text]
    for sure in (True, False):
        for header in list(open_headers):
            roles = {role: words for role, words in left.items() if role != "part" or header not in counting}
            role, word = _role(header, roles, sure=sure)
            if role:
                reason = f"{header!r} is a word for it" if sure else f"{header!r} holds the word {word!r}"
                found.append(Proposal(role, header, reason, sure))
                del left[role]
                open_headers.remove(header)
    return tuple(sorted(found, key=lambda one: list(ROLES).index(one.role)))


def _role(header: str, left: dict[str, tuple[str, ...]], *, sure: bool) -> tuple[str, str]:
    """Return the role whose word fits best (the longest one), and the word."""
    plain = header.casefold().strip(" .:")
    fits = [
        (len(word), role, word)
        for role, words in left.items()
        for word in words
        if (plain == word.strip(".") if sure else _fits(plain, (word,)))
    ]
    if not fits:
        return "", ""
    _, role, word = max(fits, key=lambda fit: fit[0])
    return role, word


def pack_hints(grid: Grid, first: int) -> tuple[PackHint, ...]:
    """Return the rows that say "pack of 5", "10 pcs": a quantity beside them may mean packs."""
    hints: list[PackHint] = []
    for row in grid.rows[first:]:
        for cell in row:
            found = next((hit for pattern in _IN_PACKS if (hit := pattern.search(cell.text))), None)
            if found is not None and int(found["count"]) > 1:
                hints.append(PackHint(cell.row, cell.text, int(found["count"])))
                break
    return tuple(hints)
