"""What a spreadsheet shows for a stored number: part numbers, prices and sizes are read as their maker saw them."""

from __future__ import annotations

import datetime
import re
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

_SECTIONS = re.compile(r';(?=(?:[^"]*"[^"]*")*[^"]*$)')
_TOKEN = re.compile(
    r'"(?P<quoted>[^"]*)"|\\(?P<escaped>.)|\[\$(?P<currency>[^\]-]*)(?:-[^\]]*)?\]|(?P<colour>\[[^\]]*\])'
    r"|_(?P<blank>.)|\*(?P<fill>.)|(?P<fraction>[#0]*\s*[?#]+/[?#0-9]+)|(?P<digits>[#0?][#0?,]*(?:\.[#0?]*)?|\.[#0?]+)"
    r"|(?P<percent>%)|(?P<exponent>[Ee][+-]0+)|(?P<other>.)"
)


def shown_number(value: float, number_format: str) -> str:
    """Return how a number looks under a number format of a workbook; thousands separators are left out.

    >>> shown_number(1.1, "0.00"), shown_number(8, '0.0" mm"'), shown_number(0.19, "0%"), shown_number(3.375, "# ?/?")
    ('1.10', '8.0 mm', '19%', '3 3/8')
    """
    sections = _SECTIONS.split(number_format or "General")
    section = sections[0]
    if value < 0 and len(sections) > 1 and sections[1].strip():
        section, value = sections[1], -value
    if section.strip().casefold() in ("general", "@", "standard"):
        return plain_number(value)
    return _formatted(value, section)


def plain_number(value: float) -> str:
    """Return a number with all digits that a workbook keeps, whole ones without a point.

    >>> plain_number(8.0), plain_number(0.1 + 0.2), plain_number(12)
    ('8', '0.3', '12')
    """
    text = format(Decimal(f"{value:.15g}"), "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def shown_date(value: datetime.datetime | datetime.date | datetime.time | datetime.timedelta) -> str:
    """Return a date as year-month-day, with its time where that is not midnight."""
    if isinstance(value, datetime.datetime) and value.time() == datetime.time():
        return value.date().isoformat()
    return value.isoformat(" ") if isinstance(value, datetime.datetime) else str(value)


def _formatted(value: float, section: str) -> str:
    tokens = list(_TOKEN.finditer(section))
    exact = Decimal(f"{value:.15g}")
    if any(token["percent"] for token in tokens):
        exact *= 100
    if any(token["exponent"] for token in tokens) or not any(token["digits"] or token["fraction"] for token in tokens):
        return plain_number(value)
    return "".join(_shown(token, exact) for token in tokens).strip()


def _shown(token: re.Match[str], exact: Decimal) -> str:
    if token["digits"]:
        return _digits(exact, token["digits"])
    if token["fraction"]:
        return _fraction(exact, token["fraction"])
    if token["blank"]:
        return " "
    return token["quoted"] or token["escaped"] or token["currency"] or token["percent"] or token["other"] or ""


def _digits(exact: Decimal, pattern: str) -> str:
    whole, _, decimals = pattern.replace(",", "").partition(".")
    rounded = exact.quantize(Decimal(1).scaleb(-len(decimals)), rounding=ROUND_HALF_UP)
    text = format(abs(rounded), "f")
    front, _, back = text.partition(".")
    needed = max((place + 1 for place, sign in enumerate(decimals) if sign == "0"), default=0)
    back = back[:needed] + back[needed:].rstrip("0")
    front = front.zfill(whole.count("0"))
    sign = "-" if rounded < 0 else ""
    return f"{sign}{front}.{back}" if back else f"{sign}{front}"


def _fraction(exact: Decimal, pattern: str) -> str:
    bottom = pattern.rpartition("/")[2]
    most = int(bottom) if bottom.isdigit() and int(bottom) else 10 ** len(bottom) - 1
    size = Fraction(abs(exact))
    near = Fraction(round(size * most), most) if bottom.isdigit() else size.limit_denominator(most)
    whole, rest = divmod(near.numerator, near.denominator)
    sign = "-" if exact < 0 else ""
    if rest == 0:
        return f"{sign}{whole}"
    return f"{sign}{whole} {rest}/{near.denominator}" if whole else f"{sign}{rest}/{near.denominator}"
