"""SVG files read: units, transforms, copies, what is hidden, and files that are not to be trusted."""

from math import pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.errors import FaultsError
from scantling.shapes import svg_tree
from scantling.shapes.edges import Arc
from scantling.shapes.outline import Circle
from scantling.shapes.svg import read_svg

nm = 1e-6
HEAD = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
SQUARE = '<rect x="10" y="10" width="80" height="60"/>'


def svg(body, size='width="100mm" height="100mm" viewBox="0 0 100 100"'):
    return f"<svg {HEAD} {size}>{body}</svg>".encode()


def read(body, size='width="100mm" height="100mm" viewBox="0 0 100 100"', **options):
    return read_svg(svg(body, size), "plate.svg", **options)


def fault_of(data, **options):
    with pytest.raises(FaultsError) as caught:
        read_svg(data, "plate.svg", **options)
    (fault,) = caught.value.faults
    assert fault.where.file == "plate.svg"
    assert fault.mend
    return fault


def codes(drawing):
    return [note.code for note in drawing.notes]


def box(drawing):
    e = drawing.extents
    return (e.x_min_mm, e.y_min_mm, e.x_max_mm, e.y_max_mm)


def test_a_plate_with_holes_upright():
    outline = read(f'{SQUARE}<circle cx="30" cy="20" r="4"/><rect x="50" y="50" width="10" height="5"/>').only()
    assert outline.circles == (Circle(pytest.approx((30, 80)), pytest.approx(4)),)
    assert outline.area_mm2 == pytest.approx(4800 - 16 * pi - 50, abs=nm)
    assert outline.windows[0].extents.y_min_mm == pytest.approx(45)


@pytest.mark.outside
def test_rounded_rectangles_in_groups():
    # Source: meerk40t/svgelements test/test_bbox.py (public repository): box 50 51 70 61; moved by 2 and doubled
    # by translate(2) then scale(2) in the library's order of writing: 104 102 144 122
    page = 'width="200mm" height="200mm" viewBox="0 0 200 200"'
    plain = read('<rect x="50" y="51" width="20" height="10" rx="3"/>', page)
    assert box(plain) == pytest.approx((50, 200 - 61, 70, 200 - 51), abs=nm)
    moved = read('<g transform="scale(2) translate(2)"><rect x="50" y="51" width="20" height="10" rx="3"/></g>', page)
    assert box(moved) == pytest.approx((104, 200 - 122, 144, 200 - 102), abs=nm)
    assert plain.only().area_mm2 == pytest.approx(200 - (4 - pi) * 9, abs=nm)
    assert sum(isinstance(edge, Arc) for edge in moved.only().boundary.edges) == 4


@pytest.mark.parametrize(
    ("size", "mm"),
    [
        ('width="100mm" height="100mm" viewBox="0 0 100 100"', 1),
        ('width="4in" height="4in" viewBox="0 0 4 4"', 25.4),
        ('width="10cm" height="10cm" viewBox="0 0 200 200"', 0.5),
        ('width="288pt" height="288pt" viewBox="0 0 288 288"', 25.4 / 72),
        ('width="100mm" height="100mm"', 25.4 / 96),
        ('width="100mm" height="50mm" viewBox="0 0 100 100"', 0.5),
    ],
)
def test_units(size, mm):
    # 1 in = 25.4 mm, 1 pt = 1/72 in, 1 px = 1/96 in (CSS); a view box fits into the smaller side
    (outline,) = read('<rect x="1" y="1" width="2" height="1"/>', size).outlines
    assert outline.extents.width_mm == pytest.approx(2 * mm)
    assert outline.extents.height_mm == pytest.approx(mm)


