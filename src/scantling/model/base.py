"""What all model data share: frozen, nothing unknown accepted, scalars parsed from text by the field's type.

In files a field is called as in code, without its unit and with dashes: ``top_speed_mm_s`` is ``top-speed``.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from fractions import Fraction
from functools import lru_cache
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, InstanceOf, WithJsonSchema

from scantling.errors import QuantityError
from scantling.quantities import (
    DIMENSIONS,
    Figure,
    exact_number,
    file_name_of,
    parse_bool,
    parse_count,
    parse_date,
    parse_figure,
)


class Data(BaseModel):
    """Base of all model classes."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=file_name_of,
        populate_by_name=True,
        arbitrary_types_allowed=True,
    )


class _SizeMark:
    """Marks texts in the language of sizes, so that reading finds them."""


SIZE = _SizeMark()


_figure = lru_cache(maxsize=8192)(parse_figure)  # files say ``8 mm`` again and again


def _reads(dimension: str) -> Callable[[Any], Any]:
    def read(given: Any) -> Any:
        return _figure(given, dimension) if isinstance(given, str) else given

    return read


def _quantity(dimension: str, example: str) -> Any:
    bare = DIMENSIONS[dimension].may_be_bare
    words = f"{dimension}, a number" if bare else f"{dimension}, written with its unit"
    schema = {"type": ["string", "number"] if bare else "string", "description": words, "examples": [example]}
    return Annotated[InstanceOf[Figure], BeforeValidator(_reads(dimension)), WithJsonSchema(schema)]


def _from_text(parse: Callable[[str], Any], schema: dict[str, Any]) -> tuple[Any, Any]:
    return BeforeValidator(lambda given: parse(given) if isinstance(given, str) else given), WithJsonSchema(schema)


def _fraction(text: str) -> Fraction:
    """Return a share exactly: ``19 %``, ``0.19``, ``1/5``."""
    number, percent, rest = text.partition("%")
    if rest.strip():
        raise QuantityError(f"{text.strip()!r} is no share", "write a share, as in 19 % or 0.19")
    return exact_number(number) / (100 if percent else 1)


Length = _quantity("length", "8 mm")
Mass = _quantity("mass", "1.5 kg")
Force = _quantity("force", "40 N")
Torque = _quantity("torque", "0.26 N m")
Speed = _quantity("speed", "120 mm/s")
Acceleration = _quantity("acceleration", "1200 mm/s2")
Time = _quantity("time", "8 min")
Angle = _quantity("angle", "1.8 deg")
Temperature = _quantity("temperature", "90 °C")
Current = _quantity("current", "1.3 A")
Voltage = _quantity("voltage", "24 V")
Power = _quantity("power", "120 W")
Resistance = _quantity("resistance", "2.4 ohm")
Inductance = _quantity("inductance", "3.0 mH")
Inertia = _quantity("inertia", "54 g cm2")
HeatCapacity = _quantity("heat-capacity", "539 J/K")
HeatLoss = _quantity("heat-loss", "0.70 W/K")
LineMass = _quantity("line-mass", "8 g/m")
Stress = _quantity("stress", "9 GPa")
Density = _quantity("density", "680 kg/m3")
Ratio = _quantity("ratio", "25 %")
Hardness = _quantity("hardness", "60 HRC")
Area = _quantity("area", "1.5 mm2")
MeltingIntegral = _quantity("melting-integral", "30 A2s")
Warmth = _quantity("temperature-difference", "20 K")
Turns = _quantity("turns", "5 rev/s")
Stiffness = _quantity("stiffness", "150 N/mm")


def _deviations(text: str) -> Figure:
    """Return the deviations of ``0.3 mm``, ``± 0.3 mm`` or ``+0.3/-0.1 mm`` as a band round 0."""
    plain = text.strip()
    if "/" in plain and plain[:1] in ("+", "-"):
        return parse_figure(f"0 mm {plain}", "length")
    half = parse_figure(plain.removeprefix("+/-").removeprefix("+-").removeprefix("±").strip(), "length")
    if half.low < 0 or not half.is_exact:
        raise QuantityError(f"{plain!r} is no tolerance", "write 0.3 mm for ± 0.3 mm, or +0.3/-0.1 mm")
    return Figure(0.0, -half.value, half.value)


def _length_or_share(text: str) -> str:
    """Return the text of a length or of a share; raises where it is neither."""
    parse_figure(text, "ratio" if "%" in text else "length")
    return text


def _grams_per_hour(text: str) -> Figure:
    number, unit, rest = text.partition("g/h")
    if not unit or rest.strip():
        raise QuantityError(f"{text.strip()!r} is no rate of printing", "write grams in an hour, as in 12 g/h")
    return parse_figure(number, "ratio")


def _kilometres(text: str) -> int:
    return round(parse_figure(text, "length-km").value)


Count = Annotated[int, *_from_text(parse_count, {"type": ["integer", "string"], "examples": [2]})]
Tolerance = Annotated[
    InstanceOf[Figure], *_from_text(_deviations, {"type": "string", "examples": ["0.3 mm", "+0.3/-0.1 mm"]})
]
LengthOrShare = Annotated[str, *_from_text(_length_or_share, {"type": "string", "examples": ["0.3 mm", "0.15 %"]})]
Kilometres = Annotated[int, *_from_text(_kilometres, {"type": "string", "examples": ["500 km"]})]
PrintRate = Annotated[InstanceOf[Figure], *_from_text(_grams_per_hour, {"type": "string", "examples": ["12 g/h"]})]
YesNo = Annotated[bool, *_from_text(parse_bool, {"enum": ["yes", "no", True, False]})]
Day = Annotated[date, *_from_text(parse_date, {"type": "string", "format": "date"})]
Share = Annotated[Fraction, *_from_text(_fraction, {"type": ["string", "number"], "examples": ["19 %"]})]
Expression = Annotated[
    str, SIZE, WithJsonSchema({"type": "string", "description": "a size", "examples": ["y-span + 20 mm"]})
]
