"""Pairs of features that must go together: those that the design lists, and those that follow from its axes.

The identifier of a pair that follows is that of its axis and the two roles: ``y.motor-pulley``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from scantling.checks.subjects import ident, named
from scantling.model.axis import Axis, BeltAxis, ScrewAxis
from scantling.model.design import Design

SHAFT, ROD, THREAD, BELT, FACE = (
    "shaft in bore",
    "rod in bearing",
    "thread in nut",
    "belt on pulley",
    "face on pattern",
)
COUPLER = "shaft in coupler"


@dataclass(frozen=True)
class Pair:
    """Two features: place and name of each; ``fit`` is what a shaft in a bore must be."""

    identifier: str
    kind: str
    place: str
    name: str
    in_place: str
    in_name: str
    fit: str = "slides"


def pairs(design: Design) -> tuple[Pair, ...]:
    """Return all pairs of a design; one that it lists itself stands for the same one that would follow."""
    listed = [_listed(name, mate.kind, mate.a, mate.b, mate.fit) for name, mate in design.mates.items()]
    seen = {places for pair in listed for places in ((pair.place, pair.in_place), (pair.in_place, pair.place))}
    follow = [pair for name, axis in design.axes.items() for pair in _of_axis(name, axis)]
    return (*listed, *(pair for pair in follow if (pair.place, pair.in_place) not in seen))


def pairs_of(*kinds: str) -> Callable[[Design], tuple[str, ...]]:
    """Return the function that lists the pairs of some kinds as subjects."""
    return lambda design: named("mate", (pair.identifier for pair in pairs(design) if pair.kind in kinds))


def pair_of(design: Design, subject: str) -> Pair:
    """Return the pair of a subject."""
    return next(pair for pair in pairs(design) if pair.identifier == ident(subject))


def _listed(name: str, kind: str, a: str, b: str, fit: str) -> Pair:
    place, _, feature = a.partition(".")
    in_place, _, in_feature = b.partition(".")
    return Pair(name, kind, place, feature, in_place, in_feature, fit)


def _of_axis(name: str, axis: Axis) -> Iterator[Pair]:
    if axis.guide is not None:
        guide = axis.guide
        yield Pair(f"{name}.rods-bearings", ROD, guide.rods, "diameter", guide.bearings, "bore")
    yield from _of_belt(name, axis) if isinstance(axis, BeltAxis) else _of_screw(name, axis)


def _of_belt(name: str, axis: BeltAxis) -> Iterator[Pair]:
    if axis.motor is not None:
        yield Pair(f"{name}.motor-pulley", SHAFT, axis.motor, "shaft", axis.pulley, "bore")
    yield Pair(f"{name}.belt-pulley", BELT, axis.belt, "", axis.pulley, "")
    if axis.idler is not None:
        yield Pair(f"{name}.belt-idler", BELT, axis.belt, "", axis.idler, "")


def _of_screw(name: str, axis: ScrewAxis) -> Iterator[Pair]:
    if axis.nut is not None:
        yield Pair(f"{name}.screw-nut", THREAD, axis.screw, "thread", axis.nut, "thread")
    if axis.coupler is not None:
        if axis.motor is not None:
            yield Pair(f"{name}.motor-coupler", COUPLER, axis.motor, "shaft", axis.coupler, "motor-bore")
        yield Pair(f"{name}.screw-coupler", COUPLER, axis.screw, "thread", axis.coupler, "screw-bore")
