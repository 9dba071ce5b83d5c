"""What a screw axis asks of its screws and motors, as inputs and functions that several rules share."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from scantling.build.drives import ScrewDrive, screw_drive
from scantling.build.reader import Reader
from scantling.checks.axis_loads import load_inputs, push_n
from scantling.checks.inputs import Input, known
from scantling.checks.subjects import ident
from scantling.formulas.dynamics import weight_n
from scantling.formulas.power_screws import lowering_torque_nmm, raising_torque_nmm
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
        return self._turned(raising_torque_nmm, self.push_n(figures), figures["thread"])

    def lowering_nmm(self, figures: Mapping[str, float]) -> float:
        """Return the torque that lowers the load at a steady speed; negative where the load drives the screws.

        The drag of the guide carries a part of the weight on the way down.
        """
        hanging_n = max(0.0, weight_n(figures["mass"]) - figures["drag"])
        return self._turned(lowering_torque_nmm, hanging_n, figures["thread"])

    def _turned(self, torque: Callable[..., float], force_n: float, friction_ratio: float) -> float:
        """Return the torque of all screws that share a force."""
        thread, screws = self.drive.thread, max(1, self.drive.screws)
        lead_mm, angle_deg = float(self.drive.lead_mm), thread.flank_half_angle_deg
        return screws * torque(force_n / screws, thread.pitch_diameter_mm, lead_mm, friction_ratio, angle_deg)


def screw_load(reader: Reader, axis: ScrewAxis, subject: str) -> ScrewLoad:
    """Return the load of a screw axis."""
    drive = reader.derive(screw_drive, ident(subject))
    friction = known("friction in the thread", drive.friction)
    return ScrewLoad(axis, drive, load_inputs(reader, axis, subject) | {"thread": friction})
