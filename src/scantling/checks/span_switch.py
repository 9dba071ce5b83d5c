"""Does an axis stop in time behind its end switch? And between which places must the switch trip?

From the speed of homing it runs on for v² / 2a. That must be less than the switch's lever gives and less than the way
to the hard stop; and the switch must not trip so early that it takes from the travel more than the stops have.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.axis_loads import guide_size
from scantling.build.missing import NotDescribedError, gather, need
from scantling.build.reach import home_size
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge, worst_of
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.findings import Finding
from scantling.formulas.kinematics import distance_to_speed_mm
from scantling.formulas.reach import switch_room_mm
from scantling.model.design import Design
from scantling.quantities import Figure


@dataclass(frozen=True)
class Homing:
    """An axis that runs into its end switch; ``stops`` is what stops and switch may take, None where it is not said."""

    end: str
    speed_mm_s: float
    stopping_mm: float
    stops: Figure | None
    inputs: dict[str, Input]

    @property
    def window(self) -> str:
        """Between which places the switch must trip, in words."""
        most = "what the stops have" if self.stops is None else f"{self.stops.value:g} mm"
        return f"It must trip between {self.stopping_mm:.3g} mm and {most} before the hard stop."


def _run(reader: Reader, subject: str) -> Finding:
    homing = _homing(reader, ident(subject))
    room = judge(
        CHECK,
        reader,
        subject,
        rule=lambda trips, give: switch_room_mm(trips, give, homing.stopping_mm),
        inputs=homing.inputs,
        bounds=at_least(0.0),
        unit="mm",
        because=f"From {homing.speed_mm_s:g} mm/s the axis runs on for {homing.stopping_mm:.3g} mm; the switch at the "
        f"{homing.end} end trips {{trips}} before the hard stop and gives {{give}} more: {{value}} is left; {{limit}}. "
        f"{homing.window}",
        mend="home more slowly, a switch with a longer lever, or one that trips earlier",
    )
    return room if homing.stops is None else worst_of((room, _early(reader, subject, homing, homing.stops)))


def _early(reader: Reader, subject: str, homing: Homing, stops: Figure) -> Finding:
    """Return the finding on a switch that takes from the travel."""
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda trips: stops.value - trips,
        inputs={"trips": homing.inputs["trips"]},
        bounds=at_least(0.0),
        unit="mm",
        because=f"The switch at the {homing.end} end trips {{trips}} before the hard stop, of {stops.value:g} mm that "
        f"stops and switches may take from the rods: {{value}} is left; {{limit}}. {homing.window}",
        mend="move the switch nearer to the hard stop, or allow the stops more of the rods",
    )


def _homing(reader: Reader, name: str) -> Homing:
    axis = reader.design.axes[name]
    home = need(axis.home, f"axes.{name}.home")
    speed, acceleration, trips, give = gather(
        lambda: need(home.speed_mm_s, f"axes.{name}.home.speed"),
        lambda: need(axis.needs.acceleration_mm_s2, f"axes.{name}.needs.acceleration"),
        lambda: reader.derive(home_size, name, "trips"),
        lambda: reader.derive(home_size, name, "give"),
    )
    inputs = {
        "trips": known("where the switch trips, before the stop", trips, "mm"),
        "give": known("what the switch's lever gives", give, "mm"),
    }
    stopping_mm = distance_to_speed_mm(speed.value, acceleration.value)
    return Homing(home.end, speed.value, stopping_mm, _stops(reader, name), inputs)


def _stops(reader: Reader, axis: str) -> Figure | None:
    try:
        return reader.derive(guide_size, axis, "stops")
    except NotDescribedError:
        return None


def homed_axes(design: Design) -> tuple[str, ...]:
    """Return the axes of which it is said how they are homed."""
    return named("axis", (name for name, axis in design.axes.items() if axis.home is not None))


CHECK = check_of(
    _run, code="SPAN-04", title="End switch", source="kinematics: way to stop, v² / 2a", subjects=homed_axes
)
