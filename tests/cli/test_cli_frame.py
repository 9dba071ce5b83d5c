"""Frames compared on the command line: a table, JSON, a picture with a cell for every sheet."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

FRAME = """
frames:
  ends:
    title: End panel on its rods
    panel: panel
    held: [{on: panel, at: x-rod.seat}]
    carries: [{spot: {on: panel, at: x-motor.face}, mass: 230 g}]
    pushes:
      - {title: push on the motor, spot: {on: panel, at: x-motor.face}, direction: x, force: 10 N, sway-limit: 2 mm}
"""


@pytest.fixture
def framed(plotter):
    with (plotter / "design.yaml").open("a", encoding="utf-8") as file:
        file.write(FRAME)
    return plotter


def test_the_sheets_stand_side_by_side(call, framed):
    done = call("frame", framed, "-w", "village")
    assert done.err == ""
    assert done.out.index("ply-8") < done.out.index("ply-6")  # the stiffest first
    assert "(now)" in done.out
    assert "push on the motor, 10 N; at most 2 mm" in done.out
    assert "Triangles of half the size change a give by" in done.out


def test_thickness_counts_by_its_cube_in_what_the_sheet_gives(call, framed):
    rows = {row["part"]: row for row in call("frame", framed, "-w", "village", "--json").data["rows"]}
    thin, thick = rows["ply-6"], rows["ply-8"]
    bent = [row["gives_mm"][0]["value"] * row["shares"][0] for row in (thin, thick)]
    assert bent[0] / bent[1] == pytest.approx((8 / 6) ** 3, rel=0.1)
    assert thin["swings_hz"][0]["value"] < thick["swings_hz"][0]["value"]
    assert sum(thin["shares"]) == pytest.approx(1)


def test_the_picture_shows_every_sheet(call, framed, tmp_path):
    picture = tmp_path / "out" / "frame.svg"
    done = call("frame", framed, "ends", "-w", "village", "--picture", picture)
    assert f"written: {picture}" in done.out.replace("\n", "")
    root = ElementTree.fromstring(picture.read_bytes())
    words = " ".join(root.itertext())
    assert words.count(" Hz (") == 2
    assert "(now)" in words
    assert picture.read_bytes().count(b"<polygon") >= 2 * 2 * 2  # at rest and swung, each with its edges
    again = tmp_path / "again.svg"
    call("frame", framed, "ends", "-w", "village", "--picture", again)
    assert again.read_bytes() == picture.read_bytes()


def test_a_frame_that_is_not_there_is_told(call, framed):
    done = call("frame", framed, "end", "-w", "village")
    assert done.code == 2
    assert "ends" in done.err


def test_a_design_without_a_frame_is_told(call, plotter):
    done = call("frame", plotter, "-w", "village")
    assert done.code == 2
    assert "describes no frame" in done.err
