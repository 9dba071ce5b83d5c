"""DXF files that cannot be used: each says what is wrong, where, and how to mend it, and none ends in a traceback."""

import pytest
from dxfkit import dxf_bytes, lines, square
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.errors import FaultsError
from scantling.shapes import dxf_entities
from scantling.shapes.dxf import read_dxf

GOOD = dxf_bytes(lambda msp, _: (square(msp), msp.add_circle((20, 20), 3), msp.add_arc((50, 50), 5, 0, 360)))


def faults_of(data, **options):
    with pytest.raises(FaultsError) as caught:
        read_dxf(data, "plate.dxf", **options)
    for fault in caught.value.faults:
        assert fault.where.file == "plate.dxf"
        assert fault.code.startswith("SHAPE-")
        assert fault.mend
    return caught.value.faults


def fault_of(draw, insunits=4, **options):
    (fault,) = faults_of(dxf_bytes(draw, insunits=insunits), **options)
    return fault


def test_no_units():
    fault = fault_of(lambda msp, _: square(msp), insunits=0)
    assert fault.code == "SHAPE-04"
    assert "unit: mm" in fault.mend
    assert fault_of(lambda msp, _: square(msp), insunits=20).code == "SHAPE-04"  # a parsec is not cut


def test_a_unit_that_is_none():
    (fault,) = faults_of(GOOD, unit="inch")
    assert (fault.code, "did you mean" in fault.mend or "known are" in fault.mend) == ("SHAPE-05", True)


def test_an_unknown_layer_names_the_nearest():
    fault = fault_of(lambda msp, _: square(msp, layer="outline"), layer="outlin")
    assert fault.code == "SHAPE-06"
    assert "outline" in fault.mend


def test_nothing_closed():
    assert fault_of(lambda msp, _: msp.add_text("hello")).code == "SHAPE-07"
    assert fault_of(lambda msp, _: None).code == "SHAPE-07"


def test_open_outline_tells_both_ends():
    fault = fault_of(lambda msp, _: lines(msp, (0, 0), (50, 0), (50, 30), (0, 30), (0, 0.4)))
    assert fault.code == "SHAPE-08"
    assert "(0, 0) mm" in fault.what
    assert "(0, 0.4) mm" in fault.what
    assert "0.4 mm apart" in fault.what


def test_a_larger_gap_may_be_allowed():
    data = dxf_bytes(lambda msp, _: lines(msp, (0, 0), (50, 0), (50, 30), (0, 30), (0, 0.4)))
    assert read_dxf(data, "plate.dxf", gap_mm=0.5).only().area_mm2 == pytest.approx(1500, abs=1)


def test_all_open_outlines_are_told_at_once():
    def draw(msp, _):
        for k in range(3):
            lines(msp, (100 * k, 0), (100 * k + 50, 0), (100 * k + 50, 30))
        square(msp, 0, 200)

    assert [fault.code for fault in faults_of(dxf_bytes(draw))] == ["SHAPE-08"] * 3


def test_self_crossing_tells_the_place():
    fault = fault_of(lambda msp, _: msp.add_lwpolyline([(0, 0), (40, 40), (40, 0), (0, 40)], close=True))
    assert fault.code == "SHAPE-09"
    assert "(20, 20) mm" in fault.what


def test_two_outlines_that_cross_tell_the_place():
    def draw(msp, _):
        square(msp, 0, 0, 40)
        msp.add_circle((40, 20), 5)

    fault = fault_of(draw)
    assert fault.code == "SHAPE-10"
    assert "(40, 1" in fault.what or "(40, 2" in fault.what


def test_three_ends_that_meet():
    def draw(msp, _):
        lines(msp, (0, 0), (50, 0), (50, 30), (0, 30), (0, 0))
        msp.add_line((50, 30), (70, 40))

    fault = fault_of(draw)
    assert fault.code == "SHAPE-11"
    assert "3 line ends meet at (50, 30) mm" in fault.what


def test_a_line_there_and_back_is_no_outline():
    assert fault_of(lambda msp, _: msp.add_lwpolyline([(0, 0), (40, 0), (0, 0)], close=True)).code == "SHAPE-07"


