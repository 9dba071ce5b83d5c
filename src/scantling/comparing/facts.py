"""A plan as a flat list of facts, each with its own name: what two plans can differ in, and in nothing else.

A new kind of output that may change with a part is a new function here and a line in ``FACTS``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import IntEnum

from scantling.build.hardware import Fastener, hardware
from scantling.build.holes import ResolvedHole, sheet_holes
from scantling.build.lengths import cut_length_um
from scantling.build.steps import step_joints, step_pieces
from scantling.model.place import EMPTY
from scantling.plans.plan import Plan
from scantling.quantities import show_money, show_number, show_value


class Topic(IntEnum):
    """What a fact is about; the order in which consequences are shown where nothing else decides."""

    PART = 0
    FINDING = 1
    SETTING = 2
    SCREW = 3
    HOLE = 4
    CUT = 5
    PRINT = 6
    HARDWARE = 7
    DRAWING = 8
    STEP = 9
    ORDER = 10
    COST = 11
    DATE = 12


@dataclass(frozen=True)
class Fact:
    """One thing that is so in a plan.

    subject, what : its name within the topic    value : for people    number, unit : where it is a figure
    grade : 0 for the best; findings carry how bad they are, so that a change for the worse can be told
    """

    topic: Topic
    subject: str
    what: str
    value: str
    number: float | None = None
    unit: str = ""
    grade: int = 0
    because: str = ""

    @property
    def key(self) -> tuple[Topic, str, str]:
        """What makes facts of two plans comparable."""
        return (self.topic, self.subject, self.what)


def facts(plan: Plan) -> dict[tuple[Topic, str, str], Fact]:
    """Return all facts of a plan by key."""
    return {fact.key: fact for source in FACTS for fact in source(plan)}


def part_facts(plan: Plan) -> Iterator[Fact]:
    """Which part fills each place, how many, and how they are got."""
    reader = plan.case.reader(plan.build)
    for place in plan.case.project.design.places:
        part = reader.part(place)
        value = "empty" if part is None else f"{reader.pieces(place)} × {part.name or part.id}"
        yield Fact(Topic.PART, place, "part", value)
        get = reader.get(place)
        if get != EMPTY:
            yield Fact(Topic.PART, place, "got by", get)


def finding_facts(plan: Plan) -> Iterator[Fact]:
    """Every verdict with its value; a check that could not look is a fact too."""
    for finding in plan.findings:
        shown = "" if finding.value is None else f" ({show_value(float(f'{finding.value:.3g}'), finding.unit)})"
        yield Fact(
            Topic.FINDING,
            finding.subject,
            f"{finding.code} {finding.title}",
            f"{finding.verdict}{shown}",
            finding.value,
            finding.unit,
            3 - finding.verdict.rank,
            finding.because,
        )
    for absent in plan.not_looked_at:
        needs = "not looked at: " + ", ".join(absent.needs)
        yield Fact(Topic.FINDING, absent.subject, f"{absent.code} {absent.title}", needs, grade=1)


def setting_facts(plan: Plan) -> Iterator[Fact]:
    """Every value to enter or test to pass."""
    for setting in plan.settings:
        value = f"{setting.value} {setting.unit}".strip()
        yield Fact(Topic.SETTING, setting.key, setting.title, value, because=setting.because)


def screw_facts(plan: Plan) -> Iterator[Fact]:
    """The screw, nut and washers of each joint."""
    reader = plan.case.reader(plan.build)
    joints: dict[str, list[Fastener]] = {}
    for fastener in reader.derive(hardware):
        kind, _, joint = fastener.where.partition(" ")
        if kind == "joint":
            joints.setdefault(joint, []).append(fastener)
    for joint, fasteners in joints.items():
        yield Fact(Topic.SCREW, joint, "fasteners", ", ".join(f"{f.count} × {f.part}" for f in fasteners))


def hole_facts(plan: Plan) -> Iterator[Fact]:
    """The holes of each panel by purpose: count, size, bit, where."""
    reader = plan.case.reader(plan.build)
    for sheet in plan.case.project.design.sheets:
        by_purpose: dict[str, list[ResolvedHole]] = {}
        for hole in reader.derive(sheet_holes, sheet):
            by_purpose.setdefault(f"{hole.purpose} for {hole.what}" if hole.what else hole.purpose, []).append(hole)
        for purpose, holes in by_purpose.items():
            yield Fact(Topic.HOLE, sheet, purpose, _holes_text(holes))


def _holes_text(holes: list[ResolvedHole]) -> str:
    sizes = dict.fromkeys(
        f"{show_number(h.diameter_mm, 2)} mm" + (f", bit {h.bit}" if h.bit else ", no bit in hand") for h in holes
    )
    points = "; ".join(f"{show_number(h.x_mm, 2)}, {show_number(h.y_mm, 2)}" for h in holes)
    return f"{len(holes)} × {' / '.join(sizes)} at {points}"


def cut_facts(plan: Plan) -> Iterator[Fact]:
    """The length of each piece that is cut, and how bars are shared out."""
    reader = plan.case.reader(plan.build)
    for place in plan.case.project.design.places:
        if reader.get(place) == "cut":
            length = reader.derive(cut_length_um, place) / 1000
            yield Fact(Topic.CUT, place, "length", f"{reader.pieces(place)} × {show_number(length)} mm", length, "mm")
    for number, bar in enumerate(plan.bars, 1):
        pieces = " + ".join(show_number(p.length_um / 1000) for p in bar.pieces)
        yield Fact(Topic.CUT, bar.part, f"bar {number}", f"{bar.times} × {show_number(bar.bar_um / 1000)} mm: {pieces}")


def print_facts(plan: Plan) -> Iterator[Fact]:
    """What is printed from which mesh in which plastic."""
    for line in plan.prints:
        yield Fact(Topic.PRINT, line.place, "print", f"{line.count} × {line.mesh} in {line.plastic}")


def drawing_facts(plan: Plan) -> Iterator[Fact]:
    """The digest of what each template is drawn from: equal means the sheet in hand is still good."""
    for sheet, digest in plan.drawings:
        yield Fact(Topic.DRAWING, sheet, "template", digest)


def step_facts(plan: Plan) -> Iterator[Fact]:
    """What each step takes: a step whose kit changed must be read and packed again."""
    reader = plan.case.reader(plan.build)
    by_joint: dict[str, list[Fastener]] = {}
    for fastener in reader.derive(hardware):
        by_joint.setdefault(fastener.where, []).append(fastener)
    for step in plan.step_order:
        kit = []
        for place, count in reader.derive(step_pieces, step):
            part = reader.part(place)
            if part is not None and count:
                kit.append(f"{count} × {part.name or part.id}")
        for joint, _ in reader.derive(step_joints, step):
            kit += [f"{f.count} × {f.part}" for f in by_joint.get(f"joint {joint}", [])]
        yield Fact(Topic.STEP, step, "kit", ", ".join(kit))


def order_facts(plan: Plan) -> Iterator[Fact]:
    """Every line of every order, and each order's total."""
    for sheet in plan.orders:
        for row in sheet.rows:
            yield Fact(
                Topic.ORDER, f"{sheet.vendor}: {row.name}", row.offer, f"{row.packs} × {row.pack_text}, {row.goods}"
            )
        yield Fact(Topic.ORDER, sheet.vendor, "total", dict(sheet.sums)["total"])


