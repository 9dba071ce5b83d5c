"""Figures that every check of a tightened joint reads: the torque, by plan or by feel, and the friction."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.build.clamping import joint_thread, nut_factor, screw_friction
from scantling.build.typical import typical
from scantling.checks.inputs import Input, known
from scantling.formulas.clamping import HAND_HIGH, HAND_LOW, HAND_USUAL, clamp_load_n, hand_torque_nmm
from scantling.model.joint import Joint
from scantling.tables.bands import Band
from scantling.tables.threads import Thread


def tightening_inputs(described: Joint) -> dict[str, Input]:
    """Return the torque of a joint, as it says or as a hand gives it by feel, and the friction of its screw."""
    return {"torque": torque_input(described), "friction": friction_input()}


def torque_input(described: Joint) -> Input:
    """Return the torque to which a joint says that it is tightened, else what a hand gives by feel."""
    if described.tighten_nmm is not None:
        return known("tightening torque", described.tighten_nmm, "N·mm")
    major_mm = joint_thread(described).major_mm
    low, usual, high = (hand_torque_nmm(major_mm, end) for end in (HAND_LOW, HAND_USUAL, HAND_HIGH))
    return known("torque given by feel", typical(Band(low, usual, high), "by feel"), "N·mm")


def friction_input() -> Input:
    """Return the friction in the thread and under the head."""
    return known("friction of the screw", typical(screw_friction(), "dry steel"))


def clamp_of(found: Thread, figures: Mapping[str, float]) -> float:
    """Return the clamp load in N that torque and friction give."""
    return clamp_load_n(figures["torque"], found.major_mm, nut_factor(found, figures["friction"]))


def banded(what: str, band: Band, unit: str = "") -> Input:
    """Return a class value with its band, marked as assumed."""
    return known(what, typical(band, what), unit)
