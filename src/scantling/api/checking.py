"""Check a build as it stands, before anything is chosen or bought."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.api.opening import Session, basis, start_build
from scantling.api.serving import Serving as Serving  # faces name its type
from scantling.build.reference import carry_over
from scantling.checks.all import run_checks
from scantling.findings import worst
from scantling.model.build import Key
from scantling.plans.making import make_plan
from scantling.plans.plan import Plan as Plan  # faces name its type
from scantling.plans.summary import plan_title


def check_design(session: Session, changes: Mapping[Key, str] | None = None) -> Plan:
    """Return the plan, without a purchase, of the choice in force (else of the reference parts) with some changes."""
    build = start_build(session)
    if changes:
        build = carry_over(session.case, build, changes)
    return make_plan(session.case, build, run_checks(session.case, build))


def stand_ins(session: Session, plan: Plan) -> tuple[Serving, ...]:
    """Return for every place that has a choice what each of its options alone makes of the machine."""
    case, before = session.case, {finding.key for finding in plan.findings if not finding.admissible}
    found = []
    for key in case.questions:
        answers = case.answers(key, plan.build.as_dict()) if key.kind == "part" else ()
        for answer in answers if len(answers) > 1 else ():
            build = carry_over(case, plan.build, {key: answer})
            findings = run_checks(case, build, costly=False).findings
            against = tuple(f"{f.code} {f.subject}" for f in findings if not f.admissible and f.key not in before)
            in_force = plan.build.as_dict()[key] == answer
            found.append(Serving(key.subject, answer, worst([f.verdict for f in findings]), against, in_force))
    return tuple(found)


def title_of(session: Session, plan: Plan) -> str:
    """Return machine, revision, workshop, copies and what was checked in a line."""
    return f"{plan_title(plan)}, {basis(session)}"
