"""What one template is drawn from: plain facts of a panel, no choice and no rule."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import degrees

from scantling.shapes.edges import Point, Similarity, mirror_at, shift_by, turn_by
from scantling.shapes.outline import Outline
from scantling.tables.bits import Bit

NOMINAL, MEASURED = "nominal", "measured"


@dataclass(frozen=True)
class TemplateHole:
    """One hole to drill; points are those of the outline's file.

    mark : letter and number    bit : as it is stamped, None where no bit in hand will do
    before : bits that come first
    slot_mm : by how much the hole is longer than wide, along ``slot_turn_deg``
    ghosts_mm : diameters of the head and the washers that will cover it
    care : its distance to other such holes must hold    slack_mm : by how much such a distance may be off
    """

    mark: str
    at: Point
    diameter_mm: float
    bit: str | None = None
    bit_mm: float | None = None
    before: tuple[str, ...] = ()
    slot_mm: float = 0.0
    slot_turn_deg: float = 0.0
    ghosts_mm: tuple[float, ...] = ()
    care: bool = False
    slack_mm: float = 0.2
    group: str = ""
    purpose: str = ""

    @property
    def drawn_mm(self) -> float:
        """Diameter of what the drill leaves."""
        return self.bit_mm if self.bit_mm is not None else self.diameter_mm

    @property
    def reach_mm(self) -> float:
        """Farthest point of the hole from its centre."""
        return (max(self.drawn_mm, self.diameter_mm) + self.slot_mm) / 2

    def moved(self, move: Similarity) -> TemplateHole:
        """Return it moved with its panel."""
        turn_deg = (-self.slot_turn_deg if move.mirrored else self.slot_turn_deg) + degrees(move.turn_rad)
        return replace(self, at=move(self.at), slot_turn_deg=turn_deg)


@dataclass(frozen=True)
class TemplateJob:
    """One panel, one hand, as it is to be made.

    name : of the file, without its ending    hand : words where this is the mirrored sheet, else ""
    thickness : in words, ending in NOMINAL or MEASURED    copies : in words    grain : direction on the panel
    uses : steps of the assembly that take it    bits : in hand, for corners that are drilled first
    """

    name: str
    title: str
    outline: Outline
    holes: tuple[TemplateHole, ...] = ()
    machine: str = ""
    revision: str = ""
    material: str = ""
    thickness: str = ""
    copies: str = ""
    face_up: str = ""
    up: str = ""
    grain: str = ""
    hand: str = ""
    drilled_with: str = ""
    uses: tuple[str, ...] = ()
    bits: tuple[Bit, ...] = ()

    def moved(self, move: Similarity) -> TemplateJob:
        """Return it laid elsewhere; the grain turns with it in quarter turns."""
        outline = self.outline.moved(move)
        quarter = round(degrees(move.turn_rad) / 90) % 2 == 1 and not move.mirrored
        grain = {"x": "y", "y": "x"}.get(self.grain, "") if quarter else self.grain
        return replace(self, outline=outline, holes=tuple(hole.moved(move) for hole in self.holes), grain=grain)

    def other_hand(self, words: str) -> TemplateJob:
        """Return the mirrored panel, in its own box, with the words that say so."""
        mirrored = self.moved(mirror_at(self.outline.extents.middle[0]))
        return replace(mirrored, name=f"{self.name}-mirrored", hand=words)

    def at_origin(self, turn_rad: float = 0.0) -> TemplateJob:
        """Return it turned, with the lower left corner of its box at the origin."""
        turned = self.moved(turn_by(turn_rad)) if turn_rad else self
        box = turned.outline.extents
        return turned.moved(shift_by(-box.x_min_mm, -box.y_min_mm))


def from_edges(job: TemplateJob, holes: Iterable[TemplateHole]) -> list[Point]:
    """Return where holes stand, measured from the left edge and from the lower edge of the panel's box."""
    box = job.outline.extents
    return [(hole.at[0] - box.x_min_mm, hole.at[1] - box.y_min_mm) for hole in holes]
