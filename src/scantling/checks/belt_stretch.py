"""How far a belt gives while it speeds up, and how far friction alone keeps it back on the way there and back.

For information: what stretches comes back at a steady speed, but for what friction holds.
"""

from __future__ import annotations

from scantling.build.belt_runs import belt_runs
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.belt_loads import belt_load, strain_input, wanted_mm_s2
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, ident
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    load, runs = belt_load(reader, subject, wanted_mm_s2(reader, subject)), reader.derive(belt_runs, ident(subject))

    def softest(strain: float, **_: float) -> float:
        return runs.stiffness_n_mm(strain, runs.softest_mm)

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: load.push_n(**f) / softest(**f),
        inputs={**load.inputs, "strain": strain_input(reader, ident(subject))},
        bounds=INFORMATION,
        unit="mm",
        because="Where it is softest the belt holds the carriage with {softest}: {push} stretch it by {value} while it "
        "speeds up; friction alone makes {lost} between the way there and the way back.",
        also={
            "softest": (softest, "N/mm"),
            "push": (load.push_n, "N"),
            "lost": (lambda **f: 2 * load.rubbing_n(**f) / softest(**f), "mm"),
        },
    )


CHECK = check_of(
    _run,
    code="BELT-08",
    title="Stretch of the belt",
    source="both runs side by side, k = force for a strain / length: a university thesis on toothed belts",
    subjects=belt_axes,
    total=MOVING_MASS,
    informs=True,
)
