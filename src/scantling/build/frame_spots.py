"""Where a frame takes hold of its panels: holes by what they are for, with the washer that clamps there."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.fasteners import standard_part, washer_name
from scantling.build.holes import ResolvedHole, entry_holes, sheet_outline
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.build.stacks import named_places
from scantling.errors import LookUpError
from scantling.model.kinds import Motor, Rod, ThreadedRod, Washer
from scantling.shapes.edges import distance_mm
from scantling.shapes.outline import Circle, Outline
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.motor_faces import motor_face
from scantling.tables.threads import thread

CUT_OUT_MM = 12.0  # round holes from this size on are cut out of a panel that is reckoned; smaller ones count nothing
FLATTEN_MM = 0.3
BARE_WASHER_RATIO = 2.0  # of the diameter: what clamps where no washer is named; a screw's head, a nut


@dataclass(frozen=True)
class Grip:
    """A point of a panel where something takes hold: the diameter of what passes, and of what clamps."""

    x_mm: float
    y_mm: float
    diameter_mm: float
    washer_mm: float


def grips(reader: Reader, sheet: str, purpose: str) -> tuple[Grip, ...]:
    """Return the points of all holes of a sheet that are for ``purpose``, as its entries write it.

    Raises ``NotDescribedError`` where there is none.
    """
    described = reader.design.sheets.get(sheet)
    if described is None:
        raise NotDescribedError((f"sheets.{sheet}",))
    entries = [k for k, hole in enumerate(described.holes) if hole.what.replace(" ", "") == purpose.replace(" ", "")]
    if not entries:
        raise NotDescribedError((f"sheets.{sheet}.holes (one for {purpose})",))
    found = [hole for entry in entries for hole in reader.derive(entry_holes, sheet, entry)]
    return tuple(_grip(reader, purpose, hole) for hole in found if hole.purpose != "collar")


def purposes_of(reader: Reader, sheet: str, place: str) -> tuple[str, ...]:
    """Return for what holes of a sheet are whose joints go through a place: the blocks that link panels."""
    joints = {name for name, joint in reader.design.joints.items() if place in named_places(joint)}
    sheets = reader.design.sheets.get(sheet)
    whats = [hole.what for hole in sheets.holes] if sheets is not None else []
    return tuple(dict.fromkeys(what for what in whats if what.removeprefix("joint:").strip() in joints))


def panel_outline(reader: Reader, sheet: str) -> Outline:
    """Return the outline of a sheet with what is large enough to weaken it: windows, drawn circles, motors' collars."""
    outline = need(sheet_outline(reader, sheet), f"sheets.{sheet}.outline")
    circles = tuple(one for one in outline.circles if one.diameter_mm >= CUT_OUT_MM)
    return Outline(outline.boundary, (*outline.windows, *circles, *_large_holes(reader, sheet, outline)))


def _large_holes(reader: Reader, sheet: str, outline: Outline) -> tuple[Circle, ...]:
    found = []
    for number, hole in enumerate(reader.design.sheets[sheet].holes):
        typed = hole.diameter_mm is not None and hole.diameter_mm.value >= CUT_OUT_MM
        if hole.what.endswith(".face") or typed:
            for one in reader.derive(entry_holes, sheet, number):
                at = (one.x_mm, one.y_mm)
                drawn = any(distance_mm(at, circle.centre) < circle.radius_mm for circle in outline.circles)
                if one.diameter_mm >= CUT_OUT_MM and not drawn:
                    found.append(Circle(at, one.diameter_mm / 2))
    return tuple(found)


def _grip(reader: Reader, purpose: str, hole: ResolvedHole) -> Grip:
    passes_mm, washer_mm = _clamped(reader, purpose, hole)
    return Grip(hole.x_mm, hole.y_mm, passes_mm, washer_mm)


def _clamped(reader: Reader, purpose: str, hole: ResolvedHole) -> tuple[float, float]:
    """Diameter of what passes a hole, and of what clamps round it."""
    kind, colon, name = purpose.partition(":")
    if colon and kind == "joint":
        joint = reader.design.joints[name.strip()]
        screw = head_and_thread(joint.screw)[1]
        styles = [layer.washer for layer in joint.through if layer.washer]
        major_mm = thread(screw).major_mm
        return major_mm, max((_washer_mm(style, screw) for style in styles), default=BARE_WASHER_RATIO * major_mm)
    place = purpose.partition(".")[0]
    part = reader.part(place) if place in reader.design.places else None
    if isinstance(part, Motor):
        major_mm = thread(motor_face(part.frame_size).thread).major_mm
        return major_mm, BARE_WASHER_RATIO * major_mm
    if isinstance(part, ThreadedRod):
        return thread(part.thread).major_mm, _washer_mm("large", part.thread)
    if isinstance(part, Rod):
        diameter_mm = reader.derive(feature, place, "diameter").value
        return diameter_mm, BARE_WASHER_RATIO * diameter_mm
    return hole.diameter_mm, BARE_WASHER_RATIO * hole.diameter_mm


def _washer_mm(style: str, screw: str) -> float:
    try:
        found = standard_part(washer_name(style, screw))
    except LookUpError:
        return BARE_WASHER_RATIO * thread(screw).major_mm
    return found.outer_diameter_mm.value if isinstance(found, Washer) else BARE_WASHER_RATIO * thread(screw).major_mm
