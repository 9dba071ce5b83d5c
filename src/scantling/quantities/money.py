"""Money as whole minor units of one currency; shares, exchange and splits in exact fractions, rounded once."""

from __future__ import annotations

import functools
import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from scantling.errors import LookUpError, QuantityError
from scantling.quantities.currencies import CURRENCIES, minor_digits
from scantling.quantities.numbers import plain_text

_LARGEST_MINOR = 10**15
_AMOUNT = re.compile(r"(?P<sign>[+-]?)\s?(?P<whole>[0-9]+)(?:(?P<mark>[.,])(?P<decimals>[0-9]+))?")
_WITH_CODE = re.compile(
    r"(?:(?P<before>[A-Za-z]{2,}|[€$£¥₩₹])\s*)?(?P<amount>[^A-Za-z€$£¥₩₹]+?)\s*(?P<after>[A-Za-z]{2,}|[€$£¥₩₹])?"
)
# the euro sign stands for one currency only; the others are shared by several
_SIGNS = {"€": "EUR"}


@functools.total_ordering
@dataclass(frozen=True)
class Money:
    """An amount in whole minor units (cents) of one currency; two currencies never mix."""

    minor: int
    currency: str

    def __post_init__(self) -> None:
        """Refuse parts of a minor unit and unknown currencies."""
        if type(self.minor) is not int:
            raise QuantityError(f"{self.minor!r} minor units of {self.currency}", "give a whole number of minor units")
        minor_digits(self.currency)

    def __lt__(self, other: Money) -> bool:
        """Compare within one currency."""
        return self.minor < self._of_same(other)

    def __add__(self, other: Money) -> Money:
        """Add within one currency."""
        return Money(self.minor + self._of_same(other), self.currency)

    def __sub__(self, other: Money) -> Money:
        """Subtract within one currency."""
        return Money(self.minor - self._of_same(other), self.currency)

    def __mul__(self, times: int) -> Money:
        """Return so many times the amount; for parts of it see ``share``."""
        return Money(self.minor * times, self.currency)

    def __neg__(self) -> Money:
        """Return the amount owed the other way."""
        return Money(-self.minor, self.currency)

    def __str__(self) -> str:
        """Return ``12.40 EUR``."""
        return show_money(self.minor, self.currency)

    def _of_same(self, other: Money) -> int:
        if other.currency != self.currency:
            raise QuantityError(f"{self} and {other} are in two currencies", "convert one with a dated rate first")
        return other.minor


def show_money(minor: int, currency: str) -> str:
    """Return ``12.40 EUR``: all decimals of the currency, no thousands separators.

    >>> show_money(1240, "EUR"), show_money(-5, "USD"), show_money(500, "JPY")
    ('12.40 EUR', '-0.05 USD', '500 JPY')
    """
    digits = minor_digits(currency)
    sign = "-" if minor < 0 else ""
    whole, rest = divmod(abs(minor), 10**digits)
    return f"{sign}{whole}.{rest:0{digits}d} {currency}" if digits else f"{sign}{whole} {currency}"


def parse_money(text: str, currency: str | None = None, *, allow_negative: bool = False) -> Money:
    """Return the amount written as ``12.40 EUR``, ``EUR 12,40``, or ``12.40`` where ``currency`` says which.

    Exact: more decimals than the currency has are refused, and so is whatever may be a thousands separator.
    Raises ``QuantityError``; ``LookUpError`` where the default ``currency`` is unknown.
    """
    plain = plain_text(text)
    found = _WITH_CODE.fullmatch(plain)
    if found is None or (found["before"] and found["after"]):
        raise _not_money(plain, currency)
    code = _code(found["before"] or found["after"], currency, plain)
    minor = _minor(found["amount"].strip(), code, plain)
    if minor < 0 and not allow_negative:
        raise QuantityError(f"{plain!r} is a negative amount", "write an amount of 0 or more")
    return Money(minor, code)


def _code(written: str | None, default: str | None, text: str) -> str:
    """Return the currency of a text: what it says, else the default."""
    if written is None:
        if default is None:
            raise QuantityError(f"{text!r} names no currency", f"write {text} EUR, or whatever currency it is in")
        minor_digits(default)
        return default
    code = _SIGNS.get(written, written)
    if code in CURRENCIES:
        return code
    if code.upper() in CURRENCIES:
        raise QuantityError(f"{written!r} is not written as currencies are", f"write {code.upper()}")
    if not code.isalpha():
        raise QuantityError(
            f"{written!r} stands for several currencies", "write the three-letter code, as in 12.40 USD"
        )
    unknown = LookUpError("currency", written, CURRENCIES)
    raise QuantityError(unknown.what, f"{unknown.mend} (three-letter code, as in 12.40 EUR)")


