"""Choices that can never be made together: equal places without a common part, and what an option asks of itself."""

from __future__ import annotations

from scantling.model.place import Place, StandIn
from scantling.reading.scene import Scene


def choices(scene: Scene) -> None:
    """Note contradictions that can be seen without choosing."""
    _groups(scene)
    for name, place in scene.design.places.items():
        for number, option in enumerate(place.options):
            where = ("reference",) if number == 0 else ("stand-ins", number - 1)
            _option(scene, name, place, option, ("design", "places", name, *where))


def _groups(scene: Scene) -> None:
    """Places that are alike take the same part: they must have one in common."""
    groups: dict[str, list[str]] = {}
    for name, place in scene.design.places.items():
        if place.alike:
            groups.setdefault(place.alike, []).append(name)
    for group, names in groups.items():
        if len(names) == 1 and scene.is_complete("places"):
            what = f"the place {names[0]!r} is alike {group!r}, but no other place is"
            mend = "write the same word at another place, or delete it"
            scene.add("35", what, mend, "design", "places", names[0], "alike")
        parts = [{option.part for option in scene.design.places[name].options} for name in names]
        if not set.intersection(*parts):
            what = f"the places {', '.join(names)} are alike but have no part in common"
            scene.add("35", what, "give them the same options", "design", "places", names[-1], "alike")


def _option(scene: Scene, name: str, place: Place, option: StandIn, path: tuple[str | int, ...]) -> None:
    for other, part in option.requires.items():
        reason = _contradiction(scene, name, place, option, other, part)
        if reason:
            what = f"{option.part!r} at {name!r} requires {part!r} at {other!r}, but {reason}"
            scene.add("35", what, "delete one of the two", *path, "requires", other)


def _contradiction(scene: Scene, name: str, place: Place, option: StandIn, other: str, part: str) -> str:
    """Return why an option's requirement can never be met, "" where it can."""
    there = scene.design.places.get(other)
    same_choice = other == name or (there is not None and place.alike is not None and there.alike == place.alike)
    if option.forbids.get(other) == part:
        return "forbids it too"
    if same_choice and part != option.part:
        return f"takes itself the part of {other!r}"
    if other in option.also_fills:
        return f"fills {other!r} itself"
    required = next((one for one in there.options if one.part == part), None) if there is not None else None
    if required is not None and required.forbids.get(name) == option.part:
        return "that one forbids it"
    return ""
