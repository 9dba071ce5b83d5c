"""The short document of a plan: what it is, what it costs, what is to be bought, made and put together."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from scantling.book.document import Block, Document
from scantling.book.loom_chapter import loom_chapter
from scantling.book.making_chapters import cuts_chapter, drills_chapter, joints_chapter, parts_chapter, prints_chapter
from scantling.book.measuring_chapter import measuring_chapter
from scantling.book.money_chapters import choice_chapter, money_chapter, orders_chapter
from scantling.book.pdf import document_pdf
from scantling.book.verdict_chapters import findings_chapter, verdict_chapter
from scantling.book.work_chapters import settings_chapter, steps_chapter
from scantling.model.build import Key
from scantling.plans.digests import digest
from scantling.plans.plan import Plan
from scantling.plans.remembering import Remember, make_anew
from scantling.plans.summary import plan_title
from scantling.shapes.paper import SIZES_MM

MARGIN_MM = 18.0
_A4 = SIZES_MM["A4"]
_ANSI = frozenset({"Letter", "Legal", "Tabloid"})


def plan_pdf(plan: Plan, pins: Mapping[Key, str] | None = None, remember: Remember = make_anew) -> bytes:
    """Return the short document of a plan as PDF.

    pins : the answers that were asked for    remember : gives the very same document, laid out earlier
    """
    document = plan_document(plan, pins)
    return remember(f"document-{digest(document)}", lambda: document_pdf(document))


def plan_document(plan: Plan, pins: Mapping[Key, str] | None = None) -> Document:
    """Return the short document of a plan; a chapter that has nothing to say is left out."""
    project = plan.case.project
    width_mm, height_mm = book_paper_mm(project.workshop.paper.size)
    chapters: tuple[Callable[[], list[Block]], ...] = (
        lambda: verdict_chapter(plan),
        lambda: choice_chapter(plan, pins),
        lambda: money_chapter(plan),
        lambda: orders_chapter(plan),
        lambda: parts_chapter(plan),
        lambda: cuts_chapter(plan, width_mm - 2 * MARGIN_MM),
        lambda: drills_chapter(plan),
        lambda: prints_chapter(plan),
        lambda: joints_chapter(plan),
        lambda: loom_chapter(plan),
        lambda: measuring_chapter(plan),
        lambda: settings_chapter(plan),
        lambda: steps_chapter(plan),
        lambda: findings_chapter(plan),
    )
    blocks = tuple(block for chapter in chapters for block in chapter())
    title, machine = plan_title(plan), project.design.machine
    return Document(machine.name, title.removeprefix(f"{machine.name}, "), blocks, (width_mm, height_mm), title)


def book_paper_mm(size: str) -> tuple[float, float]:
    """Return the page of a book for a workshop's paper: Letter where the paper is of that family, else A4."""
    ansi = size.strip().lower() in {name.lower() for name in _ANSI}
    return SIZES_MM["Letter"] if ansi else _A4
