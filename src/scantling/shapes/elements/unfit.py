"""What stops a frame from being reckoned: an outline that cannot be filled, parts that can move freely."""

from __future__ import annotations

from scantling.errors import ScantlingError


class UnfitFrameError(ScantlingError):
    """A frame that has no answer; the text says what is wrong with it."""
