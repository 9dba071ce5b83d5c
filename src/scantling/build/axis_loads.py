"""How an axis is guided: its rods and bushings, the sizes of its guide, and the travel they leave."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.missing import NotDescribedError, each
from scantling.build.reader import Reader
from scantling.build.sizes import size
from scantling.model.axis import Guide
from scantling.model.kinds import Bushing, Rod
from scantling.quantities import Figure


@dataclass(frozen=True)
class GuideGeometry:
    """Counts of an axis's guide; the chosen rod and bushing, None where none of that kind sits there."""

    axis: str
    rods: int
    bearings: int
    rod: Rod | None
    bushing: Bushing | None
    ends: str
    moving_rods: bool


def guide_geometry(reader: Reader, axis: str) -> GuideGeometry:
    """Return the rods and bushings that carry an axis."""
    guide = _guide(reader, axis)
    rod, bushing = reader.part(guide.rods), reader.part(guide.bearings)
    return GuideGeometry(
        axis=axis,
        rods=reader.pieces(guide.rods),
        bearings=reader.pieces(guide.bearings),
        rod=rod if isinstance(rod, Rod) else None,
        bushing=bushing if isinstance(bushing, Bushing) else None,
        ends=guide.ends,
        moving_rods=guide.moving_rods,
    )


def guide_size(reader: Reader, axis: str, name: str) -> Figure:
    """Return a size in mm of an axis's guide.

    name : of a size of the guide without its unit, ``free``, ``spacing``, ``carriage``, ``load_offset`` …

    A carriage that is not described is as long as its outermost bushings are over all.
    """
    guide = _guide(reader, axis)
    text = guide.free if name == "free" else getattr(guide, f"{name}_mm")
    if text is not None:
        return reader.derive(size, text)
    bushing = reader.part(guide.bearings)
    if name == "carriage" and isinstance(bushing, Bushing) and bushing.length_mm is not None:
        long_mm: Figure = bushing.length_mm
        return reader.derive(guide_size, axis, "spacing") + long_mm
    raise NotDescribedError((f"axes.{axis}.guide.{name.replace('_', '-')}",))


def travel(reader: Reader, axis: str) -> Figure:
    """Return the travel in mm that the rods leave: free length less carriage and stops."""
    names = ("free", "carriage", "stops")
    free_mm, carriage_mm, stops_mm = each(lambda name: reader.derive(guide_size, axis, name), names)
    return free_mm - carriage_mm - stops_mm


def _guide(reader: Reader, axis: str) -> Guide:
    guide = reader.design.axes[axis].guide
    if guide is None:
        raise NotDescribedError((f"axes.{axis}.guide",))
    return guide
