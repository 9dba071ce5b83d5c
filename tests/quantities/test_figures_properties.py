"""What holds for every figure: exact reading, bands that hold their value, text out and in again, no surprise."""

import math
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from scantling.errors import QuantityError
from scantling.quantities import DIMENSIONS, Figure, exact_number, parse_figure, show_figure, show_number

NAMES = sorted(DIMENSIONS)
four_digits_kept = 5e-5  # show_number keeps five digits: half a unit of the fifth, relative to the first

decimals = st.decimals(min_value=-100_000, max_value=100_000, places=4)
small_fractions = st.tuples(st.integers(0, 40), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))


@given(decimals)
def test_point_and_comma_mean_the_same_number(number) -> None:
    text = f"{number:.4f}"
    assert exact_number(text) == exact_number(text.replace(".", ",")) == Fraction(number)


@given(small_fractions)
def test_a_mixed_number_is_its_whole_plus_its_fraction(parts: tuple[int, int, int]) -> None:
    whole, top, bottom = parts
    top %= bottom
    inches = whole + Fraction(top, bottom)
    text = f"{whole} {top}/{bottom} in"
    assert parse_figure(text, "length").value == float(inches * Fraction(254, 10))


@given(decimals, st.decimals(min_value=0, max_value=100, places=3))
def test_a_tolerance_spans_the_same_band_in_every_way_of_writing_it(value, half) -> None:
    low, high = value - half, value + half
    plus_minus = parse_figure(f"{value} mm ± {half} mm", "length")
    deviations = parse_figure(f"{value} mm +{half}/-{half} mm", "length")
    bracket = parse_figure(f"{value} mm ({low}..{high})", "length")
    assert plus_minus == deviations == bracket
    assert plus_minus.low <= plus_minus.value <= plus_minus.high
    assert parse_figure(f"{low}..{high} mm", "length") == plus_minus


@example(name="acceleration", value=10000.75, width=2.220446049250313e-16)  # once shown outside its own band
@given(
    st.sampled_from([n for n in NAMES if not DIMENSIONS[n].is_whole]),
    st.floats(1e-4, 1e7),
    st.floats(0, 0.2),
)
def test_what_is_shown_reads_back(name: str, value: float, width: float) -> None:
    text = f"{value:.12f} ({value * (1 - width):.12f}..{value * (1 + width):.12f}) "
    unit = DIMENSIONS[name].unit
    figure = parse_figure(text.replace(" (", f" {unit} (", 1).strip(), name)
    back = parse_figure(show_figure(figure, name), name)
    for got, had in zip((back.value, back.low, back.high), (figure.value, figure.low, figure.high), strict=True):
        assert got == pytest.approx(had, rel=four_digits_kept)


@given(st.floats(1e-6, 9e11), st.booleans())
def test_workshop_numbers_are_shown_without_powers_of_ten(value: float, negative: bool) -> None:
    shown = show_number(-value if negative else value)
    assert "e" not in shown
    assert not (("." in shown) and shown.endswith(("0", ".")))
    assert abs(float(shown)) == pytest.approx(value, rel=four_digits_kept)


def figure_or_error(text: str, name: str) -> Figure | QuantityError:
    try:
        return parse_figure(text, name)
    except QuantityError as error:
        return error


def assert_honest(outcome: Figure | QuantityError) -> None:
    """A figure is finite and inside its band; an error says what is wrong and how to mend it."""
    if isinstance(outcome, QuantityError):
        assert outcome.what
        assert outcome.mend
    else:
        assert outcome.low <= outcome.value <= outcome.high
        assert all(math.isfinite(x) for x in (outcome.value, outcome.low, outcome.high))


PIECES_OF_TEXT = [
    "1",
    "3/8",
    "0",
    "25,4",
    ".",
    "..",
    "-",
    "–",
    "+",
    "±",
    "/",
    " ",
    "mm",
    "in",
    '"',
    "N",
    "m",
    "%",
    "(",
    ")",
]


@given(st.sampled_from(NAMES), st.lists(st.sampled_from(PIECES_OF_TEXT), max_size=9).map("".join))
@example("length", "1/4-20")
@example("length", "8 mm -20")
def test_any_text_is_a_finite_figure_or_a_quantity_error(name: str, text: str) -> None:
    assert_honest(figure_or_error(text, name))


@given(st.text(max_size=40))
def test_wild_text_never_does_worse_than_a_quantity_error(text: str) -> None:
    assert_honest(figure_or_error(text, "length"))


@given(st.integers(1, 60), st.integers(1, 60))
def test_two_numbers_with_a_hyphen_are_never_one_length(first: int, second: int) -> None:
    for text in (f"{first}-{second} mm", f"{first}/64-{second} in", f"{first} -{second} mm", f"{first} mm-{second}"):
        with pytest.raises(QuantityError):
            parse_figure(text, "length")
