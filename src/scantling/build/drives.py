"""What a drive makes of a turn of its motor: travel, steps, lead, belt lengths; steps and travel are exact."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import pi, tau
from typing import TypeVar

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO, size
from scantling.build.typical import (
    belt_pitch,
    bushing_drag,
    bushing_friction,
    screw_bow,
    screw_friction,
    screw_lead_error,
)
from scantling.formulas import belts
from scantling.model.axis import BeltAxis, ScrewAxis
from scantling.model.kinds import BallBearing, Belt, Bushing, DriveNut, Motor, Pulley, ThreadedRod
from scantling.model.part import Part
from scantling.quantities import Figure
from scantling.tables.threads import Thread, thread

USUAL_STEP_ANGLE_DEG = Fraction(9, 5)  # of two-phase stepping motors; taken where a motor does not say its own

P = TypeVar("P", bound=Part)


@dataclass(frozen=True)
class BeltGear:
    """What motor and pulley make of a belt axis: ``travel_mm`` per turn, its steps, the radius to the belt's cords."""

    axis: str
    profile: str
    pitch_mm: Fraction
    teeth: int
    full_steps: Fraction
    microsteps: int
    travel_mm: Fraction
    steps_per_mm: Fraction
    full_step_mm: Fraction
    microstep_mm: Fraction
    radius_mm: float


@dataclass(frozen=True)
class BeltRun:
    """How a belt runs round pulley and idler: radii to its cords, the axles' distance where it is described.

    teeth_in_mesh : on the motor's pulley, None where the axles' distance is not described
    """

    axis: str
    pitch_mm: Fraction
    teeth: int
    radius_mm: float
    idler_radius_mm: float
    axles_mm: Figure | None
    teeth_in_mesh: float | None


@dataclass(frozen=True)
class BeltDrive:
    """A belt axis whole.

    closed_length_mm, closed_axles_mm : pitch length of a closed belt and the axles' distance it asks for, None for
    open belts, the distance also where the belt does not go round
    """

    gear: BeltGear
    run: BeltRun
    closed_length_mm: float | None
    closed_axles_mm: float | None


@dataclass(frozen=True)
class ScrewDrive:
    """A screw axis; ``friction`` is that of screw on nut, ``nut_thread`` and ``backlash_mm`` are the nut's, if any.

    bow_300_mm, lead_error_300_mm : of 300 mm of the screw    float_mm : how far the nut shifts sideways in its seat
    """

    axis: str
    thread: Thread
    lead_mm: Fraction
    full_steps: Fraction
    microsteps: int
    steps_per_mm: Fraction
    full_step_mm: Fraction
    microstep_mm: Fraction
    screws: int
    free_mm: Figure | None
    friction: Figure
    nut_thread: str | None
    backlash_mm: Figure | None
    bow_300_mm: Figure
    lead_error_300_mm: Figure
    float_mm: Figure


@dataclass(frozen=True)
class GuideFriction:
    """What holds an axis back: ``typed_n`` where the axis says it, else ``drag_n`` + ``ratio`` · weight."""

    ratio: Figure
    drag_n: Figure
    typed_n: Figure | None


def full_steps(reader: Reader, axis: str) -> Fraction:
    """Return the full steps in one turn of an axis's motor."""
    motor = reader.design.axes[axis].motor
    part = None if motor is None else reader.part(motor)
    angle_deg = part.step_angle_deg if isinstance(part, Motor) else None
    step_deg = USUAL_STEP_ANGLE_DEG if angle_deg is None else Fraction(str(round(angle_deg.value, 9)))
    return 360 / step_deg


def steps_per_mm(reader: Reader, axis: str) -> Fraction:
    """Return the steps, microsteps counted, that move an axis by one millimetre."""
    if isinstance(reader.design.axes[axis], BeltAxis):
        return reader.derive(belt_gear, axis).steps_per_mm
    return reader.derive(screw_drive, axis).steps_per_mm


