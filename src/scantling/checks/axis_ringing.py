"""How far an axis still swings after a corner: belt, motor, guide and frame in a row, at the acceleration it must make.

A frequency says nothing by itself. An acceleration that sets in, lasts and ends leaves a swing of up to twice the way
by which the mass lagged, none where it lasted a whole number of swings; over all lengths 4/π of it in the mean and √2
in the mean square. Belts are known to a factor of two, so the swing has a wide band.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.axis_springs import Springs, axis_springs
from scantling.checks.belt_loads import wanted_mm_s2
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import Bounds, at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis
from scantling.findings import Finding
from scantling.formulas.ringing import LAG_MEAN_RATIO, LAG_MOST_RATIO, LAG_RMS_RATIO, lag_mm
from scantling.model.axis import BeltAxis
from scantling.quantities import Figure
from scantling.tables.motion_limits import motion_limit


def swing_mm(springs: Springs, **f: float) -> float:
    """Return how far an axis still swings after an acceleration."""
    return f["ends"] * lag_mm(f["acceleration"], springs.frequency_hz(**f))


def ringing_inputs(springs: Springs, acceleration_mm_s2: float) -> dict[str, Input]:
    """Return the figures of ``swing_mm``."""
    ends = or_typical(
        "how both ends of the acceleration meet", None, Figure(LAG_RMS_RATIO, LAG_MEAN_RATIO, LAG_MOST_RATIO)
    )
    return {
        **springs.inputs,
        "acceleration": known("wanted acceleration", acceleration_mm_s2, "mm/s²"),
        "ends": ends,
    }


def ringing_bounds(axis: BeltAxis) -> Bounds:
    """Return how far an axis may swing."""
    own = axis.needs.ringing_mm
    return at_most(motion_limit("ringing").amount if own is None else own.value)


def _run(reader: Reader, subject: str) -> Finding:
    return judged(reader, subject, wanted_mm_s2(reader, subject), axis_springs(reader, subject))


def judged(reader: Reader, subject: str, acceleration_mm_s2: float, springs: Springs) -> Finding:
    """Return the finding on an axis at an acceleration."""
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: swing_mm(springs, **f),
        inputs=ringing_inputs(springs, acceleration_mm_s2),
        bounds=ringing_bounds(belt_axis(reader, subject)),
        unit="mm",
        because=f"In a row {springs.words} hold {{mass}} with {{whole}}: it first rings at {{frequency}}. At "
        "{acceleration} it lags by {lag} and after a corner swings by {value}, {most} where both ends of the "
        "acceleration meet badly; {limit}.",
        mend="less acceleration (the swing goes with it), less mass, a wider belt, more current, or a stiffer frame",
        also={
            "of_motor": (springs.motor_n_mm, "N/mm"),
            "of_belt": (springs.belt_n_mm, "N/mm"),
            "whole": (springs.whole_n_mm, "N/mm"),
            "frequency": (springs.frequency_hz, "Hz"),
            "lag": (lambda **f: lag_mm(f["acceleration"], springs.frequency_hz(**f)), "mm"),
            "most": (lambda **f: swing_mm(springs, **f | {"ends": LAG_MOST_RATIO}), "mm"),
        },
    )


CHECK = check_of(
    _run,
    code="AXIS-01",
    title="Ringing after a corner",
    source="springs in a row, two masses in a chain; response to a rectangular pulse: handbook of shock and vibration",
    subjects=belt_axes,
    total=MOVING_MASS,
    costly=True,
)
