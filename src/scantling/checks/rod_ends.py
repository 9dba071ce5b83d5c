"""How the ends of guide rods are held: free to turn, clamped, or partly, by printed holders that give."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.axis_loads import guide_size
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, or_typical
from scantling.formulas.held_beams import fixity_ratio
from scantling.formulas.holders import bedding_mpa, gripped_turning_nmm_rad
from scantling.formulas.sections import round_second_moment_mm4
from scantling.model.axis import Guide
from scantling.quantities import Figure
from scantling.tables.materials import material

# What clips and walls of a printed holder resist of what a solid block of the plastic would; by its modulus and 3 to 15
# mm of wall, our own estimate, no source. One order of magnitude, so that a verdict seldom hangs on it unseen.
BACKING = Figure(0.4, 0.1, 1.0)
HOLDER = material("PETG")  # what holders are usually printed in; the band of BACKING is wider than that of plastics
HOLDER_MPA = HOLDER.modulus_mpa.typical if HOLDER.modulus_mpa else 2000.0
HOLDER_POISSON = HOLDER.poisson_ratio or 0.38


@dataclass(frozen=True)
class Ends:
    """The ends of a rod: ``supported``, ``clamped``, or ``held`` over a length by holders that give."""

    how: str
    grip_mm: float = 0.0

    def fixity(self, span_mm: float, diameter_mm: float, modulus_mpa: float, backing: float = 0.0) -> float:
        """Return the fixity of both ends; ``backing`` is what the holders resist of what solid ones would."""
        if self.how != "held":
            return 1.0 if self.how == "clamped" else 0.0
        second_mm4 = round_second_moment_mm4(diameter_mm)
        bed_mpa = backing * bedding_mpa(HOLDER_MPA, HOLDER_POISSON, diameter_mm, modulus_mpa, second_mm4)
        turning_nmm_rad = gripped_turning_nmm_rad(bed_mpa, self.grip_mm, modulus_mpa, second_mm4)
        return fixity_ratio(turning_nmm_rad, span_mm, modulus_mpa, second_mm4)

    @property
    def inputs(self) -> dict[str, Input]:
        """``backing`` where it matters."""
        return {"backing": or_typical("stiffness of the holders", None, BACKING)} if self.how == "held" else {}

    @property
    def words(self) -> str:
        """How a sentence calls the ends."""
        return (
            f"ends held over {self.grip_mm:.3g} mm by holders that give" if self.how == "held" else f"ends {self.how}"
        )


def rod_ends(reader: Reader, axis: str, guide: Guide) -> Ends:
    """Return how the ends of an axis's rods are held; raises ``NotDescribedError`` where holders do not say how far."""
    if guide.ends != "held":
        return Ends(guide.ends)
    return Ends("held", reader.derive(guide_size, axis, "grip").value)
