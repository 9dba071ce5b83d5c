"""Parts that are no longer made: a machine that hangs on one can be built once, and not mended."""

from __future__ import annotations

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sourcing import bought_parts
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.sourcing import listed, softened, whole
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    bought = reader.derive(bought_parts)
    said = [one for one in bought if reader.case.part(one.part).obsolete is not None]
    if not said:
        raise NotDescribedError(tuple(f"parts.{one.part}.obsolete" for one in bought[:1]) or ("places",))
    gone = [one for one in said if reader.case.part(one.part).obsolete]
    swapped = [one.part for one in gone if one.instead]
    words = f"no longer made: {listed([one.part for one in gone])}" if gone else "none of them is out of production"
    also = f"; of these {listed(swapped)} has a stand-in" if swapped else ""
    return softened(
        judge(
            CHECK,
            reader,
            subject,
            rule=lambda made: made,
            inputs={"made": known("parts that are still made", float(len(said) - len(gone)))},
            bounds=at_least(float(len(said))),
            unit="",
            because=f"Of {len(said)} bought parts of which it is said, {words}{also}. Still made: {{value}}; "
            "{limit}.",
            mend="choose a part that is still made, or buy its spare now",
        )
    )


CHECK = check_of(
    _run,
    code="SOURCE-01",
    title="Parts still made",
    source="counting",
    subjects=whole,
    informs=True,
)
