"""How much a crooked screw swings the guide sideways, once a turn: ribs on all that is made.

A screw is never quite straight. Held at both ends it swings its nut round, and where the nut cannot shift in its seat
screw and guide share the swing as two springs. With its top free and a coupler that bends it follows the nut instead.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.axis_loads import guide_geometry, guide_size
from scantling.build.drives import screw_drive
from scantling.build.missing import NotDescribedError, gather, need
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding
from scantling.formulas.sections import round_second_moment_mm4
from scantling.formulas.wobble import beside_mm, bow_mm, sideways_stiffness_n_mm, transferred_mm
from scantling.model.axis import ScrewAxis
from scantling.model.kinds import Coupler
from scantling.tables.motion_limits import motion_limit
from scantling.tables.sources import cite

ENDS = {
    "fixed-free": ("clamped", "free"),
    "supported-supported": ("pinned", "pinned"),
    "fixed-supported": ("clamped", "pinned"),
    "fixed-fixed": ("clamped", "clamped"),
}
HELD_TOP = (
    " For every tenth of a millimetre that its top is held beside the guide, the guide bends {pushed} near the top."
)
GUIDE_ENDS = {"supported": "pinned", "clamped": "clamped"}
_PLACES = tuple(step / 10 for step in range(1, 10))  # of the free length where the nut may stand
_MISPLACED_MM = 0.1  # by which the top of a screw may be held beside its guide, to show what a tenth does
_ALIKE_MPA = 1.0  # screw and rods are both of steel, so their modulus cancels


@dataclass(frozen=True)
class Swinging:
    """A screw beside the rods that guide its nut: how both are held, and rods for each screw."""

    low: str
    top: str
    rod_ends: str
    rods_each: float

    def swing_mm(self, root: float, free: float, bow: float, give: float, rod: float, span: float) -> float:
        """Return the largest swing that arrives at the guide, wherever the nut stands."""
        if self.is_led:
            return 0.0
        bowed_mm, found = bow_mm(bow, free), 0.0
        for place in _PLACES:
            beside = beside_mm(self.low, self.top, bowed_mm, place * free, free)
            found = max(found, transferred_mm(beside, give, *self._stiffness(place, root, free, rod, span)))
        return found

    def pushed_mm(self, root: float, free: float, give: float, rod: float, span: float, **_: float) -> float:
        """Return how far a top that is held ``_MISPLACED_MM`` beside the guide bends it, the nut near the top."""
        place = _PLACES[-1]
        return transferred_mm(_MISPLACED_MM * place, give, *self._stiffness(place, root, free, rod, span))

    @property
    def is_led(self) -> bool:
        """True where nothing but its nut holds the top of the screw and its low end can tilt."""
        return (self.low, self.top) == ("pinned", "free")

    def _stiffness(self, place: float, root: float, free: float, rod: float, span: float) -> tuple[float, float]:
        """Return the sideways stiffness of screw and guide at a share of their lengths, for a modulus of 1."""
        screw_mm4, rod_mm4 = round_second_moment_mm4(root), round_second_moment_mm4(rod)
        screw_n_mm = sideways_stiffness_n_mm(self.low, self.top, place * free, free, _ALIKE_MPA, screw_mm4)
        ends = self.rod_ends, self.rod_ends
        guide_n_mm = self.rods_each * sideways_stiffness_n_mm(*ends, place * span, span, _ALIKE_MPA, rod_mm4)
        return screw_n_mm, guide_n_mm


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    guide = need(axis.guide, f"axes.{name}.guide")
    if guide.moving_rods:
        raise NotDescribedError((f"axes.{name}.guide (rods that stand still)",))
    drive, geometry = reader.derive(screw_drive, name), reader.derive(guide_geometry, name)
    free, span, rod = gather(
        lambda: need(drive.free_mm, f"axes.{name}.free"),
        lambda: reader.derive(guide_size, name, "free"),
        lambda: reader.derive(feature, guide.rods, "diameter"),
    )
    low, top = ENDS[axis.ends]
    bends = coupler_bends(reader, axis)
    swinging = Swinging("pinned" if bends else low, top, GUIDE_ENDS[guide.ends], geometry.rods / max(1, drive.screws))
    return judge(
        CHECK,
        reader,
        subject,
        rule=swinging.swing_mm,
        inputs={
            "root": known("root of the screw", drive.thread.minor_diameter_mm, "mm"),
            "free": known("free length of the screw", free, "mm"),
            "bow": known(f"bow of {axis.screw} on 300 mm", drive.bow_300_mm, "mm"),
            "give": known("what the nut shifts in its seat", drive.float_mm, "mm"),
            "rod": known("diameter of the rods", rod, "mm"),
            "span": known("free length of the rods", span, "mm"),
        },
        bounds=at_most(motion_limit("wobble").amount),
        unit="mm",
        because=f"{drive.thread.name} with a bow of {{bow}} on 300 mm, {_held(axis, bends)}, in a nut that "
        f"{'cannot shift' if drive.float_mm.high <= 0 else 'shifts by {give}'}, swings rods of {{rod}} by {{value}} "
        f"each turn; {{limit}}.{'' if top == 'free' else HELD_TOP}",
        mend="leave the top of the screw free on a coupler that bends, let the nut shift in its seat, a thinner or "
        "straighter screw, or thicker rods: roll the screw on a flat plate",
        also={"pushed": (swinging.pushed_mm, "mm")},
    )


def coupler_bends(reader: Reader, axis: ScrewAxis) -> bool:
    """Return whether the coupler lets the screw tilt; one of which nothing is said is taken as rigid."""
    coupler = None if axis.coupler is None else reader.part(axis.coupler)
    return isinstance(coupler, Coupler) and coupler.body in ("bending", "tube")


def _held(axis: ScrewAxis, bends: bool) -> str:
    if bends and axis.ends == "fixed-free":
        return "its top free, on a coupler that bends, so that it follows its nut"
    return f"held {axis.ends}" + (
        " on a coupler that bends" if bends else " on a stiff coupler" if axis.coupler else ""
    )


CHECK = check_of(
    _run,
    code="SCREW-09",
    title="Wobble of a screw at the guide",
    source=f"beam tables, two springs that share a bow; {cite('screw-makes')}, {cite('threaded-rod-makes')}; "
    f"limit: {cite('motion-practice')}",
    subjects=screw_axes,
)
