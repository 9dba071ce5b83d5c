"""What a machine wants of its board's ports, one by one and kind by kind: shared by the rules on ports."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from scantling.build.missing import NotDescribedError, need
from scantling.build.rails import PEAK_PER_RMS, part_power
from scantling.build.reader import Catalogue, Reader
from scantling.checks.motor_torque import DRIVER_CURRENT_RATIO
from scantling.checks.rule import part_at
from scantling.model.design import Design
from scantling.model.kinds import Board, Motor
from scantling.model.kinds.board import Duty, Port
from scantling.model.part import Part
from scantling.model.wiring import Electronics, PortWant

WORDS: dict[str, str] = {
    "driver": "motor drivers",
    "heater": "heater switches",
    "sensor": "sensor inputs",
    "switch": "switch inputs",
    "fan": "fan outputs",
}


@dataclass(frozen=True)
class Plugged:
    """One want of a subject ``electronics main/heater/bed-heater``, with the ports that would do."""

    name: str
    electronics: Electronics
    want: PortWant
    board: Board
    ports: tuple[Port, ...]


def wants(*does: Duty) -> Callable[[Design], tuple[str, ...]]:
    """Return the function that lists the wants of some kinds as subjects."""

    def subjects(design: Design) -> tuple[str, ...]:
        found = [(n, w) for n, one in design.electronics.items() for w in one.wants if w.does in does]
        return tuple(dict.fromkeys(f"electronics {name}/{want.does}/{want.place}" for name, want in found))

    return subjects


def kinds(design: Design) -> tuple[str, ...]:
    """Return the kinds of port that are wanted, as subjects ``electronics main/heater``."""
    found = [(name, want) for name, one in design.electronics.items() for want in one.wants]
    return tuple(dict.fromkeys(f"electronics {name}/{want.does}" for name, want in found))


def electronics_of(reader: Reader, subject: str) -> tuple[str, Electronics]:
    """Return the electronics of a subject with their name."""
    name = subject.rpartition(" ")[2].partition("/")[0]
    return name, reader.design.electronics[name]


def board_of(reader: Reader, name: str, electronics: Electronics) -> tuple[Board, tuple[Port, ...]]:
    """Return the board and all its ports; raises ``NotDescribedError`` where it does not list them."""
    board = part_at(reader, electronics.board, Board, f"electronics.{name}.board")
    return board, need(board.ports or None, f"parts.{board.id}.ports")


def plugged(reader: Reader, subject: str) -> Plugged:
    """Return a want with the ports of its kind, those of its name where it says one."""
    name, electronics = electronics_of(reader, subject)
    _, does, place = subject.rpartition(" ")[2].split("/")
    want = next(want for want in electronics.wants if (want.does, want.place) == (does, place))
    board, ports = board_of(reader, name, electronics)
    serving = tuple(port for port in ports if port.does == want.does and want.port in ("", port.name))
    if not serving and want.port:
        raise NotDescribedError((f"parts.{board.id}.ports (one named {want.port!r})",))
    return Plugged(name, electronics, want, board, serving)


def ports_taken(reader: Reader, want: PortWant) -> int:
    """Return how many ports a want takes: none for an empty place. Reads the place only where that may differ."""
    usual = reader.case.once(_usual_pieces, want.place)
    pieces = reader.pieces(want.place) if usual is None else usual
    return min(1, pieces) if want.shared else pieces


def port_current_a(reader: Reader, on: Plugged) -> float:
    """Return what one port of a want carries: of a driver the rms current of a phase as it is usually set."""
    part = reader.part(on.want.place)
    if part is None:
        return 0.0
    together = reader.pieces(on.want.place) if on.want.shared else 1
    return together * _one_a(reader, on, part)


def _one_a(reader: Reader, on: Plugged, part: Part) -> float:
    if isinstance(part, Motor):
        set_a = [axis.driver_current_a for axis in reader.design.axes.values() if axis.motor == on.want.place]
        if set_a and set_a[0] is not None:
            return float(set_a[0].value)
        rated_a = float(need(part.current_a, f"parts.{part.id}.current").value)
        return DRIVER_CURRENT_RATIO * rated_a / (PEAK_PER_RMS if part.current_basis == "peak" else 1.0)
    rail = need(on.electronics.rail, f"electronics.{on.name}.rail")
    volts = reader.design.rails[rail].voltage_v.value
    return float(part_power(part, volts).value / volts)


def _usual_pieces(case: Catalogue, place: str) -> int | None:
    """Pieces of a place where every build has as many; None where that hangs on the choice."""
    places = case.project.design.places
    described = places[place]
    if described.may_be_empty or any(place in o.also_fills for one in places.values() for o in one.options):
        return None
    counts = {described.count if option.quantity is None else option.quantity for option in described.options}
    return counts.pop() if len(counts) == 1 else None
