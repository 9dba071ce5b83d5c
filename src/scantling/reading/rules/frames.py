"""Frames: every panel, bar, block, axis and hole that they name exists, and masses and pushes say how much."""

from __future__ import annotations

from scantling.errors import nearest
from scantling.model.frame import Frame, Spot
from scantling.model.kinds import Profile, Rod, SheetStock, ThreadedRod
from scantling.reading.scene import Scene

_BARS = (Rod, ThreadedRod, Profile)


def frames(scene: Scene) -> None:
    """Note frames that name what is not there."""
    for name, frame in scene.design.frames.items():
        path, said_by = ("design", "frames", name), f"the frame {name!r}"
        scene.expect_kind(frame.panel, (SheetStock,), said_by, *path, "panel")
        for number, panel in enumerate(frame.panels):
            scene.expect_kind(panel.place, (SheetStock,), said_by, *path, "panels", number)
        for number, place in enumerate(frame.bars):
            scene.expect_kind(place, _BARS, said_by, *path, "bars", number)
        for number, link in enumerate(frame.links):
            scene.expect("places", link.place, said_by, *path, "links", number, "place")
        for number, beam in enumerate(frame.beams):
            scene.expect_kind(beam.place, _BARS, said_by, *path, "beams", number, "place")
        for spot, steps in _spots(frame):
            _spot(scene, frame, spot, said_by, *path, *steps)
        _amounts(scene, frame, said_by, *path)
    for number, pushed in enumerate(scene.workshop.pushed if scene.workshop is not None else ()):
        scene.expect("frames", pushed.frame, "a push in the workshop", "workshop", "pushed", number, "frame")
        if pushed.part is not None and not scene.is_shared:
            scene.expect("parts", pushed.part, "a push in the workshop", "workshop", "pushed", number, "part")


def _spots(frame: Frame) -> list[tuple[Spot, tuple[str | int, ...]]]:
    found: list[tuple[Spot, tuple[str | int, ...]]] = [(s, ("held", k)) for k, s in enumerate(frame.held)]
    found += [(c.spot, ("carries", k, "spot")) for k, c in enumerate(frame.carries)]
    found += [(p.spot, ("pushes", k, "spot")) for k, p in enumerate(frame.pushes)]
    for number, beam in enumerate(frame.beams):
        found += [(beam.start, ("beams", number, "from")), (beam.end, ("beams", number, "to"))]
    return found


def _spot(scene: Scene, frame: Frame, spot: Spot, said_by: str, *path: str | int) -> None:
    """A spot is on a panel of its frame, at holes which that panel has."""
    panels = [panel.place for panel in frame.panels] or [frame.panel]
    if spot.on is None:
        return
    if spot.on not in panels:
        scene.add("44", f"{said_by} has no panel {spot.on!r}", nearest(spot.on, panels), *path, "on")
        return
    sheet = scene.design.sheets.get(spot.on)
    whats = {hole.what for hole in sheet.holes if hole.what} if sheet is not None else set()
    for what in spot.at:
        if sheet is not None and what not in whats:
            scene.add("44", f"{said_by}: {spot.on} has no hole for {what!r}", nearest(what, sorted(whats)), *path, "at")


def _amounts(scene: Scene, frame: Frame, said_by: str, *path: str | int) -> None:
    for number, carried in enumerate(frame.carries):
        if carried.axis is not None:
            scene.expect("axes", carried.axis, said_by, *path, "carries", number, "axis")
        elif carried.mass_kg is None:
            mend = "write a mass, or the axis whose moving mass hangs there"
            scene.add("44", f"{said_by} carries something without a mass", mend, *path, "carries", number)
    for number, push in enumerate(frame.pushes):
        if push.axis is not None:
            scene.expect("axes", push.axis, said_by, *path, "pushes", number, "axis")
        elif push.force_n is None:
            mend = "write a force, or the axis that speeds up"
            scene.add("44", f"{said_by} has a push without a force", mend, *path, "pushes", number)
