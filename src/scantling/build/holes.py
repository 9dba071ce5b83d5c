"""The holes of a sheet as they are to be made: points, diameters, bits at hand, distances to the edges."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, hypot, radians, sin

from scantling.build.bits_at_hand import best_bit, bits_at_hand, drilling_steps
from scantling.build.hole_wants import Want, hole_wants
from scantling.build.missing import each
from scantling.build.reader import Catalogue, Reader
from scantling.build.sizes import feature, size
from scantling.model.sheet import Hole
from scantling.quantities import Figure
from scantling.shapes.outline import Circle, Outline
from scantling.tables.bits import Bit

SAME_SPOT_MM = 0.5  # a circle of the outline that lies so near to a hole is that hole, drawn


@dataclass(frozen=True)
class ResolvedHole:
    """One hole, x and y from the sheet's lower left corner.

    key : entry, point and part of the pattern
    purpose : clearance, tapping, pilot, insert, seat, collar, typed or drawn
    diameter_mm : wanted    least_mm, most_mm : what a bit may make of it    bit : at hand, None where none will do
    error_mm : bit less wanted    steps : bits in order, the final one last
    slot_mm : how much longer than wide, along slot_turn_deg    edge_mm : from the middle to the nearest edge or window,
    negative outside the sheet    web_mm : material to the next hole, None where it is alone
    """

    sheet: str
    key: str
    purpose: str
    what: str
    why: str
    x_mm: float
    y_mm: float
    diameter_mm: float
    least_mm: float
    most_mm: float | None
    bit: str | None
    bit_mm: float | None
    error_mm: float | None
    steps: tuple[str, ...]
    slot_mm: float
    slot_turn_deg: float
    edge_mm: float | None
    web_mm: float | None
    care: bool
    group: str


@dataclass(frozen=True)
class SheetDrawing:
    """All that the drawing of a sheet depends on: two are equal where the drawing is the same.

    part : the stock it is made from    pieces : names, or numbers where they have none
    mirrored : those of the other hand    outline : lower left corner at the origin
    """

    sheet: str
    title: str
    part: str
    material: str
    thickness_mm: Figure
    outline: Outline
    holes: tuple[ResolvedHole, ...]
    pieces: tuple[str, ...]
    mirrored: tuple[str, ...]
    face_up: str
    up: str
    grain: str
    drilled_with: str | None


def sheet_holes(reader: Reader, sheet: str) -> tuple[ResolvedHole, ...]:
    """Return the holes of a sheet in the order of its entries, then circles of the outline that no entry is for.

    Raises ``NotDescribedError`` with all that is missing for any of them.
    """
    entries = range(len(reader.design.sheets[sheet].holes))
    found = [one for holes in each(lambda at: reader.derive(entry_holes, sheet, at), entries) for one in holes]
    outline = sheet_outline(reader, sheet)
    if outline is not None:
        drawn = _drawn(reader, sheet, outline, found)
        found += [_measured(reader, one) for one in drawn]
    return tuple(replace(one, web_mm=_web(one, found)) for one in found)


def entry_holes(reader: Reader, sheet: str, index: int) -> tuple[ResolvedHole, ...]:
    """Return the holes of one entry of a sheet, without their webs; reads only what that entry is for."""
    found = _entry(reader, sheet, index, reader.design.sheets[sheet].holes[index])
    return tuple(_measured(reader, one) for one in found)


def sheet_drawing(reader: Reader, sheet: str) -> SheetDrawing | None:
    """Return what the drawing of a sheet shows; None where its place is empty or no outline was read for it."""
    part, outline = reader.part(sheet), sheet_outline(reader, sheet)
    if part is None or outline is None:
        return None
    described, place = reader.design.sheets[sheet], reader.design.places[sheet]
    return SheetDrawing(
        sheet=sheet,
        title=described.title or place.title or sheet,
        part=part.id,
        material=part.material or part.id,
        thickness_mm=reader.derive(feature, sheet, "thickness"),
        outline=outline,
        holes=reader.derive(sheet_holes, sheet),
        pieces=place.pieces or tuple(str(number + 1) for number in range(reader.pieces(sheet))),
        mirrored=place.mirrored,
        face_up=described.face_up,
        up=described.up,
        grain=described.grain,
        drilled_with=described.drilled_with,
    )


def sheet_outline(reader: Reader, sheet: str) -> Outline | None:
    """Return the outline of a sheet with its lower left corner at the origin; None where no file was read for it."""
    return reader.case.once(_outline, sheet)


def _outline(case: Catalogue, sheet: str) -> Outline | None:
    outline = case.project.outlines.get(sheet)
    if outline is None:
        return None
    box = outline.extents
    return outline.shifted(-box.x_min_mm, -box.y_min_mm) if (box.x_min_mm, box.y_min_mm) != (0.0, 0.0) else outline


def _entry(reader: Reader, sheet: str, index: int, hole: Hole) -> list[ResolvedHole]:
    """All holes of one entry."""
    wants = hole_wants(reader, sheet, hole)
    if not wants:
        return []
    points = each(lambda at: tuple(each(lambda text: reader.derive(size, text).value, at)), (hole.at, *hole.repeat))
    slot_mm = reader.derive(size, hole.slot_mm).value if hole.slot_mm is not None else 0.0
    turn_rad = radians(hole.turn_deg.value) if hole.turn_deg is not None else 0.0
    return [
        _resolved(reader, sheet, f"{index}.{p}.{w}", hole, want, _moved(want, x_mm, y_mm, turn_rad), slot_mm)
        for p, (x_mm, y_mm) in enumerate(points)
        for w, want in enumerate(wants)
    ]


def _moved(want: Want, x_mm: float, y_mm: float, turn_rad: float) -> tuple[float, float]:
    c, s = cos(turn_rad), sin(turn_rad)
    return (round(x_mm + c * want.x_mm - s * want.y_mm, 6), round(y_mm + s * want.x_mm + c * want.y_mm, 6))


def _resolved(
    reader: Reader, sheet: str, key: str, hole: Hole, want: Want, at: tuple[float, float], slot_mm: float
) -> ResolvedHole:
    bit, steps = _bit(reader, want)
    return ResolvedHole(
        sheet=sheet,
        key=key,
        purpose=want.purpose,
        what=hole.what,
        why=want.why if hole.note in ("", want.why) else f"{want.why} ({hole.note.rstrip('.')})",
        x_mm=at[0],
        y_mm=at[1],
        diameter_mm=want.diameter_mm,
        least_mm=want.least_mm,
        most_mm=want.most_mm,
        bit=None if bit is None else bit.name,
        bit_mm=None if bit is None else bit.diameter_mm,
        error_mm=None if bit is None else round(bit.diameter_mm - want.diameter_mm, 6),
        steps=steps,
        slot_mm=slot_mm,
        slot_turn_deg=hole.slot_turn_deg.value if hole.slot_turn_deg is not None else 0.0,
        edge_mm=None,
        web_mm=None,
        care=hole.care,
        group=hole.group,
    )


def _bit(reader: Reader, want: Want) -> tuple[Bit | None, tuple[str, ...]]:
    bits = bits_at_hand(reader.workshop)
    found = best_bit(want.diameter_mm, want.least_mm, want.most_mm, bits)
    return found, () if found is None else drilling_steps(found, bits)


def _drawn(reader: Reader, sheet: str, outline: Outline, found: list[ResolvedHole]) -> list[ResolvedHole]:
    """Circles of the outline that are no entry's hole: to be made as drawn."""
    extra = []
    for number, circle in enumerate(outline.circles):
        if any(_is_hole(circle, one) for one in found):
            continue
        wide_mm = round(circle.diameter_mm, 6)
        want = Want(0.0, 0.0, wide_mm, wide_mm, None, "circle of the outline", "drawn")
        hole = Hole.model_validate({"at": ("0 mm", "0 mm"), "diameter": f"{wide_mm!r} mm"})
        at = (round(circle.centre[0], 6), round(circle.centre[1], 6))
        extra.append(_resolved(reader, sheet, f"drawn.{number}", hole, want, at, 0.0))
    return extra


