"""Usual stepping motors by frame size, where a part does not say its own figures."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.bands import Band, known_band
from scantling.tables.csv_table import number, pick, rows


@dataclass(frozen=True)
class Radial:
    """Side pull that a shaft bears, where from the face it is stated, and how far behind the face its bearing sits."""

    limit_n: float
    at_mm: float
    bearing_mm: float


@dataclass(frozen=True)
class MotorClass:
    """What a motor of a frame size may be; ``rise_k`` of its case at rated current; no ``radial`` is known of some."""

    frame_size: str
    holding_low_nmm: float
    holding_high_nmm: float
    rotor_kg_mm2: Band
    rise_k: Band
    radial: Radial | None
    source: str


@cache
def motor_class(frame_size: str) -> MotorClass:
    """Return the class of a frame size (``"17"``); ``LookUpError`` where it is not in the table.

    >>> motor_class("17").radial
    Radial(limit_n=25.0, at_mm=15.0, bearing_mm=5.0)
    """
    row = pick("frame size of a motor", frame_size, {row["frame_size"]: row for row in rows("motor_classes")})
    heat = pick("frame size of a motor", frame_size, {row["frame_size"]: row for row in rows("motor_heats")})
    limit_n = number(row["radial_n"])
    return MotorClass(
        frame_size=frame_size,
        holding_low_nmm=float(row["holding_low_nmm"]),
        holding_high_nmm=float(row["holding_high_nmm"]),
        rotor_kg_mm2=known_band(row, "rotor", "kg_mm2"),
        rise_k=known_band(heat, "rise", "k"),
        radial=None if limit_n is None else Radial(limit_n, float(row["radial_at_mm"]), float(row["bearing_mm"])),
        source=row["source"],
    )


@cache
def least_idler_mm(profile: str, on_back: bool) -> float | None:
    """Return the least smooth idler of a belt on its teeth or its back; None where no maker's table gives it.

    >>> least_idler_mm("2.5 mm trapezoidal", True), least_idler_mm("2 mm round", True)
    (18.0, None)
    """
    found = {row["profile"]: row for row in rows("belt_idlers")}.get(profile)
    return None if found is None else float(found["back_mm" if on_back else "inside_mm"])
