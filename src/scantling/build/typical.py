"""Figures of a class where a part does not say its own, each marked as typical, with its band."""

from __future__ import annotations

from fractions import Fraction

from scantling.build.missing import NotDescribedError
from scantling.errors import LookUpError
from scantling.model.kinds import Belt, Motor
from scantling.quantities import Figure, Grade
from scantling.tables.bands import Band
from scantling.tables.belt_profiles import belt_profile
from scantling.tables.frictions import friction
from scantling.tables.materials import material
from scantling.tables.motion_limits import screw_make
from scantling.tables.motor_faces import motor_face
from scantling.tables.threads import Thread


def typical(band: Band, source: str) -> Figure:
    """Return a band of a class table as a figure."""
    return Figure(band.typical, band.low, band.high, Grade.TYPICAL, source)


def belt_pitch(profile: str, fact: str) -> Fraction:
    """Return the exact pitch in mm of a belt's profile; ``fact`` is where the files name it."""
    try:
        return belt_profile(profile).pitch_mm
    except LookUpError as error:
        raise NotDescribedError((f"{fact} ({error})",)) from None


def belt_line_mass(belt: Belt) -> Figure:
    """Return the mass of a belt in g/m: as described, else by its profile and width."""
    given: Figure | None = belt.line_mass_g_m
    if given is not None:
        return given
    width_mm: Figure = belt.width_mm
    try:
        return typical(belt_profile(belt.profile).mass_g_m_mm, f"{belt.profile}, usual") * width_mm
    except LookUpError as error:
        raise NotDescribedError((f"parts.{belt.id}.line-mass ({error})",)) from None


def density(name: str, fact: str, thickness_mm: float | None = None) -> Figure:
    """Return the density in kg/m3 of a material by its class; ``fact`` is where the files would say it."""
    try:
        return typical(material(name, thickness_mm).density_kg_m3, f"{name}, usual")
    except LookUpError as error:
        raise NotDescribedError((f"{fact} ({error})",)) from None


def bushing_friction(lining: str) -> Figure:
    """Return the friction of a bushing on its rod."""
    return typical(friction(f"{lining} bushing").friction_ratio, f"{lining} bushing, usual")


def bushing_drag(lining: str) -> Figure:
    """Return the pull in N of seals and grease of one bushing."""
    drag_n = friction(f"{lining} bushing").drag_n
    return Figure.exact(0.0) if drag_n is None else typical(drag_n, f"{lining} bushing, usual")


def screw_friction(found: Thread) -> Figure:
    """Return the friction of a drive screw in its nut."""
    pair = "trapezoidal screw" if found.family == "trapezoidal" else "threaded rod"
    return typical(friction(pair).friction_ratio, f"{pair}, usual")


def screw_bow(found: Thread) -> Figure:
    """Return how far the middle of 300 mm of a screw usually lies beside a straight line, in mm."""
    return typical(screw_make(found.family).bow_mm, f"{found.name}, usual")


def screw_lead_error(found: Thread) -> Figure:
    """Return by how much the lead of a screw is usually out on 300 mm, in mm."""
    return typical(screw_make(found.family).lead_error_mm, f"{found.name}, usual")


def tapped_depth(motor: Motor) -> Figure | None:
    """Return how deep the threads in a motor's face usually are, in mm; None where the face is not tapped."""
    depth_mm = motor_face(motor.frame_size).tapped_depth_mm
    return None if depth_mm is None else Figure.exact(depth_mm).as_typical(f"frame {motor.frame_size}, usual")
