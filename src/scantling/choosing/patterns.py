"""Cutting patterns of one bar: every way to fill it that nothing more fits into, in whole µm.

Each piece takes its length, twice the facing, and a kerf; the last kerf may fall off the end of the bar.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from scantling.choosing.problem import Sawing

MOST_PATTERNS = 2_000
MOST_STEPS = 60_000
Pattern = tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class Bar:
    """A bar to cut: its length and what cutting costs."""

    length_um: int
    sawing: Sawing

    def width_um(self, piece_um: int) -> int:
        """Return what one piece takes of ``room_um``."""
        return piece_um + 2 * self.sawing.facing_um + self.sawing.kerf_um

    @property
    def room_um(self) -> int:
        """Return the length of the bar and a kerf that may fall off its end."""
        return self.length_um + self.sawing.kerf_um

    def is_whole(self, pattern: Pattern) -> bool:
        """Return whether the pattern is one piece that is the bar as it comes."""
        return pattern == ((self.length_um, 1),)

    def fits(self, pattern: Pattern) -> bool:
        """Return whether the pieces can be cut from the bar."""
        return self.is_whole(pattern) or sum(n * self.width_um(um) for um, n in pattern) <= self.room_um

    def left_um(self, pattern: Pattern) -> int:
        """Return what remains of the bar after the last cut."""
        if self.is_whole(pattern):
            return 0
        return max(0, self.length_um - sum(n * self.width_um(um) for um, n in pattern))


def patterns(bar: Bar, most: Mapping[int, int], together: Callable[[int, int], bool]) -> list[Pattern] | None:
    """Return all fullest patterns, sorted; None where they are too many.

    most : by length in µm, how many pieces can ever be wanted    together : whether two lengths occur in one build
    """
    found: set[Pattern] = set()
    lengths = sorted((um for um, count in most.items() if count and bar.width_um(um) <= bar.room_um), reverse=True)
    steps = 0

    def fill(index: int, room: int, chosen: Pattern) -> bool:
        nonlocal steps
        steps += 1
        if steps > MOST_STEPS or len(found) > MOST_PATTERNS:
            return False
        if index == len(lengths):
            if chosen and not _more_fits(bar, lengths, most, together, room, chosen):
                found.add(chosen)
            return True
        um = lengths[index]
        able = min(most[um], room // bar.width_um(um)) if all(together(um, other) for other, _ in chosen) else 0
        return all(
            fill(index + 1, room - count * bar.width_um(um), (*chosen, (um, count)) if count else chosen)
            for count in range(able, -1, -1)
        )

    complete = fill(0, bar.room_um, ())
    if most.get(bar.length_um):
        found.add(((bar.length_um, 1),))
    return sorted(found) if complete and len(found) <= MOST_PATTERNS else None


def _more_fits(
    bar: Bar,
    lengths: Sequence[int],
    most: Mapping[int, int],
    together: Callable[[int, int], bool],
    room: int,
    chosen: Pattern,
) -> bool:
    """Return whether one more piece of any length could be added."""
    counts = dict(chosen)
    return any(
        bar.width_um(um) <= room and counts.get(um, 0) < most[um] and all(together(um, other) for other in counts)
        for um in lengths
    )


@dataclass(frozen=True)
class Arc:
    """A piece cut from ``start`` on, ending at ``end`` (positions rounded up to the grid)."""

    start: int
    end: int
    length_um: int


MOST_ARCS = 6_000
GRIDS_UM = (1, 10, 100, 500, 1_000, 2_000, 5_000, 10_000, 20_000, 50_000)


def arcs(bar: Bar, most: Mapping[int, int]) -> tuple[list[Arc], bool]:
    """Return the arcs over reachable positions, longest pieces first, and whether they are exact.

    Where they would be too many, every piece is rounded up to a coarser grid: what is then cut always fits.
    """
    lengths = sorted((um for um, count in most.items() if count and bar.width_um(um) <= bar.room_um), reverse=True)
    for grid in GRIDS_UM:
        found = _arcs(bar, lengths, most, grid)
        if found is not None:
            return found, grid == 1
    return [Arc(0, bar.room_um, um) for um in lengths], False


def _arcs(bar: Bar, lengths: Sequence[int], most: Mapping[int, int], grid: int) -> list[Arc] | None:
    reached = {0}
    found: set[tuple[int, int, int]] = set()
    for um in lengths:
        width = -(-bar.width_um(um) // grid) * grid
        ends = set(reached)
        for _ in range(most[um]):
            ends = {start + width for start in ends if start + width <= bar.room_um}
            found |= {(end - width, end, um) for end in ends}
            if len(found) > MOST_ARCS:
                return None
            if ends <= reached:
                break
            reached = reached | ends
    if most.get(bar.length_um):
        found.add((0, bar.room_um, bar.length_um))
    return [Arc(*arc) for arc in sorted(found)]


def unravelled(flow: Mapping[Arc, int]) -> list[tuple[Pattern, int]]:
    """Return the patterns that whole flows over arcs mean, sorted, with how often each is cut."""
    left = {arc: count for arc, count in flow.items() if count}
    found: dict[Pattern, int] = {}
    while True:
        pieces: dict[int, int] = {}
        position = 0
        while True:
            step = min((a for a, n in left.items() if n and a.start == position), key=lambda a: a.end, default=None)
            if step is None:
                break
            left[step] -= 1
            pieces[step.length_um] = pieces.get(step.length_um, 0) + 1
            position = step.end
        if not pieces:
            return sorted(found.items())
        pattern = tuple(sorted(pieces.items(), reverse=True))
        found[pattern] = found.get(pattern, 0) + 1
