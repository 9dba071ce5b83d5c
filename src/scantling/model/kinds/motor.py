"""A stepping motor."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Angle, Current, Inductance, Inertia, Length, Resistance, Torque
from scantling.model.part import Part


class Motor(Part):
    """A two-phase stepping motor.

    frame_size : ``14``, ``17`` or ``23``; gives the face's hole pattern    current_a : per phase
    current_basis : whether that current is rms or peak; the unkind one is taken where it is not said
    """

    kind: Literal["motor"] = "motor"
    frame_size: Literal["14", "17", "23"]
    shaft_diameter_mm: Length
    shaft_fit: str = "h7"
    shaft_length_mm: Length | None = None
    body_length_mm: Length | None = None
    step_angle_deg: Angle | None = None
    holding_torque_nmm: Torque | None = None
    detent_torque_nmm: Torque | None = None
    current_a: Current | None = None
    current_basis: Literal["rms", "peak"] | None = None
    resistance_ohm: Resistance | None = None
    inductance_mh: Inductance | None = None
    rotor_inertia_kg_mm2: Inertia | None = None
    tapped_depth_mm: Length | None = None
