"""How a screw of a given length sits in its joint, and what the joint asks of it."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO
from scantling.build.stacks import Holding, holding, stack
from scantling.errors import BrokenPromiseError
from scantling.model.joint import Joint
from scantling.model.kinds import Screw
from scantling.quantities import Figure
from scantling.tables.check_limits import check_number
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.screws import screw_head
from scantling.tables.threads import Thread, thread

# Pitches that a screw sticks out of a nut at least. Source: common practice, seen in a published fastener guide.
LEAST_PROTRUSION_PITCHES = check_number("pitches behind a nut")
# Longest step between standard lengths up to 70 mm: one that sticks out further can be replaced by the next shorter.
STEP_MM = {False: check_number("step of metric lengths"), True: check_number("step of inch lengths")}
# Engaged length in diameters. Source: electronics workmanship manual (hard metal 1 d); workshop practice for the rest.
LEAST_ENGAGEMENT_DIAMETERS = {
    one: check_number(f"engagement in {one}") for one in ("metal", "insert", "plastic", "panel", "panel edge")
}
# Room kept at the bottom of a blind hole. Source: workshop practice.
LEAST_BOTTOM_MM = check_number("room at the bottom")
ROUNDING_MM = 1e-6


@dataclass(frozen=True)
class ScrewWants:
    """What a joint asks of its screw, in mm; None where it does not matter."""

    least_engagement_mm: float
    least_protrusion_mm: float | None
    most_protrusion_mm: float | None
    least_bottom_mm: float | None


@dataclass(frozen=True)
class ScrewFit:
    """A screw in its joint, in mm.

    grip_mm : between head and holding thread    holding_mm : height of the nuts, or threaded depth
    engagement_mm : thread that holds    protrusion_mm : what sticks out behind, negative where it does not come out
    bottom_mm : room left in a blind hole    shank_mm : without thread under the head
    """

    joint: str
    screw: str
    length_mm: float
    grip_mm: Figure
    holding_mm: Figure
    engagement_mm: Figure
    protrusion_mm: Figure
    bottom_mm: Figure | None
    shank_mm: Figure
    wants: ScrewWants

    @property
    def is_admissible(self) -> bool:
        """True where the nominal sizes give the joint what it asks for."""
        wants, slack = self.wants, -ROUNDING_MM
        room = [self.engagement_mm.value - wants.least_engagement_mm, self.grip_mm.value - self.shank_mm.value]
        if wants.least_protrusion_mm is not None:
            room.append(self.protrusion_mm.value - wants.least_protrusion_mm)
        if wants.most_protrusion_mm is not None:
            room.append(wants.most_protrusion_mm - self.protrusion_mm.value)
        if wants.least_bottom_mm is not None and self.bottom_mm is not None:
            room.append(self.bottom_mm.value - wants.least_bottom_mm)
        return all(one >= slack for one in room)


def screw_fit(reader: Reader, joint: str, screw: str) -> ScrewFit:
    """Return how a screw sits in a joint; ``screw`` is the name of a standard one or of a part."""
    part = reader.case.part(screw)
    if not isinstance(part, Screw):
        raise BrokenPromiseError(f"{screw} is not a screw")
    grip_mm, held = _described(reader, joint)
    past_mm = part.length_mm - grip_mm
    return ScrewFit(
        joint=joint,
        screw=screw,
        length_mm=part.length_mm.value,
        grip_mm=grip_mm,
        holding_mm=held.depth_mm,
        engagement_mm=_least(past_mm, held.depth_mm),
        protrusion_mm=past_mm - held.depth_mm,
        bottom_mm=held.depth_mm - past_mm if held.blind else None,
        shank_mm=shank(part),
        wants=wants(reader.design.joints[joint], held, thread(part.thread)),
    )


def wants(joint: Joint, held: Holding, found: Thread) -> ScrewWants:
    """Return what a joint asks of its screw."""
    pitch_mm = float(found.pitch_mm)
    free_mm = joint.free_end_mm.value if joint.free_end_mm is not None else None
    usual_mm = pitch_mm * LEAST_PROTRUSION_PITCHES + STEP_MM[found.is_inch]
    if held.material == "nut":
        least_mm = pitch_mm * LEAST_PROTRUSION_PITCHES
        return ScrewWants(held.depth_mm.value, least_mm, usual_mm if free_mm is None else free_mm, None)
    engaged_mm = LEAST_ENGAGEMENT_DIAMETERS[held.material] * found.major_mm
    if held.material == "insert":
        engaged_mm = min(engaged_mm, held.depth_mm.value)
    if held.blind:
        return ScrewWants(engaged_mm, None, None, LEAST_BOTTOM_MM)
    return ScrewWants(engaged_mm, None, usual_mm if free_mm is None else free_mm, None)


def ideal_length(reader: Reader, joint: str) -> float:
    """Return the length in mm that a joint would like best: the middle of what it admits, but no useless end."""
    grip_mm, held = _described(reader, joint)
    found = thread(head_and_thread(reader.design.joints[joint].screw)[1])
    asked = wants(reader.design.joints[joint], held, found)
    if asked.least_protrusion_mm is not None:
        return grip_mm.value + held.depth_mm.value + 1.5 * asked.least_protrusion_mm
    if asked.least_bottom_mm is not None:
        deepest_mm = held.depth_mm.value - asked.least_bottom_mm
        return grip_mm.value + (asked.least_engagement_mm + max(deepest_mm, asked.least_engagement_mm)) / 2
    return grip_mm.value + max(held.depth_mm.value, asked.least_engagement_mm)


def shank(screw: Screw) -> Figure:
    """Return how much under the head has no thread, largest allowed; 0 where the screw is threaded all the way.

    Source: the rule of ISO 4762 that screws whose plain shank would be shorter than about half a diameter are threaded
    to the head (from memory).
    """
    long_mm = screw_head(screw.head, screw.thread).thread_length_mm
    if long_mm is None:
        return ZERO
    found = thread(screw.thread)
    most_mm = screw.length_mm.value - long_mm
    least_mm = most_mm - 5 * float(found.pitch_mm)
    return Figure(most_mm, least_mm, most_mm) if least_mm > 0.5 * found.major_mm else ZERO


def _described(reader: Reader, joint: str) -> tuple[Figure, Holding]:
    """Grip and holding; one error with all that is missing of both."""
    needs: list[str] = []
    grip_mm: Figure | None = None
    held: Holding | None = None
    try:
        grip_mm = reader.derive(stack, joint).grip_mm
    except NotDescribedError as error:
        needs += error.needs
    try:
        held = reader.derive(holding, joint)
    except NotDescribedError as error:
        needs += error.needs
    if grip_mm is None or held is None:
        raise NotDescribedError(tuple(needs))
    return grip_mm, held


def _least(past_mm: Figure, depth_mm: Figure) -> Figure:
    """The part of the screw past the stack that is in the thread, never negative."""
    value, low, high = (
        max(0.0, min(a, b))
        for a, b in zip(
            (past_mm.value, past_mm.low, past_mm.high), (depth_mm.value, depth_mm.low, depth_mm.high), strict=True
        )
    )
    return Figure(value, low, high, past_mm.grade)