def test_a_stated_unit_is_that_of_the_coordinates():
    for size in ('width="100" height="100" viewBox="0 0 50 50"', 'viewBox="0 0 50 50"', 'width="50" height="50"'):
        (outline,) = read('<rect x="10" y="10" width="20" height="10"/>', size, unit="mm").outlines
        assert outline.extents.width_mm == pytest.approx(20)
    other = read(SQUARE, unit="in")
    assert other.extents.width_mm == pytest.approx(80 * 25.4)
    assert codes(other) == ["SHAPE-58"]
    assert codes(read(SQUARE, unit="mm")) == []


@pytest.mark.parametrize("length", ["100", "100px", "100%", "5em", "1e3", "mm"])
def test_pixels_are_no_length(length):
    assert fault_of(svg(SQUARE, 'viewBox="0 0 9 9"')).code == "SHAPE-04"
    fault = fault_of(svg(SQUARE, f'width="{length}" height="{length}"'))
    assert fault.code == "SHAPE-04"
    assert "unit: mm" in fault.mend


def test_paths_with_arcs_curves_and_holes():
    slot = "M20 40 h30 a10 10 0 0 1 0 20 h-30 a10 10 0 0 1 0 -20 z"
    outline = read(f'<path fill-rule="evenodd" d="M0 0 H100 V100 H0 Z {slot}"/>').only()
    assert outline.area_mm2 == pytest.approx(10000 - 600 - 100 * pi, abs=nm)
    curved = read('<path d="M0 50 C0 50 30 0 60 50 Q80 80 100 50 V90 H0 Z"/>')
    assert codes(curved) == ["SHAPE-55"]
    # areas under the curves by their Bernstein integrals: cubic 3/20 sums, quadratic a third of the triangle
    cubic = under([(0, 50), (0, 50), (30, 0), (60, 50)])
    quadratic = under([(60, 50), (60 + 40 / 3, 70), (100 - 40 / 3, 70), (100, 50)])
    assert curved.only().area_mm2 == pytest.approx(90 * 100 - cubic - quadratic, abs=1.5)


def under(p):
    """Integral of y dx along a cubic, by a fine sum."""
    n, total, before = 20000, 0.0, p[0]
    for k in range(1, n + 1):
        t = k / n
        w = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3]
        here = tuple(sum(a * q[i] for a, q in zip(w, p, strict=True)) for i in (0, 1))
        total += (here[0] - before[0]) * (here[1] + before[1]) / 2
        before = here
    return total


def test_circles_stay_circles():
    for body in (
        '<circle cx="50" cy="40" r="20"/>',
        '<ellipse cx="50" cy="40" rx="20" ry="20"/>',
        '<ellipse cx="50" cy="20" rx="20" ry="10" transform="scale(1 2)"/>',
        '<path d="M30 40 a20 20 0 1 0 40 0 a20 20 0 1 0 -40 0 z"/>',
        '<circle r="10" transform="translate(50 40) rotate(33) scale(-2 2)"/>',
        '<path d="M70 40 C70 51.0457 61.0457 60 50 60 38.9543 60 30 51.0457 30 40 '
        '30 28.9543 38.9543 20 50 20 61.0457 20 70 28.9543 70 40Z"/>',
    ):
        shape = read(body).only().boundary
        assert isinstance(shape, Circle), body
        assert shape.centre == pytest.approx((50, 60), abs=0.01)
        assert shape.radius_mm == pytest.approx(20, abs=0.01)


def test_ellipses_keep_within_the_tolerance():
    drawing = read('<ellipse cx="50" cy="50" rx="40" ry="15" transform="rotate(20 50 50)"/>')
    assert codes(drawing) == ["SHAPE-55"]
    assert drawing.only().area_mm2 == pytest.approx(pi * 600, abs=0.02 * drawing.only().perimeter_mm)


