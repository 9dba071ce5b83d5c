"""What of an axis gives along its travel besides belt and motor: its guide, which tilts, and the frame it pushes."""

from __future__ import annotations

from scantling.build.axis_loads import guide_geometry, guide_size
from scantling.build.frame_stiffness import FrameStiffness, Tuning, frame_stiffness, joint_stiffness, stock_modulus
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.formulas.binding import pair_compliances_mm_n, twist_stiffness_n_mm
from scantling.formulas.ringing import tilting_stiffness_n_mm
from scantling.formulas.sections import round_second_moment_mm4
from scantling.quantities import Figure

STEEL_MPA = 205_000.0
FREE_ENDS = 0.0  # rods are taken to turn freely at their ends: the unkind way
LEAST_ARM_MM = 0.1


def tilting_stiffness(reader: Reader, axis: str) -> Figure | None:
    """Return how stiff in N/mm the rods hold a carriage that its drive pulls beside the guide's middle.

    None where the guide is not described so far, where its rods move, and where no rod has two bushings.
    """
    guide = reader.design.axes[axis].guide
    if guide is None or guide.offset_mm is None or guide.moving_rods:
        return None
    geometry = reader.derive(guide_geometry, axis)
    pairs = min(geometry.rods, geometry.bearings - geometry.rods)
    arm_mm = abs(reader.derive(guide_size, axis, "offset").value)
    try:
        free_mm = reader.derive(guide_size, axis, "free").value
        apart_mm = reader.derive(guide_size, axis, "spacing").value
        diameter_mm = reader.derive(feature, guide.rods, "diameter").value
    except NotDescribedError:
        return None
    if pairs < 1 or arm_mm < LEAST_ARM_MM or apart_mm >= free_mm:
        return None
    beam = free_mm, STEEL_MPA, round_second_moment_mm4(diameter_mm), FREE_ENDS
    bushing_n_mm = twist_stiffness_n_mm(pair_compliances_mm_n(free_mm / 2, apart_mm, *beam))
    return Figure.exact(tilting_stiffness_n_mm(bushing_n_mm, pairs, apart_mm, arm_mm))


def pushed_frame_stiffness(reader: Reader, axis: str) -> Figure | None:
    """Return how stiff in N/mm the frame stands where an axis pushes it: as it says, else by the frame's reckoning.

    None where neither is described. The band is that of joints and sheets all soft or all stiff.
    """
    given: Figure | None = reader.design.axes[axis].frame_stiffness_n_mm
    if given is not None:
        return given
    for name, frame in reader.design.frames.items():
        if any(push.axis == axis for push in frame.pushes):
            try:
                return _reckoned(reader, name, axis)
            except NotDescribedError:
                return None
    return None


def _reckoned(reader: Reader, name: str, axis: str) -> Figure:
    found: FrameStiffness = reader.derive(frame_stiffness, name)
    number = next(k for k, push in enumerate(found.setup.pushes) if push.axis == axis)
    joints: Figure = reader.derive(joint_stiffness, name)
    moduli = [stock_modulus(stock) or Figure.exact(1000.0) for stock in found.stocks]
    thick = [stock.thickness_mm for stock in found.stocks]
    ends = [
        Tuning(tuple(getattr(m, end) for m in moduli), tuple(getattr(t, end) for t in thick), getattr(joints, end))
        for end in ("value", "low", "high")
    ]
    value, low, high = (1 / found.pushed(tuning)[number].moved_mm for tuning in ends)
    return Figure(value, low, high, joints.grade)
