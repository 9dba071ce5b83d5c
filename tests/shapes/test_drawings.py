"""The ending of a name chooses the reader."""

import pytest
from dxfkit import dxf_bytes, square

from scantling.errors import FaultsError
from scantling.shapes.drawings import read_drawing

PAGE = b'width="9mm" height="9mm" viewBox="0 0 9 9"'
SVG = b'<svg xmlns="http://www.w3.org/2000/svg" ' + PAGE + b'><rect width="5" height="4"/></svg>'


def test_both_kinds_in_any_case():
    assert read_drawing(dxf_bytes(lambda msp, _: square(msp)), "Plate.DXF").only().area_mm2 == pytest.approx(1e4)
    assert read_drawing(SVG, "plate.svg").only().area_mm2 == pytest.approx(20)


@pytest.mark.parametrize("file", ["plate.pdf", "plate", "plate.step", "plate.dwg"])
def test_other_endings(file):
    with pytest.raises(FaultsError, match="SHAPE-34"):
        read_drawing(b"x", file)