def _minor(amount: str, code: str, text: str) -> int:
    """Return exact minor units; refuses thousands separators and too many decimals."""
    found = _AMOUNT.fullmatch(amount)
    if found is None:
        raise _not_money(text, code)
    digits, whole, decimals = minor_digits(code), found["whole"], found["decimals"] or ""
    if len(decimals) > digits or (found["mark"] == "," and _may_be_thousands(whole, decimals)):
        raise _too_fine(whole, decimals, code, text)
    minor = int(whole + decimals.ljust(digits, "0"))
    if minor > _LARGEST_MINOR:
        raise QuantityError(f"{text[:40]!r} is far too large", "check the amount and its currency")
    return -minor if found["sign"] == "-" else minor


def _may_be_thousands(whole: str, decimals: str) -> bool:
    return len(decimals) == 3 and 1 <= len(whole.lstrip("0")) <= 3


def _too_fine(whole: str, decimals: str, code: str, text: str) -> QuantityError:
    """Return the error for decimals that the currency does not have, or that may not be decimals at all."""
    digits = minor_digits(code)
    if not _may_be_thousands(whole, decimals):
        mend = "write what a whole pack costs, rounded as it is paid"
        return QuantityError(f"{text!r} is finer than {code}, which has decimals: {digits}", mend)
    or_decimals = f" or {whole}.{decimals} {code}" if digits == len(decimals) else f" (decimals of {code}: {digits})"
    return QuantityError(f"{text!r} may have a thousands separator", f"write {whole}{decimals} {code}{or_decimals}")


def _not_money(text: str, currency: str | None) -> QuantityError:
    mend = f"write one amount without thousands separators, as in 1234.50 {currency or 'EUR'}"
    return QuantityError(f"{text!r} is not an amount of money", mend)


def round_half_up(value: Fraction) -> int:
    """Return the nearest whole number; halves go away from zero, so that a refund mirrors its payment.

    >>> round_half_up(Fraction(5, 2)), round_half_up(Fraction(-5, 2)), round_half_up(Fraction(7, 3))
    (3, -3, 2)
    """
    size = (2 * abs(value.numerator) + value.denominator) // (2 * value.denominator)
    return -size if value < 0 else size


def share_minor(minor: int, fraction: Fraction) -> int:
    """Return a share of an amount in minor units, rounded half up once.

    >>> share_minor(1250, Fraction(19, 100))
    238
    """
    return round_half_up(minor * fraction)


def share(money: Money, fraction: Fraction) -> Money:
    """Return a share of an amount, rounded half up once."""
    return Money(share_minor(money.minor, fraction), money.currency)


def split_largest_remainder(total_minor: int, weights: Sequence[int | Fraction]) -> list[int]:
    """Split an amount in proportion to weights so that the parts add up to it exactly.

    Every part is its exact share rounded down or up; the largest remainders are rounded up, the first of equals
    first. Raises ``QuantityError`` for negative weights and for an amount that has nobody to go to.

    >>> split_largest_remainder(100, [1, 1, 1])
    [34, 33, 33]
    """
    if any(weight < 0 for weight in weights):
        raise QuantityError("a negative weight in a split", "give weights of 0 or more")
    scale = lcm(*(weight.denominator for weight in weights))
    scaled = [int(weight * scale) for weight in weights]  # whole numbers: quicker than fractions, as exact
    whole = sum(scaled)
    if whole == 0:
        if total_minor:
            raise QuantityError(f"{total_minor} minor units cannot be split over no weight", "give one weight above 0")
        return [0] * len(weights)
    divided = [divmod(abs(total_minor) * weight, whole) for weight in scaled]
    parts = [part for part, _ in divided]
    by_remainder = sorted(range(len(parts)), key=lambda i: (-divided[i][1], i))
    for i in by_remainder[: abs(total_minor) - sum(parts)]:
        parts[i] += 1
    return [-part for part in parts] if total_minor < 0 else parts


def convert(minor: int, rate: Fraction, from_exp: int, to_exp: int) -> int:
    """Exchange minor units at ``rate`` (whole units bought per whole unit paid), rounded half up once.

    from_exp, to_exp : decimals of the two currencies (``minor_digits``).

    >>> convert(1000, Fraction(3, 2), 2, 0)
    15
    """
    return round_half_up(minor * rate * Fraction(10) ** (to_exp - from_exp))
