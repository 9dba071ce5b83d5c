"""How many bushings more than needed are worth buying."""

from __future__ import annotations

from typing import Any

from scantling.api.trials.rods import DRIVE
from scantling.api.trials.trial import Ask, Given, Trial, fields
from scantling.errors import Fault, FaultsError, QuantityError, Where
from scantling.quantities import parse_money

USUAL = "8 mm"


def _design(given: Given) -> dict[str, Any]:
    size = given.get("diameter", USUAL)
    bushing = {"kind": "bushing", "name": "bushings", "lining": "ball", "bore": size} | fields(given, rough="rough")
    rod = {"kind": "rod", "diameter": size, "fit": given.get("fit", "h6"), "material": "steel"}
    guide = {"rods": "rod", "bearings": "bushing"}
    axis = {"drive": "belt", "pulley": "pulley", "belt": "belt", "guide": guide}
    return {
        "parts": {"rod": rod, "bushing": bushing, **DRIVE},
        "places": {
            "rod": {"reference": "rod", "quantity": "2"},
            "bushing": {"reference": "bushing", "quantity": given["need"]},
            **{name: {"reference": name} for name in DRIVE},
        },
        "axes": {"tried": axis},
    }


def _workshop(given: Given) -> dict[str, Any]:
    spares = [{"part": "bushing", "at-least": given.get("spares", "0")}]
    if "price" not in given or "parcel" not in given:
        return {"spares": spares}
    try:
        price, parcel = (parse_money(given[name]) for name in ("price", "parcel"))
    except QuantityError as error:
        raise FaultsError([Fault("TRY-03", error.what, error.mend, Where("--price, --parcel"))]) from error
    vendor = {"name": "vendor", "currency": price.currency, "shipping": given["parcel"]}
    offer = {"vendor": "vendor", "part": "bushing", "price": given["price"]}
    if price.currency != parcel.currency:
        what = f"price in {price.currency}, parcel in {parcel.currency}"
        raise FaultsError([Fault("TRY-03", what, "write both in one currency", Where("--price, --parcel"))])
    return {"spares": spares, "currency": price.currency, "vendors": {"vendor": vendor}, "offers": [offer]}


TRIAL = Trial(
    "spares",
    "How many bushings should I buy to pick the good ones from?",
    'scantling try spares --need 12 --spares 3 --rough "10 %" --price "1.90 EUR" --parcel "12.00 EUR"',
    (
        Ask("need", "count", "Bushings that are needed.", needed=True),
        Ask("spares", "count", "Bushings bought besides."),
        Ask("rough", "ratio", "Share that is rough or loose; 10 % (5..30) where nothing is said."),
        Ask("price", "text", "Of one more, with its currency: 1.90 EUR."),
        Ask("parcel", "text", "What another parcel, and waiting for it, costs: 12.00 EUR."),
        Ask("diameter", "length", "Of the rods; 8 mm where nothing is said."),
        Ask("fit", "text", "ISO 286 class of the rods; h6 where nothing is said."),
    ),
    _design,
    ("ROD-10",),
    workshop=_workshop,
)
