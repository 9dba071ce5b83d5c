"""From what a maker writes (``3/8 in``, ``8 mm ± 0.1 mm``, ``5..6.6 mm``) to a figure in canonical units.

Strict on purpose: whatever could be read in two ways is refused with a sentence that says what to write instead.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from scantling.errors import QuantityError
from scantling.quantities.figure import Figure
from scantling.quantities.numbers import NUMBER, exact_number, plain_text
from scantling.quantities.refusals import is_thread_with_dash, not_a_number, wrong_unit
from scantling.quantities.units import Dimension, Unit, dimension, tidy

_LARGEST = 10**12
_PLUS_MINUS = re.compile(r"\s*(?:±|\+/-|\+-)\s*")
_RANGE = re.compile(r"\s*(?:\.\.\.?|…|–)\s*|\s+to\s+")
_IN_BRACKETS = re.compile(r"(?P<main>[^()]+)\((?P<band>[^()]*[0-9][^()]*)\)")
_LEADING_HRC = re.compile(r"(?:HRC|Rc)\s*(?P<rest>[0-9].*)")
_SECOND_NUMBER = re.compile(r"^(?!1/[A-Za-z°])[0-9.,+-]|^/\s*[0-9]|(?<![A-Za-z])\s+[0-9.]|-\s*[0-9]|['x×]\s*[0-9]")
_TERM = re.compile(rf"(?P<number>{NUMBER})\s*(?P<unit>.*)")
_UNSIGNED = NUMBER.removeprefix(r"[+-]?\s?")
_TWO_SIDED = re.compile(
    rf"(?P<head>{NUMBER}(?:\s*[^0-9\s+./,-][^+±]*?)?)\s*(?P<first>[+-]\s?{_UNSIGNED})"
    rf"(?:\s*/\s*(?P<zero>0)|\s*[/\s]\s*(?P<second>[+-]\s?{_UNSIGNED}))\s*(?P<unit>[^0-9\s.,/+-].*)?"
)


@dataclass(frozen=True)
class _Term:
    """A number and the unit written after it, ``""`` where none is."""

    number: Fraction
    unit: str


@dataclass(frozen=True)
class _Band:
    """Value and ends, exact, in the canonical unit."""

    value: Fraction
    low: Fraction
    high: Fraction


def parse_figure(text: str, dimension_name: str) -> Figure:
    """Return the figure written in ``text``, in the canonical unit of its dimension.

    Takes ``8 mm``, ``2,5 mm``, ``1 3/8 in``, ``3/8"``, ``1e-3 m``; with a band ``8 mm ± 0.1 mm``, ``10 N ± 5 %``,
    ``8 mm +0.2/-0.1 mm``, ``5.0..6.6 mm`` (value in the middle), ``0.7 W/K (0.55..0.9)``.
    Raises ``QuantityError`` for all else, ``LookUpError`` where no such dimension exists.

    >>> parse_figure("1 3/8 in", "length").value
    34.925
    """
    kind = dimension(dimension_name)
    band = _read(plain_text(text), kind)
    if not band.low <= band.value <= band.high:
        raise QuantityError(
            f"{text.strip()!r}: the value is outside its own band", f"write the two ends, as in {_band_example(kind)}"
        )
    _within_reason(band, kind, text)
    return Figure(float(band.value), float(band.low), float(band.high))


def _read(text: str, kind: Dimension) -> _Band:
    """Choose the form in which the text is written."""
    leading = _LEADING_HRC.fullmatch(text) if kind.name == "hardness" else None
    text = leading["rest"] if leading else text
    if is_thread_with_dash(text):
        raise not_a_number(text.replace("–", "-"), kind)
    if bracketed := _IN_BRACKETS.fullmatch(text):
        return _with_bracket(bracketed, kind)
    if len(halves := _PLUS_MINUS.split(text)) == 2:
        return _with_tolerance(halves[0], halves[1], kind)
    if len(halves := _RANGE.split(text)) == 2:
        return _range(halves[0], halves[1], kind, unit="")
    if sided := _TWO_SIDED.fullmatch(text):
        return _with_deviations(sided, kind)
    value = _value(_term(text, kind), kind)
    return _Band(value, value, value)


def _with_bracket(found: re.Match[str], kind: Dimension) -> _Band:
    """``0.7 W/K (0.55..0.9)``: the band may leave out the unit."""
    term = _term(found["main"], kind)
    ends = _RANGE.split(found["band"].strip())
    if len(ends) != 2:
        raise QuantityError(f"{found['band']!r} is no band", f"write {_band_example(kind)} inside the brackets")
    band = _range(ends[0], ends[1], kind, unit=term.unit)
    return _Band(_value(term, kind), band.low, band.high)


def _range(first: str, last: str, kind: Dimension, unit: str) -> _Band:
    """``5.0..6.6 mm``: an end without a unit takes the other's, else ``unit``."""
    low, high = _term(first, kind), _term(last, kind)
    low_value = _value(_Term(low.number, low.unit or high.unit or unit), kind)
    high_value = _value(_Term(high.number, high.unit or low.unit or unit), kind)
    if low_value > high_value:
        raise QuantityError(f"the band {first.strip()} to {last.strip()} runs backwards", "write the smaller end first")
    return _Band((low_value + high_value) / 2, low_value, high_value)


