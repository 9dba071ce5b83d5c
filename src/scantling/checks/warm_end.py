"""The temperature at which a heater's losses eat all its power must lie above the wanted one, or it is never reached.

It is also where a switch that sticks leads to: above what glue, holders and cable stand, an independent thermal cut-out
is needed.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of
from scantling.checks.warming import warmed
from scantling.findings import Finding
from scantling.formulas.heat import highest_rise_k


def _run(reader: Reader, subject: str) -> Finding:
    on = warmed(reader, subject)
    inputs = {name: on.inputs[name] for name in ("power", "loss")}
    inputs["room"] = known("temperature of the room", on.warming.room_c, "°C")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda power, loss, room: room + highest_rise_k(power, loss),
        inputs=inputs,
        bounds=at_least(on.warming.target_c.value),
        unit="°C",
        because="{power} against a loss of {loss} end at {value}; {limit}. That is also where a stuck switch leads: "
        "fit a thermal cut-out where anything near does not stand it.",
        mend="a stronger heater or insulation",
    )


CHECK = check_of(
    _run,
    code="WARM-02",
    title="Temperature that a heater ends at",
    source="energy balance of one body: room + P / k; radiation left out",
    subjects=all_of("warming", lambda design: design.warmings),
)
