"""Workshops and offers that do not hold together: money, currencies, days, packs, readings."""

from __future__ import annotations

import pytest

from scantling.reading.project import read_project

SHOP = "workshops/village.yaml"
OFFERS = "workshops/offers/village.csv"
YARD = "  yard:\n    name: The yard\n"
PRINTER = (
    "printer: {name: hall printer, bar: 100 mm, across: 99.6 mm, along: 100.2 mm, margin: 6 mm, read-on: 2026-02-20}"
)
STOCK = "stock:\n"

# name: (old, new with « where the fault is, code, words)
WORKSHOP = {
    "no name": ("name: Village school workshop\n", "", "READ-21", "'name' is missing"),
    "unknown currency": ("currency: EUR", "currency: «EUX", "READ-46", "EUX", "EUR"),
    "a currency in small letters": ("currency: EUR", "currency: «eur", "READ-46", "eur"),
    "a currency without a rate": (YARD, f"{YARD}    currency: «CZK\n", "READ-46", "no rate", "EUR for one CZK"),
    "an unknown currency of a vendor": (YARD, f"{YARD}    currency: «Euro\n", "READ-46", "'Euro'"),
    "a rate of nothing": (STOCK, "rates: {USD: {rate: «0, as-of: 2026-02-01}}\nstock:\n", "READ-46", "not above 0"),
    "a rate that is none": (STOCK, "rates: {USD: {rate: «much, as-of: 2026-02-01}}\nstock:\n", "READ-23", "much"),
    "a rate of no date": (STOCK, "rates: {USD: «{rate: 0.92}}\nstock:\n", "READ-21", "as-of"),
    "a rate of the own currency": (STOCK, "rates: {«EUR: {rate: 1.1, as-of: 2026-02-01}}\nstock:\n", "READ-46", "own"),
    "a negative shipping": ("shipping: 5.90", "shipping: «-5.90", "READ-27", "post", "shipping", "negative"),
    "shipping in another currency": ("shipping: 5.90", "shipping: «5.90 USD", "READ-46", "not in EUR"),
    "an amount that is none": ("free-above: 90.00", "free-above: «a lot", "READ-27", "free-above", "a lot"),
    "a budget of what": (STOCK, "budget: «1.234,50\nstock:\n", "READ-27", "budget"),
    "a tax of 190 %": ("prices: without tax\n    tax: 20 %", "prices: without tax\n    tax: «190 %", "READ-26", "tax"),
    "a tax that is none": ("prices: without tax\n    tax: 20 %", "prices: without tax\n    tax: «some", "READ-23"),
    "no copies": ("copies: 2", "copies: «0", "READ-26", "1 or more"),
    "needed before ordered": ("need-by: 2026-03-30", "need-by: «2026-02-30", "READ-23", "calendar"),
    "a day that is none": ("need-by: 2026-03-30", "need-by: «2026-03-01", "READ-28", "ordered on 2026-03-02"),
    "a date the other way round": ("need-by: 2026-03-30", "need-by: «30.03.2026", "READ-23", "year-month-day"),
    "a reading of nonsense": (PRINTER, PRINTER.replace("99.6", "«90.6"), "READ-48", "across", "90.6 mm"),
    "a reading without a bar": (
        PRINTER,
        PRINTER.replace("bar: 100 mm, ", "").replace("99.6 mm", "«99.6 mm").replace(", along: 100.2 mm", ""),
        "READ-48",
        "no bar",
    ),
    "a bar of nothing": (PRINTER, "printer: {bar: «0 mm}", "READ-26", "bar"),
    "a kerf below zero": ("bar-kerf: 1.2 mm", "bar-kerf: «-1.2 mm", "READ-26", "bar-kerf"),
    "a print bed without height": (", height: 160 mm", "", "READ-21", "'height' is missing"),
    "an unknown plastic at hand": ("plastics: [PETG], rate", "plastics: [«PTEG], rate", "READ-42", "PETG"),
    "an unknown paper": ("paper: A4", "paper: «A44", "READ-42", "A4"),
    "an unknown bit": ("bits: [metric 0.5,", "bits: [«metric 0.7,", "READ-42", "metric 0.5"),
    "a bit of no number": ("bits: [metric 0.5,", "bits: [«'#99',", "READ-42", "#99"),
    "stock of nothing known": ("part: M3 lock nut,", "part: «M3 locknut,", "READ-30", "stock"),
    "stock below zero": ("quantity: 6}", "quantity: «-6}", "READ-23", "negative"),
    "spares for nobody": ("{part: bushing-8-ball, extra", "«{extra", "READ-44", "one of part and wear"),
    "spares for nothing known": ("{part: bushing-8-ball, extra", "{part: «bushing-ball, extra", "READ-30", "spares"),
    "a measured size that is none": (
        STOCK,
        "actuals: [{part: ply-6, size: «thick, value: 5.8 mm}]\nstock:\n",
        "READ-30",
        "thickness",
    ),
    "a measured mass in mm": (
        STOCK,
        "actuals: [{part: ply-6, size: mass, value: «5.8 mm}]\nstock:\n",
        "READ-23",
        "the measured mass of 'ply-6'",
    ),
    "one of several readings that is none": (
        STOCK,
        "actuals: [{part: ply-6, size: thickness, samples: [5.8 mm, «5.9]}]\nstock:\n",
        "READ-23",
        "the measured thickness",
    ),
    "a measured size of nothing": (
        STOCK,
        "actuals: [«{part: ply-6, size: thickness, value: 0 mm}]\nstock:\n",
        "READ-26",
        "measure again",
    ),
    "a measured size without a reading": (
        STOCK,
        "actuals: [«{part: ply-6, size: thickness}]\nstock:\n",
        "READ-44",
        "no value and samples",
    ),
    "an unknown way of rounding": ("tax-rounded: order", "tax-rounded: «basket", "READ-24", "order"),
}


