"""The figures that go into a rule, each with its band and how well it is known."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.quantities import Figure, Grade, show_number, show_value


@dataclass(frozen=True)
class Input:
    """One figure that goes into a rule.

    what : in words, as a sentence names it (``drag of each bushing``)    unit : as shown
    nominal, low, high : the value and its band, or, where it is ``missing``, the range that is physically possible
    assumed : taken from a class table    card : which measuring would settle it, in words
    """

    what: str
    nominal: float
    low: float
    high: float
    unit: str = ""
    missing: bool = False
    assumed: bool = False

    @property
    def is_banded(self) -> bool:
        """True where it may be more than one value."""
        return self.low < self.high

    def shown(self) -> str:
        """Return the figure for a sentence: ``1 N (0.5–2)``, or its range where it is missing."""
        band = show_band(show_number(self.low), show_number(self.high))
        if self.missing:
            return show_value_text(band, self.unit)
        value = show_value(self.nominal, self.unit)
        return f"{value} ({band})" if self.is_banded else value


def known(what: str, figure: Figure | float, unit: str = "") -> Input:
    """Return a figure that the files give, or that follows from what they give."""
    if not isinstance(figure, Figure):
        return Input(what, figure, figure, figure, unit)
    assumed = figure.grade is Grade.TYPICAL
    return Input(what, figure.value, figure.low, figure.high, unit, assumed=assumed)


def or_typical(what: str, figure: Figure | None, usual: Figure, unit: str = "") -> Input:
    """Return the figure where it is given, else the usual one of its class, marked as assumed."""
    if figure is not None:
        return known(what, figure, unit)
    return Input(what, usual.value, usual.low, usual.high, unit, assumed=True)


def or_range(what: str, figure: Figure | None, low: float, high: float, unit: str = "") -> Input:
    """Return the figure where it is given, else a missing one that may lie anywhere from ``low`` to ``high``."""
    if figure is not None:
        return known(what, figure, unit)
    return Input(what, (low + high) / 2, low, high, unit, missing=True)


def show_band(low: str, high: str) -> str:
    """Return both ends of a band in words that a minus sign does not muddle.

    >>> show_band("0.5", "2"), show_band("-9", "36")
    ('0.5–2', '-9 to 36')
    """
    return f"{low} to {high}" if "-" in low + high else f"{low}–{high}"


def show_value_text(number: str, unit: str) -> str:
    """Return a number that is already text with its unit, which may be empty."""
    return f"{number} {unit}".rstrip()
