"""Does what a motor is bolted to stand its heat for hours? A mount that creeps lets the belt go slack.

Heat goes with the square of the current: a figure that was the peak and is taken as rms makes twice the heat. What a
mount of plastic stands for hours lies 15 to 20 K below its glass point.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from scantling.build.gets import plastic_of
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION, at_most
from scantling.checks.materials import figure_of, material_of
from scantling.checks.motor_torque import driver_rms_ratio
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident, named
from scantling.findings import Finding
from scantling.formulas.heat import stands_for_hours_c
from scantling.formulas.motor_drivers import case_rise_k
from scantling.model.axis import Axis, BeltAxis
from scantling.model.design import Design
from scantling.model.kinds import Motor, Printed, SheetStock
from scantling.quantities import Figure, Grade
from scantling.tables.electric_limits import electric_limit
from scantling.tables.heats import glass_point_c
from scantling.tables.motors import motor_class


@dataclass(frozen=True)
class Mount:
    """What a motor is bolted to: its place, its material and from where it gives way, None where heat does no harm."""

    place: str
    material: str
    soft_c: Figure | None


def _run(reader: Reader, subject: str) -> Finding:
    place = ident(subject)
    axis = _driven_by(reader.design, place)
    motor = part_at(reader, place, Motor, f"places.{place}")
    mount = _mount(reader, place)
    inputs = {
        "room": known("temperature of the room", electric_limit("room"), "°C"),
        "rated": _rated_rise(motor),
        "current": known("driver's current against the rated one", driver_rms_ratio(motor, axis)),
    }
    because = f"Case of {motor.id or place} at {{current}} of its rated current, {{rise}} above {{room}}: {{value}}. "
    if mount.soft_c is None:
        because += f"It is bolted to {mount.place} of {mount.material}, which stands that."
        bounds = INFORMATION
    else:
        inputs["soft"] = known(f"glass point of {mount.material}", mount.soft_c, "°C")
        inputs["margin"] = known("margin against creep", electric_limit("creep margin"), "K")
        because += f"It is bolted to {mount.place} of {mount.material}; loaded for hours that stands {{limit}}."
        because += _slack_words(axis)
        bounds = replace(at_most(_stands_c), nominal_holds=True)
    return judge(
        CHECK,
        reader,
        subject,
        rule=_case_c,
        inputs=inputs,
        bounds=bounds,
        unit="°C",
        because=because,
        mend="less current (heat goes with its square), a mount of ABS, ASA or metal, or a plate of metal between",
        also={"rise": (lambda **f: case_rise_k(f["rated"], f["current"]), "K")},
    )


def _case_c(room: float, rated: float, current: float, **_: float) -> float:
    return room + case_rise_k(rated, current)


def _stands_c(soft: float, margin: float, **_: float) -> float:
    return stands_for_hours_c(soft, margin)


def _slack_words(axis: Axis) -> str:
    """What a mount that creeps does to a belt."""
    if not isinstance(axis, BeltAxis):
        return ""
    return " A mount that creeps lets the belt go slack: BELT-07 says after how much."


def _rated_rise(motor: Motor) -> Input:
    """How much warmer the case gets at the rated current: as the motor says it, else usual of its size."""
    usual = motor_class(motor.frame_size).rise_k
    figure = Figure(usual.typical, usual.low, usual.high)
    return or_typical(f"rise of {motor.id or 'the motor'} at its rated current", motor.rated_rise_k, figure, "K")


def _mount(reader: Reader, motor: str) -> Mount:
    """What the motor is bolted to: what its face is mated to, else where it sits."""
    faces = (m for m in reader.design.mates.values() if m.kind == "face on pattern" and _place(m.a) == motor)
    place = next((_place(mate.b) for mate in faces), reader.design.places[motor].on)
    if place not in reader.design.places:
        raise NotDescribedError((f"places.{motor}.on (what the motor is bolted to)",))
    part = reader.part(place)
    if isinstance(part, Printed):
        plastic = plastic_of(reader.get(place)) or need(_only(part), f"places.{place} (printed in which plastic)")
        return Mount(place, plastic, need(glass_point_c(plastic), f"glass point of {plastic}"))
    name = part.material if part is not None else None
    found = material_of(name, part.thickness_mm.value if isinstance(part, SheetStock) else None)
    soft = figure_of(found.softening_c, found.name) if found else None
    return Mount(place, name or "a material that is not said", _top(soft))


def _top(soft: Figure | None) -> Figure | None:
    """The glass point of a material whose band of softening ends there."""
    return None if soft is None else Figure(soft.high, soft.high, soft.high, Grade.TYPICAL, soft.source)


def _place(feature: str) -> str:
    return feature.partition(".")[0]


def _only(part: Printed) -> str | None:
    """The one plastic that a part is printed in, wherever that is done."""
    return part.plastics[0] if len(part.plastics) == 1 else None


def _driven_by(design: Design, motor: str) -> Axis:
    return next(axis for axis in design.axes.values() if axis.motor == motor)


def _motors(design: Design) -> tuple[str, ...]:
    """Return the places of the axes' motors."""
    return named("place", dict.fromkeys(axis.motor for axis in design.axes.values() if axis.motor is not None))


CHECK = check_of(
    _run,
    code="MOTOR-01",
    title="Heat of a motor on its mount",
    source="heat with the square of the current; rise at rated current: rating practice; glass point less 15 to 20 K",
    subjects=_motors,
)
