"""Strips of facets that bend along one direction, followed from neighbour to neighbour: round walls are such."""

from __future__ import annotations

import itertools
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from math import radians
from typing import Any

from scantling.shapes.circle_fit import CircleFit, fit_circle
from scantling.shapes.edges import Point, distance_mm
from scantling.shapes.mesh import Corner, spread_labels
from scantling.shapes.mesh_faces import Bends, Faces

_KEY_STEPS = 499.3
"""Directions are told apart in steps of about 0.1 degree; an odd number, so that common angles miss the borders."""

_HELPERS: tuple[Corner, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))

_LEAST_NODES = 4
_SOFT_RAD = radians(20.0)
_SHORT_RATIO = 0.4


@dataclass(frozen=True)
class Axis:
    """A direction in space with two more, square to it, in which things along it are drawn flat."""

    direction: Corner
    u: Corner
    v: Corner

    @staticmethod
    def along(direction: Corner) -> Axis:
        """Return the axis of a direction, turned so that its last considerable part is positive."""
        x, y, z = direction
        sign = 1.0 if (z if abs(z) > 1e-6 else y if abs(y) > 1e-6 else x) > 0 else -1.0
        n = (round(sign * x, 9) + 0.0, round(sign * y, 9) + 0.0, round(sign * z, 9) + 0.0)
        # the axis that the direction has least of, x before y before z: in a part lying flat x stays x
        helper = _HELPERS[min(range(3), key=lambda k: (round(abs(n[k]), 6), k))]
        along = sum(a * b for a, b in zip(helper, n, strict=True))
        u = tuple(a - along * b for a, b in zip(helper, n, strict=True))
        size = sum(a * a for a in u) ** 0.5
        ux, uy, uz = (a / size for a in u)
        v = (n[1] * uz - n[2] * uy, n[2] * ux - n[0] * uz, n[0] * uy - n[1] * ux)
        return Axis(n, (ux, uy, uz), v)

    def flattened(self, points: Any) -> Any:
        """Points (n, 3) as (n, 2)."""
        import numpy as np

        return points @ np.array([self.u, self.v]).T

    def flat(self, point: Corner) -> Point:
        """One point in the plane."""
        return (
            sum(a * b for a, b in zip(point, self.u, strict=True)),
            sum(a * b for a, b in zip(point, self.v, strict=True)),
        )

    def lifted(self, point: Point, height_mm: float) -> Corner:
        """A point of the plane, at a height along the axis, in space."""
        return tuple(  # type: ignore[return-value]
            point[0] * a + point[1] * b + height_mm * n for a, b, n in zip(self.u, self.v, self.direction, strict=True)
        )


@dataclass(frozen=True)
class Run:
    """Bends in a row on one circle, seen along the axis; ``closed`` where the last is the first one's neighbour."""

    points: tuple[Point, ...]
    turns_rad: tuple[float, ...]
    low_mm: float
    high_mm: float
    concave: bool
    closed: bool
    faces: frozenset[int]


@dataclass(frozen=True)
class _Node:
    """The bend between two faces, seen along the axis."""

    faces: tuple[int, int]
    point: Point
    turn_rad: float
    low_mm: float
    high_mm: float
    concave: bool


def find_runs(faces: Faces) -> Iterator[tuple[Axis, Run]]:
    """Yield every run of bends on a common circle, with its axis."""
    import numpy as np

    bends = faces.bends
    if not len(bends.left):
        return
    group = _groups(bends)
    order = np.argsort(group, kind="stable")
    bounds = np.nonzero(np.diff(group[order], prepend=-1, append=-1))[0]
    soft = _soft_ends(bends, len(faces.normals))
    for first, last in itertools.pairwise(bounds):
        if last - first >= _LEAST_NODES:
            rows = order[first:last]
            axis = _axis_of(bends.direction[rows])
            for chain, closed in _chains(_nodes(bends, rows, axis)):
                yield from ((axis, run) for run in _split(chain, closed) if not _is_ring_of_a_barrel(run, soft, axis))


def _soft_ends(bends: Bends, count: int) -> tuple[Any, Any]:
    """Soft bends sorted by face, so that those of one face can be looked up: bounds, directions."""
    import numpy as np

    soft = bends.turn_rad < _SOFT_RAD
    face = np.concatenate([bends.left[soft], bends.right[soft]])
    way = np.concatenate([bends.direction[soft], bends.direction[soft]])
    order = np.argsort(face, kind="stable")
    return np.searchsorted(face[order], np.arange(count + 1)), way[order]


def _is_ring_of_a_barrel(run: Run, soft: tuple[Any, Any], axis: Axis) -> bool:
    """True for a short ring that goes on bending softly at both ends: a slice of a ball or a torus, not a cylinder."""
    import numpy as np

    span_mm = max(distance_mm(run.points[0], point) for point in run.points)
    if run.high_mm - run.low_mm > _SHORT_RATIO * span_mm:
        return False
    bounds, way = soft
    crossed = 0
    for face in run.faces:
        along = np.abs(way[bounds[face] : bounds[face + 1]] @ np.array(axis.direction))
        crossed += int((along < 0.9).sum() >= 2)
    return crossed > 0.7 * len(run.faces)


def _groups(bends: Bends) -> Any:
    """Bends that share a face and a direction belong together, and so on from face to face."""
    import numpy as np

    d = bends.direction
    products = np.stack([d[:, i] * d[:, j] for i in range(3) for j in range(i, 3)], axis=1)  # the same for d and -d
    keys = np.rint(products * _KEY_STEPS).astype(np.int64)
    _, key = np.unique(keys, axis=0, return_inverse=True)
    key = key.ravel()
    size = int(key.max()) + 1
    ends = np.concatenate([bends.left * size + key, bends.right * size + key])
    _, node = np.unique(ends, return_inverse=True)
    count = len(bends.left)
    return spread_labels(int(node.max()) + 1, node[:count], node[count:])[node[:count]]


