"""Wires of the loom with what they are made of and what they carry: shared by the rules on wires."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.loom import copper_mm2, end_place, table_current_a, wire_count
from scantling.build.missing import NotDescribedError, need
from scantling.build.rails import PEAK_PER_RMS, part_power
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.rule import part_at
from scantling.checks.subjects import ident, named
from scantling.formulas.wires import ampacity_a, warmth_ratio
from scantling.model.design import Design, Rail
from scantling.model.kinds import Board, Fuse, Motor, Supply, Wire
from scantling.model.wiring import LoomWire
from scantling.quantities import Figure
from scantling.tables.electric_limits import electric_limit
from scantling.tables.wires import bundling_ratio


@dataclass(frozen=True)
class Laid:
    """A wire that is there in this build."""

    name: str
    row: LoomWire
    wire: Wire

    @property
    def copper_mm2(self) -> float:
        """Copper of one core."""
        return copper_mm2(self.wire)


def wire_subjects(design: Design, *carry: str) -> tuple[str, ...]:
    """Return the wires that carry something of these kinds, as checks name them."""
    return named("wire", (name for name, row in design.loom.items() if row.carries in carry))


def laid(reader: Reader, subject: str) -> Laid | None:
    """Return a wire; None where it falls away with what it leads to."""
    name = ident(subject)
    if not reader.derive(wire_count, name):
        return None
    row = reader.design.loom[name]
    return Laid(name, row, part_at(reader, row.wire, Wire, f"loom.{name}.wire"))


def rail_of(reader: Reader, name: str, row: LoomWire) -> Rail:
    """Return the rail that feeds a wire; raises ``NotDescribedError`` where none is named."""
    return reader.design.rails[need(row.rail, f"loom.{name}.rail")]


def carried(reader: Reader, on: Laid) -> Input:
    """Return the current that a wire is to carry: typed, that of its load, else all that its supply is rated for."""
    row = on.row
    if row.current_a is not None:
        return known(f"current of {on.name}", row.current_a, "A")
    if row.load is not None:
        return known(f"current of {row.load}", _load_current(reader, on, row.load), "A")
    rail = rail_of(reader, on.name, row)
    supply = part_at(reader, rail.supply, Supply, f"rails.{row.rail}.supply")
    return known(f"rated current of {supply.id}", supply.power_w / supply.voltage_v, "A")


def _load_current(reader: Reader, on: Laid, place: str) -> Figure:
    """Current of one piece of a place in one wire: of a motor that of a phase, rms."""
    part = reader.part(place)
    if part is None:
        return Figure.exact(0.0)
    if isinstance(part, Motor):
        rated: Figure = need(part.current_a, f"parts.{part.id}.current")
        return rated / Figure.exact(PEAK_PER_RMS) if part.current_basis == "peak" else rated
    rail = rail_of(reader, on.name, on.row)
    volts: Figure = rail.voltage_v
    return part_power(part, volts.value) / volts


def ampacity_inputs(on: Laid) -> dict[str, Input]:
    """Return the inputs ``table``, ``stands`` and ``room`` of what a wire carries for good."""
    stands = or_typical(f"insulation of {on.wire.id}", on.wire.insulation_c, electric_limit("insulation of wire"), "°C")
    room = or_typical(f"warmth where {on.name} lies", on.row.room_c, electric_limit("warmth beside wires"), "°C")
    table = known(f"table current of {on.copper_mm2:.3g} mm²", table_current_a(on.wire), "A")
    return {"table": table, "stands": stands, "room": room}


def carries_for_good_a(on: Laid, table: float, stands: float, room: float) -> float:
    """Return what a wire carries for good where it lies, bundled as it is."""
    return ampacity_a(table, warmth_ratio(stands, room), bundling_ratio(on.row.bundled))


def limit_of_supply(reader: Reader, on: Laid) -> Input:
    """Return what feeds a fault for good: the current at which the supply folds back, or the wall's breaker."""
    if on.row.carries == "mains":
        return or_typical("breaker of the wall socket", None, electric_limit("breaker of a wall socket"), "A")
    rail = rail_of(reader, on.name, on.row)
    supply = part_at(reader, rail.supply, Supply, f"rails.{on.row.rail}.supply")
    usual = supply.power_w / supply.voltage_v * electric_limit("supply limit")
    return or_typical(f"limit of {supply.id}", supply.limit_current_a, usual, "A")


@dataclass(frozen=True)
class Fused:
    """What breaks the current of one wire: a fuse in the loom, or one on the board before its port."""

    name: str
    rating_a: Figure


def fuse_of(reader: Reader, on: Laid) -> Fused | None:
    """Return the fuse of a wire's own, for mains that of the rail, else that of its port; None where there is none."""
    place, fact = on.row.fuse, f"loom.{on.name}.fuse"
    if place is None and on.row.carries == "mains" and on.row.rail is not None:
        place, fact = reader.design.rails[on.row.rail].mains_fuse, f"rails.{on.row.rail}.mains-fuse"
    if place is not None and reader.part(place) is not None:
        fuse = part_at(reader, place, Fuse, fact)
        return Fused(fuse.id, fuse.current_a)
    board, _, port = on.row.start.partition(".")
    part = reader.part(board) if port else None
    ports = part.ports if isinstance(part, Board) else ()
    fused = next((one.fused_a for one in ports if one.name == port and one.fused_a is not None), None)
    return None if fused is None else Fused(f"the fuse of port {port}", fused)


def ends_of(on: Laid) -> tuple[str, ...]:
    """Return the places of what is crimped on a wire, each once; raises ``NotDescribedError`` where none is said."""
    ends = tuple(dict.fromkeys(end for end in (on.row.start_end, on.row.to_end) if end is not None))
    if not ends:
        raise NotDescribedError((f"loom.{on.name}.from-end", f"loom.{on.name}.to-end"))
    return ends


def way(on: Laid) -> str:
    """Return where a wire runs, in words."""
    return f"from {end_place(on.row.start)} to {end_place(on.row.to)}"
