"""What is crimped on the end of a wire."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Area, Current
from scantling.model.part import Part


class Terminal(Part):
    """A ferrule, ring, crimp contact or plug for the end of a wire; one is taken for each core.

    current_a : that it is rated for    smallest_mm2, largest_mm2 : copper that it is made for
    """

    kind: Literal["terminal"] = "terminal"
    form: Literal["ferrule", "ring", "contact", "plug"] = "ferrule"
    current_a: Current | None = None
    smallest_mm2: Area | None = None
    largest_mm2: Area | None = None
