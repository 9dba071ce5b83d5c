"""Money: exact in and out, one currency at a time, rounded once, split without loss."""

from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import LookUpError, QuantityError
from scantling.quantities import (
    CURRENCIES,
    Money,
    convert,
    minor_digits,
    parse_money,
    round_half_up,
    share,
    share_minor,
    show_money,
    split_largest_remainder,
)

amounts = st.integers(-(10**12), 10**12)
fractions = st.fractions(min_value=0, max_value=3, max_denominator=10_000)


@pytest.mark.parametrize(
    ("text", "money"),
    [
        ("12.40 EUR", Money(1240, "EUR")),
        ("EUR 12,40", Money(1240, "EUR")),
        ("EUR12.4", Money(1240, "EUR")),
        ("12,40 €", Money(1240, "EUR")),
        ("€12", Money(1200, "EUR")),
        ("0.05 USD", Money(5, "USD")),
        ("500 JPY", Money(500, "JPY")),
        ("1.234 KWD", Money(1234, "KWD")),
        ("0,125 KWD", Money(125, "KWD")),
        ("1234,50 EUR", Money(123_450, "EUR")),
    ],
)
def test_an_amount_is_read_exactly(text: str, money: Money) -> None:
    assert parse_money(text) == money


def test_a_default_currency_serves_only_where_none_is_written() -> None:
    assert parse_money("12.40", "EUR") == Money(1240, "EUR")
    assert parse_money("12.40 USD", "EUR") == Money(1240, "USD")


def test_a_negative_amount_is_read_only_where_allowed() -> None:
    assert parse_money("-3.50 EUR", allow_negative=True) == Money(-350, "EUR")
    with pytest.raises(QuantityError, match="negative amount"):
        parse_money("-3.50 EUR")


