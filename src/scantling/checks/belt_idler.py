"""An idler must not bend the belt more sharply than its cords stand: toothed, smooth on the teeth, on the back."""

from __future__ import annotations

from scantling.build.belt_runs import belt_of, profile_of
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import EmptyPlaceError, check_of
from scantling.checks.subjects import belt_axis, ident, named
from scantling.findings import Finding
from scantling.formulas.belts import pitch_diameter_mm
from scantling.model.axis import BeltAxis
from scantling.model.design import Design
from scantling.model.kinds import BallBearing, Pulley
from scantling.model.part import Part
from scantling.tables.motion_limits import motion_limit
from scantling.tables.motors import least_idler_mm


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = belt_axis(reader, subject), ident(subject)
    place = need(axis.idler, f"axes.{name}.idler")
    idler, profile = reader.part(place), profile_of(belt_of(reader, name))
    if idler is None:
        raise EmptyPlaceError(place)
    pitch_mm, on_back = float(profile.pitch_mm), axis.idler_side == "back"
    smallest_mm = pitch_diameter_mm(profile.least_teeth, pitch_mm)
    wide_mm, is_toothed = _width_mm(idler, pitch_mm, name)
    if is_toothed and not on_back:
        least_mm, kind = smallest_mm, "with teeth"
    else:
        kind = "on the back of the belt" if on_back else "smooth under the teeth"
        by_rule_mm = (
            motion_limit("back idler").amount * smallest_mm
            if on_back
            else pitch_diameter_mm(round(motion_limit("inside idler").amount), pitch_mm)
        )
        least_mm = least_idler_mm(profile.profile, on_back) or by_rule_mm
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda wide, **_: wide,
        inputs={"wide": known(f"diameter of {place}", wide_mm, "mm"), "least": known("least idler", least_mm, "mm")},
        bounds=at_least(lambda least, **_: least),
        unit="mm",
        because=f"The idler {kind} bends the belt of profile {profile.profile} round {{value}}; {{limit}}.",
        mend="a toothed idler, or a larger one",
    )


def _width_mm(idler: Part, pitch_mm: float, axis: str) -> tuple[float, bool]:
    """Diameter round which the belt is bent, and whether the idler has teeth."""
    if isinstance(idler, Pulley):
        return pitch_diameter_mm(idler.teeth, pitch_mm), True
    if isinstance(idler, BallBearing):
        return idler.outer_diameter_mm.value, False
    raise NotDescribedError((f"axes.{axis}.idler (a pulley or a ball bearing; {idler.id} is none)",))


def _with_idler(design: Design) -> tuple[str, ...]:
    axes = design.axes.items()
    return named("axis", (name for name, axis in axes if isinstance(axis, BeltAxis) and axis.idler is not None))


CHECK = check_of(
    _run,
    code="BELT-11",
    title="Idler large enough",
    source="design guide of a belt maker; table of least idlers of another; round teeth on the back: from memory",
    subjects=_with_idler,
)
