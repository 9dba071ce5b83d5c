"""What the guide of a level axis carries: the load of its rods and of its most loaded bushing."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.axis_loads import GuideGeometry, guide_geometry
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.inputs import Input, known
from scantling.checks.rule import EmptyPlaceError
from scantling.checks.subjects import ident, named
from scantling.formulas.dynamics import weight_n
from scantling.model.axis import Guide
from scantling.model.design import Design
from scantling.model.kinds import Bushing, Rod


@dataclass(frozen=True)
class Guided:
    """The guide of an axis with its chosen rod and bushing; the mass on it as an input."""

    guide: Guide
    geometry: GuideGeometry
    rod: Rod
    bushing: Bushing
    mass: Input

    @property
    def on_one_rod(self) -> int:
        """Bushings on the rod that has fewest: of three on two rods, one stands alone."""
        return max(1, self.geometry.bearings // self.geometry.rods)

    def on_rod_n(self, mass_kg: float) -> float:
        """Return the load of one rod."""
        return weight_n(mass_kg) / self.geometry.rods

    def on_bushing_n(self, mass_kg: float) -> float:
        """Return the load of the bushing that carries most."""
        return self.on_rod_n(mass_kg) / self.on_one_rod


def guided(reader: Reader, subject: str) -> Guided:
    """Return the guide of an axis; rods that move through standing bushings are not described by these rules."""
    name = ident(subject)
    guide = need(reader.design.axes[name].guide, f"axes.{name}.guide")
    if guide.moving_rods:
        raise NotDescribedError((f"axes.{name}.guide (rods that stand still)",))
    geometry = reader.derive(guide_geometry, name)
    for place, pieces in ((guide.rods, geometry.rods), (guide.bearings, geometry.bearings)):
        if not pieces:
            raise EmptyPlaceError(place)
    return Guided(
        guide,
        geometry,
        need(geometry.rod, f"axes.{name}.guide.rods (a rod)"),
        need(geometry.bushing, f"axes.{name}.guide.bearings (a bushing)"),
        known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
    )


def level_guides(design: Design) -> tuple[str, ...]:
    """Return the axes whose guide carries the weight of what moves."""
    return named("axis", (name for name, axis in design.axes.items() if axis.guide is not None and not axis.vertical))


def all_guides(design: Design) -> tuple[str, ...]:
    """Return the axes with a guide."""
    return named("axis", (name for name, axis in design.axes.items() if axis.guide is not None))
