"""True-scale paper templates of panels: one PDF for each panel and hand, or one for a single drawing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from scantling.drawing.pdf import to_pdf
from scantling.errors import NOWHERE, Where
from scantling.model.workshop import Paper, Printer, Workshop
from scantling.plans.digests import digest
from scantling.plans.drilling import mark_letter
from scantling.plans.file_names import file_names
from scantling.plans.plan import Plan
from scantling.plans.remembering import Remember, make_anew
from scantling.plans.sheets.correction import printer_correction, workshop_paper
from scantling.plans.sheets.frame import PageLay
from scantling.plans.sheets.from_plan import plan_jobs
from scantling.plans.sheets.job import TemplateHole, TemplateJob
from scantling.plans.sheets.pages import Template, make_template
from scantling.quantities import show_number
from scantling.shapes.outline import Outline
from scantling.tables.bits import Bit, nearest_bit


def page_lay(paper: Paper, printer: Printer, where: Where = NOWHERE) -> PageLay:
    """Return how pages are laid out for a paper and a printer.

    Raises ``FaultsError``: PAPER-01 where the printer is off by more than can be corrected, PAPER-02 where its bar is
    missing, PAPER-03 where the paper's size is unknown.
    """
    correction = printer_correction(printer, where)
    return PageLay(workshop_paper(paper.size, printer, correction, where), correction)


def check_paper(workshop: Workshop, where: Where = NOWHERE) -> None:
    """Refuse a workshop on whose printer no true template can be made; see ``page_lay``."""
    page_lay(workshop.paper, workshop.printer, where)


def plan_template_files(plan: Plan, remember: Remember = make_anew) -> dict[str, bytes]:
    """Return the templates of a plan as PDF, by file name; raises ``FaultsError`` as ``page_lay`` does.

    remember : gives the bytes that were made earlier from the very same facts, so that a panel that no change touches
    is not drawn again
    """
    lay, overlap_mm = _plan_lay(plan)
    jobs = plan_jobs(plan)
    drawn = [
        remember(f"template-{digest([job, lay, overlap_mm])}", partial(_drawn, job, lay, overlap_mm)) for job in jobs
    ]
    return dict(zip(file_names([job.name for job in jobs], ".pdf"), drawn, strict=True))


def _drawn(job: TemplateJob, lay: PageLay, overlap_mm: float | None) -> bytes:
    template = make_template(job, lay, overlap_mm)
    return to_pdf(template.pages, template.title)


def _plan_lay(plan: Plan) -> tuple[PageLay, float | None]:
    project = plan.case.project
    overlap = project.workshop.paper.overlap_mm
    lay = page_lay(project.workshop.paper, project.workshop.printer, project.where("workshop", "printer"))
    return lay, overlap.value if overlap else None


def template_files(templates: Sequence[Template]) -> dict[str, bytes]:
    """Return each template as a PDF, by file name."""
    names = file_names([template.name for template in templates], ".pdf")
    return {name: to_pdf(one.pages, one.title) for name, one in zip(names, templates, strict=True)}


def single_template(
    outline: Outline,
    holes: Sequence[TemplateHole] | None = None,
    paper: Paper | None = None,
    printer: Printer | None = None,
    name: str = "panel",
    bits: tuple[Bit, ...] = (),
) -> Template:
    """Return the template of one drawing alone; its own circles are the holes where none are given.

    bits : those in hand, for the drill list; without any the drawn diameter is the bit
    Raises ``FaultsError`` as ``page_lay`` does.
    """
    lay = page_lay(paper or Paper(), printer or Printer())
    drilled = tuple(drawn_holes(outline, bits) if holes is None else holes)
    solid = replace(outline, inner=outline.windows)
    return make_template(TemplateJob(name, name, solid, drilled, bits=bits), lay)


def drawn_holes(outline: Outline, bits: tuple[Bit, ...] = ()) -> tuple[TemplateHole, ...]:
    """Return the circles of an outline as holes to drill: by size, then from the left, then from below."""
    circles = sorted(outline.circles, key=lambda c: (round(c.diameter_mm, 3), round(c.centre[0], 3), c.centre[1]))
    families: dict[float, int] = {}
    holes = []
    for circle in circles:
        size_mm = round(circle.diameter_mm, 3)
        number = families[size_mm] = families.get(size_mm, 0) + 1
        mark = f"{mark_letter(list(families).index(size_mm))}{number}"
        bit = nearest_bit(size_mm, bits) if bits else None
        fits = bit is not None and abs(bit.diameter_mm - size_mm) <= 0.3
        holes.append(
            TemplateHole(
                mark,
                circle.centre,
                size_mm,
                bit=bit.name if bit is not None and fits else None if bits else show_number(size_mm, 2),
                bit_mm=bit.diameter_mm if bit is not None and fits else None if bits else size_mm,
                purpose="as drawn",
            )
        )
    return tuple(holes)
