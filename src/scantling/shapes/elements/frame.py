"""Panels, bars and joints as one frame: where it gives under a push, how fast it swings, which part gives how much.

A frame is nodes with six freedoms each. A panel joins the nodes of its discs, a bar two nodes, a spring two nodes or a
node and the ground; what a spring holds may stand off its node, stiffly joined to it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi, sqrt
from typing import Any

from scantling.shapes.elements.bars import Section, bar_matrices
from scantling.shapes.elements.plate import Reduced
from scantling.shapes.elements.unfit import UnfitFrameError

GROUND = -1
FREE_MM_N = 1e3  # a frame that gives so far to a newton is no frame: something in it is not held
_MORE_SHAPES = 6
_MOST_ROUNDS = 60
_FLAT_RATIO = 1e-13
_STILL_RATIO = 1e-10
LOOSE = "something in the frame can move freely"
Vector = tuple[float, float, float]
Axes = tuple[Vector, Vector, Vector]


@dataclass(frozen=True)
class Panel:
    """A panel: the nodes of its discs in their order, its own axes as rows, and the sheet that it is made of."""

    plate: int
    nodes: tuple[int, ...]
    axes: Axes
    sheet: int


@dataclass(frozen=True)
class Sheet:
    """What a panel is made of; density in tonnes per mm³."""

    modulus_mpa: float
    thickness_mm: float
    density_t_mm3: float


@dataclass(frozen=True)
class Bar:
    """A bar between two nodes."""

    a: int
    b: int
    section: Section


@dataclass(frozen=True)
class Spring:
    """A joint between two nodes at ``at``: stiff along its normal, across it, and against turning about either.

    axes : as rows, the normal last
    """

    a: int
    b: int
    at: Vector
    axes: Axes
    normal_n_mm: float
    across_n_mm: float
    turning_nmm_rad: float
    twisting_nmm_rad: float


@dataclass(frozen=True)
class Model:
    """A whole frame; ``masses`` in tonnes at nodes."""

    nodes: tuple[Vector, ...]
    panels: tuple[Panel, ...]
    bars: tuple[Bar, ...]
    springs: tuple[Spring, ...]
    masses: tuple[tuple[int, float], ...]


@dataclass(frozen=True)
class Pushed:
    """What a push does.

    moved_mm : of the pushed nodes, their mean, along the push    shares : of the give, in panels, bars and joints
    """

    moved_mm: float
    panels_ratio: float
    bars_ratio: float
    joints_ratio: float


@dataclass(frozen=True)
class Mode:
    """A way of swinging: its frequency, how all freedoms move (the largest 1 mm), the mass that goes with that."""

    frequency_hz: float
    shape: tuple[float, ...]
    mass_kg: float


class Parts:
    """What a frame's stiffness and mass are summed from, each part per unit of what it grows with.

    bends, stretches, weights : of every sheet, per E t³, per E t and per ρ t    bars, joints : as written
    """

    def __init__(self, model: Model, plates: Sequence[Reduced], sheets: int) -> None:
        """Sum up; plates : the reductions that panels name    sheets : how many different ones there are"""
        import numpy as np

        self.model = model
        self.own = [len(plates[p.plate].bend) - 3 * len(p.nodes) for p in model.panels]
        self.count = 6 * len(model.nodes) + sum(self.own)
        self.areas_mm2 = tuple(plate.area_mm2 for plate in plates)
        self.bends, self.stretches, self.weights = (
            [np.zeros((self.count, self.count)) for _ in range(sheets)] for _ in range(3)
        )
        self.bars, self.joints, self.mass = (np.zeros((self.count, self.count)) for _ in range(3))
        self._add_panels(plates)
        self._add_bars()
        for spring in model.springs:
            self._add_spring(spring)
        for node, mass_t in model.masses:
            for k in range(3):
                self.mass[6 * node + k, 6 * node + k] += mass_t

    def places(self, panel: int) -> tuple[list[int], Any]:
        """Return the freedoms of a panel, and the turn into its own axes."""
        import numpy as np

        described = self.model.panels[panel]
        start = 6 * len(self.model.nodes) + sum(self.own[:panel])
        own = list(range(start, start + self.own[panel]))
        places = [6 * node + k for node in described.nodes for k in range(6)] + own
        turn = np.eye(len(places))
        few = 6 * len(described.nodes)
        turn[:few, :few] = np.kron(np.eye(2 * len(described.nodes)), np.array(described.axes))
        return places, turn

    def _add_panels(self, plates: Sequence[Reduced]) -> None:
        import numpy as np

        for number, panel in enumerate(self.model.panels):
            plate, few = plates[panel.plate], len(panel.nodes)
            places, turn = self.places(number)
            bend = [6 * k + j for k in range(few) for j in (2, 3, 4)] + list(range(6 * few, len(places)))
            stretch = [6 * k + j for k in range(few) for j in (0, 1, 5)]
            for sums, freedoms, matrix in (
                (self.bends, bend, plate.bend),
                (self.stretches, stretch, plate.stretch),
                (self.weights, bend, plate.bend_mass),
                (self.weights, stretch, plate.stretch_mass),
            ):
                local = np.zeros((len(places), len(places)))
                local[np.ix_(freedoms, freedoms)] = matrix
                sums[panel.sheet][np.ix_(places, places)] += turn.T @ local @ turn

    def _add_bars(self) -> None:
        import numpy as np

        for bar in self.model.bars:
            k, m = bar_matrices(self.model.nodes[bar.a], self.model.nodes[bar.b], bar.section)
            places = [6 * node + j for node in (bar.a, bar.b) for j in range(6)]
            self.bars[np.ix_(places, places)] += k
            self.mass[np.ix_(places, places)] += m

    def _add_spring(self, spring: Spring) -> None:
        import numpy as np

        turn = np.array(spring.axes)
        across, turning = spring.across_n_mm, spring.turning_nmm_rad
        values = np.array([across, across, spring.normal_n_mm, turning, turning, spring.twisting_nmm_rad])
        ends = [(node, sign) for node, sign in ((spring.a, 1.0), (spring.b, -1.0)) if node != GROUND]
        step = np.zeros((6, 6 * len(ends)))
        for number, (node, sign) in enumerate(ends):
            arm = np.array(spring.at) - np.array(self.model.nodes[node])
            first = 6 * number
            step[:3, first : first + 3] = sign * turn
            step[:3, first + 3 : first + 6] = sign * turn @ _across(arm)
            step[3:, first + 3 : first + 6] = sign * turn
        places = [6 * node + k for node, _ in ends for k in range(6)]
        self.joints[np.ix_(places, places)] += step.T @ (values[:, None] * step)


class Frame:
    """A frame with its sheets and the stiffness of its joints set: ready to be asked."""

    def __init__(self, parts: Parts, sheets: Sequence[Sheet], joints_ratio: float) -> None:
        """Set the sheets that panels name; joints_ratio : by which all springs are stiffer than written"""
        import numpy as np

        self.parts, self.sheets, self.joints_ratio = parts, tuple(sheets), joints_ratio
        self.panels = np.zeros((parts.count, parts.count))
        for sheet, bend, stretch in zip(sheets, parts.bends, parts.stretches, strict=True):
            thick_mm = sheet.thickness_mm
            self.panels += bend * (sheet.modulus_mpa * thick_mm**3) + stretch * (sheet.modulus_mpa * thick_mm)
        self.stiffness = self.panels + parts.bars + joints_ratio * parts.joints

    def pushed(self, nodes: Sequence[int], direction: Vector, force_n: float) -> Pushed:
        """Return what a force does that is shared evenly by some nodes."""
        import numpy as np

        load = np.zeros(self.parts.count)
        for node in nodes:
            load[6 * node : 6 * node + 3] += np.array(direction) / len(nodes)
        try:
            moved = np.linalg.solve(self.stiffness, load)
        except np.linalg.LinAlgError:
            raise UnfitFrameError(LOOSE) from None
        whole = float(moved @ load)
        if not 0 < whole < FREE_MM_N:
            raise UnfitFrameError(LOOSE)
        joints, bars = (float(moved @ (part @ moved)) / whole for part in (self.parts.joints, self.parts.bars))
        joints *= self.joints_ratio
        return Pushed(whole * force_n, 1 - bars - joints, bars, joints)

    def modes(self, count: int) -> tuple[Mode, ...]:
        """Return the slowest ways of swinging; fewer where so few masses can swing."""
        mass = self.parts.mass.copy()
        for sheet, weight in zip(self.sheets, self.parts.weights, strict=True):
            mass += weight * (sheet.density_t_mm3 * sheet.thickness_mm)
        squares, shapes = _slowest(self.stiffness, mass, count)
        return tuple(self._mode(shapes[:, k], mass, float(squares[k])) for k in range(len(squares)))

    def panel_motion(self, panel: int, shape: Sequence[float]) -> tuple[list[float], list[float]]:
        """Return how a panel's discs (and own shapes) bend and stretch in its own axes, for a shape of the frame."""
        import numpy as np

        places, turn = self.parts.places(panel)
        local = turn @ np.asarray(shape)[places]
        few = len(self.parts.model.panels[panel].nodes)
        bend = [float(local[6 * k + j]) for k in range(few) for j in (2, 3, 4)]
        stretch = [float(local[6 * k + j]) for k in range(few) for j in (0, 1, 5)]
        return bend + [float(v) for v in local[6 * few :]], stretch

    def _mode(self, shape: Any, mass: Any, square: float) -> Mode:
        import numpy as np

        steps = shape[: 6 * len(self.parts.model.nodes)].reshape(-1, 6)[:, :3].ravel()
        shape = shape / (steps[np.argmax(np.abs(steps))] or 1.0)
        frequency_hz = sqrt(square) / (2 * pi)
        return Mode(frequency_hz, tuple(float(v) for v in shape), 1000 * float(shape @ (mass @ shape)))


