"""What the tool of an axis reaches over the bed: the sizes of its reach with the travel that the rods leave."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from scantling.build.axis_loads import travel
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO, size
from scantling.model.reach import Reach
from scantling.quantities import Figure

BOUNDLESS = Figure.exact(inf)


@dataclass(frozen=True)
class ReachSizes:
    """Sizes of a reach along an axis, from the bed's low edge; ``over_mm`` is infinite where nothing bounds it."""

    start_mm: Figure
    travel_mm: Figure
    lost_low_mm: Figure
    over_mm: Figure
    lost_high_mm: Figure


def reach_sizes(reader: Reader, axis: str) -> ReachSizes:
    """Return the sizes of an axis's reach; raises ``NotDescribedError``."""
    described = need(reader.design.axes[axis].reach, f"axes.{axis}.reach")
    start_mm, travel_mm, lost_low_mm, over_mm, lost_high_mm = gather(
        lambda: reader.derive(size, described.start),
        lambda: reader.derive(travel, axis),
        lambda: _or(reader, described.lost_low, ZERO),
        lambda: _or(reader, described.over, BOUNDLESS),
        lambda: _or(reader, described.lost_high, ZERO),
    )
    return ReachSizes(start_mm, travel_mm, lost_low_mm, over_mm, lost_high_mm)


def home_size(reader: Reader, axis: str, name: str) -> Figure:
    """Return a size in mm of how an axis is homed: ``trips`` or ``give``."""
    home = need(reader.design.axes[axis].home, f"axes.{axis}.home")
    text = home.trips if name == "trips" else home.give
    return reader.derive(size, need(text, f"axes.{axis}.home.{name}"))


def wanted_reach_mm(described: Reach, travel_mm: Figure | None) -> Figure | None:
    """Return what must be reached: as the reach says, else the travel that the axis needs."""
    return described.wanted_mm if described.wanted_mm is not None else travel_mm


def _or(reader: Reader, text: str | None, otherwise: Figure) -> Figure:
    return otherwise if text is None else reader.derive(size, text)
