"""What a screw axis asks of its screws and motors, as inputs and functions that several rules share."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.build.drives import ScrewDrive, screw_drive
from scantling.build.reader import Reader
from scantling.checks.axis_loads import load_inputs, push_n
from scantling.checks.inputs import Input, known
from scantling.checks.subjects import ident
from scantling.formulas.power_screws import raising_torque_nmm
from scantling.model.axis import ScrewAxis


@dataclass(frozen=True)
class ScrewLoad:
    """The drive of a screw axis with the inputs of its load: those of ``axis_loads`` and ``thread`` friction."""

    axis: ScrewAxis
    drive: ScrewDrive
    inputs: dict[str, Input]

    def push_n(self, figures: Mapping[str, float]) -> float:
        """Return the force along the axis while it speeds up, upwards where it is vertical."""
        wanted = self.axis.needs.acceleration_mm_s2
        return push_n(figures, wanted.value if wanted else 0.0, self.axis.vertical)

    def torque_nmm(self, figures: Mapping[str, float]) -> float:
        """Return the torque that all screws together take."""
        thread, screws = self.drive.thread, max(1, self.drive.screws)
        one_nmm = raising_torque_nmm(
            self.push_n(figures) / screws,
            thread.pitch_diameter_mm,
            float(self.drive.lead_mm),
            figures["thread"],
            thread.flank_half_angle_deg,
        )
        return screws * one_nmm


def screw_load(reader: Reader, axis: ScrewAxis, subject: str) -> ScrewLoad:
    """Return the load of a screw axis."""
    drive = reader.derive(screw_drive, ident(subject))
    friction = known("friction in the thread", drive.friction)
    return ScrewLoad(axis, drive, load_inputs(reader, axis, subject) | {"thread": friction})