def test_copies_definitions_and_symbols():
    body = f"""{SQUARE}
      <defs><circle id="hole" r="3"/></defs><symbol id="slot"><rect width="8" height="4"/></symbol>
      <use href="#hole" x="30" y="40"/><use xlink:href="#hole" transform="translate(60 40) scale(2)"/>
      <use href="#slot" x="40" y="60"/>
      <mask id="m"><rect width="100" height="100"/></mask><clipPath id="c"><rect width="9" height="9"/></clipPath>
      <pattern id="p"><rect width="5" height="5"/></pattern><marker id="k"><path d="M0 0h9v9z"/></marker>"""
    outline = read(body).only()
    assert sorted(circle.radius_mm for circle in outline.circles) == pytest.approx([3, 6])
    assert len(outline.windows) == 1


def test_what_is_hidden_is_left_out_and_told():
    body = f"""{SQUARE}<style>.off{{display:none}}</style>
      <rect width="5" height="5" style="display:none"/><g display="none"><rect width="6" height="6"/></g>
      <rect width="5" height="5" visibility="hidden"/><rect width="5" height="5" class="off"/>
      <rect width="5" height="5" fill="none"/><rect width="5" height="5" opacity="0"/>
      <rect x="20" y="20" width="5" height="5" fill="none" stroke="black"/>
      <text>PLY</text><image href="x.png" width="9" height="9"/>"""
    drawing = read(body)
    assert len(drawing.only().windows) == 1
    assert codes(drawing) == ["SHAPE-54", "SHAPE-56"]
    assert "5 hidden" in drawing.notes[0].what
    assert "1 image, 1 text" in drawing.notes[1].what


def test_clips_are_not_applied_and_that_is_told():
    assert codes(read(f'<g clip-path="url(#c)">{SQUARE}</g>')) == ["SHAPE-59"]


def test_layers_by_label_or_identifier():
    space = 'xmlns:x="http://example.org/editor"'
    body = f'<g {space} x:label="Cut" id="l1" transform="translate(5 0)">{SQUARE}</g>'
    body += '<g id="engrave"><rect x="30" y="30" width="5" height="5"/></g>'
    assert len(read(body).only().windows) == 1
    cut = read(body, layer="cut")
    assert cut.only().windows == ()
    assert cut.extents.x_min_mm == pytest.approx(15)
    assert read(body, layer="engrave").only().area_mm2 == pytest.approx(25)
    assert cut.layers == ("Cut", "engrave")
    fault = fault_of(svg(body), layer="engrav")
    assert (fault.code, "engrave" in fault.mend) == ("SHAPE-06", True)


def test_lines_are_joined_and_open_ones_told():
    lines = '<line x1="0" y1="0" x2="50" y2="0"/><polyline fill="none" points="50,0.03 50,40 0,40 0,0"/>'
    body = f'<g stroke="#000">{lines}</g>'
    drawing = read(body)
    assert codes(drawing) == ["SHAPE-51"]
    assert drawing.only().area_mm2 == pytest.approx(2000, abs=2)
    fault = fault_of(svg('<path d="M0 0 H50 V30 H0" fill="none" stroke="red"/>'))
    assert (fault.code, "30 mm apart" in fault.what) == ("SHAPE-08", True)


@pytest.mark.outside
def test_a_page_in_mm_against_published_figures():
    # Source: svgelements 1.9.6 lengths and boxes of the same text at 96 pixels per inch
    import io

    from svgelements import SVG, Path

    body = '<g transform="rotate(12 50 50)"><path d="M20 20 L80 25 L75 70 L40 90 Z"/></g>'
    drawing = read(body)
    shapes = [e for e in SVG.parse(io.BytesIO(svg(body)), ppi=96).elements() if isinstance(e, Path)]
    length = sum(Path(e).length() for e in shapes) * 25.4 / 96
    left, top, right, bottom = (v * 25.4 / 96 for v in shapes[0].bbox())
    assert drawing.only().perimeter_mm == pytest.approx(length, rel=1e-6)
    assert box(drawing) == pytest.approx((left, 100 - bottom, right, 100 - top), abs=1e-4)


