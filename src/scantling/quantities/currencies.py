"""Currencies and their minor units.

Source: ISO 4217 (list one): three-letter codes and the number of decimals ("minor unit") of each.
"""

from __future__ import annotations

from scantling.errors import LookUpError

_NO_DECIMALS_TEXT = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"
_TWO_DECIMALS_TEXT = """
    AED ALL AMD ARS AUD AZN BAM BBD BDT BOB BRL BSD BWP BYN BZD CAD CHF CNY COP CRC CUP CZK DKK DOP DZD EGP ETB EUR FJD
    GBP GEL GHS GTQ HKD HNL HUF IDR ILS INR JMD KES KGS KHR KZT LAK LBP LKR MAD MDL MGA MKD MMK MNT MOP MUR MXN MYR MZN
    NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SEK SGD THB TRY TTD TWD TZS UAH USD UYU UZS VES
    ZAR ZMW"""
_THREE_DECIMALS_TEXT = "BHD IQD JOD KWD LYD OMR TND"
_DIGITS: dict[str, int] = {
    code: digits
    for digits, text in ((0, _NO_DECIMALS_TEXT), (2, _TWO_DECIMALS_TEXT), (3, _THREE_DECIMALS_TEXT))
    for code in text.split()
}
CURRENCIES: tuple[str, ...] = tuple(sorted(_DIGITS))


def minor_digits(currency: str) -> int:
    """Return how many decimals a currency has; raises ``LookUpError`` for an unknown code.

    >>> minor_digits("EUR"), minor_digits("JPY"), minor_digits("KWD")
    (2, 0, 3)
    """
    if currency not in _DIGITS:
        raise LookUpError("currency", currency, CURRENCIES)
    return _DIGITS[currency]
