"""SVG and DXF files of pages, read back by readers that are not ours."""

import io
import os
import subprocess
import sys
from math import cos, radians, sin
from xml.etree import ElementTree

import ezdxf
import pytest
from ezdxf import recover
from svgelements import SVG, Group, Path, Shape

from scantling.drawing.dxf import to_dxf
from scantling.drawing.primitives import Anchor, Arc, HoleMark, Line, Page, Pen, Polygon, Text, View, Window
from scantling.drawing.svg import to_svg

ITEMS = (
    Polygon(((10, 10), (110, 10), (110, 60), (10, 60)), Pen.CUT),
    HoleMark((30, 30), 8.4, "A 8.4"),
    Arc((80, 40), 12, Pen.GHOST, 30, 200),
    Arc((80, 40), 5, Pen.GHOST, 300, -90),
    Line((10, 70), (90, 70), Pen.SEAM),
    Text((20, 80), "outside face · Łódź", 3, anchor=Anchor.MIDDLE, turn_deg=30, centred=True),
    Polygon(((90, 10), (95, 10), (95, 15)), Pen.WASTE, filled=True),
)
PAGE = Page(120, 100, ITEMS, "Panel")
PX_MM = 25.4 / 96


@pytest.mark.outside
def test_svg_read_back_by_a_second_reader():
    # Source: svgelements 1.9.6, boxes in pixels of 1/96 in (CSS)
    svg = SVG.parse(io.BytesIO(to_svg(PAGE)), ppi=96)
    assert float(svg.width) * PX_MM == pytest.approx(120)
    boxes = {}
    for group in svg:
        for element in group if isinstance(group, Group) else ():
            if isinstance(element, Shape):
                box = [value * PX_MM for value in Path(element).bbox(with_stroke=False)]
                boxes.setdefault(group.values["class"], []).append(box)
    assert boxes["cut"][0] == pytest.approx([10, 40, 110, 90], abs=1e-3)
    assert boxes["hole"][0] == pytest.approx([25.8, 65.8, 34.2, 74.2], abs=1e-3)
    assert len(boxes["centre"]) == 2
    # the long arc passes the top, y = 52, and the left, x = 68; it starts at 30 and ends at 230 degrees
    left, top, right, bottom = boxes["ghost"][0]
    assert (left, top) == pytest.approx((68, 100 - 52), abs=1e-3)
    assert right == pytest.approx(80 + 12 * cos(radians(30)), abs=1e-3)
    assert bottom == pytest.approx(100 - (40 + 12 * sin(radians(230))), abs=1e-3)
    # the short one runs clockwise from 300 to 210 degrees, through the foot at 270
    left, _, right, bottom = boxes["ghost"][1]
    assert bottom == pytest.approx(65, abs=1e-3)
    assert left == pytest.approx(80 - 5 * cos(radians(30)), abs=1e-3)
    assert right == pytest.approx(80 + 5 * cos(radians(60)), abs=1e-3)


def test_svg_is_well_formed_and_harmless():
    nasty = Page(100, 100, (Text((10, 10), '<script>"&\x00\x0b', 3),), "<title>&")
    root = ElementTree.fromstring(to_svg(nasty))
    assert root.attrib["width"] == "100mm"
    assert root.attrib["viewBox"] == "0 0 100 100"
    texts = [element.text for element in root.iter("{http://www.w3.org/2000/svg}text")]
    assert texts == ['<script>"&']


def test_svg_cuts_off_a_text_at_its_window():
    page = Page(100, 100, (View((Text((0, 5), "runs far out of it", 5),), Window(0, 0, 20, 20), (40, 40)),))
    inner = [e for e in ElementTree.fromstring(to_svg(page)).iter() if e.attrib.get("overflow") == "hidden"]
    assert [(e.attrib["x"], e.attrib["y"], e.attrib["width"], e.attrib["height"]) for e in inner] == [
        ("40", "40", "20", "20")
    ]


@pytest.mark.outside
def test_dxf_read_back_by_a_second_reader():
    # Source: ezdxf 1.4 recover and audit of the written bytes
    document, auditor = recover.read(io.BytesIO(to_dxf(PAGE)))
    assert (auditor.errors, auditor.fixes) == ([], [])
    assert document.header["$INSUNITS"] == 4
    by_layer = {}
    for entity in document.modelspace():
        by_layer.setdefault(entity.dxf.layer, []).append(entity)
    assert {"cut", "hole", "centre", "ghost", "seam", "note", "waste"} == set(by_layer)
    (circle,) = by_layer["hole"]
    assert (circle.dxftype(), circle.dxf.radius) == ("CIRCLE", 4.2)
    assert tuple(circle.dxf.center)[:2] == (30, 30)
    (outline,) = by_layer["cut"]
    assert outline.closed
    assert [tuple(p) for p in outline.get_points("xy")] == [(10, 10), (110, 10), (110, 60), (10, 60)]
    long, short = by_layer["ghost"]
    assert (long.dxf.start_angle, long.dxf.end_angle) == pytest.approx((30, 230))
    assert (short.dxf.start_angle, short.dxf.end_angle) == pytest.approx((210, 300))
    texts = [entity for entity in by_layer["note"] if entity.dxftype() == "TEXT"]
    assert {text.dxf.text for text in texts} == {"A 8.4", "outside face · Łódź"}


def test_dxf_leaves_out_what_a_machine_must_not_cut():
    data = to_dxf(PAGE, leave_out=(Pen.PAPER, Pen.NOTE, Pen.GHOST, Pen.CENTRE))
    document = ezdxf.read(io.StringIO(data.decode()))
    assert {entity.dxf.layer for entity in document.modelspace()} == {"cut", "hole", "seam", "waste"}


def test_dxf_of_a_corrected_view_has_chords_on_the_ellipse():
    view = View(
        (Arc((20, 20), 10, Pen.HOLE), Arc((20, 20), 5, Pen.HOLE, 0, 90)), Window(0, 0, 40, 40), (0, 0), 1.01, 0.99
    )
    document = ezdxf.read(io.StringIO(to_dxf(Page(50, 50, (view,))).decode()))
    whole, part = document.modelspace()
    for x, y in whole.get_points("xy"):
        assert ((x - 20.2) / 10.1) ** 2 + ((y - 19.8) / 9.9) ** 2 == pytest.approx(1, abs=1e-6)
    assert (whole.closed, part.closed) == (True, False)


def test_the_library_s_switch_is_put_back():
    before = ezdxf.options.write_fixed_meta_data_for_testing
    to_dxf(PAGE)
    assert ezdxf.options.write_fixed_meta_data_for_testing == before


def test_the_same_page_gives_the_same_bytes_in_another_process():
    assert to_svg(PAGE) == to_svg(PAGE)
    script = (
        "import hashlib\nfrom scantling.drawing.primitives import *\nfrom scantling.drawing.dxf import to_dxf\n"
        "p = Page(120, 100, (HoleMark((30, 30), 8.4, 'A'), Line((0, 0), (9, 9), Pen.SEAM)))\n"
        "print(hashlib.sha256(to_dxf(p)).hexdigest())"
    )
    sums = set()
    for seed in ("1", "2"):
        environment = {**os.environ, "PYTHONHASHSEED": seed}
        sums.add(
            subprocess.run([sys.executable, "-c", script], capture_output=True, env=environment, check=True).stdout
        )
    assert len(sums) == 1
