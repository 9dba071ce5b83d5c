"""What a guide suffers because it is held more often than it need be.

Rods out of parallel squeeze the carriage at one end of its travel and, where four bushings carry it, twist it; seats
that lie askew press on the edges of their bushings. Balls hardly rub, but they are loaded; linings rub.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, inf

from scantling.build.axis_loads import GuideGeometry
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.rod_ends import Ends, holder_bed_mpa, holder_turning_nmm_rad, rod_ends
from scantling.formulas import binding
from scantling.formulas.held_beams import held_stiffness_n_mm
from scantling.formulas.sections import round_second_moment_mm4, tube_second_moment_mm4
from scantling.model.axis import Guide
from scantling.model.kinds import Bushing
from scantling.tables.guide_limits import guide_limit

USUAL_STEEL_MPA = 205_000.0
NEAREST = 0.02  # of the free length: no bushing comes nearer to a holder than this, being half a bushing long
USUAL_OUTER_RATIO = 1.9  # of a bushing's bore, where its outer diameter is not said: 15 / 8, 19 / 10 (ISO 10285)


@dataclass(frozen=True)
class Carried:
    """A carriage on its rods: where its bushings stand at the end of its travel, and how the rods' ends are held.

    bushing_nmm_rad : how stiff a bushing is itself against sitting askew    outer_mm : its outer diameter
    """

    guide: Guide
    rods: int
    bearings: int
    ends: Ends
    travel_mm: float
    bushing_nmm_rad: float
    outer_mm: float

    @property
    def on_one_rod(self) -> int:
        """Bushings on the rod that has fewest."""
        return max(1, self.bearings // self.rods)

    @property
    def has_pair(self) -> bool:
        """True where two bushings run on one rod at least."""
        return self.bearings > self.rods

    def squeeze_n(self, f: dict[str, float]) -> float:
        """Return the force between two rods out of parallel, at one end of the travel.

        f : ``parallel``, ``play``, ``free``, ``spacing``, ``diameter``, ``modulus``, ``length``, ``backing``
        """
        if self.rods != 2 or self.floats:
            return 0.0
        centre_mm, apart_mm, way_mm = self._places(f)
        beam = self._beam(f)
        lone_n_mm = held_stiffness_n_mm(centre_mm, *beam)
        pair_n_mm = lone_n_mm
        if self.has_pair and apart_mm > 0:
            pair_n_mm = binding.shift_stiffness_n_mm(binding.pair_compliances_mm_n(centre_mm, apart_mm, *beam))
        other_n_mm = pair_n_mm if self.on_one_rod > 1 else lone_n_mm
        seat_n_mm, misfit_mm = self._seat_n_mm(f), f["parallel"] * way_mm / f["free"]
        pair_n_mm = series(pair_n_mm, seat_n_mm * (2 if self.has_pair else 1))
        return binding.squeeze_n(misfit_mm, f["play"], pair_n_mm, series(other_n_mm, seat_n_mm * self.on_one_rod))

    def twist_n(self, f: dict[str, float]) -> float:
        """Return the force on each of four bushings on rods that do not lie in one plane; none for three."""
        centre_mm, apart_mm, _ = self._places(f)
        if self.rods != 2 or self.on_one_rod < 2 or apart_mm <= 0 or self.floats:
            return 0.0
        compliances = binding.pair_compliances_mm_n(centre_mm, apart_mm, *self._beam(f))
        lifted_mm = f["parallel"] * apart_mm / f["free"] / 4 - f["play"] / 2
        return max(0.0, lifted_mm) * series(binding.twist_stiffness_n_mm(compliances), self._seat_n_mm(f))

    def on_bushing_n(self, f: dict[str, float]) -> float:
        """Return what rods out of parallel add to the busiest bushing."""
        return hypot(self.squeeze_n(f) / self.on_one_rod, self.twist_n(f))

    def forced_nmm(self, f: dict[str, float]) -> float:
        """Return the moment on a bushing whose seat lies askew.

        f : as ``squeeze_n`` with ``askew``, ``slack``, ``slope``
        """
        centre_mm, apart_mm, _ = self._places(f)
        free_mm, modulus_mpa, second_mm4, fixity = self._beam(f)
        near_mm = centre_mm - apart_mm / 2 if self.has_pair else centre_mm
        next_mm = apart_mm if self.has_pair and apart_mm > 0 else free_mm - centre_mm
        rod_nmm_rad = binding.bushing_turning_nmm_rad(near_mm, next_mm, modulus_mpa, second_mm4, fixity)
        tube_mm4 = tube_second_moment_mm4(self.outer_mm, f["diameter"])
        seat_nmm_rad = holder_turning_nmm_rad(f["length"], self.outer_mm, USUAL_STEEL_MPA, tube_mm4, f["backing"])
        askew_rad = f["askew"] / f["length"] + f["parallel"] / free_mm + f["slope"]
        free_rad = (f["play"] + f["slack"]) / f["length"]
        return binding.forced_moment_nmm(askew_rad, free_rad, rod_nmm_rad, seat_nmm_rad, self.bushing_nmm_rad)

    @property
    def floats(self) -> bool:
        """True where the bushings of one rod give way."""
        return self.guide.seats is not None and self.guide.seats.floating

    def _seat_n_mm(self, f: dict[str, float]) -> float:
        """How stiff a bushing and its seat are against a push across."""
        tube_mm4 = tube_second_moment_mm4(self.outer_mm, f["diameter"])
        bed_n_mm = f["length"] * holder_bed_mpa(self.outer_mm, USUAL_STEEL_MPA, tube_mm4, f["backing"])
        return series(bed_n_mm, 12 * self.bushing_nmm_rad / f["length"] ** 2)

    def _places(self, f: dict[str, float]) -> tuple[float, float, float]:
        """Middle of the carriage at the end of its way, distance of its bushings, its way."""
        free_mm = f["free"]
        apart_mm = min(f["spacing"], free_mm * (1 - 2 * NEAREST)) if self.has_pair else 0.0
        way_mm = max(0.0, min(self.travel_mm, free_mm - apart_mm - 2 * NEAREST * free_mm))
        return (free_mm - way_mm) / 2, apart_mm, way_mm

    def _beam(self, f: dict[str, float]) -> tuple[float, float, float, float]:
        fixity = self.ends.fixity(f["free"], f["diameter"], f["modulus"], f)
        return f["free"], f["modulus"], round_second_moment_mm4(f["diameter"]), fixity


def series(one_n_mm: float, other_n_mm: float) -> float:
    """Return the stiffness of two springs in series; either may be infinite."""
    return 1 / (1 / one_n_mm + 1 / other_n_mm)


def carried(reader: Reader, axis: str, guide: Guide, geometry: GuideGeometry) -> Carried:
    """Return the carriage of an axis; without a wanted travel it stands in the middle."""
    travel = reader.design.axes[axis].needs.travel_mm
    ends = rod_ends(reader, axis, guide)
    has_balls = geometry.bushing is not None and geometry.bushing.lining == "ball"
    turning_nmm_rad = 1000 * guide_limit("turning of balls").value if has_balls else inf
    way_mm = travel.value if travel else 0.0
    outer_mm = usual_outer_mm(need(geometry.bushing, f"axes.{axis}.guide.bearings (a bushing)"))
    return Carried(guide, geometry.rods, geometry.bearings, ends, way_mm, turning_nmm_rad, outer_mm)


def usual_outer_mm(bushing: Bushing) -> float:
    """Return the outer diameter of a bushing, else the usual one of its bore."""
    given = bushing.outer_diameter_mm
    return float(given.value if given is not None else USUAL_OUTER_RATIO * bushing.bore_mm.value)


def seat_figures(guide: Guide) -> dict[str, float]:
    """Return ``askew`` and ``slack`` of an axis's seats in mm; a rigid seat has no slack."""
    seats = guide.seats
    askew, slack = (None, None) if seats is None else (seats.askew_mm, seats.slack_mm)
    lets_turn = seats is not None and seats.held == "aligning" and slack is not None
    return {"askew": askew.value if askew else 0.0, "slack": slack.value if lets_turn and slack else 0.0}
