"""What a screw axis loses when it is turned back: the play of its nut, unless a weight keeps the nut on one flank.

The play of a nut is lost where the load may lie on either flank. On a vertical axis the weight that hangs on it keeps
it on one, up and down, as long as it is larger than the drag of the guide and the process force: nothing is lost.
"""

from __future__ import annotations

from collections.abc import Mapping

from scantling.build.drives import ScrewDrive, screw_drive
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import load_inputs
from scantling.checks.check import TotalUse
from scantling.checks.inputs import Input, known, or_range
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding
from scantling.formulas.dynamics import weight_n
from scantling.model.axis import ScrewAxis
from scantling.tables.motion_limits import motion_limit
from scantling.tables.sources import cite

POSSIBLE_MM = (0.0, 0.5)  # of a nut of which nothing is said


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    drive = reader.derive(screw_drive, name)
    if axis.vertical:
        inputs = {key: load_inputs(reader, axis, subject)[key] for key in ("mass", "drag", "process")}
        because = (
            "{mass} hangs on the nut; {drag} of drag and {process} of process force hold against it: the flanks are "
            "pressed with {pressing}, so of {play} of play {value} is lost when it is turned back; {limit}."
        )
    else:
        inputs, because = {}, "The play of the nut, {play}, is lost when the axis is turned back: {value}; {limit}."
    own = axis.needs.lost_motion_mm
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda play, **f: 0.0 if pressing_n(axis, f) > 0 else play,
        inputs={"play": _play(axis, drive), **inputs},
        bounds=at_most(motion_limit("lost motion").amount if own is None else own.value),
        unit="mm",
        because=because,
        mend="a nut with a spring or of two halves against each other, or more weight on it",
        also={"pressing": (lambda **f: pressing_n(axis, f), "N")},
    )


def pressing_n(axis: ScrewAxis, figures: Mapping[str, float]) -> float:
    """Return what keeps the nut on one flank whichever way it is turned; 0 or less where nothing does."""
    if not axis.vertical:
        return 0.0
    return weight_n(figures["mass"]) - figures["drag"] - figures["process"]


def _play(axis: ScrewAxis, drive: ScrewDrive) -> Input:
    if axis.vertical:
        return or_range("play of the nut", drive.backlash_mm, *POSSIBLE_MM, "mm")
    return known("play of the nut", need(drive.backlash_mm, f"parts.{axis.nut or 'the nut'}.backlash"), "mm")


CHECK = check_of(
    _run,
    code="SCREW-10",
    title="Backlash of a screw axis",
    source=f"statics: the flank that carries changes where the force does; limit: {cite('motion-practice')}",
    subjects=screw_axes,
    total=TotalUse("moving-mass", "less"),
)
