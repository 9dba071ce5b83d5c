"""The drill schedule: holes by bit in drilling order, with counts for one machine and for all copies."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.build.holes import ResolvedHole, sheet_holes
from scantling.build.reader import Reader
from scantling.quantities import show_number

NO_BIT = "no bit in hand"


@dataclass(frozen=True)
class DrillLine:
    """All holes of one panel that take one bit at one stage; ``letters`` mark them on the template.

    stage : ``pilot`` or ``size``    points : from the panel's lower left corner, in mm
    """

    sheet: str
    stage: str
    bit: str
    bit_mm: float
    letters: tuple[str, ...]
    points: tuple[tuple[float, float], ...]
    purposes: tuple[str, ...]
    count: int
    for_all: int
    error_mm: float | None


def hole_letters(holes: Sequence[ResolvedHole]) -> tuple[str, ...]:
    """Return a mark per hole: a letter for each purpose and size, a number within it (``A1``, ``A2``, ``B1``)."""
    families: dict[tuple[str, float, float], list[int]] = {}
    marks = []
    for hole in holes:
        family = (hole.purpose, round(hole.diameter_mm, 3), round(hole.slot_mm or 0.0, 3))
        members = families.setdefault(family, [])
        members.append(1)
        marks.append(f"{_letter(list(families).index(family))}{len(members)}")
    return tuple(marks)


def _letter(index: int) -> str:
    """Return A…Z, AA, AB … without I and O, which look like figures on paper."""
    alphabet = "ABCDEFGHJKLMNPQRSTUVWXYZ"
    first, second = divmod(index, len(alphabet))
    return (alphabet[first - 1] if first else "") + alphabet[second]


def drill_lines(reader: Reader, sheet: str, copies: int) -> tuple[DrillLine, ...]:
    """Return the schedule of one panel: pilots first, then sizes, the smallest bit first."""
    holes = reader.derive(sheet_holes, sheet)
    panels = reader.pieces(sheet)
    stages: dict[tuple[int, float, str, str], list[tuple[str, ResolvedHole]]] = {}
    for mark, hole in zip(hole_letters(holes), holes, strict=True):
        if hole.pilot:
            stages.setdefault((0, 0.0, "pilot", hole.pilot), []).append((mark, hole))
        size = hole.bit_mm if hole.bit_mm is not None else hole.diameter_mm
        stages.setdefault((1, size, "size", hole.bit or NO_BIT), []).append((mark, hole))
    return tuple(_line(sheet, key, found, panels, copies) for key, found in sorted(stages.items(), key=lambda p: p[0]))


def _line(
    sheet: str, key: tuple[int, float, str, str], found: list[tuple[str, ResolvedHole]], panels: int, copies: int
) -> DrillLine:
    _, size, stage, bit = key
    errors = [hole.error_mm for _, hole in found if hole.error_mm is not None and stage == "size"]
    return DrillLine(
        sheet,
        stage,
        bit,
        size,
        tuple(mark for mark, _ in found),
        tuple((hole.x_mm, hole.y_mm) for _, hole in found),
        tuple(dict.fromkeys(hole.purpose for _, hole in found)),
        len(found) * panels,
        len(found) * panels * copies,
        max(errors, key=abs) if errors else None,
    )


def drill_table(lines: Sequence[DrillLine]) -> list[list[str]]:
    """Return the schedule as rows of text, heading first."""
    heading = ["panel", "stage", "bit", "holes", "for all copies", "marks", "x, y mm from the lower left corner", "for"]
    return [heading, *([*_head(x), " ".join(x.letters), _points(x), ", ".join(x.purposes)] for x in lines)]


def _head(line: DrillLine) -> list[str]:
    return [line.sheet, line.stage, line.bit, str(line.count), str(line.for_all)]


def _points(line: DrillLine) -> str:
    return "; ".join(f"{show_number(x, 1)}, {show_number(y, 1)}" for x, y in line.points)
