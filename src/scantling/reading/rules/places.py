"""Places: their options, what these change elsewhere, where they sit."""

from __future__ import annotations

from collections import Counter

from scantling.model.place import Place, StandIn
from scantling.reading.scene import Scene


def places(scene: Scene) -> None:
    """Note places whose options or pieces do not hold together."""
    for name, place in scene.design.places.items():
        _options(scene, name, place)
        _pieces(scene, name, place)
        if place.on != "machine":
            scene.expect("places", place.on, f"the place {name!r}", "design", "places", name, "on")


def _options(scene: Scene, name: str, place: Place) -> None:
    counts = Counter(option.part for option in place.options)
    for part, count in counts.items():
        if count > 1:
            what = f"the place {name!r} has {part!r} {count} times among its reference and stand-ins"
            scene.add("38", what, "keep it once", "design", "places", name, "stand-ins")
    _option(scene, name, place.reference, "reference")
    for number, option in enumerate(place.stand_ins):
        _option(scene, name, option, "stand-ins", number)


def _option(scene: Scene, name: str, option: StandIn, *where: str | int) -> None:
    path = ("design", "places", name, *where)
    said_by = f"the place {name!r}"
    scene.expect_part(option.part, said_by, *path)
    if option.quantity == 0:
        mend = "write 1 or more; a place may stay empty with may-be-empty: yes"
        scene.add("26", f"{said_by}: 0 pieces of {option.part!r}", mend, *path, "quantity")
    for number, filled in enumerate(option.also_fills):
        if filled == name:
            scene.add("35", f"{said_by}: {option.part!r} also fills its own place", "delete it", *path, "also-fills")
        else:
            scene.expect("places", filled, said_by, *path, "also-fills", number)
    for part in option.brings:
        scene.expect_part(part, said_by, *path, "brings", part)
    for key, pairs in (("requires", option.requires), ("forbids", option.forbids)):
        for other, part in pairs.items():
            _other_option(scene, said_by, other, part, *path, key, other)


def _other_option(scene: Scene, said_by: str, other: str, part: str, *path: str | int) -> None:
    """A part asked for or excluded at another place must be one of its options."""
    if not scene.expect("places", other, said_by, *path) or other not in scene.design.places:
        return
    parts = [option.part for option in scene.design.places[other].options]
    if part not in parts:
        what = f"{said_by} speaks of {part!r} at {other!r}, which is no option there"
        scene.add("30", what, f"options there are {', '.join(parts)}", *path)


def _pieces(scene: Scene, name: str, place: Place) -> None:
    path = ("design", "places", name)
    if place.quantity == 0:
        mend = "write 1 or more, or delete the place; it may stay empty with may-be-empty: yes"
        scene.add("26", f"the place {name!r} has 0 pieces", mend, *path, "quantity")
    if place.quantity is not None and place.pieces and place.quantity != len(place.pieces):
        what = f"the place {name!r} has quantity {place.quantity} and {len(place.pieces)} named pieces"
        scene.add("44", what, "make them agree, or delete the quantity", *path, "quantity")
    for number, piece in enumerate(place.mirrored):
        if piece not in place.pieces:
            known = f"its pieces are {', '.join(place.pieces)}" if place.pieces else "name its pieces first"
            scene.add("30", f"the place {name!r} mirrors {piece!r}, no piece of it", known, *path, "mirrored", number)
