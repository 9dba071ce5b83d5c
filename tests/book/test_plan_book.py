"""The short document of a plan: its chapters, its paper, its bytes; texts stay texts whatever is written in them."""

from dataclasses import replace

import pytest
from planskit import PT_MM, opened, plotter_plan

from scantling.book.bar_figure import bar_figure
from scantling.book.document import (
    Document,
    Figure,
    Heading,
    Items,
    Note,
    PageBreak,
    Paragraph,
    Table,
    full_columns,
)
from scantling.book.pdf import document_pdf
from scantling.book.plan_book import book_paper_mm, plan_document, plan_pdf
from scantling.build.case import Case
from scantling.choosing.result import Concern, Conflict, Infeasible, Miss, Waived
from scantling.findings import Finding, NotLookedAt, Verdict
from scantling.model.build import Key
from scantling.model.workshop import Paper
from scantling.plans.cutting import BarPlan, CutPiece
from scantling.plans.summary import CALCULATION


@pytest.fixture(scope="module")
def plan():
    return plotter_plan(changes={Key("part", "x-rod"): "rod-8-soft"})


@pytest.fixture(scope="module")
def book(plan):
    return plan_pdf(plan, {})


def headings(document, level=1):
    return [block.text for block in document.blocks if isinstance(block, Heading) and block.level == level]


def text_of(pdf):
    with opened(pdf) as read:
        return [page.extract_text() for page in read.pages]


def test_chapters_in_their_order(plan):
    document = plan_document(plan, {})
    assert headings(document) == [
        "What is chosen instead of the reference",
        "Money and dates",
        "Orders",
        "Parts list",
        "Cut list",
        "Drill schedule",
        "Prints",
        "Joints and their screws",
        "Measuring cards",
        "Setting-up sheet",
        "Steps",
        "All checks",
    ]
    assert (document.title, document.subtitle) == ("Sedge", "revision 3, Village school workshop, 2 copies")


def test_every_page_is_numbered_and_names_the_machine(book):
    pages = text_of(book)
    assert len(pages) >= 3
    for number, words in enumerate(pages, 1):
        assert f"{number} / {len(pages)}" in words
        assert "Sedge, revision 3, Village school workshop, 2 copies" in words


def test_what_a_reader_must_find(book):
    words = " ".join(" ".join(text_of(book)).split())
    for said in (
        CALCULATION,
        "local rules and licensed practice come first",
        "outlay for 2 copies 106.16 EUR",
        "cost to the next builder, one copy 81.23 EUR",
        "rod-8-hardened rod-8-soft",
        "Parts by post",
        "M3x10 socket head screw",
        "meshes/carriage.stl",
        "1. Put the motor on its panel (10 min)",
        "x: steps per mm",
        "BELT-01",
    ):
        assert said in words, said


def test_the_head_of_a_table_returns_on_every_page():
    rows = tuple((str(k), f"thing {k}") for k in range(120))
    pages = text_of(document_pdf(Document("x", "", (Table(("number", "what it is"), rows),))))
    assert len(pages) > 1
    assert all("number what it is" in words for words in pages)


@pytest.mark.outside
@pytest.mark.parametrize(("size", "wide", "high"), [("A4", 210.0, 297.0), ("Letter", 215.9, 279.4), ("A3", 210, 297)])
def test_the_book_is_on_the_paper_of_the_workshop(size, wide, high):
    # Source: ISO 216 and ANSI/ASME Y14.1, read back with pdfplumber; what is larger than a book page is printed on A4
    assert book_paper_mm(size) == (wide, high)
    with opened(plan_pdf(plotter_plan(paper=Paper(size=size), bought=False))) as pdf:
        assert pdf.pages[0].width * PT_MM == pytest.approx(wide, abs=0.05)
        assert pdf.pages[0].height * PT_MM == pytest.approx(high, abs=0.05)


def test_same_plan_same_bytes(plan, book):
    assert plan_pdf(plan, {}) == book


def test_texts_are_never_run():
    evil = '#panic("x") $x^2$ *bold* _it_ `code` @ref <label> // no \\ #import "a.typ" = head - list'
    blocks = (Heading(evil), Paragraph(evil), Items((evil,)), Note(evil, "caution"), Table((evil,), ((evil,),)))
    words = " ".join(" ".join(text_of(document_pdf(Document("t", evil, blocks, foot=evil)))).split())
    assert words.count("#panic(") == 8  # seven places, and the subtitle
    assert "*bold* _it_ `code` @ref <label>" in words


