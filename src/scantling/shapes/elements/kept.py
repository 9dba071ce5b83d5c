"""A panel's reduction as text that can be kept, and back."""

from __future__ import annotations

from base64 import b64decode, b64encode
from typing import Any

from scantling.shapes.elements.plate import Plate, Reduced, reduce_plate

_MATRICES = ("bend", "bend_mass", "stretch", "stretch_mass")


def reduced_data(plate: Plate, size_mm: float) -> dict[str, Any]:
    """Return a panel brought down to its discs as plain data: matrices as their rows' bytes, the whole in order."""
    reduced = reduce_plate(plate, size_mm)
    found: dict[str, Any] = {name: _packed(getattr(reduced, name)) for name in _MATRICES}
    return {**found, "area_mm2": reduced.area_mm2}


def reduced_from(data: dict[str, Any]) -> Reduced:
    """Return the reduction that ``reduced_data`` wrote."""
    matrices = {name: _unpacked(data[name]) for name in _MATRICES}
    return Reduced(**matrices, area_mm2=data["area_mm2"])


def _packed(matrix: Any) -> str:
    return b64encode(matrix.astype("<f8").tobytes()).decode()


def _unpacked(text: str) -> Any:
    import numpy as np

    flat = np.frombuffer(b64decode(text), dtype="<f8")
    side = round(len(flat) ** 0.5)
    return flat.reshape(side, side)
