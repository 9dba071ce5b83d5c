"""A carriage on its rods, as rods out of parallel and seats askew find it, and the pull that this costs."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.axis_loads import guide_size
from scantling.build.binding import Carried, carried, seat_figures
from scantling.build.drives import guide_friction
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO, feature
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.materials import steel_modulus
from scantling.checks.rounds import bore_at, shaft_at
from scantling.checks.standing import backing, standing_guide
from scantling.formulas.binding import binding_drag_n, moment_load_n
from scantling.model.axis import Guide
from scantling.model.kinds import Bushing, Rod
from scantling.quantities import Figure
from scantling.tables.guide_limits import guide_limit


@dataclass(frozen=True)
class Running:
    """A carriage on its rods with its chosen parts and the ``inputs`` of all that its rules take.

    inputs : ``free``, ``spacing``, ``diameter``, ``modulus``, ``length`` and ``play`` of a bushing, ``parallel`` error
        of the rods, ``askew`` lie and ``slack`` of the seats, ``backing``, ``moment`` and ``rub``; what is not
        described is nothing
    """

    guide: Guide
    on: Carried
    rod: Rod
    bushing: Bushing
    inputs: dict[str, Input]

    def moment_nmm(self, **f: float) -> float:
        """Return the moment that is forced on a bushing; ``slope`` is that of the rods under their load."""
        return self.on.forced_nmm({"slope": 0.0, **f})

    def edge_n(self, **f: float) -> float:
        """Return the even load that presses as hard as a bushing's edges are pressed."""
        return moment_load_n(self.moment_nmm(**f), f["length"], f["moment"])

    def drag_n(self, **f: float) -> float:
        """Return the pull of a guide that is held too often."""
        squeeze_n, twist_n, moment_nmm = self.on.squeeze_n(f), self.on.twist_n(f), self.moment_nmm(**f)
        return binding_drag_n(squeeze_n, twist_n, self.on.bearings, moment_nmm, f["length"], f["rub"])


def running(reader: Reader, axis: str) -> Running:
    """Return the carriage of an axis whose rods stand still."""
    guide, geometry = standing_guide(reader, axis)
    rod = need(geometry.rod, f"axes.{axis}.guide.rods (a rod)")
    bushing = need(geometry.bushing, f"axes.{axis}.guide.bearings (a bushing)")
    free, spacing, length = gather(
        lambda: reader.derive(guide_size, axis, "free"),
        lambda: reader.derive(guide_size, axis, "spacing"),
        lambda: reader.derive(feature, guide.bearings, "length"),
    )
    seats = seat_figures(guide)
    factor = guide_limit("moment on balls" if bushing.lining == "ball" else "moment on a lining")
    inputs = {
        "free": known("free length of the rods", free, "mm"),
        "spacing": known("spacing of the bushings", spacing, "mm"),
        "diameter": known("diameter of the rods", reader.derive(feature, guide.rods, "diameter"), "mm"),
        "modulus": steel_modulus(rod),
        "length": known("length of a bushing", length, "mm"),
        "play": play_input(reader, guide, rod, bushing),
        "parallel": known("parallel error of the rods", guide.parallel_mm or ZERO, "mm"),
        "askew": known("askew lie of the seats", seats["askew"], "mm"),
        "slack": known("slack at the seats' ends", seats["slack"], "mm"),
        "backing": backing("stiffness of the holders"),
        "moment": or_typical("what a moment does to the bushing", None, factor),
        "rub": known("friction of the bushings", reader.derive(guide_friction, axis).ratio),
    }
    return Running(guide, carried(reader, axis, guide, geometry), rod, bushing, inputs)


def play_input(reader: Reader, guide: Guide, rod: Rod, bushing: Bushing) -> Input:
    """Return the play of an axis's rods in their bushings; a fit with none has no play."""
    shaft, bore = shaft_at(reader, guide.rods, rod, "diameter"), bore_at(reader, guide.bearings, bushing, "bore")
    ends = bore.nominal - shaft.nominal, bore.low - shaft.high, bore.high - shaft.low
    nominal, low, high = (max(0.0, end) for end in ends)
    return Input("play of the bushings", nominal, low, high, "mm", assumed=shaft.assumed or bore.assumed)


def lies_free(reader: Reader, axis: str) -> bool:
    """Return whether a guide is not held too often whatever rods it has: its bushings give way, and its seats turn."""
    guide = need(reader.design.axes[axis].guide, f"axes.{axis}.guide")
    if guide.seats is None or not guide.seats.floating:
        return False
    seats, parallel_mm = seat_figures(guide), guide.parallel_mm.value if guide.parallel_mm else 0.0
    free_mm = reader.derive(guide_size, axis, "free").low
    length_mm = reader.derive(feature, guide.bearings, "length").high
    return seats["askew"] + length_mm * parallel_mm / free_mm <= seats["slack"]


def binding_drag(reader: Reader, axis: str) -> Figure:
    """Return the pull in N that a guide takes because it is held too often: from none to what it is at least play.

    None where neither ``parallel`` nor ``seats`` are described.
    """
    guide = reader.design.axes[axis].guide
    if guide is None or guide.moving_rods or (guide.parallel_mm is None and guide.seats is None):
        return ZERO
    if reader.derive(lies_free, axis):
        return ZERO
    on = running(reader, axis)
    nominal = {name: figure.nominal for name, figure in on.inputs.items()}
    value_n, most_n = on.drag_n(**nominal), on.drag_n(**{**nominal, "play": on.inputs["play"].low})
    return Figure(value_n, 0.0, most_n)
