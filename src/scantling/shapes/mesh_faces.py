"""A mesh as a maker sees it: triangles joined to flat faces, and the bends between neighbouring faces."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians
from typing import Any

from scantling.shapes.mesh import Mesh, spread_labels

_FLAT_DEG = 0.1
_STEEPEST_DEG = 61.0


@dataclass(frozen=True, eq=False)
class Faces:
    """Flat faces: for every triangle its face, and for every face normal, area, and distance of its plane from 0.

    ``bends`` holds one row for every edge between two faces that turns by no more than a hexagon does.
    """

    mesh: Mesh
    face_of: Any
    normals: Any
    areas_mm2: Any
    offsets_mm: Any
    bends: Bends


@dataclass(frozen=True, eq=False)
class Bends:
    """Edges between faces ``left`` and ``right``: points ``start`` and ``end``, direction, turn, concave or not."""

    left: Any
    right: Any
    start: Any
    end: Any
    direction: Any
    turn_rad: Any
    concave: Any


def find_faces(mesh: Mesh) -> Faces:
    """Return the flat faces of a mesh and the bends between them."""
    import numpy as np

    twice = np.linalg.norm(mesh.crosses, axis=1)
    units = mesh.crosses / np.where(twice > 0, twice, 1)[:, None]
    a, b, start, end = _links(mesh)
    flat = np.einsum("ij,ij->i", units[a], units[b]) > cos(radians(_FLAT_DEG))
    # a sliver has no direction of its own: it belongs to the neighbour across its longest side
    label = spread_labels(len(units), a[flat], b[flat])
    _, face_of = np.unique(label, return_inverse=True)
    count = int(face_of.max()) + 1
    sums = np.stack([np.bincount(face_of, mesh.crosses[:, k], count) for k in range(3)], axis=1)
    areas = np.linalg.norm(sums, axis=1)
    normals = sums / np.where(areas > 0, areas, 1)[:, None]
    heights = np.einsum("ij,ij->i", mesh.corners.mean(axis=1), normals[face_of])
    weights = np.bincount(face_of, twice, count)
    offsets = np.bincount(face_of, heights * twice, count) / np.where(weights > 0, weights, 1)
    bends = _bends(mesh, face_of, normals, a, b, start, end)
    return Faces(mesh, face_of, normals, areas / 2, offsets, bends)


def _links(mesh: Mesh) -> tuple[Any, Any, Any, Any]:
    """Pairs of triangles that share an edge, which runs from ``start`` to ``end`` in the first of them."""
    import numpy as np

    starts, ends = mesh.triangles.ravel(), np.roll(mesh.triangles, -1, axis=1).ravel()
    size = len(mesh.points)
    forward, backward = starts * size + ends, ends * size + starts
    order = np.argsort(forward, kind="stable")
    place = np.searchsorted(forward[order], backward)
    place = np.minimum(place, len(order) - 1)
    found = (forward[order][place] == backward) & (starts < ends)
    mates = order[place]
    return np.nonzero(found)[0] // 3, mates[found] // 3, starts[found], ends[found]


def _bends(mesh: Mesh, face_of: Any, normals: Any, a: Any, b: Any, start: Any, end: Any) -> Bends:
    import numpy as np

    left, right = face_of[a], face_of[b]
    cosine = np.einsum("ij,ij->i", normals[left], normals[right])
    kept = (left != right) & (cosine > cos(radians(_STEEPEST_DEG)))
    left, right, start, end, cosine = left[kept], right[kept], start[kept], end[kept], cosine[kept]
    way = mesh.points[end] - mesh.points[start]
    length = np.linalg.norm(way, axis=1)
    way = way / np.where(length > 0, length, 1)[:, None]
    # the edge runs anticlockwise around the left face: turning outwards over it is concave
    side = np.einsum("ij,ij->i", np.cross(normals[left], normals[right]), way)
    turn = np.arccos(np.clip(cosine, -1, 1))
    return Bends(left, right, mesh.points[start], mesh.points[end], way, turn, side < 0)
