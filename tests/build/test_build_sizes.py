"""The language of sizes, and what the chosen parts make of it."""

from __future__ import annotations

from math import hypot, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.build.missing import NotDescribedError
from scantling.build.placement import FACES, UPRIGHT, Turn, after, apart, turned
from scantling.build.sizes import distance, feature, origin, size
from scantling.model.expression import (
    Binary,
    Choice,
    ExpressionError,
    Feature,
    Name,
    length_power,
    parse_size,
    places_of,
    references,
)
from scantling.quantities import Figure, Grade


def value(text: str) -> float:
    """The value of a size that names nothing."""
    node = parse_size(text)

    def calculated(node: object) -> float:
        if isinstance(node, Binary):
            a, b = calculated(node.left), calculated(node.right)
            return {"+": a + b, "-": a - b, "*": a * b, "/": a / b if b else 0.0}[node.operator]
        if isinstance(node, Choice):
            return (min if node.function == "min" else max)(calculated(o) for o in node.operands)
        return node.figure.value if hasattr(node, "figure") else -calculated(node.operand)

    return calculated(node)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("20 mm", 20),
        ("2,5 mm", 2.5),
        ("3/8 in", 9.525),
        ('1 3/8"', 34.925),
        ("2 * 3 mm + 1 cm", 16),
        ("10 mm - 2 mm - 3 mm", 5),
        ("12 mm / 2 / 3", 2),
        ("12 mm / 4 * 2", 6),
        ("-(1 mm - 3 mm) * 2", 4),
        ("min(3 mm, 1 cm, 2 mm)", 2),
        ("max(3 mm, min(1 cm, 4 mm))", 4),
        ("2 × 3 mm − 1 mm", 5),
        ("10 mm-2 mm", 8),
    ],
)
def test_arithmetic(text, wanted):
    assert value(text) == pytest.approx(wanted)


def test_a_dash_inside_a_name_belongs_to_it():
    node = parse_size("y-span - back-panel.side-thickness")
    assert node == Binary("-", Name("y-span"), Feature("back-panel", "side-thickness"))


def test_the_distance_of_two_places_binds_tighter_than_any_sign():
    node = parse_size("2 * front to back - 3 mm")
    assert [type(one).__name__ for one in references(node)] == ["Between"]
    assert isinstance(node, Binary)
    assert node.operator == "-"
    assert places_of(node) == ("front", "back")


def test_a_length_may_carry_a_band():
    node = parse_size("20 mm ± 0.1 mm")
    assert (node.figure.low, node.figure.high) == pytest.approx((19.9, 20.1))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "no size"),
        ("5 kg", "kg is a unit"),
        ("2 y-span", "2 * y-span"),
        ("(a + b", "')' is missing"),
        ("a +", "something is missing"),
        ("a to", "PLACE to PLACE"),
        ("a to b.c", "PLACE to PLACE"),
        ("a ** b", "something is missing"),
        ("a $ b", "cannot be read"),
        ("1,234 mm", "1234"),
        ("20 mm ± 3", "20 mm"),
        ("a b", "comes unexpected"),
        ("(" * 50 + "a" + ")" * 50, "brackets"),
        ("a" * 500, "no size"),
        ("20 mm ± x", "x"),
        ("3 / 0.0.1 a", "point"),
    ],
)
def test_what_is_no_size_says_what_would_be(text, words):
    if text == "20 mm ± 3":
        assert parse_size(text).figure.high == 23  # the tolerance takes the value's unit
        return
    with pytest.raises(ExpressionError) as caught:
        parse_size(text)
    assert words in str(caught.value)
    assert 0 <= caught.value.offset <= len(text)


@pytest.mark.parametrize(
    ("text", "power"), [("a + 2 mm", 1), ("a * b / c", 1), ("a * b", 2), ("3 * 2", 0), ("min(a, b.c)", 1), ("-a", 1)]
)
def test_units_of_sizes(text, power):
    assert length_power(parse_size(text), lambda name: 1) == power


@pytest.mark.parametrize("text", ["a + 2", "min(a, 3)", "2 - a"])
def test_a_length_and_a_number_do_not_add(text):
    with pytest.raises(ExpressionError, match="unit"):
        length_power(parse_size(text), lambda name: 1)


@given(st.text(alphabet="ab-.+*/() 0123456789m,t", max_size=40))
def test_any_text_is_a_size_or_an_error(text):
    try:
        node = parse_size(text)
    except ExpressionError:
        return
    assert list(references(node)) is not None


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
