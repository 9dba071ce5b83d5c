"""Materials, belts, motor faces, frictions, strengths, papers, wires and sources."""

from __future__ import annotations

from fractions import Fraction
from importlib.resources import files
from itertools import pairwise

import pytest

from scantling.errors import BrokenPromiseError, LookUpError
from scantling.formulas import wires as wire_formulas
from scantling.tables.bands import known_band
from scantling.tables.belt_profiles import belt_profile, belt_profile_names, installation_tension_n
from scantling.tables.csv_table import rows
from scantling.tables.frictions import friction
from scantling.tables.materials import material, material_names
from scantling.tables.motor_faces import motor_face
from scantling.tables.papers import paper, paper_names
from scantling.tables.property_classes import property_class
from scantling.tables.sources import all_sources, cite, source
from scantling.tables.wires import wire


@pytest.mark.outside
@pytest.mark.parametrize(
    ("thickness", "least"),
    # Source: EN 622-5 dry-process fibreboard as printed in a copy of its table
    [(9, 2700), (12, 2500), (19, 2200), (30, 2100), (45, 1900)],
)
def test_fibreboard_by_thickness(thickness, least):
    assert material("MDF", thickness).modulus_mpa.low == least


@pytest.mark.outside
def test_board_and_timber():
    # Source: EN 300 OSB/3 product requirement as printed by a board maker: 3500 along, 1400 across
    board = material("OSB")
    assert (board.modulus_mpa.low, board.cross_modulus_mpa.low) == (3500, 1400)
    # Source: EN 12369-1 design values as printed by a board maker: 4930 along, 1980 across, inside the band
    assert board.modulus_mpa.low < 4930 < board.modulus_mpa.high
    assert board.cross_modulus_mpa.low < 1980 <= board.cross_modulus_mpa.high
    # Source: EN 338 C18, C24, C30 as printed by a timber maker: 9000, 11000, 12000; across 300, 370, 400
    timber = material("softwood").modulus_mpa
    assert (timber.low, timber.typical, timber.high) == (9000, 11000, 12000)
    assert material("softwood").cross_modulus_mpa.low == 300


@pytest.mark.outside
def test_plywood_and_metals():
    # Source: a wood journal's measurement of plywood, 6900 to 9000
    assert (material("plywood").modulus_mpa.low, material("plywood").modulus_mpa.high) == (6900, 9000)
    # Source: tables of a shaft calculator: aluminium 69, steel 200 GPa
    assert material("aluminium").modulus_mpa.low <= 69_000 <= material("aluminium").modulus_mpa.high
    assert material("steel").modulus_mpa.low <= 200_000 <= material("steel").modulus_mpa.high


@pytest.mark.outside
def test_printed_plastic():
    # Source: four published sheets on PLA: density 1.22 to 1.30, glass transition 55 to 65 °C, deflection from 52 °C,
    #   modulus 3.0 to 3.5 GPa, specific heat 1800
    pla = material("PLA")
    assert pla.density_kg_m3.low <= 1220 < 1300 <= pla.density_kg_m3.high
    assert (pla.softening_c.low, pla.softening_c.high) == (52, 65)
    assert pla.modulus_mpa.low < 3000 < 3500 <= pla.modulus_mpa.high
    assert pla.specific_j_kg_k == 1800
    # Source: a moulder's table and a printing bureau's: ABS glass transition 105, service 85 to 100 °C
    assert (material("ABS").softening_c.low, material("ABS").softening_c.high) == (85, 105)


def test_rules_of_materials():
    for row in rows("materials"):
        found = material(row["material"], float(row["thickness_to_mm"]) if row["thickness_to_mm"] else None)
        bands = (found.modulus_mpa, found.cross_modulus_mpa, found.density_kg_m3, found.hardness_hv, found.softening_c)
        for one in bands:
            assert one is None or one.low <= one.typical <= one.high, row["material"]
        assert 100 < found.density_kg_m3.low < found.density_kg_m3.high < 9000
        if found.modulus_mpa:
            assert found.cross_modulus_mpa.typical <= found.modulus_mpa.typical
        assert found.poisson_ratio is None or 0.2 < found.poisson_ratio < 0.4
        assert found.growth_um_m_k is None or 4 < found.growth_um_m_k < 300
    bounds = [
        (row["thickness_from_mm"], row["thickness_to_mm"]) for row in rows("materials") if row["material"] == "MDF"
    ]
    assert all(a[1] == b[0] for a, b in pairwise(bounds))
    softening = [material(name).softening_c.low for name in ("PLA", "PETG", "ABS", "PC")]
    assert softening == sorted(softening)


