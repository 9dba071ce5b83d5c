"""Parts that wear or break, with none to spare: one of a few coins then stops a machine for the time of a parcel."""

from __future__ import annotations

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sourcing import Bought, bought_parts
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.sourcing import listed, softened, whole
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    wearing = [one for one in reader.derive(bought_parts) if reader.case.part(one.part).wear is not None]
    if not wearing:
        raise NotDescribedError(("parts (one with wear)",))
    bare = [one for one in wearing if not _has_spare(reader, one)]
    longest = sorted(bare, key=lambda one: -(one.lead_days or 0))
    waits = [f"{one.part} ({one.lead_days} days)" if one.lead_days is not None else one.part for one in longest]
    words = f"without a spare: {listed(waits)}" if bare else "each has a spare"
    return softened(
        judge(
            CHECK,
            reader,
            subject,
            rule=lambda spared: spared,
            inputs={"spared": known("wearing parts with a spare", float(len(wearing) - len(bare)))},
            bounds=at_least(float(len(wearing))),
            unit="",
            because=f"Of {len(wearing)} parts that wear or break, {words}. With a spare: {{value}}; {{limit}}.",
            mend="add a rule to the workshop's spares, as in spares: [{wear: CLASS, at-least: 1}]",
        )
    )


def _has_spare(reader: Reader, one: Bought) -> bool:
    """A rule of the workshop asks for more than is used, or the drawer holds more."""
    shop, wear = reader.workshop, reader.case.part(one.part).wear
    rules = [rule for rule in shop.spares if rule.part == one.part or (rule.wear is not None and rule.wear == wear)]
    return any(rule.extra > 0 or rule.at_least > 0 for rule in rules) or one.in_hand > one.pieces * shop.copies


CHECK = check_of(
    _run,
    code="SOURCE-05",
    title="Spares of what wears",
    source="counting",
    subjects=whole,
    informs=True,
)
