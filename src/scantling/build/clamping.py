"""How tight a joint may be drawn: the weakest of screw, thread and what lies under head and nut governs."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.clamped import SOFT_HOLDS, Held, material_at, metal_yield_mpa, pressed, soft_thread
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.screw_fit import screw_fit
from scantling.formulas import clamping, holding, threads
from scantling.model.joint import Joint
from scantling.tables.bands import Band
from scantling.tables.clamp_limits import clamp_band
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.frictions import friction
from scantling.tables.property_classes import PropertyClass, property_class
from scantling.tables.threads import Thread, thread

# The lowest classes that are sold, metric and inch, taken where a joint names none.
LOWEST_GRADE = {False: "4.8", True: "grade 1"}
Member = tuple[float, str]


@dataclass(frozen=True)
class Tightening:
    """How tight a joint may be drawn.

    weakest : what governs, in words    screw_nmm : what the screw itself would take    grade : its property class
    """

    torque_nmm: float
    clamp_n: float
    weakest: str
    screw_nmm: float
    grade: str

    @property
    def is_screw(self) -> bool:
        """True where the screw itself is the weakest."""
        return self.torque_nmm >= self.screw_nmm


def tightening(reader: Reader, joint: str) -> Tightening:
    """Return how tight a joint may be drawn: every member at the low end of what it bears, usual friction.

    Members that are not described are left out; the screw always counts.
    """
    described = reader.design.joints[joint]
    found = joint_thread(described)
    grade = grade_of(described)
    screw_n = clamping.reusable_clamp_n(stress_area_mm2(found), grade.proof_mpa)
    members = [(screw_n, f"the screw itself ({grade.name})"), *_faces(reader, joint), *_thread(reader, joint)]
    clamp_n, weakest = min(members, key=lambda member: member[0])
    factor = nut_factor(found, screw_friction().typical)
    torque_nmm, screw_nmm = (clamping.tightening_torque_nmm(n, found.major_mm, factor) for n in (clamp_n, screw_n))
    return Tightening(torque_nmm, clamp_n, weakest, screw_nmm, grade.name)


def joint_thread(described: Joint) -> Thread:
    """Return the thread of a joint's screw."""
    return thread(head_and_thread(described.screw)[1])


def grade_of(described: Joint) -> PropertyClass:
    """Return the property class of a joint's screw, the lowest that is sold where it names none."""
    return property_class(described.grade or LOWEST_GRADE[joint_thread(described).is_inch])


def stress_area_mm2(found: Thread) -> float:
    """Return the section of a screw that carries its pull."""
    area = threads.unified_stress_area_mm2 if found.is_inch else threads.metric_stress_area_mm2
    return area(found.major_mm, float(found.pitch_mm))


def screw_friction() -> Band:
    """Return the friction of dry steel screws, in the thread and under the head."""
    return friction("dry steel bolt").friction_ratio


def nut_factor(found: Thread, friction_ratio: float) -> float:
    """Return torque over clamp load and diameter for a thread, with the same friction under its head."""
    pitch_mm = float(found.pitch_mm)
    return clamping.nut_factor_ratio(found.major_mm, pitch_mm, found.pitch_diameter_mm, friction_ratio, friction_ratio)


def scatter_of(one: Held) -> Band:
    """Return how far a single thread lies from its formula."""
    knurled = one.holds == "insert" and not one.limit.is_wood
    return clamp_band("hold of a knurl in plastic" if knurled else "scatter of a thread in wood")


def lowest_pull_out_n(one: Held) -> float:
    """Return the pull-out of a thread with every figure at its low end."""
    dense = one.density_kg_m3.low if one.density_kg_m3 is not None else 0.0
    shear_mpa = one.limit.shear_mpa.low if one.limit.shear_mpa is not None else 0.0
    return scatter_of(one).low * one.pull_out_n(one.depth_mm.low, dense, one.limit.pressure_mpa.low, shear_mpa)


def _faces(reader: Reader, joint: str) -> list[Member]:
    try:
        faces = reader.derive(pressed, joint)
    except NotDescribedError:
        return []
    return [(f.limit.pressure_mpa.low * f.area_mm2, f"{f.limit.material} under {f.by}") for f in faces]


def _thread(reader: Reader, joint: str) -> list[Member]:
    described = reader.design.joints[joint]
    if described.into.nut is not None:
        return []
    try:
        if described.into.holds == "insert":
            return []  # what is drawn up rests on the insert itself
        if described.into.holds in SOFT_HOLDS:
            one = reader.derive(soft_thread, joint)
            return [(lowest_pull_out_n(one), f"the thread in {one.limit.material}")]
        return _tapped(reader, joint, described)
    except NotDescribedError:
        return []


def _tapped(reader: Reader, joint: str, described: Joint) -> list[Member]:
    """A thread tapped in metal, where it is said in which."""
    name = material_at(reader, described.into.place) if described.into.place is not None else None
    yield_mpa = metal_yield_mpa(name) if name is not None else None
    if yield_mpa is None:
        return []
    engaged_mm = reader.derive(screw_fit, joint, reader.screw(joint).id).engagement_mm.low
    shear_mpa = holding.shear_strength_mpa(yield_mpa)
    pull_n = holding.tapped_pull_out_n(joint_thread(described).major_mm, engaged_mm, shear_mpa)
    return [(pull_n, f"the thread in {name}")]
