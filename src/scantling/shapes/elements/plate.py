"""A panel brought down to the discs where something is screwed on: its stiffness and its mass, once for all sheets.

Bending grows with E t³, stretching with E t, mass with ρ t, and in a flat panel the two do not know of each other. So
one reduction of an outline serves every thickness and every modulus of sheets whose ratios are alike. Exact for
standing loads at the discs; moving masses by the shapes under unit movements of the discs and a few shapes with the
discs held (Craig and Bampton 1968).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from scantling.shapes.elements.shell import bending_stiffness, elasticity, membrane_stiffness
from scantling.shapes.elements.triangulate import Disc, Mesh, Point, triangulate

OWN_SHAPES = 6  # with the discs held, for the panel's own swinging between them


@dataclass(frozen=True)
class Plate:
    """What decides a panel's reduction: its outline, its discs, and the ratios of its sheet.

    cross_ratio, shear_ratio : moduli across x and in shear over that along x
    """

    boundary: tuple[Point, ...]
    windows: tuple[tuple[Point, ...], ...]
    discs: tuple[Disc, ...]
    cross_ratio: float
    shear_ratio: float
    poisson_ratio: float


@dataclass(frozen=True)
class Reduced:
    """Stiffness and mass of a panel with E, t and ρ all 1.

    bend, bend_mass : w, θx, θy of every disc, then its own shapes    stretch, stretch_mass : u, v, θz of every disc
    area_mm2 : of the material
    """

    bend: Any
    bend_mass: Any
    stretch: Any
    stretch_mass: Any
    area_mm2: float


def reduce_plate(plate: Plate, size_mm: float) -> Reduced:
    """Return a panel brought down to its discs, from triangles of this size."""
    mesh = plate_mesh(plate, size_mm)
    masses = node_areas(mesh)
    bend, bend_mass = _brought_down(*_bending(plate, mesh), mesh, masses, OWN_SHAPES)
    stretch, stretch_mass = _brought_down(*_stretching(plate, mesh), mesh, masses, 0)
    return Reduced(bend, bend_mass, stretch, stretch_mass, mesh.area_mm2)


def plate_mesh(plate: Plate, size_mm: float) -> Mesh:
    """Return the triangles of a panel."""
    return triangulate(plate.boundary, plate.windows, plate.discs, size_mm)


def node_areas(mesh: Mesh) -> Any:
    """Return the area that each node stands for."""
    import numpy as np

    a, b, c = (mesh.nodes[mesh.triangles[:, k]] for k in range(3))
    areas = ((b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])) / 2
    found = np.zeros(len(mesh.nodes))
    np.add.at(found, mesh.triangles.ravel(), np.repeat(areas / 3, 3))
    return found


def gather(triangles: Any, matrices: Any, count: int) -> Any:
    """Return the sparse sum of triangles' matrices with three freedoms a node."""
    import numpy as np
    from scipy.sparse import csc_matrix

    freedoms = (triangles[:, :, None] * 3 + np.arange(3)).reshape(len(triangles), 9)
    rows, columns = np.repeat(freedoms, 9, axis=1).ravel(), np.tile(freedoms, (1, 9)).ravel()
    return csc_matrix((matrices.ravel(), (rows, columns)), shape=(3 * count, 3 * count))


def plate_shape(plate: Plate, size_mm: float, bend: Sequence[float], stretch: Sequence[float]) -> tuple[Mesh, Any]:
    """Return the mesh and how all its nodes move (n × 3: u, v, w) where the discs and own shapes move so."""
    import numpy as np

    mesh = plate_mesh(plate, size_mm)
    masses = node_areas(mesh)
    moved = np.zeros((len(mesh.nodes), 3))
    bent = _recovered(*_bending(plate, mesh), mesh, masses, np.asarray(bend), OWN_SHAPES).reshape(-1, 3)
    drawn = _recovered(*_stretching(plate, mesh), mesh, masses, np.asarray(stretch), 0).reshape(-1, 3)
    moved[:, :2], moved[:, 2] = drawn[:, :2], bent[:, 0]
    return mesh, moved


def _elastic(plate: Plate) -> Any:
    return elasticity(1.0, plate.cross_ratio, plate.poisson_ratio, plate.shear_ratio)


def _bending(plate: Plate, mesh: Mesh) -> tuple[Any, Any, Any]:
    """Stiffness, which freedoms carry mass, and how a rim follows its disc: w + θx·y - θy·x."""
    matrices = bending_stiffness(mesh.nodes[mesh.triangles], _elastic(plate) / 12)
    return gather(mesh.triangles, matrices, len(mesh.nodes)), (1, 0, 0), ((0, 1, 1, 1.0), (0, 2, 0, -1.0))


