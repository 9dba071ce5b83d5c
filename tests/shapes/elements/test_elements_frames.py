"""Bars, joints and panels together against a reference library for frames: within 1 %."""

from __future__ import annotations

from math import pi

import numpy as np
import pytest
from Pynite import FEModel3D

from scantling.shapes.elements.bars import Section
from scantling.shapes.elements.frame import GROUND, Bar, Frame, Model, Panel, Parts, Sheet, Spring
from scantling.shapes.elements.plate import Plate, reduce_plate
from scantling.shapes.elements.triangulate import Disc
from scantling.shapes.elements.unfit import UnfitFrameError

ONE_PERCENT = 0.01
UPRIGHT = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
STEEL = Section(50.27, 201.06, 201.06, 402.12, 205_000.0, 78_850.0, 7.85e-9)
FLAT = Section(160.0, 213.3, 5333.0, 750.0, 70_000.0, 26_300.0, 2.7e-9)
FIRM = 1e9


def firm(node: int, at: tuple[float, float, float]) -> Spring:
    """Hold a node in all six freedoms."""
    return Spring(node, GROUND, at, UPRIGHT, FIRM, FIRM, FIRM * 100, FIRM * 100)


def reference(points, bars) -> FEModel3D:
    """The same bars in the reference library; its axes of an upright bar are others, so sections there are round."""
    model = FEModel3D()
    for number, point in enumerate(points):
        model.add_node(f"N{number}", *point)
    for number, (a, b, s) in enumerate(bars):
        model.add_material(f"M{number}", s.modulus_mpa, s.shear_mpa, 0.3, s.density_t_mm3)
        model.add_section(f"S{number}", s.area_mm2, s.second_y_mm4, s.second_z_mm4, s.torsion_mm4)
        model.add_member(f"B{number}", f"N{a}", f"N{b}", f"M{number}", f"S{number}")
    return model


# Source: PyNiteFEA (MIT), linear analysis of the same frames; y is upright there, so sections are round or only bent
#   about the axis that both programs mean.
@pytest.mark.outside
class TestBars:
    POINTS = (
        (0, 0, 0),
        (300, 0, 0),
        (300, 200, 0),
        (0, 200, 0),
        (0, 0, 250),
        (300, 0, 250),
        (300, 200, 250),
        (0, 200, 250),
    )
    LINKS = ((0, 4), (1, 5), (2, 6), (3, 7), (4, 5), (5, 6), (6, 7), (7, 4))

    # Source: PyNiteFEA, the same cage
    @pytest.mark.parametrize("way", [(1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)])
    def test_a_cage_of_rods(self, way):
        points = tuple(tuple(float(c) for c in point) for point in self.POINTS)
        model = Model(
            points, (), tuple(Bar(a, b, STEEL) for a, b in self.LINKS), tuple(firm(k, points[k]) for k in range(4)), ()
        )
        moved = Frame(Parts(model, [], 0), [], 1.0).pushed((5,), way, 25.0).moved_mm
        other = reference(points, [(a, b, STEEL) for a, b in self.LINKS])
        for k in range(4):
            other.def_support(f"N{k}", *[True] * 6)
        name = "XYZ"[way.index(1.0)]
        other.add_node_load("N5", f"F{name}", 25.0)
        other.analyze_linear()
        assert moved == pytest.approx(getattr(other.nodes["N5"], f"D{name}")["Combo 1"], rel=ONE_PERCENT)

    # Source: PyNiteFEA, the same bars
    def test_a_cranked_flat_bar(self):
        points = ((0.0, 0.0, 0.0), (200.0, 0.0, 0.0), (200.0, 150.0, 0.0))
        bars = ((0, 1), (1, 2))
        model = Model(points, (), tuple(Bar(a, b, FLAT) for a, b in bars), (firm(0, points[0]),), ())
        moved = Frame(Parts(model, [], 0), [], 1.0).pushed((2,), (0.0, 0.0, 1.0), 5.0).moved_mm
        turned = tuple((x, z, -y) for x, y, z in points)  # y upright
        flat = Section(
            FLAT.area_mm2, FLAT.second_z_mm4, FLAT.second_y_mm4, FLAT.torsion_mm4, FLAT.modulus_mpa, FLAT.shear_mpa, 0.0
        )
        other = reference(turned, [(a, b, flat) for a, b in bars])
        other.def_support("N0", *[True] * 6)
        other.add_node_load("N2", "FY", 5.0)
        other.analyze_linear()
        assert moved == pytest.approx(other.nodes["N2"].DY["Combo 1"], rel=ONE_PERCENT)

    # Source: beam tables, F L³ / (3 E I), with a turning spring in series, F L² / k
    def test_a_joint_that_turns(self):
        points = ((0.0, 0.0, 0.0), (0.0, 0.0, 0.0), (200.0, 0.0, 0.0))
        soft = Spring(0, 1, points[0], UPRIGHT, FIRM, FIRM, 2e6, 2e6)
        model = Model(points, (), (Bar(1, 2, STEEL),), (firm(0, points[0]), soft), ())
        pushed = Frame(Parts(model, [], 0), [], 1.0).pushed((2,), (0.0, 0.0, 1.0), 10.0)
        bent, turned = 10 * 200**3 / (3 * 205_000 * 201.06), 10 * 200**2 / 2e6  # beam tables; a spring in series
        assert pushed.moved_mm == pytest.approx(bent + turned, rel=1e-4)
        assert pushed.joints_ratio == pytest.approx(turned / (bent + turned), rel=1e-3)
        assert pushed.bars_ratio + pushed.joints_ratio + pushed.panels_ratio == pytest.approx(1)


