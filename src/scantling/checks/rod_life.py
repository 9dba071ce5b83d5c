"""Travel that nine of ten ball bushings reach under their load, against the life that is wanted.

The factor for softer shafts is used only where worked lives are published, from 40 HRC up; below, no life is claimed
and the contact pressure decides. Plain linings have no balls and no such life.
"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.bushing_strength import POSSIBLE_LOAD_N
from scantling.checks.guide_loads import guided, level_guides
from scantling.checks.inputs import or_range, or_typical
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.materials import rockwell_input
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict
from scantling.formulas.bushings import HARDNESS_POINTS, SHARED_LOAD_RATIOS, bushing_life_km, hardness_ratio
from scantling.quantities import Figure

LOAD_FACTOR = Figure(1.5, 1.0, 2.0)  # smooth and slow to quick without shocks, a bushing maker's guide
HARDEST_HRC, SOFTEST_HRC = HARDNESS_POINTS[-1][0], HARDNESS_POINTS[0][0]
LONGEST_KM = 1e6


def _run(reader: Reader, subject: str) -> Finding:
    name, on = ident(subject), guided(reader, subject)
    wanted_km = need(reader.design.axes[name].needs.life_km, f"axes.{name}.needs.life")
    if on.bushing.lining != "ball":
        because = f"A {on.bushing.lining} lining has no balls that tire; it wears, which shows as play."
        return say(CHECK, reader, subject, Verdict.SOUND, because)
    hardness = rockwell_input(on.rod, (SOFTEST_HRC, HARDEST_HRC))
    if hardness.low < SOFTEST_HRC:
        because = (
            f"{on.rod.id} of {hardness.shown()}: no hardness factor is proven below {SOFTEST_HRC:g} HRC, so no life is "
            "claimed; the pressure of its balls decides (ROD-03)."
        )
        return say(CHECK, reader, subject, Verdict.SOUND, because)

    contact = SHARED_LOAD_RATIOS[min(on.on_one_rod, len(SHARED_LOAD_RATIOS)) - 1]
    beside = "" if contact == 1 else f", {contact:g} of it with {on.on_one_rod} on a rod,"

    def life(mass: float, share: float, rating: float, hard: float, factor: float) -> float:
        ratio = hardness_ratio(hard)
        basis_km = float(on.bushing.life_basis_km)
        load_n = on.on_bushing_n(mass, share)
        return min(LONGEST_KM, bushing_life_km(contact * rating, load_n, ratio, factor, basis_km))

    return judge(
        CHECK,
        reader,
        subject,
        rule=life,
        inputs={
            "mass": on.mass,
            "share": on.share,
            "rating": or_range(f"load rating of {on.bushing.id}", on.bushing.dynamic_load_n, *POSSIBLE_LOAD_N, "N"),
            "hard": hardness,
            "factor": or_typical("load factor of the running", None, LOAD_FACTOR),
        },
        bounds=at_least(float(wanted_km)),
        unit="km",
        because=f"The bushing that carries most has {{load}} of a rating of {{rating}} for "
        f"{on.bushing.life_basis_km} km{beside} on a rod of {{hard}}: {{value}}; {{limit}}.{on.share_words}",
        mend="hardened rods, larger bushings, or one bushing more",
        also={"load": (lambda mass, share, **_: on.on_bushing_n(mass, share), "N")},
    )


CHECK = check_of(
    _run,
    code="ROD-02",
    title="Life of ball bushings",
    source="ISO 14728-1; hardness and load factors: a bushing maker's design guide",
    subjects=level_guides,
    total=MOVING_MASS,
)
