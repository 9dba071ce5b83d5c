"""Loose pieces of a drawing joined end to end into closed shapes; what stays open is told by its place."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from math import floor, tau

from scantling.errors import Fault, Where
from scantling.shapes.drawn import ClosedPiece, Note, Piece, figure, place
from scantling.shapes.edges import Arc, Edge, Point, Segment, distance_mm
from scantling.shapes.outline import Circle, Closed, Loop

TOUCHING_MM = 1e-3
"""Ends closer than this meet; no drawing means a smaller gap."""

_MOST_IN_A_CELL = 40
"""Enough to see that too many ends meet, and no square law where thousands do."""

End = tuple[int, int]  # piece, 0 for its start or 1 for its end


@dataclass
class Chained:
    """What came of the pieces; open runs are faults, single loose strokes are for the caller to judge."""

    closed: list[ClosedPiece] = field(default_factory=list)
    loose: list[Piece] = field(default_factory=list)
    notes: list[Note] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)


def chain(pieces: Sequence[Piece], file: str, gap_mm: float) -> Chained:
    """Join pieces end to end: ends that meet first, then the nearest within ``gap_mm``, each such joint noted."""
    result = Chained()
    kept = _without_doubles([piece for piece in pieces if piece.length_mm > TOUCHING_MM], result)
    ends = {(i, side): (piece.end if side else piece.start) for i, piece in enumerate(kept) for side in (0, 1)}
    partner: dict[End, End] = {}
    tangled = _meet(ends, partner, result, file)
    _bridge_gaps(kept, {end: point for end, point in ends.items() if end not in tangled}, partner, gap_mm, result)
    knots = {ends[end] for end in tangled}
    for run, is_closed in _runs(kept, partner):
        if is_closed:
            result.closed.append(
                ClosedPiece(_close([edge for p in run for edge in p.edges]), run[0].name, run[0].layer)
            )
        elif len(run) == 1 and len(run[0].edges) == 1:
            result.loose.append(run[0])
        elif knots.isdisjoint((run[0].start, run[-1].end)):
            result.faults.append(open_fault(run, file))
    return result


def open_fault(run: Sequence[Piece], file: str) -> Fault:
    """Tell where a run of pieces begins and ends without closing."""
    start, end = run[0].start, run[-1].end
    names = ", ".join(dict.fromkeys(piece.name for piece in run if piece.name)) or "outline"
    names = names if len(names) < 60 else names[:57] + "…"
    apart = figure(distance_mm(start, end))
    what = f"open outline ({names}): it ends at {place(start)} and {place(end)}, {apart} mm apart"
    return Fault("SHAPE-08", what, "close it there, or allow a larger gap", Where(file))


def _without_doubles(pieces: Sequence[Piece], result: Chained) -> list[Piece]:
    """Drop pieces that run over the same line as another one, whichever way round."""
    seen: set[tuple[int, ...]] = set()
    kept = []
    for piece in pieces:
        keys = _keys(piece)
        if seen.isdisjoint(keys):
            kept.append(piece)
        else:
            result.notes.append(Note("SHAPE-52", f"{piece.name or 'stroke'} is drawn twice, one left out", piece.start))
        seen.update(keys)
    return kept


def _keys(piece: Piece) -> list[tuple[int, ...]]:
    """The piece on two grids set off by half a step, so that no pair falls between the steps of both."""
    first, last = sorted([piece.start, piece.end])
    boxes = [edge.extents for edge in piece.edges]
    low_x, high_x = min(b.x_min_mm for b in boxes), max(b.x_max_mm for b in boxes)
    low_y, high_y = min(b.y_min_mm for b in boxes), max(b.y_max_mm for b in boxes)
    values = [*first, *last, low_x, high_x, low_y, high_y, piece.length_mm]
    step_mm = 4 * TOUCHING_MM
    return [(k, *(floor(value / step_mm + k / 2) for value in values)) for k in (0, 1)]


def _meet(ends: dict[End, Point], partner: dict[End, End], result: Chained, file: str) -> set[End]:
    """Pair ends that lie on one spot; three and more on one spot are a fault, and are returned."""
    tangled: set[End] = set()
    for spot in _spots(ends):
        if len(spot) == 2:
            partner[spot[0]], partner[spot[1]] = spot[1], spot[0]
        elif len(spot) > 2:
            what = f"{len(spot)} line ends meet at {place(ends[spot[0]])}: which belong together cannot be told"
            tangled.update(spot)
            mend = "delete the line too many, or put it on another layer and name the layer to read"
            result.faults.append(Fault("SHAPE-11", what, mend, Where(file)))
    return tangled


def _spots(ends: dict[End, Point]) -> list[list[End]]:
    """Ends grouped by touching, in file order."""
    leader = {end: end for end in ends}

    def root(end: End) -> End:
        while leader[end] != end:
            leader[end] = leader[leader[end]]
            end = leader[end]
        return end

    for _, a, b in _near_pairs(ends, TOUCHING_MM):
        low, high = sorted((root(a), root(b)))
        leader[high] = low
    groups: dict[End, list[End]] = defaultdict(list)
    for end in ends:
        groups[root(end)].append(end)
    return list(groups.values())


def _near_pairs(ends: dict[End, Point], reach_mm: float) -> Iterator[tuple[float, End, End]]:
    """All pairs of ends within reach, each once, by a grid of that size."""
    cells: dict[tuple[int, int], list[End]] = defaultdict(list)
    for end, (x, y) in ends.items():
        column, row = floor(x / reach_mm), floor(y / reach_mm)
        for i in (column - 1, column, column + 1):
            for j in (row - 1, row, row + 1):
                for other in cells.get((i, j), ())[:_MOST_IN_A_CELL]:
                    apart_mm = distance_mm(ends[other], (x, y))
                    if apart_mm <= reach_mm:
                        yield apart_mm, other, end
        cells[column, row].append(end)


def _bridge_gaps(
    pieces: list[Piece], ends: dict[End, Point], partner: dict[End, End], gap_mm: float, result: Chained
) -> None:
    """Pair what is still open within ``gap_mm``, the nearest first."""
    free = {end: point for end, point in ends.items() if end not in partner}
    for apart_mm, a, b in sorted(_near_pairs(free, gap_mm)) if gap_mm > 0 else ():
        own_ends = a[0] == b[0] and pieces[a[0]].length_mm < 4 * gap_mm
        if a in partner or b in partner or own_ends:
            continue
        partner[a], partner[b] = b, a
        if apart_mm > TOUCHING_MM:
            result.notes.append(Note("SHAPE-51", f"gap of {figure(apart_mm)} mm closed", ends[a]))


def _runs(pieces: list[Piece], partner: dict[End, End]) -> Iterator[tuple[list[Piece], bool]]:
    """Follow the pairs: first the runs with two free ends, then the rings."""
    done: set[int] = set()
    free = [(i, side) for i in range(len(pieces)) for side in (0, 1) if (i, side) not in partner]
    starts = [*((end, False) for end in free), *(((i, 0), True) for i in range(len(pieces)))]
    for (index, side), is_ring in starts:
        if index in done:
            continue
        run = []
        while index not in done:
            done.add(index)
            run.append(pieces[index].reversed() if side else pieces[index])
            follower = partner.get((index, 1 - side))
            if follower is None:
                break
            index, side = follower
        yield run, is_ring


def _close(edges: list[Edge]) -> Closed:
    """Make a loop, moving ends of straight edges or adding short ones where ends do not quite meet."""
    fitted: list[Edge] = []
    for index, edge in enumerate(edges):
        following = edges[(index + 1) % len(edges)]
        if isinstance(edge, Segment) and distance_mm(edge.end, following.start) > 1e-9:
            edge = Segment(edge.start, following.start)
        fitted.append(edge)
        if isinstance(edge, Arc) and distance_mm(edge.end, following.start) > TOUCHING_MM / 100:
            fitted.append(Segment(edge.end, following.start))
    return as_circle(fitted) or Loop(tuple(edge for edge in fitted if edge.length_mm > 0))


def as_circle(edges: Sequence[Edge]) -> Circle | None:
    """Return the circle that a run of arcs goes once around, if that is what it does."""
    arcs = [edge for edge in edges if isinstance(edge, Arc)]
    if not arcs or any(edge.length_mm > TOUCHING_MM for edge in edges if isinstance(edge, Segment)):
        return None
    first = max(arcs, key=lambda arc: abs(arc.sweep_rad))
    alike = all(
        distance_mm(arc.centre, first.centre) < 2 * TOUCHING_MM
        and abs(arc.radius_mm - first.radius_mm) < 2 * TOUCHING_MM
        for arc in arcs
    )
    turned_rad = abs(sum(arc.sweep_rad for arc in arcs))
    if alike and abs(turned_rad - tau) * first.radius_mm < 4 * TOUCHING_MM:
        return Circle(first.centre, first.radius_mm)
    return None
