"""What the guide of an axis carries: the load of its rods and of its most loaded bushing."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.axis_loads import GuideGeometry
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.inputs import Input, known
from scantling.checks.standing import rod_share, standing_guide
from scantling.checks.subjects import ident, named
from scantling.formulas.dynamics import weight_n
from scantling.model.axis import Guide
from scantling.model.design import Design
from scantling.model.kinds import Bushing, Rod


@dataclass(frozen=True)
class Guided:
    """The guide of an axis with its chosen rod and bushing; the mass on it and the busier rod's share as inputs."""

    guide: Guide
    geometry: GuideGeometry
    rod: Rod
    bushing: Bushing
    mass: Input
    share: Input

    @property
    def on_one_rod(self) -> int:
        """Bushings on the rod that has fewest: of three on two rods, one stands alone."""
        return max(1, self.geometry.bearings // self.geometry.rods)

    @property
    def one_stands_alone(self) -> bool:
        """True where one rod has a single bushing and the other two."""
        return self.geometry.bearings > self.geometry.rods and self.on_one_rod == 1

    def on_rod_n(self, mass_kg: float, share: float) -> float:
        """Return the load of the busier rod."""
        return weight_n(mass_kg) * share

    def on_bushing_n(self, mass_kg: float, share: float) -> float:
        """Return the load of the bushing that carries most."""
        return self.on_rod_n(mass_kg, share) / self.on_one_rod

    @property
    def share_words(self) -> str:
        """What a sentence says of a load that lies off the middle; empty for one that does not."""
        if self.share.nominal * self.geometry.rods <= 1:
            return ""
        return f" The load lies off the middle: {100 * self.share.nominal:.3g} % of it on one rod."


def guided(reader: Reader, subject: str) -> Guided:
    """Return the guide of an axis; rods that move through standing bushings are not described by these rules."""
    name = ident(subject)
    guide, geometry = standing_guide(reader, name)
    return Guided(
        guide,
        geometry,
        need(geometry.rod, f"axes.{name}.guide.rods (a rod)"),
        need(geometry.bushing, f"axes.{name}.guide.bearings (a bushing)"),
        known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
        known("share of the busier rod", rod_share(reader, name, guide, geometry.rods)),
    )


def level_guides(design: Design) -> tuple[str, ...]:
    """Return the axes whose guide carries the weight of what moves."""
    return named("axis", (name for name, axis in design.axes.items() if axis.guide is not None and not axis.vertical))


def all_guides(design: Design) -> tuple[str, ...]:
    """Return the axes with a guide."""
    return named("axis", (name for name, axis in design.axes.items() if axis.guide is not None))
