"""Round ends and round holes of parts, each with the band in which its diameter really lies."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.inputs import Input
from scantling.errors import LookUpError
from scantling.model.kinds import BallBearing, Bushing, Coupler, Motor, Pulley, Rod, ThreadedRod
from scantling.model.part import Part
from scantling.quantities import Figure, Grade
from scantling.tables.limits import limits_um
from scantling.tables.threads import thread

HARDENED_HRC = 50.0  # from here on a shaft counts as hardened and ground; our own line, no source
GROUND, DRAWN = "h6", "h10"  # usual zones of hardened ground shafts and of bright drawn bar: common practice, EN 10278
BALL_BUSHING_UM = (-9.0, 0.0)  # bore of linear ball bushings, 6 to 16 mm: seen in a bushing maker's table
POLYMER_BORE, PLAIN_BORE, BALL_BEARING_UM = "E10", "H8", (-8.0, 0.0)  # usual of pressed-in linings; ISO 492 class 0
MM_PER_UM = 1e-3


def shaft_at(reader: Reader, place: str, part: Part, name: str) -> Input:
    """Return the diameter of a round end of ``part``: ``shaft``, ``diameter``, ``thread`` or a size that it names."""
    what = f"diameter of {place}"
    if isinstance(part, ThreadedRod):
        return _threaded(what, part)
    if isinstance(part, Motor):
        return _zoned(what, feature(reader, place, "shaft-diameter"), part.shaft_fit, GROUND)
    if isinstance(part, Rod):
        return _zoned(what, feature(reader, place, "diameter"), part.fit, _usual_rod(part))
    if isinstance(part, BallBearing) and name in ("", "outer", "outer-diameter"):
        return _deviating(what, feature(reader, place, "outer-diameter"), BALL_BEARING_UM)
    return _zoned(what, feature(reader, place, name), None, GROUND)


def bore_at(reader: Reader, place: str, part: Part, name: str) -> Input:
    """Return the diameter of a round hole of ``part``: ``bore``, a coupler's end, or a size that it names."""
    what = f"{name.replace('-', ' ') if isinstance(part, Coupler) else 'bore'} of {place}"
    if isinstance(part, Bushing):
        return _bushing(what, feature(reader, place, "bore"), part)
    if isinstance(part, Pulley):
        return _zoned(what, feature(reader, place, "bore"), part.bore_fit, PLAIN_BORE)
    if isinstance(part, BallBearing) and name in ("", "bore"):
        return _deviating(what, feature(reader, place, "bore"), BALL_BEARING_UM)
    return _zoned(what, feature(reader, place, name), None, PLAIN_BORE)


def _usual_rod(part: Rod) -> str:
    """Return the zone of a rod that says none: ground where it is hard, else as bar is drawn."""
    hard = part.surface_hardness_hrc is not None and part.surface_hardness_hrc.value >= HARDENED_HRC
    return GROUND if hard else DRAWN


def _zoned(what: str, diameter: Figure, zone: str | None, usual: str) -> Input:
    """Return a diameter with the limits of its zone; a band of its own, or a measured value, stands as it is."""
    if diameter.grade is Grade.MEASURED or not diameter.is_exact:
        return Input(what, diameter.value, diameter.low, diameter.high, "mm")
    try:
        return _deviating(what, diameter, limits_um(diameter.value, zone or usual), assumed=zone is None)
    except LookUpError:  # beyond the table: as it is written
        return Input(what, diameter.value, diameter.low, diameter.high, "mm", assumed=zone is None)


def _deviating(what: str, diameter: Figure, deviations_um: tuple[float, float], assumed: bool = True) -> Input:
    """Return a diameter between two deviations, to be expected in the middle."""
    if diameter.grade is Grade.MEASURED or not diameter.is_exact:
        return Input(what, diameter.value, diameter.low, diameter.high, "mm")
    low, high = (diameter.value + deviation * MM_PER_UM for deviation in deviations_um)
    return Input(what, (low + high) / 2, low, high, "mm", assumed=assumed)


def _bushing(what: str, bore: Figure, part: Bushing) -> Input:
    if part.bore_fit:
        return _zoned(what, bore, part.bore_fit, POLYMER_BORE)
    if part.lining == "ball":
        return _deviating(what, bore, BALL_BUSHING_UM)
    return _zoned(what, bore, None, POLYMER_BORE)


def _threaded(what: str, part: ThreadedRod) -> Input:
    """Return the outside of a thread: zone 6g of V-threads, 4h of trapezoidal ones, by the rules of ISO 965-1.

    es = -(15 + 11 P) µm, Td6 = 180 P^(2/3) - 3.15 / √P µm, Td4 = 0.63 Td6, with P in mm (from memory).
    """
    found = thread(part.thread)
    pitch_mm = float(found.pitch_mm)
    width_um = 180 * pitch_mm ** (2 / 3) - 3.15 / pitch_mm**0.5
    upper_um = -(15 + 11 * pitch_mm)
    if found.family == "trapezoidal":
        upper_um, width_um = 0.0, 0.63 * width_um
    low, high = (found.major_mm + deviation * MM_PER_UM for deviation in (upper_um - width_um, upper_um))
    return Input(what, (low + high) / 2, low, high, "mm", assumed=True)
