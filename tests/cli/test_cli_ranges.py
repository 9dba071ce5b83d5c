"""Ranges and explanations on the command line: text, JSON, CSV, endings, near misses."""

import csv
import json
from pathlib import Path

import pytest

ALDER = str(Path(__file__).parents[2] / "examples" / "alder")


def test_ranges_of_a_place(call):
    done = call("ranges", ALDER, "-w", "village", "y-pulley")
    assert done.code == 0
    assert "teeth 20: sound 13 to 32" in done.out
    assert "below: BELT-02 axis y" in done.out
    assert "a tolerance has to lie inside" in done.out


def test_ranges_as_json_have_null_where_there_is_no_end(call):
    (found,) = json.loads(call("ranges", ALDER, "-w", "village", "y-pulley", "--json").out)
    assert found["place"] == "y-pulley"
    (width,) = [one for one in found["ranges"] if one["figure"].endswith("belt-width")]
    assert width["sound"] == [{"low": 6.0, "high": None}]


def test_ranges_as_a_table(call, tmp_path):
    file = tmp_path / "ranges.csv"
    assert call("ranges", ALDER, "-w", "village", "y-pulley", "--csv", str(file)).code == 0
    with file.open(encoding="utf-8-sig", newline="") as stream:
        rows = list(csv.DictReader(stream))
    (teeth,) = [row for row in rows if row["figure"].endswith(".teeth")]
    assert (teeth["now"], teeth["sound"]) == ("20", "13 to 32")
    assert any(row["figure"].endswith(".bore-fit") for row in rows)


def test_ranges_of_another_part(call):
    done = call("ranges", ALDER, "-w", "village", "y-pulley", "y-pulley=pulley-16")
    assert "pulley-16" in done.out
    assert "teeth 16: " in done.out


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (("ranges", ALDER, "y-puley"), "did you mean y-pulley"),
        (("explain", ALDER, "BELT-00"), "did you mean BELT-"),
        (("explain", ALDER, "BELT-01", "axis q"), "did you mean axis"),
    ],
)
def test_near_misses(call, words, hint):
    done = call(*words, "-w", "village")
    assert done.code == 2
    assert hint in done.out + done.err


def test_explain_puts_the_numbers_in(call):
    done = call("explain", ALDER, "-w", "village", "ROD-05", "axis y")
    assert done.code == 0
    joined = " ".join(done.out.split())
    assert "332 mm - 134 mm - 18 mm = 180 mm; at least 180 mm" in joined
    assert "sound: from 332 mm" in joined


def test_explain_as_json(call):
    (found,) = json.loads(call("explain", ALDER, "-w", "village", "ROD-05", "axis y", "--json").out)
    assert found["finding"]["code"] == "ROD-05"
    assert found["paragraph"].startswith("ROD-05 Travel on the rods, axis y: sound.")
    assert found["figures"][0]["what"] == "free length of the rods"


def test_explain_ends_with_1_where_it_is_not_sound(call):
    """Balls on a soft rod: the life formula alone would call it sound."""
    done = call("explain", ALDER, "-w", "village", "ROD-03", "axis y", "y-rod=rod-8-soft")
    assert done.code == 1
    assert "What would mend it: hardened and ground rods" in " ".join(done.out.split())
