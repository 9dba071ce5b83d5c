"""Is the belt tight enough that no run hangs loose while it drives, and not so tight that it is overloaded?

While the carriage is driven its force is shared: one run takes more, the other gives up its share and must not be left
without. So the tension at rest need not be the whole force, only the slack run's share of it where that is largest: the
carriage at the end of its travel that is far from the motor. A mount that creeps takes tension away: said beside it is
how far the axles may come nearer.
"""

from __future__ import annotations

from scantling.build.belt_runs import allowed_tension
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.belt_loads import belt_load, strain_input, tension_input
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import between
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, ident
from scantling.findings import Finding
from scantling.formulas.belt_drives import least_tension_n, most_tension_n, nearer_until_slack_mm


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    load = belt_load(reader, subject)
    runs = load.runs

    def least(**f: float) -> float:
        return least_tension_n(load.push_n(**f), runs.near_high_mm, runs.path_mm)

    def most(**f: float) -> float:
        return most_tension_n(f["allowed"], load.push_n(**f), runs.near_low_mm, runs.path_mm)

    def nearer(**f: float) -> float:
        return nearer_until_slack_mm(strain_n, max(0.0, f["tension"] - least(**f)), runs.path_mm)

    strain_n = strain_input(reader, name).nominal
    allowed = known("tension at which the belt may work", allowed_tension(reader, name), "N")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda tension, **_: tension,
        inputs={**load.inputs, "tension": tension_input(reader, name), "allowed": allowed},
        bounds=between(least, most),
        unit="N",
        because="{push} on the belt take {least} from the slack run where the carriage stands farthest from the motor "
        f"({runs.near_high_mm:.3g} of {runs.path_mm:.3g} mm), and may add to the tight one until {{allowed}}: at rest "
        "{value}; {limit}. The axles may come {nearer} nearer, by a mount that creeps, before a run hangs loose.",
        mend="set the tension by the note of the free run; a wider belt or less acceleration where the window is empty",
        also={"push": (load.push_n, "N"), "least": (least, "N"), "nearer": (nearer, "mm")},
    )


CHECK = check_of(
    _run,
    code="BELT-07",
    title="Tension of the belt",
    source="two springs side by side; a quarter of the breaking tension: practice of papers on such drives",
    subjects=belt_axes,
    total=MOVING_MASS,
)
