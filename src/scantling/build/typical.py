"""Figures of a class where a part does not say its own, each marked as typical, with its band."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from scantling.build.missing import NotDescribedError
from scantling.model.kinds import Belt
from scantling.quantities import Figure, Grade
from scantling.tables.threads import Thread

_PITCH = re.compile(r"(?P<pitch>\d+(?:\.\d+)?)\s*mm\b.*")


@dataclass(frozen=True)
class MotorFace:
    """The face of a motor: its square of screws, its centring collar, the thread of its screws."""

    square_mm: float
    pilot_mm: float
    thread: str


def _typical(value: float, low: float, high: float, source: str) -> Figure:
    return Figure(value, low, high, Grade.TYPICAL, source)


def belt_pitch(profile: str, fact: str) -> Fraction:
    """Return the exact pitch in mm of a belt's profile."""
    found = _PITCH.fullmatch(profile)
    if found is None:
        raise NotDescribedError((f"{fact} (a profile whose pitch is known)",))
    return Fraction(found["pitch"])


def belt_line_mass(belt: Belt) -> Figure:
    """Return the mass of a belt in g/m."""
    if belt.line_mass_g_m is not None:
        given: Figure = belt.line_mass_g_m
        return given
    per_mm = _typical(1.35, 1.2, 1.5, "2 mm belts, from memory")
    return per_mm * Figure.exact(belt.width_mm.value)


def density(material: str, fact: str) -> Figure:
    """Return the density in kg/m3 of a material by its class."""
    found = _DENSITIES.get(material)
    if found is None:
        raise NotDescribedError((f"{fact} (a material whose density is known)",))
    return _typical(*found, f"{material}, typical")


def plastic_density(plastic: str) -> Figure:
    """Return the density in kg/m3 of a plastic."""
    found = _PLASTICS.get(plastic)
    if found is None:
        raise NotDescribedError((f"parts (density of a filament of {plastic})",))
    return _typical(*found, f"{plastic}, typical")


def bushing_friction(lining: str) -> Figure:
    """Return the friction of a bushing on its rod."""
    return _typical(*_FRICTIONS[lining], f"{lining} lining, typical")


def bushing_drag(lining: str) -> Figure:
    """Return the pull in N of seals and grease of one bushing."""
    return _typical(*_DRAGS[lining], f"{lining} lining, typical")


def screw_friction(found: Thread) -> Figure:
    """Return the friction of a drive screw in its nut."""
    if found.family == "trapezoidal":
        return _typical(0.15, 0.10, 0.20, "trapezoidal screw in bronze or polymer, typical")
    return _typical(0.17, 0.12, 0.25, "threaded rod in a steel or brass nut, typical")


def motor_face(frame_size: str) -> MotorFace:
    """Return the face of a motor by its frame size."""
    return _FACES[frame_size]


_DENSITIES = {
    "steel": (7850.0, 7800.0, 7900.0),
    "stainless": (7900.0, 7850.0, 8000.0),
    "aluminium": (2700.0, 2680.0, 2750.0),
}
_PLASTICS = {"PLA": (1240.0, 1210.0, 1300.0), "PETG": (1270.0, 1230.0, 1290.0), "ABS": (1040.0, 1020.0, 1080.0)}
_FRICTIONS = {"ball": (0.005, 0.002, 0.01), "polymer": (0.25, 0.15, 0.35), "bronze": (0.15, 0.1, 0.2)}
_DRAGS = {"ball": (0.3, 0.1, 0.6), "polymer": (0.3, 0.0, 0.6), "bronze": (0.3, 0.0, 0.6)}
_FACES = {
    "14": MotorFace(26.0, 22.0, "M3"),
    "17": MotorFace(31.0, 22.0, "M3"),
    "23": MotorFace(47.14, 38.1, "M5"),
}
