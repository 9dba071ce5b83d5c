"""Every quantity that scantling reads: its canonical unit and the spellings of units that makers write.

Factors are exact fractions (only radians are not). Sources: international yard and pound agreement of 1959
(inch = 25.4 mm, pound = 0.45359237 kg), standard gravity 9.80665 m/s2 (CGPM 1901), the SI brochure for the rest.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from scantling.errors import LookUpError


@dataclass(frozen=True)
class Unit:
    """One unit of a dimension: ``canonical = number * factor + offset``."""

    name: str
    factor: Fraction
    offset: Fraction = Fraction(0)


@dataclass(frozen=True)
class Dimension:
    """One kind of quantity.

    name : unique    label : as the texts call it    unit : canonical unit, as shown    example : how to write one
    units : tidy spelling -> unit    main_units : one spelling of each, for error texts
    may_be_bare : a number without a unit is in the canonical one    is_whole : only whole numbers
    least : nothing is below (absolute zero), else None
    """

    name: str
    label: str
    unit: str
    example: str
    units: Mapping[str, Unit]
    main_units: tuple[str, ...]
    may_be_bare: bool = False
    is_whole: bool = False
    least: Fraction | None = None

    @property
    def with_article(self) -> str:
        """Return ``a length``, ``an area``."""
        return f"an {self.label}" if self.label[0] in "aeiou" else f"a {self.label}"


_LOOKS = str.maketrans(
    {"·": " ", "⋅": " ", "∙": " ", "•": " ", "*": " ", "µ": "u", "μ": "u", "²": "2", "³": "3", "⁴": "4", "^": ""}
    | {"Ω": "ohm", "\u2126": "ohm", "″": '"', "”": '"', "“": '"', "′": "'", "’": "'", "℃": "°C", "℉": "°F", "º": "°"}
)


def tidy(spelling: str) -> str:
    """Return a spelling of a unit with one way of writing products, powers and look-alike signs.

    >>> tidy("N·m"), tidy("N.cm"), tidy("oz-in"), tidy("m / s²"), tidy("µm")
    ('N m', 'N cm', 'oz in', 'm/s2', 'um')
    """
    text = spelling.translate(_LOOKS).replace("''", '"')
    text = re.sub(r"(?<=[A-Za-z0-9])[.-](?=[A-Za-z])", " ", text)
    text = re.sub(r"\s*/\s*", "/", text)
    text = re.sub(r"°\s+", "°", text)
    return " ".join(text.split())


_IN = Fraction("25.4")
_FT = 12 * _IN
_LB = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_LBF = _LB * _GRAVITY
_MINUTE = Fraction(60)
_INCH_WORDS = ("inch", "inches", "in.", '"', "IN", "Inch")

# (factor, other spellings…) for each main spelling; a spelling with a space is also taken without it
_Table = dict[str, tuple[Fraction | int, tuple[str, ...]]]


def _f(text: str) -> Fraction:
    return Fraction(text)


def _per_minute(value: Fraction | int) -> Fraction:
    return Fraction(value) / _MINUTE


_LENGTH: _Table = {
    "mm": (1, ("millimetre", "millimetres", "millimeter", "millimeters")),
    "cm": (10, ("centimetre", "centimetres", "centimeter", "centimeters")),
    "m": (1000, ("metre", "metres", "meter", "meters")),
    "km": (1_000_000, ()),
    "um": (_f("1/1000"), ("micron", "microns", "micrometre", "micrometer")),
    "in": (_IN, _INCH_WORDS),
    "ft": (_FT, ("foot", "feet", "ft.", "'")),
    "thou": (_IN / 1000, ()),
}
_AREA: _Table = {
    "mm2": (1, ("sq mm",)),
    "cm2": (100, ("sq cm",)),
    "m2": (1_000_000, ("sq m",)),
    "in2": (_IN**2, ("sq in",)),
    "ft2": (_FT**2, ("sq ft",)),
}
_VOLUME: _Table = {
    "mm3": (1, ("cu mm",)),
    "cm3": (1000, ("cc", "ml", "mL")),
    "l": (1_000_000, ("L", "dm3", "litre", "litres", "liter", "liters")),
    "m3": (10**9, ()),
    "in3": (_IN**3, ("cu in",)),
}
_SECOND_MOMENT: _Table = {"mm4": (1, ()), "cm4": (10**4, ()), "in4": (_IN**4, ())}
_MASS: _Table = {
    "kg": (1, ("Kg", "KG", "kilogram", "kilograms")),
    "g": (_f("1/1000"), ("gram", "grams", "gramme", "grammes", "gr.")),
    "mg": (_f("1/1000000"), ()),
    "t": (1000, ("tonne", "tonnes")),
    "lb": (_LB, ("lbs", "pound", "pounds")),
    "oz": (_LB / 16, ("ounce", "ounces")),
}
_FORCE: _Table = {
    "N": (1, ("newton", "newtons")),
    "kN": (1000, ()),
    "mN": (_f("1/1000"), ()),
    "kgf": (_GRAVITY, ()),
    "gf": (_GRAVITY / 1000, ()),
    "lbf": (_LBF, ()),
    "ozf": (_LBF / 16, ()),
}
_TORQUE: _Table = {
    "N mm": (1, ()),
    "N cm": (10, ()),
    "N m": (1000, ()),
    "mN m": (1, ()),
    "kgf cm": (_GRAVITY * 10, ()),
    "kgf mm": (_GRAVITY, ()),
    "kgf m": (_GRAVITY * 1000, ()),
    "gf cm": (_GRAVITY / 100, ()),
    "ozf in": (_LBF / 16 * _IN, ("in ozf",)),
    "lbf in": (_LBF * _IN, ("in lbf",)),
    "lbf ft": (_LBF * _FT, ("ft lbf",)),
}
_STRESS: _Table = {
    "MPa": (1, ("N/mm2",)),
    "GPa": (1000, ("kN/mm2",)),
    "kPa": (_f("1/1000"), ()),
    "Pa": (_f("1/1000000"), ("N/m2",)),
    "bar": (_f("1/10"), ()),
    "psi": (_LBF / _IN**2, ("lbf/in2",)),
    "ksi": (_LBF / _IN**2 * 1000, ()),
}
_SPEED: _Table = {
    "mm/s": (1, ("mm/sec",)),
    "m/s": (1000, ("m/sec",)),
    "cm/s": (10, ()),
    "mm/min": (_per_minute(1), ()),
    "m/min": (_per_minute(1000), ()),
    "km/h": (Fraction(10_000, 36), ()),
    "in/s": (_IN, ("in/sec", "ips")),
    "in/min": (_per_minute(_IN), ("ipm",)),
    "ft/min": (_per_minute(_FT), ()),
}
_ACCELERATION: _Table = {
    "mm/s2": (1, ("mm/s/s",)),
    "cm/s2": (10, ()),
    "m/s2": (1000, ("m/s/s",)),
    "in/s2": (_IN, ()),
}
_TIME: _Table = {
    "s": (1, ("sec", "second", "seconds")),
    "ms": (_f("1/1000"), ()),
    "us": (_f("1/1000000"), ()),
    "min": (60, ("minute", "minutes", "min.")),
    "h": (3600, ("hr", "hrs", "hour", "hours")),
    "d": (86_400, ("day", "days")),
    "week": (604_800, ("weeks", "wk")),
}
_ANGLE: _Table = {
    "deg": (1, ("°", "degree", "degrees")),
    "arcmin": (_f("1/60"), ()),
    "rad": (Fraction(180 / math.pi), ()),
    "mrad": (Fraction(180 / math.pi) / 1000, ()),
    "rev": (360, ("turn", "turns")),
}
_KELVIN: _Table = {
    "K": (1, ("°C", "C", "degC", "deg C", "kelvin")),
    "°F": (_f("5/9"), ("F", "degF", "deg F")),
}
_CURRENT: _Table = {"A": (1, ("amp", "amps", "ampere", "amperes")), "mA": (_f("1/1000"), ())}
_VOLTAGE: _Table = {"V": (1, ("volt", "volts")), "mV": (_f("1/1000"), ()), "kV": (1000, ())}
_POWER: _Table = {"W": (1, ("watt", "watts")), "mW": (_f("1/1000"), ()), "kW": (1000, ())}
_ENERGY: _Table = {"J": (1, ("W s",)), "kJ": (1000, ()), "W h": (3600, ()), "kW h": (3_600_000, ())}
_RESISTANCE: _Table = {
    "ohm": (1, ("ohms", "Ohm", "Ohms")),
    "mohm": (_f("1/1000"), ("milliohm",)),
    "kohm": (1000, ()),
}
_INDUCTANCE: _Table = {"mH": (1, ()), "uH": (_f("1/1000"), ()), "H": (1000, ())}
_INERTIA: _Table = {
    "kg mm2": (1, ()),
    "kg cm2": (100, ()),
    "kg m2": (1_000_000, ()),
    "g cm2": (_f("1/10"), ()),
    "g mm2": (_f("1/1000"), ()),
    "lb in2": (_LB * _IN**2, ()),
    "oz in2": (_LB / 16 * _IN**2, ()),
}
_HEAT_CAPACITY: _Table = {"J/K": (1, ("J/°C", "W s/K")), "kJ/K": (1000, ("kJ/°C",))}
_HEAT_LOSS: _Table = {"W/K": (1, ("W/°C",)), "mW/K": (_f("1/1000"), ("mW/°C",))}
_FREQUENCY: _Table = {"Hz": (1, ("1/s",)), "kHz": (1000, ()), "MHz": (1_000_000, ())}
_TURNS: _Table = {
    "rev/s": (1, ("r/s", "rps")),
    "rpm": (_per_minute(1), ("RPM", "rev/min", "r/min", "1/min")),
    "rad/s": (Fraction(1 / (2 * math.pi)), ()),
    "deg/s": (_f("1/360"), ("°/s",)),
}
_LINE_MASS: _Table = {
    "g/m": (1, ("mg/mm",)),
    "kg/m": (1000, ("g/mm",)),
    "lb/ft": (_LB * 1_000_000 / _FT, ()),
    "oz/ft": (_LB / 16 * 1_000_000 / _FT, ()),
}
_DENSITY: _Table = {
    "kg/m3": (1, ()),
    "g/cm3": (1000, ("g/cc", "kg/dm3", "kg/l", "kg/L", "t/m3", "g/ml", "g/mL")),
    "lb/ft3": (_LB * 10**9 / _FT**3, ()),
    "lb/in3": (_LB * 10**9 / _IN**3, ()),
}
_LINE_STIFFNESS: _Table = {"N": (1, ()), "kN": (1000, ()), "lbf": (_LBF, ())}
_STIFFNESS: _Table = {
    "N/mm": (1, ("kN/m",)),
    "N/cm": (_f("1/10"), ()),
    "N/m": (_f("1/1000"), ()),
    "N/um": (1000, ("kN/mm",)),
    "lbf/in": (_LBF / _IN, ()),
}
_MELTING: _Table = {"A2s": (1, ("A2 s", "A²s", "A² s"))}
_FLOW: _Table = {"mm3/s": (1, ()), "cm3/s": (1000, ("ml/s",)), "cm3/min": (_per_minute(1000), ("ml/min",))}
_EXPANSION: _Table = {"1/K": (1, ("/K", "1/°C")), "um/m/K": (_f("1/1000000"), ("ppm/K", "um/(m K)", "ppm/°C"))}
_PER_LENGTH: _Table = {
    "1/mm": (1, ("/mm", "steps/mm", "step/mm")),
    "1/in": (1 / _IN, ("/in", "steps/in", "tpi", "TPI")),
}
_RATIO: _Table = {"%": (_f("1/100"), ("percent",))}
_HARDNESS: _Table = {"HRC": (1, ("Rc", "hrc"))}
_COUNT: _Table = {"pieces": (1, ("piece", "pcs", "pc", "pcs.", "off"))}

# Temperatures are the only units with an offset: (factor, offset to °C, spellings).
_ZERO_C_K = Fraction("273.15")
_TEMPERATURE: dict[str, Unit] = {
    **dict.fromkeys(("°C", "C", "degC", "deg C"), Unit("°C", Fraction(1))),
    **dict.fromkeys(("K", "kelvin"), Unit("K", Fraction(1), -_ZERO_C_K)),
    **dict.fromkeys(("°F", "F", "degF", "deg F"), Unit("°F", Fraction(5, 9), Fraction(-160, 9))),
}


def _spellings(table: _Table) -> dict[str, Unit]:
    units: dict[str, Unit] = {}
    for main, (factor, others) in table.items():
        unit = Unit(main, Fraction(factor))
        for spelling in (main, *others):
            units[spelling] = unit
            if " " in spelling and "deg" not in spelling:
                units.setdefault(spelling.replace(" ", ""), unit)
    return units


def _dimension(
    name: str, unit: str, example: str, table: _Table, *, bare: bool = False, whole: bool = False
) -> Dimension:
    units = MappingProxyType(_spellings(table))
    return Dimension(name, name.replace("-", " "), unit, example, units, tuple(table), bare, whole)


def _temperature() -> Dimension:
    units = MappingProxyType(_TEMPERATURE)
    return Dimension("temperature", "temperature", "°C", "20 °C", units, ("°C", "K", "°F"), least=-_ZERO_C_K)


def _scaled(name: str, base: Dimension, unit: str, example: str) -> Dimension:
    """Return the same quantity counted in another unit, for names that end in that unit (``wear_um``)."""
    scale = base.units[tidy(unit)].factor
    units = {spelling: Unit(u.name, u.factor / scale) for spelling, u in base.units.items()}
    return Dimension(name, base.label, unit, example, MappingProxyType(units), base.main_units)


_BASE: tuple[Dimension, ...] = (
    _dimension("length", "mm", "8 mm", _LENGTH),
    _dimension("area", "mm²", "20 mm2", _AREA),
    _dimension("volume", "mm³", "12 cm3", _VOLUME),
    _dimension("second-moment", "mm4", "201 mm4", _SECOND_MOMENT),
    _dimension("mass", "kg", "1.5 kg", _MASS),
    _dimension("force", "N", "10 N", _FORCE),
    _dimension("torque", "N·mm", "40 N cm", _TORQUE),
    _dimension("stress", "MPa", "205 GPa", _STRESS),
    _dimension("speed", "mm/s", "120 mm/s", _SPEED),
    _dimension("acceleration", "mm/s²", "1200 mm/s2", _ACCELERATION),
    _dimension("time", "s", "90 s", _TIME),
    _dimension("angle", "deg", "45 deg", _ANGLE),
    _temperature(),
    _dimension("temperature-difference", "K", "30 K", _KELVIN),
    _dimension("current", "A", "1.5 A", _CURRENT),
    _dimension("voltage", "V", "24 V", _VOLTAGE),
    _dimension("power", "W", "60 W", _POWER),
    _dimension("energy", "J", "2 J", _ENERGY),
    _dimension("resistance", "ohm", "1.6 ohm", _RESISTANCE),
    _dimension("inductance", "mH", "3 mH", _INDUCTANCE),
    _dimension("inertia", "kg·mm²", "54 g cm2", _INERTIA),
    _dimension("heat-capacity", "J/K", "350 J/K", _HEAT_CAPACITY),
    _dimension("heat-loss", "W/K", "0.7 W/K", _HEAT_LOSS),
    _dimension("frequency", "Hz", "50 Hz", _FREQUENCY),
    _dimension("turns", "rev/s", "600 rpm", _TURNS),
    _dimension("line-mass", "g/m", "8 g/m", _LINE_MASS),
    _dimension("density", "kg/m³", "7850 kg/m3", _DENSITY),
    _dimension("line-stiffness", "N", "15 kN", _LINE_STIFFNESS),
    _dimension("stiffness", "N/mm", "20 N/mm", _STIFFNESS),
    _dimension("flow", "mm³/s", "10 mm3/s", _FLOW),
    _dimension("melting-integral", "A²s", "30 A2s", _MELTING),
    _dimension("expansion", "1/K", "12 um/m/K", _EXPANSION),
    _dimension("per-length", "1/mm", "80 steps/mm", _PER_LENGTH),
    _dimension("ratio", "", "0.2", _RATIO, bare=True),
    _dimension("hardness", "HRC", "60 HRC", _HARDNESS, bare=True),
    _dimension("count", "", "4", _COUNT, bare=True, whole=True),
)


def _all_dimensions() -> Mapping[str, Dimension]:
    found = {dimension.name: dimension for dimension in _BASE}
    for name, base, unit, example in (
        ("length-um", "length", "µm", "20 um"),
        ("length-km", "length", "km", "50 km"),
        ("mass-t", "mass", "t", "0.0015 t"),
        ("time-h", "time", "h", "2 h"),
        ("time-d", "time", "d", "5 days"),
        ("angle-rad", "angle", "rad", "0.1 rad"),
        ("turns-rpm", "turns", "rpm", "600 rpm"),
    ):
        found[name] = _scaled(name, found[base], unit, example)
    return MappingProxyType(found)


DIMENSIONS: Mapping[str, Dimension] = _all_dimensions()


def dimension(name: str) -> Dimension:
    """Return the dimension of that name; raises ``LookUpError`` where there is none."""
    if name not in DIMENSIONS:
        raise LookUpError("dimension", name, tuple(DIMENSIONS))
    return DIMENSIONS[name]


def canonical_unit(name: str) -> str:
    """Return the unit in which figures of a dimension are kept and shown (``""`` for pure numbers)."""
    return dimension(name).unit
