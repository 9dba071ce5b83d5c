"""A rod of a standard length in place of an odd one sticks out, or is short and takes travel away, one to one."""

from __future__ import annotations

from scantling.build.axis_loads import guide_size
from scantling.build.lengths import piece_length
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.guide_loads import all_guides
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least, between
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.model.axis import Guide


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    guide = need(reader.design.axes[name].guide, f"axes.{name}.guide")
    length, free, grip = gather(
        lambda: reader.derive(piece_length, guide.rods),
        lambda: reader.derive(guide_size, name, "free"),
        lambda: reader.derive(guide_size, name, "grip"),
    )
    room = None if guide.stick_out_mm is None else reader.derive(guide_size, name, "stick_out").value
    lost = " A rod that is short fills its holders only where they move together: travel shrinks by as much"
    inputs = {
        "length": known("length of the rods", length, "mm"),
        "free": known("free length of the rods", free, "mm"),
        "grip": known("length that each holder grips", grip, "mm"),
    }
    taken = taken_inputs(reader, name, guide)
    return judge(
        CHECK,
        reader,
        subject,
        rule=spare_mm,
        inputs=inputs | taken,
        bounds=at_least(0.0) if room is None else between(0.0, room),
        unit="mm",
        because="{length} of rod, less {free} between the holders and {grip} in each, leave {value} that stick out of "
        f"both together; {{limit}}.{lost}{', to {left}.' if taken else '.'}",
        mend="cut the rod, move the holders by the difference, or find room for what sticks out (tensioner, box, wall)",
        also={"left": (left_mm, "mm")} if taken else {},
    )


def spare_mm(length: float, free: float, grip: float, **_: float) -> float:
    """Return what sticks out of both holders together; below 0 where a rod does not fill them."""
    return length - free - 2 * grip


def left_mm(carriage: float, stops: float, **f: float) -> float:
    """Return the travel that is left where a short rod brings its holders together."""
    return f["free"] - carriage - stops + min(0.0, spare_mm(**f))


def taken_inputs(reader: Reader, axis: str, guide: Guide) -> dict[str, Input]:
    """Return ``carriage`` and ``stops``, which leave the travel, where the guide says both."""
    if guide.carriage_mm is None or guide.stops_mm is None:
        return {}
    return {
        "carriage": known("length of the carriage", reader.derive(guide_size, axis, "carriage"), "mm"),
        "stops": known("what stops and switch take", reader.derive(guide_size, axis, "stops"), "mm"),
    }


CHECK = check_of(
    _run,
    code="ROD-06",
    title="Length of the rods",
    source="sum of lengths",
    subjects=all_guides,
)
