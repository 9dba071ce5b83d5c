"""Terms of a dimension chain: their sizes, and the tolerance that the way of getting each brings with it."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.gets import CUT, MADE, plastic_of
from scantling.build.missing import each
from scantling.build.reader import Reader
from scantling.build.sizes import distance, feature, size
from scantling.model.design import ChainTerm
from scantling.model.expression import Between, Feature, references, tree

# Half of the tolerance in mm that each way of getting brings, and where that is from.
SAWN_MM = 0.5  # a bar to a line, by hand: workshop practice
BY_HAND_MM = 0.5  # a hole or an edge to a paper template: workshop practice
PRINTED_MM = 0.2  # printed parts: customary, 0.1 to 0.2
GENERAL_MM = ((6.0, 0.1), (30.0, 0.2), (120.0, 0.3), (400.0, 0.5), (1000.0, 0.8))  # ISO 2768-1 medium, from memory
GENERAL_MORE_MM = 1.2  # the same, 1 to 2 m


@dataclass(frozen=True)
class ChainPart:
    """One term: ``sign`` times ``nominal_mm``, which may be ``minus_mm`` less or ``plus_mm`` more.

    together : name of the group whose deviations are equal    how : where the tolerance is from
    assumed : it is that of the way of getting, not a figure of the design
    """

    text: str
    sign: int
    nominal_mm: float
    minus_mm: float
    plus_mm: float
    together: str | None
    how: str
    assumed: bool


@dataclass(frozen=True)
class _Tolerance:
    minus_mm: float
    plus_mm: float
    how: str
    assumed: bool


def chain_terms(reader: Reader, chain: str) -> tuple[ChainPart, ...]:
    """Return the terms of a chain in its order; raises ``NotDescribedError`` with all sizes that are missing."""
    terms = reader.design.chains[chain].terms
    return tuple(each(lambda at: _term(reader, terms[at]), range(len(terms))))


def _term(reader: Reader, term: ChainTerm) -> ChainPart:
    figure = reader.derive(size, term.size)
    tolerance = _tolerance(reader, term, figure.value - figure.low, figure.high - figure.value)
    return ChainPart(
        text=term.size,
        sign=-1 if term.sign == "-" else 1,
        nominal_mm=figure.value,
        minus_mm=tolerance.minus_mm,
        plus_mm=tolerance.plus_mm,
        together=term.together,
        how=tolerance.how,
        assumed=tolerance.assumed,
    )


def _tolerance(reader: Reader, term: ChainTerm, minus_mm: float, plus_mm: float) -> _Tolerance:
    """The term's own, else the band of its size, else those of the ways in which its pieces are got."""
    if term.tolerance_mm is not None:
        half_mm = max(abs(term.tolerance_mm.low), abs(term.tolerance_mm.high))
        return _Tolerance(half_mm, half_mm, "given", False)
    if minus_mm > 0 or plus_mm > 0:
        return _Tolerance(minus_mm, plus_mm, "band of the size", False)
    found = [_of_getting(reader, one) for one in references(tree(term.size)) if isinstance(one, Feature | Between)]
    if not found:
        return _Tolerance(0.0, 0.0, "taken as exact", True)
    half_mm = sum(one for one, _ in found)
    return _Tolerance(half_mm, half_mm, " and ".join(dict.fromkeys(how for _, how in found)), True)


def _of_getting(reader: Reader, reference: Feature | Between) -> tuple[float, str]:
    """Half the tolerance of one size of a piece, by the way the piece is got."""
    if isinstance(reference, Between):
        made = any(reader.get(place) == MADE for place in (reference.a, reference.b))
        apart_mm = reader.derive(distance, reference.a, reference.b).value
        return (BY_HAND_MM, "placed by hand") if made else _general(apart_mm)
    get = reader.get(reference.place)
    if get == CUT and reference.feature == "length":
        return SAWN_MM, "sawn"
    if plastic_of(get) is not None:
        return PRINTED_MM, "printed"
    if get == MADE and reference.feature != "thickness":
        return BY_HAND_MM, "made by hand"
    return _general(reader.derive(feature, reference.place, reference.feature).value)


def _general(value_mm: float) -> tuple[float, str]:
    """The general tolerance of a bought part's size."""
    half_mm = next((half for limit, half in GENERAL_MM if abs(value_mm) <= limit), GENERAL_MORE_MM)
    return half_mm, "general tolerance"
