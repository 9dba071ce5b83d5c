"""Axes, mates, rails, warmings and chains: every place named exists and holds parts of a fitting kind."""

from __future__ import annotations

from scantling.model.axis import BeltAxis, Guide, Moved, ScrewAxis
from scantling.model.design import Chain, Mate, Rail
from scantling.model.expression import Feature
from scantling.model.kinds import (
    BallBearing,
    Belt,
    Bushing,
    Coupler,
    DriveNut,
    Heater,
    Motor,
    Nut,
    Pulley,
    Rod,
    Screw,
    Supply,
    ThreadedRod,
)
from scantling.model.part import Part
from scantling.reading.rules.sizes import expect_feature
from scantling.reading.scene import Scene

Kinds = tuple[type[Part], ...]
_MATES: dict[str, tuple[Kinds, Kinds]] = {
    "shaft in bore": ((), ()),
    "rod in bearing": ((Rod,), (Bushing, BallBearing)),
    "thread in nut": ((ThreadedRod, Screw), (DriveNut, Nut)),
    "belt on pulley": ((Belt,), (Pulley,)),
    "face on pattern": ((Motor,), ()),
}

_ENDS = ("face", "thread", "outer")  # of a motor, a screw or a nut, a ball bearing: no lengths, yet ends that meet


def axes(scene: Scene) -> None:
    """Note axes whose drive, guide or load names what it cannot use."""
    for name, axis in scene.design.axes.items():
        path = ("design", "axes", name)
        said_by = f"the axis {name!r}"
        for key, place, kinds in _drive(axis):
            if place is not None:
                scene.expect_kind(place, kinds, said_by, *path, key) if kinds else scene.expect(
                    "places", place, said_by, *path, key
                )
        if axis.guide is not None:
            _guide(scene, axis.guide, said_by, *path, "guide")
        for number, moved in enumerate(axis.moves):
            _moved(scene, moved, said_by, *path, "moves", number)


def _drive(axis: BeltAxis | ScrewAxis) -> list[tuple[str, str | None, Kinds]]:
    motor: tuple[str, str | None, Kinds] = ("motor", axis.motor, (Motor,))
    if isinstance(axis, BeltAxis):
        return [motor, ("pulley", axis.pulley, (Pulley,)), ("belt", axis.belt, (Belt,)), ("idler", axis.idler, ())]
    coupler: tuple[str, str | None, Kinds] = ("coupler", axis.coupler, (Coupler,))
    return [motor, ("screw", axis.screw, (ThreadedRod,)), ("nut", axis.nut, (DriveNut, Nut)), coupler]


def _guide(scene: Scene, guide: Guide, said_by: str, *path: str) -> None:
    scene.expect_kind(guide.rods, (Rod,), said_by, *path, "rods")
    scene.expect_kind(guide.bearings, (Bushing,), said_by, *path, "bearings")


def _moved(scene: Scene, moved: Moved, said_by: str, *path: str | int) -> None:
    given = [word for word in (moved.place, moved.typed) if word is not None]
    if len(given) != 1:
        mend = "write a place, {place: …, count: …} or {mass: 80 g, for: cable}"
        scene.add("44", f"{said_by} moves something that is neither a place nor a mass", mend, *path)
    if moved.place is None or not scene.expect("places", moved.place, said_by, *path):
        return
    place = scene.design.places.get(moved.place)
    if place is not None and moved.count is not None and not 1 <= moved.count <= place.count:
        what = f"{said_by} moves {moved.count} of {moved.place!r}, which has {place.count}"
        scene.add("26", what, "write a count that there is", *path, "count")


def clearances(scene: Scene) -> None:
    """Note clearances beside an axis that is not there."""
    for name, clearance in scene.design.clearances.items():
        scene.expect("axes", clearance.axis, f"the clearance {name!r}", "design", "clearances", name, "axis")


def mates(scene: Scene) -> None:
    """Note mates of what is not there or cannot go together."""
    for name, mate in scene.design.mates.items():
        _mate(scene, name, mate)


def _mate(scene: Scene, name: str, mate: Mate) -> None:
    for key, text, kinds in zip("ab", (mate.a, mate.b), _MATES[mate.kind], strict=True):
        place, dot, feature = text.partition(".")
        path = ("design", "mates", name, key)
        if kinds:
            scene.expect_kind(place, kinds, f"the mate {name!r}", *path)
        else:
            scene.expect("places", place, f"the mate {name!r}", *path)
        is_fit = not kinds or all(isinstance(part, kinds) for _, part in scene.options(place))
        if dot and feature not in _ENDS and is_fit:
            expect_feature(scene, f"the mate {name!r}", ("mates", name, key), Feature(place, feature))
    if mate.a == mate.b:
        scene.add("43", f"the mate {name!r} joins {mate.a!r} with itself", "name two features", "design", "mates", name)


def rails(scene: Scene) -> None:
    """Note rails and warmings that name unfit places."""
    for name, rail in scene.design.rails.items():
        _rail(scene, name, rail)
    for name, warming in scene.design.warmings.items():
        path = ("design", "warmings", name)
        scene.expect_kind(warming.heater, (Heater,), f"the warming {name!r}", *path, "heater")
        for number, store in enumerate(warming.stores):
            scene.expect("places", store, f"the warming {name!r}", *path, "stores", number)
        if warming.target_c.value <= warming.room_c.value:
            what = f"the warming {name!r} shall reach no more than the room has"
            scene.add("26", what, "write a target above the room's temperature", *path, "target")


def _rail(scene: Scene, name: str, rail: Rail) -> None:
    path = ("design", "rails", name)
    scene.expect_kind(rail.supply, (Supply,), f"the rail {name!r}", *path, "supply")
    for number, load in enumerate(rail.loads):
        if load.place is not None:
            scene.expect("places", load.place, f"the rail {name!r}", *path, "loads", number)
        elif load.power_w is None:
            mend = "name a place whose part draws power, or write a power"
            scene.add("44", f"the rail {name!r} has a load without power", mend, *path, "loads", number)


def chains(scene: Scene) -> None:
    """Note chains without terms or without a limit."""
    for name, chain in scene.design.chains.items():
        _chain(scene, name, chain)


def _chain(scene: Scene, name: str, chain: Chain) -> None:
    path = ("design", "chains", name)
    if not chain.terms:
        scene.add("43", f"the chain {name!r} has no terms", "write the sizes that add up", *path, "terms")
    if chain.at_least_mm is None and chain.at_most_mm is None:
        what = f"the chain {name!r} has no limit"
        scene.add("43", what, "add at-least or at-most, as in at-least: 0.2 mm", *path)
    elif chain.at_least_mm and chain.at_most_mm and chain.at_least_mm.value > chain.at_most_mm.value:
        scene.add("26", f"the chain {name!r}: at-least is above at-most", "swap them", *path, "at-least")
