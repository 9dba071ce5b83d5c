"""A pulley with fewer teeth than the belt's profile asks for bends the belt too sharply: its cords tire."""

from __future__ import annotations

from scantling.build.drives import belt_gear
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, ident
from scantling.errors import LookUpError
from scantling.findings import Finding
from scantling.tables.belt_profiles import belt_profile
from scantling.tables.sources import cite


def _run(reader: Reader, subject: str) -> Finding:
    drive = reader.derive(belt_gear, ident(subject))
    try:
        profile = belt_profile(drive.profile)
    except LookUpError as error:
        raise NotDescribedError((f"profile {drive.profile} ({error.mend})",)) from None
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda teeth: teeth,
        inputs={"teeth": known("teeth of the pulley", float(drive.teeth))},
        bounds=at_least(float(profile.least_teeth)),
        unit="teeth",
        because=f"The belt of profile {drive.profile} runs on {{value}}; {{limit}}, or its cords tire.",
        mend="a pulley with more teeth",
    )


CHECK = check_of(
    _run,
    code="BELT-04",
    title="Smallest pulley for the belt",
    source=cite("belts"),
    subjects=belt_axes,
)
