"""Units against pint, a library of units that is not ours.

Texts are not given to pint: it reads ``1 3/8 in`` as 0.375 in, ``2,5 mm`` as 25 mm, ``1/4-20`` as -19.75 and
``3/8"`` as a bare number. Only factors of single units are compared, built by pint from its own definitions.

Source: pint, a library of physical units.
"""

import pint
import pytest

from scantling.quantities import DIMENSIONS, parse_figure

pytestmark = pytest.mark.outside

one_part_in_1e12 = 1e-12  # both sides are floats made from exact definitions

# main unit of ours -> pint's expression; units spelled alike in both are not listed
PINT_NAME = {
    "thou": "thou",
    "in": "inch",
    "ft": "foot",
    "in2": "inch**2",
    "ft2": "foot**2",
    "in3": "inch**3",
    "in4": "inch**4",
    "kgf": "kilogram_force",
    "gf": "gram_force",
    "lbf": "pound_force",
    "ozf": "ounce_force",
    "kgf cm": "kilogram_force*cm",
    "kgf mm": "kilogram_force*mm",
    "kgf m": "kilogram_force*m",
    "gf cm": "gram_force*cm",
    "ozf in": "ounce_force*inch",
    "lbf in": "pound_force*inch",
    "lbf ft": "pound_force*foot",
    "lbf/in": "pound_force/inch",
    "in/s": "inch/s",
    "in/min": "inch/min",
    "ft/min": "foot/min",
    "in/s2": "inch/s**2",
    "d": "day",
    "rev": "revolution",
    "rev/s": "revolution/s",
    "rpm": "rpm",
    "deg/s": "degree/s",
    "lb in2": "pound*inch**2",
    "oz in2": "ounce*inch**2",
    "lb/ft": "pound/foot",
    "oz/ft": "ounce/foot",
    "lb/ft3": "pound/foot**3",
    "lb/in3": "pound/inch**3",
    "um/m/K": "um/m/kelvin",
    "1/in": "1/inch",
    "1/K": "1/kelvin",
    "J/K": "J/kelvin",
    "kJ/K": "kJ/kelvin",
    "W/K": "W/kelvin",
    "mW/K": "mW/kelvin",
    "K": "kelvin",
    "°F": "delta_degF",
    "kohm": "kiloohm",
    "mohm": "milliohm",
}
SKIPPED = ("ratio", "hardness", "count", "temperature")  # no units, or an offset (below)


def in_pint(spelling: str) -> str:
    """Return our spelling in pint's grammar: products with a star, powers with two."""
    text = PINT_NAME.get(spelling, spelling)
    if spelling in PINT_NAME:
        return text
    for digit in "234":
        text = text.replace(digit, f"**{digit}")
    return text.replace(" ", "*")


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry()


@pytest.mark.parametrize("name", [n for n in sorted(DIMENSIONS) if n not in SKIPPED])
def test_every_unit_has_the_factor_that_pint_has(name: str, registry: pint.UnitRegistry) -> None:
    kind = DIMENSIONS[name]
    ascii_unit = kind.unit.replace("·", " ").replace("²", "2").replace("³", "3").replace("µ", "u")
    canonical = registry.parse_units(in_pint(ascii_unit))
    for spelling in kind.main_units:
        theirs = registry.Quantity(7, registry.parse_units(in_pint(spelling))).to(canonical).magnitude
        assert parse_figure(f"7 {spelling}", name).value == pytest.approx(theirs, rel=one_part_in_1e12), spelling


@pytest.mark.parametrize("degrees", [-40, 0, 32, 68, 212, 451])
def test_absolute_temperatures_agree_with_pint(degrees: int, registry: pint.UnitRegistry) -> None:
    theirs = registry.Quantity(degrees, "degF").to("degC").magnitude
    assert parse_figure(f"{degrees} °F", "temperature").value == pytest.approx(theirs, abs=1e-9)
    theirs = registry.Quantity(degrees + 300, "kelvin").to("degC").magnitude
    assert parse_figure(f"{degrees + 300} K", "temperature").value == pytest.approx(theirs, abs=1e-9)


def test_the_texts_that_pint_misreads_are_read_as_written() -> None:
    assert parse_figure("1 3/8 in", "length").value == 34.925  # 11/8 * 25.4
    assert parse_figure("2,5 mm", "length").value == 2.5
    assert parse_figure('3/8"', "length").value == 9.525  # 3/8 * 25.4
