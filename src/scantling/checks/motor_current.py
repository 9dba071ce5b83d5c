"""Is the driver set to what the motor is rated for? Rms against rms; the unkind reading where that is not said.

A figure that was the peak and is set as rms makes 1.41 times the current and twice the heat.
"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.motor_torque import rated_rms_ratio
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident, named
from scantling.findings import Finding
from scantling.formulas.motor_drivers import PEAK_PER_RMS
from scantling.model.design import Design
from scantling.model.kinds import Motor
from scantling.tables.motion_limits import motion_limit


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    axis = reader.design.axes[name]
    driver_a = need(axis.driver_current_a, f"axes.{name}.driver-current")
    motor = part_at(reader, axis.motor, Motor, f"axes.{name}.motor")
    rated_a = need(motor.current_a, f"parts.{motor.id}.current")
    kind = motor.current_basis or "nothing said of rms or peak, taken as peak"
    share = rated_rms_ratio(motor)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda driver, rated: 100 * driver / (rated * share),
        inputs={
            "driver": known("current that the driver is set to", driver_a, "A"),
            "rated": known(f"current of {motor.id}", rated_a, "A"),
        },
        bounds=at_most(motion_limit("current of a driver").amount),
        unit="%",
        because=f"The driver is set to {{driver}} rms, {{peak}} at the peak; the motor is rated for {{rated}} "
        f"({kind}), {{rms}} rms: {{value}} of it; {{limit}}.",
        mend="a smaller setting; ask for the data sheet: rms or peak is 1.41 in torque and 2 in heat",
        also={
            "peak": (lambda **f: f["driver"] * PEAK_PER_RMS, "A"),
            "rms": (lambda **f: f["rated"] * share, "A"),
        },
    )


def _set(design: Design) -> tuple[str, ...]:
    """Return the axes whose driver's current is described."""
    return named("axis", (name for name, axis in design.axes.items() if axis.driver_current_a is not None))


CHECK = check_of(
    _run,
    code="MOTOR-02",
    title="Current of a driver",
    source="definition of rms and peak; the rated current as limit",
    subjects=_set,
)
