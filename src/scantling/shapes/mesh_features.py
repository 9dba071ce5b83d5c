"""What a printed part offers, read off its mesh: bores, bosses, hexagons, roundings, thicknesses, hole patterns.

Each is told with the number of facets that carry it and its residual; a bore is never told as a thread.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, degrees, pi
from typing import Any

from scantling.shapes.circle_fit import fit_circle
from scantling.shapes.hole_patterns import Hole, Pattern, find_patterns
from scantling.shapes.mesh import Corner, Mesh
from scantling.shapes.mesh_chains import Axis, Run, find_runs
from scantling.shapes.mesh_faces import Faces, find_faces

_MOST_TRIANGLES = 600_000
_LEAST_SHARE = 0.002
_MOST_THICKNESSES = 8
_LEAST_SWEEP_DEG = 30.0


@dataclass(frozen=True)
class Cylinder:
    """A round surface. In a mesh its corners lie on the circle, its facets within: both diameters are told.

    sweep_deg : 360 for a whole one, less for a rounding or a seat          concave : a bore or seat, else a boss
    centre : middle of its axis          ends : "open", "floor" or "step", at the low and at the high end of the axis
    """

    diameter_mm: float
    across_facets_mm: float
    centre: Corner
    axis: Corner
    depth_mm: float
    sweep_deg: float
    concave: bool
    facets: int
    residual_mm: float
    ends: tuple[str, str] = ("open", "open")


@dataclass(frozen=True)
class Hexagon:
    """Six equal flats around an axis: a pocket for a nut where concave."""

    across_flats_mm: float
    centre: Corner
    axis: Corner
    depth_mm: float
    concave: bool
    residual_mm: float
    ends: tuple[str, str] = ("open", "open")


@dataclass(frozen=True)
class Thickness:
    """Material between two parallel flat faces: how thick, along which direction, and the smaller face's area."""

    thickness_mm: float
    axis: Corner
    area_mm2: float


@dataclass(frozen=True)
class MeshFeatures:
    """The features of a mesh, largest first; ``seen`` is False for one too large to look into."""

    bores: tuple[Cylinder, ...] = ()
    bosses: tuple[Cylinder, ...] = ()
    partial: tuple[Cylinder, ...] = ()
    hexagons: tuple[Hexagon, ...] = ()
    thicknesses: tuple[Thickness, ...] = ()
    patterns: tuple[tuple[Corner, Pattern], ...] = ()
    seen: bool = True


def recognise_mesh(mesh: Mesh) -> MeshFeatures:
    """Return what the mesh holds. Curved surfaces whose facets are not strips along an axis are not told."""
    if len(mesh.triangles) > _MOST_TRIANGLES:
        return MeshFeatures(seen=False)
    faces = find_faces(mesh)
    flats = _Flats(faces)
    cylinders: list[Cylinder] = []
    hexagons: list[Hexagon] = []
    curved: set[int] = set()
    for axis, run in find_runs(faces):
        found = _hexagon(axis, run, flats) or _cylinder(axis, run, flats)
        if isinstance(found, Hexagon):
            hexagons.append(found)
        elif found:
            cylinders.append(found)
            curved |= run.faces
    whole = sorted((c for c in cylinders if c.sweep_deg >= 359), key=_order)
    bores = tuple(c for c in whole if c.concave)
    return MeshFeatures(
        bores,
        tuple(c for c in whole if not c.concave),
        tuple(sorted((c for c in cylinders if c.sweep_deg < 359), key=_order)),
        tuple(sorted(hexagons, key=lambda h: (-h.across_flats_mm, h.centre))),
        tuple(_thicknesses(faces, flats, curved)),
        tuple(_patterns(bores)),
    )


def _order(cylinder: Cylinder) -> tuple[float, ...]:
    return (
        -round(cylinder.diameter_mm, 2),
        -round(cylinder.sweep_deg),
        *(round(value, 3) for value in cylinder.centre),
    )


def _hexagon(axis: Axis, run: Run, flats: _Flats) -> Hexagon | None:
    """Six corners that each turn by 60 degrees."""
    if not run.closed or len(run.points) != 6 or any(abs(degrees(turn) - 60) > 1.5 for turn in run.turns_rad):
        return None
    fit = fit_circle(run.points)
    if fit is None or fit.residual_mm > max(0.05, 0.01 * fit.radius_mm):
        return None
    across_mm = 2 * fit.radius_mm * cos(pi / 6)
    centre = axis.lifted(fit.centre, (run.low_mm + run.high_mm) / 2)
    ends = flats.ends(axis, fit.centre, fit.radius_mm, run)
    return Hexagon(across_mm, centre, axis.direction, run.high_mm - run.low_mm, run.concave, fit.residual_mm, ends)