def test_names_of_materials():
    assert material("aluminum") == material("aluminium")
    assert material("stainless steel").name == "stainless"
    assert material("Birch Plywood").name == "birch plywood"
    assert {"steel", "acrylic", "glass", "PETG", "ASA", "hardened steel"} <= set(material_names())
    with pytest.raises(LookUpError, match="did you mean"):
        material("alumnium")
    with pytest.raises(LookUpError, match="say its thickness"):
        material("MDF")
    with pytest.raises(LookUpError, match="ends at 45 mm"):
        material("MDF", 50)


@pytest.mark.outside
def test_installation_tension_of_belts():
    # Source: manual of a tension meter, 2 mm belts with round teeth, 6 mm 15.8 N, 9 mm 25.2 N; from 4 mm on they lie on
    #   the straight line 3.149 w - 3.155 within a few hundredths, which also fills the gaps
    assert installation_tension_n("2 mm round", 6) == 15.8
    assert installation_tension_n("2 mm round", 9) == 25.2
    for width_mm in (4, 5, 7.5, 10, 15):
        assert installation_tension_n("2 mm round", width_mm) == pytest.approx(3.149 * width_mm - 3.155, abs=0.09)
    assert installation_tension_n("2 mm round", 20) is None
    assert installation_tension_n("3 mm round", 6) is None


@pytest.mark.outside
def test_published_figures_of_2_mm_belts_lie_inside_the_band():
    # Source: a paper on toothed belts by way of another, breaking tension 615 N at 6 mm
    belt = belt_profile("2 mm round")
    assert 6 * belt.breaking_n_mm == pytest.approx(615, rel=0.01)
    # Source: two published calculators of belt tension, 8.3 and 6.0 g/m at 6 mm
    assert 6 * belt.mass_g_m_mm.low <= 6.0 < 8.3 <= 6 * belt.mass_g_m_mm.high
    # Source: a published drive calculation, 15 kN of strain stiffness at 6 mm
    assert 6 * belt.strain_stiffness_n_mm.low <= 15_000 <= 6 * belt.strain_stiffness_n_mm.high


def test_rules_of_belt_profiles_and_tensions():
    """Tables belt_profiles and belt_tensions."""
    for name in belt_profile_names():
        found = belt_profile(name)
        assert name.startswith(f"{float(found.pitch_mm):g} mm ")
        assert found.strain_stiffness_n_mm.low < found.strain_stiffness_n_mm.typical < found.strain_stiffness_n_mm.high
        assert found.mass_g_m_mm.low < found.mass_g_m_mm.typical < found.mass_g_m_mm.high
        # the smallest pulley is still rounder than the belt is thick
        assert found.least_teeth * float(found.pitch_mm) / 3.1416 > 8 * found.pitch_line_offset_mm
    tensions = [float(row["tension_n"]) for row in rows("belt_tensions")]
    assert tensions == sorted(tensions)
    assert belt_profile("2mm round") == belt_profile("2 mm round")
    assert belt_profile("5.08 mm trapezoidal").pitch_mm == Fraction(127, 25)
    with pytest.raises(LookUpError, match="did you mean 2 mm round"):
        belt_profile("2 mm rund")


@pytest.mark.outside
def test_motor_frame_17():
    # Source: a published table of motor frames: square 1.220 in, pilot 0.866 in, shaft 0.197 in, bolt circle 1.725 in
    face = motor_face("17")
    assert face.square_mm == pytest.approx(1.220 * 25.4, abs=0.02)
    assert face.pilot_mm == pytest.approx(0.866 * 25.4, abs=0.01)
    assert face.shaft_mm == pytest.approx(0.197 * 25.4, abs=0.01)
    assert face.square_mm * 2**0.5 == pytest.approx(1.725 * 25.4, abs=0.03)


def test_rules_of_motor_faces():
    faces = [motor_face(row["frame_size"]) for row in rows("motor_faces")]
    for small, large in pairwise(faces):
        assert small.square_mm < large.square_mm
        assert small.face_mm < large.face_mm
    for face in faces:
        assert face.shaft_mm < face.pilot_mm < face.square_mm * 2**0.5
        # the face measures about a tenth of an inch for each unit of the frame size
        assert face.face_mm == pytest.approx(2.54 * int(face.frame_size), rel=0.05)
        assert (face.tapped_depth_mm is not None) == face.tapped
    with pytest.raises(LookUpError, match="known are 11, 14, 17, 23, 8"):
        motor_face("99")


def test_rules_of_frictions():
    for row in rows("frictions"):
        found = friction(row["pair"])
        assert 0 < found.friction_ratio.low < found.friction_ratio.typical < found.friction_ratio.high < 0.5
    assert friction("ball bushing").friction_ratio.high < friction("polymer bushing").friction_ratio.low
    with pytest.raises(LookUpError):
        friction("wooden bushing")


