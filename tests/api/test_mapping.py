"""Maps of speeds and accelerations: as data, as drawings, on a terminal."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from scantling.api.mapping import motion_data, motion_files, motion_maps
from scantling.api.opening import open_design
from scantling.drawing.primitives import Pen
from scantling.drawing.record import record
from scantling.findings import Verdict
from scantling.plans.motion_map import BOTTOM_MM, FIELD_MM, LEFT_MM, motion_page

PLOTTER = Path(__file__).parents[2] / "examples" / "plotter"


@pytest.fixture(scope="module")
def maps():
    """Return the maps of a small machine."""
    return motion_maps(open_design(PLOTTER, "village", 1))


def test_every_belt_axis_has_a_map_that_holds_its_wanted_move(maps):
    assert [one.axis for one in maps] == ["x"]
    (shown,) = maps
    assert shown.wanted_mm_s < shown.width_mm_s
    assert shown.wanted_mm_s2 < shown.height_mm_s2
    assert {"BELT-03", "AXIS-01", "BELT-07"} <= set(shown.looked)


def test_data_are_plain_and_have_a_cell_for_every_point(maps):
    data = json.loads(json.dumps(motion_data(maps[0])))
    assert len(data["verdicts"]) == len(data["accelerations_mm_s2"])
    assert all(len(row) == len(data["speeds_mm_s"]) == len(data["most_sound_mm_s2"]) for row in data["verdicts"])
    assert {word for row in data["verdicts"] for word in row} <= {one.value for one in Verdict}


def test_the_same_map_is_the_same_bytes(maps):
    assert motion_files(maps) == motion_files(motion_maps(open_design(PLOTTER, "village", 1)))
    assert ET.fromstring(motion_files(maps)["axis-x.svg"]).tag.endswith("svg")


def test_the_drawing_shows_what_the_map_says(maps):
    (shown,) = maps
    drawn = record(motion_page(shown))
    unsound = sum(cell.verdict is Verdict.UNSOUND for row in shown.cells for cell in row)
    inside = [line for line in drawn.with_pen(Pen.CARE).lines if line.start[1] >= BOTTOM_MM - 1e-9]
    assert len(inside) == 2 * unsound
    (limit,) = [p for p in drawn.with_pen(Pen.DATUM).polygons if not p.closed]
    most = [(y - BOTTOM_MM) / FIELD_MM[1] * shown.height_mm_s2 for _, y in limit.points[1:-1]]
    assert most == pytest.approx(list(shown.most_mm_s2))
    x, y = (LEFT_MM + shown.wanted_mm_s / shown.width_mm_s * FIELD_MM[0], BOTTOM_MM)
    mark = next(p for p in drawn.with_pen(Pen.DATUM).polygons if p.closed)
    assert sum(point[0] for point in mark.points) / 4 == pytest.approx(x)
    assert sum(point[1] for point in mark.points) / 4 > y


def test_the_command_tells_and_draws(tmp_path):
    from click.testing import CliRunner

    from scantling.cli.commands.map_ import command

    done = CliRunner().invoke(command, [str(PLOTTER), "-w", "village", "--out", str(tmp_path)], standalone_mode=False)
    assert done.return_value == 0
    assert "sound up to mm/s²" in done.output
    assert (tmp_path / "axis-x.svg").read_bytes().startswith(b"<?xml")
