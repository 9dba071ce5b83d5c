"""What a screw makes of its motor's work, up and down, and whether its thread alone holds: for information.

Lowering may take torque or give it back. Whether the axis drops is another question, answered by ``screw_holding``: a
thread that does not hold by itself may still be held by the motors' detent torque.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.screw_loads import ScrewLoad, screw_load
from scantling.checks.subjects import screw_axes, screw_axis
from scantling.findings import Finding
from scantling.formulas.power_screws import screw_efficiency_ratio, self_locking_ratio


def _run(reader: Reader, subject: str) -> Finding:
    axis = screw_axis(reader, subject)
    load = screw_load(reader, axis, subject)
    lead_mm, verbs = float(load.drive.lead_mm), ("raise", "lower") if axis.vertical else ("push", "push back")
    down = load.lowering_nmm if axis.vertical else load.torque_nmm

    def efficiency_percent(**f: float) -> float:
        return 100 * screw_efficiency_ratio(load.push_n(f), lead_mm, load.torque_nmm(f))

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda thread, **_: locking_ratio(load, thread),
        inputs=load.inputs,
        bounds=INFORMATION,
        unit="",
        because=f"{{mass}} on {load.drive.screws} x {load.drive.thread.name} takes {{up}} to {verbs[0]} and {{down}} "
        f"to {verbs[1]}; {{efficiency}} of the work arrives. Friction over slope is {{value}}: {locking_words(load)}.",
        also={
            "up": (lambda **f: load.torque_nmm(f), "N·mm"),
            "down": (lambda **f: down(f), "N·mm"),
            "efficiency": (efficiency_percent, "%"),
        },
    )


def locking_ratio(load: ScrewLoad, friction_ratio: float) -> float:
    """Return friction over slope; above 1 the thread alone holds."""
    thread = load.drive.thread
    lead_mm = float(load.drive.lead_mm)
    return self_locking_ratio(thread.pitch_diameter_mm, lead_mm, friction_ratio, thread.flank_half_angle_deg)


def locking_words(load: ScrewLoad) -> str:
    """Return what that ratio means over the whole band of friction."""
    friction = load.drive.friction
    if locking_ratio(load, friction.low) > 1:
        return "above 1 over its whole band, so the thread alone holds"
    if locking_ratio(load, friction.high) <= 1:
        return "below 1 over its whole band, so the load turns it back unless something else holds"
    return "on both sides of 1, so the thread holds or does not, as grease and shaking have it"


CHECK = check_of(
    _run,
    code="SCREW-08",
    title="Efficiency and self-locking of a screw",
    source="textbook of machine design, power screws: F l / (2 π T); holds where f / cos α > tan λ",
    subjects=screw_axes,
    total=MOVING_MASS,
    informs=True,
)
