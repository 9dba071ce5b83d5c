"""Alder, opened once for all tests of a run: in the village and at the harbour, without choosing anything."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from scantling.build.case import Case
from scantling.build.reference import carry_over, reference_build
from scantling.model.build import Build, Key
from scantling.reading.project import read_project

ALDER = Path(__file__).parents[2] / "examples" / "alder"

# The part at every place that costs least in the village, with whatever it needs to fit; sound but for four.
CHEAPEST = {
    "portal": "mdf-6",
    "y-rod": "rod-8-soft",
    "y-bushing": "bushing-8-polymer",
    "y-carrier": "ply-6",
    "y-motor-plate": "ply-6",
    "y-motor": "motor-flat",
    "y-pulley": "pulley-16",
    "y-idler": "idler-16",
    "foot-cap": "foot-felt",
    "bed-nut": "M4 lock nut",
    "bed-heater": "heater-80",
    "x-rod": "rod-8-soft",
    "x-bushing": "bushing-8-polymer",
    "x-motor": "motor-flat",
    "x-idler": "idler-16",
    "z-rod": "rod-10-soft",
    "z-bushing": "bushing-10-polymer",
    "z-screw": "rod-m6",
    "z-nut": "nut-m6-flanged",
    "z-coupler": "coupler-5-6",
    "z-motor": "motor-flat",
    "hot-end": "hot-end-short",
    "hot-fan": "fan-30-24",
    "part-fan": "blower-40-24",
    "probe": "",
    "feeder": "feeder-plastic",
    "feeder-motor": "motor-flat",
    "supply": "supply-150",
    "board": "board-plain",
    "inlet": "inlet-fused",
    "sleeve": "spiral-wrap",
}
# What has to be dearer than that for a sound machine.
SOUND = {
    "portal": "ply-8",
    "y-carrier": "ply-8",
    "y-motor": "motor-mid",
    "bed-heater": "heater-120",
    "supply": "supply-250",
}

With = Callable[..., Build]


@pytest.fixture(scope="session")
def village() -> Case:
    """Alder in the village."""
    return Case(read_project(ALDER, "village"))


@pytest.fixture(scope="session")
def harbour() -> Case:
    """Alder at the harbour."""
    return Case(read_project(ALDER, "harbour"))


@pytest.fixture(scope="session")
def cheapest(village: Case) -> Build:
    """The cheapest part at every place: not sound."""
    return with_parts(village, reference_build(village), CHEAPEST)


@pytest.fixture(scope="session")
def cheapest_sound(village: Case) -> Build:
    """What is expected to be the cheapest sound machine in the village."""
    return with_parts(village, reference_build(village), CHEAPEST | SOUND)


@pytest.fixture(scope="session")
def reference(village: Case) -> Build:
    """The reference parts."""
    return reference_build(village)


@pytest.fixture(scope="session")
def changed(village: Case) -> With:
    """A build with other parts: ``changed(build, portal="ply-8")``, dashes written as underlines."""

    def change(build: Build, **parts: str) -> Build:
        return with_parts(village, build, {place.replace("_", "-"): part for place, part in parts.items()})

    return change


def with_parts(case: Case, build: Build, parts: dict[str, str]) -> Build:
    """Return a build with other parts at some places, everything else kept where it can be."""
    return carry_over(case, build, {Key("part", place): part for place, part in parts.items()})
