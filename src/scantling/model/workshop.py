"""The workshop: all that is local to one maker."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, Literal

from pydantic import Field, model_validator

from scantling.errors import QuantityError
from scantling.model.base import Count, Data, Day, Force, Length, Mass, PrintRate, Share, Voltage, YesNo


class Printer(Data):
    """A paper printer with the two readings of its check bars; missing readings mean not corrected.

    bar_mm : drawn length of the bars    across_mm, along_mm : as read on the printed sheet
    """

    name: str = ""
    bar_mm: Length | None = None
    across_mm: Length | None = None
    along_mm: Length | None = None
    margin_mm: Length | None = None
    read_on: Day | None = None


class Paper(Data):
    """Paper by its name in the table of sizes (``A4``, ``Letter``)."""

    size: str = "A4"
    overlap_mm: Length | None = None

    @model_validator(mode="before")
    @classmethod
    def _name(cls, given: Any) -> Any:
        """Accept ``paper: A4``."""
        return {"size": given} if isinstance(given, str) else given


class Saw(Data):
    """What a saw removes and what is left on for facing or sanding."""

    bar_kerf_mm: Length | None = None
    bar_facing_mm: Length | None = None
    sheet_kerf_mm: Length | None = None
    sheet_margin_mm: Length | None = None


class PrintBed(Data):
    """A printing machine at hand: what it takes and what it prints."""

    width_mm: Length
    depth_mm: Length
    height_mm: Length
    plastics: tuple[str, ...] = ("PETG",)
    rate_g_h: PrintRate | None = Field(default=None, alias="rate")


class SparesRule(Data):
    """Extra pieces on purpose, for a part or a class of wear, never below ``at_least`` where any is used."""

    part: str | None = None
    wear: str | None = None
    extra: Share = Fraction(0)
    at_least: Count = 0


class Stock(Data):
    """Something in the drawer: pieces, or bars of a length, or grams of filament."""

    part: str
    quantity: Count = 1
    length_mm: Length | None = None
    mass_kg: Mass | None = None


class Actual(Data):
    """What was measured on the lot in hand: ``{part: ply-8, size: thickness, value: 7.8 mm ± 0.05 mm}``.

    size : any figure of the part by its name in files: ``thickness``, ``mass``, ``resistance`` …
    samples : readings of several pieces instead of ``value``; chains draw from them, all else takes their mean and ends
    """

    part: str
    size: str
    value: str | None = None
    samples: tuple[str, ...] = ()
    measured_on: Day | None = None


class MeasuredPush(Data):
    """A push by hand on a frame that is built, as its first push says, and how far it gave way there.

    part : the sheet that it is built of; the reference where none is named
    """

    frame: str
    part: str | None = None
    force_n: Force
    moved_mm: Length
    measured_on: Day | None = None


class Customs(Data):
    """What is due at the border on a parcel, dated: above a value, or always where ``above`` is missing."""

    above: str | None = None
    duty: Share | None = None
    per_kind: str | None = None
    handling: str | None = None
    as_of: Day | None = None


class Vendor(Data):
    """A vendor; amounts are in its currency.

    prices : with or without tax    tax_rounded : per pack, line or order
    free_above, minimum_order : on the goods with tax, before any payment fee
    """

    id: str = ""
    name: str = ""
    currency: str | None = None
    prices: Literal["with tax", "without tax"] = "with tax"
    tax: Share | None = None
    tax_rounded: Literal["pack", "line", "order"] = "order"
    shipping: str = "0"
    shipping_per_kg: str | None = Field(default=None, alias="shipping-per-kg")
    free_above: str | None = None
    minimum_order: str | None = None
    payment_fee: str | None = None
    lead_days: Count = Field(default=0, alias="lead-days")
    prices_of: Day | None = None
    customs: Customs | None = None


class Level(Data):
    """A price that holds for all packs from a number of packs on."""

    packs: Count
    price: str

    @model_validator(mode="before")
    @classmethod
    def _short(cls, given: Any) -> Any:
        """Accept ``4: 8.60``, four packs or more at 8.60 each."""
        if not isinstance(given, str):
            return given
        packs, colon, price = given.partition(":")
        if not colon:
            raise QuantityError(f"{given!r} is no price level", "write packs and price, as in 4: 8.60")
        return {"packs": packs.strip(), "price": price.strip()}


class Offer(Data):
    """A vendor's pack: ``pack`` pieces for ``price``, or bars, boards or spools.

    length_mm : of each bar in the pack    board : width × depth of each board    mass_kg : of a whole pack
    net_mass_kg : filament in each piece of the pack    stock : packs to be had, unlimited where missing
    """

    id: str = ""
    vendor: str
    part: str
    pack: Count = 1
    price: str
    levels: tuple[Level, ...] = ()
    length_mm: Length | None = None
    board_width_mm: Length | None = None
    board_depth_mm: Length | None = None
    net_mass_kg: Mass | None = None
    mass_kg: Mass | None = None
    lead_days: Count | None = Field(default=None, alias="lead-days")
    stock: Count | None = None
    note: str = ""


class Rate(Data):
    """Home currency per unit of another, on a day."""

    rate: Share
    as_of: Day


class Workshop(Data):
    """A maker's workshop."""

    format: Literal["1"] = "1"
    id: str = ""
    name: str
    invented: YesNo = False
    region: str = ""
    currency: str
    copies: Count = 1
    order_on: Day | None = None
    need_by: Day | None = None
    budget: str | None = None
    most_orders: Count | None = None
    top_up: YesNo = False
    mains_voltage_v: Voltage | None = None
    paper: Paper = Paper()
    printer: Printer = Printer()
    bits: tuple[str, ...] = ()
    saw: Saw = Saw()
    print_bed: PrintBed | None = None
    stock: tuple[Stock, ...] = ()
    spares: tuple[SparesRule, ...] = ()
    actuals: tuple[Actual, ...] = ()
    pushed: tuple[MeasuredPush, ...] = ()
    rates: dict[str, Rate] = Field(default_factory=dict)
    vendors: dict[str, Vendor] = Field(default_factory=dict)
    offers: tuple[Offer, ...] = ()
