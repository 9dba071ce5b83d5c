"""Stiffness of thin triangles, many at once: bending after Kirchhoff, and in their plane with a turning freedom.

Bending: discrete Kirchhoff triangle, nodes with deflection w and the turns θx = ∂w/∂y, θy = -∂w/∂x.
Source: Batoz, Bathe, Ho 1980, "A study of three-node triangular plate bending elements".
In the plane: the best triangle with turning freedoms, nodes with u, v and θz.
Source: Felippa 2003, "A study of optimal membrane triangles with drilling freedoms".
"""

from __future__ import annotations

from typing import Any

_GAUSS = ((1 / 6, 1 / 6), (2 / 3, 1 / 6), (1 / 6, 2 / 3))
# Which free numbers of the membrane triangle stand where, after Felippa's table for the element that bends best.
_BETA = (1.0, 2.0, 1.0, 0.0, 1.0, -1.0, -1.0, -1.0, -2.0)
_Q_ORDER = (
    ((0, 1, 2), (3, 4, 5), (6, 7, 8)),
    ((8, 6, 7), (2, 0, 1), (5, 3, 4)),
    ((4, 5, 3), (7, 8, 6), (1, 2, 0)),
)


def elasticity(along_mpa: float, cross_mpa: float, poisson_ratio: float, shear_mpa: float) -> Any:
    """Return the plane-stress matrix (3 × 3, MPa) of a sheet whose grain runs along x.

    poisson_ratio : shrinking across when pulled along the grain
    """
    import numpy as np

    back_ratio = poisson_ratio * cross_mpa / along_mpa
    one = 1 - poisson_ratio * back_ratio
    return np.array(
        [
            [along_mpa / one, poisson_ratio * cross_mpa / one, 0.0],
            [poisson_ratio * cross_mpa / one, cross_mpa / one, 0.0],
            [0.0, 0.0, shear_mpa],
        ]
    )


def bending_stiffness(corners: Any, rigidity: Any) -> Any:
    """Return the stiffness of bending triangles (m × 9 × 9).

    corners : m × 3 × 2, mm, anticlockwise    rigidity : 3 × 3, moments per curvature, N mm
    """
    import numpy as np

    x, y = corners[:, :, 0], corners[:, :, 1]
    twice = (x[:, 1] - x[:, 0]) * (y[:, 2] - y[:, 0]) - (x[:, 2] - x[:, 0]) * (y[:, 1] - y[:, 0])
    sides = _sides(x, y)
    x31, y31, x12, y12 = x[:, 2] - x[:, 0], y[:, 2] - y[:, 0], x[:, 0] - x[:, 1], y[:, 0] - y[:, 1]
    total = np.zeros((len(x), 9, 9))
    for xi, eta in _GAUSS:
        hx_xi, hy_xi, hx_eta, hy_eta = _slopes(sides, xi, eta)
        b = (
            np.stack(
                [
                    y31[:, None] * hx_xi + y12[:, None] * hx_eta,
                    -x31[:, None] * hy_xi - x12[:, None] * hy_eta,
                    -x31[:, None] * hx_xi - x12[:, None] * hx_eta + y31[:, None] * hy_xi + y12[:, None] * hy_eta,
                ],
                axis=1,
            )
            / twice[:, None, None]
        )
        total += np.einsum("mia,ij,mjb->mab", b, rigidity, b) * (twice / 6)[:, None, None]
    return total


def _sides(x: Any, y: Any) -> dict[str, tuple[Any, Any, Any]]:
    """The numbers P, q, r, t of the sides 2-3, 3-1 and 1-2."""
    found: dict[str, list[Any]] = {"p": [], "q": [], "r": [], "t": []}
    for i, j in ((1, 2), (2, 0), (0, 1)):
        dx, dy = x[:, i] - x[:, j], y[:, i] - y[:, j]
        square = dx**2 + dy**2
        found["p"].append(-6 * dx / square)
        found["t"].append(-6 * dy / square)
        found["q"].append(3 * dx * dy / square)
        found["r"].append(3 * dy**2 / square)
    return {name: (a, b, c) for name, (a, b, c) in found.items()}


