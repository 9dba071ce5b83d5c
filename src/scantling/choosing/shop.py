"""A workshop as the solver takes it: offers, terms, spares, stock, sawing, all in whole units."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from scantling.build.case import Case
from scantling.choosing.problem import CustomsTerms, InHand, Level, PackOffer, Sawing, Spare, Terms
from scantling.model.kinds import Rod, ThreadedRod
from scantling.model.workshop import Customs, Offer, Stock, Vendor, Workshop
from scantling.quantities import Figure, minor_digits, parse_money

UM_PER_MM = 1000
G_PER_KG = 1000


def pack_offers(case: Case, parts: frozenset[str]) -> tuple[PackOffer, ...]:
    """Return the offers of some parts, sorted by identifier."""
    workshop = case.project.workshop
    wanted = (number for number, offer in enumerate(workshop.offers) if offer.part in parts)
    return tuple(sorted((case.once(_numbered, number) for number in wanted), key=lambda o: o.id))


def _numbered(case: Case, number: int) -> PackOffer:
    workshop = case.project.workshop
    return _offer(case, workshop, workshop.offers[number])


def _offer(case: Case, workshop: Workshop, offer: Offer) -> PackOffer:
    vendor = workshop.vendors[offer.vendor]
    currency = vendor.currency or workshop.currency
    levels = [Level(1, parse_money(offer.price, currency).minor)]
    levels += [
        Level(level.packs, parse_money(level.price, currency).minor) for level in offer.levels if level.packs > 1
    ]
    grams = offer.net_mass_kg
    unit, each = ("g", _grams(grams)) if grams is not None else ("piece", 1)
    board = (0, 0)
    if offer.board_width_mm is not None and offer.board_depth_mm is not None:
        unit, board = "board", (_um(offer.board_width_mm), _um(offer.board_depth_mm))
    elif offer.length_mm is not None:
        unit = "length"
    return PackOffer(
        offer.id,
        offer.vendor,
        offer.part,
        unit,  # type: ignore[arg-type]
        offer.pack * each,
        tuple(levels),
        _um(offer.length_mm) if unit == "length" and offer.length_mm is not None else 0,
        board,
        _posted(case, offer),
        case.part(offer.part).goods or offer.part,
        offer.lead_days if offer.lead_days is not None else vendor.lead_days,
        offer.stock,
    )


def _posted(case: Case, offer: Offer) -> int:
    """Return the mass of a pack in grams: as the offer says it, else of its filament or its pieces, else 0."""
    if offer.mass_kg is not None:
        return _grams(offer.mass_kg)
    if offer.net_mass_kg is not None:
        return offer.pack * _grams(offer.net_mass_kg)
    mass = case.part(offer.part).mass_kg
    return offer.pack * _grams(mass) if mass is not None else 0


def vendor_terms(workshop: Workshop) -> dict[str, Terms]:
    """Return what each vendor asks beyond the goods, sorted by identifier."""
    return {name: _terms(workshop, workshop.vendors[name]) for name in sorted(workshop.vendors)}


def _terms(workshop: Workshop, vendor: Vendor) -> Terms:
    currency = vendor.currency or workshop.currency

    def minor(text: str | None) -> int | None:
        return None if text is None else parse_money(text, currency).minor

    fee = vendor.payment_fee
    share = Fraction(fee.rstrip("% ").replace(",", ".")) / 100 if fee and fee.strip().endswith("%") else Fraction(0)
    return Terms(
        vendor.id,
        currency,
        _rate(workshop, currency),
        vendor.prices == "with tax",
        vendor.tax or Fraction(0),
        vendor.tax_rounded,
        minor(vendor.shipping) or 0,
        minor(vendor.shipping_per_kg) or 0,
        minor(vendor.free_above),
        minor(vendor.minimum_order),
        0 if share else minor(fee) or 0,
        share,
        _customs(vendor.customs, currency) if vendor.customs else None,
    )


def _rate(workshop: Workshop, currency: str) -> Fraction:
    """Return home minor units per minor unit of a currency."""
    if currency == workshop.currency:
        return Fraction(1)
    digits = minor_digits(workshop.currency) - minor_digits(currency)
    return workshop.rates[currency].rate * Fraction(10) ** digits


def _customs(customs: Customs, currency: str) -> CustomsTerms:
    def minor(text: str | None) -> int:
        return parse_money(text, currency).minor if text else 0

    above = minor(customs.above) if customs.above else None
    return CustomsTerms(above, customs.duty or Fraction(0), minor(customs.per_kind), minor(customs.handling))


def spares_of(case: Case, parts: Iterable[str]) -> dict[str, Spare]:
    """Return the spares rule of each part; a rule that names the part goes before one for its class of wear."""
    rules = case.project.workshop.spares
    by_part = {rule.part: Spare(rule.extra, rule.at_least) for rule in rules if rule.part}
    by_wear = {rule.wear: Spare(rule.extra, rule.at_least) for rule in rules if rule.wear}
    found = {}
    for part in sorted(parts):
        rule = by_part.get(part) or by_wear.get(case.part(part).wear or "")
        if rule is not None:
            found[part] = rule
    return found


def in_hand(workshop: Workshop, parts: frozenset[str]) -> tuple[InHand, ...]:
    """Return what lies in the drawer of some parts, equal things together."""
    counts: dict[tuple[str, str, int], int] = {}
    for stock in workshop.stock:
        if stock.part in parts:
            key, amount = _stock(stock)
            counts[key] = counts.get(key, 0) + amount
    return tuple(InHand(part, unit, count, bar) for (part, unit, bar), count in sorted(counts.items()))  # type: ignore[arg-type]


def _stock(stock: Stock) -> tuple[tuple[str, str, int], int]:
    if stock.length_mm is not None:
        return (stock.part, "length", _um(stock.length_mm)), stock.quantity
    if stock.mass_kg is not None:
        return (stock.part, "g", 0), _grams(stock.mass_kg) * stock.quantity
    return (stock.part, "piece", 0), stock.quantity


def sawing_of(case: Case, parts: Iterable[str]) -> dict[str, Sawing]:
    """Return what cutting takes from bars of rod; belts are cut with scissors and lose nothing."""
    saw = case.project.workshop.saw
    lost = Sawing(_um(saw.bar_kerf_mm), _um(saw.bar_facing_mm))
    return {part: lost for part in sorted(parts) if isinstance(case.part(part), (Rod, ThreadedRod))}


def _um(length: Figure | None) -> int:
    return 0 if length is None else round(length.value * UM_PER_MM)


def _grams(mass: Figure) -> int:
    return round(mass.value * G_PER_KG)
