"""The share of machines whose chain of sizes comes out within its limits, by sampling all tolerances.

Every tolerance is three standard deviations of a normal spread; sizes made in one go share one draw. The stream of
random numbers comes from check and subject, so the same machine gives the same yield.
"""

from __future__ import annotations

from math import sqrt
from zlib import crc32

from scantling.build.reader import Reader
from scantling.checks.chain_links import chain_bounds, varied
from scantling.checks.inputs import Input
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.findings import Finding
from scantling.formulas.chains import SAMPLES, Link, sample_sizes_mm
from scantling.quantities import Figure

SEED = 0
WANTED_RATIO = Figure.exact(0.997)
SIGMAS = 3.0


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    chain = reader.design.chains[name]
    low, high = chain_bounds(name, chain).at({})
    found = varied(reader, name)
    share = inside_ratio(found.links, low, high, seed_of(CHECK.code, subject))
    off = SIGMAS * sqrt(max(share * (1 - share), 1 / SAMPLES) / SAMPLES)
    wanted = (chain.yield_wanted or WANTED_RATIO).value
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda share: 100 * share,
        inputs={"share": Input("the sampled yield", share, max(0.0, share - off), min(1.0, share + off))},
        bounds=at_least(100 * wanted),
        unit="%",
        because=f"Of {SAMPLES} machines sampled, {{value}} keep the chain's limits; {{limit}}.",
        mend="a tighter size, a slot, or make sizes in one go",
    )


def seed_of(code: str, subject: str, seed: int = SEED) -> int:
    """Return the seed of a check's random stream, from the seed of all, its code and its subject."""
    return crc32(f"{seed}/{code}/{subject}".encode())


def inside_ratio(links: tuple[Link, ...], low_mm: float, high_mm: float, seed: int) -> float:
    """Return the share of sampled chains between two limits, either of which may be infinite."""
    import numpy as np

    effects = np.array([link.effect_ratio for link in links])
    gaps = effects @ sample_sizes_mm(links, seed)
    return float(np.mean((gaps >= low_mm) & (gaps <= high_mm)))


CHECK = check_of(
    _run,
    code="CHAIN-02",
    title="Yield of a chain of sizes",
    source="sampling, normal spread with a tolerance of three standard deviations",
    subjects=all_of("chain", lambda design: design.chains),
    costly=True,
)
