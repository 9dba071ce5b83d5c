"""Sheets: made from a sheet in a place of their name, with holes that have a purpose and lie on them."""

from __future__ import annotations

from scantling.errors import nearest
from scantling.model.kinds import Motor, SheetStock
from scantling.model.sheet import Hole, Sheet
from scantling.reading.constants import Constants, Points
from scantling.reading.scene import Scene
from scantling.shapes.outline import Outline

FITS = (
    "clearance fine",
    "clearance medium",
    "clearance coarse",
    "tapping",
    "pilot",
    "seat",
)
_FEATURES = ("face", "seat", "bore")


def sheets(scene: Scene) -> None:
    """Note sheets without stock, holes without a purpose that exists, holes beside the outline."""
    constants = Constants(scene.design)
    for name, sheet in scene.design.sheets.items():
        path = ("design", "sheets", name)
        said_by = f"the sheet {name!r}"
        if scene.knows("places", name):
            scene.expect_kind(name, (SheetStock,), said_by, *path)
        else:
            mend = f"add a place {name!r} whose reference is a part of kind sheet"
            scene.add("44", f"{said_by} has no place of its name to be made from", mend, *path)
        if sheet.drilled_with is not None:
            scene.expect("sheets", sheet.drilled_with, said_by, *path, "drilled-with")
        _holes(scene, name, sheet, said_by, constants)


def _holes(scene: Scene, name: str, sheet: Sheet, said_by: str, constants: Constants) -> None:
    outline = scene.outlines.get(name)
    for number, hole in enumerate(sheet.holes):
        path = ("design", "sheets", name, "holes", number)
        _purpose(scene, hole, said_by, *path)
        if hole.fit not in FITS:
            what = f"{said_by}: {hole.fit!r} is no way to size a hole"
            scene.add("24", what, nearest(hole.fit, FITS), *path, "fit")
        if outline is not None:
            _inside(scene, constants.points(hole), outline, said_by, *path)


def _purpose(scene: Scene, hole: Hole, said_by: str, *path: str | int) -> None:
    if not hole.what:
        return
    kind, colon, joint = hole.what.partition(":")
    if colon:
        if kind != "joint":
            mend = "write joint:NAME, or PLACE.face, PLACE.seat, PLACE.bore"
            scene.add("44", f"{said_by}: a hole for {hole.what!r} has no meaning", mend, *path, "for")
        else:
            scene.expect("joints", joint.strip(), said_by, *path, "for")
        return
    place, dot, feature = hole.what.partition(".")
    if not dot or feature not in _FEATURES:
        mend = f"write what of it the hole is for: {', '.join(f'{place}.{one}' for one in _FEATURES)}"
        scene.add("44", f"{said_by}: a hole for {hole.what!r} has no meaning", mend, *path, "for")
    elif feature == "face":
        scene.expect_kind(place, (Motor,), said_by, *path, "for")
    else:
        scene.expect("places", place, said_by, *path, "for")


def _inside(scene: Scene, points: Points, outline: Outline, said_by: str, *path: str | int) -> None:
    """Positions that need no part to be chosen must lie inside the boundary; they count from its lower left corner."""
    box = outline.extents
    for key, x_mm, y_mm in points:
        if not outline.boundary.winds((box.x_min_mm + x_mm, box.y_min_mm + y_mm)):
            what = f"{said_by}: a hole at ({x_mm:g}, {y_mm:g}) mm lies outside the outline"
            mend = f"the outline is {box.width_mm:g} × {box.height_mm:g} mm, its lower left corner is 0, 0"
            scene.add("45", what, mend, *path, *key)
