"""From a plan to the panels to be drawn: one job for each panel, and one more for its other hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from scantling.build.bits_at_hand import bits_at_hand
from scantling.build.holes import ResolvedHole, SheetDrawing, sheet_drawing
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.stacks import joint_washers, named_places
from scantling.build.steps import step_pieces
from scantling.errors import LookUpError
from scantling.model.kinds import Screw, SheetStock, Washer
from scantling.plans.drilling import hole_letters
from scantling.plans.plan import Plan
from scantling.plans.sheets.job import MEASURED, NOMINAL, TemplateHole, TemplateJob
from scantling.quantities import show_number
from scantling.tables.screws import screw_head

SLACK_MM = 0.2
"""By how much a distance that must hold may be off where no play says more (common practice, no source)."""

_MOST_SLACK_MM, _LEAST_SLACK_MM = 0.5, 0.1
_NOT_MEASURED = frozenset({"collar"})  # nobody finds the middle of a large hole with a rule


def plan_jobs(plan: Plan) -> tuple[TemplateJob, ...]:
    """Return the panels of a plan in the design's order; panels that are not described are left out."""
    reader = plan.case.reader(plan.build)
    jobs = []
    for sheet in plan.case.project.design.sheets:
        drawing = described_drawing(reader, sheet)
        if drawing is not None:
            jobs += _hands(plan, reader, drawing)
    return tuple(jobs)


def described_drawing(reader: Reader, sheet: str) -> SheetDrawing | None:
    """Return the drawing of a panel; None where its place is empty or something of it is not described."""
    try:
        return reader.derive(sheet_drawing, sheet)
    except NotDescribedError:
        return None


def _hands(plan: Plan, reader: Reader, drawing: SheetDrawing) -> list[TemplateJob]:
    other = [piece for piece in drawing.pieces if piece in drawing.mirrored]
    own = [piece for piece in drawing.pieces if piece not in drawing.mirrored]
    job = _job(plan, reader, drawing)
    copies = plan.build.copies
    jobs = [_copied(job, own, copies)] if own else []
    if other:
        mirrored = job.other_hand(f"mirrored sheet, for {', '.join(other)}")
        jobs.append(_copied(mirrored, other, copies))
    return jobs


def _copied(job: TemplateJob, pieces: Sequence[str], copies: int) -> TemplateJob:
    named = [piece for piece in pieces if not piece.isdigit()]
    count = f"{len(pieces)} in one machine" + (f" ({', '.join(named)})" if named else "")
    words = f"{count}, {len(pieces) * copies} for all {copies} copies" if copies > 1 else count
    return replace(job, copies=words)


def _job(plan: Plan, reader: Reader, drawing: SheetDrawing) -> TemplateJob:
    design = reader.design
    machine, part = design.machine, reader.part(drawing.sheet)
    grain = drawing.grain or ("x" if isinstance(part, SheetStock) and part.grain else "")
    steps = tuple(step for step in plan.step_order if drawing.sheet in dict(reader.derive(step_pieces, step)))
    together = drawing.drilled_with
    return TemplateJob(
        name=drawing.sheet,
        title=drawing.title,
        outline=drawing.outline,
        holes=template_holes(reader, drawing),
        machine=machine.name,
        revision=machine.revision,
        material=drawing.material,
        thickness=thickness_words(reader, drawing),
        face_up=drawing.face_up,
        up=drawing.up,
        grain=grain,
        drilled_with=(design.sheets[together].title or together) if together in design.sheets else together or "",
        uses=steps,
        bits=bits_at_hand(reader.workshop),
    )


def thickness_words(reader: Reader, drawing: SheetDrawing) -> str:
    """Return how thick a panel is, and whether that is nominal or measured, with the day where it is known."""
    actuals = [one for one in reader.workshop.actuals if one.part == drawing.part and one.size == "thickness"]
    size = f"{show_number(drawing.thickness_mm.value, 2)} mm"
    days = [one.measured_on.isoformat() for one in actuals[:1] if one.measured_on is not None]
    return " on ".join([f"{size} {MEASURED if actuals else NOMINAL}", *days])


def template_holes(reader: Reader, drawing: SheetDrawing) -> tuple[TemplateHole, ...]:
    """Return the holes of a panel with their marks and with the heads and washers that will cover them."""
    marks = hole_letters(drawing.holes)
    return tuple(_hole(reader, mark, hole) for mark, hole in zip(marks, drawing.holes, strict=True))


def _hole(reader: Reader, mark: str, hole: ResolvedHole) -> TemplateHole:
    return TemplateHole(
        mark=mark,
        at=(hole.x_mm, hole.y_mm),
        diameter_mm=hole.diameter_mm,
        bit=hole.bit,
        bit_mm=hole.bit_mm,
        before=hole.steps[:-1],
        slot_mm=hole.slot_mm,
        slot_turn_deg=hole.slot_turn_deg,
        ghosts_mm=_ghosts_mm(reader, hole),
        care=hole.care and hole.purpose not in _NOT_MEASURED,
        slack_mm=_slack_mm(hole),
        group=hole_group(hole),
        purpose=hole.why,
    )


def hole_group(hole: ResolvedHole) -> str:
    """Return what keeps holes on one page: the design's word, a motor's pattern, or an entry whose places must hold."""
    entry, point, _ = (*hole.key.split("."), "", "")[:3]
    if hole.group:
        return hole.group
    if hole.what.endswith(".face"):
        return f"{entry}.{point}"
    return entry if hole.care else ""


def _slack_mm(hole: ResolvedHole) -> float:
    if hole.purpose != "clearance":
        return SLACK_MM
    play_mm = (hole.bit_mm if hole.bit_mm is not None else hole.diameter_mm) - hole.least_mm
    return min(_MOST_SLACK_MM, max(_LEAST_SLACK_MM, round(play_mm, 1)))


def _ghosts_mm(reader: Reader, hole: ResolvedHole) -> tuple[float, ...]:
    """Diameters of the head and the washers of the joint whose screw passes the hole, the smallest first."""
    if hole.purpose != "clearance":
        return ()
    joint = _joint_of(reader, hole)
    if joint is None:
        return ()
    sizes = {*_head_mm(reader, joint), *sorted(_washers_mm(reader, joint))[-1:]}
    return tuple(sorted(size for size in sizes if size > hole.diameter_mm))


def _joint_of(reader: Reader, hole: ResolvedHole) -> str | None:
    """The joint that a hole names, or the one that holds the panel to the thing whose pattern this is."""
    named = hole.what.removeprefix("joint:").strip()
    joints = reader.design.joints
    if hole.what.startswith("joint:"):
        return named if named in joints else None
    place = hole.what.partition(".")[0]
    return next((name for name, one in joints.items() if {place, hole.sheet} <= set(named_places(one))), None)


def _head_mm(reader: Reader, joint: str) -> list[float]:
    try:
        screw: Screw = reader.screw(joint)
        return [screw_head(screw.head, screw.thread).diameter_mm]
    except LookUpError:
        return []


def _washers_mm(reader: Reader, joint: str) -> list[float]:
    sizes = []
    for name in joint_washers(reader.design.joints[joint]):
        try:
            part = reader.case.part(name)
        except LookUpError:
            continue
        if isinstance(part, Washer):
            sizes.append(part.outer_diameter_mm.value)
    return sizes
