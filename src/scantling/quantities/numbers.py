"""Numbers as makers write them, exactly: ``12``, ``2,5``, ``3/8``, ``1 3/8``, ``1e-3``. Never a guess."""

from __future__ import annotations

import re
from fractions import Fraction

from scantling.errors import QuantityError

_LONGEST_TEXT = 120
_LARGEST = Fraction(10**12)
_LARGEST_EXPONENT = 30

_VULGAR = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_VULGAR |= {"⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6"}
_VULGAR_SIGNS = str.maketrans({sign: f" {text}" for sign, text in _VULGAR.items()})
_LOOKS = str.maketrans({"−": "-", "⁄": "/", "∕": "/", "\u00a0": " ", "\u202f": " ", "\u2009": " ", "\t": " "})

_DIGITS = r"(?:[0-9]+(?:[.,][0-9]+)*|\.[0-9]+)"
NUMBER = rf"[+-]?\s?(?:[0-9]+\s+[0-9]+/[0-9]+|[0-9]+/[0-9]+|{_DIGITS}(?:[eE][+-]?[0-9]+)?)"
_PARTS = re.compile(
    r"(?P<sign>[+-]?)\s?(?:(?:(?P<whole>[0-9]+)\s+)?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)"
    rf"|(?P<digits>{_DIGITS})(?:[eE](?P<exponent>[+-]?[0-9]+))?)"
)


def plain_text(text: str) -> str:
    """Return the text with typographic minus, fraction and space signs in plain form; refuses empty and endless."""
    plain = " ".join(text.translate(_VULGAR_SIGNS).translate(_LOOKS).split())
    if not plain:
        raise QuantityError("nothing is written here", "write a number, with its unit where it has one")
    if len(plain) > _LONGEST_TEXT:
        raise QuantityError(f"{plain[:30]!r}… is too long for a quantity", "write one number with its unit")
    return plain


def exact_number(text: str) -> Fraction:
    """Return the number written in ``text``; raises ``QuantityError`` for anything doubtful.

    >>> exact_number("1 3/8"), exact_number("2,5"), exact_number("-1e-3")
    (Fraction(11, 8), Fraction(5, 2), Fraction(-1, 1000))
    """
    parts = _PARTS.fullmatch(text.strip())
    if parts is None:
        raise QuantityError(f"{text.strip()!r} is not a number", "write digits such as 8, 2.5, 3/8 or 1 3/8")
    size = _fraction(parts, text) if parts["bottom"] else _decimal(parts, text)
    if size > _LARGEST:
        raise QuantityError(f"{text.strip()!r} is far too large", "check the number and its unit")
    return -size if parts["sign"] == "-" else size


def _fraction(parts: re.Match[str], text: str) -> Fraction:
    top, bottom = int(parts["top"]), int(parts["bottom"])
    if bottom == 0:
        raise QuantityError(f"{text.strip()!r} divides by zero", "write a fraction such as 3/8")
    if parts["whole"] and top >= bottom:
        raise QuantityError(f"{text.strip()!r} is no mixed number", "write a fraction below one after the whole: 1 3/8")
    return int(parts["whole"] or 0) + Fraction(top, bottom)


def _decimal(parts: re.Match[str], text: str) -> Fraction:
    exponent = int(parts["exponent"] or 0)
    if abs(exponent) > _LARGEST_EXPONENT:
        raise QuantityError(f"{text.strip()!r} has an exponent beyond reason", "check the number and its unit")
    return Fraction(_with_point(parts["digits"], text)) * Fraction(10) ** exponent


def _with_point(digits: str, text: str) -> str:
    """Return digits with a decimal point; refuses whatever could be a thousands separator."""
    marks = [c for c in digits if c in ".,"]
    if len(marks) > 1:
        raise QuantityError(
            f"{text.strip()!r} has more than one point or comma", "write no thousands separators, as in 1234.5"
        )
    whole, _, decimals = digits.partition(",")
    if marks == [","] and len(decimals) == 3 and 1 <= len(whole.lstrip("0")) <= 3:
        raise QuantityError(
            f"{text.strip()!r} may mean {whole}{decimals} or {whole}.{decimals}",
            f"write {whole}{decimals} or {whole}.{decimals}",
        )
    return digits.replace(",", ".")
