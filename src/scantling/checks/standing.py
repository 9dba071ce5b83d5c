"""Guides whose rods stand still: their parts, how a load is shared by two rods, how firmly their ends are held."""

from __future__ import annotations

from scantling.build.axis_loads import GuideGeometry, guide_geometry, guide_size
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.build.rod_ends import Ends
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.rule import EmptyPlaceError
from scantling.formulas.carriages import side_by_side_share_ratio, stacked_share_ratio
from scantling.model.axis import Guide
from scantling.quantities import Figure
from scantling.tables.guide_limits import guide_limit


def standing_guide(reader: Reader, axis: str) -> tuple[Guide, GuideGeometry]:
    """Return the guide of an axis whose rods stand still, none of its places empty."""
    guide = need(reader.design.axes[axis].guide, f"axes.{axis}.guide")
    if guide.moving_rods:
        raise NotDescribedError((f"axes.{axis}.guide (rods that stand still)",))
    geometry = reader.derive(guide_geometry, axis)
    for place, pieces in ((guide.rods, geometry.rods), (guide.bearings, geometry.bearings)):
        if not pieces:
            raise EmptyPlaceError(place)
    return guide, geometry


def rod_share(reader: Reader, axis: str, guide: Guide, rods: int) -> Figure:
    """Return the share of a load that the busier rod carries: even, unless the axis says that it is off the middle."""
    if rods != 2 or guide.apart_mm is None or guide.load_offset_mm is None:
        return Figure.exact(1 / rods)
    apart_mm, offset_mm = (reader.derive(guide_size, axis, name) for name in ("apart", "load_offset"))
    if apart_mm.low <= 0:
        raise NotDescribedError((f"axes.{axis}.guide.apart (more than nothing)",))
    share = stacked_share_ratio if guide.lie == "stacked" else side_by_side_share_ratio
    ends_mm = abs(offset_mm.low), abs(offset_mm.high)
    least_mm = 0.0 if offset_mm.low <= 0 <= offset_mm.high else min(ends_mm)
    low, high = share(least_mm, apart_mm.high), share(max(ends_mm), apart_mm.low)
    return Figure(share(offset_mm.value, apart_mm.value), low, high, offset_mm.grade)


def ends_inputs(ends: Ends) -> dict[str, Input]:
    """Return how firmly printed holders hold the ends of rods, where that matters: ``fixity`` or ``backing``."""
    if ends.measured is not None:
        return {"fixity": known("fixity of the rods' ends", ends.measured)}
    return {"backing": backing("stiffness of the rods' holders")} if ends.how == "held" else {}


def backing(what: str) -> Input:
    """Return what walls and clips of printed holders resist of what solid ones would."""
    return or_typical(what, None, guide_limit("backing of a holder"))
