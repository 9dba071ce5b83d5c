"""The terms of a dimension chain as what varies on its own: single sizes, and groups made in one go."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.chains import ChainPart, chain_terms
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.inputs import Input
from scantling.checks.limits import Bounds, at_least, at_most, between
from scantling.formulas.chains import Link, part_names
from scantling.formulas.sampling import Limited
from scantling.model.design import Chain


@dataclass(frozen=True)
class Varied:
    """A chain: its nominal size, its deviations as inputs, and as links for squares and sampling.

    words : for each link what it is, as a sentence names it
    """

    nominal_mm: float
    deviations: dict[str, Input]
    links: tuple[Link, ...]
    words: tuple[str, ...]
    assumed: tuple[str, ...]

    def word(self, name: str) -> str:
        """Return in words what varies under a name of ``part_names``."""
        return self.words[part_names(self.links).index(name)]

    def tolerance_mm(self, name: str) -> float:
        """Return the ± of what varies under a name: of a group that of its first size."""
        return self.links[part_names(self.links).index(name)].tolerance_mm


def varied(reader: Reader, chain: str) -> Varied:
    """Return what varies in a chain."""
    terms = reader.derive(chain_terms, chain)
    groups: dict[str, list[tuple[str, float, float]]] = {}
    links: list[tuple[Link, str]] = []
    for number, term in enumerate(terms):
        name = term.together or f"#{number}"
        groups.setdefault(name, []).append((term.together or term.text, *_ends(term.sign, term.minus_mm, term.plus_mm)))
        links.append((_link(term), term.together or term.text))
        for cause, half_mm in term.common:
            groups.setdefault(cause, []).append((cause, *_ends(term.sign, half_mm, half_mm)))
            links.append((Link(0.0, half_mm, float(term.sign), group=cause), cause))
    return Varied(
        sum(term.sign * term.nominal_mm for term in terms),
        {f"d{number}": _deviation(members) for number, members in enumerate(groups.values())},
        tuple(link for link, _ in links),
        tuple(word for _, word in links),
        tuple(f"tolerance of {term.text} ({term.how})" for term in terms if term.assumed and _half_mm(term) > 0),
    )


def limited(found: Varied, name: str, chain: Chain) -> Limited:
    """Return a chain with its limits for sampling; raises ``NotDescribedError`` where it has none."""
    low_mm, high_mm = chain_bounds(name, chain).at({})
    return Limited(found.links, low_mm, high_mm)


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


def _ends(sign: int, minus_mm: float, plus_mm: float) -> tuple[float, float]:
    """How far the chain moves when a size runs to its larger end, and to its smaller one."""
    return sign * plus_mm, -sign * minus_mm


def _deviation(members: list[tuple[str, float, float]]) -> Input:
    """Return how far one group moves the chain when all its sizes run to one end together."""
    larger = sum(plus for _, plus, _ in members)
    smaller = sum(minus for _, _, minus in members)
    return Input(members[0][0], 0.0, min(larger, smaller, 0.0), max(larger, smaller, 0.0), "mm")


def _link(term: ChainPart) -> Link:
    """Return a term with a tolerance that is even on both sides; what was read on pieces stays as it was read."""
    group = term.together or ""
    if term.samples_mm:
        return Link(term.nominal_mm, 0.0, float(term.sign), "measured", group, term.samples_mm)
    middle_mm = term.nominal_mm + (term.plus_mm - term.minus_mm) / 2
    return Link(middle_mm, _half_mm(term), float(term.sign), term.spread, group)


def _half_mm(term: ChainPart) -> float:
    return (term.plus_mm + term.minus_mm) / 2
