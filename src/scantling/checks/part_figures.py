"""The figures and words of a part, each with the part as it would be with another one in its stead."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin

from scantling.model.kinds import Rod, SheetStock, ThreadedRod
from scantling.model.part import Part
from scantling.quantities import DIMENSIONS, Figure, Grade, dimension_of, file_name_of

FITS = ("f7", "g6", "h6", "h7", "h8", "h9", "h10", "h11"), ("E10", "F7", "G7", "H6", "H7", "H8", "H9", "H11")
SHEETS = ("birch plywood", "plywood", "MDF", "OSB", "softwood", "acrylic", "polycarbonate", "aluminium", "steel")
RODS = ("steel", "bright steel", "hardened steel", "stainless", "hardened stainless", "aluminium", "brass")
_NOT_CHOSEN = ("kind", "id")


@dataclass(frozen=True)
class Figured:
    """A figure of a part: its name in files, unit and nominal value, and the part with another value measured."""

    name: str
    unit: str
    now: float
    put: Callable[[float], Part]
    whole: bool = False


def figured(part: Part) -> Iterator[Figured]:
    """Yield the figures that a part gives, counts among them."""
    for field, info in type(part).model_fields.items():
        value = getattr(part, field)
        if isinstance(value, Figure):
            yield Figured(file_name_of(field), _unit(field), value.value, _putting(part, field))
        elif isinstance(value, int) and not isinstance(value, bool) and info.annotation is not bool:
            yield Figured(file_name_of(field), "", float(value), _counting(part, field), whole=True)
    for name, size in part.sizes.items():
        yield Figured(f"sizes.{name}", "mm", size.value, _sizing(part, name))


def words_of(part: Part) -> Iterator[tuple[str, str, Mapping[str, Part]]]:
    """Yield name, present word and, for every word that could stand there, the part with it."""
    for field, info in type(part).model_fields.items():
        value, words = getattr(part, field), _words(part, field, info.annotation)
        if isinstance(value, str) and words and field not in _NOT_CHOSEN:
            known = tuple(dict.fromkeys((value, *words)))
            yield file_name_of(field), value, {word: part.model_copy(update={field: word}) for word in known}


def _words(part: Part, field: str, annotation: Any) -> tuple[str, ...]:
    if field == "material":
        return SHEETS if isinstance(part, SheetStock) else RODS if isinstance(part, Rod | ThreadedRod) else ()
    if field.endswith("fit"):
        return FITS[1] if field.startswith("bore") else FITS[0]
    arms = get_args(annotation) if get_origin(annotation) in (Union, UnionType) else (annotation,)
    return tuple(word for arm in arms if arm is not NoneType and get_origin(arm) is Literal for word in get_args(arm))


def _unit(field: str) -> str:
    quantity = dimension_of(field)
    return DIMENSIONS[str(quantity)].unit if quantity in DIMENSIONS else ""


def _actual(value: float) -> Figure:
    return Figure(value, value, value, Grade.MEASURED, "a local part")


def _putting(part: Part, field: str) -> Callable[[float], Part]:
    return lambda value: part.model_copy(update={field: _actual(value)})


def _counting(part: Part, field: str) -> Callable[[float], Part]:
    return lambda value: part.model_copy(update={field: round(value)})


def _sizing(part: Part, name: str) -> Callable[[float], Part]:
    return lambda value: part.model_copy(update={"sizes": {**part.sizes, name: _actual(value)}})
