"""A thermal cut-out."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Current, Temperature
from scantling.model.part import Part


class CutOut(Part):
    """A switch or link that opens by heat alone, whatever the controller does.

    trips_c : at which it opens    current_a : that it is rated to break
    """

    kind: Literal["cut-out"] = "cut-out"
    trips_c: Temperature
    current_a: Current | None = None