def _across(arm: Any) -> Any:
    """The matrix of θ × arm."""
    import numpy as np

    x, y, z = arm
    return np.array([[0.0, z, -y], [-z, 0.0, x], [y, -x, 0.0]])


def _slowest(stiffness: Any, mass: Any, count: int) -> tuple[Any, Any]:
    """The smallest ω² and their shapes, by subspace iteration (Bathe 1971) from shapes drawn with a fixed seed."""
    import numpy as np

    try:
        np.linalg.cholesky(stiffness)  # fails where something is not held
        gives = _even(np.linalg.inv(stiffness))
    except np.linalg.LinAlgError:
        raise UnfitFrameError(LOOSE) from None
    shapes = np.random.default_rng(0).standard_normal((len(stiffness), min(2 * count + _MORE_SHAPES, len(stiffness))))
    before = np.zeros(count)
    for _ in range(_MOST_ROUNDS):
        loads = mass @ shapes
        shapes = gives @ loads
        small, heavy = _even(shapes.T @ loads), _even(shapes.T @ (mass @ shapes))
        roots, turns = np.linalg.eigh(small)
        kept = roots > roots[-1] * _FLAT_RATIO  # fewer masses than shapes leave some without any
        turns = turns[:, kept] / np.sqrt(roots[kept])
        inverse_squares, mixed = np.linalg.eigh(_even(turns.T @ heavy @ turns))
        shapes = shapes @ turns @ mixed[:, ::-1]
        squares = 1 / inverse_squares[: -count - 1 : -1]
        if len(squares) == len(before) and np.allclose(squares, before, rtol=_STILL_RATIO, atol=0):
            break
        before = squares
    return squares, shapes


def _even(matrix: Any) -> Any:
    return (matrix + matrix.T) / 2
