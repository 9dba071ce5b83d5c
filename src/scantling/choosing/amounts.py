"""What the copies of a machine take of every resource, place by place and joint by joint, and how many boards."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from typing import cast

from scantling.build.boards import boards_needed
from scantling.build.case import Case
from scantling.build.demand import Need, joint_needs, place_needs
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.choosing.growing import Grower
from scantling.choosing.problem import BoardDemand, Demand, PackOffer, Resource
from scantling.choosing.result import Unit
from scantling.choosing.trees import Tree
from scantling.model.kinds import SheetStock

BOARD_PIECE = "board-piece"  # a unit of needs: such are counted as boards
NO_BOARD = (1, 1)  # the size of a board that nobody sells: no panel fits on it

Amounts = tuple[tuple[Resource, int], ...]


def demands(grower: Grower, copies: int) -> tuple[Demand, ...]:
    """Return what every place and joint takes, without what is made from boards."""
    case, design = grower.case, grower.case.project.design
    pieces = _by_the_piece(case)
    asked: list[tuple[str, Callable[[Reader], Iterable[Need]]]] = []
    asked += [(f"place {place}", partial(_of_place, place, pieces)) for place in design.places]
    asked += [(f"joint {joint}", partial(_of_joint, joint)) for joint in design.joints]
    return tuple(Demand(name, grower.tree(f"needs {name}", partial(_amounts, of, copies))) for name, of in asked)


def _amounts(needs: Callable[[Reader], Iterable[Need]], copies: int, reader: Reader) -> Amounts:
    total: dict[Resource, int] = {}
    for need in needs(reader):
        if need.unit != BOARD_PIECE:
            resource = Resource(need.part, cast(Unit, need.unit), need.length_um or 0)
            total[resource] = total.get(resource, 0) + need.amount * copies
    return tuple(sorted(total.items()))


def _of_place(place: str, by_the_piece: frozenset[str], reader: Reader) -> tuple[Need, ...]:
    """What a place takes; where a length or a mesh is not described, pieces of what can be had by the piece."""
    try:
        return reader.derive(place_needs, place)
    except NotDescribedError:
        part, pieces = reader.part(place), reader.pieces(place)
        is_sold = part is not None and part.id in by_the_piece
        return (Need(part.id, "piece", pieces, f"place {place}"),) if part is not None and is_sold and pieces else ()


def _of_joint(joint: str, reader: Reader) -> tuple[Need, ...]:
    """What a joint takes; nothing where it is not described."""
    try:
        return reader.derive(joint_needs, joint)
    except NotDescribedError:
        return ()


def _by_the_piece(case: Case) -> frozenset[str]:
    """Return the parts that can be had by the piece."""
    workshop = case.project.workshop
    sold = {o.part for o in workshop.offers if (o.length_mm, o.net_mass_kg, o.board_width_mm) == (None, None, None)}
    return frozenset(sold | {s.part for s in workshop.stock if (s.length_mm, s.mass_kg) == (None, None)})


def boards(grower: Grower, offers: Sequence[PackOffer], copies: int) -> tuple[BoardDemand, ...]:
    """Return how many boards, of each size on offer, every sheet material takes."""
    sold = {(offer.part, offer.board_um) for offer in offers if offer.unit == "board"}
    unsold = set(sheet_materials(grower.case)) - {part for part, _ in sold}
    found = [*sorted(sold), *((part, NO_BOARD) for part in sorted(unsold))]
    return tuple(BoardDemand(part, size, _board_tree(grower, part, size, copies)) for part, size in found)


def _board_tree(grower: Grower, part: str, size: tuple[int, int], copies: int) -> Tree:
    return grower.tree(f"boards {size[0]} {size[1]} {part}", partial(_board_count, part, size, copies))


def _board_count(part: str, size: tuple[int, int], copies: int, reader: Reader) -> int | None:
    """How many boards a material takes; none while a sheet of it has no outline, which the checks say."""
    try:
        return reader.derive(boards_needed, part, *size, copies)
    except NotDescribedError:
        return 0


def sheet_materials(case: Case) -> Iterator[str]:
    """Yield the materials that the design's sheets may be made from."""
    design = case.project.design
    for sheet in design.sheets:
        options = design.places[sheet].options if sheet in design.places else ()
        yield from (option.part for option in options if isinstance(case.part(option.part), SheetStock))
