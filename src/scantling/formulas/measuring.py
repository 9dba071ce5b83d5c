"""What a reading with simple means says of a part without papers: hardness, modulus, torque, play, friction."""

from __future__ import annotations

from math import radians, sqrt, tan

from scantling.formulas.dynamics import weight_n


def compared_hardness_hv(known_hv: float, known_print_mm: float, print_mm: float) -> float:
    """Hardness of a piece from the prints that one ball leaves in it and in a piece of known hardness.

    known_hv : hardness of the known piece [HV]
    known_print_mm : diameter of the print in it [mm]
    print_mm : diameter of the print in the other [mm]

    Valid for: one ball squeezed between both at once; prints a quarter to a half of the ball across; ± 10 %.
    Source: comparison of ball prints, load over the area of the print, H (D / d)².

    >>> compared_hardness_hv(200.0, 1.0, 0.8)
    312.5
    """
    return float(known_hv * (known_print_mm / print_mm) ** 2)


def strip_modulus_mpa(force_n: float, span_mm: float, width_mm: float, thickness_mm: float, sag_mm: float) -> float:
    """Modulus of a sheet from a strip of it on two supports.

    force_n : weight hung in the middle [N]
    span_mm : distance of the supports [mm]
    width_mm : width of the strip [mm]
    thickness_mm : its thickness [mm]
    sag_mm : by how much it sinks more under the weight [mm]

    Valid for: spans of 20 thicknesses and more, sag under a tenth of the span.
    Source: beam tables, F L³ / (4 b t³ s).

    >>> round(strip_modulus_mpa(10.0, 300.0, 50.0, 6.0, 0.8))
    7812
    """
    return force_n * span_mm**3 / (4 * width_mm * thickness_mm**3 * sag_mm)


def arm_torque_nmm(hung_kg: float, arm_mm: float) -> float:
    """Torque at which an arm on a shaft begins to give way.

    hung_kg : mass hung on the arm [kg]
    arm_mm : from the shaft's middle to the thread it hangs on, level [mm]

    Valid for: an arm that balances, or is weighed with its load.
    Source: m g r.

    >>> round(arm_torque_nmm(0.5, 80.0), 1)
    392.3
    """
    return weight_n(hung_kg) * arm_mm


def rocked_play_um(swing_mm: float, arm_mm: float, length_mm: float) -> float:
    """Play of a bushing on its rod from how far an arm on it can be rocked.

    swing_mm : way of the arm's end from stop to stop [mm]
    arm_mm : from the bushing's middle to where the way is read, along the rod [mm]
    length_mm : length of the bushing [mm]

    Valid for: small angles, a bushing that touches at its ends.
    Source: similar triangles, play = swing · length / arm.

    >>> rocked_play_um(0.25, 200.0, 24.0)
    30.0
    """
    return 1000 * swing_mm * length_mm / arm_mm


def sliding_friction_ratio(tilt_deg: float) -> float:
    """Friction from the tilt at which a carriage just keeps sliding on its rods.

    tilt_deg : angle of the rods [°]

    Valid for: no drag of seals and grease, which a light carriage shows more than a heavy one.
    Source: tan α.

    >>> round(sliding_friction_ratio(14.0), 3)
    0.249
    """
    return tan(radians(tilt_deg))


def stretched_stiffness_n(force_n: float, length_mm: float, stretch_mm: float) -> float:
    """Pull that would stretch a belt to twice its length, from a weight hung on it.

    force_n : weight that is added [N]
    length_mm : length of belt that stretches [mm]
    stretch_mm : by how much [mm]

    Valid for: a belt that is already tight; divide by its width for the stiffness per width.
    Source: Hooke, F L / ΔL.

    >>> stretched_stiffness_n(20.0, 1000.0, 1.6)
    12500.0
    """
    return force_n * length_mm / stretch_mm


def warm_current_a(heat_w: float, resistance_ohm: float) -> float:
    """Current in each of two phases that heats a motor with so much.

    heat_w : heat that the motor gives off when it is as hot as it may be [W]
    resistance_ohm : of one phase, warm [Ω]

    Valid for: a motor that stands still, both phases on, rms.
    Source: P = 2 I² R.

    >>> warm_current_a(9.0, 2.0)
    1.5
    """
    return sqrt(heat_w / 2 / resistance_ohm)
