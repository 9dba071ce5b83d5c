"""A motor's face must meet the holes of what it is bolted to: the square of its screws against the bracket's.

The screws' clearance forgives a little, as much as their holes are wider. Holes that a sheet makes for a motor's face
follow the chosen motor by themselves and need no such pair.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.pairs import FACE, pair_of, pairs_of
from scantling.checks.rule import check_of, part_at
from scantling.findings import Finding, Verdict
from scantling.model.kinds import Motor
from scantling.tables.holes import clearance_hole
from scantling.tables.motor_faces import motor_face
from scantling.tables.threads import thread


def _run(reader: Reader, subject: str) -> Finding:
    pair = pair_of(reader.design, subject)
    if reader.part(pair.place) is None or reader.part(pair.in_place) is None:
        return say(CHECK, reader, subject, Verdict.SOUND, "One of the two places stays empty: nothing has to meet.")
    motor = part_at(reader, pair.place, Motor, f"mates.{pair.identifier}.a")
    face = motor_face(motor.frame_size)
    square = reader.derive(feature, pair.in_place, pair.in_name)
    play_mm = clearance_hole(face.thread, "medium").diameter_mm - thread(face.thread).major_mm
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda face, square: abs(face - square),
        inputs={
            "face": known(f"square of a motor of frame {motor.frame_size}", face.square_mm, "mm"),
            "square": known(f"{pair.in_name} of {pair.in_place}", square, "mm"),
        },
        bounds=at_most(play_mm),
        unit="mm",
        because=f"The screws of frame {motor.frame_size} stand in a square of {{face}}, those of {pair.in_place} in "
        "one of {square}: {value} apart; {limit} is forgiven by their clearance.",
        mend="take a motor of the bracket's frame size, or a bracket for this motor",
    )


CHECK = check_of(
    _run,
    code="MATE-05",
    title="Motor face on hole pattern",
    source="frame sizes after NEMA ICS 16; clearance after ISO 273, floating by the play of one hole",
    subjects=pairs_of(FACE),
)
