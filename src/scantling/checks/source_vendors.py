"""Parts that one maker makes or one vendor has: nothing to fall back on when they are sold out but a stand-in."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.build.sourcing import Bought
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.sourcing import all_bought, listed, softened, whole
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    bought = all_bought(reader)
    copies = reader.workshop.copies
    open_parts = [one for one in bought if one.in_hand < one.pieces * copies]
    makers = [one for one in open_parts if _of_one_maker(reader, one) and not one.instead]
    vendors = [one.part for one in open_parts if len(one.vendors) == 1]
    nowhere = [one.part for one in open_parts if not one.vendors]
    risky = [*(one.part for one in makers), *nowhere]
    because = f"Of {len(bought)} bought parts {len(vendors)} can be had from one vendor only"
    because += f" ({listed(vendors)})" if vendors else ""
    because += f"; nobody here has {listed(nowhere)}" if nowhere else ""
    because += f"; {listed([one.part for one in makers])}: one maker, no stand-in" if makers else ""
    return softened(
        judge(
            CHECK,
            reader,
            subject,
            rule=lambda safe: safe,
            inputs={"safe": known("parts with something to fall back on", float(len(bought) - len(risky)))},
            bounds=at_least(float(len(bought))),
            unit="",
            because=f"{because}. With something to fall back on, or no need of it: {{value}}; {{limit}}.",
            mend="describe a stand-in, ask a second vendor, or order these first",
        )
    )


def _of_one_maker(reader: Reader, one: Bought) -> bool:
    return bool(reader.case.part(one.part).single_source)


CHECK = check_of(
    _run,
    code="SOURCE-02",
    title="Somebody else to buy from",
    source="counting",
    subjects=whole,
    informs=True,
)
