"""How far a belt axis stands still when it is turned back: friction holds it while belt and motor give."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS, friction_n, load_inputs
from scantling.checks.axis_springs import axis_springs
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axis, named
from scantling.findings import Finding
from scantling.formulas.ringing import series_n_mm
from scantling.model.axis import BeltAxis
from scantling.model.design import Design


def _run(reader: Reader, subject: str) -> Finding:
    axis = belt_axis(reader, subject)
    springs = axis_springs(reader, subject, drive_alone=True)
    wanted = axis.needs.lost_motion_mm
    assert wanted is not None

    def rubbing(**f: float) -> float:
        return f["drag"] if axis.vertical else friction_n(f)

    def stiff(**f: float) -> float:
        return series_n_mm([springs.belt_n_mm(**f), springs.motor_n_mm(**f)])

    inputs = {name: figure for name, figure in springs.inputs.items() if name in ("strain", "holding", "setting")}
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: 2 * rubbing(**f) / stiff(**f),
        inputs=load_inputs(reader, axis, subject) | inputs,
        bounds=at_most(wanted.value),
        unit="mm",
        because="{rubbing_n} of friction on a belt and a motor that hold with {stiff} together: turned back, the axis "
        "stands still for {value}; {limit}.",
        mend="bushings that rub less, a wider belt, or more current in the motor",
        also={"rubbing_n": (rubbing, "N"), "stiff": (stiff, "N/mm")},
    )


def _asked(design: Design) -> tuple[str, ...]:
    """Return the belt axes of which it is asked."""
    axes = design.axes.items()
    wanted = (name for name, axis in axes if isinstance(axis, BeltAxis) and axis.needs.lost_motion_mm is not None)
    return named("axis", wanted)


CHECK = check_of(
    _run,
    code="AXIS-02",
    title="Lost motion of a belt axis",
    source="springs in a row: twice the friction over their stiffness",
    subjects=_asked,
    total=MOVING_MASS,
)