def _with_tolerance(head: str, tolerance: str, kind: Dimension) -> _Band:
    """``8 mm ± 0.1 mm``, ``8 ± 0.1 mm``, ``10 N ± 5 %``."""
    term, spread = _term(head, kind), _term(tolerance, kind)
    if tolerance[:1] in "+-":
        raise QuantityError(f"the tolerance {tolerance!r} has a sign of its own", "write ± and a number without sign")
    if spread.unit in ("%", "percent"):
        return _with_percent(term, spread.number / 100, kind)
    unit = _unit(_Term(spread.number, spread.unit or term.unit), kind)
    value = _value(_Term(term.number, term.unit or spread.unit), kind)
    half = spread.number * unit.factor
    return _Band(value, value - half, value + half)


def _with_percent(term: _Term, share: Fraction, kind: Dimension) -> _Band:
    if kind.name in ("ratio", "temperature"):
        raise QuantityError(
            f"± per cent of {kind.with_article} can be read in two ways", f"write {_band_example(kind)}"
        )
    value = _value(term, kind)
    half = abs(value) * share
    return _Band(value, value - half, value + half)


def _with_deviations(found: re.Match[str], kind: Dimension) -> _Band:
    """``8 mm +0.2/-0.1 mm``: deviations in either order; without a unit they take the value's."""
    head = _term(found["head"], kind)
    shared = (found["unit"] or "").strip()
    unit = _unit(_Term(head.number, shared or head.unit), kind)
    value = _value(_Term(head.number, head.unit or shared), kind)
    steps = sorted(exact_number(side) * unit.factor for side in (found["first"], found["second"] or found["zero"]))
    return _Band(value, value + steps[0], value + steps[1])


def _term(text: str, kind: Dimension) -> _Term:
    """Split a text into its number and its unit."""
    found = _TERM.fullmatch(text.strip())
    if found is None or _SECOND_NUMBER.search(found["unit"]):
        raise not_a_number(text.strip(), kind)
    return _Term(exact_number(found["number"]), found["unit"].strip())


def _unit(term: _Term, kind: Dimension) -> Unit:
    """Return the unit of a term; a bare number only where the dimension allows it."""
    spelling = tidy(term.unit)
    if not spelling and kind.may_be_bare:
        return Unit("", Fraction(1))
    unit = kind.units.get(spelling)
    if unit is None:
        raise wrong_unit(term.number, term.unit, kind)
    return unit


def _value(term: _Term, kind: Dimension) -> Fraction:
    unit = _unit(term, kind)
    return term.number * unit.factor + unit.offset


def _within_reason(band: _Band, kind: Dimension, text: str) -> None:
    """Refuse what no workshop means: beyond 10^12, below absolute zero, parts of a counted thing."""
    if max(abs(band.low), abs(band.high)) > _LARGEST:
        raise QuantityError(
            f"{text.strip()!r} is far too large", f"check the number and its unit, as in {kind.example}"
        )
    if kind.least is not None and band.low < kind.least:
        raise QuantityError(f"{text.strip()!r} is below absolute zero", f"write {kind.example}")
    if kind.is_whole and (band.low != band.high or band.value.denominator != 1):
        raise QuantityError(f"{text.strip()!r} is not a whole number", "write a count such as 4")


def _band_example(kind: Dimension) -> str:
    """Return a band in the units of the dimension, for error texts."""
    if kind.name == "ratio":
        return "0.15..0.25"
    number, _, unit = kind.example.partition(" ")
    return f"{float(number) * 0.9:g}..{float(number) * 1.1:g} {unit}".strip()
