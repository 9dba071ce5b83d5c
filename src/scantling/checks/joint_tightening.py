"""How tight a joint may be drawn: clamp load and torque by size, class and friction; the weakest member governs.

Wood and plastic under the head, or the thread in them, mostly give way long before the screw does.
"""

from __future__ import annotations

from scantling.build.clamping import Tightening, joint_thread, tightening
from scantling.build.reader import Reader
from scantling.build.stacks import joint_count
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.checks.tightening import clamp_of, friction_input
from scantling.findings import Finding, Verdict
from scantling.model.joint import Joint


def _run(reader: Reader, subject: str) -> Finding:
    joint = ident(subject)
    if reader.derive(joint_count, joint) == 0:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this joint holds is not there: it falls away.")
    most: Tightening = reader.derive(tightening, joint)
    described = reader.design.joints[joint]
    found = joint_thread(described)
    wanted = known("torque", described.tighten_nmm or round(most.torque_nmm), "N·mm")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **figures: clamp_of(found, figures),
        inputs={"torque": wanted, "friction": friction_input()},
        bounds=INFORMATION,
        unit="N",
        because=_words(described, most),
        also={"most": (lambda **_: most.torque_nmm, "N·mm"), "screw": (lambda **_: most.screw_nmm, "N·mm")},
    )


def _words(described: Joint, most: Tightening) -> str:
    screw = "" if most.is_screw else f"; the screw alone ({most.grade}) would take {{screw}}"
    if described.tighten_nmm is None:
        return f"Draw it no tighter than {{torque}}, which clamps with {{value}}: {most.weakest} bears no more{screw}."
    bears = f"What bears least, {most.weakest}, takes {{most}}{screw}."
    return f"The joint says {{torque}}, which clamps with {{value}}. {bears}"


CHECK = check_of(
    _run,
    code="JOINT-04",
    title="Tightening of a joint",
    source="machine design textbook, T = K F d (eq. 8-26, 8-27), 0.75 of the proof load where it is undone (8-31); "
    "ISO 898-1, ISO 3506-1, SAE J429; wood and plastic as JOINT-05 and JOINT-06",
    subjects=all_of("joint", lambda design: design.joints),
    informs=True,
)
