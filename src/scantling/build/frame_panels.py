"""The panels of a frame: outline, discs where something takes hold, sheet, and where they stand in space."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import hypot

from scantling.build.frame_spots import FLATTEN_MM, Grip, panel_outline
from scantling.build.missing import NotDescribedError, each
from scantling.build.placement import Placed
from scantling.build.reader import Reader
from scantling.build.sizes import feature, origin, size
from scantling.build.typical import density
from scantling.errors import LookUpError
from scantling.formulas.panel_joints import clamp_stiffness_n_mm, clamp_turning_nmm_rad, slip_modulus_n_mm
from scantling.model.frame import FramePanel
from scantling.model.kinds import SheetStock
from scantling.quantities import Figure
from scantling.shapes.elements.frame import Axes, Spring, Vector
from scantling.shapes.elements.plate import Plate
from scantling.shapes.elements.triangulate import Disc
from scantling.tables.materials import Material, material
from scantling.tables.panels import PLAIN_POISSON_RATIO, PanelMaterial, panel_material

ONE_SPOT_MM = 0.5
_ROOM_RATIO = 0.45  # of the way to the next disc, that a disc may take


@dataclass(frozen=True)
class PanelStock:
    """What the panels of a place are made of.

    upright : its grain is known to run along its y; known : along which axis, "" where that is not said
    """

    place: str
    part: SheetStock
    thickness_mm: Figure
    density_kg_m3: Figure
    grain: str

    @property
    def material(self) -> Material | None:
        """Its class in the table, if it is there."""
        try:
            return material(self.part.material, self.thickness_mm.value)
        except LookUpError:
            return None

    @property
    def panel(self) -> PanelMaterial | None:
        """What the table of panels says of it."""
        return panel_material(self.part.material)

    @property
    def along_ratio(self) -> float:
        """Modulus along x over the modulus that is known of it: that of the grain where its run is known."""
        return self._cross_ratio if self.grain == "y" else 1.0

    @property
    def _cross_ratio(self) -> float:
        found = self.material
        if found is None or found.modulus_mpa is None or found.cross_modulus_mpa is None or not self.grain:
            return 1.0
        return found.cross_modulus_mpa.typical / found.modulus_mpa.typical

    def plate(self, discs: tuple[Disc, ...], outline: tuple[tuple[tuple[float, float], ...], ...]) -> Plate:
        """Return the panel as a plate; ``outline`` its boundary, then its windows."""
        poisson_ratio = self._poisson_ratio
        cross_ratio = {"x": self._cross_ratio, "y": 1 / self._cross_ratio}.get(self.grain, 1.0)
        return Plate(outline[0], outline[1:], discs, cross_ratio, self._shear_ratio(poisson_ratio), poisson_ratio)

    @property
    def _poisson_ratio(self) -> float:
        if self.panel is not None:
            return self.panel.poisson_ratio
        found = self.material
        return PLAIN_POISSON_RATIO if found is None or found.poisson_ratio is None else found.poisson_ratio

    def _shear_ratio(self, poisson_ratio: float) -> float:
        """Shear modulus over that along x."""
        plain = 1 / (2 * (1 + poisson_ratio))
        found, given = self.material, self.part.modulus_mpa
        if self.panel is None or self.panel.shear_mpa is None or found is None or found.modulus_mpa is None:
            return plain
        typical = found.modulus_mpa if self.grain else found.cross_modulus_mpa or found.modulus_mpa
        along_mpa = (typical.typical if given is None else given.value) * self.along_ratio
        return self.panel.shear_mpa / along_mpa

    def spring(self, a: int, b: int, at: Vector, axes: Axes, grip: Grip, modulus_mpa: float) -> Spring:
        """Return how a screw through this panel holds a node on it to another; modulus_mpa : where it is alike."""
        thickness_mm, panel = self.thickness_mm.value, self.panel
        through_mpa = modulus_mpa if panel is None or panel.through_mpa is None else panel.through_mpa
        normal = clamp_stiffness_n_mm(through_mpa, grip.washer_mm, thickness_mm)
        slip = normal / (2 * (1 + self._poisson_ratio))
        if panel is not None and panel.fibrous:
            slip = slip_modulus_n_mm(self.density_kg_m3.value, grip.diameter_mm)
        turning = clamp_turning_nmm_rad(normal, grip.washer_mm, thickness_mm)
        return Spring(a, b, at, axes, normal, slip, turning, turning * slip / normal)

    @property
    def usual_mpa(self) -> float:
        """The modulus that joints in a sheet alike all ways are reckoned with."""
        if self.part.modulus_mpa is not None:
            return float(self.part.modulus_mpa.value)
        found = self.material
        return 1000.0 if found is None or found.modulus_mpa is None else found.modulus_mpa.typical


@dataclass(frozen=True)
class SetPanel:
    """A panel in space: its place, its origin and its own axes as rows."""

    place: str
    at: Vector
    axes: Axes

    def point(self, x_mm: float, y_mm: float) -> Vector:
        """Return where a point of the panel is on the machine."""
        x, y = self.axes[0], self.axes[1]
        return tuple(round(o + x_mm * a + y_mm * b, 6) for o, a, b in zip(self.at, x, y, strict=True))  # type: ignore[return-value]


def panel_stock(reader: Reader, place: str, frame: str) -> PanelStock:
    """Return what the panels of a place are made of; raises ``NotDescribedError`` where it is no sheet."""
    part = reader.part(place)
    if not isinstance(part, SheetStock):
        raise NotDescribedError((f"frames.{frame}.panels ({place} as a sheet)",))
    thickness_mm = reader.derive(feature, place, "thickness")
    weight: Figure | None = part.density_kg_m3
    if weight is None:
        weight = density(part.material, f"parts.{part.id}.density", thickness_mm.value)
    sheet = reader.design.sheets.get(place)
    return PanelStock(place, part, thickness_mm, weight, sheet.grain if sheet is not None else "")


def set_panel(reader: Reader, panel: FramePanel) -> SetPanel:
    """Return a panel where it stands."""
    placed: Placed = reader.derive(origin, panel.place)
    shift = (0.0, 0.0, 0.0)
    if panel.shift is not None:
        x, y, z = each(lambda text: reader.derive(size, text).value, panel.shift)
        shift = (x, y, z)
    at = tuple(figure.value + step for figure, step in zip(placed.at, shift, strict=True))
    columns = tuple(tuple(placed.turn[row][column] for row in range(3)) for column in range(3))
    return SetPanel(panel.place, at, columns)  # type: ignore[arg-type]


def panel_plate(reader: Reader, stock: PanelStock, grips: Iterable[Grip]) -> Plate:
    """Return a panel as a plate with one disc for every spot, as wide as the widest washer there."""
    outline = panel_outline(reader, stock.place)
    loops = tuple(tuple(loop.flattened(FLATTEN_MM)) for loop in (outline.boundary, *outline.inner))
    return stock.plate(discs_of(grips), loops)


def discs_of(grips: Iterable[Grip]) -> tuple[Disc, ...]:
    """Return one disc for every spot; none reaches nearly to the middle of the way to the next."""
    found: list[Disc] = []
    for grip in grips:
        at = disc_at(found, grip)
        if at is None:
            found.append(Disc(grip.x_mm, grip.y_mm, grip.washer_mm / 2))
        elif found[at].radius_mm < grip.washer_mm / 2:
            found[at] = replace(found[at], radius_mm=grip.washer_mm / 2)
    return tuple(replace(disc, radius_mm=_room_mm(disc, found)) for disc in found)


def disc_at(discs: Iterable[Disc], grip: Grip) -> int | None:
    """Return which disc a grip sits on; None for none."""
    for number, disc in enumerate(discs):
        if hypot(disc.x_mm - grip.x_mm, disc.y_mm - grip.y_mm) <= ONE_SPOT_MM:
            return number
    return None


def _room_mm(disc: Disc, discs: Iterable[Disc]) -> float:
    ways = [hypot(disc.x_mm - one.x_mm, disc.y_mm - one.y_mm) for one in discs if one is not disc]
    return min([disc.radius_mm, *(_ROOM_RATIO * way for way in ways)])
