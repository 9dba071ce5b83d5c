"""From canonical values back to text: as many digits as a workshop can use, and never a power of ten for its sizes."""

from __future__ import annotations

import math
from fractions import Fraction

from scantling.quantities.figure import Figure
from scantling.quantities.units import canonical_unit

_DIGITS = 5
_MOST_DECIMALS = 12
_SMALLEST_PLAIN = 1e-6
_LARGEST_PLAIN = 1e12


def show_number(value: float, decimals: int | None = None) -> str:
    """Return a number with five digits that count, whole places never rounded, no zeros at the end.

    decimals : show at most so many instead.

    >>> show_number(34.925), show_number(205000.4), show_number(0.0123456), show_number(-0.0)
    ('34.925', '205000', '0.012346', '0')
    """
    if math.isnan(value):
        return "not a number"
    if math.isinf(value):
        return "∞" if value > 0 else "-∞"
    if value and not _SMALLEST_PLAIN <= abs(value) < _LARGEST_PLAIN:
        return f"{value:.4g}"
    text = f"{value:.{_decimals(value) if decimals is None else decimals}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def show_value(value: float, unit: str) -> str:
    """Return ``12.5 mm``; the unit may be empty.

    >>> show_value(12.5, "mm"), show_value(0.2, "")
    ('12.5 mm', '0.2')
    """
    return f"{show_number(value)} {unit}".rstrip()


def show_figure(figure: Figure, dimension_name: str) -> str:
    """Return a figure in its canonical unit, with its band where it has one: ``12.5 mm (12.1–12.9)``.

    Ends that differ are shown with enough decimals to differ, and the value with enough to lie between them.
    """
    unit = canonical_unit(dimension_name)
    if figure.is_exact:
        return show_value(figure.value, unit)
    low, high = _ends(figure.low, figure.high)
    value, decimals = show_number(figure.value), 0
    while not float(low) <= float(value) <= float(high) and decimals < _MOST_DECIMALS:
        decimals += 1  # a rounded value must not be seen outside of its rounded band
        low, value, high = (show_number(each, decimals) for each in (figure.low, figure.value, figure.high))
    return f"{value} {unit}".rstrip() + f" ({low}–{high})"


def show_fraction(value: Fraction) -> str:
    """Return an exact rational, and its decimal form where it is not whole: ``320000/127 = 2519.685``.

    >>> show_fraction(Fraction(320000, 127)), show_fraction(Fraction(80)), show_fraction(Fraction(161, 2))
    ('320000/127 = 2519.685', '80', '161/2 = 80.5')
    """
    if value.denominator == 1:
        return str(value.numerator)
    number = float(value)
    return f"{value.numerator}/{value.denominator} = {show_number(number, max(3, _decimals(number)))}"


def _decimals(value: float) -> int:
    """Return how many decimals leave ``_DIGITS`` digits that count."""
    if value == 0:
        return 0
    return min(_MOST_DECIMALS, max(0, _DIGITS - 1 - math.floor(math.log10(abs(value)))))


def _ends(low: float, high: float) -> tuple[str, str]:
    texts = show_number(low), show_number(high)
    decimals = max(_decimals(low), _decimals(high))
    while texts[0] == texts[1] and decimals < _MOST_DECIMALS:
        decimals += 1
        texts = show_number(low, decimals), show_number(high, decimals)
    return texts
