"""Plates against closed forms: within 1 %, and twice as near four times as close."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from scipy.sparse.linalg import spsolve

from scantling.shapes.elements.kept import reduced_data, reduced_from
from scantling.shapes.elements.plate import Plate, reduce_plate
from scantling.shapes.elements.triangulate import Disc, triangulate
from scantling.shapes.elements.unfit import UnfitFrameError

ONE_PERCENT = 0.01
PRESSURE_MPA = 0.001


@pytest.mark.outside
class TestSag:
    # Source: Navier's series and Timoshenko's tables, w = k q a⁴ / D with a the short side, ν 0.3:
    #   square supported .00406, twice as long .01013 (Roark 11.4 case 1a .1110 / 10.92); clamped square .00126
    #   (exact .001265); square with one edge clamped, middle of the free edge .12907; two supported .01309 (Ritz)
    @pytest.mark.parametrize(
        ("edges", "long", "at", "factor"),
        [
            ("SSSS", 1, (0.5, 0.5), 0.004062),
            ("SSSS", 2, (0.5, 0.5), 0.010129),
            ("CCCC", 1, (0.5, 0.5), 0.001265),
            ("CFFF", 1, (1.0, 0.5), 0.12907),
            ("SSFF", 1, (0.5, 0.5), 0.01309),
        ],
    )
    def test_under_an_even_load(self, plates, edges, long, at, factor):
        plate = plates.rectangle(edges, 200.0 * long, 200.0, parts=30)
        sag = plate.sag((at[0] * plate.width_mm, at[1] * plate.height_mm), pressure_mpa=PRESSURE_MPA)
        assert sag * plate.rigidity[0, 0] / (PRESSURE_MPA * 200.0**4) == pytest.approx(factor, rel=ONE_PERCENT)

    # Source: Timoshenko, w = k F a² / D: supported square .01160, clamped square .00560
    @pytest.mark.parametrize(("edges", "factor"), [("SSSS", 0.01160), ("CCCC", 0.00560)])
    def test_under_a_force_in_the_middle(self, plates, edges, factor):
        plate = plates.rectangle(edges, parts=30)
        sag = plate.sag((100.0, 100.0), force_n=10.0)
        assert sag * plate.rigidity[0, 0] / (10.0 * 200.0**2) == pytest.approx(factor, rel=ONE_PERCENT)


@pytest.mark.outside
class TestFrequencies:
    # Source: λ = ω a² √(ρ h / D), square, ν 0.3: SSSS closed form π² (m² + n²); the others by Ritz, exact to the digits
    @pytest.mark.parametrize(
        ("edges", "numbers"),
        [
            ("SSSS", [19.739, 49.348, 49.348, 78.957]),
            ("CCCC", [35.985, 73.394, 73.394, 108.217]),
            ("CFFF", [3.4711, 8.507, 21.286, 27.199, 30.958]),
            ("FFFF", [13.468, 19.596, 24.270, 34.801, 34.801]),
            ("SSFF", [9.631, 16.135, 36.726, 38.945]),
            ("SSCC", [28.951, 54.743, 69.327, 94.585]),
        ],
    )
    def test_of_a_square(self, plates, edges, numbers):
        assert plates.rectangle(edges, parts=30).numbers(len(numbers)) == pytest.approx(numbers, rel=ONE_PERCENT)

    # Source: closed form of a supported sheet with grain: ω = π²/a² √((D11 + 2 (D12 + 2 D66) + D22) / (ρ h)), square
    def test_of_a_sheet_with_grain(self, plates):
        elastic = plates.elasticity(9_000.0, 4_000.0, 0.1, 620.0)
        d = elastic * plates.thickness_mm**3 / 12
        whole = d[0, 0] + 2 * (d[0, 1] + 2 * d[2, 2]) + d[1, 1]
        found = plates.rectangle("SSSS", elastic=elastic, parts=30).numbers(1)[0]
        assert found == pytest.approx(np.pi**2 * np.sqrt(whole / d[0, 0]), rel=ONE_PERCENT)


@pytest.mark.outside
class TestInThePlane:
    # Source: beam theory with shear: a cantilever 200 x 40 under 100 N at its end, F L³/(3 E I) + 6 F L / (5 G A)
    def test_a_deep_cantilever(self, plates):
        moved, (length, height) = _sheared(plates, [(0, 0), (200, 0), (200, 40), (0, 40)], 5.0, 0.3)
        e, t = plates.modulus_mpa, plates.thickness_mm
        bent = 100 * length**3 / (3 * e * t * height**3 / 12)
        sheared = 1.2 * 100 * length / (e / 2.6 * t * height)
        assert moved == pytest.approx(bent + sheared, rel=ONE_PERCENT)

    # Source: Cook's membrane, corners (0, 0) (48, 44) (48, 60) (0, 44), E 1, ν 1/3, shear 1 on the right: 23.96 there
    def test_cooks_tapered_panel(self, plates):
        moved, _ = _sheared(plates, [(0, 0), (48, 44), (48, 60), (0, 44)], 2.0, 1 / 3)
        middle = moved * plates.modulus_mpa * plates.thickness_mm / 100.0
        assert middle == pytest.approx(23.96, rel=ONE_PERCENT)


def _sheared(plates, corners, size_mm, poisson_ratio):
    """Hold the left edge, load the right with 100 N upwards; return how far the right edge's middle moves."""
    mesh = triangulate(corners, [], [], size_mm)
    elastic = plates.plain(poisson_ratio)
    matrices = plates.membrane(mesh.nodes[mesh.triangles], elastic, plates.thickness_mm, poisson_ratio)
    stiffness = plates.gather(mesh.triangles, matrices, len(mesh.nodes))
    x, y = mesh.nodes.T
    right = np.flatnonzero(x > x.max() - 1e-6)
    right = right[np.argsort(y[right])]
    load = np.zeros(3 * len(x))
    for a, b in pairwise(right):
        load[[3 * a + 1, 3 * b + 1]] += 50.0 * (y[b] - y[a]) / (y[right[-1]] - y[right[0]])
    free = np.flatnonzero(np.repeat(x > 1e-6, 3))
    moved = np.zeros_like(load)
    moved[free] = spsolve(stiffness[np.ix_(free, free)], load[free])
    middle = right[np.argmin(np.abs(y[right] - (y[right[0]] + y[right[-1]]) / 2))]
    return float(moved[3 * middle + 1]), (x.max(), y.max())


