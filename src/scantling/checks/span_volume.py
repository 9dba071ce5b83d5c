"""The room that the tool reaches on all axes together: for information; each axis is judged by itself."""

from __future__ import annotations

from math import prod

from scantling.build.missing import each
from scantling.build.reach import reach_sizes
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.span_reach import reaching_axes
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.reach import reached_mm
from scantling.model.design import Design

_AXES = 3  # along which something is reached: fewer make no room
_MM3_PER_LITRE = 1e6


def _run(reader: Reader, subject: str) -> Finding:
    names = [ident(one) for one in reaching_axes(reader.design)]
    sizes = each(lambda name: reader.derive(reach_sizes, name), names)
    fields = ("start_mm", "travel_mm", "lost_low_mm", "over_mm", "lost_high_mm")

    def reached(side: str, place: int) -> float:
        return reached_mm(*(getattr(getattr(sizes[place], field), side) for field in fields))

    sides_mm = {name: reached("value", place) for place, name in enumerate(names)}
    said = ", ".join(f"{way_mm:.4g} mm along {name}" for name, way_mm in sides_mm.items())
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: prod(f.values()) / _MM3_PER_LITRE,
        inputs={
            f"axis_{place}": known(f"reach along {name}", sides_mm[name], "mm") for place, name in enumerate(names)
        },
        bounds=INFORMATION,
        unit="l",
        because=f"The tool reaches {said}: {{value}}.",
    )


def _subjects(design: Design) -> tuple[str, ...]:
    return ("machine reach",) if len(reaching_axes(design)) >= _AXES else ()


CHECK = check_of(
    _run, code="SPAN-02", title="Room that is reached", source="product of lengths", subjects=_subjects, informs=True
)