@pytest.mark.parametrize("share", [0.2, 0.5, 0.9, 0.999])
def test_a_cut_off_file(share):
    (fault,) = faults_of(GOOD[: int(len(GOOD) * share)])
    assert fault.code == "SHAPE-03"
    assert fault.where.line > 1


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "SHAPE-02"),
        (b"  \n", "SHAPE-02"),
        (b"AC1027\0\0\0\0 whatever", "SHAPE-02"),
        (b"Some CAD Binary DXF\r\n\x1a\0", "SHAPE-02"),
        (b"hello\n0\nEOF\n", "SHAPE-02"),
        (b"\x89PNG\r\n", "SHAPE-03"),
        (b"0\nEOF\n", "SHAPE-04"),
    ],
)
def test_what_is_no_dxf_file(data, code):
    assert [fault.code for fault in faults_of(data)] == [code]


def test_a_hundred_megabytes():
    (fault,) = faults_of(b"0\n" * 50_000_000)
    assert fault.code == "SHAPE-01"
    assert "100 MB, the limit is 64 MB" in fault.what


@pytest.mark.parametrize("number", ["1e308", "nan", "inf", "-1e12"])
def test_numbers_beyond_all_sense(number):
    marked = dxf_bytes(lambda msp, _: lines(msp, (0, 0), (50, 0), (50, 77.25), (0, 0)))
    assert b"77.25" in marked
    faults = faults_of(marked.replace(b"77.25", number.encode()))
    assert {fault.code for fault in faults} <= {"SHAPE-12", "SHAPE-02"}


def test_a_block_in_itself():
    def draw(msp, document):
        block = document.blocks.new("LOOP")
        square(block, 0, 0, 5)
        block.add_blockref("LOOP", (10, 0))
        msp.add_blockref("LOOP", (0, 0))

    fault = fault_of(draw)
    assert fault.code == "SHAPE-15"
    assert "'LOOP' holds itself" in fault.what


def test_a_missing_block():
    fault = fault_of(lambda msp, _: msp.add_blockref("GONE", (0, 0)))
    assert fault.code in ("SHAPE-15", "SHAPE-07")


def test_blocks_that_multiply(monkeypatch):
    monkeypatch.setattr(dxf_entities, "MOST_ENTITIES", 2000)

    def draw(msp, document):
        document.blocks.new("B0").add_circle((0, 0), 1)
        for level in range(1, 9):
            block = document.blocks.new(f"B{level}")
            for k in range(10):
                block.add_blockref(f"B{level - 1}", (3 * k * 10**level, 0))
        msp.add_blockref("B8", (0, 0))

    assert fault_of(draw).code == "SHAPE-01"

    def array(msp, document):
        document.blocks.new("B").add_circle((0, 0), 1)
        msp.add_blockref("B", (0, 0), dxfattribs={"row_count": 30000, "column_count": 30000, "row_spacing": 3})

    assert fault_of(array).code == "SHAPE-01"


def test_thousands_of_ends_on_one_spot_take_no_age():
    def draw(msp, _):
        for k in range(1500):
            msp.add_line((0, 0), (10 + k, 5))

    assert {fault.code for fault in faults_of(dxf_bytes(draw))} == {"SHAPE-11"}


def test_outlines_nested_beyond_sense():
    def draw(msp, _):
        for k in range(40):
            msp.add_circle((0, 0), 1 + k)

    assert fault_of(draw).code == "SHAPE-15"


@given(st.lists(st.tuples(st.integers(0, len(GOOD) - 12), st.binary(min_size=1, max_size=6)), min_size=1, max_size=4))
@settings(max_examples=60, deadline=None)
def test_a_damaged_file_is_read_or_refused_but_never_trips_us(damages):
    data = bytearray(GOOD)
    for at, junk in damages:
        data[at : at + len(junk)] = junk
    assert outcome(bytes(data))


def outcome(data):
    """A drawing or coded faults; anything else is raised."""
    try:
        return read_dxf(data, "plate.dxf")
    except FaultsError as error:
        return all(fault.code.startswith("SHAPE-") for fault in error.faults)
