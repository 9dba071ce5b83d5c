"""Stepper motors: how fast, how strong at speed, what a drive asks of them.

The model of torque against speed: a two-phase hybrid stepper is a synchronous machine with one pole pair for every four
full steps. Its torque constant follows from the holding torque, which both phases at rated current make together; what
it induces when turning follows from the same constant. The driver holds the current as long as the supply can push it
through winding resistance, reactance and induced voltage; beyond, the motor falls out of step at the largest torque
that the supply voltage still makes. Left out: iron losses, detent torque, saturation, resonance and the driver's own
drop. Measured pull-out torques lie at PULL_OUT_LOW_RATIO to PULL_OUT_HIGH_RATIO of it (from memory of published
torque curves, no source found); a motor that must not lose steps is loaded to a half of it.
"""

from __future__ import annotations

from math import asin, hypot, pi, sin, sqrt

from scantling.formulas.dynamics import mass_t

PULL_OUT_LOW_RATIO = 0.6
PULL_OUT_TYPICAL_RATIO = 0.7
PULL_OUT_HIGH_RATIO = 1.0

FULL_STEPS_OF_CYCLE = 4  # full steps in an electrical cycle of a two-phase motor


def inductance_limited_rev_s(supply_v: float, inductance_mh: float, current_a: float, full_steps: int) -> float:
    """Speed at which the supply just manages to reverse the current in a winding within its time.

    supply_v : supply voltage [V]
    inductance_mh : inductance of one winding [mH]
    current_a : current of one winding [A]
    full_steps : full steps in one turn [-]

    Valid for: a first look; back-EMF and resistance left out.
    Source: calculators of two distributors, V / (2 L I · steps per turn).

    >>> round(inductance_limited_rev_s(24.0, 2.8, 1.68, 200), 3)
    12.755
    """
    return supply_v / (2 * inductance_mh / 1000 * current_a * full_steps)


def torque_constant_nmm_per_a(holding_nmm: float, rated_a: float) -> float:
    """Torque for one ampere of sine-wave amplitude, Returns N·mm/A; also the induced voltage per rad/s, in mV·s.

    holding_nmm : holding torque with both phases on [N mm]
    rated_a : rated current of one phase, rms or direct [A]

    Valid for: currents up to the rated one (iron not saturated).
    Source: two phases a quarter wave apart at rated current add to √2 times one.

    >>> round(torque_constant_nmm_per_a(260.0, 1.3), 2)
    141.42
    """
    return holding_nmm / (sqrt(2) * rated_a)


def back_emf_v(holding_nmm: float, rated_a: float, speed_rev_s: float) -> float:
    """Amplitude of the voltage that the turning rotor induces in one winding.

    holding_nmm : holding torque with both phases on [N mm]
    rated_a : rated current of one phase, rms or direct [A]
    speed_rev_s : speed [rev/s]

    Valid for: unsaturated iron.
    Source: energy, electrical power into the induced voltage is torque times angular speed.

    >>> round(back_emf_v(260.0, 1.3, 5.0), 2)
    4.44
    """
    return torque_constant_nmm_per_a(holding_nmm, rated_a) / 1000 * 2 * pi * speed_rev_s


def current_limited_torque_nmm(holding_nmm: float, rated_a: float, current_a: float) -> float:
    """Largest torque at rest and at low speed, where the driver makes the current it is set to.

    holding_nmm : holding torque with both phases on at rated current [N mm]
    rated_a : rated current of one phase, rms or direct [A]
    current_a : rms current that the driver is set to [A]

    Valid for: current_a up to rated_a; above it the iron saturates and the torque is overestimated.
    Source: torque in proportion to current.

    >>> current_limited_torque_nmm(260.0, 1.3, 0.91)
    182.0
    """
    return holding_nmm * current_a / rated_a


