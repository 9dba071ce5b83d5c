"""Steps of the assembly: their order, what each takes, and whether together they take every piece and joint once."""

from __future__ import annotations

from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from typing import Literal

from scantling.build.reader import Reader
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
    counted = [
        (place, _count(text, reader.pieces(place))) for place, text in uses.items() if place in reader.design.places
    ]
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
    design = reader.design
    pieces = {step: dict(reader.derive(step_pieces, step)) for step in design.steps}
    joints = {step: dict(reader.derive(step_joints, step)) for step in design.steps}
    places = (_covered("place", name, reader.pieces(name), pieces) for name in design.places)
    return (*places, *(_covered("joint", name, reader.derive(joint_count, name), joints) for name in design.joints))


def _covered(kind: Literal["place", "joint"], ident: str, needed: int, by_step: dict[str, dict[str, int]]) -> Coverage:
    using = {step: counts[ident] for step, counts in by_step.items() if ident in counts}
    return Coverage(kind, ident, sum(using.values()), needed, tuple(using))


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
