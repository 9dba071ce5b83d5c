"""Straight bars in space: stiffness and mass of both ends, six freedoms each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Section:
    """A bar's cross-section and material: second moments about its own y and z, torsion constant.

    shear_mpa : modulus in shear    density_t_mm3 : tonnes, so that N = t·mm/s²
    """

    area_mm2: float
    second_y_mm4: float
    second_z_mm4: float
    torsion_mm4: float
    modulus_mpa: float
    shear_mpa: float
    density_t_mm3: float


def bar_axes(start: Any, end: Any) -> tuple[float, Any]:
    """Return a bar's length and its own axes as rows: x along it, z as upright as can be (y up for an upright bar)."""
    import numpy as np

    along = np.asarray(end, float) - np.asarray(start, float)
    length_mm = float(np.linalg.norm(along))
    x = along / length_mm
    up = np.array([0.0, 1.0, 0.0]) if abs(x[2]) > 0.999 else np.array([0.0, 0.0, 1.0])
    y = np.cross(up, x)
    y /= np.linalg.norm(y)
    return length_mm, np.stack([x, y, np.cross(x, y)])


def bar_matrices(start: Any, end: Any, section: Section) -> tuple[Any, Any]:
    """Return stiffness and mass (12 × 12) of a bar without shear flexibility, in the axes of its ends.

    Source: beam theory, cubic shapes; mass half at each end, which takes no turning inertia.
    """
    import numpy as np

    length_mm, axes = bar_axes(start, end)
    e, length = section.modulus_mpa, length_mm
    k = np.zeros((12, 12))
    for first, factor in ((0, e * section.area_mm2 / length), (3, section.shear_mpa * section.torsion_mm4 / length)):
        pair = np.ix_((first, first + 6), (first, first + 6))
        k[pair] = factor * np.array([[1.0, -1.0], [-1.0, 1.0]])
    for second, rows, sign in ((section.second_z_mm4, (1, 5, 7, 11), 1), (section.second_y_mm4, (2, 4, 8, 10), -1)):
        k[np.ix_(rows, rows)] = e * second / length**3 * _bending(length, sign)
    turn = np.kron(np.eye(4), axes)
    half_t = section.density_t_mm3 * section.area_mm2 * length / 2
    mass = np.diag([half_t, half_t, half_t, 0.0, 0.0, 0.0] * 2)
    return turn.T @ k @ turn, mass


def _bending(length: float, sign: int) -> Any:
    import numpy as np

    a, b, c = 6 * length * sign, 4 * length**2, 2 * length**2
    return np.array([[12, a, -12, a], [a, b, -a, c], [-12, -a, 12, -a], [a, c, -a, b]], float)
