"""A joint's screw must be long enough to hold and short enough to fit, over the band of its stack and its own length.

Behind a nut at least one pitch sticks out, and no more than there is room; in a thread it engages as deep as the
material asks; in a blind hole it must not reach the bottom; a plain shank must not be longer than the stack. A screw
that fails already at nominal sizes is unsound: another length costs next to nothing.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from scantling.build.reader import Reader
from scantling.build.screw_fit import ScrewFit, screw_fit
from scantling.build.stacks import joint_count
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge, say
from scantling.checks.limits import Bounds
from scantling.checks.listening import hear
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.checks.trials import Rule, Trial, weigh, weight
from scantling.findings import Finding, Limit, Verdict

# Half the tolerance on the length of a screw up to a nominal length, mm (js15, above 50 mm js16; ISO 4759-1, memory).
LENGTH_TOLERANCE_MM = ((3.0, 0.2), (6.0, 0.24), (10.0, 0.29), (18.0, 0.35), (30.0, 0.42), (50.0, 0.5), (80.0, 0.95))
LONGEST_TOLERANCE_MM = 1.1


@dataclass(frozen=True)
class Demand:
    """One thing that a joint asks of its screw: a rule on length, grip and holding, with its words and its mending."""

    rule: Rule
    bounds: Bounds
    words: str
    mend: str


def _run(reader: Reader, subject: str) -> Finding:
    joint = ident(subject)
    if reader.derive(joint_count, joint) == 0:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this joint holds is not there: it falls away.")
    screw = reader.screw(joint)
    fit = reader.derive(screw_fit, joint, screw.id)
    inputs = {
        "length": length_input(fit.length_mm),
        "grip": known(f"thickness of the stack of {joint}", fit.grip_mm, "mm"),
        "holding": known(f"depth that holds in {joint}", fit.holding_mm, "mm"),
    }
    demanded = demands(fit)
    worst = pressing(demanded, inputs)
    for other in demanded:
        if other is not worst:
            hear(reader, CHECK.code, subject, Trial(other.rule, inputs, other.bounds), "mm")
    return judge(
        CHECK,
        reader,
        subject,
        rule=worst.rule,
        inputs=inputs,
        bounds=worst.bounds,
        unit="mm",
        because=f"{screw.id} through {{grip}}, held over {{holding}}: {worst.words}",
        mend=worst.mend,
    )


def pressing(demanded: Sequence[Demand], inputs: Mapping[str, Input]) -> Demand:
    """Return the demand that presses most: of those that fail at nominal the one missed most, else by their bands."""
    trials = [(demand, Trial(demand.rule, inputs, demand.bounds)) for demand in demanded]
    at_nominal = [(trial.point(), demand) for demand, trial in trials]
    failing = [(point.margin, demand) for point, demand in at_nominal if not point.is_inside]
    if failing:
        return min(failing, key=lambda pair: pair[0])[1]
    return min(trials, key=lambda pair: weight(weigh(pair[1])))[0]


def demands(fit: ScrewFit) -> list[Demand]:
    """Return all that the joint of ``fit`` asks of its screw."""
    wants, longer, shorter = fit.wants, "a longer screw", "a shorter screw, or a washer more"
    found = [
        Demand(
            lambda grip, shank=fit.shank_mm.high, **_: grip - shank,
            _least(0.0),
            "stack less plain shank: {value}; {limit}.",
            "take a screw that is threaded to its head, or a thicker stack",
        )
    ]
    if wants.least_protrusion_mm is None:
        words = "thread that engages: {value}; {limit}."
        found.append(Demand(_engaged, _least(wants.least_engagement_mm), words, longer))
    else:
        words = "sticks out behind: {value}; {limit}, a pitch."
        found.append(Demand(_past, _least(wants.least_protrusion_mm), words, longer))
    if wants.most_protrusion_mm is not None:
        words = "sticks out behind: {value}; {limit} has room or use."
        found.append(Demand(_past, _most(wants.most_protrusion_mm), words, shorter))
    if wants.least_bottom_mm is not None and fit.bottom_mm is not None:
        words = "room before the bottom: {value}; {limit}, or it jams or strips."
        found.append(Demand(lambda **f: -_past(**f), _least(wants.least_bottom_mm), words, shorter))
    return found


def _least(limit_mm: float) -> Bounds:
    return Bounds(Limit.LOWER, low=limit_mm, nominal_holds=True)


def _most(limit_mm: float) -> Bounds:
    return Bounds(Limit.UPPER, high=limit_mm, nominal_holds=True)


def length_input(length_mm: float) -> Input:
    """Return a screw's length with the tolerance of its standard."""
    half_mm = next((half for most, half in LENGTH_TOLERANCE_MM if length_mm <= most), LONGEST_TOLERANCE_MM)
    return Input("length of the screw", length_mm, length_mm - half_mm, length_mm + half_mm, "mm")


def _engaged(length: float, grip: float, holding: float) -> float:
    return max(0.0, min(length - grip, holding))


def _past(length: float, grip: float, holding: float) -> float:
    return length - grip - holding


CHECK = check_of(
    _run,
    code="JOINT-01",
    title="Length of a joint's screw",
    source="a pitch behind a nut: a published fastener guide; engagement: electronics workmanship manual and practice; "
    "tolerance of length: ISO 4759-1 (from memory)",
    subjects=all_of("joint", lambda design: design.joints),
)
