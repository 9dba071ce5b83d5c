"""Picking bushings from a larger lot: how tight the best are, and how many more than needed are worth buying.

Cheap ball bushings are rough or loose now and then; of plain linings it is asked only where a share is given. For
information: of all copies together, with the spares that the workshop wants anyway. A spare is worth buying while it
lowers the expected cost of another parcel by more than its price.
"""

from __future__ import annotations

from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.checks.guide_loads import all_guides
from scantling.checks.inputs import or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rod_fit import play_input
from scantling.checks.rounds import MM_PER_UM
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.selection import enough_ratio, spares_for, spares_worth, worst_of_best_um
from scantling.model.kinds import Bushing, Rod
from scantling.quantities import Figure, parse_money
from scantling.tables.guide_limits import guide_limit

PERCENT = 100.0
SIGMAS_IN_BAND = 6.0  # a zone is as wide as six standard deviations of what is made to it: common practice, no source


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    guide = need(reader.design.axes[name].guide, f"axes.{name}.guide")
    bushing, rod = reader.part(guide.bearings), reader.part(guide.rods)
    if not isinstance(bushing, Bushing) or not isinstance(rod, Rod):
        raise NotDescribedError((f"axes.{name}.guide (a rod in a bushing)",))
    if bushing.lining != "ball":
        need(bushing.rough_ratio, f"parts.{bushing.id}.rough")
    wanted = needed_pieces(reader, bushing)
    spares = spare_pieces(reader, bushing, wanted)
    play = play_input(reader, guide, rod, bushing)
    mean_um, deviation_um = play.nominal / MM_PER_UM, (play.high - play.low) / MM_PER_UM / SIGMAS_IN_BAND
    sure = guide_limit("sure of a lot").value
    costs = costs_minor(reader, bushing)
    worth = "" if costs is None else " Weighed against another parcel, {worth} spares are worth their price."
    given = None if bushing.rough_ratio is None else bushing.rough_ratio * Figure.exact(PERCENT)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda rough: PERCENT * enough_ratio(wanted, wanted + spares, rough / PERCENT),
        inputs={"rough": or_typical("share of rough ones in a lot", given, guide_limit("rough of a lot"), "%")},
        bounds=INFORMATION,
        unit="%",
        because=f"{wanted} of {bushing.name or bushing.id} are needed and {spares} more are bought as spares; with "
        f"{{rough}} rough ones that is enough in {{value}} of all lots, and {{fewest}} spares make it {sure:g} %. Of "
        f"{wanted} the loosest may be expected to have {{all}} of play; of the {wanted} tightest of "
        f"{wanted + spares}, {{best}}.{worth}",
        also={
            "worth": (lambda rough: float(spares_worth(wanted, rough / PERCENT, *(costs or (0.0, 0.0)))), ""),
            "fewest": (lambda rough: fewest_spares(wanted, rough / PERCENT, sure / PERCENT), ""),
            "best": (lambda **_: max(0.0, worst_of_best_um(mean_um, deviation_um, wanted, wanted + spares)), "µm"),
            "all": (lambda **_: max(0.0, worst_of_best_um(mean_um, deviation_um, wanted, wanted)), "µm"),
        },
    )


def fewest_spares(wanted: int, rough: float, sure: float) -> float:
    """Return the fewest spares that make it sure enough; many where no sensible number does."""
    found = spares_for(wanted, rough, sure)
    return float(4 * wanted if found is None else found)


def costs_minor(reader: Reader, bushing: Bushing) -> tuple[float, float] | None:
    """Return the least price of a piece and what another parcel from its vendor costs, in minor units of its currency.

    None where no offer tells it.
    """
    shop, found = reader.workshop, []
    for offer in (one for one in shop.offers if one.part == bushing.id):
        vendor = shop.vendors.get(offer.vendor)
        if vendor is not None and offer.pack:
            currency = vendor.currency or shop.currency
            price, parcel = (parse_money(text, currency).minor for text in (offer.price, vendor.shipping))
            found.append((price / offer.pack, float(parcel)))
    return min(found, default=None)


def needed_pieces(reader: Reader, bushing: Bushing) -> int:
    """Return how many of a bushing all copies take on all their guides."""
    places = dict.fromkeys(axis.guide.bearings for axis in reader.design.axes.values() if axis.guide is not None)
    same = (reader.pieces(place) for place in places if (part := reader.part(place)) and part.id == bushing.id)
    return sum(same) * reader.workshop.copies


def spare_pieces(reader: Reader, bushing: Bushing, wanted: int) -> int:
    """Return the spares that the workshop's rules give: one that names the part before one for its class of wear."""
    rules = reader.workshop.spares
    by_part = [rule for rule in rules if rule.part == bushing.id]
    by_wear = [rule for rule in rules if rule.wear is not None and rule.wear == bushing.wear]
    rule = next(reversed([*by_wear, *by_part]), None)
    return 0 if rule is None else max(-(-wanted * rule.extra.numerator // rule.extra.denominator), rule.at_least)


CHECK = check_of(
    _run,
    code="ROD-10",
    title="Bushings picked from a lot",
    source="binomial distribution, order statistics of a normal spread; share of rough ones: common practice",
    subjects=all_guides,
    informs=True,
)