def voltage_limited_torque_nmm(
    holding_nmm: float,
    rated_a: float,
    resistance_ohm: float,
    inductance_mh: float,
    supply_v: float,
    speed_rev_s: float,
    full_steps: int,
) -> float:
    """Largest torque that the supply voltage makes at a speed; 0 where it makes none.

    holding_nmm : holding torque with both phases on at rated current [N mm]
    rated_a : rated current of one phase, rms or direct [A]
    resistance_ohm : resistance of one winding [ohm]
    inductance_mh : inductance of one winding [mH]
    supply_v : supply voltage, the amplitude that a bipolar driver can put on a winding [V]
    speed_rev_s : speed [rev/s]
    full_steps : full steps in one turn [-]

    Valid for: steady turning; see the head of this file for what is left out.
    Source: synchronous machine at a fixed voltage, T = k (V / Z - E R / Z²), Z² = R² + (ω L)².

    >>> round(voltage_limited_torque_nmm(260.0, 1.3, 2.4, 3.0, 24.0, 15.0, 200))
    215
    """
    electrical_rad_s = 2 * pi * speed_rev_s * full_steps / 4
    impedance_ohm = hypot(resistance_ohm, electrical_rad_s * inductance_mh / 1000)
    emf_v = back_emf_v(holding_nmm, rated_a, speed_rev_s)
    amplitude_a = supply_v / impedance_ohm - emf_v * resistance_ohm / impedance_ohm**2
    return max(0.0, torque_constant_nmm_per_a(holding_nmm, rated_a) * amplitude_a)


def pull_out_torque_nmm(
    holding_nmm: float,
    rated_a: float,
    current_a: float,
    resistance_ohm: float,
    inductance_mh: float,
    supply_v: float,
    speed_rev_s: float,
    full_steps: int,
) -> float:
    """Torque at which a motor in steady turning falls out of step, by the model at the head of this file.

    holding_nmm : holding torque with both phases on at rated current [N mm]
    rated_a : rated current of one phase, rms or direct [A]
    current_a : rms current that the driver is set to [A]
    resistance_ohm : resistance of one winding [ohm]
    inductance_mh : inductance of one winding [mH]
    supply_v : supply voltage [V]
    speed_rev_s : speed [rev/s]
    full_steps : full steps in one turn [-]

    Valid for: multiply by PULL_OUT_LOW_RATIO … PULL_OUT_HIGH_RATIO for the band of real motors.
    Source: the smaller of the current-limited and the voltage-limited torque.

    >>> round(pull_out_torque_nmm(260.0, 1.3, 1.3, 2.4, 3.0, 24.0, 5.0, 200))
    260
    """
    return min(
        current_limited_torque_nmm(holding_nmm, rated_a, current_a),
        voltage_limited_torque_nmm(
            holding_nmm, rated_a, resistance_ohm, inductance_mh, supply_v, speed_rev_s, full_steps
        ),
    )


def microstep_torque_nmm(holding_nmm: float, microsteps: int) -> float:
    """Torque that drags the rotor one microstep behind: not a loss of torque, but the stiffness of a small step.

    holding_nmm : holding torque [N mm]
    microsteps : parts of a full step [-]

    Valid for: sine-shaped torque against angle.
    Source: holding · sin(90° / N), as printed in a motor maker's note.

    >>> round(microstep_torque_nmm(100.0, 16), 2)
    9.8
    """
    return holding_nmm * sin(pi / 2 / microsteps)


def lag_full_steps_ratio(torque_nmm: float, holding_nmm: float) -> float:
    """How far a load drags the rotor behind its place, as a share of a full step; infinite beyond the holding torque.

    torque_nmm : load on the shaft [N mm]
    holding_nmm : largest torque at this current [N mm]

    Valid for: sine-shaped torque against angle, 90 electrical degrees to a full step.
    Source: asin(T / T_h) / 90°.

    >>> round(lag_full_steps_ratio(50.0, 100.0), 4)
    0.3333
    """
    if abs(torque_nmm) > holding_nmm:
        return float("inf")
    return asin(torque_nmm / holding_nmm) / (pi / 2)


