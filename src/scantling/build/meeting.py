"""Holes of a hand-made sheet that must meet those of what is screwed to it: patterns with the play of their screws."""

from __future__ import annotations

from dataclasses import dataclass
from math import radians

from scantling.build.gets import MADE, plastic_of
from scantling.build.holes import ResolvedHole, entry_holes
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.stacks import joint_count, named_places
from scantling.model.kinds import Motor
from scantling.model.sheet import Hole
from scantling.quantities import Figure
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.holes import clearance_hole
from scantling.tables.motor_faces import motor_face
from scantling.tables.papers import paper
from scantling.tables.threads import thread
from scantling.tables.tolerances import tolerance

USUAL_MARGIN_MM = 5.0  # of a paper printer that does not say its own


@dataclass(frozen=True)
class Meeting:
    """The holes for one piece of ``mate``.

    points_mm : of the holes    hole_mm, screw_mm : diameters here and of the screw    mate_play_mm : of the other hole
    mate_mm : ± of the other's holes    seam_mm : along the longer side of the pattern, beyond which another tile lies
    """

    mate: str
    points_mm: tuple[tuple[float, float], ...]
    hole_mm: float
    screw_mm: float
    mate_play_mm: float
    mate_mm: Figure
    slot_mm: float
    slot_turn_rad: float
    seam_mm: float | None

    @property
    def play_mm(self) -> float:
        """How far a screw may be off the middle of both holes together."""
        return max(0.0, self.hole_mm - self.screw_mm) / 2 + self.mate_play_mm


@dataclass(frozen=True)
class _Mate:
    place: str
    screw_mm: float
    play_mm: float
    each: int


def meetings(reader: Reader, sheet: str, index: int) -> tuple[Meeting, ...]:
    """Return what the holes of one entry must meet; nothing where the sheet is not made here or nothing is screwed on.

    Raises ``NotDescribedError`` where it is not said which of the holes belong to one piece.
    """
    if reader.part(sheet) is None or reader.get(sheet) != MADE:
        return ()
    hole = reader.design.sheets[sheet].holes[index]
    mate = _mate(reader, sheet, index, hole)
    if mate is None or _drilled_as_one(reader, sheet, mate.place):
        return ()
    holes = [one for one in reader.derive(entry_holes, sheet, index) if one.purpose != "collar"]
    groups = [holes[at : at + mate.each] for at in range(0, len(holes), mate.each)]
    return tuple(_meeting(reader, mate, group) for group in groups if len(group) > 1)


def _mate(reader: Reader, sheet: str, index: int, hole: Hole) -> _Mate | None:
    place, _, feature = hole.what.partition(".")
    if feature == "face" and not hole.what.startswith("joint:"):
        part = reader.part(place)
        return (
            _Mate(place, thread(motor_face(part.frame_size).thread).major_mm, 0.0, 4)
            if isinstance(part, Motor)
            else None
        )
    joint = hole.what.removeprefix("joint:").strip()
    if not hole.what.startswith("joint:") or joint not in reader.design.joints:
        return None
    described = reader.design.joints[joint]
    others = [one for one in named_places(described) if one != sheet and reader.part(one) is not None]
    if not others or not reader.derive(joint_count, joint):
        return None
    into = described.into.place
    holder = into if into in others else others[0]
    name = head_and_thread(described.screw)[1]
    screw_mm = thread(name).major_mm
    passes = holder != into
    play_mm = (clearance_hole(name, "medium").diameter_mm - screw_mm) / 2 if passes else 0.0
    return _Mate(holder, screw_mm, play_mm, hole.per_piece or _each(reader, sheet, index, joint, holder))


def _each(reader: Reader, sheet: str, index: int, joint: str, holder: str) -> int:
    """How many screws of a joint hold one piece; only where no other joint holds it too."""
    pieces, count = reader.pieces(holder), reader.derive(joint_count, joint)
    if pieces == 1:
        return count
    alone = all(holder not in named_places(one) for name, one in reader.design.joints.items() if name != joint)
    if not alone or count % pieces:
        raise NotDescribedError((f"sheets.{sheet}.holes.{index}.per-piece",))
    return count // pieces


def _drilled_as_one(reader: Reader, sheet: str, other: str) -> bool:
    sheets = reader.design.sheets
    return other in sheets and (sheets[other].drilled_with == sheet or sheets[sheet].drilled_with == other)


def _meeting(reader: Reader, mate: _Mate, holes: list[ResolvedHole]) -> Meeting:
    points = [(one.x_mm, one.y_mm) for one in holes]
    wide_mm, high_mm = (max(one[k] for one in points) - min(one[k] for one in points) for k in (0, 1))
    turned = high_mm > wide_mm  # so that a seam always cuts across x
    points = [(y, x) if turned else (x, y) for x, y in points]
    turn_rad = radians(90 - holes[0].slot_turn_deg if turned else holes[0].slot_turn_deg)
    get = reader.get(mate.place)
    made = "printed hole" if plastic_of(get) is not None else "hole by hand" if get == MADE else "bought pattern"
    passes = [one for one in holes if one.purpose in ("clearance", "typed")]
    hole_mm = min((one.bit_mm or one.diameter_mm for one in passes), default=mate.screw_mm)
    return Meeting(
        mate=mate.place,
        points_mm=tuple(points),
        hole_mm=hole_mm,
        screw_mm=mate.screw_mm,
        mate_play_mm=mate.play_mm,
        mate_mm=tolerance(made),
        slot_mm=holes[0].slot_mm,
        slot_turn_rad=turn_rad,
        seam_mm=_seam(reader, max(wide_mm, high_mm), min(wide_mm, high_mm), [x for x, _ in points]),
    )


def _seam(reader: Reader, long_mm: float, short_mm: float, along: list[float]) -> float | None:
    """Where a pattern that no sheet of paper holds is cut: in its middle; None where one holds it."""
    sheet = paper(reader.workshop.paper.size)
    margin = reader.workshop.printer.margin_mm
    edge_mm = 2 * (margin.value if margin is not None else USUAL_MARGIN_MM)
    long_side, short_side = sheet.height_mm - edge_mm, sheet.width_mm - edge_mm
    if long_mm <= long_side and short_mm <= short_side:
        return None
    return (min(along) + max(along)) / 2
