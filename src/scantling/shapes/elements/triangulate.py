"""Panels cut into triangles: fine round the places where something is screwed on, coarse elsewhere.

Points are laid on the edges, on rings round every disc, and on triangular grids between; the triangles are those of
Delaunay whose middle lies in the material. An edge is halved where a point comes too near to it, so that every edge of
the panel is one of the triangles' edges; the area that comes out is compared with the panel's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos, hypot, pi, sin, sqrt
from typing import Any

from scantling.shapes.elements.unfit import UnfitFrameError

Point = tuple[float, float]
RING = 8  # nodes on the rim of a disc
_GROWTH = 0.45  # by which triangles may grow with the way from a disc's rim
_CLOSE = 0.62  # of the local size: nearer points are left out
_LEVELS = 5
_MOST_HALVINGS = 12
_AREA_RATIO = 1e-6


@dataclass(frozen=True)
class Disc:
    """A round patch that stays stiff: what a washer or a head clamps."""

    x_mm: float
    y_mm: float
    radius_mm: float


@dataclass(frozen=True)
class Mesh:
    """Nodes (n × 2, mm), triangles (m × 3, anticlockwise), and for every disc the nodes that move with it."""

    nodes: Any
    triangles: Any
    discs: tuple[tuple[int, ...], ...]

    @property
    def area_mm2(self) -> float:
        """Area of all triangles."""
        return float(_areas(self.nodes, self.triangles).sum())


def triangulate(
    boundary: Sequence[Point], windows: Sequence[Sequence[Point]], discs: Sequence[Disc], size_mm: float
) -> Mesh:
    """Return the mesh of a panel.

    boundary, windows : corners of the edges, not repeated    size_mm : length of a triangle's side away from discs
    Raises ``UnfitFrameError`` where the triangles do not fill the panel.
    """
    import numpy as np
    from scipy.spatial import Delaunay
    from shapely import contains_xy, prepare
    from shapely.geometry import Polygon

    panel = Polygon(boundary, windows)
    if not panel.is_valid:
        raise UnfitFrameError("the outline crosses itself, or a window crosses its edge")
    prepare(panel)
    if not all(contains_xy(panel, disc.x_mm, disc.y_mm) for disc in discs):
        raise UnfitFrameError("something is screwed on where there is no material")
    rims = [_rim(disc, panel) for disc in discs]
    fixed = np.array([point for rim in rims for point in rim]).reshape(-1, 2)
    edges = _edge_points([boundary, *windows], discs, fixed, size_mm)
    inner = _inner_points(panel, np.vstack([edges, fixed]), discs, size_mm)
    nodes = np.vstack([fixed, edges, inner])
    found = Delaunay(nodes).simplices
    middles = nodes[found].mean(axis=1)
    kept = found[contains_xy(panel, middles[:, 0], middles[:, 1])]
    areas = _areas(nodes, kept)
    kept[areas < 0] = kept[areas < 0][:, ::-1]
    kept = kept[np.abs(areas) > 1e-9 * size_mm**2]
    mesh = _tidied(nodes, kept, rims)
    if abs(mesh.area_mm2 / panel.area - 1) > _AREA_RATIO:
        raise UnfitFrameError(f"triangles fill {mesh.area_mm2:.6g} of {panel.area:.6g} mm²")
    return mesh


def _areas(nodes: Any, triangles: Any) -> Any:
    a, b, c = (nodes[triangles[:, k]] for k in range(3))
    return ((b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])) / 2


def _rim(disc: Disc, panel: Any) -> list[Point]:
    """The middle of a disc and the nodes on its rim; a disc that reaches over an edge shrinks to what is inside."""
    from shapely.geometry import Point as Spot

    room_mm = panel.boundary.distance(Spot(disc.x_mm, disc.y_mm))
    radius_mm = min(disc.radius_mm, 0.8 * room_mm)
    turns = [2 * pi * k / RING for k in range(RING)]
    return [
        (disc.x_mm, disc.y_mm),
        *((disc.x_mm + radius_mm * cos(t), disc.y_mm + radius_mm * sin(t)) for t in turns),
    ]


def _sizes(points: Any, discs: Sequence[Disc], size_mm: float) -> Any:
    """How long a triangle's side may be at each point."""
    import numpy as np

    sizes = np.full(len(points), float(size_mm))
    for disc in discs:
        away = np.hypot(points[:, 0] - disc.x_mm, points[:, 1] - disc.y_mm)
        rim_mm = 2 * disc.radius_mm * sin(pi / RING)
        sizes = np.minimum(sizes, rim_mm + _GROWTH * np.maximum(0.0, away - disc.radius_mm))
    return sizes


