"""The explicit list of checks, and a run of all of them over one build."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import inf

from scantling.build.case import Case
from scantling.build.reader import Reader
from scantling.checks import (
    axis_lost,
    axis_ringing,
    belt_frequency,
    belt_holding,
    belt_idler,
    belt_length,
    belt_line,
    belt_mesh,
    belt_pulley,
    belt_resolution,
    belt_shaft,
    belt_stretch,
    belt_tension,
    belt_torque,
    board_holes,
    bushing_lot,
    chain_machine,
    chain_worst,
    chain_yield,
    frame_give,
    frame_sway,
    frame_swing,
    hole_bit,
    hole_edge,
    hole_meeting,
    joint_again,
    joint_grip,
    joint_locking,
    joint_pressure,
    joint_screw,
    joint_thread,
    joint_tightening,
    mains_fuse,
    mains_inrush,
    mains_work,
    mate_belt,
    mate_coupler,
    mate_face,
    mate_rod,
    mate_shaft,
    mate_thread,
    motor_current,
    motor_heat,
    motor_rotor,
    motor_sense,
    port_count,
    port_current,
    port_plug,
    port_voltage,
    print_bed,
    print_heat,
    print_mesh,
    rail_mean,
    rail_power,
    rail_voltage,
    rod_frequency,
    rod_life,
    rod_overhang,
    rod_parallel,
    rod_pressure,
    rod_racking,
    rod_sag,
    rod_seats,
    rod_travel,
    screw_backlash,
    screw_buckling,
    screw_coupler,
    screw_efficiency,
    screw_holding,
    screw_layers,
    screw_lead,
    screw_level,
    screw_speed,
    screw_torque,
    screw_whirl,
    screw_winding,
    screw_wobble,
    source_lead,
    source_made,
    source_matched,
    source_spares,
    source_vendors,
    span_clearance,
    span_reach,
    span_switch,
    span_volume,
    step_coverage,
    step_order,
    warm_cover,
    warm_end,
    warm_growth,
    warm_stuck,
    warm_time,
    wire_current,
    wire_drop,
    wire_earth,
    wire_ends,
    wire_fuse,
    wire_protection,
)
from scantling.checks.check import Check
from scantling.findings import Finding, Limit, NotLookedAt, Verdict
from scantling.model.build import Build

CHECKS: tuple[Check, ...] = (
    mate_shaft.CHECK,
    mate_rod.CHECK,
    mate_thread.CHECK,
    mate_belt.CHECK,
    mate_face.CHECK,
    mate_coupler.CHECK,
    belt_resolution.CHECK,
    belt_mesh.CHECK,
    belt_torque.CHECK,
    belt_pulley.CHECK,
    belt_length.CHECK,
    belt_line.CHECK,
    belt_tension.CHECK,
    belt_stretch.CHECK,
    belt_frequency.CHECK,
    belt_shaft.CHECK,
    belt_idler.CHECK,
    belt_holding.CHECK,
    motor_heat.CHECK,
    motor_current.CHECK,
    motor_sense.CHECK,
    motor_rotor.CHECK,
    axis_ringing.CHECK,
    axis_lost.CHECK,
    screw_lead.CHECK,
    screw_torque.CHECK,
    screw_holding.CHECK,
    screw_whirl.CHECK,
    screw_buckling.CHECK,
    screw_layers.CHECK,
    screw_speed.CHECK,
    screw_efficiency.CHECK,
    screw_wobble.CHECK,
    screw_backlash.CHECK,
    screw_level.CHECK,
    screw_coupler.CHECK,
    screw_winding.CHECK,
    span_reach.CHECK,
    span_volume.CHECK,
    span_clearance.CHECK,
    span_switch.CHECK,
    rod_sag.CHECK,
    rod_life.CHECK,
    rod_pressure.CHECK,
    rod_racking.CHECK,
    rod_travel.CHECK,
    rod_overhang.CHECK,
    rod_frequency.CHECK,
    rod_parallel.CHECK,
    rod_seats.CHECK,
    bushing_lot.CHECK,
    joint_screw.CHECK,
    joint_locking.CHECK,
    joint_tightening.CHECK,
    joint_pressure.CHECK,
    joint_thread.CHECK,
    joint_again.CHECK,
    joint_grip.CHECK,
    hole_edge.CHECK,
    hole_bit.CHECK,
    hole_meeting.CHECK,
    print_mesh.CHECK,
    print_bed.CHECK,
    print_heat.CHECK,
    rail_power.CHECK,
    rail_voltage.CHECK,
    mains_fuse.CHECK,
    mains_inrush.CHECK,
    rail_mean.CHECK,
    mains_work.CHECK,
    wire_current.CHECK,
    wire_drop.CHECK,
    wire_protection.CHECK,
    wire_fuse.CHECK,
    wire_ends.CHECK,
    wire_earth.CHECK,
    port_count.CHECK,
    port_current.CHECK,
    port_voltage.CHECK,
    port_plug.CHECK,
    board_holes.CHECK,
    warm_time.CHECK,
    warm_end.CHECK,
    warm_stuck.CHECK,
    warm_cover.CHECK,
    warm_growth.CHECK,
    frame_sway.CHECK,
    frame_give.CHECK,
    frame_swing.CHECK,
    chain_worst.CHECK,
    chain_yield.CHECK,
    chain_machine.CHECK,
    source_made.CHECK,
    source_vendors.CHECK,
    source_lead.CHECK,
    source_matched.CHECK,
    source_spares.CHECK,
    step_coverage.CHECK,
    step_order.CHECK,
)

MOST_UNLOCKING = 3


@dataclass(frozen=True)
class Report:
    """What all checks say of one build.

    findings : what matters most first    not_looked_at : in the order of the list
    unlocking : the few facts, as paths in the files, that would let most of those look
    """

    findings: tuple[Finding, ...]
    not_looked_at: tuple[NotLookedAt, ...]
    unlocking: tuple[str, ...]


def run_checks(case: Case, build: Build, *, costly: bool = True) -> Report:
    """Return the report on a build; ``costly=False`` leaves out the checks that take long."""
    reader = case.reader(build)
    chosen = [check for check in CHECKS if costly or not check.costly]
    said = [word for check in chosen for word in run_check(check, reader)]
    unseen = tuple(word for word in said if isinstance(word, NotLookedAt))
    return Report(by_weight(word for word in said if isinstance(word, Finding)), unseen, unlocking_facts(unseen))


def run_check(check: Check, reader: Reader) -> list[Finding | NotLookedAt]:
    """Return what one check says of all its subjects; remembered for other builds that answer alike what it reads."""
    return [reader.derive(check.run, subject) for subject in check.subjects(reader.design)]


def by_weight(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings by what matters: verdict, then margin; what is for information only comes last."""
    return tuple(sorted(findings, key=_weight))


def _weight(finding: Finding) -> tuple[int, bool, float, str, str]:
    broken = finding.verdict is Verdict.UNSOUND  # a rule that is kept or not comes before one that is missed by so much
    margin = finding.margin if finding.margin is not None else -inf if broken else inf
    is_information = finding.side is Limit.NONE and finding.value is not None
    return (finding.verdict.rank, is_information, margin, finding.code, finding.subject)


def unlocking_facts(unseen: Sequence[NotLookedAt], most: int = MOST_UNLOCKING) -> tuple[str, ...]:
    """Return the facts that would unlock most: each look counts for the facts it lacks, in equal shares."""
    share: Counter[str] = Counter()
    for word in unseen:
        for fact in word.needs:
            share[fact] += Fraction(1, len(word.needs))  # type: ignore[assignment]
    return tuple(sorted(share, key=lambda fact: (-share[fact], fact))[:most])
