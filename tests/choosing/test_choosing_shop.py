"""A workshop as the solver takes it: terms, packs, levels, drawers and saws in whole units, and what orders come to."""

from __future__ import annotations

from fractions import Fraction

import pytest

from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.choosing.choose import buy
from scantling.choosing.opened import open_build
from scantling.choosing.problem import CustomsTerms, InHand, Level, Spare
from scantling.choosing.result import Purchase
from scantling.choosing.shop import in_hand, pack_offers, sawing_of, spares_of, vendor_terms
from scantling.model.design import Design
from scantling.model.project import Project
from scantling.model.workshop import Workshop

PARTS = {
    "rod": {"kind": "rod", "diameter": "8 mm", "wear": "bent"},
    "clip": {"kind": "thing", "mass": "2.5 g", "goods": "springs", "wear": "small"},
    "ply": {"kind": "sheet", "material": "birch plywood", "thickness": "8 mm"},
    "petg": {"kind": "filament", "plastic": "PETG", "mass": "1.2 kg"},
}
PLACES = {
    "clip": {"reference": "clip", "quantity": "4"},
    "rod": {"reference": "rod", "length": "300 mm", "quantity": "2"},
}
VENDORS = {
    "town": {"prices": "with tax", "shipping": "0", "lead-days": "1"},
    "net": {
        "prices": "without tax",
        "tax": "19 %",
        "tax-rounded": "line",
        "shipping": "4.90",
        "free-above": "50.00",
        "minimum-order": "10.00",
        "payment-fee": "2.9 %",
        "lead-days": "4",
    },
    "far": {
        "currency": "USD",
        "shipping": "3.00",
        "shipping-per-kg": "7.50",
        "payment-fee": "0.35",
        "lead-days": "21",
        "customs": {"above": "150.00", "duty": "4.7 %", "per-kind": "3.00", "handling": "6.00"},
    },
}
OFFERS = [
    {"id": "town/clip", "vendor": "town", "part": "clip", "pack": "10", "price": "1.50", "stock": "3"},
    {"id": "net/clip", "vendor": "net", "part": "clip", "pack": "100", "price": "4.20", "levels": ["3: 3.60"]},
    {"id": "far/rod", "vendor": "far", "part": "rod", "price": "2.40", "length": "1000 mm", "mass": "400 g"},
    {
        "id": "town/ply",
        "vendor": "town",
        "part": "ply",
        "price": "19.90",
        "board-width": "600 mm",
        "board-depth": "400 mm",
    },
    {"id": "net/petg", "vendor": "net", "part": "petg", "pack": "2", "price": "30.00", "net-mass": "1 kg"},
]


def workshop(**more) -> Workshop:
    """A workshop with three vendors, one of them abroad."""
    given = {
        "name": "bench",
        "currency": "EUR",
        "rates": {"USD": {"rate": "0.92", "as-of": "2026-03-01"}},
        "vendors": {name: {**vendor, "id": name} for name, vendor in VENDORS.items()},
        "offers": OFFERS,
        **more,
    }
    return Workshop.model_validate(given)


def opened(**more) -> Case:
    """The parts and places above in that workshop."""
    named = {"parts": PARTS, "places": PLACES}
    sections = {word: {key: {**entry, "id": key} for key, entry in rows.items()} for word, rows in named.items()}
    design = Design.model_validate({"machine": {"name": "shop"}, **sections})
    return Case(Project(design, workshop(**more)))


def test_terms_of_each_vendor():
    terms = vendor_terms(workshop())
    assert list(terms) == ["far", "net", "town"]
    town, net, far = terms["town"], terms["net"], terms["far"]
    assert (town.with_tax, town.shipping_minor, town.free_above_minor, town.minimum_minor) == (True, 0, None, None)
    assert (net.with_tax, net.tax, net.rounded) == (False, Fraction(19, 100), "line")
    assert (net.shipping_minor, net.free_above_minor, net.minimum_minor) == (490, 5000, 1000)
    assert (net.fee_share, net.fee_minor) == (Fraction(29, 1000), 0)
    assert (far.currency, far.rate, far.per_kg_minor, far.fee_minor) == ("USD", Fraction(92, 100), 750, 35)
    assert far.customs == CustomsTerms(15000, Fraction(47, 1000), 300, 600)


