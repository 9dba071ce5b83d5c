"""Small designs, drawings and lists that the tests of the api use."""

from __future__ import annotations

import io
from pathlib import Path

import ezdxf
import pytest

from scantling.api.opening import Session, open_design

EXAMPLES = Path(__file__).parents[2] / "examples"


def dxf(draw, unit: int | None = 4) -> bytes:
    """A drawing in mm (or another unit of the format's list) into whose model space ``draw`` has drawn."""
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = unit or 0
    draw(document.modelspace())
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue().encode()


def motor_plate(space) -> None:
    """A plate 80 x 60 with the face of a motor of size 17, three holes of 4.5 mm in a row and a slot."""
    space.add_lwpolyline([(0, 0), (80, 0), (80, 60), (0, 60)], close=True)
    space.add_circle((30, 30), 11.25)
    for x in (14.5, 45.5):
        for y in (14.5, 45.5):
            space.add_circle((x, y), 1.7)
    for y in (10, 30, 50):
        space.add_circle((70, y), 2.25)
    space.add_lwpolyline([(55, 20, 0), (55, 40, -1), (59, 40, 0), (59, 20, -1)], format="xyb", close=True)


@pytest.fixture
def dxf_of():
    """Make the bytes of a drawing."""
    return dxf


@pytest.fixture
def motor_plate_dxf(tmp_path) -> Path:
    """The plate as a file."""
    path = tmp_path / "motor-plate.dxf"
    path.write_bytes(dxf(motor_plate))
    return path


@pytest.fixture
def design(tmp_path):
    """Write files into a folder and open the design in it."""

    def opened(workshop: str | None = None, **files: str) -> Session:
        for name, text in files.items():
            path = tmp_path / name.replace("__", "/").replace("_yaml", ".yaml").replace("_csv", ".csv")
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
        return open_design(tmp_path, workshop)

    return opened
