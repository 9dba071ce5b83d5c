"""The language of sizes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.model.expression import (
    Binary,
    Choice,
    ExpressionError,
    Feature,
    Name,
    Number,
    length_power,
    parse_size,
    places_of,
    references,
)


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
    ("text", "value", "low", "high"),
    [
        ("10 mm +0.3/-0.1 mm", 10, 9.9, 10.3),
        ("10 mm -0.1/+0.3 mm", 10, 9.9, 10.3),
        ("10 mm + 0.3 / - 0.1 mm", 10, 9.9, 10.3),
        ("10 +0.3/-0.1 mm", 10, 9.9, 10.3),
        ("10 mm +0.3/0", 10, 10, 10.3),
        ("3/8 in +0/-0.01 in", 9.525, 9.271, 9.525),
        ("10 mm \u2212 0.1/+0.3 mm", 10, 9.9, 10.3),
    ],
)
def test_a_length_that_stands_alone_may_have_two_deviations(text, value, low, high):
    node = parse_size(text)
    assert isinstance(node, Number)
    assert node.power == 1
    assert (node.figure.value, node.figure.low, node.figure.high) == pytest.approx((value, low, high))


@pytest.mark.parametrize(
    "text",
    [
        "10 mm +0.3 mm -0.1 mm",  # as a sum it would be 10.2 mm
        "10 mm +0.3 -0.1 mm",
        "10 mm +0.3 mm/-0.1 mm",
        "y-rod.length +0.3/-0.1 mm",
        "2 * (10 mm +0.3/-0.1 mm)",
        "10 mm +0.3/+0.2/-0.1 mm",
    ],
)
def test_what_could_be_a_tolerance_or_a_sum_is_refused(text):
    with pytest.raises(ExpressionError) as caught:
        parse_size(text)
    assert "20 mm +0.3/-0.1 mm" in caught.value.mend


@pytest.mark.parametrize(
    "text", ["10 mm + 0.3 mm - 0.1 mm", "20 mm - 10 mm/2", "3/8 in +1/4 in", "x +1/2 * y", "hole-1 / -2"]
)
def test_sums_and_fractions_stay_what_they_are(text):
    assert isinstance(parse_size(text), Binary)


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
