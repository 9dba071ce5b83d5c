"""Does a driver with its sense resistor make the current that the motor is to have, with room to set it?"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.motor_torque import driver_rms_a
from scantling.checks.ports import plugged, wants
from scantling.checks.rule import EmptyPlaceError, check_of
from scantling.findings import Finding, Verdict
from scantling.formulas.motor_drivers import full_scale_a, sense_loss_w
from scantling.model.kinds import Motor


def _run(reader: Reader, subject: str) -> Finding:
    on = plugged(reader, subject)
    if not on.ports:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{on.board.id} has no drivers: PORT-02 says so.")
    port, motor = on.ports[0], reader.part(on.want.place)
    if motor is None:
        raise EmptyPlaceError(on.want.place)
    path = f"parts.{on.board.id}.ports (of drivers)"
    full_v, sense_ohm = need(port.full_scale_v, f"{path}.full-scale"), need(port.sense_ohm, f"{path}.sense")
    axis = next((one for one in reader.design.axes.values() if one.motor == on.want.place), None)
    wanted_a = driver_rms_a(motor, axis) if isinstance(motor, Motor) else None
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda volts, sense, **_: full_scale_a(volts, sense),
        inputs={
            "volts": known("voltage over the sense resistor", full_v, "V"),
            "sense": known("sense resistor with its wiring", sense_ohm, "ohm"),
            "wanted": known(f"current of {on.want.place}", need(wanted_a, f"parts.{motor.id}.current"), "A"),
        },
        bounds=at_least(lambda wanted, **_: wanted),
        unit="A",
        because="{volts} over {sense} let the driver make {value} rms at most; {limit} are wanted, which take {loss} "
        "in each resistor.",
        mend="a smaller sense resistor, another driver, or less current",
        also={"loss": (lambda **f: sense_loss_w(f["wanted"], f["sense"]), "W")},
    )


CHECK = check_of(
    _run,
    code="MOTOR-03",
    title="Driver and its sense resistor",
    source="V / (R √2) at full scale, as libraries for such drivers reckon",
    subjects=wants("driver"),
)
