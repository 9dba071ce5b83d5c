"""What a design or a workshop says for people is told where people read: days, notes, groups, licence, region."""

from datetime import date

import pytest
from planskit import hand_purchase, plotter_case

from scantling.book.verdict_chapters import standing
from scantling.build.case import Case
from scantling.build.holes import sheet_drawing, sheet_holes
from scantling.build.reference import reference_build
from scantling.model.build import Key
from scantling.model.workshop import Actual, Customs, Rate
from scantling.plans.orders import order_sheets
from scantling.plans.parts_list import parts_lines, parts_table
from scantling.plans.sheets.from_plan import thickness_words

DAY = date(2026, 2, 27)


def with_design(case, **sections):
    """Return the case with sections of its design replaced."""
    project = case.project
    design = project.design.model_copy(update=sections)
    return Case(type(project)(**{**vars(project), "design": design}))


def built(case):
    return reference_build(case, 2).replacing({Key("get", "carriage"): "printed PETG"})


def vendors(case, **fields):
    return {name: one.model_copy(update=fields) for name, one in case.project.workshop.vendors.items()}


def test_an_order_tells_the_day_of_each_figure_that_moves():
    post = vendors(plotter_case(), prices_of=date(2026, 2, 1), customs=Customs(duty="5 %", as_of=date(2026, 1, 1)))
    case = plotter_case(currency="CAD", rates={"EUR": Rate(rate="1.52", as_of=DAY)}, vendors=post)
    sheets = order_sheets(case, hand_purchase(case, built(case)))
    told = ("prices as of 2026-02-01", "rate of EUR as of 2026-02-27", "customs as of 2026-01-01")
    assert sheets[0].dated == told


def test_an_order_in_the_workshop_s_own_currency_has_no_rate():
    case = plotter_case()
    case = plotter_case(vendors=vendors(case, prices_of=None, customs=None))
    assert {sheet.dated for sheet in order_sheets(case, hand_purchase(case, built(case)))} == {()}


@pytest.mark.parametrize(("day", "ending"), [(DAY, "measured on 2026-02-27"), (None, "measured")])
def test_a_measured_thickness_says_when(day, ending):
    actual = Actual(part="ply-6", size="thickness", value="5.8 mm ± 0.1 mm", measured_on=day)
    case = plotter_case(actuals=(actual,))
    reader = case.reader(built(case))
    drawing = next(one for one in drawings(reader) if one.part == "ply-6")
    assert thickness_words(reader, drawing) == f"5.8 mm {ending}"


def drawings(reader):
    return [reader.derive(sheet_drawing, sheet) for sheet in reader.design.sheets]


def test_a_note_and_a_group_of_a_place_stand_in_the_parts_list():
    case = plotter_case()
    places = case.project.design.places
    told = places["x-rod"].model_copy(update={"note": "Roll it on glass.", "group": "x"})
    case = with_design(case, places={**places, "x-rod": told})
    line = next(one for one in parts_lines(case, built(case)) if "x-rod" in one.remarks)
    assert line.group == "x"
    assert "Roll it on glass; " in line.remarks
    heading, *rows = parts_table(parts_lines(case, built(case)))
    assert heading[-1] == "group"
    assert [row[-1] for row in rows if row[5] == line.reference] == ["x"]


def test_a_note_of_a_hole_stands_with_what_it_is_for():
    case = plotter_case()
    name, sheet = next((name, one) for name, one in case.project.design.sheets.items() if one.holes)
    first = sheet.holes[0].model_copy(update={"note": "Drill from the face."})
    case = with_design(
        case,
        sheets={
            **case.project.design.sheets,
            name: sheet.model_copy(update={"holes": (first, *sheet.holes[1:])}),
        },
    )
    reasons = [hole.why for hole in case.reader(built(case)).derive(sheet_holes, name)]
    assert any(why.endswith("(Drill from the face)") for why in reasons)


def test_licence_and_region_and_what_is_invented_are_said():
    project = plotter_case(region="an island", invented=True).project
    machine = project.design.machine.model_copy(update={"licence": "CC-BY-SA-4.0", "invented": True})
    project = with_design(Case(project), machine=machine).project
    assert standing(project) == (
        "Licence: CC-BY-SA-4.0. Region: an island. The machine is an invented example. "
        "The workshop, its vendors and their prices are invented."
    )
    bare = with_design(plotter_case(region="", invented=False), machine=machine.model_copy(update={"licence": ""}))
    assert standing(bare.project) == "The machine is an invented example."