def cost_facts(plan: Plan) -> Iterator[Fact]:
    """The four totals."""
    if plan.totals is None:
        return
    totals = plan.totals
    named = {
        f"outlay for {totals.copies}": totals.outlay,
        "value used in one machine": totals.used,
        "left in the drawer": totals.left,
        "cost to the next builder": totals.next_builder,
    }
    for what, minor in named.items():
        if minor is not None:
            yield Fact(Topic.COST, "money", what, show_money(minor, totals.currency), minor, totals.currency)


def date_facts(plan: Plan) -> Iterator[Fact]:
    """When everything is there."""
    if plan.dates is None:
        return
    dates = plan.dates
    ready = f" ({dates.ready.isoformat()})" if dates.ready else ""
    last = f", last: {', '.join(dates.deciding)}" if dates.deciding else ""
    yield Fact(
        Topic.DATE,
        "delivery",
        "all parts in hand after",
        f"{dates.lead_days} days{ready}{last}",
        dates.lead_days,
        "days",
    )


FACTS: tuple[Callable[[Plan], Iterator[Fact]], ...] = (
    part_facts,
    finding_facts,
    setting_facts,
    screw_facts,
    hole_facts,
    cut_facts,
    print_facts,
    drawing_facts,
    step_facts,
    order_facts,
    cost_facts,
    date_facts,
)