def test_signs_that_no_page_holds_are_left_out():
    (words,) = text_of(document_pdf(Document("a\x00b", "", (Paragraph("c\x07d\ud800e"),))))
    assert "ab" in words
    assert "cde" in words


def test_an_empty_column_is_not_printed():
    table = Table(("a", "b", "c"), (("1", "", "3"), ("4", "", "")), ("auto", "1", "2"), ("left", "right", "left"))
    assert full_columns(table) == Table(("a", "c"), (("1", "3"), ("4", "")), ("auto", "2"), ("left", "left"))
    assert full_columns(Table(("a", "b"), (("1", ""),), foot=(("", "9"),))).head == ("a", "b")


def test_a_new_page_begins_where_asked():
    blocks = (Paragraph("one"), PageBreak(), Paragraph("two"))
    assert len(text_of(document_pdf(Document("t", "", blocks)))) == 2


def test_bars_are_drawn_to_one_scale():
    pieces = (CutPiece(300_000, 301_000, 301_000, ("y-rod",)), CutPiece(300_000, 301_000, 603_000, ("y-rod",)))
    long = BarPlan("rod", "rod", "yard", 1_000_000, 2, pieces, 1_000, 396_000, False)
    short = BarPlan("rod", "rod", "yard", 300_000, 1, (CutPiece(300_000, 300_000, 300_000, ()),), 0, 0, True)
    figure = bar_figure((long, short), 174.0)
    assert isinstance(figure, Figure)
    assert figure.alt == "bar 1: 2 × 1000 mm of rod: 300 + 300; bar 2: 1 × 300 mm of rod: 300"
    scale = (174.0 - 34.0) / 1000
    with opened(document_pdf(Document("t", "", (figure,)))) as pdf:
        widths = sorted(round((r["x1"] - r["x0"]) * PT_MM, 2) for r in [*pdf.pages[0].rects, *pdf.pages[0].curves])
    for length_mm in (301.0, 396.0, 300.0):
        assert any(abs(width - length_mm * scale) < 0.05 for width in widths), length_mm


def test_what_is_not_sound_comes_first_with_its_mend(plan):
    bad = Finding("BELT-03", "axis x", "torque", Verdict.UNSOUND, "the motor is too weak", "curve", mend="a larger one")
    shown = replace(plan, findings=(bad, *plan.findings))
    words = " ".join(" ".join(text_of(plan_pdf(shown))).split())
    assert words.index("Verdict: unsound (2 unsound,") < words.index("the motor is too weak Mend: a larger one.")
    assert words.index("Mend: a larger one.") < words.index("Money and dates")


def test_what_was_not_looked_at_is_said(plan):
    absent = NotLookedAt("WARM-01", "warming bed", "heat: how quickly it is warm", ("warmings.bed.loss",))
    document = plan_document(replace(plan, not_looked_at=(absent, absent), unlocking=("warmings.bed.loss",)))
    texts = [block.text for block in document.blocks if isinstance(block, Paragraph)]
    assert "heat: how quickly it is warm." in texts
    assert "These facts would unlock most: warmings.bed.loss." in texts


def test_a_miss_is_told_as_such(plan):
    concerns = (Concern("check", "BELT-03", "axis x"), Concern("budget"))
    miss = Miss(plan.build, plan.purchase, (Waived(concerns[1], 50, 312),), 10616, True)
    document = plan_document(replace(plan, infeasible=Infeasible(miss, Conflict(concerns, False))))
    lists = [block.texts for block in document.blocks if isinstance(block, Items)]
    assert lists[:2] == [("check BELT-03 of axis x", "the budget"), ("the budget: 3.12 EUR over",)]
    assert "Nothing sound can be had" in headings(document, 2)


def test_a_step_that_can_hurt_carries_its_caution(plan):
    design = plan.case.project.design
    steps = {**design.steps, "motor": design.steps["motor"].model_copy(update={"caution": "Unplug it first."})}
    project = replace(plan.case.project, design=design.model_copy(update={"steps": steps}))
    shown = replace(plan, case=Case(project))
    notes = [block for block in plan_document(shown).blocks if isinstance(block, Note)]
    assert Note("Unplug it first.", "caution") in notes
