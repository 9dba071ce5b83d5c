"""What a bushing stands that is squeezed or sits askew: balls a part of their rating, linings their pressure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.build.reader import Reader
from scantling.checks.inputs import Input, or_range, or_typical
from scantling.model.kinds import Bushing
from scantling.tables.guide_limits import guide_limit

POSSIBLE_LOAD_N = (60.0, 1000.0)  # ratings of linear ball bushings for rods from 5 to 16 mm
USUAL_SPEED_MM_S = 100.0  # where the axis wants none


@dataclass(frozen=True)
class Strength:
    """What a bushing stands; ``inputs`` are those of its rules, ``words`` says in a sentence why no more."""

    bushing: Bushing
    speed_mm_s: float

    @property
    def has_balls(self) -> bool:
        """True where balls roll on the rod."""
        return self.bushing.lining == "ball"

    @property
    def inputs(self) -> dict[str, Input]:
        """``rating`` of balls, or ``heat`` of a lining: pressure times speed."""
        if self.has_balls:
            given = self.bushing.dynamic_load_n
            return {"rating": or_range(f"load rating of {self.bushing.id}", given, *POSSIBLE_LOAD_N, "N")}
        return {"heat": or_typical("pressure times speed of the lining", None, guide_limit("pressure and speed"))}

    @property
    def words(self) -> str:
        """What bounds it."""
        share = guide_limit("share of a rating").value
        return f"{share:g} % of its rating" if self.has_balls else "what its lining stands dry at this speed"

    def stands_n(self, f: Mapping[str, float]) -> float:
        """Return the load that it stands; of a lining over ``diameter`` times ``length``."""
        if self.has_balls:
            return guide_limit("share of a rating").value / 100 * f["rating"]
        pressure_mpa = min(guide_limit("pressure of a lining").value, f["heat"] / self.speed_mm_s)
        return pressure_mpa * f["diameter"] * f["length"]


def strength(reader: Reader, axis: str, bushing: Bushing) -> Strength:
    """Return what the chosen bushing of an axis stands at the speed that is wanted."""
    speed = reader.design.axes[axis].needs.speed_mm_s
    return Strength(bushing, speed.value if speed else USUAL_SPEED_MM_S)
