"""How a frame gives and swings, by the moduli and thicknesses of its sheets and the stiffness of its joints."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import sqrt

from scantling.build.case import Case
from scantling.build.frame_panels import PanelStock
from scantling.build.frame_setup import FrameSetup, frame_setup
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Catalogue, Reader
from scantling.build.reference import carry_over, reference_build
from scantling.model.place import Place
from scantling.model.workshop import MeasuredPush
from scantling.quantities import Figure, Grade
from scantling.shapes.elements.frame import Frame, Mode, Parts, Pushed, Sheet
from scantling.shapes.elements.kept import reduced_data, reduced_from
from scantling.shapes.elements.plate import Plate, Reduced
from scantling.shapes.elements.unfit import UnfitFrameError
from scantling.shapes.outline import polygon_loop
from scantling.tables.check_limits import check_limit

SIZES_IN_PANEL = 8  # sides of a triangle along a panel's width, its root of area; the finer mesh has twice as many
MODES = 3
T_MM3_PER_KG_M3 = 1e-12
LEAST_JOINTS_RATIO, MOST_JOINTS_RATIO = 0.01, 100.0  # between which a measured push is explained by joints
UNKNOWN_MPA = 1000.0  # stands for a modulus that is not known where only a number will do
_HALVINGS = 40


@dataclass(frozen=True)
class Tuning:
    """What a frame's answer hangs on, by part: moduli and thicknesses; and by how much all joints are stiffer."""

    moduli_mpa: tuple[float, ...]
    thicknesses_mm: tuple[float, ...]
    joints_ratio: float


class FrameStiffness:
    """A frame ready to be asked for any sheets and joints.

    setup : what it is    stocks : one for every different part of its sheets, in their order
    """

    def __init__(self, setup: FrameSetup, fine: Parts, coarse: Parts) -> None:
        """Ask of two meshes, the coarse one only to see how much the mesh matters."""
        self.setup, self._fine, self._coarse = setup, fine, coarse
        self.areas_mm2 = fine.areas_mm2
        parts = {stock.part.id: stock for stock in setup.stocks}
        self.stocks = tuple(parts.values())
        self._which = [list(parts).index(stock.part.id) for stock in setup.stocks]
        self.pushed = lru_cache(maxsize=512)(self._pushed)
        self.modes = lru_cache(maxsize=64)(self._modes)

    def usual(self, joints_ratio: float) -> Tuning:
        """Return the tuning at nominal figures; a modulus that is not known counts 1000 MPa."""
        moduli = [stock_modulus(stock) for stock in self.stocks]
        known = tuple(UNKNOWN_MPA if figure is None else figure.value for figure in moduli)
        return Tuning(known, tuple(stock.thickness_mm.value for stock in self.stocks), joints_ratio)

    def frame(self, tuning: Tuning, coarse: bool = False) -> Frame:
        """Return the frame itself for a tuning."""
        return Frame(self._coarse if coarse else self._fine, self._sheets(tuning), tuning.joints_ratio)

    def _pushed(self, tuning: Tuning, coarse: bool = False) -> tuple[Pushed, ...]:
        """Return what a newton does at every push."""
        frame = self.frame(tuning, coarse)
        return tuple(frame.pushed(push.nodes, push.along, 1.0) for push in self.setup.pushes)

    def _modes(self, tuning: Tuning, coarse: bool = False) -> tuple[Mode, ...]:
        """Return the slowest ways of swinging."""
        return self.frame(tuning, coarse).modes(MODES)

    def mesh_ratio(self, tuning: Tuning, push: int) -> float:
        """Return by what share triangles of half the size change the give under a push."""
        fine, coarse = (self.pushed(tuning, coarse)[push].moved_mm for coarse in (False, True))
        return abs(fine / coarse - 1)

    def joints_for(self, moved_mm_n: float, push: int = 0) -> float:
        """Return by how much joints are stiffer than reckoned where a push moves the frame so far.

        At the ends of what is searched where no stiffness of the joints explains it.
        """
        low, high = LEAST_JOINTS_RATIO, MOST_JOINTS_RATIO
        for _ in range(_HALVINGS):
            middle = sqrt(low * high)
            stiff = self.pushed(self.usual(middle))[push].moved_mm < moved_mm_n
            low, high = (low, middle) if stiff else (middle, high)
        return sqrt(low * high)

    def _sheets(self, tuning: Tuning) -> tuple[Sheet, ...]:
        return tuple(
            Sheet(
                tuning.moduli_mpa[which] * stock.along_ratio,
                tuning.thicknesses_mm[which],
                stock.density_kg_m3.value * T_MM3_PER_KG_M3,
            )
            for which, stock in zip(self._which, self.setup.stocks, strict=True)
        )


