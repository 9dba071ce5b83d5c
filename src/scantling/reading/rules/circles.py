"""Circles: sizes made of each other, places on each other, steps after each other; and far too long chains."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.errors import QuantityError
from scantling.model.expression import Between, Feature, Name, Node, references, tree
from scantling.model.place import Place
from scantling.reading.graphs import circles as circles_in
from scantling.reading.graphs import depths
from scantling.reading.scene import Scene

DEEPEST = 100
Thing = tuple[str, str]  # ("size", name) · ("length" | "at", place)
_WORDS = {"size": "{}", "length": "the length of {}", "at": "the position of {}"}


def circles(scene: Scene) -> None:
    """Note every circle once, at the thing that stands first in the file."""
    _sizes_and_places(scene)
    _steps(scene)


def _sizes_and_places(scene: Scene) -> None:
    needs = size_needs(scene)
    for circle in circles_in(needs):
        words = ", ".join(_WORDS[kind].format(name) for kind, name in [*circle, circle[0]])
        if all(kind == "at" for kind, _ in circle):
            names = " on ".join(name for _, name in [*circle, circle[0]])
            what, code, mend = f"places sit on each other: {names}", "34", "set one of them on the machine"
        else:
            what, code, mend = f"sizes are made of each other: {words}", "33", "give one of them a length of its own"
        scene.add(code, what, mend, *_place(circle[0]))
    for thing, depth in depths(needs).items():
        if depth == DEEPEST:
            what = f"{_WORDS[thing[0]].format(thing[1])} stands on {DEEPEST} others, one on the other"
            scene.add("12", what, "shorten the chain", *_place(thing))


def _place(thing: Thing) -> tuple[str, ...]:
    kind, name = thing
    return ("design", "sizes", name) if kind == "size" else ("design", "places", name, "on" if kind == "at" else kind)


def size_needs(scene: Scene) -> dict[Thing, list[Thing]]:
    """Return what each size, each length of a place and each position is made of."""
    design = scene.design
    needs: dict[Thing, list[Thing]] = {}
    for name, text in design.sizes.items():
        needs["size", name] = _named(scene, [text])
    for name, place in design.places.items():
        if place.length is not None:
            needs["length", name] = _named(scene, [place.length])
        needs["at", name] = _position(scene, place)
    return needs


def _position(scene: Scene, place: Place) -> list[Thing]:
    below: list[Thing] = [("at", place.on)] if place.on in scene.design.places else []
    return [*below, *_named(scene, place.at or ())]


def _named(scene: Scene, texts: Iterable[str]) -> list[Thing]:
    found: list[Thing] = []
    for text in texts:
        for reference in references(node) if (node := _tree(text)) is not None else ():
            found += _things(scene, reference)
    return list(dict.fromkeys(found))


def _tree(text: str) -> Node | None:
    try:
        return tree(text)
    except QuantityError:  # told by the rule for sizes
        return None


def _things(scene: Scene, reference: Name | Feature | Between) -> list[Thing]:
    if isinstance(reference, Name):
        return [("size", reference.name)]
    if isinstance(reference, Between):
        return [("at", place) for place in (reference.a, reference.b)]
    place = scene.design.places.get(reference.place)
    has_length = reference.feature == "length" and place is not None and place.length is not None
    return [("length", reference.place)] if has_length else []


def _steps(scene: Scene) -> None:
    steps = scene.design.steps
    makers: dict[str, str] = {step.yields: name for name, step in steps.items() if step.yields}
    needs = {
        name: [*step.after, *(makers[result] for result in step.uses_results if result in makers)]
        for name, step in steps.items()
    }
    for circle in circles_in(needs):
        what = f"steps wait for each other: {' after '.join([*circle, circle[0]])}"
        scene.add(
            "32", what, "delete one after, or a result that is used before it is made", "design", "steps", circle[0]
        )
