"""Rectangles on boards for a circular saw: every cut runs from edge to edge; a quick layout, an upper bound."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from enum import Enum
from functools import cache
from itertools import product

from scantling.shapes.ticks import ticks_down, ticks_up

_TICKS_PER_MM = 10_000
_MOST_PANELS = 5_000


@dataclass(frozen=True)
class Panel:
    """A rectangle that is wanted, so many times; ``may_turn`` is False where the grain says how it lies."""

    name: str
    width_mm: float
    height_mm: float
    quantity: int = 1
    may_turn: bool = True


@dataclass(frozen=True)
class Board:
    """A board: ``count`` at hand or as many as wanted (None); ``margin_mm`` of each edge is not used."""

    name: str
    width_mm: float
    height_mm: float
    count: int | None = None
    margin_mm: float = 0.0


@dataclass(frozen=True)
class PlacedPanel:
    """Where a panel lies: its lower left corner, its size as it lies, and whether it was turned."""

    name: str
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    turned: bool


@dataclass(frozen=True)
class SawCut:
    """A cut from ``start`` to ``end`` along the edge of what is kept; the saw's width lies above or right of it.

    That of the first cuts, which take off the board's margins, lies in the margin.
    """

    start: tuple[float, float]
    end: tuple[float, float]


@dataclass(frozen=True)
class CutBoard:
    """One board: its panels, the cuts in an order in which each runs from edge to edge, and the largest offcut."""

    board: Board
    panels: tuple[PlacedPanel, ...]
    cuts: tuple[SawCut, ...]
    offcut_mm: tuple[float, float]


@dataclass(frozen=True)
class BoardLayout:
    """Boards in the order they are taken; ``least`` is what no layout gets below; ``misfits`` fit on no board."""

    boards: tuple[CutBoard, ...]
    least: int
    misfits: tuple[str, ...] = ()


@dataclass
class _Room:
    """A rectangle on a board, in ticks; once taken it holds a panel and the two rooms beside it."""

    x: int
    y: int
    width: int
    height: int
    panel: tuple[str, int, int, bool] | None = None
    right: _Room | None = None
    above: _Room | None = None
    first_across: bool = False


@dataclass(frozen=True)
class _Want:
    name: str
    width: int
    height: int
    may_turn: bool


@dataclass
class _Opened:
    board: Board
    root: _Room
    free: list[_Room] = field(default_factory=list)


_Order = Callable[[_Want], tuple[int, ...]]
_ORDERS: tuple[_Order, ...] = (
    lambda w: (-w.width * w.height,),
    lambda w: (-max(w.width, w.height), -min(w.width, w.height)),
    lambda w: (-w.height, -w.width),
    lambda w: (-w.width, -w.height),
    lambda w: (-(w.width + w.height),),
)
_Fit = Callable[[int, int], tuple[int, int]]
_FITS: tuple[_Fit, ...] = (
    lambda spare_x, spare_y: (min(spare_x, spare_y), max(spare_x, spare_y)),
    lambda spare_x, spare_y: (max(spare_x, spare_y), min(spare_x, spare_y)),
)


class _Split(Enum):
    """Which of the two cuts beside a panel runs through: by the rests that it leaves, or always the same."""

    LARGER = 0
    SMALLER = 1
    ACROSS = 2
    UP = 3

    def runs_across(self, spare_x: int, spare_y: int) -> bool:
        """True where the cut along x runs through."""
        if self in (_Split.ACROSS, _Split.UP):
            return self is _Split.ACROSS
        return (spare_x < spare_y) == (self is _Split.LARGER)


_WAYS = tuple(product(_ORDERS, _FITS, _Split))


def lay_on_boards(panels: Sequence[Panel], boards: Sequence[Board], kerf_mm: float) -> BoardLayout:
    """Return the best of forty quick layouts: fewest boards, then the largest offcut.

    Boards are opened in the order given, the first that is large enough. The same input gives the same layout.
    ``least`` is by area, for the largest board: between it and the layout the truth lies.
    """
    kerf = ticks_up(kerf_mm)
    possible, misfits = _possible(panels, boards)
    best: tuple[tuple[int, ...], list[_Opened], list[_Want]] | None = None
    for number, ways in enumerate(_WAYS):
        opened, left = _pack(possible, boards, kerf, *ways)
        largest = max((room.width * room.height for one in opened for room in one.free), default=0)
        score = (len(left), len(opened), -largest, number)
        if best is None or score < best[0]:
            best = (score, opened, left)
    if best is None:
        return BoardLayout((), 0, misfits)
    return BoardLayout(
        tuple(_cut_board(one) for one in best[1]),
        _least(possible, boards, kerf),
        (*misfits, *dict.fromkeys(want.name for want in best[2])),
    )


def count_boards(panels: Sequence[Panel], board: Board, kerf_mm: float) -> int | None:
    """Return how many boards of one kind, as many as wanted, the best quick layout takes; None where a panel misfits.

    The same number as ``lay_on_boards`` finds, sooner: no layout needs looking for once one takes the least by area.
    """
    kerf = ticks_up(kerf_mm)
    possible, misfits = _possible(panels, [board])
    if misfits:
        return None
    least, found = _least(possible, [board], kerf), len(possible)
    for ways in _WAYS:
        found = min(found, len(_pack(possible, [board], kerf, *ways)[0]))
        if found <= least:
            break
    return found


def _possible(panels: Sequence[Panel], boards: Sequence[Board]) -> tuple[list[_Want], tuple[str, ...]]:
    """Return every panel that fits on one of the boards, and the names of those that do not."""
    total = sum(panel.quantity for panel in panels)
    if total > _MOST_PANELS:
        raise ValueError(f"{total} panels, the limit is {_MOST_PANELS}")
    kinds = [(_want(panel), panel.quantity) for panel in panels]
    fitting = [any(_fits_board(want, board) for board in boards) for want, _ in kinds]
    possible = [want for (want, count), fits in zip(kinds, fitting, strict=True) if fits for _ in range(count)]
    return possible, tuple(dict.fromkeys(want.name for (want, _), fits in zip(kinds, fitting, strict=True) if not fits))


def _want(panel: Panel) -> _Want:
    return _Want(panel.name, ticks_up(panel.width_mm), ticks_up(panel.height_mm), panel.may_turn)


@cache
def _usable(board: Board) -> tuple[int, int]:
    edge = 2 * ticks_up(board.margin_mm)
    return ticks_down(board.width_mm) - edge, ticks_down(board.height_mm) - edge


def _fits_board(want: _Want, board: Board) -> bool:
    width, height = _usable(board)
    return (want.width <= width and want.height <= height) or (
        want.may_turn and want.height <= width and want.width <= height
    )


def _least(wants: Sequence[_Want], boards: Sequence[Board], kerf: int) -> int:
    """Each panel takes a saw's width on two sides; so does each board, once."""
    if not wants or not boards:
        return 0
    need = sum((want.width + kerf) * (want.height + kerf) for want in wants)
    room = max((width + kerf) * (height + kerf) for width, height in map(_usable, boards))
    return -(-need // room)


def _pack(
    wants: Sequence[_Want], boards: Sequence[Board], kerf: int, order: _Order, fit: _Fit, split: _Split
) -> tuple[list[_Opened], list[_Want]]:
    """Panel by panel into the room it fills best, on the first open board that has one."""
    opened: list[_Opened] = []
    counts = [board.count for board in boards]
    left = []
    for want in sorted(wants, key=lambda w: (order(w), w.name)):
        place = next(filter(None, (_best(want, one.free, fit) for one in opened)), None)
        owner = next((one for one in opened if place and place[0] in one.free), None)
        if place is None:
            owner = _open(want, boards, counts)
            place = _best(want, owner.free, fit) if owner else None
            opened += [owner] if owner else []
        if owner is None or place is None:
            left.append(want)
        else:
            _take(owner, place[0], want, place[1], kerf, split)
    return opened, left


def _open(want: _Want, boards: Sequence[Board], counts: list[int | None]) -> _Opened | None:
    for index, board in enumerate(boards):
        if counts[index] != 0 and _fits_board(want, board):
            counts[index] = None if counts[index] is None else (counts[index] or 0) - 1
            edge, (width, height) = ticks_up(board.margin_mm), _usable(board)
            root = _Room(edge, edge, width, height)
            return _Opened(board, root, [root])
    return None


def _best(want: _Want, free: Sequence[_Room], fit: _Fit) -> tuple[_Room, bool] | None:
    ways = []
    for number, room in enumerate(free):
        for turned in (False, True) if want.may_turn else (False,):
            width, height = (want.height, want.width) if turned else (want.width, want.height)
            if width <= room.width and height <= room.height:
                ways.append((fit(room.width - width, room.height - height), turned, number))
    if not ways:
        return None
    _, turned, number = min(ways)
    return free[number], turned


def _take(owner: _Opened, room: _Room, want: _Want, turned: bool, kerf: int, split: _Split) -> None:
    """Put the panel into the lower left corner and cut the rest in two."""
    width, height = (want.height, want.width) if turned else (want.width, want.height)
    spare_x, spare_y = room.width - width - kerf, room.height - height - kerf
    room.panel = (want.name, width, height, turned)
    room.first_across = split.runs_across(spare_x, spare_y)
    right_height = height if room.first_across else room.height
    above_width = room.width if room.first_across else width
    owner.free = [other for other in owner.free if other is not room]
    if spare_x > 0:
        room.right = _Room(room.x + width + kerf, room.y, spare_x, right_height)
        owner.free.append(room.right)
    if spare_y > 0:
        room.above = _Room(room.x, room.y + height + kerf, above_width, spare_y)
        owner.free.append(room.above)


def _cut_board(one: _Opened) -> CutBoard:
    placed = []
    for room in _walk(one.root):
        if room.panel:
            name, width, height, turned = room.panel
            placed.append(PlacedPanel(name, _mm(room.x), _mm(room.y), _mm(width), _mm(height), turned))
    largest = max(one.free, key=lambda room: (room.width * room.height, -room.x, -room.y), default=None)
    offcut = (_mm(largest.width), _mm(largest.height)) if largest else (0.0, 0.0)
    return CutBoard(one.board, tuple(placed), tuple(_cuts(one)), offcut)


def _walk(room: _Room) -> Iterator[_Room]:
    """A room before those cut from it: an order in which every cut runs from edge to edge."""
    todo = [room]
    while todo:
        here = todo.pop()
        yield here
        todo += [other for other in (here.right, here.above) if other]


def _cuts(one: _Opened) -> Iterator[SawCut]:
    """First the margins, then room by room: the long cut, and the short one within what it left."""
    if one.board.margin_mm > 0:
        yield from _trims(one)
    for room in _walk(one.root):
        if room.panel:
            _, width, height, _ = room.panel
            x, y, end_x, end_y = room.x + width, room.y + height, room.x + room.width, room.y + room.height
            across = _cut((room.x, y), (end_x if room.first_across else x, y))
            up = _cut((x, room.y), (x, y if room.first_across else end_y))
            wanted = [(across, height < room.height), (up, width < room.width)]
            yield from (cut for cut, needed in (wanted if room.first_across else wanted[::-1]) if needed)


def _cut(start: tuple[int, int], end: tuple[int, int]) -> SawCut:
    return SawCut((_mm(start[0]), _mm(start[1])), (_mm(end[0]), _mm(end[1])))


def _trims(one: _Opened) -> Iterator[SawCut]:
    root, board = one.root, one.board
    low_x, low_y = _mm(root.x), _mm(root.y)
    high_x, high_y = _mm(root.x + root.width), _mm(root.y + root.height)
    yield SawCut((0.0, low_y), (board.width_mm, low_y))
    yield SawCut((0.0, high_y), (board.width_mm, high_y))
    yield SawCut((low_x, low_y), (low_x, high_y))
    yield SawCut((high_x, low_y), (high_x, high_y))


def _mm(ticks: int) -> float:
    return ticks / _TICKS_PER_MM