@pytest.mark.outside
class TestPanelsAndBars:
    """A panel pinned on four rods that stand clamped, pushed in its middle: downwards it bends, sideways the rods do.

    Pinned, for a moment at a point of a thin plate turns it the more the finer it is cut; discs are there for that.
    """

    CORNERS = ((20.0, 20.0), (180.0, 20.0), (180.0, 130.0), (20.0, 130.0))
    MIDDLE = (100.0, 75.0)
    SIDE_MM, HIGH_MM = 5.0, 120.0

    def ours(self, way) -> float:
        discs = tuple(Disc(x, y, 0.5) for x, y in (*self.CORNERS, self.MIDDLE))
        plate = Plate(((0.0, 0.0), (200.0, 0.0), (200.0, 150.0), (0.0, 150.0)), (), discs, 1.0, 1 / 2.6, 0.3)
        on_panel = [(x, y, self.HIGH_MM) for x, y in (*self.CORNERS, self.MIDDLE)]
        top, foot = on_panel[:4], [(x, y, 0.0) for x, y in self.CORNERS]
        pins = tuple(Spring(k, k + 5, top[k], UPRIGHT, FIRM, FIRM, 0.0, 0.0) for k in range(4))
        model = Model(
            (*on_panel, *top, *foot),
            (Panel(0, (0, 1, 2, 3, 4), UPRIGHT, 0),),
            tuple(Bar(k + 9, k + 5, STEEL) for k in range(4)),
            (*pins, *(firm(k + 9, foot[k]) for k in range(4))),
            (),
        )
        parts = Parts(model, [reduce_plate(plate, 6.0)], 1)
        return Frame(parts, [Sheet(3_000.0, 4.0, 0.0)], 1.0).pushed((4,), way, 10.0).moved_mm

    def theirs(self, name: str) -> float:
        model = FEModel3D()
        model.add_material("panel", 3_000.0, 3_000.0 / 2.6, 0.3, 0.0)
        columns, rows = 40, 30
        for i in range(columns + 1):
            for j in range(rows + 1):
                model.add_node(f"P{i}.{j}", i * self.SIDE_MM, j * self.SIDE_MM, self.HIGH_MM)
        for i in range(columns):
            for j in range(rows):
                corners = (f"P{i}.{j}", f"P{i + 1}.{j}", f"P{i + 1}.{j + 1}", f"P{i}.{j + 1}")
                model.add_quad(f"Q{i}.{j}", *corners, 4.0, "panel")
        model.add_material("steel", STEEL.modulus_mpa, STEEL.shear_mpa, 0.3, 0.0)
        model.add_section("rod", STEEL.area_mm2, STEEL.second_y_mm4, STEEL.second_z_mm4, STEEL.torsion_mm4)
        for number, (x, y) in enumerate(self.CORNERS):
            foot, rod = f"F{number}", f"B{number}"
            model.add_node(foot, x, y, 0.0)
            model.def_support(foot, *[True] * 6)
            model.add_member(rod, foot, self.node((x, y)), "steel", "rod")
            model.def_releases(rod, Rxj=True, Ryj=True, Rzj=True)
        model.add_node_load(self.node(self.MIDDLE), f"F{name}", 10.0)
        model.analyze_linear()
        return float(getattr(model.nodes[self.node(self.MIDDLE)], f"D{name}")["Combo 1"])

    def node(self, at: tuple[float, float]) -> str:
        return f"P{round(at[0] / self.SIDE_MM)}.{round(at[1] / self.SIDE_MM)}"

    # Source: PyNiteFEA, quadrilaterals of 5 mm on the same rods
    @pytest.mark.parametrize(("way", "name"), [((1.0, 0.0, 0.0), "X"), ((0.0, 0.0, 1.0), "Z")])
    def test_pushed_in_the_middle(self, way, name):
        assert self.ours(way) == pytest.approx(self.theirs(name), rel=ONE_PERCENT)


