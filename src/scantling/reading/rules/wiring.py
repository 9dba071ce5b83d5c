"""Wires, ports and zones: every place named exists and holds parts of a fitting kind, every zone is described."""

from __future__ import annotations

from typing import get_args

from scantling.errors import nearest
from scantling.model.design import Rail, Warming
from scantling.model.kinds import Board, CutOut, Fuse, Motor, Printed, Terminal, Wire
from scantling.model.part import Part
from scantling.model.wiring import Electronics, LoomWire
from scantling.model.zone import ZoneWord
from scantling.reading.scene import Scene

Kinds = tuple[type[Part], ...]
MOST_GAUGE = 40


def wiring(scene: Scene) -> None:
    """Note wires, ports, zones, mains and cut-outs that name what they cannot use."""
    for name, wire in scene.design.loom.items():
        _wire(scene, name, wire)
    for name, electronics in scene.design.electronics.items():
        _electronics(scene, name, electronics)
    for name, rail in scene.design.rails.items():
        _mains(scene, name, rail)
    for name, warming in scene.design.warmings.items():
        _warming(scene, name, warming)
    for name, part in scene.design.parts.items():
        if isinstance(part, Wire):
            _copper(scene, name, part)
    _zones(scene)


def _copper(scene: Scene, name: str, part: Wire) -> None:
    """A wire says how much copper it has, once."""
    path = ("design", "parts", name)
    if (part.area_mm2 is None) == (part.gauge is None):
        mend = "write one of area: 1.5 mm2 and gauge: 16"
        scene.add("44", f"the wire {name!r} does not say its copper, or twice", mend, *path)
    if part.gauge is not None and not 1 <= part.gauge <= MOST_GAUGE:
        scene.add("26", f"there is no wire of gauge {part.gauge}", "gauges 1 to 40 are known", *path, "gauge")
    if part.cores == 0:
        scene.add("26", f"the wire {name!r} has no core", "write 1 or more", *path, "cores")


def _wire(scene: Scene, name: str, wire: LoomWire) -> None:
    path, said_by = ("design", "loom", name), f"the wire {name!r}"
    for key, end in (("from", wire.start), ("to", wire.to)):
        scene.expect("places", end.partition(".")[0], said_by, *path, key)
    scene.expect_kind(wire.wire, (Wire,), said_by, *path, "wire")
    kinds: tuple[tuple[str, str | None, Kinds], ...] = (
        ("from-end", wire.start_end, (Terminal,)),
        ("to-end", wire.to_end, (Terminal,)),
        ("fuse", wire.fuse, (Fuse,)),
    )
    for key, place, wanted in kinds:
        if place is not None:
            scene.expect_kind(place, wanted, said_by, *path, key)
    if wire.load is not None:
        scene.expect("places", wire.load, said_by, *path, "load")
    if wire.rail is not None:
        scene.expect("rails", wire.rail, said_by, *path, "rail")
    if wire.count == 0 or wire.bundled == 0:
        scene.add("26", f"{said_by}: 0 of it", "write 1 or more, or delete it", *path, "count")


def _electronics(scene: Scene, name: str, electronics: Electronics) -> None:
    path, said_by = ("design", "electronics", name), f"the electronics {name!r}"
    scene.expect_kind(electronics.board, (Board,), said_by, *path, "board")
    for key, section, named in (
        ("rail", "rails", electronics.rail),
        ("sheet", "sheets", electronics.sheet),
        ("joint", "joints", electronics.joint),
    ):
        if named is not None:
            scene.expect(section, named, said_by, *path, key)
    for number, want in enumerate(electronics.wants):
        where = (*path, "wants", number, "for")
        if want.does == "driver":
            scene.expect_kind(want.place, (Motor,), said_by, *where)
        else:
            scene.expect("places", want.place, said_by, *where)


def _mains(scene: Scene, name: str, rail: Rail) -> None:
    path, said_by = ("design", "rails", name), f"the rail {name!r}"
    if rail.inlet is not None:
        scene.expect("places", rail.inlet, said_by, *path, "inlet")
    if rail.mains_fuse is not None:
        scene.expect_kind(rail.mains_fuse, (Fuse,), said_by, *path, "mains-fuse")


def _warming(scene: Scene, name: str, warming: Warming) -> None:
    path, said_by = ("design", "warmings", name), f"the warming {name!r}"
    for number, near in enumerate(warming.near):
        scene.expect("places", near, said_by, *path, "near", number)
    if warming.insulation is not None:
        scene.expect("places", warming.insulation, said_by, *path, "insulation")
    if warming.cut_out is not None:
        scene.expect_kind(warming.cut_out, (CutOut,), said_by, *path, "cut-out")


def _zones(scene: Scene) -> None:
    words = get_args(ZoneWord)
    for name, zone in scene.design.zones.items():
        if not zone.beside and zone.temperature_c is None:
            what = f"the zone {name!r} says neither what it is beside nor how warm it is"
            scene.add("44", what, "add beside: [motor], say, or temperature: 45 °C", "design", "zones", name)
    for name, part in scene.design.parts.items():
        if isinstance(part, Printed) and part.zone not in words and not scene.knows("zones", part.zone):
            what = f"the part {name!r} sits in the zone {part.zone!r}, which is not described"
            scene.add("30", what, nearest(part.zone, (*words, *scene.design.zones)), "design", "parts", name, "zone")
