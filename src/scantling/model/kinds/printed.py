"""A printed part."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from scantling.model.base import Count, Data, Length, Ratio
from scantling.model.part import Part


class MeshVariant(Data):
    """One mesh of a printed part and what it suits: ``{y-rod.diameter: 8 mm}``; suits anything where empty."""

    mesh: str
    suits: dict[str, Length] = Field(default_factory=dict)


class Printed(Part):
    """A part to print; its options are plastic × mesh variant.

    meshes : the first that suits the chosen parts is printed; none is a finding, "no file exists"
    plastics : allowed, in the maker's order of liking; zone : how hot it gets: a word of the table of zones (``cool``,
        ``warm``, ``hot``, ``motor``, ``carriage`` …), or a zone that the design describes
    """

    kind: Literal["printed"] = "printed"
    meshes: tuple[MeshVariant, ...]
    plastics: tuple[str, ...] = ("PETG",)
    walls: Count = 3
    wall_width_mm: Length | None = None
    infill_ratio: Ratio | None = None
    zone: str = "cool"
