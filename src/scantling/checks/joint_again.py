"""A screw driven straight into panel stands about three tightenings, and none where it must be loosened to align.

Plastic stands a few more, a lock nut five and over. An insert, a tapped hole and a plain nut are not worn by it.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.build.stacks import joint_count
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.checks.tightening import banded
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.model.joint import Joint
from scantling.tables.clamp_limits import tightenings

NOT_TO_ALIGN = ("panel", "panel edge")
ALIGNED_TIMES = 3  # done up loosely, after aligning, and once more after the first run: common practice, no source


def _run(reader: Reader, subject: str) -> Finding:
    described = reader.design.joints[ident(subject)]
    if reader.derive(joint_count, ident(subject)) == 0:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this joint holds is not there: it falls away.")
    holds = worn_by(described)
    if holds in NOT_TO_ALIGN and described.aligns:
        because = f"It is loosened to align what it holds, which a screw driven straight into a {holds} does not bear."
        return say(CHECK, reader, subject, Verdict.UNSOUND, because, MEND)
    times = described.tightened or (ALIGNED_TIMES if described.aligns else 1)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda times, **_: times,
        inputs={
            "times": known("times that it is done up", float(times)),
            "stands": banded(f"tightenings that a {holds} stands", tightenings(holds).count),
        },
        bounds=at_most(lambda stands, **_: stands),
        unit="",
        because=f"Done up {{value}} times; in a {holds} {{limit}}.",
        mend=MEND,
    )


MEND = "a nut behind a washer, or an insert"


def worn_by(described: Joint) -> str:
    """Return what wears where a joint is done up again: ``panel``, ``plastic``, ``lock nut``; "" where nothing does."""
    if described.into.nut is not None:
        return "lock nut" if "lock" in (described.into.nut, described.locking.partition(" ")[0]) else ""
    return described.into.holds if described.into.holds in ("panel", "panel edge", "plastic") else ""


def _subjects(design: Design) -> tuple[str, ...]:
    """Joints whose thread wears; a lock nut only where it is said to be done up more than once."""
    joints = design.joints.items()
    again = (n for n, j in joints if worn_by(j) and (worn_by(j) != "lock nut" or j.aligns or j.tightened))
    return named("joint", again)


CHECK = check_of(
    _run,
    code="JOINT-07",
    title="Done up again",
    source="three times in panel, some more in plastic: common practice, no source; lock nuts: ISO 2320, fifth removal",
    subjects=_subjects,
)
