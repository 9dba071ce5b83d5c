"""How loose or tight a shaft may sit in a bore, and the verdict on one pair."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from scantling.build.reader import Reader
from scantling.checks.check import Check
from scantling.checks.inputs import Input
from scantling.checks.judging import judge, say
from scantling.checks.limits import between
from scantling.checks.pairs import pair_of
from scantling.checks.rounds import bore_at, shaft_at
from scantling.findings import Finding, Verdict
from scantling.model.kinds import Coupler
from scantling.model.part import Part
from scantling.tables.check_limits import check_number
from scantling.tables.limits import LARGEST_MM, limits_um
from scantling.tables.sources import cite

CLOSING_RATIO = check_number("closing of a slit")
STRETCH_RATIO = check_number("stretch of a tube")
LEAST_PRESS_UM = check_number("least press")
UM_PER_MM = 1000.0
SOURCE = f"{cite('iso-286')}; a slit or a tube closes by a twentieth of its bore: common practice, no source"


@dataclass(frozen=True)
class Fit:
    """What a fit allows: play in µm, from and to, for a bore of a size; and how a sentence says it."""

    words: str
    range_um: Callable[[float], tuple[float, float]]


def pair_um(bore: str, shaft: str) -> Callable[[float], tuple[float, float]]:
    """Return the function that gives the least and the largest play of two zones at a size."""

    def play(size_mm: float) -> tuple[float, float]:
        size_mm = min(size_mm, LARGEST_MM)
        bore_um, shaft_um = limits_um(size_mm, bore), limits_um(size_mm, shaft)
        return bore_um[0] - shaft_um[1], bore_um[1] - shaft_um[0]

    return play


def named_size_mm(diameter: Input) -> float:
    """Return the size that a diameter is called by: ranges of the standard end at named sizes, not at real ones."""
    return round(diameter.nominal, 1)


FITS = {
    "slides": Fit("to slide on (as H8 on h9)", pair_um("H8", "h9")),
    "locates": Fit("to be centred (as H7 on h6)", pair_um("H7", "h6")),
    "press": Fit(
        "to be pressed on (down to H7 on s6)", lambda size_mm: (pair_um("H7", "s6")(size_mm)[0], LEAST_PRESS_UM)
    ),
    "clamped": Fit("for a slit to close on it", lambda size_mm: (0.0, CLOSING_RATIO * size_mm * UM_PER_MM)),
    "stretched": Fit(
        "for a soft tube to go over it and close on it",
        lambda size_mm: (-STRETCH_RATIO * size_mm * UM_PER_MM, CLOSING_RATIO * size_mm * UM_PER_MM),
    ),
}


def judge_fit(check: Check, reader: Reader, subject: str) -> Finding:
    """Return the finding on the pair of ``subject``; a clamping coupler grips whatever its slit can close on."""
    pair = pair_of(reader.design, subject)
    inner, outer = reader.part(pair.place), reader.part(pair.in_place)
    if inner is None or outer is None:
        empty = pair.place if inner is None else pair.in_place
        return say(check, reader, subject, Verdict.SOUND, f"{empty} stays empty: nothing has to fit.")
    fit = FITS[_grip(outer) or pair.fit]
    bore = bore_at(reader, pair.in_place, outer, pair.in_name)
    return judge(
        check,
        reader,
        subject,
        rule=lambda shaft, bore: (bore - shaft) * UM_PER_MM,
        inputs={"shaft": shaft_at(reader, pair.place, inner, pair.name), "bore": bore},
        bounds=between(*fit.range_um(named_size_mm(bore))),
        unit="µm",
        because=f"{pair.place} of {{shaft}} in {pair.in_place} of {{bore}}: play {{value}}; "
        f"{{limit}} is wanted {fit.words}.",
        mend="take the part with the other bore, or shim the thinner end",
    )


def _grip(outer: Part) -> str:
    """Return the fit that a coupler allows; none for other parts and for set screws."""
    if not isinstance(outer, Coupler) or outer.grip != "clamping":
        return ""
    return "stretched" if outer.body == "tube" else "clamped"
