"""A joint that shakes needs something that keeps it from turning loose, and thread-locking fluid must not touch plastic
that it cracks.

A lock nut, two nuts or thread-locking fluid hold alike. The fluid cracks ABS, ASA, polycarbonate and acrylic within
minutes to weeks.
"""

from __future__ import annotations

from collections.abc import Iterator

from scantling.build.gets import plastic_of
from scantling.build.reader import Reader
from scantling.build.stacks import named_places
from scantling.checks.judging import say
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.model.joint import Joint
from scantling.model.kinds import Printed

CUT_BY_SCREW = ("plastic", "panel", "panel edge")
CRACKED = ("abs", "asa", "pc", "polycarbonate", "acrylic")


def _run(reader: Reader, subject: str) -> Finding:
    joint = reader.design.joints[ident(subject)]
    if joint.locking == "threadlocker":
        touched = [f"{place} of {plastic}" for place, plastic in _plastics(reader, joint) if plastic.lower() in CRACKED]
        if touched:
            because = f"Thread-locking fluid cracks what it touches here: {', '.join(touched)}."
            return say(CHECK, reader, subject, Verdict.UNSOUND, because, "lock it with a lock nut or two nuts")
        return say(CHECK, reader, subject, Verdict.SOUND, "Locked with fluid, and nothing here is cracked by it.")
    if _is_locked(joint):
        return say(CHECK, reader, subject, Verdict.SOUND, "It shakes, and is locked.")
    because = "It shakes, and nothing keeps it from turning loose."
    return say(CHECK, reader, subject, Verdict.MARGINAL, because, "a lock nut, two nuts, or fluid in metal")


def _is_locked(joint: Joint) -> bool:
    """True for every way of locking, and for a thread that the screw cut itself, which rubs on it all round."""
    cuts_its_own = joint.into.nut is None and joint.into.holds in CUT_BY_SCREW
    return joint.locking != "none" or joint.into.nut == "lock" or cuts_its_own


def _plastics(reader: Reader, joint: Joint) -> Iterator[tuple[str, str]]:
    """Yield what each place of a joint is made of: the plastic it is printed in, else its part's material."""
    for place in named_places(joint):
        part = reader.part(place)
        printed = plastic_of(reader.get(place)) if isinstance(part, Printed) else None
        yield place, printed or (part.material if part is not None else None) or ""


def _subjects(design: Design) -> tuple[str, ...]:
    joints = design.joints.items()
    return named("joint", (name for name, joint in joints if joint.shakes or joint.locking == "threadlocker"))


CHECK = check_of(
    _run,
    code="JOINT-03",
    title="Locking of a joint",
    source="fluid near plastics: reports of the trade; common practice, no source",
    subjects=_subjects,
)
