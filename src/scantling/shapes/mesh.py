"""Triangle meshes in mm, and what they measure: volume, area, size, bodies, and whether they are closed."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any

from scantling.errors import Fault, FaultsError, Where
from scantling.shapes.drawn import FURTHEST_MM, Note, figure

MOST_TRIANGLES = 3_000_000

_ROUNDING_RATIO = 1e-6
"""Single precision keeps seven digits; corners nearer than this share of the size are one corner written twice."""

Corner = tuple[float, float, float]


@dataclass(frozen=True, eq=False)
class Mesh:
    """One object: ``points`` (n, 3) in mm, ``triangles`` (m, 3) indices, anticlockwise as seen from outside."""

    name: str
    points: Any
    triangles: Any

    @cached_property
    def corners(self) -> Any:
        """The triangles' corners, (m, 3, 3)."""
        return self.points[self.triangles]

    @cached_property
    def crosses(self) -> Any:
        """Normal of every triangle times twice its area, (m, 3)."""
        import numpy as np

        a, b, c = (self.corners[:, k] for k in range(3))
        return np.cross(b - a, c - a)


@dataclass(frozen=True)
class MeshFile:
    """A mesh file read: its objects where they stand, in mm, and the notes of the reader."""

    file: str
    unit: str
    meshes: tuple[Mesh, ...]
    notes: tuple[Note, ...] = ()


@dataclass(frozen=True)
class MeshFacts:
    """What a mesh measures; ``volume_mm3`` is None where it is not closed, ``open_at`` then says where."""

    name: str
    triangles: int
    area_mm2: float
    low: Corner
    high: Corner
    bodies: int
    closed: bool
    volume_mm3: float | None
    open_edges: int = 0
    open_at: Corner | None = None
    notes: tuple[Note, ...] = ()

    @property
    def size_mm(self) -> Corner:
        """Extents along x, y and z."""
        return tuple(b - a for a, b in zip(self.low, self.high, strict=True))  # type: ignore[return-value]

    @property
    def width_mm(self) -> float:
        """Extent along x."""
        return self.size_mm[0]

    @property
    def depth_mm(self) -> float:
        """Extent along y."""
        return self.size_mm[1]

    @property
    def height_mm(self) -> float:
        """Extent along z."""
        return self.size_mm[2]


def make_mesh(name: str, points: Any, triangles: Any, file: str) -> Mesh:
    """Return a mesh with equal points joined and flat triangles dropped.

    points : (n, 3) in mm          triangles : (m, 3) indices
    Raises FaultsError: SHAPE-32 nothing in it, SHAPE-33 not a number or out of reach, SHAPE-36 too many triangles.
    """
    import numpy as np

    points, triangles = np.asarray(points, dtype=float), np.asarray(triangles, dtype=np.int64)
    if len(triangles) > MOST_TRIANGLES:
        what = f"the mesh has {len(triangles)} triangles, the limit is {MOST_TRIANGLES}"
        raise FaultsError([Fault("SHAPE-36", what, "export it coarser", Where(file))])
    if not np.isfinite(points).all() or (points.size and np.abs(points).max() > FURTHEST_MM):
        what = "a corner of the mesh is not a number or lies beyond a kilometre"
        raise FaultsError([Fault("SHAPE-33", what, "export it again, check the unit", Where(file))])
    points, triangles = _clean(points, triangles)
    if not len(triangles):
        raise FaultsError(
            [Fault("SHAPE-32", f"{name or 'the mesh'} holds no triangle", "export it again", Where(file))]
        )
    for array in (points, triangles):
        array.setflags(write=False)
    return Mesh(name, points, triangles)


def _clean(points: Any, triangles: Any) -> tuple[Any, Any]:
    """Join equal points; where that leaves edges open, those that only rounding keeps apart, if that closes more."""
    exact = _joined(points, triangles, 0.0)
    if not len(exact[1]) or not len(_loose_edges(*exact)):
        return exact
    reach_mm = _span(points) * _ROUNDING_RATIO
    near = _joined(points, triangles, reach_mm)
    return near if len(near[1]) and len(_loose_edges(*near)) < len(_loose_edges(*exact)) else exact


def _span(points: Any) -> float:
    return float((points.max(axis=0) - points.min(axis=0)).max())


