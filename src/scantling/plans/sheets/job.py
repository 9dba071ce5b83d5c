"""What one template is drawn from: plain facts of a panel, no choice and no rule."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import degrees
from typing import Literal

from scantling.shapes.edges import Point, Similarity, mirror_at, shift_by, turn_by
from scantling.shapes.outline import Outline
from scantling.tables.bits import Bit

Side = Literal["bottom", "right", "top", "left"]
_SIDES: tuple[Side, ...] = (
    "bottom",
    "right",
    "top",
    "left",
)  # as a quarter turn anticlockwise leads from one to the next
_MIRRORED: dict[Side, Side] = {"bottom": "bottom", "top": "top", "left": "right", "right": "left"}

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
    thickness : in words, ending in NOMINAL where nobody measured it    copies : in words
    grain : direction on the panel
    uses : steps of the assembly that take it    bits : in hand, for corners that are drilled first
    edge_a, edge_b : on which side of the paper the two edges lie from which the drill table counts
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
    edge_a: Side = "bottom"
    edge_b: Side = "left"

    def moved(self, move: Similarity) -> TemplateJob:
        """Return it laid elsewhere, mirrored left to right or turned by quarter turns; grain and edges go with it."""
        outline = self.outline.moved(move)
        if move.mirrored:
            grain, edges = self.grain, tuple(_MIRRORED[side] for side in (self.edge_a, self.edge_b))
        else:
            quarters = round(degrees(move.turn_rad) / 90) % 4
            grain = {"x": "y", "y": "x"}.get(self.grain, "") if quarters % 2 else self.grain
            edges = tuple(_SIDES[(_SIDES.index(side) + quarters) % 4] for side in (self.edge_a, self.edge_b))
        holes = tuple(hole.moved(move) for hole in self.holes)
        return replace(self, outline=outline, holes=holes, grain=grain, edge_a=edges[0], edge_b=edges[1])

    def other_hand(self, words: str) -> TemplateJob:
        """Return the mirrored panel, in its own box, with the words that say so."""
        mirrored = self.moved(mirror_at(self.outline.extents.middle[0]))
        return replace(mirrored, name=f"{self.name}-mirrored", hand=words)

    def at_origin(self, turn_rad: float = 0.0) -> TemplateJob:
        """Return it turned, with the lower left corner of its box at the origin."""
        turned = self.moved(turn_by(turn_rad)) if turn_rad else self
        box = turned.outline.extents
        return turned.moved(shift_by(-box.x_min_mm, -box.y_min_mm))
