"""A coupler between motor shaft and screw."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Force, Length, Stress, Torque
from scantling.model.part import Part


class Coupler(Part):
    """Joins two round ends; ``clamping`` couplers grip any shaft up to their bore by closing a slit or a tube.

    body : what joins the ends: nothing that gives (``rigid``), a slit or sliding body that bends (``bending``), or a
        soft ``tube``; one of which it is not said is taken as rigid
    slip_torque_nmm : at which it slips on the smaller end, as measured
    outer_diameter_mm, span_mm, modulus_mpa : of a tube; the span is free between the ends of shaft and screw
    clamp_force_n : pull in the band, wire or tie that clamps each end of a tube
    """

    kind: Literal["coupler"] = "coupler"
    motor_bore_mm: Length
    screw_bore_mm: Length
    grip: Literal["clamping", "set-screw"] = "clamping"
    body: Literal["rigid", "bending", "tube"] | None = None
    slip_torque_nmm: Torque | None = None
    outer_diameter_mm: Length | None = None
    span_mm: Length | None = None
    modulus_mpa: Stress | None = None
    clamp_force_n: Force | None = None