def _slopes(sides: dict[str, tuple[Any, Any, Any]], xi: float, eta: float) -> tuple[Any, Any, Any, Any]:
    """Derivatives of the turns' shape functions Hx and Hy along xi and eta, each m × 9."""
    import numpy as np

    (p4, p5, p6), (q4, q5, q6), (r4, r5, r6), (t4, t5, t6) = (sides[name] for name in "pqrt")
    one, u, v, s = np.ones_like(p4), 1 - 2 * xi, 1 - 2 * eta, 6 * (xi + eta)
    hx_xi = [
        p6 * u + (p5 - p6) * eta, q6 * u - (q5 + q6) * eta, (s - 4) * one + r6 * u - eta * (r5 + r6),
        -p6 * u + eta * (p4 + p6), q6 * u - eta * (q6 - q4), (6 * xi - 2) * one + r6 * u + eta * (r4 - r6),
        -eta * (p5 + p4), eta * (q4 - q5), -eta * (r5 - r4),
    ]  # fmt: skip
    hy_xi = [
        t6 * u + eta * (t5 - t6), one + r6 * u - eta * (r5 + r6), -q6 * u + eta * (q5 + q6),
        -t6 * u + eta * (t4 + t6), -one + r6 * u + eta * (r4 - r6), -q6 * u - eta * (q4 - q6),
        -eta * (t4 + t5), eta * (r4 - r5), -eta * (q4 - q5),
    ]  # fmt: skip
    hx_eta = [
        -p5 * v - xi * (p6 - p5), q5 * v - xi * (q5 + q6), (s - 4) * one + r5 * v - xi * (r5 + r6),
        xi * (p4 + p6), xi * (q4 - q6), -xi * (r6 - r4),
        p5 * v - xi * (p4 + p5), q5 * v + xi * (q4 - q5), (6 * eta - 2) * one + r5 * v + xi * (r4 - r5),
    ]  # fmt: skip
    hy_eta = [
        -t5 * v - xi * (t6 - t5), one + r5 * v - xi * (r5 + r6), -q5 * v + xi * (q5 + q6),
        xi * (t4 + t6), xi * (r4 - r6), -xi * (q4 - q6),
        t5 * v - xi * (t4 + t5), -one + r5 * v + xi * (r4 - r5), -q5 * v - xi * (q4 - q5),
    ]  # fmt: skip
    a, b, c, d = (np.stack(rows, axis=1) for rows in (hx_xi, hy_xi, hx_eta, hy_eta))
    return a, b, c, d


def membrane_stiffness(corners: Any, elastic: Any, thickness_mm: float, poisson_ratio: float) -> Any:
    """Return the stiffness of triangles in their plane (m × 9 × 9): u, v and the turn of every corner.

    corners : m × 3 × 2, mm, anticlockwise    elastic : 3 × 3, MPa    poisson_ratio : tunes the higher part alone
    """
    import numpy as np

    x, y = corners[:, :, 0], corners[:, :, 1]
    area = ((x[:, 1] - x[:, 0]) * (y[:, 2] - y[:, 0]) - (x[:, 2] - x[:, 0]) * (y[:, 1] - y[:, 0])) / 2
    lumping = _lumping(x, y, thickness_mm)
    basic = np.einsum("mai,ij,mbj->mab", lumping, elastic, lumping) / (area * thickness_mm)[:, None, None]
    natural = _natural(x, y, area, elastic)
    squares = np.stack([_square(x, y, 1, 0), _square(x, y, 2, 1), _square(x, y, 0, 2)], axis=1)
    q1, q2, q3 = (_beta(order, squares, area) for order in _Q_ORDER)
    turning = (
        sum(np.einsum("mia,mij,mjb->mab", q, natural, q) for q in ((q1 + q2) / 2, (q2 + q3) / 2, (q3 + q1) / 2))
        * (area * thickness_mm)[:, None, None]
    )
    to_turns = _turns(x, y, area)
    share = 0.75 * max((1 - 4 * poisson_ratio**2) / 2, 0.01)
    return basic + share * np.einsum("mia,mij,mjb->mab", to_turns, turning, to_turns)


