"""Is the belt tight enough that no run hangs loose while it drives, and not so tight that it is overloaded?

While the carriage is driven its force is shared: one run takes more, the other gives up its share and must not be left
without. So the tension at rest need not be the whole force: half of it at most, less where the carriage stays nearer to
the motor. A mount that creeps takes tension away: said beside it is how far the axles may come nearer.
"""

from __future__ import annotations

from scantling.build.belt_runs import Runs, allowed_tension
from scantling.build.missing import gather
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.belt_loads import (
    MOST_SLACK_RATIO,
    MOST_TIGHT_RATIO,
    BeltLoad,
    belt_load,
    strain_input,
    tension_input,
    told_runs,
    wanted_mm_s2,
)
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import between
from scantling.checks.rule import check_of
from scantling.checks.sentences import Also
from scantling.checks.subjects import belt_axes, ident
from scantling.findings import Finding
from scantling.formulas.belt_drives import least_tension_n, most_tension_n, nearer_until_slack_mm


def _run(reader: Reader, subject: str) -> Finding:
    return judged(reader, subject, wanted_mm_s2(reader, subject))


def judged(reader: Reader, subject: str, acceleration_mm_s2: float) -> Finding:
    """Return the finding on an axis at an acceleration."""
    name, load = ident(subject), belt_load(reader, subject, acceleration_mm_s2)
    runs = told_runs(reader, name)

    def least(**f: float) -> float:
        return least_tension_n(load.push_n(**f), MOST_SLACK_RATIO, 1.0)

    def most(**f: float) -> float:
        return most_tension_n(f["allowed"], load.push_n(**f), 1.0 - MOST_TIGHT_RATIO, 1.0)

    tension, allowed_n = gather(
        lambda: tension_input(reader, name),
        lambda: known("tension at which the belt may work", allowed_tension(reader, name), "N"),
    )
    words, told = ("", {}) if runs is None else _of_travel(load, runs, strain_input(reader, name).nominal)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda tension, **_: tension,
        inputs={**load.inputs, "tension": tension, "allowed": allowed_n},
        bounds=between(least, most),
        unit="N",
        because="{push} on the belt take half of it at most from the slack run and add all of it at most to the tight "
        f"one, which may work at {{allowed}}: at rest {{value}}; {{limit}}.{words}",
        mend="set the tension by the note of the free run; a wider belt or less acceleration where the window is empty",
        also={"push": (load.push_n, "N"), **told},
    )


def _of_travel(load: BeltLoad, runs: Runs, strain_n: float) -> tuple[str, Also]:
    """What a sentence says of the very travel: the slack run's share, and what may be lost of the tension."""

    def least(**f: float) -> float:
        return least_tension_n(load.push_n(**f), runs.near_high_mm, runs.path_mm)

    def nearer(**f: float) -> float:
        return nearer_until_slack_mm(strain_n, max(0.0, f["tension"] - least(**f)), runs.path_mm)

    words = (
        f" With {runs.near_high_mm:.3g} of {runs.path_mm:.3g} mm to the motor at the far end of the travel {{least}} "
        "would do; the axles may come {nearer} nearer, by a mount that creeps, before a run hangs loose."
    )
    return words, {"least": (least, "N"), "nearer": (nearer, "mm")}


CHECK = check_of(
    _run,
    code="BELT-07",
    title="Tension of the belt",
    source="two springs side by side; a quarter of the breaking tension: practice of papers on such drives",
    subjects=belt_axes,
    total=MOVING_MASS,
)