def belt_gear(reader: Reader, axis: str) -> BeltGear:
    """Return what motor and pulley make of a belt axis; reads neither belt nor idler."""
    described = _belt_axis(reader, axis)
    pulley = _part(reader, described.pulley, Pulley, f"axes.{axis}.pulley")
    pitch_mm = belt_pitch(pulley.profile, f"parts.{pulley.id}.profile")
    travel_mm = belts.belt_travel_per_turn_mm(pulley.teeth, pitch_mm)
    turn = reader.derive(full_steps, axis)
    return BeltGear(
        axis=axis,
        profile=pulley.profile,
        pitch_mm=pitch_mm,
        teeth=pulley.teeth,
        full_steps=turn,
        microsteps=described.microsteps,
        travel_mm=travel_mm,
        steps_per_mm=turn * described.microsteps / travel_mm,
        full_step_mm=travel_mm / turn,
        microstep_mm=travel_mm / turn / described.microsteps,
        radius_mm=pulley.teeth * float(pitch_mm) / tau,
    )


def belt_run(reader: Reader, axis: str) -> BeltRun:
    """Return how a belt runs round the chosen pulley and idler; reads neither motor nor belt."""
    described = _belt_axis(reader, axis)
    pulley = _part(reader, described.pulley, Pulley, f"axes.{axis}.pulley")
    pitch_mm = belt_pitch(pulley.profile, f"parts.{pulley.id}.profile")
    radius_mm, idler_mm = pulley.teeth * float(pitch_mm) / tau, reader.derive(idler_radius, axis)
    axles_mm = None if described.axles is None else reader.derive(size, described.axles)
    mesh = None if axles_mm is None else _teeth_in_mesh(pulley.teeth, radius_mm, idler_mm, axles_mm.value)
    return BeltRun(axis, pitch_mm, pulley.teeth, radius_mm, idler_mm, axles_mm, mesh)


def belt_drive(reader: Reader, axis: str) -> BeltDrive:
    """Return what motor, pulley, belt and idler make of a belt axis."""
    gear, run = reader.derive(belt_gear, axis), reader.derive(belt_run, axis)
    closed_mm = reader.derive(closed_length, axis)
    axles_mm = None if closed_mm is None else _axles_of(closed_mm, run.radius_mm, run.idler_radius_mm)
    return BeltDrive(gear, run, closed_mm, axles_mm)


def closed_length(reader: Reader, axis: str) -> float | None:
    """Return the pitch length in mm of a closed belt, None for an open one."""
    described = _belt_axis(reader, axis)
    belt = reader.part(described.belt)
    if not isinstance(belt, Belt) or belt.closed_teeth is None:
        return None
    return belt.closed_teeth * float(belt_pitch(belt.profile, f"parts.{belt.id}.profile"))


def idler_radius(reader: Reader, axis: str) -> float:
    """Return the radius in mm at which the belt's cords run round the idler.

    That of the pulley where no idler is described. On a plain ball bearing the cords run about half a pitch above its
    rim.
    """
    described = _belt_axis(reader, axis)
    pulley = _part(reader, described.pulley, Pulley, f"axes.{axis}.pulley")
    pitch_mm = float(belt_pitch(pulley.profile, f"parts.{pulley.id}.profile"))
    idler = None if described.idler is None else reader.part(described.idler)
    if isinstance(idler, BallBearing):
        return float(idler.outer_diameter_mm.value) / 2 + pitch_mm / 2
    teeth = idler.teeth if isinstance(idler, Pulley) else pulley.teeth
    return teeth * pitch_mm / tau


def belt_path(reader: Reader, axis: str) -> Figure:
    """Return the length in mm of a belt once round pulley and idler, tight."""
    run = reader.derive(belt_run, axis)
    if run.axles_mm is None:
        raise NotDescribedError((f"axes.{axis}.axles",))
    small_mm, large_mm = sorted((2 * run.radius_mm, 2 * run.idler_radius_mm))
    if run.axles_mm.low <= (large_mm - small_mm) / 2:
        raise NotDescribedError((f"axes.{axis}.axles (longer than the pulleys are wide)",))
    ends = (run.axles_mm.value, run.axles_mm.low, run.axles_mm.high)
    value, low, high = (belts.open_belt_length_mm(small_mm, large_mm, centre_mm) for centre_mm in ends)
    return Figure(value, low, high, run.axles_mm.grade)


