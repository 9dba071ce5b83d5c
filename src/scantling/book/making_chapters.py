"""Chapters on what is made: parts, cuts, holes, prints, joints."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scantling.book.bar_figure import bar_figure
from scantling.book.document import Align, Block, Heading, Paragraph, Table
from scantling.build.hardware import hardware
from scantling.build.missing import NotDescribedError
from scantling.model.joint import Joint
from scantling.plans.plan import Plan
from scantling.plans.printing import grams_text, hours_text
from scantling.quantities import show_number


def parts_chapter(plan: Plan) -> list[Block]:
    """Return the parts list."""
    if not plan.parts:
        return []
    rows = tuple(
        (str(x.item), str(x.quantity), str(x.for_all), x.unit, x.designation, x.material, x.remarks) for x in plan.parts
    )
    head = ("item", "one", "all", "unit", "designation", "material", "remarks")
    aligns: tuple[Align, ...] = ("right", "right", "right", "left", "left", "left", "left")
    return [
        Heading("Parts list"),
        Paragraph(
            f"Quantities for one machine and for all {plan.build.copies}." if plan.build.copies > 1 else "One machine."
        ),
        Table(head, rows, ("auto", "auto", "auto", "auto", "2", "1", "2"), aligns),
    ]


def cuts_chapter(plan: Plan, width_mm: float) -> list[Block]:
    """Return the cut list with a drawing of the bars."""
    if not plan.bars:
        return []
    rows = tuple(
        (
            str(number),
            str(bar.times),
            bar.name,
            bar.source,
            _cut_words(bar.whole, [piece.ends_um for piece in bar.pieces]),
            ", ".join(dict.fromkeys(place for piece in bar.pieces for place in piece.places)),
        )
        for number, bar in enumerate(plan.bars, 1)
    )
    facing = any(piece.rough_um > piece.length_um for bar in plan.bars for piece in bar.pieces)
    words = "Marks are counted from the bar's start, the saw's kerf in between"
    words += "; pieces are sawn long and faced to the length drawn." if facing else "."
    head = ("bar", "times", "part", "from", "mark at mm", "for")
    return [
        Heading("Cut list"),
        Paragraph(words),
        bar_figure(plan.bars, width_mm),
        Table(head, rows, ("auto", "auto", "1", "1", "1", "1"), ("right", "right", "left", "left", "left", "left")),
    ]


def _cut_words(whole: bool, ends_um: Sequence[int]) -> str:
    return "as it comes" if whole else ", ".join(show_number(end / 1000) for end in ends_um)


def drills_chapter(plan: Plan) -> list[Block]:
    """Return the drill schedule of all panels."""
    if not plan.drills:
        return []
    rows = tuple(
        (line.sheet, f"{line.bit}, {line.stage}", str(line.count), str(line.for_all), " ".join(line.letters))
        for line in plan.drills
    )
    aligns: tuple[Align, ...] = ("left", "left", "right", "right", "left")
    return [
        Heading("Drill schedule"),
        Paragraph("Pilots first, then bit by bit; where each hole is and what it is for stands on the template."),
        Table(("panel", "bit", "one", "all", "marks"), rows, ("auto", "auto", "auto", "auto", "1"), aligns),
    ]


def prints_chapter(plan: Plan) -> list[Block]:
    """Return what is printed, with its estimates."""
    if not plan.prints:
        return []
    rows = tuple(
        (
            line.mesh,
            line.plastic,
            str(line.count),
            str(line.for_all),
            grams_text(line.estimate.mass_kg) if line.estimate else "",
            hours_text(line.estimate.time_s) if line.estimate else "",
            line.place,
        )
        for line in plan.prints
    )
    head = ("mesh", "plastic", "one", "all", "g each", "h each", "for")
    aligns: tuple[Align, ...] = ("left", "left", "right", "right", "right", "right", "left")
    words = "Grams and hours are estimates from the mesh, with their band; a slicer knows better."
    return [Heading("Prints"), Paragraph(words), Table(head, rows, ("1", *["auto"] * 5, "1"), aligns)]


def joints_chapter(plan: Plan) -> list[Block]:
    """Return the fasteners of each joint."""
    reader, design = plan.case.reader(plan.build), plan.case.project.design
    try:
        fasteners = reader.derive(hardware)
    except NotDescribedError:
        return []
    joints: dict[str, list[str]] = {}
    for one in fasteners:
        joints.setdefault(one.where, []).append(f"{one.count} × {one.part}")
    rows = tuple((*_where(design.joints, where), ", ".join(kit)) for where, kit in joints.items())
    head = ("joint", "remark", "fasteners")
    return [Heading("Joints and their screws"), Table(head, rows, ("1", "1", "2"))] if rows else []


def _where(joints: Mapping[str, Joint], where: str) -> tuple[str, str]:
    """Name and remark of where fasteners go: a joint has both, a place whose part brings them only a name."""
    kind, _, name = where.partition(" ")
    joint = joints.get(name) if kind == "joint" else None
    return (joint.title or name, joint.note) if joint is not None else (name, "")
