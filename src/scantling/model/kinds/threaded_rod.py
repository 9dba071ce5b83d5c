"""A rod with a thread along its length: a drive screw, or a bar that ties a frame."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Ratio
from scantling.model.part import Part


class ThreadedRod(Part):
    """A threaded rod or lead screw, sold by length.

    thread : ``M6``, ``Tr8x2``, ``Tr8x8(P2)``, ``1/4-20``    friction_ratio : screw on nut, sliding
    """

    kind: Literal["threaded-rod"] = "threaded-rod"
    thread: str
    friction_ratio: Ratio | None = None
