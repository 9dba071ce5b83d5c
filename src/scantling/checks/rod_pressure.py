"""Does a rod stand the pressure of the balls that run on it? A life formula alone calls soft rods sound.

Hertz's pressure under the ball that carries most against what steel of the rod's hardness stands: hardened, from 40 HRC
up, until a ball begins to leave a mark (its life is another check's); not hardened, only what it bears pass after pass
before it pits and grooves. Plain linings spread their load and spare even soft rods.
"""

from __future__ import annotations

from functools import cache

from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.guide_loads import guided, level_guides
from scantling.checks.inputs import known, or_typical
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.materials import hardness_input
from scantling.checks.rule import check_of
from scantling.findings import Finding, Verdict
from scantling.formulas.bushings import most_loaded_ball_n
from scantling.formulas.contact import (
    ball_on_shaft_pressure_mpa,
    contact_modulus_mpa,
    first_yield_pressure_mpa,
    yield_from_hardness_mpa,
)
from scantling.quantities import Figure
from scantling.tables.check_limits import check_number

BALL_ROWS = 4  # of bushings up to 16 mm
BALLS_IN_ROW = Figure(5.0, 4.0, 8.0)  # that touch at once, from the length of small bushings (from memory)
USUAL_BALL_MM = Figure(1.5, 1.2, 1.6)  # of bushings for rods of 6 to 10 mm (from memory)
CONTACT_MPA = contact_modulus_mpa(205_000.0, 0.3, 205_000.0, 0.3)
GPA = 1e-3
# Softest steel that counts as hardened: bushing makers publish worked lives from 40 HRC, 392 HV, up.
HARDENED_HV = check_number("hardened from")
# Pressure that steel which is not hardened bears for ever: its hardness in HV and this, in MPa (ISO 6336-5 for wrought
# normalised steel, tooth flanks, hardness up to about 210 HV; from memory). Rolling balls are much the same to it.
PITTING_MPA = check_number("pitting of soft steel")


def _run(reader: Reader, subject: str) -> Finding:
    on = guided(reader, subject)
    if on.bushing.lining != "ball":
        because = f"A {on.bushing.lining} lining spreads its load over an area: soft rods will do."
        return say(CHECK, reader, subject, Verdict.SOUND, because)
    diameter = reader.derive(feature, on.guide.rods, "diameter")

    def pressure(mass: float, share: float, ball: float, balls: float, diameter: float, **_: float) -> float:
        one_n = on_ball_n(on.on_bushing_n(mass, share), balls)
        return float(GPA * one_n ** (1 / 3) * pressure_of_one_n_mpa(ball, diameter))

    hardness = hardness_input(on.rod)
    words = (
        "yields above its limit" if hardness.nominal >= HARDENED_HV else "is not hardened and grooves above its limit"
    )
    return judge(
        CHECK,
        reader,
        subject,
        rule=pressure,
        inputs={
            "mass": on.mass,
            "share": on.share,
            "ball": or_typical(f"balls of {on.bushing.id}", on.bushing.ball_diameter_mm, USUAL_BALL_MM, "mm"),
            "balls": or_typical("balls of a row that carry", None, BALLS_IN_ROW),
            "diameter": known("diameter of the rods", diameter, "mm"),
            "hardness": hardness,
        },
        bounds=at_most(lambda hardness, **_: GPA * stands_mpa(hardness)),
        unit="GPa",
        because="The bushing that carries most presses with {load}, its busiest ball of {ball} with {one}: {value} on "
        "a rod of {hardness}, which " + words + "; {limit}." + on.share_words,
        mend="hardened and ground rods, or polymer bushings on the soft ones",
        also={
            "load": (lambda mass, share, **_: on.on_bushing_n(mass, share), "N"),
            "one": (lambda mass, share, balls, **_: on_ball_n(on.on_bushing_n(mass, share), balls), "N"),
        },
    )


def stands_mpa(hardness_hv: float) -> float:
    """Return the pressure that steel of a hardness stands under balls that pass for ever."""
    yields_mpa = first_yield_pressure_mpa(yield_from_hardness_mpa(hardness_hv))
    return yields_mpa if hardness_hv >= HARDENED_HV else min(yields_mpa, hardness_hv + PITTING_MPA)


@cache
def pressure_of_one_n_mpa(ball_mm: float, diameter_mm: float) -> float:
    """Return the pressure under a ball that carries 1 N; pressures grow with the cube root of the load."""
    return ball_on_shaft_pressure_mpa(1.0, ball_mm, diameter_mm, CONTACT_MPA)


def on_ball_n(load_n: float, balls: float) -> float:
    """Return the load of the busiest ball of a bushing."""
    return most_loaded_ball_n(load_n, BALL_ROWS, 1) / balls


CHECK = check_of(
    _run,
    code="ROD-03",
    title="Pressure of balls on the rod",
    source="Hertz contact; first yield at 1.60 times the yield strength, a third of the hardness (contact mechanics); "
    "pitting of steel that is not hardened: ISO 6336-5 (from memory)",
    subjects=level_guides,
    total=MOVING_MASS,
)
