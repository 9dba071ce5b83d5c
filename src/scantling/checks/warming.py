"""What a heated thing stores, loses and is fed: shared by the rules on warming up."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.masses import piece_mass
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known
from scantling.checks.materials import specific_heat_j_kg_k
from scantling.checks.rule import part_at
from scantling.checks.subjects import ident
from scantling.model.design import Warming
from scantling.model.kinds import Heater, Thing
from scantling.model.part import Part
from scantling.quantities import Figure


@dataclass(frozen=True)
class Warmed:
    """A thing to heat, with the inputs ``power``, ``store``, ``loss`` and ``rise`` of its rules."""

    warming: Warming
    heater: Heater
    inputs: dict[str, Input]


def warmed(reader: Reader, subject: str) -> Warmed:
    """Return a warming with its figures; raises ``NotDescribedError`` where stores or loss are not described."""
    name = ident(subject)
    warming = reader.design.warmings[name]
    heater = part_at(reader, warming.heater, Heater, f"warmings.{name}.heater")
    inputs = {
        "power": known(f"power of {heater.id}", heater.power_w, "W"),
        "store": known(f"heat store of {subject}", store_j_k(reader, name, warming), "J/K"),
        "loss": known(f"loss of {subject}", need(warming.loss_w_k, f"warmings.{name}.loss"), "W/K"),
        "rise": known("rise above the room", warming.target_c - warming.room_c, "K"),
    }
    return Warmed(warming, heater, inputs)


def store_j_k(reader: Reader, name: str, warming: Warming) -> Figure:
    """Return the heat that all stores of a warming take for a kelvin."""
    lacking = []
    total = Figure.exact(0.0)
    for place in warming.stores:
        part = reader.part(place)
        if part is None:
            continue
        one = capacity_j_k(reader, place, part)
        if one is None:
            lacking.append(f"parts.{part.id}.heat-capacity (or a mass and a material)")
        else:
            total += one * Figure.exact(float(reader.pieces(place)))
    if lacking or not warming.stores:
        raise NotDescribedError(tuple(lacking) or (f"warmings.{name}.stores",))
    return total


def capacity_j_k(reader: Reader, place: str, part: Part) -> Figure | None:
    """Return the heat that one piece stores for a kelvin: given, else its mass times its material's specific heat."""
    if isinstance(part, Thing) and part.heat_capacity_j_k is not None:
        given: Figure = part.heat_capacity_j_k
        return given
    specific_j_kg_k = specific_heat_j_kg_k(part)
    if specific_j_kg_k is None:
        return None
    mass = reader.derive(piece_mass, place)
    return (mass * Figure.exact(specific_j_kg_k)).as_typical(f"specific heat of {part.material}")
