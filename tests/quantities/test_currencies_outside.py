"""Decimals of currencies against ISO 4217, list one, as published by its maintenance agency.

Source: ISO 4217, list one.
"""

import iso4217
import pytest

from scantling.errors import LookUpError
from scantling.quantities import CURRENCIES, minor_digits

pytestmark = pytest.mark.outside


@pytest.mark.parametrize("code", CURRENCIES)
def test_every_currency_has_the_decimals_of_the_standard(code: str) -> None:
    # source: ISO 4217 list one, through the package iso4217 (public domain), which carries the agency's table
    assert minor_digits(code) == iso4217.Currency(code).exponent


def test_every_circulating_currency_with_other_than_two_decimals_is_known() -> None:
    """A currency that we lack is refused; one that we would take for two decimals must not be missed."""
    units_of_account = {"CLF", "UYI", "UYW"}  # indexed units, not money that a shop takes
    odd = {c.code for c in iso4217.Currency if c.exponent not in (2, None)} - units_of_account
    assert odd <= set(CURRENCIES)


def test_an_unknown_currency_names_the_nearest() -> None:
    with pytest.raises(LookUpError, match="did you mean EUR"):
        minor_digits("EURO")