@pytest.mark.outside
def test_property_classes_of_screws():
    # Source: ISO 898-1 as printed in two published bolt tables: proof 580, 830, 970; ultimate 800, 1040, 1220
    for name, proof, ultimate in (("8.8", 580, 800), ("10.9", 830, 1040), ("12.9", 970, 1220)):
        found = property_class(name)
        assert (found.proof_mpa, found.ultimate_mpa) == (proof, ultimate)


def test_rules_of_property_classes():
    for row in rows("property_classes"):
        found = property_class(row["property_class"])
        assert found.proof_mpa <= found.yield_mpa < found.ultimate_mpa
        first, _, second = found.name.partition(".")
        if second:  # the name of a metric class says it: ultimate in hundreds, yield as tenths of it; both are rounded
            assert found.ultimate_mpa == pytest.approx(100 * int(first), rel=0.06)
            assert found.yield_mpa == pytest.approx(10 * int(first) * int(second), rel=0.07)
    with pytest.raises(LookUpError, match=r"did you mean 8\.8"):
        property_class("8.9")


@pytest.mark.outside
@pytest.mark.parametrize(
    ("name", "width", "height"),
    [
        # Source: ISO 216 as printed in a published table and the Python library papersize 1.6.1
        ("A0", 841, 1189),
        ("A1", 594, 841),
        ("A2", 420, 594),
        ("A3", 297, 420),
        ("A4", 210, 297),
        ("A5", 148, 210),
        # Source: the Python library papersize 1.6.1 (letter, legal, tabloid)
        ("letter", 215.9, 279.4),
        ("legal", 215.9, 355.6),
        ("tabloid", 279.4, 431.8),
    ],
)
def test_printed_papers(name, width, height):
    assert (paper(name).width_mm, paper(name).height_mm) == (width, height)


def test_rules_of_papers():
    for name in paper_names():
        assert paper(name).width_mm < paper(name).height_mm
    for larger, smaller in pairwise(f"A{n}" for n in range(7)):
        # each is half of the one before, cut across, rounded down to a millimetre
        assert paper(smaller).width_mm == paper(larger).height_mm // 2
        assert paper(smaller).height_mm == paper(larger).width_mm
    for larger, smaller in (("ANSI C", "Tabloid"), ("ANSI D", "ANSI C"), ("ANSI E", "ANSI D")):
        assert paper(larger).width_mm == pytest.approx(paper(smaller).height_mm)
        assert paper(larger).height_mm == pytest.approx(2 * paper(smaller).width_mm)
    with pytest.raises(LookUpError, match="did you mean"):
        paper("A44")


@pytest.mark.outside
@pytest.mark.parametrize(
    ("area", "solid", "flexible"),
    # Source: IEC 60228 as printed in three published tables: largest resistance at 20 °C of class 1/2 and 5/6
    [
        (0.5, 36.0, 39.0),
        (0.75, 24.5, 26.0),
        (1.0, 18.1, 19.5),
        (1.5, 12.1, 13.3),
        (2.5, 7.41, 7.98),
        (4, 4.61, 4.95),
        (6, 3.08, 3.30),
    ],
)
def test_printed_resistances(area, solid, flexible):
    assert (wire(area).solid_ohm_km, wire(area).flexible_ohm_km) == (solid, flexible)


def test_rules_of_wires():
    for row in rows("wires"):
        found = wire(float(row["area_mm2"]))
        assert found.flexible_ohm_km > wire_formulas.copper_ohm_km(found.area_mm2)
        assert found.solid_ohm_km is None or found.solid_ohm_km < found.flexible_ohm_km
    with pytest.raises(LookUpError, match=r"1\.5"):
        wire(1.4)


def test_every_source_is_used_and_can_be_cited():
    tables = sorted(file.name for file in files("scantling.tables").joinpath("data").iterdir())
    every = [row for name in tables if name.endswith(".csv") for row in rows(name.removesuffix(".csv"))]
    used = {row["source"] for row in every if "source" in row} | {"check-formulas"}  # of whole files
    assert used == set(all_sources())
    assert cite("iso-261").startswith("ISO 261")
    assert cite("din-985-m2-5").endswith("(from memory)")
    assert source("iso-273-ends").from_memory
    assert not source("iso-273").from_memory
    with pytest.raises(LookUpError, match="did you mean iso-273"):
        source("iso-272")


def test_a_broken_table_is_our_fault():
    with pytest.raises(BrokenPromiseError, match="no density"):
        known_band({"density_low_kg_m3": "", "density_high_kg_m3": ""}, "density", "kg_m3")
