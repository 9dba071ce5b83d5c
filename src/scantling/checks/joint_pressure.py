"""A head, washer or nut presses into wood and plastic: the pressure below it against what the material bears.

A joint that does not say its torque is tightened by feel. A large washer has about twice the area of a plain one and
four times that of a bare head.
"""

from __future__ import annotations

from scantling.build.clamped import Pressed, pressed
from scantling.build.clamping import joint_thread
from scantling.build.reader import Catalogue, Reader
from scantling.build.stacks import joint_count
from scantling.checks.judging import judge, say, worst_of
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.checks.tightening import banded, clamp_of, tightening_inputs
from scantling.findings import Finding, Verdict
from scantling.formulas.clamping import pressure_mpa


def _run(reader: Reader, subject: str) -> Finding:
    joint = ident(subject)
    if reader.derive(joint_count, joint) == 0:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this joint holds is not there: it falls away.")
    faces = reader.derive(pressed, joint)
    if not faces:
        return say(CHECK, reader, subject, Verdict.SOUND, "Metal lies under head and nut and bears the screw.")
    if not reader.words:  # while tables are grown the same faces come again and again
        return worst_of([reader.case.once(_bare, subject, face) for face in _unlike(faces)])
    return worst_of([_one(reader, subject, face) for face in _unlike(faces)])


def _bare(case: Catalogue, subject: str, face: Pressed) -> Finding:
    return _one(Reader(case, {}, words=False), subject, face)


def _unlike(faces: tuple[Pressed, ...]) -> tuple[Pressed, ...]:
    """One of each two faces that bear alike under things equally wide."""
    return tuple({(face.limit.material, face.outer_mm): face for face in faces[::-1]}.values())


def _one(reader: Reader, subject: str, face: Pressed) -> Finding:
    described = reader.design.joints[ident(subject)]
    found = joint_thread(described)
    bears = f"pressure that {face.limit.material} bears"
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **figures: pressure_mpa(clamp_of(found, figures), face.outer_mm, face.hole_mm),
        inputs={**tightening_inputs(described), "bears": banded(bears, face.limit.pressure_mpa, "MPa")},
        bounds=at_most(lambda bears, **_: bears),
        unit="MPa",
        because=f"At {{torque}} {face.by} presses on the {face.limit.material} of {face.place} with {{value}}; "
        "{limit} before it sinks in.",
        mend="a larger washer below it, or a smaller torque that the joint says (tighten)",
    )


CHECK = check_of(
    _run,
    code="JOINT-05",
    title="Pressure under head, washer and nut",
    source="EN 1995-1-1 8.5.2: three times the strength across the grain under a washer; wood-based panel and plastic: "
    "class values; torque by feel: common practice, no source",
    subjects=all_of("joint", lambda design: design.joints),
)
