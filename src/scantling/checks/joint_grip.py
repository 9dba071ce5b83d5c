"""A joint that is pulled or pushed sideways: is the clamp load enough, once wood and plastic have crept?

Asked where the joint says the force on each of its screws. What lies under head and nut, and the screw, set how tight
it may be drawn; wood and plastic lose a part of that in the first weeks.
"""

from __future__ import annotations

from scantling.build.clamped import pressed
from scantling.build.clamping import joint_thread, tightening
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.stacks import joint_count
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.checks.tightening import banded, clamp_of, friction_input
from scantling.findings import Finding, Verdict
from scantling.formulas.clamping import grip_needed_n
from scantling.model.design import Design
from scantling.quantities import Figure
from scantling.tables.clamp_limits import clamp_band

NOTHING = Figure.exact(0.0)


def _run(reader: Reader, subject: str) -> Finding:
    joint = ident(subject)
    if reader.derive(joint_count, joint) == 0:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this joint holds is not there: it falls away.")
    described = reader.design.joints[joint]
    found, most = joint_thread(described), reader.derive(tightening, joint)
    torque = described.tighten_nmm if described.tighten_nmm is not None else Figure.exact(most.torque_nmm)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda stays, **figures: stays * clamp_of(found, figures),
        inputs={
            "torque": known("tightening torque", torque, "N·mm"),
            "friction": friction_input(),
            "stays": _stays(reader, joint),
            "pull": known("pull on each screw", described.pull_n or NOTHING, "N"),
            "slide": known("sideways force on each screw", described.slide_n or NOTHING, "N"),
            "faces": banded("friction between the faces", clamp_band("friction of clamped faces")),
        },
        bounds=at_least(lambda pull, slide, faces, **_: grip_needed_n(pull, slide, faces)),
        unit="N",
        because="At {torque} it still clamps with {value} when it has settled; {limit} for a pull of {pull} and a "
        f"sideways force of {{slide}} on each screw. The tightening is set by {most.weakest}.",
        mend="more screws, larger washers and more torque, or a pin that takes the sideways force",
    )


def _stays(reader: Reader, joint: str) -> Input:
    """The share of the clamp load that stays: less where something soft is clamped."""
    try:
        soft = bool(reader.derive(pressed, joint)) or reader.design.joints[joint].into.holds not in ("metal", "insert")
    except NotDescribedError:
        soft = True
    stays = clamp_band(f"clamp load that stays in {'wood and plastic' if soft else 'metal'}")
    return banded("share of the clamp load that stays", stays)


def _subjects(design: Design) -> tuple[str, ...]:
    joints = design.joints.items()
    return named("joint", (n for n, j in joints if j.pull_n is not None or j.slide_n is not None))


CHECK = check_of(
    _run,
    code="JOINT-08",
    title="Load on a joint",
    source="clamp load as JOINT-04; Coulomb friction between the faces; share that stays and friction: from memory",
    subjects=_subjects,
)
