"""Panels, bars and joints as one frame: where it gives under a push, how fast it swings, which part gives how much.

A frame is nodes with six freedoms each. A panel joins the nodes of its discs, a bar two nodes, a spring two nodes or a
node and the ground; what a spring holds may stand off its node, stiffly joined to it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi, sqrt
from typing import Any

from scantling.elements.bars import Section, bar_matrices
from scantling.elements.plate import Reduced
from scantling.elements.unfit import UnfitFrameError

GROUND = -1
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


class Frame:
    """A frame with its sheets and the stiffness of its joints set: ready to be asked."""

    def __init__(self, model: Model, plates: Sequence[Reduced], sheets: Sequence[Sheet], joints_ratio: float) -> None:
        """Add everything up.

        plates : the reductions that panels name    joints_ratio : by which all springs are stiffer than written
        """
        import numpy as np

        self.model, self.sheets = model, tuple(sheets)
        self._own = [len(plates[p.plate].bend) - 3 * len(p.nodes) for p in model.panels]
        self.count = 6 * len(model.nodes) + sum(self._own)
        self.parts = {name: np.zeros((self.count, self.count)) for name in ("panels", "bars", "joints")}
        self.mass = np.zeros((self.count, self.count))
        self._add_panels(plates)
        self._add_bars()
        for spring in model.springs:
            self._add_spring(spring, joints_ratio)
        for node, mass_t in model.masses:
            for k in range(3):
                self.mass[6 * node + k, 6 * node + k] += mass_t
        self.stiffness = sum(self.parts.values())
        self._lower: Any = None

    def pushed(self, nodes: Sequence[int], direction: Vector, force_n: float) -> Pushed:
        """Return what a force does that is shared evenly by some nodes."""
        import numpy as np

        load = np.zeros(self.count)
        for node in nodes:
            load[6 * node : 6 * node + 3] += np.array(direction) * force_n / len(nodes)
        moved = self._solved(load)
        energies = {name: float(moved @ (part @ moved)) for name, part in self.parts.items()}
        whole = float(moved @ load)
        shares = {name: energy / whole if whole else 0.0 for name, energy in energies.items()}
        return Pushed(whole / force_n if force_n else 0.0, shares["panels"], shares["bars"], shares["joints"])

    def modes(self, count: int) -> tuple[Mode, ...]:
        """Return the slowest ways of swinging."""
        import numpy as np

        lower = self._factor()
        half = np.linalg.solve(lower, self.mass)
        squares, vectors = np.linalg.eigh(_even(np.linalg.solve(lower, half.T)))
        found = []
        for k in range(1, count + 1):
            shape = np.linalg.solve(lower.T, vectors[:, -k])
            steps = shape[: 6 * len(self.model.nodes)].reshape(-1, 6)[:, :3]
            largest = steps.ravel()[np.argmax(np.abs(steps))] or 1.0
            shape = shape / largest
            mass_t = float(shape @ (self.mass @ shape))
            found.append(Mode(1 / (2 * pi * sqrt(squares[-k])), tuple(float(v) for v in shape), 1000 * mass_t))
        return tuple(found)

    def panel_motion(self, panel: int, shape: Sequence[float]) -> tuple[list[float], list[float]]:
        """Return how a panel's discs (and own shapes) bend and stretch in its own axes, for a shape of the frame."""
        import numpy as np

        places, turn = self._places(panel)
        local = turn @ np.asarray(shape)[places]
        few = len(self.model.panels[panel].nodes)
        bend = [float(local[6 * k + j]) for k in range(few) for j in (2, 3, 4)]
        stretch = [float(local[6 * k + j]) for k in range(few) for j in (0, 1, 5)]
        return bend + [float(v) for v in local[6 * few :]], stretch

    def _factor(self) -> Any:
        import numpy as np

        if self._lower is None:
            try:
                self._lower = np.linalg.cholesky(self.stiffness)
            except np.linalg.LinAlgError:
                raise UnfitFrameError("something in the frame can move freely") from None
        return self._lower

    def _solved(self, load: Any) -> Any:
        import numpy as np

        lower = self._factor()
        return np.linalg.solve(lower.T, np.linalg.solve(lower, load))

    def _places(self, panel: int) -> tuple[list[int], Any]:
        """The freedoms of a panel, and the turn into its own axes."""
        import numpy as np

        described = self.model.panels[panel]
        start = 6 * len(self.model.nodes) + sum(self._own[:panel])
        own = list(range(start, start + self._own[panel]))
        places = [6 * node + k for node in described.nodes for k in range(6)] + own
        turn = np.eye(len(places))
        few = 6 * len(described.nodes)
        turn[:few, :few] = np.kron(np.eye(2 * len(described.nodes)), np.array(described.axes))
        return places, turn

    def _add_panels(self, plates: Sequence[Reduced]) -> None:
        import numpy as np

        for number, panel in enumerate(self.model.panels):
            sheet, plate, few = self.sheets[panel.sheet], plates[panel.plate], len(panel.nodes)
            places, turn = self._places(number)
            bend = [6 * k + j for k in range(few) for j in (2, 3, 4)] + list(range(6 * few, len(places)))
            stretch = [6 * k + j for k in range(few) for j in (0, 1, 5)]
            k, m = np.zeros((len(places),) * 2), np.zeros((len(places),) * 2)
            t, weight = sheet.thickness_mm, sheet.density_t_mm3 * sheet.thickness_mm
            k[np.ix_(bend, bend)] += plate.bend * (sheet.modulus_mpa * t**3)
            k[np.ix_(stretch, stretch)] += plate.stretch * (sheet.modulus_mpa * t)
            m[np.ix_(bend, bend)] += plate.bend_mass * weight
            m[np.ix_(stretch, stretch)] += plate.stretch_mass * weight
            self.parts["panels"][np.ix_(places, places)] += turn.T @ k @ turn
            self.mass[np.ix_(places, places)] += turn.T @ m @ turn

    def _add_bars(self) -> None:
        import numpy as np

        for bar in self.model.bars:
            k, m = bar_matrices(self.model.nodes[bar.a], self.model.nodes[bar.b], bar.section)
            places = [6 * node + j for node in (bar.a, bar.b) for j in range(6)]
            self.parts["bars"][np.ix_(places, places)] += k
            self.mass[np.ix_(places, places)] += m

    def _add_spring(self, spring: Spring, joints_ratio: float) -> None:
        import numpy as np

        turn = np.array(spring.axes)
        across, turning = spring.across_n_mm, spring.turning_nmm_rad
        values = np.array([across, across, spring.normal_n_mm, turning, turning, spring.twisting_nmm_rad])
        step = np.zeros((6, self.count))
        for node, sign in ((spring.a, 1.0), (spring.b, -1.0)):
            if node != GROUND:
                arm = np.array(spring.at) - np.array(self.model.nodes[node])
                step[:3, 6 * node : 6 * node + 3] += sign * turn
                step[:3, 6 * node + 3 : 6 * node + 6] += sign * turn @ _across(arm)
                step[3:, 6 * node + 3 : 6 * node + 6] += sign * turn
        used = np.flatnonzero(step.any(axis=0))
        small = step[:, used]
        self.parts["joints"][np.ix_(used, used)] += joints_ratio * small.T @ (values[:, None] * small)


def _across(arm: Any) -> Any:
    """The matrix of θ × arm."""
    import numpy as np

    x, y, z = arm
    return np.array([[0.0, z, -y], [-z, 0.0, x], [y, -x, 0.0]])


def _even(matrix: Any) -> Any:
    return (matrix + matrix.T) / 2
