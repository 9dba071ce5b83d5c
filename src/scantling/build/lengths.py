"""Lengths of pieces that are cut: rods, threaded rods, and belts as they are ordered."""

from __future__ import annotations

from math import ceil

from scantling.build.drives import belt_path
from scantling.build.missing import NotDescribedError, gather
from scantling.build.reader import Reader
from scantling.build.sizes import size
from scantling.model.axis import BeltAxis
from scantling.quantities import Figure

_ROUNDING_UM = 1e-3  # sizes are sums of decimals: 352.0000000001 mm is 352 mm


def piece_length(reader: Reader, place: str) -> Figure:
    """Return the length in mm of a piece of a place: as the place says, else as the axis needs whose belt it is."""
    described = reader.design.places[place].length
    if described is not None:
        return reader.derive(size, described)
    axis = belt_of(reader, place)
    if axis is None:
        raise NotDescribedError((f"places.{place}.length",))
    return reader.derive(belt_order, axis)


def belt_of(reader: Reader, place: str) -> str | None:
    """Return the first axis whose belt sits in a place."""
    axes = reader.design.axes.items()
    return next((name for name, axis in axes if isinstance(axis, BeltAxis) and axis.belt == place), None)


def belt_order(reader: Reader, axis: str) -> Figure:
    """Return the length of open belt to order for an axis: its path, and what is clamped and held at the ends."""
    described = reader.design.axes[axis]
    if not isinstance(described, BeltAxis) or described.clamping is None:
        raise NotDescribedError((f"axes.{axis}.clamping",))
    clamping = described.clamping
    path_mm, held_mm = gather(lambda: reader.derive(belt_path, axis), lambda: reader.derive(size, clamping))
    return path_mm + held_mm


def cut_length_um(reader: Reader, place: str) -> int:
    """Return the nominal length of a piece in whole micrometres, never shorter than it is."""
    return whole_um(reader.derive(piece_length, place).value)


def whole_um(length_mm: float) -> int:
    """Return a length in whole micrometres, rounded up but for the noise of adding decimals.

    >>> whole_um(352.0000000001), whole_um(355.6), whole_um(7.93751)
    (352000, 355600, 7938)
    """
    return ceil(length_mm * 1000 - _ROUNDING_UM)
