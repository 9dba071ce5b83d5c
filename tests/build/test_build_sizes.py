"""Sizes and distances, as the chosen parts make them."""

from __future__ import annotations

from math import hypot, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.build.missing import NotDescribedError
from scantling.build.placement import FACES, UPRIGHT, Turn, after, apart, turned
from scantling.build.sizes import distance, feature, origin, size
from scantling.quantities import Figure, Grade


def test_a_size_follows_the_chosen_parts(read):
    # front and back panel 300 apart, rod = span + 2 thicknesses + 20, span = 300 - thickness
    assert read().derive(size, "y-span").value == 291
    assert read().derive(feature, "y-rod", "length").value == 329
    thinner = read(parts={"front-panel": "ply-6"})
    assert thinner.derive(size, "y-span").value == 294
    assert thinner.derive(feature, "y-rod", "length").value == 326


def test_bands_are_carried(read):
    reader = read({"parts.ply-9.thickness": "9 mm ± 0.3 mm"})
    figure = reader.derive(size, "2 * back-panel.thickness - 1 mm")
    assert (figure.low, figure.value, figure.high) == pytest.approx((16.4, 17.0, 17.6))


def test_what_was_measured_wins(read):
    actual = {"part": "ply-9", "size": "thickness", "value": "8.7 mm ± 0.1 mm"}
    figure = read(workshop={"actuals": [actual]}).derive(feature, "back-panel", "thickness")
    assert figure == Figure(8.7, figure.low, figure.high, Grade.MEASURED, "measured")
    assert (figure.low, figure.high) == pytest.approx((8.6, 8.8))


def test_features_of_an_empty_place_are_nothing(read):
    reader = read(parts={"y-bearing": "block"})
    assert reader.part("y-holder") is None
    assert reader.derive(feature, "y-holder", "flange").value == 0


@pytest.mark.parametrize(
    ("text", "need"),
    [
        ("bed.width", "parts.plate.sizes.width"),
        ("y-bearing.length + y-motor.body-length", "parts.motor-flat.body-length"),
        ("bed to back-panel", "places.bed.at"),
        ("nothing-such", "sizes.nothing-such"),
        ("3 mm / (y-rod.diameter - y-rod.diameter)", "divide by zero"),
    ],
)
def test_what_is_missing_is_named(read, text, need):
    with pytest.raises(NotDescribedError) as caught:
        read().derive(size, text)
    assert any(need in one for one in caught.value.needs)


def test_all_that_is_missing_is_named_at_once(read):
    with pytest.raises(NotDescribedError) as caught:
        read().derive(size, "bed.width + y-motor.body-length - bed to power")
    assert len(caught.value.needs) == 4


def test_distances_of_placed_places(read):
    reader = read()
    assert reader.derive(distance, "front-panel", "back-panel").value == 300
    # the motor sits at (60, 40) of the back panel, whose own y is up
    assert reader.derive(distance, "back-panel", "y-motor").value == pytest.approx(hypot(60, 40))
    assert reader.derive(distance, "front-panel", "y-motor").value == pytest.approx(sqrt(60**2 + 300**2 + 40**2))
    placed = reader.derive(origin, "y-motor")
    assert (placed.x_mm.value, placed.y_mm.value, placed.z_mm.value) == pytest.approx((60, 300, 40))


def test_the_common_parent_of_two_places_does_not_count(read):
    reader = read(
        {
            "places.back-panel.at": ["0 mm", "300 mm ± 2 mm", "0 mm"],
            "places.bed.on": "back-panel",
            "places.bed.at": ["0 mm", "40 mm", "0 mm"],
        }
    )
    assert reader.derive(distance, "y-motor", "bed") == Figure.exact(60.0)
    assert not reader.derive(distance, "front-panel", "bed").is_exact


def test_a_turn_turns_what_stands_on_it(read):
    reader = read(
        {
            "places.back-panel.turn": "90 deg",
            "places.bed.on": "y-motor",
            "places.bed.turn": "30 deg",
            "places.bed.at": ["10 mm", "0 mm", "5 mm"],
        }
    )
    # 90 degrees about the panel's normal: its own x points up, its own y to the left
    motor, bed = reader.derive(origin, "y-motor"), reader.derive(origin, "bed")
    assert (motor.x_mm.value, motor.y_mm.value, motor.z_mm.value) == pytest.approx((-40, 300, 60))
    assert (bed.x_mm.value, bed.y_mm.value, bed.z_mm.value) == pytest.approx((-40, 295, 70))


@pytest.mark.parametrize("turn", [*FACES.values(), turned(30), after(turned(17), FACES["x"])])
def test_turns_are_right_handed_and_keep_lengths(turn: Turn):
    columns = [tuple(row[j] for row in turn) for j in range(3)]
    cross = (
        columns[0][1] * columns[1][2] - columns[0][2] * columns[1][1],
        columns[0][2] * columns[1][0] - columns[0][0] * columns[1][2],
        columns[0][0] * columns[1][1] - columns[0][1] * columns[1][0],
    )
    assert cross == pytest.approx(columns[2])
    assert [sum(c * c for c in column) for column in columns] == pytest.approx([1, 1, 1])


def test_right_angles_are_exact():
    assert turned(360) == UPRIGHT
    assert after(turned(90), turned(-90)) == UPRIGHT


@given(st.lists(st.tuples(st.floats(-50, 50), st.floats(0, 3)), min_size=6, max_size=6), st.floats(-1, 1))
def test_the_band_of_a_distance_holds_every_distance(numbers, where):
    figures = [Figure(v, v - half, v + half) for v, half in numbers]
    a, b = tuple(figures[:3]), tuple(figures[3:])
    found = apart(a, b)
    points = [
        [f.value + where * (f.high - f.value) * sign for f, sign in zip(figures, (1, -1, 1, -1, 1, 1), strict=True)]
    ]
    for p in points:
        length = sqrt(sum((q - o) ** 2 for o, q in zip(p[:3], p[3:], strict=True)))
        assert found.low - 1e-9 <= length <= found.high + 1e-9
