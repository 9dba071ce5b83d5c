"""The share of whole machines that go together without handwork: all chains and all patterns of holes at once.

A share of 99.7 % for each chain and each pattern is not 99.7 % of machines. Causes that several share by name, and the
scale of the templates of one sheet, fail in the same machines; all else fails on its own. Never worse than marginal:
what each chain must keep is judged by itself.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import chain as joined
from math import prod

from scantling.build.chains import template_scale
from scantling.build.meeting import Meeting
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.chain_links import limited, varied
from scantling.checks.chain_yield import WANTED_RATIO, seed_of
from scantling.checks.hole_meeting import ENDS, SEAM, all_meetings, pattern
from scantling.checks.inputs import Input
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.findings import Finding, NotLookedAt, Verdict
from scantling.formulas.hole_patterns import going_together
from scantling.formulas.sampling import Limited, all_inside_ratio
from scantling.model.design import Design

SUBJECT = "machine whole"
CHAIN_SAMPLES = 200_000


def _run(reader: Reader, subject: str) -> Finding | NotLookedAt:
    chains = _chains(reader)
    meetings = all_meetings(reader)
    if len(chains) + len(meetings) < 2:
        raise NotDescribedError(("chains (two or more with limits)",))
    seed = seed_of(CHECK.code, subject)
    of_chains = reader.kept(all_inside_ratio, tuple(chains.values()), seed, CHAIN_SAMPLES) if chains else 1.0
    of_holes = [_holes(reader, meetings, end, seed) for end in ENDS]
    share, best, worst = (100 * of_chains * one[0][0] for one in of_holes)
    wanted = WANTED_RATIO.value * prod(_asked(reader.design, name) for name in chains)
    count = len(chains) + sum(map(len, meetings.values()))
    alone = 100 * WANTED_RATIO.value**count
    held = _words(of_chains, chains, of_holes[0][0][0], meetings)
    finding = judge(
        CHECK,
        reader,
        subject,
        rule=lambda share: share,
        inputs={"share": Input("places of holes made by hand", share, worst, best, "%", assumed=bool(meetings))},
        bounds=at_least(100 * wanted),
        unit="%",
        because=f"{{value}} of machines go together without handwork; {{limit}}. {held} {count} of these at 99.7 % "
        f"each would leave {alone:.1f} % of machines.{_worst(of_holes[0][1], meetings)}",
        mend="see the holes and chains that are marginal; drill through both parts at once, or wider holes",
    )
    return replace(finding, verdict=Verdict.MARGINAL) if finding.verdict is Verdict.UNSOUND else finding


def _chains(reader: Reader) -> dict[str, Limited]:
    """All chains of which enough is said."""
    found: dict[str, Limited] = {}
    for name, chain in reader.design.chains.items():
        try:
            found[name] = limited(varied(reader, name), name, chain)
        except NotDescribedError:
            continue
    return found


def _asked(design: Design, name: str) -> float:
    """What a chain that asks for less than usual leaves of all machines."""
    wanted = design.chains[name].yield_wanted
    return min(1.0, wanted.value / WANTED_RATIO.value) if wanted is not None else 1.0


def _holes(reader: Reader, met: Mapping[str, tuple[Meeting, ...]], end: str, seed: int) -> list[list[float]]:
    """What ``going_together`` says of all patterns of the machine, at one end of what hands do."""
    patterns = tuple(pattern(one, key.rpartition(".")[0], end) for key, found in met.items() for one in found)
    scale, seam = getattr(template_scale(reader), end), getattr(SEAM, end)
    return reader.kept(going_together, patterns, scale, seam, WANTED_RATIO.value, seed) if patterns else [[1.0], [], []]


def _words(of_chains: float, chains: dict[str, Limited], of_holes: float, met: Mapping[str, tuple[object, ...]]) -> str:
    said = [f"All {len(chains)} chains hold in {100 * of_chains:.1f} %"] if chains else []
    count = sum(map(len, met.values()))
    said += [f"all {count} patterns of holes meet in {100 * of_holes:.1f} %"] if count else []
    words = ", ".join(said)
    return f"{words[:1].upper()}{words[1:]}."


def _worst(shares: list[float], met: Mapping[str, tuple[object, ...]]) -> str:
    names = list(joined.from_iterable([key] * len(found) for key, found in met.items()))
    if not shares:
        return ""
    at = min(range(len(shares)), key=lambda one: shares[one])
    return f" Least sure: hole {names[at]}, {100 * shares[at]:.1f} %."


CHECK = check_of(
    _run,
    code="CHAIN-03",
    title="Machines that go together",
    source="sampling; independent chances multiply",
    subjects=lambda design: (SUBJECT,) if design.chains or design.sheets else (),
    costly=True,
    informs=True,
)