def test_a_rate_between_currencies_of_unlike_coins():
    terms = vendor_terms(
        workshop(
            currency="JPY",
            rates={"USD": {"rate": "150", "as-of": "2026-03-01"}},
            vendors={"far": {**VENDORS["far"], "id": "far"}},
            offers=[],
        )
    )
    assert terms["far"].rate == Fraction(150, 100)  # yen have no minor unit, dollars a hundred cents


def test_packs_in_whole_units():
    offers = {offer.id: offer for offer in pack_offers(opened(), frozenset(PARTS))}
    assert list(offers) == sorted(offers)
    clip, many, rod, ply, petg = (offers[row["id"]] for row in OFFERS)
    assert (clip.unit, clip.pack, clip.stock, clip.grams, clip.kind) == ("piece", 10, 3, 20, "springs")
    assert many.levels == (Level(1, 420), Level(3, 360))
    assert [many.price_minor(packs) for packs in (1, 2, 3, 9)] == [420, 420, 360, 360]
    assert (rod.unit, rod.bar_um, rod.grams, rod.lead_days) == ("length", 1_000_000, 400, 21)
    assert (ply.unit, ply.board_um) == ("board", (600_000, 400_000))
    assert (petg.unit, petg.pack, petg.grams) == ("g", 2000, 2000)


def test_only_what_is_asked_for():
    assert [offer.id for offer in pack_offers(opened(), frozenset({"clip"}))] == ["net/clip", "town/clip"]


def test_a_rule_for_the_part_goes_before_one_for_its_wear():
    rules = [
        {"wear": "small", "extra": "10 %", "at-least": "2"},
        {"part": "clip", "extra": "50 %"},
        {"wear": "bent", "at-least": "1"},
    ]
    found = spares_of(opened(spares=rules), ["ply", "rod", "clip"])
    assert found == {"clip": Spare(Fraction(1, 2), 0), "rod": Spare(Fraction(0), 1)}


def test_equal_things_in_the_drawer_count_together():
    stock = [
        {"part": "clip", "quantity": "3"},
        {"part": "clip", "quantity": "4"},
        {"part": "rod", "quantity": "1", "length": "620 mm"},
        {"part": "petg", "quantity": "2", "mass": "150 g"},
        {"part": "ply", "quantity": "9"},
    ]
    assert in_hand(workshop(stock=stock), frozenset({"clip", "rod", "petg"})) == (
        InHand("clip", "piece", 7),
        InHand("petg", "g", 300),
        InHand("rod", "length", 1, 620_000),
    )


def test_only_bars_are_sawn():
    case = opened(saw={"bar-kerf": "1.2 mm", "bar-facing": "0.5 mm"})
    found = sawing_of(case, ["clip", "ply", "rod"])
    assert {part: (one.kerf_um, one.facing_um) for part, one in found.items()} == {"rod": (1200, 500)}


@pytest.mark.parametrize(
    ("copies", "clips"),
    [
        (1, {"town/clip": 1}),
        (7, {"town/clip": 3}),
        (8, {"net/clip": 1}),
    ],
)
def test_orders_come_to_what_the_terms_say(copies, clips):
    """Clips: 4 a copy, ten for 1.50 in town (30 at most) or a hundred for 4.20 and tax, posted for 4.90."""
    case = opened(
        vendors={n: {**v, "id": n} | ({"minimum-order": None} if n == "net" else {}) for n, v in VENDORS.items()}
    )
    bought = buy(open_build(case, reference_build(case, copies)), reference_build(case, copies))
    assert isinstance(bought, Purchase)
    lines = {line.offer: line.packs for order in bought.orders for line in order.lines}
    assert {name: packs for name, packs in lines.items() if "clip" in name} == clips
    for order in bought.orders:
        if order.vendor == "net":
            goods = 420 + round(420 * 0.19)  # tax of the line: 79.8 cents, up
            shipping = 490
            assert order.total_minor == goods + shipping + round((goods + shipping) * 0.029)
        if order.vendor == "far":
            bars = lines["far/rod"]
            dollars = 240 * bars + 300 + 750 * 400 * bars // 1000 + 35
            assert order.total_minor == dollars
            assert order.home_minor == round(dollars * 0.92 + 1e-9)
