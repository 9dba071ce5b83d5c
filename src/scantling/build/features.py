"""Features of a part: its sizes by the names that files use."""

from __future__ import annotations

from scantling.build.typical import tapped_depth
from scantling.model.features import feature_name, length_fields
from scantling.model.kinds import Motor
from scantling.model.part import Part
from scantling.quantities import Figure


def part_feature(part: Part, name: str) -> Figure | None:
    """Return a length of a part in mm, as measured or described, else usual; None for none."""
    name = feature_name(type(part), name)
    field = length_fields(type(part)).get(name)
    described: Figure | None = getattr(part, field) if field is not None else None
    if described is None and isinstance(part, Motor) and name == "tapped-depth":
        return tapped_depth(part)
    return described if described is not None else part.sizes.get(name)


def feature_path(part: Part, name: str) -> str:
    """Return where in the files a feature of a part would stand."""
    name = feature_name(type(part), name)
    return f"parts.{part.id}.{name}" if name in length_fields(type(part)) else f"parts.{part.id}.sizes.{name}"
