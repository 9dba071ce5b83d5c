"""A linear bearing that runs on a round rod."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Force, Length, Ratio
from scantling.model.part import Part


class Bushing(Part):
    """A linear bushing with rolling balls or a sliding polymer or bronze lining.

    dynamic_load_n : for the travel life ``life_basis_km``    drag_n : pull of seals and grease, each
    ball_diameter_mm : for the contact pressure    rough_ratio : share of a lot that runs rough or loose
    """

    kind: Literal["bushing"] = "bushing"
    lining: Literal["ball", "polymer", "bronze"]
    bore_mm: Length
    bore_fit: str | None = None
    outer_diameter_mm: Length | None = None
    length_mm: Length | None = None
    dynamic_load_n: Force | None = None
    life_basis_km: Literal["50", "100"] = "50"
    friction_ratio: Ratio | None = None
    drag_n: Force | None = None
    ball_diameter_mm: Length | None = None
    rough_ratio: Ratio | None = None
