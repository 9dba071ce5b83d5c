"""A plate with its edges held, solved whole: what closed forms are compared with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from scipy.sparse import diags
from scipy.sparse.linalg import eigsh, spsolve

from scantling.shapes.elements.plate import gather, node_areas
from scantling.shapes.elements.shell import bending_stiffness, elasticity, membrane_stiffness
from scantling.shapes.elements.triangulate import Mesh, triangulate

MODULUS_MPA, THICKNESS_MM = 70_000.0, 2.0


@dataclass
class Rectangle:
    """A rectangular plate whose edges (left, right, bottom, top) are free, supported or clamped."""

    width_mm: float
    height_mm: float
    size_mm: float
    edges: Mapping[str, str]
    elastic: Any

    @property
    def rigidity(self) -> Any:
        return self.elastic * THICKNESS_MM**3 / 12

    def mesh(self) -> Mesh:
        w, h = self.width_mm, self.height_mm
        return triangulate([(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)], [], [], self.size_mm)

    def bent(self) -> tuple[Mesh, Any, Any]:
        mesh = self.mesh()
        stiffness = gather(
            mesh.triangles, bending_stiffness(mesh.nodes[mesh.triangles], self.rigidity), len(mesh.nodes)
        )
        return mesh, stiffness, self.free(mesh)

    def free(self, mesh: Mesh) -> Any:
        x, y = mesh.nodes.T
        sides = {
            "left": (x < 1e-6, 1),
            "right": (x > self.width_mm - 1e-6, 1),
            "bottom": (y < 1e-6, 2),
            "top": (y > self.height_mm - 1e-6, 2),
        }
        held = np.zeros((len(x), 3), bool)
        for name, (where, along) in sides.items():
            kind = self.edges.get(name, "free")
            held[where, 0] |= kind != "free"
            held[where, along] |= kind != "free"  # the slope along a held edge is nothing
            held[where, 3 - along] |= kind == "clamped"
        return np.flatnonzero(~held.ravel())

    def sag(self, at: tuple[float, float], pressure_mpa: float = 0.0, force_n: float = 0.0) -> float:
        """Deflection at a point under an even pressure, and a force there."""
        mesh, stiffness, free = self.bent()
        node = int(np.argmin(np.hypot(*(mesh.nodes - np.array(at)).T)))
        load = np.zeros(3 * len(mesh.nodes))
        load[::3] = node_areas(mesh) * pressure_mpa
        load[3 * node] += force_n
        moved = np.zeros_like(load)
        moved[free] = spsolve(stiffness[np.ix_(free, free)], load[free])
        return float(moved[3 * node])

    def numbers(self, count: int) -> list[float]:
        """Frequency numbers ω a² √(ρ h / D), the slowest first; ways of moving as a whole left out."""
        mesh, stiffness, free = self.bent()
        mass = diags((node_areas(mesh)[:, None] * np.array([1.0, 0.0, 0.0])).ravel()).tocsc()
        k, m = stiffness[np.ix_(free, free)], mass[np.ix_(free, free)]
        rigid = 3 if set(self.edges.values()) <= {"free"} else 0
        shift = -1e-3 * self.rigidity[0, 0] / self.width_mm**4 if rigid else 0.0
        squares = np.sort(eigsh(k, count + rigid, m, sigma=shift, v0=np.ones(len(free)), return_eigenvectors=False))
        return [float(np.sqrt(s / self.rigidity[0, 0])) * self.width_mm**2 for s in squares[rigid:]]


def plain(poisson_ratio: float = 0.3) -> Any:
    """A sheet that is alike all ways."""
    return elasticity(MODULUS_MPA, MODULUS_MPA, poisson_ratio, MODULUS_MPA / (2 * (1 + poisson_ratio)))


def rectangle(
    edges: str, width_mm: float = 200.0, height_mm: float = 200.0, parts: int = 24, elastic: Any = None
) -> Rectangle:
    """A plate by the letters of its left, right, bottom and top edge: F, S or C."""
    words = {"F": "free", "S": "supported", "C": "clamped"}
    named = dict(zip(("left", "right", "bottom", "top"), (words[c] for c in edges), strict=True))
    return Rectangle(
        width_mm, height_mm, min(width_mm, height_mm) / parts, named, plain() if elastic is None else elastic
    )


@pytest.fixture(scope="session")
def plates() -> SimpleNamespace:
    """What a test needs to bend plates."""
    return SimpleNamespace(
        rectangle=rectangle,
        plain=plain,
        elasticity=elasticity,
        membrane=membrane_stiffness,
        gather=gather,
        modulus_mpa=MODULUS_MPA,
        thickness_mm=THICKNESS_MM,
    )
