"""Teeth of the motor's pulley that the belt lies on: with fewer than six they wear and jump under load."""

from __future__ import annotations

from math import floor

from scantling.build.drives import belt_run
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, ident
from scantling.findings import Finding
from scantling.tables.check_limits import check_number

LEAST_TEETH = check_number("teeth in mesh")


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    drive = reader.derive(belt_run, name)
    mesh = need(drive.teeth_in_mesh, f"axes.{name}.axles")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda mesh: float(floor(mesh + 1e-9)),
        inputs={"mesh": known("teeth that the belt lies on", mesh)},
        bounds=at_least(LEAST_TEETH),
        unit="teeth",
        because=f"The belt lies on {{mesh}} of the {drive.teeth} teeth of the motor's pulley, whole ones: {{value}}; "
        "{limit}.",
        mend="an idler no larger than the pulley, axles further apart, or more teeth",
    )


CHECK = check_of(
    _run,
    code="BELT-02",
    title="Teeth in mesh",
    source="belt makers' rule of six teeth; angle of wrap from geometry",
    subjects=belt_axes,
)
