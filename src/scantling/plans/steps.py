"""The steps of the assembly with their kits: what to lay out, what to do, what to check, what to beware of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, log10

from scantling.build.clamping import tightening
from scantling.build.hardware import Fastener, brought, joint_hardware
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.stacks import joint_count
from scantling.build.steps import step_joints, step_pieces
from scantling.errors import LookUpError
from scantling.plans.plan import Plan
from scantling.quantities import show_number


@dataclass(frozen=True)
class KitItem:
    """So many of a part for one step, and the place or joint that they are for."""

    count: int
    part: str
    name: str
    where: str


@dataclass(frozen=True)
class StepPlan:
    """One step, ready to be done; ``number`` counts from 1 in the order of work.

    results : sub-assemblies taken from earlier steps    makes : the one it yields, "" for none
    tighten : for each joint done up here, how tight
    """

    number: int
    id: str
    title: str
    kit: tuple[KitItem, ...]
    results: tuple[str, ...]
    makes: str
    tools: tuple[str, ...]
    minutes: int | None
    text: str
    check: str
    loose: str
    tighten: tuple[str, ...]
    caution: str


def step_plans(plan: Plan) -> tuple[StepPlan, ...]:
    """Return all steps in the order of work."""
    reader = plan.case.reader(plan.build)
    found, seen = [], set[str]()
    for number, step in enumerate(plan.step_order, 1):
        used = [place for place, count in reader.derive(step_pieces, step) if count]
        found.append(_step(reader, number, step, [place for place in used if place not in seen]))
        seen.update(used)
    return tuple(found)


def _step(reader: Reader, number: int, name: str, new: Sequence[str]) -> StepPlan:
    """Return one step; what the parts of ``new`` places bring with them is laid out here, where they come first."""
    described = reader.design.steps[name]
    joints = (item for joint in _joints(reader, name) for item in joint)
    kit = (*_pieces(reader, name), *_brought(reader, new), *joints)
    return StepPlan(
        number,
        name,
        described.title,
        kit,
        described.uses_results,
        described.yields or "",
        described.tools,
        described.minutes,
        described.text,
        described.check,
        described.loose,
        tuple(_tighten(reader, joint) for joint, count in reader.derive(step_joints, name) if count),
        described.caution,
    )


def _brought(reader: Reader, places: Sequence[str]) -> list[KitItem]:
    found = []
    for place in places:
        for item in reader.derive(brought, place):
            part = reader.case.part(item.part)
            title = reader.design.places[place].title or place
            found.append(KitItem(item.count, item.part, part.name or item.part, title))
    return found


def _pieces(reader: Reader, step: str) -> list[KitItem]:
    found = []
    for place, count in reader.derive(step_pieces, step):
        part = reader.part(place)
        if part is not None and count:
            title = reader.design.places[place].title or place
            found.append(KitItem(count, part.id, part.name or part.id, title))
    return found


def _joints(reader: Reader, step: str) -> list[list[KitItem]]:
    return [_fasteners(reader, joint, count) for joint, count in reader.derive(step_joints, step)]


def _fasteners(reader: Reader, joint: str, count: int) -> list[KitItem]:
    """The fasteners of so many of a joint's screws: the joint may be done up over several steps."""
    try:
        whole, fasteners = reader.derive(joint_count, joint), reader.derive(joint_hardware, joint)
    except NotDescribedError:
        return []
    title = reader.design.joints[joint].title or joint
    return [_fastener(reader, one, one.count * count // whole if whole else 0, title) for one in fasteners]


def _fastener(reader: Reader, one: Fastener, count: int, title: str) -> KitItem:
    try:
        name = reader.case.part(one.part).name or one.part
    except LookUpError:
        name = one.part
    return KitItem(count, one.part, name, title)


def _tighten(reader: Reader, joint: str) -> str:
    """How tight a joint is drawn: as it says, else no tighter than its weakest member bears."""
    described = reader.design.joints[joint]
    title = described.title or joint
    if described.tighten_nmm is not None:
        return f"{title} {newton_metres(described.tighten_nmm.value)}"
    most = reader.derive(tightening, joint)
    return f"{title} at most {newton_metres(most.torque_nmm)} ({most.weakest})"


def newton_metres(torque_nmm: float) -> str:
    """Return a torque in N m, rounded down to two digits.

    >>> newton_metres(1386.0), newton_metres(400.0)
    ('1.3 N m', '0.4 N m')
    """
    digit_nmm = 10 ** (floor(log10(torque_nmm)) - 1)
    return f"{show_number(floor(torque_nmm / digit_nmm + 1e-9) * digit_nmm / 1000)} N m"


def kit_text(items: Sequence[KitItem]) -> str:
    """Return a kit in one line: ``4 × M3x10 socket head screw, 1 × motor``; equal parts are counted together."""
    counts: dict[str, int] = {}
    for item in items:
        counts[item.name] = counts.get(item.name, 0) + item.count
    return ", ".join(f"{count} × {name}" for name, count in counts.items())


def total_minutes(steps: Sequence[StepPlan]) -> int | None:
    """Return the minutes of all steps; None where no step says any."""
    said = [step.minutes for step in steps if step.minutes is not None]
    return sum(said) if said else None


def steps_table(steps: Sequence[StepPlan]) -> list[list[str]]:
    """Return the steps as rows of text, heading first."""
    heading = ["number", "step", "title", "kit for one machine", "with", "makes", "tools", "minutes"]
    return [[*heading, "leave loose", "tighten", "check", "caution", "text"], *(_row(step) for step in steps)]


def _row(step: StepPlan) -> list[str]:
    return [
        str(step.number),
        step.id,
        step.title,
        kit_text(step.kit),
        ", ".join(step.results),
        step.makes,
        ", ".join(step.tools),
        "" if step.minutes is None else str(step.minutes),
        step.loose,
        "; ".join(step.tighten),
        step.check,
        step.caution,
        step.text,
    ]
