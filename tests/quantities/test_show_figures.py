"""Figures as text: digits that count, bands whose ends differ, exact rationals."""

from fractions import Fraction

import pytest

from scantling.quantities import Figure, show_figure, show_fraction, show_number, show_value


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (12.5, "12.5"),
        (34.925, "34.925"),
        (9.525, "9.525"),
        (0.1 + 0.2, "0.3"),
        (2519.68503937, "2519.7"),
        (205_000.4, "205000"),
        (1_000_000.0, "1000000"),
        (0.0123456, "0.012346"),
        (0.000012, "0.000012"),
        (99_999.96, "100000"),
        (0.0, "0"),
        (-0.0, "0"),
        (-12.5, "-12.5"),
        (100.0, "100"),
        (1.2e-7, "1.2e-07"),
        (float("inf"), "∞"),
        (float("-inf"), "-∞"),
        (float("nan"), "not a number"),
    ],
)
def test_a_number_shows_the_digits_that_count(value: float, shown: str) -> None:
    assert show_number(value) == shown


def test_a_value_shows_its_unit_where_it_has_one() -> None:
    assert show_value(12.5, "mm") == "12.5 mm"
    assert show_value(0.2, "") == "0.2"


@pytest.mark.parametrize(
    ("figure", "dimension", "shown"),
    [
        (Figure.exact(12.5), "length", "12.5 mm"),
        (Figure(12.5, 12.1, 12.9), "length", "12.5 mm (12.1–12.9)"),
        (Figure.exact(400), "torque", "400 N·mm"),
        (Figure(-2.0, -3.0, -1.0), "length", "-2 mm (-3–-1)"),
        (Figure(0.2, 0.15, 0.25), "ratio", "0.2 (0.15–0.25)"),
        (Figure(8000.0, 7999.99, 8000.01), "length", "8000 mm (7999.99–8000.01)"),
        (Figure(8.0, 8.0, 8.000001), "length", "8 mm (8–8.000001)"),
    ],
)
def test_a_figure_shows_unit_and_band(figure: Figure, dimension: str, shown: str) -> None:
    assert show_figure(figure, dimension) == shown


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (Fraction(320_000, 127), "320000/127 = 2519.685"),  # 200 full steps x 16 / (1.27 mm): an inch lead
        (Fraction(80), "80"),
        (Fraction(161, 2), "161/2 = 80.5"),
        (Fraction(1, 3), "1/3 = 0.33333"),
        (Fraction(-5, 2), "-5/2 = -2.5"),
    ],
)
def test_an_exact_rational_shows_itself_and_its_decimals(value: Fraction, shown: str) -> None:
    assert show_fraction(value) == shown
