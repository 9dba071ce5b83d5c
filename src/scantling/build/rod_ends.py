"""How the ends of guide rods are held: free to turn, clamped, or partly, by printed holders that give."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.build.axis_loads import guide_size
from scantling.build.reader import Reader
from scantling.formulas.held_beams import fixity_ratio
from scantling.formulas.holders import bedding_mpa, gripped_turning_nmm_rad
from scantling.formulas.sections import round_second_moment_mm4
from scantling.model.axis import Guide
from scantling.quantities import Figure
from scantling.tables.materials import material

# What holders are usually printed in; the band of what their walls give is wider than that of plastics.
HOLDER_PLASTIC = "PETG"
USUAL_HOLDER_MPA, USUAL_HOLDER_POISSON = 2000.0, 0.38


@dataclass(frozen=True)
class Ends:
    """The ends of a rod: ``supported``, ``clamped``, or ``held`` over a length by holders that give.

    measured : the fixity of held ends where it was measured
    """

    how: str
    grip_mm: float = 0.0
    measured: Figure | None = None

    def fixity(self, span_mm: float, diameter_mm: float, modulus_mpa: float, f: Mapping[str, float]) -> float:
        """Return the fixity of both ends.

        f : where it was measured ``fixity``, else ``backing``, what the holders resist of what solid ones would
        """
        if self.how != "held":
            return 1.0 if self.how == "clamped" else 0.0
        if self.measured is not None:
            return f.get("fixity", self.measured.value)
        second_mm4 = round_second_moment_mm4(diameter_mm)
        turning_nmm_rad = holder_turning_nmm_rad(self.grip_mm, diameter_mm, modulus_mpa, second_mm4, f["backing"])
        return fixity_ratio(turning_nmm_rad, span_mm, modulus_mpa, second_mm4)

    @property
    def words(self) -> str:
        """How a sentence calls the ends."""
        if self.how != "held":
            return f"ends {self.how}"
        if self.measured is not None:
            return "ends held by holders that give, as measured"
        return f"ends held over {self.grip_mm:.3g} mm by holders that give"


def rod_ends(reader: Reader, axis: str, guide: Guide) -> Ends:
    """Return how the ends of an axis's rods are held; raises ``NotDescribedError`` where holders do not say how far."""
    if guide.ends != "held":
        return Ends(guide.ends)
    if guide.fixity_ratio is not None:
        return Ends("held", measured=guide.fixity_ratio)
    return Ends("held", reader.derive(guide_size, axis, "grip").value)


def holder_turning_nmm_rad(
    gripped_mm: float, diameter_mm: float, modulus_mpa: float, second_mm4: float, backing: float
) -> float:
    """Return how stiff a printed holder is against turning of the bar that it grips.

    modulus_mpa, second_mm4 : of the bar    backing : what its walls resist of what a solid block would
    """
    bed_mpa = holder_bed_mpa(diameter_mm, modulus_mpa, second_mm4, backing)
    return gripped_turning_nmm_rad(bed_mpa, gripped_mm, modulus_mpa, second_mm4)


def holder_bed_mpa(diameter_mm: float, modulus_mpa: float, second_mm4: float, backing: float) -> float:
    """Return the force per length and millimetre with which a printed holder resists the bar that it grips."""
    plastic = material(HOLDER_PLASTIC)
    holder_mpa = plastic.modulus_mpa.typical if plastic.modulus_mpa else USUAL_HOLDER_MPA
    poisson = plastic.poisson_ratio or USUAL_HOLDER_POISSON
    return backing * bedding_mpa(holder_mpa, poisson, diameter_mm, modulus_mpa, second_mm4)
