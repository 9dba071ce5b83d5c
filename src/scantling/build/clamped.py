"""What a joint's screw presses on, and the soft or tapped material that holds its thread."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians
from typing import TypeVar

from scantling.build.fasteners import washer_name
from scantling.build.gets import plastic_of
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.build.screw_fit import screw_fit
from scantling.build.stacks import holding, joint_nuts
from scantling.build.typical import density
from scantling.errors import LookUpError
from scantling.formulas import clamping
from scantling.formulas import holding as held
from scantling.model.expression import places_of, tree
from scantling.model.joint import Joint, Layer
from scantling.model.kinds import Nut, Printed, SheetStock, Washer
from scantling.quantities import Figure
from scantling.tables.bands import Band
from scantling.tables.clamp_limits import ClampLimit, clamp_limit
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.holes import PANEL_PILOT_HIGH_RATIO, clearance_hole, insert_hole
from scantling.tables.materials import material
from scantling.tables.screws import screw_head
from scantling.tables.threads import Thread, thread

F = TypeVar("F", Washer, Nut)
SOFT_HOLDS = ("insert", "plastic", "panel", "panel edge")
WATER_KG_M3 = 1000.0
HARD = ClampLimit("metal", Band(0.0, 0.0, 0.0), None, "")


@dataclass(frozen=True)
class Pressed:
    """A face of soft material with what presses on it, ``by`` in words; its ring is ``outer_mm`` less ``hole_mm``."""

    by: str
    place: str
    limit: ClampLimit
    outer_mm: float
    hole_mm: float

    @property
    def area_mm2(self) -> float:
        """The ring that is pressed."""
        return clamping.ring_area_mm2(self.outer_mm, self.hole_mm)


@dataclass(frozen=True)
class Held:
    """A thread in soft material: ``holds`` as the joint says, the depth of thread that counts, the density of wood."""

    holds: str
    place: str
    limit: ClampLimit
    thread: Thread
    depth_mm: Figure
    density_kg_m3: Figure | None

    def pull_out_n(self, depth_mm: float, density_kg_m3: float, pressure_mpa: float, shear_mpa: float) -> float:
        """Return the pull that draws the thread out; of wood by density, of plastic by its strength in shear."""
        found = self.thread
        outer_mm = insert_hole(found.name).insert_diameter_mm if self.holds == "insert" else found.major_mm
        if not self.limit.is_wood:
            if self.holds == "insert":
                return held.insert_pull_out_n(outer_mm, depth_mm, shear_mpa, 1.0)
            return held.plastic_pull_out_n(found.pitch_diameter_mm, depth_mm, shear_mpa)
        factor = held.EDGE_FACTOR if self.holds == "panel edge" else held.FACE_FACTOR
        drawn_n = held.panel_withdrawal_n(outer_mm, depth_mm, density_kg_m3 / WATER_KG_M3, factor)
        if self.holds == "insert":
            return drawn_n
        pilot_mm = PANEL_PILOT_HIGH_RATIO * outer_mm
        return min(drawn_n, held.thread_crush_n(outer_mm, pilot_mm, float(found.pitch_mm), depth_mm, pressure_mpa))


def pressed(reader: Reader, joint: str) -> tuple[Pressed, ...]:
    """Return the soft faces under a joint's head and nut; empty where both are hard.

    Raises ``NotDescribedError`` where nobody says of what any of them is made.
    """
    described = reader.design.joints[joint]
    ends = [described.through] if described.into.nut is None else [described.through, described.through[::-1]]
    found: list[Pressed] = []
    unsaid: list[str] = []
    for end, layers in zip(("head", "nut"), ends, strict=False):
        first = next((layer for layer in layers if not layer.washer), None)
        if first is None:
            continue
        place = None if first.size is None else next(iter(places_of(tree(first.size))), None)
        made_of = None if place is None else soft_or_hard(reader, place)
        if place is None or made_of is None:
            unsaid += _unsaid(reader, joint, place)
        elif made_of is not HARD:
            by, outer_mm = _presses(reader, described, layers[0], end)
            hole_mm = clearance_hole(head_and_thread(described.screw)[1], "medium").diameter_mm
            found.append(Pressed(by, place, made_of, outer_mm, hole_mm))
    if unsaid and not found:
        raise NotDescribedError(tuple(unsaid))
    return tuple(found)


def soft_or_hard(reader: Reader, place: str) -> ClampLimit | None:
    """Return what the material of a place bears, ``HARD`` for metal; None where it is not said or not known."""
    name = material_at(reader, place)
    if name is None:
        return None
    soft = clamp_limit(name)
    return soft if soft is not None else HARD if metal_yield_mpa(name) is not None else None


def material_at(reader: Reader, place: str) -> str | None:
    """Return of what the part in a place is made: the plastic it is printed in, else its material."""
    part = reader.part(place)
    if isinstance(part, Printed):
        return plastic_of(reader.get(place)) or part.material or part.plastics[0]
    return None if part is None else part.material


def soft_thread(reader: Reader, joint: str) -> Held:
    """Return the thread of a joint that panel, plastic or an insert in them holds."""
    described = reader.design.joints[joint]
    place, name = need(described.into.place, f"joints.{joint}.into"), head_and_thread(described.screw)[1]
    limit = soft_or_hard(reader, place)
    if limit is None or limit is HARD:
        raise NotDescribedError((f"places.{place} (wood, panel or plastic as its material)",))
    if described.into.holds == "insert":
        depth_mm = reader.derive(holding, joint).depth_mm
    else:
        depth_mm = reader.derive(screw_fit, joint, reader.screw(joint).id).engagement_mm
    dense = _density(reader, place, limit) if limit.is_wood else None
    return Held(described.into.holds, place, limit, thread(name), depth_mm, dense)


def metal_yield_mpa(name: str) -> float | None:
    """Return the least yield stress of a metal; None for all else."""
    try:
        found = material(name).yield_mpa
    except LookUpError:
        return None
    return None if found is None else found.low


def _unsaid(reader: Reader, joint: str, place: str | None) -> list[str]:
    """What would say of what a layer is made; nothing where its place is empty."""
    if place is None:
        return [f"joints.{joint}.through (the place of each layer, for its material)"]
    part = reader.part(place)
    return [] if part is None else [f"parts.{part.id}.material"]


def _presses(reader: Reader, described: Joint, outermost: Layer, end: str) -> tuple[str, float]:
    """What presses at one end of a joint, in words, and its diameter."""
    head, name = head_and_thread(described.screw)
    if outermost.washer:
        washer = _standard(reader, washer_name(outermost.washer, name), Washer)
        return f"the {'large ' if outermost.washer == 'large' else ''}washer", washer.outer_diameter_mm.value
    if end == "nut":
        return "the nut", _standard(reader, joint_nuts(described)[0], Nut).across_flats_mm.value
    row = screw_head(head, name)
    return "the head", row.diameter_mm * (cos(radians(30)) if head == "hexagon" else 1.0)


def _standard(reader: Reader, name: str, kind: type[F]) -> F:
    try:
        part = reader.case.part(name)
    except LookUpError as error:
        raise NotDescribedError((f"{name} ({error})",)) from None
    assert isinstance(part, kind)
    return part


def _density(reader: Reader, place: str, limit: ClampLimit) -> Figure:
    part = reader.part(place)
    if isinstance(part, SheetStock):
        given: Figure | None = part.density_kg_m3
        if given is not None:
            return given
        return density(part.material, f"parts.{part.id}.density", part.thickness_mm.value)
    return density(limit.material, f"places.{place} (a sheet)")
