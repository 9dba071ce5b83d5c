"""Does a bushing sit straight on its rod? A seat cut by hand lies askew, and a rigid one presses the bushing's edges.

The angle is that of the seat as it is made, of rods out of parallel and of the rods' sag. Play takes a little of it; a
seat that is slimmer in its middle lets the bushing turn and takes the rest. What is left bends rod and seat.
"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.bushing_strength import strength
from scantling.checks.guide_loads import all_guides
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rod_fit import Running, running
from scantling.checks.rule import check_of
from scantling.checks.standing import rod_share
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.carriages import bushing_slope_rad
from scantling.formulas.dynamics import weight_n
from scantling.formulas.sections import round_second_moment_mm4


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    guide = need(reader.design.axes[name].guide, f"axes.{name}.guide")
    seats = need(guide.seats, f"axes.{name}.guide.seats")
    need(seats.askew_mm, f"axes.{name}.guide.seats.askew")
    on = running(reader, name)
    stands = strength(reader, name, on.bushing)
    slope = known("slope of the rods at a bushing", slope_rad(reader, subject, on))
    turns = "on which it can turn by {slack}" if on.inputs["slack"].nominal else "in which it cannot turn"
    return judge(
        CHECK,
        reader,
        subject,
        rule=on.edge_n,
        inputs=on.inputs | stands.inputs | {"slope": slope},
        bounds=at_most(lambda **f: stands.stands_n(f)),
        unit="N",
        because="Rod and seat part by {error} over the {length} of a bushing: {askew} the seat itself, {crooked} the "
        f"rods, {{sag}} their sag. {{play}} of it is play, the seat is one {turns}. The rest presses the edges as "
        f"{{value}} would press the whole bushing; {{limit}}, {stands.words}. Seats wider by {{wanted}} at their ends "
        "than in their middle would let it lie free; as it is the drive has {drag} more to pull.",
        mend="make the seats slimmer in the middle, so that the bushing aligns itself, or set them truer",
        also={
            "error": (error_mm, "mm"),
            "crooked": (lambda **f: f["length"] * f["parallel"] / f["free"], "mm"),
            "sag": (lambda **f: f["length"] * f["slope"], "mm"),
            "wanted": (lambda **f: max(0.0, error_mm(**f) - f["play"]), "mm"),
            "drag": (on.drag_n, "N"),
        },
    )


def error_mm(**f: float) -> float:
    """Return how far rod and seat part over the bushing's length."""
    return f["askew"] + f["length"] * (f["parallel"] / f["free"] + f["slope"])


def slope_rad(reader: Reader, subject: str, on: Running) -> float:
    """Return the largest slope of the rods at a bushing over the travel, nominal; none on a vertical axis."""
    name = ident(subject)
    if reader.design.axes[name].vertical:
        return 0.0
    mass_kg = read_total(reader, MOVING_MASS.name, subject).value
    share = rod_share(reader, name, on.guide, on.on.rods).value
    f = {key: figure.nominal for key, figure in on.inputs.items()}
    fixity = on.on.ends.fixity(f["free"], f["diameter"], f["modulus"], f)
    apart_mm = min(f["spacing"], f["free"]) if on.on.has_pair else 0.0
    way_mm = max(0.0, min(on.on.travel_mm, f["free"] - apart_mm))
    second_mm4 = round_second_moment_mm4(f["diameter"])
    return bushing_slope_rad(weight_n(mass_kg) * share, way_mm, apart_mm, f["free"], f["modulus"], second_mm4, fixity)


CHECK = check_of(
    _run,
    code="ROD-09",
    title="Seats of bushings",
    source="slope-deflection, springs in series; pressure of a moment: a bushing maker's table, statics; seats cut by "
    "hand slimmer in the middle: common practice, no source",
    subjects=all_guides,
    total=MOVING_MASS,
)
