"""The drill schedule: holes by bit in drilling order, with counts for one machine and for all copies."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from scantling.build.holes import ResolvedHole, sheet_holes
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.quantities import show_number
from scantling.tables.bits import bit

NO_BIT = "no bit in hand"
Stage = Literal["pilot", "open", "size"]
_STAGES: tuple[Stage, ...] = ("pilot", "open", "size")


@dataclass(frozen=True)
class DrillLine:
    """All holes of one panel that take one bit at one stage; ``letters`` mark them on the template.

    stage : ``pilot`` (the first of several bits), ``open`` (one between) or ``size`` (the last, or the only one)
    points : from the panel's lower left corner, in mm    error_mm : bit less wanted, the largest of these holes
    """

    sheet: str
    stage: Stage
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
    families: dict[tuple[str, float, float], int] = {}
    letters: dict[tuple[str, float, float], str] = {}
    marks = []
    for hole in holes:
        family = (hole.purpose, round(hole.diameter_mm, 3), round(hole.slot_mm or 0.0, 3))
        letter = letters.setdefault(family, mark_letter(len(letters)))
        families[family] = families.get(family, 0) + 1
        marks.append(f"{letter}{families[family]}")
    return tuple(marks)


def mark_letter(index: int) -> str:
    """Return A…Z, AA, AB … without I and O, which look like figures on paper."""
    alphabet = "ABCDEFGHJKLMNPQRSTUVWXYZ"
    text = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, len(alphabet))
        text = alphabet[rest] + text
    return text


def drill_lines(reader: Reader, sheet: str, copies: int) -> tuple[DrillLine, ...]:
    """Return the schedule of one panel: pilots first, then bit by bit, the smallest first.

    A panel whose place is empty, or whose holes are not described, has none.
    """
    panels = reader.pieces(sheet)
    try:
        holes = reader.derive(sheet_holes, sheet) if panels else ()
    except NotDescribedError:
        return ()
    stages: dict[tuple[bool, float, int, str], list[tuple[str, ResolvedHole]]] = {}
    for mark, hole in zip(hole_letters(holes), holes, strict=True):
        for stage, name, size_mm in _bits(hole):
            stages.setdefault((stage != "pilot", size_mm, _STAGES.index(stage), name), []).append((mark, hole))
    return tuple(
        _line(sheet, _STAGES[stage], name, size_mm, stages[key], panels, copies)
        for key in sorted(stages)
        for _, size_mm, stage, name in [key]
    )


def _bits(hole: ResolvedHole) -> Iterator[tuple[Stage, str, float]]:
    """Yield the bits of a hole in drilling order, with what each does and its diameter."""
    for number, name in enumerate(hole.steps[:-1]):
        yield "open" if number else "pilot", name, bit(name).diameter_mm
    yield "size", hole.bit or NO_BIT, hole.bit_mm if hole.bit_mm is not None else hole.diameter_mm


def _line(
    sheet: str,
    stage: Stage,
    name: str,
    size_mm: float,
    found: list[tuple[str, ResolvedHole]],
    panels: int,
    copies: int,
) -> DrillLine:
    errors = [hole.error_mm for _, hole in found if hole.error_mm is not None and stage == "size"]
    return DrillLine(
        sheet,
        stage,
        name,
        size_mm,
        tuple(mark for mark, _ in found),
        tuple((hole.x_mm, hole.y_mm) for _, hole in found),
        tuple(dict.fromkeys(hole.why or hole.purpose for _, hole in found)),
        len(found) * panels,
        len(found) * panels * copies,
        max(errors, key=abs) if errors else None,
    )


def drill_table(lines: Sequence[DrillLine]) -> list[list[str]]:
    """Return the schedule as rows of text, heading first."""
    heading = ["panel", "stage", "bit", "diameter mm", "holes in one machine", "holes for all copies", "marks"]
    heading += ["x, y mm from the lower left corner", "bit less wanted mm", "for"]
    return [heading, *(_row(line) for line in lines)]


def _row(line: DrillLine) -> list[str]:
    return [
        line.sheet,
        line.stage,
        line.bit,
        show_number(line.bit_mm, 2),
        str(line.count),
        str(line.for_all),
        " ".join(line.letters),
        "; ".join(f"{show_number(x, 1)}, {show_number(y, 1)}" for x, y in line.points),
        "" if line.error_mm is None else show_number(line.error_mm, 2),
        ", ".join(line.purposes),
    ]
