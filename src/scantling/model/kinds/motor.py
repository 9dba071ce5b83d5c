"""A stepping motor."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import (
    Angle,
    Current,
    Data,
    Force,
    Inductance,
    Inertia,
    Length,
    Resistance,
    Torque,
    Turns,
    Voltage,
    Warmth,
)
from scantling.model.part import Part


class TorquePoint(Data):
    """What a motor still turns at a speed: one point of its pull-out curve."""

    speed_rev_s: Turns
    torque_nmm: Torque


class Motor(Part):
    """A two-phase stepping motor.

    frame_size : ``14``, ``17`` or ``23``; gives the face's hole pattern    current_a : per phase
    current_basis : whether that current is rms or peak; the unkind one is taken where it is not said
    points : pull-out torque against speed where a curve is published
    curve_supply_v, curve_current_a : supply voltage and rms current of that curve, as on the axis where not said
    radial_n : side pull that the shaft bears ``radial_at_mm`` from the face
    bearing_mm : middle of the front bearing, behind the face    rated_rise_k : of the case at the rated current
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
    points: tuple[TorquePoint, ...] = ()
    curve_supply_v: Voltage | None = None
    curve_current_a: Current | None = None
    radial_n: Force | None = None
    radial_at_mm: Length | None = None
    bearing_mm: Length | None = None
    rated_rise_k: Warmth | None = None
