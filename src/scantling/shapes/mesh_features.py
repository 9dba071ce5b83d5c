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
from scantling.shapes.mesh_walls import Cylinder, Flats, Wall, joined_walls, wall_of

_MOST_TRIANGLES = 600_000
_LEAST_SHARE = 0.002
_MOST_THICKNESSES = 8
_HOLE_SWEEP_DEG = 240.0


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
    flats = Flats(faces)
    walls: list[Wall] = []
    hexagons: list[Hexagon] = []
    curved: set[int] = set()
    for axis, run in find_runs(faces):
        found = _hexagon(axis, run, flats) or wall_of(axis, run, flats)
        if isinstance(found, Hexagon):
            hexagons.append(found)
        elif found:
            walls.append(found)
            curved |= run.faces
    cylinders = sorted((wall.cylinder() for wall in joined_walls(walls)), key=_order)
    return MeshFeatures(
        tuple(c for c in cylinders if c.is_whole and c.concave),
        tuple(c for c in cylinders if c.is_whole and not c.concave),
        tuple(c for c in cylinders if not c.is_whole),
        tuple(sorted(hexagons, key=lambda h: (-h.across_flats_mm, h.centre))),
        tuple(_thicknesses(faces, flats, curved)),
        tuple(_patterns([c for c in cylinders if c.concave and c.sweep_deg >= _HOLE_SWEEP_DEG])),
    )


def _order(cylinder: Cylinder) -> tuple[float, ...]:
    return (
        -round(cylinder.diameter_mm, 2),
        -round(cylinder.sweep_deg),
        *(round(value, 3) for value in cylinder.centre),
    )


def _hexagon(axis: Axis, run: Run, flats: Flats) -> Hexagon | None:
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


def _thicknesses(faces: Faces, flats: Flats, curved: set[int]) -> list[Thickness]:
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


def _overlap(faces: Faces, flats: Flats, a: int, b: int) -> bool:
    axis = _axis(faces.normals[a])
    one, two = axis.flattened(flats.points_of(a)), axis.flattened(flats.points_of(b))
    low = [max(float(p), float(q)) for p, q in zip(one.min(axis=0), two.min(axis=0), strict=True)]
    high = [min(float(p), float(q)) for p, q in zip(one.max(axis=0), two.max(axis=0), strict=True)]
    return all(h - lo > 0.01 for lo, h in zip(low, high, strict=True))


def _axis(normal: Any) -> Axis:
    return Axis.along((float(normal[0]), float(normal[1]), float(normal[2])))


def _patterns(bores: Sequence[Cylinder]) -> list[tuple[Corner, Pattern]]:
    """Patterns among bores with parallel axes, also where a wall cuts into one; places in the plane square to it."""
    by_axis: dict[tuple[float, ...], list[Cylinder]] = defaultdict(list)
    for bore in bores:
        by_axis[tuple(round(value, 3) + 0.0 for value in bore.axis)].append(bore)
    found = []
    for group in by_axis.values():
        axis = Axis.along(group[0].axis)
        holes = {axis.flat(bore.centre): bore.diameter_mm for bore in group}
        found += [(axis.direction, p) for p in find_patterns([Hole(at, round(d, 4)) for at, d in holes.items()])]
    return found
