"""Names carry units: what the end of a field's name says about its dimension, and what the field is called in files."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

# Longest first, so that ``_mm_s2`` is found before ``_mm_s`` and ``_s``. A suffix whose unit is not the canonical
# one has a dimension of its own (``length-um``), so a figure is always in the unit that its name ends in.
_SUFFIXES: dict[str, str] = {
    "_mm": "length",
    "_um": "length-um",
    "_km": "length-km",
    "_mm2": "area",
    "_mm3": "volume",
    "_mm4": "second-moment",
    "_kg": "mass",
    "_t": "mass-t",
    "_n": "force",
    "_nmm": "torque",
    "_mpa": "stress",
    "_mm_s": "speed",
    "_mm_s2": "acceleration",
    "_s": "time",
    "_h": "time-h",
    "_days": "time-d",
    "_deg": "angle",
    "_rad": "angle-rad",
    "_c": "temperature",
    "_k": "temperature-difference",
    "_a": "current",
    "_v": "voltage",
    "_w": "power",
    "_j": "energy",
    "_ohm": "resistance",
    "_mh": "inductance",
    "_kg_mm2": "inertia",
    "_j_k": "heat-capacity",
    "_w_k": "heat-loss",
    "_hz": "frequency",
    "_rev_s": "turns",
    "_rpm": "turns-rpm",
    "_g_m": "line-mass",
    "_kg_m3": "density",
    "_n_mm": "stiffness",
    "_mm3_s": "flow",
    "_a2s": "melting-integral",
    "_per_k": "expansion",
    "_per_mm": "per-length",
    "_ratio": "ratio",
    "_hrc": "hardness",
    "_minor": "money",
}
UNIT_SUFFIX: Mapping[str, str] = MappingProxyType(
    dict(sorted(_SUFFIXES.items(), key=lambda item: (-len(item[0]), item[0])))
)


def suffix_of(field_name: str) -> str:
    """Return the unit suffix at the end of a field's name, ``""`` where there is none."""
    return next((s for s in UNIT_SUFFIX if field_name.endswith(s) and len(field_name) > len(s)), "")


def dimension_of(field_name: str) -> str | None:
    """Return the dimension that a field's name ends in, None where its end is no unit.

    ``money`` (suffix ``_minor``) is read by ``parse_money``, every other by ``parse_figure``.

    >>> dimension_of("top_speed_mm_s"), dimension_of("reference")
    ('speed', None)
    """
    return UNIT_SUFFIX.get(suffix_of(field_name))


def file_name_of(field_name: str) -> str:
    """Return what a field is called in files: without its unit, dashes for underscores.

    >>> file_name_of("top_speed_mm_s"), file_name_of("stand_ins")
    ('top-speed', 'stand-ins')
    """
    return field_name.removesuffix(suffix_of(field_name)).replace("_", "-")
