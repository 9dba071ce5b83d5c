"""Facts of what the machine is made of and how well it works: parts, findings, settings, fasteners, kits."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.build.hardware import Fastener, joint_hardware
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.settings import Setting
from scantling.comparing.fact import Fact, Topic, in_words
from scantling.errors import LookUpError
from scantling.findings import Finding, Limit
from scantling.model.kinds import Screw
from scantling.model.part import Part
from scantling.model.place import EMPTY
from scantling.plans.plan import Plan
from scantling.plans.steps import step_plans
from scantling.quantities import show_number, show_value

NOT_LOOKED_AT = 1  # grade: worse than sound, no worse than marginal


def part_facts(plan: Plan) -> Iterator[Fact]:
    """Which part fills each place, how many, and how they are got."""
    reader = plan.case.reader(plan.build)
    for place in plan.case.project.design.places:
        part, pieces = reader.part(place), reader.pieces(place)
        if part is None:
            yield Fact(Topic.PART, place, "part", "empty", amount=0)
            continue
        yield Fact(Topic.PART, place, "part", part.name or part.id, part.id, amount=pieces)
        yield Fact(Topic.PART, place, "pieces", str(pieces), number=pieces)
        get = reader.get(place)
        if get != EMPTY:
            yield Fact(Topic.PART, place, "got", get)


def finding_facts(plan: Plan) -> Iterator[Fact]:
    """Every verdict with its value; a check that could not look is a fact too."""
    for finding in plan.findings:
        yield _finding(finding)
    for absent in plan.not_looked_at:
        needs = "not looked at: needs " + ", ".join(absent.needs)
        yield Fact(Topic.FINDING, absent.subject, f"{absent.code} {absent.title}", needs, grade=NOT_LOOKED_AT)


def _finding(finding: Finding) -> Fact:
    return Fact(
        Topic.FINDING,
        finding.subject,
        f"{finding.code} {finding.title}",
        _verdict(finding),
        _behind(finding),
        number=finding.value,
        unit=finding.unit,
        grade=3 - finding.verdict.rank,
        because=finding.because,
        margin=finding.margin,
    )


def _verdict(finding: Finding) -> str:
    """``unsound: 0.48 mm, at most 0.25 mm``."""
    if finding.value is None:
        return str(finding.verdict)
    return f"{finding.verdict}: {_short(finding.value, finding.unit)}{_limits(finding)}"


def _limits(finding: Finding) -> str:
    if finding.limit is None or finding.side is Limit.NONE:
        return ""
    limits = [_short(limit, finding.unit) for limit in (finding.limit, finding.limit_high) if limit is not None]
    return f", {finding.side} {' and '.join(limits)}"


def _short(value: float, unit: str) -> str:
    return show_value(float(f"{value:.3g}"), unit)


def _behind(finding: Finding) -> str:
    margin = "" if finding.margin is None else f"{finding.margin * 100:.3g} %"
    band = (
        "" if finding.low is None or finding.low == finding.high else f"{finding.low:.6g} to {finding.high or 0.0:.6g}"
    )
    return in_words(
        ("margin", margin),
        ("band", band),
        ("missing", ", ".join(finding.missing)),
        ("assumed", ", ".join(finding.assumed)),
        ("mend", finding.mend),
        ("source", finding.source),
    )


def setting_facts(plan: Plan) -> Iterator[Fact]:
    """Every value to enter or test to pass."""
    for setting in plan.settings:
        subject, what = _named(setting)
        value = f"{setting.value} {setting.unit}".strip()
        yield Fact(
            Topic.SETTING,
            subject,
            what,
            value,
            setting.exact,
            number=_number(setting),
            unit=setting.unit,
            because=setting.because,
        )


def _named(setting: Setting) -> tuple[str, str]:
    """Return an axis and what is set there, so that equal settings of axes read alike; else the key and the title."""
    axis = setting.group.removeprefix("axis ")
    if axis != setting.group and setting.title.startswith(f"{axis}: "):
        return setting.group, setting.title.removeprefix(f"{axis}: ")
    return setting.key, setting.title


def _number(setting: Setting) -> float | None:
    try:
        return float(setting.value)
    except ValueError:
        return None


def screw_facts(plan: Plan) -> Iterator[Fact]:
    """The screw, nut and washers of each joint, and how many."""
    reader = plan.case.reader(plan.build)
    for joint in plan.case.project.design.joints:
        for fastener in _fasteners(reader, joint):
            yield from _fastener(reader, joint, fastener)


def _fasteners(reader: Reader, joint: str) -> tuple[Fastener, ...]:
    try:
        return reader.derive(joint_hardware, joint)
    except NotDescribedError:
        return ()


def _fastener(reader: Reader, joint: str, fastener: Fastener) -> Iterator[Fact]:
    """A joint has one kind of screw, and its length is a figure; nuts and washers are told by their names."""
    part = _part(reader, fastener.part)
    if isinstance(part, Screw):
        length = part.length_mm.value
        yield Fact(
            Topic.SCREW, joint, "screws", fastener.part, number=length, unit="mm of length", amount=fastener.count
        )
        yield Fact(Topic.SCREW, joint, "number of screws", str(fastener.count), number=fastener.count)
    else:
        yield Fact(Topic.SCREW, joint, fastener.part, f"{fastener.count} ×", number=fastener.count)


def _part(reader: Reader, name: str) -> Part | None:
    try:
        return reader.case.part(name)
    except LookUpError:  # a washer of a size that no table has
        return None


def step_facts(plan: Plan) -> Iterator[Fact]:
    """What each step takes: a step whose kit changed must be read and packed again."""
    for step in step_plans(plan):
        items = tuple(f"{item.count} × {item.name} for {item.where}" for item in step.kit if item.count)
        yield Fact(Topic.STEP, step.id, "kit", ", ".join(items), items=items)
        if step.tighten:
            yield Fact(Topic.STEP, step.id, "tighten", "; ".join(step.tighten), items=step.tighten)
    for coverage in plan.coverage:
        used = f"{show_number(coverage.used)} of {show_number(coverage.needed)} used in the steps"
        yield Fact(Topic.STEP, f"{coverage.kind} {coverage.ident}", "used", used)