def _edge_points(loops: Sequence[Sequence[Point]], discs: Sequence[Disc], fixed: Any, size_mm: float) -> Any:
    """Points on all edges: as far apart as the local size, nearer where other points lie close."""
    import numpy as np

    segments = [(a, b) for loop in loops for a, b in zip(loop, [*loop[1:], loop[0]], strict=True) if a != b]
    pieces = [piece for a, b in segments for piece in _divided(a, b, discs, size_mm)]
    for _ in range(_MOST_HALVINGS):
        others = np.vstack([np.array([a for a, _ in pieces]), fixed])
        halved: list[tuple[Point, Point]] = []
        for a, b in pieces:
            middle, half_mm = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), hypot(b[0] - a[0], b[1] - a[1]) / 2
            is_near = np.hypot(others[:, 0] - middle[0], others[:, 1] - middle[1]) < half_mm - 1e-7
            halved += [(a, middle), (middle, b)] if is_near.any() else [(a, b)]
        if len(halved) == len(pieces):
            break
        pieces = halved
    return np.array([a for a, _ in pieces])


def _divided(a: Point, b: Point, discs: Sequence[Disc], size_mm: float) -> list[tuple[Point, Point]]:
    import numpy as np

    length_mm = hypot(b[0] - a[0], b[1] - a[1])
    along = np.linspace(0.0, 1.0, max(2, ceil(length_mm / 2) + 1))[:, None]
    smallest_mm = float(_sizes(np.array(a) + along * (np.array(b) - np.array(a)), discs, size_mm).min())
    parts = max(1, ceil(length_mm / smallest_mm))
    points = [(a[0] + (b[0] - a[0]) * k / parts, a[1] + (b[1] - a[1]) * k / parts) for k in range(parts)]
    return list(zip(points, [*points[1:], b], strict=True))


def _inner_points(panel: Any, taken: Any, discs: Sequence[Disc], size_mm: float) -> Any:
    """Points of triangular grids, the finest first; what lies too near to a point already there is left out."""
    import numpy as np
    from scipy.spatial import cKDTree
    from shapely import contains_xy

    found = taken
    finest_mm = min([size_mm, *(2 * disc.radius_mm * sin(pi / RING) for disc in discs)])
    for level in reversed(range(_LEVELS)):
        pitch_mm = size_mm / 2**level
        if pitch_mm < 0.75 * finest_mm:
            continue
        grid = _grid(panel.bounds, pitch_mm)
        sizes = _sizes(grid, discs, size_mm)
        fits = (sizes >= 0.75 * pitch_mm) & (sizes < 1.5 * pitch_mm) if level else sizes >= 0.75 * pitch_mm
        grid = grid[fits]
        if not len(grid):
            continue
        grid = grid[contains_xy(panel, grid[:, 0], grid[:, 1])]
        if not len(grid):
            continue
        away, _ = cKDTree(found).query(grid)
        outside = np.ones(len(grid), bool)
        for disc in discs:
            outside &= np.hypot(grid[:, 0] - disc.x_mm, grid[:, 1] - disc.y_mm) > disc.radius_mm
        found = np.vstack([found, grid[outside & (away > _CLOSE * np.minimum(_sizes(grid, discs, size_mm), pitch_mm))]])
    return found[len(taken) :]


def _grid(bounds: tuple[float, float, float, float], pitch_mm: float) -> Any:
    """A triangular grid over a box."""
    import numpy as np

    x0, y0, x1, y1 = bounds
    x, y = np.meshgrid(np.arange(x0, x1 + pitch_mm, pitch_mm), np.arange(y0, y1, pitch_mm * sqrt(3) / 2))
    x[1::2] += pitch_mm / 2
    return np.stack([x.ravel(), y.ravel()], axis=1)


def _tidied(nodes: Any, triangles: Any, rims: Sequence[Sequence[Point]]) -> Mesh:
    """Leave out nodes that no triangle uses; only double points on an edge can be such."""
    import numpy as np

    used = np.unique(triangles)
    names = np.full(len(nodes), -1)
    names[used] = np.arange(len(used))
    starts = np.cumsum([0, *(len(rim) for rim in rims)])
    discs = tuple(tuple(int(n) for n in names[a:b] if n >= 0) for a, b in pairwise(starts))
    return Mesh(nodes[used], names[triangles], discs)
