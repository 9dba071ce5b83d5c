"""What a rail takes over a long time, duty counted: heat in the supply's box and energy on the bill, no limit."""

from __future__ import annotations

from scantling.build.rails import ONE, part_power
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.findings import Finding
from scantling.formulas.power import mean_power_w
from scantling.model.design import Rail, RailLoad


def _run(reader: Reader, subject: str) -> Finding:
    rail = reader.design.rails[ident(subject)]
    loads = [(_power_w(reader, rail, load), (load.duty or ONE).value) for load in rail.loads]
    peak = sum(power for power, _ in loads)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda mean: mean,
        inputs={"mean": known(f"mean power of {subject}", mean_power_w(loads), "W")},
        bounds=INFORMATION,
        unit="W",
        because=f"With its duties {subject} takes {{value}} on average, of {peak:.0f} W when all is on: "
        f"{mean_power_w(loads) / 1000:.2f} kW h an hour. The supply must give the peak all the same.",
    )


def _power_w(reader: Reader, rail: Rail, load: RailLoad) -> float:
    if load.place is None:
        return load.power_w.value if load.power_w is not None else 0.0
    part = reader.part(load.place)
    if part is None:
        return 0.0
    return float(part_power(part, rail.voltage_v.value).value * reader.pieces(load.place))


CHECK = check_of(
    _run,
    code="RAIL-05",
    title="Mean power of a rail",
    source="sum of power times duty",
    subjects=all_of("rail", lambda design: design.rails),
    informs=True,
)