def _cylinder(axis: Axis, run: Run, flats: _Flats) -> Cylinder | None:
    """Eight strips and more for a whole one: fewer are a prism, not a round thing; three and more for a part of one."""
    fit = fit_circle(run.points)
    facets = len(run.points) if run.closed else len(run.points) - 1
    if fit is None or facets < (8 if run.closed else 3):
        return None
    sweep_deg = 360.0 if run.closed else degrees(sum(run.turns_rad))
    if sweep_deg < _LEAST_SWEEP_DEG:
        return None
    step_rad = 2 * pi / facets if run.closed else sum(run.turns_rad[1:-1]) / max(1, facets - 1)
    return Cylinder(
        2 * fit.radius_mm,
        2 * fit.radius_mm * cos(step_rad / 2),
        axis.lifted(fit.centre, (run.low_mm + run.high_mm) / 2),
        axis.direction,
        run.high_mm - run.low_mm,
        sweep_deg,
        run.concave,
        facets,
        fit.residual_mm,
        flats.ends(axis, fit.centre, fit.radius_mm, run) if run.closed else ("open", "open"),
    )


class _Flats:
    """The flat faces square to an axis, looked up when a bore asks what closes its ends."""

    def __init__(self, faces: Faces) -> None:
        """Sort the triangles by face once."""
        import numpy as np

        self._faces = faces
        self._order = np.argsort(faces.face_of, kind="stable")
        self._bounds = np.searchsorted(faces.face_of[self._order], np.arange(len(faces.normals) + 1))

    def points_of(self, face: int) -> Any:
        """The corners of one face, some of them repeated."""
        mine = self._order[self._bounds[face] : self._bounds[face + 1]]
        return self._faces.mesh.points[self._faces.mesh.triangles[mine].ravel()]

    def ends(self, axis: Axis, centre: tuple[float, float], radius_mm: float, run: Run) -> tuple[str, str]:
        """Whether a floor closes each end: a flat face no wider than the wall; a step has a hole in it."""
        import numpy as np

        faces = self._faces
        along = faces.normals @ np.array(axis.direction)
        square = np.nonzero(np.abs(along) > 0.9999)[0]
        words = []
        for level_mm in (run.low_mm, run.high_mm):
            near = square[np.abs(faces.offsets_mm[square] * np.sign(along[square]) - level_mm) < 0.01]
            area = sum(float(faces.areas_mm2[f]) for f in near if self._reach(f, axis, centre) < radius_mm + 0.02)
            words.append("open" if area == 0 else "floor" if area > 0.9 * _polygon_mm2(run) else "step")
        return (words[0], words[1])

    def _reach(self, face: int, axis: Axis, centre: tuple[float, float]) -> float:
        import numpy as np

        flat = axis.flattened(self.points_of(face)) - np.array(centre)
        return float(np.hypot(*flat.T).max())


def _polygon_mm2(run: Run) -> float:
    pairs = zip(run.points, [*run.points[1:], run.points[0]], strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


def _thicknesses(faces: Faces, flats: _Flats, curved: set[int]) -> list[Thickness]:
    """Pairs of large parallel faces that look away from each other and lie over one another."""
    import numpy as np

    total = float(faces.areas_mm2.sum())
    large = np.nonzero(faces.areas_mm2 > _LEAST_SHARE * total)[0]
    large = large[~np.isin(large, sorted(curved))]
    large = large[np.argsort(-faces.areas_mm2[large], kind="stable")][:200]
    found: dict[tuple[float, ...], Thickness] = {}
    for k, a in enumerate(large):
        opposite = [b for b in large[k + 1 :] if float(faces.normals[a] @ faces.normals[b]) < -0.99999]
        for b in opposite:
            gap_mm = float(faces.offsets_mm[a] + faces.offsets_mm[b])
            if gap_mm > 0.01 and _overlap(faces, flats, int(a), int(b)):
                axis = _axis(faces.normals[a]).direction
                key = (round(gap_mm, 2), *(round(value, 3) for value in axis))
                area = min(float(faces.areas_mm2[a]), float(faces.areas_mm2[b]))
                before = found.get(key)
                found[key] = Thickness(gap_mm, axis, area + (before.area_mm2 if before else 0.0))
    ordered = sorted(found.values(), key=lambda t: (-round(t.area_mm2, 3), t.thickness_mm, t.axis))
    return ordered[:_MOST_THICKNESSES]


def _overlap(faces: Faces, flats: _Flats, a: int, b: int) -> bool:
    axis = _axis(faces.normals[a])
    one, two = axis.flattened(flats.points_of(a)), axis.flattened(flats.points_of(b))
    low = [max(float(p), float(q)) for p, q in zip(one.min(axis=0), two.min(axis=0), strict=True)]
    high = [min(float(p), float(q)) for p, q in zip(one.max(axis=0), two.max(axis=0), strict=True)]
    return all(h - lo > 0.01 for lo, h in zip(low, high, strict=True))


def _axis(normal: Any) -> Axis:
    return Axis.along((float(normal[0]), float(normal[1]), float(normal[2])))


def _patterns(bores: Sequence[Cylinder]) -> list[tuple[Corner, Pattern]]:
    """Patterns among bores with parallel axes; their places are given in the plane square to the axis."""
    by_axis: dict[tuple[float, ...], list[Cylinder]] = defaultdict(list)
    for bore in bores:
        by_axis[tuple(round(value, 3) + 0.0 for value in bore.axis)].append(bore)
    found = []
    for group in by_axis.values():
        axis = Axis.along(group[0].axis)
        holes = {axis.flat(bore.centre): bore.diameter_mm for bore in group}
        found += [(axis.direction, p) for p in find_patterns([Hole(at, round(d, 4)) for at, d in holes.items()])]
    return found
