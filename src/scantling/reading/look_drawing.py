"""What is in a drawing, in a maker's words, and the entries of a panel."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.quantities import show_number
from scantling.reading.look import Feature, Look, mm, off_text, point_text, points_text, turned
from scantling.shapes.drawn import Drawing
from scantling.shapes.edges import Point
from scantling.shapes.hole_patterns import Pattern
from scantling.shapes.outline import Outline
from scantling.shapes.recognise import OutlineFeatures, Slot, recognise_outline
from scantling.tables.motor_faces import motor_face, motor_face_names

FACE_MM = 0.1  # a square this near to a motor's is worth naming
SEVERAL = "keep one part in a file, or name the layer of one, before a sheet names it"


def look_at_drawing(drawing: Drawing, unit: str | None = None) -> Look:
    """Return what is in a drawing; entries only where it holds one part.

    unit : as it was stated by the maker, which a sheet must repeat
    """
    notes = [str(note) for note in drawing.notes]
    found = [_at_origin(outline) for outline in drawing.outlines]
    looked = [recognise_outline(outline) for outline in found]
    features: list[Feature] = []
    for number, one in enumerate(looked, 1):
        part = f"part {number}: " if len(looked) > 1 else ""
        features += [Feature(part + f.what, f.size, f.where, f.fit) for f in _features(one)]
    size = drawing.extents
    kind = "drawing" if len(looked) == 1 else f"drawing of {len(looked)} parts"
    if len(looked) > 1:
        notes.append(SEVERAL)
    shown = f"{mm(size.width_mm)} × {mm(size.height_mm)} mm, drawn in {drawing.unit}"
    entries = _entries(drawing.file, looked[0], unit) if len(looked) == 1 else ""
    return Look(drawing.file, kind, shown, tuple(features), tuple(notes), entries)


def _at_origin(outline: Outline) -> Outline:
    box = outline.extents
    return outline.shifted(-box.x_min_mm, -box.y_min_mm)


def _features(found: OutlineFeatures) -> Iterator[Feature]:
    yield Feature("outline", f"{mm(found.width_mm)} × {mm(found.height_mm)} mm", "", f"{mm(found.cut_mm)} mm to cut")
    for holes in found.holes:
        size = f"{len(holes.centres)} × {mm(holes.diameter_mm)} mm"
        yield Feature("round holes", size, points_text(holes.centres), "")
    for pattern in found.patterns:
        yield Feature(pattern.kind, pattern_words(pattern), f"around {point_text(pattern.centre)}", _off(pattern))
    for slot in found.slots:
        size = f"{mm(slot.width_mm)} × {mm(slot.length_mm)} mm, lets a bolt move {mm(slot.travel_mm)} mm"
        yield Feature("slot", size, point_text(slot.centre) + turned(slot.turn_deg), off_text(slot.residual_mm))
    for window in found.rectangles:
        corners = f", corners of radius {mm(window.radius_mm)} mm" if window.radius_mm else ", sharp corners"
        size = f"{mm(window.width_mm)} × {mm(window.height_mm)} mm{corners}"
        yield Feature("window", size, point_text(window.centre) + turned(window.turn_deg))
    for polygon in found.polygons:
        size = f"{polygon.corners} corners, {mm(polygon.across_flats_mm)} mm across flats"
        yield Feature("polygon", size, point_text(polygon.centre), off_text(polygon.residual_mm))
    if found.other_windows:
        yield Feature("other windows", str(found.other_windows))
    for rounding in found.roundings:
        side = "inside" if rounding.inside else "outside"
        yield Feature(f"{side} corners", f"{rounding.count} × radius {mm(rounding.radius_mm)} mm")
    if found.sharp_inside:
        yield Feature("sharp inside corners", str(len(found.sharp_inside)), points_text(found.sharp_inside))


def pattern_words(pattern: Pattern) -> str:
    """Return ``4 holes of 3.4 mm, 31 × 31 mm, around a hole of 22.5 mm, as the face of a motor of frame 17``."""
    pitch = mm(pattern.pitch_mm)
    words = {
        "circle": f"on a circle of {pitch} mm",
        "grid": f"pitch {pitch} × {mm(pattern.across_mm)} mm",
        "row": f"pitch {pitch} mm",
        "pair": f"{pitch} mm apart",
    }.get(pattern.kind, f"{pitch} × {mm(pattern.across_mm)} mm")
    bore = f", around a hole of {mm(pattern.bore_mm)} mm" if pattern.bore_mm else ""
    face = _face(pattern)
    like = f", as the face of a motor of frame {face}" if face else ""
    text = f"{pattern.count} holes of {mm(pattern.diameter_mm)} mm, {words}{bore}"
    return f"{text}{turned(pattern.turn_deg)}{like}"


def _face(pattern: Pattern) -> str:
    """The frame size of motors whose screws stand in this square and whose collar goes into its middle."""
    if pattern.kind != "square":
        return ""
    faces = [motor_face(name) for name in motor_face_names()]
    near = [f for f in faces if abs(f.square_mm - pattern.pitch_mm) <= FACE_MM and pattern.bore_mm >= f.pilot_mm]
    return near[0].frame_size if near else ""


def _off(pattern: Pattern) -> str:
    return off_text(pattern.residual_mm)


def _entries(file: str, found: OutlineFeatures, unit: str | None) -> str:
    """A sheet whose holes are typed by diameter, for the maker to say what they are for."""
    lines = [
        "parts:",
        "  STOCK: {kind: sheet, material: MATERIAL, thickness: THICKNESS}",
        "places:",
        "  PANEL: {reference: STOCK}",
        "sheets:",
        "  PANEL:",
        f"    outline: {file}",
    ]
    lines += [f"    unit: {unit}"] if unit else []
    holes = list(_hole_lines(found))
    return "\n".join([*lines, *(["    holes:", *holes] if holes else [])]) + "\n"


def _hole_lines(found: OutlineFeatures) -> Iterator[str]:
    told: set[Point] = set()
    for pattern in found.patterns:
        yield f"      # {pattern.kind}: {pattern_words(pattern)}"
        if _face(pattern):
            turn = f", turn: {show_number(pattern.turn_deg, 2)} deg" if turned(pattern.turn_deg) else ""
            yield "      # where such a motor sits there, write instead of these and of the hole in the middle:"
            yield f"      # - {{for: MOTOR.face, at: {_at(pattern.centre)}{turn}}}"
        yield _round(pattern.diameter_mm, list(pattern.holes))
        told |= set(pattern.holes)
    for size in found.holes:
        rest = [centre for centre in size.centres if centre not in told]
        if rest:
            yield _round(size.diameter_mm, rest)
    for slot in found.slots:
        yield _long(slot)


def _round(diameter_mm: float, points: list[Point]) -> str:
    more = ", ".join(_at(point) for point in points[1:])
    repeat = f", repeat: [{more}]" if more else ""
    return f"      - {{diameter: {mm(diameter_mm)} mm, at: {_at(points[0])}{repeat}}}"


def _long(slot: Slot) -> str:
    turn = f", slot-turn: {show_number(slot.turn_deg, 2)} deg" if turned(slot.turn_deg) else ""
    size = f"diameter: {mm(slot.width_mm)} mm, slot: {mm(slot.travel_mm)} mm{turn}"
    return f"      - {{{size}, at: {_at(slot.centre)}}}"


def _at(point: Point) -> str:
    return f"[{mm(point[0])} mm, {mm(point[1])} mm]"
