"""Layer heights in full steps of the motor, for information only: a whole number is a preference, not a need."""

from __future__ import annotations

from fractions import Fraction

from scantling.build.drives import screw_drive
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.judging import say
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding, Verdict
from scantling.quantities import show_number

_FINEST = 10**6  # layers are written with a few digits; the fraction that they mean has a small divisor


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    layers = need(axis.needs.layers or None, f"axes.{name}.needs.layers")
    drive = reader.derive(screw_drive, name)
    counts = [(layer.value, full_steps_of(layer.value, drive.full_step_mm)) for layer in layers]
    said = ", ".join(f"{show_number(height)} mm is {show_number(float(count))}" for height, count in counts)
    whole = sum(count.denominator == 1 for _, count in counts)
    because = f"In full steps of {float(drive.full_step_mm):.4g} mm: {said}; {whole} of {len(counts)} are whole."
    return say(CHECK, reader, subject, Verdict.SOUND, because + " A preference only: micro-steps hold the others.")


def full_steps_of(layer_mm: float, full_step_mm: Fraction) -> Fraction:
    """Return how many full steps a layer takes, exact.

    >>> full_steps_of(0.2, Fraction(1, 200)), full_steps_of(0.2, Fraction(127, 20000))
    (Fraction(40, 1), Fraction(4000, 127))
    """
    return Fraction(layer_mm).limit_denominator(_FINEST) / full_step_mm


CHECK = check_of(
    _run,
    code="SCREW-06",
    title="Layers in full steps",
    source="definition: layer / (lead / full steps)",
    subjects=screw_axes,
    informs=True,
)
