"""What insulation saves: loss, holding power and time to warm up with it and without, for information."""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.checks.warming import faces_loss_w_k, warmed
from scantling.findings import Finding
from scantling.formulas.heat import holding_power_w, warm_up_s
from scantling.model.design import Design

SECONDS = 60.0
LONGEST_MIN = 600.0
PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    warming = reader.design.warmings[name]
    place = need(warming.insulation, f"warmings.{name}.insulation")
    bare, covered = (faces_loss_w_k(reader, name, cover) for cover in (None, place))
    on = warmed(reader, subject)
    store, rise, power = on.inputs["store"], on.inputs["rise"], on.inputs["power"]

    def minutes(loss: float, power: float, store: float, rise: float) -> float:
        return min(LONGEST_MIN, warm_up_s(power, store, loss, rise) / SECONDS)

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda bare, covered, **_: PERCENT * (1 - covered / bare),
        inputs={
            "bare": known("loss of both faces bare", bare, "W/K"),
            "covered": known("loss with insulation", covered, "W/K"),
            "store": store,
            "rise": rise,
            "power": power,
        },
        bounds=INFORMATION,
        unit="%",
        because="Bare, both faces lose {bare}; insulated underneath {covered}, {value} less: {held} instead of "
        "{held_bare} hold the temperature, and {power} reach it in {time} instead of {time_bare}.",
        also={
            "held": (lambda covered, rise, **_: holding_power_w(covered, rise), "W"),
            "held_bare": (lambda bare, rise, **_: holding_power_w(bare, rise), "W"),
            "time": (lambda covered, power, store, rise, **_: minutes(covered, power, store, rise), "min"),
            "time_bare": (lambda bare, power, store, rise, **_: minutes(bare, power, store, rise), "min"),
        },
    )


def _subjects(design: Design) -> tuple[str, ...]:
    return named("warming", (name for name, one in design.warmings.items() if one.insulation is not None))


CHECK = check_of(
    _run,
    code="WARM-04",
    title="What insulation saves",
    source="ISO 6946, d / λ + 1 / h of each face",
    subjects=_subjects,
    informs=True,
)
