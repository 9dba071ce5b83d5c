"""Numbers that no machine can have: a bore of 0, a negative mass, a tax of 190 %."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from pydantic import BaseModel

from scantling.model import axis, design, frame, guide, reach, sheet, wiring, workshop
from scantling.model.joint import Joint, Layer
from scantling.model.kinds import MeshVariant, board
from scantling.model.part import Part
from scantling.quantities import Figure, show_number
from scantling.reading.fields import name_in_files
from scantling.reading.nodes import Path
from scantling.reading.scene import Scene


@dataclass(frozen=True)
class Range:
    """What a number must be; ``is_open`` where the lower end itself is not allowed."""

    least: float
    most: float | None = None
    is_open: bool = False

    def refuses(self, value: float) -> bool:
        """True for a number outside."""
        too_small = value <= self.least if self.is_open else value < self.least
        return too_small or (self.most is not None and value > self.most)

    def __str__(self) -> str:
        """Return the range in words."""
        low = f"above {show_number(self.least)}" if self.is_open else f"{show_number(self.least)} or more"
        return low if self.most is None else f"{low} and at most {show_number(self.most)}"


ABOVE_0 = Range(0, is_open=True)
FROM_0 = Range(0)
FROM_1 = Range(1)
SHARE = Range(0, 1)
SOME_SHARE = Range(0, 1, is_open=True)

# a part's numbers are above 0 but for these
_PART_EXCEPTIONS = {
    "backlash_mm": FROM_0,
    "float_mm": FROM_0,
    "bow_300_mm": FROM_0,
    "lead_error_300_mm": FROM_0,
    "drag_n": FROM_0,
    "friction_ratio": Range(0, 2),
    "detent_torque_nmm": FROM_0,
    "infill_ratio": SHARE,
    "rough_ratio": SHARE,
    "surface_hardness_hrc": Range(0, 75, is_open=True),
    "step_angle_deg": Range(0, 90, is_open=True),
    "efficiency_ratio": SOME_SHARE,
    "power_factor_ratio": SOME_SHARE,
}
_RANGES: tuple[tuple[type[BaseModel], str, Range], ...] = (
    (MeshVariant, "suits", ABOVE_0),
    (axis.Needs, "travel_mm speed_mm_s acceleration_mm_s2 resolution_mm layers lost_motion_mm", ABOVE_0),
    (axis.Needs, "life_km", FROM_1),
    (axis.Guide, "sag_limit_mm", ABOVE_0),
    (axis.Guide, "parallel_mm", FROM_0),
    (axis.Guide, "fixity_ratio", SHARE),
    (guide.Seats, "askew_mm slack_mm", FROM_0),
    (reach.Reach, "wanted_mm", ABOVE_0),
    (reach.Home, "speed_mm_s", ABOVE_0),
    (reach.Clearance, "least_mm", FROM_0),
    (axis.TypedMass, "mass_kg", FROM_0),
    (axis.BeltAxis, "supply_voltage_v", ABOVE_0),
    (axis.BeltAxis, "motor_count microsteps", FROM_1),
    (axis.BeltAxis, "process_force_n friction_n", FROM_0),
    (axis.ScrewAxis, "supply_voltage_v", ABOVE_0),
    (axis.ScrewAxis, "motor_count microsteps screws", FROM_1),
    (axis.ScrewAxis, "process_force_n friction_n screw_friction_ratio", FROM_0),
    (design.Chain, "yield_wanted", SOME_SHARE),
    (design.RailLoad, "power_w", FROM_0),
    (design.RailLoad, "duty at_once", SHARE),
    (design.Rail, "voltage_v", ABOVE_0),
    (design.Rail, "headroom", SHARE),
    (design.Warming, "loss_w_k", FROM_0),
    (design.Warming, "within_s face_mm2", ABOVE_0),
    (wiring.LoomWire, "loop_mm", FROM_0),
    (wiring.LoomWire, "current_a", ABOVE_0),
    (board.Port, "current_a voltage_v fused_a", ABOVE_0),
    (board.Port, "count", FROM_1),
    (board.Mounting, "width_mm depth_mm hole_mm", ABOVE_0),
    (frame.Frame, "leg_free_mm leg_width_mm force_n sway_limit_mm joint_softening joint_stiffness", ABOVE_0),
    (frame.Frame, "legs", FROM_1),
    (frame.Link, "reach_mm", ABOVE_0),
    (frame.Carried, "mass_kg", FROM_0),
    (frame.Push, "force_n sway_limit_mm", ABOVE_0),
    (workshop.MeasuredPush, "force_n moved_mm", ABOVE_0),
    (sheet.Hole, "diameter_mm", ABOVE_0),
    (sheet.Hole, "per_piece", FROM_1),
    (sheet.Sheet, "edge_distance_mm", FROM_0),
    (sheet.Sheet, "copies", FROM_1),
    (Joint, "free_end_mm", FROM_0),
    (Layer, "thickness_mm", ABOVE_0),
    (workshop.Printer, "bar_mm across_mm along_mm", ABOVE_0),
    (workshop.Printer, "margin_mm", FROM_0),
    (workshop.Paper, "overlap_mm", FROM_0),
    (workshop.Saw, "bar_kerf_mm bar_facing_mm sheet_kerf_mm sheet_margin_mm", FROM_0),
    (workshop.PrintBed, "width_mm depth_mm height_mm rate_g_h", ABOVE_0),
    (workshop.SparesRule, "extra", Range(0, 10)),
    (workshop.Stock, "length_mm mass_kg", ABOVE_0),
    (workshop.Customs, "duty", SHARE),
    (workshop.Vendor, "tax", SHARE),
    (workshop.Offer, "length_mm board_width_mm board_depth_mm net_mass_kg mass_kg", ABOVE_0),
    (workshop.Workshop, "copies most_orders", FROM_1),
    (workshop.Workshop, "mains_voltage_v", ABOVE_0),
)
_BY_FIELD = {(model, field): span for model, fields, span in _RANGES for field in fields.split()}


def ranges(scene: Scene) -> None:
    """Note every number of the design and the workshop that is out of its range."""
    _all(scene, "design", scene.design)
    if scene.workshop is not None:
        _all(scene, "workshop", scene.workshop)


def _all(scene: Scene, root: str, model: BaseModel) -> None:
    for path, span, number in numbers(model, (root,)):
        if span.refuses(number):
            what = (
                f"{path[-1]} is {show_number(number)}, which cannot be"
                if isinstance(path[-1], str)
                else "a number cannot be"
            )
            written = scene.text(*path)
            what = f"{_label(path)}: {written!r} cannot be" if written else what
            scene.add("26", what, f"it must be {span}", *path)


def _label(path: Path) -> str:
    return " ".join(str(step) for step in path[1:])


def numbers(value: Any, path: Path) -> Iterator[tuple[Path, Range, float]]:
    """Yield path, range and the unkindest value of every number that has a range."""
    if isinstance(value, BaseModel):
        for field, info in type(value).model_fields.items():
            inner = getattr(value, field, None)
            if inner is None or isinstance(inner, str | bool):
                continue
            span = _span(value, field)
            where = (*path, name_in_files(field, info))
            if span is None:
                yield from numbers(inner, where)
            else:
                yield from ((at, span, number) for at, number in _plain(inner, where))
    elif isinstance(value, tuple | list):
        for place, item in enumerate(value):
            yield from numbers(item, (*path, place))
    elif isinstance(value, dict):
        for key, item in value.items():
            yield from numbers(item, (*path, key))


def _span(model: BaseModel, field: str) -> Range | None:
    if isinstance(model, Part) and field not in ("sizes", "meshes", "ports", "mounting"):
        return _PART_EXCEPTIONS.get(field, ABOVE_0)
    return _BY_FIELD.get((type(model), field))


def _plain(value: Any, path: Path) -> Iterator[tuple[Path, float]]:
    if isinstance(value, Figure):
        yield path, value.low
    elif isinstance(value, int | Fraction):
        yield path, float(value)
    elif isinstance(value, tuple):
        for place, item in enumerate(value):
            yield from _plain(item, (*path, place))
    elif isinstance(value, dict):
        for key, item in value.items():
            yield from _plain(item, (*path, key))
