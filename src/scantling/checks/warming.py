"""What a heated thing stores, loses and is fed: shared by the rules on warming up."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.masses import piece_mass
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.inputs import Input, known
from scantling.checks.materials import specific_heat_j_kg_k
from scantling.checks.rule import part_at
from scantling.checks.subjects import ident
from scantling.formulas.heat import covered_loss_w_k, plate_loss_w_k
from scantling.model.design import Warming
from scantling.model.kinds import Heater, Thing
from scantling.model.part import Part
from scantling.quantities import Figure, Grade
from scantling.tables.electric_limits import electric_limit
from scantling.tables.heats import conductivity_w_m_k


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
        "loss": known(f"loss of {subject}", _loss_w_k(reader, name, warming), "W/K"),
        "rise": known("rise above the room", warming.target_c - warming.room_c, "K"),
    }
    return Warmed(warming, heater, inputs)


def _loss_w_k(reader: Reader, name: str, warming: Warming) -> Figure:
    """The loss as given, else that of both faces, one of them insulated where the design says so."""
    if warming.loss_w_k is not None or warming.face_mm2 is None:
        given: Figure = need(warming.loss_w_k, f"warmings.{name}.loss")
        return given
    found = faces_loss_w_k(reader, name, warming.insulation)
    draught = electric_limit("draught").value
    low, high = found.low * (1 - draught), found.high * (1 + draught)
    return Figure(found.value, low, high, Grade.TYPICAL)


def faces_loss_w_k(reader: Reader, name: str, insulation: str | None) -> Figure:
    """Return the loss of both faces of a heated plate, the lower one covered with what fills a place.

    Its band is that of the insulation's conductivity alone.
    """
    face = need(reader.design.warmings[name].face_mm2, f"warmings.{name}.face")
    up, down = electric_limit("face upwards").value, electric_limit("face downwards").value
    part = None if insulation is None else reader.part(insulation)
    if insulation is None or part is None:
        ends = [covered_loss_w_k(face.value, 0.0, 1.0, down)] * 3
    else:
        thickness_mm = reader.derive(feature, insulation, "thickness").value
        heat = need(conductivity_w_m_k(part.material), f"parts.{part.id}.material (one of the table of insulations)")
        ends = [covered_loss_w_k(face.value, thickness_mm, one, down) for one in (heat.value, heat.low, heat.high)]
    value, low, high = (plate_loss_w_k(face.value, up) + end for end in ends)
    return Figure(value, low, high, Grade.TYPICAL)


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
