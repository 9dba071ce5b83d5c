"""Words in lines and tables, laid one under the other and parted over pages."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from scantling.drawing.primitives import Item, Line, Pen, Text
from scantling.plans.sheets.widths import width_mm as measured_mm

BODY_MM = 3.0
LINE_MM = 5.3
_GUTTER_MM = 3.0
_TOGETHER = 2  # so many rows of a table are not left alone below its head


@dataclass(frozen=True)
class Row:
    """A strip of the page: its height, and what it draws when its upper left corner is known.

    head : repeated at the top of the next page where the row begins one    keep : not parted from the row below
    """

    height_mm: float
    draw: Callable[[float, float], list[Item]]
    keep: bool = False
    head: tuple[Row, ...] = ()


def gap(height_mm: float) -> Row:
    """Return an empty strip."""
    return Row(height_mm, lambda _x, _y: [])


def line(text: str, height_mm: float = BODY_MM, *, bold: bool = False, pen: Pen = Pen.NOTE, keep: bool = False) -> Row:
    """Return one line of text as it is."""
    pitch_mm = height_mm + LINE_MM - BODY_MM

    def draw(x: float, y: float) -> list[Item]:
        return [Text((x, y - pitch_mm + 1.3), text, height_mm, pen, bold=bold)]

    return Row(pitch_mm, draw, keep)


def heading(text: str) -> list[Row]:
    """Return a heading with room above it, kept with what follows."""
    return [replace(gap(2.6), keep=True), line(text, 3.4, bold=True, keep=True)]


def paragraph(text: str, width_mm: float, *, bold: bool = False, pen: Pen = Pen.NOTE, hanging: str = "") -> list[Row]:
    """Return a text broken into lines; ``hanging`` stands before the first and the others are set in by its width."""
    indent_mm = measured_mm(hanging + " ", BODY_MM, bold) if hanging else 0.0
    rows = []
    for number, words in enumerate(wrapped(text, width_mm - indent_mm, BODY_MM, bold)):
        row = line(words, bold=bold, pen=pen)
        rows.append(_hung(row, hanging if number == 0 else "", indent_mm, bold, pen) if hanging else row)
    return rows


def _hung(row: Row, hanging: str, indent_mm: float, bold: bool, pen: Pen) -> Row:
    def draw(x: float, y: float) -> list[Item]:
        first: list[Item] = [Text((x, y - LINE_MM + 1.3), hanging, BODY_MM, pen, bold=bold)] if hanging else []
        return [*first, *row.draw(x + indent_mm, y)]

    return replace(row, draw=draw)


def wrapped(text: str, width_mm: float, height_mm: float = BODY_MM, bold: bool = False) -> list[str]:
    """Return a text in lines that are no wider; a word that is wider by itself is broken."""
    lines: list[str] = []
    for word in _pieces(text, width_mm, height_mm, bold):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and measured_mm(longer, height_mm, bold) <= width_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines or [""]


def _pieces(text: str, width_mm: float, height_mm: float, bold: bool) -> Iterator[str]:
    for word in text.split():
        while len(word) > 1 and measured_mm(word, height_mm, bold) > width_mm:
            count = len(word)
            while count > 1 and measured_mm(word[:count], height_mm, bold) > width_mm:
                count -= 1
            yield word[:count]
            word = word[count:]
        yield word


def shortened(text: str, width_mm: float, height_mm: float = BODY_MM, bold: bool = False) -> str:
    """Return the text, cut with a sign that it was where it is wider."""
    if measured_mm(text, height_mm, bold) <= width_mm:
        return text
    while text and measured_mm(text + "…", height_mm, bold) > width_mm:
        text = text[:-1]
    return text.rstrip() + "…"


def table(head: Sequence[str], rows: Sequence[Sequence[str]], width_mm: float) -> list[Row]:
    """Return a table whose last column takes the room that is left and whose head returns on every page."""
    widths = _widths(head, rows, width_mm)
    top = _cells(head, widths, bold=True)
    top = replace(top, keep=True)
    body = [replace(_cells(row, widths), head=(top,)) for row in rows]
    body[:-1] = [replace(row, keep=number < _TOGETHER) for number, row in enumerate(body[:-1])]
    return [top, *body]


def _widths(head: Sequence[str], rows: Sequence[Sequence[str]], width_mm: float) -> list[float]:
    natural = [
        max([measured_mm(head[k], BODY_MM, True), *(measured_mm(row[k], BODY_MM) for row in rows)])
        for k in range(len(head))
    ]
    least = [min(width, max(measured_mm(head[k], BODY_MM, True), 18.0)) for k, width in enumerate(natural)]
    spare_mm = width_mm - _GUTTER_MM * (len(head) - 1)
    for k in range(len(head) - 1, -1, -1):  # the last column gives way first
        if sum(natural) > spare_mm:
            natural[k] = max(least[k], natural[k] - (sum(natural) - spare_mm))
    return natural


def _cells(texts: Sequence[str], widths: Sequence[float], *, bold: bool = False) -> Row:
    """One row of a table: cells broken into lines, a thin rule below."""
    broken = [wrapped(text, width + 0.01, BODY_MM, bold) for text, width in zip(texts, widths, strict=True)]
    count = max(len(lines) for lines in broken)

    def draw(x: float, y: float) -> list[Item]:
        items: list[Item] = []
        left = x
        for lines, width in zip(broken, widths, strict=True):
            for number, words in enumerate(lines):
                items.append(Text((left, y - (number + 1) * LINE_MM + 1.5), words, BODY_MM, Pen.NOTE, bold=bold))
            left += width + _GUTTER_MM
        foot = y - count * LINE_MM + 0.1
        items.append(Line((x, foot), (left - _GUTTER_MM, foot), Pen.NOTE if bold else Pen.FRAME))
        return items

    return Row(count * LINE_MM, draw)


def height_mm(rows: Sequence[Row]) -> float:
    """Return how much of a page rows take."""
    return sum(row.height_mm for row in rows)


def parted(rows: Sequence[Row], room_mm: float, first_mm: float | None = None) -> list[list[Row]]:
    """Return the rows parted over pages; what is kept together stays so where a page can hold it.

    first_mm : room on the first page, where it differs
    """
    pages: list[list[Row]] = [[]]
    for block in _blocks(rows):
        room = first_mm if first_mm is not None and len(pages) == 1 else room_mm
        is_full = height_mm(pages[-1]) + height_mm(block) > room
        if is_full and (pages[-1] or room < room_mm):
            pages.append(list(block[0].head))
        pages[-1] += block
    return pages


def _blocks(rows: Sequence[Row]) -> Iterator[list[Row]]:
    block: list[Row] = []
    for row in rows:
        block.append(row)
        if not row.keep:
            yield block
            block = []
    if block:
        yield block


def drawn(rows: Sequence[Row], x: float, y: float) -> list[Item]:
    """Return the strokes of rows under one another, the first with its upper left corner at (x, y)."""
    items: list[Item] = []
    for row in rows:
        items += row.draw(x, y)
        y -= row.height_mm
    return items
