"""A hole too near to an edge lets the sheet split or crack: the distance from its middle to the nearest edge or window.

Screws: so many diameters of the hole, by material. Seats and other wide holes: some material beyond the rim. A sheet
may give its own distance.
"""

from __future__ import annotations

from collections.abc import Iterable

from scantling.build.holes import ResolvedHole, entry_holes
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say, worst_of
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.model.kinds import SheetStock
from scantling.tables.check_limits import check_number

# Distance in diameters of the hole: workshop practice, no source; the unkind end where ranges are given.
DIAMETERS = {one: check_number(f"edge of {one}") for one in ("acrylic", "aluminium", "steel")}
WOOD_DIAMETERS = check_number("edge of wood")
FOR_SCREWS = ("clearance", "tapping", "pilot", "insert")
LEAST_RIM_MM = check_number("least rim")


def _run(reader: Reader, subject: str) -> Finding:
    sheet, _, entry = ident(subject).rpartition(".")
    if reader.part(sheet) is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{sheet} stays empty.")
    stock = part_at(reader, sheet, SheetStock, f"places.{sheet}.reference")
    holes = reader.derive(entry_holes, sheet, int(entry))
    if not holes:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this hole is for is not there: no hole.")
    thickness_mm = reader.derive(feature, sheet, "thickness").value
    return worst_of([_one(reader, subject, stock, hole, thickness_mm) for hole in _nearest(holes)])


def _nearest(holes: Iterable[ResolvedHole]) -> Iterable[ResolvedHole]:
    """Of holes of one size and purpose the nearest to an edge: none of the others is worse."""
    nearest: dict[tuple[str, float], ResolvedHole] = {}
    for hole in holes:
        other = nearest.setdefault((hole.purpose, hole.diameter_mm), hole)
        if _edge_mm(hole) < _edge_mm(other):
            nearest[hole.purpose, hole.diameter_mm] = hole
    return nearest.values()


def _edge_mm(hole: ResolvedHole) -> float:
    return need(hole.edge_mm, f"sheets.{hole.sheet}.outline")


def _one(reader: Reader, subject: str, stock: SheetStock, hole: ResolvedHole, thickness_mm: float) -> Finding:
    own = reader.design.sheets[hole.sheet].edge_distance_mm
    if hole.purpose not in FOR_SCREWS:
        least_mm = hole.diameter_mm / 2 + max(LEAST_RIM_MM, thickness_mm / 2)
    else:
        least_mm = usual_mm(hole.diameter_mm, stock.material) if own is None else own.value
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda edge, **_: edge,
        inputs={
            "edge": known("distance to the edge", _edge_mm(hole), "mm"),
            "hole": known("diameter of the hole", hole.diameter_mm, "mm"),
        },
        bounds=at_least(least_mm),
        unit="mm",
        because=f"The hole of {{hole}} for {hole.why} at ({hole.x_mm:g}, {hole.y_mm:g}) in {stock.material} is "
        "{value} from the nearest edge; {limit}.",
        mend="move it inwards, a smaller screw, or a sheet that does not split",
    )


def usual_mm(diameter_mm: float, material: str) -> float:
    """Return the least distance of a screw's hole from an edge, by material; of wood where it is none of the others."""
    ratio = next((ratio for word, ratio in DIAMETERS.items() if word in material.lower()), WOOD_DIAMETERS)
    return ratio * diameter_mm


def entries(design: Design) -> tuple[str, ...]:
    """Return the hole entries of all sheets: ``hole back-panel.0``."""
    sheets = ((name, sheet) for name, sheet in design.sheets.items() if name in design.places)
    return tuple(f"hole {name}.{at}" for name, sheet in sheets for at in range(len(sheet.holes)))


CHECK = check_of(
    _run,
    code="HOLE-01",
    title="Distance of a hole from the edge",
    source="workshop practice, no source: 2.5 diameters in wood, 2 in acrylic and aluminium",
    subjects=entries,
)
