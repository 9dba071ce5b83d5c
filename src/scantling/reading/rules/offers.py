"""Offers and stock: of a known vendor, of a known part, in the unit that the part is sold in."""

from __future__ import annotations

from scantling.errors import QuantityError, nearest
from scantling.model.features import feature_name, figure_fields
from scantling.model.kinds import Belt, Filament, Rod, SheetStock, ThreadedRod, Wire
from scantling.model.part import Part
from scantling.model.workshop import Actual, Level, Offer, Workshop
from scantling.quantities import dimension_of, parse_figure
from scantling.reading.document import Document
from scantling.reading.nodes import Path
from scantling.reading.rules.shop import currency_of, money
from scantling.reading.rules.sizes import features_of
from scantling.reading.scene import Scene

MAY_BE_0 = ("backlash", "float", "bow-300", "lead-error-300", "drag", "friction", "detent-torque", "infill", "rough")


def offers(scene: Scene) -> None:
    """Note offers, stock, spares and measured sizes that cannot be used."""
    shop_file = scene.shop_file
    if shop_file is None:
        return
    seen: dict[str, int] = {}
    for number, offer in enumerate(shop_file.value.offers):
        _offer(scene, shop_file, offer, number)
        if offer.id and seen.setdefault(offer.id, number) != number:
            mend = "leave it out: an offer without one is named by vendor, part and pack"
            scene.add("08", f"two offers are called {offer.id!r}", mend, "workshop", "offers", number, "id")
    _parts_named(scene, shop_file.value)


def _parts_named(scene: Scene, shop: Workshop) -> None:
    for section in ("stock", "spares", "actuals"):
        for number, row in enumerate(getattr(shop, section)):
            if row.part is not None and not scene.is_shared:
                scene.expect_part(row.part, section, "workshop", section, number, "part")
    for number, actual in enumerate(shop.actuals):
        _measured(scene, actual, scene.design.parts.get(actual.part), number)


def _measured(scene: Scene, actual: Actual, part: Part | None, number: int) -> None:
    """Note what was measured of no figure of the part, in another unit, or as nothing."""
    path = ("workshop", "actuals", number)
    fields = {} if part is None else figure_fields(type(part))
    known = () if part is None else tuple(dict.fromkeys([*features_of(part), *fields]))
    if part is not None and actual.size not in known:
        what = f"{actual.part!r} has no size {actual.size!r} to be measured"
        scene.add("30", what, nearest(actual.size, known), *path, "size")
        return
    if bool(actual.value) == bool(actual.samples):
        what = f"the measured {actual.size} of {actual.part!r} has {'both' if actual.value else 'no'} value and samples"
        scene.add("44", what, "write one of them, as in value: 7.8 mm or samples: [7.8 mm, 7.9 mm]", *path)
        return
    name = actual.size if part is None else feature_name(type(part), actual.size)
    readings: list[tuple[str, Path]] = [(text, ("samples", place)) for place, text in enumerate(actual.samples)]
    for text, where in readings or [(actual.value or "", ("value",))]:
        try:
            figure = parse_figure(text, dimension_of(fields.get(name, "")) or "length")
        except QuantityError as error:
            if part is not None:  # of another design's part only that design knows the unit
                what = f"the measured {actual.size} of {actual.part!r}: {error.what}"
                scene.add("23", what, error.mend, *path, *where)
            continue
        if figure.low <= 0 and name not in MAY_BE_0:
            scene.add("26", f"the measured {actual.size} of {actual.part!r} is not above 0", "measure again", *path)


def _offer(scene: Scene, shop_file: Document[Workshop], offer: Offer, number: int) -> None:
    path = ("workshop", "offers", number)
    label = f"the offer of {offer.part!r}"
    shop = shop_file.value
    vendor = shop.vendors.get(offer.vendor)
    if vendor is None and offer.vendor not in shop_file.broken.get("vendors", ()) and "vendors" not in shop_file.lost:
        what = f"{label} names the vendor {offer.vendor!r}, which is not described"
        scene.add("30", what, nearest(offer.vendor, shop.vendors), *path, "vendor")
    if not scene.is_shared:
        scene.expect_part(offer.part, "an offer", *path, "part")
    if offer.pack == 0:
        scene.add("26", f"{label} is a pack of 0", "write how many pieces are in the pack", *path, "pack")
    if vendor is not None:
        _prices(scene, offer, currency_of(vendor, shop), label, *path)
    _unit(scene, offer, label, *path)


def _prices(scene: Scene, offer: Offer, currency: str, label: str, *path: str | int) -> None:
    price = money(scene, offer.price, currency, label, *path, "price")
    if price is not None and price.minor == 0:
        mend = "write its price; what is in the drawer stands under stock"
        scene.add("26", f"{label} costs nothing", mend, *path, "price")
    before = 1
    for number, level in enumerate(offer.levels):
        _level(scene, level, before, currency, label, *path, "levels", number)
        before = level.packs


def _level(scene: Scene, level: Level, before: int, currency: str, label: str, *path: str | int) -> None:
    if level.packs <= before:
        what = f"{label}: a price level from {level.packs} packs on follows one from {before}"
        scene.add("47", what, "write the levels from few packs to many, above 1", *path)
    money(scene, level.price, currency, f"{label}: level from {level.packs} packs", *path, "price")


def _unit(scene: Scene, offer: Offer, label: str, *path: str | int) -> None:
    """Bars need a length, boards a size, filament a mass: else nobody knows how much of it is needed."""
    part = scene.design.parts.get(offer.part)
    is_bar = isinstance(part, Rod | ThreadedRod | Wire) or (isinstance(part, Belt) and part.closed_teeth is None)
    if is_bar and offer.length_mm is None:
        scene.add("44", f"{label} does not say how long the bar is", "add length, as in length: 1 m", *path)
    if isinstance(part, SheetStock) and (offer.board_width_mm is None or offer.board_depth_mm is None):
        mend = "add board-width and board-depth, as in board-width: 600 mm"
        scene.add("44", f"{label} does not say how large the board is", mend, *path)
    if isinstance(part, Filament) and offer.net_mass_kg is None:
        mend = "add net-mass, as in net-mass: 1 kg"
        scene.add("44", f"{label} does not say how much filament it is", mend, *path)
