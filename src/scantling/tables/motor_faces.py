"""Faces of stepper motors by frame size: the square of screws, the collar, the shaft."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.csv_table import number, pick, rows


@dataclass(frozen=True)
class MotorFace:
    """A motor's face.

    square_mm : side of the square of screws    pilot_mm, pilot_depth_mm : the centring collar
    thread : of the screws; tapped in the face where ``tapped``, else they pass through it
    tapped_depth_mm : thread in the face; a screw that goes deeper jams the rotor; None where not tapped
    """

    frame_size: str
    square_mm: float
    pilot_mm: float
    pilot_depth_mm: float
    face_mm: float
    thread: str
    tapped: bool
    tapped_depth_mm: float | None
    shaft_mm: float
    source: str


@cache
def motor_face(frame_size: str) -> MotorFace:
    """Return the face of a frame size (``"17"``); ``LookUpError`` where it is not in the table.

    >>> motor_face("17").square_mm
    31.0
    """
    row = pick("frame size of a motor", str(frame_size), {row["frame_size"]: row for row in rows("motor_faces")})
    return MotorFace(
        frame_size=row["frame_size"],
        square_mm=float(row["square_mm"]),
        pilot_mm=float(row["pilot_mm"]),
        pilot_depth_mm=float(row["pilot_depth_mm"]),
        face_mm=float(row["face_mm"]),
        thread=row["thread"],
        tapped=row["tapped"] == "yes",
        tapped_depth_mm=number(row["tapped_depth_mm"]),
        shaft_mm=float(row["shaft_mm"]),
        source=row["source"],
    )


def motor_face_names() -> tuple[str, ...]:
    """Return all frame sizes of the table."""
    return tuple(row["frame_size"] for row in rows("motor_faces"))