def _square(x: Any, y: Any, i: int, j: int) -> Any:
    return (x[:, i] - x[:, j]) ** 2 + (y[:, i] - y[:, j]) ** 2


def _lumping(x: Any, y: Any, thickness_mm: float) -> Any:
    """How a constant stress goes into the corners (m × 9 × 3)."""
    import numpy as np

    found = np.zeros((len(x), 9, 3))
    for k in range(3):
        i, j = (k + 1) % 3, (k + 2) % 3  # corner k lies between the sides to j and to i
        yij, xji = y[:, i] - y[:, j], x[:, j] - x[:, i]
        y_kj, y_ik = y[:, k] - y[:, j], y[:, i] - y[:, k]
        x_jk, x_ki = x[:, j] - x[:, k], x[:, k] - x[:, i]
        found[:, 3 * k, 0], found[:, 3 * k, 2] = yij, xji
        found[:, 3 * k + 1, 1], found[:, 3 * k + 1, 2] = xji, yij
        found[:, 3 * k + 2, 0] = yij * (y_kj - y_ik) / 4
        found[:, 3 * k + 2, 1] = xji * (x_jk - x_ki) / 4
        found[:, 3 * k + 2, 2] = (x_jk * y_kj - x_ki * y_ik) / 2
    return found * (thickness_mm / 2)


def _natural(x: Any, y: Any, area: Any, elastic: Any) -> Any:
    """The elasticity for strains along the three sides 1-2, 2-3, 3-1 (m × 3 × 3)."""
    import numpy as np

    def d(v: Any, i: int, j: int) -> Any:
        return v[:, i - 1] - v[:, j - 1]

    l21, l32, l13 = _square(x, y, 1, 0), _square(x, y, 2, 1), _square(x, y, 0, 2)
    rows = [
        [d(y, 2, 3) * d(y, 1, 3) * l21, d(y, 3, 1) * d(y, 2, 1) * l32, d(y, 1, 2) * d(y, 3, 2) * l13],
        [d(x, 2, 3) * d(x, 1, 3) * l21, d(x, 3, 1) * d(x, 2, 1) * l32, d(x, 1, 2) * d(x, 3, 2) * l13],
        [
            (d(y, 2, 3) * d(x, 3, 1) + d(x, 3, 2) * d(y, 1, 3)) * l21,
            (d(y, 3, 1) * d(x, 1, 2) + d(x, 1, 3) * d(y, 2, 1)) * l32,
            (d(y, 1, 2) * d(x, 2, 3) + d(x, 2, 1) * d(y, 3, 2)) * l13,
        ],
    ]
    t = np.stack([np.stack(row, axis=1) for row in rows], axis=1) / (4 * area**2)[:, None, None]
    return np.einsum("mia,ij,mjb->mab", t, elastic, t)


def _beta(order: Any, squares: Any, area: Any) -> Any:
    import numpy as np

    betas = np.array([[_BETA[k] for k in row] for row in order])
    return (2 * area / 3)[:, None, None] * betas[None] / squares[:, :, None]


def _turns(x: Any, y: Any, area: Any) -> Any:
    """From the freedoms of the corners to their turns beyond that of the whole triangle (m × 3 × 9)."""
    import numpy as np

    found = np.zeros((len(x), 3, 9))
    for k in range(3):
        i, j = (k + 1) % 3, (k + 2) % 3
        found[:, :, 3 * k] = (x[:, j] - x[:, i])[:, None]
        found[:, :, 3 * k + 1] = (y[:, j] - y[:, i])[:, None]
    for k in range(3):
        found[:, k, 3 * k + 2] = 4 * area
    return found / (4 * area)[:, None, None]