@pytest.mark.parametrize(
    ("text", "what", "mend"),
    [
        ("12.40", "names no currency", "12.40 EUR"),
        ("12.405 EUR", "thousands separator", "decimals of EUR: 2"),
        ("12.4055 EUR", "finer than EUR", "whole pack"),
        ("500.5 JPY", "finer than JPY", "whole pack"),
        ("1,234 EUR", "thousands separator", "write 1234 EUR"),
        ("1.234 EUR", "thousands separator", "write 1234 EUR"),
        ("1,234 KWD", "thousands separator", "write 1234 KWD or 1.234 KWD"),
        ("1.234,50 EUR", "not an amount", "1234.50 EUR"),
        ("1 234.50 EUR", "not an amount", "1234.50 EUR"),
        ("12 eur", "not written as currencies are", "write EUR"),
        ("12 EURO", "no currency called 'EURO'", "did you mean EUR"),
        ("$12", "several currencies", "three-letter code"),
        ("12 EUR USD", "not an amount", "1234.50 EUR"),
        ("EUR 12 EUR", "not an amount", "1234.50 EUR"),
        ("EUR", "not an amount", "1234.50 EUR"),
        ("", "nothing is written", "write a number"),
        ("nan EUR", "not an amount", "EUR"),
        ("1e3 EUR", "not an amount", "EUR"),
        ("9" * 20 + " EUR", "too large", "check"),
    ],
)
def test_a_doubtful_amount_is_refused(text: str, what: str, mend: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse_money(text)
    assert what in caught.value.what
    assert mend in caught.value.mend


@given(amounts, st.sampled_from(CURRENCIES))
def test_money_out_and_in_again(minor: int, currency: str) -> None:
    money = Money(minor, currency)
    assert parse_money(show_money(minor, currency), allow_negative=True) == money
    if minor_digits(currency) != 3:  # a comma before three digits may be a thousands separator and is refused
        assert parse_money(str(money).replace(".", ","), allow_negative=True) == money


def money_or_error(text: str) -> Money | QuantityError:
    try:
        return parse_money(text, "EUR")
    except QuantityError as error:
        return error


@given(st.text(max_size=25))
def test_wild_text_is_money_or_a_quantity_error(text: str) -> None:
    outcome = money_or_error(text)
    assert outcome.mend if isinstance(outcome, QuantityError) else outcome.minor >= 0


def test_money_reckons_within_one_currency() -> None:
    ten, three = Money(1000, "EUR"), Money(300, "EUR")
    assert ten + three == Money(1300, "EUR")
    assert ten - three == Money(700, "EUR")
    assert three * 4 == Money(1200, "EUR")
    assert -ten == Money(-1000, "EUR")
    assert three < ten
    assert ten >= three
    assert max(three, ten) == ten


@pytest.mark.parametrize("mix", [lambda a, b: a + b, lambda a, b: a - b, lambda a, b: a < b, lambda a, b: a >= b])
def test_two_currencies_never_mix(mix) -> None:
    with pytest.raises(QuantityError, match="two currencies"):
        mix(Money(1000, "EUR"), Money(1000, "USD"))


def test_money_is_whole_minor_units_of_a_known_currency() -> None:
    with pytest.raises(QuantityError, match="whole number"):
        Money(12.5, "EUR")  # type: ignore[arg-type]
    with pytest.raises(LookUpError, match="no currency called 'XYZ'"):
        Money(12, "XYZ")


@given(amounts, fractions)
def test_a_share_is_rounded_as_the_standard_library_rounds_half_up(minor: int, fraction: Fraction) -> None:
    with localcontext() as context:
        context.prec = 60
        exact = Decimal(minor) * fraction.numerator / fraction.denominator
        expected = int(exact.quantize(Decimal(1), rounding=ROUND_HALF_UP))
    assert share_minor(minor, fraction) == expected
    assert share(Money(minor, "EUR"), fraction) == Money(expected, "EUR")


@pytest.mark.parametrize(
    ("value", "rounded"),
    [(Fraction(1, 2), 1), (Fraction(-1, 2), -1), (Fraction(49, 100), 0), (Fraction(3, 2), 2), (Fraction(7), 7)],
)
def test_halves_go_away_from_zero(value: Fraction, rounded: int) -> None:
    assert round_half_up(value) == rounded


@given(amounts, st.lists(st.integers(0, 1000), min_size=1, max_size=12).filter(any))
def test_a_split_adds_up_and_is_nowhere_a_unit_off(total: int, weights: list[int]) -> None:
    parts = split_largest_remainder(total, weights)
    assert sum(parts) == total
    for part, weight in zip(parts, weights, strict=True):
        assert abs(part - Fraction(total * weight, sum(weights))) < 1


@given(amounts, st.lists(st.integers(1, 1000), min_size=2, max_size=8), st.fractions(Fraction(1, 9), 9))
def test_a_split_depends_on_proportions_only(total: int, weights: list[int], factor: Fraction) -> None:
    assert split_largest_remainder(total, [w * factor for w in weights]) == split_largest_remainder(total, weights)


def test_a_split_gives_the_largest_remainders_first() -> None:
    # Hamilton's method by hand: 10 over 15:30:55 is 1.5, 3.0, 5.5; one unit left, equal remainders, the first wins
    assert split_largest_remainder(10, [15, 30, 55]) == [2, 3, 5]
    # 100 over 1:1:1:3 is 16.67 three times and 50: the remainders .67 get the two units left, first come first
    assert split_largest_remainder(100, [1, 1, 1, 3]) == [17, 17, 16, 50]
    assert split_largest_remainder(-100, [1, 1, 1]) == [-34, -33, -33]
    assert split_largest_remainder(0, [0, 0]) == [0, 0]
    assert split_largest_remainder(0, []) == []


@pytest.mark.parametrize("weights", [[], [0, 0]])
def test_a_split_over_nobody_is_refused(weights: list[int]) -> None:
    with pytest.raises(QuantityError, match="no weight"):
        split_largest_remainder(5, weights)


def test_a_negative_weight_is_refused() -> None:
    with pytest.raises(QuantityError, match="negative weight"):
        split_largest_remainder(5, [3, -1])


@pytest.mark.parametrize(
    ("minor", "rate", "from_exp", "to_exp", "bought"),
    [
        (1000, Fraction("1.0845"), 2, 2, 1085),  # 10.00 at 1.0845 is 10.845, half up
        (1000, Fraction("162.35"), 2, 0, 1624),  # 10.00 at 162.35 is 1623.5, half up
        (1624, Fraction(1) / Fraction("162.35"), 0, 2, 1000),  # 1624 / 162.35 is 10.0031
        (1000, Fraction("0.3345"), 2, 3, 3345),  # into a currency of three decimals
        (-1000, Fraction("1.0845"), 2, 2, -1085),  # a refund mirrors its payment
    ],
)
def test_exchange_is_rounded_once(minor: int, rate: Fraction, from_exp: int, to_exp: int, bought: int) -> None:
    assert convert(minor, rate, from_exp, to_exp) == bought
