"""A thread that wood-based panel, plastic or an insert holds: the pull that draws it out against the clamp load.

A screw driven straight into the face of a panel holds by the panel's density, in its edge by a quarter less; in plastic
by the strength in shear. A nut behind a washer holds several times as much. An insert set flush is not pulled by what
is drawn up against it, only by what pulls at the joint.
"""

from __future__ import annotations

from scantling.build.clamped import SOFT_HOLDS, Held, soft_thread
from scantling.build.clamping import joint_thread, scatter_of
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.stacks import joint_count
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.checks.tightening import banded, clamp_of, tightening_inputs
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.model.joint import Joint


def _run(reader: Reader, subject: str) -> Finding:
    joint = ident(subject)
    if reader.derive(joint_count, joint) == 0:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this joint holds is not there: it falls away.")
    described, one = reader.design.joints[joint], reader.derive(soft_thread, joint)
    found, material = joint_thread(described), one.limit.material
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda depth, scatter, dense=0.0, shear=0.0, **_: (
            scatter * one.pull_out_n(depth, dense, one.limit.pressure_mpa.typical, shear)
        ),
        inputs={**_pulling(described, one), **_holding(one)},
        bounds=at_least(lambda pull=0.0, **figures: pull if one.holds == "insert" else clamp_of(found, figures)),
        unit="N",
        because=f"{found.name} held by {_words(one.holds)} in {material} over {{depth}} is drawn out at {{value}}; "
        + ("{limit}, what pulls at the joint." if one.holds == "insert" else "{limit}, what {torque} pulls with."),
        mend="a nut behind a washer, a deeper thread, an insert, or a smaller torque that the joint says (tighten)",
    )


def _pulling(described: Joint, one: Held) -> dict[str, Input]:
    """The figures of what pulls at the thread."""
    if one.holds != "insert":
        return tightening_inputs(described)
    return {"pull": known("pull on each screw", need(described.pull_n, "a pull on the joint"), "N")}


def _holding(one: Held) -> dict[str, Input]:
    """The figures on which the pull-out hangs."""
    found = {
        "depth": known("depth of thread that holds", one.depth_mm, "mm"),
        "scatter": banded("scatter of single threads", scatter_of(one)),
    }
    if one.limit.shear_mpa is not None:
        found["shear"] = banded(f"strength of {one.limit.material} in shear", one.limit.shear_mpa, "MPa")
    if one.density_kg_m3 is not None:
        found["dense"] = known(f"density of {one.limit.material}", one.density_kg_m3, "kg/m³")
    return found


def _words(holds: str) -> str:
    return {"insert": "an insert", "panel edge": "the edge"}.get(holds, "its own thread")


def _subjects(design: Design) -> tuple[str, ...]:
    joints = design.joints.items()
    return named("joint", (name for name, joint in joints if _is_asked(joint)))


def _is_asked(joint: Joint) -> bool:
    """True for threads in panel and plastic, and for inserts where something is said to pull."""
    holds = joint.into.holds if joint.into.nut is None else "nut"
    return holds in SOFT_HOLDS and (holds != "insert" or joint.pull_n is not None)


CHECK = check_of(
    _run,
    code="JOINT-06",
    title="Thread in panel or plastic",
    source="Wood Handbook, ch. 8, withdrawal from particleboard (from memory; within published ranges of ISO 27528); "
    "plastic: a published design guide, π D L times the strength in shear; scatter from memory",
    subjects=_subjects,
)
