"""Does a coupler slip before the screw turns? The torque at which it slips against what the screw takes of it.

A soft tube tied round shaft and screw holds by friction. With two screws a slip of one tilts the gantry by its lead for
every turn, and nothing tells: hence a mark of paint across both ends, looked at every time.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.couplings import grip_inputs, how_it_grips, slip_matters
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of, part_at
from scantling.checks.screw_loads import screw_load
from scantling.checks.subjects import ident, screw_axis
from scantling.findings import Finding
from scantling.formulas.couplers import clamped_slip_nmm
from scantling.model.kinds import Coupler
from scantling.tables.motion_limits import motion_limit
from scantling.tables.sources import cite

MOST_RATIO = 1000.0  # beyond this a figure says nothing more


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    coupler = part_at(reader, axis.coupler, Coupler, f"axes.{name}.coupler")
    grip, load = grip_inputs(coupler), screw_load(reader, axis, subject)
    screws = max(1, load.drive.screws)
    smaller_mm = min(coupler.motor_bore_mm.value, coupler.screw_bore_mm.value)

    def slips_nmm(f: dict[str, float]) -> float:
        return f["slip"] if "slip" in f else clamped_slip_nmm(f["clamp"], f["grip"], smaller_mm)

    def reserve(**f: float) -> float:
        return min(MOST_RATIO, slips_nmm(f) / max(load.torque_nmm(f) / screws, 1e-9))

    return judge(
        CHECK,
        reader,
        subject,
        rule=reserve,
        inputs=load.inputs | grip,
        bounds=at_least(motion_limit("slip of a coupler").amount),
        unit="",
        because=f"{coupler.id}{how_it_grips(coupler, smaller_mm)} slips at {{slipping}}; each screw takes {{needed}}: "
        f"{{value}} times as much; {{limit}}.{what_a_slip_does(coupler, screws, float(load.drive.lead_mm))}",
        mend="a tie or clamp drawn tighter, clean and dry ends, or a metal coupler",
        also={
            "slipping": (lambda **f: slips_nmm(f), "N·mm"),
            "needed": (lambda **f: load.torque_nmm(f) / screws, "N·mm"),
        },
    )


def what_a_slip_does(coupler: Coupler, screws: int, lead_mm: float) -> str:
    """Return what a slip costs and how one of a tube is seen, in words; with one screw it only loses height."""
    tilts = f" A slip of one tilts the gantry by {lead_mm:.3g} mm a turn, and nothing tells."
    loses = f" A slip loses {lead_mm:.3g} mm of height a turn."
    mark = " Paint a mark across both ends of the tube and look at it every time." if coupler.body == "tube" else ""
    return (tilts if screws > 1 else loses) + mark


CHECK = check_of(
    _run,
    code="SCREW-12",
    title="Slip of a coupler",
    source=f"friction of a band round a circle; {cite('soft-tubes')}; limit: {cite('motion-practice')}",
    subjects=slip_matters,
    total=MOVING_MASS,
)
