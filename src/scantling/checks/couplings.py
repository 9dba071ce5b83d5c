"""What couplers between motor and screw grip with and how far they wind up, as inputs that several rules share."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from scantling.build.missing import need
from scantling.build.typical import typical
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.subjects import named
from scantling.model.axis import ScrewAxis
from scantling.model.design import Design
from scantling.model.kinds import Coupler
from scantling.tables.motion_limits import soft_tube


def grip_inputs(coupler: Coupler) -> dict[str, Input]:
    """Return ``slip``, the torque at which it slips, where it is known; of a tube else ``clamp`` and ``grip``."""
    if coupler.slip_torque_nmm is not None:
        return {"slip": known(f"torque at which {coupler.id} slips", coupler.slip_torque_nmm, "N·mm")}
    if coupler.body != "tube":
        need(None, f"parts.{coupler.id}.slip-torque")
    usual = soft_tube()
    clamp = typical(usual.clamp_force_n, "tie drawn by hand")
    return {
        "clamp": or_typical(f"pull in the ties of {coupler.id}", coupler.clamp_force_n, clamp, "N"),
        "grip": or_typical("friction of the tube", None, typical(usual.friction_ratio, "soft tube")),
    }


def how_it_grips(coupler: Coupler, diameter_mm: float) -> str:
    """Return by what a tube holds, in words that go before ``slips``; nothing where its torque is known."""
    if coupler.slip_torque_nmm is not None:
        return ""
    return f" on an end of {diameter_mm:g} mm, tied with {{clamp}} at a friction of {{grip}},"


def slip_matters(design: Design) -> tuple[str, ...]:
    """Return the screw axes one of whose couplers is a tube or says at what torque it slips."""
    return named("axis", _axes(design, lambda one: one.body == "tube" or one.slip_torque_nmm is not None))


def tube_coupled(design: Design) -> tuple[str, ...]:
    """Return the screw axes one of whose couplers is a tube."""
    return named("axis", _axes(design, lambda one: one.body == "tube"))


def _axes(design: Design, holds: Callable[[Coupler], bool]) -> Iterator[str]:
    for name, axis in design.axes.items():
        if isinstance(axis, ScrewAxis) and any(holds(one) for one in _couplers(design, axis)):
            yield name


def _couplers(design: Design, axis: ScrewAxis) -> Iterator[Coupler]:
    place = None if axis.coupler is None else design.places.get(axis.coupler)
    for option in () if place is None else place.options:
        part = design.parts.get(option.part)
        if isinstance(part, Coupler):
            yield part
