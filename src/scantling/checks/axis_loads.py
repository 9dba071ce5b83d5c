"""What an axis has to push: moving mass, friction of its guide, weight and process force, as inputs of a rule."""

from __future__ import annotations

from collections.abc import Mapping
from math import sqrt

from scantling.build.drives import guide_friction
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.check import TotalUse
from scantling.checks.inputs import Input, known
from scantling.checks.rod_fit import binding_drag
from scantling.checks.subjects import ident
from scantling.formulas.dynamics import friction_force_n, inertia_force_n, weight_n
from scantling.model.axis import Axis
from scantling.quantities import Figure

MOVING_MASS = TotalUse("moving-mass", "more")
ZERO = Figure.exact(0.0)


def load_inputs(reader: Reader, axis: Axis, subject: str) -> dict[str, Input]:
    """Return ``mass``, ``rubbing``, ``drag`` and ``process`` of an axis; a typed friction stands for its guide's.

    ``drag`` holds what seals and grease take and what a guide takes that is held too often.
    """
    friction = reader.derive(guide_friction, ident(subject))
    typed = friction.typed_n is not None
    bound = reader.derive(binding_drag, ident(subject)) if not typed else ZERO
    ratio, drag = (ZERO, friction.typed_n or ZERO) if typed else (friction.ratio, friction.drag_n + bound)
    return {
        "mass": known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
        "rubbing": known("friction of the bushings", ratio),
        "drag": known(f"friction of {subject}" if typed else "drag of the bushings", drag, "N"),
        "process": known("process force", axis.process_force_n or ZERO, "N"),
    }


def friction_n(figures: Mapping[str, float]) -> float:
    """Return what the guide takes."""
    return friction_force_n(figures["rubbing"], weight_n(figures["mass"]), figures["drag"])


def push_n(figures: Mapping[str, float], acceleration_mm_s2: float, vertical: bool) -> float:
    """Return the force along an axis at its worst: while it speeds up, upwards where it is vertical.

    A vertical guide carries no weight, so only the drag of its bushings is left of the friction.
    """
    carried = figures["drag"] + weight_n(figures["mass"]) if vertical else friction_n(figures)
    return inertia_force_n(figures["mass"], acceleration_mm_s2) + carried + figures["process"]


def reached_mm_s(speed_mm_s: float, acceleration_mm_s2: float, travel_mm: float | None) -> float:
    """Return the top speed of the longest move: a short travel ends before the wanted speed is reached."""
    if travel_mm is None or acceleration_mm_s2 <= 0:
        return speed_mm_s
    return min(speed_mm_s, sqrt(acceleration_mm_s2 * travel_mm))