def screw_drive(reader: Reader, axis: str) -> ScrewDrive:
    """Return what the chosen screw and nut make of a screw axis."""
    described = reader.design.axes[axis]
    if not isinstance(described, ScrewAxis):
        raise NotDescribedError((f"axes.{axis} (a screw drive)",))
    screw = _part(reader, described.screw, ThreadedRod, f"axes.{axis}.screw")
    nut = None if described.nut is None else reader.part(described.nut)
    found = thread(screw.thread)
    turn = reader.derive(full_steps, axis)
    return ScrewDrive(
        axis=axis,
        thread=found,
        lead_mm=found.lead_mm,
        full_steps=turn,
        microsteps=described.microsteps,
        steps_per_mm=turn * described.microsteps / found.lead_mm,
        full_step_mm=found.lead_mm / turn,
        microstep_mm=found.lead_mm / turn / described.microsteps,
        screws=described.screws,
        free_mm=None if described.free is None else reader.derive(size, described.free),
        friction=_friction(described, screw, nut, found),
        nut_thread=nut.thread if isinstance(nut, DriveNut) else None,
        backlash_mm=nut.backlash_mm if isinstance(nut, DriveNut) else None,
        bow_300_mm=screw.bow_300_mm or screw_bow(found),
        lead_error_300_mm=screw.lead_error_300_mm or screw_lead_error(found),
        float_mm=(nut.float_mm if isinstance(nut, DriveNut) else None) or ZERO,
    )


def guide_friction(reader: Reader, axis: str) -> GuideFriction:
    """Return the friction of an axis's guide, from its bushings where they say it, else from their class."""
    described = reader.design.axes[axis]
    guide, typed_n = described.guide, described.friction_n
    bushing = None if guide is None else reader.part(guide.bearings)
    if guide is None or not isinstance(bushing, Bushing):
        if typed_n is None:
            raise NotDescribedError((f"axes.{axis}.guide" + ("" if guide is None else ".bearings (a bushing)"),))
        return GuideFriction(ZERO, ZERO, typed_n)
    ratio = bushing.friction_ratio if bushing.friction_ratio is not None else bushing_friction(bushing.lining)
    drag_n = bushing.drag_n if bushing.drag_n is not None else bushing_drag(bushing.lining)
    return GuideFriction(ratio, Figure.exact(reader.pieces(guide.bearings)) * drag_n, typed_n)


def _friction(axis: ScrewAxis, screw: ThreadedRod, nut: Part | None, found: Thread) -> Figure:
    """Of screw on nut: the axis's, the nut's, the screw's, else the usual range."""
    of_nut = nut.friction_ratio if isinstance(nut, DriveNut) else None
    given = [figure for figure in (axis.screw_friction_ratio, of_nut, screw.friction_ratio) if figure is not None]
    return given[0] if given else screw_friction(found)


def _axles_of(length_mm: float, radius_mm: float, idler_mm: float) -> float | None:
    small_mm, large_mm = sorted((2 * radius_mm, 2 * idler_mm))
    goes_round = length_mm > pi * large_mm and length_mm > belts.open_belt_length_mm(
        small_mm, large_mm, (large_mm - small_mm) / 2 + 1e-6
    )
    return belts.centre_from_length_mm(small_mm, large_mm, length_mm) if goes_round else None


def _teeth_in_mesh(teeth: int, radius_mm: float, idler_mm: float, axles_mm: float) -> float | None:
    small_mm, large_mm = sorted((2 * radius_mm, 2 * idler_mm))
    if axles_mm <= (large_mm - small_mm) / 2:
        return None
    wrap_rad = belts.wrap_angle_rad(small_mm, large_mm, axles_mm)
    return belts.teeth_in_mesh_ratio(teeth, wrap_rad if radius_mm <= idler_mm else 2 * pi - wrap_rad)


def _belt_axis(reader: Reader, axis: str) -> BeltAxis:
    described = reader.design.axes[axis]
    if not isinstance(described, BeltAxis):
        raise NotDescribedError((f"axes.{axis} (a belt drive)",))
    return described


def _part(reader: Reader, place: str, kind: type[P], fact: str) -> P:
    """The part in a place, of the kind that the drive needs there."""
    part = reader.part(place)
    if not isinstance(part, kind):
        raise NotDescribedError((f"{fact} (a {kind.model_fields['kind'].default} in {place})",))
    return part
