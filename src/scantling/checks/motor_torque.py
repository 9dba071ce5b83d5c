"""What a motor gives at a speed: its figures, given or usual of its size, and the estimate that checks load to a half.

The driver is taken to be set to 0.7 of the rated current, as is usual to keep the motor cool on wood and plastic. The
limit of a half is there for what the estimate does not know: measured motors pull out at 0.6 to 1 of the model, so its
band is not counted a second time. A current of which nobody said whether it is rms or peak is taken as peak, the unkind
way.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known, or_range, or_typical
from scantling.checks.rule import part_at
from scantling.formulas.motor_drivers import torque_by_points_nmm
from scantling.formulas.motors import PULL_OUT_TYPICAL_RATIO, pull_out_torque_nmm
from scantling.model.axis import Axis
from scantling.model.kinds import Motor
from scantling.quantities import Figure
from scantling.tables.bands import Band
from scantling.tables.check_limits import check_number
from scantling.tables.motors import motor_class

LOAD_LIMIT_PERCENT = check_number("share of motor torque")
DRIVER_CURRENT_RATIO = check_number("share of rated current")
MOST_PERCENT = 1000.0  # a motor that gives nothing at a speed is not shown as loaded beyond this
SOURCE = "two-phase synchronous model of formulas/motors; half of it as limit: common practice, no source"

# Usual stepping motors of a size, for figures that a part does not give (from memory of many data sheets, no source).
USUAL_A = Figure(1.5, 1.0, 2.0)
USUAL_OHM = Figure(2.0, 1.4, 4.0)
USUAL_MH = Figure(3.5, 2.0, 5.0)
USUAL_SUPPLY_V = Figure(24.0, 12.0, 24.0)


@dataclass(frozen=True)
class Driven:
    """The motor of an axis with its figures, ready for a rule."""

    motor: Motor
    count: int
    full_steps: int
    inputs: dict[str, Input]
    rotor: Input
    holding: Input

    @property
    def points(self) -> tuple[tuple[float, float], ...]:
        """The published curve, empty where there is none."""
        return tuple(sorted((point.speed_rev_s.value, point.torque_nmm.value) for point in self.motor.points))

    def available_nmm(self, speed_rev_s: float, figures: dict[str, float]) -> float:
        """Return what all motors of the axis give together at a speed: by the published curve, else by the model."""
        if self.points:
            return self.count * self._by_points_nmm(speed_rev_s, figures)
        one_nmm = pull_out_torque_nmm(
            figures["holding"],
            figures["rated"],
            figures["rated"] * figures["setting"],
            figures["resistance"],
            figures["inductance"],
            figures["supply"],
            speed_rev_s,
            self.full_steps,
        )
        return self.count * figures["pull_out"] * one_nmm

    def voltage_ratio(self, figures: dict[str, float]) -> float:
        """Return the supply against that of the published curve."""
        volts = self.motor.curve_supply_v
        return figures["supply"] / volts.value if volts and self.points else 1.0

    def _by_points_nmm(self, speed_rev_s: float, figures: dict[str, float]) -> float:
        measured = self.motor.curve_current_a
        measured_a = measured.value if measured else figures["rated"]
        current_ratio = figures["rated"] * figures["setting"] / measured_a
        return torque_by_points_nmm(self.points, speed_rev_s, self.voltage_ratio(figures), current_ratio)

    @property
    def words(self) -> str:
        """Where its torque comes from, at the end of a sentence."""
        return " by its published curve" if self.points else ""


def driven(reader: Reader, axis: Axis, name: str, full_steps: int) -> Driven:
    """Return the motor of an axis with all that its torque depends on."""
    motor = part_at(reader, axis.motor, Motor, f"axes.{name}.motor")
    who, usual = motor.id or "the motor", motor_class(motor.frame_size)
    possible_nmm = usual.holding_low_nmm, usual.holding_high_nmm
    inputs = {
        "holding": or_range(f"holding torque of {who}", motor.holding_torque_nmm, *possible_nmm, "N·mm"),
        "rated": or_typical(f"current of {who}", motor.current_a, USUAL_A, "A"),
        "setting": _setting(motor, axis),
        "resistance": or_typical(f"resistance of {who}", motor.resistance_ohm, USUAL_OHM, "ohm"),
        "inductance": or_typical(f"inductance of {who}", motor.inductance_mh, USUAL_MH, "mH"),
        "supply": or_typical(f"supply voltage of axis {name}", axis.supply_voltage_v, USUAL_SUPPLY_V, "V"),
        "pull_out": or_typical("pull-out torque against the model", None, Figure.exact(PULL_OUT_TYPICAL_RATIO)),
    }
    holding = inputs["holding"]
    if motor.points:
        inputs = {key: inputs[key] for key in ("rated", "setting", "supply")}
    rotor = or_typical(f"rotor inertia of {who}", motor.rotor_inertia_kg_mm2, _figure(usual.rotor_kg_mm2), "kg·mm²")
    return Driven(motor, axis.motor_count, full_steps, inputs, rotor, holding)


def _figure(band: Band) -> Figure:
    return Figure(band.typical, band.low, band.high)


def _setting(motor: Motor, axis: Axis) -> Input:
    """Return the rms current of the driver as a share of the number on the motor: as the axis says it, else usual."""
    what = "driver current against the rated one"
    if axis.driver_current_a is not None and motor.current_a is not None:
        return known(what, axis.driver_current_a.value / motor.current_a.value)
    return or_typical(what, None, Figure.exact(DRIVER_CURRENT_RATIO * rated_rms_ratio(motor)))


def rated_rms_ratio(motor: Motor) -> float:
    """Return the rated rms current as a share of the number on the motor: the unkind reading where nobody says rms."""
    return 1.0 if motor.current_basis == "rms" else 1 / sqrt(2)


def driver_rms_ratio(motor: Motor, axis: Axis | None) -> float:
    """Return the rms current of a driver against the motor's rated rms current: as the axis says it, else usual."""
    if axis is None or axis.driver_current_a is None or motor.current_a is None:
        return DRIVER_CURRENT_RATIO
    ratio: float = axis.driver_current_a.value / (motor.current_a.value * rated_rms_ratio(motor))
    return ratio


def driver_rms_a(motor: Motor, axis: Axis | None) -> float | None:
    """Return the rms current of a driver; None where the motor does not say its own."""
    if axis is not None and axis.driver_current_a is not None:
        given: float = axis.driver_current_a.value
        return given
    rated = motor.current_a
    return None if rated is None else DRIVER_CURRENT_RATIO * rated.value * rated_rms_ratio(motor)


def load_percent(needed_nmm: float, available_nmm: float) -> float:
    """Return the share of the available torque that is needed, at most ``MOST_PERCENT``."""
    if available_nmm <= 0 or needed_nmm >= available_nmm * MOST_PERCENT / 100:
        return MOST_PERCENT
    return 100 * needed_nmm / available_nmm


def current_words(motor: Motor, axis: Axis | None = None) -> str:
    """Return what a sentence says of the current: its setting, and its kind where that costs torque."""
    if axis is not None and axis.driver_current_a is not None:
        return f" Driver at {axis.driver_current_a.value:g} A rms."
    words = f" Driver at {DRIVER_CURRENT_RATIO:g} of the rated current"
    if motor.current_basis == "rms":
        return f"{words} (rms)."
    kind = "peak" if motor.current_basis == "peak" else "taken as peak, for nobody says rms"
    return f"{words}, which is {kind}: 0.71 of the torque."
