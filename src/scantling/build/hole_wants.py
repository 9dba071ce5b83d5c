"""What a hole is for, and so what diameter it wants and where its parts lie: patterns follow the chosen parts."""

from __future__ import annotations

from dataclasses import dataclass, replace

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.build.stacks import joint_count
from scantling.errors import LookUpError
from scantling.model.kinds import Motor, Rod
from scantling.model.sheet import Hole
from scantling.tables import holes
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.motor_faces import motor_face
from scantling.tables.threads import thread

PILOT_CLEARANCE_MM = 0.5  # round a motor's centring collar, in a hole sawn or drilled by hand; workshop practice
DEFAULT_FIT = "clearance medium"
FITS = {"fine": "close", "close": "close", "medium": "medium", "coarse": "coarse"}


@dataclass(frozen=True)
class Want:
    """One round hole of a purpose: its place in the pattern, before the turn, and its diameter.

    least_mm, most_mm : what a bit may make of it    why : in words    screw : thread that passes or is held
    """

    x_mm: float
    y_mm: float
    diameter_mm: float
    least_mm: float
    most_mm: float | None
    why: str
    purpose: str


def hole_wants(reader: Reader, sheet: str, hole: Hole) -> tuple[Want, ...]:
    """Return the holes that an entry asks for at each of its points; none where what it is for is not there."""
    if not hole.what:
        return _typed(hole)
    if hole.what.startswith("joint:"):
        return _for_joint(reader, sheet, hole, hole.what.removeprefix("joint:").strip())
    place, _, wanted = hole.what.partition(".")
    if place not in reader.design.places:
        raise NotDescribedError((f"sheets.{sheet}.holes (a place or joint instead of {hole.what!r})",))
    part = reader.part(place)
    if part is None:
        return ()
    if wanted == "face":
        if not isinstance(part, Motor):
            raise NotDescribedError((f"places.{place} (a motor, for {hole.what})",))
        return _face(part, hole)
    name = (
        "diameter" if wanted == "seat" and isinstance(part, Rod) else "outer-diameter" if wanted == "seat" else wanted
    )
    return _seat(reader, place, name, hole)


def _typed(hole: Hole) -> tuple[Want, ...]:
    figure = hole.diameter_mm
    if figure is None:
        raise NotDescribedError(("a hole's purpose or diameter",))
    most_mm = figure.high if figure.high > figure.value else None
    return (Want(0.0, 0.0, figure.value, figure.low, most_mm, hole.note or "as drawn", "typed"),)


def _seat(reader: Reader, place: str, name: str, hole: Hole) -> tuple[Want, ...]:
    """A round seat: as wide as the thing that goes in, never narrower."""
    figure = hole.diameter_mm if hole.diameter_mm is not None else reader.derive(feature, place, name)
    why = f"seat of {place}"
    return (Want(0.0, 0.0, figure.value, max(figure.value, figure.high), None, why, "seat"),)


def _face(part: Motor, hole: Hole) -> tuple[Want, ...]:
    """Four screws in a square and the collar in its middle."""
    face = motor_face(part.frame_size)
    half_mm = face.square_mm / 2
    screw = _clearance(face.thread, hole.fit, f"motor screw, frame {part.frame_size}")
    corners = ((-1, -1), (1, -1), (1, 1), (-1, 1))
    square = tuple(replace(screw, x_mm=a * half_mm, y_mm=b * half_mm) for a, b in corners)
    collar_mm = face.pilot_mm + PILOT_CLEARANCE_MM
    why = f"collar {face.pilot_mm:g} mm, frame {part.frame_size}"
    return (*square, Want(0.0, 0.0, collar_mm, face.pilot_mm, None, why, "collar"))


def _for_joint(reader: Reader, sheet: str, hole: Hole, joint: str) -> tuple[Want, ...]:
    described = reader.design.joints.get(joint)
    if described is None:
        raise NotDescribedError((f"joints.{joint}",))
    if not reader.derive(joint_count, joint):
        return ()
    name = head_and_thread(described.screw)[1]
    fit = hole.fit
    if described.into.place == sheet and fit == DEFAULT_FIT:  # here the screw is held, not passed
        fit = {"metal": "tapping", "insert": "insert"}.get(described.into.holds, "pilot")
    if hole.diameter_mm is not None:
        return _typed(hole)
    why = f"{name} of joint {joint}"
    return (_clearance(name, fit, why) if fit.startswith("clearance") else _holding(name, fit, why),)


def _clearance(name: str, fit: str, why: str) -> Want:
    word = fit.removeprefix("clearance").strip() or "medium"
    try:
        wanted_mm = holes.clearance_hole(name, FITS.get(word, word)).diameter_mm
        least_mm = holes.clearance_hole(name, "close").diameter_mm
    except LookUpError as error:
        raise NotDescribedError((f"a hole for {why} ({error})",)) from None
    return Want(0.0, 0.0, wanted_mm, least_mm, None, f"{why}, {word} clearance", "clearance")


def _holding(name: str, fit: str, why: str) -> Want:
    """A hole that holds a thread: to be tapped, for an insert, or for a screw that cuts its own."""
    found = thread(name)
    if fit == "insert" or fit == "seat":
        try:
            hole = holes.insert_hole(name)
        except LookUpError as error:
            raise NotDescribedError((f"a hole for {why} ({error})",)) from None
        return Want(0.0, 0.0, hole.diameter_mm, hole.diameter_mm, hole.diameter_mm + 0.1, f"{why}, insert", "insert")
    if fit == "tapping":
        # 100 % to 60 % of the thread's height: tighter breaks taps, wider holds little (workshop practice)
        most_mm = found.major_mm - 0.6 * (found.major_mm - found.nut_minor_diameter_mm)
        try:
            wanted_mm = holes.tapping_drill(name).diameter_mm
        except LookUpError:
            wanted_mm = found.major_mm - float(found.pitch_mm)
        least_mm = min(found.nut_minor_diameter_mm, wanted_mm)
        return Want(0.0, 0.0, wanted_mm, least_mm, max(most_mm, wanted_mm), f"{why}, to be tapped", "tapping")
    if fit == "pilot":
        low_mm, high_mm = (r * found.major_mm for r in (holes.PANEL_PILOT_LOW_RATIO, holes.PANEL_PILOT_HIGH_RATIO))
        return Want(0.0, 0.0, (low_mm + high_mm) / 2, low_mm - 0.1, high_mm + 0.1, f"{why}, pilot", "pilot")
    raise NotDescribedError((f"a fit that is known instead of {fit!r} (clearance medium, tapping, pilot, seat)",))
