"""The power that a supply's loads can draw at once, as a total: sums of what the chosen parts draw.

A duty does not lower it: a heater that is on for half the time draws all its power while it is on. What can never be on
together says so by its share ``at-once``.
"""

from __future__ import annotations

from scantling.build.missing import MissingFigureError
from scantling.build.reader import Catalogue, Reader
from scantling.build.total import Total
from scantling.formulas.motors import winding_loss_w
from scantling.model.design import Design, RailLoad
from scantling.model.kinds import Board, Heater, Motor, Thing
from scantling.model.part import Part
from scantling.quantities import Figure

ONE = Figure.exact(1.0)
ZERO = Figure.exact(0.0)
PEAK_PER_RMS = 2**0.5


def rail_subjects(design: Design) -> tuple[str, ...]:
    """Return the rails as checks name them."""
    return tuple(f"rail {name}" for name in design.rails)


def rail_terms(design: Design, subject: str) -> tuple[str, ...]:
    """Return the places that a rail feeds, each once."""
    return tuple(dict.fromkeys(load.place for load in _loads(design, subject) if load.place is not None))


def load_power(reader: Reader, subject: str, place: str) -> Figure:
    """Return the power in W that all pieces of a place draw from a rail at once.

    A heater's power goes with the square of the rail's voltage against its own. A motor that stands still draws what
    its two windings lose at their rated current.
    """
    part = reader.part(place)
    if part is None:
        return ZERO
    shares = [_at_once(load) for load in _loads(reader.design, subject) if load.place == place]
    power_w = part_power(part, reader.design.rails[_ident(subject)].voltage_v.value)
    return sum(shares, ZERO) * power_w * Figure.exact(reader.pieces(place))


def part_power(part: Part, rail_v: float) -> Figure:
    """Return the power in W that one piece of a part draws at a voltage; raises ``MissingFigureError``."""
    if isinstance(part, Motor):
        if part.current_a is None or part.resistance_ohm is None:
            raise MissingFigureError((f"parts.{part.id}.current", f"parts.{part.id}.resistance"))
        current_a = part.current_a.value / (PEAK_PER_RMS if part.current_basis == "peak" else 1.0)
        return Figure.exact(winding_loss_w(current_a, part.resistance_ohm.value))
    if not isinstance(part, Board | Heater | Thing) or part.power_w is None:
        raise MissingFigureError((f"parts.{part.id}.power",))
    power_w: Figure = part.power_w
    rated_v = part.voltage_v.value if part.voltage_v is not None else rail_v
    return power_w * Figure.exact((rail_v / rated_v) ** 2) if isinstance(part, Heater) else power_w


def typed_power(case: Catalogue, subject: str) -> Figure:
    """Return the power in W of the loads that no place holds, at once, with its band."""
    loads = _loads(case.project.design, subject)
    return sum((_at_once(load) * load.power_w for load in loads if load.power_w is not None), ZERO)


def _ident(subject: str) -> str:
    return subject.rpartition(" ")[2]


def _loads(design: Design, subject: str) -> tuple[RailLoad, ...]:
    return design.rails[_ident(subject)].loads


def _at_once(load: RailLoad) -> Figure:
    return ONE if load.at_once is None else load.at_once


RAIL_POWER = Total(
    name="rail-power",
    unit="W",
    scale=1000,
    subjects=rail_subjects,
    terms=rail_terms,
    contribution=load_power,
    fixed=typed_power,
)
