"""The workshop: money that can be read, currencies with rates, days in order, readings that make sense."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.errors import LookUpError, QuantityError
from scantling.model.workshop import Printer, Vendor, Workshop
from scantling.quantities import CURRENCIES, Money, minor_digits, parse_money
from scantling.reading.scene import Scene

MOST_PRINTER_ERROR_RATIO = 0.05


def money(scene: Scene, text: str, currency: str, what: str, *path: str | int) -> Money | None:
    """Return an amount; None after a fault, also where it is in another currency than it should be."""
    if currency not in CURRENCIES:
        return None
    try:
        amount = parse_money(text, currency)
    except QuantityError as error:
        scene.add("27", f"{what}: {error.what}", error.mend, *path)
        return None
    if amount.currency != currency:
        mend = f"write it in {currency}, or say at the vendor which currency it has"
        scene.add("46", f"{what}: {text!r} is not in {currency}", mend, *path)
        return None
    return amount


def workshop(scene: Scene) -> None:
    """Note what does not hold together in the workshop itself."""
    shop = scene.workshop
    if shop is None:
        return
    currency = getattr(shop, "currency", "")
    if currency:
        _currency(scene, currency, "workshop", "currency")
    if shop.budget is not None:
        money(scene, shop.budget, currency, "budget", "workshop", "budget")
    _rates(scene, shop, currency)
    for name, vendor in shop.vendors.items():
        _vendor(scene, name, vendor, currency)
    if shop.order_on is not None and shop.need_by is not None and shop.need_by < shop.order_on:
        what = f"needed by {shop.need_by}, but ordered on {shop.order_on}"
        scene.add("28", what, "write a need-by that is later", "workshop", "need-by")
    _printer(scene, shop.printer)
    for number, rule in enumerate(shop.spares):
        if (rule.part is None) == (rule.wear is None):
            mend = "write one of part and wear"
            scene.add("44", "a spares rule is for a part or for a class of wear", mend, "workshop", "spares", number)


def _currency(scene: Scene, code: str, *path: str) -> None:
    try:
        minor_digits(code)
    except LookUpError as error:
        scene.add("46", error.what, f"{error.mend} (three-letter code, as in EUR)", *path)


def _rates(scene: Scene, shop: Workshop, currency: str) -> None:
    for code, rate in shop.rates.items():
        _currency(scene, code, "workshop", "rates", code)
        if rate.rate <= 0:
            mend = f"write how much {currency} one {code} costs"
            scene.add("46", f"the rate of {code} is not above 0", mend, "workshop", "rates", code, "rate")
        elif code == currency and rate.rate != 1:
            mend = "delete it; rates are for other currencies"
            scene.add("46", f"the rate of {code}, the workshop's own currency", mend, "workshop", "rates", code)


def currency_of(vendor: Vendor, shop: Workshop) -> str:
    """Return the currency of a vendor's prices."""
    return vendor.currency or str(getattr(shop, "currency", ""))


def _vendor(scene: Scene, name: str, vendor: Vendor, home: str) -> None:
    path = ("workshop", "vendors", name)
    if vendor.currency is not None:
        before = len(scene.faults.found)
        _currency(scene, vendor.currency, *path, "currency")
        is_known = len(scene.faults.found) == before
        if is_known and vendor.currency != home and not _has_rate(scene, vendor.currency):
            what = f"the vendor {name!r} sells in {vendor.currency}, for which there is no rate"
            mend = f"add rates: {{{vendor.currency}: {{rate: …, as-of: …}}}}, {home} for one {vendor.currency}"
            scene.add("46", what, mend, *path, "currency")
    for key, text, *inner in _amounts(vendor):
        money(scene, text, vendor.currency or home, f"the vendor {name!r}: {key}", *path, *inner, key)


def _has_rate(scene: Scene, code: str) -> bool:
    shop_file = scene.shop_file
    if shop_file is None:
        return False
    return code in shop_file.value.rates or code in shop_file.broken.get("rates", ()) or "rates" in shop_file.lost


def _amounts(vendor: Vendor) -> Iterator[tuple[str, ...]]:
    """Yield key, text and the key of the group it stands in, for all amounts of a vendor."""
    for key, text in (
        ("shipping", vendor.shipping),
        ("shipping-per-kg", vendor.shipping_per_kg),
        ("free-above", vendor.free_above),
        ("minimum-order", vendor.minimum_order),
        ("payment-fee", vendor.payment_fee),
    ):
        if text is not None and not (key == "payment-fee" and text.strip().endswith("%")):
            yield key, text
    customs = vendor.customs
    if customs is not None:
        for key, text in (("above", customs.above), ("per-kind", customs.per_kind), ("handling", customs.handling)):
            if text is not None:
                yield key, text, "customs"


def _printer(scene: Scene, printer: Printer) -> None:
    readings = (("across", printer.across_mm), ("along", printer.along_mm))
    for key, read in readings:
        if read is None:
            continue
        if printer.bar_mm is None or printer.bar_mm.value <= 0:
            mend = "add bar, the length that was drawn"
            scene.add("48", f"the printer has a reading {key} but no bar", mend, "workshop", "printer", key)
        elif abs(read.value / printer.bar_mm.value - 1) > MOST_PRINTER_ERROR_RATIO:
            what = f"the printer's reading {key} is {read.value:g} mm for a bar of {printer.bar_mm.value:g} mm"
            mend = "measure the bar again; printers are off by a few parts in a thousand"
            scene.add("48", what, mend, "workshop", "printer", key)
