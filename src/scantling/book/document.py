"""The document tree: what a book is made of, before anything is laid out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Align = Literal["left", "right", "center"]


@dataclass(frozen=True)
class Heading:
    """A heading; level 1 begins a chapter."""

    text: str
    level: Literal[1, 2, 3] = 1


@dataclass(frozen=True)
class Paragraph:
    """Running text; ``strong`` for a sentence that must not be overlooked."""

    text: str
    strong: bool = False


@dataclass(frozen=True)
class Items:
    """A list; numbered where the order matters."""

    texts: tuple[str, ...]
    numbered: bool = False


@dataclass(frozen=True)
class Note:
    """A box: ``caution`` where work can hurt someone, ``note`` else."""

    text: str
    kind: Literal["note", "caution"] = "note"


@dataclass(frozen=True)
class Table:
    """A table whose head returns on every page.

    widths : of each column, ``auto`` or a share of what is left (``1``, ``2`` …); all auto where empty
    aligns : of each column; left where empty    foot : a last row set off from the others
    """

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    widths: tuple[str, ...] = ()
    aligns: tuple[Align, ...] = ()
    foot: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True)
class Figure:
    """A drawing in SVG at its own size; ``alt`` is read out where it cannot be seen."""

    svg: str
    width_mm: float
    height_mm: float
    alt: str = ""


@dataclass(frozen=True)
class PageBreak:
    """What follows begins on a new page."""


Block = Heading | Paragraph | Items | Note | Table | Figure | PageBreak


@dataclass(frozen=True)
class Document:
    """A whole document.

    paper_mm : width and height of its pages    foot : words at the foot of every page, beside the page's number
    """

    title: str
    subtitle: str
    blocks: tuple[Block, ...]
    paper_mm: tuple[float, float] = (210.0, 297.0)
    foot: str = ""


def full_columns(table: Table) -> Table:
    """Return a table without the columns in which no row says anything."""
    kept = [k for k in range(len(table.head)) if any(row[k] for row in (*table.rows, *table.foot))]
    return Table(
        tuple(table.head[k] for k in kept),
        tuple(tuple(row[k] for k in kept) for row in table.rows),
        tuple(table.widths[k] for k in kept) if table.widths else (),
        tuple(table.aligns[k] for k in kept) if table.aligns else (),
        tuple(tuple(row[k] for k in kept) for row in table.foot),
    )
