"""Maps: at which speeds and accelerations each belt axis stays sound, as data and as drawings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scantling.api.opening import Session, start_build
from scantling.build.reference import carry_over
from scantling.checks.axis_map import AxisMap as AxisMap  # faces name its type
from scantling.checks.axis_map import axis_maps
from scantling.drawing.svg import to_svg
from scantling.model.build import Key
from scantling.plans.motion_map import motion_page


def motion_maps(session: Session, changes: Mapping[Key, str] | None = None) -> tuple[AxisMap, ...]:
    """Return the map of every belt axis, of the choice in force (else of the reference parts) with some changes."""
    build = start_build(session)
    return axis_maps(session.case, carry_over(session.case, build, changes) if changes else build)


def motion_files(maps: tuple[AxisMap, ...]) -> dict[str, bytes]:
    """Return the drawings of maps as SVG by file name."""
    return {f"axis-{one.axis}.svg": to_svg(motion_page(one)) for one in maps}


def motion_data(shown: AxisMap) -> dict[str, Any]:
    """Return a map as plain data: rows from the least acceleration, each cell's verdict and the check that says it."""
    return {
        "axis": shown.axis,
        "title": shown.title,
        "wanted": {"speed_mm_s": shown.wanted_mm_s, "acceleration_mm_s2": shown.wanted_mm_s2},
        "speeds_mm_s": [cell.speed_mm_s for cell in shown.cells[0]],
        "accelerations_mm_s2": [row[0].acceleration_mm_s2 for row in shown.cells],
        "most_sound_mm_s2": list(shown.most_mm_s2),
        "verdicts": [[cell.verdict.value for cell in row] for row in shown.cells],
        "said_by": [[cell.code for cell in row] for row in shown.cells],
        "looked": list(shown.looked),
        "left_out": list(shown.left_out),
    }
