"""Does the motor's shaft bear the sideways pull of the belt? Its limit holds where it is stated, no further out.

The pull is that of both runs: twice the tension at rest, and of the drive force what one run takes more than the other
gives up, all of it where the carriage stands beside the motor. The tension need not be the whole force (BELT-07). The
limit is turned into one at the belt by equal moment about the front bearing.
"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.sizes import size
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.belt_loads import MOST_TIGHT_RATIO, BeltLoad, belt_load, tension_input, wanted_mm_s2
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.formulas.belt_drives import radial_limit_at_n, shaft_pull_n
from scantling.model.kinds import Motor
from scantling.quantities import Figure
from scantling.tables.motors import motor_class


def _run(reader: Reader, subject: str) -> Finding:
    return judged(reader, subject, wanted_mm_s2(reader, subject))


def judged(reader: Reader, subject: str, acceleration_mm_s2: float) -> Finding:
    """Return the finding on an axis at an acceleration."""
    axis, name = belt_axis(reader, subject), ident(subject)
    motor = part_at(reader, axis.motor, Motor, f"axes.{name}.motor")
    at_mm = reader.derive(size, need(axis.belt_at, f"axes.{name}.belt-at"))
    load = belt_load(reader, subject, acceleration_mm_s2)
    inputs = {"tension": tension_input(reader, name), "at": known("distance of the belt from the face", at_mm, "mm")}
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: _pull_n(load, f),
        inputs={**load.inputs, **inputs, **_limit_inputs(motor)},
        bounds=at_most(_limit_n),
        unit="N",
        because="Two runs of {tension} and {push} in the tight one pull the shaft sideways with {value}, {at} "
        "from the motor's face; {limit}: {radial} at {stated} by equal moment about the bearing {bearing} behind it.",
        mend="less tension (BELT-07 says how little does), the pulley nearer to the face, or a bearing beyond it",
        also={"push": (load.push_n, "N")},
    )


def _pull_n(load: BeltLoad, f: dict[str, float]) -> float:
    return shaft_pull_n(f["tension"], load.push_n(**f), 1.0 - MOST_TIGHT_RATIO, 1.0)


def _limit_n(**f: float) -> float:
    return radial_limit_at_n(f["radial"], f["stated"], f["at"], f["bearing"])


def _limit_inputs(motor: Motor) -> dict[str, Input]:
    """What the shaft bears and where that holds: as the motor says it, else usual of its size."""
    who, usual = motor.id or "the motor", motor_class(motor.frame_size).radial
    if motor.radial_n is not None and motor.radial_at_mm is not None:
        limit = known(f"side load of {who}", motor.radial_n, "N")
        stated = known("where that is stated", motor.radial_at_mm, "mm")
    else:
        found = need(usual, f"parts.{who}.radial")
        limit = or_typical(f"side load of {who}", None, Figure.exact(found.limit_n), "N")
        stated = or_typical("where that is stated", None, Figure.exact(found.at_mm), "mm")
    behind_mm = Figure.exact(usual.bearing_mm if usual else 0.0)
    return {"radial": limit, "stated": stated, "bearing": or_typical("bearing", motor.bearing_mm, behind_mm, "mm")}


CHECK = check_of(
    _run,
    code="BELT-10",
    title="Pull on the motor's shaft",
    source="sum of both runs; equal moment about the bearing, which reproduces a motor maker's table of side loads",
    subjects=belt_axes,
    total=MOVING_MASS,
)