def _axis_of(directions: Any) -> Axis:
    import numpy as np

    signs = np.where(directions @ directions[0] < 0, -1.0, 1.0)
    mean = (directions * signs[:, None]).mean(axis=0)
    mean = mean / np.linalg.norm(mean)
    return Axis.along((float(mean[0]), float(mean[1]), float(mean[2])))


def _nodes(bends: Bends, rows: Any, axis: Axis) -> list[_Node]:
    """One node for every pair of faces; its edge may come in several pieces."""
    import numpy as np

    start, end, along = bends.start[rows], bends.end[rows], np.array(axis.direction)
    flat = ((axis.flattened(start) + axis.flattened(end)) / 2).tolist()
    one, two = start @ along, end @ along
    low, high = np.minimum(one, two).tolist(), np.maximum(one, two).tolist()
    left, right = bends.left[rows].tolist(), bends.right[rows].tolist()
    turns, concave = bends.turn_rad[rows].tolist(), bends.concave[rows].tolist()
    pairs: dict[tuple[int, int], list[int]] = defaultdict(list)
    for k, pair in enumerate(zip(left, right, strict=True)):
        pairs[_pair(*pair)].append(k)
    found = []
    for pair, mine in pairs.items():
        x = sum(flat[k][0] for k in mine) / len(mine)
        y = sum(flat[k][1] for k in mine) / len(mine)
        ends = min(low[k] for k in mine), max(high[k] for k in mine)
        found.append(_Node(pair, (x, y), turns[mine[0]], *ends, concave[mine[0]]))
    return found


def _pair(a: int, b: int) -> tuple[int, int]:
    return (a, b) if a < b else (b, a)


def _chains(nodes: list[_Node]) -> Iterator[tuple[list[_Node], bool]]:
    """Nodes in a row over faces that join just two of them: open rows first, then rings."""
    at: dict[int, list[int]] = defaultdict(list)
    for k, node in enumerate(nodes):
        for face in node.faces:
            at[face].append(k)
    follow: list[list[int]] = [[] for _ in nodes]
    for ends in at.values():
        if len(ends) == 2 and ends[0] != ends[1]:
            follow[ends[0]].append(ends[1])
            follow[ends[1]].append(ends[0])
    done: set[int] = set()
    starts = [k for k, found in enumerate(follow) if len(found) < 2]
    for start in (*starts, *range(len(nodes))):
        if start in done:
            continue
        row, here = [], start
        while here not in done:
            done.add(here)
            row.append(here)
            here = next((k for k in follow[here] if k not in done), here)
        yield [nodes[k] for k in row], len(row) > 2 and row[0] in follow[row[-1]]


def _split(chain: list[_Node], closed: bool) -> Iterator[Run]:
    """One run where the whole ring lies on a circle, else all stretches that do."""
    if closed and _on_one_circle(chain):
        yield _run(chain, True)
        return
    if closed:
        gaps = [distance_mm(chain[k - 1].point, node.point) for k, node in enumerate(chain)]
        widest = gaps.index(max(gaps))
        chain = [*chain[widest:], *chain[:widest]]
    first = 0
    while first + _LEAST_NODES <= len(chain):
        last = _reach(chain, first)
        if last - first >= _LEAST_NODES:
            yield _run(chain[first:last], False)
            first = last
        else:
            first += 1


def _reach(chain: list[_Node], first: int) -> int:
    """How far from ``first`` on the nodes lie on one circle, bend one way, and by like amounts.

    The circle is fitted anew whenever the stretch has grown by half, so that long walls take no square of their length.
    """
    proven, last = first, first + _LEAST_NODES
    while last <= len(chain):
        if not _on_one_circle(chain[first:last]):
            break
        proven = last
        last = max(last + 1, min(len(chain), first + (last - first) * 3 // 2))
    else:
        return proven
    while proven > first and last - proven > 1:  # between the last good and the first bad length
        middle = (proven + last) // 2
        proven, last = (middle, last) if _on_one_circle(chain[first:middle]) else (proven, middle)
    return proven


def _on_one_circle(nodes: list[_Node]) -> bool:
    fit = fit_circle([node.point for node in nodes])
    good = fit is not None and fit.residual_mm <= _loose_mm(fit)
    return good and _even(nodes) and len({node.concave for node in nodes}) == 1


def _even(nodes: list[_Node]) -> bool:
    """No chord much longer than another: a flat side between two roundings is none of theirs."""
    chords = [distance_mm(a.point, b.point) for a, b in itertools.pairwise(nodes)]
    return max(chords) <= 3 * min(chords) + 1e-6


def _loose_mm(fit: CircleFit) -> float:
    return max(0.003, 0.001 * fit.radius_mm)


def _run(nodes: list[_Node], closed: bool) -> Run:
    return Run(
        tuple(node.point for node in nodes),
        tuple(node.turn_rad for node in nodes),
        min(node.low_mm for node in nodes),
        max(node.high_mm for node in nodes),
        nodes[0].concave,
        closed,
        frozenset(face for face, times in _counted(nodes).items() if times > 1),
    )


def _counted(nodes: list[_Node]) -> Counter[int]:
    """How often each face occurs: the strips of a run lie between two of its bends."""
    return Counter(face for node in nodes for face in node.faces)
