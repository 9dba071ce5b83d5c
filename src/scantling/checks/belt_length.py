"""The length of belt to order, for information; a closed belt that does not suit the axles is a fault.

An open belt goes round both axles and is clamped at both ends. A closed one has whole teeth: the tensioner must take up
the difference between its length and the path.
"""

from __future__ import annotations

from scantling.build.drives import belt_path, closed_length
from scantling.build.lengths import piece_length
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION, between
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.tables.check_limits import check_number

TAKE_UP_MM = check_number("belt take-up")


def _run(reader: Reader, subject: str) -> Finding:
    closed_mm = reader.derive(closed_length, ident(subject))
    if closed_mm is not None:
        return _closed(reader, subject, closed_mm)
    length = reader.derive(piece_length, belt_axis(reader, subject).belt)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda length: length,
        inputs={"length": known("length of the belt", length, "mm")},
        bounds=INFORMATION,
        unit="mm",
        because="Round both axles and held at its ends the belt takes {value}.",
    )


def _closed(reader: Reader, subject: str, closed_mm: float) -> Finding:
    path = reader.derive(belt_path, ident(subject))
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda closed, path: (closed - path) / 2,
        inputs={"closed": known("length of the closed belt", closed_mm, "mm"), "path": known("its path", path, "mm")},
        bounds=between(-TAKE_UP_MM, TAKE_UP_MM),
        unit="mm",
        because="The closed belt of {closed} on a path of {path} asks the axles to come {value} further apart; "
        "{limit} can be taken up.",
        mend="fix the axle distance on a belt that is sold, or take an open belt",
    )


CHECK = check_of(
    _run,
    code="BELT-05",
    title="Belt to order",
    source="geometry of an open belt; take-up: common practice, no source",
    subjects=belt_axes,
)
