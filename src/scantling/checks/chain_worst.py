"""Sizes that add up to a gap: the worst case of all their tolerances against its limits, and what nearly all keep.

Worst case decides; the root of the sum of squares (99.7 % of all) is said beside it, for where the worst case asks too
much. Sizes made in one go deviate together.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.chain_links import chain_bounds, varied
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.rule import check_of
from scantling.checks.sentences import round_shown
from scantling.checks.subjects import all_of, ident
from scantling.findings import Finding
from scantling.formulas.chains import chain_mean_mm, root_sum_squares_mm


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    bounds = chain_bounds(name, reader.design.chains[name])
    found = varied(reader, name)
    middle_mm, half_mm = chain_mean_mm(found.links), root_sum_squares_mm(found.links)
    most = f"{round_shown(middle_mm - half_mm)} to {round_shown(middle_mm + half_mm, 'mm')}"
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda nominal, **deviations: nominal + sum(deviations.values()),
        inputs={"nominal": known("nominal size", found.nominal_mm, "mm"), **found.deviations},
        bounds=bounds,
        unit="mm",
        because=f"The sizes add up to {{nominal}}, in the worst case {{value}}; {{limit}}. Nearly all (99.7 %) keep "
        f"{most}.",
        mend="a tighter size of those named, a slot, or make them in one go",
    )


CHECK = check_of(
    _run,
    code="CHAIN-01",
    title="Chain of sizes, worst case",
    source="sum of tolerances; root of the sum of squares",
    subjects=all_of("chain", lambda design: design.chains),
)
