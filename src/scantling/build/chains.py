"""Terms of a dimension chain: their sizes, and the tolerance that the way of getting each brings with it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from scantling.build.gets import CUT, MADE, plastic_of
from scantling.build.missing import each
from scantling.build.reader import Reader
from scantling.build.sizes import distance, feature, size
from scantling.model.design import ChainTerm
from scantling.model.expression import Between, Feature, references, tree
from scantling.model.features import feature_name
from scantling.quantities import Figure, Grade, parse_figure
from scantling.tables.tolerances import general_tolerance_mm, tolerance

SCALE = "scale of the template"  # what all sizes share that are made to sheets of one printer

Spread = Literal["normal", "even", "cut off", "measured"]


@dataclass(frozen=True)
class ChainPart:
    """One term: ``sign`` times ``nominal_mm``, which may be ``minus_mm`` less or ``plus_mm`` more.

    together : name of the group whose deviations are equal    how : where the tolerance is from
    assumed : it is that of the way of getting, not a figure of the design
    spread : how sizes lie within it    samples_mm : deviations that were read on pieces
    common : causes shared with other sizes, each with its ± in mm
    """

    text: str
    sign: int
    nominal_mm: float
    minus_mm: float
    plus_mm: float
    together: str | None
    how: str
    assumed: bool
    spread: Spread = "normal"
    samples_mm: tuple[float, ...] = ()
    common: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True)
class _Tolerance:
    minus_mm: float
    plus_mm: float
    how: str
    assumed: bool
    samples_mm: tuple[float, ...] = ()
    scaled: bool = False


def chain_terms(reader: Reader, chain: str) -> tuple[ChainPart, ...]:
    """Return the terms of a chain in its order; raises ``NotDescribedError`` with all sizes that are missing."""
    terms = reader.design.chains[chain].terms
    return tuple(each(lambda at: _term(reader, terms[at]), range(len(terms))))


def template_scale(reader: Reader) -> Figure:
    """Return the ± of the scale of printed templates: what is left after the check bars were read, or more."""
    printer = reader.workshop.printer
    is_read = printer.across_mm is not None and printer.along_mm is not None
    return tolerance("scale of a template" if is_read else "scale unread")


def _term(reader: Reader, term: ChainTerm) -> ChainPart:
    figure = reader.derive(size, term.size)
    found = _tolerance(reader, term, figure)
    common = [(cause, _amount_mm(text, figure.value)) for cause, text in term.common.items()]
    if found.scaled and SCALE not in term.common:
        common.append((SCALE, template_scale(reader).value * abs(figure.value)))
    return ChainPart(
        text=term.size,
        sign=-1 if term.sign == "-" else 1,
        nominal_mm=figure.value,
        minus_mm=found.minus_mm,
        plus_mm=found.plus_mm,
        together=term.together,
        how=found.how,
        assumed=found.assumed,
        spread="measured" if found.samples_mm else term.spread,
        samples_mm=found.samples_mm,
        common=tuple(common),
    )


def _amount_mm(text: str, size_mm: float) -> float:
    """The ± of a common cause: a length, or a share of the size."""
    if "%" in text:
        return parse_figure(text, "ratio").value * abs(size_mm)
    return parse_figure(text, "length").value


def _tolerance(reader: Reader, term: ChainTerm, figure: Figure) -> _Tolerance:
    """What was read on pieces, else the term's own, else the band of its size, else those of the ways of getting it."""
    samples = tuple(one.value - figure.value for one in term.samples_mm) or _read_on_lot(reader, term, figure)
    if samples:
        return _Tolerance(max(0.0, -min(samples)), max(0.0, max(samples)), "measured on pieces", False, samples)
    if term.tolerance_mm is not None:
        return _Tolerance(-term.tolerance_mm.low, term.tolerance_mm.high, "given", False)
    minus_mm, plus_mm = figure.value - figure.low, figure.high - figure.value
    is_one = isinstance(tree(term.size), Feature)
    if minus_mm > 0 or plus_mm > 0 or (is_one and figure.grade is Grade.MEASURED):
        return _Tolerance(
            minus_mm, plus_mm, "measured" if figure.grade is Grade.MEASURED else "band of the size", False
        )
    found = [_of_getting(reader, one) for one in references(tree(term.size)) if isinstance(one, Feature | Between)]
    if not found:
        return _Tolerance(0.0, 0.0, "taken as exact", True)
    half_mm = sum(one for one, _ in found)
    how = tuple(dict.fromkeys(how for _, how in found))
    return _Tolerance(half_mm, half_mm, " and ".join(how), True, scaled=any(one in BY_TEMPLATE for one in how))


def _read_on_lot(reader: Reader, term: ChainTerm, figure: Figure) -> tuple[float, ...]:
    """Deviations of several pieces of the lot in hand from their mean, where the term is a feature read on them."""
    node = tree(term.size)
    if not isinstance(node, Feature):
        return ()
    part = reader.part(node.place)
    if part is None:
        return ()
    name = feature_name(type(part), node.feature)
    for actual in reader.workshop.actuals:
        if actual.part == part.id and feature_name(type(part), actual.size) == name and actual.samples:
            return tuple(parse_figure(text, "length").value - figure.value for text in actual.samples)
    return ()


PLACED, BY_HAND = "placed by hand", "made by hand"
BY_TEMPLATE = (PLACED, BY_HAND)


def _of_getting(reader: Reader, reference: Feature | Between) -> tuple[float, str]:
    """Half the tolerance of one size of a piece, by the way the piece is got."""
    if isinstance(reference, Between):
        made = any(reader.get(place) == MADE for place in (reference.a, reference.b) if place != "machine")
        apart_mm = reader.derive(distance, reference.a, reference.b).value
        return (tolerance("edge by hand").value, PLACED) if made else _general(apart_mm)
    get = reader.get(reference.place)
    if get == CUT and reference.feature == "length":
        return tolerance("bar sawn to a line").value, "sawn"
    if plastic_of(get) is not None:
        return tolerance("printed size").value, "printed"
    if get == MADE and reference.feature != "thickness":
        return tolerance("edge by hand").value, BY_HAND
    return _general(reader.derive(feature, reference.place, reference.feature).value)


def _general(value_mm: float) -> tuple[float, str]:
    """The general tolerance of a bought part's size."""
    return general_tolerance_mm(value_mm), "general tolerance"
