"""The plotter of the examples as a plan, with a purchase counted by hand; panels made in code; PDFs measured."""

from __future__ import annotations

import io
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pdfplumber

from scantling.build.case import Case
from scantling.build.lengths import cut_length_um
from scantling.build.reference import reference_build
from scantling.checks.all import run_checks
from scantling.choosing.result import Cut, Order, OrderLine, Purchase, Supply
from scantling.model.build import Key
from scantling.plans.making import make_plan
from scantling.plans.sheets.job import TemplateHole, TemplateJob
from scantling.reading.project import read_project
from scantling.shapes.outline import Outline, polygon_loop, rectangle_loop

PLOTTER = Path(__file__).parents[2] / "examples" / "plotter"
PT_MM = 25.4 / 72  # a PDF's unit is 1/72 in
EXACT_MM = 0.02  # the promised looseness


def plotter_case(copies=2, **workshop):
    """Return the plotter in the village workshop; keywords replace fields of the workshop."""
    project = read_project(PLOTTER, "village", copies)
    return Case(replace(project, workshop=project.workshop.model_copy(update=workshop)))


def plotter_plan(copies=2, changes=None, bought=True, **workshop):
    """Return a plan of the plotter with reference parts and, where bought, a purchase counted by hand."""
    case = plotter_case(copies, **workshop)
    answers = {Key("get", "carriage"): "printed PETG", **(changes or {})}
    build = reference_build(case, copies).replacing(answers)
    purchase = hand_purchase(case, build) if bought else None
    return make_plan(case, build, run_checks(case, build), purchase, next_builder=8123 if bought else None)


def line(offer, part, packs, pack, price, unit="piece", lead=6, bar=0, board=(0, 0)):
    """Return an order's line without tax of its own."""
    return OrderLine(offer, part, unit, packs, pack, price, packs * price, 0, packs * 20, lead, bar, board)


def order(vendor, lines, tax, shipping, currency="EUR", rate=Fraction(1), home=None, lead=6):
    """Return an order whose total is goods, tax and shipping."""
    goods = sum(one.goods_minor for one in lines)
    total = goods + tax + shipping
    home = total if home is None else home
    return Order(vendor, currency, tuple(lines), goods, tax, shipping, 0, 0, 0, 0, total, rate, home, 500, ("x",), lead)


def hand_purchase(case, build):
    """Return what two plotters take, bought at two vendors: post 92.70 + 20 % + 8.30, yard 8.70."""
    reader = case.reader(build)
    rod, belt = reader.derive(cut_length_um, "x-rod"), reader.derive(cut_length_um, "x-belt")
    post = [
        line("post-motor", "motor-17", 2, 1, 860),
        line("post-pulley", "pulley-20", 1, 2, 360),
        line("post-belt", "belt-6", 1, 1, 410, "length", bar=2_000_000),
        line("post-rod", "rod-8-hardened", 2, 1, 980, "length", bar=1_000_000),
        line("post-bushing", "bushing-8-ball", 3, 4, 390),
        line("post-petg", "petg", 1, 1000, 1580, "g"),
        line("post-nut", "M3 lock nut", 1, 50, 230),
    ]
    yard = [
        line("yard-ply", "ply-6", 1, 1, 490, "board", 1, board=(600_000, 300_000)),
        line("yard-m3x10", "M3x10 socket head screw", 1, 10, 140, lead=1),
        line("yard-m3x16", "M3x16 socket head screw", 1, 10, 150, lead=1),
        line("yard-washer", "M3 washer", 1, 25, 90, lead=1),
    ]
    goods = sum(one.goods_minor for one in post)
    supplies = (
        Supply("M3 lock nut", "piece", 4, 0, 0, 50),
        Supply("M3 washer", "piece", 16, 0, 0, 25),
        Supply("M3x10 socket head screw", "piece", 8, 0, 0, 10),
        Supply("M3x16 socket head screw", "piece", 4, 0, 0, 10),
        Supply("belt-6", "length", 2, 0, 0, 2, belt),
        Supply("bushing-8-ball", "piece", 8, 1, 0, 12),
        Supply("motor-17", "piece", 2, 0, 0, 2),
        Supply("petg", "g", 116, 0, 0, 1000),
        Supply("ply-6", "board", 1, 0, 0, 1, 0, (600_000, 300_000)),
        Supply("pulley-20", "piece", 2, 0, 0, 2),
        Supply("rod-8-hardened", "length", 4, 0, 0, 4, rod),
    )
    rough = rod + 2 * 500 + 1200  # faced 0.5 mm on both ends, a kerf of 1.2 mm
    cuts = (
        Cut("belt-6", "post-belt", 2_000_000, ((belt, 2),), 1, 2_000_000 - 2 * belt),
        Cut("rod-8-hardened", "post-rod", 1_000_000, ((rod, 2),), 2, 1_000_000 - 2 * rough),
    )
    orders = (order("post", post, round(goods * 0.2), 830), order("yard", yard, 0, 0, lead=1))
    return Purchase(orders, supplies, cuts, "EUR")


