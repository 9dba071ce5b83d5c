"""Features of a part: its sizes by the names that files use, measured ones first."""

from __future__ import annotations

from functools import cache

from scantling.model.kinds import Motor
from scantling.model.part import Part
from scantling.model.workshop import Workshop
from scantling.quantities import Figure, Grade, file_name_of

# Short words for features whose field has a longer name.
_SHORT: dict[tuple[type[Part], str], str] = {(Motor, "tapped"): "tapped-depth", (Motor, "shaft"): "shaft-diameter"}


def part_feature(part: Part, name: str, workshop: Workshop) -> Figure | None:
    """Return a length of a part in mm: as measured on the lot in hand, else as described; None where neither."""
    name = _SHORT.get((type(part), name), name)
    for actual in workshop.actuals:
        if (actual.part, actual.size) == (part.id, name):
            return Figure(actual.value.value, actual.value.low, actual.value.high, Grade.MEASURED, "measured")
    field = length_fields(type(part)).get(name)
    described: Figure | None = getattr(part, field) if field is not None else None
    return described if described is not None else part.sizes.get(name)


def feature_path(part: Part, name: str) -> str:
    """Return where in the files a feature of a part would stand."""
    name = _SHORT.get((type(part), name), name)
    return f"parts.{part.id}.{name}" if name in length_fields(type(part)) else f"parts.{part.id}.sizes.{name}"


@cache
def length_fields(kind: type[Part]) -> dict[str, str]:
    """Return the fields of a kind of part that are lengths, by their name in files."""
    return {file_name_of(field): field for field in kind.model_fields if field.endswith("_mm")}