@pytest.mark.parametrize("name", WORKSHOP)
def test_a_workshop_that_does_not_hold_together(name, plotter, says):
    old, new, code, *words = WORKSHOP[name]
    says(code, plotter.edit(SHOP, old, new), *words)


ROD = "yard,rod-8-soft,1,4.80,,1 m,,,,400 g,"
MOTOR = "post,motor-17,1,9.40,4: 8.60,,,,,250 g,"
# name: (old row, new row, code, row:column, words)
ROWS = {
    "unknown vendor": (ROD, ROD.replace("yard", "yrad"), "READ-30", "10:1", "'yrad'", "yard"),
    "unknown part": (ROD, ROD.replace("soft", "weak"), "READ-30", "10:2", "'rod-8-weak'", "rod-8-soft"),
    "no part": (ROD, ROD.replace("rod-8-soft", ""), "READ-21", "10:1", "'part' is missing"),
    "pack of 0": (ROD, ROD.replace(",1,", ",0,"), "READ-26", "10:3", "pack of 0"),
    "a pack that is none": (ROD, ROD.replace(",1,", ",one,"), "READ-23", "10:3", "pack"),
    "a negative price": (ROD, ROD.replace("4.80", "-4.80"), "READ-27", "10:4", "negative"),
    "no price": (ROD, ROD.replace("4.80", ""), "READ-21", "10:1", "'price' is missing"),
    "a price of nothing": (ROD, ROD.replace("4.80", "0"), "READ-26", "10:4", "costs nothing"),
    "a price that is none": (ROD, ROD.replace("4.80", "dear"), "READ-27", "10:4", "dear"),
    "a price to the tenth of a cent": (ROD, ROD.replace("4.80", "4.805"), "READ-27", "10:4", "decimals"),
    "a price in another currency": (ROD, ROD.replace("4.80", "4.80 USD"), "READ-46", "10:4", "not in EUR"),
    "a price with a sign of several currencies": (ROD, ROD.replace("4.80", "$4.80"), "READ-27", "10:4", "USD"),
    "a bar of no length": (ROD, ROD.replace(",1 m,", ",,"), "READ-44", "10:1", "how long"),
    "a bar of a length in kg": (ROD, ROD.replace(",1 m,", ",1 kg,"), "READ-23", "10:6", "length"),
    "a bar of length 0": (ROD, ROD.replace(",1 m,", ",0 m,"), "READ-26", "10:6", "above 0"),
    "levels that fall": (MOTOR, MOTOR.replace("4: 8.60", "4: 8.60; 3: 8.20"), "READ-47", "2:5", "3 packs"),
    "a level of one pack": (MOTOR, MOTOR.replace("4: 8.60", "1: 8.60"), "READ-47", "2:5", "above 1"),
    "a level that is none": (MOTOR, MOTOR.replace("4: 8.60", "8.60"), "READ-23", "2:5", "4: 8.60"),
    "a level in another currency": (MOTOR, MOTOR.replace("4: 8.60", "4: 8.60 USD"), "READ-46", "2:5", "level from 4"),
    "a lead time in words": (MOTOR, MOTOR + "soon", "READ-23", "2:11", "lead-days"),
    "a board of no size": (
        "yard,ply-6,1,4.90,,,600 mm,300 mm,",
        "yard,ply-6,1,4.90,,,600 mm,,",
        "READ-44",
        "16:1",
        "board",
    ),
    "filament of no mass": ("post,petg,1,15.80,,,,,1 kg,", "post,petg,1,15.80,,,,,,", "READ-44", "18:1", "net-mass"),
}


@pytest.mark.parametrize("name", ROWS)
def test_an_offer_that_cannot_be_used(name, plotter, says):
    old, new, code, place, *words = ROWS[name]
    plotter.edit(OFFERS, f"{old}", new)
    says(code, f"{OFFERS}:{place}", *words)


def test_no_copies_asked_for(plotter):
    with pytest.raises(ValueError, match="0 copies"):
        read_project(plotter.folder, "village", copies=0)


def test_a_foreign_vendor_with_a_rate(plotter):
    plotter.edit(SHOP, YARD, f"{YARD}    currency: CZK\n")
    plotter.edit(SHOP, STOCK, "rates: {CZK: {rate: 0.0401, as-of: 2026-02-01}}\nstock:\n")
    project = read_project(plotter.folder, "village")
    assert str(project.workshop.rates["CZK"].rate) == "401/10000"


def test_a_shared_workshop_may_offer_parts_of_other_designs(plotter, tmp_path):
    row = "yard,spring of another machine,10,2.00,,,,,,,\n"
    plotter.append(OFFERS, row)
    assert [fault.code for fault in plotter.faults()] == ["READ-30"]
    shared = tmp_path / "shared"
    (plotter.folder / "workshops").rename(shared)
    project = read_project(plotter.folder, shared / "village.yaml")
    assert project.workshop.offers[-1].part == "spring of another machine"
    assert "shared/offers/village.csv" in project.digests


def test_without_a_workshop_there_is_a_neutral_one(plotter):
    project = read_project(plotter.folder)
    assert (project.workshop.name, project.workshop.offers, project.workshop.copies) == ("no workshop", (), 1)