def hole(mark, x, y, diameter, **more):
    """Return a hole whose bit is its diameter."""
    given = {"bit": f"{diameter:g}", "bit_mm": diameter, "before": ("2",)} | more
    return TemplateHole(mark, (x, y), diameter, **given)


def motor_holes(x, y, group, first=1):
    """Return the square and the collar of a motor, 31 mm apart."""
    corners = ((-15.5, -15.5), (15.5, -15.5), (15.5, 15.5), (-15.5, 15.5))
    square = [
        hole(
            f"A{first + k}",
            x + dx,
            y + dy,
            3.4,
            bit="3.5",
            bit_mm=3.5,
            care=True,
            slack_mm=0.3,
            group=group,
            ghosts_mm=(5.5, 7.0),
            purpose="motor screw",
        )
        for k, (dx, dy) in enumerate(corners)
    ]
    return [*square, hole(f"B{first}", x, y, 22.5, bit=None, bit_mm=None, before=(), group=group, purpose="collar")]


def portal_job(**more):
    """Return a portal of 400 × 375 mm, open at its foot, with two motors, two rod seats and screws all around."""
    corners = [(0, 0), (60, 0), (60, 312), (340, 312), (340, 0), (400, 0), (400, 375), (0, 375)]
    holes = [*motor_holes(30, 60, "left"), *motor_holes(370, 60, "right", 5)]
    holes += [hole(f"C{k}", x, 330, 10.0, care=True, group="rods") for k, x in enumerate((54, 346), 1)]
    screws = [(10, 365), (130, 365), (270, 365), (390, 365), (8, 20), (392, 20), (8, 220), (392, 220)]
    holes += [hole(f"D{k}", x, y, 4.5, ghosts_mm=(7.0, 12.0)) for k, (x, y) in enumerate(screws, 1)]
    holes += [hole("E1", 200, 340, 4.5, slot_mm=8.0, slot_turn_deg=30.0)]
    given = {"machine": "Test", "revision": "2", "material": "plywood", "thickness": "9 mm nominal"} | more
    given = {"copies": "1 in one machine", "face_up": "outside face", "up": "the crosspiece", "grain": "y"} | given
    return TemplateJob("portal", "Portal", Outline(polygon_loop(corners)), tuple(holes), **given)


def board_job(width, height, holes=(), **more):
    """Return a plain rectangle with holes."""
    return TemplateJob("board", "Board", Outline(rectangle_loop(width, height)), tuple(holes), **more)


def opened(pdf):
    """Open the bytes of a PDF with a reader that is not ours."""
    return pdfplumber.open(io.BytesIO(pdf))


def rings(page):
    """Return the whole circles of a page as (x, y, width, height) in mm, from the lower left corner."""
    found = []
    for curve in page.curves:
        parts = [step[0] for step in curve["path"]]
        if parts.count("c") >= 4 and "l" not in parts:
            x0, x1, y0, y1 = (curve[k] * PT_MM for k in ("x0", "x1", "y0", "y1"))
            found.append(((x0 + x1) / 2, (y0 + y1) / 2, x1 - x0, y1 - y0))
    return found


def diamonds(page, size=4.0):
    """Return the middles of the seam crosses of a page, which carry a diamond of 4 mm."""
    found = []
    for shape in [*page.curves, *page.rects]:
        if [step[0] for step in shape["path"]][:4] == ["m", "l", "l", "l"]:
            x0, x1, y0, y1 = (shape[k] * PT_MM for k in ("x0", "x1", "y0", "y1"))
            if abs(x1 - x0 - size) < 0.1 and abs(y1 - y0 - size) < 0.1:
                found.append((round((x0 + x1) / 2, 4), round((y0 + y1) / 2, 4)))
    return sorted(found)


def longest(page, upright):
    """Return the length of the check bar of a page in mm: the longest line that has ticks at both ends."""
    long, across = ("y", "x") if upright else ("x", "y")
    lines = page.lines
    ticks = [one for one in lines if 4.0 < (one[f"{across}1"] - one[f"{across}0"]) * PT_MM < 5.0]
    bars = [one for one in lines if (one[f"{long}1"] - one[f"{long}0"]) * PT_MM > 100]
    lengths = [(bar[f"{long}1"] - bar[f"{long}0"]) * PT_MM for bar in bars if _has_ends(bar, ticks, long, across)]
    return max(lengths, default=0.0)


def _has_ends(bar, ticks, long, across):
    """True where a tick stands across each end of a bar, in its middle."""

    def ticked(end):
        return any(
            abs(tick[f"{long}0"] - end) < 0.05
            and abs((tick[f"{across}0"] + tick[f"{across}1"]) / 2 - bar[f"{across}0"]) < 0.05
            for tick in ticks
        )

    return ticked(bar[f"{long}0"]) and ticked(bar[f"{long}1"])
