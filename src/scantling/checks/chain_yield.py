"""The share of machines whose chain of sizes comes out within its limits, by sampling all tolerances.

Every tolerance is three standard deviations of a normal spread unless its term says otherwise; sizes made in one go and
what is common to several share one draw; sizes that were read on pieces are drawn as they were read. The stream of
random numbers comes from check and subject, so the same machine gives the same yield. Where too few go together it is
computed what would help: the middle moved, a slot made longer, or the size that spreads most held tighter.
"""

from __future__ import annotations

from math import isfinite, sqrt
from zlib import crc32

from scantling.build.reader import Reader
from scantling.checks.chain_links import Varied, chain_bounds, limited, varied
from scantling.checks.inputs import Input
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.sentences import round_shown
from scantling.checks.subjects import all_of, ident
from scantling.findings import Finding
from scantling.formulas.chains import shares_of_spread
from scantling.formulas.sampling import SAMPLES, Limited, inside_ratio, moved_and_wider_mm, tighter_ratio
from scantling.tables.check_limits import check_limit

SEED = 0
WANTED_RATIO = check_limit("yield wanted")
SIGMAS = 3.0
MOST_TIGHTENED = 2  # sizes of which it is said how tight they must be
LEAST_SHOWN_MM = 0.05  # a smaller move or slot is none


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    chain = reader.design.chains[name]
    chain_bounds(name, chain)
    found = varied(reader, name)
    of, seed = limited(found, name, chain), seed_of(CHECK.code, subject)
    share = reader.kept(inside_ratio, of, seed)
    wanted = (chain.yield_wanted or WANTED_RATIO).value
    lacking = share < wanted and reader.words
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda share: 100 * share,
        inputs={"share": share_input("the sampled yield", share, SAMPLES)},
        bounds=at_least(100 * wanted),
        unit="%",
        because=f"Of {SAMPLES:,} machines sampled, {{value}} keep the chain's limits; {{limit}}.{_most(found)}",
        mend=_mended(reader, found, of, wanted, seed) if lacking else "a tighter size, a slot, or make sizes in one go",
    )


def seed_of(code: str, subject: str, seed: int = SEED) -> int:
    """Return the seed of a check's random stream, from the seed of all, its code and its subject."""
    return crc32(f"{seed}/{code}/{subject}".encode())


def share_input(what: str, share: float, samples: int) -> Input:
    """Return a sampled share with what sampling leaves open: three standard errors either way."""
    off = SIGMAS * sqrt(max(share * (1 - share), 1 / samples) / samples)
    return Input(what, share, max(0.0, share - off), min(1.0, share + off))


def _most(found: Varied) -> str:
    """Say which size spreads the chain most."""
    shares = shares_of_spread(found.links)
    name = max(shares, key=lambda one: shares[one], default="")
    if not name or not shares[name] or len(shares) == 1:
        return ""
    return f" Most of the spread, {100 * shares[name]:.0f} %, comes from {found.word(name)}."


def _mended(reader: Reader, found: Varied, of: Limited, wanted: float, seed: int) -> str:
    """Say in figures what would make the wanted share go together."""
    move_mm, longer_mm = reader.kept(moved_and_wider_mm, of, wanted, seed)
    ways = []
    if abs(move_mm) >= LEAST_SHOWN_MM:
        ways.append(f"make the chain {round_shown(abs(move_mm), 'mm')} {'longer' if move_mm > 0 else 'shorter'}")
    if longer_mm >= LEAST_SHOWN_MM:
        ways.append(f"{'and ' if ways else ''}give its slot {round_shown(longer_mm, 'mm')} more length")
    first = " ".join(ways)
    tight = [_tightened(reader, found, of, name, wanted, seed) for name in _spreading(found)]
    if longer_mm and not any(tight):  # what the sizes spread shrinks as they do
        range_mm = of.high_mm - of.low_mm
        tight = [f"hold every size to {100 * range_mm / (range_mm + longer_mm):.0f} % of its tolerance"]
    return ", or ".join(one for one in (first, *tight) if one) or "make sizes in one go, or a longer slot"


def _spreading(found: Varied) -> list[str]:
    """The sizes that spread the chain most and can be held tighter."""
    shares = shares_of_spread(found.links)
    held = [name for name in sorted(shares, key=lambda one: -shares[one]) if found.tolerance_mm(name) > 0]
    return held[:MOST_TIGHTENED]


def _tightened(reader: Reader, found: Varied, of: Limited, name: str, wanted: float, seed: int) -> str:
    ratio = reader.kept(tighter_ratio, of, name, wanted, seed)
    if ratio is None or not isfinite(ratio) or ratio <= 0:
        return ""
    now_mm = found.tolerance_mm(name)
    return f"hold {found.word(name)} to ± {round_shown(ratio * now_mm, 'mm')} instead of ± {round_shown(now_mm, 'mm')}"


CHECK = check_of(
    _run,
    code="CHAIN-02",
    title="Yield of a chain of sizes",
    source="sampling; spread normal with a tolerance of three standard deviations, even, cut off or as measured",
    subjects=all_of("chain", lambda design: design.chains),
    costly=True,
)