BODY = b"""<svg xmlns="http://www.w3.org/2000/svg" width="99mm" height="99mm" viewBox="0 0 99 99">
<rect width="50" height="50"/><text>&b;</text></svg>"""
BOMB = b'<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>' + BODY
OUTSIDE = b'<!DOCTYPE svg [<!ENTITY b SYSTEM "file:///etc/hostname">]>' + BODY
PARAMETER = b'<!DOCTYPE svg [<!ENTITY % b SYSTEM "file:///etc/hostname">%b;]>' + BODY
PUBLIC = b'"-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd"'
PLAIN_DOCTYPE = b"<!DOCTYPE svg PUBLIC " + PUBLIC + b">" + BODY.replace(b"&b;", b"b")


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "SHAPE-02"),
        (b"hello", "SHAPE-02"),
        (b"<html></html>", "SHAPE-02"),
        (svg(SQUARE)[:-10], "SHAPE-02"),
        (BOMB, "SHAPE-14"),
        (OUTSIDE, "SHAPE-14"),
        (PARAMETER, "SHAPE-14"),
        (svg("<text>nothing</text>"), "SHAPE-07"),
        (svg('<path d="M0 0 L40 40 L40 0 L0 40 Z"/>'), "SHAPE-09"),
        (svg('<rect width="40" height="40"/><rect x="20" y="20" width="40" height="40"/>'), "SHAPE-10"),
        (svg('<rect width="1e300" height="5"/>'), "SHAPE-12"),
        (svg("<g>" * 3000 + "</g>" * 3000), "SHAPE-15"),
        (svg('<g id="a"><use href="#a"/></g>'), "SHAPE-15"),
        (svg('<symbol id="s" viewBox="0 0 2 2"><rect width="1" height="1"/></symbol><use href="#s"/>'), "SHAPE-02"),
        ("<svg/>".encode("utf-16")[:9], "SHAPE-02"),
    ],
)
def test_files_that_cannot_be_used(data, code):
    assert fault_of(data).code == code


def test_a_cut_off_file_tells_the_line():
    assert fault_of(b'<svg xmlns="http://www.w3.org/2000/svg">\n<g>\n<rect').where.line == 3


def test_a_plain_doctype_is_no_harm():
    assert read_svg(PLAIN_DOCTYPE, "p.svg").only().area_mm2 == pytest.approx(2500)


def test_copies_that_multiply(monkeypatch):
    monkeypatch.setattr(svg_tree, "MOST_ELEMENTS", 5000)
    levels = '<g id="l0"><rect width="1" height="1"/></g>'
    for k in range(1, 12):
        levels += f'<g id="l{k}">' + f'<use href="#l{k - 1}"/>' * 10 + "</g>"
    assert fault_of(svg(f"<defs>{levels}</defs><use href='#l11'/>")).code == "SHAPE-01"


GOOD = svg(
    f'{SQUARE}<g transform="rotate(5)"><path d="M30 30 c5 5 9 9 3 15 z"/></g>'
    '<use href="#x"/><circle id="x" cx="70" cy="40" r="5"/>'
)
JUNK = st.sampled_from([b"<", b"&", b"9", b"-", b'"', b"\x00", b"e9", b"nan", b"z m", b"%"])


@given(st.lists(st.tuples(st.integers(0, len(GOOD) - 1), JUNK), max_size=4))
@settings(max_examples=120, deadline=None)
def test_damaged_files_are_read_or_refused(damages):
    data = bytearray(GOOD)
    for at, junk in damages:
        data[at : at + len(junk)] = junk
    assert outcome(bytes(data))


def outcome(data):
    """A drawing or coded faults; anything else is raised."""
    try:
        return read_svg(data, "plate.svg")
    except FaultsError as error:
        return all(fault.code.startswith("SHAPE-") for fault in error.faults)


def test_the_root_of_two():
    (outline,) = read('<rect x="40" y="40" width="20" height="20" transform="rotate(45 50 50)"/>').outlines
    assert outline.extents.width_mm == pytest.approx(20 * sqrt(2))
