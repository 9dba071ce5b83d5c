"""Steps of the assembly: their order, what each takes, and whether together they take every piece and joint once."""

from __future__ import annotations

from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from typing import Literal

from scantling.build.reader import Catalogue, Reader
from scantling.build.stacks import joint_count
from scantling.errors import QuantityError
from scantling.model.design import Design
from scantling.quantities import parse_count

ALL = "all"


@dataclass(frozen=True)
class Coverage:
    """How many pieces of a place, or screws of a joint, the steps use, and how many the build has."""

    kind: Literal["place", "joint"]
    ident: str
    used: int
    needed: int
    steps: tuple[str, ...]


def step_order(design: Design) -> tuple[str, ...]:
    """Return the steps in an order that keeps all "after" and sub-assemblies, else that of the file.

    Steps that wait for each other in a circle come last, in the file's order.
    """
    order: list[str] = []
    waiting = dict(_before(design))
    while waiting:
        free = next((step for step, needs in waiting.items() if needs.isdisjoint(waiting)), None)
        if free is None:
            return (*order, *waiting)
        order.append(free)
        del waiting[free]
    return tuple(order)


def step_circle(design: Design) -> tuple[str, ...]:
    """Return steps that wait for each other in a circle; none where there is no circle."""
    try:
        TopologicalSorter(_before(design)).prepare()
    except CycleError as error:
        return tuple(error.args[1][:-1])
    return ()


def step_pieces(reader: Reader, step: str) -> tuple[tuple[str, int], ...]:
    """Return the pieces that a step uses, by place, in the step's order; places that stay empty are left out."""
    uses = reader.design.steps[step].uses
    places = reader.design.places
    counted = [(p, _count(text, reader.pieces(p), places[p].pieces)) for p, text in uses.items() if p in places]
    return tuple((place, count) for place, count in counted if count)


def step_joints(reader: Reader, step: str) -> tuple[tuple[str, int], ...]:
    """Return the joints done up in a step with how often; those that fall away are left out.

    A joint belongs to a step that lists it, or to the step that the joint itself names.
    """
    design = reader.design
    listed = {**dict.fromkeys(_naming(design, step), ALL), **design.steps[step].joints}
    counted = [(j, _count(text, reader.derive(joint_count, j))) for j, text in listed.items() if j in design.joints]
    return tuple((joint, count) for joint, count in counted if count)


def coverage(reader: Reader) -> tuple[Coverage, ...]:
    """Return, for every place and then every joint, what the steps use of it and what there is."""
    places = (reader.derive(place_coverage, name) for name in reader.design.places)
    return (*places, *(reader.derive(joint_coverage, name) for name in reader.design.joints))


def place_coverage(reader: Reader, place: str) -> Coverage:
    """Return what the steps use of one place and what there is; reads that place alone."""
    there, names = reader.pieces(place), reader.design.places[place].pieces
    steps = reader.design.steps.items()
    using = {name: _count(step.uses[place], there, names) for name, step in steps if place in step.uses}
    return _covered("place", place, there, using)


def joint_coverage(reader: Reader, joint: str) -> Coverage:
    """Return how often the steps do up one joint and how often it is there; reads what the joint names alone."""
    there = reader.derive(joint_count, joint)
    listed = reader.case.once(_listed)
    using = {name: _count(uses[joint], there) for name, uses in listed.items() if joint in uses}
    return _covered("joint", joint, there, using)


def _covered(kind: Literal["place", "joint"], ident: str, needed: int, using: dict[str, int]) -> Coverage:
    by_step = {step: count for step, count in using.items() if count}
    return Coverage(kind, ident, sum(by_step.values()), needed, tuple(by_step))


def _listed(case: Catalogue) -> dict[str, dict[str, str]]:
    """The joints that each step does up, and how many of them."""
    design = case.project.design
    return {name: {**dict.fromkeys(_naming(design, name), ALL), **s.joints} for name, s in design.steps.items()}


def _naming(design: Design, step: str) -> list[str]:
    """Joints that name this step and that no step lists."""
    listed = {joint for other in design.steps.values() for joint in other.joints}
    return [name for name, joint in design.joints.items() if joint.step == step and name not in listed]


def _count(text: str, there: int, names: tuple[str, ...] = ()) -> int:
    """How many a step means: ``all``, a number, or pieces by name (``left``); nothing of an empty place."""
    if text == ALL or not there:
        return there
    words = text.replace(",", " ").split()
    if words and all(word in names for word in words):
        return len(words)
    try:
        return parse_count(text)
    except QuantityError:
        return there


def _before(design: Design) -> dict[str, set[str]]:
    """For each step those that must come first: named, or making what it uses."""
    maker = {step.yields: name for name, step in design.steps.items() if step.yields}
    return {
        name: ({s for s in step.after if s in design.steps} | {maker[r] for r in step.uses_results if r in maker})
        - {name}
        for name, step in design.steps.items()
    }
