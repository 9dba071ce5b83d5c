"""At what frequency a carriage swings on its belt over the travel: for information.

There is no frequency that a belt must have: how far the tool swings is what counts, and the motor's own give and the
frame's take part in it (AXIS-01).
"""

from __future__ import annotations

from scantling.build.belt_runs import belt_runs
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.belt_loads import strain_input
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, ident
from scantling.findings import Finding
from scantling.formulas.dynamics import natural_frequency_hz


def _run(reader: Reader, subject: str) -> Finding:
    runs = reader.derive(belt_runs, ident(subject))

    def at(near_mm: float, **f: float) -> float:
        return natural_frequency_hz(runs.stiffness_n_mm(f["strain"], near_mm), f["mass"])

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: at(runs.softest_mm, **f),
        inputs={
            "mass": known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
            "strain": strain_input(reader, ident(subject)),
        },
        bounds=INFORMATION,
        unit="Hz",
        because="{mass} on a belt of {strain} for a strain of one swing at {value} where the belt is softest and at "
        "{most} at the end of the travel where it is stiffest, the motor held fast. No limit: see how far it swings.",
        also={"most": (lambda **f: at(runs.stiffest_mm, **f), "Hz")},
    )


CHECK = check_of(
    _run,
    code="BELT-09",
    title="Frequency of a carriage on its belt",
    source="stiffness law k = force for a strain / length: a university thesis on toothed belts; f = √(k / m) / 2π",
    subjects=belt_axes,
    total=MOVING_MASS,
    informs=True,
)