def _stretching(plate: Plate, mesh: Mesh) -> tuple[Any, Any, Any]:
    """Stiffness, which freedoms carry mass, and how a rim follows its disc: u - θz·y, v + θz·x."""
    matrices = membrane_stiffness(mesh.nodes[mesh.triangles], _elastic(plate), 1.0, plate.poisson_ratio)
    return gather(mesh.triangles, matrices, len(mesh.nodes)), (1, 1, 0), ((0, 2, 1, -1.0), (1, 2, 0, 1.0))


def _tied(mesh: Mesh, follow: Sequence[tuple[int, int, int, float]]) -> tuple[Any, Any]:
    """The matrix from free freedoms to all, rims following their discs; the freedoms of the discs come first."""
    from scipy.sparse import csc_matrix

    count = 3 * len(mesh.nodes)
    masters = [disc[0] for disc in mesh.discs]
    slaves = {node for disc in mesh.discs for node in disc[1:]}
    order = masters + [n for n in range(len(mesh.nodes)) if n not in slaves and n not in set(masters)]
    column = {node: 3 * k for k, node in enumerate(order)}
    entries: list[tuple[int, int, float]] = []
    for node, first in column.items():
        entries += [(3 * node + k, first + k, 1.0) for k in range(3)]
    for disc in mesh.discs:
        for node in disc[1:]:
            away = mesh.nodes[node] - mesh.nodes[disc[0]]
            links = [(k, k, 1.0) for k in range(3)] + [(a, b, f * float(away[axis])) for a, b, axis, f in follow]
            for a, b, factor in links:
                entries.append((3 * node + a, column[disc[0]] + b, factor))  # a rim follows its disc
    rows, columns, values = zip(*entries, strict=True)
    return csc_matrix((values, (rows, columns)), shape=(count, 3 * len(order))), 3 * len(masters)


def _split(stiffness: Any, carry: Sequence[int], follow: Any, mesh: Mesh, masses: Any) -> tuple[Any, ...]:
    import numpy as np
    from scipy.sparse import diags

    tie, few = _tied(mesh, follow)
    full = (np.asarray(masses)[:, None] * np.asarray(carry, float)).ravel()
    k, m = (tie.T @ stiffness @ tie).tocsc(), (tie.T @ diags(full) @ tie).tocsc()
    return tie, few, k, m


def _brought_down(
    stiffness: Any, carry: Sequence[int], follow: Any, mesh: Mesh, masses: Any, own: int
) -> tuple[Any, Any]:
    import numpy as np

    _, few, k, m = _split(stiffness, carry, follow, mesh, masses)
    shapes, squares = _shapes(k, m, few, own)
    small = np.zeros((few + own, few + own))
    small[:few, :few] = _even(k[:few, :few].toarray() + k[:few, few:] @ shapes[few:, :few])
    small[few:, few:] = np.diag(squares)
    return small, _even(shapes.T @ (m @ shapes))


def _shapes(k: Any, m: Any, few: int, own: int) -> tuple[Any, Any]:
    """All freedoms under unit movements of the discs, then own shapes with the discs held, and the ω² of these."""
    import numpy as np
    from scipy.sparse.linalg import splu

    inner = splu(k[few:, few:])
    shapes = np.zeros((k.shape[0], few + own))
    shapes[:few, :few] = np.eye(few)
    shapes[few:, :few] = -inner.solve(k[few:, :few].toarray())
    squares, shapes[few:, few:] = _own(k, m, inner, few, own)
    return shapes, squares


def _own(k: Any, m: Any, inner: Any, few: int, own: int) -> tuple[Any, Any]:
    """The slowest shapes with the discs held, each with its largest movement forwards, and their ω²."""
    import numpy as np
    from scipy.sparse.linalg import LinearOperator, eigsh

    rest = k.shape[0] - few
    if not own:
        return np.zeros(0), np.zeros((rest, 0))
    inverse = LinearOperator((rest, rest), matvec=inner.solve, dtype=float)
    start = np.ones(rest)  # else the library draws one
    squares, found = eigsh(k[few:, few:], own, m[few:, few:], sigma=0.0, OPinv=inverse, v0=start)
    return squares, found * np.sign(found[np.argmax(np.abs(found), axis=0), np.arange(own)])


def _recovered(
    stiffness: Any, carry: Sequence[int], follow: Any, mesh: Mesh, masses: Any, amplitudes: Any, own: int
) -> Any:
    """How all freedoms move where the discs and own shapes move so."""
    import numpy as np
    from scipy.sparse.linalg import splu

    tie, few, k, m = _split(stiffness, carry, follow, mesh, masses)
    inner = splu(k[few:, few:])
    _, shapes = _own(k, m, inner, few, own)
    rest = -inner.solve(k[few:, :few] @ amplitudes[:few]) + shapes @ amplitudes[few:]
    return tie @ np.concatenate([amplitudes[:few], rest])


def _even(matrix: Any) -> Any:
    return (matrix + matrix.T) / 2
