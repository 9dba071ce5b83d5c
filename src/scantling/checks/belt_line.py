"""How far the belt's line moves against the reference pulley, and how the two runs close on the idler: for information.

Another number of teeth moves the line of the belt towards or away from the axle; its clamps must follow, or it runs
askew.
"""

from __future__ import annotations

from scantling.build.drives import belt_run
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.formulas.belts import pitch_diameter_mm
from scantling.model.kinds import Pulley


def _run(reader: Reader, subject: str) -> Finding:
    axis, drive = belt_axis(reader, subject), reader.derive(belt_run, ident(subject))
    reference = reader.design.parts.get(reader.design.places[axis.pulley].reference.part)
    teeth = reference.teeth if isinstance(reference, Pulley) else drive.teeth
    drawn_mm = pitch_diameter_mm(teeth, float(drive.pitch_mm)) / 2
    apart_mm = drive.radius_mm - drive.idler_radius_mm
    nearer = "nearer to" if drive.radius_mm <= drawn_mm else "further from"
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda radius, drawn: abs(drawn - radius),
        inputs={
            "radius": known("radius of the belt's line", drive.radius_mm, "mm"),
            "drawn": known("radius that was drawn", drawn_mm, "mm"),
        },
        bounds=INFORMATION,
        unit="mm",
        because=f"With {drive.teeth} teeth the belt runs {{value}} {nearer} the axle than with the {teeth} that were "
        f"drawn; radius at the pulley less that at the idler: {apart_mm:.2f} mm. Set clamps and idler by it.",
    )


CHECK = check_of(
    _run,
    code="BELT-06",
    title="Line of the belt",
    source="geometry: half the difference of the pitch diameters",
    subjects=belt_axes,
    informs=True,
)