class TestSwinging:
    # Source: beam tables, a mass on a light cantilever: ω² = 3 E I / (m L³); 3 · 205000 · 201.06 / 200³ = 15.456 N/mm
    @pytest.mark.outside
    def test_a_mass_on_a_cantilever(self):
        light = Section(50.27, 201.06, 402.12, 402.12, 205_000.0, 78_850.0, 0.0)
        points = ((0.0, 0.0, 0.0), (200.0, 0.0, 0.0))
        model = Model(points, (), (Bar(0, 1, light),), (firm(0, points[0]),), ((1, 0.5e-3),))
        first, second, _ = Frame(Parts(model, [], 0), [], 1.0).modes(3)
        assert first.frequency_hz == pytest.approx(np.sqrt(15.456 / 0.5e-3) / (2 * pi), rel=1e-3)
        assert second.frequency_hz == pytest.approx(first.frequency_hz * np.sqrt(2), rel=1e-3)  # twice as stiff
        assert first.mass_kg == pytest.approx(0.5, rel=1e-3)

    # Source: a strip clamped at one end swings at λ² = 3.516 (beam tables), here held on discs of its own
    @pytest.mark.outside
    def test_a_strip_of_sheet(self):
        discs = (Disc(6.0, 6.0, 5.0), Disc(20.0, 6.0, 5.0), Disc(194.0, 6.0, 1.0))
        plate = Plate(((0.0, 0.0), (200.0, 0.0), (200.0, 12.0), (0.0, 12.0)), (), discs, 1.0, 1 / 2.6, 0.3)
        nodes = tuple((disc.x_mm, disc.y_mm, 0.0) for disc in discs)
        model = Model(nodes, (Panel(0, (0, 1, 2), UPRIGHT, 0),), (), (firm(0, nodes[0]), firm(1, nodes[1])), ())
        frame = Frame(Parts(model, [reduce_plate(plate, 3.0)], 1), [Sheet(70_000.0, 3.0, 2.7e-9)], 1.0)
        free_mm = 200.0 - 25.0
        expected = 3.516 / (2 * pi * free_mm**2) * np.sqrt(70_000.0 * 3.0**2 / (12 * 2.7e-9))
        assert frame.modes(1)[0].frequency_hz == pytest.approx(expected, rel=0.03)

    def test_what_is_not_held_is_told(self):
        points = ((0.0, 0.0, 0.0), (200.0, 0.0, 0.0))
        model = Model(points, (), (Bar(0, 1, STEEL),), (), ())
        with pytest.raises(UnfitFrameError, match="move freely"):
            Frame(Parts(model, [], 0), [], 1.0).pushed((1,), (0.0, 0.0, 1.0), 10.0)
