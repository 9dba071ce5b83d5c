"""The terms of a dimension chain as what varies on its own: single sizes, and groups made in one go."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.chains import ChainPart, chain_terms
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.inputs import Input
from scantling.checks.limits import Bounds, at_least, at_most, between
from scantling.formulas.chains import Link
from scantling.model.design import Chain


@dataclass(frozen=True)
class Varied:
    """A chain: its nominal size, its deviations as inputs, and as links for squares and sampling."""

    nominal_mm: float
    deviations: dict[str, Input]
    links: tuple[Link, ...]
    assumed: tuple[str, ...]


def varied(reader: Reader, chain: str) -> Varied:
    """Return what varies in a chain."""
    terms = reader.derive(chain_terms, chain)
    groups: dict[str, list[ChainPart]] = {}
    for number, term in enumerate(terms):
        groups.setdefault(term.together or f"#{number}", []).append(term)
    return Varied(
        sum(term.sign * term.nominal_mm for term in terms),
        {f"d{number}": _deviation(members) for number, members in enumerate(groups.values())},
        tuple(_link(term) for term in terms),
        tuple(f"tolerance of {term.text} ({term.how})" for term in terms if term.assumed and _half_mm(term) > 0),
    )


def chain_bounds(name: str, chain: Chain) -> Bounds:
    """Return the limits of a chain's size; raises ``NotDescribedError`` where it has none."""
    low, high = chain.at_least_mm, chain.at_most_mm
    if low is not None and high is not None:
        return between(low.value, high.value)
    if low is not None:
        return at_least(low.value)
    if high is None:
        raise NotDescribedError((f"chains.{name}.at-least", f"chains.{name}.at-most"))
    return at_most(high.value)


def _deviation(members: list[ChainPart]) -> Input:
    """Return how far one group moves the chain when all its sizes run to one end together."""
    larger = sum(m.sign * m.plus_mm for m in members)
    smaller = -sum(m.sign * m.minus_mm for m in members)
    what = members[0].together or members[0].text
    return Input(what, 0.0, min(larger, smaller, 0.0), max(larger, smaller, 0.0), "mm")


def _link(term: ChainPart) -> Link:
    """Return a term with a tolerance that is even on both sides."""
    middle_mm = term.nominal_mm + (term.plus_mm - term.minus_mm) / 2
    return Link(middle_mm, _half_mm(term), float(term.sign), group=term.together or "")


def _half_mm(term: ChainPart) -> float:
    return (term.plus_mm + term.minus_mm) / 2
