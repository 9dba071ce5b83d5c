"""How many boards the sheets of a build take: an upper bound from a quick layout; careful nesting can only lower it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.build.demand import place_needs
from scantling.build.gets import MADE
from scantling.build.reader import Reader
from scantling.model.kinds import SheetStock
from scantling.model.workshop import Workshop
from scantling.shapes.boards import Board, Panel, count_boards

USUAL_KERF_MM = 3.0  # of a circular or panel saw; workshop practice
USUAL_MARGIN_MM = 5.0  # of each factory edge, often bruised; workshop practice
UM_PER_MM = 1000


@dataclass(frozen=True)
class PanelNeed:
    """Panels of one sheet in one machine: the box round the outline, and which of its sides must lie along the grain.

    grain : ``x`` or ``y`` of the panel, empty where it may be turned
    """

    sheet: str
    width_um: int
    height_um: int
    pieces: int
    grain: str


def panels(reader: Reader, part: str) -> tuple[PanelNeed, ...]:
    """Return the panels of one machine that are made from a sheet material, in the design's order.

    A material with a grain does not let a panel turn; a sheet that does not say how its grain runs has it along its x.
    """
    found: list[PanelNeed] = []
    for sheet in reader.design.sheets:
        place = reader.design.places.get(sheet)
        if place is None or part not in {option.part for option in place.options}:
            continue
        stock = reader.part(sheet)
        if not isinstance(stock, SheetStock) or stock.id != part or reader.get(sheet) != MADE:
            continue
        grain = (reader.design.sheets[sheet].grain or "x") if stock.grain else ""
        found += [
            PanelNeed(sheet, need.width_um or 0, need.height_um or 0, need.amount, grain)
            for need in reader.derive(place_needs, sheet)
            if need.unit == "board-piece"
        ]
    return tuple(found)


def boards_needed(reader: Reader, part: str, width_um: int, depth_um: int, copies: int) -> int | None:
    """Return how many boards of one size all copies together take at most; None where a panel does not fit on one."""
    wanted = tuple(
        _lying(need, copies, along_x=width_um >= depth_um) for need in reader.derive(panels, part) if need.pieces
    )
    board = Board("board", width_um / UM_PER_MM, depth_um / UM_PER_MM, margin_mm=sheet_margin(reader.workshop))
    return _count(wanted, board, sheet_kerf(reader.workshop))


def sheet_kerf(workshop: Workshop) -> float:
    """Return the width in mm that a cut between two panels takes."""
    return USUAL_KERF_MM if workshop.saw.sheet_kerf_mm is None else float(workshop.saw.sheet_kerf_mm.value)


def sheet_margin(workshop: Workshop) -> float:
    """Return how much of each edge of a board, in mm, is not used."""
    return USUAL_MARGIN_MM if workshop.saw.sheet_margin_mm is None else float(workshop.saw.sheet_margin_mm.value)


def _lying(need: PanelNeed, copies: int, *, along_x: bool) -> Panel:
    """A panel as it lies on the board, whose grain runs along its longer side: along x where ``along_x``."""
    width_mm, height_mm = need.width_um / UM_PER_MM, need.height_um / UM_PER_MM
    if need.grain and (need.grain == "x") != along_x:
        width_mm, height_mm = height_mm, width_mm
    return Panel(need.sheet, width_mm, height_mm, need.pieces * copies, may_turn=not need.grain)


_count = cache(count_boards)  # the same panels come again under many readings
