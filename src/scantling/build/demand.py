"""What one machine takes of parts and materials, place by place and joint by joint."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import Literal

from scantling.build.gets import CUT, MADE, filament_of, plastic_of
from scantling.build.hardware import brought, joint_hardware
from scantling.build.lengths import cut_length_um, whole_um
from scantling.build.loom import end_pieces, is_of_loom, wire_pieces
from scantling.build.meshes import print_estimate
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.model.kinds import Wire

UnitName = Literal["piece", "g", "length", "board-piece"]


@dataclass(frozen=True)
class Need:
    """So much of a part.

    unit, amount : pieces, grams of filament, pieces of a length, or pieces of a size out of a board
    length_um : of each piece that is cut    width_um, height_um : of the box round each sheet part
    why : what it is for, ``place y-rod`` or ``joint z-motor-to-bracket``
    """

    part: str
    unit: UnitName
    amount: int
    why: str
    length_um: int | None = None
    width_um: int | None = None
    height_um: int | None = None


def place_needs(reader: Reader, place: str) -> tuple[Need, ...]:
    """Return what the pieces of a place in one machine take, and what their part brings; nothing for an empty place.

    Raises ``NotDescribedError`` where a length or an outline is missing without which nothing can be ordered.
    """
    part, why = reader.part(place), f"place {place}"
    if part is None:
        return ()
    brings = [Need(one.part, "piece", one.count, why) for one in reader.derive(brought, place)]
    if is_of_loom(reader, place):
        return (*_of_loom(reader, place, part.id, why), *brings)
    pieces = reader.pieces(place)
    own = [_own(reader, place, part.id, pieces, why)] if pieces else []
    return (*own, *brings)


def joint_needs(reader: Reader, joint: str) -> tuple[Need, ...]:
    """Return the fasteners of a joint in one machine; nothing where the joint falls away."""
    return tuple(Need(one.part, "piece", one.count, one.where) for one in reader.derive(joint_hardware, joint))


def machine_needs(reader: Reader) -> tuple[Need, ...]:
    """Return all that one machine takes, in the design's order: places, then joints."""
    places = [need for place in reader.design.places for need in reader.derive(place_needs, place)]
    return (*places, *(need for joint in reader.design.joints for need in reader.derive(joint_needs, joint)))


def _own(reader: Reader, place: str, part: str, pieces: int, why: str) -> Need:
    get = reader.get(place)
    plastic = plastic_of(get)
    if plastic is not None:
        return _filament(reader, place, plastic, pieces, why)
    if get == CUT:
        return Need(part, "length", pieces, why, length_um=reader.derive(cut_length_um, place))
    if get == MADE:
        return _board_piece(reader, place, part, pieces, why)
    return Need(part, "piece", pieces, why)


def _of_loom(reader: Reader, place: str, part: str, why: str) -> list[Need]:
    """Wires by their lengths, and ends by the piece."""
    if isinstance(reader.part(place), Wire):
        lengths = reader.derive(wire_pieces, place)
        return [Need(part, "length", count, why, length_um=length_um) for length_um, count in lengths]
    count = reader.derive(end_pieces, place)
    return [Need(part, "piece", count, why)] if count else []


def _filament(reader: Reader, place: str, plastic: str, pieces: int, why: str) -> Need:
    """Grams of filament for all pieces together, rounded up once."""
    filament = filament_of(reader.design, plastic)
    if filament is None:
        raise NotDescribedError((f"parts (a filament of {plastic})",))
    mass_kg = reader.derive(print_estimate, place).mass_kg.value
    return Need(filament.id, "g", ceil(pieces * mass_kg * 1000 - 1e-6), why)


def _board_piece(reader: Reader, place: str, part: str, pieces: int, why: str) -> Need:
    outline = reader.case.project.outlines.get(place)
    if outline is None:
        raise NotDescribedError((f"sheets.{place}.outline",))
    box = outline.extents
    width_um, height_um = whole_um(box.width_mm), whole_um(box.height_mm)
    return Need(part, "board-piece", pieces, why, width_um=width_um, height_um=height_um)