def speed_rev_s(speed_mm_s: float, travel_per_turn_mm: float) -> float:
    """Turning speed of a motor from the speed of what it drives.

    speed_mm_s : speed [mm/s]
    travel_per_turn_mm : travel for one turn [mm]

    Valid for: direct drives.
    Source: definition.

    >>> speed_rev_s(160.0, 40.0)
    4.0
    """
    return speed_mm_s / travel_per_turn_mm


def reflected_inertia_kg_mm2(mass_kg: float, travel_per_turn_mm: float) -> float:
    """Moment of inertia that a straight-moving mass shows at the motor shaft.

    mass_kg : moving mass [kg]
    travel_per_turn_mm : travel for one turn [mm]

    Valid for: belts and screws alike.
    Source: energy, m (s / 2π)².

    >>> round(reflected_inertia_kg_mm2(1.0, 40.0), 2)
    40.53
    """
    return mass_kg * (travel_per_turn_mm / (2 * pi)) ** 2


def inertia_torque_nmm(inertia_kg_mm2: float, acceleration_rad_s2: float) -> float:
    """Torque that accelerates a moment of inertia; a rotor's 22 g·cm² are 2.2 kg·mm².

    inertia_kg_mm2 : moment of inertia [kg mm2]
    acceleration_rad_s2 : angular acceleration [rad/s2]

    Valid for: always.
    Source: torque is moment of inertia times angular acceleration; kg to t once.

    >>> round(inertia_torque_nmm(2.2, 314.16), 3)
    0.691
    """
    return mass_t(inertia_kg_mm2) * acceleration_rad_s2


def drive_torque_nmm(force_n: float, travel_per_turn_mm: float, efficiency_ratio: float) -> float:
    """Torque on the motor shaft for a force on what it drives.

    force_n : force along the travel, friction included [N]
    travel_per_turn_mm : travel for one turn [mm]
    efficiency_ratio : share of the work that arrives; 1 where losses are in the force [-]

    Valid for: belts, and screws whose efficiency is known.
    Source: work, T · 2π · η = F · s.

    >>> round(drive_torque_nmm(7.44, 40.0, 1.0), 2)
    47.36
    """
    return force_n * travel_per_turn_mm / (2 * pi * efficiency_ratio)


def torque_needed_nmm(
    force_n: float, travel_per_turn_mm: float, rotor_kg_mm2: float, acceleration_mm_s2: float
) -> float:
    """Torque that a belt axis asks of its motor while it accelerates.

    force_n : force on the belt, of moving mass and friction together [N]
    travel_per_turn_mm : travel for one turn [mm]
    rotor_kg_mm2 : moment of inertia of rotor and pulley [kg mm2]
    acceleration_mm_s2 : acceleration along the travel [mm/s2]

    Valid for: belt drives; losses belong into force_n.
    Source: drive_torque_nmm and inertia_torque_nmm.

    >>> round(torque_needed_nmm(7.44, 40.0, 2.5, 2000.0), 2)
    48.15
    """
    angular_rad_s2 = acceleration_mm_s2 * 2 * pi / travel_per_turn_mm
    return drive_torque_nmm(force_n, travel_per_turn_mm, 1.0) + inertia_torque_nmm(rotor_kg_mm2, angular_rad_s2)


def winding_loss_w(current_a: float, resistance_ohm: float) -> float:
    """Heat in the two windings of a motor.

    current_a : rms current of one phase [A]
    resistance_ohm : resistance of one winding [ohm]

    Valid for: two-phase motors; resistance rises by 0.39 % for each kelvin.
    Source: 2 I² R.

    >>> round(winding_loss_w(1.5, 1.9), 2)
    8.55
    """
    return 2 * current_a**2 * resistance_ohm


def cycle_mm(full_step_mm: float) -> float:
    """Way by which one of two motors on one command is out once it has settled one electrical cycle beside the other.

    full_step_mm : travel of one full step [mm]

    Valid for: two-phase motors, whose rest positions under one current repeat every four full steps; happens where a
        screw is turned, or its motor pushed over, with the current off.
    Source: definition, 4 full steps to an electrical cycle.

    >>> cycle_mm(0.04)
    0.16
    """
    return FULL_STEPS_OF_CYCLE * full_step_mm
