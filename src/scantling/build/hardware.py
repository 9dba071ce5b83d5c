"""Screws, nuts and washers of a build, joint by joint, and what chosen parts bring with them."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.reader import Reader
from scantling.build.stacks import joint_count, joint_nuts, joint_washers


@dataclass(frozen=True)
class Fastener:
    """So many of a fastener or brought part in one machine.

    where : ``joint z-motor-to-bracket`` or ``place x-bearing`` (brought by its part)
    """

    part: str
    count: int
    where: str


def hardware(reader: Reader) -> tuple[Fastener, ...]:
    """Return all fasteners and brought parts of one machine, in the design's order: joints, then places."""
    found = [one for joint in reader.design.joints for one in reader.derive(joint_hardware, joint)]
    return (*found, *(one for place in reader.design.places for one in reader.derive(brought, place)))


def joint_hardware(reader: Reader, joint: str) -> tuple[Fastener, ...]:
    """Return the fasteners of one joint in one machine; none where the joint falls away."""
    count = reader.derive(joint_count, joint)
    if not count:
        return ()
    described = reader.design.joints[joint]
    names = [reader.screw(joint).id, *joint_washers(described), *joint_nuts(described)]
    where = f"joint {joint}"
    return tuple(Fastener(name, count * names.count(name), where) for name in dict.fromkeys(names))


def brought(reader: Reader, place: str) -> tuple[Fastener, ...]:
    """Return what the option chosen for a place brings with it, for all its pieces together."""
    option = reader.option(place)
    brings = {} if option is None else option.brings
    return tuple(Fastener(name, count, f"place {place}") for name, count in brings.items() if count)


def hardware_totals(reader: Reader) -> tuple[tuple[str, int], ...]:
    """Return how many of each fastener and brought part one machine takes, sorted by name."""
    totals: dict[str, int] = {}
    for one in reader.derive(hardware):
        totals[one.part] = totals.get(one.part, 0) + one.count
    return tuple(sorted(totals.items()))
