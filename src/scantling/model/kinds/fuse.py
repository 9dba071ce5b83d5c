"""A fuse."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Current, MeltingIntegral
from scantling.model.part import Part


class Fuse(Part):
    """A fuse-link.

    current_a : rated    melting_a2s : heat that melts it in a pulse, the square of the current times its time
    """

    kind: Literal["fuse"] = "fuse"
    current_a: Current
    speed: Literal["time-lag", "quick"] = "time-lag"
    melting_a2s: MeltingIntegral | None = None
