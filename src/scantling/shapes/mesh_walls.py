"""Round walls of a mesh: strips of facets on one circle, joined where another wall cuts them up; and what ends them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan2, ceil, cos, degrees, floor, pi
from typing import Any

from scantling.shapes.circle_fit import fit_circle
from scantling.shapes.edges import Point, distance_mm
from scantling.shapes.mesh import Corner
from scantling.shapes.mesh_chains import Axis, Run
from scantling.shapes.mesh_faces import Faces

_LEAST_SWEEP_DEG = 30.0
_SAME_MM = 0.02
_GAP_DEG = 5


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

    @property
    def is_whole(self) -> bool:
        """True where it goes all the way round."""
        return self.sweep_deg >= 359


@dataclass(frozen=True)
class Wall:
    """A cylinder in the making; ``covered`` are the whole degrees around its axis where there is wall."""

    axis: Axis
    centre: Point
    radius_mm: float
    step_rad: float
    low_mm: float
    high_mm: float
    sweep_deg: float
    concave: bool
    facets: int
    residual_mm: float
    covered: frozenset[int]
    ends: tuple[str, str] = ("open", "open")

    def cylinder(self) -> Cylinder:
        """Return it as what it is told as."""
        return Cylinder(
            2 * self.radius_mm,
            2 * self.radius_mm * cos(self.step_rad / 2),
            self.axis.lifted(self.centre, (self.low_mm + self.high_mm) / 2),
            self.axis.direction,
            self.high_mm - self.low_mm,
            self.sweep_deg,
            self.concave,
            self.facets,
            self.residual_mm,
            self.ends,
        )


def wall_of(axis: Axis, run: Run, flats: Flats) -> Wall | None:
    """Eight strips and more for a whole one: fewer are a prism, not a round thing; three and more for a part of one."""
    fit = fit_circle(run.points)
    facets = len(run.points) if run.closed else len(run.points) - 1
    if fit is None or facets < (8 if run.closed else 3):
        return None
    sweep_deg = 360.0 if run.closed else degrees(sum(run.turns_rad))
    if sweep_deg < _LEAST_SWEEP_DEG:
        return None
    step_rad = 2 * pi / facets if run.closed else sum(run.turns_rad[1:-1]) / max(1, facets - 1)
    covered = frozenset(range(360)) if run.closed else _covered(run, fit.centre, degrees(step_rad))
    ends = flats.ends(axis, fit.centre, fit.radius_mm, run) if run.closed else ("open", "open")
    return Wall(
        axis,
        fit.centre,
        fit.radius_mm,
        step_rad,
        run.low_mm,
        run.high_mm,
        sweep_deg,
        run.concave,
        facets,
        fit.residual_mm,
        covered,
        ends,
    )


def _covered(run: Run, centre: Point, step_deg: float) -> frozenset[int]:
    """The degrees that the strips take up, each the short way round from corner to corner.

    Where the last bend is a full one, the face beyond it is one more strip, though another wall may have cut it up;
    where the wall ends in a flat face, the bend is half as large.
    """
    angles = [degrees(atan2(y - centre[1], x - centre[0])) for x, y in run.points]
    ways = [(b - a + 180) % 360 - 180 for a, b in pairwise(angles)]
    sense = 1 if sum(ways) > 0 else -1
    spans = [(a, a + way) for a, way in zip(angles, ways, strict=False)]
    for angle, turn_rad, outwards in ((angles[0], run.turns_rad[0], -sense), (angles[-1], run.turns_rad[-1], sense)):
        if degrees(turn_rad) > 0.75 * step_deg:
            spans.append((angle, angle + outwards * step_deg))
    found: set[int] = set()
    for a, b in spans:
        found.update(k % 360 for k in range(ceil(min(a, b) - 1e-6), floor(max(a, b) + 1e-6) + 1))
    return frozenset(found)


def joined_walls(walls: Sequence[Wall]) -> list[Wall]:
    """Join parts of walls on one circle, one above the other: a bore that another wall cuts into is one bore."""
    groups: dict[tuple[Any, ...], list[Wall]] = defaultdict(list)
    whole = [wall for wall in walls if wall.sweep_deg >= 359]
    for wall in walls:
        if wall.sweep_deg < 359:
            key = (tuple(round(value, 3) for value in wall.axis.direction), wall.concave)
            groups[key].append(wall)
    found = list(whole)
    for group in groups.values():
        found += _joined(sorted(group, key=lambda wall: (wall.low_mm, wall.high_mm, wall.centre)))
    return found


def _joined(parts: list[Wall]) -> list[Wall]:
    done: list[Wall] = []
    for part in parts:
        mate = next((k for k, wall in enumerate(done) if _belong(wall, part)), None)
        if mate is None:
            done.append(part)
        else:
            done[mate] = _both(done[mate], part)
    return done


def _belong(a: Wall, b: Wall) -> bool:
    near = distance_mm(a.centre, b.centre) <= _SAME_MM and abs(a.radius_mm - b.radius_mm) <= _SAME_MM
    return near and b.low_mm <= a.high_mm + 2 * a.radius_mm and not a.covered >= b.covered


def _both(a: Wall, b: Wall) -> Wall:
    """The larger part gives the circle; all around where no more than a few degrees are missing."""
    main = a if a.sweep_deg >= b.sweep_deg else b
    covered = a.covered | b.covered
    sweep_deg = 360.0 if len(covered) >= 360 - _GAP_DEG else float(max(len(covered), main.sweep_deg))
    return replace(
        main,
        low_mm=min(a.low_mm, b.low_mm),
        high_mm=max(a.high_mm, b.high_mm),
        sweep_deg=sweep_deg,
        facets=a.facets + b.facets,
        residual_mm=max(a.residual_mm, b.residual_mm),
        covered=covered,
    )


class Flats:
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
