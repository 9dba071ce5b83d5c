"""The two runs of a belt from a carriage to its motor's pulley, their stiffness, and the belt's tension at rest."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.drives import belt_path, belt_run
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO
from scantling.build.typical import typical
from scantling.errors import LookUpError
from scantling.formulas.belts import carriage_stiffness_n_mm
from scantling.model.axis import BeltAxis
from scantling.model.kinds import Belt
from scantling.quantities import Figure, Grade
from scantling.tables.belt_profiles import BeltProfile, belt_profile, installation_tension_n
from scantling.tables.motion_limits import motion_limit

LEAST_RUN_RATIO = 0.01  # of the belt once round: no run gets shorter, for a carriage has some length itself


@dataclass(frozen=True)
class Runs:
    """How a belt is shared: ``path_mm`` once round; the run straight to the motor at both ends of the travel.

    The carriage is taken to travel in the middle between the axles; what of the belt lies on it is not counted.
    """

    path_mm: float
    near_low_mm: float
    near_high_mm: float

    def stiffness_n_mm(self, strain_stiffness_n: float, near_mm: float) -> float:
        """Return the stiffness of both runs together where the near one is so long."""
        return carriage_stiffness_n_mm(strain_stiffness_n, near_mm, self.path_mm - near_mm)

    @property
    def softest_mm(self) -> float:
        """The near run where both together are softest: the nearest to half of the path."""
        return min(max(self.near_low_mm, self.path_mm / 2), self.near_high_mm)

    @property
    def stiffest_mm(self) -> float:
        """The near run where both together are stiffest."""
        ends = (self.near_low_mm, self.near_high_mm)
        return min(ends, key=lambda near_mm: near_mm * (self.path_mm - near_mm))


def belt_runs(reader: Reader, axis: str) -> Runs:
    """Return the runs of a belt axis over its wanted travel."""
    described = belt_axis_of(reader, axis)
    way_mm = need(described.needs.travel_mm, f"axes.{axis}.needs.travel").value
    path_mm = reader.derive(belt_path, axis).value
    axles_mm = (reader.derive(belt_run, axis).axles_mm or ZERO).value
    least_mm = LEAST_RUN_RATIO * path_mm
    ends = (axles_mm - way_mm) / 2, (axles_mm + way_mm) / 2
    low_mm, high_mm = (min(max(least_mm, end), path_mm - least_mm) for end in ends)
    return Runs(path_mm, low_mm, high_mm)


def belt_stiffness(reader: Reader, axis: str) -> Figure:
    """Return the force in N that would stretch an axis's belt to twice its length, of one run."""
    belt = belt_of(reader, axis)
    if belt.stiffness_n is not None:
        return belt.stiffness_n  # type: ignore[no-any-return]
    width_mm: Figure = belt.width_mm
    return typical(profile_of(belt).strain_stiffness_n_mm, f"{belt.profile}, usual") * width_mm


def belt_tension(reader: Reader, axis: str) -> Figure:
    """Return the tension in N of each run at rest: as the axis says it, else that at which such belts are installed."""
    described, belt = belt_axis_of(reader, axis), belt_of(reader, axis)
    if described.tension_n is not None:
        return described.tension_n  # type: ignore[no-any-return]
    profile_of(belt)
    usual_n = need(installation_tension_n(belt.profile, belt.width_mm.value), f"axes.{axis}.tension")
    share = motion_limit("tension as set").amount / 100
    return Figure(usual_n, usual_n * (1 - share), usual_n * (1 + share), Grade.TYPICAL, "installation tension")


def allowed_tension(reader: Reader, axis: str) -> Figure:
    """Return the tension in N at which an axis's belt may work: as described, else a share of what breaks it."""
    belt = belt_of(reader, axis)
    if belt.allowed_n is not None:
        return belt.allowed_n  # type: ignore[no-any-return]
    breaking_n_mm = need(profile_of(belt).breaking_n_mm, f"parts.{belt.id}.allowed")
    share = motion_limit("share of the breaking tension").amount / 100
    width_mm: Figure = belt.width_mm
    return Figure.exact(breaking_n_mm * share).as_typical(f"{belt.profile}, usual") * width_mm


def belt_of(reader: Reader, axis: str) -> Belt:
    """Return the belt of an axis."""
    place = belt_axis_of(reader, axis).belt
    belt = reader.part(place)
    if not isinstance(belt, Belt):
        raise NotDescribedError((f"axes.{axis}.belt (a belt in {place})",))
    return belt


def profile_of(belt: Belt) -> BeltProfile:
    """Return the class of a belt's profile."""
    try:
        return belt_profile(belt.profile)
    except LookUpError as error:
        raise NotDescribedError((f"parts.{belt.id}.profile ({error})",)) from None


def belt_axis_of(reader: Reader, axis: str) -> BeltAxis:
    """Return a belt axis by name."""
    described = reader.design.axes[axis]
    if not isinstance(described, BeltAxis):
        raise NotDescribedError((f"axes.{axis} (a belt drive)",))
    return described
