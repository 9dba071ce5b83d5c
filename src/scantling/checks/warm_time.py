"""Time to warm up to the wanted temperature, from the heat stored, what is lost meanwhile, and the heater's power."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of
from scantling.checks.warming import warmed
from scantling.findings import Finding
from scantling.formulas.heat import warm_up_s

SECONDS = 60.0
LONGEST_MIN = 600.0  # a temperature that is never reached is shown as this


def _run(reader: Reader, subject: str) -> Finding:
    on = warmed(reader, subject)

    def minutes(power: float, store: float, loss: float, rise: float) -> float:
        return min(LONGEST_MIN, warm_up_s(power, store, loss, rise) / SECONDS)

    return judge(
        CHECK,
        reader,
        subject,
        rule=minutes,
        inputs=on.inputs,
        bounds=at_most(on.warming.within_s.value / SECONDS),
        unit="min",
        because=f"{{power}} warm {{store}} by {{rise}} to {on.warming.target_c.value:g} °C against a loss of {{loss}} "
        "in {value}; {limit}.",
        mend="a stronger heater, insulation underneath, or a lighter plate",
    )


CHECK = check_of(
    _run,
    code="WARM-01",
    title="Time to warm up",
    source="energy balance of one body: -(C / k) ln(1 - k ΔT / P)",
    subjects=all_of("warming", lambda design: design.warmings),
)