def frame_stiffness(reader: Reader, name: str) -> FrameStiffness:
    """Return a frame of the design, cut into triangles; raises ``NotDescribedError`` where it cannot be reckoned."""
    setup = reader.derive(frame_setup, name)
    try:
        fine, coarse = (
            Parts(setup.model, [_reduced(reader, plate, parts) for plate in setup.plates], len(setup.stocks))
            for parts in (2 * SIZES_IN_PANEL, SIZES_IN_PANEL)
        )
        found = FrameStiffness(setup, fine, coarse)
        found.pushed(found.usual(1.0))
    except UnfitFrameError as error:
        raise NotDescribedError((f"frames.{name} (as one that can be reckoned: {error})",)) from None
    return found


def joint_stiffness(reader: Reader, name: str) -> Figure:
    """Return how much stiffer than reckoned a frame's joints are: measured by a push, as described, or usual."""
    if _push_on(reader.case, name) is not None:
        return reader.case.once(_fitted, name)
    given: Figure | None = reader.design.frames[name].joint_stiffness
    return check_limit("stiffness of joints") if given is None else given


def known_moduli(reader: Reader, name: str) -> tuple[Figure | None, ...]:
    """Return the modulus of every different sheet of a frame in MPa, None where it is not known.

    Of the sheet that was pushed on without a band: modulus and joints are known together, and the joints carry it.
    """
    frame: FrameStiffness = reader.derive(frame_stiffness, name)
    push = _push_on(reader.case, name)
    pushed = None if push is None else push.part or _judged(reader.case, name).reference.part
    found = []
    for stock in frame.stocks:
        modulus = stock_modulus(stock)
        is_pushed = modulus is not None and stock.part.id == pushed
        found.append(Figure.exact(modulus.value) if modulus is not None and is_pushed else modulus)
    return tuple(found)


def _push_on(case: Catalogue, name: str) -> MeasuredPush | None:
    return next((one for one in case.project.workshop.pushed if one.frame == name), None)


def _judged(case: Catalogue, name: str) -> Place:
    return case.project.design.places[case.project.design.frames[name].panel]


def _fitted(case: Case, name: str) -> Figure:
    """The joints that explain a measured push, on a frame of the sheet that was pushed, all else as in the design."""
    push = _push_on(case, name)
    assert push is not None
    build = reference_build(case)
    if push.part is not None:
        key = case.part_key(case.project.design.frames[name].panel)
        if push.part not in case.answers(key, {}):
            raise NotDescribedError((f"pushed (a part of {name} that its panel may be of, not {push.part})",))
        build = carry_over(case, build, {key: push.part})
    frame = case.reader(build).derive(frame_stiffness, name)
    moved = push.moved_mm
    value, high, low = (frame.joints_for(end / push.force_n.value) for end in (moved.value, moved.low, moved.high))
    return Figure(value, min(low, value), max(high, value), Grade.MEASURED, "push on the frame")


def stock_modulus(stock: PanelStock) -> Figure | None:
    """Return the modulus of a sheet in MPa, across its grain unless that is known to run; None where none is known."""
    given: Figure | None = stock.part.modulus_mpa
    found = stock.material
    if given is not None or found is None:
        return given
    band = found.modulus_mpa if stock.grain else found.cross_modulus_mpa
    return None if band is None else Figure(band.typical, band.low, band.high, Grade.TYPICAL, found.name)


def mass_by_part(frame: FrameStiffness) -> Mapping[str, float]:
    """Return the mass in kg of the panels of a frame, by place."""
    found: dict[str, float] = {}
    for panel, described in zip(frame.setup.model.panels, frame.setup.panels, strict=True):
        stock, area_mm2 = frame.setup.stocks[panel.sheet], frame.areas_mm2[panel.plate]
        mass_kg = area_mm2 * stock.thickness_mm.value * stock.density_kg_m3.value * 1e-9
        found[described.place] = found.get(described.place, 0.0) + mass_kg
    return found


def _reduced(reader: Reader, plate: Plate, parts: int) -> Reduced:
    return reduced_from(reader.kept(reduced_data, plate, triangle_mm(plate, parts)))


def triangle_mm(plate: Plate, parts: int) -> float:
    """Return the size of triangles for a panel."""
    loops = (plate.boundary, *plate.windows)
    outer, *inner = (polygon_loop(list(loop)).area_mm2 for loop in loops)
    return float(f"{sqrt(outer - sum(inner)) / parts:.4g}")