def _is_hole(circle: Circle, hole: ResolvedHole) -> bool:
    return hypot(circle.centre[0] - hole.x_mm, circle.centre[1] - hole.y_mm) <= SAME_SPOT_MM


def _measured(reader: Reader, hole: ResolvedHole) -> ResolvedHole:
    """A hole with its distance from the edge, which is looked for once for all that may sit there."""
    return replace(hole, edge_mm=reader.case.once(_edge, hole.sheet, hole.x_mm, hole.y_mm))


def _edge(case: Catalogue, sheet: str, x_mm: float, y_mm: float) -> float | None:
    """Distance from a point to the boundary or a window, negative outside the sheet; None without an outline."""
    outline = case.once(_outline, sheet)
    if outline is None:
        return None
    solid = Outline(outline.boundary, outline.windows)
    distance_mm = solid.edge_distance_mm((x_mm, y_mm))
    return round(distance_mm if solid.holds((x_mm, y_mm)) else -distance_mm, 6)


def _web(hole: ResolvedHole, found: list[ResolvedHole]) -> float | None:
    """Material between a hole's rim and the next hole's; slots count with their half length all round."""
    webs = [
        hypot(one.x_mm - hole.x_mm, one.y_mm - hole.y_mm) - _reach(one) - _reach(hole)
        for one in found
        if one is not hole
    ]
    return round(min(webs), 6) if webs else None


def _reach(hole: ResolvedHole) -> float:
    return max(hole.diameter_mm, hole.bit_mm or 0.0) / 2 + hole.slot_mm / 2
