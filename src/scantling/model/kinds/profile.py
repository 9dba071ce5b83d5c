"""A straight profile of which frames are made: solid, or a tube with a wall."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Length
from scantling.model.part import Part


class Profile(Part):
    """A rectangular bar; ``wall_mm`` of a tube, solid where it is missing. Its length belongs to the place."""

    kind: Literal["profile"] = "profile"
    width_mm: Length
    height_mm: Length
    wall_mm: Length | None = None
