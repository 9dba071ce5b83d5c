"""How far a soft coupler winds up when a screw is turned back: a fine thread hardly sees it, a steep one does.

The coupler carries one torque on the way up and another, or the opposite one, on the way down. Between them the screw
stands still while the tube unwinds. What that is in height goes with the lead.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.build.typical import typical
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.couplings import tube_coupled
from scantling.checks.inputs import known, or_typical
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of, part_at
from scantling.checks.screw_loads import ScrewLoad, screw_load
from scantling.checks.subjects import ident, screw_axis
from scantling.findings import Finding, Verdict
from scantling.formulas.couplers import tube_winding_rad, turned_back_mm
from scantling.model.kinds import Coupler
from scantling.tables.motion_limits import motion_limit, soft_tube
from scantling.tables.sources import cite


@dataclass(frozen=True)
class Winding:
    """A tube between motor and screw under the torques of an axis."""

    load: ScrewLoad

    def change_nmm(self, **f: float) -> float:
        """Return by how much the torque in one coupler changes between the two ways; friction pulls both ways."""
        back_nmm = self.load.lowering_nmm(f) if self.load.axis.vertical else self.load.torque_nmm(f)
        return (self.load.torque_nmm(f) + back_nmm) / max(1, self.load.drive.screws)

    def lost_mm(self, span: float, outer: float, bore: float, modulus: float, **f: float) -> float:
        """Return the way that is lost."""
        winding_rad = tube_winding_rad(self.change_nmm(**f), span, max(outer, bore * 1.01), bore, modulus)
        return turned_back_mm(winding_rad, float(self.load.drive.lead_mm))


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    coupler = part_at(reader, axis.coupler, Coupler, f"axes.{name}.coupler")
    if coupler.body != "tube":
        return say(
            CHECK, reader, subject, Verdict.SOUND, f"{coupler.id} is no soft tube: it winds up too little to count."
        )
    outer, span = gather(
        lambda: need(coupler.outer_diameter_mm, f"parts.{coupler.id}.outer-diameter"),
        lambda: need(coupler.span_mm, f"parts.{coupler.id}.span"),
    )
    winding, usual = Winding(screw_load(reader, axis, subject)), typical(soft_tube().modulus_mpa, "soft tube")
    own, lead_mm = axis.needs.lost_motion_mm, float(winding.load.drive.lead_mm)
    return judge(
        CHECK,
        reader,
        subject,
        rule=winding.lost_mm,
        inputs=winding.load.inputs
        | {
            "span": known("free length of the tube", span, "mm"),
            "outer": known("outside diameter of the tube", outer, "mm"),
            "bore": known("bore of the tube", coupler.motor_bore_mm, "mm"),
            "modulus": or_typical(f"modulus of {coupler.id}", coupler.modulus_mpa, usual, "MPa"),
        },
        bounds=at_most(motion_limit("lost motion").amount if own is None else own.value),
        unit="mm",
        because=f"When the screw is turned back the torque in {coupler.id} changes by {{change}}. {{span}} of free "
        f"tube, {{outer}} over {{bore}}, with a modulus of {{modulus}}, unwinds by what is {{value}} on a lead of "
        f"{lead_mm:.4g} mm; {{limit}}.",
        mend="a smaller lead, less free tube between the ends, a harder or thicker tube, or a metal coupler",
        also={"change": (winding.change_nmm, "N·mm")},
    )


CHECK = check_of(
    _run,
    code="SCREW-13",
    title="Winding of a soft coupler",
    source=f"torsion of a round tube; {cite('soft-tubes')}; limit: {cite('motion-practice')}",
    subjects=tube_coupled,
    total=MOVING_MASS,
)