class TestMesh:
    def test_half_the_size_is_four_times_as_near(self, plates):
        errors = [
            abs(plates.rectangle("SSSS", parts=parts).numbers(1)[0] / (2 * np.pi**2) - 1) for parts in (8, 16, 32)
        ]
        assert errors[0] > 3 * errors[1] > 9 * errors[2]

    def test_every_hole_and_corner_is_filled_to_the_edge(self):
        window = [(30.0, 30.0), (90.0, 30.0), (90.0, 60.0), (30.0, 60.0)]
        discs = [Disc(10.0, 10.0, 4.0), Disc(110.0, 45.0, 12.0), Disc(15.0, 80.0, 4.5), Disc(27.0, 80.0, 4.5)]
        mesh = triangulate([(0.0, 0.0), (160.0, 0.0), (120.0, 90.0), (0.0, 90.0)], [window], discs, 20.0)
        assert mesh.area_mm2 == pytest.approx((160 + 120) / 2 * 90 - 60 * 30, rel=1e-9)
        assert [len(disc) for disc in mesh.discs] == [9, 9, 9, 9]

    def test_a_disc_over_the_edge_shrinks(self):
        mesh = triangulate([(0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0)], [], [Disc(3.0, 25.0, 8.0)], 10.0)
        assert mesh.nodes[list(mesh.discs[0])][:, 0].min() > 0

    def test_what_cannot_be_filled_is_told(self):
        with pytest.raises(UnfitFrameError, match="crosses itself"):
            triangulate([(0.0, 0.0), (50.0, 50.0), (50.0, 0.0), (0.0, 50.0)], [], [], 10.0)
        with pytest.raises(UnfitFrameError, match="no material"):
            triangulate([(0.0, 0.0), (50.0, 0.0), (0.0, 50.0)], [], [Disc(45.0, 45.0, 3.0)], 10.0)


class TestReduction:
    PLATE = Plate(
        boundary=((0.0, 0.0), (200.0, 0.0), (200.0, 80.0), (0.0, 80.0)),
        windows=(),
        discs=(Disc(10.0, 40.0, 5.0), Disc(190.0, 40.0, 5.0)),
        cross_ratio=1.0,
        shear_ratio=0.385,
        poisson_ratio=0.3,
    )

    def test_moving_as_a_whole_takes_no_force_and_all_the_mass(self):
        reduced = reduce_plate(self.PLATE, 10.0)
        up, turned = np.zeros(len(reduced.bend)), np.zeros(len(reduced.bend))
        up[[0, 3]] = 1.0
        turned[[3, 2, 5]] = -180.0, 1.0, 1.0  # about y: w = -θy · x from the first disc
        assert np.abs(reduced.bend @ up).max() < 1e-9
        assert np.abs(reduced.bend @ turned).max() < 1e-7
        assert up @ reduced.bend_mass @ up == pytest.approx(200 * 80)

    def test_kept_and_read_again_it_is_the_same(self):
        again = reduced_from(reduced_data(self.PLATE, 20.0))
        assert np.array_equal(again.bend, reduce_plate(self.PLATE, 20.0).bend)