def _joined(points: Any, triangles: Any, reach_mm: float) -> tuple[Any, Any]:
    """Give near points one index, by rank along each axis, which sorts numbers instead of rows; drop flat triangles."""
    import numpy as np

    if not len(points):
        return points, triangles
    code = np.zeros(len(points), dtype=np.int64)
    for axis in range(3):
        values, rank = np.unique(points[:, axis], return_inverse=True)
        if reach_mm:
            rank = np.concatenate([[0], np.cumsum(np.diff(values) > reach_mm)])[rank]
        _, code = np.unique(code * (int(rank.max()) + 1) + rank, return_inverse=True)
    _, first, index = np.unique(code, return_index=True, return_inverse=True)
    triangles = index[triangles]
    return points[first], triangles[~(triangles == np.roll(triangles, 1, axis=1)).any(axis=1)]


def measure(mesh: Mesh) -> MeshFacts:
    """Return the facts of one mesh; an inside-out one is turned, and that is noted."""
    import numpy as np

    area_mm2 = float(np.linalg.norm(mesh.crosses, axis=1).sum() / 2)
    middle = mesh.points.mean(axis=0)
    a, b, c = (mesh.corners[:, k] - middle for k in range(3))
    signed_mm3 = float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6)
    loose = _loose_edges(mesh.points, mesh.triangles)
    bodies = _bodies(mesh)
    used = mesh.points[np.unique(mesh.triangles)]
    notes = _notes(mesh, signed_mm3, bodies, len(loose))
    return MeshFacts(
        mesh.name,
        len(mesh.triangles),
        area_mm2,
        _corner(used.min(axis=0)),
        _corner(used.max(axis=0)),
        bodies,
        not len(loose),
        None if len(loose) else abs(signed_mm3),
        len(loose),
        _corner(mesh.points[loose[0]].mean(axis=0)) if len(loose) else None,
        tuple(notes),
    )


def _corner(values: Any) -> Corner:
    return (float(values[0]), float(values[1]), float(values[2]))


def _loose_edges(points: Any, triangles: Any) -> Any:
    """Edges that are not run as often one way as the other: the surface is open there, or turned over."""
    import numpy as np

    starts, ends = triangles.ravel(), np.roll(triangles, -1, axis=1).ravel()
    low, high = np.minimum(starts, ends), np.maximum(starts, ends)
    codes, index = np.unique(low * len(points) + high, return_inverse=True)
    balance = np.bincount(index, weights=np.where(starts < ends, 1, -1))
    loose = codes[balance != 0]
    return np.stack([loose // len(points), loose % len(points)], axis=1)


def _bodies(mesh: Mesh) -> int:
    """How many parts hang together over common edges: the smallest label spreads until nothing changes."""
    import numpy as np

    edges = np.sort(np.stack([mesh.triangles, np.roll(mesh.triangles, -1, axis=1)], axis=2).reshape(-1, 2), axis=1)
    codes = edges[:, 0] * len(mesh.points) + edges[:, 1]
    order = np.argsort(codes, kind="stable")
    same = codes[order][1:] == codes[order][:-1]
    a, b = (order[:-1][same] // 3), (order[1:][same] // 3)
    return len(np.unique(spread_labels(len(mesh.triangles), a, b)))


def spread_labels(count: int, a: Any, b: Any) -> Any:
    """Return for each of ``count`` things the smallest index among those it is linked to by the pairs a, b."""
    import numpy as np

    label = np.arange(count)
    while True:
        before = label.copy()
        least = np.minimum(label[a], label[b])
        np.minimum.at(label, before[a], least)
        np.minimum.at(label, before[b], least)
        while not np.array_equal(label, label[label]):
            label = label[label]
        if np.array_equal(before, label):
            return label


def _notes(mesh: Mesh, signed_mm3: float, bodies: int, loose: int) -> list[Note]:
    notes = []
    if loose:
        notes.append(Note("SHAPE-61", f"{mesh.name or 'the mesh'} is not closed: {loose} open or turned edges"))
    elif signed_mm3 < 0:
        notes.append(Note("SHAPE-62", f"{mesh.name or 'the mesh'} is inside out; its volume is taken positive"))
    if bodies > 1 and not loose:
        what = f"{mesh.name or 'the mesh'} has {bodies} bodies; where they overlap the volume counts twice"
        notes.append(Note("SHAPE-63", what))
    return notes


def require_closed(facts: MeshFacts, file: str) -> None:
    """Raise FaultsError (SHAPE-35) for a mesh that is open: it has no volume, and a slicer guesses what is meant."""
    if not facts.closed:
        where = ", ".join(figure(value) for value in facts.open_at or ())
        what = f"{facts.name or 'the mesh'} is not closed: {facts.open_edges} open or turned edges, one at ({where}) mm"
        raise FaultsError([Fault("SHAPE-35", what, "repair it where it was drawn and export again", Where(file))])
