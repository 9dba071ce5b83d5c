"""Do the board's mounting holes meet those that are drilled for it? Only as far as the play of its screws forgives."""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.sizes import size
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import all_of, ident
from scantling.errors import LookUpError
from scantling.findings import Finding
from scantling.model.kinds import Board
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.threads import thread


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    electronics = reader.design.electronics[name]
    board = part_at(reader, electronics.board, Board, f"electronics.{name}.board")
    mounting = need(board.mounting, f"parts.{board.id}.mounting")
    sheet = need(electronics.sheet, f"electronics.{name}.sheet")
    joint = need(electronics.joint, f"electronics.{name}.joint")
    drilled = _drilled_mm(reader, sheet, joint)
    screw_mm = _screw_mm(reader, joint)

    def misfit(width: float, depth: float, **_: float) -> float:
        return min(_apart((width, depth), drilled), _apart((depth, width), drilled))

    return judge(
        CHECK,
        reader,
        subject,
        rule=misfit,
        inputs={
            "width": known(f"holes of {board.id} across", mounting.width_mm, "mm"),
            "depth": known(f"holes of {board.id} along", mounting.depth_mm, "mm"),
            "hole": known(f"hole of {board.id}", mounting.hole_mm, "mm"),
        },
        bounds=at_most(lambda hole, **_: hole - screw_mm),
        unit="mm",
        because=f"{board.id} has its holes {{width}} by {{depth}} apart, {sheet} is drilled {drilled[0]:g} by "
        f"{drilled[1]:g} mm: {{value}} off; its holes of {{hole}} on screws of {screw_mm:g} mm forgive {{limit}}.",
        mend=f"move the holes of {sheet}, or an adapter plate",
    )


def _drilled_mm(reader: Reader, sheet: str, joint: str) -> tuple[float, float]:
    """Width and height of the box round the holes of a joint in a sheet."""
    holes = [hole for hole in reader.design.sheets[sheet].holes if hole.what == f"joint:{joint}"]
    points = [point for hole in holes for point in (hole.at, *hole.repeat)]
    need(points or None, f"sheets.{sheet}.holes (for joint:{joint})")
    across, along = ([reader.derive(size, point[side]).value for point in points] for side in (0, 1))
    return max(across) - min(across), max(along) - min(along)


def _screw_mm(reader: Reader, joint: str) -> float:
    try:
        return float(thread(head_and_thread(reader.design.joints[joint].screw)[1]).major_mm)
    except LookUpError:
        return float(need(None, f"joints.{joint}.screw"))


def _apart(one: tuple[float, float], other: tuple[float, float]) -> float:
    return max(abs(a - b) for a, b in zip(one, other, strict=True))


CHECK = check_of(
    _run,
    code="PORT-05",
    title="Mounting holes of the board",
    source="geometry of two rectangles of holes",
    subjects=all_of("electronics", lambda design: design.electronics),
)
