"""A rod with a thread along its length: a drive screw, or a bar that ties a frame."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Length, Ratio
from scantling.model.part import Part


class ThreadedRod(Part):
    """A threaded rod or lead screw, sold by length.

    thread : ``M6``, ``Tr8x2``, ``Tr8x8(P2)``, ``1/4-20``    friction_ratio : screw on nut, sliding
    bow_300_mm : how far the middle of 300 mm lies beside a straight line    lead_error_300_mm : of 300 mm of travel
    """

    kind: Literal["threaded-rod"] = "threaded-rod"
    thread: str
    friction_ratio: Ratio | None = None
    bow_300_mm: Length | None = None
    lead_error_300_mm: Length | None = None
