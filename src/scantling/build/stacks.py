"""What a joint's screw passes through, layer by layer, and what holds its thread."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.fasteners import nut_name, washer_name
from scantling.build.missing import NotDescribedError, each
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO, feature, size
from scantling.errors import BrokenPromiseError, LookUpError
from scantling.model.expression import places_of, tree
from scantling.model.joint import Joint, Layer
from scantling.model.kinds import Insert, Motor, Nut, Washer
from scantling.quantities import Figure
from scantling.tables.fastener_names import head_and_thread


@dataclass(frozen=True)
class StackLayer:
    """One layer with what it is: a size as written, or the name of a washer."""

    what: str
    thickness_mm: Figure


@dataclass(frozen=True)
class Stack:
    """What lies between the head and the thread that holds; ``grip_mm`` is the sum."""

    joint: str
    layers: tuple[StackLayer, ...]
    grip_mm: Figure


@dataclass(frozen=True)
class Holding:
    """What holds the thread: nuts or a threaded depth; ``blind`` holes have a bottom."""

    what: str
    depth_mm: Figure
    blind: bool
    material: str


def named_places(joint: Joint) -> tuple[str, ...]:
    """Return the places that a joint names itself: what it holds together."""
    texts = [layer.size for layer in joint.through if layer.size] + ([joint.into.depth] if joint.into.depth else [])
    found = [place for text in texts for place in places_of(tree(text))]
    return tuple(dict.fromkeys([*found, *([joint.into.place] if joint.into.place else [])]))


def joint_count(reader: Reader, joint: str) -> int:
    """Return how often a joint is made in one machine: 0 where what it holds is not there.

    It falls away where the place that holds its thread is empty, or where, of the things it names, some are not there
    and fewer than two are left.
    """
    described = reader.design.joints[joint]
    named = named_places(described)
    there = [place for place in named if reader.part(place) is not None]
    into = described.into.place
    gone = len(there) < len(named) and len(there) < 2
    return 0 if gone or (into is not None and into not in there) else described.count


def stack(reader: Reader, joint: str) -> Stack:
    """Return the layers of a joint, head side first."""
    described = reader.design.joints[joint]
    layers = tuple(each(lambda layer: _layer(reader, joint, described, layer), described.through))
    return Stack(joint, layers, sum((layer.thickness_mm for layer in layers), ZERO))


def joint_nuts(joint: Joint) -> tuple[str, ...]:
    """Return the names of the nuts on one screw of a joint: one, two where one locks the other, or none."""
    if joint.into.nut is None:
        return ()
    thread = head_and_thread(joint.screw)[1]
    style = "lock" if joint.locking == "lock nut" else joint.into.nut
    second = (nut_name("thin", thread),) if joint.locking == "two nuts" else ()
    return (nut_name(style, thread), *second)


def joint_washers(joint: Joint) -> tuple[str, ...]:
    """Return the names of the washers on one screw of a joint."""
    thread = head_and_thread(joint.screw)[1]
    return tuple(washer_name(layer.washer, thread) for layer in joint.through if layer.washer)


def holding(reader: Reader, joint: str) -> Holding:
    """Return what holds the thread of a joint's screw."""
    described = reader.design.joints[joint]
    if described.into.nut is not None:
        nuts = each(lambda name: _standard_nut(reader, joint, name), joint_nuts(described))
        return Holding(" and ".join(nut.id for nut in nuts), sum((n.height_mm for n in nuts), ZERO), False, "nut")
    if described.into.place is None:
        raise NotDescribedError((f"joints.{joint}.into",))
    depth_mm = _depth(reader, joint, described.into.place, described.into.depth)
    return Holding(described.into.place, depth_mm, described.into.blind, described.into.holds)


def _depth(reader: Reader, joint: str, place: str, depth: str | None) -> Figure:
    if depth is not None:
        return reader.derive(size, depth)
    part = reader.part(place)
    name = "length" if isinstance(part, Insert) else "tapped" if isinstance(part, Motor) else None
    if name is None:
        raise NotDescribedError((f"joints.{joint}.into.depth",))
    return reader.derive(feature, place, name)


def _layer(reader: Reader, joint: str, described: Joint, layer: Layer) -> StackLayer:
    if layer.size is not None:
        return StackLayer(layer.size, reader.derive(size, layer.size))
    if layer.washer is not None:
        washer = _standard_washer(reader, joint, washer_name(layer.washer, head_and_thread(described.screw)[1]))
        return StackLayer(washer.id, washer.thickness_mm)
    if layer.thickness_mm is None:
        raise NotDescribedError((f"joints.{joint}.through",))
    return StackLayer("typed", layer.thickness_mm)


def _standard_nut(reader: Reader, joint: str, name: str) -> Nut:
    try:
        part = reader.case.part(name)
    except LookUpError:
        raise NotDescribedError((f"joints.{joint}.into (no standard {name} is in the tables)",)) from None
    if not isinstance(part, Nut):
        raise BrokenPromiseError(f"{name} is not a nut")
    return part


def _standard_washer(reader: Reader, joint: str, name: str) -> Washer:
    try:
        part = reader.case.part(name)
    except LookUpError:
        fact = f"joints.{joint}.through (no standard {name} is in the tables: give a thickness)"
        raise NotDescribedError((fact,)) from None
    if not isinstance(part, Washer):
        raise BrokenPromiseError(f"{name} is not a washer")
    return part
